"""Driver minus 3-wood, asked over and over in small runs: its variance, and the stated intervals."""

from __future__ import annotations

import numpy as np

from benchmarks.cases import Case, case
from benchmarks.rows import Row
from simulator import load_hole
from simulator.engine import default_threads
from simulator.hole.surfaces import Lie
from simulator.strategy import estimate
from simulator.strategy.plays import FIRST_SETS, FIRST_STRIKES
from simulator.strategy.search import Place, search
from simulator.tables.luck import strike_sets

CLUBS = ("driver", "3-wood")
SEQUENCES = 400
"""Of a small run."""


def _choices(case: Case) -> list[np.ndarray]:
    """Best action of the driver and of the 3-wood by the map."""
    board = case.board
    rows = {
        name: next(k for k in board.allowed(Lie.TEE) if board.bag.shots.shots[k].club.name == name)
        for name in CLUBS
    }
    place = Place(board, 0.0, 0.0, int(Lie.TEE), default_threads())
    found, _ = search(
        place, 3, list(rows.values()), keep_within=9.0, keep_most=9, must=frozenset(rows.values())
    )
    return [next(choice.action for choice in found if choice.row == row) for row in rows.values()]


def small_runs(case: Case, repeats: int, strikes: int) -> tuple[np.ndarray, np.ndarray]:
    """Estimates and standard errors of the driver's score and the difference, float64[repeats, 2]."""
    actions = _choices(case)
    place, value = case.place, case.start.value
    figures, errors = np.empty((repeats, 2)), np.empty((repeats, 2))
    for r in range(repeats):
        sets = strike_sets(1_000 + r, FIRST_SETS, strikes)
        runs = [
            estimate.played(place.values(a[None], value, sets)[0], value, case.play(a, 1_000 + r, SEQUENCES))
            for a in actions
        ]
        for k, one in enumerate((estimate.score(runs[0]), estimate.difference(runs[0], runs[1]))):
            figures[r, k], errors[r, k] = one.value, one.standard_error
    return figures, errors


def measure(short: bool) -> list[Row]:
    """Truth from two long plain samples; 2,000 small runs, or 200 in the short form."""
    repeats, strikes = (200, 64) if short else (2_000, 64)
    rows: list[Row] = []
    for player in ("isolde",) if short else ("isolde", "barnaby"):
        one = case("withy-drain", load_hole("withy-drain"), player)
        figures, errors = small_runs(one, repeats, strikes)
        long = 400_000 if short else 4_000_000
        plain = [one.play(a, 77 + k, long, threads=default_threads()) for k, a in enumerate(_choices(one))]
        truth = np.array([plain[0].expected.mean(), plain[0].expected.mean() - plain[1].expected.mean()])
        independent = sum(p.score.var(ddof=1) for p in plain) / SEQUENCES
        ours = figures[:, 1].var(ddof=1)
        part = f"sureness: {player}, withy-drain, {repeats:,} runs of {SEQUENCES} sequences"
        limit = estimate.clear_multiple(FIRST_SETS)
        rows.append(Row(part, "driver minus 3-wood", float(truth[1]), "strokes"))
        rows.append(
            Row(part, "variance, plain independent over ours", independent / ours, "times", 5.0, True)
        )
        for k, what in enumerate(("driver's score", "difference")):
            covered = 100.0 * float(np.mean(np.abs(figures[:, k] - truth[k]) <= limit * errors[:, k]))
            # 200 runs know a share of 95 % to 1.5 points: the short form allows three of them more
            slack = 4.6 if short else 0.0
            rows += [
                Row(part, f"95 % intervals of the {what} that hold", covered, "%", 93.0 - slack, True),
                Row(part, "  and not more than", covered, "%", 97.0 + slack),
                Row(part, f"stated error of the {what} over the real one",
                    float(np.sqrt(np.mean(errors[:, k] ** 2)) / figures[:, k].std(ddof=1)), ""),
            ]  # fmt: skip
    # what an answer really uses, as against the small runs
    rows.append(Row(rows[-1].part, "strikes of an answer's first shot", FIRST_SETS * FIRST_STRIKES, ""))
    return rows
