"""The picture of an answer: hole, aim lines, a hundred finishes of the recommended and of the runner-up."""

from __future__ import annotations

import os
import tempfile
import textwrap
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from ..errors import UsageError
from ..hole.surfaces import Surface
from ..strategy.result import Answer
from . import groundplot, phrases, shotplot
from .chosen import PENALTY, TROUBLE
from .labels import Labels
from .palette import FAINT, STYLE

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SUFFIXES = ("png", "svg", "pdf")
"""Kinds of picture that can be written."""

PAGE_IN, EDGE_IN = 3.6, 0.1
"""Width of the page and its margin [in]: a phone held upright."""

LEAST_MAP_IN, MOST_MAP_IN = 3.0, 5.0
"""Height of the drawing [in]."""

DPI = 300
"""Dots per inch of a PNG: 1080 across."""

GAP_IN = 0.07
"""Between drawing, legends and footnote [in]."""

MARGIN_YD = 14.0
"""Ground shown round everything that matters [yd]."""

FOOT_COLUMNS = 78
"""Letters in a line of the footnote, at its size on the page."""


def draw_plan(answer: Answer, *, ax: Axes | None = None) -> Axes:
    """Draw an answer.

    Parameters
    ----------
    answer : Answer
    ax : Axes, optional
        Drawn into as it is (the keys go below it); without one, a page of its own is made.

    Returns
    -------
    Axes
        Equal aspect, yards in the hole frame. `ax.figure` is the page.
    """
    import matplotlib

    with matplotlib.rc_context(fname=STYLE):
        own = ax is None
        axes = _page(answer) if ax is None else ax
        _draw(answer, axes)
        depth_in = _keys(answer, axes)
        if own:
            _fit_page(axes, depth_in)
    return axes


def save_plan(answer: Answer, path: str | Path) -> None:
    """Write the picture of an answer; PNG, SVG or PDF by the suffix.

    The file is written beside its place and renamed, so a broken one is never left.

    Raises
    ------
    UsageError
        A suffix that is none of these, or a place that cannot be written.
    """
    import matplotlib

    target = Path(path)
    suffix = check_plot_path(target)
    with matplotlib.rc_context(fname=STYLE):
        figure = draw_plan(answer).figure
        stamp = {"png": {}, "svg": {"Date": None}, "pdf": {"CreationDate": None}}[suffix]
        handle, temporary = tempfile.mkstemp(dir=target.parent, prefix=".holesim-", suffix=f".{suffix}")
        try:
            with os.fdopen(handle, "wb") as file:
                figure.savefig(file, format=suffix, dpi=DPI, metadata=stamp)
            os.chmod(temporary, 0o666 & ~_umask())
            os.replace(temporary, target)
        except OSError as error:
            raise UsageError(f"plot {str(path)!r} cannot be written ({error.strerror})") from None
        finally:
            Path(temporary).unlink(missing_ok=True)


def check_plot_path(path: str | Path) -> str:
    """The suffix of a picture that can be written there.

    Raises
    ------
    UsageError
        In one line, before any work is done.
    """
    target = Path(path)
    suffix = target.suffix.lower().lstrip(".")
    if suffix not in SUFFIXES:
        allowed = ", ".join(f".{s}" for s in SUFFIXES)
        raise UsageError(f"plot {str(path)!r}: found {suffix or 'no suffix'!r}; allowed: a file ending in {allowed}")
    try:
        if target.is_dir():
            raise UsageError(f"plot {str(path)!r} is a folder; allowed: a file ending in .{suffix}")
        if not target.parent.is_dir():
            raise UsageError(f"plot {str(path)!r}: there is no folder {str(target.parent)!r}")
        handle, probe = tempfile.mkstemp(dir=target.parent, prefix=".holesim-")
        os.close(handle)
        os.unlink(probe)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise UsageError(f"plot {str(path)!r} cannot be written ({reason})") from None
    return suffix


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


def _page(answer: Answer) -> Axes:
    """A page with axes of the shape that the hole wants; its height is settled by `_fit_page`."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    x0, x1, y0, y1 = _extent(answer)
    wide = PAGE_IN - 2.0 * EDGE_IN
    tall = min(max(wide * (y1 - y0) / (x1 - x0), LEAST_MAP_IN), MOST_MAP_IN)
    figure = Figure(figsize=(PAGE_IN, 2.0 * MOST_MAP_IN), dpi=DPI)
    FigureCanvasAgg(figure)
    return figure.add_axes(_share(figure, EDGE_IN, MOST_MAP_IN, wide, tall))


def _share(figure: Figure, left: float, bottom: float, wide: float, tall: float) -> tuple[float, float, float, float]:
    """A box in inches as shares of the figure."""
    width, height = figure.get_size_inches()
    return left / width, bottom / height, wide / width, tall / height


def _fit_page(ax: Axes, depth_in: float) -> None:
    """Give the page the height that title, drawing and keys need."""
    figure = ax.get_figure(root=True)
    assert figure is not None
    title_in = ax.title.get_window_extent().height if not ax._left_title.get_text() else (  # type: ignore[attr-defined]
        ax._left_title.get_window_extent().height)  # type: ignore[attr-defined]
    top = title_in / figure.dpi + 2.0 * GAP_IN + EDGE_IN
    tall = ax.get_position().height * figure.get_size_inches()[1]
    height = top + tall + depth_in + EDGE_IN
    figure.set_size_inches(PAGE_IN, height)
    ax.set_position(_share(figure, EDGE_IN, depth_in + EDGE_IN, PAGE_IN - 2.0 * EDGE_IN, tall))


def _extent(answer: Answer) -> tuple[float, float, float, float]:
    """Least and greatest x and y of what must be seen [yd]."""
    hole, start = answer.hole, answer.start
    here, _ = hole.station_offset(start.x_yd, start.y_yd)
    line = [p for p in hole.line if hole.station_offset(*p)[0] > here]
    dots = [shotplot.hundred(answer, answer.alternatives[k]) for k in shotplot.drawn(answer)]
    gx0, gy0, gx1, gy1 = hole.green.bounds
    rest = [(start.x_yd, start.y_yd), (hole.pin.x_yd, hole.pin.y_yd), (gx0, gy0), (gx1, gy1), *line]
    xy = np.vstack([*dots, np.array(rest)])
    low, high = xy.min(axis=0) - MARGIN_YD, xy.max(axis=0) + MARGIN_YD
    return float(low[0]), float(high[0]), float(low[1]), float(high[1])


def _draw(answer: Answer, ax: Axes) -> None:
    hole, start = answer.hole, answer.start
    x0, x1, y0, y1 = _extent(answer)
    ax.set_xlim(x0, x1)
    ax.set_ylim(y0, y1)
    ax.set_aspect("equal", adjustable="datalim")
    ax.apply_aspect()
    ax.set_autoscale_on(False)
    ax._holesim_seen = groundplot.draw_ground(ax, hole)  # type: ignore[attr-defined]
    groundplot.draw_line_of_play(ax, hole)
    shots = shotplot.looks(answer)
    for order, (index, look) in enumerate(reversed(shots)):
        shotplot.draw_shot(ax, answer, index, look, 0.3 * order)
    dots = [shotplot.hundred(answer, answer.alternatives[k]) for k, _ in shots]
    labels = Labels(ax, np.vstack(dots))
    groundplot.draw_marks(ax, hole, start, labels)
    groundplot.draw_arcs(ax, hole, start, labels)
    groundplot.draw_names(ax, hole, _names(answer), labels)
    player = answer.player
    of = f" (handicap {player.handicap:g})" if player.handicap is not None else ""
    words = f"{hole.name}, par {hole.par}, {hole.length_yd:.0f} yd\n{player.name}{of}, from {start.words}"
    ax.set_title("\n".join(line for part in words.split("\n") for line in textwrap.wrap(part, 52)), loc="left")
