"""The width of a screen, and words wrapped to it."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

COLUMNS = 80
"""Width of the screen."""


def wrap(words: str, indent: str = "", first: str = "", width: int = COLUMNS) -> list[str]:
    """Lines of at most ``width`` characters: the first behind ``first``, the others behind ``indent``."""
    return textwrap.wrap(words, width, initial_indent=first, subsequent_indent=indent, break_on_hyphens=False)


def hang(words: str) -> list[str]:
    """The same with every line after the first two blanks in."""
    return wrap(words, "  ")


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
