"""What a player in words or in a file says, at the bounds between reading and refusing."""

from __future__ import annotations

import pytest

from simulator.errors import FileError
from simulator.player import load_player
from simulator.player.bag import player_from_table


@pytest.mark.parametrize(("number", "fine"), [(53, True), (54, False), (58, False), (59, True)])
def test_a_number_that_may_be_a_sand_wedge_s_loft_is_not_its_carry(number: int, fine: bool) -> None:
    """Sand wedges have 54 to 58 degrees: 53 and 59 are yards."""
    words = f"handicap 20, sand wedge {number}"
    if fine:
        assert load_player(words).club("sand wedge").carry_yd == number
    else:
        with pytest.raises(FileError, match="may be its loft or its carry"):
            load_player(words)


@pytest.mark.parametrize(("words", "middle"), [("handicap 10 to 20", 15.0), ("handicap 10 to 21", None)])
def test_a_range_of_handicaps_is_ten_wide_at_the_most(words: str, middle: float | None) -> None:
    if middle is not None:
        assert load_player(words).handicap == middle
    else:
        with pytest.raises(FileError, match="too far apart"):
            load_player(words)


def test_a_short_game_is_wider_with_mishits_too() -> None:
    """Spreads of part swings, solid and duffed alike, are those of the level times the short game's factor."""
    plain, wide = (player_from_table({"handicap": 10, **more}, "bag.toml").part for more in ({}, {"short_game": 1.5}))
    for name in ("direction_sd_deg", "distance_sd_pct", "mishit_distance_sd_pct"):
        assert getattr(wide, name) == pytest.approx(1.5 * getattr(plain, name))
    assert wide.mishit_rate == pytest.approx(plain.mishit_rate)


@pytest.mark.parametrize("carries", [[10.0, 10.0, 40.0], [10.0, 40.0, 30.0]])
def test_carries_of_a_curve_rise(carries: list[float]) -> None:
    part = {"carry_yd": carries, "distance_sd_pct": [20.0, 12.0, 8.0]}
    with pytest.raises(FileError, match="carries that do not rise"):
        player_from_table({"handicap": 10, "part": part}, "bag.toml")
