"""Words on a picture: the name of a narrow lane is not a river's, and no word hides which way the green falls."""

from __future__ import annotations

import fake_answers
import numpy as np
import pytest
from small_games import hole_of

from simulator import load_hole
from simulator.hole import Hole
from simulator.report import falls
from simulator.report.plot import draw_plan

FALLS = """
name = "Falls"
par = 3
length_yd = 150
green = [{ front_yd = 136, depth_yd = 28, width_yd = 24, slope_pct = 2, falls = "front right" }]
"""


def _hole(more: str = "") -> Hole:
    return hole_of(f"{FALLS}{more}")


CLUBS = ({"club": "7-iron", "carry_yd": 150.0, "score": 3.4, "aim_offset_yd": 0.0, "asked": True},)


def test_the_name_of_a_lane_is_not_written_on_the_river() -> None:
    """The strip in view is narrower than its name, and half way up the picture the river lies beside it."""
    hole = load_hole("ostrel-heath/11")
    ax = draw_plan(fake_answers.answer(hole, question="plan", clubs=CLUBS))
    said = next(text for text in ax.texts if text.get_text() == "mill lane")
    where = hole.feature_at(*said.get_position())
    assert where is None or where.name == "mill lane"


@pytest.mark.parametrize("on_yd", [8, 12, 16, 20, 24])
@pytest.mark.parametrize("offset_yd", [-7, -3, 0, 3, 7])
def test_no_word_hides_the_fall_of_the_green(on_yd: int, offset_yd: int) -> None:
    hole = _hole(f'pin = [{{ name = "p", on_yd = {on_yd}, offset_yd = {offset_yd} }}]\n')
    ax = draw_plan(fake_answers.answer(hole, question="plan", clubs=CLUBS))
    arrows = falls.falls_shown(ax)
    assert len(arrows) == 1
    for text in ax.texts:
        if text.get_text():
            box = text.get_window_extent()
            for share in np.linspace(0.0, 1.0, 9):
                place = (1.0 - share) * np.array(arrows[0].xy) + share * np.array(arrows[0].xyann)
                assert not box.contains(*ax.transData.transform(place)), text.get_text()
