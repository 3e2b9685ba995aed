"""Directions stay on the compass."""

import pytest

from simulator.conditions import Wind
from simulator.units import compass_deg


@pytest.mark.parametrize(
    ("x", "y", "bearing"), [(0, 1, 0), (1, 0, 90), (0, -1, 180), (-1, 0, 270), (-1e-18, 1, 0), (-1e-13, 1, 360)]
)
def test_bearings(x: float, y: float, bearing: float) -> None:
    found = compass_deg(x, y)
    assert found == pytest.approx(bearing, abs=1e-9) and 0.0 <= found < 360.0
    assert Wind(10.0, found).from_deg == found  # a hair left of dead against is a wind too
