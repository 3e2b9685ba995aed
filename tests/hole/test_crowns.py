"""Crowns of trees: areas and single ones, what is assumed of them, and their raster."""

from __future__ import annotations

import math

import numpy as np
import pytest
import shapely

from simulator.hole import Surface
from simulator.hole.crowns import HIT_LENGTH_YD
from simulator.hole.sketch import read_sketch
from simulator.tables.rasters import ground_raster

M = 0.9144  # metres in a yard, exact


def sketch(**more):
    return read_sketch({
        "name": "Wooded", "par": 4, "length_yd": 400,
        "green": [{"front_yd": 385, "depth_yd": 30, "width_yd": 24}],
        "fairway": [{"from_yd": 150, "to_yd": 370, "left_yd": -18, "right_yd": 18}], **more,
    }, "test")


def wood(**more):
    area = {"name": "wood", "from_yd": 200, "to_yd": 240, "left_yd": 25, "right_yd": 45, **more}
    return crown_of(sketch(trees=[area]), "wood")


def crown_of(hole, name):
    return next(f.crown for f in hole.features if f.name == name)


def cover(raster, x, y):
    row = int(raster.canopy[round(y - raster.y0_yd), round(x - raster.x0_yd)])
    return tuple(raster.crowns[row - 1]) if row else None


def test_how_much_air_is_in_a_tree():
    """Pass rates, taken to be through 8 m of crown.

    Medium: 27 and 24 of 100 balls got past in a television test ("25 % air"), so 5.8 m to a hit.
    Dense: 5 of 60 within 10 yd of normal in a magazine's test of six species. Both second hand.
    """
    passes = {word: math.exp(-8.0 / M / length) for word, length in HIT_LENGTH_YD.items()}
    assert 0.24 <= passes["medium"] <= 0.27 and HIT_LENGTH_YD["medium"] * M == pytest.approx(5.8, abs=0.05)
    assert passes["dense"] == pytest.approx(5 / 60) and passes["open"] > 0.4


def test_trees_nobody_measured():
    """Mature broadleaves stand 18-30 m (Preston 1976, second hand), pruned to 2-4 m (from memory)."""
    crown = wood()
    assert 18 <= crown.top_yd * M <= 24 and 2 <= crown.base_yd * M <= 4
    assert crown.hit_length_yd * M == pytest.approx(5.8, abs=0.05)
    assert crown.assumed == ("height", "base", "density")
    said = " ".join(sketch(trees=[{"at_yd": 200, "offset_yd": 40, "depth_yd": 9, "width_yd": 9}]).assumed)
    assert "21 yards high" in said and "3 yards up" in said and "medium" in said


def test_trees_somebody_measured():
    crown = wood(height_m=18, base_m=2, hit_length_m=4)
    assert (crown.top_yd * M, crown.base_yd * M, crown.hit_length_yd * M) == pytest.approx((18, 2, 4))
    assert crown.assumed == ()
    hole = sketch(trees=[{
        "at_yd": 200, "offset_yd": 40, "depth_yd": 9, "width_yd": 9,
        "height_yd": 20, "base_yd": 0, "density": "open",
    }])
    assert not any("Trees without" in s for s in hole.assumed)
    assert wood(density="dense").hit_length_yd < wood(density="medium").hit_length_yd


def test_branches_of_a_small_tree_hang_low():
    small = wood(height_yd=6)
    assert small.base_yd == pytest.approx(1.5) and small.assumed == ("base", "density")
    assert wood(height_yd=40).base_yd == 3.0


def test_a_single_tree_leaves_the_ground_as_it_is():
    tree = {"name": "oak", "at_yd": 250, "offset_yd": 10, "crown_yd": 14, "height_yd": 22, "base_yd": 3}
    plain, hole = sketch(), sketch(tree=[tree])
    one, raster = ground_raster(plain), ground_raster(hole)
    assert np.array_equal(raster.surface, one.surface) and np.array_equal(raster.feature, one.feature)
    assert hole.surface_at(10.0, 250.0) is Surface.FAIRWAY and not one.canopy.any()
    oak = hole.single_trees[0]
    assert (oak.name, oak.x_yd, oak.y_yd, oak.crown_yd) == ("oak", 10.0, 250.0, 14.0)
    assert cover(raster, 10, 250) == pytest.approx((3, 22, HIT_LENGTH_YD["medium"]))
    # Cells by their centres: off by less than half of the band of a cell's diagonal round the rim.
    assert np.count_nonzero(raster.canopy) == pytest.approx(math.pi * 49, abs=math.pi * 7 * math.sqrt(2) / 2)
    assert hole.assumed[-1].startswith("Trees without a density")


def test_the_smallest_crown_is_seen_wherever_it_stands():
    for dx, dy in np.random.default_rng(0).uniform(0, 1, (40, 2)).tolist():
        tree = {"x_yd": 30 + dx, "y_yd": 200 + dy, "crown_yd": 1.5}
        assert ground_raster(sketch(tree=[tree])).canopy.any()


def test_canopy_of_an_area_of_trees():
    hole = sketch(
        trees=[{"name": "wood", "at_yd": 220, "offset_yd": 50, "depth_yd": 60, "width_yd": 30}],
        path=[{"from_yd": 180, "to_yd": 260, "left_yd": 48, "right_yd": 51}],
    )
    raster = ground_raster(hole)
    area = next(f.area for f in hole.features if f.name == "wood")
    ny, nx = raster.canopy.shape
    x, y = np.meshgrid(raster.x0_yd + np.arange(nx), raster.y0_yd + np.arange(ny))
    assert np.array_equal(raster.canopy > 0, shapely.contains_xy(area, x, y)), "branches reach over the path"
    assert hole.surface_at(49.5, 220.0) is Surface.PATH and hole.surface_at(40.0, 220.0) is Surface.TREES
    assert raster.canopy.dtype == np.uint8 and raster.crowns.dtype == np.float64
    assert ground_raster(hole, 0.5).canopy.astype(bool).sum() / 4 == pytest.approx(area.area, rel=0.01)


def test_the_higher_crown_covers_the_lower():
    low = {"at_yd": 200, "offset_yd": 40, "depth_yd": 30, "width_yd": 20, "height_yd": 4}
    high = {"at_yd": 200, "offset_yd": 40, "crown_yd": 10, "height_yd": 25}
    for order in (("trees", "tree"), ("tree", "trees")):
        hole = sketch(**{key: [{"trees": low, "tree": high}[key]] for key in order})
        raster = ground_raster(hole)
        assert cover(raster, 40, 200)[1] == 25 and cover(raster, 40, 210)[1] == 4
        assert cover(raster, 0, 200) is None


def test_trees_alike_share_a_kind():
    rows = [
        {"at_yd": 150 + 20 * k, "offset_yd": 40, "crown_yd": 8, "height_yd": 12 + k % 2} for k in range(10)
    ]
    hole = sketch(tree=rows)
    raster = ground_raster(hole)
    assert len(hole.single_trees) == 10 and raster.crowns.shape == (2, 3)
    assert sorted(raster.crowns[:, 1]) == [12, 13] and set(np.unique(raster.canopy)) == {0, 1, 2}
    assert ground_raster(sketch()).crowns.shape == (0, 3)


def test_trees_move_with_the_tee_and_turn_with_the_frame():
    tree = {"name": "oak", "at_yd": 250, "offset_yd": 30, "crown_yd": 9}
    tees = [{"name": "a"}, {"name": "b", "at_yd": 40, "offset_yd": -5}]
    red = sketch(tree=[tree], tee=tees).with_tee("b")
    assert (red.single_trees[0].x_yd, red.single_trees[0].y_yd) == (35.0, 210.0)
    east = read_sketch({
        "name": "East", "par": 4, "line_yd": [[10, 5], [410, 5]],
        "green": [{"front_yd": 385, "depth_yd": 30, "width_yd": 24}], "tree": [tree],
    }, "east")
    assert (east.single_trees[0].x_yd, east.single_trees[0].y_yd) == pytest.approx((30.0, 250.0))


def test_a_crown_may_hang_over_a_green():
    hole = sketch(tree=[{"at_yd": 400, "offset_yd": 15, "crown_yd": 14}])
    raster = ground_raster(hole)
    assert np.any((raster.canopy > 0) & (raster.surface == Surface.GREEN))
