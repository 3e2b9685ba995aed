"""The putting of a player on planes: by direction from straight below the hole, and distance.

Errors: `slope_errors`. Slope 0 is the green of no told slope.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from ..kernels.putting_slopes import fill_sloped_putts
from ..physics import putting
from ..player.model import Putting
from ..units import FT_PER_YD, M_PER_YD
from .putts import COUNTS, SHORTEST_AIM, PuttTable, putt_table
from .slope_errors import DIRECTIONS, PlaneErrors, errors_on_plane, plane_of

BOLDEST_AIM_YD = 3.0
"""Furthest past the hole that is aimed [yd]: down a slope further than on the level."""

SEEK_EVERY = 4
"""The pace is sought at each fourth distance."""

DROPPING = 16
"""Nodes over the paces that drop."""

LATTICE = (0.3, 1.4, 3.8)
"""Steps of roll and line and radius of the quadrature of the leaves, in standard deviations."""


@dataclass(frozen=True)
class PuttTables:
    """Putting on planes; axes [plane, direction, distance].

    Attributes
    ----------
    slopes : tuple of float
        Rise over run of each plane.
    direction_rad : float64[nk]
        0: the ball lies straight below the hole; pi: straight above.
    root_step : float
        Point i lies at ``(i root_step)^2`` yards.
    distance_yd : float64[nd]
    expected : float64[np, nk, nd]
        Expected putts.
    chances : float64[np, nk, nd, COUNTS]
        Chance to be down in at most 1, 2 ... putts.
    pace_ft : float64[np, nk, nd]
        Roll past the hole that is aimed for [ft].
    """

    slopes: tuple[float, ...]
    direction_rad: np.ndarray
    root_step: float
    distance_yd: np.ndarray
    expected: np.ndarray
    chances: np.ndarray
    pace_ft: np.ndarray

    def at(self, plane: int, direction_rad: float, distance_ft: float) -> tuple[float, np.ndarray, float]:
        """(expected putts, chances[COUNTS], pace [ft]), interpolated as the engine does."""
        place = min(math.sqrt(distance_ft / FT_PER_YD) / self.root_step, self.distance_yd.size - 1.0)
        turn = abs(math.remainder(direction_rad, 2.0 * math.pi)) / self.direction_rad[1]
        if self.expected.shape[1] == 1:  # level greens: the same from every side
            turn = 0.0
        i, k = min(int(place), self.distance_yd.size - 2), min(int(turn), self.direction_rad.size - 2)
        w, u, other = place - i, turn - k, min(k + 1, self.expected.shape[1] - 1)
        found = [
            (1.0 - u) * ((1.0 - w) * table[plane, k, i] + w * table[plane, k, i + 1])
            + u * ((1.0 - w) * table[plane, other, i] + w * table[plane, other, i + 1])
            for table in (self.expected, self.chances, self.pace_ft)
        ]
        return float(found[0]), np.asarray(found[1]), float(found[2])


@lru_cache(maxsize=1)
def _quadrature() -> tuple[np.ndarray, np.ndarray]:
    """Gauss-Legendre on (0, 1), and a lattice of roll and line with normal weights (see the kernel).

    The rows of the lattice are shifted by the golden section: the value is hardly smooth next to the hole,
    and a product of two rules looks there at a few distances only.
    """
    x, w = np.polynomial.legendre.leggauss(DROPPING)
    nodes = np.stack([0.5 * (x + 1.0), 0.5 * w])
    rows, columns = np.meshgrid(np.arange(-40, 41), np.arange(-40, 41), indexing="ij")
    roll = rows * LATTICE[0]
    line = (columns + np.mod(rows * 0.5 * (math.sqrt(5.0) - 1.0), 1.0)) * LATTICE[1]
    within = np.hypot(roll, line) < LATTICE[2]
    lattice = np.stack([roll[within], line[within], np.exp(-0.5 * (roll**2 + line**2))[within]])
    lattice[2] /= lattice[2].sum()
    return nodes, lattice


def _level(skill: Putting, stimp_ft: float) -> PuttTable:
    """A player's table where no slope is told."""
    return putt_table(
        skill.angle_sd_deg,
        skill.distance_sd,
        angle_growth_deg_per_ft=skill.angle_growth_deg_per_ft,
        stimp_ft=stimp_ft,
    )


@lru_cache(maxsize=64)  # many greens of a course fall alike
def _of_player(
    skill: Putting, stimp_ft: float, slope: float, told_stimp_ft: float, reading_sd: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """(expected, chances, pace [ft]) of a player on one plane, axes [direction, distance]."""
    return _on_plane(skill, _level(skill, stimp_ft), stimp_ft, slope, told_stimp_ft, reading_sd)


def _on_plane(
    skill: Putting, flat: PuttTable, stimp_ft: float, slope: float, told_stimp_ft: float, reading_sd: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """The same, the level table given."""
    errors = errors_on_plane(skill, flat, stimp_ft, slope, told_stimp_ft=told_stimp_ft, reading_sd=reading_sd)
    return _solve(errors, flat, stimp_ft, slope)


def _solve(
    errors: PlaneErrors, flat: PuttTable, stimp_ft: float, slope: float
) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """(expected, chances, pace [ft]) on one plane, axes [direction, distance]."""
    plane = plane_of(slope, stimp_ft)
    ways = np.column_stack(
        [
            plane.slowing / M_PER_YD,
            plane.along,
            plane.steep,
            np.cos(plane.direction),
            np.sin(plane.direction),
            errors.roll_variance,
        ]
    )
    green = np.array([putting.HOLE_RADIUS_M, putting.CAPTURE_LIMIT_MPS, 0.0]) / M_PER_YD
    green[2] = putting.FURTHEST_LEAVE_FT / FT_PER_YD
    expected = np.repeat(flat.expected, DIRECTIONS, axis=0)
    pace = np.repeat(flat.pace_ft / FT_PER_YD, DIRECTIONS, axis=0)
    nodes, lattice = _quadrature()
    chances = np.zeros((DIRECTIONS, flat.distance_yd.size, COUNTS))
    fill_sloped_putts(
        ways,
        errors.line_variance,
        errors.reading_sd,
        green,
        np.array([SHORTEST_AIM, BOLDEST_AIM_YD]),
        nodes,
        lattice,
        np.array([flat.root_step, plane.direction[1]]),
        SEEK_EVERY,
        expected,
        chances,
        pace,
    )
    return expected, chances, pace * FT_PER_YD


def putt_tables(
    skill: Putting,
    stimp_ft: float = putting.DEFAULT_STIMP_FT,
    slopes: Sequence[float] = (0.0,),
    *,
    flat: PuttTable | None = None,
    told_stimp_ft: float = putting.DEFAULT_STIMP_FT,
    reading_sd: float = putting.READING_SD,
) -> PuttTables:
    """Solve a player's putting on planes: best pace, chances and expected putts by direction and distance.

    Parameters
    ----------
    skill : Putting
    stimp_ft : float
        Speed of the green.
    slopes : sequence of float
        Slope of each plane, rise over run, not negative; 0 is the green of no told slope. Equal slopes are
        solved once.
    flat : PuttTable, optional
        The player's table for this Stimp where no slope is told; solved here if not given.
    told_stimp_ft : float
        Speed of the greens the player's figures are from.
    reading_sd : float
        Of the slope read, as a share of it; the fit varies it.

    Raises
    ------
    ValueError
        If a slope is negative or not finite.
    """
    if not all(math.isfinite(slope) and slope >= 0.0 for slope in slopes):
        raise ValueError(f"slopes must be finite and not negative, found {tuple(slopes)}")
    own, flat = flat is None, _level(skill, stimp_ft) if flat is None else flat
    solved: dict[float, tuple[np.ndarray, np.ndarray, np.ndarray]] = {}
    for slope in slopes:
        if slope in solved:
            continue
        if slope > 0.0 and own:
            solved[slope] = _of_player(skill, stimp_ft, slope, told_stimp_ft, reading_sd)
        elif slope > 0.0:
            solved[slope] = _on_plane(skill, flat, stimp_ft, slope, told_stimp_ft, reading_sd)
        else:
            expected, chances, pace = flat.expected, flat.chances, flat.pace_ft
            solved[slope] = (
                np.repeat(expected, DIRECTIONS, axis=0),
                np.repeat(chances, DIRECTIONS, axis=0),
                np.repeat(pace, DIRECTIONS, axis=0),
            )
    return PuttTables(
        slopes=tuple(slopes),
        direction_rad=np.linspace(0.0, math.pi, DIRECTIONS),
        root_step=flat.root_step,
        distance_yd=flat.distance_yd,
        expected=np.stack([solved[slope][0] for slope in slopes]),
        chances=np.stack([solved[slope][1] for slope in slopes]),
        pace_ft=np.stack([solved[slope][2] for slope in slopes]),
    )
