"""The line a shot is aimed on, and what lies along it and beside it."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TypeVar

import numpy as np

Yards = TypeVar("Yards", float, np.ndarray)


@dataclass(frozen=True)
class AimLine:
    """A line from a place.

    Attributes
    ----------
    x_yd, y_yd : float
        Where the shot is played from, in the hole frame.
    bearing_deg : float
        Clockwise from +y.
    """

    x_yd: float
    y_yd: float
    bearing_deg: float

    def at(self, along_yd: Yards, right_yd: Yards | float = 0.0) -> tuple[Yards, Yards]:
        """Place (x, y) so many yards along the line and right of it, a number or an array each [yd]."""
        sin, cos = self._way
        return self.x_yd + along_yd * sin + right_yd * cos, self.y_yd + along_yd * cos - right_yd * sin

    def seen(self, x_yd: Yards, y_yd: Yards) -> tuple[Yards, Yards]:
        """Yards along the line and right of it of a place, a number or an array each."""
        sin, cos = self._way
        dx, dy = x_yd - self.x_yd, y_yd - self.y_yd
        return dx * sin + dy * cos, dx * cos - dy * sin

    @property
    def _way(self) -> tuple[float, float]:
        bearing = math.radians(self.bearing_deg)
        return math.sin(bearing), math.cos(bearing)
