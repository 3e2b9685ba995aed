"""What the ground is at a place, cell by cell, and where a way leaves an area.

Indices are made unsigned where they are made: numba then leaves out the test for negative ones.
"""

from __future__ import annotations

import math

import numpy as np

from . import codes as c
from ._compile import kernel


@kernel
def column_of(numbers, surface, x):
    """Raster column of a place [yd]; places off the raster take its nearest cell."""
    column = int((x - numbers[c.RASTER_X0]) * numbers[c.RASTER_PER_YD])  # towards zero: clamped anyway
    return np.uintp(min(max(column, 0), surface.shape[1] - 1))


@kernel
def row_of(numbers, surface, y):
    """Raster row of a place [yd]; places off the raster take its nearest cell."""
    row = int((y - numbers[c.RASTER_Y0]) * numbers[c.RASTER_PER_YD])
    return np.uintp(min(max(row, 0), surface.shape[0] - 1))


@kernel
def surface_at(ground, x, y):
    """Surface code of a place."""
    numbers, surface = ground.numbers, ground.surface
    return int(surface[row_of(numbers, surface, y), column_of(numbers, surface, x)])


@kernel
def fate_at(ground, x, y):
    """What happens to a ball that rests at a place."""
    numbers, surface = ground.numbers, ground.surface
    return int(
        ground.rows[surface[row_of(numbers, surface, y), column_of(numbers, surface, x)], c.SURFACE_FATE]
    )


@kernel
def height_at(ground, x, y):
    """Height of the ground [yd]."""
    if ground.relief.shape[1] == 1:
        return 0.0
    numbers, surface = ground.numbers, ground.surface
    return float(ground.relief[row_of(numbers, surface, y), column_of(numbers, surface, x), c.RELIEF_HEIGHT])


@kernel
def is_penalty(fate):
    """Whether a fate is that of a penalty area, wet or dry."""
    return fate == c.FATE_PENALTY_WET or fate == c.FATE_PENALTY_DRY


@kernel
def is_gone(fate, out):
    """Whether a fate is that of a penalty area; with `out`, that of a ball out of bounds."""
    return fate == c.FATE_OUT if out else is_penalty(fate)


@kernel
def crossing(ground, x, y, back_x, back_y, out):
    """Last place before (x, y) that is not gone (`is_gone`) on the straight way from (back_x, back_y)."""
    away_x, away_y = back_x - x, back_y - y
    length = math.sqrt(away_x * away_x + away_y * away_y)
    step = ground.numbers[c.RASTER_CELL]
    steps = int(length / step)
    for k in range(1, steps + 1):
        px, py = x + away_x * (k * step / length), y + away_y * (k * step / length)
        if not is_gone(fate_at(ground, px, py), out):
            return px, py
    return back_x, back_y
