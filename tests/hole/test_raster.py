"""The engine's raster against shapely (the truth about areas) and against GDAL's rasterizer.

Bounds. A cell is what its centre lies on. Where the raster and the area disagree at a point, the centre
of its cell is on the other side of the boundary, so the boundary passes within half a cell's diagonal,
c sqrt(2) / 2. The disagreement therefore lies in the band of that half-width round the boundary, whose
area is at most P c sqrt(2) + pi c^2 / 2 for each closed ring of perimeter P (exact for convex rings,
an over-estimate for others).
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
import shapely.affinity
from as_user import core_slowness, processor_s

from simulator.hole import Surface, bundled_holes, load_hole
from simulator.hole.sketch import read_sketch
from simulator.tables.rasters import ground_raster

# Bottom to top, written out again here: the order is part of what is checked.
ORDER = [
    Surface.ROUGH, Surface.HEAVY_ROUGH, Surface.FAIRWAY, Surface.TREES, Surface.PATH, Surface.TEE,
    Surface.GREEN, Surface.BUNKER, Surface.DRY_PENALTY, Surface.WATER, Surface.OUT_OF_BOUNDS,
]
HOLES = bundled_holes()
CELLS_YD = [1.0, 0.5]


def window(raster):
    ny, nx = raster.surface.shape
    c = raster.cell_yd
    x, y = raster.x0_yd - c / 2, raster.y0_yd - c / 2
    return shapely.box(x, y, x + nx * c, y + ny * c)


def visible(hole, box):
    """What can be seen of each surface, from above, by shapely alone."""
    left, seen = box, {}
    for surface in reversed(ORDER[1:]):
        areas = [f.area for f in hole.features if f.surface is surface]
        union = shapely.union_all(areas)
        seen[surface] = left.intersection(union)
        left = left.difference(union)
    seen[Surface.ROUGH] = left
    return seen


def rings(area):
    for part in shapely.get_parts(area):
        if part.geom_type == "Polygon":
            yield part.exterior
            yield from part.interiors


@pytest.mark.parametrize("cell", CELLS_YD)
@pytest.mark.parametrize("name", HOLES)
def test_area_of_every_surface(name, cell):
    hole = load_hole(name)
    raster = ground_raster(hole, cell)
    for surface, area in visible(hole, window(raster)).items():
        counted = np.count_nonzero(raster.surface == surface) * cell**2
        bound = sum(r.length * cell * math.sqrt(2) + math.pi * cell**2 / 2 for r in rings(area))
        assert abs(counted - area.area) <= bound, surface.name
        if area.area > 0:
            assert counted > 0, surface.name


@pytest.mark.parametrize("name", HOLES)
def test_area_has_no_bias(name):
    """Over random places of the grid the counted area is right on average, and its scatter is small.

    Sampling theory: a grid dropped uniformly at random counts any area without bias. A curve of length
    P cuts on average 4 P / (pi c) cells of side c (Buffon-Laplace); were each off by at most half a
    cell, independently, the standard deviation would be below c^2 sqrt(4 P / (pi c)) / 2. Long edges
    along the grid are not independent at all, so the scatter is checked on round areas only.
    """
    hole, rng, errors = load_hole(name), np.random.default_rng(11), []
    truth = visible(hole, shapely.box(-1e4, -1e4, 1e4, 1e4))
    near = [Surface.GREEN, Surface.BUNKER, Surface.WATER, Surface.DRY_PENALTY, Surface.FAIRWAY]
    near = [s for s in near if truth[s].area > 0]
    for dx, dy in rng.uniform(0.0, 1.0, (30, 2)):
        step = np.array([dx, dy])
        moved = replace(hole, features=tuple(
            replace(f, area=shapely.transform(f.area, lambda xy, step=step: xy + step)) for f in hole.features
        ))
        counts = np.bincount(ground_raster(moved).surface.ravel(), minlength=11)
        errors.append([counts[s] - truth[s].area for s in near])
    errors = np.array(errors)
    z = errors.mean(axis=0) / (errors.std(axis=0, ddof=1) / math.sqrt(len(errors)))
    assert np.all(np.abs(z) < 4.0), dict(zip(near, z, strict=True))
    for k, surface in enumerate(near):
        if surface in (Surface.GREEN, Surface.BUNKER):
            length = sum(r.length for r in rings(truth[surface]))
            assert errors[:, k].std(ddof=1) < math.sqrt(4 * length / math.pi) / 2


@pytest.mark.parametrize("turn_deg", [0.0, 30.0, 45.0])
@pytest.mark.parametrize("at_yd", [229.5, 229.7, 230.0])
@pytest.mark.parametrize("width_yd", [0.3, 0.67, 1.0])
def test_a_thin_ditch_is_a_cell_wide_wherever_it_lies(width_yd, at_yd, turn_deg):
    """A ball that runs over it comes to a cell of it, and in the middle it is as wide as a cell, no wider."""
    hole = load_hole("withy-drain")
    strip = shapely.box(-60.0, at_yd, 60.0, at_yd + width_yd)
    ditch = replace(
        hole.features[0],
        name="ditch",
        surface=Surface.WATER,
        area=shapely.affinity.rotate(strip, turn_deg, origin=(0.0, at_yd)),
    )
    raster = ground_raster(replace(hole, features=(*hole.features, ditch)), 1.0)
    wet = (raster.feature == len(hole.features)).astype(int)
    # rows of cells at 45 degrees are 0.71 yd apart: a yard across holds one of them or two
    assert wet.sum() == pytest.approx(120.0, rel=0.05 if turn_deg < 45.0 else 0.45)
    columns = wet[:, [int(x - raster.x0_yd + 0.5) for x in range(-35, 36)]].sum(axis=0)
    assert columns.min() >= 1 and columns.max() <= 2


@pytest.mark.parametrize("cell", CELLS_YD)
@pytest.mark.parametrize("name", HOLES)
def test_disagreement_only_near_a_boundary(name, cell):
    hole = load_hole(name)
    raster = ground_raster(hole, cell)
    box = window(raster)
    x, y = points_in(box, 40_000, seed=7)
    c = raster.cell_yd
    j = np.floor((y - raster.y0_yd) / c + 0.5).astype(int)
    i = np.floor((x - raster.x0_yd) / c + 0.5).astype(int)
    truth = np.full(x.size, int(Surface.ROUGH))
    for surface in ORDER[1:]:
        for feature in hole.features:
            if feature.surface is surface:
                truth[shapely.contains_xy(feature.area, x, y)] = int(surface)
    wrong = raster.surface[j, i] != truth
    edges = shapely.union_all([f.area.boundary for f in hole.features])
    away = shapely.distance(shapely.points(x[wrong], y[wrong]), edges)
    assert np.all(away <= c * math.sqrt(2) / 2 + 1e-9)
    # And no more of it than there is band round the edges.
    share = edges.length * c * math.sqrt(2) / box.area
    assert 0 < np.mean(wrong) < share


def points_in(box, count, seed):
    x0, y0, x1, y1 = box.bounds
    rng = np.random.default_rng(seed)
    return rng.uniform(x0, x1, count), rng.uniform(y0, y1, count)


@pytest.mark.parametrize("name", HOLES)
def test_feature_raster_names_the_topmost_feature(name):
    hole = load_hole(name)
    raster = ground_raster(hole)
    ny, nx = raster.surface.shape
    rng = np.random.default_rng(3)
    for j, i in zip(rng.integers(0, ny, 3000), rng.integers(0, nx, 3000), strict=True):
        feature = hole.feature_at(raster.x0_yd + i, raster.y0_yd + j)
        index = int(raster.feature[j, i])
        assert (hole.features[index] if index >= 0 else None) is feature
        assert raster.surface[j, i] == (feature.surface if feature else Surface.ROUGH)
    seen = set(np.unique(raster.feature))
    assert seen >= set(range(len(hole.features))), "every feature of a demo hole shows"


@pytest.mark.parametrize("name", HOLES)
def test_against_gdal(name):
    """GDAL's rasterize with all_touched=False uses the same cell-centre rule (rasterio documentation)."""
    features = pytest.importorskip("rasterio.features")
    transform = pytest.importorskip("rasterio.transform")
    hole = load_hole(name)
    raster = ground_raster(hole)
    c, (ny, nx) = raster.cell_yd, raster.surface.shape
    # Row 0 is the lowest y here, so the y step is positive.
    affine = transform.from_origin(raster.x0_yd - c / 2, raster.y0_yd - c / 2, c, -c)
    shapes = [(f.area, int(f.surface)) for s in ORDER for f in hole.features if f.surface is s]
    other = features.rasterize(shapes, out_shape=(ny, nx), transform=affine, fill=0, dtype="uint8")
    j, i = np.nonzero(other != raster.surface)
    edges = shapely.union_all([f.area.boundary for f in hole.features])
    centres = shapely.points(raster.x0_yd + i * c, raster.y0_yd + j * c)
    assert np.all(shapely.distance(centres, edges) < 1e-6), "only centres on a boundary may differ"
    assert i.size <= 20


def test_areas_in_whole_yards_keep_their_size():
    hole = read_sketch({
        "name": "Square", "par": 4, "length_yd": 400, "bends": [{"at_yd": 300, "turn_deg": 20}],
        "green": [{"front_yd": 385, "depth_yd": 30, "width_yd": 30}],
        "path": [{"from_yd": 20, "to_yd": 120, "left_yd": 8, "right_yd": 10}],
        "penalty_area": [{"colour": "red", "from_yd": 150, "to_yd": 175, "left_yd": -31, "right_yd": -12}],
    }, "square")
    for cell in (1.0, 0.5, 0.25):
        raster = ground_raster(hole, cell)
        assert np.count_nonzero(raster.surface == Surface.PATH) * cell**2 == 200.0
        assert np.count_nonzero(raster.surface == Surface.WATER) * cell**2 == 475.0


@pytest.mark.parametrize("name", HOLES)
def test_mirrored_hole_has_the_mirrored_raster(name):
    hole = load_hole(name)
    raster = ground_raster(hole)
    def spot(s):
        return replace(s, x_yd=-s.x_yd)

    mirrored = replace(
        hole, line=tuple((-x, y) for x, y in hole.line),
        drawn_line=tuple((-x, y) for x, y in hole.drawn_line),
        tees=tuple(map(spot, hole.tees)), pins=tuple(map(spot, hole.pins)),
        tee=spot(hole.tee), pin=spot(hole.pin),
        features=tuple(
            replace(f, area=shapely.transform(f.area, lambda xy: xy * [-1.0, 1.0])) for f in hole.features
        ),
    )
    other = ground_raster(mirrored)
    assert np.array_equal(other.surface, raster.surface[:, ::-1])
    assert np.array_equal(other.feature, raster.feature[:, ::-1])


@pytest.mark.parametrize("name", HOLES)
def test_room_for_wild_balls(name):
    hole = load_hole(name)
    raster = ground_raster(hole)
    x0, y0, x1, y1 = window(raster).bounds
    ny, nx = raster.surface.shape
    assert nx <= 700 and ny <= 900
    for x, y in (*hole.line, *((s.x_yd, s.y_yd) for s in (*hole.tees, *hole.pins))):
        assert x0 + 120 <= x <= x1 - 120 and y0 + 100 <= y <= y1 - 100
    assert raster.canopy.dtype == np.uint8 and raster.canopy.shape == (ny, nx)
    for array in raster[5:8]:
        assert array.dtype == np.float32 and array.shape == (ny, nx)
        assert hole.has_relief or not array.any()


@pytest.mark.parametrize("name", HOLES)
def test_quick(name):
    """Loading under 50 ms, rastering under 100 ms, 150 with heights (best of five, on a core of usual speed)."""
    load, rasterise = [], []
    for _ in range(5):
        start = processor_s()
        hole = load_hole(name)
        middle = processor_s()
        ground_raster(hole)
        load.append(middle - start)
        rasterise.append(processor_s() - middle)
    slow = core_slowness()
    assert min(load) < 0.050 * slow and min(rasterise) < (0.150 if hole.has_relief else 0.100) * slow
