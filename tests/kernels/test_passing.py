"""A volley past trees: no crown is passed on the way to the first, and each ball ends as it would alone."""

import numba
import numpy as np
import pytest
from small_games import bag_for, hole_of

from simulator.conditions import Conditions, Wind
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.kernels import volley as v
from simulator.kernels.descent import come_down
from simulator.kernels.game import Luck
from simulator.kernels.passing import past_trees, walk_to_trees
from simulator.kernels.shot import strike
from simulator.kernels.trees import NO_HIT
from simulator.tables.game import Board, make_board

WOODS = """
name = "woods"
par = 4
length_yd = 400
green = [{ front_yd = 385, depth_yd = 30, width_yd = 30 }]
trees = [
  { from_yd = 20, to_yd = 120, left_yd = -70, right_yd = -18, height_yd = 14, base_yd = 2, hit_length_yd = 6 },
  { from_yd = 90, to_yd = 110, left_yd = 4, right_yd = 12, height_yd = 22, base_yd = 3, hit_length_yd = 5 },
  { from_yd = 180, to_yd = 260, left_yd = 20, right_yd = 60, height_yd = 18, base_yd = 1, hit_length_yd = 4 },
]
heights_yd = [[0, 0, 0], [100, -50, 6], [100, 50, -3], [200, 0, 4], [400, -60, 0], [400, 60, 2]]
"""
ROUGH = int(Lie.ROUGH)
PASSED = [int(column) for column in (v.LAND_X, v.LAND_Y, v.ALONG, v.SIDE, v.BRANCH, v.ENTRY_X, v.VX, v.VY, v.DOWN)]


def _compiled(function):
    return function if numba.config.DISABLE_JIT else numba.njit(error_model="numpy")(function)


@_compiled
def _strike(game, places, shots, lines, luck, balls):
    for ball in range(shots.shape[0]):
        own = luck[ball]
        strike(
            game, balls, ball, places[ball, 0], places[ball, 1], ROUGH, shots[ball],
            lines[ball, 0], lines[ball, 1], 0.0, 1.0,
            Luck(own[0], own[1], own[2], own[3], own[4], own[5], own[6], own[7], own[8], own[9]),
        )  # fmt: skip
    come_down(game, balls, shots.shape[0])


@_compiled
def _pass(game, count, balls):
    past_trees(game, balls, count)


@_compiled
def _walk(game, count, balls):
    walk_to_trees(game.ground.numbers, game.trees.clear, balls, count)


@pytest.fixture(scope="module", params=["calm", "windy"])
def board(request) -> Board:
    hole = hole_of(WOODS)
    day = Conditions(wind=Wind(15.0, 70.0)) if request.param == "windy" else Conditions()
    return make_board(hole, bag_for("barnaby", hole, day), coarse_yd=40, fine_yd=25)


def volley(board: Board, seed: int, count: int) -> tuple[np.ndarray, ...]:
    """Places, shots, start lines and luck of balls all over the woods."""
    rng = np.random.default_rng(seed)
    places = np.column_stack([rng.uniform(-25.0, 30.0, count), rng.uniform(0.0, 180.0, count)])
    bearings = rng.normal(0.0, 0.3, count)
    luck = rng.normal(size=(count, 10))
    luck[:, 0], luck[:, 7:] = rng.uniform(size=count), rng.uniform(size=(count, 3))
    wind = board.bag.conditions.wind
    luck[:, 5:7] = 0.0
    if wind is not None:
        numbers = board.game.ground.numbers
        blows = numbers[c.WIND_BEARING]
        luck[:, 5:7] = numbers[c.WIND_SPEED] * np.array([np.sin(blows), np.cos(blows)])
    shots = rng.integers(0, board.bag.shots.first_part, count)
    return places, shots, np.column_stack([np.sin(bearings), np.cos(bearings)]), luck


def test_no_crown_is_passed_on_the_way_to_the_first(board: Board) -> None:
    # by hand on the canopy itself, every quarter of a yard
    game, balls, near, clear = board.game, np.empty(v.ROOM), 0, 0
    numbers, canopy = game.ground.numbers, game.trees.canopy
    at = np.arange(v.TOGETHER)
    for seed in range(6):
        places, shots, lines, luck = volley(board, seed, v.TOGETHER)
        _strike(game, places, shots, lines, luck, balls)
        along, side = balls[int(v.ALONG) + at], balls[int(v.SIDE) + at]
        line = np.stack([balls[int(v.LINE_X) + at], balls[int(v.LINE_Y) + at]], axis=1)
        _walk(game, v.TOGETHER, balls)
        for ball, first in enumerate(balls[int(v.NEAR) + at]):
            way = np.arange(0.0, min(first, along[ball]), 0.25)
            off = side[ball] * (way / along[ball]) ** 2
            x = places[ball, 0] + way * line[ball, 0] + off * line[ball, 1]
            y = places[ball, 1] + way * line[ball, 1] - off * line[ball, 0]
            column = ((x - numbers[c.RASTER_X0]) * numbers[c.RASTER_PER_YD]).astype(int)
            row = ((y - numbers[c.RASTER_Y0]) * numbers[c.RASTER_PER_YD]).astype(int)
            rows, columns = canopy.shape
            assert not canopy[np.clip(row, 0, rows - 1), np.clip(column, 0, columns - 1)].any()
            near, clear = near + (first < NO_HIT), clear + (first == NO_HIT)
    assert min(near, clear) > 50


@pytest.mark.parametrize("count", [1, 2, 7, v.TOGETHER])
def test_together_as_alone(board: Board, count: int) -> None:
    balls, alone, hit = np.empty(v.ROOM), np.empty(v.ROOM), 0
    for seed in range(3):
        struck = volley(board, 100 + seed, count)
        balls[:] = alone[:] = 1e9  # what was there before is nothing to these
        _strike(board.game, *struck, balls)
        _pass(board.game, count, balls)
        for ball in range(count):
            _strike(board.game, *(one[ball : ball + 1] for one in struck), alone)
            _pass(board.game, 1, alone)
            for column in PASSED:
                assert balls[column + ball] == alone[column]
            hit += balls[int(v.BRANCH) + ball] == 1.0
    assert hit > 20 or count < v.TOGETHER
