"""Marks near the hole are drawn with their names; far ones do not make the hole small."""

from __future__ import annotations

import fake_answers
from matplotlib.axes import Axes

from simulator.hole.words import hole_from_words
from simulator.report.plot import MARK_REACH_YD, draw_plan

WORDS = "par 4, 372; fairway 28 wide; green 24 deep; mark church tower 12 right at 400; mark far mast 5 left at 900"


def drawn(words: str) -> Axes:
    ax = draw_plan(fake_answers.answer(hole_from_words(words).hole))
    ax.get_figure(root=True).canvas.draw()  # type: ignore[union-attr]
    return ax


def test_a_mark_near_the_hole_is_shown_and_named() -> None:
    ax = drawn(WORDS)
    marks = [line for line in ax.lines if line.get_label() in ("church tower", "far mast")]
    assert [(m.get_label(), m.get_xdata()[0], m.get_ydata()[0]) for m in marks] == [
        ("church tower", 12.0, 400.0)
    ]
    words = [t for t in ax.texts if t.get_text() == "church tower"]
    assert len(words) == 1
    frame = ax.get_window_extent()
    box = words[0].get_window_extent()
    assert frame.x0 <= box.x0 and box.x1 <= frame.x1 and frame.y0 <= box.y0 and box.y1 <= frame.y1


def test_a_far_mark_does_not_widen_the_picture() -> None:
    plain = drawn(WORDS.split("; mark")[0])
    marked = drawn(WORDS)
    assert marked.get_ylim()[1] < plain.get_ylim()[1] + MARK_REACH_YD + 20.0
