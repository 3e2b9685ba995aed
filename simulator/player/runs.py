"""How far strikes run on level medium fairway, and curve, by a small table of the game's own flight.

The table is made by ``simulator.fits.runs`` with the game's flight and run, so that totals and finishing
widths in bag files mean the same as in the game; only the game itself knows other ground.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import ArrayLike, NDArray

from ..physics.launch import MEN

SHORTEST_YD, LONGEST_YD = 5.0, 400.0
"""Carries that a club may have, and that are tried for a total [yd] (assumed)."""

STEP_RAD = np.radians(120.0 / 18.0)
"""Step of the game's tilt axis, over which it measures how a tilt turns the ball."""

LEAST_KEPT = 0.3
"""No tilt takes more of a carry than leaves this share (assumed): a parabola goes on below it."""

TILT_NODES, _WEIGHTS = np.polynomial.hermite_e.hermegauss(14)
TILT_WEIGHTS = _WEIGHTS / _WEIGHTS.sum()
"""Tilts in standard deviations from their mean, and shares of the strikes that have them (Gauss-Hermite)."""


@cache
def _table() -> dict[str, NDArray[np.float64]]:
    with open(Path(__file__).with_name("runs.toml"), "rb") as file:
        return {key: np.array(value) for key, value in tomllib.load(file).items() if isinstance(value, list)}


def punch_run_yd(carry_yd: float) -> float:
    """Run of a punch or chip with a middle iron in still air on level medium fairway [yd]."""
    table = _table()
    return float(np.interp(carry_yd, table["punch_carries_yd"], table["punch_run_yd"]))


def punch_gain(carry_yd: float) -> float:
    """Share by which a punch or chip goes farther, run and all, for one by which it carries farther."""
    table = _table()
    carries = table["punch_carries_yd"]
    gains = np.gradient(np.log(carries + table["punch_run_yd"]), np.log(carries))
    return float(np.interp(carry_yd, carries, gains))


def run_yd(kind: str, carry_yd: float, strike: ArrayLike = 1.0) -> NDArray[np.float64]:
    """Run of strikes of a club in still air on level medium fairway [yd].

    Parameters
    ----------
    kind : str
        Launch family.
    carry_yd : float
        The club's stock carry.
    strike : array_like
        Carry of the strike over the stock carry.

    Returns
    -------
    ndarray
        Of the shape of ``strike``; straight lines between the tabled carries and strikes, constant beyond.
    """
    table = _table()
    shares = table["shares"]
    rows, share = table[kind], carry_yd / MEN[kind].carry_yd
    at_carry = [np.interp(share, shares, column) for column in rows.T]
    return np.asarray(np.interp(np.asarray(strike, float), table["strikes"], at_carry))


@dataclass(frozen=True)
class Tilted:
    """What a tilt t [rad] of the spin axis does to a stock strike.

    Attributes
    ----------
    turn, bend : float
        It lands ``turn * sin(bend * t) / bend`` off its start line [rad].
    drop : float
        It carries less by ``drop * t**2``, as a share.
    """

    turn: float
    bend: float
    drop: float

    def angle(self, tilt: ArrayLike) -> NDArray[np.float64]:
        """Angle off the start line at landing [rad]."""
        return np.asarray(self.turn * np.sin(self.bend * np.asarray(tilt)) / self.bend)

    def tilt(self, angle: float) -> float:
        """Tilt that lands so far off the start line, the most there is at the most [rad]."""
        return float(np.arcsin(np.clip(angle * self.bend / self.turn, -1.0, 1.0)) / self.bend)

    def kept(self, tilt: ArrayLike) -> NDArray[np.float64]:
        """Share of the carry that is left."""
        return np.asarray(np.maximum(1.0 - self.drop * np.asarray(tilt) ** 2, LEAST_KEPT))

    def slope(self, tilt: float) -> float:
        """Angle off line per tilt about a mean tilt, measured as the game does: over a step either side."""
        step = self.bend * STEP_RAD
        return float(self.turn * max(np.cos(self.bend * tilt), 0.2) * np.sin(step) / step)


def tilted(kind: str, carry_yd: float) -> Tilted:
    """What tilts do to the stock strikes of a club."""
    table, share = _table(), carry_yd / MEN[kind].carry_yd
    found = (np.interp(share, table["shares"], table[f"{kind} {what}"]) for what in ("turn", "bend", "drop"))
    return Tilted(*map(float, found))


def carry_of_total(kind: str, total_yd: float) -> float:
    """Stock carry whose carry and run add up to ``total_yd`` [yd]; the nearest tried when none does."""
    from scipy.optimize import brentq

    def over(carry_yd: float) -> float:
        return carry_yd + float(run_yd(kind, carry_yd)) - total_yd

    if over(SHORTEST_YD) >= 0.0:
        return SHORTEST_YD
    if over(LONGEST_YD) <= 0.0:
        return LONGEST_YD
    return float(brentq(over, SHORTEST_YD, LONGEST_YD, xtol=1e-6))
