"""Put a fresh real answer into the README, in place of the one that stands there.

    python benchmarks/readme_answer.py          rewrite README.md
    python benchmarks/readme_answer.py --check  only say whether it is the answer of this version

Takes the command from the README's first line of installation, so the two never differ.
"""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
BLOCK = re.compile(r"(A real answer:\n\n```\n)(.*?)(\n```\n)", re.DOTALL)
COMMAND = re.compile(r"\.venv/bin/holesim (compare .*)$", re.MULTILINE)


def pasted() -> str:
    """The answer that stands in the README."""
    found = BLOCK.search(README.read_text("utf-8"))
    if found is None:
        raise SystemExit("README.md: no 'A real answer:' with a block behind it")
    return found[2]


def command() -> list[str]:
    """Arguments of the question the README asks first."""
    found = COMMAND.search(README.read_text("utf-8"))
    if found is None:
        raise SystemExit("README.md: no .venv/bin/holesim compare ...")
    return shlex.split(found[1])


def fresh() -> str:
    """The answer of this version."""
    run = [sys.executable, "-m", "simulator", *command()]
    return subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=True).stdout.rstrip("\n")


if __name__ == "__main__":
    answer = fresh()
    same = answer == pasted()
    if not same and "--check" not in sys.argv:
        text = README.read_text("utf-8")
        made = README.with_suffix(".new")
        made.write_text(BLOCK.sub(lambda found: found[1] + answer + found[3], text), "utf-8")
        made.replace(README)
    print("README.md has this version's answer" if same else "the answers differ")
    sys.exit(int(not same and "--check" in sys.argv))
