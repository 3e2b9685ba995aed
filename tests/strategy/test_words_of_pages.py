"""The tables of words on the pages for users: every example in them is understood."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from typing import Any

import pytest
from on_withy_drain import played
from written import GUIDE

from simulator.conditions import conditions_from
from simulator.errors import SimulatorError
from simulator.hole import load_hole
from simulator.player import load_player
from simulator.strategy.by_fringe import fringed
from simulator.strategy.places import place


def rows(page: str, heading: str) -> list[list[str]]:
    """The cells of all tables of a page that have this heading."""
    found = []
    for table in GUIDE[page].split(heading)[1:]:
        found += [row.split("|")[1:-1] for row in table.split("\n\n")[0].splitlines()[2:]]
    return found


def words(cells: Iterable[str]) -> list[str]:
    return [word.strip('"') for cell in cells for word in re.findall(r"`([^`]+)`", cell)]


def understood(read: Callable[[str], Any], *tried: str) -> bool:
    """One of some words is read."""
    for text in tried:
        try:
            read(text)
        except SimulatorError:
            continue
        return True
    return False


PLACES = [
    word for word in words(cells[1] for cells in rows("examples/ASKING.md", "| Counted from |"))
    if word not in ("middle", "back")  # these stand for "front"
]  # fmt: skip


@pytest.mark.parametrize("words", PLACES)
def test_a_place_is_found_on_a_demo_hole(words: str) -> None:
    holes = [load_hole(name) for name in ("withy-drain", "long-sluice")]
    assert any(understood(lambda text, hole=hole: place(text, fringed(hole, text)), words) for hole in holes)


@pytest.mark.parametrize("words", words(cells[1] for cells in rows("examples/PLAYERS.md", "| What | Say,")))
def test_a_player_is_understood(words: str) -> None:
    level = "handicap 15, driver 205"
    assert understood(load_player, words, f"handicap 15, {words}", f"{level}, {words}", f"{level} {words}")


def the_day() -> list[Any]:
    """Every option of the day with every example of it; a row without an option is of the one above."""
    found, option = [], ""
    for first, second in rows("examples/ASKING.md", "| Option | Say, for example |"):
        option = next(iter(re.findall(r"`--([a-z-]+)", first)), option)
        found += [(option.replace("-", "_"), word) for word in words([second]) if not word.startswith("--")]
    return found


@pytest.mark.parametrize(("option", "words"), the_day())
def test_a_day_is_understood(option: str, words: str) -> None:
    usual: dict[str, Any] = {"wind": "10 mph against", "y_bearing_deg": 68.0, "altitude": "500 ft"}
    conditions_from(**(usual | {option: words}))


NOTES = words(cells[0] for cells in rows("examples/REVIEW.md", "| Note | Read as |"))


@pytest.mark.parametrize("words", NOTES)
def test_a_note_is_understood(words: str) -> None:
    before = (
        "", "driver ", "driver to ", "driver to 160 out; ", "driver to 140 out; ",
        "driver to 160 out; 7i to 20 ft; ", "driver to 160 out; 7i to 40 out; chip to 20 ft; ",
    )  # fmt: skip
    assert understood(played, *(text + words for text in before))


def test_there_are_many_of_them() -> None:
    assert len(PLACES) > 15 and len(the_day()) > 20 and len(NOTES) > 30
