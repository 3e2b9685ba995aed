"""Curves between a few numbers, against scipy's."""

import numpy as np
import pytest
from scipy.interpolate import PchipInterpolator

from simulator.player.curves import smooth

SHAPES = {
    "rising": (0.0, 1.0, 1.5, 4.0, 4.2),
    "falling": (9.0, 8.9, 5.0, 4.0, 1.0),
    "a turn": (0.0, 3.0, 1.0, 1.5, 0.5),
    "a level stretch": (2.0, 2.0, 2.0, 3.0, 3.0),
    "ends that would swing over": (0.0, 0.1, 5.0, 4.9, 9.0),
}


@pytest.mark.parametrize("values", SHAPES.values(), ids=SHAPES.keys())
@pytest.mark.parametrize("at", [(-4.0, 0.0, 5.0, 18.0, 54.0), (0.0, 30.0, 31.0, 33.0, 34.0)])
def test_a_curve_is_scipys(at, values):
    theirs = PchipInterpolator(at, values)
    for x in np.linspace(at[0], at[-1], 401):
        assert smooth(at, values, x) == pytest.approx(float(theirs(x)), abs=1e-12)


def test_three_points_and_level_beyond():
    at, values = (1.0, 2.0, 4.0), (1.0, 3.0, 3.5)
    theirs = PchipInterpolator(at, values)
    assert smooth(at, values, 3.3) == pytest.approx(float(theirs(3.3)), abs=1e-12)
    assert (smooth(at, values, -9.0), smooth(at, values, 9.0)) == (1.0, 3.5)
