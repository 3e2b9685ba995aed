"""Widths and depths that 8 balls of 10 finish inside, and the spreads of solid strikes that give them.

Meant are all strikes of a club, mishits included, on a clean lie in still air and at rest on level medium
fairway: the width is the distance between the tenth and the ninetieth ball of a hundred counted from the
left, the depth the same counted from the short end, each by itself. (About 64 of 100 finish inside both.)
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from ..physics.strike import CURVE_SHARE
from .model import Club
from .runs import run_yd

INSIDE = 0.8
"""Share of balls that a width or a depth holds."""

CURVE_GROWS = 2.0
"""Heading of a curving ball when it lands over its place off line: its track bends as the square of the way."""

LEAST_STRIKE = 0.1
"""No strike carries less than this share of the stock carry, as in the game's flight tables."""

_NODES, _WEIGHTS = np.polynomial.hermite_e.hermegauss(48)
_WEIGHTS = _WEIGHTS / _WEIGHTS.sum()


@dataclass(frozen=True)
class Pattern:
    """Finishes of one club.

    Attributes
    ----------
    club : Club
        Its spreads, biases, mishits and curve are read; its bias to the right is left out.
    """

    club: Club

    @cached_property
    def _strikes(self) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
        """Strikes over the stock carry, their weights, and how much wider each is than a solid one."""
        c = self.club
        solid = 1.0 + c.bias_long_pct / 100.0
        missed = solid - c.mishit_loss_pct / 100.0
        strikes = np.r_[
            solid + c.distance_sd_pct / 100.0 * _NODES, missed + c.mishit_distance_sd_pct / 100.0 * _NODES
        ]
        weights = np.r_[(1.0 - c.mishit_rate) * _WEIGHTS, c.mishit_rate * _WEIGHTS]
        wider = np.r_[np.ones(_NODES.size), np.full(_NODES.size, c.mishit_direction_factor)]
        return np.maximum(strikes, LEAST_STRIKE), weights, wider

    @cached_property
    def _levers(self) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Yards at rest per radian off line: of the start, and of the curve of the solid strike's landing."""
        strikes = self._strikes[0]
        carry = strikes * self.club.carry_yd
        run = run_yd(self.club.kind, self.club.carry_yd, strikes)
        solid = 1.0 + self.club.bias_long_pct / 100.0
        return carry + run, strikes / solid * (carry + CURVE_GROWS * run)

    def along_yd(self, share: float) -> float:
        """Distance at rest that this share of all strikes finishes short of [yd]."""
        from scipy.optimize import brentq
        from scipy.special import ndtr

        c = self.club
        solid = 1.0 + c.bias_long_pct / 100.0
        missed = solid - c.mishit_loss_pct / 100.0
        sd, missed_sd = max(c.distance_sd_pct, 1e-6) / 100.0, max(c.mishit_distance_sd_pct, 1e-6) / 100.0

        def over(strike: float) -> float:
            short = (1.0 - c.mishit_rate) * ndtr((strike - solid) / sd)
            return float(short + c.mishit_rate * ndtr((strike - missed) / missed_sd)) - share

        strike = brentq(over, missed - 10.0 * missed_sd - sd, solid + 10.0 * (sd + missed_sd), xtol=1e-9)
        strike = max(strike, LEAST_STRIKE)
        return strike * c.carry_yd + float(run_yd(c.kind, c.carry_yd, strike))

    @property
    def depth_yd(self) -> float:
        """Depth that 8 of 10 finish inside [yd]."""
        return self.along_yd(0.5 + INSIDE / 2.0) - self.along_yd(0.5 - INSIDE / 2.0)

    def width_yd(self, direction_sd_deg: float | None = None) -> float:
        """Width that 8 of 10 finish inside [yd], at the club's spread of direction or another."""
        from scipy.optimize import brentq
        from scipy.special import ndtr

        sd_deg = self.club.direction_sd_deg if direction_sd_deg is None else direction_sd_deg
        _, weights, wider = self._strikes
        start, curve = self._levers
        sd = np.radians(max(sd_deg, 1e-6)) * wider * np.sqrt((1 - CURVE_SHARE) * start**2 + CURVE_SHARE * curve**2)
        turned = self.club.curve_yd / self.club.carry_yd
        middle = turned * (curve - start * (weights @ curve) / (weights @ start))
        far = float(np.abs(middle).max() + 8.0 * sd.max())

        def edge(share: float) -> float:
            return float(brentq(lambda x: weights @ ndtr((x - middle) / sd) - share, -far, far, xtol=1e-7))

        return edge(0.5 + INSIDE / 2.0) - edge(0.5 - INSIDE / 2.0)


def direction_for_width(club: Club, width_yd: float, most_deg: float) -> float | None:
    """Spread of direction of solid strikes [deg] at which all strikes have this width; None: beyond reach."""
    from scipy.optimize import brentq

    pattern = Pattern(club)
    if not pattern.width_yd(1e-3) < width_yd < pattern.width_yd(most_deg):
        return None
    return float(brentq(lambda sd: pattern.width_yd(sd) - width_yd, 1e-3, most_deg, xtol=1e-7))


def widened(club: Club, by: float) -> Club:
    """A club with its spread of distance ``by`` times as wide; a mishit keeps its ratio to a solid strike."""
    return replace(
        club,
        distance_sd_pct=club.distance_sd_pct * by,
        mishit_distance_sd_pct=club.mishit_distance_sd_pct * by,
    )
