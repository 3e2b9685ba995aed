"""Pins as coaches say them: over the front bunker, hard left."""

from __future__ import annotations

import pytest

from simulator.errors import UsageError
from simulator.hole import load_hole, pin_from_words
from simulator.hole.surfaces import Surface

EEL, WITHY = load_hole("eel-trap"), load_hole("withy-drain")


@pytest.mark.parametrize("words", ["front pin over the bunker", "just over the front bunker", "behind the short bunker"])
def test_a_pin_over_the_bunker_in_front(words: str) -> None:
    moved = pin_from_words(EEL, words)
    station, offset = EEL.station_offset(*moved.pin.xy_yd)
    bunker = next(one for one in EEL.features if one.name == "short bunker")
    along, across = EEL.station_offset(*bunker.middle)
    assert abs(offset - across) < 2.0 and 8.0 < station - along < 20.0
    assert EEL.surface_at(*moved.pin.xy_yd) is Surface.GREEN
    assert moved.assumed[-1] == f"Pin {words!r}: taken as 5 paces on behind the short bunker."


def test_a_pin_over_a_bunker_at_the_corner_stays_on_the_green() -> None:
    station, offset = WITHY.station_offset(*pin_from_words(WITHY, "front pin over the bunker").pin.xy_yd)
    assert 390.0 < station < 400.0 and 5.0 < offset < 12.0  # the bunker is 10 to 20 right, the green 14


def test_a_pin_behind_a_bunker_beside_the_green_is_asked_for() -> None:
    with pytest.raises(UsageError, match="one in front of it is meant; allowed: its name") as refused:
        pin_from_words(EEL, "tucked behind the left bunker")
    assert "\n" not in str(refused.value)
    with pytest.raises(UsageError, match=r"by the green .none."):
        pin_from_words(load_hole("par 3, 150"), "over the bunker")


def test_hard_left_is_as_tucked_left() -> None:
    for words in ("hard left", "sucker pin left"):
        moved = pin_from_words(EEL, words)
        assert moved.pin.xy_yd == pin_from_words(EEL, "tucked left").pin.xy_yd
        assert "1 of 9 parts" in moved.assumed[-1]
