"""The ways golfers write a club (common practice)."""

import pytest

from simulator.physics.launch import KINDS
from simulator.player import level, load_player
from simulator.player.names import club_name, kind_of


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("driver", "driver"), ("DR", "driver"), ("1 wood", "driver"),
        ("3w", "3-wood"), ("3-Wood", "3-wood"), ("three wood", "3-wood"), ("3 WOOD", "3-wood"),
        ("fivewood", "5-wood"), ("4h", "4-hybrid"), ("four-hybrid", "4-hybrid"), ("hybrid", "hybrid"),
        ("7h", "7-hybrid"), ("eight hybrid", "8-hybrid"), ("11w", "11-wood"), ("eleven wood", "11-wood"),
        ("wood 11", "11-wood"),
        ("7i", "7-iron"), ("7 iron", "7-iron"), ("seven_iron", "7-iron"),
        ("PW", "pitching wedge"), ("pitching-wedge", "pitching wedge"), ("aw", "gap wedge"),
        ("sw", "sand wedge"), ("L", "lob wedge"), ("56", "56-degree wedge"), ("56°", "56-degree wedge"),
        ("52 degrees", "52-degree wedge"), ("60-degree wedge", "60-degree wedge"), ("putter", "putter"),
    ],
)  # fmt: skip
def test_spellings(text, name):
    assert club_name(text) == name


@pytest.mark.parametrize(
    "text", ["", "11-iron", "1i", "8-wood", "mashie", "25", "70-degree", "iron", "wedge", "7"]
)
def test_not_a_club(text):
    assert club_name(text) is None


@pytest.mark.parametrize(
    ("loft", "kind"),
    [(46, "pitching wedge"), (50, "gap wedge"), (52, "gap wedge"), (54, "sand wedge"), (58, "lob wedge")],
)
def test_wedges_by_loft(loft, kind):
    assert kind_of(f"{loft}-degree wedge") == kind


def test_every_kind_is_a_name():
    for kind in KINDS:
        assert club_name(kind) == kind and kind_of(kind) == kind
    assert kind_of("mashie") is None


def test_clubs_of_womens_and_seniors_sets_are_found_in_a_bag():
    player = load_player("handicap 28, woman, 7-hybrid 110, 11 wood 125, 8h 101")
    carry = {club.name: club.carry_yd for club in player.clubs}
    assert (carry["11-wood"], carry["7-hybrid"], carry["8-hybrid"]) == (125.0, 110.0, 101.0)
    assert player.club("eleven").name == "11-wood" and player.club("eight hybrid").name == "8-hybrid"
    # 11-wood and 5-hybrid are told apart by a yard or so in sets (common practice), 8-hybrid and 7-iron by half a club
    base = level(28, "woman")
    assert base.carry_yd("11-wood") == pytest.approx(base.carry_yd("5-hybrid"), abs=2.0)
    assert base.carry_yd("8-iron") < base.carry_yd("8-hybrid") < base.carry_yd("7-iron")


def test_woods_between_the_printed_ones_are_found_in_a_bag():
    player = load_player("handicap 14, driver 210, mini driver 204, 4w 188, 9 hybrid 118")
    carry = {club.name: club.carry_yd for club in player.clubs}
    assert (carry["2-wood"], carry["4-wood"], carry["9-hybrid"]) == (204.0, 188.0, 118.0)
    assert not {"3-wood", "5-wood"} & set(carry)  # half a club away: nobody carries both, so they are not filled in
    assert player.club("two wood").name == "2-wood" and player.club("four wood").name == "4-wood"
    base = level(14)
    between = [base.carry_yd(kind) for kind in ("driver", "2-wood", "3-wood", "4-wood", "5-wood")]
    assert between == sorted(between, reverse=True)
    assert base.carry_yd("9-iron") < base.carry_yd("9-hybrid") < base.carry_yd("8-iron")
