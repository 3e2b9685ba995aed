"""Holes as coaches dictate them: what is said in fewer words than the grammar has lies where they mean it."""

from __future__ import annotations

import numpy as np
import pytest
from lying import surfaces_over

from simulator.errors import SimulatorError
from simulator.hole import Surface
from simulator.hole.words import hole_from_words

F, R, G, B = Surface.FAIRWAY, Surface.ROUGH, Surface.GREEN, Surface.BUNKER
W, O, T = Surface.WATER, Surface.OUT_OF_BOUNDS, Surface.TREES
BASE = "par 4, 380; green 28 deep, 24 wide; "
"""The green of it runs from 366 to 394, 12 either side; the fairway, 16 either side, from 150."""

ALIKE = [
    ("bunkers 20 left and right at 230", "bunker 20 left at 230; bunker 20 right at 230"),
    ("deep bunkers left and right at 230", "bunkers left and right at 230"),
    ("three bunkers apart down the left at 220, 250 and 280", "bunkers left at 220, 250 and 280"),
    ("double dogleg, left at 150 then right at 280", "dogleg left at 150; dogleg right at 280"),
    ("double dogleg left at 150 right at 280", "dogleg left at 150; dogleg right at 280"),  # "then" was needed
    ("tall trees left at 230", "trees left at 230"),
    ("tree lines both sides 25", "tree line left 25; tree line right 25"),
    ("narrow tree lined; fairway 22 wide", "fairway 22 wide; trees both sides"),
    ("tree lined; trees left 15; trees right 18", "trees left 15; trees right 18"),
    ("gorge across 60 to 140", "ravine across 60 to 140"),
    ("ravine to carry from 60 to 140", "ravine across 60 to 140"),
    ("gully short of the green 20 yards", "gully 20 short of the green"),
    ("fairway 30 wide, narrowing to 20 at 250 between bunkers",
     "fairway 30 wide, narrows to 20 at 250; bunkers both sides at 250"),
    ("stream meandering across at 230", "stream across at 230"),
    ("stream down the left then crosses in front of the green at 350", "stream left to 350; stream across at 350"),
    # what stood between the two commas was lost, without a word
    ("burn down the right, edge 26, then crosses at 285", "burn right from 60 to 285, edge 26; burn across at 285"),
    ("burn down the right 26 from 150, and then crosses at 285", "burn right from 150 to 285, edge 26; burn across at 285"),
    ("dogleg right at 240; trees on the corner", "dogleg right at 240; trees inside the corner"),
    ("dogleg right at 240, trees on the corner right 190 to 260", "dogleg right at 240; trees right 190 to 260"),
    ("dogleg right at 240; bunker on the corner left", "dogleg right at 240; bunker left at 240"),
    ("dogleg right at 240; bunker left on the corner", "dogleg right at 240; bunker left at 240"),
    ("burn crosses at 260 and runs up the right side to the green", "burn across at 260; burn right from 260 to the green"),
    ("water all down the left and round the back of the green", "water all down the left; water behind the green"),
    ("peninsula green; water left, right and behind", "water left of the green; water right of the green; water behind the green"),
    ("water short and right of the green", "water short of the green; water right of the green"),
    ("pond short right of the green; bunker left at 230", "bunker left at 230; pond short right of the green"),
    ("green wide 35 and shallow 18", "green 35 wide, 18 deep"),
    ("wide landing area 50 wide", "fairway 50 wide"),
    ("bunkers on both sides of the landing area at 240", "bunkers both sides at 240"),
    ("bunker in the middle of the fairway 30 short of the green", "bunker in the middle at 329, 14 long"),
    ("three bunkers left at 230, 25 apart", "bunkers left at 205, 230 and 255"),
    ("bunker left at 230 cutting into the fairway", "bunker left at 230"),
    ("out of bounds inside the course left, 40", "out left 40"),
    ("hotel out of bounds right, 30", "out right 30"),
    ("practice ground right 40 is out of bounds", "out right 40"),
    ("ob left beyond the trees 35", "out left 35"),
    ("pin back left behind the bunker", "pin back left"),
    ("split fairway: left fairway 20 wide, right fairway 30 wide", "split fairway, left 20 wide, right 30 wide"),
    ("two fairways, left one 20 wide, right one 30 wide", "left fairway 20 wide, edge 6; right fairway 30 wide, edge 6"),
    ("drivable; bunker left at 230", "bunker left at 230"),
    ("bunker left at 230 and a deep one right at 250", "bunker left at 230; bunker right at 250"),  # it was 1 yd deep
    ("bunker left of the green and a deep one behind", "bunker left of the green; bunker behind the green"),
]  # fmt: skip


@pytest.mark.parametrize(("words", "same"), ALIKE)
def test_as_a_coach_says_it(words: str, same: str) -> None:
    usual = "" if words.startswith("green") else BASE.removeprefix("par 4, 380; ")
    one, other = (hole_from_words(f"par 4, 380; {usual}{text}").hole for text in (words, same))
    lies = [surfaces_over(hole, range(-5, 410, 4), range(-62, 64, 3)) for hole in (one, other)]
    assert np.array_equal(*lies)
    assert (one.pin.x_yd, one.pin.y_yd) == pytest.approx((other.pin.x_yd, other.pin.y_yd))


PLACES: dict[str, list[tuple[float, float, Surface]]] = {
    # a wood inside the corner stood all along the hole, from tee to green
    "dogleg left at 230; trees inside the corner": [(180, -35, T), (260, -35, T), (160, -35, R), (290, -35, R), (230, 35, R)],
    "double dogleg, left at 180 then right at 280; trees inside both corners": [
        (180, -35, T), (280, 35, T), (180, 35, R), (340, -35, R)],
    "double dogleg, left at 180 then right at 280; bunkers outside the second corner": [(280, -18, B), (180, 18, R)],
    "split fairway, left 20 wide, right 30 wide, 20 apart; bunker in between at 230": [
        (230, -12, F), (230, 12, F), (230, 0, B), (250, 0, R), (230, 38, F), (230, -32, R)],
    "split fairway, left 20 wide, right 30 wide, 20 apart; pond between the fairways 200 to 270": [
        (230, -9, W), (230, 9, W), (230, -12, F), (230, 12, F)],
    "waste area right 200 to 280, edge 20": [(240, 21, B), (240, 19, R), (190, 21, R)],
    "run-off right of the green": [(380, 14, F), (380, 26, R), (380, -14, R)],
    "run-off all round the green": [(380, 20, F), (380, -20, F), (400, 0, F), (380, 26, R)],
    "collection area behind the green": [(400, 0, F), (400, 14, R), (408, 0, R)],
    "lake left hugging the fairway 200 to 250": [(220, -17, W), (220, -15, F)],
    # the edge of the fairway there, not where it is widest
    "fairway 32 wide, narrows to 18 at 240; bunkers both sides at 240": [(240, -8, B), (240, 8, B), (240, -15.5, R)],
    "sea all down the right, edge 22": [(200, 23, W), (200, 160, W), (200, 21, R)],  # there was rough beyond it
    "bunker left at 230, 5 into the fairway": [(230, -12, B), (230, -18, B), (230, -10, F), (230, -20, R)],
}  # fmt: skip


@pytest.mark.parametrize("words", PLACES)
def test_what_lies_there(words: str) -> None:
    hole = hole_from_words(BASE + words).hole
    assert [(s, o, hole.surface_at(*hole.at(s, o))) for s, o, _ in PLACES[words]] == PLACES[words]


@pytest.mark.parametrize(
    ("words", "drop_yd"),
    [("elevated tee 40 ft", -40 / 3), ("elevated green 15 ft", 5.0), ("raised plateau green 6 up", 6.0),
     ("sunken green 3 yards", -3.0)],
)  # fmt: skip
def test_raised_by_so_much(words: str, drop_yd: float) -> None:
    hole = hole_from_words(f"par 4, 380; {words}").hole
    assert hole.height_at(*hole.at(380, 0)) - hole.height_at(0, 0) == pytest.approx(drop_yd, abs=0.1)


@pytest.mark.parametrize(
    ("words", "pct"),
    [("fairway slopes left to right 3%", -3.0), ("everything kicks left", 4.0), ("left-to-right camber", -4.0),
     ("uphill 10; fairway falls right", -4.0)],
)  # fmt: skip
def test_a_fairway_falls_to_a_side_and_climbs_as_it_did(words: str, pct: float) -> None:
    """A plane laid over the mown band was level along it and a step high at its edge where the hole climbs."""
    hole = hole_from_words(f"par 4, 400; {words}").hole
    z = {away: float(hole.height_at(*hole.at(260, away))) for away in (-30, 0, 15, 17, 30)}
    assert (z[30] - z[-30]) / 0.6 == pytest.approx(pct, abs=0.5)
    assert abs(z[17] - z[15]) < 0.15  # no step where the mown grass ends
    assert z[0] == pytest.approx(6.5 if words.startswith("uphill") else 0.0, abs=0.3)


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("drivable", "Not drawn: drivable (the answer finds that out)."),
        ("drop zone 130 out", "Not drawn: drop zone 130 out (relief is taken as the Rules give it, without a dropping zone)."),
        ("blind tee shot", "Not drawn: blind tee shot (nothing depends on it)."),
        ("creek meandering across at 200", "Not drawn: meandering (a stream is drawn straight)."),
        ("deep bunkers both sides of the green", "Not drawn: deep (bunkers play alike, however deep)."),
        ("layup area 390 to 420", "Not drawn: layup area 390 to 420 (the answer finds that out)."),
        ("punchbowl green 24 deep", "Not drawn: punchbowl (in words a green is level or falls one way)."),
        ("bail out area left", "Not drawn: bail out area left (what is not drawn is rough)."),
    ],
)
def test_what_draws_nothing_is_told(words: str, told: str) -> None:
    read = hole_from_words(f"par 4, 380; {words}")
    assert told in read.assumed and told in read.hole.assumed


@pytest.mark.parametrize(("words", "told"), [
    ("bunkers left at 230", "one bunker, as no number was said"),
    ("bunkers left 300 to 330", "one bunker, as no number was said"),
    ("bunkers both sides at 230", "one bunker on each side, as no number was said"),
])  # fmt: skip
def test_one_bunker_of_several_is_told(words: str, told: str) -> None:
    assert any(told in one for one in hole_from_words(BASE + words).assumed)
    assert not any("as no number" in one for one in hole_from_words(BASE + "bunkers left at 230 and 260").assumed)


def test_the_top_tier_is_the_one_that_is_higher() -> None:
    pins = [hole_from_words(f"{BASE}{words}").hole.pin for words in (
        "two tier green, back 3 ft up; pin on the top tier", "two tier green, front 2 ft up; pin on the top tier",
        "two tier green; pin on the lower tier")]  # fmt: skip
    assert pins[0].y_yd > 382 and pins[1].y_yd < 378 and pins[2].y_yd < 378


def test_water_left_of_a_par_3_is_left_of_its_green() -> None:
    read = hole_from_words("par 3, 180; water left, edge 14; ob behind 10")
    assert [read.hole.surface_at(*read.hole.at(s, -20)) for s in (140, 170, 190, 215)] == [R, W, W, O]
    assert any("that it lies by the green" in one for one in read.assumed)


def test_water_told_twice_is_one() -> None:
    hole = hole_from_words("par 3, 165; over water, carry 140 to clear the water").hole
    assert [f.name for f in hole.features if f.surface is W] == ["water"]


def test_one_bunker_of_several_is_called_a_bunker() -> None:
    hole = hole_from_words(BASE + "three bunkers in the middle of the fairway at 270; tree lines both sides 25").hole
    names = [f.name for f in hole.features if f.surface in (B, T)]
    assert sorted(names) == ["bunker", "bunker 2", "bunker 3", "left tree line", "right tree line"]


def test_the_length_before_a_climb() -> None:
    hole = hole_from_words("par 4, 440 uphill 30 ft; bunker 15 behind the green on the left").hole
    assert hole.length_yd == pytest.approx(440.0)
    assert hole.height_at(*hole.at(440, 0)) == pytest.approx(10.0, abs=0.1)


def test_what_left_of_a_pin_counts_from_is_told() -> None:
    """ "3 left" counts from the middle in words and from the edge in --pin."""
    (told,) = [one for one in hole_from_words(BASE + "pin 12 on, 3 left").assumed if "counts from" in one]
    assert told == (
        'Assumed of middle pin: that 3 left counts from the middle of the green ("3 from the left" counts from its '
        "edge, as --pin does)."
    )


@pytest.mark.parametrize("stop", [",", ";", "."])
@pytest.mark.parametrize("remark", ["bail out left", "drop zone 130 out", "plenty of room right"])
def test_a_remark_goes_on_to_the_next_break_and_no_farther(remark: str, stop: str) -> None:
    found = hole_from_words(f"{BASE}{remark}{stop} bunker right at 230").hole
    assert [one.name for one in found.features if one.surface is B] == ["right bunker"]
    assert any(one.startswith(f"Not drawn: {remark} (") for one in found.assumed)


def test_a_double_dogleg_has_its_two_sides_before_the_next_break() -> None:
    with pytest.raises(SimulatorError, match=r"'double'.*not understood; say each bend"):
        hole_from_words(f"{BASE}double dogleg left at 200; water right 250 to 300")
