"""Counts, odds and takeaways in words, at the bounds where other words would be said."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import fake_answers
import fake_lessons
import pytest

from simulator.report import planwords, takeaways
from simulator.report.chosen import TroubleRow, score_counts
from simulator.report.figures import adding_up, in_ten
from simulator.report.odds import odds, times_words, told
from simulator.strategy.errorbars import Estimate
from simulator.strategy.result import Answer


def plain(words: Any) -> str:
    """On one line, with ordinary blanks."""
    return " ".join(str(words).split())


def of(answer: Answer, index: int, **changes: Any) -> Answer:
    """The answer with something else about one alternative."""
    ones = list(answer.alternatives)
    ones[index] = replace(ones[index], **changes)
    return replace(answer, alternatives=tuple(ones))


@pytest.mark.parametrize(
    ("share", "words"),
    [(0.04, "fewer than 1 in 10"), (0.86, "8 in 10"), (0.899, "8 in 10"), (0.9, "9 in 10"), (0.949, "9 in 10"),
     (0.95, "more than 9 in 10")],
)  # fmt: skip
def test_nine_in_ten_is_what_a_clear_answer_has(share: float, words: str) -> None:
    """0.86 rounds to nine tenths: but a clear answer needs 0.9, and the words must not sound like one."""
    assert plain(in_ten(share)) == words


def test_counts_that_add_up_already_are_left_alone() -> None:
    assert adding_up([50.0, 30.0, 20.0]) == [50, 30, 20]
    assert adding_up([33.4, 33.3, 33.3]) == [34, 33, 33]


def test_birdies_and_pars_of_a_lesson_add_up_to_the_screen_s() -> None:
    """Par or better 16.4 in 100 is 16 there: 5.6 birdies and 10.8 pars are five and eleven, not six and eleven."""
    one = fake_answers.answer().alternatives[0]
    chances = {"birdie_or_better": 0.056, "par": 0.108, "bogey": 0.436, "double_or_worse": 0.4}
    one = replace(one, chances={name: Estimate(value, 0.001) for name, value in chances.items()})
    counts = score_counts(one, [0.056, 0.108, 0.436, 0.25, 0.15])
    assert sum(counts) == 100 and counts[0] + counts[1] == 16 and counts[:2] == [5, 11]


@pytest.mark.parametrize(
    ("share", "words"),
    [(0.0, "fewer than 1 in 1,000"), (0.143, "1 time in 7"), (0.4, "1 time in 3"), (0.55, "6 times in 10"),
     (0.93, "9 times in 10"), (0.96, "nearly always")],
)  # fmt: skip
def test_a_share_as_times(share: float, words: str) -> None:
    assert plain(times_words(share, 3000)) == words


def test_two_shares_are_told_apart_where_they_are_worth_it() -> None:
    """Both are five times in ten: three more in a hundred are worth telling, one more is not."""
    assert [plain(one) for one in told((0.50, 0.53), 3000)] == ["50 times in 100", "53 times in 100"]
    assert [plain(one) for one in told((0.50, 0.51), 3000)] == ["5 times in 10", "5 times in 10"]


def test_a_name_with_a_figure_is_parted_from_its_odds() -> None:
    assert plain(odds(TroubleRow("burn 2", (0.1,)), "1 time in 7")) == "burn 2: 1 time in 7"
    assert plain(odds(TroubleRow("mill burn", (0.1,)), "1 time in 7")) == "the mill burn 1 time in 7"


@pytest.mark.parametrize(("nearer_yd", "word"), [(12.0, "leaves 12 yd less"), (-12.0, "leaves 12 yd more")])
def test_what_the_other_club_leaves_is_told_beside_the_first(nearer_yd: float, word: str) -> None:
    answer = fake_answers.answer()
    leaves = answer.best.leaves_yd
    other = {**leaves, "p50": replace(leaves["p50"], value=leaves["p50"].value - nearer_yd)}
    assert word in plain(planwords.risk_words(of(answer, 1, leaves_yd=other)))
    near = {**leaves, "p50": replace(leaves["p50"], value=leaves["p50"].value - 0.3 * nearer_yd)}
    assert "leaves" not in plain(planwords.risk_words(of(answer, 1, leaves_yd=near)))


def test_a_penalty_is_the_price_that_is_told_though_a_bunker_is_found_more_often_too() -> None:
    rows = [TroubleRow("left bunker", (0.05, 0.20)), TroubleRow("brook", (0.01, 0.04), penalty=True)]
    dearest = planwords._dearest(rows, 1)
    assert dearest is not None and dearest.words == "brook"


def test_a_lead_that_is_none_is_level() -> None:
    """The recommended shot may be a hair behind another in the sequences: nobody saves a shot every -500 times."""
    answer = of(fake_answers.answer(), 1, difference=Estimate(-0.002, 0.004))
    assert "are level (give or take 0.01)" in plain(planwords.why_words(answer))
    answer = of(answer, 1, difference=Estimate(0.04, 0.004))
    assert "saves a shot against the driver every 25 times" in plain(planwords.why_words(answer))


def test_ten_yards_nearer_save_what_ten_farther_cost() -> None:
    lesson = fake_lessons.lesson()
    value = replace(lesson.value, ten_nearer=0.12, ten_farther=0.09, lies={"rough": 0.2, "heavy rough": 0.02})
    words = plain(takeaways.worth_words(replace(lesson, value=value)))
    assert "10 yd nearer saves 0.12 and 10 yd farther costs 0.09." in words
    assert "rough costs 0.20, heavy rough changes little." in words


def test_no_line_is_read_off_a_curve_that_the_map_is_not_sure_of() -> None:
    """Of three clubs the second one's map and plays differ: the third is told in its place, and why."""
    clubs = tuple(
        {"club": name, "carry_yd": carry, "score": 5.3 + 0.1 * k, "difference": 0.1 * k, "asked": True}
        for k, (name, carry) in enumerate((("3-wood", 178.0), ("driver", 196.0), ("5-wood", 170.0)))
    )
    lesson = fake_lessons.lesson(answer=fake_answers.answer(clubs=clubs))
    first, second, third = lesson.curves
    unsure = replace(lesson, curves=(first, replace(second, map_gap=0.06), third))
    said = takeaways.aim_words(unsure)
    assert [words.split(" plays")[0] for words in said] == ["The 3-wood", "The 5-wood"]
    assert "the driver 0.06" in takeaways.gap_words(unsure) and takeaways.gap_words(lesson) == ""
