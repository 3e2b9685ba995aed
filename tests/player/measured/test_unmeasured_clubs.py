"""Clubs nobody measured go by what the measured ones show, as clubs with few shots do."""

import math
from dataclasses import replace

import numpy as np
import pytest
from made import drawn_clubs, shots_of
from small_games import tell

from simulator.player.clubs import standard_around
from simulator.player.levels import level
from simulator.player.measured import fit
from simulator.player.measured.fit import fit_player
from simulator.player.measured.shots import Shots

MEASURED = ("driver", "3-wood", "7-iron", "pitching wedge")


@pytest.fixture(scope="module")
def steady():
    """Shots of a golfer half as wide and as deep as a 9 handicap, who misses right with the woods."""
    rng = np.random.default_rng(5)
    shots = {}
    for name, carry, bias in zip(MEASURED, (224.0, 205.0, 150.0, 118.0), (4.0, 4.0, -2.0, -2.0), strict=True):
        struck = rng.normal(carry, 0.04 * carry, 40)
        shots[name] = Shots(name, struck, struck * np.sin(np.radians(rng.normal(bias, 2.5, 40))), None)
    return shots


def test_a_club_without_shots_is_as_one_with_a_single_usual_one(steady):
    """One good shot with the 5-wood took a fifth from its spread and four tenths from its depth."""
    none = fit_player(steady, level(9))
    other = {found.club: found for found in none.others}["5-wood"]
    n = other.numbers
    at = n["carry_yd"] * (1.0 - 0.01)  # a usual strike: nothing to widen or to narrow the pattern much
    side = at * math.sin(math.radians(n["bias_right_deg"] + n["direction_sd_deg"]))
    one = fit_player({**steady, "5-wood": Shots("5-wood", np.array([at]), np.array([side]), None)}, level(9))
    told = {found.club: found for found in one.clubs}["5-wood"]
    for key in ("direction_sd_deg", "distance_sd_pct"):
        assert math.log(told.numbers[key] / n[key]) == pytest.approx(0.0, abs=0.08), key
    assert told.numbers["bias_right_deg"] == pytest.approx(n["bias_right_deg"], abs=0.6)
    assert other.doubt.direction_log > told.doubt.direction_log and other.learnt["direction_log"] > 0.1


def test_they_go_with_their_own_family(steady):
    """Woods 4 right and irons 2 left: the 5-wood is taken to be right, the 9-iron left, all of them narrow."""
    found = fit_player(steady, level(9))
    assert {other.club for other in found.others} == set(standard_around(dict(zip(MEASURED, MEASURED, strict=True))))
    for other in found.others:
        n = other.numbers
        assert n["direction_sd_deg"] < 0.85 * other.level["direction_sd_deg"]
        assert n["distance_sd_pct"] < 0.75 * other.level["distance_sd_pct"]
    bias = {other.club: other.numbers["bias_right_deg"] for other in found.others}
    assert bias["5-wood"] > 1.5 and bias["9-iron"] < -0.5 and bias["9-iron"] < bias["4-hybrid"] < bias["5-wood"]


def test_they_move_nothing_that_was_measured(steady, monkeypatch):
    """A bag that is filled up, and the same shots alone."""
    filled = fit_player(steady, level(9))
    monkeypatch.setattr(fit, "standard_around", lambda kinds: {})
    alone = fit_player(steady, level(9))
    assert filled.others and not alone.others
    for one, other in zip(filled.clubs, alone.clubs, strict=True):
        assert one.numbers == pytest.approx(other.numbers, rel=1e-4)
        assert vars(one.doubt) == pytest.approx(vars(other.doubt), rel=1e-3)


def test_drawn_players_other_clubs_are_nearer_than_the_level():
    """Players as the fit believes them: error of the logarithm of the sideways spread, and the stated doubt."""
    rng = np.random.default_rng(11)
    names = ("driver", "7-iron", "pitching wedge", "5-wood", "9-iron")
    errors, by_level, stated = [], [], []
    for _ in range(14):
        clubs = drawn_clubs(14.0, rng, names)
        shots = {club.name: shots_of(replace(club, bias_right_deg=0.0), 60, rng) for club in clubs[:3]}
        others = {other.club: other for other in fit_player(shots, level(14)).others}
        for club in clubs[3:]:
            other = others[club.name]
            errors.append(math.log(other.numbers["direction_sd_deg"] / club.direction_sd_deg))
            by_level.append(math.log(other.level["direction_sd_deg"] / club.direction_sd_deg))
            stated.append(other.doubt.direction_log)
    ours, before = (float(np.sqrt(np.mean(np.square(one)))) for one in (errors, by_level))
    held = np.mean(np.abs(errors) < 1.28 * np.array(stated))
    tell(f"sideways spread: {ours:.2f}, by the level {before:.2f}; {100.0 * held:.0f} of 100 intervals held")
    assert ours < 0.8 * before
    assert 0.6 <= held <= 0.97
