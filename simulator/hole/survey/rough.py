"""Rough places to start from: the law of cosines, one point after another, on the side that was said."""

from __future__ import annotations

import math

import numpy as np

from ...errors import FileError
from ..line import PlayLine
from .readings import Gap, Range, Survey

Places = dict[str, tuple[float, float]]

ASIDE_YD = 12.0
"""Where a point starts whose side is known and nothing else [yd from the line]."""

MIRRORED = 0.5
"""Two images of a corner of the line, the nearer to straight ahead at more than this share of the farther
one's offset, are a bend to either side: only the reader knows which."""


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
    tee, ahead = survey.corners[:2]
    reach = {(r.stand, r.point): r for r in survey.ranges}
    places: Places = {tee: (0.0, 0.0), ahead: (0.0, reach[tee, ahead].level_yd)}
    every = dict.fromkeys([*survey.line, *survey.points])  # the line first: sides are told from it
    waiting = [point for point in every if point not in places]
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
            places[point] = _choose(survey, places, point, both, side, _turned(gap, point))
            return True
    ranges = [r for r in survey.ranges if r.point == point and r.stand in places]
    if len(ranges) >= 2:
        both = _crossing(places, ranges[0], ranges[1])
        places[point] = _choose(survey, places, point, both, side, 0)
        return True
    if ranges and lonely:
        r = ranges[0]
        flag = next(
            (r2.point for r2 in survey.ranges if r2.stand == r.stand and r2.point.casefold() == "flag"), ""
        )
        if point.casefold() in ("front", "back") and flag in places:
            places[point] = _from(places, r.stand, flag, 0.0, r.level_yd)
            return True
        line = line_so_far(survey, places)
        station, offset = line.station_offset(*places[r.stand])
        aside = min(side * ASIDE_YD, 0.9 * r.level_yd) - offset
        aside = max(-0.9 * r.level_yd, min(aside, 0.9 * r.level_yd))
        ahead = math.sqrt(r.level_yd**2 - aside**2)
        places[point] = _out_from(line, places[r.stand], station, aside, ahead)
        return True
    return False


def line_so_far(survey: Survey, places: Places) -> PlayLine:
    """The line of play as far as its points have places, from the tee."""
    corners = [places[survey.stands[0]]]
    for point in survey.line:
        if point not in places:
            break
        if math.dist(places[point], corners[-1]) >= 1.0:
            corners.append(places[point])
    if len(corners) < 2:
        corners.append((corners[0][0], corners[0][1] + 1.0))
    return PlayLine(np.array(corners))


def _out_from(
    line: PlayLine, stand: tuple[float, float], station: float, aside: float, ahead: float
) -> tuple[float, float]:
    """A place so far along the leg of the line that goes on from a station, and so far to its right."""
    hx, hy = line.headings[line.leg(station + 1.0)].tolist()
    return stand[0] + ahead * hx + aside * hy, stand[1] + ahead * hy - aside * hx


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
    survey: Survey, places: Places, point: str, both: list[tuple[float, float]], side: int, turned: int
) -> tuple[float, float]:
    """The one of two mirror images that was meant: first is to the left seen from the stand, second right."""
    if turned:
        return both[1] if turned > 0 else both[0]
    line = line_so_far(survey, places)
    beside = {place: line.station_offset(*place)[1] for place in both}
    if side:
        right = [place for place in both if beside[place] * side > 0.0]
        if len(right) == 1:
            return right[0]
        if len(right) == 2:  # both on that side of the line: the nearer to it is the usual case
            return min(right, key=lambda place: abs(beside[place]))
        return max(both, key=lambda place: beside[place] * side)
    near, far = sorted(both, key=lambda place: abs(beside[place]))
    bends = abs(beside[near]) > max(ASIDE_YD, MIRRORED * abs(beside[far]))
    if math.dist(near, far) < 2.0 or (point in survey.line and not bends):
        return near
    raise FileError(
        survey.source, f"point {point}", "readings that leave it left or right of the line",
        'side = "left" or "right"',
    )  # fmt: skip
