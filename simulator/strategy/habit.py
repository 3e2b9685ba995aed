"""What a player does from the tee without a plan."""

from __future__ import annotations

import math

from ..conditions import Conditions
from ..errors import FileError, NoAnswerError, UsageError
from ..hole.model import Hole
from ..player.model import Club, Player
from ..tables.shots import Shot
from .clubwords import Aim, club_and_aim
from .effective import DISTANCE_YD, REPORTED_PER_YD, effective_distance
from .ground import station_reached
from .today import carries_today_yd

ALONG_LINE = "line"
"""Aim of a habit that follows the line of play: ``"driver@line"``."""

STRAIGHT = 2
"""Corners of the line of play of a hole without a bend: its two ends."""


def habit_of(player: Player, hole: Hole, conditions: Conditions | None = None) -> str:
    """Club and aim, as `plan` takes them against.

    The player's own `habit`, else the longest club. Where no aim is given, straight at the flag on a straight
    hole; round a corner nobody aims at the flag, and there, as with ``"@line"``, it is to the point of the
    line of play that the club carries to. A club that carries past the flag is
    nobody's habit: there, the club whose stock carry comes nearest to it, straight at it. Everybody takes
    less club down a hill and more into a wind: the flag counts as far as it plays, a yard for a yard of
    height (common practice) and what today's air and mean wind add to the number to hit.

    Raises
    ------
    FileError
        The habit's aim is not understood.
    """
    text = player.habit or player.clubs[0].name
    name, _, behind = text.partition("@")
    along = behind.strip().casefold() == ALONG_LINE
    try:
        name, aim = club_and_aim(name if along else text)
        club = player.club(name)
    except UsageError as error:
        allowed = 'a club, "driver", with an aim perhaps: "driver@-8" or "driver@line"'
        raise FileError(player.source or player.name, "habit", f"{text!r} ({error})", allowed) from None
    day = conditions or Conditions()
    out_yd = _plays_yd(player, hole, day)
    if club.carry_yd > out_yd:
        near = min(player.clubs, key=lambda one: abs(one.carry_yd - out_yd))
        return f"{near.name}@0"
    if along or (aim is None and len(hole.line) > STRAIGHT):
        return f"{club.name}@{_line_deg(hole, club, day):.2f}deg"
    return f"{club.name}@{aim or Aim(0.0)}"


def _plays_yd(player: Player, hole: Hole, conditions: Conditions) -> float:
    """How far the flag plays from the tee: the number to hit today [yd]; infinite where no club reaches."""
    pin = hole.pin
    far_yd = math.hypot(pin.x_yd, pin.y_yd) + REPORTED_PER_YD * hole.height_at(pin.x_yd, pin.y_yd)
    if not DISTANCE_YD[0] <= far_yd <= DISTANCE_YD[1]:
        return far_yd
    bearing_deg = math.degrees(math.atan2(pin.x_yd, pin.y_yd))
    try:
        return effective_distance(player, conditions, far_yd, along_deg=bearing_deg).effective_yd
    except NoAnswerError:
        return math.inf


def _line_deg(hole: Hole, club: Club, conditions: Conditions) -> float:
    """Angle off the straight line to the pin of the first place of the line of play a carry away [deg]."""
    x, y = _line_at(hole, club.carry_yd)
    shot = Shot(club, "stock", club.carry_yd, club)
    bearing_deg = math.degrees(math.atan2(x, y))
    x, y = _line_at(hole, carries_today_yd(shot, conditions, bearing_deg, hole, (0.0, 0.0)))
    return math.degrees(math.atan2(x, y) - math.atan2(hole.pin.x_yd, hole.pin.y_yd))


def _line_at(hole: Hole, far_yd: float) -> tuple[float, float]:
    """The first place (x, y) of the line of play so far from the tee, the pin past its end [yd]."""
    station = station_reached(hole, (0.0, 0.0), far_yd)
    return (hole.pin.x_yd, hole.pin.y_yd) if station is None else hole.at(station)
