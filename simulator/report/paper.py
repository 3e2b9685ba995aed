"""Pages of paper that follow each other, each with its title and foot: what does not fit goes on the next."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from .page import GAP_IN
from .palette import FAINT
from .sheet import Sheet, line_in, wrapped

if TYPE_CHECKING:
    from matplotlib.figure import Figure

WIDE_IN, TALL_IN = 210.0 / 25.4, 297.0 / 25.4
"""A4 upright (ISO 216) [in]."""

MARGIN_IN = 0.45
"""Wider than the edge that a printer leaves blank, and room for a pin or a clip [in]."""

PAPER_DPI = 200
"""Dots per inch of a PNG: 1654 across; every page holds its dots until the last is written."""

TITLE_PT, SAID_PT, FOOT_PT = 14.0, 9.0, 7.0
"""Size of letters [pt]."""

INNER_IN = WIDE_IN - 2.0 * MARGIN_IN
"""Width between the margins [in]."""


class Paper:
    """Pages under construction; use inside `page.in_style`.

    Parameters
    ----------
    title, foot : str
        On every page; the number of the page is added where there is more than one.
    said : str
        Below the title of every page.
    """

    def __init__(self, title: str, foot: str, said: str = "") -> None:
        self.title, self.foot, self.said = title, foot, said
        foot_in = len(wrapped(self._foot(88, 88), FOOT_PT, INNER_IN)) * line_in(FOOT_PT)
        self.bottom_in = TALL_IN - MARGIN_IN - foot_in - 2.0 * GAP_IN
        self.sheets: list[Sheet] = []
        self.turn()

    @property
    def sheet(self) -> Sheet:
        """The page that is being made."""
        return self.sheets[-1]

    @property
    def left_in(self) -> float:
        """Height that is left on it [in]."""
        return self.bottom_in - self.sheet.down_in

    def turn(self) -> None:
        """Begin another page."""
        sheet = Sheet(self.title, WIDE_IN, TALL_IN, edge_in=MARGIN_IN, size=TITLE_PT, dpi=PAPER_DPI)
        if self.said:
            sheet.words(self.said, SAID_PT, color=FAINT)
        sheet.skip(0.0)
        self._top_in = sheet.down_in
        self.sheets.append(sheet)

    def room(self, tall_in: float) -> bool:
        """Begin another page, and say so, where this one has not so much height left."""
        if tall_in <= self.left_in or self.sheet.down_in <= self._top_in:
            return False
        self.turn()
        return True

    def words(self, words: str, size: float = SAID_PT, **style: Any) -> None:
        """A paragraph, on the next page where it does not fit on this one."""
        self.room(words_in(words, size))
        self.sheet.words(words, size, **style)

    def done(self) -> list[Figure]:
        """The finished pages."""
        for number, sheet in enumerate(self.sheets, start=1):
            sheet.foot(self._foot(number, len(self.sheets)), FOOT_PT)
        return [sheet.done() for sheet in self.sheets]

    def _foot(self, number: int, of: int) -> str:
        return f"{self.foot} Page {number} of {of}." if of > 1 else self.foot


def words_in(words: str, size: float = SAID_PT) -> float:
    """Height of a paragraph [in]."""
    return len(wrapped(words, size, INNER_IN)) * line_in(size) + 0.5 * GAP_IN
