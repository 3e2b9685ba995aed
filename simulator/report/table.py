"""The table of the answer screen: counts in 100 plays for three clubs, four where four must be shown."""

from __future__ import annotations

from dataclasses import dataclass

from ..strategy.alternative import Alternative
from ..strategy.result import Answer
from .chosen import (
    MOST_ASKED,
    MOST_SHOWN,
    TroubleRow,
    fewer_rows,
    par_counts,
    par_shares,
    shown,
    title,
    troubles,
)
from .figures import count_words, score_words
from .screen import COLUMNS, wrap
from .units import YARDS, Units
from .verdicts import goal_words

LABEL, SHORT_LABEL = 31, 20
"""Width of the first column, and beside four clubs: a range of lengths with its unit then has 13 of 15."""

GREEN_SHARE = 0.05
"""A green that none of the clubs hits more often than this has no row."""


@dataclass(frozen=True)
class Table:
    """Rows of the table, each a list of lines.

    Attributes
    ----------
    head, scores, foot : list of str
        Clubs; the goal or par, bogey, double; average and what is left.
    ground : list of str
        Fairway and green: where there is room.
    troubles : list of TroubleRow
        This ball in each trouble, the dearest first.
    indices : list of int
        The alternatives in the columns.
    """

    head: list[str]
    scores: list[str]
    ground: list[str]
    troubles: list[TroubleRow]
    foot: list[str]
    indices: list[int]


def table(answer: Answer, units: Units = YARDS, most: int = MOST_ASKED) -> Table:
    """The rows of an answer, with at most so many columns."""
    indices = shown(answer, most)
    ones = [answer.alternatives[k] for k in indices]
    n = answer.sequences
    ground: list[str] = []
    if all(o.chances.get("fairway") is not None for o in ones):
        shares = [o.chances["fairway"] for o in ones]
        ground += row("fairway hit", [count_words(s.value, n) for s in shares if s is not None])
    green = [o.finish["green"].value if "green" in o.finish else 0.0 for o in ones]
    if max(green) >= GREEN_SHARE:
        ground += row("on the green", [count_words(g, n) for g in green])
    average = "average score" if answer.start.played is not None else "average strokes from here"
    foot = row(average, [score_words(o.score) for o in ones])
    leaves = [(one.leaves_yd["p10"].value, one.leaves_yd["p90"].value) for one in ones]
    foot += row("leaves, 8 in 10", [units.range(*ends) for ends in leaves])
    return Table(
        head=row("", [title(answer, k, units) for k in indices]),
        scores=_score_rows(answer, ones, units),
        ground=ground,
        troubles=troubles(answer, indices),
        foot=foot,
        indices=indices,
    )


def trouble_rows(answer: Answer, rows: list[TroubleRow], most: int) -> list[str]:
    """Lines of at most so many rows of trouble."""
    n = answer.sequences
    lines: list[str] = []
    for trouble in fewer_rows(rows, most):
        lines += row(f"ball in {trouble.words}", [count_words(s, n) for s in trouble.shares])
    return lines


def _score_rows(answer: Answer, ones: list[Alternative], units: Units) -> list[str]:
    """The goal, where there is one; par or better (once where it is the goal), bogey, double or worse."""
    goal, lines = answer.goal, []
    if goal is not None:
        chances = [0.0 if o.goal is None else o.goal.value for o in ones]
        lines += row(goal_words(goal, units), [count_words(c, answer.sequences) for c in chances])
    if any(par_shares(one) is None for one in ones):
        return lines
    names = ("par or better", "bogey", "double or worse")
    columns: list[list[str]] = []
    for one in ones:
        both = zip(par_counts(one) or (), par_shares(one) or (), strict=True)
        columns.append([str(c) if c else count_words(s, answer.sequences) for c, s in both])
    for name, cells in zip(names, zip(*columns, strict=True), strict=True):
        if name != "par or better" or goal is None or goal.most_strokes != answer.hole.par:
            lines += row(name, list(cells))
    return lines


def row(label: str, cells: list[str]) -> list[str]:
    """One row; long labels and cells go on to a second line."""
    label_width, gap = (LABEL, 1) if len(cells) <= MOST_SHOWN else (SHORT_LABEL, 2)
    width = (COLUMNS - label_width) // max(len(cells), 1)
    parts = [wrap(label, width=label_width - 1) or [""]]
    parts += [wrap(cell, width=width - gap) or [""] for cell in cells]
    lines = []
    for k in range(max(map(len, parts))):
        first, *rest = (part[k] if k < len(part) else "" for part in parts)
        lines.append(f"{first:<{label_width}}" + "".join(f"{cell:>{width}}" for cell in rest))
    return lines
