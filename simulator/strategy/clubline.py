"""A club on a line from a place: what is swung, where it is aimed, what the line is pointed by."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

from ..hole.model import Hole
from ..units import one_turn_deg
from .aimline import AimLine
from .pointing import Pointing, point
from .search import Choice, Place
from .today import carries_today_yd


@dataclass(frozen=True)
class ClubAndLine:
    """A club and a line from a place.

    Attributes
    ----------
    club, flight : str
    carry_yd : float
    today_carry_yd : float
        How far along its line a stock strike comes down in today's air and mean wind, on the hole's ground.
    aim_offset_yd : float
        From the straight line ball to pin at stock carry, right positive.
    aim_bearing_deg : float
    point : Pointing
        What the line is pointed by.
    """

    club: str
    flight: str
    carry_yd: float
    today_carry_yd: float
    aim_offset_yd: float
    aim_bearing_deg: float
    point: Pointing

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {**vars(self), "point": vars(self.point)}


def club_and_line(hole: Hole, place: Place, choice: Choice) -> ClubAndLine:
    """What a choice from a place is to somebody who plays it."""
    bag, turn = place.board.bag, float(choice.action[1])
    shot = bag.shots.shots[choice.row]
    bearing = one_turn_deg(math.degrees(place.board.bearing_rad(place.x_yd, place.y_yd) + turn))
    line = AimLine(place.x_yd, place.y_yd, bearing)
    swung, here = replace(shot, carry_yd=choice.carry_yd), (place.x_yd, place.y_yd)
    down = carries_today_yd(swung, bag.conditions, bearing, hole, here)
    return ClubAndLine(
        shot.club.name, shot.flight, choice.carry_yd, down, choice.carry_yd * math.sin(turn), bearing,
        point(hole, line, choice.carry_yd, down),
    )  # fmt: skip
