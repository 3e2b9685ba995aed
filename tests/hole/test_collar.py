"""The ring of fringe round a green: its ground, and what it is not taken for."""

from __future__ import annotations

import math

import pytest
import shapely
from small_games import hole_of, straight_hole

from simulator.errors import FileError
from simulator.hole.clashes import clashes
from simulator.hole.collar import COLLAR_YD, FRINGE, with_collars
from simulator.hole.cuts import fairways
from simulator.hole.model import Feature, Hole
from simulator.hole.surfaces import Surface
from simulator.hole.words.build import hole_from_words
from simulator.hole.yardage import measure


def hole_with(collar: str = "", more: str = "") -> Hole:
    """A straight par 4 to a round green, 30 yards across, 420 yards on."""
    green = f"green = [{{ front_yd = 405, depth_yd = 30, width_yd = 30{collar} }}]\n"
    return hole_of(f'name = "A"\npar = 4\nlength_yd = 420\n{green}{more}')


def ring_of(hole: Hole) -> Feature:
    return next(one for one in hole.features if one.is_fringe)


def test_so_wide_on_every_side_under_the_green_and_its_bunkers() -> None:
    """A round green of radius 15 and a ring of 3: the area between two circles, to what a drawn circle's corners lose."""
    more = "bunker = [{ at_yd = 420, offset_yd = 18, depth_yd = 6, width_yd = 6 }]\n"
    hole = hole_with(", collar_yd = 3", more)
    ring = ring_of(hole)
    between = hole.uncovered(ring).area + 0.5 * math.pi * 9.0  # about half the bunker lies on it
    assert between == pytest.approx(math.pi * (18.0**2 - 15.0**2), rel=0.03)
    for off_yd, ground in ((14.5, "GREEN"), (15.5, "FAIRWAY"), (17.5, "FAIRWAY"), (18.5, "ROUGH")):
        for turn in (0.0, 2.0, 4.0):
            x, y = off_yd * math.sin(turn), 420.0 + off_yd * math.cos(turn)
            assert hole.surface_at(x, y) is Surface[ground], (off_yd, turn)
    assert hole.surface_at(16.0, 420.0) is Surface.BUNKER


def test_it_is_no_fairway_of_the_hole() -> None:
    """Neither measured, nor pointed at, nor said twice; a hole with nothing else mown has no fairway."""
    hole = hole_with(", collar_yd = 3")
    bare = straight_hole(420)
    assert clashes(hole) == clashes(bare)
    assert any("No fairway is drawn" in said for said in clashes(hole))
    assert fairways(hole, 403.0) == [] and measure(hole).widths == measure(bare).widths == ()


@pytest.mark.parametrize("found", ["-1", "11", '"wide"', "nan"])
def test_a_width_that_is_none_is_refused(found: str) -> None:
    with pytest.raises(FileError, match=r"green.*collar_yd: found .*; allowed: .*(0 to 10|number)"):
        hole_with(f", collar_yd = {found}")


def test_an_island_has_its_fringe() -> None:
    """Water all round a green begins where its fringe ends, not on it."""
    hole = hole_from_words("par 3, 150; moat 20 wide round the green; fringe 3 wide; green 24 deep, 24 wide").hole
    x = 12.0 + 1.5
    assert hole.surface_at(x, 150.0) is Surface.FAIRWAY and hole.surface_at(x + 3.0, 150.0) is Surface.WATER


def test_words_give_it_a_width_or_the_usual_one() -> None:
    for words, wide_yd, sure in (
        ("fringe 3 wide", 3.0, True), ("3 yard collar", 3.0, True), ("fringe 3", 3.0, True), ("collar all round the green", COLLAR_YD, False),
        ("fringe round the green", COLLAR_YD, False),
    ):  # fmt: skip
        read = hole_from_words(f"par 4, 372; green 24 deep, 20 wide; {words}")
        reach = ring_of(read.hole).area.bounds[2] - read.hole.green.bounds[2]
        assert reach == pytest.approx(wide_yd, abs=0.02), words
        assert any("of fringe all round" in said for said in read.assumed) is not sure, words


def test_its_width_goes_with_it_behind_the_green_too() -> None:
    """ "Green 24 deep with a 3 yard collar" asked whether the green was 3 deep or wide."""
    for words, wide_yd, deep_yd in (
        ("green 24 deep with a 3 yard collar", 3.0, 24.0), ("green 24 deep, 20 wide with a collar", COLLAR_YD, 24.0),
        ("green 26 deep and 20 wide, 4 yd fringe", 4.0, 26.0),
    ):  # fmt: skip
        text = hole_from_words(f"par 4, 372; {words}").toml_text
        assert f"depth_yd = {deep_yd:g}" in text and f"collar_yd = {wide_yd:g}" in text, words


def test_every_green_that_has_none_gets_one_and_one_alone() -> None:
    hole = with_collars(straight_hole(420), 2.5)
    assert with_collars(hole) is hole
    assert ring_of(hole).name == FRINGE and "2.5 yards of fringe" in hole.assumed[-1]
    assert shapely.Point(0.0, 420.0 + 17.0).within(ring_of(hole).area)
    named = with_collars(straight_hole(420, more='rough = [{ name = "Fringe", at_yd = 300, depth_yd = 9, width_yd = 9 }]\n'))
    assert ring_of(named).name == "fringe of green"
