"""Stock strikes of every shot in any air, wind and height: where they come down and how far they run."""

from __future__ import annotations

import numpy as np

from ..conditions import Conditions
from ..hole.surfaces import Surface
from ..kernels import codes as c
from ..kernels.flight import Launches
from ..kernels.game import Ground
from ..kernels.runs import fill_runs
from ..kernels.volley import ROOM
from ..player.model import Club
from ..units import M_PER_YD, MPS_PER_MPH
from .airs import day_air, flight_air
from .bag import day_wind
from .flights import launches_of
from .landings import axes, landings, stock_speeds_mph
from .rows import bounce_numbers, day_grounds, surface_rows
from .shots import Shot, ShotList
from .skips import skip_table

V_DOWN = 4
"""Column of a landing that holds how fast it falls [yd/s]."""


def stock_landings(
    listed: ShotList, conditions: Conditions, along_deg: float, height_yd: float, count: int
) -> np.ndarray:
    """Landings of the stock strike of the first `count` shots of the list.

    Parameters
    ----------
    conditions : Conditions
        Air and wind; gusts and swings are left out.
    along_deg : float
        Bearing of the shot in the hole frame [deg].
    height_yd : float
        Height of the landing place over the ball [yd].

    Returns
    -------
    float64[count, 6]
        Along, side [yd], v_along, v_side, v_down [yd/s], spin [rad/s]; a ball that never gets as high as
        the landing place is given at its highest (see `gets_there`).
    """
    shots = listed.shots[:count]
    return _landings(shots, launches_of(shots, {}), conditions, along_deg, height_yd)


def part_landings(
    club: Club, carries_yd: np.ndarray, conditions: Conditions, along_deg: float, height_yd: float
) -> np.ndarray:
    """Landings of part swings with one club: higher, softer balls than its full swing scaled down.

    Parameters
    ----------
    carries_yd : float64[n]
        Still carries of the swings [yd], none over the club's own.
    conditions, along_deg, height_yd
        As of `stock_landings`.

    Returns
    -------
    float64[n, 6]
        As `stock_landings` returns them.
    """
    full = (Shot(club, "stock", club.carry_yd, club),)
    speed = stock_speeds_mph(flight_air(), launches_of(full, {}), np.array([club.carry_yd]))[0]
    shots = tuple(Shot(club, "part", float(carry), club) for carry in carries_yd)
    return _landings(shots, launches_of(shots, {club.name: float(speed)}), conditions, along_deg, height_yd)


def _landings(
    shots: tuple[Shot, ...], launches: Launches, conditions: Conditions, along_deg: float, height_yd: float
) -> np.ndarray:
    """Landings of stock strikes in a day's air and mean wind, float64[shots, 6]."""
    speed = day_wind(conditions)[0]
    air = day_air(conditions, blows=speed > 0.0)
    along, cross = 0.0, 0.0
    if conditions.wind is not None:
        angle = np.radians(conditions.wind.from_deg - along_deg)
        yards = speed * MPS_PER_MPH / M_PER_YD
        along, cross = -yards * np.cos(angle), -yards * np.sin(angle)
    carries = np.array([shot.carry_yd for shot in shots])
    nodes = axes(along_wind=along, cross_wind=cross, heights=np.array([height_yd]))
    flown = landings(flight_air(), air, launches, carries, nodes, 0, len(shots))
    return flown[:, 0, 0, 0, 0, 0]


def gets_there(landings: np.ndarray) -> np.ndarray:
    """Of each landing whether the ball came down on its place; one that never got so high did not.

    Parameters
    ----------
    landings : float64[n, 6]
        As `stock_landings` returns them.

    Returns
    -------
    bool[n]
    """
    return np.asarray(landings[:, V_DOWN] > 0.0)


def runs_yd(landings: np.ndarray, conditions: Conditions, surface: Surface = Surface.FAIRWAY) -> np.ndarray:
    """Run of each landing on level ground of one surface today [yd]."""
    numbers = np.zeros(c.NUMBERS)
    bounce_numbers(numbers)
    numbers[c.RASTER_CELL], numbers[c.RASTER_PER_YD] = 1.0, 1.0
    grounds = day_grounds(conditions)
    surfaces = surface_rows(grounds)
    ground = Ground(
        numbers,
        np.full((1, 1), surface, np.uint8),
        np.zeros((1, 1, c.RELIEF_COLUMNS), np.float32),
        surfaces,
        skip_table(numbers, surfaces, grounds),
    )
    out = np.zeros(len(landings))
    fill_runs(ground, np.ascontiguousarray(landings), np.empty(ROOM), out)
    return out
