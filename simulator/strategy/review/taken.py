"""Places that notes leave open and one thing is meant by: "topped 60 yards", "sideways", "stone dead"."""

from __future__ import annotations

import re
from dataclasses import replace

import shapely

from ...errors import UsageError
from ...hole.model import Hole
from ...hole.surfaces import Surface
from ..distancewords import UNITS, yards
from ..ground import find_beside
from ..placewords import read_words
from . import notes as n
from .parts import FIGURE
from .rests import Rest, resting
from .spoken import A_TAP_IN, NEAREST_FAIRWAY
from .unmeasured import NOT_NOTED

TAP_IN_FT = 2.0
"""Farthest putt that is called a tap-in (common practice) [ft]."""

ON_FAIRWAY_YD = 1.0
"""A ball knocked out sideways lies so far on the fairway at least (assumed) [yd]."""

STRAYS_SHARE = 0.25
"""Ground that was noted without a distance is looked for so far short of and beyond the club's usual length
(assumed): a topped or cut one loses as much."""

_GONE = re.compile(rf"(?P<size>{FIGURE})\s*(?P<unit>{'|'.join(UNITS)})?\s+gone", re.IGNORECASE)


def by_words(hole: Hole, at: Rest, swing: n.Swing) -> Rest | None:
    """Where a ball struck from `at` came to rest, in words that `spoken` puts; None for others."""
    if gone := _GONE.fullmatch(swing.where):
        return _gone(hole, at, yards(gone["size"], gone["unit"]))
    if swing.where == NEAREST_FAIRWAY:
        return _sideways(hole, at, swing)
    if swing.where == A_TAP_IN:
        return replace(resting(f"{TAP_IN_FT:g} ft", hole, at), noted="a tap-in is taken as that")
    return None


def short(hole: Hole, at: Rest, swing: n.Swing, carry_yd: float) -> Rest:
    """The place the club usually carries to, of a ball noted as short alone.

    Raises
    ------
    UsageError
        No ball lies there.
    """
    went = f"the club's usual carry, {carry_yd:.0f} yd"
    try:
        return replace(_gone(hole, at, carry_yd), noted=f"{NOT_NOTED}{went}")
    except UsageError:
        say = 'say where, "to 20 short of the green", "to 60 out, fairway"'
        raise n.refused(swing.said, f"{went}, ends where no ball lies: {say}") from None


def near(hole: Hole, at: Rest, where: str) -> Rest | None:
    """The ground of a kind and side nearest to a station, not much farther off than such balls stray."""
    try:
        said = read_words(where)
    except UsageError:
        return None
    if said.station is None or said.ground is None:
        return None
    slack_yd = int(STRAYS_SHARE * (said.station - hole.station_offset(*at.xy_yd)[0]))
    found = find_beside(hole, said.station, said.side, said.ground, slack_yd=slack_yd)
    return None if found is None else resting(f"{found[0]:.2f},{found[1]:.2f}", hole, at)


def _gone(hole: Hole, at: Rest, far_yd: float) -> Rest:
    """The place so far on from where the ball lay, along the line of play and in towards it."""
    station, offset = hole.station_offset(*at.xy_yd)
    share = min(far_yd / max(hole.out_yd(*at.xy_yd), far_yd), 1.0)
    x, y = hole.at(station + far_yd, offset * (1.0 - share))
    return replace(resting(f"{x:.2f},{y:.2f}", hole, at), noted=f"{far_yd:.0f} yd on")


def _sideways(hole: Hole, at: Rest, swing: n.Swing) -> Rest:
    """The fairway nearest to where the ball lay."""
    mown = [hole.uncovered(one) for one in hole.features if one.surface is Surface.FAIRWAY]
    inside = shapely.union_all(mown).buffer(-ON_FAIRWAY_YD)
    if inside.is_empty:
        raise n.refused(swing.said, 'no fairway on this hole: to where? For example "to 150 out, rough"')
    there = shapely.get_coordinates(shapely.shortest_line(inside, shapely.Point(at.xy_yd)))[0]
    end = resting(f"{there[0]:.2f},{there[1]:.2f}", hole, at)
    return replace(end, noted="sideways is taken as the nearest fairway")
