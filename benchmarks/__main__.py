"""Every measurement in one table: ``python -m benchmarks [--short] [--json] [--only NAME]``."""

from __future__ import annotations

import argparse
import json
import os
import platform
import subprocess
import sys
from pathlib import Path
from typing import Any

from benchmarks import growth, speed, sureness, waiting
from benchmarks.rows import Row, table

PARTS = {
    "speed": speed.measure,
    "waiting": waiting.measure,
    "growth": growth.measure,
    "sureness": sureness.measure,
}


def regret(as_json: bool) -> tuple[int, Any]:
    """Solver accuracy and regret, a script of its own: exit status, and the answer if JSON is asked."""
    command = [sys.executable, str(Path(__file__).with_name("regret.py"))]
    if not as_json:
        return subprocess.run(command).returncode, None
    done = subprocess.run([*command, "--json"], stdout=subprocess.PIPE, text=True)
    return done.returncode, json.loads(done.stdout) if done.stdout.strip() else None


def main() -> int:
    """Measure, print; exit status 1 where agreement or sureness missed (times depend on the machine)."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    parser.add_argument("--short", action="store_true", help="a minute's worth")
    parser.add_argument("--json", action="store_true", help="JSON on standard output and nothing else there")
    parser.add_argument("--only", choices=[*PARTS, "regret"], help="one part")
    asked = parser.parse_args()
    rows: list[Row] = []
    for name, measure in PARTS.items():
        if asked.only in (None, name):
            print(f"{name} ...", file=sys.stderr, flush=True)
            rows += measure(asked.short)
    load = os.getloadavg()[0] if hasattr(os, "getloadavg") else float("nan")
    machine = {
        "cores": os.cpu_count(),
        "load": load,
        "python": platform.python_version(),
        "cpu": platform.processor(),
    }
    failed, found = 0, None
    if rows and not asked.json:
        print(f"{machine['cores']} cores, load {load:.1f} at the end (above 1, other work slowed this)")
        print(table(rows))
    if asked.only == "regret" or (asked.only is None and not asked.short):
        print("regret ... (about an hour)", file=sys.stderr, flush=True)
        failed, found = regret(asked.json)
    if asked.json:
        answer = {"schema": "holesim-benchmarks-1", "machine": machine, "rows": [r.to_dict() for r in rows]}
        print(json.dumps({**answer, "regret": found}))
    wrong = [r for r in rows if r.met is False and (r.part.startswith("sureness") or r.unit == "s.e.")]
    return 1 if wrong or failed else 0


if __name__ == "__main__":
    sys.exit(main())
