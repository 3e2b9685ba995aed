"""Sketches: every way to write an area, tees and pins, metres, paint order, demo holes by name."""

from __future__ import annotations

import math
import re
import tomllib

import numpy as np
import pytest
import shapely

from simulator.errors import UsageError
from simulator.hole import LIE_OF, PAINT_ORDER, WORDS, Lie, Surface, bundled_holes, load_hole
from simulator.hole.files import bundled_folder
from simulator.hole.sketch import read_sketch

TWELVE_LINES = """
name = "Twelve"
par = 4
length_yd = 398
bends = [{ at_yd = 230, turn_deg = -12 }]
green = [{ front_yd = 384, depth_yd = 28, width_yd = 24 }]
pin = [{ on_yd = 14, offset_yd = 2 }]
fairway = [{ from_yd = 140, to_yd = 370, left_yd = -16, right_yd = [18, 12, 15] }]
bunker = [{ at_yd = 250, offset_yd = 20, depth_yd = 12, width_yd = 8 }]
penalty_area = [{ colour = "yellow", from_yd = 372, to_yd = 380, left_yd = -60, right_yd = 60 }]
out_of_bounds = [{ left_of_yd = -40 }]
heavy_rough = [{ right_of_yd = 35 }]
trees = [{ points_yd = [[180, 25], [220, 25], [200, 50]] }]
"""


def sketch(text="", **more):
    return read_sketch({**tomllib.loads(text or TWELVE_LINES), **more}, "test")


def named(hole, name):
    return next(f for f in hole.features if f.name == name)


def test_twelve_lines_are_enough_for_a_par_four():
    assert len(TWELVE_LINES.strip().splitlines()) == 12
    hole = sketch()
    assert hole.length_yd == pytest.approx(398.0)
    missing = {Surface.ROUGH, Surface.PATH, Surface.DRY_PENALTY}
    assert {f.surface for f in hole.features} == set(Surface) - missing
    assert hole.surface_at(0.0, 100.0) is Surface.ROUGH
    assert hole.surface_at(*hole.at(200.0)) is Surface.FAIRWAY
    assert hole.surface_at(*hole.at(376.0)) is Surface.WATER
    assert hole.surface_at(*hole.at(300.0, 36.0)) is Surface.HEAVY_ROUGH
    assert hole.surface_at(*hole.at(300.0, -41.0)) is Surface.OUT_OF_BOUNDS
    assert named(hole, "penalty area").relief == "yellow"


def test_same_hole_in_metres():
    def to_metres(match):
        key, value = match.group(1), match.group(2)
        return f"{key}_m = " + re.sub(r"-?\d+(\.\d+)?", lambda v: repr(float(v.group()) * 0.9144), value)

    metres = re.sub(r"(\w+)_yd = (\[\[.*\]\]|\[[^\]]*\]|-?[\d.]+)", to_metres, TWELVE_LINES)
    assert "_yd" not in metres and metres.count("_m") > 20
    one, other = sketch(), sketch(metres)
    assert other.length_yd == pytest.approx(one.length_yd, abs=1e-9)
    for a, b in zip(one.features, other.features, strict=True):
        assert a.name == b.name and a.surface == b.surface
        assert shapely.equals_exact(a.area, b.area, tolerance=2e-6)  # pieces join on a 1e-6 yd grid
    assert (one.pin.x_yd, one.pin.y_yd) == pytest.approx((other.pin.x_yd, other.pin.y_yd), abs=1e-9)


def test_the_metre_is_exact():
    """The international yard is exactly 0.9144 m (1959 agreement)."""
    hole = sketch(TWELVE_LINES.replace("length_yd = 398", "length_m = 363.9312"))
    assert hole.length_yd == pytest.approx(398.0, abs=1e-9)


@pytest.mark.parametrize(("keys", "area"), [
    ({"at_yd": 300, "depth_yd": 20, "width_yd": 10}, math.pi * 50),
    ({"at_yd": 300, "offset_yd": 9, "depth_yd": 20, "width_yd": 10, "turn_deg": 50}, math.pi * 50),
    ({"from_yd": 280, "to_yd": 300, "left_yd": 5, "right_yd": 12}, 140),
    ({"from_yd": 280, "to_yd": 300, "left_yd": [5, 8, 5], "right_yd": 12}, 110),
    ({"stations_yd": [280, 285, 300], "left_yd": 0, "right_yd": [0, 10, 0]}, 100),
    ({"points_yd": [[280, 0], [280, 10], [300, 10]]}, 100),
    ({"xy_yd": [[10, 20], [20, 20], [20, 30], [10, 30]]}, 100),
    ({"left_of_yd": -20, "from_yd": 250, "to_yd": 260}, 1800),
    ({"right_of_yd": [20, 40], "from_yd": 250, "to_yd": 260}, 1700),
])
def test_ways_to_write_an_area(keys, area):
    hole = sketch(bunker=[{"name": "it", **keys}])
    assert named(hole, "it").area.area == pytest.approx(area, rel=1e-3)


def test_turned_ellipse_points_where_it_says():
    """On the first leg: 90 degrees clockwise puts the depth across the line."""
    hole = sketch(bunker=[{"name": "it", "at_yd": 100, "depth_yd": 30, "width_yd": 6, "turn_deg": 90}])
    assert named(hole, "it").area.bounds == pytest.approx((-15, 97, 15, 103), abs=0.02)
    hole = sketch(bunker=[{"name": "it", "at_yd": 100, "depth_yd": 30, "width_yd": 1, "turn_deg": 30}])
    assert hole.surface_at(12 * math.sin(math.pi / 6), 100 + 12 * math.cos(math.pi / 6)) is Surface.BUNKER


def test_green_keeps_its_depth_and_its_widths():
    hole = sketch(green=[{"front_yd": 380, "depth_yd": 36, "width_yd": [20, 28, 24, 14, 10]}])
    along = [hole.station_offset(x, y) for x, y in shapely.get_coordinates(hole.green)]
    assert min(s for s, _ in along) == pytest.approx(380) and max(s for s, _ in along) == pytest.approx(416)
    for station, width in ((398, 24), (407, 14)):
        cut = hole.green.intersection(shapely.LineString([hole.at(station, -50), hole.at(station, 50)]))
        assert cut.length == pytest.approx(width, abs=0.3)  # corners are rounded


def test_paint_order():
    """Each surface laid over the same spot in turn, bottom to top, is the one a ball lies on."""
    spot = {"at_yd": 300, "offset_yd": -2, "depth_yd": 9, "width_yd": 9}
    kinds = [
        ("rough", Surface.ROUGH), ("heavy_rough", Surface.HEAVY_ROUGH), ("fairway", Surface.FAIRWAY),
        ("trees", Surface.TREES), ("path", Surface.PATH), ("tee_ground", Surface.TEE),
        ("green", Surface.GREEN), ("bunker", Surface.BUNKER), ("dry", Surface.DRY_PENALTY),
        ("wet", Surface.WATER), ("out_of_bounds", Surface.OUT_OF_BOUNDS),
    ]
    assert [s for _, s in kinds] == list(PAINT_ORDER)
    base = {"name": "Layers", "par": 4, "length_yd": 390}
    green = {"name": "the green", "front_yd": 375, "depth_yd": 30, "width_yd": 30}
    for count in range(1, len(kinds) + 1):
        data = {**base, "green": [green], "penalty_area": []}
        for kind, _ in reversed(kinds[:count]):  # the order of writing does not matter
            if kind in ("dry", "wet"):
                area = {"name": kind, **spot, "colour": "red", "playable": kind == "dry"}
                data["penalty_area"].append(area)
            elif kind == "green":
                data["green"].append({"name": "second green", **spot})
            else:
                data[kind] = [{"name": kind, **spot}]
        hole = read_sketch(data, "layers")
        assert hole.surface_at(*hole.at(300, -2)) is kinds[count - 1][1]


def test_within_a_surface_the_later_one_is_on_top():
    spot = {"at_yd": 300, "depth_yd": 9, "width_yd": 9}
    hole = sketch(bunker=[{"name": "under", **spot}, {"name": "over", **spot}])
    assert hole.feature_at(*hole.at(300)).name == "over"


def test_tees_move_the_hole():
    hole = sketch(tee=[{"name": "white"}, {"name": "red", "at_yd": 50, "offset_yd": -6}])
    red = hole.with_tee("Red")
    assert (red.tee.x_yd, red.tee.y_yd) == (0.0, 0.0) and red.tee.name == "red"
    assert (red.pin.x_yd - hole.pin.x_yd, red.pin.y_yd - hole.pin.y_yd) == pytest.approx((6, -50))
    for before, after in zip(hole.features, red.features, strict=True):
        moved = shapely.transform(before.area, lambda xy: xy - (-6.0, 50.0))
        assert shapely.equals_exact(moved, after.area, tolerance=1e-9)
    # Straight from the tee to the bend at 230, then the 168 yards that are left.
    assert red.length_yd == pytest.approx(math.hypot(6, 180) + 168)
    back = red.with_tee("white")
    assert np.allclose(back.line, hole.line) and back.length_yd == pytest.approx(398)
    with pytest.raises(UsageError, match="no tee called 'gold'; this hole has: white, red"):
        hole.with_tee("gold")


def test_tee_beyond_the_bend_drops_it():
    hole = sketch(tee=[{"name": "back"}, {"name": "forward", "at_yd": 240}]).with_tee("forward")
    assert len(hole.line) == 2 and hole.length_yd == pytest.approx(158)


def test_pins_switch():
    hole = sketch(pin=[{"name": "front", "on_yd": 5}, {"name": "by x and y", "x_yd": -35, "y_yd": 394}])
    assert hole.pin.name == "front"
    station, offset = hole.station_offset(hole.pin.x_yd, hole.pin.y_yd)
    assert (station, offset) == pytest.approx((389, 0), abs=0.01)
    other = hole.with_pin("by x and y")
    assert (other.pin.x_yd, other.pin.y_yd) == (-35, 394) and other.green.equals(hole.green)
    with pytest.raises(UsageError, match="no pin called 'back'; this hole has: front, by x and y"):
        hole.with_pin("back")


def test_line_by_corners_is_turned_to_run_up_the_page():
    """The same hole surveyed in another frame: a quarter turn and a shift away."""
    def other(x, y):
        return [500 + y, 80 - x]

    square = [[10, 150], [20, 150], [20, 160], [10, 160]]
    one = {"name": "A", "par": 4, "line_yd": [[0, 0], [0, 200], [60, 360]],
           "green": [{"front_yd": 355, "depth_yd": 30, "width_yd": 25}], "bunker": [{"xy_yd": square}],
           "pin": [{"x_yd": 60, "y_yd": 360}]}
    two = {**one, "line_yd": [other(*p) for p in one["line_yd"]],
           "bunker": [{"xy_yd": [other(*p) for p in square]}],
           "pin": [dict(zip(("x_yd", "y_yd"), other(60, 360), strict=True))]}
    a, b = read_sketch(one, "a"), read_sketch(two, "b")
    assert [c for p in b.line for c in p] == pytest.approx([c for p in a.line for c in p], abs=1e-9)
    assert (b.pin.x_yd, b.pin.y_yd) == pytest.approx((60, 360))
    for f, g in zip(a.features, b.features, strict=True):
        assert f.area.symmetric_difference(g.area).area < 1e-6


def test_what_is_assumed_is_said():
    hole = sketch()
    assert any("lost 3 times in 100" in s for s in hole.assumed)
    assert named(hole, "trees").lost_assumed and named(hole, "trees").lost_chance == 0.05
    assert any("One tee" in s for s in hole.assumed) and not any("pin" in s for s in hole.assumed)
    told = sketch(trees=[{"at_yd": 200, "offset_yd": 40, "depth_yd": 9, "width_yd": 9, "lost_chance": 0.2}])
    assert named(told, "trees").lost_chance == 0.2 and not named(told, "trees").lost_assumed


def test_every_surface_has_a_word_and_a_lie():
    assert set(WORDS) == set(Surface) == set(PAINT_ORDER)
    assert set(LIE_OF) == set(Surface) - {Surface.WATER, Surface.OUT_OF_BOUNDS}
    assert set(LIE_OF.values()) == set(Lie) - {Lie.TEE}


@pytest.mark.parametrize("typed", ["Withy Drain", "withy drain", "WITHY-DRAIN", " withy_drain"])
def test_a_demo_hole_by_its_name_as_it_is_said(typed):
    assert load_hole(typed).source == "withy-drain"


def test_demo_holes_by_name_from_any_folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert {"withy-drain", "eel-trap", "long-sluice"} <= set(bundled_holes())
    for name in bundled_holes():
        hole = load_hole(name)
        assert hole.source == name and 2 <= len(hole.tees) <= 3 and 2 <= len(hole.pins) <= 3
        assert load_hole(bundled_folder() / f"{name}.toml").line == hole.line
        for tee in hole.tees:
            for pin in hole.pins:
                moved = hole.with_tee(tee.name).with_pin(pin.name)
                assert moved.green.contains(shapely.Point(moved.pin.x_yd, moved.pin.y_yd))
    (tmp_path / "eel-trap").write_text(TWELVE_LINES)
    assert load_hole("eel-trap").name == "Twelve", "a file of that name wins"


def test_demo_par_four_asks_the_question():
    """Water on one side and out of bounds on the other where a driver of 205 to 250 yards finishes."""
    hole = load_hole("withy-drain")
    water, lane = named(hole, "withy drain"), named(hole, "drove lane")
    assert hole.par == 4 and 390 <= hole.length_yd <= 420 and water.relief == "red"
    first = min(hole.station_offset(x, y)[0] for x, y in shapely.get_coordinates(water.area))
    assert 205 <= first <= 215
    for station in range(215, 261, 5):
        across = shapely.LineString([hole.at(station, -60), hole.at(station, 60)])
        assert across.intersection(water.area).length > 15 and across.intersection(lane.area).length > 15
