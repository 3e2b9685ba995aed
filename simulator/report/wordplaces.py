"""Places on a map where words may stand (`Labels.put` takes the first that is free), the best first."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import shapely

if TYPE_CHECKING:
    from matplotlib.axes import Axes

Place = tuple[float, float]
"""x and y in data units: of a map yards in the hole frame."""

GRID = 9
"""Places tried across and along an area for its name."""


def round_about(ax: Axes, x: float, y: float, radii: tuple[float, ...] = (0.065, 0.1)) -> list[Place]:
    """Places round a mark, in eight directions, the nearer first; radii are shares of the width."""
    x0, x1 = ax.get_xlim()
    turns = np.radians((0, 180, 315, 225, 45, 135, 270, 90))
    return [
        (x + r * (x1 - x0) * math.cos(t), y + 0.6 * r * (x1 - x0) * math.sin(t)) for r in radii for t in turns
    ]


def places_on(seen: shapely.Geometry, ax: Axes, others: shapely.Geometry) -> list[Place]:
    """Places in and round an area: its middle, along its length, then beside it, off the others first.

    The name of a narrow lane stands beside it: on a pond there it would be the pond's.
    """
    middle = seen.representative_point()
    x0, y0, x1, y1 = seen.bounds
    x, y = middle.x, middle.y
    wide = ax.get_xlim()[1] - ax.get_xlim()[0]
    along = [(x, y0 + t * (y1 - y0)) for t in (0.5, 0.35, 0.65, 0.2, 0.8)]
    across = [(x0 + t * (x1 - x0), y) for t in (0.5, 0.3, 0.7)]
    step = 0.05 * wide
    beside = [(x1 + 2 * step, y), (x0 - 2 * step, y), (x, y1 + step), (x, y0 - step),
              (x1 + 3 * step, y), (x0 - 3 * step, y)]  # fmt: skip
    beside += [(edge, t) for _, t in along[1:] for edge in (x1 + 2 * step, x0 - 2 * step)]
    beside.sort(key=lambda place: bool(others.intersects(shapely.Point(place).buffer(step))))
    return [(x, y), *along, *across, *spread_over(seen), *beside]


def spread_over(area: shapely.Geometry) -> list[Place]:
    """Places all over an area, for words that fit only here and there."""
    x0, y0, x1, y1 = area.bounds
    x, y = np.meshgrid(np.linspace(x0, x1, GRID + 2)[1:-1], np.linspace(y0, y1, GRID + 2)[1:-1])
    inside = shapely.contains_xy(area, x, y)
    return [(float(a), float(b)) for a, b in zip(x[inside], y[inside], strict=True)]


def places_near(area: shapely.Geometry, ax: Axes) -> list[Place]:
    """In the area along its length, then round its edge, then farther off."""
    wide = ax.get_xlim()[1] - ax.get_xlim()[0]
    middle = area.representative_point()
    x0, y0, x1, y1 = area.bounds
    found = [(middle.x, middle.y)]
    for share in (0.5, 0.35, 0.65, 0.2, 0.8):
        cut = area.intersection(
            shapely.LineString([(x0, y0 + share * (y1 - y0)), (x1, y0 + share * (y1 - y0))])
        )
        if not cut.is_empty:
            found.append((cut.centroid.x, cut.centroid.y))
    turn = np.radians(np.arange(0, 360, 30))
    for ring in (0.035, 0.06, 0.09):
        rx, ry = (x1 - x0) / 2.0 + ring * wide, (y1 - y0) / 2.0 + ring * wide
        found += [((x0 + x1) / 2 + rx * np.cos(t), (y0 + y1) / 2 + ry * np.sin(t)) for t in turn]
    return [(float(x), float(y)) for x, y in found]


RINGS = (0.05, 0.09, 0.14)
"""How far from the middle of some balls their count is tried, in widths of the map."""


def rings_about(ax: Axes, middle: np.ndarray) -> list[list[Place]]:
    """A place with those next to it, and rings of places about them."""
    wide, turn = float(np.ptp(ax.get_xlim())), np.radians(np.arange(0, 360, 45))
    rings = [middle + r * wide * np.column_stack([np.cos(turn), np.sin(turn)]) for r in RINGS]
    rings[0] = np.vstack([middle, rings[0]])
    return [[(float(x), float(y)) for x, y in ring] for ring in rings]
