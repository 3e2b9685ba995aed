"""What one more reading would help most."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .network import Adjusted, Reading, jacobian
from .readings import Survey

LEAST_GAIN = 0.15
"""A reading that narrows the worst point by less than this share is not worth the walk."""

LEAST_SD_YD = 1.5
"""Points all known to this are good enough for a hole drawn in yards [yd]."""

EQUAL_RANGE = 0.5
"""A gap is only asked for between points whose ranges differ by less than this share of it: beyond, it says
little of the angle."""


@dataclass(frozen=True)
class Advice:
    """One more reading.

    Attributes
    ----------
    reading : Reading
        The most useful one, its value as expected now.
    point : str
        The point it helps most.
    before_yd, after_yd : float
        Standard deviation of that point's worse coordinate, now and then.
    """

    reading: Reading
    point: str
    before_yd: float
    after_yd: float


def best_next(survey: Survey, found: Adjusted) -> Advice | None:
    """The range or gap, not yet taken, that takes most from the summed variance of all points.

    By the update of a covariance C with one row a of error s: C - C a a' C / (s^2 + a' C a).
    """
    sd = float(np.mean([r.sd_yd for r in survey.ranges]))
    best: tuple[float, Reading, np.ndarray] | None = None
    for reading in _candidates(survey, found, sd):
        row = jacobian(found, reading)
        moved = found.covariance @ row
        less = np.outer(moved, moved) / (1.0 + row @ moved)  # the row is already over its error
        gain = float(np.trace(less))
        if best is None or gain > best[0]:
            best = (gain, reading, less)
    if best is None:
        return None
    _, reading, less = best
    before, after = np.diag(found.covariance), np.diag(found.covariance - less)
    worst = int(np.argmax(before - after))
    point = next(key for key, column in found.columns.items() if column == worst)[0]
    now, then = float(np.sqrt(before[worst])), float(np.sqrt(max(after[worst], 0.0)))
    if now < LEAST_SD_YD or then > (1.0 - LEAST_GAIN) * now:
        return None
    return Advice(reading, point, now, then)


def _candidates(survey: Survey, found: Adjusted, sd: float) -> list[Reading]:
    taken = {(r.stand, r.point) for r in survey.ranges}
    gaps = {(g.stand, frozenset((g.first, g.second))) for g in survey.gaps}
    points = survey.points

    def apart(a: str, b: str) -> float:
        (ax, ay), (bx, by) = found.places[a], found.places[b]
        return float(np.hypot(bx - ax, by - ay))

    out = [
        Reading("distance", stand, point, apart(stand, point), sd, f"range from the {stand} to {point}")
        for stand in dict.fromkeys([*survey.stands, *points])  # any point may become a stand
        for point in points
        if (stand, point) not in taken and (point, stand) not in taken and stand != point
    ]
    for stand in survey.stands:
        seen = [point for point in points if (stand, point) in taken]
        for i, first in enumerate(seen):
            for second in seen[i + 1 :]:
                gap = apart(first, second)
                differ = abs(apart(stand, first) - apart(stand, second))
                if (
                    gap > 2.0
                    and differ < EQUAL_RANGE * gap
                    and (stand, frozenset((first, second))) not in gaps
                ):
                    words = f"gap from the {stand} between {first} and {second}"
                    out.append(Reading("distance", first, second, gap, sd, words))
    return out
