"""Spot heights of a sketch: reading them, and refusing those that cannot all be true."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from simulator.errors import FileError
from simulator.hole.fields import Fields
from simulator.hole.line import PlayLine

LEAST_SPOTS = 3
"""Fewest entries of a list of spot heights; a tee or an area alone takes a height of its own."""

HIGHEST_YD = 6000.0
"""Largest height [yd], so that heights above the sea pass; only differences count."""

MOST_RANGE_YD = 150.0
"""Largest height between the lowest and the highest spot of a hole [yd]: a limit on slips."""

LEAST_APART_YD = 1.0
"""Spots nearer than this [yd] are one place written twice."""

STEEPEST = 1.0
"""Steepest rise over run between two spots: 45 degrees, steeper than any ground a ball stays on."""

ROUNDING_YD = 1e-6
"""20 m over 20 m is as steep in yards, whatever the last bit of them says."""


@dataclass(frozen=True)
class SpotHeight:
    """A known height: place [yd], height above the file's own zero [yd], and whose it is."""

    x_yd: float
    y_yd: float
    z_yd: float
    owner: str


def read_height(fields: Fields) -> float | None:
    """Height of a tee or an area above the zero of the file's heights [yd]; None where it gives none."""
    return fields.length("height", low=-HIGHEST_YD, high=HIGHEST_YD) if fields.has("height") else None


def read_heights(top: Fields, line: PlayLine) -> list[SpotHeight]:
    """Entries [station, offset, height] of `heights_yd` or [x, y, height] of `heights_xy_yd` (or _m)."""
    if top.has("heights_xy"):
        key = top.key("heights_xy")
        if top.has("heights"):
            raise top.error(key, f"{top.key('heights')} as well", "one of the two")
        rows = top.triples("heights_xy", LEAST_SPOTS, last_limit_yd=HIGHEST_YD, form="[x, y, height]")
        return [
            SpotHeight(x, y, z, f"spot height {number}")
            for number, (x, y, z) in enumerate(rows.tolist(), start=1)
        ]
    if not top.has("heights"):
        return []
    rows = top.triples("heights", LEAST_SPOTS, last_limit_yd=HIGHEST_YD)
    return [
        SpotHeight(*line.at(station, offset), z, f"spot height {number}")
        for number, (station, offset, z) in enumerate(rows.tolist(), start=1)
    ]


def check_heights(source: str, spots: list[SpotHeight]) -> None:
    """Raise FileError for heights too far apart, two in one place, or a cliff between two of them."""
    if not spots:
        return
    z = np.array([s.z_yd for s in spots])
    if np.ptp(z) > MOST_RANGE_YD:
        raise FileError(
            source,
            "heights",
            f"heights from {z.min():.6g} to {z.max():.6g} yd",
            f"at most {MOST_RANGE_YD:g} yd between the lowest and the highest",
        )
    xy = np.array([(s.x_yd, s.y_yd) for s in spots])
    for k, spot in enumerate(spots):
        away = np.hypot(*(xy[k + 1 :] - xy[k]).T)
        rise = np.abs(z[k + 1 :] - z[k])
        for what, wrong in (("near", away < LEAST_APART_YD), ("steep", rise > STEEPEST * away + ROUNDING_YD)):
            if not wrong.any():
                continue
            other = int(np.argmax(wrong))
            both = f"{spot.owner} and {spots[k + 1 + other].owner}"
            if what == "near":
                found, allowed = f"{both} in one place", f"places at least {LEAST_APART_YD:g} yd apart"
            else:
                found = f"{rise[other]:.6g} yd of height over {away[other]:.4g} yd between {both}"
                allowed = f"slopes up to {100.0 * STEEPEST:g} %"
            raise FileError(source, "heights", found, allowed)


def spacing_yd(xy: np.ndarray) -> float:
    """Mean distance from each of some places (n, 2) to its nearest neighbour [yd], n > 1."""
    away = np.hypot(xy[:, None, 0] - xy[None, :, 0], xy[:, None, 1] - xy[None, :, 1])
    np.fill_diagonal(away, np.inf)
    return float(away.min(axis=1).mean())
