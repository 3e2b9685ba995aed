"""What other settings of the map gain and cost: ``python benchmarks/map_effort.py --try more=512``.

Each ``--try`` names fields of `engine.Effort`, the node spacings ``coarse_yd`` and ``fine_yd``, how far from
the pin the second goes (``reach_yd``), or ``alike=1`` (every node worked alike, wherever balls come to), with
commas between. The policy made with them plays the same sequences as the default's from the tee (the luck,
stroke by stroke), putts by their expectation: strokes more than the default's, and the processor seconds of
both maps (noisy where other work runs).
Two maps of other seeds differ by 0.003 or so themselves: ``--maps 4`` makes four of each, and the error said
is that of their mean. ``--against 15`` makes it a day of that wind [mph] down the hole.
"""

from __future__ import annotations

import argparse
import json
import sys
import time
from dataclasses import fields, replace
from typing import Any, NamedTuple

import numpy as np

from benchmarks.regret import HOLES, PLAYERS, SEED, from_tee, played
from simulator import load_hole, load_player
from simulator.conditions import Conditions, Wind
from simulator.engine import Effort, default_threads, solve_map
from simulator.hole.model import Hole
from simulator.hole.surfaces import Lie
from simulator.strategy.traffic import solve_from
from simulator.tables.bag import Bag, make_bag
from simulator.tables.game import make_board, make_sketch
from simulator.tables.nodes import FINE_REACH_YD, FINE_YD
from simulator.tables.rasters import Raster, ground_raster

SEQUENCES = 400_000
TEE = 0.0, 0.0, int(Lie.TEE)


class Settings(NamedTuple):
    """How a map is made."""

    name: str
    effort: Effort
    coarse_yd: float | None
    fine_yd: float
    reach_yd: float
    alike: bool


def settings(text: str) -> Settings:
    """Settings from words, ``more=512,coarse_yd=4``; without any, the default's."""
    known = {field.name: field.type for field in fields(Effort)}
    effort = Effort()
    other: dict[str, Any] = {"coarse_yd": None, "fine_yd": FINE_YD, "reach_yd": FINE_REACH_YD, "alike": 0.0}
    for item in filter(None, text.split(",")):
        key, _, value = item.partition("=")
        if key in other:
            other[key] = float(value)
        elif key in known:
            effort = replace(effort, **{key: float(value) if known[key] == "float" else int(value)})
        else:
            raise SystemExit(f"--try {text}: found {key!r}; allowed: {', '.join([*known, *other])}")
    nodes = other["coarse_yd"], other["fine_yd"], other["reach_yd"]
    return Settings(text or "default", effort, *nodes, bool(other["alike"]))


def scores(
    one: Settings, hole: Hole, bag: Bag, raster: Raster, seed: int, sequences: int, threads: int
) -> tuple[np.ndarray, float]:
    """Scores of the policy's sequences, and processor seconds of its map."""
    empty = make_board(
        hole, bag, raster, coarse_yd=one.coarse_yd, fine_yd=one.fine_yd, reach_yd=one.reach_yd
    )
    start = time.process_time()
    if one.alike:
        sketch = make_sketch(empty, hole)
        board = solve_map(empty, sketch=sketch, seed=seed, effort=one.effort, threads=threads)
    else:
        board = solve_from(empty, hole, TEE, seed=seed, effort=one.effort, threads=threads).board
    took = time.process_time() - start
    return played(board, *from_tee(board, seed, threads), sequences, threads), took


def row(
    hole_name: str, player_name: str, tried: list[Settings], maps: int, sequences: int, threads: int,
    against_mph: float = 0.0,
) -> dict[str, Any]:  # fmt: skip
    """One hole and player: the default, and each of the others against it, over maps of several seeds."""
    hole, player = load_hole(hole_name), load_player(player_name)
    raster = ground_raster(hole)
    day = Conditions(wind=Wind(against_mph, 0.0) if against_mph else None)
    bag = make_bag(player, day, raster, threads)
    more, spread, took = (np.empty((maps, len(tried) + 1)) for _ in range(3))
    for k in range(maps):
        usual, took[k, -1] = scores(settings(""), hole, bag, raster, SEED + 100 * k, sequences, threads)
        for i, one in enumerate(tried):
            theirs, took[k, i] = scores(one, hole, bag, raster, SEED + 100 * k, sequences, threads)
            more[k, i], spread[k, i] = (theirs - usual).mean(), (theirs - usual).std(ddof=1)
    seconds = took.mean(axis=0)
    error = more.std(axis=0, ddof=1) / np.sqrt(maps) if maps > 1 else spread[0] / np.sqrt(sequences)
    found = [
        {"settings": one.name, "strokes": float(m), "se": float(e), "seconds": float(t)}
        for one, m, e, t in zip(tried, more.mean(axis=0), error, seconds, strict=False)
    ]
    return {"hole": hole_name, "player": player_name, "seconds": float(seconds[-1]), "tried": found}


def main() -> int:
    """Make the table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--try", dest="tried", action="append", default=[], metavar="SETTINGS")
    parser.add_argument("--only", action="append", metavar="HOLE:PLAYER", default=[])
    parser.add_argument("--maps", type=int, default=1)
    parser.add_argument("--against", type=float, default=0.0, metavar="MPH", help="wind down the hole")
    parser.add_argument("--sequences", type=int, default=SEQUENCES)
    parser.add_argument("--threads", type=int, default=default_threads())
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args()
    tried = [settings(text) for text in asked.tried or ["alike=1,coarse_yd=8,more=64"]]
    wanted = [tuple(text.split(":")) for text in asked.only] or [(h, p) for h in HOLES for p in PLAYERS]
    row(*wanted[0], tried[:0], 1, 1_000, asked.threads)  # compiled before anything is timed
    rows = []
    for hole, player in wanted:
        one = row(hole, player, tried, asked.maps, asked.sequences, asked.threads, asked.against)
        rows.append(one)
        if not asked.json:
            print(f"{hole}, {player}: default {one['seconds']:.1f} s", flush=True)
            for other in one["tried"]:
                figures = f"{other['strokes']:+.4f} +- {other['se']:.4f}   {other['seconds']:.1f} s"
                print(f"    {other['settings']:<40}{figures}", flush=True)
    if asked.json:
        print(json.dumps({"sequences": asked.sequences, "maps": asked.maps, "rows": rows}))
    return 0


if __name__ == "__main__":
    sys.exit(main())
