"""The hole itself on a picture: areas, line of play, arcs of distance, tee and pin."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import shapely
from shapely.geometry.polygon import orient

from ..hole.model import Feature, Hole, Spot, Tree
from ..hole.surfaces import TROUBLE, WORDS, Surface
from ..strategy.result import Start
from .labels import Labels, in_lines
from .page import figure_of, frame
from .palette import FAINT, GROUND, INK, PAPER
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.patches import Circle, Patch, PathPatch
    from matplotlib.text import Annotation

ARC_STEP = 50
"""Arcs of distance from the ball every so many yards."""

FALL_ARROW_YD = 4.0
"""Half the length of the arrow that shows how a green falls [yd]."""

FALLS = "Arrow: the way the green falls."
"""Said by `falls_said`."""

LEAST_ARROW_PT = 12.0
"""A shorter arrow is none that anybody could read [points]."""

GRID = 9
"""Places tried across and along an area for its name."""

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
    _draw_falls(ax, hole)
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


def _draw_falls(ax: Axes, hole: Hole) -> None:
    """A small arrow down the fall line of every sloped green, or part of one, where it can be read."""
    (x0, _), (x1, _) = ax.transData.transform([(0.0, 0.0), (2.0 * FALL_ARROW_YD, 0.0)])
    if abs(x1 - x0) * 72.0 / figure_of(ax).dpi < LEAST_ARROW_PT:
        return
    for rank, feature in enumerate(hole.features):
        if feature.surface is not Surface.GREEN or feature.slope is None or feature.slope.percent == 0.0:
            continue
        above = shapely.union_all([later.area for later in hole.features[rank + 1 :]])
        seen = feature.area.difference(above)  # a tier has an arrow of its own
        if seen.is_empty:
            continue
        bearing = math.radians(feature.slope.falls_bearing_deg)
        middle = _off_the_pin(seen, hole)
        dx, dy = FALL_ARROW_YD * math.sin(bearing), FALL_ARROW_YD * math.cos(bearing)
        ax.annotate(
            "", (middle.x + dx, middle.y + dy), (middle.x - dx, middle.y - dy),
            arrowprops={"arrowstyle": "->", "color": INK, "linewidth": 0.7}, zorder=2.5,
        )  # fmt: skip


def _off_the_pin(area: shapely.Geometry, hole: Hole) -> shapely.Point:
    """A place for an arrow on a green: its middle, or where there is room left or right of the flag."""
    middle, pin = area.representative_point(), shapely.Point(*hole.pin.xy_yd)
    if middle.distance(pin) > 3.0 * FALL_ARROW_YD:
        return middle
    inner = area.buffer(-1.5 * FALL_ARROW_YD).difference(pin.buffer(2.0 * FALL_ARROW_YD))
    return middle if inner.is_empty else inner.representative_point()


def falls_shown(ax: Axes) -> list[Annotation]:
    """Arrows down the fall of a green that a picture shows."""
    from matplotlib.text import Annotation

    arrows = [text for text in ax.texts if isinstance(text, Annotation) and text.arrow_patch is not None]
    seen = view_box(ax)
    return [arrow for arrow in arrows if seen.contains(shapely.Point(arrow.xy))]


def falls_said(ax: Axes) -> str:
    """What a page says of the arrows on its picture; empty where there is none."""
    return FALLS if falls_shown(ax) else ""


def keep_off_falls(ax: Axes, labels: Labels) -> None:
    """Keep words off the arrows of `falls_shown`."""
    for arrow in falls_shown(ax):
        labels.keep_off(arrow.xy, arrow.xyann, 2.0)


def view_box(ax: Axes) -> shapely.Polygon:
    """What the axes show, as a box in data units."""
    (x0, x1), (y0, y1) = ax.get_xlim(), ax.get_ylim()
    return shapely.box(x0, y0, x1, y1)


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


def ground_key(seen: list[Surface]) -> list[Patch]:
    """A patch for each kind of ground in view, for the legend."""
    from matplotlib.patches import Patch

    order = [Surface.FAIRWAY, Surface.GREEN, Surface.ROUGH, *TROUBLE, Surface.PATH]
    return [
        Patch(
            facecolor=GROUND[s].fill,
            edgecolor=GROUND[s].edge if s is not Surface.ROUGH else FAINT,
            hatch=_key_hatch(GROUND[s].hatch),
            label=WORDS[s],
        )
        for s in order
        if s in seen
    ]


def _key_hatch(hatch: str) -> str | None:
    """Lines twice as dense, so that the small patch of a key shows some; dots are dense enough."""
    return (hatch if set(hatch) & set("o.") else 2 * hatch) or None


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


def round_about(
    ax: Axes, x: float, y: float, radii: tuple[float, ...] = (0.065, 0.1)
) -> list[tuple[float, float]]:
    """Places round a mark, in eight directions, the nearer first; radii are shares of the width."""
    x0, x1 = ax.get_xlim()
    turns = np.radians((0, 180, 315, 225, 45, 135, 270, 90))
    return [
        (x + r * (x1 - x0) * math.cos(t), y + 0.6 * r * (x1 - x0) * math.sin(t)) for r in radii for t in turns
    ]


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
        rank = next(k for k, f in enumerate(hole.features) if f.name == name)
        above = shapely.union_all([f.area for f in hole.features[rank + 1 :]])
        seen = hole.features[rank].area.intersection(view).difference(above)
        if seen.is_empty:
            continue
        others = shapely.union_all([f.area for f in hole.features if f.name != name and f.surface in TROUBLE])
        labels.put(in_lines(name), _places_on(seen, ax, others), within=seen, style="italic")


def _places_on(seen: shapely.Geometry, ax: Axes, others: shapely.Geometry) -> list[tuple[float, float]]:
    """Places in and round an area: its middle, along its length, then beside it, off the others first.

    The name of a narrow lane stands beside it: on a pond there it would be the pond's.
    """
    middle = seen.representative_point()
    x0, y0, x1, y1 = seen.bounds
    x, y = middle.x, middle.y
    wide = ax.get_xlim()[1] - ax.get_xlim()[0]
    along = [(x, y0 + t * (y1 - y0)) for t in (0.5, 0.35, 0.65, 0.2, 0.8)]
    across = [(x0 + t * (x1 - x0), y) for t in (0.5, 0.3, 0.7)]
    step = 0.05 * wide
    beside = [(x1 + 2 * step, y), (x0 - 2 * step, y), (x, y1 + step), (x, y0 - step),
              (x1 + 3 * step, y), (x0 - 3 * step, y)]  # fmt: skip
    beside += [(edge, t) for _, t in along[1:] for edge in (x1 + 2 * step, x0 - 2 * step)]
    beside.sort(key=lambda place: bool(others.intersects(shapely.Point(place).buffer(step))))
    return [(x, y), *along, *across, *spread_over(seen), *beside]


def spread_over(area: shapely.Geometry) -> list[tuple[float, float]]:
    """Places all over an area, for words that fit only here and there."""
    x0, y0, x1, y1 = area.bounds
    x, y = np.meshgrid(np.linspace(x0, x1, GRID + 2)[1:-1], np.linspace(y0, y1, GRID + 2)[1:-1])
    inside = shapely.contains_xy(area, x, y)
    return [(float(a), float(b)) for a, b in zip(x[inside], y[inside], strict=True)]
