"""A hole as a map on a page: ground, stations along the line of play, letters on every trouble."""

from __future__ import annotations

import string
from collections.abc import Collection
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..hole.model import Hole
from ..hole.surfaces import TROUBLE, Surface
from ..hole.troubles import BEHIND_GREEN_YD, BESIDE_YD, Trouble
from ..hole.yardage import Yardage
from . import groundplot
from .labels import Labels
from .page import figure_of, view_box
from .palette import FAINT, INK, PAPER
from .units import YARDS, Units
from .wordplaces import places_near

if TYPE_CHECKING:
    from matplotlib.axes import Axes

STATION_STEP = 50
"""Stations marked on the line, in the unit of the page."""

SMALL_PT2 = 140.0
"""Ground of less than this has its letter beside it; a letter and its edge take half [square points]."""

RIM_YD = 1.0
"""Trouble no farther in from the edge of a map than this is not seen: a letter there has no ground [yd]."""

LETTERS = string.ascii_lowercase + string.ascii_uppercase


def whole_hole(hole: Hole, beside_yd: float = BESIDE_YD) -> tuple[float, float, float, float]:
    """Least and greatest x, least and greatest y that show a hole from tee to behind the green [yd]."""
    behind = float(hole.play_line.corners_of(hole.green)[:, 0].max())
    line = shapely.LineString([*hole.line, hole.at(max(behind, hole.length_yd) + 0.6 * BEHIND_GREEN_YD)])
    x0, y0, x1, y1 = shapely.union_all([line.buffer(beside_yd, cap_style="flat"), hole.green]).bounds
    return x0, x1, min(y0, -12.0), y1


AWAY_STEP = 0.04
"""Places beside an area whose distances from it are of one such step are as near [widths of the map]."""

LINE_STEPS = 3.0
"""So many of them beside the line of play its numbers stand."""


def letters(yardage: Yardage) -> list[tuple[str, Trouble]]:
    """Troubles with the letter each has on the map, in order from the tee."""
    return list(zip(LETTERS, yardage.troubles, strict=False))


def off_the_map(ax: Axes, yardage: Yardage) -> set[str]:
    """Letters of troubles that are not on a map, or of which only its rim has a sliver."""
    well_on = view_box(ax).buffer(-RIM_YD)
    return {letter for letter, one in letters(yardage) if not ground_of(yardage, one).intersects(well_on)}


def draw_stations(ax: Axes, hole: Hole, labels: Labels, units: Units = YARDS) -> None:
    """A tick and its number on the line of play at every 50."""
    wide = ax.get_xlim()[1] - ax.get_xlim()[0]
    scale = 1.0 / units.of(1.0)
    for mark in range(STATION_STEP, int(units.of(hole.length_yd)), STATION_STEP):
        station = mark * scale
        (ax0, ay0), (bx0, by0) = hole.at(station, -0.012 * wide), hole.at(station, 0.012 * wide)
        ax.plot([ax0, bx0], [ay0, by0], color=INK, linewidth=0.8, zorder=3.0)
        places = [hole.at(station, t * wide) for t in (0.055, -0.055, 0.075, -0.075, 0.1, -0.1)]
        labels.put(f"{mark}", places)


def draw_letters(
    ax: Axes, yardage: Yardage, labels: Labels, named: Collection[str] | None = None
) -> list[str]:
    """A letter on every trouble (on those with some letters alone), beside it where it is small.

    Returns
    -------
    list of str
        Letters for which there was no place.
    """
    left_out = []
    view, off = view_box(ax), off_the_map(ax, yardage)
    for letter, trouble in letters(yardage):
        if named is not None and letter not in named:
            continue
        if letter in off:
            left_out.append(letter)
            continue
        area = ground_of(yardage, trouble).intersection(view)
        small = _is_small(area, ax)
        places = _beside(area, ax, yardage.hole) if small else places_near(area, ax)
        text = labels.put(letter, places, fontsize=6.5, weight="bold")
        if text is None:
            left_out.append(letter)
        elif small:
            labels.keep_clear(area.centroid.x, area.centroid.y, SMALL_PT2**0.5 / 4.0)
    return left_out


def _is_small(area: shapely.Geometry, ax: Axes) -> bool:
    """Whether a letter would hide most of an area."""
    (x0, y0), (x1, y1) = ax.transData.transform([(0.0, 0.0), (1.0, 1.0)]) * 72.0 / figure_of(ax).dpi
    return bool(area.area * abs((x1 - x0) * (y1 - y0)) < SMALL_PT2)


def _beside(area: shapely.Geometry, ax: Axes, hole: Hole) -> list[tuple[float, float]]:
    """Places round an area, those on no other trouble first, then on it.

    The nearest go first: about a stream that runs slantwise the corners of its box are far from it. Of these
    such as leave the line of play its numbers.
    """
    near, step = places_near(area, ax), AWAY_STEP * (ax.get_xlim()[1] - ax.get_xlim()[0])
    points = shapely.points(near)
    on = shapely.covers(area.buffer(1.0), points)
    other = [f.area for f in hole.features if f.surface in TROUBLE or f.surface is Surface.GREEN]
    taken = np.array([shapely.covers(one, points) for one in other]).reshape(-1, len(near)).any(axis=0)
    away = np.where(on, 0, shapely.distance(area, points) // step)
    in_line = ~on & (shapely.distance(shapely.LineString(hole.line), points) < LINE_STEPS * step)
    order = np.lexsort((in_line, away, np.where(on, 2, taken)))
    return [near[k] for k in order]


def ground_of(yardage: Yardage, trouble: Trouble) -> shapely.Geometry:
    """The ground of a trouble beyond the page too; of an area told in parts, that part of it."""
    parts = sum(one.name == trouble.name for one in yardage.troubles)
    return trouble.ground if parts > 1 else area_of(yardage.hole, trouble.name)


def area_of(hole: Hole, name: str) -> shapely.Geometry:
    """The ground of a named area or lone tree that no other area covers."""
    for feature in hole.features:
        if feature.name == name:
            return hole.uncovered(feature)
    return next(tree.ground for tree in hole.single_trees if tree.name == name)


def draw_map(
    ax: Axes,
    yardage: Yardage,
    units: Units = YARDS,
    *,
    beside_yd: float = BESIDE_YD,
    named: Collection[str] | None = None,
) -> list[Surface]:
    """The whole hole with stations and letters, all or those `named`; returns the kinds of ground in view."""
    hole = yardage.hole
    seen = groundplot.draw_hole(ax, hole, whole_hole(hole, beside_yd))
    labels = Labels(ax, np.empty((0, 2)))
    groundplot.draw_flag(ax, hole.pin, labels, 11.0, clear_pt=4.0)
    ax.plot([0.0], [0.0], marker="s", markersize=4, color=PAPER, markeredgecolor=INK, zorder=6.0)
    labels.keep_clear(0.0, 0.0, 3.0)
    for tee in hole.tees:
        if tee.name != hole.tee.name:
            ax.plot([tee.x_yd], [tee.y_yd], marker="s", markersize=2.5, color=FAINT, zorder=5.5)
    draw_letters(ax, yardage, labels, named)  # first: a number has two sides of the line, a bunker one place
    draw_stations(ax, hole, labels, units)
    return seen
