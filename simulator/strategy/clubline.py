"""What a choice of the search is to somebody who plays it: a club, a line and what it is pointed by."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

from ..hole.model import Hole
from ..units import one_turn_deg
from .aimline import AimLine
from .alternative import ClubAndLine
from .pointing import point
from .today import carries_today_yd
from .tries import Choice, Place

ROLLS = 255
"""Putts of which the middle one is told; their luck is the same whatever is asked."""


def _rolls_yd(place: Place, choice: Choice) -> float:
    """How far a putt from off the green goes, over the ground it crosses: the middle one of some."""
    played = place.play(choice.action, choice.action, choice.score, seed=0, sequences=ROLLS, most_strokes=1)
    return float(np.median(np.hypot(*(played.rest_yd - (place.x_yd, place.y_yd)).T)))


def club_and_line(hole: Hole, place: Place, choice: Choice) -> ClubAndLine:
    """What a choice from a place is to somebody who plays it."""
    bag, turn = place.board.bag, float(choice.action[1])
    shot = bag.shots.shots[choice.row]
    bearing = one_turn_deg(math.degrees(place.board.bearing_rad(place.x_yd, place.y_yd) + turn))
    line = AimLine(place.x_yd, place.y_yd, bearing)
    swung, here = replace(shot, carry_yd=choice.carry_yd), (place.x_yd, place.y_yd)
    if shot.flight == "putt":
        down = _rolls_yd(place, choice)
    else:
        down = carries_today_yd(swung, bag.conditions, bearing, hole, here)
    return ClubAndLine(
        shot.club.name, shot.flight, choice.carry_yd, down, choice.carry_yd * math.sin(turn), bearing,
        point(hole, line, choice.carry_yd, down),
    )  # fmt: skip
