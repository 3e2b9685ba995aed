"""A ball on the fringe: where words put it, and what lies round the green there."""

from __future__ import annotations

import pytest
import shapely
from small_games import straight_hole

from simulator import load_hole, load_player
from simulator.errors import UsageError
from simulator.hole.collar import COLLAR_YD, with_collars
from simulator.hole.surfaces import Lie, Surface
from simulator.strategy.by_fringe import RIM_YD, by_the_fringe, fringed
from simulator.strategy.places import place
from simulator.strategy.review.working import review

BARE = load_hole("withy-drain")
WITHY = with_collars(BARE)


@pytest.mark.parametrize(
    "words, ahead, right",
    [
        ("fringe", -1, 0), ("on the fringe", -1, 0), ("front fringe", -1, 0), ("near side fringe", -1, 0), ("back fringe", 1, 0),
        ("fringe at the back", 1, 0), ("on the far fringe", 1, 0), ("back collar of the green", 1, 0), ("left fringe", 0, -1),
        ("right hand fringe", 0, 1), ("fringe, right", 0, 1), ("the right side of the fringe", 0, 1),
    ],
)  # fmt: skip
def test_a_yard_off_the_green_on_the_side_that_was_said(words: str, ahead: int, right: int) -> None:
    start = place(words, WITHY)
    assert WITHY.green.distance(shapely.Point(start.x_yd, start.y_yd)) == pytest.approx(RIM_YD, abs=0.05)
    assert start.lie == "fairway" and "fringe" in start.words
    middle = WITHY.station_offset(WITHY.green.centroid.x, WITHY.green.centroid.y)
    on, across = (one - mid for one, mid in zip(WITHY.station_offset(start.x_yd, start.y_yd), middle, strict=True))
    for off, side in ((on, ahead), (across, right)):
        assert abs(off) < 0.5 if side == 0 else off * side > 5.0, (on, across)


def test_by_the_distance_to_the_pin() -> None:
    for words, out_yd in (("fringe, 17 out", 17.0), ("17 yards from the pin, on the back fringe", 17.0), ("left fringe 51 ft", 17.0)):
        start = place(words, WITHY)
        assert start.out_yd == pytest.approx(out_yd, abs=0.3) and start.lie == "fairway", words
    with pytest.raises(UsageError, match=r"the left fringe is \d+ to \d+ yd from the middle pin"):
        place("left fringe, 40 out", WITHY)
    level = place("pin high, right fringe", WITHY.with_pin("back right"))
    pin = WITHY.with_pin("back right").pin
    assert WITHY.station_offset(level.x_yd, level.y_yd)[0] == pytest.approx(WITHY.station_offset(*pin.xy_yd)[0], abs=0.5)


def test_where_none_is_drawn_two_yards_of_it_are_assumed() -> None:
    hole = fringed(BARE, "back fringe, 14 out")
    ring = [one for one in hole.features if one.is_fringe]
    assert len(ring) == 1 and any(f"{COLLAR_YD:g} yards of fringe all round" in said for said in hole.assumed)
    for kept in ("apron, 14 out", "12 left of the green"):  # an area of this hole, and other words
        assert fringed(BARE, kept) is BARE
    with pytest.raises(UsageError, match="no fringe is drawn: collar_yd"):
        place("back fringe", BARE)
    assert by_the_fringe("apron, 14 out", WITHY) is None and fringed(WITHY, "fringe") is WITHY


def test_no_fringe_in_sand() -> None:
    """Where a bunker meets the green nobody lies on the fringe."""
    more = "bunker = [{ at_yd = 420, offset_yd = -20, depth_yd = 44, width_yd = 16 }]\n"
    hole = with_collars(straight_hole(420, more=more))
    assert hole.surface_at(-16.0, 420.0) is Surface.BUNKER
    start = place("left fringe", hole)
    assert hole.surface_at(start.x_yd, start.y_yd) is Surface.FAIRWAY and start.x_yd < 0.0


def test_sand_all_along_the_front() -> None:
    """Nothing of the near half is fringe: the ball lies on what there is, or the side is refused."""
    sand = [(395, 412, -25, 25), (395, 421, -25, -10), (395, 421, 10, 25)]
    rows = ", ".join(f"{{ from_yd = {a}, to_yd = {b}, left_yd = {c}, right_yd = {d} }}" for a, b, c, d in sand)
    more = f"bunker = [{rows}]\n"
    hole = with_collars(straight_hole(420, more=more))
    assert hole.station_offset(*place("fringe", hole).xy_yd)[0] > 420.0
    with pytest.raises(UsageError, match="no fringe there"):
        place("front fringe", hole)


def test_a_putt_noted_from_the_fringe_is_judged_as_one() -> None:
    """Without a ring round the green it was in the rough there, where nobody putts."""
    told = review(straight_hole(150, par=3), load_player("barnaby"), "7i to back fringe; putt to 4 ft; 1 putt", threads=2)
    putt = told.strokes[1]
    assert putt.stroke.start.lie is Lie.FAIRWAY and putt.chosen is not None and putt.chosen.club == "putter"
