"""Places, better players and turning points at the bounds where another answer begins."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from solved import player_named

from simulator.errors import UsageError
from simulator.hole import load_hole
from simulator.player.levels import level
from simulator.strategy.better import longer, no_short_game, straighter, total_direction_deg
from simulator.strategy.by_fairway import fairway_edge_yd
from simulator.strategy.distancewords import read_distance
from simulator.strategy.places import place, plainly
from simulator.strategy.rescore import lowest
from simulator.strategy.turning import Turn, turning
from simulator.units import YD_PER_M

WITHY = load_hole("withy-drain")


def test_the_ground_of_another_tee_is_no_tee_of_today() -> None:
    """58 yards on, 4 right, stands the red tee: a ball there is not put back to the white one."""
    red = place("58 on, 4 right", WITHY)
    assert (red.x_yd, red.y_yd) == pytest.approx((4.0, 58.0), abs=0.5)
    own = place("2 on", WITHY, played=0)
    assert (own.x_yd, own.y_yd, own.words) == (0.0, 0.0, "the white tee")


def test_twenty_from_the_green_are_short_of_it_and_nineteen_may_be_anywhere() -> None:
    assert plainly("20 from the green", WITHY).words == "368.0 on"
    with pytest.raises(UsageError, match="off the green where"):
        place("19 from the green", WITHY)


def test_an_area_that_is_found_only_elsewhere_is_told() -> None:
    """The elbow bunker's places lie 131 to 144 yards out: asked at 150 it is found nearer, and that is said."""
    words, taken, *_ = plainly("elbow bunker, 150 out", WITHY)
    assert taken is not None and "elbow bunker: found only 14" in taken
    assert plainly("elbow bunker, 138 out", WITHY).taken is None and words != ""


def test_an_end_of_the_green_names_a_bunker_beside_it_alone() -> None:
    """The elbow bunker lies far short of the green, on its left: "short left bunker" is not that one."""
    with pytest.raises(UsageError, match="there is none such"):
        place("short left bunker", WITHY)
    assert "elbow bunker" in (plainly("left fairway bunker", WITHY).taken or "")


def test_of_two_fairways_the_edge_is_that_on_the_side_that_is_said() -> None:
    """Split, the right half nearer to the line of play: what lies left is beside the left one."""
    hole = load_hole("par 4, 400; left fairway 20 wide, edge 12; right fairway 30 wide, edge 6; green 28 deep")
    left, right = fairway_edge_yd(hole, 220.0, -1), fairway_edge_yd(hole, 220.0, 1)
    assert (left, right) == (pytest.approx(-32.0, abs=1.0), pytest.approx(36.0, abs=1.0))


def test_a_laser_s_second_number_has_the_unit_that_is_said_behind_it() -> None:
    """One unit for both where one is said, before or behind."""
    both = pytest.approx((150.0 * YD_PER_M, 155.0 * YD_PER_M))
    assert read_distance("150 m, adjusted 155") == both
    assert read_distance("150, adjusted 155 m") == both
    assert read_distance("150 yards, adjusted 141 m") == pytest.approx((150.0, 141.0 * YD_PER_M))


def test_a_longer_player_holds_the_ball_down_farther_too() -> None:
    isolde = player_named("isolde")
    low = replace(isolde, clubs=tuple(replace(c, low_carry_yd=0.9 * c.carry_yd) for c in isolde.clubs))
    for before, after in zip(low.clubs, longer(low, 10.0).clubs, strict=True):
        assert after.low_carry_yd == pytest.approx(0.9 * after.carry_yd) and after.carry_yd > before.carry_yd


def test_no_spread_is_taken_below_three_tenths() -> None:
    isolde = player_named("isolde")
    for before, after in zip(isolde.clubs, straighter(isolde, 30.0).clubs, strict=True):
        assert total_direction_deg(after) == pytest.approx(0.3 * total_direction_deg(before))


@pytest.mark.parametrize(("handicap", "alike"), [(-5.0, True), (-3.0, False), (24.0, False), (40.0, False)])
def test_two_levels_chip_alike_where_neither_spread_nor_mishits_differ(handicap: float, alike: bool) -> None:
    """None is better than the tour's; everywhere else mishits fall with the index, if the spread does not."""
    player = replace(player_named("barnaby"), handicap=handicap, part=level(handicap).part)
    assert bool(no_short_game(player)) == alike


def test_a_parabola_goes_no_lower_than_its_neighbours_allow() -> None:
    """Lowest at the end of what was tried: the end itself, not a place the three scores only point to."""
    assert lowest(np.array([[3.0, 1.0, 0.0]])).tolist() == [0.0]
    assert lowest(np.array([[2.0, 1.0, 2.0]])).tolist() == [1.0]
    assert lowest(np.array([[1.5, 1.0, 2.5]])).tolist() == pytest.approx([1.0 - 1.0 / 16.0])


def test_a_turn_is_looked_for_once_more_where_the_straight_line_says() -> None:
    """A lead that falls late: at the first guess it holds still, and the second line begins there."""
    lead = {0.0: 1.0, 5.0: 0.8, 10.0: -1.0, -10.0: 1.0}
    found = turning(lambda at: np.array([0.0, lead[at]]), (-10.0, 0.0, 10.0), 0.0, np.array([0.0, 0.01]))
    assert found.amount == pytest.approx(5.0 + 5.0 * 0.8 / 1.8) and found.to == 1
    assert found.standard_error == pytest.approx(0.01 * 5.0 / 1.8)


def test_of_two_turns_the_smaller_share_of_what_was_tried_is_told() -> None:
    """Down to half of what was tried, or up to four fifths of the way: half is the smaller change."""

    def behind(at: float) -> np.ndarray:
        return np.array([0.0, 1.0 - (at / 8.0 if at > 0.0 else -at / 20.0)])

    found = turning(behind, (-40.0, 0.0, 10.0), 0.0, np.array([0.0, 0.01]))
    assert isinstance(found, Turn) and found.amount == pytest.approx(-20.0)
