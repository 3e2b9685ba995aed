"""The picture of a hole as it was played: every stroke with its number, and where a better choice pointed."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..hole.model import Spot
from ..hole.surfaces import Lie
from ..strategy.aimline import AimLine
from ..strategy.alternative import ClubAndLine
from ..strategy.review.adding import RoundReview
from ..strategy.review.holes import HoleReview
from ..strategy.review.judging import Judged
from ..strategy.review.rests import Rest
from . import groundplot
from .cautions import RULES
from .credits import map_data
from .daywords import day_told
from .falls import falls_said, keep_off_falls
from .holemap import whole_hole
from .labels import Labels
from .page import in_style, map_in, own_axes
from .palette import FAINT, PAPER, SHOTS
from .reviewtext import (
    choice_words,
    dear_choice,
    gained,
    how_judged,
    play_words,
    swing_words,
    verdict,
    went_words,
)
from .sheet import Sheet, hole_names, wrapped, write_pages
from .units import YARDS, Units
from .wordplaces import round_about

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

MAP_WIDE_IN, MOST_MAP_IN = 3.4, 5.2
"""Width of the map and its greatest height [in]."""

BESIDE_YD = 40.0
"""Ground shown either side of the line of play, and round every ball [yd]."""

NUMBER_AWAY = (0.04, 0.06, 0.09)
"""How far from its ball a number stands, as shares of the width: the nearest that is free."""

PLAYED, BETTER = SHOTS


def reading(found: HoleReview) -> str:
    """What the lines of the picture are: those that it has, and no others."""
    shown = _off_the_green(found)
    dropped = any(_is_dots(one) for one in shown)
    dots = "; thick dots: to where a ball was dropped" if dropped else ""
    better = any(one.best is not None and dear_choice(one) for one in shown)
    dashed = " Dashed to a cross: where a better choice is aimed to land." if better else ""
    return f"Solid: as played, numbers are strokes{dots}.{dashed}"


def _off_the_green(found: HoleReview) -> list[Judged]:
    """The strokes that are drawn: all but putts."""
    return [one for one in found.strokes if one.stroke.kind != "putt"]


def _balls_yd(strokes: Sequence[Judged]) -> np.ndarray:
    """Where some strokes were played from and where their balls came to rest, float64 (n, 2) [yd]."""
    rests = (rest for one in strokes for rest in (one.stroke.start, one.stroke.end))
    return np.array([rest.xy_yd for rest in rests if rest is not None]).reshape(-1, 2)


def _is_dots(one: Judged) -> bool:
    """Whether a stroke is drawn as dots: a ball that was dropped elsewhere did not fly there."""
    stroke = one.stroke
    moved = stroke.end is not None and stroke.end.xy_yd != stroke.start.xy_yd
    return stroke.penalty != 0 and moved


@in_style
def draw_played(found: HoleReview, *, ax: Axes | None = None) -> Axes:
    """The hole with every stroke off the green, from where it was played to where the next one was.

    Parameters
    ----------
    found : HoleReview
    ax : Axes, optional
        Made when left out.
    """
    ax = own_axes(ax)
    hole = found.hole
    groundplot.draw_hole(ax, hole, _extent(found))
    shown = _off_the_green(found)
    labels = Labels(ax, _balls_yd(shown))
    groundplot.draw_flag(ax, hole.pin, labels, 11.0, clear_pt=4.0)
    keep_off_falls(ax, labels)
    for one in shown:
        if one.best is not None and dear_choice(one):
            _draw_better(ax, one.stroke.start, one.best)
    for one in shown:
        _draw_stroke(ax, hole.pin, one, labels)
    groundplot.draw_aim_marks(ax, hole, labels)
    return ax


def _draw_stroke(ax: Axes, pin: Spot, one: Judged, labels: Labels) -> None:
    """From where it was played to where the next one was, or to the hole."""
    stroke = one.stroke
    start = stroke.start.xy_yd
    x, y = (pin if stroke.end is None else stroke.end).xy_yd
    if (x, y) != start:
        dash = ":" if _is_dots(one) else "-"
        ax.plot([start[0], x], [start[1], y], color=PLAYED.colour, linewidth=1.1, linestyle=dash, zorder=4.5)
    on_green = stroke.end is not None and stroke.end.lie is Lie.GREEN
    ax.plot(
        [x], [y], marker="o", markersize=3 if on_green else 4, color=PLAYED.face, markeredgecolor=PAPER,
        zorder=6.2, linestyle="none",
    )  # fmt: skip
    labels.keep_clear(x, y, 2.5)
    places = round_about(ax, x, y, NUMBER_AWAY)
    labels.put(f"{stroke.number}", places, fontsize=7.5, weight="bold")


def _draw_better(ax: Axes, start: Rest, best: ClubAndLine) -> None:
    x, y = AimLine(*start.xy_yd, best.aim_bearing_deg).at(best.today_carry_yd)
    ax.plot([start.x_yd, x], [start.y_yd, y], color=BETTER.colour, linewidth=1.0, linestyle="--", zorder=4.0)
    ax.plot([x], [y], marker="x", markersize=5.5, color=BETTER.colour, zorder=6.0, linestyle="none")


def _extent(found: HoleReview) -> tuple[float, float, float, float]:
    """Least and greatest x, least and greatest y of the hole and of every ball [yd]."""
    x0, x1, y0, y1 = whole_hole(found.hole, BESIDE_YD)
    balls, margin = _balls_yd(found.strokes), 0.35 * BESIDE_YD
    (low_x, low_y), (high_x, high_y) = balls.min(axis=0) - margin, balls.max(axis=0) + margin
    return min(x0, low_x), max(x1, high_x), min(y0, low_y), max(y1, high_y)


@in_style
def review_page(found: HoleReview, units: Units = YARDS) -> Figure:
    """One hole: the verdict, the picture, a row a stroke, and what cost most."""
    hole = found.hole
    sheet = Sheet(f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)}")
    if day := day_told(found.conditions, units=units):
        sheet.words(day, 6.0, color=FAINT)
    sheet.words(verdict(found.player.name, found), 7.0)
    tall = map_in(_extent(found), MAP_WIDE_IN, MOST_MAP_IN)
    ax = sheet.axes(tall, 0.0, sheet.inner_in)
    draw_played(found, ax=ax)
    sheet.skip(tall)
    rows = [("", "played", "went", "choice", "swing")]
    for one in found.strokes:
        rows += _rows(one, units)
    sheet.table(rows, (0.0, 0.2, 1.35, -(sheet.inner_in - 0.45), -sheet.inner_in))
    sheet.words("Strokes gained (+) or lost (-) against this player's own average.", 6.0)
    ones = [(None, one) for one in found.strokes]
    sheet.words(choice_words(ones, units), 6.5)
    if dear := swing_words(ones, units):
        sheet.words(dear, 6.5)
    told = (reading(found), falls_said(ax), how_judged(found.strokes), RULES, *map_data(hole))
    sheet.foot(" ".join(filter(None, told)))
    return sheet.done()


def _rows(one: Judged, units: Units) -> list[tuple[str, str, str, str, str]]:
    """A stroke in the table, its words broken where the columns end."""
    stroke = one.stroke
    played = wrapped(units.place(play_words(stroke)), 6.5, 1.1)
    went = wrapped(units.place(went_words(stroke)), 6.5, 1.3)
    lines = []
    for k in range(max(len(played), len(went))):
        first = (f"{stroke.number}", gained(one.choice), gained(one.swing)) if k == 0 else ("", "", "")
        club, place = (part[k] if k < len(part) else "" for part in (played, went))
        lines.append((first[0], club, place, first[1], first[2]))
    return lines


def save_review(found: HoleReview | RoundReview, path: str | Path, units: Units = YARDS) -> list[Path]:
    """Write the pages, one a hole: a PDF of all, or a PNG or SVG each."""
    holes = {None: found} if isinstance(found, HoleReview) else found.holes
    pages = [
        (f"hole-{number}" if number else "hole", review_page(hole, units)) for number, hole in holes.items()
    ]
    return write_pages(pages, path, hole_names(list(holes)))
