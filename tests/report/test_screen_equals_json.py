"""Every figure on the answer screen is the JSON's: made-up answers here, real ones in the long run."""

from __future__ import annotations

import re

import fake_answers
import pytest
from read_screen import check_screen
from test_answer_screen import cases

from simulator import load_hole, load_player, plan
from simulator.report.text import answer_screen
from simulator.report.units import METRES, YARDS
from simulator.strategy.errorbars import Estimate
from simulator.strategy.goals import Goal, GoalLine
from simulator.strategy.result import Answer
from simulator.units import M_PER_YD

HOLES, PLAYERS = ("withy-drain", "eel-trap", "long-sluice"), ("isolde", "barnaby")


@pytest.mark.parametrize("name", cases())
def test_made_up_answers(name: str) -> None:
    answer = cases()[name]
    check_screen(answer_screen(answer), answer.to_dict())
    check_screen(answer_screen(answer, units=METRES), answer.to_dict(), per_yd=M_PER_YD, unit="m")


@pytest.mark.parametrize("player", PLAYERS)
@pytest.mark.parametrize("hole", HOLES)
def test_demo_holes_with_made_up_shots(hole: str, player: str) -> None:
    answer = fake_answers.answer(hole, player)
    check_screen(answer_screen(answer), answer.to_dict())


def many(asked: int, best_asked: bool) -> Answer:
    """So many asked about, the best of all asked or not, and one more that nobody asked about."""
    bag = [("3-wood", 178.0), ("driver", 196.0), ("5-hybrid", 160.0), ("7-iron", 130.0), ("9-iron", 110.0), ("pitching wedge", 98.0)]
    clubs = [
        {"club": club, "carry_yd": carry, "score": 5.3 + 0.1 * k, "difference": 0.1 * k, "spread_deg": 4.0 + k}
        for k, (club, carry) in enumerate(bag)
    ]
    for one in clubs[0 if best_asked else 1 :][:asked]:
        one["asked"] = True
    return fake_answers.answer(clubs=tuple(clubs))


@pytest.mark.parametrize("best_asked", [True, False])
@pytest.mark.parametrize("asked", [2, 3, 4, 5])
def test_what_was_asked_is_on_the_screen_or_said_to_be_left_out(asked: int, best_asked: bool) -> None:
    answer = many(asked, best_asked)
    for units, per_yd in ((YARDS, 1.0), (METRES, M_PER_YD)):
        text = answer_screen(answer, ("No --player given, so the demo player Barnaby plays.",), units)
        check_screen(text, answer.to_dict(), per_yd=per_yd, unit=units.short)
        head = text[text.index("In 100 plays") : text.index("par or better")]
        columns = 1 + asked - best_asked  # the recommended one and those asked about
        assert ("No room here for" in text) == (columns > 4)
        if columns > 3:  # nobody has a column who was not asked about
            assert "pitching wedge" not in head or asked == 5
        if columns == 4:
            assert all(one.club in head for one in answer.alternatives if one.asked)


def test_sentences_give_way_before_a_club_that_was_asked_about() -> None:
    """A note as long as that of a hole full of assumptions: four clubs stay, and what is said of them is theirs."""
    for words in range(0, 60, 5):
        answer = many(3, False)
        text = answer_screen(answer, (" ".join(["more of the day"] * words),))
        if words <= 20:  # more than four lines of notes are no answer's
            check_screen(text, answer.to_dict())
        head = text[text.index("In 100 plays") : text.index("par or better")]
        assert all(one.club in head or f"No room here for the {one.club}" in text
                   for one in answer.alternatives if one.asked)  # fmt: skip


def test_a_club_left_out_in_silence_is_found() -> None:
    answer = many(5, False)
    text = answer_screen(answer)
    said = re.search(r"No room here for [^:]*: --full has all\s+that\s+were\s+asked about\.", text)
    assert said is not None
    with pytest.raises(AssertionError):
        check_screen(text.replace(said[0], ""), answer.to_dict())


def test_goals() -> None:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"goal": 0.31}
    clubs[1] |= {"goal": 0.24, "goal_difference": -0.07}
    for goal in (Goal("target", most_strokes=4), Goal("leave", low_yd=90.0, high_yd=110.0)):
        for cost in (0.0, 0.07):
            line = GoalLine(-3.0, Estimate(cost, 0.01), Estimate(0.046, 0.004))
            answer = fake_answers.answer(clubs=tuple(clubs), goal=goal, goal_line=line)
            text = answer_screen(answer)
            assert "5 more in 100, " + ("for 0.07 strokes" if cost else "at no cost") in plain(text)
            assert "reaches it as often" in plain(text)
            check_screen(text, answer.to_dict())


def plain(text: str) -> str:
    return " ".join(text.split())


def test_a_wrong_figure_is_found() -> None:
    answer = fake_answers.answer()
    text = answer_screen(answer)
    for right, wrong in (
        ("273 yd", "274 yd"),
        ("5.31", "5.32"),
        ("(0.13)", "(0.15)"),
    ):
        assert right in text
        with pytest.raises(AssertionError):
            check_screen(text.replace(right, wrong), answer.to_dict())


@pytest.mark.slow
@pytest.mark.parametrize("player", PLAYERS)
@pytest.mark.parametrize("hole", HOLES)
def test_real_answers(hole: str, player: str) -> None:
    answer = plan(load_hole(hole), load_player(player), sequences=4000, quick=hole != "eel-trap")
    check_screen(answer_screen(answer), answer.to_dict())
    check_screen(answer_screen(answer, units=METRES), answer.to_dict(), per_yd=M_PER_YD, unit="m")
