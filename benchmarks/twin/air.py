"""Flights of many strikes at once: landing on hills and in wind, and the branches on the way."""

from __future__ import annotations

from itertools import product

import numpy as np

from simulator.kernels import codes as c

from .reading import Array, Reading, nodes_of

ALONG, SIDE, V_ALONG, V_SIDE, V_DOWN, SPIN = range(6)
COLUMNS, WIDE = 6, 8
"""Of the flight table, without and with empty ones: along, side (right positive) [yd], speeds along, aside,
down [yd/s], spin [rad/s]."""


class Flights:
    """The flight table at the wind of each strike, linear between the nodes of every axis."""

    def __init__(self, read: Reading) -> None:
        self.read, n = read, read.numbers
        packed = read.game.flights
        self.table = packed.reshape(*packed.shape[:-1], -1, WIDE)[..., :COLUMNS]
        self.flat = np.ascontiguousarray(self.table).reshape(-1, COLUMNS)
        self.heights = n[c.HEIGHT_0] + n[c.HEIGHT_STEP] * np.arange(self.table.shape[5])

    def axes(
        self, shot: Array, fraction: Array, tilt: Array, along: Array, cross: Array
    ) -> tuple[list, Array]:
        """Corners of every strike's cell of the table and their weights, and -1 where the table is mirrored.

        Returns
        -------
        [(index, weight), ...], float64[n]
        """
        n = self.read.numbers
        # without curved shots the table knows wind from the left only
        mirror = np.where((cross < 0.0) & (n[c.WIND_V_0] == 0.0), -1.0, 1.0)
        cross, tilt = mirror * cross, mirror * tilt
        if n[c.WIND_RING]:  # one wind, from every side
            cross = np.arctan2(cross, along)
        _, nu, nv, nf, nt, _, _ = self.table.shape
        f, a = nodes_of(fraction, n[c.FRACTION_0], n[c.FRACTION_PER], nf)
        t, d = nodes_of(tilt, n[c.TILT_0], n[c.TILT_PER], nt)
        choices = [[(f, 1.0 - a), (f + 1, a)], [(t, 1.0 - d), (t + 1, d)]]
        for value, start, per, count in (
            (along, n[c.WIND_U_0], n[c.WIND_U_PER], nu), (cross, n[c.WIND_V_0], n[c.WIND_V_PER], nv),
        ):  # fmt: skip
            if count == 1:
                choices.append([(0, 1.0)])
            else:
                node, share = nodes_of(value, start, per, count)
                choices.append([(node, 1.0 - share), (node + 1, share)])
        corners = []
        for (fk, fw), (tk, tw), (uk, uw), (vk, vw) in product(*choices):
            corners.append(((((shot * nu + uk) * nv + vk) * nf + fk) * nt + tk, fw * tw * uw * vw))
        return corners, mirror

    def at_height(self, corners: list, node: Array | int) -> Array:
        """float64[n, COLUMNS] down to a landing-height node."""
        nh = self.table.shape[5]
        out = 0.0
        for index, weight in corners:
            out = out + weight[:, None] * self.flat[index * nh + node]
        return out

    def land(self, x: Array, y: Array, bearing: Array, corners: list, mirror: Array) -> Array:
        """Flight down to the ground it meets, float64[n, COLUMNS], right positive."""
        nh = self.table.shape[5]
        middle = nh // 2
        flight = self.at_height(corners, middle)
        if nh == 1:
            return self._turned(flight, mirror)
        level = self.read.ground_height(x, y)
        sin_b, cos_b = np.sin(bearing), np.cos(bearing)

        def gap_of(some: Array, at: Array, node: Array) -> Array:
            along, side = some[:, ALONG], mirror[at] * some[:, SIDE]
            px = x[at] + along * sin_b[at] + side * cos_b[at]
            py = y[at] + along * cos_b[at] - side * sin_b[at]
            return self.read.ground_height(px, py) - level[at] - self.heights[node]

        at = np.arange(x.size)
        node = np.full(x.size, middle)
        gap = gap_of(flight, at, node)
        step = np.where(gap > 0.0, 1, -1)
        while at.size:
            more = (node + step >= 0) & (node + step < nh)
            at, node, step, gap = at[more], node[more] + step[more], step[more], gap[more]
            if not at.size:
                break
            other = self.at_height([(i[at], w[at]) for i, w in corners], node)
            new = gap_of(other, at, node)
            crossed = new * gap <= 0.0
            share = np.where(crossed & (gap != new), gap / np.where(gap != new, gap - new, 1.0), 0.0)
            old = flight[at]
            flight[at] = np.where(crossed[:, None], old + share[:, None] * (other - old), other)
            at, node, step, gap = at[~crossed], node[~crossed], step[~crossed], new[~crossed]
        return self._turned(flight, mirror)

    def _turned(self, flight: Array, mirror: Array) -> Array:
        flight[:, SIDE] *= mirror
        flight[:, V_SIDE] *= mirror
        return flight


class Branches:
    """Which flights meet a crown, walked along their ground track in steps of a raster cell."""

    def __init__(self, read: Reading) -> None:
        self.read, trees = read, read.game.trees
        self.canopy, self.crowns, self.clear = trees.canopy, trees.crowns, trees.clear
        tracks = trees.tracks
        self.points = tracks.shape[5]
        self.flat = tracks.reshape(-1, self.points, 2)

    def _wide(self, raster: Array, x: Array, y: Array) -> Array:
        n = self.read.numbers
        i = ((x - n[c.RASTER_X0]) * n[c.SHADE_PER_YD]).astype(np.intp)
        j = ((y - n[c.RASTER_Y0]) * n[c.SHADE_PER_YD]).astype(np.intp)
        return raster[np.clip(j, 0, raster.shape[0] - 1), np.clip(i, 0, raster.shape[1] - 1)]

    def near(self, x: Array, y: Array, bearing: Array, along: Array, side: Array) -> Array:
        """Indices of flights whose way to the landing comes near a crown."""
        sin_b, cos_b = np.sin(bearing), np.cos(bearing)
        bend = side / np.maximum(along * along, 1.0)
        way, at, hits = np.zeros(x.size), np.flatnonzero(along > 0.0), []
        while at.size:
            w = way[at]
            off = bend[at] * w * w
            stride = self._wide(
                self.clear, x[at] + w * sin_b[at] + off * cos_b[at], y[at] + w * cos_b[at] - off * sin_b[at]
            )
            hits.append(at[stride <= 0.0])
            way[at] += stride
            at = at[(stride > 0.0) & (way[at] < along[at])]
        return np.sort(np.concatenate(hits)) if hits else np.empty(0, np.intp)

    def first(
        self, x: Array, y: Array, bearing: Array, corners: list, mirror: Array, end: Array, depth: Array
    ) -> tuple[Array, Array, Array, Array]:
        """Hit or not, and way along, side and height [yd] of the first branch of each flight.

        `end` is the way along to the lowest landing height, where the tracks end; `depth` how many mean
        paths through crowns each ball survives.
        """
        track = 0.0
        for index, weight in corners:
            track = track + weight[:, None, None] * self.flat[index]
        track = np.concatenate([np.zeros((x.size, 1, 2)), track], axis=1)
        steps = int(np.max(end, initial=0.0) / self.read.numbers[c.RASTER_CELL]) + 1
        share = (np.arange(steps) + 0.5) / steps
        place = share * self.points
        k = np.minimum(place.astype(np.intp), self.points - 1)
        part = place - k
        side = mirror[:, None] * (track[:, k, 0] + part * (track[:, k + 1, 0] - track[:, k, 0]))
        height = track[:, k, 1] + part * (track[:, k + 1, 1] - track[:, k, 1])
        way = end[:, None] * share
        sin_b, cos_b = np.sin(bearing)[:, None], np.cos(bearing)[:, None]
        px, py = x[:, None] + way * sin_b + side * cos_b, y[:, None] + way * cos_b - side * sin_b
        cell = self.read.cell(px, py)
        under = np.nonzero(self.canopy[cell])
        row = self.crowns[self.canopy[cell][under].astype(np.intp) - 1]
        over = height[under]
        if not self.read.level:
            over = over - self.read.height[cell][under] + self.read.ground_height(x, y)[under[0]]
        within = (row[:, c.CROWN_BASE] < over) & (over < row[:, c.CROWN_TOP])
        passed = np.zeros(way.shape)
        passed[under] = within * (end / steps)[under[0]] / row[:, c.CROWN_HIT]
        inside = passed > 0.0
        spent = np.cumsum(passed, axis=1)
        met = inside & (spent >= depth[:, None])
        hit = met.any(axis=1)
        at = np.arange(x.size), met.argmax(axis=1)
        return hit, way[at], side[at], height[at]
