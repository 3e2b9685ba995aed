"""One alternative's hundred finishes on the ground, with the count of them in every trouble."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

import numpy as np
import shapely

from ..hole.surfaces import TROUBLE
from ..strategy.lesson import Lesson
from ..strategy.result import Answer
from . import groundplot, shotplot
from .chosen import leading
from .falls import keep_off_falls
from .holemap import area_of
from .labels import Labels
from .page import in_style, own_axes
from .palette import SHOTS, ShotLook
from .wordplaces import Place, places_near, rings_about

if TYPE_CHECKING:
    from matplotlib.axes import Axes


@in_style
def draw_cloud(result: Lesson, index: int, *, ax: Axes | None = None) -> Axes:
    """One alternative: its aim, a hundred finishes, and the count in every trouble they find.

    Parameters
    ----------
    result : Lesson
    index : int
        Of the alternative; both clouds of a pair show the same ground.
    """
    ax = own_axes(ax)
    answer = result.answer
    groundplot.draw_hole(ax, answer.hole, shotplot.extent(answer, leading(answer)))
    one = answer.alternatives[index]
    shotplot.draw_shot(ax, answer, index, _look(answer, index), 0.0)
    dots = shotplot.hundred(answer, one)
    labels = Labels(ax, shotplot.words_avoid(answer, [index]))
    keep_off_falls(ax, labels)
    groundplot.draw_marks(ax, answer.hole, answer.start, labels)
    troubles = {f.name for f in answer.hole.features if f.surface in TROUBLE}
    for name, count in shotplot.counts(answer, one).items():
        if name in troubles:
            area = area_of(answer.hole, name)
            inside = dots[[_in(answer, name, x, y) for x, y in dots]]
            for places in _count_places(answer, ax, name, inside):
                if labels.put(f"{count}", places, within=area, fontsize=8.0, weight="bold") is not None:
                    break
    return ax


def _look(answer: Answer, index: int) -> ShotLook:
    return dict(shotplot.looks(answer)).get(index, SHOTS[1])


def _middle_one(dots: np.ndarray) -> np.ndarray:
    """Of dots (n, 2) the one nearest to the others: in water round a green their mean lies on the green."""
    apart = np.hypot(*(dots[:, None, :] - dots[None, :, :]).transpose(2, 0, 1))
    return dots[int(np.argmin(apart.sum(axis=1)))]


def _count_places(answer: Answer, ax: Axes, name: str, dots: np.ndarray) -> Iterator[list[Place]]:
    """Places for the count of the balls in a trouble, those to be taken first by themselves.

    As near to the balls as a number can stand, be it over some: farther off, or on another trouble, it
    would be read as that ground's. Only where words leave no such place, anywhere in the area or near it.
    """
    area, others = area_of(answer.hole, name), shapely.union_all([
        area_of(answer.hole, f.name) for f in answer.hole.features if f.surface in TROUBLE and f.name != name
    ])  # fmt: skip
    anywhere = places_near(area, ax)
    if len(dots):
        rings = rings_about(ax, _middle_one(dots))
        for ring in rings:
            yield [place for place in ring if not shapely.contains_xy(others, *place)]
        anywhere = [*(place for ring in rings for place in ring), *anywhere]
    yield anywhere


def _in(answer: Answer, name: str, x: float, y: float) -> bool:
    feature = answer.hole.feature_at(float(x), float(y))
    return feature is not None and feature.name == name
