"""A wide raster of how high trees reach, so that most flights are seen to be clear at a glance."""

from __future__ import annotations

import numpy as np

from .rasters import Raster

SHADE_YD = 8.0
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
    around = np.lib.stride_tricks.sliding_window_view(np.pad(wide, 1, constant_values=CLEAR), (3, 3))
    return np.ascontiguousarray(around.max(axis=(2, 3)), np.float32)


def clear_raster(shade: np.ndarray) -> np.ndarray:
    """How far a ball may go from anywhere in each wide cell before it is near a crown [yd]; 0 near one.

    The way between the centres of two cells: the shade includes its neighbours, so from any corner of a cell
    a stride of that length passes no crown by. (scipy.ndimage has this and the neighbours' maximum, but its
    import takes 0.4 s.)
    """
    squared = np.where(shade > CLEAR, 0.0, np.inf)  # cells
    for _ in range(2):  # the nearest one in each column, then over all columns
        at = np.arange(len(squared), dtype=float)
        squared = (squared[None] + np.square(at[:, None] - at)[..., None]).min(axis=1).T
    return np.ascontiguousarray(np.sqrt(squared) * SHADE_YD, np.float32)
