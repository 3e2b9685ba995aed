"""The height of the ground: a smooth surface through spot heights, with the planes of areas laid on it.

The surface is Hardy's multiquadric, z = a + sum w_i sqrt(c^2 + r_i^2) with sum w_i = 0 (Hardy 1971,
Multiquadric equations of topography and other irregular surfaces, J. Geophys. Res. 76:1905, from memory),
c = 0.815 times the mean distance to the nearest neighbour (his choice, from memory). Why not a thin plate:
its linear part takes three heights along a fairway that bends a little for a plane with a steep side slope,
fails when they lie on a line, and runs away beyond the outermost ones. This one has no linear part: it goes
through every height, is smooth, takes any number of them in any places, and levels out beyond them.

scipy.interpolate has the same surface (the tests compare); importing it costs 0.2 s of an answer of 2.5, so
the one system of equations is written out here.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

import numpy as np
import shapely

from simulator.hole.heights import spacing_yd
from simulator.hole.slopes import LEVEL
from simulator.hole.surfaces import Surface

if TYPE_CHECKING:
    from simulator.hole.model import Feature

HARDY_SHARE = 0.815
LEAST_ROUNDING_YD = 5.0
MOST_ROUNDING_YD = 40.0
"""Limits of Hardy's c [yd]: rounder than a raster cell, and no hill is guessed wider than this (assumed)."""

SPARE_SHARE = 0.5
"""How far the surface may leave the range of the spot heights, as a share of that range (assumed)."""

BLEND_LEAST_YD = 5.0
"""Width of the ground that leads from the edge of a plane to what is round it [yd] (assumed)."""

BLEND_MOST_YD = 100.0

BANK_GRADE = 0.2
"""Mean grade of that ground where the step is high: it is made wider, not steeper (assumed). At its steepest
such a bank is half as steep again, near the 1 in 3 a mower still climbs (common practice, from memory)."""

NODE_YD = 4.0
"""Spacing of the nodes between which the surface is interpolated for a raster [yd]."""

_BUILT_LEVEL = frozenset({Surface.GREEN, Surface.TEE})


class Plane(NamedTuple):
    """Level or sloping ground of one area: z = z_yd + gx (x - x_yd) + gy (y - y_yd) inside it."""

    area: shapely.Geometry
    x_yd: float
    y_yd: float
    z_yd: float
    gx: float
    gy: float
    blend_yd: float

    def at(self, x: np.ndarray, y: np.ndarray) -> np.ndarray:
        """Height of the plane, extended without end."""
        return self.z_yd + self.gx * (x - self.x_yd) + self.gy * (y - self.y_yd)


class Terrain:
    """Heights of a hole, relative to the origin of its frame (the tee in use).

    Parameters
    ----------
    spots : (n, 3) array_like
        x, y and height of the places whose height is known [yd]; may be empty.
    features : in paint order.
        Greens and tees are planes, level ones where no slope is given; other areas where they have a
        slope or a height. A later plane lies on top of an earlier one; without a height of its own it
        goes through what lies under its middle.
    """

    def __init__(self, spots: Sequence[tuple[float, float, float]], features: Sequence[Feature]) -> None:
        self._spots = np.array(spots, dtype=float).reshape(-1, 3)
        self._fit()
        self.planes: list[Plane] = []
        self._datum = 0.0
        for feature in features:
            if feature.slope is not None or feature.height_yd is not None or feature.surface in _BUILT_LEVEL:
                self.planes.append(self._plane(feature))
        self._datum = float(self.at(np.zeros(1), np.zeros(1))[0])

    def at(self, x_yd: np.ndarray, y_yd: np.ndarray) -> np.ndarray:
        """Heights of some places (n,) [yd]."""
        x, y = np.asarray(x_yd, dtype=float), np.asarray(y_yd, dtype=float)
        z = self._smooth(x, y)
        for plane in self.planes:
            x_low, y_low, x_high, y_high = shapely.bounds(plane.area)
            b = plane.blend_yd
            near = (x > x_low - b) & (x < x_high + b) & (y > y_low - b) & (y < y_high + b)
            if near.any():
                z[near] = _laid(plane, z[near], x[near], y[near])
        return z - self._datum

    def grid(self, x_yd: np.ndarray, y_yd: np.ndarray) -> np.ndarray:
        """Heights on a grid (ny, nx) [yd]; x (nx,) and y (ny,) increasing.

        The smooth surface is evaluated on nodes and carried to the cells by cubic convolution
        (Keys 1981, IEEE Trans. ASSP 29:1153); the planes are exact.
        """
        to_x, x_nodes = _carrier(x_yd)
        to_y, y_nodes = _carrier(y_yd)
        z = to_y @ self._smooth(x_nodes[None, :], y_nodes[:, None]) @ to_x.T
        for plane in self.planes:
            x_low, y_low, x_high, y_high = shapely.bounds(plane.area)
            b = plane.blend_yd
            i = slice(*np.searchsorted(x_yd, [x_low - b, x_high + b]))
            j = slice(*np.searchsorted(y_yd, [y_low - b, y_high + b]))
            xs, ys = np.meshgrid(x_yd[i], y_yd[j])
            z[j, i] = _laid(plane, z[j, i].ravel(), xs.ravel(), ys.ravel()).reshape(xs.shape)
        return z - self._datum

    def _fit(self) -> None:
        """Weights of the multiquadric, its constant, and the range it is held to."""
        xy, z = self._spots[:, :2], self._spots[:, 2]
        self._constant = float(z.mean()) if z.size else 0.0
        self._weights, self._round2, self._range = np.zeros(z.size), 1.0, (-math.inf, math.inf)
        if z.size < 2:
            return
        rounding = min(max(HARDY_SHARE * spacing_yd(xy), LEAST_ROUNDING_YD), MOST_ROUNDING_YD)
        self._round2 = rounding**2
        system = np.ones((z.size + 1, z.size + 1))
        system[-1, -1] = 0.0
        away2 = ((xy[:, None] - xy[None]) ** 2).sum(axis=2)
        system[:-1, :-1] = np.sqrt(away2 + self._round2)
        solution = np.linalg.solve(system, np.append(z - self._constant, 0.0))
        self._weights = solution[:-1]
        self._constant += float(solution[-1])
        spare = SPARE_SHARE * float(np.ptp(z))
        self._range = (float(z.min()) - spare, float(z.max()) + spare)

    def _smooth(self, x: np.ndarray, y: np.ndarray) -> np.ndarray:
        """The surface through the spot heights, for broadcastable x and y."""
        z = np.full(np.broadcast_shapes(x.shape, y.shape), self._constant)
        term = np.empty_like(z)
        for (sx, sy, _), weight in zip(self._spots, self._weights, strict=True):
            np.add(self._round2 + (x - sx) ** 2, (y - sy) ** 2, out=term)
            np.sqrt(term, out=term)
            term *= weight
            z += term
        return np.clip(z, *self._range, out=z)

    def _plane(self, feature: Feature) -> Plane:
        middle = feature.area.centroid
        gx, gy = (feature.slope or LEVEL).gradient
        z = feature.height_yd
        if z is None:
            z = float(self.at(np.array([middle.x]), np.array([middle.y]))[0])
        plane = Plane(feature.area, middle.x, middle.y, z, gx, gy, BLEND_LEAST_YD)
        edge = shapely.get_coordinates(shapely.segmentize(feature.area, BLEND_LEAST_YD))
        edge = edge[:: max(1, len(edge) // 64)]
        step = float(np.abs(plane.at(edge[:, 0], edge[:, 1]) - self.at(edge[:, 0], edge[:, 1])).max())
        return plane._replace(blend_yd=min(max(BLEND_LEAST_YD, step / BANK_GRADE), BLEND_MOST_YD))


def _laid(plane: Plane, under: np.ndarray, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Heights with a plane laid on those under it: its own inside, led over without a kink outside."""
    share = np.minimum(shapely.distance(plane.area, shapely.points(x, y)) / plane.blend_yd, 1.0)
    share = share * share * (3.0 - 2.0 * share)
    return plane.at(x, y) * (1.0 - share) + under * share


def _carrier(to: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Weights (cells, nodes) of cubic convolution and the nodes [yd], on multiples of their spacing."""
    first = math.floor(to[0] / NODE_YD) - 1
    nodes = np.arange(first, math.floor(to[-1] / NODE_YD) + 3)
    place = to / NODE_YD - first
    k = np.floor(place).astype(int)
    u = place - k
    weights = np.zeros((to.size, nodes.size))
    row = np.arange(to.size)
    for step, w in (
        (-1, ((-0.5 * u + 1.0) * u - 0.5) * u),
        (0, (1.5 * u - 2.5) * u * u + 1.0),
        (1, ((-1.5 * u + 2.0) * u + 0.5) * u),
        (2, (0.5 * u - 0.5) * u * u),
    ):
        weights[row, k + step] = w
    return weights, nodes * NODE_YD
