"""Areas are told by what they are called, not by the words of a place that stand in their names."""

from __future__ import annotations

import pytest
from small_games import straight_hole

from simulator.errors import UsageError
from simulator.hole import Lie, Surface
from simulator.player import load_player
from simulator.strategy.review.named import area_named
from simulator.strategy.review.notes import read_notes
from simulator.strategy.review.strokes import strokes_of
from simulator.strategy.review.unmeasured import usual_length

HOLE = straight_hole(
    158, par=3, more="""
out_of_bounds = [{ name = "left boundary", left_of_yd = -40 },
                 { name = "boundary behind the green", from_yd = 190, to_yd = 300, left_yd = -90, right_yd = 90 }]
penalty_area = [{ name = "front right drain", colour = "red", from_yd = 100, to_yd = 120, left_yd = 20, right_yd = 30 }]
""",
)  # fmt: skip
USUAL = usual_length(load_player("isolde"), HOLE)


@pytest.mark.parametrize(
    "words", ["left", "the left", "on the left", "the green", "green", "behind the green", "on", "right", "front right", "front"]
)
def test_where_a_ball_went_is_no_area(words: str) -> None:
    assert area_named(words, HOLE) is None


@pytest.mark.parametrize(
    ("words", "surface"),
    [
        ("the boundary", Surface.OUT_OF_BOUNDS), ("left boundary", Surface.OUT_OF_BOUNDS),
        ("the boundary behind the green", Surface.OUT_OF_BOUNDS), ("the drain", Surface.WATER),
        ("front right drain", Surface.WATER), ("the right drain", Surface.WATER),
    ],
)  # fmt: skip
def test_an_area_is_told_by_its_name_or_a_part_of_it(words: str, surface: Surface) -> None:
    assert area_named(words, HOLE) is surface


@pytest.mark.parametrize(
    ("noted", "lie"),
    [("7-iron to the green", Lie.GREEN), ("7-iron on", Lie.GREEN), ("7-iron behind the green", Lie.ROUGH),
     ("7-iron left", Lie.ROUGH)],
)  # fmt: skip
def test_a_ball_at_the_green_has_no_penalty(noted: str, lie: Lie) -> None:
    """Each of them was counted as out of bounds, and the next stroke played from the tee."""
    ball = strokes_of(read_notes(noted), HOLE, USUAL).strokes[0]
    assert (ball.penalty, ball.end.lie) == (0, lie)


def test_a_drive_that_went_left_is_asked_about() -> None:
    long = straight_hole(400, par=4, more='out_of_bounds = [{ name = "left boundary", left_of_yd = -40 }]\n')
    with pytest.raises(UsageError, match="how far, and on what"):
        strokes_of(read_notes("driver left; 5-iron to 20 ft; 2 putts"), long, USUAL)
