"""What a run of words says, read pattern by pattern."""

from __future__ import annotations

from simulator.hole.words.feature import Said
from simulator.hole.words.lex import Token
from simulator.hole.words.phrases import longest
from simulator.hole.words.tokenruns import key_of
from simulator.hole.words.vocabulary import FILLERS, INSTEAD, near

_BEFORE_A_NOUN = ("over", "round", "around")
"""Of "over a ridge" the noun tells what to say instead."""


def read_said(text: str, tokens: list[Token]) -> list[Said]:
    """What a run of words says, pattern by pattern.

    Raises
    ------
    UsageError
        At the first word that no pattern takes.
    """
    letters = {"number": "#", "text": "$"}
    kept: list[Token] = []
    words: list[str] = []
    for token in tokens:
        key = key_of(token)
        if token.kind == "word" and (key in FILLERS or not key):
            continue
        mark = letters.get(token.kind)
        if token.unit in ("percent", "degrees"):
            mark = "%" if token.unit == "percent" else "@"
        words.append(f"{mark}{len(kept)}" if mark else key.replace(" ", "_"))
        kept.append(token)
    joined, said, start = " ".join(words), [], 0
    while start < len(joined):
        index = joined.count(" ", 0, start)
        token = kept[index]
        best = longest(joined, start)
        if best is None:
            known = [one for one in kept[index : index + 3] if one.key in INSTEAD]
            token = next((one for one in known if one.key not in _BEFORE_A_NOUN), (known or [token])[0])
            meant = near(token.key) if token.kind == "word" else ""
            raise token.error(f"not understood{meant}", unknown=True)
        what, match = best
        last = kept[index + match.group().count(" ")]
        if what == "nothing":
            start = match.end() + 1
            continue
        groups = {name: value for name, value in match.groupdict().items() if value is not None}
        numbers = {n: kept[int(v[1:])] for n, v in groups.items() if v[0] == "#"}
        others = {n: v.strip() for n, v in groups.items() if v[0] != "#"}
        if "a2" in numbers:
            numbers["a"] = numbers.pop("a2")
        signed = [kept[int(w[1:])] for w in match.group().split() if w[0] in "%@$"]
        if signed:
            numbers["a"] = signed[0]
        said.append(Said(what, token, others, numbers, text[token.start : last.end]))
        start = match.end() + 1
    return said
