"""How time and memory grow: with holes, sequences, the area of the hole and the number of clubs."""

from __future__ import annotations

import json
import subprocess
import sys

from benchmarks.rows import Row

# run in a process of its own, so that the peak of memory is that question's alone; kernels load first
_ASK = """
from simulator.tables.rasters import ground_raster
import json, resource, sys, time, tomllib
from dataclasses import replace
from simulator import load_hole, load_player, plan
from simulator.hole.sketch import read_sketch
what = json.loads(sys.argv[1])
player = load_player("barnaby")
if what.get("clubs"):
    chosen = [c for c in player.clubs if c.name in what["clubs"]]
    player = replace(player, clubs=tuple(chosen))
length = what.get("length_yd")
def hole():
    if length is None:
        return load_hole("withy-drain")
    text = f'''name = "long"
par = {3 if length < 260 else 4 if length < 480 else 5}
length_yd = {length}
fairway = [{{ from_yd = {0.4 * length}, to_yd = {length - 20}, left_yd = -16, right_yd = 16 }}]
green = [{{ front_yd = {length - 14}, depth_yd = 28, width_yd = 26 }}]
'''
    return read_sketch(tomllib.loads(text), "long")
one = hole()
if what.get("warm", True):
    plan(load_hole("eel-trap"), load_player("isolde"), sequences=100)
start, cpu = time.perf_counter(), time.process_time()
for _ in range(what.get("holes", 1)):
    answer = plan(one, player, sequences=what.get("sequences", 20_000))
end, cpu_end = time.perf_counter(), time.process_time()
after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
print(json.dumps([end - start, cpu_end - cpu, after / 1024, ground_raster(one).surface.size]))
"""


def _asked(**what: object) -> tuple[float, float, float, float]:
    """Wall seconds, processor seconds, peak memory [MiB] of a question and its ground [yd2]."""
    done = subprocess.run(
        [sys.executable, "-c", _ASK, json.dumps(what)], check=True, capture_output=True, text=True
    )
    return tuple(json.loads(done.stdout))


def measure(short: bool) -> list[Row]:
    """The short form looks at the number of sequences alone."""
    from simulator import load_player

    names = [club.name for club in load_player("barnaby").clubs]
    cases: list[tuple[str, str, dict[str, object]]] = []
    for n in (1_000, 50_000) if short else (1_000, 10_000, 100_000, 1_000_000):
        cases.append(("sequences", f"{n:,}", {"sequences": n}))
    if not short:
        for n in (1, 2, 4, 8):
            cases.append(("holes, one after the other", str(n), {"holes": n}))
        for length in (150, 300, 600):  # the ground is as wide at any length: area grows with it
            cases.append(("length of a plain hole [yd]", str(length), {"length_yd": length}))
        for n in (4, 8, len(names)):
            # spread over the bag, so that some club always reaches
            chosen = [names[round(k * (len(names) - 1) / (n - 1))] for k in range(n)]
            cases.append(("clubs", str(len(set(chosen))), {"clubs": chosen}))
    rows = []
    for axis, amount, what in cases:
        wall, cpu, peak, area = _asked(**what)
        part = f"growth with {axis}"
        rows += [
            Row(part, f"{amount}: wall", wall, "s"),
            Row(part, f"{amount}: processor", cpu, "s"),
            Row(part, f"{amount}: peak memory", peak, "MiB"),
            Row(part, f"{amount}: ground", area, "yd2"),
        ]
    return rows
