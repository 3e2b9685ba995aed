"""A ball that was punched out of the trees is not out of bounds: where it went is asked for."""

from __future__ import annotations

import pytest
from on_withy_drain import USUAL, WITHY

from simulator.errors import UsageError
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import PlayedHole, strokes_of

IN_TREES = "driver to 95 out, right trees; {}; 8-iron to 10 ft; 2 putts"
IN_SAND = "driver to 150 out; 7-iron in the left greenside bunker; {}; chip to 3 ft; 1 putt"


def played(text: str) -> PlayedHole:
    return strokes_of(read_notes(text), WITHY, USUAL)


@pytest.mark.parametrize(
    ("notes", "stroke", "of"),
    [
        (IN_TREES, "punch out", " of the trees"), (IN_TREES, "7-iron chipped out", " of the trees"),
        (IN_TREES, "7-iron out left", " of the trees"), (IN_SAND, "sw out", " of the bunker"),
        (IN_SAND, "splash out", " of the bunker"), ("driver to 150 out, left rough; {}; 8-iron to 10 ft; 2 putts", "hacked out", ""),
    ],
)  # fmt: skip
def test_out_of_trouble_is_asked_about(notes: str, stroke: str, of: str) -> None:
    """Each cost a penalty stroke nobody had, and the next was played from the same place."""
    bunker = next(f.name for f in WITHY.features if "bunker" in f.name)
    with pytest.raises(UsageError, match=f"out of bounds, or out{of} to where"):
        played(notes.format(stroke).replace("the left greenside bunker", bunker))


@pytest.mark.parametrize(
    ("text", "score"),
    [
        ("driver out; driver to 150 out; 8-iron to 10 ft; 2 putts", 6),
        ("driver out right; driver to 150 out; 8-iron to 10 ft; 2 putts", 6),
        ("driver to 150 out; 7-iron out right; 7-iron to 10 ft; 2 putts", 6),
        (IN_TREES.format("punch out of bounds"), 6), (IN_TREES.format("punch ob"), 6),
        (IN_TREES.format("punch out to 90 out, fairway"), 5), (IN_TREES.format("punch lost"), 6),
    ],
)  # fmt: skip
def test_out_of_bounds_and_out_to_a_place_are_as_they_were(text: str, score: int) -> None:
    assert played(text).score == score
