"""Flight tables read between their nodes in any wind, against the same strikes integrated directly."""

import math
from dataclasses import replace

import numpy as np
import pytest
from flight_reading import flight_read
from small_games import CLUBS, THREE_CLUBS, bag_of, row_of, straight_hole, tell

from simulator.tables.airs import flight_air
from simulator.tables.flights import FRACTIONS, TILTS_DEG, YDPS_PER_MPH, flight_tables, launches_of, wind_axes
from simulator.tables.game import make_board
from simulator.tables.landings import axes, landings
from simulator.tables.midway import flown_nodes

MOST_MPH = 25.0
# quoted at 10 m over open grass of 3 cm roughness: the log law of the wind (textbook)
AIR = flight_air(wind_height_m=10.0, roughness_m=0.03)


DAYS_MPH = [(most, least) for most in (MOST_MPH, 10.0, 4.0) for least in (0.0, most)]


@pytest.fixture(scope="module", params=DAYS_MPH, ids=str)
def world(request):
    """(most and least wind [mph], tables for any wind between, their axes' numbers, rows of the clubs)."""
    bag, (most, least) = bag_of(THREE_CLUBS), request.param
    winds = wind_axes(0.5 * (most + least), 0.5 * (most - least))
    assert winds.ring == (most == least)
    tables = flight_tables(bag.shots, flight_air(), AIR, winds=winds, threads=2)
    board = make_board(straight_hole(400), replace(bag, flights=tables), coarse_yd=40, fine_yd=25)
    return request.param, tables, board.game.numbers, [row_of(bag, club) for club in CLUBS]


def some_wind(world, rng):
    """Wind along and across a strike [yd/s], from any side."""
    most, least = world[0]
    speed, bearing = rng.uniform(least, most) * YDPS_PER_MPH, rng.uniform(-math.pi, math.pi)
    return speed * math.cos(bearing), speed * math.sin(bearing)


def direct(fraction, tilt, along, cross):
    """Landings of every club's strike, float[clubs, 6], integrated for itself: no table is read."""
    bag = bag_of(THREE_CLUBS)
    shots = bag.shots.shots[: bag.shots.first_part]
    carries = np.array([shot.carry_yd for shot in shots])
    strike = axes(np.array([fraction]), np.array([tilt]), along, cross)
    return landings(flight_air(), AIR, launches_of(shots, {}), carries, strike, 0, len(shots))[:, 0, 0, 0, 0, 0]


def read(world, row, fraction, tilt, along, cross):
    _, tables, numbers, _ = world
    return flight_read(numbers, tables.packed, row, fraction, tilt, 0, along, cross)


def test_between_the_nodes_in_any_wind(world):
    # Every bearing of the wind, up to its full speed, 0.6 to 1.15 of the carry, 25 degrees of tilt either way.
    # Half a yard is a tenth of the spread of a wedge, the least spread there is.
    most, rows = world[0], world[-1]
    rng = np.random.default_rng(12)
    gaps = []
    for _ in range(250):
        along, cross = some_wind(world, rng)
        fraction, tilt = rng.uniform(0.6, 1.15), math.radians(rng.uniform(-25.0, 25.0))
        known = direct(fraction, tilt, along, cross)
        gaps.append([
            math.dist(read(world, row, fraction, tilt, along, cross)[:2], known[row, :2]) for row in rows
        ])  # fmt: skip
    gaps = np.array(gaps)
    for club, gap in zip(CLUBS, gaps.T, strict=True):
        tell(f"{most} mph {club:16s} rms {np.sqrt((gap**2).mean()):.3f} worst {gap.max():.3f} yd")
    assert gaps.max() <= 0.5


def test_between_the_nodes_of_the_wind_alone(world):
    # At nodes of carry and tilt: the error of the wind axes by themselves.
    most, rows = world[0], world[-1]
    rng, worst = np.random.default_rng(14), 0.0
    for _ in range(250):
        along, cross = some_wind(world, rng)
        f, t = (
            FRACTIONS[rng.integers(5, 11)],
            math.radians(TILTS_DEG[np.abs(TILTS_DEG) < 25.0][rng.integers(5)]),
        )
        known = direct(f, t, along, cross)
        worst = max(worst, *(math.dist(read(world, r, f, t, along, cross)[:2], known[r, :2]) for r in rows))
    tell(f"{most} mph, wind alone: worst {worst:.3f} yd")
    assert worst <= 0.5


def test_at_the_nodes_the_table_is_the_flight(world):
    # float32: 1e-5 of 250 yd; midway between nodes that are flown a tenth of a yard more
    _, tables, _, rows = world
    alongs, crosses = tables.winds.winds
    some = tuple(flown_nodes(count) for count in alongs.shape)
    flown = np.zeros(alongs.shape, bool)
    flown[some] = True
    nodes = [*np.argwhere(flown)[[0, -1]], *np.argwhere(~flown)[:3], *np.argwhere(~flown)[-3:]]
    for node in map(tuple, nodes):
        more = 2e-3 if flown[node] else 0.1
        along, cross = float(alongs[node]), float(crosses[node])
        for sign in (1.0, -1.0):
            f, t = FRACTIONS[8], math.radians(TILTS_DEG[7])
            known = direct(f, t, along, sign * cross)
            for row in rows:
                mine = read(world, row, f, t, along, sign * cross)
                assert np.allclose(mine, known[row], rtol=2e-5, atol=more), (row, along, cross)


def test_wind_from_the_right_is_the_mirror_image(world):
    rows, rng = world[-1], np.random.default_rng(13)
    for _ in range(100):
        along, cross = some_wind(world, rng)
        fraction, tilt = rng.uniform(0.3, 1.2), rng.uniform(-0.9, 0.9)
        for row in rows:
            one = np.array(read(world, row, fraction, tilt, along, cross))
            other = np.array(read(world, row, fraction, -tilt, along, -cross))
            assert np.allclose(one * [1, -1, 1, -1, 1, 1], other, rtol=0.0, atol=1e-9)


def test_cross_wind_pushes_its_own_way_and_head_wind_costs_more_than_tail_wind_gives(world):
    (most, _), tables, _, rows = world
    wind = most * YDPS_PER_MPH
    for row in rows:
        still = tables.still[row, np.argmin(np.abs(FRACTIONS - 1.0)), np.argmin(np.abs(TILTS_DEG))]
        assert abs(still[1]) < 1e-6
        assert read(world, row, 1.0, 0.0, 0.0, wind)[1] > 0.1 * most  # mph: more than 0.1 yd each
        head, tail = (read(world, row, 1.0, 0.0, sign * wind, 0.0)[0] for sign in (-1.0, 1.0))
        assert head < still[0] < tail and still[0] - head > tail - still[0]
