"""The map of what a place is worth: lines of equal worth, their numbers where there is room."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from ..strategy.lesson import Lesson
from . import groundplot
from .labels import MARGIN_PT, haloed
from .page import in_style, own_axes
from .palette import CONTOUR, INK, PAPER

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.contour import ContourSet
    from matplotlib.text import Text

VALUE_STEPS = (0.05, 0.1, 0.2, 0.5, 1.0)
"""Steps of the lines of equal worth [strokes]: the finest that gives no more than `MOST_LINES`."""

MOST_LINES = 7
"""Lines of equal worth on a picture at most."""

MOST_ABREAST = 4.0
"""Lines side by side along the edge of a lie at most: more are one thick line that no number fits on."""

SPECK = 0.1
"""Rings of equal worth smaller than this share of the width are scatter of the map and not drawn."""

MIDDLE = (0.15, 0.85)
"""Share of the ground whose worth the lines cover: dear ground beside the play has none of its own."""


@in_style
def draw_value(result: Lesson, *, ax: Axes | None = None) -> Axes:
    """Lines of equal worth round the finishes, in strokes over the middle of them."""
    ax = own_axes(ax)
    answer, value = result.answer, result.value
    x, y = value.x_yd, value.y_yd
    groundplot.draw_hole(ax, answer.hole, (x[0], x[-1], y[0], y[-1]))
    over = value.strokes - value.here
    low, high = np.nanquantile(over, MIDDLE)
    step = _step(high - low, max((abs(cost) for cost in value.lies.values()), default=0.0))
    levels = step * np.arange(math.floor(low / step), math.ceil(high / step) + 1)
    lines = ax.contour(
        x, y, over, levels=levels, colors=CONTOUR, linewidths=0.9, zorder=3.0, linestyles="solid"
    )
    _without_specks(lines, SPECK * float(np.ptp(ax.get_xlim())))
    digits = 2 if step < 0.1 else 1
    whole = list(lines.get_paths())
    named = _numbers(ax, lines, digits)
    kept = _thin(ax, named, value.here_yd)
    if len(kept) < len(named):  # lines are broken for their numbers: whole again where one was taken away
        for text in kept:
            text.remove()
        lines.set_paths(whole)
        kept = _numbers(ax, lines, digits, [text.get_position() for text in kept])
    for text in kept:
        haloed(text)
    hx, hy = value.here_yd
    ax.plot([hx], [hy], marker="P", markersize=7, color=PAPER, markeredgecolor=INK, zorder=6.0)
    return ax


def _step(strokes: float, lie: float) -> float:
    """The step of the lines over so many strokes where the dearest change of lie is worth `lie`."""
    fit = (s for s in VALUE_STEPS if strokes / s <= MOST_LINES and lie / s <= MOST_ABREAST)
    return next(fit, VALUE_STEPS[-1])


def _numbers(
    ax: Axes, lines: ContourSet, digits: int, places: Sequence[tuple[float, float]] | None = None
) -> list[Text]:
    """Numbers on the lines, which are broken for them: at some places of theirs, else where there is room."""
    if places is not None and not places:
        return []
    return list(ax.clabel(
        lines, fmt=lambda v: f"{v:+.{digits}f}" if abs(v) > 1e-9 else "0", fontsize=6.5, colors=CONTOUR,
        inline=True, manual=False if places is None else list(places),
    ))  # fmt: skip


def _without_specks(lines: ContourSet, least_yd: float) -> None:
    """Take away closed rings that are smaller than some yards across and along."""
    from matplotlib.path import Path

    kept = []
    for path in lines.get_paths():
        parts = [np.asarray(part) for part in path.to_polygons(closed_only=False)]
        large = [Path(part) for part in parts if len(part) > 1 and not _is_speck(part, least_yd)]
        kept.append(Path.make_compound_path(*large) if large else Path(np.empty((0, 2))))
    lines.set_paths(kept)


def _is_speck(part: np.ndarray, least_yd: float) -> bool:
    return bool(np.allclose(part[0], part[-1]) and np.ptp(part, axis=0).max() < least_yd)


CROSS_PT = 9.0
"""Side of the square that the cross needs for itself [pt]."""


def _thin(ax: Axes, texts: Sequence[Text], cross_yd: tuple[float, float]) -> list[Text]:
    """Take away numbers on lines that would touch another or the cross, or leave the drawing; the others."""
    from matplotlib.transforms import Bbox

    inside = ax.get_window_extent()
    half = 0.5 * CROSS_PT / 72.0 * ax.figure.dpi
    clear = MARGIN_PT / 72.0 * ax.figure.dpi  # to each side: numbers that touch are read as one
    x, y = ax.transData.transform(cross_yd)
    taken = [Bbox.from_extents(x - half, y - half, x + half, y + half)]
    kept = []
    for text in texts:
        box = text.get_window_extent().padded(clear)
        out = box.x0 < inside.x0 or box.x1 > inside.x1 or box.y0 < inside.y0 or box.y1 > inside.y1
        if out or any(box.overlaps(other) for other in taken):
            text.remove()
        else:
            taken.append(box)
            kept.append(text)
    return kept
