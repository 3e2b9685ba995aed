"""Reach: how far 999 of 1,000 balls go, where each trouble starts, and the margin today."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
import shapely

from ..conditions import Conditions, Wind, at_both_heights
from ..hole.model import Hole
from ..hole.surfaces import TROUBLE
from ..tables.bag import Bag
from ..tables.carries import runs_yd, stock_landings
from ..tables.shots import ShotList
from ..units import compass_deg
from .aimline import AimLine
from .errorbars import Estimate, quantile

OF_THOUSAND = 0.999
"""Share of the balls that finish short of the distance that is told: 999 of 1,000."""

NARROW_YD = 10.0
"""With a smaller margin than this, what would bring the trouble into reach is worked out [yd]."""

MOST_HELP_MPH = 20
"""Breezes tried, in whole miles an hour felt at head height [mph]."""

FIRM = 1.0
"""Firmness of the fairway that is tried."""

WIDEST_DEG = 80.0
"""Balls that start wider than this are left out of the sector trouble is looked for in [deg]."""


@dataclass(frozen=True)
class Reach:
    """One trouble and one club's longest balls.

    Attributes
    ----------
    name : str
        Of the area.
    starts_yd : float
        From the ball to its nearest point inside the directions that 999 of 1,000 balls take.
    carry_yd, finish_yd : Estimate
        Distances that 999 of 1,000 balls come down and finish short of.
    helping_mph : int or None
        The least breeze more from behind, felt at head height, that carries the longest ball there;
        None when it was not worked out or `MOST_HELP_MPH` would not do it.
    firm_reaches : bool or None
        Whether firm fairways would let it run there; None when it was not worked out.
    """

    name: str
    starts_yd: float
    carry_yd: Estimate
    finish_yd: Estimate
    helping_mph: int | None = None
    firm_reaches: bool | None = None

    @property
    def spare_yd(self) -> float:
        """Yards between the longest finish and the trouble; negative when it is in reach."""
        return self.starts_yd - self.finish_yd.value

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "name": self.name,
            "starts_yd": self.starts_yd,
            "carry_999_yd": self.carry_yd.value,
            "carry_999_standard_error_yd": self.carry_yd.standard_error,
            "finish_999_yd": self.finish_yd.value,
            "finish_999_standard_error_yd": self.finish_yd.standard_error,
            "carry_to_spare_yd": self.starts_yd - self.carry_yd.value,
            "to_spare_yd": self.spare_yd,
            "helping_mph": self.helping_mph,
            "firm_reaches": self.firm_reaches,
        }


def find_reach(
    hole: Hole, bag: Bag, row: int, line: AimLine, landings_yd: np.ndarray, finishes_yd: np.ndarray
) -> tuple[Reach, ...]:
    """Every trouble in the directions a shot takes, the nearest to being reached first.

    Parameters
    ----------
    row : int
        Row of the shot in the bag.
    landings_yd, finishes_yd : float (n, 2)
        Where its balls come down and finish.
    """
    landed, rested = (
        np.hypot(ends[:, 0] - line.x_yd, ends[:, 1] - line.y_yd) for ends in (landings_yd, finishes_yd)
    )
    carry, finish = quantile(landed, OF_THOUSAND), quantile(rested, OF_THOUSAND)
    sector = _sector(line, finishes_yd, float(rested.max()) + 400.0)
    here = shapely.Point(line.x_yd, line.y_yd)
    found = []
    for feature in hole.features:
        if feature.surface not in TROUBLE:
            continue
        ahead = feature.area.intersection(sector)
        if not ahead.is_empty:
            found.append(Reach(feature.name, float(here.distance(ahead)), carry, finish))
    found.sort(key=lambda one: abs(one.spare_yd))
    if row >= bag.shots.first_part or not any(_narrow(one) for one in found):
        return tuple(found)
    gains = _gains(bag, row, line.bearing_deg)
    return tuple(_brought(one, *gains) if _narrow(one) else one for one in found)


def _sector(line: AimLine, finishes_yd: np.ndarray, far_yd: float) -> shapely.Polygon:
    """The directions that 999 of 1,000 balls finish in, as a triangle from the ball."""
    along, across = line.seen(*finishes_yd.T)
    gone = np.hypot(along, across) > 1.0
    turn = np.degrees(np.arctan2(across[gone], along[gone]))
    half = (1.0 - OF_THOUSAND) / 2.0
    ends = np.quantile(turn, [half, 1.0 - half]) if turn.size else np.zeros(2)
    low, high = np.clip(ends, -WIDEST_DEG, WIDEST_DEG) + np.array([-0.01, 0.01])
    bearings = line.bearing_deg + np.linspace(low, high, 9)
    rim = [replace(line, bearing_deg=float(bearing)).at(far_yd) for bearing in bearings]
    return shapely.Polygon([(line.x_yd, line.y_yd), *rim])


def _narrow(one: Reach) -> bool:
    return 0.0 <= one.spare_yd < NARROW_YD


def _gains(bag: Bag, row: int, bearing_deg: float) -> tuple[np.ndarray, float]:
    """What the stock strike gains: carry by 1, 2, ... mph more from behind, run on firm fairway [yd]."""
    day = bag.conditions
    alone = ShotList.of_full((bag.shots.shots[row],))
    today = stock_landings(alone, day, bearing_deg, 0.0, 1)
    carries = [
        stock_landings(alone, _helped(day, mph, bearing_deg), bearing_deg, 0.0, 1)[0, 0]
        for mph in range(1, MOST_HELP_MPH + 1)
    ]
    firm = replace(day, fairway_firmness=FIRM)
    more = runs_yd(today, firm)[0] - runs_yd(today, day)[0]
    return np.array(carries) - today[0, 0], float(more)


def _brought(one: Reach, carries_yd: np.ndarray, run_yd: float) -> Reach:
    """A trouble that is nearly reached, with what would bring it into reach."""
    enough = np.flatnonzero(carries_yd >= one.spare_yd)
    helping = int(enough[0]) + 1 if enough.size else None
    return replace(one, helping_mph=helping, firm_reaches=run_yd >= one.spare_yd)


def _helped(day: Conditions, mph: int, bearing_deg: float) -> Conditions:
    """The day with so much more wind from behind the shot, both at head height."""
    behind = math.radians(bearing_deg + 180.0)
    x, y = mph * math.sin(behind), mph * math.cos(behind)
    if day.wind is not None:
        felt = at_both_heights(day.wind)[1]
        x += felt * math.sin(math.radians(day.wind.from_deg))
        y += felt * math.cos(math.radians(day.wind.from_deg))
    blowing = Wind(math.hypot(x, y), compass_deg(x, y), "felt")
    return replace(day, wind=blowing)
