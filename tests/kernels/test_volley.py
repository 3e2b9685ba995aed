"""Balls of a volley keep out of each other's way: each ends as it would alone, whoever is beside it."""

import numba
import numpy as np
import pytest
from one_ball import run_out
from small_games import bag_of, straight_hole, with_relief

from simulator.hole.surfaces import Surface
from simulator.kernels import codes as c
from simulator.kernels import volley as v
from simulator.kernels.rest import bring_down, come_to_rest
from simulator.tables.game import make_board

COUNTS = (1, 2, 3, 7, v.TOGETHER - 1, v.TOGETHER)


def _come_down(ground, landings, balls):
    for ball in range(landings.shape[0]):
        x, y, vx, vy, down, spin = landings[ball]
        balls[v.ENTRY_X + np.uintp(ball)] = np.nan
        bring_down(balls, ball, x, y, vx, vy, down, spin)
    come_to_rest(ground, balls, landings.shape[0])


come_down = _come_down if numba.config.DISABLE_JIT else numba.njit(error_model="numpy")(_come_down)


@pytest.fixture(scope="module", params=["level", "hilly"])
def ground(request):
    """A burn across a fairway, a pond beside it, sand and woods; level, or on a slope that bends."""
    hole = straight_hole(
        300,
        more="""
fairway = [{ from_yd = 60, to_yd = 250, left_yd = -15, right_yd = 15 }]
penalty_area = [
  { name = "burn", colour = "red", from_yd = 130, to_yd = 134, left_yd = -40, right_yd = 40 },
  { name = "ditch", colour = "red", playable = true, from_yd = 170, to_yd = 176, left_yd = -40, right_yd = 40 },
]
bunker = [{ at_yd = 200, offset_yd = 0, depth_yd = 12, width_yd = 8 }]
out_of_bounds = [{ right_of_yd = 32 }]
""",
    )
    board = make_board(hole, bag_of("isolde"), coarse_yd=40, fine_yd=25)
    if request.param == "hilly":
        board = with_relief(board, lambda x, y: 3.0 * np.sin(x / 25.0) + 4.0 * np.cos(y / 40.0))
    return board.game.ground


def landings(count: int, seed: int) -> np.ndarray:
    """Places, velocities [yd/s] and spins [rad/s] of every kind of ball, running, biting, spinning back."""
    rng = np.random.default_rng(seed)
    return np.column_stack(
        [
            rng.uniform(-30.0, 30.0, count), rng.uniform(90.0, 240.0, count),
            rng.normal(0.0, 3.0, count), rng.uniform(2.0, 30.0, count),
            rng.uniform(0.5, 30.0, count), rng.uniform(0.0, 1000.0, count),
        ]
    )  # fmt: skip


def test_together_as_alone(ground):
    balls = np.empty(v.ROOM)
    entered = wet = back = 0
    for seed, count in enumerate(COUNTS * 4):
        balls[:] = 1e9  # what the volley before left there is nothing to this one
        down = landings(count, seed)
        come_down(ground, down, balls)
        for ball in range(count):
            x, y, entry_x, entry_y, went_in, head_x, head_y, roll = run_out(ground, *down[ball])
            at = balls[np.array([v.REST_X, v.REST_Y, v.HEAD_X, v.HEAD_Y, v.ROLL, v.ENTRY_X]) + np.uintp(ball)]
            assert np.array_equal(at, [x, y, head_x, head_y, roll, entry_x], equal_nan=True)
            assert not went_in or balls[v.ENTRY_Y + np.uintp(ball)] == entry_y
            entered += went_in
            code = ground.surface[
                int((y - ground.numbers[c.RASTER_Y0]) * ground.numbers[c.RASTER_PER_YD]),
                int((x - ground.numbers[c.RASTER_X0]) * ground.numbers[c.RASTER_PER_YD]),
            ]
            wet += code == Surface.WATER
            back += (y - down[ball, 1]) * down[ball, 3] < 0.0
    assert min(entered, wet, back) > 5  # balls of every kind were among them


def test_a_ball_that_goes_in_on_the_ground_is_dropped_where_it_crossed(ground):
    balls = np.empty(v.ROOM)
    down = np.array([[0.0, 110.0 + ball / 4.0, 0.0, 18.0, 5.0, 100.0] for ball in range(v.TOGETHER)])
    come_down(ground, down, balls)
    places = np.arange(v.TOGETHER, dtype=np.uintp)
    into = ~np.isnan(balls[v.ENTRY_X + places])
    assert into.sum() > 30
    crossed = balls[v.ENTRY_Y + places][into]
    cell = ground.numbers[c.RASTER_CELL]
    assert np.all((crossed >= 130.0 - 2.0 * cell) & (crossed <= 130.0 + cell))
