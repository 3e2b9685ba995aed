"""Trees in the way: does the flight meet a crown, and where does the ball drop."""

from __future__ import annotations

import numpy as np

from . import codes as c
from ._compile import in_place, kernel
from .air import fly
from .ground import column_of, height_at, row_of

NO_HIT = 1e9
"""Way flown before a branch, where there is none."""


@kernel
def wide_cell(numbers, wide, x, y):
    """Value of a wide raster at a place; places off it take its nearest cell."""
    i = int((x - numbers[c.RASTER_X0]) * numbers[c.SHADE_PER_YD])
    j = int((y - numbers[c.RASTER_Y0]) * numbers[c.SHADE_PER_YD])
    column = np.uintp(min(max(i, 0), wide.shape[1] - 1))
    return float(wide[np.uintp(min(max(j, 0), wide.shape[0] - 1)), column])


@in_place
def _track_point(tracks, shot, cell, k):
    """Side and height [yd] at one point of the track, linear in wind, carry fraction and tilt."""
    side, height = 0.0, 0.0
    for du in range(2):
        pu = cell.wu if du == 1 else 1.0 - cell.wu
        for dv in range(2):
            pv = cell.wv if dv == 1 else 1.0 - cell.wv
            weight = pu * pv
            if weight > 0.0:
                for df in range(2):
                    for dt in range(2):
                        w = weight * (cell.wf if df == 1 else 1.0 - cell.wf)
                        w *= cell.wt if dt == 1 else 1.0 - cell.wt
                        point = tracks[shot, cell.u + du, cell.v + dv, cell.f + df, cell.t + dt, k]
                        side += w * point[0]
                        height += w * point[1]
    return cell.mirror * side, height


@kernel
def _march(ground, trees, x, y, line_x, line_y, level, old, new, gone, depth):
    """Fly one stretch of the track in short steps; (way, side, height) of a hit or NO_HIT, and depth spent.

    `old` and `new` are (way, side, height) at its ends.
    """
    numbers = ground.numbers
    way, side, z = old
    length = new[0] - way
    bend, climb = (new[1] - side) / length, (new[2] - z) / length
    x, y = x + way * line_x + side * line_y, y + way * line_y - side * line_x
    head_x, head_y = line_x + bend * line_y, line_y - bend * line_x
    steps = int(length / numbers[c.RASTER_CELL]) + 1
    step = length / steps
    for q in range(steps):
        on = (q + 0.5) * step
        px, py = x + on * head_x, y + on * head_y
        crown = int(trees.canopy[row_of(numbers, ground.surface, py), column_of(numbers, ground.surface, px)])
        if crown > 0:
            height = z + on * climb
            over = level + height - height_at(ground, px, py)
            if trees.crowns[crown - 1, c.CROWN_BASE] < over < trees.crowns[crown - 1, c.CROWN_TOP]:
                gone += step / trees.crowns[crown - 1, c.CROWN_HIT]
                if gone >= depth:
                    return way + on, side + on * bend, height, gone
    return NO_HIT, 0.0, 0.0, gone


@in_place
def first_branch(game, x, y, shot, line_x, line_y, cell, way, along, bend, straight, depth):
    """Way along the start line [yd] at which a flight hits a branch, with its side and height there.

    Inside a crown the chance to hit within a step is exponential in its length over the crown's mean
    path to a hit; `depth` is the number of mean paths this ball gets through, minus the log of a
    uniform number. The way over the ground is crossed in strides as long as the nearest crown is far; the
    track is read only beside a crown, and walked only where it is not above the crowns there.

    Parameters
    ----------
    way : float
        Where it first comes near a crown (passing.py).
    along : float
        The way flown along the start line [yd].
    bend, straight : float
        Of its way over the ground (`passing.bend_of`).

    Returns
    -------
    way, side, height : float
        NO_HIT and zeros where it gets through.
    """
    ground, trees = game.ground, game.trees
    numbers, tracks = ground.numbers, trees.tracks
    points = tracks.shape[5]
    level, lowest, ready, gone = 0.0, along, False, 0.0
    known = -1
    old_side, old_z, new_side, new_z = 0.0, 0.0, 0.0, 0.0
    wide = straight / numbers[c.SHADE_PER_YD]
    for _ in range(200):
        if way >= lowest:
            break
        px = x + way * line_x + bend * way * way * line_y
        py = y + way * line_y - bend * way * way * line_x
        clear = wide_cell(numbers, trees.clear, px, py)
        if clear > 0.0:
            way += clear * straight
            continue
        if not ready:
            ready = True
            level = height_at(ground, x, y)
            if numbers[c.HEIGHTS] > 1.0:  # the track ends at the lowest landing height of the tables
                lowest = fly(game.flights, shot, cell, 0)[0]
        k = min(int(way / lowest * points), points - 1)
        if k != known:
            if k == known + 1:
                old_side, old_z = new_side, new_z
            elif k > 0:
                old_side, old_z = _track_point(tracks, shot, cell, k - 1)
            known = k
            new_side, new_z = _track_point(tracks, shot, cell, k)
        if wide_cell(numbers, trees.shade, px, py) > level + min(old_z, new_z):
            hit, b, z, gone = _march(
                ground,
                trees,
                x,
                y,
                line_x,
                line_y,
                level,
                (lowest * k / points, old_side, old_z),
                (lowest * (k + 1) / points, new_side, new_z),
                gone,
                depth,
            )
            if hit < NO_HIT:
                return hit, b, z
            way = lowest * (k + 1.001) / points
        else:  # the shade vouches for a wide cell's length, not for the whole stretch
            way = min(way + wide, lowest * (k + 1.001) / points)
    return NO_HIT, 0.0, 0.0
