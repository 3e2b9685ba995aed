"""The line of play: places by station (yards along it) and offset (yards right of it)."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import shapely
from shapely import Polygon

FAR_YD = 4000.0
"""Half-size [yd] of the half-planes that divide the ground between two legs: beyond any hole."""

SNAP_YD = 1e-6
"""Grid [yd] on which pieces of one area are joined, so that rounding leaves no slits."""

ARC_STEP_DEG = 3.0
"""Step [deg] of the fan round the outside of a bend: at 60 yd out it cuts off 0.02 yd."""


@dataclass(frozen=True, eq=False)
class PlayLine:
    """A polyline from tee to green, continued straight past both ends.

    Parameters
    ----------
    points : array (n, 2)
        Corners [yd], n >= 2, no two in a row alike.

    Notes
    -----
    The station of a place is that of the nearest point of the line. On the outside of a bend a
    whole wedge of ground shares the station of the bend; on the inside, offsets longer than the
    way to the bisector belong to the other leg, so `at` and `station_offset` undo one another only
    short of it.
    """

    points: np.ndarray

    @cached_property
    def headings(self) -> np.ndarray:
        """Unit vector of each leg, (n-1, 2)."""
        step = np.diff(self.points, axis=0)
        return step / np.hypot(step[:, 0], step[:, 1])[:, None]

    @cached_property
    def stations(self) -> np.ndarray:
        """Station of each corner [yd], (n,)."""
        step = np.diff(self.points, axis=0)
        return np.concatenate([[0.0], np.cumsum(np.hypot(step[:, 0], step[:, 1]))])

    @cached_property
    def _legs(self) -> list[list[float]]:
        """Start (x, y), heading (x, y), station of the start, length of each leg [yd], as plain floats: one
        by one those are read many times faster than out of arrays."""
        start, sizes = self.stations[:-1, None], np.diff(self.stations)[:, None]
        return np.concatenate([self.points[:-1], self.headings, start, sizes], axis=1).tolist()

    @property
    def length_yd(self) -> float:
        """Length along the line [yd]."""
        return float(self.stations[-1])

    def leg(self, station_yd: float) -> int:
        """Index of the leg a station is on (the later one at a bend)."""
        k = int(np.searchsorted(self.stations, station_yd, side="right")) - 1
        return min(max(k, 0), len(self.headings) - 1)

    def heading(self, station_yd: float) -> np.ndarray:
        """Unit vector (2,) of the line at a station; the bisector at a bend."""
        k = self.leg(station_yd)
        if k > 0 and abs(station_yd - self.stations[k]) < 1e-9:
            return self.bisector(k)
        return self.headings[k]

    def bisector(self, corner: int) -> np.ndarray:
        """Unit vector half way between the two legs that meet at an inner corner."""
        both = self.headings[corner - 1] + self.headings[corner]
        return both / math.hypot(*both)

    def at(self, station_yd: float, offset_yd: float = 0.0) -> tuple[float, float]:
        """Place (x, y) [yd] at a station and an offset (right positive)."""
        k = self.leg(station_yd)
        hx, hy = self.headings[k]
        along = station_yd - self.stations[k]
        x, y = self.points[k, 0] + hx * along, self.points[k, 1] + hy * along
        hx, hy = self.heading(station_yd)
        return float(x + hy * offset_yd), float(y - hx * offset_yd)

    def station_offset(self, x_yd: float, y_yd: float) -> tuple[float, float]:
        """Station and offset [yd] of a place: those of the nearest point of the line."""
        best = (math.inf, 0.0, 0.0)
        last = len(self.headings) - 1
        for k, (x, y, hx, hy, start, size) in enumerate(self._legs):
            rx, ry = x_yd - x, y_yd - y
            along = rx * hx + ry * hy
            right = rx * hy - ry * hx
            if along < 0.0 and k > 0:
                away, station = math.hypot(rx, ry), start
                side_x, side_y = self.bisector(k)
                right = math.copysign(away, rx * side_y - ry * side_x)
            elif along > size and k < last:
                continue  # the next leg measures this wedge from the same corner
            else:
                away, station = abs(right), start + along
            if away < best[0]:
                best = (away, station, right)
        return float(best[1]), float(best[2])

    def corners_of(self, area: shapely.Geometry) -> np.ndarray:
        """Station and offset [yd] of every corner of an area, float64 (n, 2)."""
        corners = [self.station_offset(x, y) for x, y in shapely.get_coordinates(area).tolist()]
        return np.array(corners, dtype=float).reshape(-1, 2)

    def band(self, stations: np.ndarray, left: np.ndarray, right: np.ndarray) -> Polygon:
        """Area between two edges given by their offsets at some stations, straight in between.

        Parameters
        ----------
        stations : (n,) increasing [yd]; left, right : (n,) offsets [yd], left <= right at each.

        Returns
        -------
        Polygon (MultiPolygon where a sharp bend cuts the band apart), in x and y.
        """
        corners = self.stations[1:-1]
        pieces = []
        for k in range(len(self.headings)):
            low = -math.inf if k == 0 else float(self.stations[k])
            high = math.inf if k == len(self.headings) - 1 else float(self.stations[k + 1])
            low, high = max(low, float(stations[0])), min(high, float(stations[-1]))
            if low < high:
                pieces.append(self._leg_piece(k, low, high, stations, left, right))
        for k, bend in enumerate(corners, start=1):
            if stations[0] < bend < stations[-1]:
                fan = self._fan(k, *(float(np.interp(bend, stations, edge)) for edge in (left, right)))
                if fan is not None:
                    pieces.append(fan)
        if len(pieces) == 1:
            return pieces[0]
        with np.errstate(divide="ignore", invalid="ignore"):  # GEOS trips over slivers and then drops them
            return shapely.union_all(pieces, grid_size=SNAP_YD)

    def _leg_piece(
        self,
        k: int,
        low: float,
        high: float,
        stations: np.ndarray,
        left: np.ndarray,
        right: np.ndarray,
    ) -> Polygon:
        """The part of a band on one leg, cut at the bisectors of the bends it touches."""
        s = np.array([low, *[v for v in stations if low < v < high], high])
        (hx, hy), (px, py) = self.headings[k], self.points[k]
        along = s - self.stations[k]
        ring = []
        for edge, order in ((left, slice(None)), (right, slice(None, None, -1))):
            off = np.interp(s, stations, edge)
            ring.append(np.column_stack([px + hx * along + hy * off, py + hy * along - hx * off])[order])
        piece = Polygon(np.concatenate(ring))
        if k > 0 and low == self.stations[k]:
            piece = piece.intersection(self._half_plane(k, ahead=True))
        if k < len(self.headings) - 1 and high == self.stations[k + 1]:
            piece = piece.intersection(self._half_plane(k + 1, ahead=False))
        return piece

    def _half_plane(self, corner: int, ahead: bool) -> Polygon:
        """The ground nearer the leg after (ahead) or before a bend, as a very large square."""
        p, b = self.points[corner], self.bisector(corner)
        side = np.array([b[1], -b[0]]) * FAR_YD
        push = b * (FAR_YD if ahead else -FAR_YD)
        return Polygon([p - side, p + side, p + side + push, p - side + push])

    def _fan(self, corner: int, left: float, right: float) -> Polygon | None:
        """The part of a band in the wedge on the outside of a bend; None if it has none."""
        before, after = self.headings[corner - 1], self.headings[corner]
        turn = math.atan2(before[1] * after[0] - before[0] * after[1], before @ after)  # right positive
        if abs(turn) < SNAP_YD:  # thinner than the grid
            return None
        if turn > 0.0:  # a turn to the right leaves the wedge on the left
            inner, outer = min(right, 0.0), left
            if outer >= 0.0:
                return None
        else:
            inner, outer = max(left, 0.0), right
            if outer <= 0.0:
                return None
        start = math.atan2(before[0], before[1])  # clockwise from +y
        count = max(2, math.ceil(abs(math.degrees(turn)) / ARC_STEP_DEG - 1e-9) + 1)
        angle = np.linspace(start, start + turn, count)
        normal = np.column_stack([np.cos(angle), -np.sin(angle)])
        outside = self.points[corner] + outer * normal
        inside = (self.points[corner] + inner * normal)[::-1] if inner != 0.0 else self.points[corner][None]
        return Polygon(np.concatenate([outside, inside]))
