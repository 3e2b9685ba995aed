"""Out of bounds and water that a yardage page draws and has no row for are named there."""

from __future__ import annotations

import matplotlib.pyplot as plt
import pytest

from simulator.hole.words import hole_from_words
from simulator.hole.yardage import measure
from simulator.report.cardpages import card_page
from simulator.report.showpage import show_page, show_text
from simulator.report.units import METRES


def _text(words: str, units=None) -> str:
    yardage = measure(hole_from_words(f"par 4, 372; {words}").hole)
    return " ".join((show_text(yardage) if units is None else show_text(yardage, units)).split())


def test_a_boundary_at_the_edge_of_the_page_is_named() -> None:
    """Out of bounds right 60 was hatched on the picture, with no letter, and stood in no table."""
    said = "No row, 60 yd or more from the line: right boundary."
    assert said in _text("out right 60") and "right boundary out of bounds" not in _text("out right 60")
    assert "No row, 55 m or more from the line: right boundary." in _text("out right 60", METRES)
    assert "pond and left boundary" in _text("out left 70; pond right 200 to 240, edge 80")
    yardage = measure(hole_from_words("par 4, 372; out right 60").hole)
    for figure in (show_page(yardage), card_page(yardage)):  # the pocket card hatched it without a word too
        assert said in " ".join(" ".join(text.get_text() for text in figure.texts).split())
        plt.close(figure)


@pytest.mark.parametrize("words", ["out right 50", "pond behind the green", "out 45 behind the green", "trees right 70",
                                   "pond right 200 to 240, edge 110", "fairway 28 wide"])  # fmt: skip
def test_nothing_is_named_that_has_a_row_or_is_far_away(words: str) -> None:
    assert "No row" not in _text(words)
