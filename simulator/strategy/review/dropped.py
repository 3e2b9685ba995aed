"""Where a ball was dropped when nobody noted the place: beside the water, or within two club-lengths.

Of a ball in water nobody notes where it crossed the edge. It is taken to have gone as far as the club
usually carries, into the nearest water of that name; the last edge on the straight way there is where it
crossed. From there the rules say the rest (Rules of Golf 17.1d and 19.2c, by `hole.rules`): within two
club-lengths of a red area's edge, on the line behind a yellow one, not nearer the hole; of the places allowed
the player is taken to have picked the best ground.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import shapely

from ...hole.model import Feature, Hole, Point
from ...hole.rules import OPTIONS, ReliefOption, Situation, Way, situation_of
from ...hole.surfaces import LIE_OF, Lie
from ..places import place
from .named import water_named
from .rests import Rest, from_start

TURNS = 72
"""Directions that places to drop are tried in."""

STEP_YD, MOST_BACK_YD = 1.0, 60.0
"""Places on the line behind an edge are tried so far apart, so far back [yd] (assumed)."""

_BEST_GROUND = (Lie.FAIRWAY, Lie.TEE, Lie.ROUGH, Lie.HEAVY_ROUGH, Lie.TREES)
"""What a player drops on, the best first; bunkers and greens are no general area (Rule 17.1d)."""


_LATERAL = next(one for one in OPTIONS[Situation.UNPLAYABLE] if one.way is Way.LATERAL)


def beside_water(hole: Hole, start: Rest, where: str, carry_yd: float | None) -> Rest | None:
    """The place of a bare drop from water, None where the hole has none that the words name.

    Parameters
    ----------
    start : Rest
        Where the ball was struck.
    where : str
        What the notes call the water.
    carry_yd : float or None
        Usual carry of the club; None: the swing has none, and went towards the pin.
    """
    named = water_named(where, hole)
    if not named:
        return None
    station, offset = hole.station_offset(*start.xy_yd)
    aim = hole.pin.xy_yd
    if carry_yd is not None and carry_yd < hole.out_yd(*start.xy_yd):
        aim = hole.at(station + carry_yd, offset * (1.0 - carry_yd / hole.out_yd(*start.xy_yd)))
    area = min(named, key=lambda one: one.area.distance(shapely.Point(aim)))
    edge = _crossing(area, start.xy_yd, aim)
    options = {one.way: one for one in OPTIONS[situation_of(area.relief or "red")]}
    there = None
    if Way.LATERAL in options:
        there = _within(hole, edge, options[Way.LATERAL])
    there = there or _behind(hole, edge)
    if there is None:
        return None
    taken = f"no place noted: where the club's usual carry meets {area.name}"
    return replace(from_start(place(f"{there[0]:.2f},{there[1]:.2f}", hole)), noted=taken)


def beside_ball(hole: Hole, at: Rest) -> Rest | None:
    """The place of an unplayable ball dropped within two club-lengths (Rule 19.2c; in sand 19.3a)."""
    in_sand = at.lie is Lie.BUNKER
    if in_sand:  # in the same bunker: two club-lengths there are the same stroke again
        return replace(at, noted="no place noted: in the bunker, a usual lie")
    there = _within(hole, at.xy_yd, _LATERAL)
    if there is None:
        return None
    rest = from_start(place(f"{there[0]:.2f},{there[1]:.2f}", hole))
    return replace(rest, noted="no place noted: within two club-lengths")


def _crossing(area: Feature, start: Point, aim: Point) -> Point:
    """Where the straight way to the place of an area nearest to the aim last came into it."""
    end = shapely.Point(aim)
    if not area.area.contains(end):
        end = shapely.Point(shapely.get_coordinates(shapely.shortest_line(area.area, end))[0])
    inside = shapely.get_parts(shapely.LineString([start, (end.x, end.y)]).intersection(area.area))
    entries = [tuple(shapely.get_coordinates(part)[0]) for part in inside if not part.is_empty]
    entries = entries or [(end.x, end.y)]
    x, y = max(entries, key=lambda xy: math.dist(xy, start))
    return float(x), float(y)


def _within(hole: Hole, about: Point, option: ReliefOption) -> Point | None:
    """The best ground within the option's club-lengths of a place, not nearer the hole."""
    limit_yd = hole.out_yd(*about)
    tried = [
        (about[0] + far * math.sin(turn), about[1] + far * math.cos(turn))
        for far in (option.relief_yd, 0.5 * option.relief_yd)
        for turn in np.linspace(0.0, 2.0 * math.pi, TURNS, endpoint=False)
    ]
    return _best(hole, [xy for xy in tried if hole.out_yd(*xy) >= limit_yd])


def _behind(hole: Hole, edge: Point) -> Point | None:
    """The first ground on the line from the hole through a place, behind it."""
    out_yd = hole.out_yd(*edge)
    for back_yd in np.arange(STEP_YD, MOST_BACK_YD, STEP_YD):
        share = (out_yd + back_yd) / out_yd
        xy = (
            hole.pin.x_yd + share * (edge[0] - hole.pin.x_yd),
            hole.pin.y_yd + share * (edge[1] - hole.pin.y_yd),
        )
        if _best(hole, [xy]) is not None:
            return xy
    return None


def _best(hole: Hole, tried: list[Point]) -> Point | None:
    """Of some places the one on the best ground a ball may be dropped on, the first of its kind."""
    lies = [LIE_OF.get(hole.surface_at(*xy)) for xy in tried]
    ranks = [_BEST_GROUND.index(lie) if lie in _BEST_GROUND else len(_BEST_GROUND) for lie in lies]
    best = min(range(len(tried)), key=ranks.__getitem__, default=None)
    return None if best is None or ranks[best] == len(_BEST_GROUND) else tried[best]
