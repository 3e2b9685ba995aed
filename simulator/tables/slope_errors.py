"""A player's putting errors on a plane, from those known where no slope is told.

The figures behind a player's putting tell no slope and are of greens that have one. The table of a green of
unknown slope (`putts.putt_table`) is therefore also the table of slope 0 here, and from the errors on a told
slope is taken what a slope up to `TYPICAL_SLOPE` does to the errors on average over the directions: only the
differences between directions and the excess slope change what is known of the player.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from ..physics import putting
from ..physics.aero import GRAVITY_MPS2
from ..player.model import Putting
from ..units import FT_PER_YD, M_PER_YD
from .putts import PuttTable

DIRECTIONS = 9
"""Directions from straight below the hole (0) to straight above (pi), uniform; left and right are alike."""

LEAST_VARIANCE = 0.2
"""Share of a player's variance that remains whatever the slope would explain."""

WINDOW = 0.26
"""Spread of the pace within what can drop, as a share of the furthest that drops: of the density
``sqrt(1 - sqrt(x))`` on (0, 1), the width of the hole at pace x, the sd is 0.26."""

ALLOWANCE = 0.75
"""Share of the typical slope's variance that is taken off. The chance to hole is curved in the variance, so
that the mean over the directions calls for less than the mean variance (see ``simulator.fits.reading``)."""


@dataclass(frozen=True)
class PlaneErrors:
    """A player's errors on a plane.

    Attributes
    ----------
    line_variance : float64[nd]
        Of the starting line, but for the slope misread [rad^2], by distance.
    roll_variance : float64[nk]
        Of the roll as a share of it, but for the slope misread, by direction.
    reading_sd : float
        Of the slope read, as a share of it, along and across alike.
    """

    line_variance: np.ndarray
    roll_variance: np.ndarray
    reading_sd: float


@dataclass(frozen=True)
class Plane:
    """Directions [nk] of a plane: angle, level and local deceleration [m/s^2], m and G / a of the kernel."""

    direction: np.ndarray
    level: float
    slowing: np.ndarray
    along: np.ndarray
    steep: np.ndarray


def plane_of(slope: float, stimp_ft: float) -> Plane:
    """Directions and decelerations of a plane (slope as rise over run); see `putting.STEEPEST_SHARE`."""
    level = putting.deceleration_mps2(stimp_ft)
    pull = putting.SLOPE_SHARE * GRAVITY_MPS2 * slope
    direction = np.linspace(0.0, math.pi, DIRECTIONS)
    slowing = np.maximum(level + pull * np.cos(direction), putting.STEEPEST_SHARE * level)
    along = 1.0 - level / slowing
    along = np.where(np.abs(along) < 1e-4, 1e-4, along)  # the closed form divides by it
    return Plane(direction, level, slowing, along, pull / slowing)


def _typical(
    skill: Putting, flat: PuttTable, stimp_ft: float, slope: float, reading_sd: float
) -> tuple[np.ndarray, float]:
    """Variances of line [nd] and roll that a slope adds, mean over the directions, in level terms.

    Line: the slope across misread, and the pace, which changes the break. Roll: the slope along misread, and
    the local deceleration.
    """
    plane = plane_of(slope, stimp_ft)
    weight = np.ones(DIRECTIONS)
    weight[[0, -1]] = 0.5
    weight /= weight.sum()
    slowing, along, steep = plane.slowing[:, None], plane.along[:, None], plane.steep[:, None]
    roll = (steep * reading_sd) ** 2 + skill.distance_sd**2 * ((plane.level / slowing) ** 2 - 1.0)
    distance = np.maximum(flat.distance_yd, 1e-3)[None]
    pace = np.maximum(flat.pace_ft, 0.0) / FT_PER_YD
    bend = 1.0 - 0.5 * along

    # as in the kernel, for a roll of 1: sideways per unit of heading, and by the pull
    def reach(past: np.ndarray) -> np.ndarray:
        return (1.0 - (past / (distance + past)) ** bend) / bend

    def fall(past: np.ndarray) -> np.ndarray:
        return steep * (distance / (distance + past) - reach(past)) / along

    aim = -fall(pace) / reach(pace)
    dropping = 0.5 * putting.CAPTURE_LIMIT_MPS**2 / slowing / M_PER_YD
    spread = np.sqrt(skill.distance_sd**2 + roll) * (distance + pace)
    spread = 1.0 / np.sqrt(1.0 / spread**2 + 1.0 / (WINDOW * dropping) ** 2)
    side = [
        (distance + past) * (aim * reach(past) + fall(past))
        for past in (np.maximum(pace - spread, 0.0), pace + spread)
    ]
    travelled = (distance + pace) * reach(pace)
    paced = 0.5 * (side[1] - side[0]) * np.sin(plane.direction)[:, None] / travelled
    line = ((aim * reading_sd) ** 2 + paced**2) * (travelled / distance) ** 2
    return weight @ line, float(weight @ roll[:, 0])


def errors_on_plane(
    skill: Putting,
    flat: PuttTable,
    stimp_ft: float,
    slope: float,
    *,
    told_stimp_ft: float = putting.DEFAULT_STIMP_FT,
    reading_sd: float = putting.READING_SD,
) -> PlaneErrors:
    """A player's errors on a plane: those of the level table, less what `TYPICAL_SLOPE` explains.

    The energy given to the ball errs as on the level at that distance: where it slows by a instead of a0, the
    roll errs by the share ``distance_sd a0 / a``. (A constant share leaves putts down a slope too near and up
    it too far, against the figures in ``simulator.fits.reading``.)

    Parameters
    ----------
    skill : Putting
    flat : PuttTable
        The player's table where no slope is told.
    stimp_ft, slope : float
    told_stimp_ft : float
        Speed of the greens the player's figures are from.
    reading_sd : float
        Of the slope read, as a share of it; the fit varies it.
    """
    # on a slower green than that, a slope does less: no more is taken off than it does
    least = min(slope, putting.TYPICAL_SLOPE)
    line, roll = _typical(skill, flat, min(told_stimp_ft, stimp_ft), least, reading_sd)
    angle = math.radians(skill.angle_sd_deg)
    growth = math.radians(skill.angle_growth_deg_per_ft) * FT_PER_YD
    full = angle**2 + (growth * flat.distance_yd) ** 2
    plane = plane_of(slope, stimp_ft)
    rolls = skill.distance_sd**2 * (plane.level / plane.slowing) ** 2
    return PlaneErrors(
        np.maximum(full - ALLOWANCE * line, LEAST_VARIANCE * full),
        np.maximum(rolls - ALLOWANCE * roll, LEAST_VARIANCE * rolls),
        reading_sd,
    )
