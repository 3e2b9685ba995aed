"""Heights that a map holds itself."""

from __future__ import annotations

import numpy as np
import shapely

from simulator.hole.maps.kinds import golf_kind
from simulator.hole.maps.model import MapFeature
from simulator.hole.maps.plane import LocalPlane
from simulator.hole.maps.tags import height_m
from simulator.units import YD_PER_M

LEAST_HEIGHTS_SPREAD_YD = 0.05
"""Heights of a map that differ less than this are none: exporters write 0 for everything [yd]."""


def heights_in(features: list[MapFeature], plane: LocalPlane, notes: list[str]) -> np.ndarray:
    """Known heights (n, 3) [yd]: `ele` of points, of corners of contours and of the middles of areas, and
    third coordinates.

    A line tagged as a hole has no one height. A tee or green drawn as a closed line is an area.
    """
    found, corners = [], []
    for feature in features:
        z = height_m(feature.tags.get("ele"))
        kind = golf_kind(feature.tags)
        if z is not None and abs(z) < 9000.0:
            lines = [] if kind == "hole" else feature.lines
            closed = [bool(kind) and len(line) > 3 and np.array_equal(line[0], line[-1]) for line in lines]
            outlines = [line for line, ring in zip(lines, closed, strict=True) if ring]
            contours = [line for line, ring in zip(lines, closed, strict=True) if not ring]
            for part in [*feature.points, *contours]:
                found.append(np.column_stack([plane.xy(part), np.full(len(part), z * YD_PER_M)]))
            for ring in [*outlines, *(ring for _, ring in feature.rings[:1])]:
                middle = shapely.Polygon(plane.xy(ring)).centroid
                found.append(np.array([[middle.x, middle.y, z * YD_PER_M]]))
        else:
            corners += [np.column_stack([plane.xy(h[:, :2]), h[:, 2] * YD_PER_M]) for h in feature.heights]
    if corners:
        all_corners = np.vstack(corners)
        if np.ptp(all_corners[:, 2]) > LEAST_HEIGHTS_SPREAD_YD:
            all_corners = all_corners[all_corners[:, 2] != 0.0]  # 0 is what exporters write for unknown
            found.append(all_corners)
    if not found:
        return np.empty((0, 3))
    out = np.vstack(found)
    notes.append("1 height in the map." if len(out) == 1 else f"{len(out)} heights in the map.")
    return out
