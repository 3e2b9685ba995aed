"""Widths and depths that 8 balls of 10 finish inside, and the spreads of solid strikes that give them.

Meant are all strikes of a club, mishits included, on a clean lie in still air and at rest on level medium
fairway: the width is the distance between the tenth and the ninetieth ball of a hundred counted from the
left, the depth the same counted from the short end, each by itself. (About 64 of 100 finish inside both.)
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from ..physics.strike import start_and_curve_sd
from .model import Club, Floats
from .runs import TILT_NODES, TILT_WEIGHTS, run_yd, tilted

INSIDE = 0.8
"""Share of balls that a width or a depth holds."""

CURVE_GROWS = 2.0
"""Heading of a curving ball when it lands, over its angle off line there: the track bends as the square of
the way."""

LEAST_STRIKE = 0.1
"""No strike carries less than this share of the stock carry, as in the game's flight tables."""

LEAST_SD_DEG = 1e-3
"""Least spread of direction that is tried for a width [deg]."""

_STRIKE_NODES, _STRIKE_WEIGHTS = np.polynomial.hermite_e.hermegauss(20)
_STRIKE_WEIGHTS = _STRIKE_WEIGHTS / _STRIKE_WEIGHTS.sum()


@dataclass(frozen=True)
class Pattern:
    """Finishes of one club.

    Attributes
    ----------
    club : Club
        Its spreads, biases, mishits and curve are read; its bias to the right is left out.
    """

    club: Club

    def _halves(self) -> tuple[tuple[float, float, float, float], ...]:
        """Solid strikes and mishits: share, mean and spread (of the stock carry), width over a solid's."""
        c = self.club
        solid = 1.0 + c.bias_long_pct / 100.0
        return (
            (1.0 - c.mishit_rate, solid, c.distance_sd_pct / 100.0, 1.0),
            (c.mishit_rate, solid - c.mishit_loss_pct / 100.0, c.mishit_distance_sd_pct / 100.0,
             c.mishit_direction_factor),
        )  # fmt: skip

    def _tilt(self, direction_sd_deg: float) -> tuple[float, float]:
        """Mean tilt and its standard deviation in solid strikes [rad]."""
        c = self.club
        law = tilted(c.kind, c.carry_yd)
        mean = law.tilt(math.asin(max(-1.0, min(1.0, c.curve_yd / c.carry_yd))))
        return mean, start_and_curve_sd(math.radians(direction_sd_deg))[1] / law.slope(mean)

    def along_yd(self, share: float) -> float:
        """Distance at rest that this share of all strikes finishes short of [yd]."""
        from scipy.optimize import brentq
        from scipy.special import ndtr

        c = self.club
        law = tilted(c.kind, c.carry_yd)
        mean, sd = self._tilt(c.direction_sd_deg)
        halves = [
            (
                part * TILT_WEIGHTS,
                middle,
                max(spread, 1e-8),
                law.kept(mean + wide * sd * TILT_NODES) / law.kept(mean),
            )
            for part, middle, spread, wide in self._halves()
        ]

        def over(strike: float) -> float:
            short = (w @ ndtr((strike / kept - middle) / spread) for w, middle, spread, kept in halves)
            return float(sum(short)) - share

        far = 10.0 * max(spread for _, _, spread, _ in halves) + 0.5
        strike = max(brentq(over, -far, 1.0 + far, xtol=1e-9), LEAST_STRIKE)
        return strike * c.carry_yd + float(run_yd(c.kind, c.carry_yd, strike))

    @property
    def depth_yd(self) -> float:
        """Depth that 8 of 10 finish inside [yd]."""
        return self.along_yd(0.5 + INSIDE / 2.0) - self.along_yd(0.5 - INSIDE / 2.0)

    def width_yd(self, direction_sd_deg: float | None = None) -> float:
        """Width that 8 of 10 finish inside [yd], at the club's spread of direction or another."""
        from scipy.optimize import brentq
        from scipy.special import ndtr

        sd_deg = max(self.club.direction_sd_deg if direction_sd_deg is None else direction_sd_deg, 1e-6)
        weights, side, along, wide = self._places(sd_deg)
        middle = side - along * (weights @ side) / (weights @ along)
        sd = start_and_curve_sd(math.radians(sd_deg))[0] * wide * along
        far = float(np.abs(middle).max() + 8.0 * sd.max())

        def edge(share: float) -> float:
            return float(brentq(lambda x: weights @ ndtr((x - middle) / sd) - share, -far, far, xtol=1e-5))

        upper = edge(0.5 + INSIDE / 2.0)
        return 2.0 * upper if not self.club.curve_yd else upper - edge(0.5 - INSIDE / 2.0)

    def _places(self, sd_deg: float) -> tuple[Floats, Floats, Floats, Floats]:
        """Finishes from one start line: weight, yards right of it, yards along it, width over a solid's."""
        c = self.club
        law = tilted(c.kind, c.carry_yd)
        mean, sd = self._tilt(sd_deg)
        solid = 1.0 + c.bias_long_pct / 100.0
        found = []
        for part, middle, spread, wider in self._halves():
            strike = np.maximum(middle + spread * _STRIKE_NODES, LEAST_STRIKE)[:, None]
            tilt = (mean + wider * sd * TILT_NODES)[None, :]
            carry = strike * c.carry_yd * (law.kept(tilt) / law.kept(mean))
            run = run_yd(c.kind, c.carry_yd, strike)
            angle = strike / solid * law.angle(tilt)
            side = carry * angle + run * np.sin(CURVE_GROWS * angle)
            along = carry + run * np.cos(CURVE_GROWS * angle)
            weight = part * _STRIKE_WEIGHTS[:, None] * TILT_WEIGHTS[None, :]
            found.append([weight.ravel(), side.ravel(), along.ravel(), np.full(side.size, wider)])
        weights, side, along, wide = (np.concatenate(column) for column in zip(*found, strict=True))
        return weights, side, along, wide


def direction_for_width(club: Club, width_yd: float, most_deg: float) -> float | None:
    """Spread of direction of solid strikes [deg] at which all strikes have this width; None: beyond reach."""
    from scipy.optimize import brentq

    pattern = Pattern(club)
    if not pattern.width_yd(LEAST_SD_DEG) < width_yd < pattern.width_yd(most_deg):
        return None
    return float(brentq(lambda sd: pattern.width_yd(sd) - width_yd, LEAST_SD_DEG, most_deg, xtol=1e-5))


def widened(club: Club, by: float) -> Club:
    """A club with its spread of distance ``by`` times as wide; a mishit keeps its ratio to a solid strike."""
    return replace(
        club,
        distance_sd_pct=club.distance_sd_pct * by,
        mishit_distance_sd_pct=club.mishit_distance_sd_pct * by,
    )
