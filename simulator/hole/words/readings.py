"""The three numbers of a laser at the green, "front 335, middle 350, back 362", in words of the grammar."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.lex import UNIT_WORDS, Token
from simulator.hole.words.tokenruns import BREAKS
from simulator.hole.words.tokenruns import runs as runs_of
from simulator.hole.words.vocabulary import ALIASES, FILLERS

_FLAGS = ("flag", "pin")


def green_readings(tokens: list[Token]) -> list[Token]:
    """The same hole with front and back said of the green, the middle as the hole's length, the flag last."""
    runs = list(runs_of(tokens, (*BREAKS, "and")))
    out: list[Token] = []
    k = 0
    while k < len(runs):
        three = _three(runs, k)
        if three is None or not _may_begin(runs, k):
            out += runs[k]
            k += 1
            continue
        by_name = {name: run for name, run in three}
        comma = replace(by_name["front"][0], kind="soft", key=",")
        stop = replace(comma, kind="hard", key=";")
        green = [replace(comma, kind="word", key="green"), *by_name["front"], comma, *by_name["back"], stop]
        middle = by_name.get("middle", [])[-1:]
        if middle and not any(_same(middle[0], token) for token in out):
            out += [stop, *middle, stop]
        out += green
        for name in _FLAGS:
            if name in by_name:
                out += [*by_name[name], stop]
        k += len(three)
    return out


def _three(runs: list[list[Token]], k: int) -> list[tuple[str, list[Token]]] | None:
    """Front and back, perhaps middle or flag, from a run on; None where they do not stand there.

    The number stands behind its word, or before it: "front 335" and "335 to the front".
    """
    found: dict[str, list[Token]] = {}
    for run in runs[k : k + 3]:
        words = [token for token in run if token.kind in ("word", "number", "text")]
        numbers = [token for token in words if token.kind == "number"]
        keys = [ALIASES.get(token.key, token.key) for token in words if token.kind == "word"]
        keys = [key for key in keys if key not in (*FILLERS, "edge", "at", "to")]
        at_an_end = bool(words) and "number" in (words[-1].kind, words[0].kind)
        named = len(keys) == 1 and keys[0] in (*_FLAGS, "middle", "front", "back") and keys[0] not in found
        if not named or len(numbers) != 1 or not at_an_end:
            break
        found[keys[0]] = [replace(numbers[0], kind="word", key=keys[0]), numbers[0]]
        if keys[0] == "back" and "front" in found:
            break
    return list(found.items()) if {"front", "back"} <= found.keys() else None


def _may_begin(runs: list[list[Token]], k: int) -> bool:
    """Whether such numbers are about the hole: behind a full break, or among par and length."""
    if k == 0 or runs[k - 1][-1].kind == "hard":
        return True
    words = {token.key for token in runs[k - 1] if token.kind == "word"}
    return "par" in words or (words <= {*UNIT_WORDS, *FILLERS} and _may_begin(runs, k - 1))


def _same(one: Token, other: Token) -> bool:
    return other.kind == "number" and (one.value, one.unit) == (other.value, other.unit)
