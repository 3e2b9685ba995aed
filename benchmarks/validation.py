"""Every outside check side by side, misses included: ``python benchmarks/validation.py`` writes the page.

Runs the tests that hold the model against the outside (``tests/truth``, and tests elsewhere that name a
source) and prints what they said (``tests/truth_rows.py``). ``--slow`` adds the long statistical ones.
"""

from __future__ import annotations

import argparse
import ast
import json
import os
import subprocess
import sys
import tempfile
from itertools import groupby
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[1]
PAGE = ROOT / "benchmarks" / "VALIDATION.md"
TESTS = [
    "tests/truth",
    "tests/kernels/test_luck.py",
    "tests/kernels/test_bounce_and_run.py",
    "tests/physics/test_lies.py",
    "tests/physics/test_launch.py",
    "tests/hole/test_relief_rules.py",
    "tests/engine/test_value_map.py",
]
"""Where checks against published figures, standards and reference libraries stand."""


def run_tests(slow: bool) -> tuple[dict[str, Any], bool]:
    """What the tests said, and whether all passed."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "rows.json"
        command = [sys.executable, "-m", "pytest", *TESTS, "--truth-rows", str(target)]
        if slow:
            command += ["-m", "slow or not slow"]
        environment = dict(
            os.environ, PYTHONPATH=os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
        )
        done = subprocess.run(command, cwd=ROOT, env=environment, stdout=sys.stderr)
        if not target.exists():
            raise SystemExit(f"the tests wrote nothing: exit status {done.returncode}")
        return json.loads(target.read_text(encoding="utf-8")), done.returncode == 0


def number(value: float) -> str:
    """Four significant digits, no powers of ten."""
    return f"{value:,.0f}" if abs(value) >= 1000 else f"{value:.4g}"


def cells(r: dict[str, Any]) -> list[str]:
    """What, published, ours, meant within."""
    low, high = map(number, r["published"])
    unit = f" {r['unit']}" if r["unit"] else ""
    published = low if low == high else f"{low} to {high}"
    return [r["what"], published + unit, number(r["ours"]) + unit, number(r["within"]) + unit]


def line(columns: list[str]) -> str:
    """A line of a table."""
    return "| " + " | ".join(columns) + " |"


def figure_lines(rows: list[dict[str, Any]]) -> list[str]:
    """The table of figures, by source."""
    lines = []
    for source, group in groupby(sorted(rows, key=lambda r: r["source"]), key=lambda r: r["source"]):
        lines += [
            f"\n### {source}\n",
            "| What | Published | Ours | Meant within | |",
            "|---|---|---|---|---|",
        ]
        lines += [line([*cells(r), "met" if r["met"] else "**missed**"]) for r in group]
    return lines


def said(path: str, name: str) -> str:
    """First line of a test's docstring, or its name in words."""
    for node in ast.walk(ast.parse((ROOT / path).read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef) and node.name == name:
            text = (ast.get_docstring(node) or "").strip().splitlines()
            return (text[0] if text else name.removeprefix("test_").replace("_", " ")).replace("|", "/")
    return name


def test_lines(outcomes: dict[str, str]) -> list[str]:
    """Every test that ran: file, what it holds, cases, and whether it passed."""
    lines = ["| Test | What it holds | Cases | |", "|---|---|---|---|"]
    functions: dict[tuple[str, str], list[str]] = {}
    for node, outcome in outcomes.items():
        path, _, rest = node.partition("::")
        functions.setdefault((path, rest.split("[")[0].split("::")[-1]), []).append(outcome)
    for (path, name), found in sorted(functions.items()):
        failed = [o for o in found if o == "failed"]
        verdict = f"**{len(failed)} failed**" if failed else "passed" if "passed" in found else "skipped"
        lines.append(line([path.removeprefix("tests/"), said(path, name), str(len(found)), verdict]))
    return lines


def page(kept: dict[str, Any]) -> str:
    """The page."""
    rows = list({(r["source"], r["what"]): r for r in kept["rows"]}.values())
    missed, sources = [r for r in rows if not r["met"]], len({r["source"] for r in rows})
    head = f"""# Held against the outside

Made by `python benchmarks/validation.py`; do not edit. {len(rows)} figures from {sources} sources
outside, {len(rows) - len(missed)} met and {len(missed)} missed.

"Meant within" is how near our figure was meant to be. A test may allow a known departure and say so; it is
marked as missed here all the same. Many figures are second hand (magazines, reprints): where two sources
contradict each other, one of them has to be missed. Sources give no error of their own: the nearness meant is
ours, a tenth of a magazine's figure, closer for tables of counted shots.

## The misses
"""
    lines = [head, "| Source | What | Published | Ours | Meant within |", "|---|---|---|---|---|"]
    lines += [line([r["source"], *cells(r)]) for r in missed]
    lines += ["\n## Figures, by source", *figure_lines(rows)]
    lines += ["\n## The tests behind them, and those that compare with a reference library or a twin\n"]
    return "\n".join([*lines, *test_lines(kept["outcomes"])]) + "\n"


def main() -> int:
    """Run, write, and fail where a test failed (a miss that a test allows is no failure)."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--slow", action="store_true", help="the long statistical tests too")
    kept, passed = run_tests(parser.parse_args().slow)
    beside = PAGE.with_suffix(".md.new")
    beside.write_text(page(kept), encoding="utf-8")
    beside.replace(PAGE)
    print(f"{PAGE.relative_to(ROOT)}: {len(kept['rows'])} figures")
    return 0 if passed else 1


if __name__ == "__main__":
    sys.exit(main())
