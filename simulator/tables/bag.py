"""What does not depend on where the pin is: a player's shots, flights, strikes and putting today."""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor, wait
from dataclasses import dataclass, replace

import numpy as np

from ..conditions import Conditions, at_both_heights
from ..player.model import Player
from .airs import day_air, flight_air
from .curved import is_curved
from .flights import FlightTables, flight_tables, wind_axes
from .rasters import Raster
from .shots import ShotList, list_shots
from .slope_putts import PuttTables, putt_tables
from .strikes import strike_rows

HEIGHT_STEP_YD = 6.0
"""Widest step between landing heights [yd]: the fall at the end of a flight is nearly straight."""

SHAPED_WIND_MPH = 4.0
"""Less wind than this is no reason to hold a shot down [mph]."""


@dataclass(frozen=True)
class Bag:
    """A player's tables for the day.

    Attributes
    ----------
    shots : ShotList
    flights : FlightTables
    strikes : float64[shots, lies, STRIKE_COLUMNS]
    putts : PuttTables
    conditions : Conditions
    """

    shots: ShotList
    flights: FlightTables
    strikes: np.ndarray
    putts: PuttTables
    conditions: Conditions


def landing_heights(raster: Raster | None) -> np.ndarray:
    """Landing heights over the ball that a hole may need, evenly spaced and with 0 among them [yd]."""
    if raster is None:
        return np.zeros(1)
    rise = float(raster.height.max() - raster.height.min())
    if rise <= 0.0:
        return np.zeros(1)
    steps = math.ceil(rise / HEIGHT_STEP_YD)
    return np.arange(-steps, steps + 1) * (rise / steps)


def day_wind(conditions: Conditions) -> tuple[float, float]:
    """Wind at 10 m and how far it gusts either side [mph]."""
    wind = conditions.wind
    if wind is None or wind.speed_mph == 0.0:
        return 0.0, 0.0
    at_10m = at_both_heights(wind)[0]
    return at_10m, wind.gust_mph * at_10m / wind.speed_mph


def make_bag(
    player: Player,
    conditions: Conditions | None = None,
    raster: Raster | None = None,
    threads: int = 1,
    *,
    shaped: bool = False,
) -> Bag:
    """Shots, flights, strikes and putting of a player.

    Parameters
    ----------
    player : Player
    conditions : Conditions, optional
        Still air and level medium ground when left out.
    raster : Raster, optional
        The hole's ground: its heights, trees and greens decide what the tables must know. Level and
        treeless when left out.
    threads : int
    shaped : bool
        Hold shots down even where neither wind nor a tree gives a reason.
    """
    conditions = conditions or Conditions()
    speed, gust = day_wind(conditions)
    wooded = raster is not None and len(raster.crowns) > 0
    shots = list_shots(player, shaped=shaped or wooded or speed + gust >= SHAPED_WIND_MPH)
    slopes = (0.0,) if raster is None else tuple(float(s) for s in raster.planes[:, 0])
    with ThreadPoolExecutor(1) as beside:  # the putts of a plane are one thread's work
        putting = beside.submit(putt_tables, player.putting, stimp_ft=conditions.stimp_ft, slopes=slopes)
        if threads == 1:
            wait([putting])
        flights = flight_tables(
            shots,
            flight_air(),
            day_air(conditions, blows=speed > 0.0),
            winds=wind_axes(speed, gust, any(is_curved(shot) for shot in shots.shots)),
            heights_yd=landing_heights(raster),
            tracks=wooded,
            threads=threads,
        )
    putts = putting.result()
    if not any(slopes):  # level greens are the same from every side
        putts = replace(putts, expected=putts.expected[:, :1], chances=putts.chances[:, :1])
    return Bag(shots, flights, strike_rows(shots.shots, flights.still), putts, conditions)
