"""What the aim found at an asked place gives away: ``python benchmarks/aim_choice.py [--json]``.

From the tee of each demo hole and from 180 yards out, for each demo player and six seeds: the best choice of
`strategy.search` against the best of aims half a degree apart either side, by the same map and far more
strikes [strokes].
"""

from __future__ import annotations

import argparse
import json
import sys
from dataclasses import replace

import numpy as np

from benchmarks.regret import HOLES, PLAYERS, SEED
from simulator import load_hole, load_player
from simulator.engine import default_threads
from simulator.strategy.question import Clock, question, solve
from simulator.strategy.review.rests import resting
from simulator.strategy.search import search
from simulator.strategy.tries import Place
from simulator.tables.luck import strike_sets

SEEDS = range(1, 7)
ASIDE = np.radians(np.arange(-4.0, 4.1, 0.5))
"""Aims the found one is held against [rad beside it]."""

PAR_3 = "eel-trap"
"""The hole without a place 180 yards out."""


def given_away(place: Place, seed: int) -> float:
    """Strokes that the search's best choice is behind the best aim of its club."""
    best = search(place, seed, place.board.allowed(place.lie), keep_within=0.3, keep_most=4)[0]
    tries = np.repeat(best.action[None], ASIDE.size + 1, axis=0)
    tries[1:, 1] += ASIDE
    scores = place.scores(tries, best.score, strike_sets(900, 16, 4096))
    return float(scores[0] - scores[1:].min())


def main() -> int:
    """Make the table."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--json", action="store_true")
    asked = parser.parse_args()
    threads, rows = default_threads(), []
    for hole_name in HOLES:
        hole = load_hole(hole_name)
        for name in PLAYERS:
            ask = question("plan", hole, load_player(name), sequences=1_000, seed=SEED, threads=threads)
            tee = solve(ask, Clock())
            for where in ("tee",) if hole_name == PAR_3 else ("tee", "180 out"):
                rest = resting(where, hole, None)
                place = replace(tee, x_yd=rest.x_yd, y_yd=rest.y_yd, lie=int(rest.lie))
                lost = [given_away(place, seed) for seed in SEEDS]
                rows.append({"hole": hole_name, "player": name, "from": where, "lost": lost})
                if not asked.json:
                    said = f"{hole_name}, {name}, {where}:"
                    print(f"{said:<34}{np.mean(lost):+.4f} on average, {max(lost):+.4f} at most", flush=True)
    every = [one for row in rows for one in row["lost"]]
    if asked.json:
        print(json.dumps({"rows": rows}))
    else:
        print(f"{'all':<34}{np.mean(every):+.4f} on average, {max(every):+.4f} at most")
    return 0


if __name__ == "__main__":
    sys.exit(main())
