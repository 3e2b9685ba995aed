"""How hard a putt from off the green is struck: by the ground it has to cross."""

from __future__ import annotations

from . import codes as c
from ._compile import apart
from .ground import column_of, row_of


@apart
def pace_of(ground, x, y, line_x, line_y, way):
    """How far a ball would roll on the level green putts are tabled on, if it is to roll so far along a line.

    The square of a rolling ball's speed falls by twice its deceleration a yard, whatever its speed: longer
    grass and a rise ask for more, a fall for less. Cell by cell, as it will roll (`rest.come_to_rest`).

    Parameters
    ----------
    line_x, line_y : float
        Unit vector along the line.
    way : float
        [yd]
    """
    numbers, relief = ground.numbers, ground.relief
    step, pull = numbers[c.RASTER_CELL], numbers[c.ROLL_SLOPE] * numbers[c.GRAVITY]
    squared = 0.0
    for k in range(int(way / step) + 1):
        length = min(way - k * step, step)
        on = k * step + 0.5 * length
        px, py = x + on * line_x, y + on * line_y
        row, column = row_of(numbers, ground.surface, py), column_of(numbers, ground.surface, px)
        slow = ground.skip[ground.surface[row, column], 0]
        if relief.shape[1] > 1:
            rises = relief[row, column, c.RELIEF_X] * line_x + relief[row, column, c.RELIEF_Y] * line_y
            slow += pull * rises
        squared += 2.0 * slow * length
    return squared / (2.0 * numbers[c.PUTT_SLOWS])
