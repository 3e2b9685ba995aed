"""A player dictated in sentences is the player of the same words between commas."""

from __future__ import annotations

import pytest

from simulator.player.words import player_table


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("12 hcp. Driver 240. 6i 165. Hooks it.", "handicap 12, driver 240, 6-iron 165, hook"),
        ("Called Ada. Handicap 12. Misses short right.", "called Ada, handicap 12, miss short right"),
        ("Handicap 9.5. Driver 230 total. No 3-wood.", "handicap 9.5, driver 230 total, no 3-wood"),
        ("handicap 18, driver 210, slices everything", "handicap 18, driver 210, slice"),
    ],
)
def test_full_stops_and_everything(said: str, meant: str) -> None:
    """A full stop behind a word was pointed at as not understood."""
    shape = "hook" if "hook" in meant else "slice" if "slice" in meant else None
    told, asked = player_table(said), player_table(meant)
    # a shape behind a club's comma is every club's
    assert told == asked and (shape is None or shape in str(told))
