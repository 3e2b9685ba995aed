"""Flight tables: every shot at every wind bearing, strike speed, tilt and landing height it may need."""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np

from ..kernels.flight import TRACK_POINTS, Air, fill_flights
from ..physics.launch import launch, part_launch
from ..units import M_PER_YD, MPS_PER_MPH, RADPS_PER_RPM
from .shots import Shot

FRACTIONS = np.linspace(0.1, 1.3, 17)
"""Strike speed axis, as still-air carry over stock carry: a topped ball to a flier."""

TILTS_DEG = np.linspace(-60.0, 60.0, 13)
"""Tilt axis [deg]: a wild mishit's curve is inside it."""

SPEED_GRID_MPH = np.linspace(5.0, 225.0, 45)
"""Ball speeds [mph] at which launch and spin are tabled for the solver."""

YDPS_PER_MPH = MPS_PER_MPH / M_PER_YD


@dataclass(frozen=True)
class FlightTables:
    """Flights by [shot, bearing, fraction, tilt, height]; kernels/flight.py says what the columns are.

    Attributes
    ----------
    flights : float32[shots, bearings, fractions, tilts, heights, 6]
    tracks : float32[shots, bearings, fractions, tilts, 12, 2]
        Side and height along the way, for trees.
    speeds_mph : float64[shots, fractions]
        Ball speed of each strike.
    heights_yd : float64[heights]
    """

    flights: np.ndarray
    tracks: np.ndarray
    speeds_mph: np.ndarray
    heights_yd: np.ndarray


def _launch_rows(shots: tuple[Shot, ...], full_speed_mph: float) -> tuple[np.ndarray, np.ndarray]:
    """Launch [rad] and spin [rad/s] of each shot on the speed grid."""
    launches, spins = np.empty((2, len(shots), SPEED_GRID_MPH.size))
    for k, shot in enumerate(shots):
        if shot.flight == "part":
            angle, spin = part_launch(shot.club.kind, full_speed_mph, SPEED_GRID_MPH)
        else:
            angle, spin = launch(shot.club.kind, SPEED_GRID_MPH)
        launches[k], spins[k] = np.radians(angle), spin * RADPS_PER_RPM
    return launches, spins


def flight_tables(
    shots: tuple[Shot, ...],
    first_part: int,
    reference: Air,
    air: Air,
    *,
    bearings: int = 1,
    heights_yd: np.ndarray | None = None,
    tracks: bool = False,
    threads: int = 1,
) -> FlightTables:
    """Solve every strike of every shot and fly it.

    Parameters
    ----------
    shots, first_part
        From `list_shots`.
    reference : Air
        Still air the player's carries are meant in.
    air : Air
        Air of the day.
    bearings : int
        Start directions round the compass, relative to the wind; 1 in still air.
    heights_yd : float64[n], optional
        Landing heights, evenly spaced; level ground when left out.
    tracks : bool
        Keep ground tracks too.
    threads : int
        The answer does not depend on it.
    """
    heights = np.zeros(1) if heights_yd is None else np.asarray(heights_yd, float)
    # node b is a start direction that has the wind's direction b/n of a turn clockwise from it
    wind = math.atan2(air.wind_x, air.wind_y)
    turns = wind - np.arange(bearings) * (2.0 * math.pi / bearings)
    shape = (len(shots), bearings, FRACTIONS.size, TILTS_DEG.size)
    flights = np.zeros((*shape, heights.size, 6), np.float32)
    track = np.zeros((*shape, TRACK_POINTS, 2) if tracks else (0, 1, 1, 1, TRACK_POINTS, 2), np.float32)
    speeds = np.zeros((len(shots), FRACTIONS.size))
    carries = np.array([shot.carry_yd for shot in shots])
    step = (SPEED_GRID_MPH[1] - SPEED_GRID_MPH[0]) * YDPS_PER_MPH
    tilts = np.radians(TILTS_DEG)

    def fill(first: int, last: int, launches: np.ndarray, spins: np.ndarray) -> None:
        fill_flights(
            reference,
            air,
            launches,
            spins,
            SPEED_GRID_MPH[0] * YDPS_PER_MPH,
            step,
            carries,
            FRACTIONS,
            tilts,
            turns,
            heights,
            first,
            last,
            flights,
            track,
            speeds,
        )

    launches, spins = _launch_rows(shots[:first_part], 0.0)
    # the shortest club's own full speed must be known before its part swings can be flown
    fill(first_part - 1, first_part, launches, spins)
    full_speed = float(np.interp(1.0, FRACTIONS, speeds[first_part - 1])) / YDPS_PER_MPH
    launches, spins = _launch_rows(shots, full_speed)
    if threads > 1:
        with ThreadPoolExecutor(threads) as pool:
            for done in [pool.submit(fill, k, k + 1, launches, spins) for k in range(len(shots))]:
                done.result()
    else:
        fill(0, len(shots), launches, spins)
    return FlightTables(flights, track, speeds / YDPS_PER_MPH, heights)


def turn_per_tilt(tables: FlightTables) -> np.ndarray:
    """Angle off line at landing per angle of tilt, of each shot's stock strike in the air flown.

    Slope between the nodes either side of no tilt, at the first bearing and height.
    """
    stock = int(np.argmin(np.abs(FRACTIONS - 1.0)))
    level = int(np.argmin(np.abs(TILTS_DEG)))
    right, left = tables.flights[:, 0, stock, level + 1, 0], tables.flights[:, 0, stock, level - 1, 0]
    angle = np.arctan2(right[:, 1], right[:, 0]) - np.arctan2(left[:, 1], left[:, 0])
    return np.asarray(angle / math.radians(TILTS_DEG[level + 1] - TILTS_DEG[level - 1]), float)
