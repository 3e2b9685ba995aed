"""What a lesson's pages say of the clubs somebody named, of trouble met most, and names of slivers of ground."""

from __future__ import annotations

import dataclasses
import re

import fake_answers
import fake_lessons
import numpy as np
import pytest
from small_games import hole_of

from simulator.report import takeaways
from simulator.report.figures import plain_spaces
from simulator.report.labels import Labels
from simulator.report.lessonmaps import draw_approach
from simulator.report.page import view_box
from simulator.report.planwords import plan_words
from simulator.report.takeaways import two_words
from simulator.report.worthmap import draw_value
from simulator.strategy.errorbars import Estimate

CLUBS = (
    {"club": "5-wood", "carry_yd": 168.0, "score": 5.20},
    {"club": "7-wood", "carry_yd": 158.0, "score": 5.25, "difference": 0.05},
    {"club": "3-wood", "carry_yd": 178.0, "score": 5.31, "difference": 0.11, "asked": True},
    {"club": "driver", "carry_yd": 215.0, "score": 5.44, "difference": 0.24, "aim_offset_yd": 12.0, "asked": True},
)


@pytest.mark.parametrize("either", [False, True])
def test_a_club_that_was_named_and_is_not_the_best_is_told_with_its_cost(either: bool) -> None:
    """Asked for driver and 3-wood the page told of two woods nobody had named, and no word of the driver."""
    level = {**CLUBS[1], "difference": 0.002, "asked": True}
    clubs = (CLUBS[0], level, *CLUBS[2:]) if either else CLUBS
    answer = fake_answers.answer(clubs=clubs, tied=(0, 1) if either else (0,))
    assert (answer.verdict == "either") is either
    said = plain_spaces(" ".join(plan_words(fake_lessons.lesson(answer=answer))))
    assert ("The 3-wood costs 0.11 a play more" in said) is either  # else it is the runner-up
    driver = said.split("The driver costs 0.24 a play more: it finds the withy drain ")[1]
    assert re.match(r"[^.]*, against [^.]* with the 5-wood\.", driver)  # the best
    unasked = tuple(dataclasses.replace(one, asked=False) for one in answer.alternatives)
    unasked_said = plan_words(fake_lessons.lesson(answer=dataclasses.replace(answer, alternatives=unasked)))
    assert "a play more" not in " ".join(unasked_said)


def test_of_two_ways_the_trouble_met_most_is_told() -> None:
    """Five kinds of trouble and room for four: the fifth was the 7-wood's second most."""
    answer = fake_answers.answer("eel-trap", clubs=fake_lessons.SHORT)
    met = [
        {"trap ditch": 0.03, "left bunker": 0.05, "willows": 0.01, "fen short of the green": 0.07},
        {"trap ditch": 0.05, "left bunker": 0.06, "willows": 0.012, "fen short of the green": 0.05,
         "sedge behind the green": 0.06},
    ]  # fmt: skip
    ones = tuple(
        dataclasses.replace(one, features={name: Estimate(share, 0.001) for name, share in shares.items()})
        for one, shares in zip(answer.alternatives, met, strict=True)
    )
    result = fake_lessons.lesson(answer=dataclasses.replace(answer, alternatives=ones))
    mine, other = map(plain_spaces, two_words(result))
    assert "the sedge behind the green 1 time in 17" in other and "the trap ditch 1 time in 20" in other
    assert "willows" not in mine + other
    assert "sedge" not in mine and "fewer than" not in mine  # what it never met, bunker by bunker


def test_lines_of_worth_are_not_one_bundle_at_the_edge_of_the_fairway() -> None:
    result = fake_lessons.lesson()
    value = result.value
    # half a stroke along the picture, a third for the lie: seven lines of 0.05 side by side
    slope = np.linspace(0.15, -0.15, value.strokes.shape[0])[:, None]
    lie = np.where(np.arange(value.strokes.shape[1]) > 0.6 * value.strokes.shape[1], 0.35, 0.0)[None, :]
    made = dataclasses.replace(value, strokes=value.here + slope + 0.0 * lie, lies={"rough": 0.35})
    ax = draw_value(dataclasses.replace(result, value=made))
    (lines,) = (one for one in ax.collections if hasattr(one, "levels"))
    assert np.diff(lines.levels)[0] == pytest.approx(0.1)
    level = dataclasses.replace(made, lies={"rough": 0.1})
    (fine,) = (one for one in draw_value(dataclasses.replace(result, value=level)).collections
               if hasattr(one, "levels"))  # fmt: skip
    assert np.diff(fine.levels)[0] == pytest.approx(0.05)


def _short_hole(behind_yd: float, clubs=fake_lessons.SHORT):
    """An answer on a short hole, and gorse from so far behind the middle of its green on."""
    hole = hole_of(
        f"""
        name = "Gorse"
        par = 3
        length_yd = 150
        green = [{{ at_yd = 150, depth_yd = 20, width_yd = 20 }}]
        pin = [{{ name = "middle", at_yd = 150 }}]
        heavy_rough = [{{ name = "gorse", from_yd = {150 + behind_yd}, to_yd = 700, left_yd = -60, right_yd = 60 }}]
        """
    )
    return fake_lessons.lesson(answer=fake_answers.answer(hole, clubs=clubs))


def _approach(behind_yd: float):
    return draw_approach(_short_hole(behind_yd))


def test_ground_that_is_hardly_in_the_picture_has_no_name_there() -> None:
    """ "sedge behind the green" stood on a ditch: of the sedge a yard was in the picture."""
    top_yd = view_box(_approach(200.0)).bounds[3]
    names = {
        seen: [text.get_text() for text in _approach(top_yd - 150.0 - seen).texts] for seen in (1.0, 9.0)
    }
    assert "gorse" not in names[1.0] and "gorse" in names[9.0]


def test_words_keep_off_the_cross_where_the_ball_is_to_land(monkeypatch: pytest.MonkeyPatch) -> None:
    """On eel-trap the yards of green in front of the flag stood on it."""
    kept: list[tuple[float, float]] = []
    monkeypatch.setattr(Labels, "keep_clear", lambda _, x, y, radius_pt: kept.append((x, y)))
    result = fake_lessons.lesson("eel-trap")
    draw_approach(result)
    landing = result.approach.line_of(result.approach.best).at(result.approach.best.today_carry_yd)
    assert any(place == pytest.approx(landing) for place in kept)


@pytest.mark.parametrize(("low_yd", "high_yd", "said"), [
    (-15.2, 13.1, "alike from 15 left to 13 right of the pin line"), (77.0, 86.2, "alike from 77 to 86 right of the pin line"),
    (-20.0, -4.0, "alike from 20 to 4 left of the pin line"), (0.2, 9.0, "alike from the pin line to 9 right of it"),
    (-9.0, 0.1, "alike from 9 left to the pin line"), (-0.1, 0.2, "best on the pin line alone"),
    (-8.2, -7.8, "best 8 left of the pin line alone")])  # fmt: skip
def test_lines_that_play_alike_say_what_they_count_from(low_yd: float, high_yd: float, said: str) -> None:
    """ "From 77 right to 86 right" of a dogleg, under a plan told by the fairway, counted from nobody knew what."""
    assert takeaways._alike(low_yd, high_yd, takeaways.YARDS) == f"plays {said}"


@pytest.mark.parametrize("tied", [(0,), (0, 1)])
def test_where_the_middle_of_the_pattern_finishes_is_on_the_sheet_too(tied: tuple[int, ...]) -> None:
    """A slicer's page had the cross left of all her balls, and no word of why."""
    two = (
        {"club": "driver", "carry_yd": 196.0, "score": 5.2},
        {"club": "3-wood", "carry_yd": 180.0, "score": 5.21, "difference": 0.01 if len(tied) > 1 else 0.2},
    )
    answer = fake_answers.answer(tied=tied, clubs=two)
    for right, told in ((2.9, False), (12.2, True)):
        object.__setattr__(answer.best, "middle_right_yd", Estimate(right, 0.1))
        said = plain_spaces(" ".join(plan_words(fake_lessons.lesson(answer=answer))))
        assert ("middle of the pattern finishes 12 yd right of that line." in said) == told
