"""The forms of the verdict in constructed cases, its words, and what is said of players it may not fit."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import fake_answers
import pytest

from simulator.report import chosen, lines, phrases, verdicts
from simulator.report.figures import every_words
from simulator.report.text import answer_screen
from simulator.report.turns import turns, way_words
from simulator.report.units import METRES
from simulator.strategy.confidence import Flip
from simulator.strategy.goals import Goal
from simulator.strategy.result import Answer


def two(difference: float, *, error: float = 0.004, sure: float | None = 0.97, **more: Any) -> Answer:
    """A 3-wood ahead of a driver by so much, the best for a share of plausible players."""
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"score": 5.30}
    clubs[1] |= {"score": 5.30 + difference, "difference": difference, "error": error}
    same = difference < max(0.03, 2.0 * error)
    return fake_answers.answer(clubs=tuple(clubs), tied=(0, 1) if same else (0,), sure=sure, **more)


@pytest.mark.parametrize(
    ("difference", "error", "sure", "form"),
    [
        (0.13, 0.004, 0.97, "clear"),
        (0.13, 0.004, 0.90, "clear"),
        (0.13, 0.004, 0.80, "slight"),
        (0.13, 0.004, 0.60, "unsure"),  # fewer than two in three players
        (0.02, 0.004, 0.97, "either"),  # below 0.03 strokes
        (0.13, 0.080, 0.97, "either"),  # below two standard errors
        (0.13, 0.004, None, "clear"),  # the player taken as exact
        (0.02, 0.004, None, "either"),
    ],
)
def test_forms(difference: float, error: float, sure: float | None, form: str) -> None:
    answer = two(difference, error=error, sure=sure)
    assert answer.verdict == form.replace("unsure", "either")
    text = " ".join(answer_screen(answer).split())
    start = {"clear": "Hit the 3-wood: clearly better, by a shot every eight times you play this hole (0.13)",
             "slight": "Hit the 3-wood: slightly better, by a shot every eight times you play this hole (0.13)",
             "unsure": "3-wood if the figures hold, by a shot every eight times you play this hole (0.13): right for "
                       "6 in 10 plausible versions of this player, the driver for 4 in 10. Point each of them",
             "either": "3-wood or driver: either will do, hit the one you trust."}[form]  # fmt: skip
    assert text.startswith(start)
    assert ("Player taken as exact." in text) == (sure is None)


@pytest.mark.parametrize(
    ("sure", "words"),
    [(0.97, "more than 9 in 10"), (0.93, "9 in 10"), (0.7, "7 in 10"), (0.5, "5 in 10"), (0.87, "8 in 10")],
)
def test_plausible_versions(sure: float, words: str) -> None:
    text = " ".join(answer_screen(two(0.13, sure=sure)).split())
    assert re.search(rf"\bfor {words} plausible versions of this player[.,]", text)


def test_a_club_that_is_best_more_often_than_the_recommended_one_is_named() -> None:
    """Level on average for the player as given, and best for fewer of those he may be: both shares are said."""
    text = " ".join(answer_screen(two(0.02, sure=0.3)).split())
    assert "It is the 3-wood for 3 in 10 plausible versions of this player, the driver for 7 in 10." in text
    assert "the driver for" not in " ".join(answer_screen(two(0.02, sure=0.6)).split())


def test_only_the_club_of_the_lowest_average_is_pointed_where_no_club_reaches_a_goal() -> None:
    """Three clubs were pointed, and any line "reaches it as often", of a goal that none of them reaches."""
    never = fake_answers.Estimate(0.0, 0.001)
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[1]["aim_offset_yd"] = 4.0
    made = fake_answers.answer(clubs=tuple(clubs), goal=Goal("leave", low_yd=20.0, high_yd=40.0), tied=(0, 1))
    ones = tuple(replace(one, goal=never, aims_yd=(one.aim_offset_yd - 9.0, one.aim_offset_yd + 9.0)) for one in made.alternatives)
    for low in (0, 1):
        answer = replace(made, alternatives=ones, lowest_score=low)
        words = lines.pointing(answer)
        assert words.startswith(f"Point {lines.line_words(ones[low])}; it leaves ")
        assert "driver" not in words and "3-wood" not in words and lines.indifference(answer) == ""
    often = tuple(replace(one, goal=fake_answers.Estimate(0.2, 0.001)) for one in ones)
    reached = replace(made, alternatives=often)
    assert "the driver" in lines.pointing(reached) and "reaches it as often" in lines.indifference(reached)


def test_the_trade_is_with_the_club_that_the_verdict_names() -> None:
    """Not "3-wood if the figures hold ..., the 5-wood for 3 in 10. Against the 3-wood, the driver ..."."""
    clubs = [{**club, "asked": False} for club in fake_answers.answer.__kwdefaults__["clubs"]]
    third = {**clubs[1], "club": "5-wood", "score": 5.6, "difference": 0.29, "seed": 9}
    made = fake_answers.answer(clubs=(*clubs, third), question="plan", sure=0.5)
    for shares, other in (((0.5, 0.1, 0.4), "5-wood"), ((0.5, 0.4, 0.1), "driver")):
        answer = replace(made, confidence=replace(made.confidence, shares=shares))
        said = verdicts.verdict(answer)
        assert f"the {other} for 4 in" in said.replace("\xa0", " ")
        assert phrases.trade(answer).startswith(f"Against the 3-wood, the {other} ")
        assert chosen.leading(answer) == [0, 2 if other == "5-wood" else 1]
    # what was asked about is told of all the same
    asked = (made.alternatives[0], replace(made.alternatives[1], asked=True), made.alternatives[2])
    answer = replace(made, alternatives=asked, confidence=replace(made.confidence, shares=(0.5, 0.1, 0.4)))
    assert chosen.leading(answer) == [0, 1]


def test_an_unsure_answer_says_what_was_not_asked_about() -> None:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"asked": False}
    text = " ".join(answer_screen(fake_answers.answer(clubs=tuple(clubs), sure=0.5)).split())
    assert text.startswith("3-wood (you did not ask about the 3-wood) if the figures hold, by ")


def test_all_bad() -> None:
    """Every club into the trees more often than not: said first, and the least bad named."""
    bad = ({"club": "driver", "carry_yd": 224.0, "score": 6.9, "aim_offset_yd": -22.0, "asked": True,
            "spread_deg": 2.0},
           {"club": "3-wood", "carry_yd": 205.0, "score": 7.1, "difference": 0.2, "aim_offset_yd": -20.0,
            "asked": True, "spread_deg": 2.0})  # fmt: skip
    text = " ".join(answer_screen(fake_answers.answer("long-sluice", clubs=bad, sure=0.95)).split())
    assert text.startswith("Every club finishes in trouble more often than not; least bad: Hit the driver")
    assert "more often than not" not in answer_screen(fake_answers.answer())


def test_better_and_tied_clubs_nobody_asked_about() -> None:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"asked": False}
    better = " ".join(answer_screen(fake_answers.answer(clubs=tuple(clubs), sure=0.95)).split())
    assert "clearly better than the driver, though you did not ask about it" in better
    clubs[1] |= {"score": 5.32, "difference": 0.01}
    level = " ".join(answer_screen(fake_answers.answer(clubs=tuple(clubs), tied=(0, 1))).split())
    assert "hit the one you trust (you did not ask about the 3-wood)" in level


@pytest.mark.parametrize(
    ("strokes", "words"),
    [
        (0.2, "a shot every five times you play this hole"),
        (0.04, "a shot every 25 times you play this hole"),
        (1 / 12, "a shot every twelve times you play this hole"),
        (0.9, "a shot every time you play this hole"),
        (2.0, "2.0 shots every time you play this hole"),
    ],
)
def test_a_difference_as_it_is_read_aloud(strokes: float, words: str) -> None:
    assert every_words(strokes) == words


def goal_answer(goal: Goal, *, tied: tuple[int, ...] = (0,), lowest: int = 0, behind: float = 0.24) -> Answer:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"club": "driver", "carry_yd": 196.0, "goal": 0.31}
    clubs[1] |= {"club": "3-wood", "carry_yd": 178.0, "goal": behind, "goal_difference": behind - 0.31,
                 "difference": -0.10 if lowest else 0.13, "score": 5.21 if lowest else 5.44}  # fmt: skip
    return fake_answers.answer(clubs=tuple(clubs), goal=goal, tied=tied, lowest_score=lowest)


def test_goal_verdicts() -> None:
    target = verdicts.verdict(goal_answer(Goal("target", most_strokes=4), lowest=1))
    assert target == (
        "For a 4 or better, hit the driver: 31 in 100 plays do, 24 with the 3-wood. For the lowest average it "
        "is the 3-wood, by 0.10. Later shots still go by the lowest average."
    )
    leave = verdicts.verdict(goal_answer(Goal("leave", low_yd=90.0, high_yd=110.0)))
    assert leave.startswith("To leave 90 to 110 yd, hit the driver: 31 in 100 plays do")
    assert "It has the lowest average too." in leave and "Later shots" not in leave
    land = verdicts.verdict(goal_answer(Goal("land", low_yd=150.0, high_yd=172.0), tied=(0, 1), behind=0.305))
    assert "To finish 150 to 172 yd on, driver (31) or 3-wood (31) in 100 plays: either will do" in land
    assert "The driver has the lowest average too." in land  # of two that are named "it" is neither


@pytest.mark.parametrize(("most", "rows"), [(3, ["3 or better", "par or better"]), (4, ["4 or better"]), (5, ["5 or better", "par or better"])])
def test_par_is_counted_beside_a_target_that_is_not_par(most: int, rows: list[str]) -> None:
    """The counts add up to 100 whatever is aimed for."""
    screen = answer_screen(goal_answer(Goal("target", most_strokes=most)))
    assert [line[:31].strip() for line in screen.splitlines() if "or better" in line and line[0].isalnum()
            and not line.startswith("For")] == rows  # fmt: skip


def test_a_goal_out_of_reach_chooses_no_club() -> None:
    """Nobody is told to hit the club they trust for what hardly ever happens."""
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"club": "driver", "goal": 0.0}
    clubs[1] |= {"club": "3-wood", "goal": 0.0, "goal_difference": 0.0}
    goal = Goal("leave", low_yd=90.0, high_yd=110.0)
    words = verdicts.verdict(fake_answers.answer(clubs=tuple(clubs), goal=goal, tied=(0, 1))).replace("\xa0", " ")
    assert words.startswith("To leave 90 to 110 yd, no club of this bag will do here: the most is fewer than 1 in")
    assert "any of them" not in words and "either will do" not in words
    assert words.endswith("For the lowest average it is the driver.")


@pytest.mark.parametrize(("chance", "said"), [(0.0035, "1 in 290 plays"), (0.012, "1 in 100 plays")])
def test_the_most_that_a_goal_out_of_reach_has_is_the_most_of_the_table(chance: float, said: str) -> None:
    """Of clubs that tie the lowest average is recommended: its chance may be the lower one."""
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0] |= {"club": "5-wood", "goal": 0.0}
    clubs[1] |= {"club": "driver", "goal": chance, "goal_difference": chance}
    goal = Goal("leave", low_yd=100.0, high_yd=130.0)
    words = verdicts.verdict(fake_answers.answer(clubs=tuple(clubs), goal=goal, tied=(0, 1))).replace("\xa0", " ")
    assert f"will do here: the most is {said}, with the driver. For the lowest average it is the 5-wood." in words


def test_aim_and_middle_are_both_said_only_when_they_differ() -> None:
    answer = fake_answers.answer()
    one = answer.best
    for right, said in ((2.9, False), (3.2, True), (-8.0, True)):
        object.__setattr__(one, "middle_right_yd", fake_answers.Estimate(right, 0.1))
        words = lines.pointing(answer)
        assert ("middle of the pattern finishes" in words) == said
        if said:
            assert f"finishes {abs(right):.0f} yd {'right' if right > 0 else 'left'} of that line" in words


def test_a_title_that_holds_its_line_is_parted_from_where_to_point() -> None:
    """ "The 3-wood (left line) 8 yd right of the middle" reads as one line of two."""
    clubs = [{**dict(fake_answers.answer.__kwdefaults__["clubs"][0]), "aim_offset_yd": off} for off in (-9.0, 4.0)]
    words = lines.pointing(fake_answers.answer(clubs=tuple(clubs), tied=(0, 1))).replace("\xa0", " ")
    assert words.startswith("Point the 3-wood (left line): ") and "; the 3-wood (right line): " in words
    clubs[1] |= {"club": "driver", "carry_yd": 196.0}
    plain = lines.pointing(fake_answers.answer(clubs=tuple(clubs), tied=(0, 1))).replace("\xa0", " ")
    assert plain.startswith("Point the 3-wood ") and ", the driver " in plain and ":" not in plain


def test_turns() -> None:
    flips = [
        ("driver_spread", "driver", "times", 0.8, 1, "the driver's spread 20 % tighter"),
        ("driver_carry", "driver", "yd", 12.0, 1, "the driver 12 yd longer"),
        ("wind_along", "", "mph", -6.0, 1, "6 mph more against"),
        ("wind_across", "", "mph", 4.0, 1, "4 mph more from the left"),
        ("hazard_edge", "withy drain", "yd", -5.0, 1, "the edge of the withy drain 5 yd farther off"),
        ("hazard_edge", "cross dyke", "yd", None, None, None),
    ]
    made = [Flip(what, name, unit, (-20.0, 20.0), amount, to, 0.004) for what, name, unit, amount, to, _ in flips]
    answer = fake_answers.answer(flips=tuple(made))
    words = turns(answer)
    assert words.startswith("It would be the driver with the driver's spread 20 % tighter, ")
    assert all(said in words for *_, said in flips if said) and "cross dyke" not in words
    assert turns(fake_answers.answer()) == ""
    exact = [way_words(one, exact=True) for one in made if one.amount is not None]
    assert exact[0] == "the driver's spread 20.0 +- 0.4 % tighter" and exact[2] == "6.0 +- 0.0 mph more against"


@pytest.mark.parametrize(
    ("amount", "error", "said"),
    [
        (4.3, 0.9, "4 mph more behind"), (4.3, 1.6, "4 mph more behind"), (3.9, 2.3, "5 mph more behind"),
        (2.4, 2.3, "less than 5 mph more behind"), (6.2, 7.0, "10 mph more behind"), (0.2, 0.1, "less than 1 mph more behind"),
    ],
)  # fmt: skip
def test_a_turning_point_is_told_no_finer_than_it_is_known(amount: float, error: float, said: str) -> None:
    assert way_words(Flip("wind_along", "", "mph", (-12.0, 12.0), amount, 1, error)) == said


def test_a_turning_point_in_metres_is_as_sure_as_in_yards() -> None:
    flip = Flip("driver_carry", "driver", "yd", (-20.0, 20.0), 12.0, 1, 1.05)
    assert way_words(flip) == "the driver 12 yd longer" and way_words(flip, METRES) == "the driver 11 m longer"
    assert way_words(flip, METRES, exact=True) == "the driver 11.0 +- 1.0 m longer"
