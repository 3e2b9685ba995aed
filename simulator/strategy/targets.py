"""The shot at the green: room round the target and the flag, and where the misses go."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely

from ..hole.model import Hole
from . import estimate
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
    one, start, hole = answer.best, answer.start, answer.hole
    bearing = math.radians(one.aim_bearing_deg)
    ahead, across = (
        np.array([math.sin(bearing), math.cos(bearing)]),
        np.array([math.cos(bearing), -math.sin(bearing)]),
    )
    here = np.array([start.x_yd, start.y_yd])
    along, side = (one.finishes_yd - here) @ ahead, (one.finishes_yd - here) @ across
    middle = here + np.median(along) * ahead + np.median(side) * across
    green = shapely.get_coordinates(hole.green)
    front, back = ((green - here) @ ahead).min(), ((green - here) @ ahead).max()
    centre = float(((green - here) @ across).mean())
    on = shapely.contains_xy(hole.green, one.finishes_yd[:, 0], one.finishes_yd[:, 1])
    short, long = ~on & (along < front), ~on & (along > back)
    wide = ~on & ~short & ~long
    groups = {"on": on, "short": short, "long": long, "left": wide & (side < centre),
              "right": wide & (side >= centre)}  # fmt: skip
    depth = np.diff(np.quantile(along, [0.1, 0.9]))[0]
    width = np.diff(np.quantile(side, [0.1, 0.9]))[0]
    flag = np.array([hole.pin.x_yd, hole.pin.y_yd])
    return GreenTarget(
        middle_yd=(float(middle[0]), float(middle[1])),
        middle_room=room(hole, middle, ahead),
        flag_room=room(hole, flag, ahead),
        misses={name: estimate.share(hits) for name, hits in groups.items()},
        eight_in_ten_yd=(float(depth), float(width)),
    )


def room(hole: Hole, place: np.ndarray, ahead: np.ndarray) -> GreenRoom:
    """The green round a place, in a direction (a unit vector) and across it."""
    across = np.array([ahead[1], -ahead[0]])
    spot = shapely.Point(*place)

    if not hole.green.covers(spot):
        return GreenRoom(0.0, 0.0, 0.0, 0.0)

    def reach(way: np.ndarray) -> float:
        ray = shapely.LineString([place, place + FAR_YD * way]).intersection(hole.green)
        first = min(shapely.get_parts(ray), key=lambda part: part.distance(spot))
        return float(first.length)

    return GreenRoom(reach(-ahead), reach(ahead), reach(-across), reach(across))
