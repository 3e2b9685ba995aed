"""The putting table against a plain simulation of the same putts, and against itself made finer."""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys

import numpy as np
import pytest

from simulator.tables.putts import putt_table

ANGLE_SD_DEG, DISTANCE_SD, GROWTH, STIMP = 2.2, 0.10, 0.03, 9.25


@pytest.fixture(scope="module")
def table():
    return putt_table(ANGLE_SD_DEG, DISTANCE_SD, angle_growth_deg_per_ft=GROWTH, stimp_ft=STIMP)


def putt_out(feet: float, table, n: int, seed: int, pace_change_ft: float = 0.0) -> np.ndarray:
    """Putts taken by n players from a distance, with the table's pace: plain numpy, feet and seconds."""
    luck = np.random.default_rng(seed)
    slowing = 6.00**2 / (2 * STIMP)  # ft/s^2: a ball let go at 6 ft/s rolls one Stimpmeter reading
    radius, limit = 0.0540 / 0.3048, 1.63 / 0.3048
    x, y = np.full(n, -float(feet)), np.zeros(n)
    taken, out = np.zeros(n, int), np.ones(n, bool)
    for turn in range(12):
        gap = np.hypot(x, y)
        pace = np.interp(np.sqrt(gap / 3), np.sqrt(table.distance_yd), table.pace_ft[0])
        pace = pace + (pace_change_ft if turn == 0 else 0.0)
        angle = np.radians(np.hypot(ANGLE_SD_DEG, GROWTH * gap)) * luck.standard_normal(n)
        roll = np.maximum((gap + pace) * (1 + DISTANCE_SD * luck.standard_normal(n)), 0.0)
        past = roll - gap
        speed = np.sqrt(2 * slowing * np.maximum(past, 0.0))
        half = radius * np.sqrt(np.maximum(1 - speed / limit, 0.0))
        off = gap * np.sin(np.abs(angle))
        holed = out & (past > 0) & ((off < half) | (gap < half)) & (half > 0)
        taken += out
        out &= ~holed
        toward = np.arctan2(-y, -x) + angle
        x, y = np.where(out, x + roll * np.cos(toward), x), np.where(out, y + roll * np.sin(toward), y)
    return taken


@pytest.mark.parametrize("feet", [2.0, 5.0, 12.0, 30.0, 75.0])
def test_against_plain_simulation(table, feet):
    n = 150_000
    taken = putt_out(feet, table, n, seed=round(feet))
    expected, chances = table.at_ft(feet)
    # 4 standard errors, and 0.001 for the table's interpolation
    assert expected == pytest.approx(taken.mean(), abs=4 * taken.std() / math.sqrt(n) + 0.001)
    for k in (1, 2, 3):
        share = float((taken <= k).mean())
        assert chances[k - 1] == pytest.approx(share, abs=4 * math.sqrt(share * (1 - share) / n) + 0.001)


def test_the_pace_is_the_best(table):
    for feet in (5.0, 12.0, 40.0):
        best = table.at_ft(feet)[0]
        for change in (-0.8, 0.8):
            taken = putt_out(feet, table, 150_000, seed=7, pace_change_ft=change)
            assert taken.mean() > best - 3 * taken.std() / math.sqrt(150_000)
    # and where the best is sharp, another is clearly worse
    assert putt_out(40.0, table, 150_000, seed=8, pace_change_ft=5.0).mean() > table.at_ft(40.0)[0] + 0.02


def test_chances_and_expectation_agree(table):
    more_than = 1.0 - table.chances[0]
    assert np.all(np.diff(table.chances[0], axis=1) >= -1e-9)
    within_90_ft = table.distance_yd <= 30.0
    assert np.all(more_than[within_90_ft, -1] < 1e-4)  # hardly anybody needs five
    total = 1.0 + more_than[:, :3].sum(axis=1)  # expected putts if the fourth always drops
    assert np.allclose(total[within_90_ft], table.expected[0, within_90_ft], rtol=0, atol=1e-4)
    assert np.allclose(total, table.expected[0], rtol=0, atol=2e-3)


def test_a_finer_table_says_the_same(table):
    fine = putt_table(
        ANGLE_SD_DEG, DISTANCE_SD, angle_growth_deg_per_ft=GROWTH, stimp_ft=STIMP, distances=421
    )
    for feet in np.linspace(0.5, 150.0, 60):
        assert table.at_ft(feet)[0] == pytest.approx(fine.at_ft(feet)[0], abs=0.001)


def test_expected_putts_rise_with_distance_and_error(table):
    assert table.expected[0, 0] == 1.0
    assert np.all(np.diff(table.expected[0]) > -1e-6)
    wilder = putt_table(1.3 * ANGLE_SD_DEG, DISTANCE_SD, angle_growth_deg_per_ft=GROWTH, stimp_ft=STIMP)
    looser = putt_table(ANGLE_SD_DEG, 1.3 * DISTANCE_SD, angle_growth_deg_per_ft=GROWTH, stimp_ft=STIMP)
    for other in (wilder, looser):
        assert np.all(other.expected[0] >= table.expected[0] - 1e-4)  # the pace is found to 0.01 ft


def test_nearly_perfect_putting_is_one_putt():
    assert np.all(putt_table(0.01, 0.001, angle_growth_deg_per_ft=0.0).expected[0] < 1.001)


SMALL = """
import json
from simulator.tables.putts import putt_table
table = putt_table(2.2, 0.1, stimp_ft=9.25, distances=5)
print(json.dumps([table.expected.tolist(), table.chances.tolist()]))
"""


def test_without_the_compiler():
    environment = {**os.environ, "NUMBA_DISABLE_JIT": "1"}
    command = [sys.executable, "-c", SMALL]
    plain = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
    expected, chances = json.loads(plain.stdout)
    compiled = putt_table(2.2, 0.1, stimp_ft=9.25, distances=5)
    assert np.allclose(compiled.expected, expected, rtol=0, atol=1e-9)
    assert np.allclose(compiled.chances, chances, rtol=0, atol=1e-9)
