"""Game: everything one player on one hole today is, as arrays (made by the border, read by kernels)."""

from __future__ import annotations

from typing import Any, NamedTuple


class Game(NamedTuple):
    """Arrays of the game; codes.py says what each column means.

    Attributes
    ----------
    numbers : float64[NUMBERS]
    surface : uint8[ny, nx]
        Surface code of each raster cell.
    feature : int16[ny, nx]
        Feature index of each cell, -1 where nothing was drawn.
    relief : float32[3, ny, nx]
        Height [yd] and its slope along x and y [yd/yd]; ``[3, 1, 1]`` of zeros on level ground.
    surface_rows : float64[surfaces, SURFACE_COLUMNS]
    feature_rows : float64[features + 1, FEATURE_COLUMNS]
    lie_rows : int64[lies]
        Which unplayable-ball options are worth a look from a lie.
    strikes : float64[shots, lies, STRIKE_COLUMNS]
    flights : float32[shots, bearings, fractions, tilts, heights, FLIGHT_COLUMNS]
    putts : float64[directions, distances, 5]
        Expected putts, then the chances of at most 1, 2, 3 and 4 putts, at squared steps of distance.
    coarse, fine : float64[lies, rows, columns]
        Value map: strokes to hole out, NaN where no ball can lie.
    coarse_plan, fine_plan : float32[lies, rows, columns, ACTION_COLUMNS]
        The action chosen at each node.
    """

    numbers: Any
    surface: Any
    feature: Any
    relief: Any
    surface_rows: Any
    feature_rows: Any
    lie_rows: Any
    strikes: Any
    flights: Any
    putts: Any
    coarse: Any
    fine: Any
    coarse_plan: Any
    fine_plan: Any
