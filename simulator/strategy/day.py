"""What the day does to the answer: the wind at the other height, and the side of the hole to be on."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from ..conditions import misread
from ..tables.bag import Bag
from ..tables.carries import stock_landings

PUTT_FT = 12.0
"""Length of the putt whose worth is told from below and from above the hole [ft]."""

ONE_CLUB_GAP_YD = 10.0
"""Gap taken for a bag with one stock shot, which has none [yd] (common practice)."""


@dataclass(frozen=True)
class DayNote:
    """Two figures that put the day in words.

    Attributes
    ----------
    other_height_carry_yd : float or None
        How much farther the recommended shot carries if the wind given was meant at the other height;
        None without wind.
    half_club_yd : float
        Half the gap between the recommended club and the next: less than that is not worth a word.
    below_hole_strokes : float or None
        Strokes a 12-ft putt from straight above the hole costs more than one from straight below; None
        on a level green.
    """

    other_height_carry_yd: float | None
    half_club_yd: float
    below_hole_strokes: float | None


def day_note(bag: Bag, row: int, bearing_deg: float) -> DayNote:
    """Figures for the shot in one row of the bag, played on a bearing of the hole frame [deg]."""
    return DayNote(_other_height(bag, row, bearing_deg), _half_club(bag, row), _below_hole(bag))


def _other_height(bag: Bag, row: int, bearing_deg: float) -> float | None:
    day, wind = bag.conditions, bag.conditions.wind
    if wind is None or wind.speed_mph == 0.0 or row >= bag.shots.first_part:
        return None
    mine, other = (
        stock_landings(bag.shots, one, bearing_deg, 0.0, row + 1)[row, 0]
        for one in (day, replace(day, wind=misread(wind)))
    )
    return float(other - mine)


def _half_club(bag: Bag, row: int) -> float:
    stock = [shot.carry_yd for shot in bag.shots.shots[: bag.shots.first_part] if shot.flight == "stock"]
    gaps = -np.diff(np.array(stock))
    if gaps.size == 0:
        return ONE_CLUB_GAP_YD / 2.0
    nearest = int(np.argmin(np.abs(np.array(stock) - bag.shots.shots[row].carry_yd)))
    return float(gaps[min(nearest, gaps.size - 1)]) / 2.0


def _below_hole(bag: Bag) -> float | None:
    """On the plane under the pin."""
    putts = bag.putts
    if putts.expected.shape[1] == 1 or putts.slopes[0] == 0.0:
        return None
    above, below = (putts.at(0, direction, PUTT_FT)[0] for direction in (math.pi, 0.0))
    return above - below
