"""How long one waits: in this process, from a cold start, the first time ever; imports; where it goes."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time

from benchmarks.rows import Row, seconds
from simulator import load_hole, load_player, plan
from simulator.conditions import Conditions, Wind

PART = "waiting"
COMPARE = ["-m", "simulator", "compare", "withy-drain", "driver", "3-wood"]


def _process(arguments: list[str], cache: str | None = None, repeats: int = 1) -> float:
    """Least wall seconds of a fresh Python process."""
    environment = dict(os.environ)
    if cache is not None:
        environment["HOLESIM_CACHE_DIR"] = cache
    spent = []
    for _ in range(repeats):
        start = time.perf_counter()
        subprocess.run([sys.executable, *arguments], check=True, env=environment, stdout=subprocess.DEVNULL,
                       stderr=subprocess.DEVNULL)  # fmt: skip
        spent.append(time.perf_counter() - start)
    return min(spent)


def measure(short: bool) -> list[Row]:
    """The short form leaves out the first run ever (``compile_seconds.py`` looks at that)."""
    hole, player = load_hole("withy-drain"), load_player("barnaby")
    wall, cpu = seconds(lambda: plan(hole, player), 1 if short else 5)
    answer = plan(hole, player)
    rows = [
        Row(PART, "plan of a par 4 in process", wall, "s", 1.0),
        Row(PART, "the same, processor seconds of all cores", cpu, "s"),
    ]
    rows += [
        Row(PART, f"  of it: {name.replace('_', ' ')}", spent, "s") for name, spent in answer.seconds.items()
    ]
    calm, _ = seconds(lambda: plan(hole, player, quick=True), 1 if short else 5)
    wind = Conditions(wind=Wind(15.0, 0.0))
    windy, _ = seconds(lambda: plan(hole, player, conditions=wind, quick=True), 1 if short else 5)
    repeats = 1 if short else 3
    rows += [
        Row(PART, "plan with the player taken as exact", calm, "s", 1.0),
        Row(PART, "  the same against 15 mph", windy, "s", 2.5),
        Row(PART, "compare in a new process, kernels cached", _process(COMPARE, repeats=repeats), "s", 3.0),
        Row(PART, "  with --quick", _process([*COMPARE, "--quick"], repeats=repeats), "s", 3.0),
    ]
    if not short:
        with tempfile.TemporaryDirectory() as cache:
            rows.append(Row(PART, "compare for the first time ever", _process(COMPARE, cache), "s", 20.0))
    bare = _process(["-c", "pass"], repeats=3)
    names = "load_hole, load_player, plan, compare"
    rows += [
        Row(PART, "import simulator", _process(["-c", "import simulator"], repeats=3), "s", 0.5),
        Row(PART, f"from simulator import {names}",
            _process(["-c", f"from simulator import {names}"], repeats=3), "s"),
        Row(PART, "holesim --help", _process(["-m", "simulator", "--help"], repeats=3), "s", 0.5),
        Row(PART, "Python that does nothing", bare, "s"),
    ]  # fmt: skip
    return rows
