"""How far the value of a place by the map is off: ``python benchmarks/map_error.py [--seeds N] [--json]``.

A review values places by the map, over strikes that are drawn afresh; the map itself was worked with strikes
too, and reads between its nodes. From three places of each demo hole, for each demo player, with a map of its
own for each of the seeds:

* seeds: how the value scatters from map to map, the error that its own strikes state taken off;
* off: the value less what full sequences of the map's plan take from there, over all seeds;
* both: their squares added. The last line is what `strategy.estimate.MAP_ERROR` states: a review puts the
  place that a hole was begun from right by sequences of its own.
"""

from __future__ import annotations

import argparse
import json
import math
import sys
from typing import Any

import numpy as np

from benchmarks.regret import HOLES, PLAYERS
from simulator import load_hole, load_player
from simulator.engine import default_threads, play
from simulator.strategy.errorbars import mean
from simulator.strategy.question import Clock, question, solve
from simulator.strategy.review.judging import Judge
from simulator.strategy.review.rests import resting

PLACES = {
    "withy-drain": ("tee", "175 out, right rough", "40 out, fairway"),
    "eel-trap": ("tee", "60 out, left rough", "20 out, rough"),
    "long-sluice": ("tee", "230 out, fairway", "90 out, left rough"),
}
"""Places of each hole, the tee first."""

SEQUENCES = 100_000
"""Of the plan from each place, for each seed."""


def measured(hole_name: str, player_name: str, seeds: int, threads: int) -> list[dict[str, Any]]:
    """A row for each place: scatter over maps and departure from the sequences [strokes]."""
    hole, player = load_hole(hole_name), load_player(player_name)
    rests = [resting(words, hole, None) for words in PLACES[hole_name]]
    others = [(rest.x_yd, rest.y_yd, int(rest.lie)) for rest in rests[1:]]
    found: list[list[tuple[float, float, float, float]]] = [[] for _ in rests]
    for seed in range(1, seeds + 1):
        ask = question("review", hole, player, sequences=1_000, seed=seed, threads=threads)
        judge = Judge(solve(ask, Clock(), others), hole, player, seed)
        for row, rest in zip(found, rests, strict=True):
            valued = judge.valued(rest)
            ours, best = mean(valued.usual.mean(axis=1)), valued.best.action
            played = play(judge.tee.board, rest.x_yd, rest.y_yd, int(rest.lie), best, best, valued.value,
                          seed=seed + 70, sequences=SEQUENCES, threads=threads).expected  # fmt: skip
            error = played.std(ddof=1) / math.sqrt(SEQUENCES)
            row.append((ours.value, ours.standard_error, ours.value - played.mean(), error))
    rows = []
    for words, each in zip(PLACES[hole_name], found, strict=True):
        values, stated, off, error = np.array(each).T
        scatter = float(values.var(ddof=1) - np.mean(stated**2))
        apart = float(off.mean() ** 2 - np.mean(error**2) / seeds)
        rows.append(
            {"hole": hole_name, "player": player_name, "from": words, "value": float(values.mean()),
             "seeds_squared": scatter, "off": float(off.mean()),
             "off_error": float(np.sqrt(np.mean(error**2) / seeds)),
             "both_squared": max(scatter + apart, 0.0)}
        )  # fmt: skip
    return rows


def main() -> int:
    """Make the table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seeds", type=int, default=8)
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args()
    threads, rows = default_threads(), []
    if not asked.json:
        print(f"{'':<46}{'value':>6}{'seeds':>8}{'off':>19}{'both':>8}")
    for hole_name in HOLES:
        for player_name in PLAYERS:
            for row in measured(hole_name, player_name, asked.seeds, threads):
                rows.append(row)
                if not asked.json:
                    where = f"{hole_name}, {player_name}, {row['from']}"
                    off = f"{row['off']:+.4f} +- {row['off_error']:.4f}"
                    seeds, both = (math.sqrt(max(row[k], 0.0)) for k in ("seeds_squared", "both_squared"))
                    print(f"{where:<46}{row['value']:>6.3f}{seeds:>8.4f}{off:>19}{both:>8.4f}", flush=True)
    if asked.json:
        print(json.dumps({"rows": rows}))
        return 0
    for words, some in (
        ("tees, root mean square", [row for row in rows if row["from"] == "tee"]),
        ("other places, root mean square", [row for row in rows if row["from"] != "tee"]),
    ):
        seeds, both = (float(np.mean([row[k] for row in some])) for k in ("seeds_squared", "both_squared"))
        print(f"{words:<52}{math.sqrt(max(seeds, 0.0)):>8.4f}{'':>19}{math.sqrt(both):>8.4f}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
