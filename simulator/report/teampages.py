"""The team page on paper: holes down, players across, to be hung on a wall."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from ..strategy.courseasked import CourseAnswer
from .grid import HEAVY_RULE_IN, PAD_IN, Cell, Column, draw_frame, draw_row, row_in, widest_in
from .page import GAP_IN, in_style
from .paper import INNER_IN, SAID_PT, Paper, words_in
from .sheet import line_in, width_in
from .teamwords import (
    CHANGES,
    MARK,
    TeamCell,
    ahead_words,
    cell_of,
    change_notes,
    expected_words,
    head_words,
    legend_words,
    missing_words,
    owed_words,
    players_of,
    unchanged_words,
)
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SIZES_PT = (13.0, 12.0, 11.0, 10.0, 9.5, 9.0, 8.5, 8.0)
"""Letters of the table: those with the fewest pages, of these the largest; the least where nothing fits."""

HOLES_DOWN = 18
"""Most holes on a page: a round."""

MOST_ACROSS = 6
"""Players side by side: with more the clubs stand in narrow towers of words."""

WIDEST_PLAYER_IN = 2.0
"""Room for the longest word of a player's column; a longer one is broken [in]."""

WIDEST_NAME_IN = 1.5
"""Of a hole's name; a longer one goes on in the line below [in]."""

FRAME_IN = 0.3
"""Width of the framed mark in the legend [in]."""

FRAMED = f"Framed and {MARK}: another club is better on another of the days, "
"""What a frame says; where it is told which comes behind."""


@dataclass(frozen=True)
class _Table:
    """The team's cells and how they are laid out: letters [pt], columns of the label, and of players."""

    names: tuple[str, ...]
    holes: tuple[tuple[int, str, int], ...]
    cells: dict[tuple[int, str], TeamCell]
    totals: dict[str, str]
    size: float = SIZES_PT[-1]

    def label(self) -> tuple[Column, Column, Column]:
        """Columns of number, name and par."""
        number = max((width_in(f"{n}", self.size, "bold") for n, _, _ in self.holes), default=0.0)
        number += 2.0 * PAD_IN
        words = [*(name for _, name, _ in self.holes), "expected"]
        name = max(width_in(word, self.size) for word in words) + 2.0 * PAD_IN
        name = max(min(name, WIDEST_NAME_IN), widest_in("expected", self.size))
        par = width_in("par", self.size, "bold") + 2.0 * PAD_IN
        return Column(0.0, number, True), Column(number, name), Column(number + name, par, True)

    def across(self) -> int:
        """Players side by side: as few blocks as can be, filled alike; no word is broken for it."""
        strong = [*self.names, *(cell.club for cell in self.cells.values())]
        words = [cell.line for cell in self.cells.values()] + list(self.totals.values())
        need = max(
            *(widest_in(one, self.size, "bold") for one in strong),
            *(widest_in(one, self.size) for one in words),
        )
        room = INNER_IN - self._label_in()
        most = min(MOST_ACROSS, int(room / min(need, WIDEST_PLAYER_IN)))
        return math.ceil(len(self.names) / math.ceil(len(self.names) / most))

    def columns(self) -> list[Column]:
        """All columns of a block."""
        left, across = self._label_in(), self.across()
        wide = (INNER_IN - left) / across
        return [*self.label(), *(Column(left + k * wide, wide) for k in range(across))]

    def _label_in(self) -> float:
        par = self.label()[-1]
        return par.left_in + par.wide_in

    def head(self, names: Sequence[str]) -> list[Cell]:
        return [Cell(), Cell("hole"), Cell("par"), *map(Cell, names)]

    def row(self, hole: tuple[int, str, int], names: Sequence[str]) -> list[Cell]:
        number, name, par = hole
        cells = [self.cells[number, of] for of in names]
        return [
            Cell(f"{number}"), Cell("", name), Cell("", f"{par}"),
            *(Cell(one.club, one.line, one.changes) for one in cells),
        ]  # fmt: skip

    def sums(self, names: Sequence[str]) -> list[Cell]:
        return [Cell(), Cell("", "expected"), Cell(), *(Cell("", self.totals[name]) for name in names)]

    def parts(self) -> list[tuple[tuple[int, str, int], ...]]:
        """Holes that stand on a page together."""
        return [self.holes[k : k + HOLES_DOWN] for k in range(0, len(self.holes), HOLES_DOWN)]

    def tall_in(self, holes: Sequence[tuple[int, str, int]], names: Sequence[str]) -> float:
        """Height of some holes of a block [in]."""
        rows = [self.head(names), *(self.row(hole, names) for hole in holes), self.sums(names)]
        columns = self.columns()
        return sum(row_in(row, columns[: len(row)], self.size) + HEAVY_RULE_IN for row in rows)


@in_style
def team_pages(answer: CourseAnswer, units: Units = YARDS) -> list[tuple[str, Figure]]:
    """Named pages of A4: players who do not fit side by side, and holes after a round, on further ones.

    What marked cells change to stands below the table where there is room, else on pages behind.
    """
    names = players_of(answer)
    if not names:
        return []
    foot = f"{ahead_words(answer.results, units)} {owed_words(answer)}"
    paper = Paper(head_words(answer), foot)
    notes_of = {name: change_notes(answer, [name], units) for name in names}
    changes = any(notes_of.values())
    of_days = "" if changes else unchanged_words(answer)
    said = [words for words in (legend_words(answer, units), of_days, missing_words(answer)) if words]
    room_in = paper.left_in - _legend_in(said, changes)
    table = _fitted(_table(answer, names, units), notes_of, room_in)
    left_over: list[str] = []
    parts = table.parts()
    for first in range(0, len(names), table.across()):
        block = names[first : first + table.across()]
        for part in parts:
            if first or part is not parts[0]:
                paper.turn()
            _draw(paper, table, part, block, last=part is parts[-1])
            notes = [note for name in block for note in notes_of[name]] if part is parts[-1] else []
            marked = any(table.cells[number, name].changes for number, _, _ in part for name in block)
            below = bool(notes) and _notes_in(notes) <= paper.left_in - _legend_in(said, marked)
            _legend(paper, said, marked, "told below." if below else "told on a later page.")
            if below:
                _notes(paper, notes)
            else:
                left_over += notes
    if left_over:
        paper.turn()
        _notes(paper, left_over)
    return [("team", figure) for figure in paper.done()]


def _table(answer: CourseAnswer, names: Sequence[str], units: Units) -> _Table:
    by_player = {name: {one["number"]: one for one in answer.of(name)} for name in names}
    numbered = list(answer.course.numbered())
    cells = {
        (number, name): cell_of(answer, by_player[name].get(number), units)
        for number, _ in numbered
        for name in names
    }
    return _Table(
        tuple(names),
        tuple((number, hole.name, hole.par) for number, hole in numbered),
        cells,
        {name: expected_words(answer, name) for name in names},
    )


def _fitted(table: _Table, notes_of: Mapping[str, Sequence[str]], room_in: float) -> _Table:
    """The table with letters that make few pages and leave each of them room for a round.

    Notes that do not fit below it cost a page.
    """
    found = []
    for size in SIZES_PT:
        sized = replace(table, size=size)
        across, parts = sized.across(), sized.parts()
        blocks = [table.names[k : k + across] for k in range(0, len(table.names), across)]
        if all(sized.tall_in(part, block) <= room_in for part in parts for block in blocks):
            behind = any(
                sized.tall_in(parts[-1], block)
                + _notes_in([note for name in block for note in notes_of[name]])
                > room_in
                for block in blocks
            )
            found.append((len(blocks) * len(parts) + behind, -size, sized))
    return min(found)[2] if found else replace(table, size=SIZES_PT[-1])


def _notes_in(notes: Sequence[str]) -> float:
    """Height of the notes of what changes [in]."""
    return sum(map(words_in, [CHANGES, *notes])) if notes else 0.0


def _draw(
    paper: Paper,
    table: _Table,
    holes: Sequence[tuple[int, str, int]],
    names: Sequence[str],
    last: bool,
) -> None:
    """Some holes of a block of players, and the sums below the last of them."""
    columns = table.columns()[: 3 + len(names)]

    def head() -> None:
        draw_row(paper.sheet, table.head(names), columns, table.size, heavy=True)

    head()
    for hole in holes:
        row = table.row(hole, names)
        if paper.room(row_in(row, columns, table.size)):
            head()
        ends = last and hole is holes[-1]
        draw_row(paper.sheet, row, columns, table.size, heavy=ends)
    if last:
        draw_row(paper.sheet, table.sums(names), columns, table.size)
    paper.sheet.skip(GAP_IN)


def _legend_in(said: Sequence[str], marked: bool) -> float:
    """Height of the legend [in]."""
    frame = line_in(SAID_PT) + 2.0 * PAD_IN + GAP_IN if marked else 0.0
    return sum(map(words_in, said)) + frame + 2.0 * GAP_IN


def _legend(paper: Paper, said: Sequence[str], marked: bool, where: str) -> None:
    """What is said of the cells, and what the mark says where there is one."""
    for words in said:
        paper.words(words)
    if marked:
        tall = line_in(SAID_PT) + 2.0 * PAD_IN
        paper.room(tall)
        draw_frame(paper.sheet, 0.0, FRAME_IN, tall)
        paper.sheet.put(MARK, SAID_PT, 0.5 * FRAME_IN, PAD_IN, ha="center", weight="bold")
        paper.sheet.put(FRAMED + where, SAID_PT, FRAME_IN + 2.0 * PAD_IN, PAD_IN)
        paper.sheet.skip(tall)


def _notes(paper: Paper, notes: Sequence[str]) -> None:
    """What marked cells change to."""
    paper.words(CHANGES, weight="bold")
    for note in notes:
        if paper.room(words_in(note)):
            paper.words(CHANGES, weight="bold")
        paper.words(note)
