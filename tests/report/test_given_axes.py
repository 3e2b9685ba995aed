"""Pictures drawn into axes that somebody else has made, as in a notebook, under the library's own settings."""

from __future__ import annotations

from collections.abc import Callable

import fake_answers
import fake_lessons
import matplotlib
import matplotlib.pyplot as plt
import pytest
from matplotlib.axes import Axes
from matplotlib.legend import Legend

from simulator.report.lessoncharts import draw_aims
from simulator.report.lessonmaps import draw_plan_map
from simulator.report.plot import draw_plan

TOUCH_PX = 1.0


@pytest.mark.parametrize("wide_in", [4.4, 8.0, 14.0])
def test_title_and_keys_are_no_wider_than_the_axes(wide_in: float) -> None:
    figure, axes = plt.subplots(1, 2, figsize=(wide_in, 6.0))
    for ax in axes:
        draw_plan(fake_answers.answer(), ax=ax)
        frame = ax.get_window_extent()
        below = [one for one in ax.get_children() if isinstance(one, Legend)] + [ax.texts[-1]]
        assert len(below) == 3 and "Rules of Golf" in ax.texts[-1].get_text().replace("\n", " ")
        tops = [frame.y0, *(one.get_window_extent().y0 for one in below)]
        for one, top in zip(below, tops, strict=False):
            box = one.get_window_extent()
            assert frame.x0 - TOUCH_PX <= box.x0 and box.x1 <= frame.x1 + TOUCH_PX, one
            assert box.y1 <= top  # each below the one before it
        title = ax._left_title.get_window_extent()
        assert title.x1 <= frame.x1 + TOUCH_PX
    plt.close(figure)


@pytest.mark.parametrize("draw", [
    lambda ax: draw_plan(fake_answers.answer(), ax=ax),
    lambda ax: draw_plan_map(fake_lessons.lesson(), ax=ax),
])  # fmt: skip
def test_a_map_has_the_ground_of_its_own_page_and_no_ticks(draw: Callable[[Axes | None], Axes]) -> None:
    own = draw(None)
    figure, ax = plt.subplots(figsize=(5, 7))
    draw(ax)
    figure.canvas.draw()
    assert ax.get_facecolor() == own.get_facecolor() != matplotlib.colors.to_rgba(plt.rcParams["axes.facecolor"])
    marks = [*ax.xaxis.get_major_ticks(), *ax.yaxis.get_major_ticks()]
    assert not any(one.label1.get_visible() or one.tick1line.get_visible() for one in marks)
    plt.close(figure)


def test_words_are_of_the_one_look_whatever_the_caller_has_set() -> None:
    with matplotlib.rc_context({"font.family": "monospace", "lines.linewidth": 7.0, "text.parse_math": True}):
        ax = plt.axes()
        draw_plan_map(fake_lessons.lesson(), ax=ax)
        ours = [one for one in ax.texts if one.get_text()]
        assert ours and all(one.get_fontfamily() == ["sans-serif"] and not one.get_parse_math() for one in ours)
        assert all(line.get_linewidth() < 7.0 for line in draw_aims(fake_lessons.lesson(), ax=plt.axes()).lines)
    plt.close("all")
