"""Drives by level against published direction spreads and measured distances."""

import itertools

import numpy as np
import pytest
from truth_rows import outside

from simulator.player import level

REPORT = "R&A/USGA distance report, 1996-2018 (Golf Monthly)"


def run_yd(total_yd):
    """Course Rating System: bogey player 180 carry + 20, scratch player 225 + 25."""
    return np.interp(total_yd, [200, 250], [20, 25])


def all_strikes(handicap, sex="man"):
    """Direction sd [deg] and mean carry [yd] of all drives, mishits among them."""
    who = level(handicap, sex)
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
    found = all_strikes(handicap)[0]
    outside("Broadie 2008; Broadie & Ko 2009", f"direction spread of drives, handicap {handicap:g}", found, sd_deg, 0.1, "deg")
    assert found == pytest.approx(sd_deg, abs=0.1)


@pytest.mark.parametrize(
    ("handicap", "total_yd"),
    # R&A/USGA distance report, UK men 1996-2018 (Golf Monthly): <=5 240, 6-12 220, 13-20 204, 21+ 187.
    [(3, 240), (9, 220), (16.5, 204), (26, 187)],
)
def test_mean_drive(handicap, total_yd):
    found = all_strikes(handicap)[1] + run_yd(total_yd)
    outside(REPORT, f"mean drive of men, handicap {handicap:g}", found, total_yd, 5, "yd")
    assert found == pytest.approx(total_yd, abs=5)


@pytest.mark.parametrize(
    ("handicap", "total_yd"),
    # The same report, women: <=5 196, 6-12 178, 13-20 153, 21-28 138, 29+ 118. Small samples (200 to 300 drives a
    # year), and the rating system's 210 and 150 pull the other way: 8 yd.
    [(3, 196), (9, 178), (16.5, 153), (24.5, 138), (34, 118)],
)
def test_mean_drive_of_women(handicap, total_yd):
    found = all_strikes(handicap, "woman")[1] + run_yd(total_yd)
    outside(REPORT, f"mean drive of women, handicap {handicap:g}", found, total_yd, 8, "yd")
    assert found == pytest.approx(total_yd, abs=8)


@pytest.mark.parametrize(
    ("handicap", "sex", "carry_yd"),
    # Course Rating System, from the tee: men 225 yd of carry (scratch) and 180 (bogey, index about 20); women 210
    # and 150 yd (index about 24) with the run, taken as 20 here.
    [(0, "man", 225), (20, "man", 180), (0, "woman", 190), (24, "woman", 130)],
)
def test_rating_system_players(handicap, sex, carry_yd):
    found = all_strikes(handicap, sex)[1]
    outside("Course Rating System", f"carry from the tee, {sex}, index {handicap}", found, carry_yd, 7, "yd")
    assert found == pytest.approx(carry_yd, abs=7)


def test_weaker_players_are_shorter_and_wilder():
    rows = [all_strikes(h) for h in range(-5, 55)]
    assert all(b[0] >= a[0] and b[1] < a[1] for a, b in itertools.pairwise(rows))
