"""The width of a screen, and words wrapped to it."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Sequence

COLUMNS = 80
"""Width of the screen."""


def wrap(words: str, indent: str = "", first: str = "", width: int = COLUMNS) -> list[str]:
    """Lines of at most ``width`` characters: the first behind ``first``, the others behind ``indent``."""
    return textwrap.wrap(words, width, initial_indent=first, subsequent_indent=indent, break_on_hyphens=False)


def hang(words: str) -> list[str]:
    """The same with every line after the first two blanks in."""
    return wrap(words, "  ")


def columns_of(words: str) -> int:
    """Columns that words take on a screen: letters of East Asian scripts take two, marks on letters none."""
    return sum(
        0 if unicodedata.combining(letter) else 1 + (unicodedata.east_asian_width(letter) in "WF")
        for letter in words
    )


def padded(words: str, width: int) -> str:
    """Words filled up with blanks to so many columns; with an ellipsis at their end where they are longer."""
    if columns_of(words) > width:
        while columns_of(words) > width - 1:
            words = words[:-1]
        words = f"{words.rstrip()}…"
    return words + " " * (width - columns_of(words))


def side_by_side(cells: Sequence[str], widths: Sequence[int], gap: str = " ") -> list[str]:
    """A row of a table whose cells go on below, a blank in, where they are too long for their columns.

    Parameters
    ----------
    cells : sequence of str
    widths : sequence of int
        Letters a cell may have, one for each.
    gap : str
        Between two of them; two blanks where words of one cell could be read on into the next.
    """
    broken = [
        [cell] if len(cell) <= width else textwrap.wrap(cell, width, subsequent_indent=" ")
        for cell, width in zip(cells, widths, strict=True)
    ]
    return [
        gap.join(
            f"{lines[k] if k < len(lines) else '':<{width}}"
            for lines, width in zip(broken, widths, strict=True)
        ).rstrip()
        for k in range(max(map(len, broken)))
    ]
