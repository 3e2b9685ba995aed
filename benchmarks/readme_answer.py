"""Put fresh real answers into the pages that show one, in place of those that stand there.

    python benchmarks/readme_answer.py          rewrite README.md and the pages for users
    python benchmarks/readme_answer.py --check  only say whether they are the answers of this version

The first answer's command is the README's first line of installation; those of the console blocks are their
own lines that begin with a dollar. Console blocks are run in a new folder, one after another. The picture is
drawn anew too; ``--check`` leaves it alone, as another matplotlib draws other bytes.
"""

from __future__ import annotations

import os
import re
import shlex
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[1]
PAGES = (ROOT / "README.md", *sorted(ROOT.glob("examples/*.md")), *sorted(ROOT.glob("holes/*.md")))
ANSWER = re.compile(r"(A real answer:\n\n```\n)(.*?)(\n```\n)", re.DOTALL)
CONSOLE = re.compile(r"(```console\n)(.*?)(\n```\n)", re.DOTALL)
PICTURE = ROOT / "examples" / "two-ways.png"
DRAWN = re.compile(rf"^holesim (lesson .* -o {PICTURE.name})$", re.MULTILINE)
COMMAND = re.compile(r"\.venv/bin/holesim (compare .*)$", re.MULTILINE)


def said(line: str, folder: Path) -> str:
    """What a command prints, its words to standard error first."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    run = [sys.executable, "-m", "simulator", *shlex.split(line)]
    done = subprocess.run(run, cwd=folder, env=environment, capture_output=True, text=True, check=True)
    return (done.stderr + done.stdout).rstrip("\n")


def transcript(block: str, folder: Path) -> str:
    """The commands of a console block, each with what it prints today."""
    lines = [line for line in block.splitlines() if line.startswith("$ holesim ")]
    return "\n\n".join(f"{line}\n{said(line.removeprefix('$ holesim '), folder)}" for line in lines)


def fresh(text: str) -> str:
    """A page with the answers of this version."""
    if ANSWER.search(text):
        found = COMMAND.search(text)
        if found is None:
            raise SystemExit("README.md: no .venv/bin/holesim compare ...")
        answer = said(found[1], ROOT)
        text = ANSWER.sub(lambda block: block[1] + answer + block[3], text)
    with tempfile.TemporaryDirectory() as name:
        return CONSOLE.sub(lambda block: block[1] + transcript(block[2], Path(name)) + block[3], text)


def draw() -> None:
    """The README's picture, by the command that stands there."""
    found = DRAWN.search((ROOT / "README.md").read_text("utf-8"))
    if found is None:
        raise SystemExit(f"README.md: no holesim lesson ... -o {PICTURE.name}")
    with tempfile.TemporaryDirectory(dir=PICTURE.parent) as name:
        said(found[1], Path(name))
        (Path(name) / PICTURE.name).replace(PICTURE)


if __name__ == "__main__":
    differ = False
    if "--check" not in sys.argv:
        draw()
    for page in PAGES:
        before = page.read_text("utf-8")
        after = fresh(before)
        if after != before:
            differ = True
            print(f"{page.relative_to(ROOT)}: the answers differ")
            if "--check" not in sys.argv:
                made = page.with_suffix(".new")
                made.write_text(after, "utf-8")
                made.replace(page)
    if not differ:
        print("the pages have this version's answers")
    sys.exit(int(differ and "--check" in sys.argv))
