"""Numbers on the maps of a lesson stand where they are read as what they count."""

from __future__ import annotations

from itertools import pairwise

import fake_answers
import fake_lessons
import numpy as np
import pytest
import shapely
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from small_games import hole_of

from simulator.hole.surfaces import TROUBLE
from simulator.report import shotplot
from simulator.report.chosen import leading
from simulator.report.cloud import draw_cloud
from simulator.report.holemap import area_of
from simulator.report.labels import MARGIN_PT
from simulator.report.wordplaces import RINGS
from simulator.report.worthmap import _thin

BUSY = """
name = "Busy"
par = 4
length_yd = 400
green = [{ front_yd = 386, depth_yd = 28, width_yd = 24 }]
fairway = [{ from_yd = 150, to_yd = 386, left_yd = -13, right_yd = 13 }]
bunker = [{ name = "left bunker", at_yd = 226, offset_yd = -14, depth_yd = 12, width_yd = 8 },
          { name = "left bunker 2", at_yd = 240, offset_yd = -14, depth_yd = 12, width_yd = 8 },
          { name = "left bunker 3", at_yd = 212, offset_yd = -14, depth_yd = 12, width_yd = 8 }]
penalty_area = [{ name = "pond", colour = "red", from_yd = 215, to_yd = 300, left_yd = 20, right_yd = 46 }]
heavy_rough = [{ name = "heath", from_yd = 60, to_yd = 420, left_yd = 24, right_yd = 48 }]
"""


def test_a_count_stands_by_its_balls_and_on_no_other_trouble() -> None:
    """The nine in a bunker stood out on the fairway, the two of another bunker on its neighbour."""
    answer = fake_answers.answer(hole_of(BUSY), "barnaby", clubs=(
        {"club": "driver", "carry_yd": 222.0, "score": 5.0, "aim_offset_yd": -12.0, "spread_deg": 2.5},
        {"club": "3-wood", "carry_yd": 210.0, "score": 5.1, "difference": 0.1, "aim_offset_yd": 18.0},
    ))  # fmt: skip
    result = fake_lessons.lesson(answer=answer)
    checked = 0
    for index in leading(answer):
        ax = draw_cloud(result, index)
        one = answer.alternatives[index]
        dots, wide = shotplot.hundred(answer, one), float(np.ptp(ax.get_xlim()))
        troubles = {f.name: area_of(answer.hole, f.name) for f in answer.hole.features if f.surface in TROUBLE}
        numbers = [text for text in ax.texts if text.get_text().isdigit()]
        names = [name for name in shotplot.counts(answer, one) if name in troubles]
        assert len(numbers) == len(names)
        for text, name in zip(numbers, names, strict=True):
            assert int(text.get_text()) == shotplot.counts(answer, one)[name]
            place = shapely.Point(text.get_position())
            mine = dots[shapely.contains_xy(troubles[name].buffer(1.0), dots)]
            assert np.hypot(*(mine - text.get_position()).T).min() <= (RINGS[1] + 0.01) * wide, name
            assert not any(area.contains(place) for other, area in troubles.items() if other != name), name
            checked += 1
    assert checked >= 6


@pytest.mark.parametrize(("gap_pt", "left"), [(0.5, 1), (2.0 * MARGIN_PT + 0.5, 2)])
def test_numbers_on_lines_do_not_touch(gap_pt: float, left: int) -> None:
    """ "+0.2" hard by "+0.4" is read as one number."""
    figure = Figure(figsize=(3.6, 3.6), dpi=100)
    FigureCanvasAgg(figure)
    ax = figure.add_axes((0.0, 0.0, 1.0, 1.0))
    ax.set_xlim(0.0, 360.0)
    ax.set_ylim(0.0, 360.0)  # a unit is a pixel
    texts = [ax.text(x, 180.0, "+0.2", fontsize=6.5) for x in (100.0, 200.0)]
    wide = texts[0].get_window_extent().width
    texts[1].set_position((100.0 + wide + gap_pt * 100.0 / 72.0, 180.0))
    boxes = [text.get_window_extent() for text in texts]
    assert not any(one.overlaps(other) for one, other in pairwise(boxes))
    kept = _thin(ax, texts, (20.0, 20.0))
    assert kept == texts[:left] == list(ax.texts)
