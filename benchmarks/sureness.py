"""Driver minus 3-wood, asked over and over in small runs: its variance, and the stated intervals."""

from __future__ import annotations

import numpy as np

from benchmarks.cases import Case, case
from benchmarks.rows import Row
from simulator import load_hole
from simulator.engine import default_threads
from simulator.hole.surfaces import Lie
from simulator.strategy import estimate
from simulator.strategy.plays import FIRST_SETS
from simulator.strategy.search import search
from simulator.strategy.tries import Place
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
    found = search(place, 3, list(rows.values()), keep_within=9.0, keep_most=9, must=frozenset(rows.values()))
    return [next(choice.action for choice in found if choice.row == row) for row in rows.values()]


def small_runs(case: Case, repeats: int, strikes: int) -> np.ndarray:
    """The driver's score and the difference of many small runs.

    Returns
    -------
    float64[repeats, 2, 3]
        Estimate, its standard error and half its 95 % interval.
    """
    actions = _choices(case)
    place, value = case.place, case.start.value
    out = np.empty((repeats, 2, 3))
    for r in range(repeats):
        sets = strike_sets(1_000 + r, FIRST_SETS, strikes)
        one, two = (
            estimate.played(
                place.values(a[None], value, sets)[0],
                value,
                case.play(a, 1_000 + r, SEQUENCES, evened=True),
            )
            for a in actions
        )
        score, gap = estimate.score(one), estimate.difference(one, two)
        out[r, 0] = score.value, score.standard_error, score.margin
        out[r, 1] = gap.value, gap.standard_error, gap.margin
    return out


def plain_sample(case: Case, action: np.ndarray, seed: int, sequences: int) -> tuple[float, float]:
    """Mean strokes (putts by their expectation) and variance of plain scores, in parts that fit in memory."""
    part = 200_000
    means, spreads = [], []
    for k in range(max(sequences // part, 1)):
        run = case.play(action, seed + 10_000 * (k + 1), part, threads=default_threads())
        means.append(run.expected.mean())
        spreads.append(run.score.var(ddof=1))
    return float(np.mean(means)), float(np.mean(spreads))


def measure(short: bool) -> list[Row]:
    """Truth from two long plain samples; 2,000 small runs, or 200 in the short form."""
    repeats, strikes = (200, 64) if short else (2_000, 64)
    rows: list[Row] = []
    for player in ("isolde",) if short else ("isolde", "barnaby"):
        one = case("withy-drain", load_hole("withy-drain"), player)
        figures, errors, margins = np.moveaxis(small_runs(one, repeats, strikes), -1, 0)
        long = 400_000 if short else 4_000_000
        means, spreads = zip(
            *(plain_sample(one, a, 77 + k, long) for k, a in enumerate(_choices(one))), strict=True
        )
        truth = np.array([means[0], means[0] - means[1]])
        independent = sum(spreads) / SEQUENCES
        ours = figures[:, 1].var(ddof=1)
        part = f"sureness: {player}, withy-drain, {repeats:,} runs of {SEQUENCES} sequences"
        rows.append(Row(part, "driver minus 3-wood", float(truth[1]), "strokes"))
        rows.append(
            Row(part, "variance, plain independent over ours", independent / ours, "times", 5.0, True)
        )
        for k, what in enumerate(("driver's score", "difference")):
            covered = 100.0 * float(np.mean(np.abs(figures[:, k] - truth[k]) <= margins[:, k]))
            # 200 runs know a share of 95 % to 1.5 points: the short form allows three of them more
            slack = 4.6 if short else 0.0
            rows += [
                Row(part, f"95 % intervals of the {what} that hold", covered, "%", 93.0 - slack, True),
                Row(part, "  and not more than", covered, "%", 97.0 + slack),
                Row(part, f"stated error of the {what} over the real one",
                    float(np.sqrt(np.mean(errors[:, k] ** 2)) / figures[:, k].std(ddof=1)), ""),
            ]  # fmt: skip
    return rows
