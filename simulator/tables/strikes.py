"""Strike rows: what the player's spreads become for every shot from every lie."""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import lru_cache
from operator import attrgetter

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

_OFF_THE_TEE = [lie for lie in Lie if lie is not Lie.TEE]
_factors = attrgetter(
    "allowed", "carry_factor", "carry_factor_sd", "direction_factor", "distance_factor", "mishit_factor",
    "spin_factor",
)  # fmt: skip


def _effects(
    group: str, carry_yd: float, among: Mapping[str, Mapping[str, LieEffect]] | None = None
) -> np.ndarray:
    """What every lie does to a shot, float64[factors, lies]: in the order of `_factors`."""
    return np.array([_factors(lie_effect(LIE_WORDS[lie], group, carry_yd, among)) for lie in Lie], float).T


# plausible players ask for the same clubs by the hundred
_usual_effects = lru_cache(maxsize=256)(_effects)


def _putt_row(shot: Shot) -> np.ndarray:
    """Strikes of a putt from off the green, float64[lies, STRIKE_COLUMNS]: only grass so short allows it."""
    row = np.zeros((len(Lie), c.STRIKE_COLUMNS))
    row[Lie.FAIRWAY, c.STRIKE_ALLOWED] = True
    row[:, c.STRIKE_FRACTION] = 1.0 / shot.stretch
    row[:, c.STRIKE_SD] = shot.spread.distance_sd_pct / 100.0
    row[:, [c.STRIKE_START_SD, c.STRIKE_SIDEWAYS]] = math.radians(shot.spread.direction_sd_deg)
    row[:, [c.STRIKE_MISHIT_KEEP, c.STRIKE_MISHIT_WIDE, c.STRIKE_SPIN]] = 1.0
    row[:, c.STRIKE_CARRY] = shot.tabled_yd
    row[:, c.STRIKE_REACH] = row[:, c.STRIKE_CARRY] * row[:, c.STRIKE_FRACTION]
    return row


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
        spread, row = shot.spread, rows[k]
        if shot.flight == "putt":
            row[:] = _putt_row(shot)
            continue
        group = lie_group(shot.club.kind, shot.flight in ("part", "punch"))
        asked = (group, shot.carry_yd if group == "part" else 0.0)
        allowed, carry, carry_sd, direction, distance, mishits, spin = (
            _usual_effects(*asked) if among is None else _effects(*asked, among)
        )
        solid = 1.0 + spread.bias_long_pct / 100.0
        clean_tilt = start_and_curve_sd(math.radians(spread.direction_sd_deg))[1] / np.interp(
            solid / shot.stretch, FRACTIONS, turn[k]
        )
        start = math.radians(spread.bias_right_deg) + start_for_curve(
            shot, float(clean_tilt), (FRACTIONS, np.radians(TILTS_DEG)), still[k]
        )
        direction_sd = math.radians(spread.direction_sd_deg) * direction
        start_sd, curve_sd = start_and_curve_sd(direction_sd)
        rate = np.minimum(spread.mishit_rate * mishits, MOST_MISHITS)
        row[:, c.STRIKE_ALLOWED] = allowed
        row[:, c.STRIKE_FRACTION] = solid * carry / shot.stretch
        row[:, c.STRIKE_SD] = spread.distance_sd_pct / 100.0 * distance / solid
        row[:, c.STRIKE_LIE_SD] = carry_sd / carry
        row[:, c.STRIKE_START_BIAS] = start
        row[:, c.STRIKE_START_SD] = start_sd
        row[:, c.STRIKE_TILT_SD] = curve_sd / np.interp(row[:, c.STRIKE_FRACTION], FRACTIONS, turn[k])
        row[:, c.STRIKE_MISHIT_RATE] = rate
        row[:, c.STRIKE_MISHIT_KEEP] = 1.0 - spread.mishit_loss_pct / 100.0 / solid
        row[:, c.STRIKE_MISHIT_SD] = spread.mishit_distance_sd_pct / 100.0 * distance / solid
        row[:, c.STRIKE_MISHIT_WIDE] = spread.mishit_direction_factor
        row[:, c.STRIKE_SPIN] = spin
        row[:, c.STRIKE_CARRY] = shot.tabled_yd
        row[:, c.STRIKE_REACH] = row[:, c.STRIKE_CARRY] * row[:, c.STRIKE_FRACTION]
        row[:, c.STRIKE_LOW] = shot.flight == "low"
        row[:, c.STRIKE_SIDEWAYS] = direction_sd * np.sqrt(
            1.0 - rate + rate * spread.mishit_direction_factor**2
        )
        if shot.club.use == "tee only" and shot.flight in SHAPES:
            row[_OFF_THE_TEE, c.STRIKE_ALLOWED] = False
        if shot.flight in ("low", "punch"):  # no file draws the lip it would have to clear (common practice)
            row[Lie.BUNKER, c.STRIKE_ALLOWED] = False
    return rows
