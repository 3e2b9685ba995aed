"""Shots with a shape: the tilt that curves a solid strike so far, and the start line that brings it back.

A curved shot's flights are tabled about its own mean tilt, so the tilt axis of the tables is the strike's
departure from it and the kernels need to know nothing of shapes.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from ..errors import UsageError
from ..kernels.flight import Air, Launches
from ..physics.heights import SHAPES
from ..player.runs import run_yd
from .landings import axes, landings
from .shots import Shot

STEEPEST_TILT_DEG = 45.0
"""No stock shot is tilted more than this [deg]."""

SPARED = 1.05
"""A curve so much over the most there is gets the most: players drawn round one who just makes it are not
refused."""

_TILTS = np.radians(np.linspace(0.0, STEEPEST_TILT_DEG, 31))
_NODES, _WEIGHTS = np.polynomial.hermite_e.hermegauss(32)
_WEIGHTS = _WEIGHTS / _WEIGHTS.sum()


def is_curved(shot: Shot) -> bool:
    """Whether a shot has a shape; part swings and punches go straight."""
    return shot.flight in SHAPES and shot.club.curve_yd != 0.0


def tilts_and_carries(
    shots: tuple[Shot, ...], still: Air, launches: Launches, first: int, last: int
) -> tuple[np.ndarray, np.ndarray]:
    """Mean tilt [rad] of shots `first` to `last` - 1, and the untilted carry tabled as 1 [yd].

    A tilted ball carries less.

    Parameters
    ----------
    still : Air
        The air carries are meant in.
    launches : Launches
        Of all shots.

    Raises
    ------
    UsageError
        A curve that no tilt up to ``STEEPEST_TILT_DEG`` gives this ball.
    """
    tilts = np.zeros(last)
    carries = np.array([shot.tabled_yd for shot in shots[:last]])
    of_club: dict[str, float] = {}  # a club's shot held down or hit high has the tilt of its stock shot
    for k in range(first, last):
        shot = shots[k]
        if not is_curved(shot):
            continue
        curve = abs(shot.club.curve_yd)
        for _ in range(4):  # the carry lost changes the speed, and that the curve: settles fast
            along, side = _tilted(still, launches, carries, k)
            if shot.flight == "stock":
                if curve > SPARED * side.max():
                    raise UsageError(
                        f"{shot.club.name}: a curve of {curve:.0f} yd in {shot.carry_yd:.0f}; "
                        f"allowed: at most {side.max():.0f} yd at this speed"
                    )
                rising = slice(0, int(np.argmax(side)) + 1)
                of_club[shot.club.name] = float(np.interp(curve, side[rising], _TILTS[rising]))
            tilt = of_club[shot.club.name]
            gone = math.hypot(float(np.interp(tilt, _TILTS, along)), float(np.interp(tilt, _TILTS, side)))
            carries[k] *= shot.carry_yd / gone
        tilts[k] = math.copysign(of_club[shot.club.name], shot.club.curve_yd)
    return tilts[first:], carries[first:]


def _tilted(
    still: Air, launches: Launches, carries: np.ndarray, shot: int
) -> tuple[np.ndarray, np.ndarray]:
    """Landings of one shot's stock strike at every tilt: along the start line and beside it [yd]."""
    flown = landings(still, still, launches, carries, axes(tilts=_TILTS), shot, shot + 1)[0, 0, 0, 0, :, 0]
    return flown[:, 0], flown[:, 1]


def start_for_curve(
    shot: Shot, tilt_sd: float, axes: tuple[np.ndarray, np.ndarray], flights: np.ndarray
) -> float:
    """Start line of a curved shot beside the aim [rad], so that all its strikes together finish on the aim.

    Parameters
    ----------
    tilt_sd : float
        Of solid strikes about the mean tilt [rad].
    axes : float64[nf], float64[nt]
        Strikes over the stock carry, and tilts about the mean [rad].
    flights : float[nf, nt, 6]
        The shot's flights in still air.
    """
    if not is_curved(shot):
        return 0.0
    s: Any = shot.spread
    solid = 1.0 + s.bias_long_pct / 100.0
    missed = solid - s.mishit_loss_pct / 100.0
    along = side = 0.0
    for share, middle, sd_pct, wide in (
        (1.0 - s.mishit_rate, solid, s.distance_sd_pct, 1.0),
        (s.mishit_rate, missed, s.mishit_distance_sd_pct, s.mishit_direction_factor),
    ):
        strikes = middle + sd_pct / 100.0 * _NODES
        run = run_yd(shot.club.kind, shot.carry_yd, strikes)
        for node, weight in zip(_NODES, _WEIGHTS, strict=True):
            at_tilt = _between(flights, axes[1], wide * tilt_sd * node)
            x, y, v_x, v_y = (np.interp(strikes, axes[0], at_tilt[:, c]) for c in (1, 0, 3, 2))
            heading = np.arctan2(v_x, v_y)
            side += share * weight * float(_WEIGHTS @ (x + run * np.sin(heading)))
            along += share * weight * float(_WEIGHTS @ (y + run * np.cos(heading)))
    return -math.atan2(side, along)


def _between(flights: np.ndarray, tilts: np.ndarray, tilt: float) -> np.ndarray:
    """Flights at one tilt, float[nf, 6]: straight between the tabled ones, the last beyond them."""
    place = float(np.clip((tilt - tilts[0]) / (tilts[1] - tilts[0]), 0.0, len(tilts) - 1.0))
    k = min(int(place), len(tilts) - 2)
    return flights[:, k] + (place - k) * (flights[:, k + 1] - flights[:, k])
