"""What lies where over a whole hole: the slow way, a place at a time, is most of such a test's time."""

from __future__ import annotations

import numpy as np

from simulator.hole import Hole
from simulator.strategy.ground import surfaces_at


def surfaces_over(hole: Hole, stations_yd: range, offsets_yd: range) -> np.ndarray:
    """Surface codes at stations along the line and offsets right of it, int (stations, offsets)."""
    xy = np.array([hole.at(station, offset) for station in stations_yd for offset in offsets_yd])
    return surfaces_at(hole, *xy.T).reshape(len(stations_yd), len(offsets_yd))
