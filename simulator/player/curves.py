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
    """Monotone piecewise cubic through points, level beyond the ends."""
    from scipy.interpolate import PchipInterpolator

    return float(PchipInterpolator(at, values)(np.clip(x, np.min(at), np.max(at))))


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
