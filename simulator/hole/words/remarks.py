"""What is said of a hole and draws nothing, "drivable", "blind tee shot": passed over, and told."""

from __future__ import annotations

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import BREAKS, break_behind, noun_at
from simulator.hole.words.vocabulary import ALIASES, HEADS

_FINDS_OUT = "the answer finds that out"
_REMARKS: dict[tuple[str, ...], str] = {
    **dict.fromkeys(
        map(listed, ("drivable", "driveable", "reachable in two", "reachable in 2", "reachable")),
        _FINDS_OUT),
    **dict.fromkeys(
        map(listed, ("blind", "blind tee shot", "blind drive", "blind second", "blind second shot",
                     "blind approach", "semi blind", "signature hole", "risk reward", "risk and reward",
                     "risk reward hole", "risk and reward hole")), "nothing depends on it"),
    **dict.fromkeys(
        map(listed, ("punchbowl", "punch bowl", "undulating")), "in words a green is level or falls one way"),
}  # fmt: skip
"""Remarks by their words, and why nothing is drawn for them."""

_CLAUSES: dict[tuple[str, ...], str] = {
    **dict.fromkeys(
        map(listed, ("drop zone", "dropping zone", "drop area", "dropping area")),
        "relief is taken as the Rules give it, without a dropping zone",
    ),
    **dict.fromkeys(
        map(listed, ("layup area", "lay up area", "layup zone", "lay up zone")), _FINDS_OUT),
    **dict.fromkeys(
        map(listed, ("bail out", "bailout", "bale out", "plenty of room", "room", "lots of room", "miss left",
                     "miss right", "miss short", "miss long", "best miss")), "what is not drawn is rough"),
}  # fmt: skip
"""The same of remarks that go on to the next comma or stop."""

_OF_SAND = frozenset(listed("deep steep faced steepfaced revetted lipped walled sod"))
_OF_STREAMS = frozenset(listed("meandering meanders winding snaking snakes wandering wanders meander"))
_SAND_ALIKE = "bunkers play alike, however deep"
_STRAIGHT = "a stream is drawn straight"
_LONGEST = max(len(words) for words in (*_REMARKS, *_CLAUSES))


def passed_over(text: str, tokens: list[Token]) -> tuple[list[Token], list[str]]:
    """The tokens without the remarks among them, and a sentence on each of these.

    The sentences go into the hole file and are said with every answer, as what was assumed is.
    """
    kept: list[Token] = []
    told: list[str] = []
    k = 0
    while k < len(tokens):
        stop, why = _remark(tokens, k)
        if stop > k:
            shown = " ".join(text[tokens[k].start : tokens[stop - 1].end].split())
            sentence = f"Not drawn: {shown} ({why})."
            if sentence not in told:
                told.append(sentence)
            k = stop
            if kept and kept[-1].key == "a" and k < len(tokens) and tokens[k].key == "one":
                kept.pop()  # "a deep one": the number begins what is said of it
        else:
            kept.append(tokens[k])
            k += 1
    return kept, told


def _remark(tokens: list[Token], k: int) -> tuple[int, str]:
    """Where a remark that begins at k is over, and why it draws nothing; k itself where none begins."""
    token = tokens[k]
    before = tokens[k - 1] if k else None
    if token.kind != "word" or (before is not None and before.key in ("called", "named")):
        return k, ""
    for size in range(min(_LONGEST, len(tokens) - k), 0, -1):
        keys = tuple(one.key for one in tokens[k : k + size])
        if keys in _REMARKS:
            return k + size, _REMARKS[keys]
        if keys in _CLAUSES:
            return break_behind(tokens, k + size, BREAKS), _CLAUSES[keys]
    if token.key in _OF_SAND and not (before is not None and before.kind == "number"):
        stop = k
        while stop < len(tokens) and tokens[stop].key in _OF_SAND:
            stop += 1
        # "a deep one right at 250" is another bunker, no bunker one yard deep
        another = stop < len(tokens) and tokens[stop].kind == "number" and tokens[stop].key == "one"
        return (stop, _SAND_ALIKE) if another or noun_at(tokens, stop)[1] == "bunker" else (k, "")
    if token.key in _OF_STREAMS and _is_of_stream(tokens, k):
        return k + 1, _STRAIGHT
    return k, ""


def _is_of_stream(tokens: list[Token], k: int) -> bool:
    """Whether the last noun before k, or the one right behind it, is a stream."""
    if noun_at(tokens, k + 1)[1] == "stream":
        return True
    for j in range(k - 1, -1, -1):
        if tokens[j].kind == "hard":
            return False
        kind = HEADS.get((ALIASES.get(tokens[j].key, tokens[j].key),))
        if kind is not None:
            return kind == "stream"
    return False
