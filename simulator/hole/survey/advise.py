"""What one more reading would help most, and which would pin each point that is loose.

A point of which only a range is known lies, at its best place, on the line of play, and there every other
range along the line seems to say nothing of its offset. Readings are therefore weighed where such points
*typically* lie: at the median distance from the line, on the side that was said.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

import numpy as np

from .network import Adjusted, Reading, jacobian, moved
from .readings import Survey, gap_words, range_words

LEAST_GAIN = 0.15
"""A reading that narrows the worst point by less than this share is not worth the walk."""

LEAST_SD_YD = 1.5
"""Points all known to this are good enough for a hole drawn in yards [yd]."""

PINNED_SD_YD = 4.0
"""A reading that leaves a loose point within this [yd] is said to pin it: 8 in 10 within 5 yards."""

EQUAL_RANGE = 0.5
"""A gap is only asked for between points whose ranges differ by less than this share of it: beyond, it says
little of the angle."""


@dataclass(frozen=True)
class Advice:
    """One more reading.

    Attributes
    ----------
    reading : Reading
        The most useful one, its value about as expected now.
    point : str
        The point it helps most.
    before_yd, after_yd : float
        Standard deviation of that point's worse coordinate, now (over the places that would fit) and then.
    """

    reading: Reading
    point: str
    before_yd: float
    after_yd: float


class Adviser:
    """Readings not yet taken, weighed where the points typically lie.

    Parameters
    ----------
    draws : mapping of str to float64[k, 2]
        Places that would fit the readings (`sampling.sampled`).
    beside : mapping of str to float64[k]
        How far right of the line of play those lie [yd].
    """

    def __init__(
        self,
        survey: Survey,
        found: Adjusted,
        draws: Mapping[str, np.ndarray],
        beside: Mapping[str, np.ndarray],
    ) -> None:
        self._found = moved(found, _typical(survey, draws, beside))
        self._sd = {name: np.std(places, axis=0) for name, places in draws.items()}
        sd = float(np.mean([r.sd_yd for r in survey.ranges]))
        self._candidates = []
        for reading in _candidates(survey, self._found, sd):
            row = jacobian(self._found, reading)
            taken = self._found.covariance @ row
            less = np.outer(taken, taken) / (1.0 + row @ taken)  # the row is already over its error
            self._candidates.append((reading, np.diag(less)))

    def best(self) -> Advice | None:
        """The one that takes most from the summed variance of all points, None if none is worth the walk.

        By the update of a covariance C with one row a of error s: C - C a a' C / (s^2 + a' C a).
        """
        if not self._candidates:
            return None
        reading, less = max(self._candidates, key=lambda one: float(one[1].sum()))
        worst = int(np.argmax(less))
        point = next(key for key, column in self._found.columns.items() if column == worst)[0]
        advice = self._advice(point, reading, less)
        worth = advice.before_yd >= LEAST_SD_YD and advice.after_yd <= (1.0 - LEAST_GAIN) * advice.before_yd
        return advice if worth else None

    def pinning(self, points: Iterable[str]) -> dict[str, Advice | None]:
        """For each point the reading that leaves it the least loose; None where no single one pins it."""
        out: dict[str, Advice | None] = {}
        for point in points:
            every = [self._advice(point, *one) for one in self._candidates]
            best = min(every, key=lambda a: a.after_yd, default=None)
            out[point] = best if best is not None and best.after_yd <= PINNED_SD_YD else None
        return out

    def _advice(self, point: str, reading: Reading, less: np.ndarray) -> Advice:
        columns = [k for (name, _), k in self._found.columns.items() if name == point]
        then = np.sqrt(np.maximum(np.diag(self._found.covariance)[columns] - less[columns], 0.0))
        return Advice(reading, point, float(self._sd[point].max()), float(then.max()))


def _typical(
    survey: Survey, draws: Mapping[str, np.ndarray], beside: Mapping[str, np.ndarray]
) -> dict[str, tuple[float, float]]:
    """Of the places that would fit each point, the one at the median distance from the line, on its side."""
    out = {}
    for name, offset in beside.items():
        told = next((r.side for r in survey.ranges if r.point == name and r.side), 0)
        side = told or np.sign(np.median(offset))
        from_median = np.abs(np.abs(offset) - np.median(np.abs(offset)))
        x, y = draws[name][int(np.argmin(np.where(offset * side >= 0.0, from_median, np.inf)))]
        out[name] = (float(x), float(y))
    return out


def _candidates(survey: Survey, found: Adjusted, sd: float) -> list[Reading]:
    taken = {(r.stand, r.point) for r in survey.ranges}
    gaps = {(g.stand, frozenset((g.first, g.second))) for g in survey.gaps}
    points = survey.points

    def apart(a: str, b: str) -> float:
        (ax, ay), (bx, by) = found.places[a], found.places[b]
        return float(np.hypot(bx - ax, by - ay))

    out = []  # gaps first: of readings that say the same, the one that needs no walk
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
                    words = gap_words(stand, first, second)
                    out.append(Reading("distance", first, second, gap, sd, words))
    firm = sorted(points, key=lambda point: found.sd(point, 0) + found.sd(point, 1))
    walked = dict.fromkeys([*survey.stands, *firm])  # any point may become a stand, best one that is known
    out += [
        Reading("distance", stand, point, apart(stand, point), sd, range_words(stand, point))
        for stand in walked
        for point in points
        if (stand, point) not in taken and (point, stand) not in taken and stand != point
    ]
    return out
