"""Levels: what a bag file leaves out, filled from a handicap index, for men and for women.

Handicap index runs from -5 (written "+5" on a card) to 54; tour players sit at -5. Lengths and the direction
of drives are published figures; three curves over the handicap (``curves.py``) are fitted to published
scores, greens hit and leaves on the bench of ``simulator.fits.levels``; putting has a fit of its own.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

from ..physics.launch import MEN, WOMEN, family
from . import published as pub
from .boxes import SEXES, solid_box_yd
from .curves import Curves, drive_total_yd, fitted_curves
from .model import PartSwing, Putting

LOWEST_HANDICAP, HIGHEST_HANDICAP = -5.0, 54.0
"""Range of handicap index a level is given for; 54 is the most the World Handicap System allows."""

HIGHEST_WITH_DATA = 36.0
"""The weakest group with published figures (scores 97-120) stands here; beyond it the curves are
continued."""

STANDARD_SET: tuple[str, ...] = (
    "driver", "3-wood", "5-wood", "4-hybrid", "5-iron", "6-iron", "7-iron", "8-iron", "9-iron",
    "pitching wedge", "gap wedge", "sand wedge", "lob wedge",
)  # fmt: skip
"""The bag of somebody who names no clubs (common practice): thirteen and a putter."""

_IRON_REACH = 0.82
"""Up to this share of the driver's carry clubs spread as irons do, then straight to the driver; assumed."""

_MISHIT_KIND = {"driver": 1.0, "wood": 1.3, "hybrid": 1.1, "iron": 1.0, "wedge": 0.9}
"""Mishit rate by family over that of a middle iron, assumed: the driver is teed. Woods are
hardest, so that the rating system's bogey player has 150 + 20 yd of a second shot after a drive of 180 +
20."""

_MOST_MISHITS = 0.6
"""No club's mishit rate is above this (assumed)."""

_BIAS_KIND = {"driver": 0.0, "wood": 0.5, "hybrid": 0.75, "iron": 1.0, "wedge": 1.0}
"""Short bias by family over that of a middle iron, assumed: driver carries are already means of play."""

_SHORT_MOST = 1.3
"""No level comes up shorter than this over the 90-shooter (assumed)."""

_LONGER_HANDICAP, _LONGER = (0.0, pub.SHOOTER_OF_90_HANDICAP), (1.0, 1.25)
"""Length over width of solid irons over that of the boxes: at rest the 90-shooter's pattern is then about
half as long again as wide, as published; scratch's boxes as they are."""

_FULL_WEDGE_YD = 90.0
"""Part swings are a share wider than full shots below this carry [yd], the shortest two-thirds box
printed."""

_SHORT_YD = (38.0, 90.0)
"""Up to the first carry a mishit loses what a short one does, from the second what a full one does [yd];
assumed."""

_PART_YD = np.array([5.0, 8.0, 12.0, 18.0, 26.0, 38.0, 54.0, 72.0, 90.0, 110.0, 130.0, 150.0, 180.0])
"""Carries at which a level's part swings are given [yd]; below the first the share is kept, for want of any
source under 10 yd."""


def _putting_of_level(handicap: float) -> Putting:
    """Putting skill of a level, straight lines between the rows of ``simulator.fits.putting``."""
    rows = _putting_rows()
    at = [row["handicap"] for row in rows]
    return Putting(
        angle_sd_deg=float(np.interp(handicap, at, [row["angle_sd_deg"] for row in rows])),
        distance_sd=float(np.interp(handicap, at, [row["distance_sd"] for row in rows])),
        sources={"angle_sd_deg": "level", "distance_sd": "level"},
    )


@cache
def _putting_rows() -> list[dict[str, float]]:
    with open(Path(__file__).with_name("putting_levels.toml"), "rb") as file:
        return sorted(tomllib.load(file)["level"], key=lambda row: row["handicap"])


@dataclass(frozen=True)
class Level:
    """Everything a handicap says about a player.

    Attributes
    ----------
    handicap : float
    sex : str
        ``"man"`` or ``"woman"``: whose lengths and two-thirds boxes.
    driver_carry_yd : float
        Of solid strikes.
    mishit_rate, mishit_loss_pct, short_loss_pct, mishit_factor, wood_factor, spread_scale : float
    short_power : float
        The curves (``curves.Curves``) at the handicap.
    putting : Putting
    """

    handicap: float
    sex: str
    driver_carry_yd: float
    mishit_rate: float
    mishit_loss_pct: float
    short_loss_pct: float
    mishit_factor: float
    wood_factor: float
    spread_scale: float
    short_power: float
    putting: Putting

    def carry_yd(self, kind: str) -> float:
        """Stock carry of a kind of club [yd]: its share of the driver's carry in the 2023 tour averages.

        Between the women's and the men's share by driver carry, constant beyond them.
        """
        share = np.interp(
            self.driver_carry_yd,
            [WOMEN["driver"].carry_yd, MEN["driver"].carry_yd],
            [rows[kind].carry_yd / rows["driver"].carry_yd for rows in (WOMEN, MEN)],
        )
        return float(share) * self.driver_carry_yd

    def spread(self, kind: str, carry_yd: float, driver_carry_yd: float) -> dict[str, float]:
        """The number fields of ``Club``, but the carry, for one club.

        Parameters
        ----------
        kind : str
            Launch family.
        carry_yd : float
            The club's carry [yd].
        driver_carry_yd : float
            Carry of this player's driver [yd], the long end of the line from irons to driver.
        """
        group = family(kind)
        rate = min(_MOST_MISHITS, self.mishit_rate * _MISHIT_KIND[group])
        iron_end = _IRON_REACH * driver_carry_yd
        direction, distance = self._iron(min(carry_yd, iron_end))
        if group in ("driver", "wood") or carry_yd > iron_end:
            long = 1.0 if group == "driver" else (carry_yd - iron_end) / (driver_carry_yd - iron_end)
            long = float(np.clip(long, 0.0, 1.0))
            drive_direction, drive_distance = self._driver(driver_carry_yd)
            direction += long * (drive_direction - direction)
            distance += long * (drive_distance - distance)
        if group == "wood":
            direction, distance = self.wood_factor * direction, self.wood_factor * distance
        return {
            "direction_sd_deg": direction,
            "distance_sd_pct": distance,
            "bias_right_deg": 0.0,
            "bias_long_pct": self.bias_long_pct * _BIAS_KIND[group] + 0.0,  # no "-0"
            "mishit_rate": rate,
            "mishit_loss_pct": self.mishit_loss_pct,
            "mishit_distance_sd_pct": self.mishit_factor * distance,
            "mishit_direction_factor": self.mishit_factor,
        }

    @property
    def part(self) -> PartSwing:
        """Part swings: as full irons from a full wedge up, wider by the power of the carry below it."""
        direction, distance = np.array([self._iron(max(c, _FULL_WEDGE_YD)) for c in _PART_YD]).T
        wider = np.maximum(_FULL_WEDGE_YD / _PART_YD, 1.0) ** self.short_power
        names = ("carry_yd", "direction_sd_deg", "distance_sd_pct", "mishit_rate", "mishit_loss_pct",
                 "mishit_distance_sd_pct", "mishit_direction_factor")  # fmt: skip
        return PartSwing(
            carry_yd=_PART_YD,
            direction_sd_deg=direction * wider,
            distance_sd_pct=distance * wider,
            mishit_rate=np.full(_PART_YD.size, min(_MOST_MISHITS, self.mishit_rate * _MISHIT_KIND["wedge"])),
            mishit_loss_pct=np.interp(_PART_YD, _SHORT_YD, [self.short_loss_pct, self.mishit_loss_pct]),
            mishit_distance_sd_pct=self.mishit_factor * distance * wider,
            mishit_direction_factor=self.mishit_factor,
            sources={name: "level" for name in names},
        )

    @property
    def bias_long_pct(self) -> float:
        """Solid strikes' mean beyond the stock carry [%]: what mishits leave of the published shortfall.

        The 90-shooter comes up 13 yd short of 150 on average, the tour not at all; straight between and
        beyond, as far as ``_SHORT_MOST``.
        """
        ninety = 100.0 * pub.SHOOTER_OF_90_SHORT_YD / pub.SHOOTER_OF_90_SHOT_YD
        way = (self.handicap - LOWEST_HANDICAP) / (pub.SHOOTER_OF_90_HANDICAP - LOWEST_HANDICAP)
        return min(0.0, self.mishit_rate * self.mishit_loss_pct - ninety * min(way, _SHORT_MOST))

    def _iron(self, carry_yd: float) -> tuple[float, float]:
        """Solid spread of an iron or wedge: direction [deg], distance [%]."""
        across, along = solid_box_yd(self.handicap, carry_yd, self.sex)
        longer = float(np.interp(self.handicap, _LONGER_HANDICAP, _LONGER)) ** 0.5
        return (
            float(np.degrees(np.arctan2(self.spread_scale * across / longer, carry_yd))),
            100.0 * self.spread_scale * longer * along / carry_yd,
        )

    def _driver(self, carry_yd: float) -> tuple[float, float]:
        """Solid spread of the driver: published spread of all drives less what mishits add; depth by box."""
        at = pub.DRIVE_SCORE - pub.SCORE_OVER_HANDICAP
        first, last = pub.DRIVE_DIRECTION_SD_DEG[0], pub.DRIVE_DIRECTION_SD_DEG[-1]
        all_deg = float(np.interp(self.handicap, np.r_[LOWEST_HANDICAP, at[1:]], pub.DRIVE_DIRECTION_SD_DEG))
        all_deg += max(0.0, self.handicap - at[-1]) * (last - first) / (at[-1] - LOWEST_HANDICAP)
        widening = 1.0 + self.mishit_rate * (self.mishit_factor**2 - 1.0)
        total_yd = carry_yd + float(pub.DRIVE_RUN_YD.min())
        _, along = solid_box_yd(self.handicap, total_yd, self.sex)
        return all_deg / widening**0.5, 100.0 * along / total_yd


def level(handicap: float, sex: str = "man", curves: Curves | None = None) -> Level:
    """The level of a handicap index, -5 to 54.

    Parameters
    ----------
    handicap : float
    sex : str
        ``"man"`` or ``"woman"``.
    curves : Curves, optional
        The fitted ones when left out; the fit tries others.

    Raises
    ------
    ValueError
        Handicap outside the range, or another sex.
    """
    if not LOWEST_HANDICAP <= handicap <= HIGHEST_HANDICAP:
        raise ValueError(f"handicap {handicap:g} outside {LOWEST_HANDICAP:g} to {HIGHEST_HANDICAP:g}")
    if sex not in SEXES:
        raise ValueError(f"sex {sex!r}: {' or '.join(SEXES)} is allowed")
    curves = curves or fitted_curves()
    rate = curves.at("mishit_rate", handicap)
    loss = curves.mishit_loss_pct
    total_yd = drive_total_yd(handicap, sex)
    mean_yd = total_yd - float(np.interp(total_yd, pub.DRIVE_RUN_TOTAL_YD, pub.DRIVE_RUN_YD))
    return Level(
        handicap=float(handicap),
        sex=sex,
        driver_carry_yd=mean_yd / (1.0 - rate * _MISHIT_KIND["driver"] * loss / 100.0),
        mishit_rate=rate,
        mishit_loss_pct=loss,
        short_loss_pct=curves.short_loss_pct,
        mishit_factor=curves.mishit_factor,
        wood_factor=curves.wood_factor,
        spread_scale=curves.at("spread_scale", handicap),
        short_power=curves.at("short_power", handicap),
        putting=_putting_of_level(handicap),
    )


def handicap_said(index: float) -> str:
    """A handicap index as golfers write it: a plus handicap, which is negative in files, as "+5"."""
    return f"+{-index:g}" if index < 0.0 else f"{index:g}"
