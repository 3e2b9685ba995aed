"""The picture of an answer: hole, aim lines, a hundred finishes of the recommended and of the runner-up."""

from __future__ import annotations

from collections.abc import Sequence
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
from .figures import name_said, plain_spaces
from .groundkey import ground_key
from .labels import Labels
from .page import GAP_IN, check_plot_path, figure_of, fit_page, in_style, make_page, write_page
from .palette import FAINT
from .sheet import HANDLE_EM, KEY_EM, wrapped
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes
    from matplotlib.legend import Legend
    from matplotlib.text import Text
    from matplotlib.transforms import Transform

MARK_REACH_YD = 40.0
"""The picture grows by up to this to show a mark; one farther off would make the hole small [yd]."""

TITLE_PT, KEY_PT, FOOT_PT = 8.0, 6.5, 5.5
"""Sizes of the words round the drawing [pt]."""

GROUND_COLUMN_IN, GROUND_COLUMNS = 1.1, 3
"""Width of a column of the key to the ground [in], and how many there are at the most."""

READING = "Crosses: where each shot is aimed to land. Dotted: line of play. Arcs: {unit} from the ball."


@in_style
def draw_plan(answer: Answer, *, ax: Axes | None = None, units: Units = YARDS) -> Axes:
    """Draw an answer.

    Parameters
    ----------
    answer : Answer
    ax : Axes, optional
        Of its final size; drawn into, with the title above and the keys below it, as wide as it is. Without
        one a page of its own is made.
    units : Units
        Of the words on the picture.

    Returns
    -------
    Axes
        Equal aspect, yards in the hole frame. `ax.figure` is the page.
    """
    extent = _extent(answer)
    axes = make_page((extent[3] - extent[2]) / (extent[1] - extent[0])) if ax is None else ax
    seen = groundplot.draw_hole(axes, answer.hole, extent)
    _draw_on_top(answer, axes, units)
    title = axes.set_title(_title(answer, units, _wide_in(axes)), loc="left", size=TITLE_PT)
    below_in = _keys(answer, axes, seen, units)
    if ax is None:
        fit_page(axes, title, below_in)
    return axes


@in_style
def save_plan(answer: Answer, path: str | Path, units: Units = YARDS) -> None:
    """Write the picture of an answer; PNG, SVG or PDF by the suffix.

    Raises
    ------
    UsageError
        A suffix that is none of these, or a place that cannot be written.
    """
    check_plot_path(path)
    figure = figure_of(draw_plan(answer, units=units))
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


def _wide_in(ax: Axes) -> float:
    """Width of the axes [in]."""
    return float(ax.get_window_extent().width) / figure_of(ax).dpi


def _title(answer: Answer, units: Units, wide_in: float) -> str:
    hole = answer.hole
    lines = (
        f"{hole.name}, par {hole.par}, {units.length(hole.length_yd)}",
        f"{name_said(answer.player, 'handicap ')}, from {units.sentence(answer.start.words)}",
        day_told(answer.conditions, answer.best.aim_bearing_deg, "the shot", units).rstrip("."),
    )
    return _broken("\n".join(filter(None, lines)), TITLE_PT, wide_in, "bold")


def _broken(words: str, size: float, wide_in: float, weight: str = "normal") -> str:
    """Words in lines no wider than some inches."""
    return plain_spaces("\n".join(wrapped(words, size, wide_in, weight)))


def _keys(answer: Answer, ax: Axes, seen: list[Surface], units: Units) -> float:
    """Both legends and the footnote below the axes; returns how far down they reach [in]."""
    below, wide = GAP_IN, _wide_in(ax)
    words_in = wide - KEY_EM * KEY_PT / 72.0
    lines = [
        shotplot.key_line(look, _broken(shotplot.key_words(answer, index, units), KEY_PT, words_in))
        for index, look in shotplot.looks(answer)
    ]
    shots = _legend(ax, lines, below, columns=1)
    below += _height_in(shots) + GAP_IN
    columns = int(np.clip(wide / GROUND_COLUMN_IN, 1, GROUND_COLUMNS))
    ground = _legend(ax, ground_key(seen), below, columns)
    below += _height_in(ground) + GAP_IN
    reading = (READING.format(unit=units.name), falls_said(ax), RULES, *map_data(answer.hole))
    said = " ".join(filter(None, reading))
    words = _broken(said, FOOT_PT, wide)
    foot = ax.text(0.0, 0.0, words, transform=_down(ax, below), va="top", size=FOOT_PT, color=FAINT)
    return below + _height_in(foot)


def _legend(ax: Axes, handles: Sequence[Artist], below_in: float, columns: int) -> Legend:
    from matplotlib.legend import Legend

    words = [str(handle.get_label()) for handle in handles]
    legend = Legend(
        ax, handles, words, loc="upper left", bbox_to_anchor=(0.0, 0.0), ncols=columns, alignment="left",
        bbox_transform=_down(ax, below_in), handlelength=HANDLE_EM, fontsize=KEY_PT,
    )  # fmt: skip
    ax.add_artist(legend)  # ax.legend would let the second take the place of the first
    return legend


def _down(ax: Axes, below_in: float) -> Transform:
    """The lower left corner of the axes, moved down by some inches."""
    from matplotlib.transforms import ScaledTranslation

    return ax.transAxes + ScaledTranslation(0.0, -below_in, figure_of(ax).dpi_scale_trans)


def _height_in(artist: Artist | Text) -> float:
    return float(artist.get_window_extent().height) / figure_of(artist).dpi
