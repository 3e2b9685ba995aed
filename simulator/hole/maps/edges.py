"""Where the course ends: the outline of its grounds, boundary lines and the coast."""

from __future__ import annotations

import numpy as np
import shapely
from shapely import Polygon

from simulator.hole.maps.gather import Piece, Site
from simulator.hole.maps.place import Area, polygons

MOSTLY, HALF = 0.9, 0.5
"""Grounds are used when they hold these shares of the line, and of the tee and the green each (assumed)."""

OUTLINE_NEAR_YD = 50.0
"""The outline of a course farther from the line than this is another's [yd] (assumed)."""

BEYOND_YD = 205.0
"""How far beyond a boundary line the ground is out of bounds [yd]: as far as the ground of a hole reaches."""

SIDE_LEAST_YD = 5.0
"""Where the ground on both sides of a boundary line is equally near to the hole, within this, the line points
at the hole: which side is out is not known [yd]."""

POINTS_NEAR_YD = 100.0
"""Such a line is said when it comes this near to the line of play [yd] (assumed)."""


def outlines_near(site: Site, line: shapely.LineString) -> list[Area]:
    """The grounds of courses that a hole may lie in, by its line of play on the plane of the map."""
    return [piece.area for piece in site.courses if piece.area.distance(line) < OUTLINE_NEAR_YD]


def grounds_of(outlines: list[Area], line: shapely.LineString, must: list[shapely.Geometry]) -> Area | None:
    """Some grounds together; None when they leave part of the hole outside.

    Parameters
    ----------
    line : line of play; must : tees and green, which have to be inside, on the plane of the map.
    """
    total = polygons(shapely.union_all(outlines))
    if total is None or total.intersection(line).length < MOSTLY * line.length:
        return None
    whole = all(total.intersection(place).area >= HALF * place.area for place in must)
    return total if whole else None


def outside(grounds: Area, box: Polygon) -> Area | None:
    """What of the box lies outside the grounds, both in one frame."""
    return polygons(box.difference(grounds), least_yd2=20.0)


def beyond_lines(
    lines: list[np.ndarray], play: shapely.LineString, box: Polygon
) -> tuple[Area | None, list[str]]:
    """Ground beyond boundary lines, on the side where the hole is not; sentences on those that have none."""
    strips: list[shapely.Geometry] = []
    said: list[str] = []
    for corners in lines:
        line = shapely.LineString(corners)
        if not line.intersects(box):
            continue
        if line.intersects(play):
            said.append("A boundary line crosses the line of play: left out.")
            continue
        both = (polygons(line.buffer(side * BEYOND_YD, single_sided=True)) for side in (1.0, -1.0))
        sides = [side for side in both if side is not None]
        far = max(sides, key=lambda side: side.distance(play), default=None)
        if far is not None and far.distance(play) - min(s.distance(play) for s in sides) > SIDE_LEAST_YD:
            strips.append(far.difference(play.buffer(5.0)))
        elif line.distance(play) < POINTS_NEAR_YD:
            said.append("A boundary line points at the line of play, so neither side of it is out: left out.")
    return (polygons(shapely.union_all(strips)) if strips else None), said


def sea(coast: list[np.ndarray], box: Polygon) -> Area | None:
    """The sea in a box: right of the coastlines (OpenStreetMap wiki, Tag:natural=coastline)."""
    lines = [shapely.LineString(line) for line in coast]
    near = [line for line in lines if line.intersects(box)]
    if not near:
        return None
    inside = [line.intersection(box) for line in near]
    edges = shapely.get_parts(shapely.union_all([box.exterior, *inside]))
    whole = shapely.polygonize([edge for edge in edges if edge.geom_type == "LineString"])
    pieces = list(shapely.get_parts(whole))
    votes = np.zeros(len(pieces))
    for line in near:
        corners = shapely.get_coordinates(shapely.segmentize(line, 20.0))
        step = np.diff(corners, axis=0)
        size = np.hypot(step[:, 0], step[:, 1])
        good = size > 1e-6
        middle, step, size = (corners[:-1] + corners[1:])[good] / 2.0, step[good], size[good]
        right = np.column_stack([step[:, 1], -step[:, 0]]) / size[:, None]
        for sign in (1.0, -1.0):
            places = middle + sign * 0.2 * right
            for k, piece in enumerate(pieces):
                votes[k] += sign * float(size[shapely.contains_xy(piece, places[:, 0], places[:, 1])].sum())
    wet = [piece for piece, vote in zip(pieces, votes, strict=True) if vote > 0.0]
    return polygons(shapely.union_all(wet)) if wet else None


def drawn_over(piece: Piece, line: shapely.LineString, must: list[shapely.Geometry]) -> bool:
    """Whether an area out of bounds is drawn over a hole, as large landuse areas often are."""
    if piece.ground.width_yd > 0.0:
        return False  # a road that crosses is a road
    over = piece.area.intersection(line).length > 0.1 * line.length
    return over or any(piece.area.intersection(place).area > 0.2 * place.area for place in must)
