"""Loose names that fit two clubs of a bag, the nearest club of another family, totals with no carry in them."""

from __future__ import annotations

import pytest

from simulator.errors import FileError
from simulator.player.bag import player_from_table
from simulator.player.names import like_it, same_club
from simulator.player.runs import LONGEST_YD, SHORTEST_YD, carry_of_total, run_yd


def test_a_number_that_two_clubs_have_names_neither_but_for_the_iron() -> None:
    woods = {"7-wood": "7-wood", "7-hybrid": "7-hybrid"}
    assert same_club("7", woods) is None and same_club("seven", woods) is None
    assert same_club("7", {**woods, "7-iron": "7-iron"}) == "7-iron"
    assert same_club("7", {"7-wood": "7-wood", "driver": "driver"}) == "7-wood"


def test_a_kind_of_wedge_that_two_clubs_are_names_neither() -> None:
    sand = {"54-degree wedge": "sand wedge", "56-degree wedge": "sand wedge"}
    assert same_club("sand", sand) is None and same_club("sw", sand) is None
    assert same_club("sand", {"56-degree wedge": "sand wedge", "52-degree wedge": "gap wedge"}) == "56-degree wedge"


def test_a_club_of_the_same_family_is_nearer_than_one_of_nearer_loft() -> None:
    """A 5-wood of 18 degrees: the 3-wood of 15 rather than a hybrid of 19.5; a hybrid of 18.5 wins all the same."""
    assert "'3-wood'" in like_it("5-wood", {"3-wood": "3-wood", "3-hybrid": "3-hybrid"})
    assert "'3-hybrid'" in like_it("7-wood", {"3-wood": "3-wood", "3-hybrid": "3-hybrid"})
    assert "'4-hybrid'" in like_it("4-iron", {"6-iron": "6-iron", "4-hybrid": "4-hybrid"})  # of one family here


@pytest.mark.parametrize("kind", ["driver", "7-iron"])
def test_a_total_with_no_carry_in_it_gives_the_nearest_that_is_tried(kind: str) -> None:
    assert carry_of_total(kind, 1000.0) == LONGEST_YD
    assert carry_of_total(kind, 1.0) == SHORTEST_YD
    carry = carry_of_total(kind, 150.0)
    assert carry + float(run_yd(kind, carry)) == pytest.approx(150.0, abs=1e-4)


def test_a_total_beyond_all_carries_is_refused_in_one_line() -> None:
    with pytest.raises(FileError, match="a total with a carry of 5 to 400 yd in it"):
        player_from_table({"handicap": 10, "club": {"driver": {"total_yd": 449.0}}}, "bag.toml")
