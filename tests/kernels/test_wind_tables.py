"""Flight tables read between their nodes in any wind, against the same strikes integrated directly."""

import math

import numpy as np
import pytest
from from_python import from_python
from small_games import CLUBS, THREE_CLUBS, bag_of, row_of, straight_hole, tell

from simulator.kernels import codes as c
from simulator.kernels.air import fly
from simulator.tables.airs import flight_air
from simulator.tables.flights import (
    FRACTIONS,
    TILTS_DEG,
    YDPS_PER_MPH,
    flight_tables,
    launches_of,
    wind_axes,
)  # fmt: skip
from simulator.tables.game import make_board
from simulator.tables.landings import axes, landings

fly = from_python(fly)

MOST_MPH = 25.0
# quoted at 10 m over open grass of 3 cm roughness: the log law of the wind (textbook)
AIR = flight_air(wind_height_m=10.0, roughness_m=0.03)


@pytest.fixture(scope="module", params=[MOST_MPH, 10.0, 4.0])
def world(request):
    """(wind [mph], flight tables for it, numbers that describe their axes, rows of the clubs)."""
    bag = bag_of(THREE_CLUBS)
    tables = flight_tables(bag.shots, flight_air(), AIR, winds=wind_axes(request.param, 0.0), threads=2)
    numbers = make_board(straight_hole(400), bag, coarse_yd=40, fine_yd=25).game.numbers.copy()
    winds = tables.winds
    numbers[c.ALONG_0], numbers[c.ALONG_PER] = winds.along[0], 1.0 / (winds.along[1] - winds.along[0])
    numbers[c.CROSS_PER] = 1.0 / (winds.cross[1] - winds.cross[0])
    return request.param, tables, numbers, [row_of(bag, club) for club in CLUBS]


def direct(fraction, tilt, along, cross):
    """Landings of every club's strike, float[clubs, 6], integrated for itself: no table is read."""
    bag = bag_of(THREE_CLUBS)
    shots = bag.shots.shots[: bag.shots.first_part]
    carries = np.array([shot.carry_yd for shot in shots])
    strike = axes(*(np.array([node]) for node in (fraction, tilt, along, cross)))
    return landings(flight_air(), AIR, launches_of(shots, {}), carries, strike, 0, len(shots))[:, 0, 0, 0, 0, 0]


def read(world, row, fraction, tilt, along, cross):
    _, tables, numbers, _ = world
    return fly(numbers, tables.flights, row, fraction, tilt, 0, along, cross)


def test_between_the_nodes_in_any_wind(world):
    # Every bearing of the wind, up to its full speed, 0.6 to 1.15 of the carry, 25 degrees of tilt either way.
    # Half a yard is a tenth of the spread of a wedge, the least spread there is.
    most, _, _, rows = world
    rng = np.random.default_rng(12)
    gaps = []
    for _ in range(250):
        speed, bearing = rng.uniform(0.0, most) * YDPS_PER_MPH, rng.uniform(0.0, 2.0 * math.pi)
        fraction, tilt = rng.uniform(0.6, 1.15), math.radians(rng.uniform(-25.0, 25.0))
        along, cross = speed * math.cos(bearing), speed * math.sin(bearing)
        known = direct(fraction, tilt, along, cross)
        gaps.append([
            math.dist(read(world, row, fraction, tilt, along, cross)[:2], known[row, :2]) for row in rows
        ])  # fmt: skip
    gaps = np.array(gaps)
    for club, gap in zip(CLUBS, gaps.T, strict=True):
        tell(f"{most:4.0f} mph {club:16s} rms {np.sqrt((gap**2).mean()):.3f} worst {gap.max():.3f} yd")
    assert gaps.max() <= 0.5


def test_between_the_nodes_of_the_wind_alone(world):
    # At nodes of carry and tilt: the error of the wind axes by themselves.
    most, _, _, rows = world
    rng, worst = np.random.default_rng(14), 0.0
    for _ in range(250):
        speed, bearing = rng.uniform(0.0, most) * YDPS_PER_MPH, rng.uniform(0.0, 2.0 * math.pi)
        f, t = (
            FRACTIONS[rng.integers(5, 11)],
            math.radians(TILTS_DEG[np.abs(TILTS_DEG) < 25.0][rng.integers(5)]),
        )
        along, cross = speed * math.cos(bearing), speed * math.sin(bearing)
        known = direct(f, t, along, cross)
        worst = max(worst, *(math.dist(read(world, r, f, t, along, cross)[:2], known[r, :2]) for r in rows))
    tell(f"{most:4.0f} mph, wind alone: worst {worst:.3f} yd")
    assert worst <= 0.5


def test_at_the_nodes_the_table_is_the_flight(world):
    # float32: 1e-5 of 250 yd
    _, tables, _, rows = world
    for along, cross in ((tables.winds.along[0], tables.winds.cross[-1]), (tables.winds.along[-2], 0.0)):
        for sign in (1.0, -1.0):
            f, t = FRACTIONS[8], math.radians(TILTS_DEG[7])
            known = direct(f, t, along, sign * cross)
            for row in rows:
                mine = read(world, row, f, t, along, sign * cross)
                assert np.allclose(mine, known[row], rtol=2e-5, atol=2e-3), (row, along, cross)


def test_wind_from_the_right_is_the_mirror_image(world):
    most, _, _, rows = world
    rng = np.random.default_rng(13)
    for _ in range(100):
        along, cross = rng.uniform(-1, 1, 2) * most * YDPS_PER_MPH
        fraction, tilt = rng.uniform(0.3, 1.2), rng.uniform(-0.9, 0.9)
        for row in rows:
            one = np.array(read(world, row, fraction, tilt, along, cross))
            other = np.array(read(world, row, fraction, -tilt, along, -cross))
            assert np.allclose(one * [1, -1, 1, -1, 1, 1], other, rtol=0.0, atol=1e-9)


def test_cross_wind_pushes_its_own_way_and_head_wind_costs_more_than_tail_wind_gives(world):
    most, _, _, rows = world
    wind = most * YDPS_PER_MPH
    for row in rows:
        still = read(world, row, 1.0, 0.0, 0.0, 0.0)
        assert abs(still[1]) < 1e-6
        assert read(world, row, 1.0, 0.0, 0.0, wind)[1] > 0.1 * most  # mph: more than 0.1 yd each
        head, tail = (read(world, row, 1.0, 0.0, sign * wind, 0.0)[0] for sign in (-1.0, 1.0))
        assert head < still[0] < tail and still[0] - head > tail - still[0]
