"""An arrow down the fall of a green is explained on every page that has one; the pin's word hides no trouble."""

from __future__ import annotations

import fake_answers
import fake_lessons
import matplotlib.pyplot as plt
import numpy as np
import pytest
import shapely

from simulator.hole.model import Hole
from simulator.hole.surfaces import TROUBLE
from simulator.hole.words import hole_from_words
from simulator.report import falls, groundplot
from simulator.report.labels import Labels
from simulator.report.lessonpages import lesson_pages
from simulator.report.page import view_box
from simulator.report.plot import draw_plan
from simulator.strategy.places import tee_start

WEDGES = tuple({**one, "carry_yd": carry} for one, carry in zip(fake_lessons.SHORT, (84.0, 90.0), strict=True))
SHORT = "par 3, 85; green 24 deep, falls back to front 4%; bunkers both sides of the green; bunker right at 60"


def _hole(words: str) -> Hole:
    return hole_from_words(words).hole


def _words(figure: plt.Figure) -> str:
    texts = [*figure.texts, *(text for ax in figure.axes for text in ax.texts)]
    return " ".join(" ".join(text.get_text() for text in texts).split())


@pytest.mark.parametrize("page", ["plan", "two", "worth", "approach"])
def test_every_page_with_an_arrow_says_what_it_is(page: str) -> None:
    """Only the approach did: on the plan and on the worth of a place a bare arrow lay on the green."""
    answer = fake_answers.answer(_hole(SHORT), clubs=WEDGES)
    ((_, figure),) = lesson_pages(fake_lessons.lesson(answer=answer), only=[page])
    arrows = [arrow for ax in figure.axes for arrow in falls.falls_shown(ax)]
    assert arrows, page
    assert _words(figure).count(falls.FALLS) == 1
    plt.close(figure)


@pytest.mark.parametrize("page", ["plan", "two", "worth", "approach"])
def test_no_page_without_an_arrow_speaks_of_one(page: str) -> None:
    answer = fake_answers.answer(_hole(SHORT.replace(", falls back to front 4%", "")), clubs=WEDGES)
    ((_, figure),) = lesson_pages(fake_lessons.lesson(answer=answer), only=[page])
    assert falls.FALLS not in _words(figure)
    plt.close(figure)


def test_a_picture_away_from_the_green_speaks_of_no_arrow() -> None:
    answer = fake_answers.answer(_hole("par 4, 420; green 24 deep, falls back to front 4%"))
    ((_, figure),) = lesson_pages(fake_lessons.lesson(answer=answer), only=["worth"])
    assert not any(view_box(ax).contains(shapely.Point(0.0, 420.0)) for ax in figure.axes)
    assert falls.FALLS not in _words(figure)
    plt.close(figure)


@pytest.mark.parametrize("page", ["plan", "approach"])
def test_the_cross_where_it_is_to_land_is_explained(page: str) -> None:
    ((_, figure),) = lesson_pages(fake_lessons.lesson(), only=[page])
    assert "ross: where it is to land" in _words(figure)
    plt.close(figure)


def _box_of(word: str, ax: plt.Axes) -> shapely.Polygon:
    (text,) = (one for one in ax.texts if one.get_text() == word)
    box = text.get_window_extent()
    return shapely.box(*ax.transData.inverted().transform([(box.x0, box.y0), (box.x1, box.y1)]).ravel())


@pytest.mark.parametrize("sides", ["both sides", "right", "left", "front left and right"])
@pytest.mark.parametrize("wide_yd", [60.0, 130.0, 260.0])
def test_the_word_of_the_pin_lies_on_no_bunker(sides: str, wide_yd: float) -> None:
    """It lay over the bunker right of a long hole's green, which then read as a dot of sand behind a word."""
    hole = _hole(f"par 5, 560; bunkers {sides} {'of the green' if 'front' not in sides else ''}")
    figure, ax = plt.subplots(figsize=(4, 6), dpi=200)
    x, y = hole.pin.xy_yd
    ax.set(xlim=(x - wide_yd / 2, x + wide_yd / 2), ylim=(y - wide_yd, y + wide_yd / 2), aspect="equal")
    figure.canvas.draw()
    groundplot.draw_marks(ax, hole, tee_start(hole), Labels(ax, np.empty((0, 2))))
    troubles = shapely.union_all([f.area for f in hole.features if f.surface in TROUBLE])
    assert not _box_of("pin", ax).intersects(troubles)
    plt.close(figure)


def test_the_plan_still_says_it_once() -> None:
    ax = draw_plan(fake_answers.answer(_hole(SHORT), clubs=WEDGES))
    assert _words(ax.figure).count(falls.FALLS) == 1
    plt.close(ax.figure)
