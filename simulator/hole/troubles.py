"""Where the troubles of a hole begin and end: along the line of play, beside it, straight from the ball."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any

import numpy as np
import shapely
from shapely.ops import substring

from simulator.hole.model import Hole
from simulator.hole.surfaces import TROUBLE, WORDS, Surface

BESIDE_YD = 60.0
"""Ground farther than this from the line of play is not on the page [yd]: few drives get there."""

BEHIND_GREEN_YD = 40.0
"""Ground farther than this past the end of the line is not on the page [yd]."""

EDGE_STEP_YD = 0.5
"""Points this far apart along an edge are measured [yd]."""

LEAST_AREA_YD2 = 0.5
"""Scraps smaller than this, left between areas that overlap, are no trouble [square yd]."""

TOUCH_YD = 0.1
"""An area that the line is in for less than this lies beside it [yd]."""

LEAST_GAP_YD = 5.0
"""Ground without trouble of this length on the line parts what lies before it from what lies behind [yd]."""


@dataclass(frozen=True)
class Trouble:
    """Where one area of trouble begins and ends, as far as it is on the page.

    An area that meets the line of play again behind good ground (water round a green, a stream that winds) is
    several: a carry over what lies before that ground need not be one over what lies behind it.

    Attributes
    ----------
    name, kind : str
        Name of the area and word of its surface.
    side : str
        ``"left"`` or ``"right"`` of the line of play, or ``"across"`` it.
    near_yd, far_yd : float
        Stations of its nearest and farthest edge.
    reach_yd : float
        Straight from the ball to its nearest edge.
    clear_yd : float or None
        Straight from the ball: a carry of this is over all of it. None where it goes on past the end of the
        page, a boundary the length of the hole: no carry is over that.
    line_near_yd, line_far_yd : float or None
        Stations where the line of play itself enters and leaves it; None where it does not cross.
    offset_yd : float
        Its edge nearest to the line of play, right positive; 0 where it lies across. Of a part beside good
        ground that the line comes out on: nearest along the middle half of that ground.
    ground : shapely geometry
        The area, as far as it is on the page and nothing else covers it.
    """

    name: str
    kind: str
    side: str
    near_yd: float
    far_yd: float
    reach_yd: float
    clear_yd: float | None
    line_near_yd: float | None
    line_far_yd: float | None
    offset_yd: float
    ground: shapely.Geometry = field(compare=False, repr=False)

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {name: value for name, value in vars(self).items() if name != "ground"}


def troubles_of(hole: Hole, ball: tuple[float, float] = (0.0, 0.0)) -> tuple[Trouble, ...]:
    """Every trouble on the page, in order of its nearest edge.

    Parameters
    ----------
    hole : Hole
    ball : (x, y) [yd]
        Where straight distances are measured from; the middle of the tee in use when left out.

    Notes
    -----
    What another area covers is left out of an area: a drain through reeds splits them.
    """
    found = _areas(hole, _line_on(hole).buffer(BESIDE_YD, cap_style="flat"))
    trouble = shapely.union_all([area for _, _, area in found])
    troubles = [
        _trouble(hole, name, surface, part, ball)
        for name, surface, area in found
        for part in _parts(_line_on(hole), area, trouble)
    ]
    return tuple(sorted(troubles, key=lambda one: (one.near_yd, one.name)))


def _line_on(hole: Hole) -> shapely.LineString:
    """The line of play, continued behind the green to the end of the page."""
    return shapely.LineString([*hole.line, hole.at(hole.length_yd + BEHIND_GREEN_YD)])


def _areas(hole: Hole, page: shapely.Geometry) -> list[tuple[str, Surface, shapely.Geometry]]:
    """Name, surface and visible ground of every trouble on the page, lone trees too."""
    found = []
    for feature in hole.features:
        if feature.surface in TROUBLE:
            found.append((feature.name, feature.surface, hole.uncovered(feature).intersection(page)))
    for tree in hole.single_trees:
        if page.intersects(tree.ground):
            found.append((tree.name, Surface.TREES, tree.ground))
    return [one for one in found if one[2].area > LEAST_AREA_YD2]


@dataclass(frozen=True)
class _Part:
    """Ground of an area, and the stretch of the line along which its distance from the line is told."""

    ground: shapely.Geometry
    along_yd: tuple[float, float] = (-math.inf, math.inf)


def _crossings(line: shapely.LineString, area: shapely.Geometry) -> list[tuple[float, float]]:
    """Where a line goes into an area and comes out of it; a touch is no crossing."""
    pieces = [piece for piece in shapely.get_parts(line.intersection(area)) if piece.length > TOUCH_YD]
    ends = [[line.project(shapely.Point(piece.coords[k])) for k in (0, -1)] for piece in pieces]
    return sorted((min(pair), max(pair)) for pair in ends)


def _parts(line: shapely.LineString, area: shapely.Geometry, trouble: shapely.Geometry) -> list[_Part]:
    """An area in parts where the line of play comes out of it on good ground and goes into it again.

    What lies across before that ground and behind it is a part each, what lies beside it one on either side.
    """
    cuts = [
        (end, start)
        for (_, end), (start, _) in pairwise(_crossings(line, area))
        if substring(line, end, start).difference(trouble).length >= LEAST_GAP_YD
    ]
    if not cuts:
        return [_Part(area)]
    ends = [0.0, *(end for cut in cuts for end in cut), line.length]
    across = [[_beside(line, area, a, b)] for a, b in zip(ends[::2], ends[1::2], strict=True)]
    parts = []
    for k, (a, b) in enumerate(cuts):
        low, middle, high = (a + share * (b - a) for share in (0.25, 0.5, 0.75))
        for side in (BESIDE_YD, -BESIDE_YD):
            if _beside(line, area, low, high, side).area > LEAST_AREA_YD2:
                parts.append(_Part(_beside(line, area, a, b, side), (low, high)))
            else:  # no more than the ends of what lies across
                across[k].append(_beside(line, area, a, middle, side))
                across[k + 1].append(_beside(line, area, middle, b, side))
    parts += [_Part(shapely.union_all(pieces)) for pieces in across]
    return [part for part in parts if part.ground.area > LEAST_AREA_YD2]


def _beside(
    line: shapely.LineString, area: shapely.Geometry, a: float, b: float, side_yd: float | None = None
) -> shapely.Geometry:
    """An area beside a stretch of a line: both sides, the left one (positive) or the right one (negative)."""
    stretch = substring(line, a, b)
    if side_yd is None:
        return area.intersection(stretch.buffer(BESIDE_YD, cap_style="flat"))
    return area.intersection(stretch.buffer(side_yd, single_sided=True))


def _trouble(hole: Hole, name: str, surface: Surface, part: _Part, ball: tuple[float, float]) -> Trouble:
    area = part.ground
    edge = shapely.segmentize(area, EDGE_STEP_YD)
    xy, places = shapely.get_coordinates(edge), hole.play_line.corners_of(edge)
    away = np.hypot(xy[:, 0] - ball[0], xy[:, 1] - ball[1])
    on_line = [station for pair in _crossings(_line_on(hole), area) for station in pair]
    low, high = part.along_yd
    told = places[(places[:, 0] >= low) & (places[:, 0] <= high)]
    told = told if len(told) else places
    nearest = float(told[int(np.argmin(np.abs(told[:, 1]))), 1])
    if abs(nearest) < TOUCH_YD:  # up to the line: the sign of nothing says no side, where the rest lies does
        nearest = math.copysign(nearest, float(told[:, 1].mean()))
    side = "across" if on_line else "left" if math.copysign(1.0, nearest) < 0.0 else "right"
    goes_on = float(places[:, 0].max()) > hole.length_yd + BEHIND_GREEN_YD - TOUCH_YD
    return Trouble(
        name=name,
        kind=WORDS[surface],
        side=side,
        near_yd=float(places[:, 0].min()),
        far_yd=float(places[:, 0].max()),
        reach_yd=float(area.distance(shapely.Point(ball))),
        clear_yd=None if goes_on else float(away.max()),
        line_near_yd=min(on_line) if on_line else None,
        line_far_yd=max(on_line) if on_line else None,
        offset_yd=0.0 if on_line else nearest,
        ground=area,
    )
