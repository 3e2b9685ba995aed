"""How a strike goes wrong: what share of the direction spread starts off line and what share curves."""

from __future__ import annotations

import math

CURVE_SHARE = 0.5
"""Share of the *variance* of direction that comes from curve; the rest starts off line. Assumed: no
published split by level was found. It matters little in still air (the finish is the same) and much
round a tree."""


def start_and_curve_sd(direction_sd: float) -> tuple[float, float]:
    """Standard deviations of start direction and of the turn by curve that add up to `direction_sd`."""
    return (direction_sd * math.sqrt(1.0 - CURVE_SHARE), direction_sd * math.sqrt(CURVE_SHARE))


PART_CARRIES_RATIO = 1.4
"""Part swings are tabled at carries in this ratio; between two of them the longer one is scaled down."""

SHORTEST_PART_CARRY_YD = 3.0
"""Shortest part swing tabled [yd]; shorter chips are scaled down from it."""
