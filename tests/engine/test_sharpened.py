"""A band of nodes sharpened where it has a part: the same readings as with the whole field sharpened anew."""

import numpy as np

from simulator.engine.sweeps import CLIFF_STROKES, _sharpen_about, sharpened


def test_about_a_band_as_everywhere() -> None:
    rng = np.random.default_rng(1)
    means = rng.normal(4.0, 0.3 * CLIFF_STROKES, (3, 40, 30))  # some bends are cliffs, some are not
    means[rng.random(means.shape) < 0.1] = np.nan
    values = sharpened(means)
    for turn in range(100):
        count = int(rng.integers(1, 30))
        corner = turn % 2 == 0  # near two edges, or anywhere
        rows = rng.integers(0, 6 if corner else 40, count)
        columns = rng.integers(25 if corner else 0, 30, count)
        means[rng.integers(0, 3, count), rows, columns] = rng.normal(4.0, 0.3 * CLIFF_STROKES, count)
        _sharpen_about(rows, columns, means, values)
        assert np.array_equal(values, sharpened(means), equal_nan=True)
