"""Drives by level against published direction spreads and measured distances."""

import itertools

import numpy as np
import pytest

from simulator.player import level

RUN_YD = 20.0  # Course Rating System: bogey player 180 carry + 20; older tour averages 289 total - 269 carry


def all_strikes(handicap):
    """Direction sd [deg] and mean carry [yd] of all drives, mishits among them."""
    who = level(handicap)
    s = who.spread("driver", who.driver_carry_yd, who.driver_carry_yd)
    p, k = s["mishit_rate"], s["mishit_direction_factor"]
    direction = s["direction_sd_deg"] * np.sqrt(1 - p + p * k * k)
    carry = who.driver_carry_yd * (1 + s["bias_long_pct"] / 100 - p * s["mishit_loss_pct"] / 100)
    return direction, carry


@pytest.mark.parametrize(
    ("handicap", "sd_deg"),
    # Broadie 2008 (Science and Golf V) table 1: 4.0 / 5.4 / 6.4 / 8.1 for pros, scores 70-83, 84-97, 97-120;
    # Broadie & Ko 2009: 5.5 (80-golfer), 7.9 (100-golfer). Average score less 72 is taken as the handicap.
    [(-5, 4.0), (4.5, 5.4), (8, 5.5), (18.5, 6.4), (28, 7.9), (36.5, 8.1)],
)
def test_direction_of_all_drives(handicap, sd_deg):
    assert all_strikes(handicap)[0] == pytest.approx(sd_deg, abs=0.1)


@pytest.mark.parametrize(
    ("handicap", "total_yd"),
    # R&A/USGA distance report, UK men 1996-2018 (Golf Monthly): <=5 240, 6-12 220, 13-20 204, 21+ 187.
    [(3, 240), (9, 220), (16.5, 204), (26, 187)],
)
def test_mean_drive(handicap, total_yd):
    assert all_strikes(handicap)[1] + RUN_YD == pytest.approx(total_yd, abs=5)


@pytest.mark.parametrize(("handicap", "carry_yd"), [(0, 225), (20, 180)])
def test_rating_system_players(handicap, carry_yd):
    # Course Rating System: scratch 225 yd and bogey (index about 20) 180 yd of carry from the tee.
    assert all_strikes(handicap)[1] == pytest.approx(carry_yd, abs=6)


def test_weaker_players_are_shorter_and_wilder():
    rows = [all_strikes(h) for h in range(-5, 55)]
    assert all(b[0] >= a[0] and b[1] < a[1] for a, b in itertools.pairwise(rows))
