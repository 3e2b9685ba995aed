"""Clubs whose map and plays disagree are named in one warning, not one each."""

from __future__ import annotations

import re

from simulator import load_player, plan
from simulator.hole.words import hole_from_words
from simulator.strategy.answering import unsure_words


def test_the_words() -> None:
    assert unsure_words({}) == []
    (one,) = unsure_words({"5-iron": 0.126})
    assert one == "the 5-iron's score is less sure than its error says: value map and sequences differ by 0.13 strokes"
    (more,) = unsure_words({"5-iron": 0.09, "9-iron low": 0.126, "gap wedge": 0.1})
    assert more.startswith("the scores of the 5-iron, 9-iron low and gap wedge are less sure")
    assert more.endswith("differ by up to 0.13 strokes")


def test_an_island_is_warned_of_once() -> None:
    """Four clubs on an island green gave four lines of the same words."""
    hole = hole_from_words("par 3, 148; island green; pin back left").hole
    answer = plan(hole, load_player("barnaby"), sequences=3_000, seed=1, quick=True, threads=2)
    about = [line for line in answer.warnings if "less sure" in line]
    assert len(about) == 1 and re.search(r"^the scores of the .* and .* differ by up to 0\.\d\d strokes$", about[0])
