"""Notes as golfers say them: a side of the green without a distance, feet off it, what was left to the hole."""

from __future__ import annotations

import math

import pytest
from on_withy_drain import WITHY, placed, played

from simulator.errors import UsageError
from simulator.hole import Lie
from simulator.strategy.places import place
from simulator.strategy.review.notes import Putts, read_notes

TO_160 = "driver to 160 out; "


@pytest.mark.parametrize(
    "noted, meant",
    [
        ("7i just short", "short of the green"),
        ("7i came up short", "short of the green"),
        ("7i a bit short", "short of the green"),
        ("7i missed the green short", "short of the green"),
        ("6i long", "behind the green"),
        ("6i short left", "short left of the green"),
        ("6i left and short", "short left of the green"),
        ("6i long right", "long right of the green"),
        ("7i right", "right of the green"),
        ("7i missed right", "right of the green"),
        ("7i pin high right", "pin high, right of the green"),
        ("7i short right rough", "just short of the green, right rough"),
        ("7i short, right rough", "just short of the green, right rough"),
        ("7i right rough", "pin high, right rough"),
    ],
)
def test_a_side_alone_is_a_side_of_the_green_in_reach(noted: str, meant: str) -> None:
    end = played(TO_160 + noted)[1].end
    assert (end.x_yd, end.y_yd) == pytest.approx(placed(meant), abs=0.1)
    assert "no distance noted: taken as" in end.told


@pytest.mark.parametrize(
    "noted, meant",
    [
        (
            "driver to 160 out, left rough - 7-iron short - chip to 8 ft - 2 putts",
            "driver to 160 out, left rough; 7-iron short; chip to 8 ft; 2 putts",
        ),
        ("driver 160-yards out; 7i to 20 ft", "driver to 160 out; 7i to 20 ft"),  # it was out of bounds
        ("driver to 160 out - 7i to 20 ft - 2 putts - par", "driver to 160 out; 7i to 20 ft; 2 putts for par"),
        ("driver to 160 out and 7i to 20 ft and 2 putts", "driver to 160 out; 7i to 20 ft; 2 putts"),
        ("driver to 160 out + 7i to 20 ft + 2 putts", "driver to 160 out; 7i to 20 ft; 2 putts"),
        ("driver > 160 out -> 7i to 20 ft -> 2 putts", "driver to 160 out; 7i to 20 ft; 2 putts"),
        ("driver middle, 150 in | 8i to 15 feet | 2 putts", "driver to 150 out, fairway; 8i to 15 ft; 2 putts"),
        ("driver OB, reload, driver to 160 out; 7i to 20 ft", "driver OB; again; driver to 160 out; 7i to 20 ft"),
        ("driver to 160 out; 6i long 20 yds; chip to 6 ft", "driver to 160 out; 6i 20 yds long; chip to 6 ft"),
        ("driver to 160 out – 7 iron to 30 ft – 2 putts", "driver to 160 out; 7-iron to 30 ft; 2 putts"),
        ("driver - left rough, 160 out - 7-iron - 20 ft -2 putts", "driver to 160 out, left rough; 7-iron to 20 ft; 2 putts"),
        ("driver to one sixty out; seven iron to twenty five feet; two putts", "driver to 160 out; 7-iron to 25 ft; 2 putts"),
        ("driver to 160 out, left rough; 7i to front bkr", "driver to 160 out, left rough; 7i to front bunker"),
    ],
)
def test_strokes_between_dashes_and_numbers_in_words(noted: str, meant: str) -> None:
    ends = [[(s.end.x_yd, s.end.y_yd) for s in played(text) if s.end is not None] for text in (noted, meant)]
    assert len(ends[0]) == len(ends[1]) > 1
    for one, other in zip(*ends, strict=True):
        assert one == pytest.approx(other, abs=0.1)


@pytest.mark.parametrize(
    "noted, why",
    [
        (TO_160 + "7i to 10; 2 putts", "feet or yards from the hole"),  # it was 30 feet
        (TO_160 + "7i 15 yards short; chip to 6 ft", "is counted from the pin"),
        ("driver left", "how far, and on what"),  # nowhere near the green
        ("driver short", "how far, and on what"),
        (TO_160 + "7i to 30 out; chip short", "how far, and on what"),  # of the green or of the hole
        (TO_160 + "7i well short", "how far, and on what"),
        (TO_160 + "7i left", "notes '7i left': five paces off it is bunker: say so"),
        (TO_160 + "7i short right", "notes '7i short right': level with its front and right edge there is front"),
        (TO_160 + "7i long bunker", "notes '7i long bunker': there is none such"),
        (TO_160 + "7i pin high left", 'five paces off it is bunker: say so, or how far off, "8 left of the green"'),
        (TO_160 + "7i short; 2 putts", "not on the green but 20 yd out, fairway .no distance noted"),
    ],
)
def test_a_side_that_stays_open_is_refused(noted: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        played(noted)


def test_a_bunker_at_an_end_of_the_green() -> None:
    end = played(TO_160 + "7i short right bunker")[1].end
    assert end.lie is Lie.BUNKER and (end.x_yd, end.y_yd) == pytest.approx(placed("front right bunker"), abs=0.1)


def test_the_fringe_on_the_side_the_ball_came_from() -> None:
    for noted in ("sand wedge to the fringe", "sand wedge on the fringe", "sand wedge fringe"):
        end = played(f"driver to 160 out; 7i to 30 out; {noted}")[2].end
        assert (end.x_yd, end.y_yd) == pytest.approx(placed("front fringe"), abs=1.5) and "no side" in end.told
    behind = played(TO_160 + "7i to 10 behind the green; chip to the fringe")[2].end
    assert (behind.x_yd, behind.y_yd) == pytest.approx(placed("back fringe"), abs=1.5)
    with pytest.raises(UsageError, match="the ball lay there: on which side"):
        played(TO_160 + "7i to the fringe; chip to the fringe")


def test_feet_off_the_green() -> None:
    for feet, yards in (("9 ft short of the green", 3), ("12 feet over the back", 4), ("6 ft right of the green", 2)):
        end = played(f"{TO_160}7i to {feet}")[1].end
        beside = feet.replace(f"{3 * yards} ft", f"{yards}").replace(f"{3 * yards} feet", f"{yards}")
        assert (end.x_yd, end.y_yd) == pytest.approx(placed(beside), abs=0.01), feet
        assert played(f"{TO_160}7i {feet}")[1].end == end
        assert placed(feet) == pytest.approx(placed(beside), abs=0.01)  # --from has it too


def test_what_was_left_to_the_hole() -> None:
    for noted in ("driver, 150 left", "driver 150 yards left", "driver to 150 left"):
        end = played(noted)[0].end
        assert WITHY.out_yd(end.x_yd, end.y_yd) == pytest.approx(150.0, abs=0.1)
        assert "150 left is taken as what was left" in end.told
    for noted in ("driver, 137 m left", "driver 137m left", "driver to 137 metres left"):  # it was 137 m left of the hole
        end = played(noted)[0].end
        assert WITHY.out_yd(end.x_yd, end.y_yd) == pytest.approx(137.0 / 0.9144, abs=0.1) and end.lie is Lie.FAIRWAY
        assert "137 m left is taken as what was left" in end.told
    with pytest.raises(UsageError, match="gone or left"):
        played("driver 150 left rough")
    with pytest.raises(UsageError, match="left to go or left of what"):  # it was read as 20 out
        played(TO_160 + "7i to 20 left; chip to 3 ft")
    assert played(TO_160 + "7i to 5 m left")[1].end.putt_ft == pytest.approx(16.4, abs=0.1)


@pytest.mark.parametrize("noted, away_ft", [("8 ft short left", 8.0), ("3 ft by", 3.0), ("six feet", 6.0), ("a couple of feet", 2.0),
                                            ("6 inches", 0.5), ("a foot", 1.0), ("pin high, 15 ft left", 15.0)])  # fmt: skip
def test_feet_from_the_hole(noted: str, away_ft: float) -> None:
    end = played(f"{TO_160}7i to 30 out; chip to {noted}")[2].end
    assert end.putt_ft == pytest.approx(away_ft, abs=0.01)
    away_yd = math.hypot(end.x_yd - WITHY.pin.x_yd, end.y_yd - WITHY.pin.y_yd)
    assert away_yd == pytest.approx(away_ft / 3.0, abs=0.01)


def test_two_sides_of_the_hole_lie_between_them() -> None:
    ends = [played(f"{TO_160}7i to 30 out; chip to 9 ft {side}")[2].end for side in ("short", "left", "short left")]
    bearing = [math.atan2(one.x_yd - WITHY.pin.x_yd, one.y_yd - WITHY.pin.y_yd) % (2 * math.pi) for one in ends]
    assert bearing[2] == pytest.approx(0.5 * (bearing[0] + bearing[1]), abs=1e-6)


def test_two_distances_from_the_hole_are_one_too_many() -> None:
    with pytest.raises(UsageError, match="two distances from the hole: say one") as refused:
        played(TO_160 + "7i to 30 out; chip to 6 ft, 4 ft left")
    assert "\n" not in str(refused.value)


def test_yards_counted_from_the_pin_are_told_on_the_green_too() -> None:
    assert "'8 short' is counted from the pin" in played(TO_160 + "7i to 30 out; chip 8 short")[2].went


def test_a_place_on_the_green_by_its_ends() -> None:
    stations = []
    for noted in ("7i to the front of the green", "7i back of the green"):
        end = played(TO_160 + noted)[1].end
        assert end.lie is Lie.GREEN and "is taken as on it" in end.told
        stations.append(WITHY.station_offset(end.x_yd, end.y_yd)[0])
    assert stations == pytest.approx([396.0, 412.0], abs=1.0)  # 388 to 420


def test_a_ball_hit_backwards_is_doubted() -> None:
    """ "40 yards on" of a second stroke was read as 40 from the tee."""
    with pytest.raises(UsageError, match='"on" counts from the tee, and that is 202 yd farther from the hole'):
        played(TO_160 + "duffed 7i 40 yards on; pw to 10 ft")
    assert "30 yd farther from the hole" in played(TO_160 + "chip to 190 out")[1].went
    assert "farther" not in played(TO_160 + "7i over the green")[1].went


def test_beside_the_fairway_is_not_on_it() -> None:
    for noted in ("driver left of the fairway", "driver right of fairway, 160 out", "driver 160 out left of the fairway"):
        with pytest.raises(UsageError, match="beside it"):  # they were read as its left or right half
            played(noted)
    with pytest.raises(UsageError, match="on the fairway or beside it"):
        place("150 out, right of the fairway", WITHY)
    by_hand = placed("160 out, 3 left of the fairway")
    end = played("driver 3 yards left of the fairway, 160 out")[0].end  # it was read as the line
    assert (end.x_yd, end.y_yd) == pytest.approx(by_hand, abs=0.01) and end.lie is Lie.ROUGH
    assert placed("160 out, just left of the fairway") == pytest.approx(placed("160 out, 5 left of the fairway"))


@pytest.mark.parametrize("noted", ["driver to 160 out and then 7i to 20 ft and then two putts", "driver 160 out / 7i 20 ft / two putts",
                                   "driver to 160 out; 7i hits the green, 20 ft; two putts",
                                   "driver to 160 out; 7i green in regulation, 20 ft; two putts"])  # fmt: skip
def test_other_ways_of_writing_it_down(noted: str) -> None:
    found = played(noted)
    assert [one.went for one in found] == ["160 yd out, fairway", "20 ft", "two putts"]


def test_the_last_putt_behind_a_comma() -> None:
    for said in ("chip to 3 feet, made it", "chip to 3 ft & holed it", "chip to 3 ft, holed"):
        assert isinstance(read_notes(said).clauses[-1], Putts), said


@pytest.mark.parametrize("noted", ["driver 220", "driver went 230", "driver 230 carry", "3w fairway 165", "7i 40 yards forward"])
def test_yards_alone_are_gone_or_left(noted: str) -> None:
    with pytest.raises(UsageError, match="gone or left"):
        read_notes(noted)


def test_yards_to_the_green_as_a_laser_has_them() -> None:
    for noted, meant in (("driver 165 to the back edge", "165 to the back"), ("driver 165 from the green", "165 short of the green"),
                         ("driver to 165 to the green", "165 short of the green")):  # fmt: skip
        end = played(noted)[0].end
        assert (end.x_yd, end.y_yd) == pytest.approx(placed(meant), abs=0.01), noted


def test_short_of_a_bunker_is_not_in_it() -> None:
    end = played(TO_160 + "7i short of the front right bunker")[1].end
    assert end.lie is Lie.FAIRWAY and WITHY.station_offset(end.x_yd, end.y_yd)[0] < 380.0
    assert WITHY.station_offset(*placed("10 short of the left bunker"))[0] == pytest.approx(386.0, abs=1.0)
    with pytest.raises(UsageError, match="which of them on this hole"):
        played(TO_160 + "7i short of the bunker")
    for noted in ("7i bunker short right", "7i bunker right", "7i right bunker"):
        assert played(TO_160 + noted)[1].end.words == "22 yd out, bunker"


def test_ground_beside_the_line_short_of_the_pin() -> None:
    end = played(TO_160 + "7i 20 yards short, left rough")[1].end
    station_yd, offset_yd = WITHY.station_offset(end.x_yd, end.y_yd)
    assert end.lie is Lie.ROUGH and station_yd == pytest.approx(383.5, abs=1.0) and offset_yd < 0.0
    assert "'20 yards short' is counted from the pin" in end.told


@pytest.mark.parametrize(
    "noted",
    [
        "1. driver to 160 out, fairway 2. 7i to 12 ft 3. 2 putts",
        "1) driver to 160 out, fairway 2) 7i to 12 ft 3) 2 putts",
        "1. driver to 160 out, fairway\n2. 7i to 12 ft\n3. 2 putts",
        "1: driver to 160 out, fairway; 2: 7i to 12 ft; 2 putts",
        "driver to 160 out, fairway; 7i four paces; 2 putts",
        "driver to 160 out, fairway; 7i on; 2 putts from four paces",
        "1 driver to 160 out, fairway; 2 7i to 12 ft; 3 2 putts",
        "1 driver to 160 out, fairway; 2 7 iron to 12 ft; 2 putts",
        "back pin; 1. driver to 160 out, fairway; 2. 7i to 12 ft; 2 putts",
        "driver to 160 out, fairway; 7i to 12 ft; putts 2",  # the 2 was the score
        "driver to 160 out, fairway; 7i to 12 ft; putts: two",  # it was a putt to 2 ft
    ],
)
def test_numbers_of_strokes_and_of_putts(noted: str) -> None:
    found = played(noted)
    assert [one.strokes for one in found] == [1, 1, 2]
    assert [one.end.words for one in found[:2]] == ["160 yd out, fairway", "12 ft"]
    assert read_notes(noted).scored is None


def test_numbers_that_are_no_list_stay_where_they_are() -> None:
    with pytest.raises(UsageError, match="notes '2': feet or yards"):
        played("driver to 160 out; 7i to 2. 3 putts")
    assert read_notes("driver to 160 out; 7i to 12 ft; 2 putts 5").scored == "5"
    skipped = read_notes("1. driver OB; 3. driver to 160 out; 4. 7i to 12 ft; 2 putts")  # the penalty stroke is the second
    assert len(skipped.clauses) == 4
    assert read_notes("1. driver OB 3. driver to 160 out 4. 7i to 12 ft 5. 2 putts").clauses[1].club == "driver"
    assert read_notes("4 hybrid to 160 out; 7i to 12 ft; 2 putts").clauses[0].club == "4 hybrid"


@pytest.mark.parametrize("noted, away_ft", [("half a yard", 1.5), ("to half a foot", 0.5), ("half a pace", 1.5)])
def test_half_of_a_unit(noted: str, away_ft: float) -> None:
    assert played(f"{TO_160}7i {noted}; 1 putt")[1].end.putt_ft == pytest.approx(away_ft, abs=0.01)


@pytest.mark.parametrize("noted", ["20 ft putt holed", "holed 20 ft putt", "20 footer made", "20-foot putt in"])
def test_a_putt_told_by_its_length(noted: str) -> None:
    found = played(f"{TO_160}7i on; {noted}")
    assert found[1].end.putt_ft == pytest.approx(20.0) and found[2].strokes == 1
    with pytest.raises(UsageError, match="the ball was noted as"):
        played(f"{TO_160}7i to 12 ft; {noted}")


def test_a_layup_wants_its_club() -> None:
    with pytest.raises(UsageError, match='Say it first, "8-iron to 90"'):
        played(TO_160 + "layup to 90; wedge to 10 ft; 2 putts")


def test_a_wedge_by_its_loft_behind_an_arrow() -> None:
    noted = read_notes("driver to 70 out, fairway -> 56 to 15 ft -> 2 putts")
    assert len(noted.clauses) == 3


def test_a_club_behind_a_comma_begins_the_next_stroke() -> None:
    first, second = played("driver in the alders, 250 out, punched out to 200 out fairway")
    assert first.end.lie is Lie.TREES and (second.club, second.end.lie) == ("punch", Lie.FAIRWAY)


def test_what_was_taken_of_a_place_beside_a_bunker_is_told() -> None:
    """Only the middle of a bunker goes without saying: its name in a sentence says nothing of that."""
    (stroke,) = played("driver to 10 short of the elbow bunker")
    assert stroke.end.noted == "'10 short of the elbow bunker' is taken as 10 yards along the line of play"
    (stroke,) = played("driver to the elbow bunker")
    assert stroke.end.lie is Lie.BUNKER and not stroke.end.noted
