"""Strike rows: what the player's spreads become for every shot from every lie."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np

from ..hole.surfaces import LIE_WORDS, Lie
from ..kernels import codes as c
from ..physics.heights import SHAPES
from ..physics.lies import LieEffect, lie_effect, lie_group
from ..physics.strike import start_and_curve_sd
from .curved import start_for_curve
from .flights import FRACTIONS, TILTS_DEG, turn_per_tilt
from .shots import Shot

MOST_MISHITS = 0.8
"""No lie raises the mishit rate above this (assumed)."""


def strike_rows(
    shots: tuple[Shot, ...],
    still: np.ndarray,
    among: Mapping[str, Mapping[str, LieEffect]] | None = None,
) -> np.ndarray:
    """Strike rows, float64[shots, lies, STRIKE_COLUMNS]; the kernel's codes say what each column is.

    The direction spread is split into start and curve; the tilt that gives the curve its share is read off
    the flights in `still` air (`FlightTables.still`), whatever the day: it is the player's. `among` are
    other effects of lies than the package's own, for their fit.
    """
    rows = np.zeros((len(shots), len(Lie), c.STRIKE_COLUMNS))
    turn = turn_per_tilt(still)
    for k, shot in enumerate(shots):
        spread = shot.spread
        group = lie_group(shot.club.kind, shot.flight in ("part", "punch"))
        solid = 1.0 + spread.bias_long_pct / 100.0
        clean_tilt = start_and_curve_sd(math.radians(spread.direction_sd_deg))[1] / np.interp(
            solid, FRACTIONS, turn[k]
        )
        start = math.radians(spread.bias_right_deg) + start_for_curve(
            shot, float(clean_tilt), (FRACTIONS, np.radians(TILTS_DEG)), still[k]
        )
        tee_only = shot.club.use == "tee only" and shot.flight in SHAPES
        for lie in Lie:
            effect = lie_effect(LIE_WORDS[lie], group, shot.carry_yd, among)
            row = rows[k, lie]
            direction_sd = math.radians(spread.direction_sd_deg) * effect.direction_factor
            start_sd, curve_sd = start_and_curve_sd(direction_sd)
            rate = min(spread.mishit_rate * effect.mishit_factor, MOST_MISHITS)
            # no hole file draws a bunker's lip: no full shot is held down under it (common practice)
            under_lip = lie is Lie.BUNKER and shot.flight == "low"
            row[c.STRIKE_ALLOWED] = effect.allowed and not under_lip and (lie is Lie.TEE or not tee_only)
            row[c.STRIKE_FRACTION] = solid * effect.carry_factor
            row[c.STRIKE_SD] = spread.distance_sd_pct / 100.0 * effect.distance_factor / solid
            row[c.STRIKE_LIE_SD] = effect.carry_factor_sd / effect.carry_factor
            row[c.STRIKE_START_BIAS] = start
            row[c.STRIKE_START_SD] = start_sd
            row[c.STRIKE_TILT_SD] = curve_sd / np.interp(solid * effect.carry_factor, FRACTIONS, turn[k])
            row[c.STRIKE_MISHIT_RATE] = rate
            row[c.STRIKE_MISHIT_KEEP] = 1.0 - spread.mishit_loss_pct / 100.0 / solid
            row[c.STRIKE_MISHIT_SD] = spread.mishit_distance_sd_pct / 100.0 * effect.distance_factor / solid
            row[c.STRIKE_MISHIT_WIDE] = spread.mishit_direction_factor
            row[c.STRIKE_SPIN] = effect.spin_factor
            row[c.STRIKE_CARRY] = shot.carry_yd
            row[c.STRIKE_REACH] = row[c.STRIKE_CARRY] * row[c.STRIKE_FRACTION]
            row[c.STRIKE_LOW] = shot.flight == "low"
            row[c.STRIKE_SIDEWAYS] = direction_sd * math.sqrt(
                1.0 - rate + rate * spread.mishit_direction_factor**2
            )
    return rows
