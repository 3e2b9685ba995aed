"""A shot that goes past the flag on purpose says so; the club that is right most often has a column."""

from __future__ import annotations

import dataclasses

import fake_answers

from simulator.hole.words import hole_from_words
from simulator.report import lines
from simulator.report.chosen import shown
from simulator.report.text import answer_screen
from simulator.report.verdicts import if_figures_hold
from simulator.strategy.confidence import Confidence
from simulator.strategy.result import Answer


def long_of(carry_yd: float) -> Answer:
    clubs = ({"club": "driver", "carry_yd": carry_yd, "score": 4.4, "spread_deg": 4.0},)
    return fake_answers.answer(hole_from_words("par 3, 170; ravine across 20 to 140").hole, question="plan", clubs=clubs)


def test_what_is_left_behind_the_flag_is_told() -> None:
    """ "It leaves 15 to 61 yd" read as short of it: the ravine was carried with too much club on purpose."""
    past = long_of(215.0)
    assert " yd, mostly past the flag." in lines.pointing(past)
    assert ", mostly past the flag." in " ".join(answer_screen(past).split())
    assert "past the flag" not in lines.pointing(long_of(150.0))  # short of it
    assert "past the flag" not in lines.pointing(long_of(158.0))  # round the flag


def four(shares: tuple[float, ...], *, asked: int = 0) -> Answer:
    clubs = tuple(
        {"club": club, "carry_yd": carry, "score": 5.3 + 0.05 * k, "difference": 0.05 * k, "asked": k < asked}
        for k, (club, carry) in enumerate([("driver", 196.0), ("3-wood", 178.0), ("5-wood", 170.0), ("5-iron", 140.0)])
    )
    sure = Confidence(200, 16, shares, (0.02,) * 4, shares[0])
    return dataclasses.replace(fake_answers.answer(question="plan", clubs=clubs), confidence=sure)


def test_the_club_that_is_right_most_often_is_named_and_has_a_column() -> None:
    """The verdict named another, right for fewer, as the only rival."""
    answer = four((0.22, 0.18, 0.20, 0.40))
    assert shown(answer) == [0, 1, 3]
    assert if_figures_hold(answer).endswith("2 in 10 plausible versions of this player, the 5-iron for 4 in 10.")


def test_the_three_best_stay_where_none_is_right_more_often() -> None:
    assert shown(four((0.40, 0.18, 0.20, 0.22))) == [0, 1, 2]
    assert shown(four((0.22, 0.18, 0.20, 0.40), asked=3)) == [0, 1, 2]  # asked for: they keep their columns
