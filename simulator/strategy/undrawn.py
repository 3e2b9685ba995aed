"""Shots past all that is drawn, or short of where a fairway was taken to begin: rough to the model."""

from __future__ import annotations

import math

import numpy as np
import shapely

from ..hole.model import Feature, Hole
from ..hole.surfaces import Surface
from .aimline import AimLine
from .alternative import Alternative
from .result import Start

OFF_LINE_YD = 25.0
"""A place no farther from the line of play than this is taken to be known even if nothing is drawn [yd]."""

APART_YD = 10.0
"""Nothing drawn so near a place, and nothing farther out on its side: nobody has said what is there [yd]."""

OUTWARDS_YD = 150.0
"""How far out it is looked for [yd]: no ball goes farther beside the line."""


def past_the_drawing(hole: Hole, start: Start, one: Alternative) -> str:
    """``"left"`` or ``"right"`` where the middle of a shot's balls comes past everything drawn on that side.

    Else empty. It goes by the balls, not by the aim: in a crosswind a line far to windward brings them back.
    """
    line = AimLine(*start.xy_yd, one.aim_bearing_deg)
    x, y = line.at(one.carry_yd, one.middle_right_yd.value)
    station, offset = hole.station_offset(x, y)
    if abs(offset) <= OFF_LINE_YD:
        return ""
    out = hole.at(station, offset + math.copysign(OUTWARDS_YD, offset))
    beyond = shapely.LineString([(x, y), out]).buffer(APART_YD)
    if any(feature.area.intersects(beyond) for feature in hole.features):
        return ""
    return "right" if offset > 0.0 else "left"


def short_of_the_fairway(hole: Hole, start: Start, one: Alternative) -> float | None:
    """Where the fairway begins [yd], if nobody said so and most balls of a tee shot come to rest before it.

    A short hitter is not in the rough with every drive: where the mowing starts was assumed.
    """
    fairways = [f for f in hole.features if f.surface is Surface.FAIRWAY]
    first = min(fairways, key=lambda f: _begins_yd(hole, f), default=None)
    if start.lie != "tee" or first is None or not first.from_assumed:
        return None
    begins = _begins_yd(hole, first)
    middle, _ = hole.station_offset(*np.median(one.finishes_yd, axis=0).tolist())
    return begins if middle < begins else None


def _begins_yd(hole: Hole, area: Feature) -> float:
    """The least station of an area's corners [yd]."""
    return float(hole.play_line.corners_of(area.area)[:, 0].min())
