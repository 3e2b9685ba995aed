"""Capture by the hole and Stimpmeter speeds against published figures."""

from __future__ import annotations

import math

import numpy as np
import pytest
from from_python import from_python
from truth_rows import outside

from simulator.kernels.putting import _putt
from simulator.physics.putting import (
    CAPTURE_LIMIT_MPS,
    HOLE_RADIUS_M,
    deceleration_mps2,
)
from simulator.tables.putts import _nodes

_putt = from_python(_putt)


@pytest.mark.parametrize(  # v^2 / 2S with v = 6.00 ft/s, by hand in feet: 18 / S ft/s^2, then metres
    ("stimp_ft", "mps2"), [(8, 0.686), (9, 0.610), (10, 0.549), (11, 0.499), (12, 0.457), (13, 0.422)]
)
def test_stimp(stimp_ft, mps2):
    outside(
        "Stimpmeter: 6.00 ft/s at the start",
        f"deceleration at Stimp {stimp_ft}",
        deceleration_mps2(stimp_ft),
        mps2,
        0.0006,
        "m/s2",
    )
    assert deceleration_mps2(stimp_ft) == pytest.approx(mps2, abs=0.0006)
    assert deceleration_mps2(stimp_ft) == pytest.approx(18.0 / stimp_ft * 0.3048, rel=1e-3)


def test_a_fast_green():
    # Penner 2002: rolling coefficient 0.065 on a fast green, a = 5/7 rho g = Stimp 12 (from memory)
    assert pytest.approx(deceleration_mps2(12), rel=0.01) == 5 / 7 * 0.065 * 9.80665


@pytest.mark.parametrize(
    ("past_ft", "share"),
    [  # Holmes 1991 limit 1.63 m/s and Penner's off-centre law: half-width over the hole's radius, Stimp 10
        (1.0, 0.80), (1.5, 0.75), (3.0, 0.62),
    ],
)  # fmt: skip
def test_effective_half_width(past_ft, share):
    distance, angle_sd = 3.0, 0.02
    green = np.array([deceleration_mps2(10.0), HOLE_RADIUS_M, CAPTURE_LIMIT_MPS])
    chance, _ = _putt(distance, past_ft * 0.3048, angle_sd, 1e-3, green, _nodes(), np.ones(5), 1.0)
    expected = math.erf(math.asin(share * HOLE_RADIUS_M / distance) / (angle_sd * math.sqrt(2)))
    assert chance == pytest.approx(expected, abs=0.006)  # shares are printed to two digits


def test_too_fast_and_too_short_never_drop():
    green = np.array([deceleration_mps2(10.0), HOLE_RADIUS_M, CAPTURE_LIMIT_MPS])
    limit_ft = CAPTURE_LIMIT_MPS**2 / (2 * deceleration_mps2(10.0)) / 0.3048
    outside("Holmes 1991", "past the hole at the capture limit, Stimp 10", limit_ft, 7.9, 0.05, "ft")
    assert limit_ft == pytest.approx(7.9, abs=0.05)  # 1.63 m/s at Stimp 10 would run 7.9 ft past
    for past_ft, drops in ((limit_ft - 0.3, True), (limit_ft + 0.3, False), (0.3, True), (-0.3, False)):
        chance, _ = _putt(2.0, past_ft * 0.3048, 0.002, 1e-3, green, _nodes(), np.ones(5), 1.0)
        assert (chance > 0.3) is drops
