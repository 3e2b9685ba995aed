"""The arrows on a picture that show which way a green falls."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import shapely

from ..hole.model import Hole
from ..hole.surfaces import Surface
from .labels import Labels
from .page import figure_of, view_box
from .palette import INK

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.text import Annotation

FALL_ARROW_YD = 4.0
"""Half the length of the arrow that shows how a green falls [yd]."""

FALLS = "Arrow: the way the green falls."
"""Said by `falls_said`."""

LEAST_ARROW_PT = 12.0
"""A shorter arrow is none that anybody could read [points]."""


def draw_falls(ax: Axes, hole: Hole) -> None:
    """A small arrow down the fall line of every sloped green, or part of one, where it can be read."""
    (x0, _), (x1, _) = ax.transData.transform([(0.0, 0.0), (2.0 * FALL_ARROW_YD, 0.0)])
    if abs(x1 - x0) * 72.0 / figure_of(ax).dpi < LEAST_ARROW_PT:
        return
    for feature in hole.features:
        if feature.surface is not Surface.GREEN or feature.slope is None or feature.slope.percent == 0.0:
            continue
        seen = hole.uncovered(feature)  # a tier has an arrow of its own
        if seen.is_empty:
            continue
        bearing = math.radians(feature.slope.falls_bearing_deg)
        middle = _off_the_pin(seen, hole)
        dx, dy = FALL_ARROW_YD * math.sin(bearing), FALL_ARROW_YD * math.cos(bearing)
        ax.annotate(
            "", (middle.x + dx, middle.y + dy), (middle.x - dx, middle.y - dy),
            arrowprops={"arrowstyle": "->", "color": INK, "linewidth": 0.7}, zorder=2.5,
        )  # fmt: skip


def _off_the_pin(area: shapely.Geometry, hole: Hole) -> shapely.Point:
    """A place for an arrow on a green: its middle, or where there is room left or right of the flag."""
    middle, pin = area.representative_point(), shapely.Point(*hole.pin.xy_yd)
    if middle.distance(pin) > 3.0 * FALL_ARROW_YD:
        return middle
    inner = area.buffer(-1.5 * FALL_ARROW_YD).difference(pin.buffer(2.0 * FALL_ARROW_YD))
    return middle if inner.is_empty else inner.representative_point()


def falls_shown(ax: Axes) -> list[Annotation]:
    """Arrows down the fall of a green that a picture shows."""
    from matplotlib.text import Annotation

    arrows = [text for text in ax.texts if isinstance(text, Annotation) and text.arrow_patch is not None]
    seen = view_box(ax)
    return [arrow for arrow in arrows if seen.contains(shapely.Point(arrow.xy))]


def falls_said(ax: Axes) -> str:
    """What a page says of the arrows on its picture; empty where there is none."""
    return FALLS if falls_shown(ax) else ""


def keep_off_falls(ax: Axes, labels: Labels) -> None:
    """Keep words off the arrows of `falls_shown`."""
    for arrow in falls_shown(ax):
        labels.keep_off(arrow.xy, arrow.xyann, 2.0)
