"""The shot at the green: room round the target and the flag, and where the misses go."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from ..hole.model import Hole
from . import estimate
from .aimline import AimLine
from .errorbars import Estimate
from .result import Answer

FAR_YD = 200.0
"""Longer than any green [yd]."""


@dataclass(frozen=True)
class GreenRoom:
    """Yards of green in front of, behind, left and right of a place, along and across the shot; 0 off it."""

    front_yd: float
    behind_yd: float
    left_yd: float
    right_yd: float


@dataclass(frozen=True)
class GreenTarget:
    """The recommended shot at the green.

    Attributes
    ----------
    middle_yd : tuple of float
        Middle of the finishes: the median along the shot and across it.
    middle_room, flag_room : GreenRoom
        The green round the middle of the finishes, and round the flag.
    misses : dict of str to Estimate
        Shares of the balls that finish on the green, short, long, left and right of it, as seen from the
        ball; a ball both short and wide of it is short.
    eight_in_ten_yd : tuple of float
        Depth and width that 8 finishes of 10 stay inside, each by itself.
    """

    middle_yd: tuple[float, float]
    middle_room: GreenRoom
    flag_room: GreenRoom
    misses: dict[str, Estimate]
    eight_in_ten_yd: tuple[float, float]


def green_target(answer: Answer) -> GreenTarget:
    """Measure the recommended shot of an answer against the green of its hole."""
    one, hole, line = answer.best, answer.hole, answer.line_of(answer.best)
    along, side = line.seen(*one.finishes_yd.T)
    middle = line.at(float(np.median(along)), float(np.median(side)))
    green_along, green_side = line.seen(*shapely.get_coordinates(hole.green).T)
    front, back, centre = green_along.min(), green_along.max(), green_side.mean()
    on = shapely.contains_xy(hole.green, one.finishes_yd[:, 0], one.finishes_yd[:, 1])
    short, long = ~on & (along < front), ~on & (along > back)
    wide = ~on & ~short & ~long
    groups = {"on": on, "short": short, "long": long, "left": wide & (side < centre),
              "right": wide & (side >= centre)}  # fmt: skip
    depth = np.diff(np.quantile(along, [0.1, 0.9]))[0]
    width = np.diff(np.quantile(side, [0.1, 0.9]))[0]
    return GreenTarget(
        middle_yd=middle,
        middle_room=room(hole, AimLine(*middle, line.bearing_deg)),
        flag_room=room(hole, AimLine(*hole.pin.xy_yd, line.bearing_deg)),
        misses={name: estimate.share(hits) for name, hits in groups.items()},
        eight_in_ten_yd=(float(depth), float(width)),
    )


def room(hole: Hole, line: AimLine) -> GreenRoom:
    """The green round the place a line begins at, along the line and across it."""
    spot = shapely.Point(line.x_yd, line.y_yd)
    if not hole.green.covers(spot):
        return GreenRoom(0.0, 0.0, 0.0, 0.0)

    def reach(along_yd: float, right_yd: float) -> float:
        ray = shapely.LineString([spot, line.at(along_yd, right_yd)]).intersection(hole.green)
        first = min(shapely.get_parts(ray), key=lambda part: part.distance(spot))
        return float(first.length)

    return GreenRoom(reach(-FAR_YD, 0.0), reach(FAR_YD, 0.0), reach(0.0, -FAR_YD), reach(0.0, FAR_YD))
