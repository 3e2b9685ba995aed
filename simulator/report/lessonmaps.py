"""Two maps of a lesson: the plan, and the shot at the green."""

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
from .chosen import PENALTY
from .falls import keep_off_falls
from .figures import LEAST_COUNT
from .holemap import area_of, ground_of
from .labels import Labels, in_lines
from .page import frame, in_style, own_axes, view_box
from .palette import INK, PAPER, SHOTS
from .units import YARDS, Units
from .wordplaces import places_near, spread_over

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from ..hole.troubles import Trouble

LANDING_PT = 3.0
"""Half the side of the square that the cross needs for itself where the ball is to land [pt]."""

SEEN_YD = 3.0
"""Ground of which a strip narrower than this is in the picture has no name there [yd] (assumed)."""

MOST_NAMES = 7
"""Areas named on one map."""


@in_style
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
    keep_off_falls(ax, labels)
    groundplot.draw_marks(ax, answer.hole, answer.start, labels)
    groundplot.draw_arcs(ax, answer.hole, answer.start, labels, units)
    for one in _matter(result, answer.best):
        far = "" if one.clear_yd is None else f"-{units.number(one.clear_yd)}"
        words = f"{one.name} {units.number(one.reach_yd)}{far}"
        _name(labels, words, ground_of(result.yardage, one), ax, fontsize=5.5)
    return ax


@in_style
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
    pin, view = hole.pin, view_box(ax)
    groundplot.draw_flag(ax, pin, labels, 15.0, clear_pt=5.0)
    mx, my = target.middle_yd
    ax.plot([mx], [my], marker="P", markersize=8, color=PAPER, markeredgecolor=INK, zorder=6.5)
    labels.keep_clear(mx, my, 5.0)
    labels.keep_clear(*answer.line_of(answer.best).at(answer.best.today_carry_yd), LANDING_PT)
    keep_off_falls(ax, labels)
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
        if feature.surface in TROUBLE and _is_seen(feature.area, view):
            _name(labels, feature.name, area_of(hole, feature.name), ax)
    return ax


def _is_seen(area: shapely.Geometry, view: shapely.Geometry) -> bool:
    """Whether so much of an area is in the picture that its name would not stand on other ground."""
    if view.contains(area):
        return True
    return not area.intersection(view).buffer(-0.5 * SEEN_YD).is_empty


def _name(labels: Labels, words: str, area: shapely.Geometry, ax: Axes, **style: float) -> None:
    """What is said of some ground, on it where there is room, else as near as can be."""
    seen = area.intersection(view_box(ax))
    if not seen.is_empty:
        places = [*places_near(seen, ax), *spread_over(seen)]
        labels.put(in_lines(words), places, within=seen, style="italic", **style)


def _draw_band(ax: Axes, answer: Answer, one: Alternative) -> None:
    """The lines that play alike, as an arc across the aim where the stock ball comes down."""
    if not has_band(one):
        return
    start = answer.start
    at_pin = math.radians(one.aim_bearing_deg) - one.turn_rad()
    low, high = (one.turn_rad(edge) for edge in one.aims_yd)
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
    rows = [t for t in result.yardage.troubles if found.get(t.name, 0.0) >= LEAST_COUNT
            or by_name.get(t.name) in PENALTY]  # fmt: skip
    return sorted(rows, key=lambda t: -found.get(t.name, 0.0))[:MOST_NAMES]
