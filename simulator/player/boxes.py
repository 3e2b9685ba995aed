"""Spread of well-struck shots by length: two-thirds boxes of the Course Rating System Manual 2020."""

from __future__ import annotations

import numpy as np

from . import published as pub

SEXES = ("man", "woman")
"""The two sets of tables the rating system keeps."""

_SCRATCH = {
    "man": (pub.SCRATCH_WIDTH_YD, pub.SCRATCH_DEPTH_YD),
    "woman": (pub.WOMEN_SCRATCH_WIDTH_YD, pub.WOMEN_SCRATCH_DEPTH_YD),
}
_BOGEY = {
    "man": (pub.BOGEY_WIDTH_YD, pub.BOGEY_DEPTH_YD),
    "woman": (pub.WOMEN_BOGEY_WIDTH_YD, pub.WOMEN_BOGEY_DEPTH_YD),
}


def solid_box_yd(handicap: float, shot_yd: float, sex: str = "man") -> tuple[float, float]:
    """Standard deviations across and along [yd] of a solid shot of ``shot_yd``, boxes read per axis.

    Linear in handicap from the scratch player through the bogey player of the sex and beyond, scratch's for
    better players; linear in length between printed lengths, beyond which the share of the length is kept.
    """
    over = max(handicap - pub.SCRATCH_HANDICAP, 0.0)
    share = over / (pub.BOGEY_HANDICAP[sex] - pub.SCRATCH_HANDICAP)

    def of(box_yd: np.ndarray) -> float:
        lengths = pub.BOX_SHOT_YD[: len(box_yd)]
        return float(np.interp(shot_yd, lengths, box_yd / lengths))

    def read(scratch_yd: np.ndarray, bogey_yd: np.ndarray) -> float:
        one = of(scratch_yd)
        return (one + share * (of(bogey_yd) - one)) * shot_yd / pub.PER_AXIS_TWO_THIRDS

    (wide, deep), (bogey_wide, bogey_deep) = _SCRATCH[sex], _BOGEY[sex]
    return read(wide, bogey_wide), read(deep, bogey_deep)
