"""Bounds by which choices are told apart, each held from both sides; and figures counted from elsewhere than the tee."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from small_games import hole_of
from solved import bag_named, player_named, straight_hole

from simulator.conditions import Conditions, Wind
from simulator.engine import Sequences
from simulator.errors import FileError
from simulator.hole import PinPlace
from simulator.hole.course import BadHole, Course
from simulator.hole.surfaces import Surface
from simulator.strategy import answering, estimate
from simulator.strategy.aimline import AimLine
from simulator.strategy.confidence import (
    CLEAR_SHARE,
    CLEAR_STROKES,
    EITHER_SHARE,
    Confidence,
    verdict,
)
from simulator.strategy.course import play_course
from simulator.strategy.courseasked import Pins
from simulator.strategy.effective import PART_SWING_YD, effective_distance
from simulator.strategy.errorbars import Estimate, quantile
from simulator.strategy.goals import Goal, read_range
from simulator.strategy.habit import habit_of
from simulator.strategy.places import place
from simulator.strategy.reach import find_reach


def sure(share: float) -> Confidence:
    return Confidence(200, 16, (share, 1.0 - share), (0.02, 0.02), share)


def test_a_verdict_at_its_very_bounds() -> None:
    """`At least` is what the text says of the clear ones; `fewer than` of the share of an either."""
    ahead = [Estimate(CLEAR_STROKES, 0.0)]
    assert verdict(ahead, None) == "clear"
    assert verdict([Estimate(CLEAR_STROKES - 1e-9, 0.0)], None) == "either"
    assert verdict(ahead, sure(CLEAR_SHARE)) == "clear" and verdict(ahead, sure(CLEAR_SHARE - 1e-9)) == "slight"
    assert verdict(ahead, sure(EITHER_SHARE)) == "slight" and verdict(ahead, sure(EITHER_SHARE - 1e-9)) == "either"


def test_land_counts_from_where_the_ball_is_hit() -> None:
    hole = hole_of(straight_hole(380.0))
    start = place("150 out", hole, 1)
    names = Sequences.__dataclass_fields__
    empty = {name: np.zeros((2, 2) if name in ("rest_yd", "landing_yd") else 2) for name in names}
    rest = np.array([[0.0, start.y_yd + 100.0], [0.0, 100.0]])  # 100 on from the ball, 100 on from the tee
    ground = np.full(2, int(Surface.FAIRWAY))
    played = Sequences(**{**empty, "rest_yd": rest, "surface": ground})
    assert Goal("land", low_yd=90.0, high_yd=110.0).hits(played, start).tolist() == [True, False]


def test_a_range_about_a_middle_begins_at_nothing() -> None:
    assert read_range("leave", "10 +/- 20") == pytest.approx((0.0, 30.0))


def test_trouble_that_is_in_reach_is_not_brought_there_by_a_breeze() -> None:
    ground = """
penalty_area = [{ name = "near", colour = "red", from_yd = 225, to_yd = 240, left_yd = -20, right_yd = 20 }]
bunker = [{ name = "far", from_yd = 245, to_yd = 255, left_yd = -20, right_yd = 20 }]
"""
    hole = hole_of(straight_hole(380.0, ground))
    bag = replace(bag_named("isolde"), conditions=Conditions())
    far = 242.0 + np.linspace(-30.0, 2.0, 65_536)
    finishes = np.column_stack([np.zeros(far.size), far])
    found = {one.name: one for one in find_reach(hole, bag, 0, AimLine(0.0, 0.0, 0.0), finishes, finishes)}
    assert found["far"].helping_mph is not None and found["far"].spare_yd > 0.0
    assert found["near"].spare_yd < 0.0
    assert found["near"].helping_mph is None and found["near"].firm_reaches is None


def test_where_only_todays_wind_lifts_a_ball_so_high_all_is_the_heights() -> None:
    found = effective_distance(
        player_named("barnaby"), Conditions(wind=Wind(20.0, 0.0)), 140.0, height_yd=30.0
    )
    assert found.height_adds_yd == pytest.approx(found.effective_yd - 140.0) and found.height_adds_yd > 10.0
    assert found.air_adds_yd == found.wind_adds_yd == 0.0


def test_a_gap_between_two_clubs_is_no_part_swing() -> None:
    """Of 20 yards between two irons the middle is 10 short of the longer one: only below the shortest club is a
    full swing too much."""
    isolde = player_named("isolde")
    clubs = [isolde.club("driver"), isolde.club("7-iron"), isolde.club("pitching wedge")]
    few = replace(isolde, clubs=tuple(clubs))
    high, low = clubs[1].carry_yd, clubs[2].carry_yd
    between = effective_distance(few, Conditions(), high - 0.45 * (high - low))
    assert between.club == "7-iron" and between.carry_yd - between.distance_yd > PART_SWING_YD
    assert not between.part_swing
    assert effective_distance(few, Conditions(), low - 2.0 * PART_SWING_YD).part_swing


def test_a_flag_that_no_club_reaches_today_takes_the_longest() -> None:
    """205 yards into 60 mph: the driver's 230 in still air is no reason to take less."""
    hole = hole_of(straight_hole(205.0))
    isolde = player_named("isolde")
    assert isolde.clubs[0].carry_yd > 205.0
    assert habit_of(isolde, hole).partition("@")[0] != "driver"
    assert habit_of(isolde, hole, Conditions(wind=Wind(60.0, 0.0))) == "driver@0"


def test_a_sheet_may_name_a_hole_whose_file_is_bad(tmp_path: Path) -> None:
    bad = BadHole(7, "07.toml", FileError("07.toml", "", "nothing", "something"))
    course = Course("Broken", (), (), (bad,))
    answer = play_course(course, [player_named("isolde")], pins=[Pins("sheet", None, {7: PinPlace(9.0)})])
    assert [one.number for one in answer.failures] == [7] and not answer.results


def test_the_error_of_a_quantile() -> None:
    """Of a normal sample the median's is sqrt(pi / 2) of the mean's, 1 / sqrt(n); the estimate of it by two
    order statistics scatters by some 2 n^(-1/4) of itself (a spacing of about sqrt(n) / 2 values each way)."""
    n = 40_000
    values = np.random.default_rng(5).standard_normal(n)
    error = quantile(values, 0.5).standard_error
    assert error == pytest.approx(math.sqrt(math.pi / 2.0 / n), rel=2.0 * n**-0.25)


def choices(leads: dict[tuple[int, int], Estimate], monkeypatch: pytest.MonkeyPatch, count: int) -> int:
    """Index of the best of some choices, the first the map's, by what each is behind another."""
    monkeypatch.setattr(estimate, "difference", lambda one, other: leads[one, other])
    made: Any = [SimpleNamespace(name=k) for k in range(count)]
    played: Any = list(range(count))
    return answering.best_by_average(made, played, made[0])


def test_the_maps_choice_stays_unless_another_is_better_by_the_margin(monkeypatch: pytest.MonkeyPatch) -> None:
    level = Estimate(0.0, 0.01)
    within, beyond = Estimate(0.019, 0.01), Estimate(0.021, 0.01)  # 1.96 errors are the margin
    assert choices({(0, 0): level, (0, 1): within}, monkeypatch, 2) == 0
    assert choices({(0, 0): level, (0, 1): beyond}, monkeypatch, 2) == 1


def test_the_larger_gap_of_a_club_is_the_one_that_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """Two lines of one club: whichever comes first, the warning says the larger of their gaps."""
    luck = np.random.default_rng(2)
    monkeypatch.setattr(answering, "past_the_drawing", lambda *_: "")
    monkeypatch.setattr(answering, "short_of_the_fairway", lambda *_: None)

    def gap(mean: float) -> Any:
        rest = mean + 0.001 * luck.standard_normal(400)
        return estimate.PlayedChoice(np.full(16, 4.0), rest, None)  # type: ignore[arg-type]

    club: Any = SimpleNamespace(club="7-iron", flight="stock")
    asked: Any = SimpleNamespace(hole=None, start=None)
    for gaps in ((0.12, 0.05), (0.05, 0.12)):
        (said,) = answering._warnings(asked, (club, club), [gap(one) for one in gaps])
        assert "0.12" in said and "7-iron" in said
