"""Words of a hole that contradict each other are said, and so is ground that nobody drew."""

import pytest

from simulator.hole import bundled_holes, load_hole
from simulator.hole.clashes import clashes, undrawn
from simulator.hole.words import hole_from_words
from simulator.report.checks import hole_text
from simulator.report.units import METRES

CLASHES = [
    ("par 4, 372; fairway 150 to 300, 30 wide; fairway 150 to 300, 20 wide", "The fairway and the fairway 2 are drawn for the same"),
    ("par 4, 372; out left 34; fairway 60 left, 20 right", "A third of the fairway is out of bounds (left"),
    ("par 5, 520; lake right 10 to 500; out right 5", "All of the lake is out of bounds (right boundary)"),
    ("par 5, 520; lake right 10 to 500; out right 5", "A quarter of the green is out of bounds"),
]


@pytest.mark.parametrize(("words", "sentence"), CLASHES)
def test_a_contradiction_is_said_with_every_answer(words, sentence):
    found = hole_from_words(words)
    for sentences in (found.hole.assumed, found.assumed, found.warnings):
        assert any(one.startswith(sentence) for one in sentences)
    assert sentence not in found.toml_text  # the file's reader finds it anew until the drawing is mended


@pytest.mark.parametrize(
    "words",
    [
        "par 4, 372; fairway 150 to 240, 30 wide; fairway 250 to 340, 20 wide",
        "par 4, 372; out left 34; fairway 28 wide",
        "par 5, 520; lake right 200 to 300, edge 20; out right 45",  # a boundary through a lake's far half
    ],
)
def test_holes_that_hang_together_say_nothing(words):
    assert clashes(load_hole(words)) == []


PLAIN = """
name = "Drawn"
par = 4
length_yd = 372
green = [{ front_yd = 358, depth_yd = 27, width_yd = 24 }]
"""
FAIRWAY = "fairway = [{ from_yd = 140, to_yd = 345, left_yd = -15, right_yd = 16 }]"
POND = (
    'penalty_area = [{ name = "pond", colour = "red", from_yd = 213, to_yd = 254, left_yd = 20, right_yd = 45 }]'
)
DRAWN = [
    (
        [FAIRWAY, POND, 'bunker = [{ name = "sunk", at_yd = 233, offset_yd = 30, depth_yd = 12, width_yd = 8 }]'],
        "All of the sunk lies under the pond (water) and plays as that: is that meant?",
    ),
    (
        [FAIRWAY, POND, 'bunker = [{ name = "shore", at_yd = 233, offset_yd = 20, depth_yd = 12, width_yd = 8 }]'],
        "Half of the shore lies under the pond (water) and plays as that: is that meant?",
    ),
    (
        [FAIRWAY, 'heavy_rough = [{ name = "hay", from_yd = 160, to_yd = 200, left_yd = -9, right_yd = 9 }]'],
        "All of the hay lies under the fairway and plays as that: is that meant?",
    ),
    (
        [FAIRWAY, 'trees = [{ name = "wood", from_yd = 200, to_yd = 300, left_yd = -48, right_yd = 80 }]'],
        "The line of play runs through the wood: is that meant?",
    ),
    (
        [FAIRWAY, 'out_of_bounds = [{ name = "lane", from_yd = 250, to_yd = 260, left_yd = -60, right_yd = 60 }]'],
        "The line of play runs out of bounds (lane): is that meant?",
    ),
    (
        [FAIRWAY, 'bunker = [{ name = "left bunker", at_yd = 252, offset_yd = 19, depth_yd = 12, width_yd = 8 }]'],
        "The left bunker is drawn right of the line of play: is that meant?",
    ),
    (
        ["fairway = [{ from_yd = 140, to_yd = 345, left_yd = 15, right_yd = 46 }]"],
        "All fairway lies right of the line of play: is that meant?",
    ),
    ([], "No fairway is drawn: the way from tee to green plays as rough."),
]


@pytest.mark.parametrize(("areas", "sentence"), DRAWN)
def test_a_drawing_that_plays_otherwise_than_it_looks_is_said(tmp_path, areas, sentence):
    file = tmp_path / "hole.toml"
    file.write_text("\n".join([PLAIN, *areas]))
    assert clashes(load_hole(file)) == [sentence]
    assert sentence in " ".join(hole_text(load_hole(file)).split())


@pytest.mark.parametrize(
    "areas",
    [
        [FAIRWAY, POND, 'bunker = [{ name = "far", at_yd = 233, offset_yd = -30, depth_yd = 12, width_yd = 8 }]'],
        [FAIRWAY, 'heavy_rough = [{ name = "hay", from_yd = 160, to_yd = 200, left_yd = -40, right_yd = 40 }]'],
        [FAIRWAY, 'bunker = [{ name = "left of two", at_yd = 252, offset_yd = 1, depth_yd = 12, width_yd = 8 }]'],
        [FAIRWAY, 'trees = [{ name = "left wood", from_yd = 200, to_yd = 300, left_yd = -48, right_yd = -20 }]'],
        [
            "fairway = [{ name = 'left half', from_yd = 140, to_yd = 345, left_yd = -30, right_yd = -8 }, "
            "{ name = 'right half', from_yd = 140, to_yd = 345, left_yd = 8, right_yd = 30 }]"
        ],
    ],
)
def test_a_drawing_that_plays_as_it_looks_is_not(tmp_path, areas):
    file = tmp_path / "hole.toml"
    file.write_text("\n".join([PLAIN, *areas]))
    assert clashes(load_hole(file)) == []


@pytest.mark.parametrize("name", bundled_holes())
def test_the_demo_holes_hang_together(name):
    assert clashes(load_hole(name)) == []


def test_undrawn_ground_is_said_by_side():
    hole = load_hole("par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34")
    assert set(undrawn(hole)) == {"right"}
    assert "Nothing is drawn more than 44 yd right of the line: it plays as rough" in hole_text(hole)
    assert "more than 40 m right" in hole_text(hole, METRES)
    assert "Nothing is drawn" not in hole_text(load_hole("par 4, 372; out both sides 40"))


def test_what_lies_behind_the_green_is_beside_no_part_of_the_hole():
    """ "Out 20 behind the green" reaches 200 yards to both sides there: the hole beside its line is bare."""
    assert undrawn(load_hole("par 4, 372; out 20 behind the green")) == pytest.approx({"left": 16.0, "right": 16.0})
    assert set(undrawn(load_hole("par 4, 372; dogleg left at 230; out left 34; out 20 behind the green"))) == {"right"}
