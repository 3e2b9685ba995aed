"""Shots on a plane as a mixture of two normals: shares of a circle and medians, by Gauss-Legendre
quadrature."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq
from scipy.special import ndtr

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(192)


@dataclass(frozen=True)
class Pattern:
    """Finishes around a target [any one unit]: solid strikes and mishits, each normal across and along."""

    rate: float
    across: float
    along: float
    bias: float
    loss: float
    factor: float

    def share_within(self, radius: float) -> float:
        """Share of all strikes that finish within ``radius`` of the target."""
        solid = _share(radius, self.across, self.along, self.bias)
        k = self.factor
        miss = _share(radius, k * self.across, k * self.along, self.bias - self.loss)
        return (1.0 - self.rate) * solid + self.rate * miss

    def median(self) -> float:
        """Median distance from the target."""
        top = abs(self.bias) + self.loss + 4.0 * self.factor * max(self.across, self.along)
        return float(brentq(lambda r: self.share_within(r) - 0.5, 1e-9 * top, top))

    def moments(self) -> tuple[float, float, float]:
        """Mean along, and standard deviations across and along, of all strikes."""
        p, k = self.rate, self.factor
        spread = 1.0 + p * (k * k - 1.0)
        return (
            self.bias - p * self.loss,
            self.across * spread**0.5,
            (self.along**2 * spread + p * (1.0 - p) * self.loss**2) ** 0.5,
        )


def _share(radius: float, across: float, along: float, centre: float) -> float:
    """Probability of the circle under one normal, integrated over the half-angle so that the rim is
    smooth."""
    angle = 0.5 * np.pi * _NODES
    x, dx = radius * np.sin(angle), 0.5 * np.pi * radius * np.cos(angle) * _WEIGHTS
    half = radius * np.cos(angle)
    density = np.exp(-0.5 * (x / across) ** 2) / (across * np.sqrt(2.0 * np.pi))
    inside = ndtr((half - centre) / along) - ndtr((-half - centre) / along)
    return float(np.sum(density * inside * dx))
