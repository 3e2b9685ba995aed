"""What is believed of a player before any shot: how far from the level, and how much alike with every club.

Each number of a club is, on the scales of `simulator.player.doubt`,

    level + player + family + own

where `player` is one for all clubs, `family` one for the clubs of a family (woods with the driver, irons with
wedges, hybrids) and `own` the club's, each normal round nothing. How large each of the three is in *this*
player is not known either: some golfers miss right with every club, others left with irons and right with
woods (common practice); of one handicap some are short and straight, others long and wild. So for where
strikes finish and for both spreads the three standard deviations are unknowns, before any shot a half
Student's t (Gelman 2006, Prior distributions for variance parameters in hierarchical models, Bayesian
Analysis 1; from memory). The shots of all clubs together say what they are, and the sum has the long tail of
a Student's t: who is far from the level is not pulled back as if there were no such golfer.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from itertools import product

import numpy as np

from ...physics.launch import family
from ..doubt import LEVEL, SHARED
from .likelihood import PARAMETERS, Floats

CARRY_LOG = 0.15
"""Before any shot is seen, of the logarithm of a carry: wide, because how far somebody hits it is the first
thing shots tell, and a handicap says little of it; assumed."""

BIAS_RIGHT_DEG = 2.5
"""The same of where its strikes finish on average [deg]: wide too, for a handicap says nothing of it. A
usual miss to one side in words ("miss right", `player/habits.py`) is a bias of 0.43 of a level's spread: 2
to 3 degrees."""

SPREAD_LOG = 0.22
"""The same of the logarithms of both spreads: the doubt of a level (`doubt.LEVEL`, 0.18) and, for a level is
of play on a course and somebody typed it, 0.12 more, which is six strokes of handicap: from 0 to 36 the
spread of drives doubles (Broadie 2008, Table 1). Assumed; no table of how players of one handicap differ was
found. The same 0.18 is left of the spread if it goes with the handicap by a correlation of 0.7 among golfers
whose handicaps scatter by 9."""

LOSS_LOG = 0.3
"""The same of what a mishit loses; assumed."""

BEFORE = np.array([CARRY_LOG, BIAS_RIGHT_DEG, SPREAD_LOG, SPREAD_LOG, LEVEL.mishit_logit, LOSS_LOG])
"""Doubt before any shot, in the order of `PARAMETERS`: eight clubs in ten lie within 1.28 of these. Of those
that are pooled the others lie farther out than a normal has them."""

PARTS = {
    "bias_right_deg": (0.5, 0.25, 0.25),
    "log_direction": (SHARED, 0.1, 0.9 - SHARED),
    "log_distance": (SHARED, 0.1, 0.9 - SHARED),
}
"""Numbers of which the shots say how much clubs have in common, and the usual share of player, family and own
in their variance; assumed. Spreads share as those of a player who was not measured do."""

TAIL = 3.0
"""Degrees of freedom of the half Student's t; assumed. With it one golfer in 40 has half the level's spread
or less, or twice it or more, with a club; with a normal of the same middle one in 600."""

SCALES = np.array([0.6, 1.2, 2.5, 6.0])
"""Standard deviations tried, over the scale of the half Student's t: from little to the largest in a hundred,
each about twice the last."""

_FAMILY = {"driver": "wood", "wedge": "iron"}
"""Families of `physics.launch` whose misses are taken together; hybrids stand alone, for some golfers swing
them as irons and others as woods."""


@dataclass(frozen=True)
class Pool:
    """Standard deviations of the three parts of one number, on its scale."""

    player: float
    family: float
    own: float

    def covariance(self, kinds: Sequence[str]) -> Floats:
        """Covariance of the number over clubs of these kinds, float64[clubs, clubs]."""
        groups = np.array([_FAMILY.get(family(kind), family(kind)) for kind in kinds])
        alike = groups[:, None] == groups[None, :]
        return np.asarray(self.player**2 + self.family**2 * alike + self.own**2 * np.eye(len(kinds)))


@cache
def pools(parameter: str) -> tuple[tuple[Pool, float], ...]:
    """What a number's three standard deviations may be before any shot, and how likely each is.

    A number that is not in `PARTS` has one pool: its doubt, `SHARED` of it the player's.
    """
    doubt = float(BEFORE[PARAMETERS.index(parameter)])
    if parameter not in PARTS:
        return ((Pool(doubt * SHARED**0.5, 0.0, doubt * (1.0 - SHARED) ** 0.5), 1.0),)
    tried = _tried(parameter)
    parts = np.array(PARTS[parameter])
    unit = doubt * _narrower(tried, parts) * np.sqrt(parts)
    return tuple((Pool(*map(float, unit * scales)), odds) for scales, odds in tried)


@cache
def before_sd(parameter: str) -> float:
    """Standard deviation of a number of one club before any shot, its tail included."""
    return float(
        sum(odds * (one.player**2 + one.family**2 + one.own**2) for one, odds in pools(parameter)) ** 0.5
    )


def _tried(parameter: str) -> list[tuple[Floats, float]]:
    """Scales of player, family and own that are tried together, and how likely they are.

    Of a spread family and own have one scale: telling them apart would take four times as long and hardly
    moves a spread.
    """
    weight = SCALES * (1.0 + SCALES**2 / TAIL) ** (-0.5 * (TAIL + 1.0))  # density over the logarithm
    weight /= weight.sum()
    free = 3 if parameter == "bias_right_deg" else 2
    found = []
    for at in product(range(len(SCALES)), repeat=free):
        scales = SCALES[[*at, *at[-1:] * (3 - free)]]
        found.append((scales, float(np.prod(weight[list(at)]))))
    return found


def _narrower(tried: Sequence[tuple[Floats, float]], parts: Floats) -> float:
    """Scale of the half Student's t at which eight in ten numbers lie within 1.28 doubts."""
    from scipy.optimize import brentq
    from scipy.special import ndtr, ndtri

    sds = np.array([np.sqrt(parts @ scales**2) for scales, _ in tried])
    odds = np.array([odds for _, odds in tried])

    def over(scale: float) -> float:
        return float(odds @ ndtr(ndtri(0.9) / (scale * sds))) - 0.9

    return float(brentq(over, 0.05, 5.0))
