"""The 90-shooter from 150 yards of fairway: the level's own pattern, and what it comes to at rest.

Published (M. Broadie, magazine column): 35 % of greens, median leave 59 ft, pattern half as long again as
wide, centre 13 yd short. Read as one normal, those numbers give standard deviations of 11.5 yd across and
17.2 yd along. Put at 18 handicap: a 90 is an average score, about 3 above a course handicap (Knuth), on a
course rated about 69 (common practice).
"""

import itertools

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.stats import multivariate_normal, ncx2, norm
from small_games import tell
from truth_rows import outside

from simulator.engine import play
from simulator.fits.bench.measure import bench, best_values, place
from simulator.hole.surfaces import Lie, Surface
from simulator.player import level
from simulator.player.standard import standard_player

SHOT_YD = 150.0
GREEN_RADIUS_YD = 15.0


def parts(handicap: float) -> list[tuple[float, float, float, float]]:
    """(share, mean along, sd across, sd along) [yd] of solid strikes and of mishits of a 150-yd iron."""
    who = level(handicap)
    s = who.spread("5-iron", SHOT_YD, who.driver_carry_yd)
    across = SHOT_YD * np.tan(np.radians(s["direction_sd_deg"]))
    along = SHOT_YD * s["distance_sd_pct"] / 100
    bias = SHOT_YD * s["bias_long_pct"] / 100
    loss = SHOT_YD * s["mishit_loss_pct"] / 100
    rate, wide = s["mishit_rate"], s["mishit_direction_factor"]
    return [
        (1 - rate, bias, across, along),
        (rate, bias - loss, across * wide, SHOT_YD * s["mishit_distance_sd_pct"] / 100),
    ]


def moments(handicap: float) -> tuple[float, float, float]:
    """Mean along, sd across, sd along [yd] of all strikes."""
    mix = parts(handicap)
    mean = sum(p * m for p, m, _, _ in mix)
    across = np.sqrt(sum(p * a**2 for p, _, a, _ in mix))
    along = np.sqrt(sum(p * (b**2 + (m - mean) ** 2) for p, m, _, b in mix))
    return mean, across, along


def within(radius: float, mean: float, across: float, along: float) -> float:
    """Chance of a circle under one normal: across by quadrature, along by scipy's non-central chi-square."""

    def slice_(x: float) -> float:
        return norm.pdf(x, 0, across) * ncx2.cdf((radius**2 - x * x) / along**2, 1, (mean / along) ** 2)

    return quad(slice_, -radius, radius, limit=200)[0]


def test_circle_by_two_roads_of_scipy():
    # One normal read off the published pattern: 34 % by the integral and by counting scipy's own draws.
    by_integral = within(15.0, -13.0, 11.5, 17.2)
    draws = multivariate_normal([0, -13], [[11.5**2, 0], [0, 17.2**2]]).rvs(200_000, random_state=3)
    by_count = np.mean(np.hypot(draws[:, 0], draws[:, 1]) < 15)
    assert by_integral == pytest.approx(0.34, abs=0.005)
    assert by_integral == pytest.approx(by_count, abs=4 * np.sqrt(0.34 * 0.66 / 200_000))


def test_pattern_at_18_handicap():
    mean, across, along = moments(18)
    tell(f"18 handicap, 150 yd: mean {mean:+.1f}, sd {across:.1f} x {along:.1f} yd")
    assert mean == pytest.approx(-13.0, abs=0.5)
    # Where it comes down the pattern is longer and wider than published: the published one is of balls at rest,
    # and what comes down short runs farther (`test_at_rest` holds the figures there). Measured 13.4 x 25.8 yd:
    # the fit has a mishit lose 31 % of its carry, the one before 18 %, of more of them.
    assert 1.35 < along / across < 2.0
    assert 10.0 < across < 15.0 and 16.0 < along < 27.0


def test_better_players_hit_more_greens():
    shares = [sum(p * within(GREEN_RADIUS_YD, m, a, b) for p, m, a, b in parts(h)) for h in (-5, 0, 5, 10, 18, 28, 36, 54)]
    assert all(a > b for a, b in itertools.pairwise(shares))


def test_at_rest():
    # The player takes the club that scores best, which mends some of the shortfall: the share on the green is
    # compared at rest, 8 points either way (ours; the source gives no error).
    greens, leaves, along, across = [], [], [], []
    for board in bench(standard_player(level(18))).boards:
        row = best_values(board, int(Lie.FAIRWAY), np.array([SHOT_YD]))[0]
        x, y = place(board, SHOT_YD)
        shot = play(
            board, x, y, int(Lie.FAIRWAY), row[1:], row[1:], 4.0, seed=2, sequences=40_000, threads=2, most_strokes=1
        )
        greens.append(np.mean(shot.surface == Surface.GREEN))
        leaves.append(3.0 * np.median(shot.leaves_yd))
        across.append(shot.rest_yd[:, 0].std())
        along.append(shot.rest_yd[:, 1].std())
    tell(f"at rest: {100 * np.mean(greens):.1f} % of greens, median leave {np.mean(leaves):.0f} ft, "
         f"sd {np.mean(across):.1f} x {np.mean(along):.1f} yd")  # fmt: skip
    column = "M. Broadie, magazine column: golfers who shoot 90, from 150 yd"
    outside(column, "greens hit", 100 * np.mean(greens), 35.0, 8.0, "%")
    outside(column, "median leave", np.mean(leaves), 59.0, 0.15 * 59, "ft")
    outside(column, "standard deviation across, at rest", np.mean(across), 11.5, 0.15 * 11.5, "yd")
    outside(column, "standard deviation along, at rest", np.mean(along), 17.2, 0.15 * 17.2, "yd")
    assert 100 * np.mean(greens) == pytest.approx(35.0, abs=8.0)
    assert np.mean(leaves) == pytest.approx(59.0, rel=0.15)
    assert np.mean(across) == pytest.approx(11.5, rel=0.15)
    assert np.mean(along) == pytest.approx(17.2, rel=0.15)
