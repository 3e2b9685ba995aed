"""The page of a hole as it was played: words apart, every stroke with its number, dashes where a choice was dear."""

from __future__ import annotations

import fake_review
import pytest
from words_apart import check_words

from simulator.hole import load_hole
from simulator.report.palette import SHOTS
from simulator.report.reviewpage import draw_played, reading, review_page
from simulator.report.units import METRES
from simulator.strategy.review import read_notes

PLAIN = {
    "withy-drain": fake_review.BUSY,
    "eel-trap": "6i to 25 ft left; 2 putts",
    "long-sluice": "driver to 300 out, fairway; 3w to 100 out; wedge to 20 ft; putt in",
}


@pytest.mark.parametrize("name", PLAIN)
@pytest.mark.parametrize("metric", [False, True])
def test_words_are_on_the_page_and_cover_no_other(name: str, metric: bool) -> None:
    found = fake_review.hole_review(load_hole(name), None, read_notes(PLAIN[name]))
    figure = review_page(found, METRES) if metric else review_page(found)
    figure.draw_without_rendering()
    check_words(figure)
    shown = {text.get_text() for ax in figure.axes for text in ax.texts}
    assert {f"{one.stroke.number}" for one in found.strokes if one.stroke.kind != "putt"} <= shown


def test_a_dropped_ball_is_dotted_and_a_dear_choice_dashed() -> None:
    found = fake_review.hole_review()
    ax = draw_played(found)
    played = [line for line in ax.lines if line.get_color() == SHOTS[0].colour and len(line.get_xdata()) == 2]
    off = [one.stroke for one in found.strokes if one.stroke.kind != "putt" and one.stroke.end != one.stroke.start]
    assert [line.get_linestyle() for line in played] == [":" if one.penalty else "-" for one in off]
    for line, one in zip(played, off, strict=True):
        assert (line.get_xdata()[0], line.get_ydata()[0]) == (one.start.x_yd, one.start.y_yd)
    dashed = [line for line in ax.lines if line.get_color() == SHOTS[1].colour and line.get_linestyle() == "--"]
    assert len(dashed) == sum(one.choice.value >= 0.03 for one in found.strokes)


@pytest.mark.parametrize("name", PLAIN)
def test_the_foot_tells_of_the_lines_that_are_drawn_and_of_no_others(name: str) -> None:
    """Dots of a drop were explained on every page."""
    found = fake_review.hole_review(load_hole(name), None, read_notes(PLAIN[name]))
    lines, told = draw_played(found).lines, reading(found)
    assert ("dots" in told) == any(line.get_linestyle() == ":" and line.get_color() == SHOTS[0].colour for line in lines)
    assert ("Dashed" in told) == any(line.get_linestyle() == "--" for line in lines)
    assert "dots" not in told or "drop" in PLAIN[name]
