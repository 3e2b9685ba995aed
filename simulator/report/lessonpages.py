"""The pages of a lesson: one a picture group, what it says in plain words above it."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..errors import UsageError
from ..strategy.alternative import Alternative
from ..strategy.lesson import Lesson
from ..strategy.result import TIE_STROKES, Answer
from . import lessonmaps, shotplot, takeaways
from .chosen import leading, shot_words, title
from .cloud import draw_cloud
from .daywords import day_told
from .falls import falls_said
from .figures import name_said
from .groundkey import ground_key, seen_on
from .lessoncharts import draw_aims, draw_pattern, draw_scores
from .page import GAP_IN, in_style, map_in, view_box
from .palette import CURVES, FAINT, INK, SHOTS
from .planwords import aimed_words, plan_words
from .sheet import KEY_PT, Sheet, wrapped, write_pages
from .units import YARDS, Units
from .worthmap import draw_value

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.lines import Line2D

MOST_MAP_IN, LEAST_MAP_IN = 4.9, 2.6
"""Height of a map on a page [in]."""

ACROSS = 3
"""Patterns side by side."""

PATTERN_IN, PATTERN_LEFT_IN, PATTERN_ABOVE_IN, PATTERN_BELOW_IN = 0.88, 0.22, 0.27, 0.22
"""Side of a pattern's square, and room for its numbers, its name and the numbers below it [in]."""

AIMS_IN, SCORES_IN, APPROACH_IN = 2.9, 2.5, 3.9
"""Heights of the charts of aims and of scores, and of the map of the approach [in]."""

CHART_LEFT_IN, AIMS_BELOW_IN, SCORES_BELOW_IN = 0.4, 0.32, 0.3
"""Room for a chart's numbers left of it and below [in]."""

FACTS_PT, READING_PT = 6.5, 6.0
"""Letters of who, where and on which day, and of how a picture is read [pt]."""


@in_style
def lesson_pages(
    result: Lesson, units: Units = YARDS, only: Sequence[str] = (), notes: Sequence[str] = ()
) -> list[tuple[str, Figure]]:
    """Named pages in the order they are taught.

    Parameters
    ----------
    result : Lesson
    units : Units
    only : sequence of str
        Names of `PAGES`; all without any.
    notes : sequence of str
        Said on every page.

    Raises
    ------
    UsageError
        A name that is none of `PAGES`.
    """
    check_only(only)
    pages = []
    for name, (heading, make) in PAGES.items():
        if not only or name in only:
            sheet = Sheet(f"{result.answer.hole.name}: {heading}")
            if day := _day(name, result, units):
                sheet.words(day, FACTS_PT, color=FAINT)
            make(sheet, result, units)
            sheet.foot(" ".join([takeaways.foot_words(_shown(name, result), units), *notes]))
            pages.append((name, sheet.done()))
    return pages


def check_only(only: Sequence[str]) -> None:
    """Refuse a name that is no page."""
    for name in only:
        if name not in PAGES:
            raise UsageError(f"picture {name!r}; allowed: {', '.join(PAGES)}")


def save_lesson(
    result: Lesson,
    path: str | Path,
    units: Units = YARDS,
    only: Sequence[str] = (),
    notes: Sequence[str] = (),
) -> list[Path]:
    """Write the pages, one PDF or a PNG or SVG each (`sheet.write_pages`); returns the files written."""
    return write_pages(lesson_pages(result, units, only, notes), path)


def _shown(name: str, result: Lesson) -> Answer:
    """The answer that a page shows."""
    return result.approach if name == "approach" else result.answer


def _day(name: str, result: Lesson, units: Units) -> str:
    """The day of the page's own shot; the patterns are drawn along the first leg."""
    answer = _shown(name, result)
    if name == "patterns":
        return day_told(answer.conditions, units=units)
    return day_told(answer.conditions, answer.best.aim_bearing_deg, "the shot", units)


def _say(sheet: Sheet, lines: Sequence[str]) -> None:
    for line in lines:
        sheet.words(line)
    sheet.skip(0.0)


def _map_in(extent: tuple[float, float, float, float], wide_in: float) -> float:
    """Height of a map on a page of a lesson [in]."""
    return map_in(extent, wide_in, MOST_MAP_IN, LEAST_MAP_IN)


def _plan(sheet: Sheet, result: Lesson, units: Units) -> None:
    answer = result.answer
    who, hole = name_said(answer.player, "handicap "), answer.hole
    where = f"par {hole.par}, {units.length(hole.length_yd)}, from {units.sentence(answer.start.words)}"
    sheet.words(f"{who}, {where}", FACTS_PT, color=FAINT)
    _say(sheet, plan_words(result, units))
    tall = _map_in(shotplot.extent(answer, [answer.recommended]), sheet.inner_in)
    ax = sheet.axes(tall)
    lessonmaps.draw_plan_map(result, ax=ax, units=units)
    sheet.skip(tall)
    sheet.key([_shot_key(answer, answer.recommended, units), *_line_keys(answer.best)])
    _ground_key(sheet, ax, result)
    named = any(text.get_fontstyle() == "italic" for text in ax.texts)
    names = f"Names: {units.name} to reach and to clear, straight from the ball; arcs: {units.name} from it."
    how = names if named else f"Arcs: {units.name} from the ball."
    _reading(sheet, ax, "Cross: where it is to land.", how)


def _two(sheet: Sheet, result: Lesson, units: Units) -> None:
    answer = result.answer
    _say(sheet, takeaways.two_words(result, units))
    pair = leading(answer)
    gap = 0.1
    wide = (sheet.inner_in - gap * (len(pair) - 1)) / len(pair)
    tall = _map_in(shotplot.extent(answer, pair), wide)
    axes = [sheet.axes(tall, k * (wide + gap), wide) for k in range(len(pair))]
    for ax, index in zip(axes, pair, strict=True):
        draw_cloud(result, index, ax=ax)
    sheet.skip(tall)
    sheet.key([_shot_key(answer, index, units) for index in pair])
    _ground_key(sheet, axes[0], result)
    counted = any(text.get_text().isdigit() for ax in axes for text in ax.texts)
    _reading(sheet, axes[0], "Numbers: balls of the 100 in that trouble." if counted else "")


def _aims(sheet: Sheet, result: Lesson, units: Units) -> None:
    from matplotlib.lines import Line2D

    _say(sheet, takeaways.aim_words(result, units))
    ax = sheet.axes(AIMS_IN, CHART_LEFT_IN)
    draw_aims(result, ax=ax, units=units)
    sheet.skip(AIMS_IN + AIMS_BELOW_IN)
    sheet.key(
        [
            Line2D([], [], color=look.colour, linestyle=look.dash, marker=look.marker, markersize=3.5,
                   markerfacecolor=look.face,
                   label=shot_words(result.answer.alternatives[curve.index], units))
            for curve, look in zip(result.curves, CURVES, strict=False)
        ],
        columns=2,
    )  # fmt: skip
    how = f"Thick bars: aims within {TIE_STROKES:g} of the best. Bands: where the score is, 19 times in 20."
    sheet.words(how, READING_PT, color=FAINT)
    if gaps := takeaways.gap_words(result, units):
        sheet.words(gaps, READING_PT, color=FAINT)


def _scores(sheet: Sheet, result: Lesson, units: Units) -> None:
    _say(sheet, takeaways.score_words(result, units))
    ax = sheet.axes(SCORES_IN, CHART_LEFT_IN)
    draw_scores(result, ax=ax, units=units)
    sheet.skip(SCORES_IN + SCORES_BELOW_IN)
    handles, _ = ax.get_legend_handles_labels()
    sheet.key(handles, columns=2)


def _worth(sheet: Sheet, result: Lesson, units: Units) -> None:
    _say(sheet, takeaways.worth_words(result, units))
    value = result.value
    box = (value.x_yd[0], value.x_yd[-1], value.y_yd[0], value.y_yd[-1])
    tall = _map_in(box, sheet.inner_in)
    ax = sheet.axes(tall)
    draw_value(result, ax=ax)
    sheet.skip(tall)
    _ground_key(sheet, ax, result)
    _reading(sheet, ax)


def _approach(sheet: Sheet, result: Lesson, units: Units) -> None:
    answer = result.approach
    _say(sheet, takeaways.approach_words(result, units))
    ax = sheet.axes(APPROACH_IN)
    lessonmaps.draw_approach(result, ax=ax, units=units)
    sheet.skip(APPROACH_IN)
    dots, view = shotplot.hundred(answer, answer.best), view_box(ax).bounds
    inside = (dots >= (view[0], view[1])).all(axis=1) & (dots <= (view[2], view[3])).all(axis=1)
    outside = int(np.count_nonzero(~inside))
    words = "Thin cross: where it is to land; white: middle of the finishes. Dotted: green round the flag."
    sheet.key([_shot_key(answer, answer.recommended, units)])
    _ground_key(sheet, ax, result)
    beyond = f"{outside} of the 100 {'is' if outside == 1 else 'are'} beyond the picture." if outside else ""
    _reading(sheet, ax, words, beyond)


def _patterns(sheet: Sheet, result: Lesson, units: Units) -> None:
    from matplotlib.lines import Line2D

    _say(sheet, takeaways.pattern_words(result, units))
    # room for the numbers of the next one
    gap = (sheet.inner_in - PATTERN_LEFT_IN - ACROSS * PATTERN_IN) / (ACROSS - 1)
    for first in range(0, len(result.patterns), ACROSS):
        sheet.skip(PATTERN_ABOVE_IN)
        row = result.patterns[first : first + ACROSS]
        for k, club in enumerate(row):
            left = PATTERN_LEFT_IN + k * (PATTERN_IN + gap)
            draw_pattern(club, ax=sheet.axes(PATTERN_IN, left, PATTERN_IN), units=units)
        sheet.skip(PATTERN_IN + PATTERN_BELOW_IN - GAP_IN)
    sheet.key([
        Line2D([], [], color=SHOTS[0].face, marker="o", markersize=2.5, linestyle="none",
               label=f"one finish of 100; {units.name} from the ball and beside the line"),
        Line2D([], [], color=SHOTS[1].colour, label=f"8 of 10 each way; width x depth, {units.name}"),
    ])  # fmt: skip
    how = "Driver from a tee, all else from fairway; level field, today's air, the hole's first leg up."
    sheet.words(how, READING_PT, color=FAINT)


def _shot_key(answer: Answer, index: int, units: Units) -> Line2D:
    """Line, marker and counts of an alternative."""
    one = answer.alternatives[index]
    look = dict(shotplot.looks(answer)).get(index, SHOTS[0])
    counts = shotplot.count_words(answer, one)
    words = f"{title(answer, index, units)}, {aimed_words(one, units)}. Of 100: {counts}"
    return shotplot.key_line(look, "\n".join(wrapped(words, KEY_PT, 3.0)))


def _line_keys(one: Alternative) -> list[Line2D]:
    from matplotlib.lines import Line2D

    band = Line2D([], [], color=SHOTS[0].colour, linewidth=2.4, label="lines that play alike")
    words = "room: ground without trouble"
    box = Line2D([], [], color=INK, linewidth=0.9, linestyle=(0, (5, 2)), label=words)
    keys = [band] if lessonmaps.has_band(one) else []
    return [*keys, box] if one.room is not None and one.room.closed else keys


def _reading(sheet: Sheet, ax: Axes, *words: str) -> None:
    """How a picture is read, its arrows last."""
    if said := " ".join(filter(None, (*words, falls_said(ax)))):
        sheet.words(said, READING_PT, color=FAINT)


def _ground_key(sheet: Sheet, ax: Axes, result: Lesson) -> None:
    sheet.key(ground_key(seen_on(ax, result.answer.hole)), columns=3)


PAGES: dict[str, tuple[str, Callable[[Sheet, Lesson, Units], None]]] = {
    "plan": ("the plan", _plan),
    "two": ("two ways to play it", _two),
    "aims": ("where to aim", _aims),
    "scores": ("what you score", _scores),
    "worth": ("what a place is worth", _worth),
    "approach": ("the shot at the green", _approach),
    "patterns": ("your pattern", _patterns),
}
"""Names of the pages, their headings, and what makes them."""
