"""Whose level: a man's or a woman's."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from .levels import Level, level

SEXES = ("man", "woman")

# Women's mean tee shots, R&A/USGA distance report (UK, 1996-2018): 196, 178, 153, 138, 118 yd for handicaps
# up to 5, 6-12, 13-20, 21-28, 29 and more, beside the rating system's 210 and 150 yd (0 and 24); 54 continues
# the line.
_HANDICAP = np.array([-5.0, 0, 9, 16.5, 24, 34, 54])
_TOTAL_YD = np.array([246.0, 206, 177, 157, 144, 123, 103])
_RUN_YD = 20.0


def level_for(handicap: float, sex: str) -> Level:
    """The level of a handicap index; a woman's has her own length of drive, the rest is in proportion."""
    if sex == "man":
        return level(handicap)
    total_yd = float(np.interp(handicap, _HANDICAP, _TOTAL_YD))
    return replace(level(handicap), driver_carry_yd=total_yd - _RUN_YD)
