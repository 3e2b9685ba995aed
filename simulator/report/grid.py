"""A ruled table on a page: cells of several lines, rows as high as their tallest cell, some cells framed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from .palette import FAINT, INK, MARKED
from .sheet import Sheet, line_in, width_in, wrapped

PAD_IN = 0.05
"""Between the words of a cell and its sides [in]."""

ABOVE_IN, BELOW_IN = 0.04, 0.02
"""Above and below them [in]: a line of words has room of its own below it."""

RULE_IN, HEAVY_RULE_IN = 0.005, 0.014
"""How thick the lines between rows are, and those that part heads and sums from them [in]."""


class Column(NamedTuple):
    """Where a column stands from the left margin, its width [in], and the side its words keep to."""

    left_in: float
    wide_in: float
    right: bool = False


@dataclass(frozen=True)
class Cell:
    """What stands in a place of the table.

    Attributes
    ----------
    strong : str
        Words in bold, on lines of their own.
    words : str
        Below them.
    framed : bool
        Told apart from its neighbours by a frame and a tint.
    """

    strong: str = ""
    words: str = ""
    framed: bool = False

    def lines(self, size: float, wide_in: float) -> list[tuple[str, str]]:
        """Its lines and their weights, none wider than a column and no letter lost."""
        return [
            (line, weight)
            for words, weight in ((self.strong, "bold"), (self.words, "normal"))
            if words
            for line in wrapped(words, size, wide_in - 2.0 * PAD_IN, weight)
        ]


def row_in(cells: Sequence[Cell], columns: Sequence[Column], size: float) -> float:
    """Height of a row [in]."""
    most = max(len(cell.lines(size, column.wide_in)) for cell, column in zip(cells, columns, strict=True))
    return max(most, 1) * line_in(size) + ABOVE_IN + BELOW_IN


def draw_row(
    sheet: Sheet, cells: Sequence[Cell], columns: Sequence[Column], size: float, *, heavy: bool = False
) -> None:
    """A row where the page has come to, with a line below it; the page moves on."""
    tall = row_in(cells, columns, size)
    for cell, (left, wide, right) in zip(cells, columns, strict=True):
        if cell.framed:
            draw_frame(sheet, left, wide, tall)
        for k, (line, weight) in enumerate(cell.lines(size, wide)):
            at, side = (left + wide - PAD_IN, "right") if right else (left + PAD_IN, "left")
            sheet.put(line, size, at, ABOVE_IN + k * line_in(size), ha=side, weight=weight)
    sheet.down_in += tall
    rule(sheet, columns, heavy)


def rule(sheet: Sheet, columns: Sequence[Column], heavy: bool = False) -> None:
    """A line across all columns."""
    left, wide = columns[0].left_in, columns[-1].left_in + columns[-1].wide_in - columns[0].left_in
    thick = HEAVY_RULE_IN if heavy else RULE_IN
    sheet.box(left, wide, thick, facecolor=INK if heavy else FAINT, linewidth=0.0)
    sheet.down_in += thick


def draw_frame(sheet: Sheet, left_in: float, wide_in: float, tall_in: float) -> None:
    """The frame of a marked cell, a little inside of it."""
    inset = 0.02
    sheet.box(
        left_in + inset, wide_in - 2.0 * inset, tall_in - 2.0 * inset, inset,
        facecolor=MARKED.fill, edgecolor=MARKED.edge, linewidth=1.0, zorder=0.5,
    )  # fmt: skip


def widest_in(words: str, size: float, weight: str = "normal") -> float:
    """Room that words need so that nothing of them is broken but at blanks and behind hyphens [in]."""
    parts = words.replace("-", "- ").split(" ")
    return max(width_in(part, size, weight) for part in parts) + 2.0 * PAD_IN
