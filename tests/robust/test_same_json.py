"""`--json` of the program is the same to the byte at 1 and 4 threads and in another process.

How sure it is and what would turn it are in it; a quick answer at 1 and 2 threads: tests/strategy/test_answers.py.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

from runs import run

import simulator

WORDS = ["compare", "eel-trap", "7i", "6i", "--sequences", "200", "--seed", "11", "--json", "--threads"]


def test_threads_and_processes(tmp_path: Path) -> None:
    first = run([*WORDS, "1"], seconds=120)
    assert first.status == 0 and len(first.out) > 2000
    env = {**os.environ, "PYTHONPATH": str(Path(simulator.__file__).parents[1])}
    again = subprocess.run([sys.executable, "-m", "simulator", *WORDS, "4"], env=env, cwd=tmp_path, capture_output=True, timeout=200, check=True)
    assert again.stdout.decode("utf-8") == first.out
