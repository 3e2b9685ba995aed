"""Every figure on the answer screen is the JSON's: made-up answers here, real ones in the long run."""

from __future__ import annotations

import fake_answers
import pytest
from read_screen import check_screen
from test_answer_screen import cases

from simulator import load_hole, load_player, plan
from simulator.report.text import answer_screen
from simulator.report.units import METRES
from simulator.strategy.goals import Goal, GoalLine
from simulator.strategy.result import Estimate
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
