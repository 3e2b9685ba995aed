"""How time and memory grow: with holes, sequences, the area of the hole and the number of clubs."""

from __future__ import annotations

import json
import subprocess
import sys

from benchmarks.rows import Row

# run in a process of its own, so that the peak of memory is that question's alone; kernels load first
_ASK = """
import json, resource, sys, time, tomllib
from dataclasses import replace
from simulator import load_hole, load_player, plan
from simulator.hole.sketch import read_sketch
what = json.loads(sys.argv[1])
player = load_player("barnaby")
if what.get("clubs"):
    chosen = [c for c in player.clubs if c.name in what["clubs"]]
    player = replace(player, clubs=tuple(chosen))
half = what.get("half_width_yd")
def hole():
    if half is None:
        return load_hole("withy-drain")
    text = '''name = "wide"
par = 4
length_yd = 400
fairway = [{ from_yd = 150, to_yd = 380, left_yd = -16, right_yd = 16 }]
green = [{ front_yd = 386, depth_yd = 28, width_yd = 26 }]
''' + f'heavy_rough = [{{ from_yd = -30, to_yd = 440, left_yd = {-half}, right_yd = {half} }}]'
    return read_sketch(tomllib.loads(text), "wide")
one = hole()
if what.get("warm", True):
    plan(load_hole("eel-trap"), load_player("isolde"), sequences=100)
before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
start, cpu = time.perf_counter(), time.process_time()
for _ in range(what.get("holes", 1)):
    answer = plan(one, player, sequences=what.get("sequences", 20_000))
end, cpu_end = time.perf_counter(), time.process_time()
after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
print(json.dumps([end - start, cpu_end - cpu, after / 1024, before / 1024]))
"""


def _asked(**what: object) -> tuple[float, float, float]:
    """Wall seconds, processor seconds and peak memory [MiB] of a question."""
    done = subprocess.run(
        [sys.executable, "-c", _ASK, json.dumps(what)], check=True, capture_output=True, text=True
    )
    wall, cpu, peak, _ = json.loads(done.stdout)
    return wall, cpu, peak


def measure(short: bool) -> list[Row]:
    """The short form asks only the smallest and a large one of each."""
    from simulator import load_player

    names = [club.name for club in load_player("barnaby").clubs]
    cases: list[tuple[str, str, dict[str, object]]] = []
    for n in (1, 2) if short else (1, 2, 4, 8):
        cases.append(("holes, one after the other", str(n), {"holes": n}))
    for n in (1_000, 100_000) if short else (1_000, 10_000, 100_000, 1_000_000):
        cases.append(("sequences", f"{n:,}", {"sequences": n}))
    if not short:
        for half in (60, 120, 180):
            cases.append(("half width of the ground [yd]", str(half), {"half_width_yd": half}))
        for n in (4, 8, len(names)):
            # spread over the bag, so that some club always reaches
            chosen = [names[round(k * (len(names) - 1) / (n - 1))] for k in range(n)]
            cases.append(("clubs", str(len(set(chosen))), {"clubs": chosen}))
    rows = []
    for axis, amount, what in cases:
        wall, cpu, peak = _asked(**what)
        part = f"growth with {axis}"
        rows += [
            Row(part, f"{amount}: wall", wall, "s"),
            Row(part, f"{amount}: processor", cpu, "s"),
            Row(part, f"{amount}: peak memory", peak, "MiB"),
        ]
    return rows
