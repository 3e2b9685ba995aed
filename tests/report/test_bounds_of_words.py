"""The order in which sentences give way, and words at the bounds where they change."""

from __future__ import annotations

from dataclasses import fields, replace

import fake_answers
import pytest

from simulator.report import text, verdicts
from simulator.report.table import table
from simulator.report.units import METRES, YARDS
from simulator.strategy.errorbars import Estimate
from simulator.strategy.goals import Goal


def test_the_order_in_which_things_give_way() -> None:
    fit, order = text._Fit(rows=7), []
    while (tighter := text._tighter(fit)) != fit:
        changed = [f"{one.name} {getattr(tighter, one.name)}" for one in fields(fit)
                   if getattr(tighter, one.name) != getattr(fit, one.name)]  # fmt: skip
        order += changed
        assert len(changed) == 1 and len(order) < 30  # one thing after the other, and an end
        fit = tighter
    assert order == [
        "blank False", "far False", "apart (True, True, False)", "rows 6", "rows 5", "ground 1",
        "apart (False, True, False)", "apart (False, False, False)", "rows 4", "rows 3", "putt False", "rows 2",
        "ground 0", "rows 1", "alike False", "trade False",
    ]  # fmt: skip


@pytest.mark.parametrize("far", [True, False])
def test_a_close_reach_stays_when_a_far_one_gives_way(far: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    answer = fake_answers.answer()
    for close in (True, False):
        monkeypatch.setattr(text.lines, "reach_words", lambda *_, close=close: ("Reach: as said.", close))
        shown = text._lines(answer, (), YARDS, table(answer, YARDS), text._Fit(far=far))
        assert ("Reach: as said." in shown) == (close or far)


def test_nobody_is_let_nearer_by_rounding() -> None:
    assert YARDS.clear(100.0) == "100 yd" and YARDS.clear(100.2) == "101 yd"
    assert METRES.clear(100.0) == "92 m"  # 91.44


def test_the_recommended_club_is_named_once_where_it_suits_most_players() -> None:
    most, fewer = fake_answers.answer(sure=0.6), fake_answers.answer(sure=0.4)
    assert verdicts.versions(most) == " It is the 3-wood for 6 in 10 plausible versions of this player."
    assert verdicts.versions(fewer).endswith("versions of this player, the driver for 6 in 10.")


def test_a_club_that_is_tied_with_one_nobody_sees_has_no_lead_to_hold() -> None:
    """Ahead of the one asked about, not of the third: `if the figures hold` is for a lead over all."""
    ahead = fake_answers.answer(sure=0.5)
    third = replace(ahead.alternatives[1], club="5-wood", asked=False, difference=Estimate(0.01, 0.01))
    sure = replace(ahead.confidence, shares=(0.5, 0.3, 0.2), shares_standard_error=(0.02,) * 3)
    three = replace(ahead, alternatives=(*ahead.alternatives, third), confidence=sure)
    assert three.verdict == "either"
    assert verdicts.if_figures_hold(replace(three, tied=(0, 2))) == ""
    assert "if the figures hold" in verdicts.if_figures_hold(ahead)


def test_a_cost_that_rounds_to_nothing_is_none() -> None:
    """With a goal the recommended club may be a hair above the lowest average: then it has the lowest too."""
    goal = Goal("target", most_strokes=4)
    for cost, words in ((0.004, "has the lowest average too"), (0.006, "by 0.01")):
        made = fake_answers.answer(goal=goal, lowest_score=1)
        other = replace(made.alternatives[1], difference=Estimate(-cost, 0.01))
        answer = replace(made, alternatives=(made.alternatives[0], other))
        assert words in verdicts._lowest(answer, [0], YARDS)


def test_a_difference_has_one_decimal_at_the_least() -> None:
    """An error of half a stroke supports no decimal at all; a lead of 0.4 strokes is still told as that."""
    made = fake_answers.answer()
    rough = replace(made.alternatives[1], difference=Estimate(0.42, 2.0))
    answer = replace(made, alternatives=(made.alternatives[0], rough))
    assert verdicts.size_words(answer, 0.42, 1).endswith("(0.4)")
