"""The shot function on full axes: winds from every side, landing heights and slopes that are not zero."""

import math
from dataclasses import replace

import numpy as np
import pytest
from flight_reading import flight_read
from naive import Flights, strike
from small_games import CLUBS, THREE_CLUBS, bag_of, row_of, shot, straight_hole, with_relief

from simulator.hole.surfaces import Lie
from simulator.kernels.trajectory import fly_one
from simulator.physics.launch import launch
from simulator.tables.airs import flight_air
from simulator.tables.flights import TILTS_DEG, flight_tables, turn_per_tilt, wind_axes
from simulator.tables.game import make_board

HEIGHTS_YD = np.linspace(-16.0, 16.0, 5)
YD = 0.9144  # m, exact
MPS_PER_MPH = 0.44704  # exact
WIND_YDPS = 5.0 / YD


class Windy:
    """A wide plain hole with five landing heights and wind nodes up to 7 m/s, in one wind [yd/s]."""

    def __init__(self, board, wind):
        self.board, self.bag, self.game, self.wind = board, board.bag, board.game, wind

    def with_relief(self, height):
        return Windy(with_relief(self.board, height), self.wind)


@pytest.fixture(scope="module")
def board():
    still = bag_of(THREE_CLUBS)
    flights = flight_tables(
        still.shots, flight_air(), flight_air(), winds=wind_axes(3.5 / MPS_PER_MPH, 3.5 / MPS_PER_MPH),
        heights_yd=HEIGHTS_YD, threads=2,
    )  # fmt: skip
    return make_board(straight_hole(450), replace(still, flights=flights), coarse_yd=40, fine_yd=25)


@pytest.fixture(scope="module")
def calm():
    return Windy(make_board(straight_hole(450), bag_of(THREE_CLUBS), coarse_yd=40, fine_yd=25), (0.0, 0.0))


@pytest.fixture(scope="module")
def north(board):
    """A wind of 5 m/s (11 mph) blowing towards +y: from behind a shot at the pin."""
    return Windy(board, (0.0, WIND_YDPS))


@pytest.fixture(scope="module")
def east(board):
    return Windy(board, (WIND_YDPS, 0.0))


def test_table_reading_on_every_axis_against_scipy(north):
    # scipy's RegularGridInterpolator, multilinear as well; the kernel reads float32 nodes in float64.
    rng = np.random.default_rng(1)
    for name in CLUBS:
        row = row_of(north.bag, name)
        n = 400
        wind_x, wind_y = rng.uniform(-9, 9, n), rng.uniform(-9, 9, n)  # beyond the nodes too
        fraction, tilt = rng.uniform(0.05, 1.4, n), rng.uniform(-1.2, 1.2, n)
        node = rng.integers(HEIGHTS_YD.size, size=n)
        for k in range(n):
            twin = Flights(north.bag.flights, row, (wind_x[k], wind_y[k]))
            known = twin(0.0, fraction[k], tilt[k], HEIGHTS_YD[node[k]])
            mine = flight_read(
                north.game.numbers, north.game.flights, row, fraction[k], tilt[k], int(node[k]), wind_y[k],
                wind_x[k],
            )  # fmt: skip
            assert np.allclose(mine, known, rtol=2e-5, atol=2e-4), (name, k)


def test_nodes_of_the_wind_axes_are_the_winds_they_say(north):
    # Every node of wind along and across, flown anew from the launch laws in an air with that wind.
    tables, level = north.bag.flights, 2
    stock = 9
    for u, along in enumerate(tables.winds.u):
        for v, cross in enumerate(tables.winds.v):
            air = flight_air(wind_x_mps=cross * YD, wind_y_mps=along * YD)
            landing = np.empty((1, 6))
            for row in (row_of(north.bag, club) for club in CLUBS):
                mph = tables.speeds_mph[row, stock]
                launch_deg, rpm = launch(north.bag.shots.shots[row].club.kind, np.array([mph]))
                speed = mph * MPS_PER_MPH / YD
                spin = float(rpm[0]) * 2 * math.pi / 60
                fly_one(air, speed, math.radians(float(launch_deg[0])), spin, 0.0, 0.0, np.zeros(1), landing)
                mine = tables.flights[row, u, v, stock, TILTS_DEG.size // 2, level]
                # launch and spin come off a grid of speeds in the table, straight from the law here
                assert np.allclose(landing[0, :2], mine[:2], atol=0.05), (row, u, v)
                assert np.allclose(landing[0, 2:5], mine[2:5], atol=0.05), (row, u, v)


def land(windy, bearing_deg, club="7-iron", x=0.0, y=0.0, luck=(0.999999, 0.0, 0.0, 0.0, 0.0)):
    row = row_of(windy.bag, club)
    out = shot(windy.board, x, y, Lie.FAIRWAY, row, bearing_deg, luck=luck, wind=windy.wind)
    return out["land_x"] - x, out["land_y"] - y, out["rest_x"] - x, out["rest_y"] - y


def test_head_and_tail_wind(calm, north):
    still, tail = land(calm, 0.0)[1], land(north, 0.0)[1]
    head = -land(north, 180.0, y=300.0)[1]
    assert head < still < tail
    # Rule of thumb, common practice: 1 % a mile an hour against, half of it behind; a 7-iron in 11 mph.
    assert 0.06 < 1 - head / still < 0.18
    assert 0.03 < tail / still - 1 < 0.12
    assert still - head > tail - still


def test_cross_winds_mirror(north, east):
    # In the wind blowing to the right, starts 30 degrees either side of straight with and against it.
    right, carry, *_ = land(east, 0.0)
    assert right > 4.0
    for bearing in (0.0, 30.0, 75.0, 110.0, 160.0):
        a, b = land(north, bearing, x=0.0, y=150.0), land(north, -bearing, x=0.0, y=150.0)
        assert a[0] == pytest.approx(-b[0], abs=1e-3) and a[1] == pytest.approx(b[1], abs=1e-3)
        if 0.0 < bearing < 180.0:  # blown towards +y, so less than the start bearing says
            assert math.degrees(math.atan2(a[0], a[1])) < bearing
    # and the whole thing turned a quarter: a wind to the right of a shot up the hole is one to the left of
    # a shot at 180 degrees
    back = land(east, 180.0, y=300.0)
    assert back[0] == pytest.approx(right, abs=1e-3) and -back[1] == pytest.approx(carry, abs=1e-3)


def test_wind_turned_with_the_shot_changes_nothing(north, east):
    # Start and wind both turned 90 degrees clockwise: the landing turns with them.
    for bearing in (-20.0, 0.0, 40.0):
        a, b = land(north, bearing), land(east, bearing + 90.0, x=-100.0, y=200.0)
        assert (b[0], b[1]) == (pytest.approx(a[1], abs=2e-3), pytest.approx(-a[0], abs=2e-3))


def test_higher_ground_carries_shorter(north):
    # Landing h yards up on a plateau. By geometry h over the tangent of the angle of descent: 0.55 to 1.75 yd
    # a yard for 60 to 30 degrees, which a 7-iron's is with or without the tail wind of this board. (A yard a
    # yard, the common practice, is a descent of 45 degrees.)
    def plateau(height):
        step = north.with_relief(lambda x, y: height / (1 + np.exp(-(y - 60.0))) + 0.0 * x)
        return land(step, 0.0)[1]

    level = land(north, 0.0)[1]
    for height in (4.0, 8.0):
        assert 0.55 * height < level - plateau(height) < 1.75 * height
        assert 0.55 * height < plateau(-height) - level < 1.75 * height


def test_slope_through_the_shot(north):
    def finish(height, **more):
        return land(north.with_relief(height), 0.0, club="driver", **more)

    level = finish(lambda x, y: 1e-9 * y + 0.0 * x)
    plain = land(north, 0.0, club="driver")
    assert level == pytest.approx(plain, abs=1e-3)
    # a gentle rise from 150 yd on: lands higher, so shorter, and runs less
    rise = finish(lambda x, y: 0.04 * np.maximum(y - 150.0, 0.0) + 0.0 * x)
    fall = finish(lambda x, y: -0.04 * np.maximum(y - 150.0, 0.0) + 0.0 * x)
    run = [out[3] - out[1] for out in (rise, level, fall)]
    assert rise[1] < level[1] < fall[1]
    assert run[0] < run[1] - 1.0 < run[1] + 1.0 < run[2]
    # across: rises to the right, so the ball finishes left of where it came down; mirrored the other way
    a = finish(lambda x, y: 0.04 * x + 0.0 * y)
    b = finish(lambda x, y: -0.04 * x + 0.0 * y)
    assert a[2] < a[0] - 0.5
    assert a[2] == pytest.approx(-b[2], abs=2e-3) and a[3] == pytest.approx(b[3], abs=2e-3)


def test_landing_solves_its_own_height(north):
    # Landing on a slope, the carry must be the table's at the height of the place it comes down on.
    sloped = north.with_relief(lambda x, y: 0.05 * y + 0.0 * x)
    row, stock = row_of(north.bag, "driver"), 1.0
    across, up, *_ = land(sloped, 0.0, club="driver", luck=(0.999999, 0.4, 0.0, 0.6, 0.0))
    turn = turn_per_tilt(bag_of(THREE_CLUBS).flights.still)[row]
    hit = strike(north.bag.shots.shots[row], Lie.TEE, turn, stock, 0.0, 0.999999, 0.4, 0.0, 0.6, 0.0)
    twin = Flights(north.bag.flights, row, north.wind)
    height = 0.0
    for _ in range(50):
        along, side, *_ = twin(hit.start, hit.fraction, hit.tilt, height)
        x = along * math.sin(hit.start) + side * math.cos(hit.start)
        y = along * math.cos(hit.start) - side * math.sin(hit.start)
        height = 0.05 * y
    # The kernel finds the crossing itself, on a raster of one-yard cells read to the nearest: GAPNOTE
    assert (across, up) == (pytest.approx(x, abs=0.1), pytest.approx(y, abs=0.5))
