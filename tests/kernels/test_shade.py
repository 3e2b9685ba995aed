"""The wide rasters of how high and how far off trees are, against scipy.ndimage."""

from types import SimpleNamespace

import numpy as np
import pytest
from scipy.ndimage import distance_transform_edt, maximum_filter

from simulator.tables.shade import CLEAR, SHADE_YD, clear_raster, shade_raster


def raster_of(rng: np.random.Generator, shape: tuple[int, int], crowns: int) -> SimpleNamespace:
    """So many crowns of one cell each on hilly ground of cells of a yard."""
    canopy = np.zeros(shape, np.uint8)
    canopy[rng.integers(shape[0], size=crowns), rng.integers(shape[1], size=crowns)] = rng.integers(1, 4, crowns)
    crown = np.array([[2.0, top, 5.0] for top in (8.0, 15.0, 21.0)])
    return SimpleNamespace(canopy=canopy, height=rng.normal(0.0, 3.0, shape), crowns=crown, cell_yd=1.0)


@pytest.mark.parametrize(("shape", "crowns"), [((64, 40), 1), ((203, 77), 5), ((120, 330), 60), ((9, 9), 3)])
def test_shade_and_clear_are_those_of_scipy(shape: tuple[int, int], crowns: int) -> None:
    raster = raster_of(np.random.default_rng(crowns), shape, crowns)
    shade = shade_raster(raster)
    wide = np.full(shade.shape, CLEAR)
    for row, column in np.argwhere(raster.canopy > 0):
        cell = int(row // SHADE_YD), int(column // SHADE_YD)
        top = raster.height[row, column] + raster.crowns[raster.canopy[row, column] - 1, 1]
        wide[cell] = max(wide[cell], top)
    assert np.allclose(shade, maximum_filter(wide, size=3, mode="constant", cval=CLEAR), rtol=1e-6)
    apart = distance_transform_edt(shade <= CLEAR) * SHADE_YD
    assert (clear_raster(shade) == apart.astype(np.float32)).all()
