"""Rough places to start from: the law of cosines, one point after another, on the side that was said."""

from __future__ import annotations

import math

from ...errors import FileError
from .readings import Gap, Range, Survey

Places = dict[str, tuple[float, float]]

ASIDE_YD = 12.0
"""Where a point starts whose side is known and nothing else [yd from the line]."""


def angle_between(first_yd: float, second_yd: float, gap_yd: float) -> float:
    """Angle at the stand between two points [rad], by the law of cosines; 0 when the gap is too short."""
    cosine = (first_yd**2 + second_yd**2 - gap_yd**2) / (2.0 * first_yd * second_yd)
    return math.acos(min(max(cosine, -1.0), 1.0))


def rough_places(survey: Survey) -> Places:
    """A place for every point and stand, the tee at the origin and the line's first point straight ahead.

    Raises
    ------
    FileError
        A point whose side nobody said.
    """
    tee, ahead = survey.stands[0], survey.line[0]
    reach = {(r.stand, r.point): r for r in survey.ranges}
    places: Places = {tee: (0.0, 0.0), ahead: (0.0, reach[tee, ahead].level_yd)}
    waiting = [point for point in survey.points if point not in places]
    lonely = False
    while waiting:
        placed = [point for point in waiting if _place(survey, reach, places, point, lonely)]
        waiting = [point for point in waiting if point not in places]
        if not placed:
            if lonely:
                raise FileError(
                    survey.source, waiting[0], "no range from a stand whose place is known",
                    "a range from the tee, or from a stand read from it",
                )  # fmt: skip
            lonely = True  # nothing but ranges is left: take them alone
    return places


def _place(
    survey: Survey, reach: dict[tuple[str, str], Range], places: Places, point: str, lonely: bool
) -> bool:
    """Place one point if its readings allow; says whether they did."""
    side = next((r.side for r in survey.ranges if r.point == point and r.side), 0)
    for gap in survey.gaps:  # a gap to a point whose place is known
        if point not in (gap.first, gap.second) or gap.stand not in places:
            continue
        other = gap.second if point == gap.first else gap.first
        if other in places:
            turn = angle_between(
                reach[gap.stand, point].level_yd, reach[gap.stand, other].level_yd, gap.gap_yd
            )
            both = [
                _from(places, gap.stand, other, s * turn, reach[gap.stand, point].level_yd) for s in (-1, 1)
            ]
            places[point] = _choose(survey, point, both, side, _turned(gap, point))
            return True
    ranges = [r for r in survey.ranges if r.point == point and r.stand in places]
    if len(ranges) >= 2:
        both = _crossing(places, ranges[0], ranges[1])
        places[point] = _choose(survey, point, both, side, 0)
        return True
    if ranges and lonely:
        r = ranges[0]
        flag = next(
            (r2.point for r2 in survey.ranges if r2.stand == r.stand and r2.point.casefold() == "flag"), ""
        )
        if point.casefold() in ("front", "back") and flag in places:
            places[point] = _from(places, r.stand, flag, 0.0, r.level_yd)
            return True
        x, y = places[r.stand]
        aside = min(side * ASIDE_YD, 0.9 * r.level_yd) - x
        aside = max(-0.9 * r.level_yd, min(aside, 0.9 * r.level_yd))
        places[point] = (x + aside, y + math.sqrt(r.level_yd**2 - aside**2))
        return True
    return False


def _turned(gap: Gap, point: str) -> int:
    """Whether the gap says the point is right (1) or left of the other, seen from its stand."""
    return gap.side if point == gap.second else -gap.side


def _from(places: Places, stand: str, towards: str, turn: float, away_yd: float) -> tuple[float, float]:
    (sx, sy), (tx, ty) = places[stand], places[towards]
    heading = math.atan2(tx - sx, ty - sy) + turn
    return sx + away_yd * math.sin(heading), sy + away_yd * math.cos(heading)


def _crossing(places: Places, one: Range, two: Range) -> list[tuple[float, float]]:
    """Where the circles of two ranges meet (nearest to it, when they do not)."""
    (ax, ay), (bx, by) = places[one.stand], places[two.stand]
    apart = max(math.hypot(bx - ax, by - ay), 1e-6)
    along = (one.level_yd**2 - two.level_yd**2 + apart**2) / (2.0 * apart)
    across = math.sqrt(max(one.level_yd**2 - along**2, 1.0))
    ux, uy = (bx - ax) / apart, (by - ay) / apart
    return [(ax + along * ux + s * across * uy, ay + along * uy - s * across * ux) for s in (-1, 1)]


def _choose(
    survey: Survey, point: str, both: list[tuple[float, float]], side: int, turned: int
) -> tuple[float, float]:
    """The one of two mirror images that was meant: first is to the left seen from the stand, second right."""
    if turned:
        return both[1] if turned > 0 else both[0]
    if side:
        right = [place for place in both if place[0] * side > 0.0]
        if len(right) == 1:
            return right[0]
        if len(right) == 2:  # both on that side of the line: the nearer to it is the usual case
            return min(right, key=lambda place: abs(place[0]))
        return max(both, key=lambda place: place[0] * side)
    if point in survey.line or math.dist(*both) < 2.0:
        return min(both, key=lambda place: abs(place[0]))
    raise FileError(
        survey.source, f"point {point}", "readings that leave it left or right of the line",
        'side = "left" or "right"',
    )  # fmt: skip
