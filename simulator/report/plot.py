"""The picture of an answer: hole, aim lines, a hundred finishes of the recommended and of the runner-up."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..hole.surfaces import TROUBLE, Surface
from ..strategy.result import Answer
from . import groundplot, shotplot
from .cautions import RULES
from .chosen import PENALTY, leading
from .credits import map_data
from .daywords import day_told
from .falls import falls_said, keep_off_falls
from .figures import name_said
from .groundkey import ground_key
from .labels import Labels
from .page import GAP_IN, check_plot_path, figure_of, fit_page, make_page, write_page
from .palette import FAINT, STYLE
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes
    from matplotlib.legend import Legend
    from matplotlib.text import Text
    from matplotlib.transforms import Transform

MARK_REACH_YD = 40.0
"""The picture grows by up to this to show a mark; one farther off would make the hole small [yd]."""

TITLE_COLUMNS, FOOT_COLUMNS = 48, 78
"""Letters in a line of the title and of the footnote, at their sizes on the page."""

GROUND_COLUMNS = 3
"""Columns of the key to the ground."""

READING = "Crosses: where each shot is aimed to land. Dotted: line of play. Arcs: {unit} from the ball."


def draw_plan(answer: Answer, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """Draw an answer.

    Parameters
    ----------
    answer : Answer
    ax : Axes, optional
        Drawn into, with the keys below it; without one, a page of its own is made.
    units : Units
        Of the words on the picture.

    Returns
    -------
    Axes
        Equal aspect, yards in the hole frame. `ax.figure` is the page.
    """
    import matplotlib

    with matplotlib.rc_context(fname=STYLE):
        extent = _extent(answer)
        axes = make_page((extent[3] - extent[2]) / (extent[1] - extent[0])) if ax is None else ax
        seen = groundplot.draw_hole(axes, answer.hole, extent)
        _draw_on_top(answer, axes, units)
        title = axes.set_title(_title(answer, units), loc="left")
        below_in = _keys(answer, axes, seen, units)
        if ax is None:
            fit_page(axes, title, below_in)
    return axes


def save_plan(answer: Answer, path: str | Path, units: Units = YARDS) -> None:
    """Write the picture of an answer; PNG, SVG or PDF by the suffix.

    Raises
    ------
    UsageError
        A suffix that is none of these, or a place that cannot be written.
    """
    import matplotlib

    check_plot_path(path)
    figure = figure_of(draw_plan(answer, units=units))
    with matplotlib.rc_context(fname=STYLE):
        write_page(figure, path)


def _extent(answer: Answer) -> tuple[float, float, float, float]:
    """Least and greatest x, least and greatest y of what must be seen, marks that are near too [yd]."""
    x0, x1, y0, y1 = shotplot.extent(answer, leading(answer))
    low, high = np.array([x0, y0]), np.array([x1, y1])
    marks = np.array([(m.x_yd, m.y_yd) for m in answer.hole.marks]).reshape(-1, 2)
    marks = marks[((marks > low - MARK_REACH_YD) & (marks < high + MARK_REACH_YD)).all(axis=1)]
    if len(marks):
        low = np.minimum(low, marks.min(axis=0) - shotplot.MARGIN_YD)
        high = np.maximum(high, marks.max(axis=0) + shotplot.MARGIN_YD)
    return float(low[0]), float(high[0]), float(low[1]), float(high[1])


def _draw_on_top(answer: Answer, ax: Axes, units: Units) -> None:
    """Shots, marks and words; the words last, where they cover least."""
    hole, start = answer.hole, answer.start
    for order, (index, look) in enumerate(reversed(shotplot.looks(answer))):
        shotplot.draw_shot(ax, answer, index, look, 0.3 * order)
    labels = Labels(ax, shotplot.words_avoid(answer, leading(answer)))
    keep_off_falls(ax, labels)
    groundplot.draw_marks(ax, hole, start, labels)
    groundplot.draw_aim_marks(ax, hole, labels)
    groundplot.draw_arcs(ax, hole, start, labels, units)
    groundplot.draw_names(ax, hole, _names(answer), labels)


def _names(answer: Answer) -> list[str]:
    """Areas named on the picture: what the drawn balls found, then penalty areas and boundaries."""
    found = {n for k in leading(answer) for n in shotplot.counts(answer, answer.alternatives[k])}
    features = answer.hole.features
    met = [f.name for f in features if f.surface in TROUBLE and f.name in found]
    return met + [f.name for f in features if f.surface in PENALTY and f.name not in met]


def _title(answer: Answer, units: Units) -> str:
    hole = answer.hole
    lines = (
        f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)}",
        f"{name_said(answer.player, 'handicap ')}, from {units.sentence(answer.start.words)}",
        day_told(answer.conditions, answer.best.aim_bearing_deg, "the shot", units).rstrip("."),
    )
    return "\n".join(part for line in lines for part in textwrap.wrap(line, TITLE_COLUMNS))


def _keys(answer: Answer, ax: Axes, seen: list[Surface], units: Units) -> float:
    """Both legends and the footnote below the axes; returns how far down they reach [in]."""
    below = GAP_IN
    entries = [shotplot.shot_key(answer, index, look, units) for index, look in shotplot.looks(answer)]
    shots = _legend(ax, [handle for handle, _ in entries], [words for _, words in entries], below, columns=1)
    below += _height_in(shots) + GAP_IN
    patches = ground_key(seen)
    names = [str(patch.get_label()) for patch in patches]
    ground = _legend(ax, patches, names, below, columns=GROUND_COLUMNS)
    below += _height_in(ground) + GAP_IN
    reading = (READING.format(unit=units.name), falls_said(ax), RULES, *map_data(answer.hole))
    said = " ".join(filter(None, reading))
    words = "\n".join(textwrap.wrap(said, FOOT_COLUMNS))
    foot = ax.text(0.0, 0.0, words, transform=_down(ax, below), va="top", fontsize=5.5, color=FAINT)
    return below + _height_in(foot)


def _legend(ax: Axes, handles: list, words: list[str], below_in: float, columns: int) -> Legend:
    from matplotlib.legend import Legend

    legend = Legend(
        ax, handles, words, loc="upper left", bbox_to_anchor=(0.0, 0.0), ncols=columns, alignment="left",
        bbox_transform=_down(ax, below_in), handlelength=2.6,
    )  # fmt: skip
    ax.add_artist(legend)  # ax.legend would let the second take the place of the first
    return legend


def _down(ax: Axes, below_in: float) -> Transform:
    """The lower left corner of the axes, moved down by some inches."""
    from matplotlib.transforms import ScaledTranslation

    return ax.transAxes + ScaledTranslation(0.0, -below_in, figure_of(ax).dpi_scale_trans)


def _height_in(artist: Artist | Text) -> float:
    return float(artist.get_window_extent().height) / figure_of(artist).dpi
