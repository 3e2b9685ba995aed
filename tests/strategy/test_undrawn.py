"""A line past everything the hole file draws is told: what is not drawn is open rough to the model."""

from __future__ import annotations

import math
from types import SimpleNamespace

import numpy as np
import pytest
from small_games import hole_of, player_of

from simulator import load_hole, load_player, plan
from simulator.hole.model import Hole
from simulator.hole.words import hole_from_words
from simulator.strategy.errorbars import Estimate
from simulator.strategy.places import place
from simulator.strategy.undrawn import past_the_drawing, short_of_the_fairway

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


@pytest.mark.parametrize(("half_width", "warned"), [(150, True), (205, False)])
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


@pytest.mark.parametrize(
    ("words", "finish_yd", "begins_yd"),
    [("par 4, 374", 130.0, 150.0), ("par 4, 374", 160.0, None), ("par 4, 374; fairway from 140", 130.0, None),
     ("par 3, 150", 100.0, None), ("par 4, 342 m", 130.0, 150.0)],
)  # fmt: skip
def test_drives_short_of_a_fairway_that_was_assumed_are_told(
    words: str, finish_yd: float, begins_yd: float | None
) -> None:
    """Ninety-four of a hundred in the rough, said the lesson of a short hitter: of mowing that nobody measured."""
    hole = load_hole(words)
    one = SimpleNamespace(finishes_yd=np.array([[-3.0, finish_yd - 9.0], [0.0, finish_yd], [4.0, finish_yd + 3.0]]))
    assert short_of_the_fairway(hole, place("tee", hole), one) == (begins_yd and pytest.approx(begins_yd, abs=1.0))
    assert short_of_the_fairway(hole, place("90 out", hole), one) is None


def test_the_answer_warns_of_it() -> None:
    answer = plan(load_hole("par 4, 374"), load_player("handicap 24, woman, only driver, 5h, 7i, pw, sw"), sequences=500, quick=True)
    assert ["short of the fairway" in warning and "150 yd on" in warning for warning in answer.warnings] == [True]


@pytest.mark.parametrize(
    ("words", "begins_yd"),
    [("par 4, 374; fairway 30 wide to 250, then 22", 150.0),  # the step is assumed too, and said first
     ("par 4, 374; left fairway 20 wide, edge 8; right fairway 20 wide, edge 8", 150.0),
     ("par 4, 374; fairway 30 wide, ends at 250; fairway 300 to 360", 150.0),
     ("par 4, 374; left fairway 140 to 360, 20 wide, edge 8; right fairway 20 wide, edge 8", None)],
)  # fmt: skip
def test_it_is_the_first_fairway_that_has_to_be_assumed(words: str, begins_yd: float | None) -> None:
    hole = load_hole(words)
    one = SimpleNamespace(finishes_yd=np.array([[0.0, 120.0]]))
    assert short_of_the_fairway(hole, place("tee", hole), one) == (begins_yd and pytest.approx(begins_yd, abs=1.0))


def test_a_saved_hole_of_words_keeps_what_was_assumed(tmp_path) -> None:
    """Whoever measures where it begins takes the key out, whatever sentences are left."""
    file = tmp_path / "hole.toml"
    for change, told in ((("", ""), True), ((", from_assumed = true", ""), False)):
        file.write_text(hole_from_words("par 4, 374").toml_text.replace(*change))
        hole = load_hole(file)
        one = SimpleNamespace(finishes_yd=np.array([[0.0, 130.0]]))
        assert (short_of_the_fairway(hole, place("tee", hole), one) is not None) == told
