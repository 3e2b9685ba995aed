"""Solid strikes and mishits of a level's driver together spread as the published drives do, which hold both."""

from __future__ import annotations

import numpy as np
import pytest

from simulator.player import published as pub
from simulator.player.levels import level


@pytest.mark.parametrize("k", range(1, len(pub.DRIVE_SCORE)))
def test_all_drives_spread_as_published(k: int) -> None:
    """The variance of a mixture about one middle is the mean of its parts' variances."""
    base = level(float(pub.DRIVE_SCORE[k] - pub.SCORE_OVER_HANDICAP))
    drive = base.spread("driver", base.driver_carry_yd, base.driver_carry_yd)
    solid, rate = drive["direction_sd_deg"], drive["mishit_rate"]
    variances = np.array([solid, drive["mishit_direction_factor"] * solid]) ** 2
    both = np.average(variances, weights=[1.0 - rate, rate]) ** 0.5
    assert both == pytest.approx(pub.DRIVE_DIRECTION_SD_DEG[k], rel=1e-9)
