"""The ground as arrays: which surface and which feature every cell is, and how high it lies."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
import shapely

from simulator.hole.model import Hole
from simulator.hole.shapes import OPEN_END_YD, OPEN_SIDE_YD
from simulator.hole.surfaces import Surface


class Raster(NamedTuple):
    """Ground on square cells; index [j, i] is the cell centred at x0 + i cell, y0 + j cell.

    x0_yd, y0_yd : centre of cell [0, 0] [yd]; cell_yd : side of a cell [yd].
    surface : uint8 (ny, nx), codes of `Surface`.
    feature : int16 (ny, nx), index in `hole.features`, -1 on bare rough.
    height : float32 (ny, nx) [yd]; grad_x, grad_y : float32 (ny, nx), its slopes [yd per yd].
    """

    x0_yd: float
    y0_yd: float
    cell_yd: float
    surface: np.ndarray
    feature: np.ndarray
    height: np.ndarray
    grad_x: np.ndarray
    grad_y: np.ndarray


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
    Height and slopes are zero: a sketch holds no heights.
    """
    x_low, y_low, x_high, y_high = hole.bounds()
    left, right = math.floor((x_low - margin_yd) / cell_yd), math.ceil((x_high + margin_yd) / cell_yd)
    near, far = math.floor((y_low - end_margin_yd) / cell_yd), math.ceil((y_high + end_margin_yd) / cell_yd)
    x = (np.arange(left, right) + 0.5) * cell_yd
    y = (np.arange(near, far) + 0.5) * cell_yd
    surface = np.full((y.size, x.size), Surface.ROUGH, dtype=np.uint8)
    feature = np.full((y.size, x.size), -1, dtype=np.int16)
    for index, item in enumerate(hole.features):  # bottom first: later ones paint over
        x_min, y_min, x_max, y_max = item.area.bounds
        i = slice(*np.searchsorted(x, [x_min, x_max]))
        j = slice(*np.searchsorted(y, [y_min, y_max]))
        inside = _inside(item.area, x[i], y[j])
        surface[j, i][inside] = item.surface
        feature[j, i][inside] = index
    flat = [np.zeros(surface.shape, dtype=np.float32) for _ in range(3)]
    return Raster(float(x[0]), float(y[0]), float(cell_yd), surface, feature, *flat)


def _inside(area: shapely.Geometry, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Which centres of a grid lie inside an area, bool (ny, nx)."""
    shapely.prepare(area)
    return shapely.contains_xy(area, x[None, :], y[:, None])
