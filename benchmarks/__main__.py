"""Every measurement in one table: ``python -m benchmarks [--short] [--json] [--only NAME]``."""

from __future__ import annotations

import argparse
import importlib.util
import json
import os
import platform
import subprocess
import sys

from benchmarks import growth, speed, sureness, waiting
from benchmarks.rows import Row, table

PARTS = {
    "speed": speed.measure,
    "waiting": waiting.measure,
    "growth": growth.measure,
    "sureness": sureness.measure,
}


def regret(as_json: bool) -> int:
    """Solver accuracy and regret, a script of its own: its table goes to standard error beside our JSON."""
    if importlib.util.find_spec("benchmarks.regret") is None:
        return 0
    out = sys.stderr if as_json else None
    return subprocess.run([sys.executable, "-m", "benchmarks.regret"], stdout=out).returncode


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
    if asked.json:
        print(
            json.dumps(
                {"schema": "holesim-benchmarks-1", "machine": machine, "rows": [r.to_dict() for r in rows]}
            )
        )
    elif rows:
        print(f"{machine['cores']} cores, load {load:.1f} at the end (above 1, other work slowed this)")
        print(table(rows))
    failed = 0
    if asked.only == "regret" or (asked.only is None and not asked.short):
        failed = regret(asked.json)
    wrong = [r for r in rows if r.met is False and (r.part.startswith("sureness") or r.unit == "s.e.")]
    return 1 if wrong or failed else 0


if __name__ == "__main__":
    sys.exit(main())
