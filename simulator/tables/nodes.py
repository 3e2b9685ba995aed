"""Where the value map has its nodes: two square grids, per lie, only near ground of that lie."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from ..hole.model import Hole
from ..hole.surfaces import LIE_OF, PENALTY_SURFACES, Lie, Surface
from .rasters import Raster

COARSE_YD = 5.0
"""Node spacing [yd] away from the pin."""

WOODED_YD, WOODED_SHARE = 3.5, 0.2
"""Node spacing [yd] where so large a share of the ground on the map is under trees: there a place is worth
what the next gap in them lets through, and that changes within a few yards."""

FINE_YD = 2.0
"""Node spacing [yd] around the pin, where a yard is worth most and may be the edge of the fringe."""

HELD_YD, WIDE_YD = (8.0, 3.5), (16.0, 7.0)
"""Spacings away from and around the pin [yd] where a plan is held and valued anew, many times over or for a
rough answer: a plan takes finer nodes to find than to value."""

FINE_REACH_YD = 32.0
"""Half side of the square around the pin that has fine nodes."""

SIDE_YD, BEHIND_YD, BEYOND_YD = 64.0, 16.0, 56.0
"""How far beside, behind and beyond the line of play the map reaches [yd]. A ball farther out (one in a
hundred) is valued at the nearest edge."""

WIDE_WATER_YD, BANK_YD = 20.0, 40.0
"""Where so long a penalty area comes to within a third of the second of the map's edge, or over it, the map
reaches so far past its bank [yd]: that is where the next ball is dropped, and where those who cannot carry it
go round."""

LIES = len(Lie)


@dataclass(frozen=True)
class Grid:
    """One square grid of nodes: node (row j, column i) is at (x0 + i step, y0 + j step)."""

    x0_yd: float
    y0_yd: float
    step_yd: float
    rows: int
    columns: int
    wanted: np.ndarray
    """bool[lies, rows, columns]: nodes beside ground of the lie."""

    def holds(self, x_yd: np.ndarray, y_yd: np.ndarray) -> np.ndarray:
        """Whether each place lies between nodes of the grid, bool[n]."""
        return np.asarray(
            (x_yd >= self.x0_yd)
            & (x_yd < self.x0_yd + (self.columns - 1) * self.step_yd)
            & (y_yd >= self.y0_yd)
            & (y_yd < self.y0_yd + (self.rows - 1) * self.step_yd)
        )

    def weights(self, x_yd: np.ndarray, y_yd: np.ndarray) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
        """Rows, columns and bilinear weights of the four nodes round each place, [n, 4] each."""
        column = np.clip((x_yd - self.x0_yd) / self.step_yd, 0.0, self.columns - 1.0)
        row = np.clip((y_yd - self.y0_yd) / self.step_yd, 0.0, self.rows - 1.0)
        i, j = np.minimum(column.astype(int), self.columns - 2), np.minimum(row.astype(int), self.rows - 2)
        a, b = column - i, row - j
        weights = np.stack([(1.0 - a) * (1.0 - b), a * (1.0 - b), (1.0 - a) * b, a * b], axis=1)
        return j[:, None] + (0, 0, 1, 1), i[:, None] + (0, 1, 0, 1), weights

    def corners(self, x_yd: np.ndarray, y_yd: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Rows and columns of the four nodes round each place, int64[n, 4] each, the nearest first."""
        column = np.clip((x_yd - self.x0_yd) / self.step_yd, 0.0, self.columns - 1.000001)
        row = np.clip((y_yd - self.y0_yd) / self.step_yd, 0.0, self.rows - 1.000001)
        i, j = column.astype(int), row.astype(int)
        rows = np.stack([j, j, j + 1, j + 1], axis=1)
        columns = np.stack([i, i + 1, i, i + 1], axis=1)
        away = (rows - row[:, None]) ** 2 + (columns - column[:, None]) ** 2
        order = np.argsort(away, axis=1, kind="stable")
        return np.take_along_axis(rows, order, 1), np.take_along_axis(columns, order, 1)


@dataclass(frozen=True)
class Nodes:
    """The nodes of a value map, in solving order.

    Attributes
    ----------
    table : float64[n, 4]
        x, y, lie, distance to the pin; sorted by distance.
    place : int64[n, 4]
        Grid (0 coarse, 1 fine), lie, row, column of each.
    off_line_yd : float64[n]
        Distance from the line of play.
    coarse, fine : Grid
    reach_yd : float
        Half side of the square around the pin that was asked to have fine nodes.
    """

    table: np.ndarray
    place: np.ndarray
    off_line_yd: np.ndarray
    coarse: Grid
    fine: Grid
    reach_yd: float


def _lies(raster: Raster) -> np.ndarray:
    """Lie code of each raster cell, -1 where a ball has none or lies on the green."""
    lookup = np.full(len(Surface), -1)
    for surface, lie in LIE_OF.items():
        if lie is not Lie.GREEN:
            lookup[surface] = lie
    return lookup[raster.surface]


def _grid(
    centre_x: float,
    centre_y: float,
    step: float,
    box: tuple[float, float, float, float],
    x: np.ndarray,
    y: np.ndarray,
    lie: np.ndarray,
) -> Grid:
    """Grid with a node on (centre_x, centre_y), covering `box`; nodes wanted around the given ground."""
    left, low, right, high = box
    before_x, after_x = _steps(centre_x - left, step), _steps(right - centre_x, step)
    before_y, after_y = _steps(centre_y - low, step), _steps(high - centre_y, step)
    x0, y0 = centre_x - before_x * step, centre_y - before_y * step
    columns, rows = before_x + after_x + 1, before_y + after_y + 1
    lower = np.zeros((LIES, rows, columns), dtype=bool)  # the first node of the four round each place
    i = np.clip(np.floor((x - x0) / step).astype(int), 0, columns - 2)
    j = np.clip(np.floor((y - y0) / step).astype(int), 0, rows - 2)
    lower[lie, j, i] = True
    wanted = lower.copy()
    wanted[:, 1:] |= lower[:, :-1]
    wanted[:, :, 1:] |= wanted[:, :, :-1].copy()
    return Grid(x0, y0, step, rows, columns, wanted)


def _steps(reach_yd: float, step_yd: float) -> int:
    """Steps that cover a reach; no further one for a rounding error, where no ground would want its nodes."""
    return int(np.ceil(reach_yd / step_yd - 1e-6))


def _past_water(box: tuple[float, float, float, float], raster: Raster) -> tuple[float, float, float, float]:
    """The box with each side that a penalty area comes near to moved past it, though not off the raster."""
    wet = np.isin(raster.surface, [int(surface) for surface in PENALTY_SURFACES])
    left, low, right, high = box
    sides = []
    for edge, start, grid, outward in (
        (left, raster.x0_yd, wet.T, -1),
        (low, raster.y0_yd, wet, -1),
        (right, raster.x0_yd, wet.T, 1),
        (high, raster.y0_yd, wet, 1),
    ):
        near = edge - outward * BANK_YD / 3.0
        at = int(np.clip(round((near - start) / raster.cell_yd), 0, len(grid) - 1))
        beyond = grid[at::outward]  # lines of cells from there out
        if beyond[0].sum() * raster.cell_yd >= WIDE_WATER_YD:
            dry = np.argmin(np.vstack([beyond, np.zeros_like(beyond[:1])]), axis=0)  # how far each runs on
            away = min(dry.max() * raster.cell_yd + BANK_YD, (len(beyond) - 1) * raster.cell_yd)
            edge = near + outward * away
        sides.append(float(edge))
    return sides[0], sides[1], sides[2], sides[3]


def _box(hole: Hole, raster: Raster) -> tuple[float, float, float, float]:
    """What the map covers: left, low, right, high [yd]."""
    line = np.array([*hole.line, (hole.pin.x_yd, hole.pin.y_yd)])
    left, low = line.min(axis=0) - (SIDE_YD, BEHIND_YD)
    right, high = line.max(axis=0) + (SIDE_YD, BEYOND_YD)
    return _past_water((left, low, right, high), raster)


def place_nodes(
    hole: Hole,
    raster: Raster,
    coarse_yd: float | None = None,
    fine_yd: float = FINE_YD,
    reach_yd: float = FINE_REACH_YD,
) -> Nodes:
    """Nodes for the hole as rastered, from the pin and tee in use.

    Parameters
    ----------
    hole : Hole
    raster : Raster
    coarse_yd, fine_yd : float
        Spacing far from and near the pin [yd]; the first, left out, is `COARSE_YD`, or `WOODED_YD` in woods.
    reach_yd : float
        Half side of the square around the pin that has the latter.
    """
    lie = _lies(raster)
    row, column = np.nonzero(lie >= 0)
    x = raster.x0_yd + column * raster.cell_yd
    y = raster.y0_yd + row * raster.cell_yd
    codes = lie[row, column]
    pin_x, pin_y = hole.pin.x_yd, hole.pin.y_yd
    reach = float(np.ceil(reach_yd / fine_yd)) * fine_yd
    outer = reach + raster.cell_yd  # a cell across the edge of the square is read from it too
    near = (np.abs(x - pin_x) <= outer) & (np.abs(y - pin_y) <= outer)
    fine = _grid(
        pin_x,
        pin_y,
        fine_yd,
        (pin_x - reach, pin_y - reach, pin_x + reach, pin_y + reach),
        x[near],
        y[near],
        codes[near],
    )
    # the coarse grid serves only places the fine one does not, and the cells across its edge
    inner = reach - raster.cell_yd
    far = ~((np.abs(x - pin_x) < inner) & (np.abs(y - pin_y) < inner))
    left, low, right, high = box = _box(hole, raster)
    if coarse_yd is None:
        inside = codes[(x >= left) & (x <= right) & (y >= low) & (y <= high)]
        coarse_yd = WOODED_YD if (inside == Lie.TREES).sum() >= WOODED_SHARE * inside.size else COARSE_YD
    # ground beyond the box counts at its edge: that is where a ball out there is read
    coarse = _grid(pin_x, pin_y, coarse_yd, box, x[far], y[far], codes[far])
    tables, places = [], []
    for which, grid in enumerate((coarse, fine)):
        code, j, i = np.nonzero(grid.wanted)
        nx, ny = grid.x0_yd + i * grid.step_yd, grid.y0_yd + j * grid.step_yd
        tables.append(np.column_stack([nx, ny, code, np.hypot(nx - pin_x, ny - pin_y)]))
        places.append(np.column_stack([np.full(code.size, which), code, j, i]))
    table, place = np.concatenate(tables), np.concatenate(places)
    order = np.argsort(table[:, 3], kind="stable")
    table, place = table[order], place[order]
    line = shapely.LineString([*hole.line, (pin_x, pin_y)])
    off_line = shapely.distance(line, shapely.points(table[:, :2]))
    return Nodes(table, place, off_line, coarse, fine, reach_yd)
