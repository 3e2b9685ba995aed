"""Lines in words: where each points, worked out here by hand on a hole whose every place is known."""

from __future__ import annotations

import math

import pytest
from small_games import hole_of, player_of

from simulator.errors import UsageError
from simulator.hole import Hole, load_hole
from simulator.player import Player
from simulator.strategy.aimline import AimLine
from simulator.strategy.aimwords import in_degrees
from simulator.strategy.clubwords import Aim, shot_meant
from simulator.strategy.places import place
from simulator.strategy.pointing import point
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.working import check_clubs

HOLE = """
name = "Straight"
par = 4
length_yd = 400
green = [{ front_yd = 386, depth_yd = 28, width_yd = 24 }]
pin = [{ name = "middle", on_yd = 14, offset_yd = 5 }]
fairway = [{ from_yd = 150, to_yd = 300, left_yd = -10, right_yd = 20 }]
bunker = [{ name = "elbow bunker", at_yd = 230, offset_yd = 30, depth_yd = 10, width_yd = 8 }]
mark = [{ name = "church tower", at_yd = 500, offset_yd = -40 }]
"""


@pytest.fixture(scope="module")
def hole() -> Hole:
    return hole_of(HOLE)


@pytest.fixture(scope="module")
def player() -> Player:
    return player_of(
        'name = "A"\nhandicap = 10\nclubs = ["driver", "8i", "putter"]\n[club.driver]\ncarry_yd = 220\n'
    )


PIN = math.atan2(5.0, 400.0)


def _far(offset: float) -> float:
    """Turn to a place so far right of the line where a 220-yd carry crosses it."""
    return math.degrees(math.atan2(offset, 220.0) - PIN)


@pytest.mark.parametrize(
    ("words", "turn_deg"),
    [
        ("driver down the fairway", _far(5.0)),
        ("driver down the middle", _far(5.0)),
        ("driver, middle of the fairway", _far(5.0)),
        ("driver left edge", _far(-10.0)),
        ("driver at the right edge of the fairway", _far(20.0)),
        ("driver left half", _far(-2.5)),
        ("driver right side of the fairway", _far(12.5)),
        ("driver at the green", math.degrees(-PIN)),
        ("driver left centre", _far(-2.5)),
        ("driver 3 yd left of the middle of the fairway", _far(2.0)),  # as answers say it
        ("driver 10 right of centre", _far(15.0)),
        ("driver 5 right of the left edge", _far(-5.0)),
        ("driver 8 yd left of the middle of the green", math.degrees(math.atan2(-8.0, 400.0) - PIN)),
        ("driver middle of the green", math.degrees(-PIN)),
        ("driver 6 left of the church tower", math.degrees(math.atan2(-46.0, 500.0) - PIN)),
        ("driver at the church tower", math.degrees(math.atan2(-40.0, 500.0) - PIN)),
        ("driver over the elbow bunker", math.degrees(math.atan2(30.0, 230.0) - PIN)),
    ],
)
def test_where_a_line_in_words_points(hole: Hole, player: Player, words: str, turn_deg: float) -> None:
    club, _, aim = in_degrees(words, hole, player, None).partition("@")
    assert club == "driver" and aim.endswith("deg")
    # steps of 0.25 yd along the line, and two digits behind the point
    # beside a mark or the green yards are counted across the line to it, here 5 degrees off the line of play
    assert abs(float(aim.removesuffix("deg")) - turn_deg) < (0.06 if "6 left of the church" in words else 0.03)


def test_the_line_is_seen_from_the_ball(hole: Hole, player: Player) -> None:
    """From 12 left of the line 40 yards on, the middle of the fairway is 17 yards right, not 5."""
    start = place("40 on, 12 left", hole, played=1)
    said = in_degrees("driver down the fairway", hole, player, (start.x_yd, start.y_yd))
    turn = float(said.removeprefix("driver@").removesuffix("deg"))
    to_pin = math.atan2(17.0, 360.0)
    station = 40.0 + math.sqrt(220.0**2 - 12.0**2)
    assert abs(turn - math.degrees(math.atan2(17.0, station - 40.0) - to_pin)) < 0.03


@pytest.mark.parametrize(
    "words", ["driver", "driver 8 left", "driver@-3deg", "driver at the flag", "8i low", "152 shot"]
)
def test_what_is_no_such_line_stays_as_it_is(hole: Hole, player: Player, words: str) -> None:
    assert in_degrees(words, hole, player, None) == words


def test_short_of_the_fairway_its_middle_is_where_it_begins(hole: Hole, player: Player) -> None:
    """The 8-iron comes down before it: 5 right of the line, seen at 150, and read again as answers say it."""
    for words, offset in (("8i down the fairway", 5.0), ("8i 6 right of the middle of the fairway ahead", 11.0)):
        club, _, aim = in_degrees(words, hole, player, None).partition("@")
        turn_deg = float(aim.removesuffix("deg"))
        begins = math.degrees(math.atan2(offset, 150.0) - PIN)
        assert club == "8i" and begins - 0.06 < turn_deg <= begins + 0.01  # looked for in steps of two yards
        told = point(hole, AimLine(0.0, 0.0, math.degrees(PIN) + turn_deg), 130.0)
        assert told.name == "the middle of the fairway ahead" and abs(told.offset_yd - (offset - 5.0)) < 0.3


def test_no_fairway_where_the_club_comes_down_is_said(hole: Hole, player: Player) -> None:
    with pytest.raises(UsageError, match=r"no fairway where it comes down, 1[0-4]\d yd from here"):
        in_degrees("8i down the fairway", hole, player, (0.0, 200.0))


def test_yards_beside_an_area_are_no_aim(hole: Hole, player: Player) -> None:
    """They would count from its edge for some, from its middle for others."""
    words = "driver 5 left of the elbow bunker"
    assert in_degrees(words, hole, player, None) == words


@pytest.mark.parametrize(
    ("words", "why"),
    [("driver off the deck", "says where it is hit from: leave it out"), ("8i off the tee", "--from does that")],
)
def test_where_it_is_hit_from_is_no_aim(player: Player, words: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        shot_meant(player, words)


def test_straight_at_the_pin(player: Player) -> None:
    for words in ("8i straight at the pin", "8i straight", "8i at the flag"):
        assert shot_meant(player, words).aim == Aim(0.0)
    assert shot_meant(player, "8i 5 yd left of the straight line to the pin").aim == Aim(-5.0)


def test_a_line_noted_in_words_after_the_round(hole: Hole, player: Player) -> None:
    """Each from where its stroke was played; what is no line is still refused."""
    notes = "driver down the fairway to 180 out, fairway; 8i at the green to 30 out, rough; chip to 3 ft; 1 putt"
    clubs = check_clubs(strokes_of(read_notes(notes), hole), hole, player)
    turns = [float(club.partition("@")[2].removesuffix("deg")) for club in clubs]
    assert turns[0] == pytest.approx(_far(5.0), abs=0.03)
    assert turns[1] == pytest.approx(-math.degrees(math.atan2(5.0, math.sqrt(180.0**2 - 5.0**2))), abs=0.03)
    with pytest.raises(UsageError, match="is no aim here"):
        check_clubs(strokes_of(read_notes("driver at the moon bunker to 180 out, fairway"), hole), hole, player)


def test_each_half_of_a_split_fairway(player: Player) -> None:
    """What an answer says of a line is read again as the same line, 4 yards off the middle of each half."""
    hole = load_hole("par 4, 400; left fairway 20 wide, edge 8; right fairway 30 wide, edge 6")
    for half, middle in (("left", -18.0), ("right", 21.0)):
        words = f"driver 4 yd right of the middle of the {half} fairway"
        turn = float(in_degrees(words, hole, player, None).partition("@")[2].removesuffix("deg"))
        # the fairway is aimed at where the line of play is a carry away: the ball comes down a little nearer
        assert turn == pytest.approx(math.degrees(math.atan2(middle + 4.0, 220.0)), abs=0.03)
        said = point(hole, AimLine(0.0, 0.0, turn), 220.0)
        assert said.name == f"the middle of the {half} fairway" and said.offset_yd == pytest.approx(4.0, abs=0.2)
    with pytest.raises(UsageError, match='one fairway there; say "left half'):
        in_degrees("driver down the left fairway", load_hole("par 4, 400"), player, None)
