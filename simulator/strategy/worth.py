"""What a place is worth: the value map read on even squares, and what ten yards or another lie cost there."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from ..hole.model import Hole
from ..hole.surfaces import LIE_OF, WORDS, Lie, Surface
from ..tables.game import Board
from ..tables.luck import strike_sets
from ..tables.nodes import Grid
from . import streams
from .alternative import Alternative
from .ground import likeliest
from .plays import FIRST_SETS, FIRST_STRIKES
from .search import search
from .tries import Place

STEP_YD = 2.0
"""Spacing of the places read [yd]."""

ROUND_YD = 25.0
"""Ground shown round the middle nine tenths of the finishes [yd]."""

TEN_YD = 10.0
"""How much nearer to the pin, and farther from it, the cost of distance is told for [yd]."""

NEAR_YD = 30.0
"""Another lie is told of only where the map knows it so near [yd]."""


@dataclass(frozen=True)
class ValueMap:
    """Strokes to hole out from every place round where a shot finishes.

    Attributes
    ----------
    x_yd : float64[columns]
    y_yd : float64[rows]
    strokes : float64[rows, columns]
        By the value map, the ball lying on the ground of the place; NaN on greens and where nothing can be
        played from.
    here_yd : tuple of float
        Place whose worth is the zero of comparison: the middle of the finishes on their likeliest ground;
        where all are on the green, the place they are played from.
    here : float
        Strokes from there.
    ground : str
        Word of that ground.
    ten_nearer, ten_farther : float or None
        Strokes saved by ten yards nearer to the pin and lost by ten yards farther from it, on that ground;
        None where that is on the green or past the pin.
    lies : dict of str to float
        Strokes more than from `here_yd` at the same place, the ball lying on other ground of the hole: of the
        best shot of each, not of the map.
    """

    x_yd: np.ndarray
    y_yd: np.ndarray
    strokes: np.ndarray
    here_yd: tuple[float, float]
    here: float
    ground: str
    ten_nearer: float | None
    ten_farther: float | None
    lies: dict[str, float]


def value_map(place: Place, one: Alternative, hole: Hole, seed: int) -> ValueMap:
    """Read the solved map round the finishes of one alternative; `seed` is of what other ground is worth."""
    board, xy = place.board, one.finishes_yd
    low, high = np.quantile(xy, 0.05, axis=0) - ROUND_YD, np.quantile(xy, 0.95, axis=0) + ROUND_YD
    x = np.arange(low[0], high[0] + STEP_YD, STEP_YD)
    y = np.arange(low[1], high[1] + STEP_YD, STEP_YD)
    surfaces = _surfaces(board, xy[:, 0], xy[:, 1])
    middle = likeliest(xy, surfaces)
    if middle is None and (surfaces == Surface.GREEN).all():  # from where they were played, then
        middle = np.array([place.x_yd, place.y_yd]), Surface[Lie(place.lie).name]
    if middle is None:  # where no shot is played from any of them: as rough
        middle = likeliest(xy, np.full(len(xy), int(Surface.ROUGH)))
    assert middle is not None
    here_xy, ground = middle
    here, nearer, farther = _ten_yards(board, hole, here_xy, LIE_OF[ground])
    return ValueMap(
        x_yd=x, y_yd=y, strokes=_read_squares(board, x, y), here_yd=(float(here_xy[0]), float(here_xy[1])),
        here=here, ground=WORDS[ground], ten_nearer=_finite(here - nearer),
        ten_farther=_finite(farther - here), lies=_other_lies(place, hole, here_xy, LIE_OF[ground], seed),
    )  # fmt: skip


def _read_squares(board: Board, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Strokes from each of even squares, the ball lying on its ground, float64[rows, columns]; NaN where the
    map has none."""
    xx, yy = np.meshgrid(x, y)
    surfaces = _surfaces(board, xx.ravel(), yy.ravel())
    strokes = np.full(xx.shape, np.nan)
    for surface in Surface:
        lie = LIE_OF.get(surface)
        there = (surfaces == surface).reshape(xx.shape)
        if lie is not None and lie is not Lie.GREEN and there.any():
            known = read_map(board, xx.ravel(), yy.ravel(), lie).reshape(xx.shape)
            strokes[there] = smooth(known, board.nodes.coarse.step_yd / STEP_YD)[there]
    return strokes


def _ten_yards(board: Board, hole: Hole, here_xy: np.ndarray, lie: Lie) -> tuple[float, float, float]:
    """Strokes from a place, from ten yards nearer to the pin and from ten farther, the ball lying alike.

    NaN on the green and past the pin.
    """
    to_pin = np.array(hole.pin.xy_yd) - here_xy
    away_yd = float(np.hypot(*to_pin))
    step = TEN_YD * to_pin / max(away_yd, TEN_YD)
    spots = np.array([here_xy, here_xy + step, here_xy - step])
    here, nearer, farther = (_round_about(board, spot, lie) for spot in spots)
    _, near_green, far_green = _surfaces(board, spots[:, 0], spots[:, 1]) == Surface.GREEN
    past_pin = away_yd < TEN_YD
    return here, math.nan if near_green or past_pin else nearer, math.nan if far_green else farther


def _other_lies(place: Place, hole: Hole, here_xy: np.ndarray, lie: Lie, seed: int) -> dict[str, float]:
    """Strokes more on other ground of the hole than with a lie, at the same place, by the words of it."""
    kinds = dict.fromkeys(f.surface for f in hole.features if f.surface in LIE_OF)
    others = {
        WORDS[surface]: LIE_OF[surface]
        for surface in (Surface.FAIRWAY, Surface.ROUGH, *kinds)
        if LIE_OF[surface] not in (lie, Lie.GREEN, Lie.TEE, Lie.TREES)
        and surface not in (Surface.TEE, Surface.PATH)
        and np.isfinite(_round_about(place.board, here_xy, LIE_OF[surface], near_yd=NEAR_YD))
    }
    strikes = strike_sets(seed + streams.FIRST_SHOTS, FIRST_SETS, FIRST_STRIKES)
    by_lie = {one: _best_shot(place, here_xy, one, seed, strikes) for one in {lie, *others.values()}}
    return {word: by_lie[other] - by_lie[lie] for word, other in others.items()}


def smooth(values: np.ndarray, width: float) -> np.ndarray:
    """A picture's values without the luck of single nodes, float64[rows, columns]; gaps stay gaps.

    A Gaussian of so many squares, over the places that have a value.
    """
    from scipy.ndimage import gaussian_filter

    known = np.isfinite(values)
    total = gaussian_filter(np.where(known, values, 0.0), width)
    weight = gaussian_filter(known.astype(float), width)
    return np.where(known, total / np.maximum(weight, 1e-9), np.nan)


def _round_about(board: Board, spot: np.ndarray, lie: Lie, near_yd: float | None = None) -> float:
    """Mean worth of a node's square round a place, the ball lying so: one node's luck is not told as golf."""
    off = board.nodes.coarse.step_yd * np.linspace(-1.0, 1.0, 5)
    dx, dy = np.meshgrid(off, off)
    found = read_map(board, spot[0] + dx.ravel(), spot[1] + dy.ravel(), lie, near_yd)
    return float(found[np.isfinite(found)].mean()) if np.isfinite(found).any() else math.nan


def _best_shot(place: Place, spot: np.ndarray, lie: Lie, seed: int, strikes: np.ndarray) -> float:
    """Strokes from a place with a lie by its best shot, looked for there and valued on the strikes.

    Read off the map, rough on a fairway is its nearest node in rough, which few balls come to: what it cost
    went from -0.01 to 0.11 with the seed.
    """
    there = replace(place, x_yd=float(spot[0]), y_yd=float(spot[1]), lie=int(lie))
    best = search(there, seed, place.board.allowed(lie), keep_within=0.0, keep_most=1)[0]
    return there.worth(best.action, best.score, strikes).value


def _finite(value: float) -> float | None:
    return value if np.isfinite(value) else None


def _surfaces(board: Board, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Surface code of each place by the raster, rough outside it."""
    raster = board.raster
    i = np.rint((x - raster.x0_yd) / raster.cell_yd).astype(int)
    j = np.rint((y - raster.y0_yd) / raster.cell_yd).astype(int)
    inside = (i >= 0) & (j >= 0) & (i < raster.surface.shape[1]) & (j < raster.surface.shape[0])
    out = np.full(x.shape, int(Surface.ROUGH))
    out[inside] = raster.surface[j[inside], i[inside]]
    return out


def read_map(
    board: Board, x: np.ndarray, y: np.ndarray, lie: Lie, near_yd: float | None = None
) -> np.ndarray:
    """Strokes to hole out from places with a lie off the green, float64[n]: bilinear between nodes.

    Corners without a value are left out, as the kernels do it; NaN where none has one (or, with `near_yd`,
    takes the nearest node of that lie if there is one so near).
    """
    fine, coarse = board.nodes.fine, board.nodes.coarse
    inner = fine.holds(x, y)
    out = np.full(x.shape, np.nan)
    for grid, field, rows in (
        (coarse, board.game.field.coarse, np.flatnonzero(~inner)),
        (fine, board.game.field.fine, np.flatnonzero(inner)),
    ):
        if rows.size:
            out[rows] = _blend(grid, field[lie], x[rows], y[rows])
            lost = rows[~np.isfinite(out[rows])]
            if near_yd is not None and lost.size:
                out[lost] = _nearest(grid, field[lie], x[lost], y[lost], near_yd)
    return out


def _blend(grid: Grid, field: np.ndarray, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    rows, columns, shares = grid.weights(x, y)
    value = field[rows, columns]
    shares = np.where(np.isfinite(value), shares, 0.0)
    total, weight = (shares * np.nan_to_num(value)).sum(axis=1), shares.sum(axis=1)
    return np.where(weight > 1e-9, total / np.maximum(weight, 1e-9), np.nan)


def _nearest(grid: Grid, field: np.ndarray, x: np.ndarray, y: np.ndarray, near_yd: float) -> np.ndarray:
    rows, columns = np.nonzero(np.isfinite(field))
    out = np.full(x.shape, np.nan)
    if rows.size:
        for k in range(x.size):
            away = np.hypot(
                grid.x0_yd + columns * grid.step_yd - x[k], grid.y0_yd + rows * grid.step_yd - y[k]
            )
            n = int(np.argmin(away))
            if away[n] <= near_yd:
                out[k] = field[rows[n], columns[n]]
    return out
