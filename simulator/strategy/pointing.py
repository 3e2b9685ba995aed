"""Where to point: a mark near the line, or yards from the middle of the fairway or the green."""

from __future__ import annotations

import math
from dataclasses import dataclass

import shapely

from ..hole.cuts import STEP_YD, Strip, fairway_across, fairway_ahead, fairways_near
from ..hole.model import Hole
from .aimline import AimLine

MARK_YD, MARK_DEG = 12.0, 4.0
"""A mark farther from the line than this words no line [yd beside it, deg seen from the ball]."""

FINEST_YD = 1.5
"""Nobody points finer than this [yd beside the line]."""

GREEN_YD = 25.0
"""A shot that carries to within this of the green is pointed by the green [yd]."""

SPLIT_YD = 25.0
"""Two strips no farther apart than this are the halves of a split fairway [yd]; neighbouring holes are."""


@dataclass(frozen=True)
class Pointing:
    """What somebody at the ball points by.

    Attributes
    ----------
    by : str
        ``"mark"``, ``"fairway"``, ``"green"`` or ``"pin"`` (the straight line to it).
    name : str
        The mark's name, or for example ``"the middle of the fairway"``.
    offset_yd : float
        The line beside it, right positive: at the mark, where it comes down today (fairway; where one ahead
        begins), at the middle of the green, at the intended carry (the straight line to the pin, as aims in
        yards are asked for).
    half : str
        ``"left"`` or ``"right"`` of a split fairway, else empty.
    """

    by: str
    name: str
    offset_yd: float
    half: str = ""


def point(hole: Hole, line: AimLine, carry_yd: float, down_yd: float | None = None) -> Pointing:
    """What a shot on a line is pointed by.

    Parameters
    ----------
    hole : Hole
        Its `marks`, when it has any, have a name and x_yd, y_yd.
    carry_yd : float
        Intended carry.
    down_yd : float, optional
        How far along the line it comes down today; the intended carry when left out.
    """
    down_yd = carry_yd if down_yd is None else down_yd
    by_mark = _mark(hole, line, down_yd)
    if by_mark is not None:
        return by_mark
    x, y = line.at(down_yd)
    if hole.green.distance(shapely.Point(x, y)) <= GREEN_YD:
        middle = hole.green.centroid
        return Pointing("green", "the middle of the green", -line.seen(middle.x, middle.y)[1])
    if (fairway := _from_fairway(hole, x, y) or _from_fairway_ahead(hole, line, x, y)) is not None:
        return fairway
    along, across = line.seen(*hole.pin.xy_yd)
    off = -carry_yd * across / max(math.hypot(along, across), 1e-9)
    return Pointing("pin", "the straight line to the pin", off)


def _mark(hole: Hole, line: AimLine, down_yd: float) -> Pointing | None:
    """The mark nearest to the line as seen from the ball, None when none is near it."""
    found = []
    for mark in hole.marks:
        along, across = line.seen(mark.x_yd, mark.y_yd)
        if along < 0.5 * down_yd:
            continue  # beside the player, or soon flown over
        angle = abs(math.degrees(math.atan2(across, along)))
        if angle <= MARK_DEG and abs(across) <= MARK_YD:
            found.append((angle, Pointing("mark", mark.name, -across)))
    return min(found, key=lambda item: item[0])[1] if found else None


def _from_fairway_ahead(hole: Hole, line: AimLine, x: float, y: float) -> Pointing | None:
    """The same of the fairway that begins beyond a place, which one who comes down short of it looks at.

    On a par 3 what is mown before the green is none to play to.
    """
    station = None if hole.par <= 3 else fairway_ahead(hole, hole.station_offset(x, y)[0])
    if station is None:
        return None
    along, across = line.seen(*hole.at(station, 0.0))
    # where the line meets the cut through that station, and as far beyond it as it may have been missed by
    meets_yd = math.hypot(along, across) ** 2 / max(along, 1e-9) + STEP_YD
    return _from_fairway(hole, *line.at(meets_yd), " ahead")


def _from_fairway(hole: Hole, x: float, y: float, where: str = "") -> Pointing | None:
    """What is pointed by of the fairway at a place, and yards right of it across the line of play."""
    station, offset = hole.station_offset(x, y)
    across = fairway_across(hole, station, offset)
    if across is None:
        return None
    found = fairways_near(hole, station, offset)
    beside = [one for one in found if _gap(one, across) <= SPLIT_YD]
    left, right = [one for one in found if one[1] < 0.0], [one for one in found if one[0] > 0.0]
    if len(beside) == 1 and left and right and len(left) + len(right) == len(found):
        # the line of play runs between them: halves of one fairway, however far apart
        halves = [max(left), min(right)]
        beside = halves if across in halves else beside
    half = ""
    if len(beside) == 2:  # one fairway to either side of something
        half = "left" if across == min(beside) else "right"
    name = f"the middle of the {half} fairway" if half else "the middle of the fairway"
    return Pointing("fairway", f"{name}{where}", offset - 0.5 * (across[0] + across[1]), half)


def _gap(one: Strip, other: Strip) -> float:
    return max(one[0] - other[1], other[0] - one[1])
