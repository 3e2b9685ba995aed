"""The fitted curves of the levels: a few numbers at a few handicaps, and what runs between them."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import ArrayLike

from .published import DRIVE_HANDICAP, DRIVE_TOTAL_YD

CURVES = ("mishit_rate", "spread_scale", "short_power")
"""Curves over the handicap that are fitted; ``Curves`` says what each is."""


NUMBERS = ("mishit_loss_pct", "short_loss_pct", "mishit_factor", "wood_factor")
"""Numbers all levels share."""


@dataclass(frozen=True)
class Curves:
    """Skill by handicap index.

    Attributes
    ----------
    handicap : tuple of float
        Handicaps at which the curves are given.
    mishit_rate : tuple of float
        Share of a middle iron's strikes that are mishits.
    spread_scale : tuple of float
        Spread of solid iron shots over the two-thirds boxes of the rating system.
    short_power : tuple of float
        Spread of a part swing as a share of its carry goes as the carry to the minus this, below a full
        wedge.
    mishit_loss_pct, short_loss_pct : float
        Carry a mishit of a full swing and of a part swing loses [%].
    mishit_factor : float
        How much wider a mishit spreads than a solid strike.
    wood_factor : float
        Spread of woods off turf over their place between irons and driver.
    """

    handicap: tuple[float, ...]
    mishit_rate: tuple[float, ...]
    spread_scale: tuple[float, ...]
    short_power: tuple[float, ...]
    mishit_loss_pct: float
    short_loss_pct: float
    mishit_factor: float
    wood_factor: float

    def at(self, name: str, handicap: float) -> float:
        """One curve at a handicap: monotone cubics between the given ones (Fritsch and Carlson 1980)."""
        return smooth(self.handicap, getattr(self, name), handicap)


def smooth(at: ArrayLike, values: ArrayLike, x: float) -> float:
    """Monotone piecewise cubic through three points and more, level beyond the ends.

    The same as scipy's PchipInterpolator (a test compares), whose import is 0.2 s of every answer: slopes
    at the points by Fritsch and Butland (1984, A method for constructing local monotone piecewise cubic
    interpolants, SIAM J. Sci. Stat. Comput. 5:300, from memory), at the ends by three points.
    """
    at, values = np.asarray(at, float), np.asarray(values, float)
    x = float(np.clip(x, at[0], at[-1]))
    k = int(np.clip(np.searchsorted(at, x, side="right") - 1, 0, at.size - 2))
    wide = at[k + 1] - at[k]
    slope = _slopes(np.diff(at), np.diff(values) / np.diff(at))[k : k + 2]
    t = (x - at[k]) / wide
    before, after = (1.0 + 2.0 * t) * (1.0 - t) ** 2, t * t * (3.0 - 2.0 * t)
    bends = wide * t * (1.0 - t) * ((1.0 - t) * slope[0] - t * slope[1])
    return float(before * values[k] + after * values[k + 1] + bends)


def _slopes(wide: np.ndarray, rises: np.ndarray) -> np.ndarray:
    """Slopes at n points, from the n - 1 widths between them and the mean slopes there."""
    out = np.zeros(rises.size + 1)
    early, late = wide[:-1] + 2.0 * wide[1:], 2.0 * wide[:-1] + wide[1:]
    same = rises[:-1] * rises[1:] > 0.0  # level where the curve turns
    out[1:-1][same] = ((early + late)[same]) / (late[same] / rises[1:][same] + early[same] / rises[:-1][same])
    for end, (h, next_h, m, next_m) in (
        (0, (wide[0], wide[1], rises[0], rises[1])),
        (-1, (wide[-1], wide[-2], rises[-1], rises[-2])),
    ):
        d = ((2.0 * h + next_h) * m - h * next_m) / (h + next_h)
        if np.sign(d) != np.sign(m):
            d = 0.0
        elif np.sign(m) != np.sign(next_m) and abs(d) > 3.0 * abs(m):
            d = 3.0 * m
        out[end] = d
    return out


def drive_total_yd(handicap: float, sex: str) -> float:
    """Mean length of all a level's tee shots with the driver, run included [yd]: published, see there."""
    return smooth(DRIVE_HANDICAP[sex], DRIVE_TOTAL_YD[sex], handicap)


def curves_of(table: Mapping[str, Any]) -> Curves:
    """Curves from the keys of their file."""
    columns: dict[str, Any] = {key: tuple(map(float, table[key])) for key in ("handicap", *CURVES)}
    numbers: dict[str, Any] = {key: float(table[key]) for key in NUMBERS}
    return Curves(**columns, **numbers)


@cache
def fitted_curves() -> Curves:
    """The curves of ``levels.toml``, written by ``python -m simulator.fits.levels``."""
    return curves_of(tomllib.loads(Path(__file__).with_name("levels.toml").read_text(encoding="utf-8")))
