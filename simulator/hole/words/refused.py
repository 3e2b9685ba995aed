"""The other words of a hole that are not understood either: told with the first, not one by one."""

from __future__ import annotations

import re
from collections.abc import Callable

from simulator.errors import SimulatorError
from simulator.hole.words.lex import WordError
from simulator.hole.words.vocabulary import HEADS

MOST_TOLD = 4
"""So many more words are pointed at; beyond that the first few are enough to begin with."""

_CLAUSE = re.compile(r"(?:[^;\n.!?]|[.!?](?!\s|$))+")


def with_others(text: str, first: WordError, read: Callable[[str], object]) -> WordError:
    """The refusal of a hole in words, and behind it what would be refused next in other clauses.

    Each refused clause is left out and the rest is read again. A clause on which others may rest (par,
    length, bends) is not left out, and of what is refused then only words that are not understood are told:
    the rest may be refused because of what was left out.
    """
    error: SimulatorError = first
    found: list[str] = []
    for _ in range(2 * MOST_TOLD):
        clause = _clause(text, error.start) if isinstance(error, WordError) else None
        if clause is None or _others_rest_on(clause.group()):
            break
        text = f"{text[: clause.start()]}{' ' * len(clause.group())}{text[clause.end() :]}"
        try:
            read(text)
            break
        except SimulatorError as next_one:
            error = next_one
        if isinstance(error, WordError) and error.unknown:
            found.append(error.where)
    told = found[:MOST_TOLD]
    if not told:
        return first
    more = ", ".join(told) + (" ..." if len(found) > len(told) else "")
    return WordError(f"{first}; also not understood: {more}", first.where, first.start)


def _clause(text: str, start: int) -> re.Match[str] | None:
    """The words between two full breaks that a letter is in."""
    return next((one for one in _CLAUSE.finditer(text) if one.start() <= start < one.end()), None)


def _others_rest_on(clause: str) -> bool:
    words = re.findall(r"[^\W\d_]+", clause.casefold())
    return any(HEADS.get((word,)) in ("par", "bend", "length", "units") for word in words)
