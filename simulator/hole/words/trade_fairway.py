"""Ways of speaking of fairways: split ones, double doglegs, cambers, bunkers that pinch one."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import BREAKS, SIDES, as_words, break_behind, key_of, noun_at, runs
from simulator.hole.words.vocabulary import FILLERS

_KICKS = frozenset(listed("kicks kick feeds feed gathers runs bounces goes"))
_CAMBER = frozenset(listed("camber cambered cambers sidehill"))


def split(tokens: list[Token]) -> list[Token]:
    """ "Split fairway, left 24 wide, right 28 wide": each half is a fairway on its side of the line."""
    start = next(
        (k for k, one in enumerate(tokens)
         if one.key in ("split", "two", "double", "divided") and tokens[k + 1 : k + 2]
         and tokens[k + 1].key in ("fairway", "fairways")), None)  # fmt: skip
    if start is None:
        return tokens
    stop = break_behind(tokens, start + 2)
    if start + 2 == stop < len(tokens):  # "split fairway; left 20 wide"
        return tokens
    out: list[Token] = []
    halves = 0
    for run in runs(tokens[start + 2 : stop], ("soft", "and")):
        while run and key_of(run[0]) in (*FILLERS, "one", "of"):
            run = run[1:]
        if run and key_of(run[0]) in SIDES:
            halves += 1
            rest = run[1:]
            while rest and rest[0].key in ("one", "side", "half", "hand", "fairway", "is"):
                rest = rest[1:]
            run = [run[0], *as_words(run[0], "fairway"), *rest]
            if run[-1].kind in ("soft", "and"):
                run[-1] = replace(run[-1], kind="soft", key=",")
        out += run
    if halves != 2:
        return tokens
    return [*tokens[:start], *out, *tokens[stop:]]


def double_bend(tokens: list[Token]) -> list[Token]:
    """ "Double dogleg, left at 250 then right at 430" is two of them; "then" may be left out."""
    out: list[Token] = []
    k = 0
    while k < len(tokens):
        following = noun_at(tokens, k + 1)
        if tokens[k].key == "double" and following[1] == "bend":
            stop = break_behind(tokens, k)
            if sum(key_of(one) in SIDES for one in tokens[k:stop]) >= 2:
                k += 1 + following[0]
                out.append(replace(tokens[k - 1], key="dogleg"))
                k += k < len(tokens) and tokens[k].kind == "soft"
                for token in tokens[k:stop]:
                    if key_of(token) in SIDES and out[-1].kind == "number":
                        out.append(replace(token, kind="and", key="and"))
                    out.append(token)
                k = max(k, stop)
                continue
        out.append(tokens[k])
        k += 1
    return out


def cambered(tokens: list[Token]) -> list[Token]:
    """ "Left to right camber" and "everything kicks right" are a fairway that falls."""
    out: list[Token] = []
    for run in runs(tokens, BREAKS):
        words = [one for one in run if one.key not in FILLERS]
        keys = [one.key for one in words]
        kicks = len(keys) > 1 and keys[0] in ("everything", "ball", "balls", "it") and keys[1] in _KICKS
        camber = any(key in _CAMBER for key in keys)
        if not (kicks or camber):
            out += run
            continue
        rest = words[2:] if kicks else [one for one in words if one.key not in (*_CAMBER, "fairway")]
        out += [*as_words(words[0], "fairway falls"), *rest]
    return out


def between_bunkers(tokens: list[Token]) -> list[Token]:
    """ "Narrows to 18 at 240 between bunkers": they stand on both sides there."""
    out: list[Token] = []
    for k, token in enumerate(tokens):
        following = [one.key for one in tokens[k + 1 : k + 3]]
        places = [b for a, b in pairwise(out) if a.key == "at" and b.kind == "number"]
        pair = following[:1] == ["bunkers"] or (following[:1] == ["two"] and following[1:] == ["bunkers"])
        if token.key == "between" and pair and places:
            out += as_words(token, ";")
        elif out and token.key == "two" and tokens[k - 1].key == "between" and following[:1] == ["bunkers"]:
            continue
        elif token.key == "bunkers" and places and _from_between(tokens, k):
            out += [token, *as_words(token, "both sides at"), places[-1]]
        else:
            out.append(token)
    return out


def _from_between(tokens: list[Token], k: int) -> bool:
    """Whether "between" or "between two" stands before the bunkers at k, and nothing but a break behind."""
    before = [one.key for one in tokens[max(0, k - 2) : k]]
    alone = k + 1 == len(tokens) or tokens[k + 1].kind in BREAKS
    return alone and (before[-1:] == ["between"] or before == ["between", "two"])
