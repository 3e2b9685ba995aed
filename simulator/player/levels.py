"""Levels: what a bag file leaves out, filled from a handicap, by plain tables from published figures.

Handicap index runs from -5 (written "+5" on a card) to 54; tour players sit at -5. Between rows everything
is linear.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from ..physics.launch import MEN, WOMEN, family
from . import published as pub
from .boxes import solid_box_yd
from .model import PartSwing, Putting

LOWEST_HANDICAP, HIGHEST_HANDICAP = -5.0, 54.0
"""Range of handicap index a level is given for; 54 is the most the World Handicap System allows."""

STANDARD_SET: tuple[str, ...] = (
    "driver", "3-wood", "5-wood", "4-hybrid", "5-iron", "6-iron", "7-iron", "8-iron", "9-iron",
    "pitching wedge", "gap wedge", "sand wedge", "lob wedge",
)  # fmt: skip
"""The bag of somebody who names no clubs (common practice): thirteen and a putter."""

# Driver carry [yd], solid, men. 3 to 26: mean measured drive of the R&A/USGA report less a 20 yd run, put
# back up by what the level's mishits cost; 0 and 20 sit between it and the rating system's 225 and 180 yd
# of carry; -5 lies under the men's tour average of 282 (2023) because the best amateurs are shorter; 36
# and 54 continue the line.
_CARRY_HANDICAP = np.array([-5.0, 0, 5, 10, 15, 20, 28, 36, 54])
_DRIVER_CARRY_YD = np.array([272.0, 231, 217, 204, 192, 184, 172, 160, 133])

_IRON_REACH = 0.82
"""Up to this share of the driver's carry clubs spread as irons do, then straight to the driver; assumed."""

_MISHIT_KIND = {"driver": 1.0, "wood": 1.15, "hybrid": 1.05, "iron": 1.0, "wedge": 0.9}
"""Mishit rate by family over that of a middle iron, assumed: the driver is teed, woods are hardest."""

_BIAS_KIND = {"driver": 0.0, "wood": 0.5, "hybrid": 0.75, "iron": 1.0, "wedge": 1.0}
"""Short bias by family over that of a middle iron, assumed: driver carries are already means of play."""


@cache
def _fitted(name: str) -> dict[str, np.ndarray]:
    """Columns of a fitted table beside this file, as arrays (see its script in ``simulator.fits``)."""
    with open(Path(__file__).with_name(name), "rb") as file:
        columns: dict[str, Any] = tomllib.load(file)
    return {key: np.array(value) for key, value in columns.items() if isinstance(value, list)}


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

    Parameters
    ----------
    handicap : float
    driver_carry_yd : float
    part : PartSwing
    putting : Putting
    """

    handicap: float
    driver_carry_yd: float
    part: PartSwing
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
        mishits = self._mishits()
        rate = min(0.5, mishits["mishit_rate"] * _MISHIT_KIND[group])
        factor = mishits["mishit_factor"]
        iron_end = _IRON_REACH * driver_carry_yd
        direction, distance = self._iron(min(carry_yd, iron_end), mishits)
        if group in ("driver", "wood") or carry_yd > iron_end:
            long = 1.0 if group == "driver" else (carry_yd - iron_end) / (driver_carry_yd - iron_end)
            long = float(np.clip(long, 0.0, 1.0))
            drive_direction, drive_distance = self._driver(driver_carry_yd, mishits)
            direction += long * (drive_direction - direction)
            distance += long * (drive_distance - distance)
        return {
            "direction_sd_deg": direction,
            "distance_sd_pct": distance,
            "bias_right_deg": 0.0,
            "bias_long_pct": mishits["bias_long_pct"] * _BIAS_KIND[group] + 0.0,  # no "-0"
            "mishit_rate": rate,
            "mishit_loss_pct": mishits["mishit_loss_pct"],
            "mishit_distance_sd_pct": factor * distance,
            "mishit_direction_factor": factor,
        }

    def _mishits(self) -> dict[str, float]:
        table = _fitted("mishits.toml")
        return {k: float(np.interp(self.handicap, table["handicap"], v)) for k, v in table.items()}

    def _iron(self, carry_yd: float, mishits: dict[str, float]) -> tuple[float, float]:
        """Solid spread of an iron or wedge: direction [deg], distance [%]."""
        across, along = solid_box_yd(self.handicap, carry_yd)
        return (
            float(np.degrees(np.arctan2(mishits["direction_scale"] * across, carry_yd))),
            100.0 * mishits["distance_scale"] * along / carry_yd,
        )

    def _driver(self, carry_yd: float, mishits: dict[str, float]) -> tuple[float, float]:
        """Solid spread of the driver: published spread of all drives less what mishits add; depth by box."""
        at = pub.DRIVE_SCORE - pub.SCORE_OVER_HANDICAP
        first, last = pub.DRIVE_DIRECTION_SD_DEG[0], pub.DRIVE_DIRECTION_SD_DEG[-1]
        all_deg = float(np.interp(self.handicap, np.r_[LOWEST_HANDICAP, at[1:]], pub.DRIVE_DIRECTION_SD_DEG))
        all_deg += max(0.0, self.handicap - at[-1]) * (last - first) / (at[-1] - LOWEST_HANDICAP)
        factor = mishits["mishit_factor"]
        widening = 1.0 + mishits["mishit_rate"] * (factor**2 - 1.0)
        total_yd = carry_yd + pub.DRIVE_RUN_YD
        _, along = solid_box_yd(self.handicap, total_yd)
        return all_deg / widening**0.5, 100.0 * along / total_yd


def level(handicap: float) -> Level:
    """The level of a handicap index, -5 to 54.

    Raises
    ------
    ValueError
        Handicap outside the range.
    """
    if not LOWEST_HANDICAP <= handicap <= HIGHEST_HANDICAP:
        raise ValueError(f"handicap {handicap:g} outside {LOWEST_HANDICAP:g} to {HIGHEST_HANDICAP:g}")
    return Level(
        handicap=float(handicap),
        driver_carry_yd=float(np.interp(handicap, _CARRY_HANDICAP, _DRIVER_CARRY_YD)),
        part=part_of_level(handicap),
        putting=_putting_of_level(handicap),
    )


def part_of_level(handicap: float) -> PartSwing:
    """Part swings of a level, from the fitted table."""
    table = _fitted("part_swings.toml")
    nodes = table["carry_yd"]

    def column(name: str) -> np.ndarray:
        values = table[name]
        if values.ndim == 1:  # one number a level
            return np.full(len(nodes), np.interp(handicap, table["handicap"], values))
        return np.array([np.interp(handicap, table["handicap"], values[:, j]) for j in range(len(nodes))])

    distance = column("distance_sd_pct")
    factor = float(column("mishit_factor")[0])
    names = ("carry_yd", "direction_sd_deg", "distance_sd_pct", "mishit_rate", "mishit_loss_pct",
             "mishit_distance_sd_pct", "mishit_direction_factor")  # fmt: skip
    return PartSwing(
        carry_yd=nodes,
        direction_sd_deg=column("direction_sd_deg"),
        distance_sd_pct=distance,
        mishit_rate=column("mishit_rate"),
        mishit_loss_pct=column("mishit_loss_pct"),
        mishit_distance_sd_pct=factor * distance,
        mishit_direction_factor=factor,
        sources={name: "level" for name in names},
    )
