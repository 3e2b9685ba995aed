"""Spread of well-struck shots by length: two-thirds boxes of the Course Rating System Manual 2020."""

from __future__ import annotations

import numpy as np

from . import published as pub

LOWEST_HANDICAP = -3.0
"""The boxes are continued from bogey through scratch only this far; better players are scaled from here."""


def solid_box_yd(handicap: float, shot_yd: float) -> tuple[float, float]:
    """Standard deviations across and along [yd] of a solid shot of ``shot_yd``, boxes read per axis.

    Linear in handicap through the scratch (0) and bogey (20) players, linear in length between printed
    lengths. Beyond the printed lengths the share of the length is kept.
    """
    bogey = len(pub.BOGEY_WIDTH_YD)
    share = (max(handicap, LOWEST_HANDICAP) - pub.SCRATCH_HANDICAP) / (
        pub.BOGEY_HANDICAP - pub.SCRATCH_HANDICAP
    )

    def read(scratch_yd: np.ndarray, bogey_yd: np.ndarray) -> float:
        one = np.interp(shot_yd, pub.BOX_SHOT_YD, scratch_yd / pub.BOX_SHOT_YD)
        two = np.interp(shot_yd, pub.BOX_SHOT_YD[:bogey], bogey_yd / pub.BOX_SHOT_YD[:bogey])
        return float(one + share * (two - one)) * shot_yd / pub.PER_AXIS_TWO_THIRDS

    return read(pub.SCRATCH_WIDTH_YD, pub.BOGEY_WIDTH_YD), read(pub.SCRATCH_DEPTH_YD, pub.BOGEY_DEPTH_YD)
