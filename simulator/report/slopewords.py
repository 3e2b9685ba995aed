"""Which way ground falls, as somebody on the line of play sees it, and by compass where that is known."""

from __future__ import annotations

import math

from ..hole.model import Feature, Hole
from ..hole.surfaces import Surface
from ..units import one_turn_deg

_OCTANT_DEG = 45.0
_GREEN = ("back", "back right", "right", "front right", "front", "front left", "left", "back left")
_GROUND = (
    "on down the line", "on down the line and right", "right", "back towards the tee and right",
    "back towards the tee", "back towards the tee and left", "left", "on down the line and left",
)  # fmt: skip
_POINTS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")


def falls_words(hole: Hole, feature: Feature) -> str:
    """ "green falls 3 % towards the front"; by compass behind it only when the hole's bearing is known.

    Slopes are kept in the hole's frame, whose first leg runs straight up: a player counts from the line of
    play beside the area, which a dogleg turns.
    """
    slope = feature.slope
    if slope is None:
        return ""
    middle = feature.area.centroid
    station, _ = hole.station_offset(middle.x, middle.y)
    along_x, along_y = hole.play_line.heading(station)
    way = one_turn_deg(slope.falls_bearing_deg - math.degrees(math.atan2(along_x, along_y)))
    towards = _octant(way, _GREEN if feature.surface is Surface.GREEN else _GROUND)
    if feature.surface is Surface.GREEN:
        towards = f"towards the {towards}"
    elif towards in ("left", "right"):
        towards = f"to the {towards}"
    words = f"{feature.name} falls {slope.percent:.2g} % {towards}"
    if hole.bearing_deg is None:
        return words
    return f"{words} ({compass_words(slope.falls_bearing_deg + hole.bearing_deg)})"


def compass_words(bearing_deg: float) -> str:
    """ "305 deg by compass, north-west"."""
    return f"{one_turn_deg(bearing_deg):.0f} deg by compass, {_octant(bearing_deg, _POINTS)}"


def _octant(angle_deg: float, words: tuple[str, ...]) -> str:
    return words[round(one_turn_deg(angle_deg) / _OCTANT_DEG) % len(words)]
