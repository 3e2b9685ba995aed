"""What lies inside or outside of the corners of a hole that bends more than once."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import BREAKS, key_of, runs
from simulator.hole.words.vocabulary import HEADS

_ARTICLES = frozenset(listed("the a an"))
_ROUND = frozenset(listed("round around"))
_ROUNDED = frozenset(listed("water trees heavy rough penalty"))
"""What a hole bends round; of a bunker it is said where it is."""

_OTHER = {"left": "right", "right": "left"}
_CORNERS = frozenset(listed("corner corners bend bends dogleg doglegs turn turns elbow"))
_WHICH = {"first": 0, "second": 1, "third": 2}
_EVERY = frozenset(listed("both each corners bends doglegs turns"))


def round_the_corner(tokens: list[Token]) -> list[Token]:
    """ "Dogleg left round a lake" is a dogleg, and a lake inside the corner."""
    out: list[Token] = []
    bending = False
    for token in tokens:
        head = HEADS.get((token.key,)) if token.kind == "word" else None
        before = [one for one in out[-3:] if key_of(one) not in _ARTICLES]
        if head in _ROUNDED and bending and before and key_of(before[-1]) in _ROUND:
            at = out.index(before[-1])
            words = [replace(token, kind="word", key=key) for key in ("inside", "corner")]
            out = [*out[:at], replace(before[-1], kind="hard", key=";"), token, *words]
            bending = False
            continue
        if token.kind == "hard":
            bending = False
        elif head is not None:
            bending = head == "bend"
        out.append(token)
    return out


def each_corner(tokens: list[Token]) -> list[Token]:
    """ "Trees inside both corners" of a double dogleg stand on the inside of each, round it.

    What is said of a hole with one bend, or without saying which corner, is left as it is.
    """
    bends = _bends(tokens)
    if len(bends) < 2:
        return tokens
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        ends = [run.pop()] if run[-1].kind in BREAKS else []
        out += [*_at_each(run, bends), *ends]
    return out


def _bends(tokens: list[Token]) -> list[tuple[str, Token]]:
    """Side and place of every bend that says both, in the order of the words."""
    found: list[tuple[str, Token]] = []
    side, bending, at = "", False, False
    for token in tokens:
        key = key_of(token)
        if token.kind == "word" and HEADS.get((token.key,)) is not None:
            bending = HEADS[token.key,] == "bend"
        if token.kind == "hard":
            bending = False
        if bending and key in _OTHER:
            side = key
        if bending and at and token.kind == "number" and side:
            found.append((side, token))
            side = ""
        at = key == "at"
    return found


def _at_each(run: list[Token], bends: list[tuple[str, Token]]) -> list[Token]:
    """One run of words, once for every corner that it speaks of."""
    keys = [one.key for one in run]
    low = next((k for k, key in enumerate(keys) if key in ("inside", "outside")), None)
    high = next((k for k in range(len(run) - 1, -1, -1) if keys[k] in _CORNERS), None)
    if low is None or high is None or high < low:
        return run
    between = keys[low + 1 : high + 1]
    chosen = [bends[n] for word, n in _WHICH.items() if word in between and n < len(bends)]
    chosen = chosen or [one for one in bends if one[0] in between]
    chosen = chosen or (bends if _EVERY & set(between) else [])
    start = low
    while start and keys[start - 1] in ("on", "the", "at"):
        start -= 1
    rest = [*run[:start], *run[high + 1 :]]
    told = any(one.kind == "number" for one in rest)
    if not chosen or (told and len(chosen) > 1):
        return run
    out: list[Token] = []
    for side, at in chosen:
        meant = side if keys[low] == "inside" else _OTHER[side]
        word = replace(run[low], key=meant)
        place = [replace(word, key=_place_word(run)), replace(at, start=word.start, end=word.end)]
        stop = [replace(word, kind="hard", key=";")] if out else []
        out += [*stop, *run[:start], word, *([] if told else place), *run[high + 1 :]]
    return out


def _place_word(run: list[Token]) -> str:
    """A bunker stands at the corner, an area lies round it."""
    return "at" if any(HEADS.get((one.key,)) == "bunker" for one in run) else "corner"
