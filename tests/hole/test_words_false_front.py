"""Words of a coach that were refused: a false front, a dogleg round a lake; and water on two sides by its sides."""

from __future__ import annotations

import pytest

from simulator.hole import load_hole
from simulator.hole.surfaces import Surface


@pytest.mark.parametrize("words", ["false front", "green with a false front", "green 28 deep, false front",
                                   "bunkers both sides of the green, false front"])  # fmt: skip
def test_a_false_front_falls_off_the_front_of_the_green(words: str) -> None:
    hole = load_hole(f"par 4, 380; {words}")
    (part,) = (one for one in hole.features if one.part_of)
    assert part.name == "false front" and part.slope.percent == 6.0
    assert part.slope.falls_bearing_deg == pytest.approx(180.0)
    assert part.area.bounds[1] == pytest.approx(366.0, abs=0.1) and part.area.bounds[3] == pytest.approx(371.0)
    assert hole.surface_at(0.0, 368.0) is Surface.GREEN
    # it drops towards the player, and its back edge is as high as the green behind it
    assert hole.height_at(0.0, 366.5) < hole.height_at(0.0, 370.5) - 0.2
    assert hole.height_at(0.0, 370.9) == pytest.approx(hole.height_at(0.0, 376.0), abs=0.05)
    assert any("false front" in line and "6 %" in line for line in hole.assumed)


def test_a_hole_that_bends_round_water_or_trees_has_them_inside_the_corner() -> None:
    for area in ("lake", "wood", "pond called Duck Pond"):
        for bend in ("dogleg left 50 at 220", "dogleg left at 220"):
            round_it = load_hole(f"par 4, 400; {bend} round a {area}")
            inside = load_hole(f"par 4, 400; {bend}; {area} inside the corner")
            assert [one.name for one in round_it.features] == [one.name for one in inside.features]
            for one, other in zip(round_it.features, inside.features, strict=True):
                assert one.area.equals(other.area)


def test_water_on_two_sides_is_called_by_its_sides() -> None:
    """ "Water", "right water" and "water 2" were three names for three sides of a green."""
    names = {
        "water left of the green; water right of the green": ["left water", "right water"],
        "water left of the green; water behind the green": ["left water", "water"],
        "pond left of the green": ["pond"],
        "pond left 100 to 130; pond right 100 to 130; lake behind the green": ["left pond", "right pond", "lake"],
    }
    for words, called in names.items():
        hole = load_hole(f"par 3, 160; {words}")
        assert [one.name for one in hole.features if one.relief] == called, words
