"""Standard output and error full, closed or in an odd encoding; nobody to ask; folders that cannot be written; ctrl-C."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from bad_inputs import BAG, HOLES
from runs import PACKAGE, shell

from simulator.hole import load_hole
from simulator.player import load_player


@pytest.mark.parametrize("words", ["list", "--help", "check eel-trap --json"])
def test_a_full_standard_output(words: str, tmp_path: Path) -> None:
    done = shell(f"$H {words} > /dev/full", tmp_path)
    assert done.returncode == 2
    assert done.stderr.startswith(b"holesim: standard output cannot be written (No space left") and done.stderr.count(b"\n") == 1


def test_streams_that_are_closed_or_full(tmp_path: Path) -> None:
    line = "$H list >&-; echo $?; $H list <&- | grep -c '^  barnaby '; $H check none.toml 2>&-; echo $?; $H check none.toml 2>/dev/full; echo $?"
    line += "; $H new player --name Ada <&-; echo $?; $H check withy-drain | head -1 | wc -l; echo ${PIPESTATUS[0]}"
    done = shell(line, tmp_path)
    assert done.stdout.split() == b"0 1 2 2 2 1 0".split(), done
    assert done.stderr == b"holesim: new player: --handicap not given, and nobody there to ask\n"


@pytest.mark.parametrize("more", [{"LC_ALL": "C"}, {"LC_ALL": "C", "PYTHONIOENCODING": "ascii"}, {"PYTHONIOENCODING": "latin-1"}])
def test_letters_that_the_terminal_has_not(more: dict[str, str], tmp_path: Path) -> None:
    done = shell('$H check "handicap 15, called Åsa" && $H sketch "Østre 高: par 4, 372" -o x.toml', tmp_path, **more)
    assert done.returncode == 0 and b"Traceback" not in done.stderr
    assert tomllib.loads((tmp_path / "x.toml").read_text("utf-8"))["name"] == "Østre 高"


@pytest.mark.slow  # the drawing library lists all fonts of the machine when it can keep no list
def test_nobody_may_write_anywhere(tmp_path: Path) -> None:
    """A home and a cache that cannot be written (/proc takes no files, whoever asks): an answer all the same."""
    more = {"HOME": "/proc/none", "HOLESIM_CACHE_DIR": "/proc/none", "XDG_CACHE_HOME": "/proc/none", "MPLCONFIGDIR": "/proc/none"}
    (tmp_path / "s.csv").write_text("club,carry,offline\n7i,140,-6\n7i,136,4\n")
    done = shell("$H carries 150 --json && $H player fit s.csv --level 9 --plot s.png", tmp_path, **more)
    assert done.returncode == 0 and (tmp_path / "s.png").stat().st_size > 5000, done.stderr
    assert b"Traceback" not in done.stderr


@pytest.mark.slow
def test_a_plan_with_a_cache_that_cannot_be_written(tmp_path: Path) -> None:
    """Everything is compiled again, and answered."""
    done = shell("$H plan eel-trap --sequences 100 --json", tmp_path, HOLESIM_CACHE_DIR="/proc/none")
    assert done.returncode == 0 and json.loads(done.stdout)["sequences"] == 100


@pytest.mark.slow  # everything compiled anew; test_compiled_cache.py::test_a_cache_that_is_a_file has such a home
def test_a_home_that_cannot_be_written(tmp_path: Path) -> None:
    done = shell("$H carries 150 --json", tmp_path, HOME="/proc/none", HOLESIM_CACHE_DIR="/proc/none", XDG_CACHE_HOME="/proc/none")
    assert done.returncode == 0 and json.loads(done.stdout)["club"]
    assert done.stderr.startswith(b"holesim: warning: the compiled simulation cannot be kept in /proc/none") and done.stderr.count(b"\n") == 1


def test_ctrl_c(tmp_path: Path) -> None:
    """130, one line, and no draft beside the picture asked for."""
    code = (
        "import os, signal, sys\nfrom simulator.strategy import ask\nfrom simulator.cli import main\n"
        "signal.signal(signal.SIGINT, signal.default_int_handler)\n"  # a job in the background is born without it
        "ask.plan = lambda *a, **k: signal.raise_signal(signal.SIGINT)\n"
        "main(['plan', 'withy-drain', '--plot', 'x.png'])\n"
    )
    env = {**os.environ, "PYTHONPATH": PACKAGE}
    done = subprocess.run([sys.executable, "-c", code], env=env, cwd=tmp_path, capture_output=True, timeout=60, check=False)
    assert done.returncode == 128 + signal.SIGINT and done.stderr == b"holesim: interrupted\n"
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("change", ["mark", "returns", "both"])
def test_marks_of_byte_order_and_returns(change: str, tmp_path: Path) -> None:
    """Editors on other systems put a mark first and two letters at a line's end: the same hole and the same bag."""
    for name, text, load in (("h", HOLES[0].read_text("utf-8"), load_hole), ("b", BAG, load_player)):
        if change != "mark":
            text = text.replace("\n", "\r\n")
        (tmp_path / f"{name}.toml").write_bytes(text.encode("utf-8" if change == "returns" else "utf-8-sig"))
        assert load(tmp_path / f"{name}.toml").name == load(HOLES[0] if name == "h" else tmp_path / "b.toml").name  # type: ignore[operator]
