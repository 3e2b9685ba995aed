"""Which clubs and troubles a screen shows, at the bounds where another would be shown."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import fake_answers
import pytest

from simulator.report import phrases
from simulator.report.chosen import TroubleRow, all_bad, fewer_rows, shown
from simulator.report.lines import reach_words
from simulator.strategy.errorbars import Estimate
from simulator.strategy.goals import Goal
from simulator.strategy.result import Answer

NAMES = ("3-wood", "driver", "5-wood", "4-hybrid", "6-iron")


def clubs(count: int, **more: Any) -> tuple[dict[str, Any], ...]:
    """So many clubs, each a little worse than the one before."""
    return tuple(
        {"club": name, "carry_yd": 178.0 + 6.0 * k, "score": 5.31 + 0.05 * k, "difference": 0.05 * k, **more}
        for k, name in enumerate(NAMES[:count])
    )


def of(answer: Answer, index: int, **changes: Any) -> Answer:
    """The answer with something else about one alternative."""
    ones = list(answer.alternatives)
    ones[index] = replace(ones[index], **changes)
    return replace(answer, alternatives=tuple(ones))


def test_those_asked_about_stand_before_a_better_one_that_was_not() -> None:
    answer = fake_answers.answer(clubs=clubs(5))
    for index in (0, 3, 4):
        answer = of(answer, index, asked=True)
    assert shown(answer) == [0, 3, 4]


def test_with_a_goal_the_lowest_average_keeps_a_column() -> None:
    """The last of those nobody asked about gives way to it; of those asked about it is a fourth."""
    goal = Goal("leave", low_yd=90.0, high_yd=110.0)
    chances = (0.5, 0.4, 0.3, 0.2, 0.1)
    answer = fake_answers.answer(clubs=clubs(5), goal=goal, lowest_score=4)
    for index, chance in enumerate(chances):
        answer = of(answer, index, goal=Estimate(chance, 0.004))
    assert shown(answer) == [0, 1, 4]
    assert shown(replace(answer, lowest_score=1)) == [0, 1, 2]
    for index in (0, 1, 2):
        answer = of(answer, index, asked=True)
    assert shown(answer) == [0, 1, 2, 4]


def test_one_club_out_of_trouble_is_enough_for_a_plain_verdict() -> None:
    """"Least bad" is said where every club finishes in trouble more often than not, and not where one does."""
    bad, good = {"water": Estimate(0.6, 0.01)}, {"water": Estimate(0.4, 0.01)}
    answer = of(of(fake_answers.answer(), 0, finish=bad), 1, finish=good)
    assert not all_bad(answer)
    assert all_bad(of(answer, 1, finish=bad))


def test_a_penalty_area_keeps_its_row_before_a_bunker_that_is_met_more_often() -> None:
    rows = [
        TroubleRow("brook", (0.02, 0.01), penalty=True),
        TroubleRow("left bunker", (0.20, 0.10)),
        TroubleRow("right bunker", (0.10, 0.30)),
    ]
    kept = fewer_rows(rows, 2)
    assert [row.words for row in kept] == ["brook", "other trouble"]
    assert kept[1].shares == pytest.approx((0.30, 0.40))


def test_the_widest_of_the_clubs_shown_says_how_wide_nobody_may_stand() -> None:
    answer = fake_answers.answer()
    answer = of(of(answer, 0, wide_yd=Estimate(31.2, 0.5)), 1, wide_yd=Estimate(47.9, 0.5))
    assert "1 in 20 finish wider than 48 yd either side" in phrases.people(answer)


@pytest.mark.parametrize(("birdies", "told"), [(0.06, "birdies"), (0.05, "pars")])
def test_birdies_are_told_where_they_are_three_more_than_the_pars(birdies: float, told: str) -> None:
    """Par or better is three more either way: told in six birdies, or with five of them in three pars."""
    chances = {"bogey": 0.4, "double_or_worse": 0.3, "penalty_this_shot": 0.0}
    base = fake_answers.answer().alternatives[0]

    def with_chances(birdie: float, par: float, bogey: float, double: float) -> Any:
        given = {**chances, "birdie_or_better": birdie, "par": par, "bogey": bogey, "double_or_worse": double}
        return replace(base, chances={name: Estimate(value, 0.001) for name, value in given.items()})

    one = with_chances(0.10 + birdies, 0.23 - birdies, 0.37, 0.30)
    two = with_chances(0.10, 0.20, 0.40, 0.30)
    good, _ = phrases._balance(one, two)
    assert told in good and ("pars" not in good or told == "pars")


def test_a_narrow_penalty_area_is_told_before_a_bunker_that_is_narrower() -> None:
    answer = fake_answers.answer()
    one = answer.best.reach[0]
    water = next(f.name for f in answer.hole.features if f.name == "withy drain")
    finish = Estimate(200.0, 1.0)
    bunker = replace(one, name="elbow bunker", starts_yd=203.0, finish_yd=finish)
    pond = replace(one, name=water, starts_yd=207.0, finish_yd=finish)
    assert "to the withy drain" in reach_words(of(answer, 0, reach=(bunker, pond)))[0]
    assert "to the elbow bunker" in reach_words(of(answer, 0, reach=(bunker, replace(pond, starts_yd=215.0))))[0]
