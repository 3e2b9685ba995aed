"""The answer screen: at most 24 lines of 80 columns, the verdict first."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ..strategy.result import Answer
from . import lines, phrases
from .cautions import RULES
from .chosen import MOST_SHOWN, left_out, out_of_reach, shown, title
from .credits import map_data
from .daywords import day_sentence
from .figures import join_words, name_said, pin_said, plain_spaces, unseen
from .screen import wrap
from .table import GREEN_SHARE, Table, table, trouble_rows
from .turns import turns
from .units import YARDS, Units
from .verdicts import verdict

LINES = 24
"""Height of the screen the answer fits on."""

EASY_ROWS, FEW_ROWS, LEAST_ROWS = 5, 3, 2
"""Rows of trouble that are kept before sentences are packed, the putt is left out, the green is left out."""


@dataclass(frozen=True)
class _Fit:
    """What of an answer is shown, and how closely.

    Attributes
    ----------
    blank : bool
        An empty line before the table and after it.
    far : bool
        Trouble that is never reached is told too.
    putt : bool
        The side of the hole to be on is told.
    ground : int
        Fairways and greens have their rows: 2, for a shot at the green only: 1, never: 0.
    rows : int
        Rows of trouble, the last of them all the rest where there are more.
    apart : tuple of bool
        Whether the sentences above the table, below it and at the end stand on lines of their own.
    alike, trade : bool
        How far the line may be off, and what is gained and given up, are told: the last to give way.
    """

    blank: bool = True
    far: bool = True
    putt: bool = True
    ground: int = 2
    rows: int = 99
    apart: tuple[bool, bool, bool] = (True, True, True)
    alike: bool = True
    trade: bool = True


def answer_screen(answer: Answer, notes: tuple[str, ...] = (), units: Units = YARDS) -> str:
    """The answer as text.

    Verdict, line, trade, counts, room, indifference, reach, the day, whose numbers, people, Rules: in this
    order. What does not fit gives way in the order of `_tighter`.

    Parameters
    ----------
    answer : Answer
    notes : tuple of str
        Sentences about the question itself, for example which player was taken for want of another.
    units : Units

    Returns
    -------
    str
        Lines of at most `COLUMNS` characters, at most `LINES` of them, without a final newline.
    """
    made = table(answer, units)
    text = _fitted(answer, notes, units, made)
    if len(text) > LINES and len(made.indices) > MOST_SHOWN:
        fewer = _fitted(answer, notes, units, table(answer, units, MOST_SHOWN))
        text = min(text, fewer, key=len)
    return plain_spaces("\n".join(line.rstrip() for line in text))


def room_for_turns(answer: Answer, notes: tuple[str, ...] = (), units: Units = YARDS) -> bool:
    """Whether the screen of an answer has room for what would turn it.

    Among the first to give way: where all the rest does not fit, it need not be worked out.
    """
    tables = table(answer, units), table(answer, units, MOST_SHOWN)
    fits = (_lines(answer, notes, units, made, _Fit(blank=False, rows=len(made.troubles))) for made in tables)
    return any(len(text) <= LINES for text in fits)


def _fitted(answer: Answer, notes: tuple[str, ...], units: Units, made: Table) -> list[str]:
    """Lines round a table, with as much given way as they need."""
    fit = _Fit(rows=len(made.troubles))
    text = _lines(answer, notes, units, made, fit)
    while len(text) > LINES and (tighter := _tighter(fit)) != fit:
        fit = tighter
        text = _lines(answer, notes, units, made, fit)
    return text


def caption(answer: Answer, units: Units = YARDS) -> str:
    """What was asked, in a few words: hole, place, pin, player."""
    hole = answer.hole
    place = units.sentence(answer.start.words.removeprefix("the "))
    if answer.start.played:
        place += f", {answer.start.played} played"
    ground = hole.name
    if answer.start.played is not None:
        ground += f", par {hole.par}"
    if answer.start.lie == "tee":
        ground += f", {units.length(hole.length_yd)}"
    return f"{ground}; {place}, {pin_said(hole.pin.name)}; {name_said(answer.player)}"


def _tighter(fit: _Fit) -> _Fit:
    """The next thing to give way; the same again when nothing is left."""
    if fit.blank:
        return replace(fit, blank=False)
    if fit.far:
        return replace(fit, far=False)
    for k in (2, 0, 1):
        if k == 0 and fit.ground > 1:
            return replace(fit, ground=1)
        if fit.apart[k]:
            return replace(fit, apart=tuple(a and n != k for n, a in enumerate(fit.apart)))  # type: ignore[arg-type]
        if k == 2 and fit.rows > EASY_ROWS:
            return replace(fit, rows=fit.rows - 1)
    if fit.rows > FEW_ROWS:
        return replace(fit, rows=fit.rows - 1)
    if fit.putt:
        return replace(fit, putt=False)
    if fit.rows > LEAST_ROWS:
        return replace(fit, rows=fit.rows - 1)
    if fit.ground:
        return replace(fit, ground=0)
    if fit.rows > 1:
        return replace(fit, rows=1)
    return replace(fit, alike=False) if fit.alike else replace(fit, trade=False)


def _lines(answer: Answer, notes: tuple[str, ...], units: Units, made: Table, fit: _Fit) -> list[str]:
    above = [
        verdict(answer, units), lines.pointing(answer, units),
        phrases.trade(answer, units) if fit.trade else "",
        turns(answer, units) if fit.far else "",
    ]  # fmt: skip
    reach, close = lines.reach_words(answer, units)
    below = [
        _no_room(answer, made, units),
        lines.room_words(answer, units),
        lines.indifference(answer, units) if fit.alike else "",
        reach if close or fit.far else "",
        _rare(answer) if fit.far else "",
        day_sentence(answer, units, putt=fit.far or (fit.putt and _on_green(answer))),
    ]
    end = [
        " ".join([phrases.whose(answer), *notes, *map_data(answer.hole)]),
        phrases.people(answer, units),
        RULES,
    ]
    gap = [""] if fit.blank else []
    at_green = _on_green(answer)
    ground = made.ground if fit.ground > 1 or (fit.ground and at_green) else []
    return [
        *_paragraph(above, fit.apart[0]), *gap,
        *wrap(f"In 100 plays: {caption(answer, units)}"), *made.head, *made.scores,
        *ground, *trouble_rows(answer, made.troubles, fit.rows), *made.foot, *gap,
        *_paragraph(below, fit.apart[1]), *_paragraph(end, fit.apart[2]),
    ]  # fmt: skip


def _paragraph(sentences: list[str], apart: bool) -> list[str]:
    said = [sentence for sentence in sentences if sentence]
    if apart:
        return [line for sentence in said for line in wrap(sentence)]
    return wrap(" ".join(said))


def _on_green(answer: Answer) -> bool:
    """Whether this shot is for the green, so that the side of the hole matters to it."""
    green = answer.best.finish.get("green")
    return green is not None and green.value >= GREEN_SHARE


def _no_room(answer: Answer, made: Table, units: Units) -> str:
    """Which of those asked about have no column, and where they stand; empty when all have one."""
    names = [f"the {title(answer, k, units)}" for k in left_out(answer, made.indices)]
    return f"No room here for {join_words(names)}: --full has all that were asked about." if names else ""


def _rare(answer: Answer) -> str:
    """Penalty areas and boundaries that no ball of the shown clubs found; empty when there is none."""
    names = out_of_reach(answer, shown(answer))
    return (
        f"{unseen(answer.sequences).capitalize()} with these clubs: {join_words(names, 'or')}."
        if names
        else ""
    )
