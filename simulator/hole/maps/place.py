"""Features on the plane of the map: areas mended, lines and points in yards."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TypeAlias

import numpy as np
import shapely
from shapely import MultiPolygon, Polygon

from simulator.hole.maps.model import MapFeature
from simulator.hole.maps.plane import LocalPlane

Area: TypeAlias = Polygon | MultiPolygon

LEAST_AREA_YD2 = 1.0
"""Smaller pieces of areas are dropped [yd2]: one cell of the engine's map."""

CLOSE_SHARE, CLOSE_YD = 0.15, 15.0
"""A ring is closed for the mapper when its ends are nearer than this share of its length, and this [yd]."""


@dataclass(eq=False)
class Placed:
    """A feature in yards, x east and y north.

    Parameters
    ----------
    points : (k, 2); lines : arrays (n, 2); area : what its rings enclose, None without any.
    mended : an outline crossed itself and was repaired; open_edges : parts of one that does not close.
    """

    ident: str
    tags: dict[str, str]
    points: np.ndarray
    lines: list[np.ndarray] = field(default_factory=list)
    area: Area | None = None
    mended: bool = False
    open_edges: list[np.ndarray] = field(default_factory=list)

    @property
    def label(self) -> str:
        """Name or number for messages."""
        name = self.tags.get("name") or self.tags.get("ref") or ""
        return " ".join(part for part in (name, f"({self.ident})" if self.ident else "") if part) or "unnamed"


def place(feature: MapFeature, plane: LocalPlane) -> Placed:
    """A feature on a plane."""
    points = np.vstack([plane.xy(p) for p in feature.points]) if feature.points else np.empty((0, 2))
    lines = [distinct(plane.xy(line)) for line in feature.lines]
    out = Placed(feature.ident, feature.tags, points, [line for line in lines if len(line) > 1])
    out.open_edges = [edge for edge in (distinct(plane.xy(e)) for e in feature.open_edges) if len(edge) > 1]
    if feature.rings:
        out.area, out.mended = _enclosed([(role, plane.xy(ring)) for role, ring in feature.rings])
    return out


def distinct(line: np.ndarray) -> np.ndarray:
    """A line without corners on top of one another."""
    step = np.hypot(*np.diff(line, axis=0).T)
    return line[np.concatenate([[True], step > 1e-3])]


def _enclosed(rings: list[tuple[str, np.ndarray]]) -> tuple[Area | None, bool]:
    """What rings enclose: the larger first, inner ones cut out, outer ones (islands too) added.

    A ring of unknown role is cut out where it lies in what is there already, else added.
    """
    mended = False
    pieces: list[tuple[str, Area]] = []
    for role, ring in rings:
        area, was = mend(ring)
        mended |= was
        if area is not None:
            pieces.append((role, area))
    pieces.sort(key=lambda piece: -piece[1].area)
    total: shapely.Geometry = Polygon()
    for role, area in pieces:
        cut = role == "inner" or (role == "" and total.intersection(area).area > 0.5 * area.area)
        total = total.difference(area) if cut else total.union(area)
    return polygons(total), mended


def mend(ring: np.ndarray) -> tuple[Area | None, bool]:
    """Area inside a ring (n, 2), and whether it crossed itself and had to be repaired."""
    if len(ring) < 4:
        return None, False
    area = Polygon(ring)
    if area.is_valid:
        return polygons(area), False
    whole = polygons(shapely.make_valid(area))
    return whole, whole is not None


def polygons(geometry: shapely.Geometry, least_yd2: float = LEAST_AREA_YD2) -> Area | None:
    """The polygons of a geometry, slivers dropped; None when nothing is left."""
    parts = [
        part for piece in shapely.get_parts(geometry) for part in shapely.get_parts(piece)
        if part.geom_type == "Polygon" and part.area >= least_yd2
    ]  # fmt: skip
    if not parts:
        return None
    return parts[0] if len(parts) == 1 else MultiPolygon(parts)


def area_of(item: Placed) -> tuple[Area | None, str]:
    """The area of a feature that is one by its tags: its rings, or its lines when they close.

    Returns
    -------
    The area (None when there is none) and a sentence about what was done to it ("" for nothing).
    """
    found: list[Area] = [] if item.area is None else [item.area]
    said = "its outline crosses itself: repaired" if item.mended else ""
    for line in item.lines:
        length = float(np.hypot(*np.diff(line, axis=0).T).sum())
        gap = float(np.hypot(*(line[-1] - line[0])))
        if len(line) < 3 or gap > min(CLOSE_SHARE * length, CLOSE_YD):
            said = said or "its outline does not close: left out"
            continue
        area, was = mend(np.vstack([line, line[:1]]))
        if was:
            said = "its outline crosses itself: repaired"
        elif gap > 1e-3:
            said = said or f"its outline has a gap of {gap:.0f} yd: closed"
        if area is not None:
            found.append(area)
    if not found:
        return None, said
    return (found[0] if len(found) == 1 else polygons(shapely.union_all(found))), said


def lines_of(item: Placed) -> list[np.ndarray]:
    """The lines of a feature that is one by its tags: its lines, and the edges of its areas."""
    edges: list[np.ndarray] = [] if item.area is None else [
        shapely.get_coordinates(ring)
        for part in shapely.get_parts(item.area) for ring in (part.exterior, *part.interiors)
    ]  # fmt: skip
    return [*item.lines, *edges]
