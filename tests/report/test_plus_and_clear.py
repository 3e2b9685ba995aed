"""A plus handicap as golfers write it, and one distance that nobody may be nearer than on every page."""

from __future__ import annotations

import re
from dataclasses import replace

import fake_answers
import pytest

from simulator import load_player
from simulator.report import playerchecks
from simulator.report.figures import handicap_said
from simulator.report.phrases import people, whose
from simulator.report.takeaways import foot_words
from simulator.report.teamwords import ahead_words
from simulator.report.text import answer_screen, caption
from simulator.report.units import METRES, YARDS, Units


@pytest.mark.parametrize(("index", "said"), [(-5.0, "+5"), (-0.4, "+0.4"), (0.0, "0"), (18.0, "18"), (7.3, "7.3")])
def test_a_plus_handicap_is_written_with_its_plus(index: float, said: str) -> None:
    assert handicap_said(index) == said


def test_a_plus_player_is_told_so_everywhere() -> None:
    """Typed as "plus 5" or "handicap +5": -5 beside scores reads as five under."""
    player = load_player("plus 5")
    answer = replace(fake_answers.answer(), player=player)
    foot = foot_words(answer)
    told = (caption(answer), whose(answer), answer_screen(answer), foot, playerchecks.player_text(player))
    assert [("-5)" in one or "handicap -5" in one) for one in told] == [False] * 5
    assert "level of a +5 handicap" in " ".join(told[-1].split()) and "-5 handicap" not in told[-1]
    assert caption(answer).endswith("(+5)")
    for one in told[1:]:
        assert "handicap +5" in one


@pytest.mark.parametrize("clear_yd", [250, 273, 278])
@pytest.mark.parametrize("units", [YARDS, METRES])
def test_nobody_ahead_is_one_distance_on_every_page_and_never_less(clear_yd: int, units: Units) -> None:
    """278 yards are 254.2 m: a lesson sheet said 254, the screen 255."""
    answer = replace(fake_answers.answer(), clear_beyond_yd=clear_yd)
    told = (
        people(answer, units), foot_words(answer, units),
        ahead_words([{"answer": {"clear_beyond_yd": clear_yd}}], units),
    )  # fmt: skip
    found = {re.search(r"Nobody ahead nearer than (\d+ \w+)", one)[1] for one in told}  # type: ignore[index]
    assert len(found) == 1
    size, unit = found.pop().split()
    assert unit == units.short and 0.0 <= units.in_yards(float(size)) - clear_yd < units.in_yards(1.0)
