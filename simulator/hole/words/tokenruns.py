"""Runs of tokens: what begins where, and words of the grammar put in the place of others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.vocabulary import ALIASES, HEADS, LONGEST_HEAD

SIDES = frozenset(("left", "right"))
BREAKS = ("hard", "soft")
"""Kinds of token that part features, and what is said of one: stop and comma."""


def key_of(token: Token) -> str:
    """The word of the grammar that a token stands for."""
    return ALIASES.get(token.key, token.key) if token.kind == "word" else token.key


def as_words(token: Token, words: str) -> list[Token]:
    """Words of the grammar in the place of a token."""
    breaks = {";": "hard", ",": "soft"}
    return [replace(token, kind=breaks.get(word, "word"), key=word) for word in words.split()]


def number_at(token: Token, value: float, unit: str = "") -> Token:
    """A number in the place of a token."""
    return replace(token, kind="number", key=f"{value:g}", shown=f"{value:g}", value=value, unit=unit)


def runs(tokens: list[Token], kinds: tuple[str, ...] = ("hard",)) -> Iterator[list[Token]]:
    """The tokens between breaks of some kinds, each run with the break behind it."""
    run: list[Token] = []
    for token in tokens:
        run.append(token)
        if token.kind in kinds:
            yield run
            run = []
    if run:
        yield run


def break_behind(tokens: list[Token], k: int, kinds: tuple[str, ...] = ("hard",)) -> int:
    """Where the first break of some kinds stands from k on; the end where there is none."""
    return next((j for j in range(k, len(tokens)) if tokens[j].kind in kinds), len(tokens))


def noun_at(tokens: list[Token], k: int) -> tuple[int, str]:
    """Length and kind of the noun that begins at k; (0, "") where none does."""
    for size in range(min(LONGEST_HEAD, len(tokens) - k), 0, -1):
        kind = HEADS.get(tuple(one.key for one in tokens[k : k + size]))
        if kind is not None:
            return size, kind
    return 0, ""


def phrase_at(tokens: list[Token], k: int, phrases: tuple[str, ...]) -> int:
    """How many words of the longest of some phrases begin at k; 0 where none does."""
    keys = [one.key for one in tokens[k : k + 4]]
    sizes = [len(words) for one in phrases if (words := listed(one)) == tuple(keys[: len(one.split())])]
    return max(sizes, default=0)
