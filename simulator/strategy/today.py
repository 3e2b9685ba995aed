"""How far a shot is carried on a day: where along its line it is pointed by the ground."""

from __future__ import annotations

from dataclasses import replace

from ..conditions import Conditions
from ..tables.carries import gets_there, stock_landings
from ..tables.shots import Shot, ShotList

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
