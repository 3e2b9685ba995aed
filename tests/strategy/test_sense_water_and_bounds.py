"""Sense: water nearer the landing zone takes the driver away once; worse ground beside it turns the aim."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from small_games import hole_of
from solved import THREADS, bag_named, club_of, searched, solved, straight_hole, tee

from simulator.strategy.result import TIE_STROKES
from simulator.tables.luck import strike_sets

COARSE_YD, FINE_YD = 16.0, 7.0
"""Node spacings: what is looked at here is ten times what a finer map moves."""

WIDE = "left_yd = -200, right_yd = 200"

LAKES = {
    # the near edge of a lake that nobody carries, moved back towards the driver's landing place: with the
    # shorter club everything stays dry until the edge comes within its own run
    "near edge": ("4-hybrid", [300, 280, 268, 256, 246, 235], "from_yd = {edge}, to_yd = {edge} + 42"),
    # the far edge of a lake that begins at 165, moved up towards the driver's carry of 224: the shorter
    # club stays short of it
    "far edge": ("7-iron", [175, 192, 203, 210, 217, 223], "from_yd = 165, to_yd = {edge}"),
}


@pytest.mark.parametrize("which", LAKES)
def test_water_nearer_the_landing_zone_flips_the_driver_once(which: str) -> None:
    """Driver minus shorter club on the map, best aim of each: its sign, outside +-0.01, changes once.

    """
    shorter, edges, band = LAKES[which]
    differences = []
    for edge in edges:
        inner = band.replace("{edge} + 42", str(edge + 42)).format(edge=edge)
        water = f'penalty_area = [{{ name = "lake", colour = "yellow", {inner}, {WIDE} }}]'
        hole = hole_of(straight_hole(400, water))
        board = solved(hole, bag_named("isolde"), coarse_yd=COARSE_YD, fine_yd=FINE_YD)
        scores = {club_of(board, choice): choice.score for choice in searched(board, ("driver", shorter))[0]}
        differences.append(scores["driver"] - scores[shorter])
    signs = [np.sign(d) for d in differences if abs(d) > 0.01]
    flips = sum(a != b for a, b in pairwise(signs))
    assert (signs[0], signs[-1], flips) == (-1, 1, 1), np.round(differences, 3)


BESIDE = {
    "nothing": "",
    "bunker": 'bunker = [{ name = "it", AREA }]',
    "red": 'penalty_area = [{ name = "it", colour = "red", AREA }]',
    "out": 'out_of_bounds = [{ name = "it", AREA }]',
}

AIMS_DEG = np.arange(-18.0, 10.01, 0.5)


def middle_of_tie_band(scores: np.ndarray) -> float:
    """Aim [deg] in the middle of those within the tie band of the best, weighted by how far inside.

    The bottom of the curve is flat: its lowest point wanders by degrees with the luck, the centre of
    mass of what lies below best + TIE_STROKES does not.
    """
    weight = np.maximum(scores.min() + TIE_STROKES - scores, 0.0)
    return float(weight @ AIMS_DEG / weight.sum())


@pytest.mark.parametrize(
    ("who", "length_yd", "right_yd"),
    [("isolde", 400, 20), pytest.param("barnaby", 380, 14, marks=pytest.mark.slow)],
)
def test_worse_ground_on_the_right_turns_the_aim_farther_left(
    who: str, length_yd: float, right_yd: float
) -> None:
    """Out of bounds turns the driver's aim more than a red penalty area, that more than a bunker.

    Same outline each time. The middle of the tie band is taken for each of 16 scrambles of 256 strikes;
    each step must exceed three standard errors of the difference of two means.
    """
    middles = {}
    for kind, text in BESIDE.items():
        area = f"from_yd = 150, to_yd = 300, left_yd = {right_yd}, right_yd = 100"
        hole = hole_of(straight_hole(length_yd, text.replace("AREA", area)))
        board = solved(hole, bag_named(who), coarse_yd=COARSE_YD, fine_yd=FINE_YD)
        place = tee(board)
        row = next(k for k in board.allowed(place.lie) if board.bag.shots.shots[k].club.name == "driver")
        actions = np.column_stack(
            [np.full(AIMS_DEG.size, row), np.radians(AIMS_DEG), np.zeros(AIMS_DEG.size)]
        )
        start = searched(board)[1]
        values = place.values(actions, start, strike_sets(99, 16, 256))
        scores = values[..., 0] / (1.0 - values[..., 1])
        each = [middle_of_tie_band(scores[:, k]) for k in range(scores.shape[1])]
        middles[kind] = (np.mean(each), np.std(each, ddof=1) / 4.0)
    turns = [middles[kind] for kind in ("nothing", "bunker", "red", "out")]
    for (less, error), (more, other) in pairwise(turns):
        assert less - more > max(3.0 * math.hypot(error, other), 0.5), middles


def test_the_bench_uses_threads_that_do_not_matter() -> None:
    """The boards of these tests are solved on two threads: one gives the same map bit for bit."""
    import solved as bench

    hole = hole_of(straight_hole(300))
    two = solved(hole, bag_named("isolde"), coarse_yd=16.0, fine_yd=7.0)
    bench.THREADS, kept = 1, THREADS
    try:
        one = solved(hole, bag_named("isolde"), coarse_yd=16.0, fine_yd=7.0)
    finally:
        bench.THREADS = kept
    assert np.array_equal(one.game.field.coarse, two.game.field.coarse, equal_nan=True)
    assert np.array_equal(one.game.field.fine, two.game.field.fine, equal_nan=True)
