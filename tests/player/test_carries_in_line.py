"""Carries of clubs nobody gave: between the given ones, whatever their order; wedges by their loft."""

from __future__ import annotations

import itertools

import pytest

from simulator.player.bag import player_from_table
from simulator.player.fill import CarryLine, level_carry_yd
from simulator.player.levels import level


def test_a_hybrid_past_an_iron_turns_no_other_club_round() -> None:
    """The level has the 4-hybrid longer than the 5-iron; this player's goes shorter: what lies between rises."""
    line = CarryLine({"a": 150.0, "b": 140.0, "c": 180.0}, {"a": 140.0, "b": 150.0, "c": 180.0})
    found = [line(yards) for yards in (120.0, 140.0, 145.0, 150.0, 165.0, 180.0, 200.0)]
    assert all(one <= other for one, other in itertools.pairwise(found))
    assert found[1] == found[3] == 150.0 and found[5] == 180.0


def test_a_wedge_of_more_loft_than_any_kind_goes_shorter_yet() -> None:
    base = level(10.0)
    lofts = [f"{loft}-degree wedge" for loft in (58, 60, 62, 64)]
    found = [level_carry_yd(name, "lob wedge", base) for name in lofts]
    steps = [one - other for one, other in itertools.pairwise(found)]
    assert found[1] == pytest.approx(base.carry_yd("lob wedge"))
    assert steps[1] == pytest.approx(steps[0]) and steps[2] == pytest.approx(steps[0]) and steps[0] > 1.0


def test_without_a_driver_the_spread_of_the_longest_club_goes_by_what_a_driver_would_carry() -> None:
    """A bag whose irons all carry a tenth more than the level's would have a driver that does: the same iron spreads
    less wide than in a bag whose driver is the level's own."""
    base = level(10.0)
    irons = ["4-hybrid", "5-iron", "6-iron", "7-iron", "8-iron", "9-iron"]
    yards = {name: 1.25 * base.carry_yd(name) for name in irons}
    table = {"name": "Ada", "handicap": 10, "club": {name: {"carry_yd": far} for name, far in yards.items()}}
    longest = player_from_table(table, "bag.toml").clubs[0]
    own = base.spread("4-hybrid", yards["4-hybrid"], 1.25 * base.driver_carry_yd)
    level_s = base.spread("4-hybrid", yards["4-hybrid"], base.driver_carry_yd)
    assert longest.direction_sd_deg == pytest.approx(own["direction_sd_deg"], rel=1e-6)
    assert own["direction_sd_deg"] != pytest.approx(level_s["direction_sd_deg"], rel=0.01)
