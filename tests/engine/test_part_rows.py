"""Which club plays a part swing: what the answer tells and what the kernel swings are one row."""

from __future__ import annotations

import math

import numpy as np
import pytest
from from_python import from_python

from simulator import load_hole, load_player
from simulator.engine import PART_SWING, PUNCH_SWING
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.kernels.shot import intended_shot
from simulator.tables.bag import make_bag
from simulator.tables.game import Board, make_board
from simulator.tables.rasters import ground_raster

intended_shot = from_python(intended_shot)


@pytest.fixture(scope="module")
def board() -> Board:
    hole = load_hole("eel-trap")
    raster = ground_raster(hole, 1.0)
    return make_board(hole, make_bag(load_player("barnaby"), None, raster, 2), raster)


@pytest.mark.parametrize("lie", [Lie.FAIRWAY, Lie.ROUGH, Lie.BUNKER])
@pytest.mark.parametrize("code", [PART_SWING, PUNCH_SWING])
def test_the_row_that_is_told_is_the_row_that_is_played(board: Board, lie: Lie, code: float) -> None:
    """Carries of every kind, and at and a hair beside the very carries at which one row ends and the next begins."""
    shots, strikes = board.bag.shots, board.game.strikes
    rows = range(*shots.families[int(-code) - 1])
    ends = [float(strikes[k, lie, c.STRIKE_CARRY] * strikes[k, lie, c.STRIKE_FRACTION]) for k in rows]
    beside = [near for end in ends for near in (math.nextafter(end, 0.0), end, math.nextafter(end, math.inf))]
    found = set()
    for distance in (31.0, 57.3, 120.0 / 7.0, 164.2):
        for carry in (*np.linspace(2.0, 1.2 * max(ends), 37), *beside):
            reach = float(carry) - distance
            told = board.part_row(code, lie, distance + reach)
            assert told == intended_shot(board.game.ground.numbers, strikes, int(lie), code, reach, distance)[0], carry
            found.add(told)
    assert len(found) > len(rows) / 2


def test_where_no_action_is_known_a_part_swing_is_played(board: Board) -> None:
    """Off the map's ground there is none: the row was read past the end of the numbers, and every answer differed."""
    numbers, strikes = board.game.ground.numbers, board.game.strikes
    for distance in (20.0, 60.0):
        none, part = (
            intended_shot(numbers, strikes, int(Lie.ROUGH), code, 0.0, distance) for code in (c.NO_SHOT, PART_SWING)
        )
        assert none == part
