"""Cuts straight across the line of play: how far an area goes on them, where the fairway begins and ends."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import shapely

from simulator.hole.model import Hole
from simulator.hole.surfaces import PAINT_RANK, Surface

REACH_YD = 60.0
"""A cut goes so far to either side [yd]: few fairways lie farther out."""

NARROWEST_YD = 1.0
"""Ground narrower than this on a cut is none there [yd]: the end of an area along the cut, or a scrap."""

FAIRWAY_YD = 30.0
"""Fairway farther than this from a place, straight across the line, is not the fairway there [yd]."""

AHEAD_YD, STEP_YD = 100.0, 2.0
"""A fairway that begins so far beyond a place at most is one to look at from short of it, looked for in such
steps [yd]; chosen."""

PARTING = frozenset({Surface.TREES, Surface.DRY_PENALTY, Surface.WATER, Surface.OUT_OF_BOUNDS})
"""What parts a fairway in two where it runs through it. A bunker, a path or a green does not: with mown
ground on both its sides it lies in the one fairway that people see."""

Strip = tuple[float, float]
"""Left and right end of ground on a cut: offsets from the line of play, right positive [yd]."""


def cut(
    hole: Hole, station_yd: float, about_yd: float = 0.0, reach_yd: float = REACH_YD
) -> shapely.LineString:
    """The straight cut across the line of play at a station, from left to right.

    Parameters
    ----------
    hole : Hole
    station_yd : float
        Yards along the line of play.
    about_yd : float
        Offset of its middle.
    reach_yd : float
        How far it goes to either side of that.
    """
    ends = [hole.at(station_yd, about_yd + reach) for reach in (-reach_yd, reach_yd)]
    return shapely.LineString(ends)


def strips_of(across: shapely.LineString, area: shapely.Geometry) -> list[Strip]:
    """Where a cut about the line of play lies in an area, left to right; from `NARROWEST_YD` of width on."""
    return _strips(across, across.intersection(area), 0.0)


def _strips(across: shapely.LineString, pieces: shapely.Geometry, about_yd: float) -> list[Strip]:
    """The ends of pieces of a cut about an offset, as offsets."""
    first = about_yd - across.length / 2.0
    found = []
    for part in shapely.get_parts(pieces):
        ends = [first + across.project(shapely.Point(*xy)) for xy in shapely.get_coordinates(part)]
        if ends and max(ends) - min(ends) > NARROWEST_YD:
            found.append((min(ends), max(ends)))
    return sorted(found)


def mown_strips(
    hole: Hole, station_yd: float, about_yd: float = 0.0, reach_yd: float = REACH_YD
) -> list[Strip]:
    """Fairway on a cut with nothing lying on it, from left to right: a bunker or water ends it."""
    across = cut(hole, station_yd, about_yd, reach_yd)
    return _strips(across, _on(hole, across, frozenset(Surface)), about_yd)


def fairways(hole: Hole, station_yd: float, about_yd: float = 0.0, reach_yd: float = REACH_YD) -> list[Strip]:
    """The fairways on a cut, from left to right, each from its first mown ground to its last.

    What merely lies in one is part of it, `PARTING` ground is not; a bunker, path or green with mown ground
    on one side only ends it.
    """
    across = cut(hole, station_yd, about_yd, reach_yd)
    mown = mown_strips(hole, station_yd, about_yd, reach_yd)
    found = []
    for left, right in _strips(across, _on(hole, across, PARTING), about_yd):
        inside = [one for one in mown if left - 1e-6 <= one[0] and one[1] <= right + 1e-6]
        if inside:
            found.append((inside[0][0], inside[-1][1]))
    return found


def fairways_near(hole: Hole, station_yd: float, offset_yd: float) -> list[Strip]:
    """The fairways on the cut through a place, from left to right; see `fairways`."""
    # beyond the place and beyond the line: a cut about the place alone ends inside a fairway beside it
    return fairways(hole, station_yd, 0.5 * offset_yd, REACH_YD + 0.5 * abs(offset_yd))


def fairway_across(hole: Hole, station_yd: float, offset_yd: float) -> Strip | None:
    """Left and right edge of the fairway at a place, across the line of play.

    The fairway nearest to the place; None where none is within `FAIRWAY_YD` of it.
    """
    found = fairways_near(hole, station_yd, offset_yd)
    nearest = min(found, key=lambda strip: away_yd(strip, offset_yd), default=None)
    return nearest if nearest is not None and away_yd(nearest, offset_yd) <= FAIRWAY_YD else None


def fairway_ahead(hole: Hole, station_yd: float) -> float | None:
    """Station of the first fairway beyond a place that has none across it; None without one near."""
    if fairways(hole, station_yd):
        return None
    ahead = np.arange(station_yd + STEP_YD, station_yd + AHEAD_YD, STEP_YD)
    return next((float(station) for station in ahead if fairways(hole, float(station))), None)


def away_yd(strip: Strip, offset_yd: float) -> float:
    """How far an offset lies outside a strip [yd], 0 inside it."""
    return max(strip[0] - offset_yd, offset_yd - strip[1], 0.0)


def _on(hole: Hole, across: shapely.LineString, without: Iterable[Surface]) -> shapely.Geometry:
    """The parts of a cut that are drawn as fairway, less those under any of some surfaces."""
    above = PAINT_RANK[Surface.FAIRWAY]
    drawn = shapely.union_all([f.area for f in hole.fairways])
    taken = [f.area for f in hole.features if f.surface in without and PAINT_RANK[f.surface] > above]
    return across.intersection(drawn).difference(shapely.union_all(taken))
