"""Game: everything one player on one hole today is, as arrays (made by the border, read by kernels).

The arrays stand in groups by who reads them: a compiled call passes every array it is given, one word
after another, so small functions are handed the group they need and nothing else.
"""

from __future__ import annotations

from typing import Any, NamedTuple


class Ground(NamedTuple):
    """What the ground is.

    Attributes
    ----------
    numbers : float64[NUMBERS]
    surface : uint8[ny, nx]
        Surface code of each raster cell.
    relief : float32[3, ny, nx]
        Height [yd] and its slope along x and y [yd/yd]; ``[3, 1, 1]`` of zeros on level ground.
    rows : float64[surfaces, SURFACE_COLUMNS]
    skip : float64[surfaces, squared speeds]
        Deceleration [yd/s2] of a ball that skips and rolls along a surface, by its speed squared.
    """

    numbers: Any
    surface: Any
    relief: Any
    rows: Any
    skip: Any


class Field(NamedTuple):
    """What a place is worth.

    Attributes
    ----------
    numbers : float64[NUMBERS]
    putts : float64[directions, distances, 5]
        Expected putts, then the chances of at most 1, 2, 3 and 4 putts, at squared steps of distance.
    coarse, fine : float64[lies, rows, columns]
        Value map: strokes to hole out, NaN where no ball can lie.
    """

    numbers: Any
    putts: Any
    coarse: Any
    fine: Any


class Game(NamedTuple):
    """All of it; codes.py says what each column means.

    Attributes
    ----------
    ground : Ground
    field : Field
    feature : int16[ny, nx]
        Feature index of each cell, -1 where nothing was drawn.
    feature_rows : float64[features + 1, FEATURE_COLUMNS]
    lie_rows : int64[lies]
        Which unplayable-ball options are worth a look from a lie.
    strikes : float64[shots, lies, STRIKE_COLUMNS]
    flights : float32[shots, bearings, fractions, tilts, heights, FLIGHT_COLUMNS]
    coarse_plan, fine_plan : float32[lies, rows, columns, ACTION_COLUMNS]
        The action chosen at each node.
    """

    ground: Any
    field: Any
    feature: Any
    feature_rows: Any
    lie_rows: Any
    strikes: Any
    flights: Any
    coarse_plan: Any
    fine_plan: Any

    @property
    def numbers(self) -> Any:
        """float64[NUMBERS], shared by the groups."""
        return self.ground.numbers
