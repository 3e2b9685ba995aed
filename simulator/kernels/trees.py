"""Trees in the way: does the flight meet a crown, and where does the ball drop."""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import kernel
from .air import node_of
from .ground import column_of, height_at, row_of

NO_HIT = 1e9
"""Way flown before a branch, where there is none."""


@kernel
def shade_over(numbers, shade, x, y):
    """Greatest height of any crown in and around the wide cell of a place [yd]; far below ground if none."""
    i = int((x - numbers[c.RASTER_X0]) * numbers[c.SHADE_PER_YD])
    j = int((y - numbers[c.RASTER_Y0]) * numbers[c.SHADE_PER_YD])
    i = min(max(i, 0), shade.shape[1] - 1)
    j = min(max(j, 0), shade.shape[0] - 1)
    return float(shade[np.uintp(j), np.uintp(i)])


@kernel
def any_shade(numbers, shade, x, y, to_x, to_y):
    """Whether the straight way on the ground passes any crown's box, whatever its height."""
    dx, dy = to_x - x, to_y - y
    steps = int(math.sqrt(dx * dx + dy * dy) * numbers[c.SHADE_PER_YD]) + 1
    for k in range(steps + 1):
        if shade_over(numbers, shade, x + dx * k / steps, y + dy * k / steps) > -1e8:
            return True
    return False


@kernel
def _track_point(tracks, shot, u, v, f, t, k, wu, wv, a, d):
    """Side and height [yd] at one point of the track, linear in wind, carry fraction and tilt."""
    side, height = 0.0, 0.0
    for du in range(2):
        pu = wu if du == 1 else 1.0 - wu
        for dv in range(2):
            pv = wv if dv == 1 else 1.0 - wv
            weight = pu * pv
            if weight > 0.0:
                for df in range(2):
                    for dt in range(2):
                        w = weight * (a if df == 1 else 1.0 - a) * (d if dt == 1 else 1.0 - d)
                        side += w * tracks[shot, u + du, v + dv, f + df, t + dt, k, 0]
                        height += w * tracks[shot, u + du, v + dv, f + df, t + dt, k, 1]
    return side, height


@kernel
def first_branch(ground, trees, x, y, shot, bearing, fraction, tilt, wind_x, wind_y, along, depth):
    """Way along the start line [yd] at which a flight hits a branch, with its side and height there.

    Inside a crown the chance to hit within a step is exponential in its length over the crown's mean
    path to a hit; `depth` is the number of mean paths this ball gets through, minus the log of a
    uniform number. Read only where the track meets a crown's box.

    Parameters
    ----------
    along : float
        Way to the lowest landing height of the tables [yd].

    Returns
    -------
    way, side, height : float
        NO_HIT and zeros where it gets through.
    """
    numbers, tracks = ground.numbers, trees.tracks
    sin_b, cos_b = math.sin(bearing), math.cos(bearing)
    along_wind, cross_wind = wind_x * sin_b + wind_y * cos_b, wind_x * cos_b - wind_y * sin_b
    mirror = -1.0 if cross_wind < 0.0 else 1.0
    f, a = node_of(fraction, numbers[c.FRACTION_0], numbers[c.FRACTION_STEP], tracks.shape[3])
    t, d = node_of(mirror * tilt, numbers[c.TILT_0], numbers[c.TILT_STEP], tracks.shape[4])
    u, wu = node_of(along_wind, numbers[c.ALONG_0], numbers[c.ALONG_STEP], tracks.shape[1])
    v, wv = node_of(abs(cross_wind), 0.0, numbers[c.CROSS_STEP], tracks.shape[2])
    level = height_at(ground, x, y)
    points = tracks.shape[5]
    old_way, old_side, old_z = 0.0, 0.0, 0.0
    gone = 0.0
    for k in range(points):
        way = along * (k + 1) / points
        side, z = _track_point(tracks, shot, u, v, f, t, k, wu, wv, a, d)
        side *= mirror
        length = way - old_way
        wide = int(length * numbers[c.SHADE_PER_YD]) + 1
        near = False
        for q in range(wide + 1):
            s = q / wide
            w, b = old_way + s * length, old_side + s * (side - old_side)
            over = shade_over(numbers, trees.shade, x + w * sin_b + b * cos_b, y + w * cos_b - b * sin_b)
            near = near or over > level + min(old_z, z)
        if near:
            steps = int(length / numbers[c.RASTER_CELL]) + 1
            step = length / steps
            for q in range(steps):
                s = (q + 0.5) / steps
                w, b, height = old_way + s * length, old_side + s * (side - old_side), old_z + s * (z - old_z)
                px, py = x + w * sin_b + b * cos_b, y + w * cos_b - b * sin_b
                crown = trees.canopy[
                    row_of(numbers, ground.surface, py), column_of(numbers, ground.surface, px)
                ]
                if crown > 0:
                    over = level + height - height_at(ground, px, py)
                    if trees.crowns[crown - 1, c.CROWN_BASE] < over < trees.crowns[crown - 1, c.CROWN_TOP]:
                        gone += step / trees.crowns[crown - 1, c.CROWN_HIT]
                        if gone >= depth:
                            return w, b, height
        old_way, old_side, old_z = way, side, z
    return NO_HIT, 0.0, 0.0
