"""Running the program in this process and judging how it took a bad input."""

from __future__ import annotations

import contextlib
import io
import json
import os
import signal
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import simulator
from simulator.cli import _run

PACKAGE = str(Path(simulator.__file__).parents[1])
"""Where the package under test stands."""

MOST_SECONDS = 20
"""Longest a run may take: 10 s on the two cores it may use, as processor time [s], so that a busy machine is
no failure. A plan in full, confidence included, takes about half of it."""


class TooLong(BaseException):
    """Not an Exception, so that nothing in the program takes it for one of its own."""


@dataclass
class Run:
    status: int
    out: str
    err: str


@contextlib.contextmanager
def limited(seconds: float) -> Iterator[None]:
    def stop(*_: Any) -> None:
        raise TooLong(f"more than {seconds} s")

    before = signal.signal(signal.SIGPROF, stop)
    signal.setitimer(signal.ITIMER_PROF, seconds)
    try:
        yield
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
        signal.signal(signal.SIGPROF, before)


def run(arguments: list[str], seconds: float = MOST_SECONDS) -> Run:
    """One run with standard output and error caught; an exception goes through: it is a traceback."""
    out, err = (io.TextIOWrapper(io.BytesIO(), "utf-8", errors="replace", write_through=True) for _ in range(2))
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err), limited(seconds):
        status = _run(arguments)
    return Run(status, *(stream.buffer.getvalue().decode("utf-8") for stream in (out, err)))  # type: ignore[attr-defined]


def judge(arguments: list[str], seen: Run, folder: Path) -> None:
    """A refusal is one line; an answer in JSON is finite JSON alone; no file is half there."""
    assert seen.status in (0, 2, 3), seen
    lines = [line for line in seen.err.splitlines() if not line.startswith(("holesim: warning:", "holesim: wrote", "holesim: compil"))]
    if seen.status:
        assert seen.err.endswith("\n") and len(lines) == 1 and lines[0].startswith("holesim: "), seen.err
        assert len(lines[0]) < 1000 and lines[0].isprintable(), seen.err
        assert "Error" not in lines[0] and "object at 0x" not in lines[0], lines[0]
    elif "--json" in arguments:
        json.loads(seen.out, parse_constant=lambda word: (_ for _ in ()).throw(AssertionError(f"{word} in JSON")))
    whole(folder)


def whole(folder: Path) -> None:
    """Nothing but whole files: what the program wrote can be read, and no draft is left."""
    for path in folder.rglob("*"):
        assert not path.name.startswith(".holesim-"), path
        if path.is_file() and path.suffix == ".toml" and not path.name.startswith("bad"):
            tomllib.loads(path.read_text("utf-8"))


def shell(line: str, folder: Path, **more: str) -> subprocess.CompletedProcess[bytes]:
    """A line of shell in which $H is the program."""
    env = {**os.environ, "PYTHONPATH": PACKAGE, "H": f"{sys.executable} -m simulator", **more}
    return subprocess.run(["bash", "-c", line], env=env, cwd=folder, capture_output=True, timeout=120, check=False)
