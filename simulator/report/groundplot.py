"""The hole itself on a picture: areas, line of play, arcs of distance, tee and pin."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import shapely
from shapely.geometry.polygon import orient

from ..hole.model import Feature, Hole, Spot, Tree
from ..hole.surfaces import TROUBLE, Surface
from ..strategy.result import Start
from .falls import draw_falls
from .labels import Labels, in_lines
from .page import frame, view_box
from .palette import FAINT, GROUND, INK, PAPER
from .units import YARDS, Units
from .wordplaces import places_on, round_about

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.patches import Circle, PathPatch

ARC_STEP = 50
"""Arcs of distance from the ball every so many yards."""

ARC_WIDE_DEG = 50.0
"""Arcs reach this far either side of the line ball to pin [deg], as far as the picture does."""


def draw_hole(ax: Axes, hole: Hole, extent: tuple[float, float, float, float]) -> list[Surface]:
    """The ground and the line of play in view of at least a box; returns the kinds of ground there.

    Parameters
    ----------
    extent : tuple of float
        Least and greatest x, least and greatest y in the hole frame [yd].
    """
    frame(ax, *extent)
    seen = draw_ground(ax, hole)
    draw_line_of_play(ax, hole)
    return seen


def draw_ground(ax: Axes, hole: Hole) -> list[Surface]:
    """Fill every area, trouble hatched; returns the kinds of ground that are in view."""
    view = view_box(ax)
    seen = [Surface.ROUGH]
    for feature in hole.features:
        if not feature.area.intersects(view):
            continue
        ax.add_patch(area_patch(feature))
        seen.append(feature.surface)
    for tree in hole.single_trees:
        if crown_in(view, tree):
            ax.add_patch(_tree_patch(tree))
            seen.append(Surface.TREES)
    draw_falls(ax, hole)
    return sorted(set(seen))


def crown_in(view: shapely.Polygon, tree: Tree) -> bool:
    """Whether some of a lone tree's crown is in view, if not its trunk."""
    return bool(view.distance(shapely.Point(tree.x_yd, tree.y_yd)) < tree.crown_yd / 2.0)


def _tree_patch(tree: Tree) -> Circle:
    """One crown, looking like the trees it is one of."""
    from matplotlib.patches import Circle

    look = GROUND[Surface.TREES]
    return Circle(
        (tree.x_yd, tree.y_yd), tree.crown_yd / 2.0, facecolor=look.fill, edgecolor=look.edge,
        hatch=look.hatch or None, zorder=1.5,
    )  # fmt: skip


def area_patch(feature: Feature) -> PathPatch:
    """One area, filled and hatched as its ground.

    Rings cut out of it run against its edge, whichever way the file draws them: a path is filled wherever
    its rings do not wind to nothing, so a ring the same way round would be filled too.
    """
    from matplotlib.patches import PathPatch
    from matplotlib.path import Path

    look = GROUND[feature.surface]
    rings = [
        Path(np.asarray(ring.coords)[:, :2], closed=True)
        for part in shapely.get_parts(feature.area)
        for ring in (orient(part).exterior, *orient(part).interiors)
    ]
    return PathPatch(
        Path.make_compound_path(*rings),
        facecolor=look.fill,
        edgecolor=look.edge,
        hatch=look.hatch or None,
        label=feature.name,
        zorder=1.0,
    )


def draw_line_of_play(ax: Axes, hole: Hole) -> None:
    """The line of play, thin and dotted."""
    xy = np.asarray(hole.line, dtype=float)
    ax.plot(xy[:, 0], xy[:, 1], color=FAINT, linewidth=0.7, linestyle=(0, (1, 3)), zorder=2.0)


def draw_marks(ax: Axes, hole: Hole, start: Start, labels: Labels) -> None:
    """Pin, tee and, elsewhere than on the tee, the ball."""
    pin = hole.pin
    draw_flag(ax, pin, labels, 13.0, clear_pt=5.0)
    at_tee = start.lie == "tee"
    ax.plot(
        [start.x_yd], [start.y_yd], marker="s" if at_tee else "D", markersize=4.5, color=PAPER,
        markeredgecolor=INK, zorder=6.0, linestyle="none",
    )  # fmt: skip
    labels.keep_clear(*start.xy_yd, 4.0)
    troubles = shapely.union_all([f.area for f in hole.features if f.surface in TROUBLE])
    for words, x, y in (("tee" if at_tee else "ball", start.x_yd, start.y_yd), ("pin", pin.x_yd, pin.y_yd)):
        labels.put(words, round_about(ax, x, y), off=troubles, fontsize=6.5)


def draw_aim_marks(ax: Axes, hole: Hole, labels: Labels) -> None:
    """What a line can be worded by, where in view: a small named triangle, unlike any ground."""
    view = view_box(ax)
    for mark in hole.marks:
        if not view.contains(shapely.Point(mark.x_yd, mark.y_yd)):
            continue
        ax.plot(
            [mark.x_yd], [mark.y_yd], marker="^", markersize=5, color=PAPER, markeredgecolor=INK,
            zorder=6.0, linestyle="none", label=mark.name,
        )  # fmt: skip
        labels.keep_clear(mark.x_yd, mark.y_yd, 4.0)
        labels.put(in_lines(mark.name), round_about(ax, mark.x_yd, mark.y_yd))


def draw_flag(ax: Axes, pin: Spot, labels: Labels, size_pt: float, clear_pt: float) -> None:
    """The flag, and no words within some points of it."""
    ax.plot(
        [pin.x_yd], [pin.y_yd], marker=_flag(), markersize=size_pt, color=INK, zorder=6.0, linestyle="none"
    )
    labels.keep_clear(pin.x_yd, pin.y_yd, clear_pt)


def _flag() -> object:
    """A flag whose foot stands on the place."""
    from matplotlib.path import Path

    return Path(
        [(0.0, 0.0), (0.0, 1.0), (0.62, 0.78), (0.0, 0.56), (0.0, 0.0)],
        [Path.MOVETO, Path.LINETO, Path.LINETO, Path.LINETO, Path.CLOSEPOLY],
    )


def draw_arcs(ax: Axes, hole: Hole, start: Start, labels: Labels, units: Units = YARDS) -> None:
    """Arcs of distance from the ball, labelled in whole fifties of the unit."""
    ahead = math.atan2(hole.pin.x_yd - start.x_yd, hole.pin.y_yd - start.y_yd)
    turn = ahead + np.radians(np.arange(-ARC_WIDE_DEG, ARC_WIDE_DEG + 0.5, 1.0))
    (x0, x1), (y0, y1) = ax.get_xlim(), ax.get_ylim()
    for mark in range(ARC_STEP, int(units.of(start.out_yd)) + ARC_STEP, ARC_STEP):
        radius = mark / units.of(1.0)
        x, y = start.x_yd + radius * np.sin(turn), start.y_yd + radius * np.cos(turn)
        seen = (x > x0) & (x < x1) & (y > y0) & (y < y1)
        if not seen.any():
            continue
        ax.plot(x, y, color=FAINT, linewidth=0.45, zorder=2.5)
        here = np.flatnonzero(seen)
        places = [(float(x[k]), float(y[k])) for k in here[::-1]]  # the right-hand end first
        labels.put(f"{mark} {units.short}", places)


def draw_names(ax: Axes, hole: Hole, names: list[str], labels: Labels) -> None:
    """Names of some areas, each on its own area or close to it."""
    view = view_box(ax)
    for name in names:
        feature = next(f for f in hole.features if f.name == name)
        seen = hole.uncovered(feature).intersection(view)
        if seen.is_empty:
            continue
        others = shapely.union_all([f.area for f in hole.features if f.name != name and f.surface in TROUBLE])
        labels.put(in_lines(name), places_on(seen, ax, others), within=seen, style="italic")
