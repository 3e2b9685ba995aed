"""--help is instant, imports nothing heavy, and every command has an example."""

from __future__ import annotations

import statistics
import subprocess
import sys

import pytest
from all_commands import COMMANDS
from as_user import USERS, core_slowness, processor_s
from typer.testing import CliRunner

from simulator.cli import app

HEAVY = ("numba", "matplotlib", "scipy", "shapely", "numpy")


def test_help_within_half_a_second() -> None:
    seconds = []
    for _ in range(3):
        begin = processor_s()
        done = subprocess.run(
            [sys.executable, "-m", "simulator", "--help"], capture_output=True, env=USERS, timeout=30
        )
        seconds.append(processor_s() - begin)
        assert done.returncode == 0 and b"Commands:" in done.stdout
    assert statistics.median(seconds) <= 0.5 * core_slowness()


@pytest.mark.parametrize("arguments", [["--help"], ["plan", "--help"], ["--version"]], ids=" ".join)
def test_help_imports_nothing_heavy(arguments: list[str]) -> None:
    code = (
        "import sys\n"
        "from simulator.cli import _run\n"
        f"assert _run({arguments!r}) == 0\n"
        f"print([m for m in {HEAVY!r} if m in sys.modules], file=sys.stderr)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, env=USERS)
    assert done.stderr == "[]\n"


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_has_an_example(command: str) -> None:
    text = CliRunner().invoke(app, [*command.split(), "--help"], env={"COLUMNS": "80"}).output
    assert f"Example: holesim {command}" in text
    assert max(map(len, text.splitlines())) <= 80
