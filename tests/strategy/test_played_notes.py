"""Notes of what was played: read as they are meant, or refused by pointing at the clause."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from simulator.errors import UsageError, WordsRefused
from simulator.hole import Lie, load_hole
from simulator.strategy.review.notes import (
    HOLED,
    Again,
    Drop,
    Out,
    Putts,
    Stopped,
    Swing,
    read_notes,
)
from simulator.strategy.review.numbered import read_round
from simulator.strategy.review.rests import resting
from simulator.strategy.review.strokes import strokes_of

WITHY, EEL = load_hole("withy-drain"), load_hole("eel-trap")
TWO_BUNKERS = load_hole("par 4, 420; fairway 30 wide; bunkers left at 220 and 260")

CLAUSES = [
    ("driver to 215 out, right rough", [("driver", "215 out, right rough")]),
    ("Driver 8 left to 215 out", [("Driver 8 left", "215 out")]),
    ("7-iron low goes to 30 ft", [("7-iron low", "30 ft")]),
    ("5-hybrid: 40 out, rough", [("5-hybrid", "40 out, rough")]),
    ("5-hybrid -> 40 out", [("5-hybrid", "40 out")]),
    ("6i finds the left bunker, 20 out", [("6i", "the left bunker, 20 out")]),
    ("3w leaving 90 out", [("3w", "90 out")]),
    ("wedge onto the green, 12 ft", [("wedge", "the green, 12 ft")]),
    ("driver topped to 150 out", [("driver", "150 out")]),
    ("thinned 7-iron to 20 ft", [("7-iron", "20 ft")]),
    ("7-iron, a bit fat, to 30 out, rough", [("7-iron", "30 out, rough")]),
    ("sliced 3w into the right trees, 150 out", [("3w", "the right trees, 150 out")]),
    ("driver 150 out", [("driver", "150 out")]),  # not out of bounds
    ("5 wood 200 out, left rough", [("5 wood", "200 out, left rough")]),
    ("driver 230 on", [("driver", "230 on")]),
    ("7-iron 12 ft", [("7-iron", "12 ft")]),
    ("chip in", [("chip", HOLED)]),
    ("9-iron holed", [("9-iron", HOLED)]),
    ("putt into the hole", [("putt", HOLED)]),
    ("driver 164 yards left in", [("driver", "164 yards left in")]),  # not holed
    ("5-hybrid over the green", [("5-hybrid", "over the green")]),
    ("7-iron just short of the green", [("7-iron", "just short of the green")]),
    ("6-iron pin high in the right rough", [("6-iron", "pin high in the right rough")]),
    ("pw thinned through the back", [("pw", "through the back")]),
    ("6-iron 10 over the green", [("6-iron", "10 over the green")]),
    ("6-iron to fen behind the green, 30 out", [("6-iron", "fen behind the green, 30 out")]),
    ("7-iron plugged in the left bunker", [("7-iron", "the left bunker")]),
    ("laid up with 8-iron to 70 out", [("8-iron", "70 out")]),
    ("4 hybrid front bunker", [("4 hybrid", "front bunker")]),
    ("7 iron, left edge", [("7 iron", "left edge")]),
    ("3w to the lay-up bunker", [("3w", "the lay-up bunker")]),
    ("hit it to 20 ft with a 6-iron", [("6-iron", "20 ft")]),
    ("my second shot was a 5-hybrid to 20 ft", [("5-hybrid", "20 ft")]),
    ("drive with 3-wood to 190 out", [("3-wood", "190 out")]),
    ("drive to 190 out", [("driver", "190 out")]),
    ("8-iron out to 80 out", [("8-iron", "80 out")]),
    ("chipped out sideways to 90 out", [("chip", "90 out")]),
    ("splashed out to 12 ft", [("splash", "12 ft")]),
    ("lagged to 2 ft", [("putt", "2 ft")]),
    ("missed the first putt to 3 ft", [("putt", "3 ft")]),
    ("driver right into the alders, 250 out", [("driver", "the alders, 250 out, right")]),
    ("driver 8 left, 215 out", [("driver 8 left", "215 out")]),  # a line stays one
    ("driver to 200 out, left rough, hooked it", [("driver", "200 out, left rough")]),
    ("sw, left it in the bunker", [("sw", "the same place")]),
    ("driver left in the trees, 95 out", [("driver", "the trees, 95 out, left")]),
    ("6-iron pin high left in the rough", [("6-iron", "pin high left in the rough")]),
    ("8-iron hole in one", [("8-iron", HOLED)]),
    ("Driver - right rough, 190 out", [("Driver", "right rough, 190 out")]),
    ("5 hybrid - short of green", [("5 hybrid", "short of green")]),
    ("approach with 6-iron to 20 ft", [("6-iron", "20 ft")]),
    ("6-iron 5 paces short of the green", [("6-iron", "5 paces short of the green")]),
    ("6-iron over the back into the rough", [("6-iron", "over the back, rough")]),
    ("7 iron to middle of green, 20 feet", [("7 iron", "20 feet")]),
    ("6-iron on in 2, 20 ft", [("6-iron", "20 ft")]),
    ("wedge just on", [("wedge", "the green")]),
    ("3w short of the left cross bunker", [("3w", "short of the left cross bunker")]),
    ("driver 189 off the tee", [("driver", "189 off the tee")]),  # not a tee of that name
    ("driver carried the bunker to 130 out", [("driver", "130 out")]),
    ("8-iron bump to 4 ft", [("8-iron", "4 ft")]),
    ("driver, air shot", [("driver", "the same place")]),
    ("driver to 215 out, right rough, 5-iron to 30 ft", [("driver", "215 out, right rough"), ("5-iron", "30 ft")]),
]


@pytest.mark.parametrize(("text", "swings"), CLAUSES)
def test_a_stroke(text: str, swings: list[tuple[str, str]]) -> None:
    found = read_notes(text).clauses
    assert [(one.club, one.where) for one in found if isinstance(one, Swing)] == swings


@pytest.mark.parametrize("text", ["driver out of bounds", "driver ob", "driver, out", "driver goes o.b.", "driver lost",
                                  "driver lost ball", "driver to out of bounds", "driver out of bounds left",
                                  "driver lost to the right", "sliced driver ob right", "driver into the trees, lost",
                                  "driver lost in the alders", "driver left onto the drove road, ob"])  # fmt: skip
def test_a_ball_that_is_gone(text: str) -> None:
    (found,) = read_notes(text + "; driver to 200 out").clauses[:1]
    assert isinstance(found, Out) and found.club == "driver"


def test_every_other_clause() -> None:
    said = "driver into withy drain and drop 175 out; 5h to the water, again; unplayable, drop 150 out, rough; two putts"
    found = read_notes(said).clauses
    assert [type(one) for one in found] == [Swing, Drop, Swing, Again, Drop, Putts]
    assert not found[1].unplayable and found[4].unplayable and found[5].count == 2
    assert read_notes("driver to 200 out; free drop 201 out, rough").clauses[1].free
    for words, count in (("1 putt", 1), ("three putts", 3), ("3-putt", 3), ("tap-in", 1), ("conceded", 1)):
        assert read_notes(f"6i to 20 ft; {words}").clauses[-1] == Putts(words, count)
    assert isinstance(read_notes("driver to 200 out; picked up").clauses[-1], Stopped)


def test_reloading_is_the_next_ball_from_there() -> None:
    for said in ("driver out of bounds left, reload; driver to 200 out", "driver ob; reloaded; driver to 200 out"):
        played = strokes_of(read_notes(said), WITHY)
        assert [one.number for one in played.strokes] == [1, 3] and played.score == 3


@pytest.mark.parametrize(
    "said",
    ["driver ob; hit a provisional, driver to 200 out", "driver ob, provisional to 200 out", "driver lost; 3 off the tee to 200 out",
     "driver lost ball left, 3 off tee, driver to 200 out", "driver ob; reload to 200 out", "driver into the reed bed; unplayable, again; driver to 200 out",
     "driver into the trees, took an unplayable, re-teed; driver to 200 out"],
)  # fmt: skip
def test_a_second_ball_from_the_tee(said: str) -> None:
    """Stroke and distance: where an unplayable ball lay does not matter then."""
    first, second = strokes_of(read_notes(said), WITHY).strokes
    assert (first.penalty, second.number, second.club, second.start.lie) == (1, 3, "driver", Lie.TEE)


def test_putts_say_where_the_ball_was() -> None:
    far = strokes_of(read_notes("driver to 170 out; 6i on the green; two putts from 30 feet for par"), WITHY)
    assert far.strokes[1].end.putt_ft == pytest.approx(30.0) and far.score == 4
    assert strokes_of(read_notes("driver to 170 out; 6i to the green; holed a 6-footer"), WITHY).strokes[1].went == "6 ft"
    for said in ("made it", "holed the putt", "knocked it in", "gimme", "tap in", "holed the second"):
        assert read_notes(f"6i to 20 ft; {said}").clauses[-1] == Putts(said, 1), said


def test_a_number_behind_a_place_is_no_score() -> None:
    for said in ("driver to 164.5", "driver to 5,60", "driver to 200, 5"):
        assert read_notes(said).scored is None, said
    for said in ("7i to 12 ft; 2 putts. Bogey.", "7i to 12 ft; 2 putts for a bogey", "7i to the green; 2 putts from 30 ft = 3",
                 "7i to 12 ft; 1 putt; 2"):  # fmt: skip
        assert read_notes(said).scored is not None, said


def test_a_putt_told_by_a_number_is_told_in_feet() -> None:
    assert played("driver to 170 out; 6i to 20 ft; putt to 3; 1 putt").strokes[2].end.putt_ft == pytest.approx(3.0)


def test_an_unplayable_ball_and_where_it_was_dropped() -> None:
    for said in ("unplayable, 97 out", "unplayable, two club-lengths, 97 out", "unplayable, back on the line 97 out",
                 "unplayable, drop 97 out"):  # fmt: skip
        found = played(f"driver to 95 out, right trees; {said}; 9i to 20 ft")
        assert found.score == 3 and found.strokes[1].kind == "drop", said


def test_back_on_the_line_is_behind_where_the_ball_lay() -> None:
    """Rule 19.2b: hole, ball and drop are in line; it was put on the line of play, 30 yards off, on the fairway."""
    for said, out_yd in (("unplayable, back on the line to 130 out", 130.0), ("unplayable, drop back on the line, 110 m out", 120.3)):
        ball, drop = played(f"driver to 95 out, right trees; {said}; 9i to 20 ft").strokes[:2]
        ways = [(end.x_yd - WITHY.pin.x_yd, end.y_yd - WITHY.pin.y_yd) for end in (ball.end, drop.end)]
        assert math.hypot(*ways[1]) == pytest.approx(out_yd, abs=0.1)
        assert math.atan2(*ways[0]) == pytest.approx(math.atan2(*ways[1]), abs=1e-3)
        assert "on the line from the hole through the ball" in drop.end.told and drop.penalty == 1
    elsewhere = played("driver to 95 out, right trees; unplayable, back on the line to 130 out, fairway; 9i to 20 ft")
    assert elsewhere.strokes[1].end.lie is Lie.FAIRWAY  # noted: where it was is what counts
    with pytest.raises(UsageError, match="back on the line is farther from the hole"):
        played("driver to 95 out, right trees; unplayable, back on the line to 80 out; 9i to 20 ft")


def test_a_ball_left_in_the_bunker_stays_there() -> None:
    for said in ("sw, left it in", "sw left in the bunker", "sw still in the bunker"):
        found = played(f"driver to 170 out; 6i in the front right bunker; {said}; sw out to 12 ft; 2 putts")
        assert found.score == 6 and found.strokes[2].start.lie is Lie.BUNKER
        assert found.strokes[2].end.x_yd == found.strokes[2].start.x_yd, said
    (left,) = played("6i left in the bunker", EEL).strokes  # from the tee: the left one
    assert left.end.x_yd == resting("left bunker", EEL, None).x_yd


def test_what_was_taken_is_told_beside_the_stroke() -> None:
    assert "noted" not in played("driver to 180 out; 6i 12 left of the green").strokes[1].went
    assert "is taken as five paces" in played("driver to 190 out; 5h over the green").strokes[1].went
    assert "a usual lie there is taken" in played("driver to 160 out; 7i plugged in the left bunker").strokes[1].went


def test_a_place_found_elsewhere_is_said_beside_the_stroke() -> None:
    """The bunker lies 160 to 174 from the pin, whatever was noted: 90 out was told as 88 out without a word."""
    hole = load_hole("par 4, 400; bunker left at 240")
    seen = set()
    for yards in range(150, 182):
        try:
            end = strokes_of(read_notes(f"driver to {yards} out, left bunker"), hole).strokes[0]
        except UsageError:
            continue
        away = math.hypot(hole.pin.x_yd - end.end.x_yd, hole.pin.y_yd - end.end.y_yd)
        moved = abs(away - yards) > 0.5
        assert (f"noted as {yards} yd out" in end.went) == moved
        seen.add(moved)
    assert seen == {True, False}


def test_breaks_between_strokes() -> None:
    one = "driver to 215 out, right rough; 5h to 30 ft; 2 putts"
    for other in (one.replace(";", "."), one.replace("; ", "\n"), one.replace(";", " then"), one + ";"):
        assert read_notes(other) == read_notes(one), other


def test_tee_pin_and_start_before_the_strokes() -> None:
    found = read_notes("yellow tee; pin back right; from 150 out, fairway; 7-iron to 20 ft; 2 putts")
    assert (found.tee, found.pin, found.start) == ("yellow", "back right", "150 out, fairway")
    assert read_notes("back pin; 7-iron to 20 ft").pin == "back"
    assert len(found.clauses) == 2


def test_a_round_by_its_numbers() -> None:
    found = read_round("hole 7: driver to 160 out; 8i to 20 ft\n 2 putts\n\n8. 6i to 20 ft; 3 putts\n")
    assert list(found) == [7, 8] and len(found[7].clauses) == 3 and len(found[8].clauses) == 2


REFUSED = [
    ("driver", "to where?"),
    ("shanked", "to where?"),
    ("driver topped", "to where?"),
    ("driver 230 middle", '"to 230 on, fairway" for what it went'),
    ("7-iron well short", "to 10 behind the green"),
    ("chip and a putt", "chip to 6 ft; 1 putt"),
    ("up and down", "chip to 6 ft; 1 putt"),
    ("rescue thingummy", "which club, and to where"),
    ("", "no stroke in it"),
    ("2 putts; driver to 200 out", "behind '2 putts' the hole is over"),
    ("6i to 20 ft; 12 putts", "found 12 putts, allowed are 1 to 9"),
    (f"6i to 20 ft; {5_000 * '9'} putts", "which club, and to where"),
    ("6i to 15 ft; lipped out; made the 3 footer", 'notes \'lipped out\': where did it come to?'),  # not out of bounds
    ("driver to 200 out; unplayable", 'Say "unplayable, drop'),
    ("driver to 190 out; provisional to 180 out", "a provisional ball that was not played on with is left out"),
    ("hit driver 215 yards into left rough", "gone or left?"),
    ("6i to 20 ft; 2 putts from 40 ft", "the ball was noted as '20 ft'"),
    ("chip stiff", 'how near? Say "to 2 ft"'),
]


def test_a_length_of_thousands_of_digits_is_none() -> None:
    with pytest.raises(UsageError, match="'inches' is not understood there"):
        strokes_of(read_notes(f"6i to {5_000 * '9'} inches; 2 putts"), WITHY)


@pytest.mark.parametrize(("text", "why"), REFUSED)
def test_a_refusal_says_why(text: str, why: str) -> None:
    with pytest.raises(UsageError) as refused:
        read_notes(text)
    assert why in str(refused.value) and "\n" not in str(refused.value)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("driver to 200 out", "which hole?"),
        ("7: driver to 200 out\n7: driver to 190 out", "hole 7 stands there twice"),
        ("7: driver to 200 out\n8: driver", "hole 8: notes 'driver'"),
        ("", "no hole in them"),
    ],
)
def test_a_round_refuses_too(text: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        read_round(text)


@settings(max_examples=300, deadline=None)
@given(
    st.lists(
        st.sampled_from(
            ["driver", "3w", "chip", "putt", "to", "into", "out", "215", "12", "ft", "left", "right", "rough", "green", ";",
             ",", ".", ":", "2", "putts", "drop", "water", "again", "lost", "holed", "unplayable", "free", "pin", "tee",
             "from", "above", "the hole", "left in the bunker", "provisional", "reload", "short of the", "reed bed",
             "laid up with", "for bogey", "pin high", "two putts from", "still in", "-", "3 off the tee", "in", "-5", "1e9", "£", "picked up"]
        ),
        max_size=24,
    ).map(" ".join)
)
def test_any_words_are_read_or_refused(text: str) -> None:
    """Nothing but the one kind of error comes out, whatever is put in."""
    for hole in (WITHY, EEL):
        try:
            played = strokes_of(read_notes(text), hole)
        except UsageError as error:
            assert "\n" not in str(error)
        else:
            assert played.score == sum(one.strokes + one.penalty for one in played.strokes)
            starts = [one.start for one in played.strokes[1:]]
            assert starts == [one.end for one in played.strokes[:-1]]


# --- from clauses to strokes -----------------------------------------------------------------------


def played(text: str, hole=WITHY):
    return strokes_of(read_notes(text), hole)


def test_strokes_follow_each_other() -> None:
    found = played("driver to 215 out, right rough; 5h to 40 out; chip to 12 ft; 2 putts")
    assert found.holed and found.score == 5
    assert [one.number for one in found.strokes] == [1, 2, 3, 4]
    assert [one.start.lie for one in found.strokes] == [Lie.TEE, Lie.ROUGH, Lie.FAIRWAY, Lie.GREEN]
    assert found.strokes[3].start.putt_ft == pytest.approx(12.0) and not found.strokes[3].start.sided
    x, y = found.strokes[1].start.x_yd, found.strokes[1].start.y_yd
    assert math.hypot(WITHY.pin.x_yd - x, WITHY.pin.y_yd - y) == pytest.approx(215.0, abs=0.5)


def test_out_of_bounds_is_stroke_and_distance() -> None:
    found = played("driver out of bounds; driver to 200 out")
    first, second = found.strokes
    assert (first.penalty, second.number, found.score) == (1, 3, 3)
    assert second.start == first.start and not found.holed
    assert played("driver ob; again; driver to 200 out") == found  # somebody who says so


def test_water_wants_a_drop_or_the_same_place() -> None:
    dropped = played("driver into withy drain, drop 175 out, right rough; 5h to 40 out").strokes
    assert dropped[0].penalty == 1 and dropped[1].number == 3 and dropped[1].start.lie is Lie.ROUGH
    again = played("driver into the water, again; driver to 200 out").strokes
    assert again[0].penalty == 1 and again[1].start.lie is Lie.TEE and again[1].number == 3
    with pytest.raises(UsageError, match="where was the ball of stroke 1 dropped"):
        played("driver into withy drain; 5h to 40 out")
    with pytest.raises(UsageError, match="where was the ball of stroke 1 dropped"):
        played("driver into withy drain")


def test_an_unplayable_ball_is_a_penalty_without_a_swing() -> None:
    found = played("driver to 95 out, right trees; unplayable, drop 155 out, right heavy rough; 7i to 80 out")
    assert [one.kind for one in found.strokes] == ["swing", "drop", "swing"]
    assert [one.number for one in found.strokes] == [1, 2, 3] and found.score == 3
    free = played("driver to 200 out; free drop 201 out; 7i to 80 out")
    assert len(free.strokes) == 2 and free.score == 2
    assert free.strokes[1].start.words == free.strokes[0].end.words == "201 yd out, fairway"


def test_a_drop_outside_the_bunker_costs_two() -> None:
    """Rule 19.3b; it was counted as one. In the bunker, or stroke and distance, it is one (19.3a)."""
    for drop, penalty in (("205 out, fairway", 2), ("202 out, left bunker", 1)):
        ball, dropped, swing = strokes_of(
            read_notes(f"driver to 200 out, left bunker; unplayable, drop {drop}; 6i to 60 out"), TWO_BUNKERS
        ).strokes
        assert ball.end is not None and ball.end.lie is Lie.BUNKER
        assert dropped.penalty == penalty and swing.number == 2 + penalty, drop
        assert ("Rule 19.3b" in dropped.went) == (penalty == 2)
    again = strokes_of(read_notes("driver to 200 out, left bunker; unplayable, again; driver to 190 out"), TWO_BUNKERS)
    assert again.strokes[1].penalty == 1


def test_where_an_unplayable_ball_lay_may_be_said_again() -> None:
    for said in ("unplayable in bunker, drop 205 out", "unplayable under the lip of the bunker and dropped 205 out",
                 "unplayable; drop 205 out", "took an unplayable in the bunker. Dropped 205 out"):  # fmt: skip
        clauses = read_notes(f"driver to 200 out, left bunker; {said}; 6i to 60 out").clauses
        assert [type(one) for one in clauses] == [Swing, Drop, Swing], said
        assert isinstance(clauses[1], Drop) and clauses[1].unplayable and clauses[1].place == "205 out", said
    told = read_notes("driver to 200 out; unplayable in the trees, again; driver to 190 out").clauses
    assert [type(one) for one in told] == [Swing, Again, Swing]


def test_the_number_of_a_bunkers_name_is_no_distance() -> None:
    """ "270 out, left bunker 2" was read as a bunker 2 yards out, or as a side of another number."""
    for said in ("160 out, left bunker 2", "left bunker 2, 160 out", "in the left bunker 2 160 out"):
        end = strokes_of(read_notes(f"driver to {said}; 7i to 20 ft"), TWO_BUNKERS).strokes[0].end
        assert end is not None and end.lie is Lie.BUNKER, said
        assert TWO_BUNKERS.out_yd(end.x_yd, end.y_yd) == pytest.approx(160.0, abs=0.6), said
    with pytest.raises(UsageError, match=r"not there; on this hole: left bunker 2 \(154 to 168 yd out\)"):
        strokes_of(read_notes("driver to 190 out, left bunker 2; 7i to 20 ft"), TWO_BUNKERS)


def test_the_alternative_to_stroke_and_distance_only_where_it_holds() -> None:
    from dataclasses import replace

    text = "driver out of bounds, drop 200 out, left rough; 5h to 40 out"
    with pytest.raises(UsageError, match="no local rule E-5"):
        played(text)
    found = played(text, replace(WITHY, local_rule_e5=True))
    assert found.strokes[0].penalty == 2 and found.strokes[1].number == 4
    assert found.strokes[1].start.lie is Lie.ROUGH


def test_sides_of_the_hole() -> None:
    """From the tee: short is nearer to the player, past farther, left to the player's left."""
    pin = EEL.pin
    for words, right, ahead in (("short", 0, -4), ("past", 0, 4), ("left", -4, 0), ("right", 4, 0)):
        (rest,) = [one.end for one in played(f"6i to 12 ft {words}", EEL).strokes]
        length = math.hypot(pin.x_yd, pin.y_yd)
        along, across = (pin.x_yd / length, pin.y_yd / length), (pin.y_yd / length, -pin.x_yd / length)
        dx, dy = rest.x_yd - pin.x_yd, rest.y_yd - pin.y_yd
        assert dx * along[0] + dy * along[1] == pytest.approx(ahead, abs=1e-9), words
        assert dx * across[0] + dy * across[1] == pytest.approx(right, abs=1e-9), words
        assert rest.sided


def test_places_told_by_the_green() -> None:
    (short,) = [one.end for one in played("driver to 20 short of the green").strokes]
    assert short.lie is not Lie.GREEN and short.putt_ft is None
    assert 20.0 < math.hypot(WITHY.pin.x_yd - short.x_yd, WITHY.pin.y_yd - short.y_yd) < 45.0


def test_above_the_hole_is_higher() -> None:
    feature = WITHY.feature_at(WITHY.pin.x_yd, WITHY.pin.y_yd)
    falls = math.radians(feature.slope.falls_bearing_deg)
    for words, sign in (("above", -1.0), ("below", 1.0)):
        rest = played(f"driver to 150 out; 7i to 9 ft {words}").strokes[1].end
        down = (rest.x_yd - WITHY.pin.x_yd) * math.sin(falls) + (rest.y_yd - WITHY.pin.y_yd) * math.cos(falls)
        assert down == pytest.approx(3.0 * sign)


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("driver to 200 out; 2 putts", "the ball is not on the green"),
        ("driver to 150 out; 7i to 20 ft; chip to 3 ft", "the ball is on the green: a putt"),
        ("driver to the moon", "not understood"),
        ("driver to 200 out; drop", 'Say the place, "drop 150 out'),
        ("driver ob; drop", "no local rule E-5"),
        ("driver to 200 out; out to 12 ft", "which club?"),
        ("driver to 500 out", "from the pin"),
        ("7i to 400 ft", "allowed are up to 180"),
        ("driver to the green", "how far from the hole"),
        ("driver to 150 out; 7i to 100 ft", "no place on the green is so far"),
        ("7i to 12 ft left right", "one of them"),
        ("again", "nothing was played before it"),
        ("driver to 170 out; 6i to 12 ft; 2 putts for bogey", "'bogey': the strokes before it come to 4"),
        ("driver lost in withy drain; driver to 200 out", 'a penalty area: say "into withy drain, drop'),
        ("driver into the moon; again", "not understood"),
        ("driver to 180 out; 6i left of the green", "five paces off it is bunker: say so"),
        ("driver to 60 out", 'in the water: say "the water", and where it was dropped'),
        ("driver to 230 on, 80 left", "out of bounds: say"),
    ],
)
def test_what_cannot_have_been_is_refused(text: str, why: str) -> None:
    with pytest.raises(UsageError, match=why):
        played(text)


def test_a_refusal_tells_the_words_that_were_noted() -> None:
    """Told by the class that carries them; the text of an error is nowhere cut up and put together anew."""
    for notes, said in (
        ("driver to 150 out, in the pond", "150 out, in the pond"), ("driver to 200 on, purple", "200 on, purple"),
    ):  # fmt: skip
        with pytest.raises(WordsRefused) as caught:
            strokes_of(read_notes(notes), load_hole("par 4, 400; bunker left at 240"))
        assert caught.value.words == said and str(caught.value).startswith(f"{caught.value.what} {said!r}: ")
    one = WordsRefused("place", "12.00,3.00", "that is in the water").told_of("left of it", "notes", "; say where")
    assert str(one) == "notes 'left of it': that is in the water; say where" and one.words == "left of it"
