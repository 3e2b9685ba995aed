"""What a lesson is drawn from, against the answer it belongs to and against other ways to the same number."""

from __future__ import annotations

import functools
import math

import numpy as np
import pytest
import shapely
from from_python import from_python
from small_games import player_of, straight_hole
from solved import hole_named, player_named

from simulator.hole.surfaces import LIE_OF, Lie
from simulator.kernels import value as kernel
from simulator.player.pattern import Pattern
from simulator.strategy import ask
from simulator.strategy import lesson as work
from simulator.strategy.answering import answer_at
from simulator.strategy.lesson import GETS_THERE, ON_GREEN_YD, Lesson, leave_of
from simulator.strategy.places import place
from simulator.strategy.question import Clock, question, solve
from simulator.strategy.result import TIE_STROKES
from simulator.strategy.targets import green_target
from simulator.strategy.tries import Place
from simulator.strategy.worth import read_map, smooth, value_map

reading = from_python(kernel.reading)

SEQUENCES = 2_000


@functools.cache
def solved_tee() -> Place:
    """The tee of withy-drain for Barnaby, as `made` has it."""
    hole, player = hole_named("withy-drain"), player_named("barnaby")
    return solve(question("compare", hole, player, ["driver", "3-wood"], sequences=SEQUENCES, seed=3), Clock())


@functools.cache
def made() -> Lesson:
    hole, player = hole_named("withy-drain"), player_named("barnaby")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(work, "solve", lambda *_: solved_tee())
        return work.lesson(hole, player, ["driver", "3-wood"], sequences=SEQUENCES, seed=3, quick=True)


@pytest.mark.slow
def test_the_answer_is_that_of_compare() -> None:
    hole, player = hole_named("withy-drain"), player_named("barnaby")
    answer = ask.compare(hole, player, ["driver", "3-wood"], sequences=SEQUENCES, seed=3, quick=True)
    assert made().answer.to_dict() == answer.to_dict()


@pytest.mark.slow
def test_it_is_as_sure_as_compare() -> None:
    """Confidence and verdict of the answer screen, to the last bit; what would turn it is not looked for."""
    hole, player = hole_named("withy-drain"), player_named("barnaby")
    sheet = work.lesson(hole, player, ["driver", "3-wood"], sequences=SEQUENCES, seed=3).answer.to_dict()
    answer = ask.compare(hole, player, ["driver", "3-wood"], sequences=SEQUENCES, seed=3).to_dict()
    assert answer["flips"] and sheet["confidence"]["form"] == "full"
    assert sheet | {"flips": None} == answer | {"flips": None}


def test_curves_pass_through_their_alternative_and_have_a_flat_bottom() -> None:
    for curve in made().curves:
        one = made().answer.alternatives[curve.index]
        k = int(np.argmin(np.abs(curve.aims_yd - one.aim_offset_yd)))
        assert curve.scores[k] == pytest.approx(one.score.value, abs=1e-9)
        assert curve.margins[k] == pytest.approx(one.score.margin, abs=1e-9)
        assert (np.delete(curve.margins, k) >= one.score.margin).all()
        known = [0.0 if error is None else error for error in one.aims_error_yd]
        first, last = one.aims_yd[0] + known[0], one.aims_yd[1] - known[1]
        inside = (curve.aims_yd >= first) & (curve.aims_yd <= last)
        assert (curve.scores[inside] <= curve.scores.min() + TIE_STROKES + 1e-12).all()
        assert curve.tie_yd[0] <= curve.best_yd <= curve.tie_yd[1]
        assert curve.ten_left is not None and curve.ten_left > TIE_STROKES
        assert curve.tie_yd == one.aims_yd  # the sheet said "9 left" on one page, "6 left" on another


def test_every_line_that_is_compared_is_on_every_curve() -> None:
    """This club down the other's line is the first thing a pupil asks."""
    lines = [made().answer.alternatives[curve.index] for curve in made().curves]
    turns = [math.asin(one.aim_offset_yd / one.carry_yd) for one in lines]
    for curve in made().curves:
        reach = np.arcsin(curve.aims_yd[[0, -1]] / curve.carry_yd)
        assert reach[0] < min(turns) and max(turns) < reach[1]


def test_scores_add_up_and_match_the_chances() -> None:
    scores, answer = made().scores, made().answer
    assert np.allclose(scores.shares.sum(axis=1), 1.0)
    for row, one in zip(scores.shares, answer.alternatives, strict=True):
        known = [one.chances[name] for name in ("birdie_or_better", "par", "bogey", "double_or_worse")]
        values = [chance.value for chance in known if chance is not None]
        assert [*row[:3], row[3] + row[4]] == pytest.approx(values)


def test_the_map_is_read_as_the_kernels_read_it() -> None:
    """Against the kernels' own reader at places and lies drawn at random."""
    place, luck = solved_tee(), np.random.default_rng(8)
    x, y = luck.uniform(-60, 60, 500), luck.uniform(-10, 420, 500)
    for lie in (Lie.FAIRWAY, Lie.ROUGH, Lie.BUNKER):
        mine = read_map(place.board, x, y, lie)
        theirs = np.array([reading(place.board.game.field, int(lie), a, b) for a, b in zip(x, y, strict=True)])
        assert np.allclose(mine, theirs, equal_nan=True, atol=1e-9)
        assert np.isfinite(mine).any()


def test_a_yard_nearer_is_worth_something_and_rough_costs() -> None:
    value = made().value
    assert value.ground == "fairway" and value.ten_nearer is not None
    assert 0.0 < value.ten_nearer < 0.3
    assert 0.02 < value.lies["rough"] < value.lies["heavy rough"]
    near = np.isfinite(value.strokes)
    assert near.mean() > 0.4 and 2.0 < value.strokes[near].min() < value.here


def test_other_ground_costs_the_same_by_other_luck() -> None:
    """Where no ball comes to lie in rough the map's nodes are worked least: read there, it cost -0.01 to 0.11."""
    result, costs = made(), []
    asked = question("compare", result.answer.hole, result.answer.player, ["driver", "3-wood"], sequences=100, seed=4)
    place = solve(asked, Clock())
    for seed in (4, 5):
        costs.append(value_map(place, result.answer.best, result.answer.hole, seed).lies)
    for lies in costs:
        assert set(lies) == set(result.value.lies)
        for ground, cost in result.value.lies.items():
            assert lies[ground] == pytest.approx(cost, abs=0.03 if ground == "rough" else 0.05)


def test_the_approach_is_from_the_middle_of_the_leaves_before_it() -> None:
    answer, approach = made().answer, made().approach
    first = leave_of(answer.best, answer)
    assert answer.best.leaves_yd["p10"].value < first.out_yd < answer.best.leaves_yd["p90"].value
    assert first.lie == LIE_OF[answer.hole.surface_at(first.x_yd, first.y_yd)].name.lower()
    assert first.played == 1 and approach.start.played is not None
    assert approach.start.played >= 1 and approach.start.out_yd <= first.out_yd
    assert approach.best.leaves_yd["p50"].value < ON_GREEN_YD


def test_a_shot_that_hardly_reaches_is_not_the_one_at_the_green() -> None:
    """A junior was told of her 3-wood from 140 yards, 82 in 100 of them short: her pitch from there is it."""
    hole = straight_hole(360, par=4, more="fairway = [{ from_yd = 120, to_yd = 346, left_yd = -15, right_yd = 15 }]\n")
    girl = player_of("handicap = 40\nsex = 'woman'\n[club.driver]\ncarry_yd = 110\n")
    result = work.lesson(hole, girl, start=place("140 out, fairway", hole, played=2), sequences=SEQUENCES, quick=True)
    assert result.answer.best.leaves_yd["p50"].value < ON_GREEN_YD
    assert green_target(result.answer).misses["short"].value > 1.0 - GETS_THERE
    assert result.approach.start.played == 3 and result.approach.start.out_yd < 70
    assert result.target.misses["short"].value < 1.0 - GETS_THERE


def test_rooms_and_misses() -> None:
    result = made()
    target, hole = result.target, result.answer.hole
    assert sum(share.value for share in target.misses.values()) == pytest.approx(1.0)
    on = target.misses["on"].value
    assert on == pytest.approx(result.approach.best.finish["green"].value, abs=0.03)  # outline against cells
    bearing = math.radians(result.approach.best.aim_bearing_deg)
    way = np.array([math.sin(bearing), math.cos(bearing)])
    pin = np.array([hole.pin.x_yd, hole.pin.y_yd])
    chord = shapely.LineString([pin - 200 * way, pin + 200 * way]).intersection(hole.green).length
    assert target.flag_room.front_yd + target.flag_room.behind_yd == pytest.approx(chord)


@pytest.mark.parametrize("club", ["driver", "7-iron", "sand wedge"])
def test_patterns_against_the_widths_worked_out_from_the_spreads(club: str) -> None:
    """Quadrature over the player's strikes (`player.pattern`) against the engine's, 4 % and three errors."""
    found = next(one for one in made().patterns if one.club == club)
    law = Pattern(made().answer.player.club(club))
    width = law.width_yd()
    depth = law.depth_yd
    assert found.depth_yd.value == pytest.approx(depth, abs=0.04 * depth + 3 * found.depth_yd.standard_error)
    assert found.width_yd.value == pytest.approx(width, abs=0.04 * width + 3 * found.width_yd.standard_error)


def test_every_figure_has_its_error() -> None:
    for one in made().patterns:
        for figure in (one.width_yd, one.depth_yd):
            assert figure.standard_error > 0.0
    assert (made().scores.errors > 0.0).all()


def test_a_pictures_values_are_smoothed_without_moving_them() -> None:
    """A slope stays what it is, gaps stay gaps and lend nothing, and the luck of single nodes is a third of what it was."""
    rng = np.random.default_rng(3)
    slope = 0.01 * np.arange(60.0)[None, :] + 0.02 * np.arange(60.0)[:, None]
    noisy = slope + 0.02 * rng.standard_normal(slope.shape)
    noisy[20:30, 20:30] = np.nan
    smoothed = smooth(noisy, 2.5)
    assert np.array_equal(np.isnan(smoothed), np.isnan(noisy))
    inner = np.zeros_like(slope, bool)
    inner[10:-10, 10:-10] = True
    inner[10:40, 10:40] = False  # beside the gap the mean leans away from it
    off = (smoothed - slope)[inner]
    assert abs(off.mean()) < 0.001 and off.std() < 0.02 / 3.0
    assert smooth(slope, 2.5)[inner] == pytest.approx(slope[inner], abs=1e-6)


def test_two_lines_of_one_shot_are_one_curve() -> None:
    """Both lie on it: twice it was drawn over itself, and "the driver 10 right" was said to play alike elsewhere."""
    hole, player = hole_named("withy-drain"), player_named("barnaby")
    asked = question("compare", hole, player, ["driver 10 right", "driver 26 left"], sequences=500, seed=3)
    curves = work._aim_curves(solved_tee(), answer_at(solved_tee(), asked, Clock(), None), 3)
    drivers = [curve for curve in curves if curve.club == "driver"]
    assert len(drivers) == 1
    for line in (10.0, -26.0):
        assert drivers[0].aims_yd[0] <= line <= drivers[0].aims_yd[-1]
