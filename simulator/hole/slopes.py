"""Slopes of areas: how much the ground falls and which way, in the words people use."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from simulator.hole.fields import Fields, show
from simulator.hole.line import PlayLine
from simulator.units import compass_deg

SLOPE_KEYS = ("slope_pct", "falls", "falls_deg")
"""Plain keys of an area that may slope."""

MOST_GREEN_PCT = 6.0
"""Steepest green [%]: holes are cut on 1-3 %, 4 % is the practical limit at Stimp 10-11 and the 4.5-6 % of
old greens work only on slower ones (common practice, from memory)."""

MOST_GROUND_PCT = 40.0
"""Steepest plane of any other ground [%]: mown banks end near 1 in 3 (common practice, from memory)."""

LEAST_SPREAD_YD = 2.0
"""Spot heights spread less than this [yd, root mean square] across a green settle no plane."""

_FALLS_DEG = {"back": 0.0, "right": 90.0, "front": 180.0, "left": 270.0}
_CORNERS_DEG = {
    frozenset(("back", "right")): 45.0,
    frozenset(("front", "right")): 135.0,
    frozenset(("front", "left")): 225.0,
    frozenset(("back", "left")): 315.0,
}
_FALLS_ALLOWED = "front, back, left, right, front left ..., or falls_deg"


@dataclass(frozen=True)
class Slope:
    """A plane's fall.

    Parameters
    ----------
    percent : fall over distance [%], 0 or more.
    falls_bearing_deg : way the ground falls, clockwise from +y of the hole frame [deg], 0 to 360.
    """

    percent: float
    falls_bearing_deg: float

    @property
    def gradient(self) -> tuple[float, float]:
        """Rise per yard along x and along y."""
        bearing, rise = math.radians(self.falls_bearing_deg), self.percent / 100.0
        return -rise * math.sin(bearing), -rise * math.cos(bearing)


LEVEL = Slope(0.0, 0.0)


def read_falls_deg(text: str) -> float | None:
    """Way something falls from words, clockwise from the line of play [deg]; None when not understood.

    "to the front" is towards the tee (180), "front left" 225, "left" 270.
    """
    words = [w for w in text.lower().replace("-", " ").split() if w not in ("to", "the", "and")]
    if len(words) == 1:
        return _FALLS_DEG.get(words[0])
    return _CORNERS_DEG.get(frozenset(words)) if len(words) == 2 else None


def read_slope(
    fields: Fields, line: PlayLine, x_yd: float, y_yd: float, most_pct: float, required: bool = False
) -> Slope | None:
    """Slope given by a table: `slope_pct` and `falls` (words) or `falls_deg`; None without.

    Parameters
    ----------
    x_yd, y_yd : middle of the area; the way it falls counts from the line of play beside it.
    most_pct : the steepest allowed.

    Raises
    ------
    FileError
        A slope without a way, a way without a slope, or either out of range.
    """
    percent = fields.number("slope_pct", 0.0, most_pct)
    if isinstance(fields.table.get("falls_deg"), str):
        raise fields.error("falls_deg", show(fields.table["falls_deg"]), "a number; words go with falls")
    falls, degrees = fields.text("falls"), fields.number("falls_deg", -360.0, 360.0)
    if percent is None:
        for key in ("falls", "falls_deg"):
            if key in fields.table:
                raise fields.error(key, f"{show(fields.table[key])} without slope_pct", "both or neither")
        if required:
            raise fields.error("slope_pct", "no such key", f"a number from 0 to {most_pct:g}")
        return None
    if falls is not None and degrees is not None:
        raise fields.error("falls", "both falls and falls_deg", "one of them")
    if falls is not None:
        degrees = read_falls_deg(falls)
        if degrees is None:
            raise fields.error("falls", show(falls), _FALLS_ALLOWED)
    if percent == 0.0:
        return LEVEL
    if degrees is None:
        raise fields.error("falls", f"no such key beside slope_pct = {percent:g}", _FALLS_ALLOWED)
    hx, hy = line.heading(line.station_offset(x_yd, y_yd)[0])
    return Slope(percent, (math.degrees(math.atan2(hx, hy)) + degrees) % 360.0)


def fitted_slope(spots: np.ndarray) -> Slope | None:
    """Slope of the least-squares plane through spot heights (n, 3) [yd]; None when they settle none."""
    if len(spots) < 3:
        return None
    offset = spots - spots.mean(axis=0)
    if np.linalg.svd(offset[:, :2], compute_uv=False)[1] < LEAST_SPREAD_YD * math.sqrt(len(spots)):
        return None
    gx, gy = np.linalg.lstsq(offset[:, :2], offset[:, 2], rcond=None)[0]
    return Slope(100.0 * math.hypot(gx, gy), compass_deg(-gx, -gy))
