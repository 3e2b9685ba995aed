"""An offset from laser readings: two ranges from the tee and the gap between their ends."""

from __future__ import annotations

import itertools
import math

from simulator.hole.survey.readings import LASER_ERROR_YD, SDS_IN_STATED_ERROR

LOOSE_YD = 4.0
"""An offset less certain than this [yd] is warned of: half the width of a bunker (assumed)."""


def offset_from_gap(range_yd: float, line_range_yd: float, gap_yd: float) -> tuple[float, float] | None:
    """Station and offset [yd] of a point by its range, the range of a point on the line, and their gap.

    Law of cosines: cos A = (R1^2 + R2^2 - G^2) / (2 R1 R2) is the angle at the tee between the two; the
    offset is R1 sin A, the station R1 cos A. None when no triangle has these sides.
    """
    if range_yd <= 0.0 or line_range_yd <= 0.0:
        return None
    cosine = (range_yd**2 + line_range_yd**2 - gap_yd**2) / (2.0 * range_yd * line_range_yd)
    if not -1.0 <= cosine <= 1.0:
        return None
    return range_yd * cosine, range_yd * math.sqrt(1.0 - cosine * cosine)


def offset_limits(range_yd: float, line_range_yd: float, gap_yd: float) -> tuple[float, float]:
    """Least and greatest offset [yd] when each of the three readings is a yard out either way.

    Readings that fit no triangle then mean a point on the line: offset 0.
    """
    found = []
    steps = (-LASER_ERROR_YD, 0.0, LASER_ERROR_YD)
    for a, b, c in itertools.product(steps, repeat=3):
        place = offset_from_gap(range_yd + a, line_range_yd + b, gap_yd + c)
        found.append(place[1] if place else 0.0)
    return min(found), max(found)


def offset_sd_yd(range_yd: float, line_range_yd: float, gap_yd: float) -> float:
    """Standard deviation of the offset [yd]: each reading a deviation out in turn, squares added.

    A reading's deviation is the laser's and that of rounding to a whole yard, as in a survey.
    """
    sd = math.hypot(LASER_ERROR_YD / SDS_IN_STATED_ERROR, 1.0 / math.sqrt(12.0))
    readings = (range_yd, line_range_yd, gap_yd)
    total = 0.0
    for k in range(3):
        ends = []
        for sign in (-1.0, 1.0):
            moved = [value + sign * sd * (j == k) for j, value in enumerate(readings)]
            place = offset_from_gap(*moved)
            ends.append(place[1] if place else 0.0)
        total += (0.5 * (ends[1] - ends[0])) ** 2
    return math.sqrt(total)
