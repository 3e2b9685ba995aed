"""How far a shot goes on a day: where along its line it is pointed by the ground, where a ball is put."""

from __future__ import annotations

import math
from dataclasses import replace

from ..conditions import Conditions
from ..hole.model import Hole, Point
from ..player.runs import run_yd
from ..tables.carries import gets_there, runs_yd, stock_landings
from ..tables.shots import Shot, ShotList
from .clubwords import Meant
from .ground import station_reached

FULL_SWINGS = ("stock", "low", "high")
"""Flights whose carry the day changes here. Part swings and punches count as they are meant: they are pointed
by what is near, and the wind takes a yard or two of them."""


def carries_today_yd(shot: Shot, conditions: Conditions, bearing_deg: float) -> float:
    """Carry along its line of a shot's stock strike in a day's air and mean wind, on level ground [yd].

    Parameters
    ----------
    bearing_deg : float
        Of the line, clockwise from +y of the hole frame.

    Notes
    -----
    A drive of 250 yards comes down 35 sooner in 20 mph against it: on a bend that is another place of the
    fairway. On the day that carries are told for it is the shot's own carry, and nothing is flown.
    """
    # firmness and green speed are nothing to a ball in the air
    air = replace(Conditions(), wind=conditions.wind, temperature_c=conditions.temperature_c,
                  altitude_m=conditions.altitude_m, pressure_hpa=conditions.pressure_hpa,
                  humidity=conditions.humidity)  # fmt: skip
    if shot.flight not in FULL_SWINGS or air == Conditions():
        return shot.carry_yd
    landed = stock_landings(ShotList((shot,), 1, 1), air, bearing_deg, 0.0, 1)
    return float(landed[0, 0]) if gets_there(landed)[0] else shot.carry_yd


def down_the_line_yd(hole: Hole, here: Point, meant: Meant, conditions: Conditions) -> float:
    """How far from the ball a swing along the line of play comes down today [yd]."""
    return carries_today_yd(_shot(meant), conditions, _along_deg(hole, here, meant.carry_yd))


def goes_today_yd(hole: Hole, here: Point, meant: Meant, conditions: Conditions) -> Point:
    """Carry, and carry and run on level fairway, of a swing along the line of play today [yd]."""
    shot, bearing_deg = _shot(meant), _along_deg(hole, here, meant.carry_yd)
    if shot.flight in FULL_SWINGS and conditions != Conditions():
        landed = stock_landings(ShotList((shot,), 1, 1), conditions, bearing_deg, 0.0, 1)
        if gets_there(landed)[0]:
            carry_yd = float(landed[0, 0])
            return carry_yd, carry_yd + float(runs_yd(landed, conditions)[0])
    return meant.carry_yd, meant.carry_yd + float(run_yd(meant.club.kind, meant.carry_yd))


def _shot(meant: Meant) -> Shot:
    flight = "part" if meant.part_yd else meant.flight or "stock"
    return Shot(meant.club, flight, meant.carry_yd, meant.club)


def _along_deg(hole: Hole, here: Point, far_yd: float) -> float:
    """Bearing from the ball to the place of the line of play so far away, to the pin past its end [deg]."""
    station = station_reached(hole, here, far_yd)
    x, y = hole.pin.xy_yd if station is None else hole.at(station)
    return math.degrees(math.atan2(x - here[0], y - here[1]))
