"""The engine's own reading of the flight tables, by wind along and across the strike."""

from __future__ import annotations

import numpy as np
from from_python import from_python

from simulator.kernels.air import cell_of, fly

_cell_of, _fly = from_python(cell_of), from_python(fly)


def flight_read(
    numbers: np.ndarray,
    flights: np.ndarray,
    row: int,
    fraction: float,
    tilt: float,
    node: int,
    along: float,
    cross: float,
) -> tuple[float, ...]:
    """The six numbers of a strike down to a height node, in wind along and across its start line [yd/s]."""
    cell = _cell_of(numbers, flights, fraction, tilt, cross, along, 0.0, 1.0)  # along is up the page
    return tuple(_fly(flights, row, cell, node))
