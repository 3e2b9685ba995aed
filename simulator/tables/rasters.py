"""The ground as arrays: surface, feature, height and crowns of every cell, and the planes of greens."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import shapely
import shapely.affinity

from simulator.hole.model import Hole
from simulator.hole.shapes import OPEN_END_YD, OPEN_SIDE_YD
from simulator.hole.slopes import LEVEL
from simulator.hole.surfaces import Surface


class Raster(NamedTuple):
    """Ground on square cells; index [j, i] is the cell centred at x0 + i cell, y0 + j cell.

    x0_yd, y0_yd : centre of cell [0, 0] [yd]; cell_yd : side of a cell [yd].
    surface : uint8 (ny, nx), codes of `Surface`.
    feature : int16 (ny, nx), index in `hole.features`, -1 on bare rough.
    height : float32 (ny, nx), above the tee in use [yd]; grad_x, grad_y : float32 (ny, nx), its slopes
        [yd per yd], central differences of the heights before rounding (one-sided at the rim).
    canopy : uint8 (ny, nx), 0 under the sky, else 1 + row of `crowns`; of two crowns the higher.
    crowns : float64 (n, 3), base, top and mean way to a hit [yd], heights above the ground below.
    planes : float64 (p, 2), slope of a green [yd per yd] and the way it falls, clockwise from +y [rad];
        row 0 is the plane under the pin in use.
    feature_planes : int16 (features,), row of `planes` of each green or part of one, -1 of other ground.
    """

    x0_yd: float
    y0_yd: float
    cell_yd: float
    surface: np.ndarray
    feature: np.ndarray
    height: np.ndarray
    grad_x: np.ndarray
    grad_y: np.ndarray
    canopy: np.ndarray
    crowns: np.ndarray
    planes: np.ndarray
    feature_planes: np.ndarray


def ground_raster(
    hole: Hole, cell_yd: float = 1.0, margin_yd: float = OPEN_SIDE_YD, end_margin_yd: float = OPEN_END_YD
) -> Raster:
    """Raster of a hole by the cell-centre rule: a cell is what its centre lies on.

    Parameters
    ----------
    cell_yd : side of a cell [yd].
    margin_yd : ground kept left and right of the line, tees and pins [yd]. The default is as far
        as areas open to one side are drawn, some 120 yd beyond anything in play.
    end_margin_yd : ground kept past both ends of them [yd].

    Notes
    -----
    Cell *edges* lie on multiples of the cell: the raster does not change with the margins, and an area
    drawn in whole yards along the first leg keeps its size exactly (with the centres there, a path two
    yards wide would be one cell wide, or three).
    Height and slopes are zero on a hole without heights or slopes.
    """
    x_low, y_low, x_high, y_high = hole.bounds()
    left, right = math.floor((x_low - margin_yd) / cell_yd), math.ceil((x_high + margin_yd) / cell_yd)
    near, far = math.floor((y_low - end_margin_yd) / cell_yd), math.ceil((y_high + end_margin_yd) / cell_yd)
    x = (np.arange(left, right) + 0.5) * cell_yd
    y = (np.arange(near, far) + 0.5) * cell_yd
    surface = np.full((y.size, x.size), Surface.ROUGH, dtype=np.uint8)
    feature = np.full((y.size, x.size), -1, dtype=np.int16)
    for index, item in enumerate(hole.features):  # bottom first: later ones paint over
        area = a_cell_wide(item.area, cell_yd)
        i, j = _window(area, x, y)
        inside = _inside(area, x[i], y[j])
        surface[j, i][inside] = item.surface
        feature[j, i][inside] = index
    height, grad_x, grad_y = _heights(hole, x, y, cell_yd)
    canopy, crowns = _canopy(hole, x, y)
    planes, feature_planes = _planes(hole)
    return Raster(
        float(x[0]),
        float(y[0]),
        float(cell_yd),
        surface,
        feature,
        height,
        grad_x,
        grad_y,
        canopy,
        crowns,
        planes,
        feature_planes,
    )


def _heights(hole: Hole, x: np.ndarray, y: np.ndarray, cell_yd: float) -> list[np.ndarray]:
    """Height and its slopes along x and y, float32 (ny, nx) each."""
    if not hole.has_relief:
        return [np.zeros((y.size, x.size), dtype=np.float32) for _ in range(3)]
    height = hole.terrain.grid(x, y)
    grad_x, grad_y = np.empty(height.shape, np.float32), np.empty(height.shape, np.float32)
    per_two, per_one = 0.5 / cell_yd, 1.0 / cell_yd
    for slope, z in ((grad_x, height), (grad_y.T, height.T)):  # the float64 heights keep small slopes exact
        np.multiply(z[:, 2:] - z[:, :-2], per_two, out=slope[:, 1:-1], casting="same_kind")
        slope[:, 0], slope[:, -1] = (z[:, 1] - z[:, 0]) * per_one, (z[:, -1] - z[:, -2]) * per_one
    return [height.astype(np.float32), grad_x, grad_y]


def _canopy(hole: Hole, x: np.ndarray, y: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Which crown is over every cell, uint8 (ny, nx), and the kinds of crown, float64 (n, 3)."""
    crowns = np.array([[k.base_yd, k.top_yd, k.hit_length_yd] for k in hole.crown_kinds]).reshape(-1, 3)
    canopy = np.zeros((y.size, x.size), dtype=np.uint8)
    covers = [(f.area, f.crown) for f in hole.features if f.crown is not None]
    covers += [(t.ground, t.crown) for t in hole.single_trees]
    rows = {(k.base_yd, k.top_yd, k.hit_length_yd): row for row, k in enumerate(hole.crown_kinds, start=1)}
    for area, crown in sorted(covers, key=lambda cover: cover[1].top_yd):
        i, j = _window(area, x, y)
        canopy[j, i][_inside(area, x[i], y[j])] = rows[crown.base_yd, crown.top_yd, crown.hit_length_yd]
    return canopy, crowns


def _planes(hole: Hole) -> tuple[np.ndarray, np.ndarray]:
    """Planes of the greens, the one under the pin first, and the plane of each feature."""
    own = [f.slope or LEVEL if f.surface is Surface.GREEN else None for f in hole.features]
    here = [
        slope
        for f, slope in zip(hole.features, own, strict=True)
        if slope is not None and shapely.intersects_xy(f.area, hole.pin.x_yd, hole.pin.y_yd)
    ]
    first = here[-1] if here else LEVEL
    rows: dict[tuple[float, float], int] = {}
    of_feature = np.full(len(own), -1, dtype=np.int16)
    for k, slope in [(-1, first), *enumerate(own)]:
        if slope is None:
            continue
        plane = (slope.percent / 100.0, math.radians(slope.falls_bearing_deg))
        row = rows.setdefault(plane, len(rows))
        if k >= 0:
            of_feature[k] = row
    return np.array(list(rows), dtype=np.float64), of_feature


NUDGE_YD = 1e-6
"""A thin area is moved by so much: with both edges on the middles of cells it is on one row of them [yd]."""


def a_cell_wide(area: shapely.Geometry, cell_yd: float) -> shapely.Geometry:
    """An area in which no disk a cell across has room, widened to a cell all along; any other as it is.

    A ditch of two feet, or one of a yard whose edges are on the middles of cells, would else be on no cell
    or on some: no ball would ever find it. Its width is that of a rectangle of the same area and perimeter.
    """
    half = 0.5 * cell_yd
    if area.is_empty or not area.buffer(-half - NUDGE_YD).is_empty:
        return area
    around = 0.5 * area.length
    width = 0.5 * (around - math.sqrt(max(around * around - 4.0 * area.area, 0.0)))
    wide = area.buffer(max(half - 0.5 * width, 0.0), join_style="mitre", cap_style="flat")
    return shapely.affinity.translate(wide, NUDGE_YD, NUDGE_YD)


def _window(area: shapely.Geometry, x: np.ndarray, y: np.ndarray) -> tuple[slice, slice]:
    """Columns and rows whose centres lie in the box round an area."""
    x_min, y_min, x_max, y_max = area.bounds
    return slice(*np.searchsorted(x, [x_min, x_max])), slice(*np.searchsorted(y, [y_min, y_max]))


def _inside(area: shapely.Geometry, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Which centres of a grid lie inside an area, bool (ny, nx)."""
    shapely.prepare(area)
    return shapely.contains_xy(area, x[None, :], y[:, None])
