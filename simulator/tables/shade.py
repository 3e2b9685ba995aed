"""A wide raster of how high trees reach, so that most flights are seen to be clear at a glance."""

from __future__ import annotations

import numpy as np

from .rasters import Raster

SHADE_YD = 4.0
"""Side of a wide cell [yd]."""

CLEAR = -1e9
"""Height of nothing."""


def shade_raster(raster: Raster) -> np.ndarray:
    """Greatest crown height in and around each wide cell, over the zero of the heights [yd], float32.

    Each cell includes its neighbours: a flight sampled once a cell misses no crown between samples.
    """
    rows_in, columns_in = raster.canopy.shape
    tops = np.full((rows_in, columns_in), CLEAR, np.float32)
    standing = raster.canopy > 0
    tops[standing] = raster.height[standing] + raster.crowns[raster.canopy[standing] - 1, 1]
    per = max(round(SHADE_YD / raster.cell_yd), 1)
    rows, columns = -(-rows_in // per), -(-columns_in // per)
    padded = np.full((rows * per, columns * per), CLEAR, np.float32)
    padded[:rows_in, :columns_in] = tops
    wide = padded.reshape(rows, per, columns, per).max(axis=(1, 3))
    around = np.pad(wide, 1, constant_values=CLEAR)
    around = np.maximum(np.maximum(around[:-2], around[1:-1]), around[2:])
    around = np.maximum(np.maximum(around[:, :-2], around[:, 1:-1]), around[:, 2:])
    return np.ascontiguousarray(around, np.float32)


def clear_raster(shade: np.ndarray) -> np.ndarray:
    """How far a ball may go from anywhere in each wide cell before it is near a crown [yd]; 0 near one.

    The way between the centres of two cells: the shade includes its neighbours, so from any corner of a cell
    a stride of that length passes no crown by. (scipy.ndimage has this and the neighbours' maximum, but its
    import takes 0.4 s.)
    """
    at = np.arange(len(shade), dtype=np.float32)[:, None]  # rows; squares of whole cells are exact in float32
    standing = shade > CLEAR
    before = np.maximum.accumulate(np.where(standing, at, -np.inf), axis=0)
    after = np.minimum.accumulate(np.where(standing, at, np.inf)[::-1], axis=0)[::-1]
    in_column = np.square(np.minimum(at - before, after - at), dtype=np.float32)
    squared = in_column.copy()
    for k in range(shade.shape[1]):
        across = np.square(np.arange(shade.shape[1], dtype=np.float32) - k)
        np.minimum(squared, in_column[:, k, None] + across, out=squared)
    return np.ascontiguousarray(np.sqrt(squared) * SHADE_YD, np.float32)
