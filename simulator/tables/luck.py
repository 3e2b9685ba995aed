"""Prepared strikes: scrambled Sobol points turned into a uniform and four normals.

The points are scipy's (``simulator/fits/sobol.py`` wrote them down); each set is scrambled by a random
digital shift of its own, which keeps every mean unbiased and the points' evenness.
"""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

import numpy as np
from scipy.special import ndtri

from ..kernels import codes as c


@lru_cache(maxsize=1)
def _points() -> np.ndarray:
    return np.load(Path(__file__).with_name("sobol.npy"))


def strike_sets(seed: int, sets: int, strikes: int) -> np.ndarray:
    """Sets of strikes, each a scramble of its own of the same points.

    Parameters
    ----------
    seed : int
    sets : int
        Independent scrambles.
    strikes : int
        Points in each, a power of two up to 4,096.

    Returns
    -------
    float64[sets, strikes, STRIKE_LUCK]
        Column 0 uniform (solid or mishit), columns 1-4 standard normal (speed, start, curve, lie), columns
        5 on uniform from -1/2 to 1/2 (place in a node's cell, gust, swing, trees).
    """
    points = _points()
    if not 0 < strikes <= len(points):
        raise ValueError(f"strikes must be 1 to {len(points)}, got {strikes}")
    generator = np.random.default_rng([0x5712, seed, sets, strikes])
    shifts = generator.integers(0, 2**32, size=(sets, 1, points.shape[1]), dtype=np.uint32)
    # the middle of each of the 2**32 cells: never 0 or 1, whose normals are infinite
    unit = ((points[None, :strikes] ^ shifts) + 0.5) / 2.0**32
    out = np.empty((sets, strikes, c.STRIKE_LUCK))
    out[..., 0] = unit[..., 0]
    out[..., 1:5] = ndtri(unit[..., 1:5])
    out[..., 5:] = unit[..., 5:] - 0.5
    return out
