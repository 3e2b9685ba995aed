"""A line past everything the hole file draws is told: what is not drawn is open rough to the model."""

from __future__ import annotations

import math
from types import SimpleNamespace

import pytest
from small_games import hole_of, player_of

from simulator import plan
from simulator.hole.model import Hole
from simulator.strategy.errorbars import Estimate
from simulator.strategy.places import place
from simulator.strategy.undrawn import past_the_drawing

PAR_4 = """
name = "bare"
par = 4
length_yd = 400
green = [{ front_yd = 385, depth_yd = 30, width_yd = 30 }]
fairway = [{ from_yd = 150, to_yd = 380, left_yd = -16, right_yd = 16 }]
"""
WOOD = "trees = [{ from_yd = 180, to_yd = 260, left_yd = 60, right_yd = 75 }]\n"


def told(hole: Hole, offset_yd: float, carry_yd: float = 220.0, drift_yd: float = 0.0) -> str:
    """Of a shot from the tee aimed so far right of the line at its carry, and blown so far right."""
    bearing_deg = math.degrees(math.asin(offset_yd / carry_yd))
    one = SimpleNamespace(
        carry_yd=carry_yd, aim_bearing_deg=bearing_deg, middle_right_yd=Estimate(drift_yd, 0.1)
    )
    return past_the_drawing(hole, place("tee", hole), one)


@pytest.mark.parametrize(
    ("more", "offset_yd", "side"),
    [("", 0.0, ""), ("", 20.0, ""), ("", 45.0, "right"), ("", -45.0, "left"), (WOOD, 45.0, ""), (WOOD, -45.0, "left"),
     (WOOD, 68.0, ""), (WOOD, 95.0, "right")],
)  # fmt: skip
def test_past_everything_drawn_on_its_side(more: str, offset_yd: float, side: str) -> None:
    assert told(hole_of(PAR_4 + more), offset_yd) == side


def test_a_line_to_windward_is_told_by_where_its_balls_come_down() -> None:
    """Thirty yards upwind of the fairway, thirty back; straight at it and blown off it is past what is drawn."""
    hole = hole_of(PAR_4)
    assert told(hole, 30.0) == "right" and told(hole, 30.0, drift_yd=-30.0) == ""
    assert told(hole, 0.0, drift_yd=30.0) == "right" and told(hole, -5.0, drift_yd=-25.0) == "left"


@pytest.mark.parametrize(("half_width", "warned"), [(30, True), (150, True), (205, False)])
def test_a_way_round_a_pond_drawn_too_short_is_no_plan_without_a_word(half_width: int, warned: bool) -> None:
    """A carry this player hardly has: where the drawing ends the plan goes round it, and says what that rests on.

    However far that is; round water that runs off the map (200 yards) there is no way.
    """
    hole = hole_of(
        'name = "pond"\npar = 4\nlength_yd = 300\ngreen = [{ front_yd = 286, depth_yd = 28, width_yd = 26 }]\n'
        f'penalty_area = [{{ name = "pond", colour = "red", from_yd = 120, to_yd = 250, left_yd = -{half_width}, '
        f"right_yd = {half_width} }}]\n"
    )
    found = plan(hole, player_of('name = "short"\nhandicap = 30\n'), sequences=500, quick=True)
    assert any("of everything drawn on this hole" in warning for warning in found.warnings) == warned
