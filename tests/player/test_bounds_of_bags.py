"""How many clubs a file makes, which order their carries may have, and what of a club is drawn with what."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from simulator.errors import FileError, UsageError
from simulator.player.bag import player_from_table
from simulator.player.clubs import FEW_SECTIONS, WOODS_MAY
from simulator.player.doubt import doubt_of, moved
from simulator.player.habits import most_curve_yd
from simulator.player.model import MOST_CLUBS, Player


def bag(clubs: dict[str, dict[str, float]], **more: object) -> Player:
    return player_from_table({"name": "Ada", "handicap": 10, "club": clubs, **more}, "bag.toml")


def test_from_five_sections_on_they_are_the_whole_bag() -> None:
    irons = {f"{number}i": {} for number in range(5, 10)}
    assert len(irons) == FEW_SECTIONS and len(bag(irons).clubs) == FEW_SECTIONS
    del irons["5i"]
    assert len(bag(irons).clubs) == MOST_CLUBS


def test_a_wood_may_carry_a_little_farther_than_one_with_less_loft() -> None:
    for times, fine in ((WOODS_MAY - 0.002, True), (WOODS_MAY + 0.002, False)):
        clubs = {"driver": {"carry_yd": 200.0}, "3w": {"carry_yd": 200.0 * times}}
        if fine:
            assert bag(clubs).clubs[0].name == "3-wood"
        else:
            with pytest.raises(FileError, match="beyond 'driver'"):
                bag(clubs)


@pytest.mark.parametrize("by", [-1.0, 1.0])
def test_what_goes_with_a_carry_and_with_a_spread_is_moved_with_it(by: float) -> None:
    """A longer player's held-down shot and curve are longer too; a wilder one's mishits scatter more too."""
    club = replace(bag({"7i": {"carry_yd": 150.0, "low_carry_yd": 138.0}}, shape="fade").club("7i"))
    doubt = doubt_of(club)
    other = moved(club, {"carry_pct": by, "distance_log": by})
    longer, wider = math.exp(by * doubt.carry_pct / 100.0), math.exp(by * doubt.distance_log)
    assert other.carry_yd == pytest.approx(longer * 150.0) and other.low_carry_yd == pytest.approx(longer * 138.0)
    assert other.curve_yd == pytest.approx(longer * club.curve_yd) and club.curve_yd > 0.0
    assert other.distance_sd_pct == pytest.approx(wider * club.distance_sd_pct)
    assert other.mishit_distance_sd_pct == pytest.approx(wider * club.mishit_distance_sd_pct)
    assert (other.direction_sd_deg, other.mishit_rate) == pytest.approx((club.direction_sd_deg, club.mishit_rate))


def test_a_standard_set_round_given_clubs_ends_at_thirteen() -> None:
    """Two long irons and two lofted woods take the places of two hybrids only: the shortest wedges stay at home."""
    made = bag({name: {} for name in ("2-iron", "3-iron", "7-wood", "9-wood")})
    assert len(made.clubs) == MOST_CLUBS
    assert {"2-iron", "3-iron", "7-wood", "9-wood", "driver"} <= {club.name for club in made.clubs}


def test_no_club_curves_more_than_it_can_where_the_longest_curves_its_most() -> None:
    straight = bag({})
    most = most_curve_yd(straight.clubs[0])
    made = bag({}, shape="slice", curve_yd=0.999 * most)
    capped = [club.name for club in made.clubs if club.curve_yd == pytest.approx(most_curve_yd(club))]
    assert all(club.curve_yd <= most_curve_yd(club) for club in made.clubs)
    assert capped == ["3-wood"]  # in proportion to its carry it would be more than that


def test_no_bag_is_left_that_can_only_be_played_from_a_tee() -> None:
    table = {"name": "Ada", "handicap": 10, "clubs": ["driver", "3w", "7i"]}
    on_tees = {"driver": {"use": "tee only"}, "3w": {"use": "tee only"}}
    ada = player_from_table({**table, "club": on_tees}, "bag.toml")
    assert [club.name for club in ada.without(["3w"]).clubs] == ["driver", "7-iron"]
    with pytest.raises(UsageError, match="no club is left to play with from everywhere"):
        ada.without(["7i"])


def test_published_figures_end_at_36() -> None:
    for handicap, said in ((36.0, False), (36.1, True)):
        player = player_from_table({"name": "Ada", "handicap": handicap}, "bag.toml")
        assert any("level is extrapolated" in one for one in player.assumed) == said


def test_carries_far_from_the_level_are_told_from_the_least_far_to_the_farthest() -> None:
    """A yard too long, some much too short: the range goes by how far, not by the sign."""
    base = {club.name: club.carry_yd for club in bag({}).clubs}
    shares = {"driver": 1.30, "5-iron": 0.70, "6-iron": 0.66, "7-iron": 0.55}
    told = bag({name: {"carry_yd": round(base[name] * share, 1)} for name, share in shares.items()}).assumed
    (line,) = (one for one in told if one.startswith("Far from the carries"))
    assert "4 clubs in all, 30 % longer to 45 % shorter" in line
