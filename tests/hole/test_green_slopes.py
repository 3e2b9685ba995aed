"""Greens with a slope, parts of greens, and the planes the raster hands on."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from simulator.hole import Slope, Surface, load_hole
from simulator.hole.model import paint_sorted
from simulator.hole.sketch import read_sketch
from simulator.hole.slopes import fitted_slope, read_falls_deg
from simulator.tables.rasters import ground_raster

SPOTS = [[0, 0, 5], [150, -20, 2], [150, 20, 3], [300, 0, 0], [350, -20, 1.5], [350, 20, 2.5], [430, 0, 4]]


def sketch(green=None, **more):
    return read_sketch({
        "name": "Sloping", "par": 4, "length_yd": 400, "bends": [{"at_yd": 250, "turn_deg": 40}],
        "green": [{"front_yd": 384, "depth_yd": 32, "width_yd": 26, **(green or {})}],
        "pin": [{"name": "front", "on_yd": 6}, {"name": "back", "on_yd": 27}], **more,
    }, "test")


def named(hole, name):
    return next(f for f in hole.features if f.name == name)


def cells(hole, raster, area):
    ny, nx = raster.height.shape
    x, y = np.meshgrid(raster.x0_yd + np.arange(nx), raster.y0_yd + np.arange(ny))
    return x, y, shapely.contains_xy(area, x, y)


@pytest.mark.parametrize(("words", "degrees"), [
    ("to the front", 180), ("front", 180), ("to the back", 0), ("left", 270), ("to the right", 90),
    ("front left", 225), ("Front-Right", 135), ("right and back", 45), ("to the back left", 315),
    ("up", None), ("left right", None), ("", None), ("front left back", None),
])
def test_words(words, degrees):
    assert read_falls_deg(words) == degrees


def test_the_fall_counts_from_the_line_beside_the_green():
    """The line runs 40 degrees right of +y there: "to the front" is back along it, 220 degrees."""
    slope = named(sketch({"slope_pct": 2, "falls": "to the front"}), "green").slope
    assert isinstance(slope, Slope) and slope.percent == 2
    assert slope.falls_bearing_deg == pytest.approx(220)
    turned = named(sketch({"slope_pct": 2, "falls_deg": 30}), "green").slope
    assert turned.falls_bearing_deg == pytest.approx(70)
    hole = sketch(bunker=[])
    assert named(hole, "green").slope is None and not hole.has_relief


def test_two_per_cent_over_the_depth_of_a_green():
    """Arithmetic: 21 yd from front pin to back pin at 2.5 % are 0.525 yd, the front one lower."""
    hole = sketch({"slope_pct": 2.5, "falls": "to the front"})
    front, back = (hole.height_at(p.x_yd, p.y_yd) for p in hole.pins)
    assert back - front == pytest.approx(0.525, abs=1e-9)


@pytest.mark.parametrize("falls_deg", [0, 30, 137, 270])
def test_a_green_is_a_plane_through_the_ground_at_its_middle(falls_deg):
    level, hole = sketch(heights_yd=SPOTS), sketch({"slope_pct": 3, "falls_deg": falls_deg}, heights_yd=SPOTS)
    middle = hole.green.centroid
    assert hole.height_at(middle.x, middle.y) == pytest.approx(level.height_at(middle.x, middle.y), abs=1e-9)
    raster = ground_raster(hole)
    x, y, inside = cells(hole, raster, hole.green)
    design = np.column_stack([x[inside], y[inside], np.ones(inside.sum())])
    (gx, gy, _), residual, *_ = np.linalg.lstsq(design, raster.height[inside].astype(float), rcond=None)
    assert 100 * math.hypot(gx, gy) == pytest.approx(3, abs=1e-3) and residual[0] / inside.sum() < 1e-10
    assert math.degrees(math.atan2(-gx, -gy)) % 360 == pytest.approx((40 + falls_deg) % 360, abs=0.05)
    _, _, deep = cells(hole, raster, hole.green.buffer(-1.5))
    steep = np.hypot(raster.grad_x[deep], raster.grad_y[deep])
    assert steep == pytest.approx(np.full(deep.sum(), 0.03), abs=1e-5)


def test_no_cliff_round_a_green():
    """Out to 8 yd from the edge no cell is steeper than 1 in 2 and no two neighbours differ by a kerb."""
    hole = sketch({"slope_pct": 4, "falls": "left"}, heights_yd=SPOTS)
    raster = ground_raster(hole)
    _, _, near = cells(hole, raster, hole.green.buffer(8))
    assert np.hypot(raster.grad_x[near], raster.grad_y[near]).max() < 0.5
    steps = np.abs(np.diff(raster.height, axis=0)[near[1:]])
    assert steps.max() < 0.4
    beyond = hole.green.centroid.buffer(60).exterior
    other = sketch(heights_yd=SPOTS)
    for x, y in shapely.get_coordinates(beyond)[::8]:
        assert hole.height_at(x, y) == pytest.approx(other.height_at(x, y), abs=1e-9), "too far off"


def test_greens_without_a_slope_are_level_on_a_hilly_hole():
    hole = sketch(heights_yd=SPOTS)
    raster = ground_raster(hole)
    _, _, inside = cells(hole, raster, hole.green)
    assert np.ptp(raster.height[inside]) < 1e-5 and np.ptp(raster.height) > 3
    assert "Tees and greens without a slope are level." in hole.assumed
    sloping = sketch({"slope_pct": 1, "falls": "left"}, heights_yd=SPOTS)
    assert "Tees are level." in sloping.assumed


def test_a_green_surveyed_by_spot_heights():
    """Five heights off a plane of 2.4 % to the front left: the green gets that plane back."""
    rise = 0.024 / math.sqrt(2)
    places = ((388, 0), (400, -9), (400, 0), (400, 9), (412, 1))
    spots = [[s, o, 2 + rise * (s - 400) + rise * o] for s, o in places]
    hole = sketch(heights_yd=[*SPOTS[:4], *spots])
    slope = named(hole, "green").slope
    assert slope.percent == pytest.approx(2.4, abs=1e-6)
    assert slope.falls_bearing_deg == pytest.approx(225 + 40, abs=1e-4)
    up = hole.height_at(*hole.at(412, 1)) - hole.height_at(*hole.at(388, 0))
    assert up == pytest.approx(25 * rise, abs=1e-6)
    assert fitted_slope(np.array([[0, 0, 1], [0, 5, 2], [0, 10, 3.0]])) is None, "in a row"


def test_parts_of_a_green():
    """A back shelf drawn over the edge: cut to the green, its own plane, the rest unchanged."""
    part = {"name": "shelf", "from_yd": 405, "to_yd": 430, "left_yd": -30, "right_yd": 30,
            "slope_pct": 1, "falls": "back"}
    hole = sketch({"slope_pct": 3, "falls": "front"}, green_part=[part])
    shelf, green = named(hole, "shelf"), named(hole, "green")
    assert shelf.surface is Surface.GREEN and shelf.part_of == "green" and green.part_of is None
    assert shelf.area.within(green.area.buffer(1e-6)) and 100 < shelf.area.area < green.area.area / 2
    assert hole.green.symmetric_difference(green.area).area < 1e-6
    raster = ground_raster(hole)
    assert raster.planes[0] == pytest.approx([0.03, math.radians(220)])
    back = ground_raster(hole.with_pin("back"))
    assert back.planes[0] == pytest.approx([0.01, math.radians(40)]), "the pin in use is on it"
    for r in (raster, back):
        assert r.planes.shape == (2, 2) and r.feature_planes.dtype == np.int16
        for feature, row in zip(hole.features, r.feature_planes, strict=True):
            assert (row >= 0) == (feature.surface is Surface.GREEN)
            if row >= 0:
                assert r.planes[row] == pytest.approx(
                    [feature.slope.percent / 100, math.radians(feature.slope.falls_bearing_deg)]
                )
    _, _, on_shelf = cells(hole, raster, shelf.area.buffer(-1.5))
    assert np.hypot(raster.grad_x, raster.grad_y)[on_shelf] == pytest.approx(
        np.full(on_shelf.sum(), 0.01), abs=1e-5
    )
    _, _, on_front = cells(hole, raster, green.area.difference(shelf.area.buffer(7)).buffer(-1.5))
    assert np.hypot(raster.grad_x, raster.grad_y)[on_front] == pytest.approx(
        np.full(on_front.sum(), 0.03), abs=1e-5
    )


def test_a_tier():
    """A back tier a yard up: level on top, joined by a ramp, no wall."""
    part = {"name": "tier", "from_yd": 404, "to_yd": 430, "left_yd": -30, "right_yd": 30, "slope_pct": 0,
            "height_yd": 1}
    hole = sketch({"height_yd": 0}, green_part=[part])
    assert hole.has_relief
    rise = hole.height_at(*hole.at(410)) - hole.height_at(*hole.at(390))
    assert rise == pytest.approx(1.0, abs=1e-9)
    raster = ground_raster(hole)
    _, _, inside = cells(hole, raster, hole.green)
    assert 0.2 < np.hypot(raster.grad_x, raster.grad_y)[inside].max() < 0.35


def test_pins_count_from_the_front_of_the_green_not_of_a_part():
    part = {"name": "tongue", "from_yd": 400, "to_yd": 425, "left_yd": -9, "right_yd": 9, "slope_pct": 1,
            "falls": "left"}
    plain, parted = sketch(), sketch(green_part=[part])
    assert [(p.x_yd, p.y_yd) for p in parted.pins] == [(p.x_yd, p.y_yd) for p in plain.pins]


def test_parts_side_by_side():
    """Touching is not overlapping."""
    parts = [
        {"from_yd": 380, "to_yd": 420, "left_yd": left, "right_yd": left + 15, "slope_pct": 2, "falls": falls}
        for left, falls in ((-15, "right"), (0, "left"))
    ]
    hole = sketch(green_part=parts)
    assert [f.name for f in hole.features if f.part_of] == ["green part 1", "green part 2"]
    assert hole.height_at(*hole.at(400, 12)) > hole.height_at(*hole.at(400, 2))
    assert [f.name for f in paint_sorted(hole.features)] == [f.name for f in hole.features]


def test_level_holes_have_one_level_plane():
    hole = sketch(bunker=[{"at_yd": 300, "depth_yd": 9, "width_yd": 9}])
    raster = ground_raster(hole)
    assert raster.planes.tolist() == [[0.0, 0.0]]
    wanted = [0 if f.surface is Surface.GREEN else -1 for f in hole.features]
    assert raster.feature_planes.tolist() == wanted


def test_other_tee_same_slope():
    tees = [{"name": "a"}, {"name": "b", "at_yd": 40, "offset_yd": 6}]
    hole = sketch({"slope_pct": 2, "falls": "left"}, tee=tees)
    one, other = ground_raster(hole), ground_raster(hole.with_tee("b"))
    assert other.planes.tolist() == one.planes.tolist()


@pytest.mark.parametrize("name", ["eel-trap", "long-sluice", "withy-drain"])
def test_demo_greens(name):
    """Holes are cut on 1-3 % (common practice): every demo green that slopes keeps to it."""
    hole = load_hole(name)
    slopes = [f.slope.percent for f in hole.features if f.surface is Surface.GREEN and f.slope]
    assert all(1 <= s <= 3 for s in slopes) and bool(slopes) == hole.has_relief
