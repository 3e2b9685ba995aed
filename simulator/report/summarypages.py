"""A player's summary of a course on paper: every hole, the round, where a better decision is worth most."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import TYPE_CHECKING

from ..player.model import Player
from ..strategy.courseasked import CourseAnswer
from ..strategy.rounds import Round, add_up
from .grid import HEAVY_RULE_IN, PAD_IN, Cell, Column, draw_row, row_in, widest_in
from .page import GAP_IN, in_style
from .palette import SHOTS
from .paper import INNER_IN, SAID_PT, Paper, words_in
from .roundchart import chart_words, draw_round
from .sheet import width_in
from .summarywords import (
    HEADS,
    RIGHT,
    Ranked,
    Results,
    asked_words,
    both,
    legend_words,
    ranking,
    ranking_head,
    round_words,
    row_words,
    shared_habit,
    whose_words,
)
from .teamwords import MARK, ahead_words, missing_words, owed_words
from .units import YARDS, Units

if TYPE_CHECKING:
    from matplotlib.figure import Figure

SIZES_PT = (10.0, 9.0, 8.0)
"""Letters of the table of holes: those with the fewest pages, of these the largest without broken words."""

NUMBER, HOLE, CLUB, LINE, AHEAD = 0, 1, 3, 4, 8
"""Places in a row of `HEADS`; of these hole, club and what it is ahead of may go on in the line below."""

WIDEST_WORD_IN = 1.3
"""Room for the longest word of these; a longer one is broken [in]."""

HEAD_PT, SMALL_PT = 11.0, 8.0
"""Letters of headings, and of what explains a table or a chart [pt]."""

CHART_IN, AXIS_IN = 1.05, 0.36
"""Height of the chart of the round, and of the numbers below it and left of it [in]."""

LEAST_BAR_IN, THICK_IN = 1.6, 0.09
"""Room for the longest bar of the ranking, and how thick a bar is [in]."""

BARS = "Line on a bar: one standard error either side."
"""What is drawn at the end of each."""


@in_style
def summary_pages(
    answer: CourseAnswer, target: int | None = None, units: Units = YARDS
) -> list[tuple[str, Figure]]:
    """Named pages of A4, one a player unless the holes take more.

    Parameters
    ----------
    answer : CourseAnswer
    target : int, optional
        Score whose breaking is told, in strokes.
    units : Units
    """
    pages = []
    for player in answer.players:
        if results := answer.of(player.name):
            name = _file_words(player.name)
            pages += [(name, page) for page in _pages(answer, player, results, target, units)]
    return pages


def _file_words(name: str) -> str:
    """A player's name in the name of a file."""
    return re.sub(r"[\W_]+", "-", name.lower())[:40].strip("-") or "player"


def _pages(
    answer: CourseAnswer, player: Player, results: Results, target: int | None, units: Units
) -> list[Figure]:
    """The pages with the letters that suit them."""
    rows = [row_words(answer, one, units) for one in results]
    found: list[tuple[int, bool, int, Paper]] = []
    for number, size in enumerate(SIZES_PT):
        paper = Paper(
            whose_words(answer, player, results),
            f"{ahead_words(results, units)} {owed_words(answer)}",
            asked_words(answer, player),
        )
        _holes(paper, rows, size)
        paper.words(legend_words(answer, results, units), SMALL_PT)
        if missing := missing_words(answer):
            paper.words(missing, SMALL_PT)
        _round(paper, answer, player, add_up(results, target, missing=answer.missing(player.name)))
        _ranking(paper, ranking(results, units))
        broken = sum(_natural(rows, size)) > INNER_IN
        found.append((len(paper.sheets), broken, number, paper))
        if len(paper.sheets) == 1 and not broken:
            break
    return min(found)[-1].done()


def _holes(paper: Paper, rows: Sequence[Sequence[str]], size: float) -> None:
    """A row a hole, the heads again on every page."""
    columns = _columns(rows, size)
    head = [Cell(words) for words in HEADS]

    def draw_head() -> None:
        draw_row(paper.sheet, head, columns, size, heavy=True)

    draw_head()
    for row in rows:
        cells = [
            Cell(words) if k in (NUMBER, CLUB) else Cell("", words, k == LINE and MARK in words)
            for k, words in enumerate(row)
        ]
        if paper.room(row_in(cells, columns, size)):
            draw_head()
        draw_row(paper.sheet, cells, columns, size)
    paper.sheet.skip(GAP_IN)


def _natural(rows: Sequence[Sequence[str]], size: float) -> list[float]:
    """Widths of columns in which nothing is broken [in]; all as wide as bold letters are."""
    return [
        max(width_in(row[k], size, "bold") for row in (HEADS, *rows)) + 2.0 * PAD_IN
        for k in range(len(HEADS))
    ]


def _columns(rows: Sequence[Sequence[str]], size: float) -> list[Column]:
    """Columns that fill the page: spare room is shared out, room that lacks taken where words can break."""
    wide = _natural(rows, size)
    spare = INNER_IN - sum(wide)
    if spare >= 0.0:
        wide = [one + spare / len(wide) for one in wide]
    else:
        words = {
            k: max(widest_in(row[k], size, "bold") for row in (HEADS, *rows)) for k in (HOLE, CLUB, AHEAD)
        }
        give = {k: max(wide[k] - min(word, WIDEST_WORD_IN), PAD_IN) for k, word in words.items()}
        share = -spare / sum(give.values())
        wide = [one - share * give.get(k, 0.0) for k, one in enumerate(wide)]
    lefts = [sum(wide[:k]) for k in range(len(wide))]
    return [Column(left, one, k in RIGHT) for k, (left, one) in enumerate(zip(lefts, wide, strict=True))]


def _round(paper: Paper, answer: CourseAnswer, player: Player, one: Round) -> None:
    """The round in words, and its chances drawn."""
    said = round_words(answer, player, one)
    words_tall = words_in("The round", HEAD_PT) + sum(map(words_in, said))
    paper.room(words_tall + CHART_IN + AXIS_IN + words_in(chart_words(one), SMALL_PT) + 4.0 * GAP_IN)
    paper.sheet.skip(0.0)
    paper.words("The round", HEAD_PT, weight="bold")
    for words in said:
        paper.words(words)
    paper.sheet.skip(0.0)
    draw_round(one, ax=paper.sheet.axes(CHART_IN, AXIS_IN))
    paper.sheet.skip(CHART_IN + AXIS_IN - GAP_IN)
    paper.words(chart_words(one), SMALL_PT)


def _ranking(paper: Paper, found: Sequence[Ranked]) -> None:
    """Holes by what a better decision is worth: a bar each, its error a line on it."""
    if not found:
        paper.sheet.skip(0.0)
        paper.words(ranking_head(found))
        return
    shared = shared_habit(found)
    rows = [
        [
            Cell("", one.hole),
            Cell("", both(one.worth, 2)),
            Cell(),
            Cell("", "" if shared else f"habit: {one.habit}"),
        ]
        for one in found
    ]
    columns = _ranking_columns(rows)
    tall = sum(row_in(row, columns, SAID_PT) + HEAVY_RULE_IN for row in rows)
    paper.room(words_in(ranking_head(found), HEAD_PT) + tall + words_in(BARS, SMALL_PT) + 2.0 * GAP_IN)
    paper.sheet.skip(0.0)
    paper.words(ranking_head(found), HEAD_PT, weight="bold")
    left, scale = columns[2].left_in + PAD_IN, columns[2].wide_in - 2.0 * PAD_IN
    scale /= max(one.worth.value + one.worth.standard_error for one in found)
    for one, row in zip(found, rows, strict=True):
        worth, error = scale * one.worth.value, scale * one.worth.standard_error
        middle = 0.5 * row_in(row, columns, SAID_PT)
        for at, wide, thick, look, above in (
            (left, worth, THICK_IN, SHOTS[0], 1.0),
            (left + max(worth - error, 0.0), error + min(worth, error), 0.02, SHOTS[1], 1.5),
        ):
            paper.sheet.box(
                at, wide, thick, middle - 0.5 * thick, facecolor=look.colour, linewidth=0.0, zorder=above
            )
        draw_row(paper.sheet, row, columns, SAID_PT)
    paper.sheet.skip(0.0)
    paper.words(BARS, SMALL_PT)


def _ranking_columns(rows: Sequence[Sequence[Cell]]) -> list[Column]:
    """Columns of hole, worth, bar and habit: the bar has what the words leave."""
    hole, worth, _, habit = (
        max(width_in(row[k].words, SAID_PT) for row in rows) + 2.0 * PAD_IN for k in range(4)
    )
    most = (INNER_IN - worth - LEAST_BAR_IN) / 2.0
    hole, habit = min(hole, max(most, 2.0 * most - habit)), min(habit, max(most, 2.0 * most - hole))
    bar = INNER_IN - hole - worth - habit
    return [
        Column(0.0, hole), Column(hole, worth, True), Column(hole + worth, bar),
        Column(hole + worth + bar, habit),
    ]  # fmt: skip
