"""Flight tables: what they hold, how finely, and that compiled and plain agree."""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys

import numpy as np
import pytest
from from_python import from_python

from simulator.kernels.flight import TRACK_POINTS, Axes, Launches, fill_flights
from simulator.kernels.trajectory import FAN, FAN_ROOM, MAX_STEPS, come_down, fly_fan, fly_one
from simulator.tables.airs import flight_air

fly_fan, come_down = from_python(fly_fan), from_python(come_down)

STILL = flight_air()
WINDY = flight_air(wind_x_mps=5.0, wind_y_mps=-4.0)
FRACTIONS = np.linspace(0.45, 1.15, 15)
TILTS = np.radians(np.linspace(-24.0, 24.0, 9))
CARRIES = np.array([150.0, 240.0])
GRID_START, GRID_STEP = 20.0, 5.0
LAUNCHES = np.array([np.linspace(0.34, 0.24, 15), np.linspace(0.24, 0.18, 15)])
SPINS = np.array([np.linspace(500.0, 850.0, 15), np.linspace(250.0, 290.0, 15)])


def wind_of(air, bearing):
    """Along and cross wind of a strike on a bearing."""
    sine, cosine = math.sin(bearing), math.cos(bearing)
    return air.wind_x * sine + air.wind_y * cosine, air.wind_x * cosine - air.wind_y * sine


def filled(air, alongs, crosses, heights, fractions=FRACTIONS, tilts=TILTS):
    alongs, crosses, heights = (np.array(nodes, float) for nodes in (alongs, crosses, heights))
    lead = (CARRIES.size, alongs.size, crosses.size, fractions.size, tilts.size)
    out = np.full((*lead, heights.size, 6), np.nan, np.float32)
    tracks = np.full((*lead, TRACK_POINTS, 2), np.nan, np.float32)
    speeds = np.zeros((CARRIES.size, fractions.size))
    fill_flights(
        STILL, air, Launches(LAUNCHES, SPINS, np.ones(len(CARRIES)), GRID_START, GRID_STEP), CARRIES,
        Axes(fractions, tilts, *np.meshgrid(alongs, crosses, indexing="ij"), heights), 0, CARRIES.size,
        out, tracks, speeds,
    )  # fmt: skip
    return out, tracks, speeds


def strike(shot, speed, stock):
    """Launch and spin of a strike at `speed`: the stock strike's launch, spin in proportion to speed."""
    grid = GRID_START + GRID_STEP * np.arange(15)
    return speed, np.interp(stock, grid, LAUNCHES[shot]), np.interp(stock, grid, SPINS[shot]) * speed / stock


def stock_speeds():
    return filled(STILL, [0.0], [0.0], [0.0], fractions=np.array([1.0]))[2][:, 0]


def test_still_air_carries_are_the_asked_ones():
    out, tracks, _ = filled(STILL, [0.0], [0.0], [0.0])
    assert np.all(np.isfinite(out)) and np.all(np.isfinite(tracks))
    assert np.allclose(out[:, 0, 0, :, 4, 0, 0], CARRIES[:, None] * FRACTIONS, atol=1e-3)
    assert np.allclose(out[:, 0, 0, :, 4, 0, 1], 0.0, atol=1e-9)  # untilted: straight


@pytest.mark.parametrize("bearing", [0.0, 0.7, -2.0])
def test_table_nodes_are_single_strikes(bearing):
    heights = np.array([-20.0, 0.0, 8.0])
    along, cross = wind_of(WINDY, bearing)
    # other nodes beside it: each is flown in its own wind, and the air's own wind is not used
    out, _, speeds = filled(WINDY, [along - 3.0, along], [0.0, cross, 9.0], heights)
    stock = stock_speeds()
    for shot, f, t in ((0, 3, 0), (0, 14, 6), (1, 0, 4), (1, 9, 8)):
        landing = np.empty((3, 6))
        fly_one(WINDY, *strike(shot, speeds[shot, f], stock[shot]), TILTS[t], bearing, heights, landing)
        assert np.allclose(out[shot, 1, 1, f, t], landing, rtol=1e-5, atol=1e-3)


def test_heights_flown_together_equal_heights_flown_alone():
    heights = np.array([5.0, -30.0, 0.0])
    together = np.empty((3, 6))
    fly_one(WINDY, 60.0, 0.3, 500.0, 0.1, 0.4, heights, together)
    for j, height in enumerate(heights):
        alone = np.empty((1, 6))
        fly_one(WINDY, 60.0, 0.3, 500.0, 0.1, 0.4, np.array([height]), alone)
        assert np.allclose(together[j], alone[0], rtol=0, atol=1e-12)
    assert together[0, 0] < together[2, 0] < together[1, 0]


def test_a_height_never_reached_is_flagged_at_the_top():
    landing = np.empty((2, 6))
    apex = fly_one(STILL, 60.0, 0.3, 500.0, 0.0, 0.0, np.array([0.0, 500.0]), landing)
    assert landing[1, 4] == 0.0 and 0.0 < landing[1, 0] < landing[0, 0]
    low = np.empty((1, 6))
    fly_one(STILL, 60.0, 0.3, 500.0, 0.0, 0.0, np.array([apex - 0.01]), low)
    assert low[0, 4] > 0.0 and low[0, 0] == pytest.approx(landing[1, 0], abs=3.0)


def test_interpolation_between_nodes():
    """Linear in carry share and tilt between 15 x 9 nodes, in wind, against strikes flown in between."""
    along, cross = wind_of(WINDY, 0.3)
    out, _, _ = filled(WINDY, [along], [cross], [4.0])
    luck = np.random.default_rng(5)
    stock = stock_speeds()
    worst = 0.0
    for _ in range(60):
        shot, share, tilt = int(luck.integers(2)), luck.uniform(0.5, 1.1), luck.uniform(TILTS[0], TILTS[-1])
        speed = filled(STILL, [0.0], [0.0], [0.0], fractions=np.array([share]), tilts=np.zeros(1))[2][shot, 0]
        landing = np.empty((1, 6))
        fly_one(WINDY, *strike(shot, speed, stock[shot]), tilt, 0.3, np.array([4.0]), landing)
        f, t = np.interp(share, FRACTIONS, np.arange(15.0)), np.interp(tilt, TILTS, np.arange(9.0))
        i, j = int(f), int(t)
        a, b = f - i, t - j
        table = out[shot, 0, 0, :, :, 0]
        between = (1 - a) * ((1 - b) * table[i, j] + b * table[i, j + 1]) + a * (
            (1 - b) * table[i + 1, j] + b * table[i + 1, j + 1]
        )
        worst = max(worst, float(np.abs(between[:2] - landing[0, :2]).max()))
    assert worst < 0.3  # yd


def test_bearing_turns_the_wind():
    """A strike on bearing b in wind w lands, seen along its line, as one straight ahead in w turned by -b."""
    bearing = 0.9
    x, y = 5.0, -4.0
    turned = flight_air(
        wind_x_mps=x * math.cos(bearing) - y * math.sin(bearing),
        wind_y_mps=x * math.sin(bearing) + y * math.cos(bearing),
    )
    one, other = np.empty((1, 6)), np.empty((1, 6))
    fly_one(WINDY, 65.0, 0.25, 450.0, 0.1, bearing, np.zeros(1), one)
    fly_one(turned, 65.0, 0.25, 450.0, 0.1, 0.0, np.zeros(1), other)
    assert np.allclose(one, other, atol=1e-9)
    # clockwise from +y: struck due +x (90 degrees) into a wind from +x, the ball is held up
    against = flight_air(wind_x_mps=-5.0)
    fly_one(against, 65.0, 0.25, 450.0, 0.0, math.pi / 2, np.zeros(1), one)
    fly_one(STILL, 65.0, 0.25, 450.0, 0.0, math.pi / 2, np.zeros(1), other)
    assert one[0, 0] < other[0, 0] - 10.0 and abs(one[0, 1]) < 1e-9


def test_mirror():
    mirrored = flight_air(wind_x_mps=-5.0, wind_y_mps=-4.0)
    one, other = np.empty((1, 6)), np.empty((1, 6))
    fly_one(WINDY, 65.0, 0.25, 450.0, 0.15, 0.0, np.zeros(1), one)
    fly_one(mirrored, 65.0, 0.25, 450.0, -0.15, 0.0, np.zeros(1), other)
    assert np.allclose(one * [1, -1, 1, -1, 1, 1], other, rtol=0, atol=1e-11)
    assert one[0, 1] > 5.0  # positive tilt and wind to the right: to the right


def test_track_lies_on_the_path():
    along, side = wind_of(WINDY, 0.3)
    _, tracks, speeds = filled(WINDY, [along], [side], [-10.0, 4.0])
    shot, f, t = 1, 10, 7
    fan, landing = np.empty((MAX_STEPS + 1, 6, FAN)), np.empty((1, 6))
    speed, launch, spin = strike(shot, speeds[shot, f], stock_speeds()[shot])
    flown = fly_fan(WINDY, speed, launch, spin, TILTS[t : t + 1], side, along, -10.0, np.empty(FAN_ROOM), fan)
    _, steps, _ = come_down(WINDY, speed, spin, np.array([-10.0]), -10.0, flown, 0, fan, landing)
    path = fan[:, :, 0]
    track = tracks[shot, 0, 0, f, t]
    assert track[-1] == pytest.approx([landing[0, 1], -10.0], abs=1e-3)
    for k in range(TRACK_POINTS):
        at = landing[0, 0] * (k + 1) / TRACK_POINTS
        # straight lines between steps of 0.1 s bow by less than 0.02 yd
        assert track[k, 0] == pytest.approx(
            np.interp(at, path[: steps + 1, 1], path[: steps + 1, 0]), abs=0.02
        )
        assert track[k, 1] == pytest.approx(
            np.interp(at, path[: steps + 1, 1], path[: steps + 1, 2]), abs=0.02
        )


def test_a_fan_flies_each_flight_as_it_would_fly_alone():
    tilts = np.radians(np.linspace(-60.0, 60.0, FAN))
    together, alone = np.empty((2, MAX_STEPS + 1, 6, FAN))
    room = np.empty(FAN_ROOM)
    for air in (STILL, WINDY):
        steps = fly_fan(air, 70.0, 0.25, 600.0, tilts, 4.0, -6.0, 0.0, room, together)
        for n in range(FAN):
            room[:], alone[:] = 1e9, 1e9  # what was flown in it before is nothing to this one
            its_steps = fly_fan(air, 70.0, 0.25, 600.0, tilts[n : n + 1], 4.0, -6.0, 0.0, room, alone)
            assert its_steps <= steps
            assert np.array_equal(together[: its_steps + 1, :, n], alone[: its_steps + 1, :, 0])


def test_smaller_steps_land_in_the_same_place():
    fine = WINDY._replace(step_s=0.02)
    for speed, launch, spin in ((85.0, 0.18, 260.0), (55.0, 0.35, 800.0), (20.0, 0.6, 500.0)):
        one, other = np.empty((1, 6)), np.empty((1, 6))
        fly_one(WINDY, speed, launch, spin, 0.2, 0.0, np.array([-3.0]), one)
        fly_one(fine, speed, launch, spin, 0.2, 0.0, np.array([-3.0]), other)
        assert np.allclose(one[0, :2], other[0, :2], rtol=0, atol=0.01)
        assert np.allclose(one[0, 2:5], other[0, 2:5], rtol=0, atol=0.02)


PLAIN = """
import json
import numpy as np
from simulator.kernels.trajectory import fly_one
from simulator.tables.airs import flight_air
landing = np.empty((2, 6))
air = flight_air(wind_x_mps=5.0, wind_y_mps=-4.0, roughness_m=0.03)
apex = fly_one(air, 60.0, 0.3, 500.0, 0.1, 0.4, np.array([0.0, 6.0]), landing)
print(json.dumps([apex, landing.tolist()]))
"""


def test_without_the_compiler():
    environment = {**os.environ, "NUMBA_DISABLE_JIT": "1"}
    command = [sys.executable, "-c", PLAIN]
    plain = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
    apex, rows = json.loads(plain.stdout)
    landing = np.empty((2, 6))
    air = flight_air(wind_x_mps=5.0, wind_y_mps=-4.0, roughness_m=0.03)
    assert fly_one(air, 60.0, 0.3, 500.0, 0.1, 0.4, np.array([0.0, 6.0]), landing) == pytest.approx(
        apex, abs=1e-9
    )
    assert np.allclose(landing, rows, rtol=0, atol=1e-8)
