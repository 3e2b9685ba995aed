"""The frame a hole is written in: origin at the start of its line, y along its first leg."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from shapely import Polygon

from simulator.hole.maps.place import Area, polygons
from simulator.hole.shapes import OPEN_END_YD, OPEN_SIDE_YD
from simulator.units import compass_deg

SIDE_YD, END_YD = OPEN_SIDE_YD + 5.0, OPEN_END_YD + 5.0
"""Ground kept beside and past the line, tees and green [yd]: as far as the engine's map reaches."""

SIMPLER_YD, GRID_YD = 0.2, 0.1
"""Corners may move by this in simplifying, then to a grid of this [yd]: 0.27 yd together at most."""


@dataclass(frozen=True, eq=False)
class Frame:
    """From the plane of the map to the frame of a hole.

    Parameters
    ----------
    origin : (2,) start of the line; forward : (2,) unit vector of its first leg.
    """

    origin: np.ndarray
    forward: np.ndarray

    @staticmethod
    def of(line: np.ndarray) -> Frame:
        """The frame of a line (n, 2)."""
        step = line[1] - line[0]
        return Frame(line[0], step / np.hypot(*step))

    @property
    def bearing_deg(self) -> float:
        """Compass bearing of the first leg [deg]."""
        return compass_deg(self.forward[0], self.forward[1])

    def xy(self, places: np.ndarray) -> np.ndarray:
        """Places (n, 2) in the frame of the hole."""
        hx, hy = self.forward
        return (np.asarray(places, dtype=float) - self.origin) @ np.array([[hy, hx], [-hx, hy]])

    def on_map(self, places: np.ndarray) -> np.ndarray:
        """Places (n, 2) of the hole's frame on the plane of the map."""
        hx, hy = self.forward
        return np.asarray(places, dtype=float) @ np.array([[hy, -hx], [hx, hy]]) + self.origin

    def area(self, geometry: shapely.Geometry) -> shapely.Geometry:
        """A geometry in the frame of the hole."""
        return shapely.transform(geometry, self.xy)


def box_round(places: np.ndarray) -> Polygon:
    """The ground a hole is written with: a box round some places (n, 2) of its frame."""
    (x0, y0), (x1, y1) = places.min(axis=0), places.max(axis=0)
    return shapely.box(x0 - SIDE_YD, y0 - END_YD, x1 + SIDE_YD, y1 + END_YD)


def cut(area: shapely.Geometry, box: Polygon) -> Area | None:
    """What of an area lies in the box, with few corners, on a grid; None when nothing does."""
    inside = area if box.contains(area) else area.intersection(box)
    simple = shapely.simplify(inside, SIMPLER_YD)
    return polygons(shapely.set_precision(simple if simple.is_valid else shapely.make_valid(simple), GRID_YD))
