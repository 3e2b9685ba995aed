"""Target, leave and land: read as typed, counted as said, and they move the recommendation the right way."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest
from small_games import hole_of
from solved import one_map_for_one_place, player_named, straight_hole

from simulator import compare, plan
from simulator.engine import Sequences
from simulator.errors import UsageError
from simulator.hole.model import Hole
from simulator.hole.surfaces import Surface
from simulator.strategy import goals
from simulator.strategy.goals import Goal, read_goal, read_range
from simulator.strategy.places import place, tee_start
from simulator.strategy.result import Answer


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("90-110", 90.0, 110.0),
        ("90 to 110", 90.0, 110.0),
        ("90 - 110 yd", 90.0, 110.0),
        ("90yd-110yd", 90.0, 110.0),
        ("82-100 m", 82.0 / 0.9144, 100.0 / 0.9144),
        ("82 m to 100 m", 82.0 / 0.9144, 100.0 / 0.9144),
        ("82.5-100.5", 82.5, 100.5),
        ("between 90 and 110", 90.0, 110.0),
        ("90/110", 90.0, 110.0),
        ("100 +/- 10", 90.0, 110.0),
        ("under 100", 0.0, 100.0),
        ("inside 60 m", 0.0, 60.0 / 0.9144),
        ("60 yards or less", 0.0, 60.0),
    ],
)
def test_ranges(text: str, low: float, high: float) -> None:
    assert read_range("leave", text) == pytest.approx((low, high))


@pytest.mark.parametrize(
    "text", ["", "90", "110-90", "90-", "-90-110", "90-90", "wedge", "0-9999", "90-110 ft"]
)
def test_no_range(text: str) -> None:
    with pytest.raises(UsageError, match="allowed"):
        read_range("leave", text)


def test_one_goal_at_a_time() -> None:
    assert read_goal(None, None, None, 4) is None
    with pytest.raises(UsageError, match="one goal at a time"):
        read_goal("4", "90-110", None, 4)


@pytest.mark.parametrize(
    ("text", "score"),
    [("4", 4), ("par", 5), ("Par or better", 5), ("birdie", 4), ("eagle", 3), ("bogey", 6), ("double-bogey", 7), ("double", 7),
     ("4 or less", 4), ("at most 5", 5), ("no worse than bogey", 6), ("under 5", 4), ("break par", 4)],
)  # fmt: skip
def test_a_target_by_its_name(text: str, score: int) -> None:
    assert read_goal(text, None, None, 5) == Goal("target", most_strokes=score)


@pytest.mark.parametrize("text", ["", "0", "-1", "4.5", "level", "pars", "9999", "four\nfive"])
def test_no_target(text: str) -> None:
    with pytest.raises(UsageError, match="allowed: a number of strokes, or eagle, birdie, par") as refused:
        read_goal(text, None, None, 4)
    assert "\n" not in str(refused.value)


def test_a_target_needs_strokes_that_are_left() -> None:
    hole = hole_of(straight_hole(380.0))
    target = Goal("target", most_strokes=2)
    target.check(tee_start(hole))
    with pytest.raises(UsageError, match="3 to 20"):
        target.check(place("150 out", hole, 2))
    with pytest.raises(UsageError, match="--played"):
        target.check(place("150 out", hole))


def sequences(**columns: Any) -> Sequences:
    n = len(columns["score"])
    names = Sequences.__dataclass_fields__
    empty = {name: np.zeros((n, 2) if name in ("rest_yd", "landing_yd") else n) for name in names}
    return Sequences(**{**empty, **columns})


def test_what_counts() -> None:
    """By hand: six balls, the last three in a bunker, trees and water."""
    hole = hole_of(straight_hole(380.0))
    start = tee_start(hole)
    ground = [Surface.FAIRWAY, Surface.ROUGH, Surface.FAIRWAY, Surface.BUNKER, Surface.TREES, Surface.WATER]
    far = np.array([[0.0, 160.0], [30.0, 150.0], [0.0, 180.0], [0.0, 160.0], [0.0, 160.0], [0.0, 160.0]])
    played = sequences(
        score=np.array([3.0, 4.0, 5.0, 4.0, 6.0, 7.0]), rest_yd=far, surface=np.array([int(s) for s in ground]),
        leaves_yd=np.array([100.0, 89.0, 105.0, 100.0, 100.0, 100.0]),
    )  # fmt: skip
    assert Goal("land", low_yd=150.0, high_yd=172.0).hits(played, start).tolist() == [
        True, True, False, False, False, False]  # fmt: skip
    assert Goal("leave", low_yd=90.0, high_yd=110.0).hits(played, start).tolist() == [
        True, False, True, False, False, False]  # fmt: skip
    four = Goal("target", most_strokes=4)
    assert four.hits(played, start).tolist() == [True, True, False, True, False, False]
    later = replace(start, played=1)
    assert four.hits(played, later).tolist() == [True, False, False, False, False, False]


def test_paired_chances_and_ties() -> None:
    luck = np.random.default_rng(4)
    both = luck.random(20_000)
    hits = [both < 0.30, both < 0.31, both < 0.40]
    assert goals.tied_with(0, hits) == [0, 1] and goals.recommended(hits, [5.0, 5.1, 5.2]) == 2
    assert goals.recommended(hits[:2], [5.0, 5.1]) == 0  # tied: the lower score
    gap = goals.chance_difference(hits[2], hits[0])
    error = np.sqrt(0.1 * 0.9 / 20_000)  # one of the two only, in a tenth of the sequences
    assert gap.value == pytest.approx(0.1, abs=4 * error)
    assert gap.standard_error == pytest.approx(error, rel=0.05)


def over_water(length_yd: float, short_yd: float) -> Hole:
    """A short par 4 with water in front of the green: lay up, or go for it."""
    band = f"from_yd = {length_yd - 60}, to_yd = {length_yd - short_yd}, left_yd = -60, right_yd = 60"
    pond = f'penalty_area = [{{ name = "pond", colour = "yellow", {band} }}]'
    return hole_of(straight_hole(length_yd, pond))


@pytest.fixture(scope="module")
def reachable() -> Hole:
    """The driver just carries the water."""
    return over_water(235.0, 22.0)


@pytest.fixture(scope="module")
def lay_up() -> Hole:
    return over_water(262.0, 25.0)


@pytest.fixture(autouse=True)
def one_map(monkeypatch: pytest.MonkeyPatch) -> None:
    one_map_for_one_place(monkeypatch)


@cache
def _asked(hole: Hole, goal: Goal | None) -> Answer:
    return plan(hole, player_named("isolde"), sequences=2000, goal=goal, quick=True)


def test_a_target_makes_the_play_braver(reachable: Hole) -> None:
    """Short of the water on average; a pupil who needs a three goes for it."""
    mean, brave = _asked(reachable, None), _asked(reachable, Goal("target", most_strokes=3))
    assert mean.best.carry_yd < 175.0 and brave.best.carry_yd > 200.0
    chances = [one.goal.value for one in brave.alternatives if one.goal is not None]
    assert brave.best.goal is not None and brave.best.goal.value == max(chances)
    low = brave.alternatives[brave.lowest_score]
    assert low.club == mean.best.club and low.difference.value < 0.0  # what the target costs on average
    for one in brave.alternatives:
        assert one.goal is not None and one.goal.value == pytest.approx(float((one.scores <= 3).mean()))
        assert one.goal_difference is not None
        assert one.goal_difference.value == pytest.approx(one.goal.value - brave.best.goal.value)


def holds_the_middle(answer: Answer, far: np.ndarray, low: float, high: float) -> None:
    """The range holds the middle ball, and no club reaches it more often."""
    assert low - 6.0 <= float(np.median(far)) <= high + 6.0
    most = max(one.goal.value for one in answer.alternatives if one.goal is not None)
    assert answer.best.goal is not None and answer.best.goal.value >= most - goals.TIE_SHARE
    assert 0.3 < answer.best.goal.value <= float(((far >= low) & (far <= high)).mean()) + 1e-9


def finished(answer: Answer) -> np.ndarray:
    return np.hypot(*(answer.best.finishes_yd - (answer.start.x_yd, answer.start.y_yd)).T)


LEAVES = [(95.0, 120.0), pytest.param(70.0, 92.0, marks=pytest.mark.slow),
          pytest.param(150.0, 170.0, marks=pytest.mark.slow)]  # fmt: skip
LANDS = [(150.0, 172.0), pytest.param(100.0, 120.0, marks=pytest.mark.slow),
         pytest.param(55.0, 70.0, marks=pytest.mark.slow)]  # fmt: skip


@pytest.mark.parametrize(("low", "high"), LEAVES)
def test_leave_lays_up_to_the_distance(lay_up: Hole, low: float, high: float) -> None:
    answer = _asked(lay_up, Goal("leave", low_yd=low, high_yd=high))
    assert low - 6.0 <= answer.best.leaves_yd["p50"].value <= high + 6.0
    pin = (lay_up.pin.x_yd, lay_up.pin.y_yd)
    holds_the_middle(answer, np.hypot(*(answer.best.finishes_yd - pin).T), low, high)


@pytest.mark.parametrize(("low", "high"), LANDS)
def test_land_finds_the_club_for_the_room(lay_up: Hole, low: float, high: float) -> None:
    answer = _asked(lay_up, Goal("land", low_yd=low, high_yd=high))
    holds_the_middle(answer, finished(answer), low, high)


def test_compare_adds_the_club_that_gets_there(lay_up: Hole) -> None:
    goal = Goal("land", low_yd=150.0, high_yd=172.0)
    answer = compare(lay_up, player_named("isolde"), ["driver", "9-iron"], sequences=1000, goal=goal)
    assert not answer.best.asked and 135.0 <= answer.best.carry_yd <= 172.0
    asked = [one for one in answer.alternatives if one.asked]
    assert {one.club for one in asked} == {"driver", "9-iron"}
    assert all(one.goal_difference is not None and one.goal_difference.value < -0.2 for one in asked)
