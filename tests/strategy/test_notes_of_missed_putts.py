"""Notes of putts that missed, balls simply "in" or "water", and hole numbers with a dash or a semicolon."""

from __future__ import annotations

from dataclasses import replace

import pytest

from simulator.errors import UsageError
from simulator.strategy.review.notes import Clause, Putts, Swing, read_notes
from simulator.strategy.review.numbered import read_round

TO_GREEN = "driver to 160 out; 7i to 10 ft; "


def _clauses(text: str) -> list[Clause]:
    """Without how each was said."""
    return [replace(one, said="") for one in read_notes(text).clauses]


@pytest.mark.parametrize(
    ("noted", "putts"),
    [
        ("missed; tap in", 2), ("missed it; tapped in", 2), ("lipped out; tap-in", 2), ("just missed, tap in", 2),
        ("missed the putt; gimme", 2), ("burned the edge; in", 2), ("missed; missed; tap in", 3),
        ("lipped out; missed it; in", 3), ("in", 1), ("went in", 1),
        ("missed, in", 2), ("lipped out, missed, went in", 3),
    ],
)  # fmt: skip
def test_putts_that_missed_are_counted_with_the_one_that_went_in(noted: str, putts: int) -> None:
    """ "Where did it come to?" was asked of a tap-in."""
    told = _clauses(TO_GREEN + noted)
    assert told[:-1] == _clauses(TO_GREEN + "1 putt")[:-1]
    last = told[-1]
    assert isinstance(last, Putts) and (last.count, last.first) == (putts, None)


@pytest.mark.parametrize("noted", ["missed", "missed; made 3 footer", "missed; picked up", "lipped out; chip to 3 ft"])
def test_a_putt_that_missed_by_nobody_knows_what_is_still_asked_about(noted: str) -> None:
    with pytest.raises(UsageError, match="where did it come to"):
        read_notes(TO_GREEN + noted)


def test_a_missed_green_is_no_putt() -> None:
    with pytest.raises(UsageError, match="where did it come to"):
        read_notes("driver to 160 out; 7i missed; chip to 3 ft; in")


def test_an_arrow_before_in_parts_strokes() -> None:
    assert _clauses("driver to 160 out -> 7i to 10 ft -> in") == _clauses(TO_GREEN + "1 putt")


@pytest.mark.parametrize(
    ("noted", "meant"),
    [
        ("driver water; drop 180 out; 7i to 10 ft; 1 putt", "driver into water; drop 180 out; 7i to 10 ft; 1 putt"),
        ("3w, pond; drop 180 out; 7i to 10 ft; 1 putt", "3w into pond; drop 180 out; 7i to 10 ft; 1 putt"),
        ("dr fairway; 7i to 10 ft; 1 putt", "driver fairway; 7i to 10 ft; 1 putt"),
        ("driver to 160 out; 7i to the front; 1 putt", "driver to 160 out; 7i to the front edge; 1 putt"),
    ],
)
def test_the_same_strokes(noted: str, meant: str) -> None:
    told, asked = _clauses(noted), _clauses(meant)
    if noted.startswith("dr "):
        assert isinstance(told[0], Swing) and isinstance(asked[0], Swing)
        told[0] = replace(told[0], club=asked[0].club)
    assert told == asked


@pytest.mark.parametrize("mark", [":", ".", ")", ";", " -", " –"])
def test_a_hole_begins_with_its_number(mark: str) -> None:
    found = read_round(f"1{mark} driver to 160 out; 7i to 20 ft\n2 putts\n2{mark} 6i to 20 ft; 3 putts\n")
    assert list(found) == [1, 2] and [len(one.clauses) for one in found.values()] == [3, 2]


def test_a_club_is_no_number_of_a_hole() -> None:
    found = read_round("1: driver to 200 out\n3-wood to 60 out\n5 - iron to 20 ft\n2 putts\n")
    assert list(found) == [1] and len(found[1].clauses) == 4
