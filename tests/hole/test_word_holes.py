"""Holes in words: each phrase is understood as a golfer means it, checked by what lies where."""

from __future__ import annotations

import math
import tomllib

import numpy as np
import pytest
import shapely
from lying import surfaces_over

from simulator.errors import UsageError
from simulator.hole import Hole, Surface, load_hole, pin_from_words
from simulator.hole.sketch import read_sketch
from simulator.hole.words import hole_from_words, looks_like_words
from simulator.hole.words.gap import offset_from_gap, offset_limits, offset_sd_yd

F, R, G, B = Surface.FAIRWAY, Surface.ROUGH, Surface.GREEN, Surface.BUNKER
W, D, O, H, T, P = (
    Surface.WATER, Surface.DRY_PENALTY, Surface.OUT_OF_BOUNDS, Surface.HEAVY_ROUGH, Surface.TREES, Surface.PATH,
)
CARD = (
    "par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34; green 24 deep, pin 7 on"
)
BASE = "par 4, 380; fairway 28 wide, 150 to 350; green 28 deep, 24 wide; "
"""The green of it runs from 366 to 394, 12 either side."""

SAID_ALIKE = [
    ("a par 4 of 372 yards with a pond on the right at 220", "par 4, 372; pond right at 220"),
    ("par 4, 372; lateral water right at 220", "par 4, 372; lateral hazard right at 220"),
    # short forms and numbers in words
    ("par 4, 372; fwy 30 wide; lake right at 220; bkrs right of the grn",
     "par 4, 372; fairway 30 wide; lake right at 220; bunkers right of the green"),
    ("par four, three seventy two; pond right two hundred to two forty",
     "par 4, 372; pond right 200 to 240"),
    # two places in one breath
    ("par 4, 372; creek crosses at 190 and 330", "par 4, 372; creek crosses at 190; creek crosses at 330"),
    ("par 4, 372; creeks cross at 190 and 330", "par 4, 372; creek crosses at 190; creek crosses at 330"),
    ("par 4, 372; pond right at 220; OB left 40 right 30", "par 4, 372; pond right at 220; out left 40; out right 30"),
    ("par 4, 372; pond right at 220; ob 40 left 30 right", "par 4, 372; pond right at 220; out left 40; out right 30"),
    # at the corner, unless a number says where: it was a greenside one
    ("par 4, 372; pond right at 220; fairway 30 wide, ends at 250, starts again at 290",
     "par 4, 372; pond right at 220; fairway 30 wide to 250; fairway 30 wide from 290"),
    ("par 4, 372; pond right at 220; fairway 30 wide, 150 to 230, 260 to 320",
     "par 4, 372; pond right at 220; fairway 30 wide, 150 to 230; fairway 30 wide, 260 to 320"),
    ("par 4, 372; pond right at 220; fairway narrows from 35 to 22 at 260",
     "par 4, 372; pond right at 220; fairway 35 wide, narrows to 22 at 260"),
    ("par 4, 372; pond right at 220; turns right 150 out", "par 4, 372; pond right at 220; turns right at 222"),
    ("par 4, 372; pond right at 220; dogleg left at 220, bunkers inside the corner",
     "par 4, 372; pond right at 220; dogleg left at 220; bunkers left at 220"),
    ("par 4, 372; pond right at 220; dogleg left at 220; bunker outside the corner, 240",
     "par 4, 372; pond right at 220; dogleg left at 220; bunker right at 240"),
    # the second end was dropped, or the first one guessed near it
    ("par 4, 372; lake right 200 to the green", "par 4, 372; lake right from 200 to the green"),
    ("par 4, 372; lake right 180 onwards", "par 4, 372; lake right from 180 to the green"),
    ("par 4, 372; pond right at 220; trees left 200 plus", "par 4, 372; pond right at 220; trees left from 200"),
    ("par 4, 372; pond right at 220; trees left to 200", "par 4, 372; pond right at 220; trees left 60 to 200"),
    ("par 4, 372; pond right at 220; bunker left 240 to carry 255",
     "par 4, 372; pond right at 220; bunker left 240 to 255"),
    # a list: the count is of all of it, the side and the offset are of each
    ("par 4, 372; pond right at 220; three bunkers right 210, 230 and 250",
     "par 4, 372; pond right at 220; bunker right at 210; bunker right at 230; bunker right at 250"),
    ("par 4, 372; pond right at 220; three bunkers at 210, 230 and 250 on the right",
     "par 4, 372; pond right at 220; bunker right at 210; bunker right at 230; bunker right at 250"),
    ("par 4, 372; pond right at 220; bunkers left and right at 240 and 260",
     "par 4, 372; pond right at 220; bunkers both sides at 240; bunkers both sides at 260"),
    ("par 4, 372; pond right at 220; two bunkers left and right at 240",
     "par 4, 372; pond right at 220; bunker left at 240; bunker right at 240"),
    ("par 4, 372; pond right at 220; two bunkers left at 230 and three right at 250",
     "par 4, 372; pond right at 220; two bunkers left at 230; three bunkers right at 250"),
    ("par 4, 372; pond right at 220; two bunkers front left and back right",
     "par 4, 372; pond right at 220; bunker front left of the green; bunker back right of the green"),
    ("par 4, 372; pond right 20, 200 to 240 and 280 to 320", "par 4, 372; pond 20 right 200 to 240; pond 20 right 280 to 320"),
    ("par 4, 372; ditches cross at 190 and 330", "par 4, 372; ditch crosses at 190; ditch crosses at 330"),
    ("par 4, 372; pond right at 220; a pair of bunkers right at 240", "par 4, 372; pond right at 220; two bunkers right at 240"),
    ("par 4, 372; pond right at 220; bunker left at 240, another right at 260",
     "par 4, 372; pond right at 220; bunker left at 240; bunker right at 260"),
    ("par 4, 372; pond right at 220; two creeks cross at 190 and 330",
     "par 4, 372; pond right at 220; creek across at 190; creek across at 330"),
    ("par 4, 372; pond right at 220; bunker pin high left", "par 4, 372; pond right at 220; bunker left of the green"),
    ("par 4, 372; pond right at 220; creek crosses the fairway 250 from the tee",
     "par 4, 372; pond right at 220; creek across at 250"),
    ("par 4, 372; pond right at 220; out behind 20", "par 4, 372; pond right at 220; out 20 behind the green"),
    ("par 4, 372; pond right at 220; the hole turns left at 240", "par 4, 372; pond right at 220; bend left at 240"),
    ("par 4, 372; pond right at 220; three bunkers left at 230, 250 and 270 and one right at 250",
     "par 4, 372; pond right at 220; bunkers left at 230, 250 and 270; bunker right at 250"),
    ("par 4, 372; pond right at 220; two bunkers left, 230 and 250", "par 4, 372; pond right at 220; bunkers left at 230 and 250"),
    ("par 4, 372; pond right at 220; bunkers at 230 and 250, left", "par 4, 372; pond right at 220; bunkers left at 230 and 250"),
    ("par 4, 372; pond right at 220; bunkers left at 230 and 250, 20 long",
     "par 4, 372; pond right at 220; bunker left at 230, 20 long; bunker left at 250, 20 long"),
    ("par 4, 372; pond right at 220; two bunkers left and two right at 240",  # the left ones stood by the green
     "par 4, 372; pond right at 220; two bunkers left at 240; two bunkers right at 240"),
    ("par 4, 372; two ponds right at 200 and 300", "par 4, 372; pond right at 200; pond right at 300"),
    ("par 4, 372; water left from 150 out", "par 4, 372; water left from 222 to the green"),
    ("par 4, 372; pond right at 220; bunker left 102 yards out", "par 4, 372; pond right at 220; bunker left at 270"),
    ("par 4, 372; pond right at 220; bunkers left and right of the green and one behind",  # they stood behind it
     "par 4, 372; pond right at 220; bunkers left of the green; bunkers right of the green; bunker behind the green"),
    ("par 4, 372; pond right at 220; bunker left of the green and another behind it",
     "par 4, 372; pond right at 220; bunker left of the green; bunker behind the green"),
    ("par 4, 372; pond right at 220; two bunkers left of the green and one short right",
     "par 4, 372; pond right at 220; two bunkers left of the green; bunker short right of the green"),
    ("par 4, 372; pond right at 220; bunker left, five behind the green",
     "par 4, 372; pond right at 220; bunker left, 5 behind the green"),
    ("par 4, 372; lake left edge 12, 200 to 240 and 260 to 300",  # the second lay on the line
     "par 4, 372; lake left 200 to 240, edge 12; lake left 260 to 300, edge 12"),
    ("par 4, 372; pond right at 220; bunkers 20 long left at 230 and 260",
     "par 4, 372; pond right at 220; bunker 20 long left at 230; bunker 20 long left at 260"),
    ("par 4, 372; creek crosses at 200 and 300, 12 wide",
     "par 4, 372; creek across at 200, 12 wide; creek across at 300, 12 wide"),
    ("par 4, 372; pond right at 220; bunkers left at 230, 10 long and 250, 20 long",
     "par 4, 372; pond right at 220; bunker left at 230, 10 long; bunker left at 250, 20 long"),
    # out, where nothing says how far a boundary is, is a distance to the middle of the green
    ("par 4, 372; creek at 102 out, 12 wide", "par 4, 372; creek across at 270, 12 wide"),
    ("par 4, 372; creek 102 out", "par 4, 372; creek across at 270"),
    ("par 4, 372; pond right at 220; bunker 150 out left", "par 4, 372; pond right at 220; bunker left at 222"),
    ("par 4, 372; pond right at 220; bunkers left 150 and 130 out",
     "par 4, 372; pond right at 220; bunkers left at 222 and 242"),
    ("par 4, 372; pond right 150 to 110 out", "par 4, 372; pond right 222 to 262"),
    ("par 4, 372; pond right at 220; trees left short of 200", "par 4, 372; pond right at 220; trees left 60 to 200"),
    ("par 4, 372; pond right at 220; fairway 35 wide to 250, then 22",
     "par 4, 372; pond right at 220; fairway 35 wide at 250, 22 wide at 255"),
    ("par 4, 372; pond right at 220; fairway 35 wide, narrows to 22 from 250",
     "par 4, 372; pond right at 220; fairway 35 wide at 250, 22 wide at 255"),
    ("par 4, 372; creek crosses twice, 190 and 330", "par 4, 372; creek crosses at 190; creek crosses at 330"),
    ("par 4, 372; pond right at 220; dogleg left at 200 then right at 300",
     "par 4, 372; pond right at 220; dogleg left at 200, right at 300"),
    ("par 4, 372; pond right at 220; pin 5 on from the back", "par 4, 372; pond right at 220; pin 5 from the back"),
    # down a side it runs on to the green
    ("par 4, 372; lake down the right from 180", "par 4, 372; lake down the right from 180 to the green"),
    ("par 4, 372; lake all down the right from 180", "par 4, 372; lake right from 180 to the green"),
    ("par 4, 372; river right from 180", "par 4, 372; river right from 180 to the green"),
    # a fairway that is spoken of again is the same one: a second lay over the first, and its width was lost
    ("par 4, 372; pond right at 220; fairway 30 wide; fairway 26 wide at 250",
     "par 4, 372; pond right at 220; fairway 30 wide, 26 wide at 250"),
    ("par 4, 372; pond right at 220; fairway 30 wide; landing area 26 wide at 250",
     "par 4, 372; pond right at 220; fairway 30 wide, 26 wide at 250"),
    ("par 4, 372; pond right at 220; fairway 30 wide; fairway narrows to 22 from 250",
     "par 4, 372; pond right at 220; fairway 30 wide to 250, then 22"),
    ("par 4, 372; pond right at 220; fairway 30 wide; fairway 160 to 340",
     "par 4, 372; pond right at 220; fairway 160 to 340, 30 wide"),
    ("par 4, 372; pond right at 220; bunker left 230 from the tee", "par 4, 372; pond right at 220; bunker left at 230"),
    ("par 4, 372; pond right at 220; centre line bunker 255", "par 4, 372; pond right at 220; bunker in the middle at 255"),
    ("par 4, 372; creek crosses in front of the green, 15 short", "par 4, 372; creek across 15 short of the green"),
    ("par 4, 372; water guards the front of the green", "par 4, 372; water in front of the green"),
    ("par 4, 372; water long", "par 4, 372; water behind the green"),
    ("par 4, 372; pond right of the green, edge 6 from the green", "par 4, 372; pond 6 right of the green"),
    ("par 4, 372; pond right at 220; out right of the green, 15", "par 4, 372; pond right at 220; out 15 right of the green"),
    # in the corner is inside it: a pond there lay across the line
    ("par 4, 372; dogleg left at 230, pond in the corner", "par 4, 372; dogleg left at 230; pond left at 230"),
    ("par 4, 372; dogleg left at 230, pond in the corner, 200 to 240",
     "par 4, 372; dogleg left at 230; pond left 200 to 240"),
    ("par 4, 372; pond right at 220; shallow green 18 deep", "par 4, 372; pond right at 220; green 18 deep"),
    ("par 4, 372; pond right at 220; long narrow green 40 deep, 14 wide",
     "par 4, 372; pond right at 220; green 40 deep, 14 wide"),
    ("par 4, 372; pond right at 220; narrow fairway 20 wide", "par 4, 372; pond right at 220; fairway 20 wide"),
    # what a laser says of the green
    ("par 4, 372; front 360, flag 371, back 386; pond right at 220", "par 4, 372; green front 360, back 386; pin at 371; pond right at 220"),
    ("par 4, 372; front edge 360, back edge 386; pond right at 220", "par 4, 372; green front 360, back 386; pond right at 220"),
    ("par 4, 372 to the middle, 360 to the front; 386 to the back; pond right at 220", "par 4, 372; green front 360, back 386; pond right at 220"),
    ("par 4, 372; back 386, front 360; pond right at 220", "par 4, 372; green front 360, back 386; pond right at 220"),
    ("par 4, front 360, middle 372, back 386; pond right at 220", "par 4, 372; green front 360, back 386; pond right at 220"),
    # two sides of the green: the second was lost, or refused
    ("par 4, 372; water short and right of the green", "par 4, 372; water short of the green; water right of the green"),
    ("par 4, 372; pond left of the green and behind", "par 4, 372; pond left of the green; pond behind the green"),
    ("par 4, 372; pond right 210/250; fw 28 wide; 2 bunkers L @ 240",
     "par 4, 372; pond right 210 to 250; fairway 28 wide; two bunkers left at 240"),
    ("par 4, 372; pond right, 210 to the front edge, 250 to carry it", "par 4, 372; pond right 210 to 250"),
    ("par 4, 372; pond right at 220; trees line both sides", "par 4, 372; pond right at 220; trees both sides"),
    ("par 4, 372; pond right at 220; bunker short left, 15 yards short",
     "par 4, 372; pond right at 220; bunker left, 15 short of the green"),
    ("par 4, 372; pond right at 220; fairway 30 wide throughout", "par 4, 372; pond right at 220; fairway 30 wide"),
    ("par 4, 372; over a lake 60 to 150", "par 4, 372; lake across 60 to 150"),
    ("par 4, 372; lake from 60 to 150 straight across", "par 4, 372; lake across 60 to 150"),
    ("par 4, 372; brook runs in front of the green 12 yards short", "par 4, 372; brook across 12 short of the green"),
    ("par 4, 372; pond right at 220; out long, 15", "par 4, 372; pond right at 220; out 15 behind the green"),
    ("par 4, 372; pond right at 220; out of bounds 20 over the back", "par 4, 372; pond right at 220; out 20 behind the green"),
    ("par 4, 372; pond right at 220; garden fence left, 35", "par 4, 372; pond right at 220; out left 35"),
    ("par 4, 372; pond right at 220; dogleg right 230 to the corner", "par 4, 372; pond right at 220; dogleg right at 230"),
    ("par 4, 372; pond right at 220; drops 40 feet from tee to green", "par 4, 372; pond right at 220; downhill 40 feet"),
    ("par 4, 372; pond right at 220; pin on the back tier", "par 4, 372; pond right at 220; pin back"),
    ("par 4, 372; pond right at 220; hole cut back left", "par 4, 372; pond right at 220; pin back left"),
]


def test_a_boundary_beside_the_green() -> None:
    places = [(345, 28, R), (380, 28, O), (500, 28, O), (380, 26, R), (380, -40, R)]
    assert surfaces(hole_from_words(BASE + "out 15 right of the green").hole, places) == places
    told = [(335, 28, R), (345, 28, O), (380, 28, O), (420, 28, R)]  # where it begins and ends was not heeded
    assert surfaces(hole_from_words(BASE + "out 15 right of the green, from 340 to 410").hole, told) == told


def test_all_carry_over_water_is_a_par_3_over_it() -> None:
    one, other = (hole_from_words(words).hole for words in ("par 3, 165, all carry over a pond", "par 3, 165 over a pond"))
    ponds = [next(f.area for f in hole.features if f.surface is W) for hole in (one, other)]
    assert ponds[0].equals(ponds[1])


@pytest.mark.parametrize(
    ("words", "begins"),
    [("pond 8 short of the green", 143), ("stream 10 short of the green", 131), ("pond right at 100", 131)],
)
def test_the_approach_nobody_spoke_of_keeps_out_of_the_water(words: str, begins: float) -> None:
    read = hole_from_words(f"par 3, 165; {words}")  # its green begins at 151
    grass = next(f for f in read.hole.features if f.name == "approach")
    assert grass.area.bounds[1] == pytest.approx(begins) and read.warnings == ()
    assert any(f"{min(151 - begins, 20)} yards of mown grass" in one for one in read.assumed)


@pytest.mark.parametrize("head", ["hole 4, Quarry Bend", "4. Quarry Bend", "Quarry Bend"])
def test_the_number_of_a_hole_is_no_part_of_its_name(head: str) -> None:
    assert hole_from_words(f"{head}: par 4, 380; pond right at 220").hole.name == "Quarry Bend"


@pytest.mark.parametrize("head", ["7th, par 3", "the 7th hole, par 3", "the 7th, a par 3 of", "No 7, par 3", "number 7, par 3"])
def test_which_hole_it_is(head: str) -> None:
    hole = hole_from_words(f"{head} 150; green 20 deep").hole
    assert (hole.name, hole.par, hole.length_yd) == ("Hole 7", 3, 150.0)


def test_a_tee_called_by_who_plays_it() -> None:
    spot = next(tee for tee in hole_from_words(BASE + "forward tee 310").hole.tees if tee.name == "forward")
    assert spot.y_yd == pytest.approx(70.0)


def test_gorse_hides_more_balls_than_long_grass() -> None:
    """Three in a hundred were lost in either."""
    found = hole_from_words("par 4, 400; gorse left, edge 25; heavy rough right, edge 25")
    lost = {one.name: one.lost_chance for one in found.hole.features}
    assert lost["gorse"] == 0.1 > lost["heavy rough"] and "one ball in 10 in it lost" in " ".join(found.hole.assumed)


@pytest.mark.parametrize(("words", "same"), SAID_ALIKE)
def test_two_ways_of_saying_it(words: str, same: str) -> None:
    one, other = hole_from_words(words).hole, hole_from_words(same).hole
    assert one.length_yd == other.length_yd == pytest.approx(372.0)
    lies = [surfaces_over(hole, range(-5, 400, 5), range(-60, 65, 5)) for hole in (one, other)]
    assert np.array_equal(*lies) and Surface.WATER in lies[0]
    assert (one.pin.x_yd, one.pin.y_yd) == pytest.approx((other.pin.x_yd, other.pin.y_yd))


PLACES: dict[str, list[tuple[float, float, Surface]]] = {
    # words behind BASE: what lies at (station, offset)
    "pond right 213 to 254, edge 14 right": [(214, 15, W), (253, 15, W), (212, 20, R), (255, 20, R), (230, 13, F)],
    "right pond from 213 to 254, 14 right": [(214, 15, W), (212, 15, R), (230, 13, F)],
    "pond right, 213-254, inside edge 20, far edge 50": [(230, 21, W), (230, 49, W), (230, 19, R), (230, 51, R)],
    "lake left 200 to 260, edge 10 left, 40 wide": [(230, -11, W), (230, -49, W), (230, -51, R), (230, -9, F)],
    "a pond on the left side at 230, 20 long, edge 20": [(231, -21, W), (249, -21, W), (251, -21, R), (229, -21, R)],
    "pond right 213 to 254, edge 5 left": [(230, -4, W), (230, 15, W), (230, -6, F)],
    # of the fairway: from its mown edge, 14 from the line, as things left and right of the green are from its edge
    "pond 5 right of the fairway, 200 to 240": [(220, 18, R), (220, 20, W), (220, 10, F), (220, -20, R)],
    "out 20 left of the fairway": [(220, -33, R), (220, -35, O), (220, 35, R)],
    "bunker 3 yards right of the fairway at 230": [(230, 16, R), (230, 18, B), (230, 24, B), (230, 26, R)],
    "trees left 10 off the fairway": [(220, -23, R), (220, -25, T), (220, 25, R)],
    "pond right, edge 5 from the fairway, far edge 30 off the edge of the fairway, 200 to 240": [
        (220, 18, R), (220, 20, W), (220, 43, W), (220, 45, R)],
    "gorse both sides 10 from the fairway": [(220, -23, R), (220, -25, H), (220, 23, R), (220, 25, H)],
    "bunker 20 right of the fairway centre at 230": [(230, 15, R), (230, 17, B), (230, 23, B)],
    "lake 14 right of the middle of the fairway, 200 to 240": [(220, 13, F), (220, 15, W)],
    "stream crossing at 230": [(230, -60, W), (230, 0, W), (230, 60, W), (227, 0, F), (233, 0, F)],
    "creek diagonal from 190 left to 230 right": [
        (190, -14, W), (230, 14, W), (210, 0, W), (290, 56, W), (130, -56, W),
        (200, -14, R), (180, -14, R), (220, 14, R), (240, 14, R), (230, 0, F),
    ],
    "a diagonal burn, 230 on the left to 190 on the right": [(230, -14, W), (190, 14, W), (210, 0, W), (190, -14, R)],
    "stream crosses diagonally 190 left to 230 right, 10 wide": [(218, 0, W), (202, 0, W), (219.5, 0, F), (200.5, 0, F)],
    "a 6-yard wide burn across at 230": [(227.5, 0, W), (232.5, 0, W), (226.5, 0, F), (233.5, 0, F)],
    "ditch 20 short of the green, dry": [(345.5, 0, D), (347, 0, F), (342, 0, F)],
    "water across 200 to 230": [(215, 80, W), (215, -80, W), (199, 0, F)],
    "pond 200 to 230": [(215, 25, W), (215, 35, R), (215, -35, R)],
    "stream crosses, 190 carry": [(189, 0, W), (191, 0, F), (185, 0, F)],
    "carry 190 to clear the pond, 160 to reach": [(161, 0, W), (189, 0, W), (159, 0, F), (191, 0, F)],
    "pond left of the green": [(380, -21, W), (380, -19, R), (380, 21, R), (350, -21, R)],
    "trees both sides of the green": [(380, -25, T), (380, 25, T), (300, -25, R), (300, 25, R)],
    "pond in front of the green, 310 to 340": [(311, 0, W), (339, 0, W), (309, 0, F), (341, 0, F), (325, 29, W)],
    "lake left of the green, 350 to 390": [(351, -21, W), (389, -21, W), (370, -19, R), (349, -21, R)],
    "creek 130 from the green": [(235, 0, W), (233, 0, W), (237, 0, F), (231, 0, F)],
    "pond 60 from the green": [(305, 0, W), (267, 0, W), (307, 0, F), (265, 0, F)],
    "trees left 100 to 200, 25 off the line": [(150, -26, T), (150, -54, T), (150, -24, R), (150, 26, R)],
    "trees right, 25 off the line": [(200, 26, T), (200, 24, R)],
    "lake behind the green": [(405, 0, W), (400, 0, R)],
    "yellow penalty area 300 to 320": [(310, 0, W), (310, 60, W), (299, 0, F), (321, 0, F)],
    "sea all down the left, edge 30": [(100, -31, W), (380, -31, W), (200, -29, R)],
    "river right, edge 25, 10 wide": [(300, 26, W), (300, 34, W), (300, 36, R), (300, 24, R), (100, 26, W)],
    "bunker 5 left of the green": [(380, -20, B), (380, -16, R), (380, 20, R)],
    "bunker left 20 to 30, at 230": [(230, -21, B), (230, -29, B), (230, -19, R), (230, -31, R)],
    "river right, edge 25": [(300, 26, W), (300, 44, W), (300, 46, R), (300, 24, R)],
    "out left 34": [(200, -35, O), (10, -35, O), (200, -33, R), (440, -35, O), (200, 100, R)],
    "ob left 34 and right 40": [(200, -35, O), (200, 41, O), (200, 39, R)],
    "O.B. both sides 45": [(200, -46, O), (200, 46, O), (200, 44, R)],
    "out of bounds right of 40": [(200, 41, O), (200, 39, R)],
    "fence right 40 from 200 to 300": [(250, 41, O), (190, 41, R), (310, 41, R)],
    "road 38 left, out 20 behind the green": [(200, -39, O), (415, 0, O), (413, 0, R)],
    "bunker left of the green": [(380, -17, B), (380, -13, R), (380, 17, R)],
    "bunker left of the green, 5 off": [(380, -18, B), (380, -16, R), (380, 18, R)],
    "pond right of the green, 3 off it": [(380, 16, W), (380, 14.5, R), (380, -16, R)],
    "pond right, 3 off the green": [(380, 16, W), (380, 14.5, R), (380, -16, R)],
    "pond 3 off the green right": [(380, 16, W), (380, 14.5, R), (380, -16, R)],
    "pond 3 off the putting surface on the left": [(380, -16, W), (380, -14.5, R), (380, 16, R)],
    "trees left 10 off the green": [(380, -23, T), (380, -21, R), (380, 23, R)],
    "bunkers both sides of the green": [(380, -17, B), (380, 17, B)],
    "greenside bunkers left and right": [(380, -17, B), (380, 17, B)],
    "greenside bunker short right": [(365, 12, B), (365, -12, R), (395, 12, R)],
    "bunker short left of the green, pond right of the green": [(365, -12, B), (380, 22, W)],
    "bunkers front left and back right": [(365, -12, B), (395, 12, B), (365, 12, R), (395, -12, R)],
    "bunkers front left and right": [(365, -12, B), (365, 12, B), (395, 12, R), (395, -12, R)],
    "bunkers back left and right of the green": [(395, -12, B), (395, 12, B), (365, 12, R)],
    "bunker guarding the front": [(360.5, 0, B), (366, 12, R)],
    "bunker protecting the front left of the green": [(365, -12, B), (365, 12, R)],
    "forced carry 190 over water": [(189, 0, W), (191, 0, F)],
    "bunkers left, right and behind the green": [(380, -17, B), (380, 17, B), (399.5, 0, B), (395, 12, R)],
    "bunker behind the green": [(399.5, 0, B), (395, 0, R)],
    "bunker 20 short of the green on the left, edge 3": [(345, -7, B), (339, -4, B), (347, -7, F), (339, -2, F), (331, -7, F)],
    "cross bunker at 210": [(210, 0, B), (210, 12, B), (210, -12, B), (215, 0, F)],
    "bunker left at 230": [(230, -14, B), (230, -11, F), (230, 14, R), (245, -16, R)],
    "bunker right 230, 20 right, 10 long, 6 wide": [(234, 20, B), (236, 20, R), (230, 22.5, B), (230, 23.5, R)],
    "bunkers left at 230 and 260": [(230, -16, B), (260, -16, B), (245, -16, R), (260, 16, R)],
    "bunkers left at 230 and right at 260": [(230, -16, B), (260, 16, B), (260, -16, R)],
    "two bunkers right 220 to 260": [(225, 16, B), (255, 16, B), (240, 16, R)],
    "pot bunker in the middle of the fairway at 240": [(240, 0, B), (243, 0, F), (240, 3, F)],
    "fairway bunker on the right, carry 240": [(239, 16, B), (241, 16, R)],
    "bunker left 220 to 240": [(222, -16, B), (238, -16, B), (218, -16, R), (242, -16, R)],
    "trees right 180 to 260, 15 tall": [(200, 30, T), (200, 24, R), (270, 30, R)],
    "trees both sides, 30 to 50": [(200, 31, T), (200, -49, T), (200, 29, R), (200, 51, R)],
    "pines right 180 to 260, 20 to 50 right": [(200, 21, T), (200, 49, T), (200, 19, R)],
    "wood left from 200, edge 25": [(201, -26, T), (390, -26, T), (199, -26, R)],
    "trees left 180 to 220 and right 240 to 300": [(200, -30, T), (270, 30, T), (200, 30, R), (270, -30, R)],
    "heavy rough left, edge 22": [(200, -23, H), (200, -21, R), (200, 23, R)],
    "deep rough 60 to 130 across": [(100, 0, H), (100, 50, H), (140, 0, R)],
    "trees both sides 30": [(200, 31, T), (200, -31, T), (200, 29, R), (350, -31, T)],
    "gorse right, 25": [(200, 26, H), (200, 24, R), (350, 26, H)],
    "trees both sides 230": [(240, 30, T), (240, -30, T), (180, 30, R), (300, -30, R)],
    "gorse both sides 25 to 60": [(250, 26, H), (250, -26, H), (250, 24, R)],
    "cart path left 20": [(200, -21, P), (200, -18, R), (200, -24, R)],
    "pond right 213 to 254, gap 20 to line at 213, bunker left at 230": [(230, 21, W), (230, 19, R), (230, -16, B)],
    "pond right 200 to 240, edge 20. Out left 34!\nBunker left at 230": [(220, 21, W), (220, -35, O), (230, -16, B)],
    "out right 40 and behind the green 15": [(200, 41, O), (410, 0, O), (408, 0, R)],
    "pond short right of the green": [(340, 5, W), (340, 30, W), (340, 2, F), (340, -10, F)],
    "pond right, left edge 20, right edge 40, 200 to 240": [(220, 21, W), (220, 39, W), (220, 41, R), (220, 19, R)],
    "bunker on the left from 220 to 245, carry 245": [(222, -16, B), (243, -16, B), (247, -16, R)],
    "stream across the whole hole at 230": [(230, 80, W), (230, -80, W)],
    "yellow stakes left 20 from 150 to 220": [(160, -21, W), (160, -19, R), (149, -21, R)],
    "water down the left side from 180 to 240": [(200, -20, W), (200, -18, R), (179, -20, R)],
    "ob right at 30": [(200, 31, O), (200, 29, R)],
    "180 carry over water": [(179, 0, W), (181, 0, F)],
    "water 160 to 190 carry on the right": [(170, 20, W), (170, 18, R), (170, -20, R)],
    "pond called Mill Pond right 200 to 240, edge 20": [(220, 21, W)],
    # turns of speech
    "burn crosses the fairway at 240 and again at 320": [(240, 0, W), (240, 60, W), (320, 0, W), (280, 0, F)],
    "ditch at 200 crossing from left to right": [(200, -50, W), (200, 50, W), (203, 0, F)],
    "out of bounds left along the road, 30": [(220, -29, R), (220, -31, O), (220, 31, R)],
    "road down the right is out of bounds, 40": [(220, 39, R), (220, 41, O), (220, -41, R)],
    "hedge OB left 20": [(220, -19, R), (220, -21, O), (220, -60, O)],  # was a hedge on no side
    "OB right (fence) 35": [(220, 34, R), (220, 36, O), (220, -36, R)],  # was asked how far right of the line
    "road right 35 (OB), pond left 200 to 240, edge 20": [(220, 36, O), (220, -21, W), (220, 34, R)],
    "out left 30 and road right 40": [(220, -31, O), (220, 39, R), (220, 41, O)],
    "trees left and right 25": [(220, -24, R), (220, -26, T), (220, 24, R), (220, 26, T)],
    "trees 25 left and right": [(220, -24, R), (220, -26, T), (220, 24, R), (220, 26, T)],  # right they were at 28
    "trees 25 left and 40 right": [(220, -26, T), (220, 39, R), (220, 41, T)],
    "gorse 200 to 260 left and right":  # on the right it ran from tee to green
        [(230, -25, H), (230, 25, H), (190, -25, R), (190, 25, R), (270, 25, R)],
    "hedge across at 300": [(300, 0, T), (300, 20, T), (297, 20, R), (303, -20, R)],  # it was 40 thick
    "creek right in front of the green": [(354, 0, W), (354, -20, W), (354, 20, W)],  # it was a puddle on the right
    "bunker right behind the green": [(399, 0, B), (399, 10, R)],
    "pond right, in front of the green": [(340, 30, W), (340, 0, F)],
    "ditch in front of the tee at 60": [(60, 0, W), (63, 0, R)],
    "line of poplars right 180 to 220, 40 off the line": [(200, 41, T), (200, 39, R), (230, 41, R)],
    "bunkers at 220, 240 and 260 on the right": [(220, 16, B), (240, 16, B), (260, 16, B), (240, -16, R), (220, 0, F)],
    "green guarded by bunkers left and right": [(380, -18, B), (380, 18, B), (380, 0, G)],
    "green protected by a pond in front": [(350, 0, W), (367, 0, G)],
    "carry of 140 over heather": [(100, 0, H), (139, 50, H), (141, 0, R), (151, 0, F)],
    "two bunkers left and one right of the green": [(374, -16, B), (386, -16, B), (380, 17, B), (380, -16, R)],
    "bunkers 150 and 130 from the green on the left": [(209, -16, B), (229, -16, B), (219, -18, R), (380, -146, R)],
    "cross bunkers 80 short of the green": [(283, 0, B), (288, 0, F)],
    "three bunkers across the fairway at 210":  # they lay one behind another, each from edge to edge
        [(210, 0, B), (210, 10, B), (210, -10, B), (210, 5.3, F), (210, -5.3, F), (194, 0, F), (226, 0, F)],
    "two cross bunkers at 210": [(210, 0, F), (210, 7, B), (210, -7, B), (202, 7, F), (218, -7, F)],
    "gully across 200 to 215": [(199, 0, F), (207, 0, W), (207, 30, W), (216, 0, F)],
    "second shot over a lake 300 to 330": [(299, 0, F), (315, 0, W), (331, 0, F)],
    "bunker five right of the green": [(380, 16, R), (380, 18, B)],  # yards, where the bunker is named
    "bunker 12 long by 6 wide, left of the green": [(385, -17, B), (387, -17, R)],
    "pond right 150 to 220, 10 from the fairway edge": [(200, 23, R), (200, 25, W)],
    "wall left, 30 from the centre line": [(220, -29, R), (220, -31, O)],
}

FAIRWAYS: dict[str, list[tuple[float, float, Surface]]] = {
    # words behind "par 4, 380; green 28 deep; "
    "": [(153, 15, F), (151, 17, R), (365, 15, F), (148, 0, R)],
    "fairway 28": [(200, 13, F), (200, 15, R)],
    "fairway 24 at 220 and 30 at 280": [(220, 11.5, F), (220, 12.5, R), (280, 14.5, F), (280, 15.5, R)],
    "fairway 28 wide": [(200, 13, F), (200, 15, R), (200, -13, F), (200, -15, R)],
    "fairway 150 to 340, 30 wide": [(339, 14, F), (341, 0, R), (200, 14, F), (200, 16, R)],
    "fairway 14 left 18 right": [(200, -13, F), (200, -15, R), (200, 17, F), (200, 19, R)],
    "fairway left edge 12, right edge 20": [(200, -11, F), (200, -13, R), (200, 19, F)],
    "fairway 30 wide, narrows to 20 at 260": [(260, 9, F), (260, 11, R), (160, 14, F), (350, 13, F)],
    "fairway narrows to 20 at 260": [(260, 9, F), (260, 11, R), (160, 14, F), (350, 13, F)],  # it was 20 all along
    "fairway widens to 40 at 260": [(260, 19, F), (160, 17, R)],
    "fairway 40 wide at 200, 24 at 260": [(160, 19, F), (270, 11, F), (270, 13, R), (350, 13, R)],  # nor wide again
    "fairway from 170 to 20 short of the green, 28 wide": [(171, 0, F), (169, 0, R), (345, 0, F), (347, 0, R)],
    "fairway 28 wide, from the tee to the green": [(15, 0, F), (365, 0, F)],
    "fairway 30 wide, pinched to 20 at 260": [(260, 9, F), (260, 11, R), (160, 14, F)],
    "fairway 28 wide, runs out at 270": [(269, 0, F), (271, 0, R), (200, 13, F)],
    "fairway thirty wide": [(200, 14, F), (200, 16, R)],
    "landing zone 30 wide": [(200, 14, F), (200, 16, R)],
    "landing area between 200 and 260, 30 wide": [(180, 14, F), (180, 16, R), (300, 14, F)],  # it goes on
    "left fairway 20 wide, edge 8; right fairway 30 wide, edge 6": [
        (200, -7, R), (200, -9, F), (200, -27, F), (200, -29, R), (200, 5, R), (200, 7, F), (200, 35, F), (200, 37, R)],
    "left fairway 180 to 300, 8 to 28; right fairway from 200, 8 to 38; bunker right at 250": [
        (181, -9, F), (179, -9, R), (301, -9, R), (199, 9, R), (201, 9, F), (201, 37, F), (250, 41, B), (230, 0, R)],
}


@pytest.mark.parametrize(
    ("words", "depth", "width"),
    [
        # ellipses of 2,950 and 7,420 square feet: small greens are under 4,000, large over 7,000 (common practice)
        ("small green", 22, 19), ("tiny green", 22, 19), ("a big green", 35, 30), ("large green, 40 deep", 40, 30),
        ("green small and 18 wide", 22, 18), ("green 28 deep", 28, 24),
    ],
)  # fmt: skip
def test_small_and_large_greens(words: str, depth: float, width: float) -> None:
    found = hole_from_words(f"par 4, 380; {words}")
    low_x, low_y, high_x, high_y = found.hole.green.bounds
    assert (high_y - low_y, high_x - low_x) == pytest.approx((depth, width), abs=0.3)
    said = " ".join(found.hole.assumed)
    assert ("as a small one" in said or "as a large one" in said) == ("28" not in words)


def surfaces(hole: Hole, places: list[tuple[float, float, Surface]]) -> list[tuple[float, float, Surface]]:
    return [(s, o, hole.surface_at(*hole.at(s, o))) for s, o, _ in places]


@pytest.mark.parametrize("words", PLACES)
def test_what_lies_where(words: str) -> None:
    assert surfaces(hole_from_words(BASE + words).hole, PLACES[words]) == PLACES[words]


@pytest.mark.parametrize("words", FAIRWAYS)
def test_fairways(words: str) -> None:
    hole = hole_from_words("par 4, 380; green 28 deep; " + words).hole
    assert surfaces(hole, FAIRWAYS[words]) == FAIRWAYS[words]


@pytest.mark.parametrize(("words", "par", "length_yd"), [
    ("par 4, 372", 4, 372), ("par 4 372 yards", 4, 372), ("a 372-yard par four", 4, 372), ("Par 5, 520y", 5, 520),
    ("par 3, 165", 3, 165), ("par 4, 342 m", 4, 342 / 0.9144), ("par 4, 342, all in metres", 4, 342 / 0.9144),
    ("par-4, length 372", 4, 372), ("par 4/372", 4, 372), ("par 4 - 372 yds", 4, 372), ("My 12th: par 4, 372", 4, 372),
    ("hole 12, par 4, 372", 4, 372),
])  # fmt: skip
def test_par_and_length(words: str, par: int, length_yd: float) -> None:
    hole = hole_from_words(words).hole
    assert (hole.par, hole.length_yd) == (par, pytest.approx(length_yd, abs=0.01))
    assert hole.name == ("My 12th" if "My" in words else "Hole 12" if "hole" in words else "My hole")


def test_metres_are_exact_and_said() -> None:
    """The international yard is exactly 0.9144 m (1959 agreement)."""
    found = hole_from_words("par 4, 342 m; fairway 28 wide; pond right 200 to 240, edge 20; pin 5 yd on")
    assert "metres" in found.assumed[0] and "length_m = 342" in found.toml_text and "from_m = 200" in found.toml_text
    edge = 20 / 0.9144
    places = [(220 / 0.9144, edge + 0.05, W), (220 / 0.9144, edge - 0.05, R), (200, 15, F)]
    assert surfaces(found.hole, places) == places
    assert found.hole.station_offset(found.hole.pin.x_yd, found.hole.pin.y_yd)[0] == pytest.approx(
        found.hole.length_yd - 14 + 5, abs=0.6)  # fmt: skip


@pytest.mark.parametrize(("words", "turns"), [
    ("left 40 at 230", [(230, -40)]), ("dogleg left at 230", [(230, -40)]), ("bends right at 240", [(240, 20)]),
    ("dogleg right 30 at 220, left 20 at 300", [(220, 30), (300, -20)]), ("dogleg left 230", [(230, -40)]),
    ("bends slightly left at 200", [(200, -10)]), ("dog-leg right at 230, 55 degrees", [(230, 55)]),
    ("turns 25° right at 210", [(210, 25)]), ("dogleg right", [(236, 40)]), ("straight", []), ("slight dogleg right at 240", [(240, 10)]),
])  # fmt: skip
def test_bends(words: str, turns: list[tuple[float, float]]) -> None:
    line = hole_from_words(f"par 4, 380, {words}").hole.play_line
    found = []
    for k, station in enumerate(line.stations[1:-1], start=1):
        (ax, ay), (bx, by) = line.headings[k - 1], line.headings[k]
        found.append((station, math.degrees(math.atan2(ay * bx - ax * by, ax * bx + ay * by))))
    assert [v for turn in found for v in turn] == pytest.approx([v for turn in turns for v in turn])


@pytest.mark.parametrize(("words", "spots"), [
    ("pin 7 on", {"front": (373, 0)}), ("pin 7 on, 4 left", {"front left": (373, -4)}), ("pin 20 on", {"back": (386, 0)}),
    ("pin back left", {"back left": (388.4, -6)}), ("flag 371", {"front": (371, 0)}),
    ("pins front, middle and back right", {"front": (371.6, 0), "middle": (380, 0), "back right": (388.4, 6)}),
    ("pin 7 on; pin 20 on, 2 right", {"front": (373, 0), "back": (386, 2)}), ("", {"middle": (380, 0)}),
])  # fmt: skip
def test_pins(words: str, spots: dict[str, tuple[float, float]]) -> None:
    hole = hole_from_words(f"par 4, 380; green 28 deep, 24 wide; {words}").hole
    assert [p.name for p in hole.pins] == list(spots)
    for pin in hole.pins:
        assert hole.station_offset(pin.x_yd, pin.y_yd) == pytest.approx(spots[pin.name], abs=0.06)


@pytest.mark.parametrize("paces", [
    "5 from the back, 4 from the left", "3 on, 5 from the right", "14 on, 3 from the left", "5 on, 4 from the right",
])  # fmt: skip
def test_a_pin_is_so_far_from_the_edge_of_the_green_where_it_stands(paces: str) -> None:
    """A round green is narrower there than in its middle: 5 from its widest is a yard from its edge 3 on.

    So do hole-location sheets count, and `--pin` with the same words.
    """
    green = "par 4, 380; green 28 deep, 24 wide"
    hole = hole_from_words(f"{green}, pin {paces}").hole
    pin = hole.pins[0]
    station, offset = hole.station_offset(pin.x_yd, pin.y_yd)
    side, yards = (-1.0, 1.0)["right" in paces], float(paces.split(",")[1].split()[0])
    across = shapely.LineString([hole.at(station, offset), hole.at(station, side * 60.0)])
    assert hole.green.intersection(across).length == pytest.approx(yards, abs=0.1)
    asked = pin_from_words(hole_from_words(green).hole, paces).pin
    assert (pin.x_yd, pin.y_yd) == pytest.approx((asked.x_yd, asked.y_yd), abs=0.1)


@pytest.mark.parametrize(("words", "front", "depth", "width", "fall"), [
    ("green 24 deep", 368, 24, 24, None), ("green 24 deep, 20 wide, falls front left 2%", 368, 24, 20, (2, 225)),
    ("green 30 by 22, 2.5% back to front", 365, 30, 22, (2.5, 180)), ("green slopes to the back", 366, 28, 24, (2, 0)),
    ("green falls from back left to front right 3%", 366, 28, 24, (3, 135)), ("green slopes back right to front left", 366, 28, 24, (2, 225)),
    ("green front 360, back 392, tilts left to right", 360, 32, 24, (2, 90)), ("green 362 to 390", 362, 28, 24, None),
    ("front of green 360; back of the green 390", 360, 30, 24, None), ("green 24 deep, level", 368, 24, 24, (0, 0)),
    # from where it is high: to the other side
    ("green slopes from the right", 366, 28, 24, (2, 270)), ("green slopes 3% from the back", 366, 28, 24, (3, 180)),
    ("green falls from back right", 366, 28, 24, (2, 225)), ("green slopes from right to left", 366, 28, 24, (2, 270)),
])  # fmt: skip
def test_greens(words: str, front: float, depth: float, width: float, fall: tuple[float, float] | None) -> None:
    hole = hole_from_words(f"par 4, 380; {words}").hole
    x0, y0, x1, y1 = hole.green.bounds
    assert (y0, y1 - y0, x1 - x0) == pytest.approx((front, depth, width), abs=0.1)
    slope = next(f.slope for f in hole.features if f.surface is G)
    assert (None if slope is None else (slope.percent, slope.falls_bearing_deg)) == fall


@pytest.mark.parametrize(("words", "name", "reach"), [
    ("island green 30 deep", "water", 30), ("green 30 deep; water all round the green", "water", 30),
    ("green 30 deep, surrounded by water", "water", 30), ("lake surrounds the green; green 30 deep", "lake", 30),
    ("the green is surrounded by a lake; green 30 deep", "lake", 30), ("green 30 deep; moat 20 wide around green", "moat", 20),
])  # fmt: skip
def test_a_green_with_water_all_round_it(words: str, name: str, reach: float) -> None:
    read = hole_from_words(f"par 3, 140; {words}").hole
    (water,) = [f for f in read.features if f.surface is Surface.WATER]
    assert water.relief == "yellow"  # red only where somebody says so
    assert water.name == name and water.area.bounds == pytest.approx((-12 - reach, 125 - reach, 12 + reach, 155 + reach))
    for x, y in ((0, 124), (0, 156), (-13, 140), (13, 140)):  # up to its edge on every side
        assert read.surface_at(x, y) is Surface.WATER
    assert read.surface_at(0, 140) is G and not any(f.surface is Surface.FAIRWAY for f in read.features)


def test_water_round_a_green_is_red_where_it_is_called_red() -> None:
    hole = hole_from_words("par 3, 140; green 30 deep; red pond 20 wide round the green").hole
    assert [f.relief for f in hole.features if f.surface is W] == ["red"]


def test_a_bunker_beside_an_island_green_stands_on_the_island() -> None:
    hole = hole_from_words("par 3, 140; island green 30 deep; bunker left of the green; bunker right at 60").hole
    sand = next(f.area for f in hole.features if f.surface is B and "greenside" in f.name)
    gap = sand.distance(hole.green)
    assert gap == pytest.approx(2.0, abs=0.1)
    right_end = sand.bounds[2]
    across = [hole.surface_at(x, 140) for x in np.arange(sand.bounds[0] + 0.5, 12.0, 0.25)]
    assert set(across) == {B, R, G} and hole.surface_at(right_end + 0.5 * gap, 140) is R
    assert hole.surface_at(sand.bounds[0] - 0.5, 140) is W  # up to the sand on its other side
    assert hole.surface_at(13, 140) is W and hole.surface_at(0, 156) is W


@pytest.mark.parametrize(("words", "tees"), [
    ("white tee; red tee 40 ahead", {"white": 0, "red": 40}), ("tees white, yellow 20 ahead and red 45 forward",
     {"white": 0, "yellow": 20, "red": 45}), ("men's tee, ladies' tee 50 forward", {"men": 0, "ladies": 50}),
    ("red tee 40 ahead", {"main": 0, "red": 40}), ("blue tee 20 back, white tee", {"blue": -20, "white": 0}),
    ("yellow tees at 16", {"main": 0, "yellow": 16}),
    ("white tee 380, yellow tee 360, red tee 320", {"white": 0, "yellow": 20, "red": 60}),  # as the card has them
])  # fmt: skip
def test_tees(words: str, tees: dict[str, float]) -> None:
    hole = hole_from_words(f"par 4, 380; {words}").hole
    first = hole.tees[0]
    shift = tees[first.name]
    assert {t.name: t.y_yd + shift for t in hole.tees} == pytest.approx(tees)


@pytest.mark.parametrize("words", [
    "par 4, 380 white, 340 yellow, 310 red", "par 4 380 white, 340 yellow, 310 red; fairway 28 wide",
    "par 4, 380 from the whites, 340 off the yellows, 310 from the reds", "par 4, white 380, yellow 340, red 310; out left 34",
    "7th, par 4, white tees 380 yards, yellow tees 340 yards and red tees 310 yards",
    "par 4, 380 (white), 340 (yellow), 310 (red)", "par 4, 380 (whites) 340 (yellows) 310 (reds); out left 34",
    "par 4; whites 380, yellows 340, reds 310; out left 34", "par 4, 380; 380 off the whites, 340 off yellow, 310 off red",
    "Hole 7. Par 4. White 380, yellow 340, red 310. Out left 34.",
])  # fmt: skip
def test_lengths_as_the_card_has_them(words: str) -> None:
    hole = hole_from_words(words).hole
    assert {t.name: round(hole.with_tee(t.name).length_yd) for t in hole.tees} == {"white": 380, "yellow": 340, "red": 310}


@pytest.mark.parametrize(("words", "tees"), [
    ("par 4, 412 off the back tee, 380 off the medal, 340 for ladies", {"back": 412, "medal": 380, "ladies": 340}),
    ("par 4, 372 off the whites; pond right 213 to 254", {"white": 372}), ("par 4, 372 (white), SI 4", {"white": 372}),
    ("par 4, 372, stroke index 7, red 330", {"main": 372, "red": 330}),
    ("par 4, 372, red tee 330", {"main": 372, "red": 330}), ("par 4, 372, 350 for ladies", {"main": 372, "ladies": 350}),
    ("par 3, 165 (white) over a pond", {"white": 165}), ("par 4, 330 (red), 372 (white)", {"red": 330, "white": 372}),
])  # fmt: skip
def test_other_tees_of_the_card(words: str, tees: dict[str, float]) -> None:
    hole = hole_from_words(words).hole
    assert {t.name: round(hole.with_tee(t.name).length_yd) for t in hole.tees} == tees


def test_the_back_of_a_green_is_no_tee() -> None:
    """ "Front 360, back 384" are the laser's figures of the green; only "back tee" is a tee."""
    hole = hole_from_words("par 4, 372, front 360, back 384").hole
    assert [t.name for t in hole.tees] == ["main"] and round(hole.length_yd) == 372


def test_internal_out_of_bounds_is_out_of_bounds() -> None:
    internal, plain = (hole_from_words(f"par 4, 388; {w}out of bounds right 25 from 150 to 300").hole for w in ("internal ", ""))
    assert internal.surface_at(40, 220) is plain.surface_at(40, 220) is Surface.OUT_OF_BOUNDS


@pytest.mark.parametrize(("words", "fairway", "green"), [
    ("green 6 up", None, 6), ("green 6 below the tee", None, -6), ("tee 10 above the fairway", -10, -10),
    ("downhill 12", None, -12), ("uphill 4 m", None, 4 / 0.9144), ("green 20 ft down", None, -20 / 3),
    ("tee 10 above the fairway; green 4 above the fairway", -10, -6), ("fairway 8 down; green 3 up", -8, 3),
    ("green 5 above the fairway", 0, 5), ("green up 6", None, 6), ("green is up by 10 ft", None, 10 / 3),
    ("drops 40 feet from tee to fairway", -40 / 3, -40 / 3), ("tee shot drops 40 feet", -40 / 3, -40 / 3),
    ("falls 12 yards from the tee to the fairway; green 4 above the fairway", -12, -8),
    ("tee shot plays uphill 5; green 20 ft above the fairway", 5, 5 + 20 / 3), ("downhill 12 off the tee", -12, -12),
    ("drops 40 feet from tee to green", None, -40 / 3),
])  # fmt: skip
def test_heights(words: str, fairway: float | None, green: float) -> None:
    hole = hole_from_words(f"par 4, 380; {words}").hole
    assert hole.height_at(0, 0) == pytest.approx(0.0, abs=1e-6)
    assert hole.height_at(0, 380) == pytest.approx(green, abs=0.05)
    if fairway is not None:
        assert hole.height_at(0, 150) == pytest.approx(fairway, abs=0.05)
        assert hole.height_at(0, 250) == pytest.approx(fairway, abs=0.6 + 0.02 * abs(green - fairway))


@pytest.mark.parametrize("words", [
    "bunker left 230 carry 245", "bunker left at 230 carry 245", "bunker left at 230, carry 245", "bunker left 230, carry 245",
    "bunker left reach 230 carry 245", "bunker left, reach 230, clear 245", "bunker left 230 clear 245", "bunker left 230 to clear 245",
    "pond left 230 carry 245", "pond left at 230, carry 245", "bunkers left at 200 and 230, carry 245",
])  # fmt: skip
def test_where_it_begins_and_the_carry_over_it(words: str) -> None:
    """ "230 carry 245" was a carry of 230 and a bunker about 245; with a comma it was refused."""
    hole = hole_from_words(f"par 4, 400; {words}").hole
    area = [f for f in hole.features if f.name.startswith(("left bunker", "pond"))][-1].area
    assert (area.bounds[1], area.bounds[3]) == pytest.approx((230.0, 245.0), abs=0.2)
    assert area.bounds[2] < 0.0


def test_single_trees_and_marks() -> None:
    hole = hole_from_words(
        BASE + "lone tree 12 left at 230, 14 tall; oak 20 right at 300, crown 12, 18 tall, dense; "
        "mark church tower 12 right at 400; pine 20 left at 260 as a mark; mark: barn roof behind the green"
    ).hole
    trees = {t.name: (t.x_yd, t.y_yd, t.crown_yd, t.crown.top_yd) for t in hole.single_trees}
    assert trees == {"tree": (-12, 230, 9, 14), "oak": (20, 300, 12, 18)}
    assert {m.name: (m.x_yd, m.y_yd) for m in hole.marks} == {
        "church tower": (12, 400), "pine": (-20, 260), "barn roof": (0, 434)}  # fmt: skip


@pytest.mark.parametrize("way", ["left", "right"])
def test_inside_and_outside_of_the_corner(way: str) -> None:
    """Inside is the side the line turns to; the corner itself is where it turns."""
    words = f"par 4, 400; dogleg {way} at 240; trees on the inside of the corner, 180 to 230, 20 off the line"
    hole = hole_from_words(words + "; bunker on the outside of the bend at 200; bunker left on the corner").hole
    sign = -1 if way == "left" else 1
    assert hole.surface_at(*hole.at(200, sign * 21)) is T and hole.surface_at(*hole.at(200, -sign * 21)) is not T
    outside, corner = [hole.station_offset(f.area.centroid.x, f.area.centroid.y) for f in hole.features if f.surface is B]
    assert outside[0] == pytest.approx(200, abs=0.5) and outside[1] * sign < 0
    assert corner[0] == pytest.approx(240, abs=8.0)


def test_a_tee_by_its_card_is_said() -> None:
    assert any("340 yards is what the hole measures" in line for line in load_hole("par 4, 400; red tee 340").assumed)


def test_what_belongs_to_the_hole_as_a_whole() -> None:
    hole = hole_from_words("par 4, 372, stroke index 7, bearing 68; local rule E-5").hole
    assert (hole.stroke_index, hole.bearing_deg, hole.local_rule_e5) == (7, 68, True)
    trees = next(f for f in hole_from_words(BASE + "trees right 180 to 260, 15 tall, open").hole.features if f.crown)
    assert trees.crown is not None and trees.crown.top_yd == 15 and "density" not in trees.crown.assumed
    pond = next(f for f in hole_from_words(BASE + "yellow stakes pond right 200 to 240").hole.features if f.relief)
    assert pond.relief == "yellow"


def test_round_the_bend_things_follow_the_line() -> None:
    hole = hole_from_words("par 4, 380, right 90 at 200; pond right 260 to 300, edge 20").hole
    assert hole.surface_at(80.0, 179.0) is W and hole.surface_at(80.0, 221.0) is R  # 20 right of a line that runs +x


def test_the_issue_of_a_coach_with_a_laser() -> None:
    """Two points at equal range and a gap between them: law of cosines, by hand 14 yd to 0.2 %."""
    words = hole_from_words("par 4, 372; edge of pond 213, gap 14 to line at 213, right")
    assert surfaces(words.hole, [(230, 14.2, W), (230, 13.8, F)]) == [(230, 14.2, W), (230, 13.8, F)]
    assert not words.warnings


@pytest.mark.parametrize(("r1", "r2", "angle_deg"), [(213, 213, 3.8), (180, 240, 20.0), (100, 100, 60.0), (250, 60, 88.0)])
def test_law_of_cosines(r1: float, r2: float, angle_deg: float) -> None:
    """Gap made from an angle (Euclid II.12-13), angle recovered; the right angle gives Pythagoras."""
    a = math.radians(angle_deg)
    gap = math.dist((r1 * math.cos(a), r1 * math.sin(a)), (r2, 0.0))
    assert offset_from_gap(r1, r2, gap) == pytest.approx((r1 * math.cos(a), r1 * math.sin(a)), abs=1e-6)
    assert offset_from_gap(50.0, 40.0, 30.0) == pytest.approx((40.0, 30.0))  # 3-4-5
    assert offset_from_gap(213.0, 190.0, 14.0) is None


@pytest.mark.parametrize(("r1", "r2", "gap"), [(213, 213, 14), (213, 208, 20), (180, 160, 45)])
def test_how_well_a_gap_fixes_an_offset(r1: float, r2: float, gap: float) -> None:
    """Against 200,000 simulated lasers: a yard at 95 of 100, and the number rounded to a yard."""
    draws = np.random.default_rng(5)
    sd = math.hypot(1.0 / 1.96, 1.0 / math.sqrt(12.0))
    a, b, g = (value + sd * draws.standard_normal(200_000) for value in (r1, r2, gap))
    cosine = np.clip((a * a + b * b - g * g) / (2.0 * a * b), -1.0, 1.0)
    spread = float((a * np.sqrt(1.0 - cosine**2)).std())
    assert offset_sd_yd(r1, r2, gap) == pytest.approx(spread, rel=0.06)
    pond = hole_from_words(f"par 4, 372; pond right {r1} to 254, gap {gap} to line at {r2}").hole.features
    assert next(f.edge_sd_yd for f in pond if f.relief) == pytest.approx(spread, abs=0.12)


def test_a_gap_between_unequal_ranges_is_warned_of() -> None:
    equal, unequal = offset_limits(213, 213, 14), offset_limits(213, 200, 14)
    assert equal[1] - equal[0] < 2.5 and unequal[1] - unequal[0] > 8.0
    found = hole_from_words("par 4, 372; pond right 213 to 254, gap 14 to line at 200")
    assert len(found.warnings) == 1 and "same range" in found.warnings[0] and found.warnings[0] in found.hole.assumed


@pytest.mark.parametrize("words", [CARD, *(BASE + w for w in PLACES), "My 5th: par 5, 480 m, dogleg left at 230 m; "
                                   "trees both sides; green 6 m up; pins front and back; mark 'old mill' 9 left at 500"])  # fmt: skip
def test_round_trip(words: str, tmp_path) -> None:
    """Words, file, hole: the same surfaces, and the same sentences about what was assumed."""
    found = hole_from_words(words)
    (tmp_path / "hole.toml").write_text(found.toml_text, encoding="utf-8")
    again, direct = load_hole(tmp_path / "hole.toml"), load_hole(words)
    for other in (again, direct):
        assert [f.name for f in other.features] == [f.name for f in found.hole.features]
        for a, b in zip(other.features, found.hole.features, strict=True):
            assert (a.surface, a.relief) == (b.surface, b.relief) and shapely.equals_exact(a.area, b.area, tolerance=1e-9)
        assert other.pins == found.hole.pins and other.tees == found.hole.tees and other.marks == found.hole.marks
        assert other.assumed == found.hole.assumed
    assert set(found.assumed) <= set(found.hole.assumed)


def test_the_file_is_commented_and_marks_what_was_assumed() -> None:
    text = hole_from_words(CARD).toml_text
    assert text.startswith("# A hole from words: par 4, 372; fairway 28 wide")
    pond = next(line for line in text.splitlines() if '"pond"' in line)
    assert pond.endswith("# assumed: colour, right") and "left_yd = 14, right_yd = 44" in pond
    lines = [line for line in text.splitlines() if "left_of_yd = -34" in line]
    assert len(lines) == 1 and "assumed" not in lines[0]
    assert max(map(len, text.splitlines())) < 160
    data = tomllib.loads(text)
    assert read_sketch(data, "x").par == 4 and data["length_yd"] == 372


def test_whatever_was_filled_in_is_said() -> None:
    full = hole_from_words(
        'Brook: par 4, 380; white tee; fairway 28 wide, 150 to 366; green 28 deep, 24 wide; pin 14 on; '
        "red pond right 200 to 240, edge 20, far edge 50; out left 34; bunker left at 230, 16 left, 12 long, 8 wide"
    )
    assert full.assumed == () and "assumed" not in full.toml_text.split("name =")[1]
    for cut, said in (("fairway 28 wide, 150 to 366; ", "fairway"), (", far edge 50", "pond: 30 yards across"),
                      ("red ", "pond: red"), (", 24 wide", "green: 24 yards wide"), (", 16 left", "edge of the fairway"),
                      (", 12 long", "left bunker: 14 yards long")):  # fmt: skip
        text = full.toml_text.splitlines()[0].removeprefix("# A hole from words: ")
        del text
        words = (
            'Brook: par 4, 380; white tee; fairway 28 wide, 150 to 366; green 28 deep, 24 wide; pin 14 on; '
            "red pond right 200 to 240, edge 20, far edge 50; out left 34; bunker left at 230, 16 left, 12 long, 8 wide"
        ).replace(cut, "")
        assert any(said in sentence for sentence in hole_from_words(words).assumed), cut


@pytest.mark.parametrize(("text", "meant"), [
    (CARD, True), ("par 4 372", True), ("Par Four, 372 yards", True), ("par 4", False), ("withy-drain", False),
    ("compare 4 372", False), ("", False), ("par 4.toml", False), ("a par 5 of 520", True),
])  # fmt: skip
def test_what_looks_like_words(text: str, meant: bool) -> None:
    assert looks_like_words(text) is meant


def test_a_file_wins_over_words(tmp_path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "par 4 372").write_text(hole_from_words("Other: par 3, 150").toml_text)
    assert load_hole("par 4 372").name == "Other" and load_hole("par 4, 372").par == 4


@pytest.mark.parametrize(
    ("words", "front_yd", "back_yd"),
    [
        ("two tier green, back 3 ft up", 0.0, 1.0),
        ("two-tiered green", 0.0, 1.0),  # three feet: assumed
        ("green 28 deep, 24 wide, two tiers, back half 2 ft higher", 0.0, 2.0 / 3.0),
        ("two tier green, front 3 ft down", 0.0, 1.0),
        ("two tier green, back tier up 3 ft", 0.0, 1.0),
        ("two tier green, front tier 3 ft up", 1.0, 0.0),
        ("green 5 up, two tier green, back 3 ft up", 5.0, 6.0),
    ],
)
def test_a_green_on_two_tiers(words: str, front_yd: float, back_yd: float) -> None:
    hole = load_hole(f"par 4, 380; {words}; pins front, middle and back")
    heights = {pin.name: hole.height_at(pin.x_yd, pin.y_yd) for pin in hole.pins}
    assert heights["front"] == pytest.approx(front_yd, abs=0.02)
    assert heights["back"] == pytest.approx(back_yd, abs=0.02)
    lower = min(front_yd, back_yd)
    assert heights["middle"] == pytest.approx(lower, abs=0.02)  # at the foot of the bank
    assert any("half of the green" in sentence for sentence in hole.assumed)


def test_the_fall_of_a_green_goes_on_under_its_step() -> None:
    hole = load_hole("par 4, 380; green falls to the front 2%; two tier green, back 3 ft up")
    front, back = hole.green.bounds[1], hole.green.bounds[3]
    for y in (back - 3.0, back - 6.0):
        plane = 0.02 * (y - 0.5 * (front + back))
        assert hole.height_at(0.0, y) == pytest.approx(plane + 1.0, abs=0.03)


def test_over_a_pond_on_a_par_3_is_in_front_of_the_green() -> None:
    for words in ("par 3, 165 over a pond", "par 3, 165; over a pond"):
        one, other = load_hole(words), load_hole("par 3, 165; pond in front")
        spots = [(0.0, y) for y in range(20, 200, 3)]
        assert [one.surface_at(*s) for s in spots] == [other.surface_at(*s) for s in spots]
    assert load_hole("par 3, 165; over water 100 to 140").surface_at(0.0, 101.0) is W


def test_paces_are_yards() -> None:
    pin = load_hole("par 4, 380; green 28 deep; pin 6 paces on, 4 paces left").pin
    assert (pin.x_yd, pin.y_yd) == pytest.approx((-4.0, 372.0))
    metric = load_hole("par 4, 340 m; green front 330, back 352; pin 6 paces on").pin
    assert metric.y_yd == pytest.approx(330 / 0.9144 + 6.0, abs=0.02)  # the file has hundredths of a metre


@pytest.mark.parametrize(
    ("words", "one"),
    [
        ("bunkers left of the green", True),
        ("greenside bunkers right", True),
        ("two bunkers left of the green", False),
        ("bunkers both sides of the green", False),
        ("bunkers left at 230 and 260", False),
        ("two bunkers left and one right of the green", False),
        ("bunker left of the green", False),
    ],
)
def test_bunkers_without_a_number_that_become_one_are_said(words: str, one: bool) -> None:
    assumed = " ".join(hole_from_words(BASE + words).hole.assumed)
    assert ("one bunker, as no number was said" in assumed) is one


@pytest.mark.parametrize(
    ("words", "places"),
    [
        # 266 yards of sand was drawn, from 40 yards on
        ("bunker right 40 to 60 short of the green", [(311, 18, B), (302, 18, F), (330, 18, F), (100, 18, R)]),
        ("pond right, 200 to carry 240, edge 20", [(210, 25, W), (238, 25, W), (190, 25, R)]),  # it ended at 200
    ],
)
def test_both_ends_of_a_range(words: str, places: list[tuple[float, float, Surface]]) -> None:
    hole = hole_from_words("par 4, 380; " + words).hole
    near = [(at, offset, what) for at, offset, what in places if what is not F]
    assert surfaces(hole, near) == near


def test_a_bend_by_its_degrees_and_where_it_is() -> None:
    """ "dogleg 30 left 220": the 220 was dropped in silence."""
    same = hole_from_words("par 4, 380; dogleg left 30 at 220").hole.line
    assert hole_from_words("par 4, 380; dogleg 30 left 220").hole.line == same
    with pytest.raises(UsageError, match="Say where it bends"):
        hole_from_words("par 4, 380; dogleg 30 left 40")


@pytest.mark.parametrize(("words", "names"), [
    ("creeks across at 200 and 300", ["creek", "creek 2"]),
    ("ditches cross at 200 and 300", ["ditch", "ditch 2"]),
    ("lakes both sides 200 to 240", ["left lake", "right lake"]),
])  # fmt: skip
def test_one_of_several_waters_is_named_as_one(words: str, names: list[str]) -> None:
    written = tomllib.loads(hole_from_words(f"par 4, 380; {words}").toml_text)
    assert [area["name"] for area in written["penalty_area"]] == names


def test_what_out_counts_to_and_how_long_a_step_is_are_said() -> None:
    told = " ".join(hole_from_words("par 4, 380; creek 100 out; fairway 35 wide to 250, then 22").assumed)
    assert "to the middle of the green" in told and "the step at 250 yards over 5 yards" in told
