"""Station and offset: there and back on bent lines, and areas along them against shapely's own buffers."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from simulator.hole import load_hole
from simulator.hole.line import PlayLine

BENT = PlayLine(np.array([[0.0, 0.0], [0.0, 200.0], [80.0, 320.0], [60.0, 460.0]]))
TURNS = st.floats(-60.0, 60.0)


def bent_line(lengths, turns):
    xy, heading = [np.zeros(2)], 0.0
    for length, turn in zip(lengths, [0.0, *turns], strict=True):
        heading += math.radians(turn)
        xy.append(xy[-1] + length * np.array([math.sin(heading), math.cos(heading)]))
    return PlayLine(np.array(xy))


@settings(max_examples=300, deadline=None)
@given(
    lengths=st.lists(st.floats(90.0, 250.0), min_size=3, max_size=3),
    turns=st.lists(TURNS, min_size=2, max_size=2),
    share=st.floats(-0.1, 1.1), offset=st.floats(-60.0, 60.0),
)
def test_there_and_back(lengths, turns, share, offset):
    line = bent_line(lengths, turns)
    station = share * line.length_yd
    # Inside a bend an offset belongs to this leg only up to the bisector: |offset| tan(turn/2) from it.
    for bend, turn in zip(line.stations[1:-1], turns, strict=True):
        reach = abs(offset) * math.tan(math.radians(abs(turn)) / 2)
        assume(abs(station - bend) > reach + 1e-6)
    back = line.station_offset(*line.at(station, offset))
    assert back == pytest.approx((station, offset), abs=1e-8)


@settings(max_examples=300, deadline=None)
@given(x=st.floats(-90, 170), y=st.floats(1, 459))
def test_offset_is_the_distance_to_the_line(x, y):
    """Shapely measures the same distance and the same place along the line."""
    station, offset = BENT.station_offset(x, y)
    path = shapely.LineString(BENT.points)
    if 0 < station < BENT.length_yd:
        assert abs(offset) == pytest.approx(path.distance(shapely.Point(x, y)), abs=1e-9)
        nearest = path.interpolate(station)
        assert nearest.distance(shapely.Point(x, y)) == pytest.approx(abs(offset), abs=1e-7)
    left = shapely.LineString(BENT.points).buffer(400, single_sided=True, join_style="round")
    if abs(offset) > 1e-6 and 20 < station < 440 and abs(offset) < 60:
        assert (offset < 0) == bool(shapely.contains_xy(left, x, y))


def test_outside_of_a_bend_shares_its_station():
    line = bent_line([200.0, 200.0], [40.0])  # to the right: the wedge is on the left
    x, y = line.at(200.0, -30.0)
    assert line.station_offset(x, y) == pytest.approx((200.0, -30.0))
    assert math.hypot(x, y - 200.0) == pytest.approx(30.0)


@pytest.mark.parametrize("turns", [(25.0, -40.0), (-25.0, 40.0), (50.0, 50.0), (0.0, 10.0)])
def test_band_is_a_flat_buffer_of_the_line(turns):
    """A band of equal offsets both sides is shapely's buffer with flat ends and round joins."""
    line = bent_line([180.0, 160.0, 150.0], turns)
    ends = np.array([0.0, line.length_yd])
    band = line.band(ends, np.full(2, -25.0), np.full(2, 25.0))
    buffer = shapely.LineString(line.points).buffer(25.0, cap_style="flat", quad_segs=64)
    assert band.is_valid
    # A fan of 3 degree steps at 25 yd cuts off at most 25 (1 - cos 1.5 deg) = 0.009 yd.
    assert band.symmetric_difference(buffer).area < 0.009 * 25.0 * math.radians(sum(map(abs, turns))) + 0.01
    assert shapely.hausdorff_distance(band, buffer) < 0.02


@settings(max_examples=60, deadline=None)
@given(turns=st.lists(TURNS, min_size=2, max_size=2), left=st.floats(-60, 40), width=st.floats(1, 50))
def test_band_holds_the_places_between_its_edges(turns, left, width):
    line = bent_line([150.0, 150.0, 150.0], turns)
    low, high = 60.0, 400.0
    band = line.band(np.array([low, high]), np.full(2, left), np.full(2, left + width))
    assert band.is_valid and band.area > 0
    rng = np.random.default_rng(5)
    points = rng.uniform([-150, -20], [350, 470], (400, 2))
    for x, y in points:
        station, offset = line.station_offset(x, y)
        edges = [station - low, high - station, offset - left, left + width - offset]
        if min(abs(e) for e in edges) < 0.1:  # the fan's chords, see above
            continue
        assert bool(shapely.contains_xy(band, x, y)) == (min(edges) > 0)


def test_edges_vary_along_the_way():
    line = bent_line([300.0], [])
    left, right = np.array([-10.0, -20.0, -5.0]), np.array([10.0, 20.0, 30.0])
    band = line.band(np.array([100.0, 200.0, 250.0]), left, right)
    assert band.area == pytest.approx((20 + 40) / 2 * 100 + (40 + 35) / 2 * 50)
    assert shapely.contains_xy(band, [14.0, 16.0], [150.0, 150.0]).tolist() == [True, False]


def test_hole_answers_in_its_own_frame():
    hole = load_hole("long-sluice").with_tee("yellow")
    assert hole.at(0.0) == (0.0, 0.0)
    assert hole.station_offset(*hole.at(300.0, 12.0)) == pytest.approx((300.0, 12.0))
    assert hole.at(hole.length_yd) == pytest.approx(hole.line[-1])
