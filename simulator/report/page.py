"""The page a picture stands on, and writing it to a file."""

from __future__ import annotations

import functools
import os
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, ParamSpec, TypeVar

import shapely

from ..errors import FileError, UsageError
from ..files import written_whole
from ..hole.surfaces import Surface
from .palette import GROUND, STYLE

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.text import Text

P = ParamSpec("P")
T = TypeVar("T")

SUFFIXES = ("png", "svg", "pdf")
"""Kinds of picture that can be written."""

PAGE_IN, EDGE_IN = 3.6, 0.1
"""Width of the page and its margin [in]: a phone held upright."""

LEAST_MAP_IN, MOST_MAP_IN = 3.0, 5.4
"""Height of the drawing [in]."""

GAP_IN = 0.07
"""Between title, drawing, keys and footnote [in]."""

UNDATED: dict[str, dict[str, Any]] = {"png": {}, "svg": {"Date": None}, "pdf": {"CreationDate": None}}
"""What is said of a picture inside its file: no date, so that the same answer gives the same bytes."""

DPI = 300
"""Dots per inch of a PNG: 1080 across."""


def new_figure(wide_in: float, tall_in: float, dpi: float = DPI) -> Figure:
    """An empty page."""
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    figure = Figure(figsize=(wide_in, tall_in), dpi=dpi)
    FigureCanvasAgg(figure)
    return figure


def figure_of(artist: Artist) -> Figure:
    """The page that something is drawn on."""
    figure = artist.get_figure(root=True)
    assert figure is not None
    return figure


def in_style(draw: Callable[P, T]) -> Callable[P, T]:
    """What draws or writes, in the one look of every picture, whatever settings its caller has made."""

    @functools.wraps(draw)
    def styled(*args: P.args, **more: P.kwargs) -> T:
        import matplotlib

        with matplotlib.rc_context(fname=STYLE):
            return draw(*args, **more)

    return styled


def own_axes(ax: Axes | None, tall_in: float = 4.4, wide_in: float = PAGE_IN) -> Axes:
    """The axes given, or new ones on a page of their own."""
    return new_figure(wide_in, tall_in).add_axes((0.08, 0.06, 0.89, 0.88)) if ax is None else ax


def numbered(ax: Axes, size: float = 6.0) -> None:
    """Ticks and numbers on both axes: the maps have none."""
    ax.tick_params(
        left=True, bottom=True, labelleft=True, labelbottom=True, labelsize=size, length=2, pad=1.5
    )


def frame(ax: Axes, x0: float, x1: float, y0: float, y1: float) -> None:
    """Show at least a box of the hole frame [yd], filling the axes at equal aspect.

    What is not drawn is rough, and a map has no ticks, whoever made the axes.
    """
    ax.set_facecolor(GROUND[Surface.ROUGH].fill)
    ax.tick_params(left=False, bottom=False, labelleft=False, labelbottom=False)
    box = ax.get_window_extent()
    shape = box.height / box.width
    high = max(y1 - y0, (x1 - x0) * shape)
    wide = high / shape
    middle_x, middle_y = (x0 + x1) / 2.0, (y0 + y1) / 2.0
    ax.set_aspect("equal", adjustable="datalim")
    ax.set_xlim(middle_x - wide / 2.0, middle_x + wide / 2.0)
    ax.set_ylim(middle_y - high / 2.0, middle_y + high / 2.0)
    ax.set_autoscale_on(False)


def map_in(
    extent: tuple[float, float, float, float], wide_in: float, most_in: float, least_in: float = 0.0
) -> float:
    """Height of a map of such a width that just shows an extent, within limits [in].

    Parameters
    ----------
    extent : (float, float, float, float)
        Least and greatest x, least and greatest y [yd].
    """
    x0, x1, y0, y1 = extent
    return min(max(wide_in * (y1 - y0) / (x1 - x0), least_in), most_in)


def view_box(ax: Axes) -> shapely.Polygon:
    """What the axes show, as a box in data units."""
    (x0, x1), (y0, y1) = ax.get_xlim(), ax.get_ylim()
    return shapely.box(x0, y0, x1, y1)


def make_page(tall_over_wide: float) -> Axes:
    """A page with axes as wide as it allows; its height is settled by `fit_page`."""
    wide = PAGE_IN - 2.0 * EDGE_IN
    tall = min(max(wide * tall_over_wide, LEAST_MAP_IN), MOST_MAP_IN)
    figure = new_figure(PAGE_IN, 2.0 * MOST_MAP_IN)
    return figure.add_axes(_share(figure, EDGE_IN, MOST_MAP_IN, wide, tall))


def fit_page(ax: Axes, title: Text, below_in: float) -> None:
    """Give the page the height that title, drawing and what stands below it need."""
    figure = figure_of(title)
    tall = ax.get_position().height * figure.get_size_inches()[1]
    top = title.get_window_extent().height / figure.dpi + GAP_IN
    figure.set_size_inches(PAGE_IN, top + tall + below_in + 2.0 * EDGE_IN)
    ax.set_position(_share(figure, EDGE_IN, below_in + EDGE_IN, PAGE_IN - 2.0 * EDGE_IN, tall))


def _share(
    figure: Figure, left: float, bottom: float, wide: float, tall: float
) -> tuple[float, float, float, float]:
    """A box in inches as shares of the figure."""
    width, height = figure.get_size_inches()
    return left / width, bottom / height, wide / width, tall / height


def check_plot_path(path: str | Path) -> str:
    """The suffix of a picture, once it is sure that it can be written there.

    Raises
    ------
    UsageError
        In one line, before any work is done.
    """
    target = Path(path)
    suffix = target.suffix.lower().lstrip(".")
    if suffix not in SUFFIXES:
        allowed = ", ".join(f".{s}" for s in SUFFIXES)
        raise UsageError(f"plot {str(path)!r}: allowed are files ending in {allowed}")
    try:
        if "\0" in str(target):
            raise ValueError("a zero byte in its name")
        if target.is_dir():
            raise UsageError(f"plot {str(path)!r}: that is a folder")
        if not target.parent.is_dir():
            raise UsageError(f"plot {str(path)!r}: there is no folder {str(target.parent)!r}")
        if target.exists() and not target.is_file():
            raise UsageError(f"plot {str(path)!r}: that is no file")
        handle, probe = tempfile.mkstemp(dir=target.parent, prefix=".holesim-")
        os.close(handle)
        os.unlink(probe)
    except (OSError, ValueError) as error:
        raise _unwritable(path, error) from None
    return suffix


def write_page(figure: Figure, path: str | Path) -> None:
    """Write a page beside its place and rename it, so that a broken file is never left.

    Raises
    ------
    UsageError
        A suffix that is none of `SUFFIXES`, or a place that cannot be written.
    """
    target = Path(path)
    suffix = check_plot_path(target)
    try:
        with written_whole(target) as draft:
            figure.savefig(draft, format=suffix, dpi=DPI, metadata=UNDATED[suffix])
    except FileError as error:
        raise UsageError(f"plot {error}") from None


def _unwritable(path: str | Path, error: Exception) -> UsageError:
    return UsageError(f"plot {str(path)!r} cannot be written: {getattr(error, 'strerror', None) or error}")
