"""The putting table of a player on a green of a given speed."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from ..kernels.putting import fill_putts
from ..physics import putting
from ..units import FT_PER_YD, M_PER_YD

GREATEST_YD = 60.0
"""Longest putt in the table: greens longer than this are not built."""

DISTANCES = 141
"""Grid points, uniform in the root of distance: 2 in apart at 1 ft, 0.4 ft at 5 ft, 2.5 ft at 180 ft."""

COUNTS = 4
"""Columns of chances: down in at most 1 ... 4; an 18 handicap needs five once in 10,000 from 90 ft."""

SHORTEST_AIM = 0.10
"""Furthest short of the hole that is aimed, as a share of the distance: never the best in practice."""

BOLDEST_AIM_YD = 1.5
"""Furthest past the hole that is aimed [yd]."""


@dataclass(frozen=True)
class PuttTable:
    """Putting by distance; axes [direction to the fall line, distance], one direction on a flat green.

    Attributes
    ----------
    root_step : float
        Point i lies at ``(i root_step)^2`` yards.
    distance_yd : float64[nd]
    expected : float64[1, nd]
        Expected putts.
    chances : float64[1, nd, COUNTS]
        Chance to be down in at most 1, 2 ... putts.
    pace_ft : float64[1, nd]
        Roll past the hole that is aimed for [ft].
    """

    root_step: float
    distance_yd: np.ndarray
    expected: np.ndarray
    chances: np.ndarray
    pace_ft: np.ndarray

    def at_ft(self, distance_ft: float) -> tuple[float, np.ndarray]:
        """(expected putts, chances[COUNTS]) from a distance in feet, interpolated as the engine does."""
        place = min(math.sqrt(distance_ft / FT_PER_YD) / self.root_step, self.distance_yd.size - 1.0)
        i = min(int(place), self.distance_yd.size - 2)
        w = place - i
        return (
            float((1.0 - w) * self.expected[0, i] + w * self.expected[0, i + 1]),
            (1.0 - w) * self.chances[0, i] + w * self.chances[0, i + 1],
        )


@lru_cache(maxsize=1)
def _nodes() -> np.ndarray:
    """Quadrature rows of the kernel: Gauss-Legendre on (0, 1), Gauss-Hermite for roll and angle."""
    n, n_roll, n_angle = 32, 16, 8
    nodes = np.zeros((6, n))
    x, w = np.polynomial.legendre.leggauss(n)
    nodes[0], nodes[1] = 0.5 * (x + 1.0), 0.5 * w
    for row, count in ((2, n_roll), (4, n_angle)):
        x, w = np.polynomial.hermite_e.hermegauss(count)
        if row == 4:  # left and right are alike: one side, twice
            x, w = x[count // 2 :], 2.0 * w[count // 2 :]
        nodes[row, : x.size], nodes[row + 1, : x.size] = x, w / math.sqrt(2.0 * math.pi)
    return nodes


@lru_cache(maxsize=64)  # one green speed and few players on all holes of a course
def putt_table(
    angle_sd_deg: float,
    distance_sd: float,
    *,
    angle_growth_deg_per_ft: float = putting.ANGLE_GROWTH_DEG_PER_FT,
    stimp_ft: float = putting.DEFAULT_STIMP_FT,
    distances: int = DISTANCES,
) -> PuttTable:
    """Solve the putting of a player: best pace, chances and expected putts at every distance.

    Parameters
    ----------
    angle_sd_deg, angle_growth_deg_per_ft : float
        The starting line errs by a normal angle of sd ``hypot(angle_sd, growth x distance)`` [deg].
    distance_sd : float
        The roll errs by a normal amount of sd ``distance_sd x roll``.
    stimp_ft : float
        Speed of the green.
    distances : int
        Grid points; a test refines them.
    """
    root_step = math.sqrt(GREATEST_YD) / (distances - 1)
    expected = np.empty(distances)
    chances = np.empty((distances, COUNTS))
    pace = np.empty(distances)
    skill = np.array(
        [
            math.radians(angle_sd_deg),
            math.radians(angle_growth_deg_per_ft) * FT_PER_YD,
            distance_sd,
        ]
    )
    green = np.array([putting.deceleration_mps2(stimp_ft), putting.HOLE_RADIUS_M, putting.CAPTURE_LIMIT_MPS])
    fill_putts(
        skill,
        green / M_PER_YD,
        np.array([SHORTEST_AIM, BOLDEST_AIM_YD]),
        _nodes(),
        root_step,
        expected,
        chances,
        pace,
    )
    return PuttTable(
        root_step=root_step,
        distance_yd=(np.arange(distances) * root_step) ** 2,
        expected=expected[None],
        chances=chances[None],
        pace_ft=pace[None] * FT_PER_YD,
    )
