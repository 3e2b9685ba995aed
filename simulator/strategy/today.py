"""How far a shot goes on a day: where along its line it is pointed by the ground, where a ball is put."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np

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


_SETTLED_YD, _MOST_FLIGHTS = 0.05, 8
"""The place a ball comes down is looked for until it moves less than this, or this many flights."""


def carries_today_yd(
    shot: Shot, conditions: Conditions, bearing_deg: float, hole: Hole, here: Point
) -> float:
    """Where along its line a shot's stock strike comes down, in a day's air and mean wind, on the hole [yd].

    Parameters
    ----------
    bearing_deg : float
        Of the line, clockwise from +y of the hole frame.
    here : (x, y)
        The ball's place [yd].

    Notes
    -----
    A drive of 250 yards comes down 35 sooner in 20 mph against it, and 26 later from a tee 20 yards up: on a
    bend that is another place of the fairway. On level ground on the day that carries are told for it is the
    shot's own carry, and nothing is flown.
    """
    # firmness and green speed are nothing to a ball in the air
    air = replace(Conditions(), wind=conditions.wind, temperature_c=conditions.temperature_c,
                  altitude_m=conditions.altitude_m, pressure_hpa=conditions.pressure_hpa,
                  humidity=conditions.humidity)  # fmt: skip
    landed = _landed(shot, air, bearing_deg, hole, here)
    return shot.carry_yd if landed is None else float(landed[0, 0])


def _landed(
    shot: Shot, conditions: Conditions, bearing_deg: float, hole: Hole, here: Point
) -> np.ndarray | None:
    """Landing of the stock strike on the hole's ground, float64[1, 6]; None: its carry is as it is meant."""
    if shot.flight not in FULL_SWINGS or (conditions == Conditions() and not hole.has_relief):
        return None
    turn, base_yd = math.radians(bearing_deg), hole.height_at(*here)
    far_yd, found = shot.carry_yd, None
    for _ in range(_MOST_FLIGHTS):
        there = here[0] + far_yd * math.sin(turn), here[1] + far_yd * math.cos(turn)
        height_yd = hole.height_at(*there) - base_yd
        landed = stock_landings(ShotList.of_full((shot,)), conditions, bearing_deg, height_yd, 1)
        if not gets_there(landed)[0]:
            break
        found, before_yd, far_yd = landed, far_yd, float(landed[0, 0])
        if abs(far_yd - before_yd) < _SETTLED_YD:
            break
    return found


def down_the_line_yd(hole: Hole, here: Point, meant: Meant, conditions: Conditions) -> float:
    """How far from the ball a swing along the line of play comes down today [yd]."""
    bearing_deg = _along_deg(hole, here, meant.carry_yd)
    return carries_today_yd(_shot(meant), conditions, bearing_deg, hole, here)


def goes_today_yd(hole: Hole, here: Point, meant: Meant, conditions: Conditions) -> Point:
    """Carry, and carry and run on level fairway, of a swing along the line of play today [yd]."""
    shot, bearing_deg = _shot(meant), _along_deg(hole, here, meant.carry_yd)
    landed = _landed(shot, conditions, bearing_deg, hole, here)
    if landed is not None:
        return float(landed[0, 0]), float(landed[0, 0] + runs_yd(landed, conditions)[0])
    return meant.carry_yd, meant.carry_yd + float(run_yd(meant.club.kind, meant.carry_yd))


def _shot(meant: Meant) -> Shot:
    flight = "part" if meant.part_yd else meant.flight or "stock"
    return Shot(meant.club, flight, meant.carry_yd, meant.club)


def _along_deg(hole: Hole, here: Point, far_yd: float) -> float:
    """Bearing from the ball to the place of the line of play so far away, to the pin past its end [deg]."""
    station = station_reached(hole, here, far_yd)
    x, y = hole.pin.xy_yd if station is None else hole.at(station)
    return math.degrees(math.atan2(x - here[0], y - here[1]))
