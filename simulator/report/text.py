"""The answer screen: at most 24 lines of 80 columns, the verdict first."""

from __future__ import annotations

import textwrap

from ..strategy.result import Answer
from . import phrases
from .chosen import out_of_reach, par_counts, par_shares, shown, title, troubles
from .credits import map_data
from .daywords import day_sentence
from .figures import count_words, join_words, plain_spaces, score_words, unseen

COLUMNS, LINES = 80, 24
"""Size of the screen the answer fits on."""

LABEL = 29
"""Width of the first column of the table."""


def answer_screen(answer: Answer, notes: tuple[str, ...] = ()) -> str:
    """The answer as text: verdict, table of counts, what it trades, cautions.

    Parameters
    ----------
    answer : Answer
    notes : tuple of str
        Sentences about the question itself, for example which player was taken for want of another.

    Returns
    -------
    str
        Lines of at most `COLUMNS` characters, at most `LINES` of them, without a final newline.
    """
    head = [*_wrap(phrases.verdict(answer)), ""]
    top, rows, foot = _table(answer)
    said = [
        *_wrap(phrases.trade(answer)), *_wrap(day_sentence(answer)), *_wrap(phrases.people(answer)),
    ]  # fmt: skip
    whose = " ".join([phrases.whose(answer), *notes, *map_data(answer.hole)])
    tail = [*said, *_wrap(f"{whose} {phrases.RULES}")]
    always = len(head) + len(top) + len(foot) + len(tail)
    while rows and always + sum(map(len, rows)) > LINES:
        rows.pop()  # the least dear trouble is last
    free = LINES - always - sum(map(len, rows))
    # what is left of the screen, the most useful first
    apart = [*said, *_wrap(whose), *_wrap(phrases.RULES)]
    rare = _rare(answer)
    if len(rare) <= free:
        foot, free = foot + rare, free - len(rare)
    if len(apart) - len(tail) <= free:
        free -= len(apart) - len(tail)
        tail = apart
    if free > 0:
        tail = ["", *tail]
    lines = head + top + [line for row in rows for line in row] + foot + tail
    return plain_spaces("\n".join(line.rstrip() for line in lines[:LINES]))


def caption(answer: Answer) -> str:
    """What was asked, in a few words: hole, place, pin, player."""
    hole, player = answer.hole, answer.player
    of = f" ({player.handicap:g})" if player.handicap is not None else ""
    place = answer.start.words.removeprefix("the ")
    if answer.start.played:
        place += f", {answer.start.played} played"
    ground = f"{hole.name}, par {hole.par}, {hole.length_yd:.0f} yd"
    return f"{ground}; {place}, {hole.pin.name} pin; {player.name}{of}"


def _wrap(words: str, width: int = COLUMNS) -> list[str]:
    return textwrap.wrap(words, width, break_long_words=True, break_on_hyphens=False)


def _rare(answer: Answer) -> list[str]:
    """Trouble that no ball of the shown clubs found, in one line; empty when there is none."""
    names = out_of_reach(answer, shown(answer))
    if not names:
        return []
    words = f"{unseen(answer.sequences).capitalize()} with these clubs: {join_words(names, 'or')}."
    return _wrap(words)


def _table(answer: Answer) -> tuple[list[str], list[list[str]], list[str]]:
    """Lines above the trouble, a list of lines for each row of trouble, and lines below it."""
    indices = shown(answer)
    ones = [answer.alternatives[k] for k in indices]
    n = answer.sequences
    lines: list[str] = _wrap(f"In 100 plays: {caption(answer)}")
    lines += _row("", [title(answer, k) for k in indices])
    lines += _row("line (plays alike from)", [phrases.line_and_band(o) for o in ones])
    if all(par_shares(one) is not None for one in ones):
        lines += _par_rows(answer, indices)
    if all(o.chances.get("fairway") is not None for o in ones):
        shares = [o.chances["fairway"] for o in ones]
        lines += _row("fairway hit", [count_words(s.value, n) for s in shares if s is not None])
    green = [o.finish["green"].value if "green" in o.finish else 0.0 for o in ones]
    if max(green) >= 0.05:
        lines += _row("on the green", [count_words(g, n) for g in green])
    rows = [
        _row(f"ball in {trouble.words}", [count_words(s, n) for s in trouble.shares])
        for trouble in troubles(answer, indices)
    ]
    average = "average score" if answer.start.played is not None else "average strokes from here"
    foot = _row(average, [score_words(o.score) for o in ones])
    foot += _row("leaves, 8 in 10", [phrases.leaves_words(o) for o in ones])
    return lines, rows, foot


def _par_rows(answer: Answer, indices: list[int]) -> list[str]:
    names = ("par or better", "bogey", "double or worse")
    columns: list[list[str]] = []
    for k in indices:
        one = answer.alternatives[k]
        both = zip(par_counts(one) or (), par_shares(one) or (), strict=True)
        columns.append([str(c) if c else count_words(s, answer.sequences) for c, s in both])
    lines = []
    for name, cells in zip(names, zip(*columns, strict=True), strict=True):
        lines += _row(name, list(cells))
    return lines


def _row(label: str, cells: list[str]) -> list[str]:
    """One row of the table; long labels and cells go on to a second line."""
    width = (COLUMNS - LABEL) // max(len(cells), 1)
    parts = [_wrap(label, LABEL - 1) or [""]] + [_wrap(cell, width - 1) or [""] for cell in cells]
    lines = []
    for k in range(max(map(len, parts))):
        first, *rest = (part[k] if k < len(part) else "" for part in parts)
        lines.append(f"{first:<{LABEL}}" + "".join(f"{cell:>{width}}" for cell in rest))
    return lines
