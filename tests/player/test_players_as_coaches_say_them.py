"""Players as coaches speak of them: a club that is in the bag, a driver that stays out of it, a miss to both sides."""

from __future__ import annotations

import pytest

from simulator.errors import FileError
from simulator.player import load_player
from simulator.player.reader import ALLOWED
from simulator.player.words import player_said


def test_a_club_outside_the_usual_set_is_in_the_bag_without_a_distance() -> None:
    player = load_player("lady, handicap 28, driver 140, 7-wood and 9-wood")
    names = [club.name for club in player.clubs]
    assert {"driver", "7-wood", "9-wood", "7-iron"} <= set(names)
    carry = {club.name: club.carry_yd for club in player.clubs}
    assert carry["5-wood"] > carry["7-wood"] > carry["9-wood"] > carry["6-iron"]
    assert "The 7-wood is in the bag with the level's carry: no distance was said." in player.assumed


def test_clubs_of_the_usual_set_alone_may_be_a_whole_set() -> None:
    with pytest.raises(FileError, match='a whole set is said "only driver'):
        player_said("handicap 20, driver, 7-iron, putter")


@pytest.mark.parametrize("words", ["can't use driver", "cannot hit his driver", "won't use a driver"])
def test_a_driver_that_is_not_used(words: str) -> None:
    table, _ = player_said(f"handicap 14, {words}, 3-wood 210")
    assert table["club"] == {"driver": {"use": "never"}, "3-wood": {"carry_yd": 210}}


@pytest.mark.parametrize("words", ["two-way miss", "2-way miss with the driver", "misses both sides with driver"])
def test_a_miss_to_both_sides_is_no_bias(words: str) -> None:
    """ "Two-way" was read as the figure 2 before the phrase was looked for."""
    table, granted = player_said(f"handicap 12, {words}")
    assert table == {"handicap": 12}
    assert any("no side missed more than the other" in one for one in granted)


def test_the_number_before_the_driver() -> None:
    assert player_said("scratch, 300 driver")[0]["club"] == {"driver": {"carry_yd": 300}}
    assert player_said("handicap 9, a 190 m driver, 7-iron 140")[0]["club"] == {
        "driver": {"carry_m": 190}, "7-iron": {"carry_yd": 140}}  # fmt: skip


@pytest.mark.parametrize(
    ("words", "advice"),
    [
        ("slices the driver 30 yards, aims 15 left", 'compare HOLE "driver 15 left"'),
        ("tops it one in five", "mishit_rate = 0.2"),
        ("low ball hitter", '"driver low"'),
        ("yips", "[putting]"),
        ("driver 205, driver accuracy 55%", "8 of 10 balls"),
        ("senior, 74", '"aged 74"'),
        ("good putter", "[putting] with handicap"),
    ],
)
def test_advice_stands_without_a_list_of_all_words(words: str, advice: str) -> None:
    """Four hundred letters of other words stood behind it."""
    with pytest.raises(FileError) as raised:
        player_said(f"handicap 20, {words}")
    told = str(raised.value)
    assert advice in told and ALLOWED not in told and len(told) < 260
