"""The maps of a lesson: the plan, an alternative's cloud, what a place is worth, the shot at the green."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..hole.surfaces import TROUBLE
from ..strategy.aimline import AimLine
from ..strategy.alternative import Alternative
from ..strategy.lesson import Lesson
from ..strategy.result import Answer
from . import groundplot, shotplot
from .chosen import PENALTY, leading
from .holemap import area_of, ground_of, places_near
from .labels import MARGIN_PT, Labels, haloed, in_lines
from .page import frame, own_axes
from .palette import CONTOUR, INK, PAPER, SHOTS, ShotLook
from .units import YARDS, Units

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from matplotlib.axes import Axes
    from matplotlib.contour import ContourSet
    from matplotlib.text import Text

    from ..hole.surfaces import Surface
    from ..hole.troubles import Trouble

MOST_NAMES = 7
"""Areas named on one map."""

VALUE_STEPS = (0.05, 0.1, 0.2, 0.5, 1.0)
"""Steps of the lines of equal worth [strokes]: the finest that gives no more than `MOST_LINES`."""

MOST_LINES = 7

SPECK = 0.1
"""Rings of equal worth smaller than this share of the width are scatter of the map and not drawn."""

RINGS = (0.05, 0.09, 0.14)
"""How far from the middle of some balls their count is tried, in widths of the map."""

MIDDLE = (0.15, 0.85)
"""Share of the ground whose worth the lines cover: dear ground beside the play has none of its own."""


def draw_plan_map(result: Lesson, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """The hole with the plan: aim, lines that play alike, a hundred finishes, carries to what they may meet.

    Parameters
    ----------
    result : Lesson
    ax : Axes, optional
        Made when left out.
    units : Units
        Of the words on the picture.
    """
    ax = own_axes(ax)
    answer = result.answer
    groundplot.draw_hole(ax, answer.hole, shotplot.extent(answer, [answer.recommended]))
    _draw_band(ax, answer, answer.best)
    _draw_room(ax, answer, answer.best)
    shotplot.draw_shot(ax, answer, answer.recommended, SHOTS[0], 0.0)
    labels = Labels(ax, shotplot.words_avoid(answer, [answer.recommended]))
    groundplot.keep_off_falls(ax, labels)
    groundplot.draw_marks(ax, answer.hole, answer.start, labels)
    groundplot.draw_arcs(ax, answer.hole, answer.start, labels, units)
    for one in _matter(result, answer.best):
        far = "" if one.clear_yd is None else f"-{units.number(one.clear_yd)}"
        words = f"{one.name} {units.number(one.reach_yd)}{far}"
        _name(labels, words, ground_of(result.yardage, one), ax, fontsize=5.5)
    return ax


def draw_cloud(result: Lesson, index: int, *, ax: Axes | None = None) -> Axes:
    """One alternative: its aim, a hundred finishes, and the count in every trouble they find.

    Parameters
    ----------
    result : Lesson
    index : int
        Of the alternative; both clouds of a pair show the same ground.
    """
    ax = own_axes(ax)
    answer = result.answer
    groundplot.draw_hole(ax, answer.hole, shotplot.extent(answer, leading(answer)))
    one = answer.alternatives[index]
    shotplot.draw_shot(ax, answer, index, _look(answer, index), 0.0)
    dots = shotplot.hundred(answer, one)
    labels = Labels(ax, shotplot.words_avoid(answer, [index]))
    groundplot.keep_off_falls(ax, labels)
    groundplot.draw_marks(ax, answer.hole, answer.start, labels)
    troubles = {f.name for f in answer.hole.features if f.surface in TROUBLE}
    for name, count in shotplot.counts(answer, one).items():
        if name in troubles:
            area = area_of(answer.hole, name)
            inside = dots[[_in(answer, name, x, y) for x, y in dots]]
            for places in _count_places(answer, ax, name, inside):
                if labels.put(f"{count}", places, within=area, fontsize=8.0, weight="bold") is not None:
                    break
    return ax


def draw_value(result: Lesson, *, ax: Axes | None = None) -> Axes:
    """Lines of equal worth round the finishes, in strokes over the middle of them."""
    ax = own_axes(ax)
    answer, value = result.answer, result.value
    x, y = value.x_yd, value.y_yd
    groundplot.draw_hole(ax, answer.hole, (x[0], x[-1], y[0], y[-1]))
    over = value.strokes - value.here
    low, high = np.nanquantile(over, MIDDLE)
    step = next((s for s in VALUE_STEPS if (high - low) / s <= MOST_LINES), VALUE_STEPS[-1])
    levels = step * np.arange(math.floor(low / step), math.ceil(high / step) + 1)
    lines = ax.contour(
        x, y, over, levels=levels, colors=CONTOUR, linewidths=0.9, zorder=3.0, linestyles="solid"
    )
    _without_specks(lines, SPECK * float(np.ptp(ax.get_xlim())))
    digits = 2 if step < 0.1 else 1
    whole = list(lines.get_paths())
    named = _numbers(ax, lines, digits)
    kept = _thin(ax, named, value.here_yd)
    if len(kept) < len(named):  # lines are broken for their numbers: whole again where one was taken away
        for text in kept:
            text.remove()
        lines.set_paths(whole)
        kept = _numbers(ax, lines, digits, [text.get_position() for text in kept])
    for text in kept:
        haloed(text)
    hx, hy = value.here_yd
    ax.plot([hx], [hy], marker="P", markersize=7, color=PAPER, markeredgecolor=INK, zorder=6.0)
    return ax


def _numbers(
    ax: Axes, lines: ContourSet, digits: int, places: Sequence[tuple[float, float]] | None = None
) -> list[Text]:
    """Numbers on the lines, which are broken for them: at some places of theirs, else where there is room."""
    if places is not None and not places:
        return []
    return list(ax.clabel(
        lines, fmt=lambda v: f"{v:+.{digits}f}" if abs(v) > 1e-9 else "0", fontsize=6.5, colors=CONTOUR,
        inline=True, manual=False if places is None else list(places),
    ))  # fmt: skip


def draw_approach(result: Lesson, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """The green with its flag, the best target, its room, and a hundred finishes of the shot at it."""
    ax = own_axes(ax)
    answer, target = result.approach, result.target
    hole, dots = answer.hole, shotplot.hundred(answer, answer.best)
    x0, y0, x1, y1 = hole.green.bounds
    low, high = np.quantile(dots, 0.04, axis=0), np.quantile(dots, 0.96, axis=0)
    frame(
        ax, min(x0, low[0]) - 6.0, max(x1, high[0]) + 6.0, min(y0, low[1]) - 6.0, max(y1, high[1]) + 6.0
    )  # fmt: skip
    groundplot.draw_ground(ax, hole)
    shotplot.draw_shot(ax, answer, answer.recommended, SHOTS[0], 0.0)
    labels = Labels(ax, shotplot.words_avoid(answer, [answer.recommended]))
    pin, view = hole.pin, groundplot.view_box(ax)
    groundplot.draw_flag(ax, pin, labels, 15.0, clear_pt=5.0)
    mx, my = target.middle_yd
    ax.plot([mx], [my], marker="P", markersize=8, color=PAPER, markeredgecolor=INK, zorder=6.5)
    labels.keep_clear(mx, my, 5.0)
    groundplot.keep_off_falls(ax, labels)
    flag, room = AimLine(pin.x_yd, pin.y_yd, answer.best.aim_bearing_deg), target.flag_room
    front, behind, left, right = -room.front_yd, room.behind_yd, -room.left_yd, room.right_yd
    for along, across in ((front, 0.0), (behind, 0.0), (0.0, left), (0.0, right)):
        if along or across:
            end = flag.at(along, across)
            ax.plot(
                [pin.x_yd, end[0]], [pin.y_yd, end[1]], color=INK, linewidth=0.8, linestyle=":", zorder=5.0
            )
            places = [flag.at(share * along, share * across) for share in (0.7, 0.85, 0.55, 1.0, 1.15)]
            labels.put(units.number(abs(along + across)), places, fontsize=7.0)
    for feature in hole.features:
        if feature.surface in TROUBLE and feature.area.intersects(view):
            _name(labels, feature.name, area_of(hole, feature.name), ax)
    return ax


def _name(labels: Labels, words: str, area: shapely.Geometry, ax: Axes, **style: float) -> None:
    """What is said of some ground, on it where there is room, else as near as can be."""
    seen = area.intersection(groundplot.view_box(ax))
    if not seen.is_empty:
        places = [*places_near(seen, ax), *groundplot.spread_over(seen)]
        labels.put(in_lines(words), places, within=seen, style="italic", **style)


def _look(answer: Answer, index: int) -> ShotLook:
    return dict(shotplot.looks(answer)).get(index, SHOTS[1])


def _draw_band(ax: Axes, answer: Answer, one: Alternative) -> None:
    """The lines that play alike, as an arc across the aim where the stock ball comes down."""
    start = answer.start
    at_pin = math.radians(one.aim_bearing_deg) - one.turn_rad()
    low, high = (one.turn_rad(edge) for edge in one.aims_yd)
    if not has_band(one):
        return
    angle = at_pin + np.linspace(low, high, 25)
    far = one.today_carry_yd
    x, y = start.x_yd + far * np.sin(angle), start.y_yd + far * np.cos(angle)
    ax.plot(x, y, color=SHOTS[0].colour, linewidth=2.4, zorder=5.2, solid_capstyle="butt")
    for k in (0, -1):
        ax.plot([start.x_yd, x[k]], [start.y_yd, y[k]], color=SHOTS[0].colour, linewidth=0.5, zorder=3.0)


def has_band(one: Alternative) -> bool:
    """Whether there is a band to draw: a line that was given is not one of several."""
    low, high = (one.turn_rad(edge) for edge in one.aims_yd)
    return not one.aim_given and high - low >= 1e-6


def _draw_room(ax: Axes, answer: Answer, one: Alternative) -> None:
    """The box along the aim line that holds no trouble, as far as something closes it."""
    room = one.room
    if room is None or not room.closed:
        return
    (_, x1), (_, y1) = ax.get_xlim(), ax.get_ylim()
    far = abs(x1) + abs(y1) + 1000.0
    low = room.starts_yd if room.carry_at_least_yd is None else room.carry_at_least_yd
    high = far if room.finish_at_most_yd is None else room.finish_at_most_yd
    left = -far if room.left_edge_yd is None else room.left_edge_yd
    right = far if room.right_edge_yd is None else room.right_edge_yd
    x, y = answer.line_of(one).at(
        np.array([low, low, high, high, low]), np.array([left, right, right, left, left])
    )
    ax.plot(x, y, color=INK, linewidth=0.9, linestyle=(0, (5, 2)), zorder=3.2)


def _matter(result: Lesson, one: Alternative) -> list[Trouble]:
    """Troubles worth a name: those found by balls, most first, then other penalty areas."""
    found = {name: share.value for name, share in one.features.items()}
    by_name = {f.name: f.surface for f in result.answer.hole.features}
    rows = [t for t in result.yardage.troubles if found.get(t.name, 0.0) >= 0.005
            or by_name.get(t.name) in PENALTY]  # fmt: skip
    return sorted(rows, key=lambda t: -found.get(t.name, 0.0))[:MOST_NAMES]


def _middle_one(dots: np.ndarray) -> np.ndarray:
    """Of dots (n, 2) the one nearest to the others: in water round a green their mean lies on the green."""
    apart = np.hypot(*(dots[:, None, :] - dots[None, :, :]).transpose(2, 0, 1))
    return dots[int(np.argmin(apart.sum(axis=1)))]


def _count_places(
    answer: Answer, ax: Axes, name: str, dots: np.ndarray
) -> Iterator[list[tuple[float, float]]]:
    """Places for the count of the balls in a trouble, those to be taken first by themselves.

    As near to the balls as a number can stand, be it over some: farther off, or on another trouble, it
    would be read as that ground's. Only where words leave no such place, anywhere in the area or near it.
    """
    area, others = area_of(answer.hole, name), shapely.union_all([
        area_of(answer.hole, f.name) for f in answer.hole.features if f.surface in TROUBLE and f.name != name
    ])  # fmt: skip
    anywhere = places_near(area, ax)
    if len(dots):
        rings = _round_about(ax, _middle_one(dots))
        for ring in rings:
            yield [place for place in ring if not shapely.contains_xy(others, *place)]
        anywhere = [*(place for ring in rings for place in ring), *anywhere]
    yield anywhere


def _round_about(ax: Axes, middle: np.ndarray) -> list[list[tuple[float, float]]]:
    """A place with those next to it, and rings of places about them."""
    wide, turn = float(np.ptp(ax.get_xlim())), np.radians(np.arange(0, 360, 45))
    rings = [middle + r * wide * np.column_stack([np.cos(turn), np.sin(turn)]) for r in RINGS]
    rings[0] = np.vstack([middle, rings[0]])
    return [[(float(x), float(y)) for x, y in ring] for ring in rings]


def _in(answer: Answer, name: str, x: float, y: float) -> bool:
    feature = answer.hole.feature_at(float(x), float(y))
    return feature is not None and feature.name == name


def _without_specks(lines: ContourSet, least_yd: float) -> None:
    """Take away closed rings that are smaller than some yards across and along."""
    from matplotlib.path import Path

    kept = []
    for path in lines.get_paths():
        parts = [np.asarray(part) for part in path.to_polygons(closed_only=False)]
        large = [Path(part) for part in parts if len(part) > 1 and not _is_speck(part, least_yd)]
        kept.append(Path.make_compound_path(*large) if large else Path(np.empty((0, 2))))
    lines.set_paths(kept)


def _is_speck(part: np.ndarray, least_yd: float) -> bool:
    return bool(np.allclose(part[0], part[-1]) and np.ptp(part, axis=0).max() < least_yd)


CROSS_PT = 9.0
"""Side of the square that the cross needs for itself [pt]."""


def _thin(ax: Axes, texts: Sequence[Text], cross_yd: tuple[float, float]) -> list[Text]:
    """Take away numbers on lines that would touch another or the cross, or leave the drawing; the others."""
    from matplotlib.transforms import Bbox

    inside = ax.get_window_extent()
    half = 0.5 * CROSS_PT / 72.0 * ax.figure.dpi
    clear = MARGIN_PT / 72.0 * ax.figure.dpi  # to each side: numbers that touch are read as one
    x, y = ax.transData.transform(cross_yd)
    taken = [Bbox.from_extents(x - half, y - half, x + half, y + half)]
    kept = []
    for text in texts:
        box = text.get_window_extent().padded(clear)
        out = box.x0 < inside.x0 or box.x1 > inside.x1 or box.y0 < inside.y0 or box.y1 > inside.y1
        if out or any(box.overlaps(other) for other in taken):
            text.remove()
        else:
            taken.append(box)
            kept.append(text)
    return kept


SPECK_SHARE = 0.003
"""A corner of ground that covers less of the picture than this has no key; a whole area always has one."""


def seen_on(ax: Axes, answer: Answer) -> list[Surface]:
    """Kinds of ground in view of finished axes."""
    from ..hole.surfaces import Surface

    view = groundplot.view_box(ax)
    least = SPECK_SHARE * view.area
    found = set()
    for feature in answer.hole.features:
        open_ = area_of(answer.hole, feature.name)
        shown = open_.intersection(view).area
        if shown >= least or shown > 0.5 * open_.area:
            found.add(feature.surface)
    if any(groundplot.crown_in(view, tree) for tree in answer.hole.single_trees):
        found.add(Surface.TREES)
    found.add(Surface.ROUGH)
    return sorted(found)
