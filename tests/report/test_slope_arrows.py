"""Arrows down the fall of a green lie on the ground whose fall they show."""

from __future__ import annotations

import math

import matplotlib.pyplot as plt
import pytest
from small_games import hole_of

from simulator.report.falls import falls_shown
from simulator.report.groundplot import draw_ground

TIERS = """
name = "tiers"
par = 3
length_yd = 160
green = [{ front_yd = 146, depth_yd = 28, width_yd = 24, slope_pct = 2.5, falls = "front left" }]
green_part = [{ name = "top", from_yd = 162, to_yd = 176, left_yd = -14, right_yd = 14, slope_pct = 4, falls = "front" }]
pin = [{ name = "middle", on_yd = 12 }, { name = "high", on_yd = 22, offset_yd = 3 }, { name = "low", on_yd = 5 }]
"""


@pytest.mark.parametrize("pin", ["middle", "high", "low"])
def test_an_arrow_stands_on_its_own_tier(pin: str) -> None:
    """That of the lower tier was drawn in the upper one, where the ground falls another way."""
    hole = hole_of(TIERS).with_pin(pin)
    figure, ax = plt.subplots(figsize=(4, 8))
    ax.set(xlim=(-20, 20), ylim=(130, 190), aspect="equal")
    draw_ground(ax, hole)
    found = {}
    for arrow in falls_shown(ax):
        (x1, y1), (x0, y0) = arrow.xy, arrow.xyann
        on = hole.feature_at((x0 + x1) / 2.0, (y0 + y1) / 2.0)
        assert on is not None
        found[on.name] = math.degrees(math.atan2(x1 - x0, y1 - y0)) % 360.0
    plt.close(figure)
    assert found == {"green": pytest.approx(225.0), "top": pytest.approx(180.0)}
