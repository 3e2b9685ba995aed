"""Strikes flown one by one, outside any table that is kept."""

from __future__ import annotations

import numpy as np

from ..kernels.flight import TRACK_POINTS, Air, Axes, Launches, fill_flights
from ..units import M_PER_YD, MPS_PER_MPH

ONE, NONE = np.ones(1), np.zeros(1)


def axes(
    fractions: np.ndarray = ONE,
    tilts: np.ndarray = NONE,
    along_wind: float = 0.0,
    cross_wind: float = 0.0,
    heights: np.ndarray = NONE,
) -> Axes:
    """Axes of a flight table; left out: the stock strike, untilted, in still air, to its own level."""
    return Axes(fractions, tilts, np.array([[along_wind]]), np.array([[cross_wind]]), heights)


def landings(
    reference: Air, air: Air, launches: Launches, carries: np.ndarray, nodes: Axes, first: int, last: int
) -> np.ndarray:
    """Landings of the strikes of shots `first` to `last` - 1; see `fill_flights`.

    Returns
    -------
    float64[last - first, nu, nv, fractions, tilts, heights, 6]
        Columns as in kernels/codes.py.
    """
    return _flown(reference, air, launches, carries, nodes, first, last)[0]


def stock_speeds_mph(still: Air, launches: Launches, carries: np.ndarray) -> np.ndarray:
    """Ball speed of every shot's stock strike, float64[shots] [mph].

    Parameters
    ----------
    still : Air
        The air carries are meant in.
    carries : float64[shots]
        Stock still-air carry [yd].
    """
    return _flown(still, still, launches, carries, axes(), 0, carries.size)[1][:, 0] * M_PER_YD / MPS_PER_MPH


def _flown(
    reference: Air, air: Air, launches: Launches, carries: np.ndarray, nodes: Axes, first: int, last: int
) -> tuple[np.ndarray, np.ndarray]:
    """Landings, and the ball speeds [yd/s] they were struck at."""
    fractions, tilts, along, _, heights = nodes
    out = np.zeros((last, *along.shape, fractions.size, tilts.size, heights.size, 6), np.float32)
    no_tracks = np.zeros((0, 1, 1, 1, 1, TRACK_POINTS, 2), np.float32)
    speeds = np.zeros((last, fractions.size))
    fill_flights(reference, air, launches, carries, nodes, first, last, out, no_tracks, speeds)
    return out[first:].astype(float), speeds[first:]
