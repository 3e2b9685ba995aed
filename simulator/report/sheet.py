"""A page made from the top down: words, drawings, keys and a foot, each where the one before ends."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ..errors import UsageError
from ..files import written_whole
from .figures import HELD, plain_spaces
from .page import DPI, EDGE_IN, GAP_IN, PAGE_IN, UNDATED, check_plot_path, in_style, new_figure
from .palette import FAINT, INK

if TYPE_CHECKING:
    from matplotlib.artist import Artist
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

TALLEST_IN = 24.0
"""Height of a page while it is made [in]; it is cut to what is on it."""

LINE = 1.28
"""Height of a line of words over the size of its letters."""

_OF_UNIT = re.compile(r"(?<=\d) (?=(?:yd|m|ft)\b)")
"""The blank between a number and its unit."""

KEY_PT = 6.5
"""Letters of a key [pt]."""

HANDLE_EM, KEY_EM = 2.6, 3.2
"""Width of the line or patch of a key, and of that with the gap behind it, in sizes of its letters (the gap
is `legend.handletextpad` of the style)."""

ROUNDING_IN = 1e-6
"""Words that are as wide as their column are not too wide for it [in]."""


class Sheet:
    """A page under construction; use inside `page.in_style`.

    Parameters
    ----------
    title : str
    wide_in, tall_in : float
        Size of the page; without a height it is as tall as what is put on it.
    edge_in : float
        Its margins [in].
    size : float
        Of the title's letters [pt].
    dpi : float
        Dots per inch of a PNG of it.
    """

    def __init__(
        self,
        title: str,
        wide_in: float = PAGE_IN,
        tall_in: float | None = None,
        *,
        edge_in: float = EDGE_IN,
        size: float = 9.0,
        dpi: float = DPI,
    ) -> None:
        self.wide_in, self.tall_in, self.edge_in = wide_in, tall_in, edge_in
        self.figure = new_figure(wide_in, tall_in or TALLEST_IN, dpi)
        self.down_in = edge_in
        self._placed: list[tuple[Artist, tuple[float, float, float, float]]] = []
        self.words(title, size, weight="bold")

    @property
    def inner_in(self) -> float:
        """Width between the margins [in]."""
        return self.wide_in - 2.0 * self.edge_in

    def words(
        self,
        words: str,
        size: float = 7.5,
        *,
        left_in: float = 0.0,
        wide_in: float | None = None,
        **style: Any,
    ) -> None:
        """A paragraph below what is there, broken where the page ends."""
        lines = wrapped(words, size, wide_in or self.inner_in - left_in, style.get("weight", "normal"))
        for line in lines:
            self.put(line, size, left_in, **style)
            self.down_in += line_in(size)
        self.down_in += GAP_IN / 2.0

    def put(self, words: str, size: float, left_in: float, below_in: float = 0.0, **style: Any) -> None:
        """One line where the page has come to, or so far below; the page does not move on."""
        text = self.figure.text(0, 0, plain_spaces(words), size=size, va="top", **{"color": INK, **style})
        self._place(text, (self.edge_in + left_in, self.down_in + below_in, 0.0, 0.0))

    def box(
        self, left_in: float, wide_in: float, tall_in: float, below_in: float = 0.0, **style: Any
    ) -> None:
        """A rectangle behind the words whose upper edge is there; the page does not move on."""
        from matplotlib.patches import Rectangle

        rect = (self.edge_in + left_in, self.down_in + below_in, wide_in, tall_in)
        box = Rectangle((0, 0), 1, 1, transform=self.figure.transFigure, **style)
        self.figure.add_artist(box)
        left, bottom, wide, tall = self._share(rect)
        box.set_bounds(left, bottom, wide, tall)
        self._place(box, rect)

    def table(self, rows: Sequence[Sequence[str]], at_in: Sequence[float], size: float = 6.5) -> None:
        """Rows of words, the first the heads; a column that starts at a negative place ends there instead."""
        for number, row in enumerate(rows):
            colour = FAINT if number == 0 else INK
            for words, at in zip(row, at_in, strict=True):
                self.put(words, size, abs(at), ha="right" if at < 0.0 else "left", color=colour)
            self.down_in += line_in(size)
        self.down_in += GAP_IN / 2.0

    def axes(self, tall_in: float, left_in: float = 0.0, wide_in: float | None = None) -> Axes:
        """Axes whose upper edge is where the page has come to; the page does not move on (see `skip`)."""
        rect = (self.edge_in + left_in, self.down_in, wide_in or self.inner_in - left_in, tall_in)
        ax = self.figure.add_axes(self._share(rect))
        self._place(ax, rect)
        return ax

    def skip(self, tall_in: float) -> None:
        """Move on down the page."""
        self.down_in += tall_in + GAP_IN

    def key(self, handles: Sequence[Any], columns: int = 1) -> None:
        """A key below what is there."""
        if not handles:
            return
        ax = self.axes(1.0)
        ax.set_axis_off()
        legend = ax.legend(
            handles=list(handles), loc="upper left", ncols=columns, alignment="left", handlelength=HANDLE_EM,
            fontsize=KEY_PT, bbox_to_anchor=(0.0, 1.0),
        )  # fmt: skip
        self.skip(float(legend.get_window_extent().height) / self.figure.dpi)

    def foot(self, words: str, size: float = 5.5) -> None:
        """Words at the end of the page; at its bottom where its height is fixed."""
        if self.tall_in is not None:
            lines = wrapped(words, size, self.inner_in, "normal")
            self.down_in = self.tall_in - self.edge_in - len(lines) * line_in(size)
        self.words(words, size, color=FAINT)

    def done(self) -> Figure:
        """The finished page."""
        tall = self.tall_in or self.down_in + self.edge_in
        self.figure.set_size_inches(self.wide_in, tall)
        for artist, rect in self._placed:
            share = self._share(rect)
            if hasattr(artist, "set_yticks"):
                artist.set_position(share)  # type: ignore[attr-defined]
            elif hasattr(artist, "set_bounds"):
                artist.set_bounds(*share)
            else:
                artist.set_position((share[0], share[1] + share[3]))  # type: ignore[attr-defined]
        return self.figure

    def _place(self, artist: Artist, rect_in: tuple[float, float, float, float]) -> None:
        self._placed.append((artist, rect_in))

    def _share(self, rect_in: tuple[float, float, float, float]) -> tuple[float, float, float, float]:
        """Left, top, width and height in inches from the upper left corner, as shares of the figure."""
        width, height = self.figure.get_size_inches()
        left, top, wide, tall = rect_in
        return left / width, 1.0 - (top + tall) / height, wide / width, tall / height


def line_in(size: float) -> float:
    """Height of a line of words [in]."""
    return size * LINE / 72.0


def width_in(word: str, size: float, weight: str = "normal") -> float:
    """Width of some letters as they are drawn [in]."""
    return _width_of(word, weight) * size / 72.0


@lru_cache(maxsize=4096)
def _width_of(word: str, weight: str) -> float:
    """The same as a share of their size, which it does not go by: pages are tried at many sizes."""
    from matplotlib.font_manager import FontProperties
    from matplotlib.textpath import TextToPath

    size = TextToPath.FONT_SCALE
    font = FontProperties(family="DejaVu Sans", size=size, weight=weight)
    return float(TextToPath().get_text_width_height_descent(word, font, ismath=False)[0]) / size


def wrapped(words: str, size: float, wide_in: float, weight: str = "normal") -> list[str]:
    """Lines no wider than some inches; a line break in the words stays one.

    They are broken at blanks, but not between a number and its unit; a word that is wider yet behind a
    hyphen, or where it has to be.
    """
    words = _OF_UNIT.sub(HELD, words)
    wide_in += ROUNDING_IN
    lines: list[str] = []
    for paragraph in words.split("\n"):
        line = ""
        for word in paragraph.split(" "):
            longer = f"{line} {word}" if line else word
            if line and width_in(longer, size, weight) > wide_in:
                lines.append(line)
                line = word
            else:
                line = longer
            while len(line) > 1 and width_in(line, size, weight) > wide_in:
                cut = _cut(line, size, wide_in, weight)
                lines.append(line[:cut])
                line = line[cut:]
        lines.append(line)
    return lines


def _cut(word: str, size: float, wide_in: float, weight: str) -> int:
    """How many letters of a word that is too wide go on a line."""
    most = max(bisect_right(range(1, len(word)), wide_in, key=lambda k: width_in(word[:k], size, weight)), 1)
    return max(word.rfind("-", 0, most), word.rfind(HELD, 0, most)) + 1 or most


def hole_names(numbers: Sequence[int | None]) -> list[str] | None:
    """Names of holes' pages by their numbers, "hole-07"; None where they have none, or two have the same."""
    known = [number for number in numbers if number is not None]
    if not known or len(set(known)) < len(numbers):
        return None
    return [f"hole-{number:02d}" for number in known]


@in_style
def write_pages(
    pages: Sequence[tuple[str, Figure]], path: str | Path, names: Sequence[str] | None = None
) -> list[Path]:
    """Write named pages: one PDF of all of them, or a PNG or SVG file for each, by the suffix.

    Parameters
    ----------
    names : sequence of str, optional
        Of the files, in place of the page's place in the book and its name.

    Returns
    -------
    list of Path
        What was written: ``lesson.pdf``; ``lesson.png`` for one page, ``lesson-1-plan.png`` and so on for
        more than one.

    Raises
    ------
    UsageError
        A suffix that is none of these, or a place that cannot be written.
    """
    target = Path(path)
    suffix = check_plot_path(target)
    if not pages:
        raise UsageError(f"{path}: no page to write")
    if suffix == "pdf":
        from matplotlib.backends.backend_pdf import PdfPages

        with written_whole(target) as draft, PdfPages(draft, metadata=UNDATED[suffix]) as book:
            for _, figure in pages:
                book.savefig(figure)
        return [target]
    written = []
    for number, (name, figure) in enumerate(pages, start=1):
        called = f"{number}-{name}" if names is None else names[number - 1]
        one = target.with_name(f"{target.stem}-{called}{target.suffix}")
        one = one if len(pages) > 1 else target
        with written_whole(one) as draft:
            figure.savefig(draft, format=suffix, dpi="figure", metadata=UNDATED[suffix])
        written.append(one)
    return written


def left_from_before(written: Sequence[Path], path: str | Path) -> list[Path]:
    """Pages under the same name that are there and were not written now: those of an earlier, longer run.

    Only files named as `write_pages` names them; nothing is removed, because somebody may have made them.

    Parameters
    ----------
    written : sequence of Path
        What `write_pages` returned.
    path : str or Path
        As it was asked for.
    """
    target = Path(path)
    if target.suffix.casefold() == ".pdf":
        return []
    page = re.compile(rf"{re.escape(target.stem)}-(?:\d+-.+|hole|hole-\d+){re.escape(target.suffix)}")
    mine = {one.name for one in written}
    there = sorted(one for one in target.parent.iterdir() if page.fullmatch(one.name))
    return [one for one in there if one.name not in mine]
