"""Runs of a set of clubs in slow hands."""

import itertools

import numpy as np
import pytest

from simulator.conditions import Conditions
from simulator.fits.slow_woods import WOODS_YD, stock, straight_runs_yd
from simulator.player.levels import level
from simulator.player.standard import standard_player
from simulator.tables.carries import runs_yd, stock_landings
from simulator.tables.shots import Shot, ShotList


def carries_and_runs(handicap, sex):
    clubs = standard_player(level(handicap, sex)).clubs
    shots = tuple(Shot(club, "stock", club.carry_yd, club) for club in clubs)
    landed = stock_landings(ShotList.of_full(shots), Conditions(), 0.0, 0.0, len(shots))
    return [club.name for club in clubs], landed[:, 0], runs_yd(landed, Conditions())


@pytest.mark.parametrize("sex", ["man", "woman"])
@pytest.mark.parametrize("handicap", [0.0, 10.0, 18.0, 24.0, 36.0, 54.0])
def test_a_longer_club_finishes_farther(handicap, sex):
    # Common practice: whoever swings, the order of the clubs by carry is their order by total. As far as
    # a yard: two clubs of one carry may finish either way.
    names, carries, runs = carries_and_runs(handicap, sex)
    totals = carries + runs
    for k, (one, two) in enumerate(itertools.pairwise(names)):
        assert totals[k] > totals[k + 1] - 1.0, (one, two, totals[k], totals[k + 1])


def test_a_slow_players_woods_run_alike():
    # What the fit of the 5-wood asks for, by the file it wrote; the level's carries are a yard from those it asks at.
    three, five = straight_runs_yd([stock(kind, carry_yd) for kind, carry_yd in WOODS_YD.items()])
    assert five == pytest.approx(three, abs=0.1)
    names, _, runs = carries_and_runs(24.0, "woman")
    run = dict(zip(names, runs, strict=True))
    assert run["5-wood"] == pytest.approx(run["3-wood"], abs=0.6)
    assert np.ptp([run[name] for name in ("driver", "3-wood", "5-wood", "4-hybrid", "5-iron")]) < 4.0
