"""Clubs asked for in words become the swing that was meant, worked out on a small solved hole."""

from __future__ import annotations

import math
import re
from types import SimpleNamespace

import numpy as np
import pytest
import solved as sv
from small_games import player_of, straight_hole

from simulator.engine import PART_SWING, PUNCH_SWING, PUTT_SWING
from simulator.errors import UsageError
from simulator.hole.surfaces import Lie
from simulator.player.model import Player
from simulator.report.chosen import shot_words
from simulator.report.units import METRES, YARDS
from simulator.strategy.asked import Asked, asked_club, find_choices
from simulator.strategy.clubwords import Aim
from simulator.strategy.tries import SAME_YD, Place

APRON = "fairway = [{ from_yd = 20, to_yd = 160, left_yd = -20, right_yd = 20 }]\n"
BAG = 'handicap = 12\nclubs = ["driver", "5w", "6i", "8i", "pw", "sw"]\n[club.driver]\nuse = "tee only"\n'


@pytest.fixture(scope="module")
def player() -> Player:
    return player_of(BAG)


@pytest.fixture(scope="module")
def place(player: Player) -> Place:
    """Sixty yards short of the pin on the fairway of a short hole, with shots held down."""
    hole = straight_hole(
        150, par=3, more="fairway = [{ from_yd = 20, to_yd = 132, left_yd = -20, right_yd = 20 }]\n"
    )
    board = sv.solved(hole, player, coarse_yd=16.0, fine_yd=8.0, shaped=True)
    return Place(board, 0.0, 90.0, int(Lie.FAIRWAY), 2)


def test_rows_of_what_was_said(player: Player, place: Place) -> None:
    shots = place.board.bag.shots

    def rows(text: str) -> list[tuple[str, str]]:
        return [(shots.shots[k].club.name, shots.shots[k].flight) for k in asked_club(player, text, shots).rows]

    assert rows("eight iron") == [("8-iron", "stock"), ("8-iron", "low")]
    assert rows("8") == rows("8i")
    assert rows("low 8") == [("8-iron", "low")]
    carry = player.club("8i").carry_yd
    assert rows(f"{carry - 3:.0f} shot") == rows(f"{(carry - 3) * 0.9144:.0f} m") == [("8-iron", "stock")]
    assert rows("40 shot") == [] and asked_club(player, "40 shot", shots).part_yd == 40.0


def test_a_distance_below_the_shortest_club_is_a_part_swing(player: Player, place: Place) -> None:
    shots = place.board.bag.shots
    wanted = [asked_club(player, text, shots) for text in ("30 shot", "48 shot", "48 shot 5 left", "48 shot 4 degrees right")]
    found = find_choices(place, 1, wanted)
    four = found.choices[:4]
    assert [choice.carry_yd for choice in four] == pytest.approx([30, 48, 48, 48], abs=1.5)
    assert all(choice.action[0] == PART_SWING for choice in four)
    # sixty to the middle of the green: two thirds of the way leaves a chip, the other way a putt
    assert four[1].score < four[0].score
    assert found.given == {2, 3}
    assert four[2].action[1] == pytest.approx(-math.asin(5 / 48)) and four[3].action[1] == pytest.approx(np.radians(4))
    assert four[1].score <= min(four[2].score, four[3].score) + 0.02  # its own best aim


def test_between_two_wedges_the_longer_is_gripped_down(player: Player, place: Place) -> None:
    """A distance no full swing carries within 3 yards: that club and that carry are what is worked out."""
    shots = place.board.bag.shots
    wedge, sand = player.club("pw"), player.club("sw")
    between = round(0.5 * (wedge.carry_yd + sand.carry_yd))
    assert min(wedge.carry_yd - between, between - sand.carry_yd) > 3.0
    one = find_choices(place, 1, [asked_club(player, f"{between} shot", shots)])
    choice = one.choices[0]
    shot = shots.shots[choice.row]
    assert (shot.club.name, shot.flight) == (wedge.name, "gripped")
    assert choice.action[0] == PART_SWING and choice.carry_yd == pytest.approx(between)


def test_a_tee_club_is_not_played_from_the_fairway(player: Player, place: Place) -> None:
    shots = place.board.bag.shots
    with pytest.raises(UsageError, match="driver is not played from fairway"):
        find_choices(place, 1, [asked_club(player, "driver 8 left", shots)])


def test_nothing_is_held_down_out_of_sand(player: Player, place: Place) -> None:
    """A bunker's lip is in no hole file (common practice): a low 6-iron was named from under it."""
    shots, sand = place.board.bag.shots, Place(place.board, 0.0, 90.0, int(Lie.BUNKER), 2)
    flights = {shots.shots[row].flight for row in sand.board.allowed(sand.lie)}
    assert "low" in {shots.shots[row].flight for row in place.board.allowed(place.lie)} and "low" not in flights
    with pytest.raises(UsageError, match=r"6-iron low is not played from bunker; allowed: .*6-iron"):
        find_choices(sand, 1, [asked_club(player, "6-iron low", shots)])
    for lie, punched in ((Lie.BUNKER, False), (Lie.ROUGH, True)):  # by the green a 6-iron was punched 3 yards
        beside = find_choices(Place(place.board, 18.0, 145.0, int(lie), 2), 1, []).choices
        assert (PUNCH_SWING in {choice.action[0] for choice in beside}) == punched


def test_a_line_given_as_the_map_has_it_stands_once(player: Player) -> None:
    """To the yard: two columns of one name and one line, and a verdict between them, told nothing."""
    board = sv.solved(straight_hole(380, par=4), player, coarse_yd=16.0, fine_yd=8.0)
    tee = Place(board, 0.0, 0.0, int(Lie.TEE), 2)
    home = find_choices(tee, 1, []).home
    club = board.bag.shots.shots[home.row].club.name
    yards = math.tan(home.action[1]) * home.carry_yd
    for off, columns in ((0.2, 1), (12.0, 2)):
        found = find_choices(tee, 1, [asked_club(player, f"{club}@{yards + off:+.1f}", board.bag.shots)])
        assert len(found.choices) == columns, off
        assert any(choice is found.home for choice in found.choices)
        assert found.asked == found.given == {0}


def test_a_line_given_next_to_the_best_of_its_club_stands_alone(place: Place) -> None:
    """Not "the driver 27 left", which nobody asked about, beside the 26 left that somebody did."""
    home = find_choices(place, 1, []).home
    assert home.action[0] == PART_SWING
    best_yd = home.carry_yd * math.sin(float(home.action[1]))
    for beside_yd, choices in ((1.0, 1), (4.0, 2)):
        wanted = [Asked((), Aim(best_yd + beside_yd), PART_SWING, home.carry_yd)]
        found = find_choices(place, 1, wanted)
        assert len(found.choices) == choices and found.home is found.choices[-1]
        given = found.choices[0]
        assert given.carry_yd * math.sin(float(given.action[1])) == pytest.approx(best_yd + beside_yd, abs=0.1)


def test_a_swing_asked_for_twice_stands_once(place: Place, player: Player) -> None:
    """ "Driver 8 left or driver 8 left" told nothing: two columns are two swings, or two lines."""
    place = Place(place.board, 0.0, 55.0, int(Lie.FAIRWAY), 2)
    shots = place.board.bag.shots
    for words, columns, given in (
        (("8i", "8-iron", "pw"), 2, 0), (("8i@-5", "8-iron 5 left", "pw", "8i@-5.1"), 3, 2), (("40 shot", "40 yd"), 1, 0),
    ):  # fmt: skip
        found = find_choices(place, 1, [asked_club(player, text, shots) for text in words])
        kept = found.choices[: len(found.asked)]
        assert found.asked == frozenset(range(columns)) and len(found.given) == given, words
        swings = {(one.row, round(one.carry_yd, 1), round(float(one.action[1]), 5)) for one in kept}
        assert len(swings) == columns


def test_a_swing_short_of_full_is_read_by_the_name_an_answer_has_for_it(player: Player, place: Place) -> None:
    """ "Sand wedge (part 48 yd)" was no club of the bag, though "48 shot" was; and a chip could not be asked for."""
    shots = place.board.bag.shots
    for carry_yd, code, flight in ((48.0, PART_SWING, "part"), (95.0, PART_SWING, "gripped"), (12.0, PUNCH_SWING, "punch")):
        one = find_choices(place, 1, [Asked((), None, code, carry_yd)]).choices[0]
        shot = shots.shots[one.row]
        assert (shot.flight, one.action[0]) == (flight, code) and one.carry_yd == pytest.approx(carry_yd, abs=SAME_YD)
        for units in (YARDS, METRES):
            swing = SimpleNamespace(club=shot.club.name, flight=shot.flight, carry_yd=carry_yd)
            name = shot_words(swing, units, 2)
            again = asked_club(player, name, shots)
            assert (again.rows, again.short) == ((), code) and again.part_yd == pytest.approx(carry_yd, abs=0.01), name
            aimed = asked_club(player, f"{name} 3 left", shots)
            assert aimed.aim == Aim(-3.0) and aimed.part_yd == again.part_yd
    chipper = shots.shots[shots.first_putt - 1].club.name
    for words, why in (
        ("pw (chip 6 yd)", f"worked out with the {chipper}"), ("sw (part 300 yd)", "found 300 yd of carry; allowed: 3 to"),
        ("lob wedge (part 26 yd)", "no club 'lob wedge' in the bag"), ("driver (left line)", 'say "driver 8 left"'),
    ):  # fmt: skip
        with pytest.raises(UsageError, match=re.escape(why)):
            asked_club(player, words, shots)


@pytest.fixture(scope="module")
def apron(player: Player) -> Place:
    """Eighteen yards from the pin, three of them fairway."""
    board = sv.solved(straight_hole(150, par=3, more=APRON), player, coarse_yd=16.0, fine_yd=8.0)
    return Place(board, 0.0, 132.0, int(Lie.FAIRWAY), 2)


def test_a_putt_a_chip_and_a_pitch_are_asked_for_by_what_they_are(player: Player, apron: Place) -> None:
    """Each the best of its kind: as good as any of some carries, and of its family (a chip flies low, a putt rolls)."""
    shots = apron.board.bag.shots
    for said, code, flight in (
        ("putter", PUTT_SWING, "putt"), ("putt it", PUTT_SWING, "putt"), ("the putter", PUTT_SWING, "putt"),
        ("chip", PUNCH_SWING, "punch"), ("a bump and run", PUNCH_SWING, "punch"), ("pitch", PART_SWING, "part"),
    ):  # fmt: skip
        asked = asked_club(player, said, shots)
        assert (asked.rows, asked.short, asked.part_yd) == ((), code, None), said
        best = find_choices(apron, 1, [asked]).choices[0]
        assert best.action[0] == code and shots.shots[best.row].flight == flight, said
        for share in (0.3, 0.6, 0.9, 1.1):
            carry_yd = share * apron.distance_yd
            if carry_yd < apron.board.longest_yd(code, apron.lie):
                given = find_choices(apron, 1, [Asked((), None, code, carry_yd)]).choices[0]
                assert best.score < given.score + 0.01, (said, share)
    far = Place(apron.board, 0.0, 60.0, int(Lie.FAIRWAY), 2)  # where plan tries none
    punch = find_choices(far, 1, [asked_club(player, "punch", shots)]).choices[0]
    given = [find_choices(far, 1, [Asked((), None, PUNCH_SWING, carry)]).choices[0].score for carry in (40.0, 52.0, 64.0)]
    assert punch.action[0] == PUNCH_SWING and punch.score < min(given) + 0.01


def test_where_there_is_no_putt_it_is_refused(player: Player, apron: Place, place: Place) -> None:
    putt = asked_club(player, "putter", apron.board.bag.shots)
    rough = Place(apron.board, 0.0, 132.0, int(Lie.ROUGH), 2)
    for there, where in ((rough, "rough"), (place, "60 yd out")):
        with pytest.raises(UsageError, match=f"no putt is played from {where}; allowed: from fairway or fringe within 30"):
            find_choices(there, 1, [putt])
    with pytest.raises(UsageError, match="on their best line"):
        asked_club(player, "putter 3 left", apron.board.bag.shots)


def test_the_shortest_wedge_by_the_green_is_no_full_one(player: Player, apron: Place, place: Place) -> None:
    """ "Putter or sand wedge?" from 18 yards is a pitch, the 8-iron a chip; who says full means full."""
    shots = apron.board.bag.shots
    for said, flight in (
        ("sand wedge", "part"), ("full sand wedge", "stock"),
        (f"{shots.shots[shots.first_punch].club.name}", "punch"),
    ):  # fmt: skip
        first = find_choices(apron, 1, [asked_club(player, said, shots)]).choices[0]
        assert shots.shots[first.row].flight == flight, said
    far = Place(place.board, 0.0, 150.0 - player.club("sw").carry_yd, int(Lie.FAIRWAY), 2)
    first = find_choices(far, 1, [asked_club(player, "sand wedge", place.board.bag.shots)]).choices[0]
    assert place.board.bag.shots.shots[first.row].flight == "stock"


def test_a_club_that_flies_far_past_the_pin_is_asked_what_is_meant(player: Player, apron: Place, place: Place) -> None:
    """A full pitching wedge stood beside the putter from 18 yards; from 60 the sand wedge's pitch is the one counted."""
    for there, said, hint in (
        (apron, "pitching wedge", r'"pitch" \(worked out with the sand wedge\) or "chip" \((6|8)-iron\), or "full pitching wedge"'),
        (apron, "pitching wedge 2 left", r'a carry and your line, "14 yd shot 1 left", or "full pitching wedge"'),
        (place, "8-iron", r'"pitch" \(worked out with the sand wedge\), or "full 8-iron"'),
    ):
        shots = there.board.bag.shots
        with pytest.raises(UsageError, match=f"flies .* and the pin is {there.distance_yd:.0f} yd away: say {hint}"):
            find_choices(there, 1, [asked_club(player, said, shots)])
    far = Place(place.board, 0.0, 0.0, int(Lie.TEE), 2)  # no part swing goes so far: asked is answered
    first = find_choices(far, 1, [asked_club(player, "5-wood", far.board.bag.shots)]).choices[0]
    assert far.board.bag.shots.shots[first.row].club.name == "5-wood"
