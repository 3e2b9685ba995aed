"""Words of a hole that contradict each other are said, and so is ground that nobody drew."""

import pytest

from simulator.hole import bundled_holes, load_hole
from simulator.hole.clashes import clashes, undrawn
from simulator.hole.words import hole_from_words
from simulator.report.checks import hole_text
from simulator.report.units import METRES

CLASHES = [
    ("par 4, 372; fairway 30 wide; fairway 20 wide", "The fairway and the fairway 2 are drawn for the same"),
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


@pytest.mark.parametrize("name", bundled_holes())
def test_the_demo_holes_hang_together(name):
    assert clashes(load_hole(name)) == []


def test_undrawn_ground_is_said_by_side():
    hole = load_hole("par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34")
    assert set(undrawn(hole)) == {"right"}
    assert "Nothing is drawn more than 44 yd right of the line: it plays as rough" in hole_text(hole)
    assert "more than 40 m right" in hole_text(hole, METRES)
    assert "Nothing is drawn" not in hole_text(load_hole("par 4, 372; out both sides 40"))
