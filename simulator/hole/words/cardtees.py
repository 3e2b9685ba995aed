"""Tees told by what the hole measures from each, as a score card has them."""

from __future__ import annotations

from dataclasses import replace

from simulator.hole.words.lex import Token, listed
from simulator.hole.words.tokenruns import runs

_TEE_COLOURS = frozenset(listed("white yellow red blue black gold silver"))
_TEE_PLAYERS = frozenset(listed("medal mens men ladies women womens championship seniors juniors members"))
_TEE_PLACES = frozenset(listed("back forward front middle"))
"""Where a tee is: on a card only beside the word itself ("off the back tee"; "back 384" is a green's)."""

_OF_THE_CARD = frozenset(listed("from off for the of tee tees yards yds"))
_LEAST_CARD = 60.0
"""A shorter length than this is none of a tee's on the card [yd or m]."""


def by_the_card(tokens: list[Token]) -> list[Token]:
    """ "Par 4, 360 white, 310 red" and "360 from the whites, 310 from the reds" are the lengths of tees.

    So are "360 (white), 310 (red)" and, behind a full stop, "Par 4. Whites 360, reds 310".
    """
    out: list[Token] = []
    begun = False
    for one in runs(_bracketed(tokens)):
        lengths = sum(token.kind == "number" and token.value > _LEAST_CARD for token in one)
        out += _of_the_card(one, begun)
        begun = begun or lengths > 0
    return out


def _bracketed(tokens: list[Token]) -> list[Token]:
    """The same with the tees of the card, "360 (white)", out of their brackets."""
    out: list[Token] = []
    opened: int | None = None
    for token in tokens:
        if token.key == ")" and opened is not None:
            inside = out[opened + 1 :]
            behind = opened > 0 and out[opened - 1].kind == "number"
            if behind and _tee_named(inside) is not None:
                out[opened:] = [*inside, replace(token, kind="soft", key=",")]
                opened = None
                continue
        if token.key in ("(", ")"):
            opened = len(out) if token.key == "(" else None
        out.append(token)
    return out


def _tee_named(tokens: list[Token]) -> Token | None:
    """The word that tells which tee, where these words name one and nothing else: "off the back tee"."""
    told = [one for one in tokens if one.key not in _OF_THE_CARD]
    if len(told) != 1:
        return None
    says_tee = any(one.key.startswith("tee") for one in tokens)
    key = told[0].key
    singular = key.removesuffix("s") if key.removesuffix("s") in _TEE_COLOURS else key
    if singular in _TEE_COLOURS or key in _TEE_PLAYERS or (says_tee and key in _TEE_PLACES):
        return replace(told[0], key=singular)
    return None


def _of_the_card(section: list[Token], begun: bool) -> list[Token]:
    """One section with its tees apart; those of a hole whose length was `begun` before say no length."""
    parts: list[list[Token]] = [[]]
    for token in section:
        if token.kind == "and" or token.kind in ("hard", "soft"):
            parts.append([])
        else:
            parts[-1].append(token)
    least = 2 if begun else 1  # one by itself, later, may be anything
    tees: list[tuple[Token, Token]] = []
    rest: list[Token] = []
    for run in parts:
        start = 2 if [one.key for one in run[:1]] == ["par"] and len(run) > 3 else 0
        before, card = run[:start], run[start:]  # alone, or behind "par 4"
        numbers = [one for one in card if one.kind == "number"]
        tee = _tee_named([one for one in card if one.kind != "number"])
        plain = len(numbers) == 1 and numbers[0].unit in ("", "yd", "m") and numbers[0].value > _LEAST_CARD
        if tee is not None and plain:
            tees.append((tee, numbers[0]))
            run = before if begun else [*before, numbers[0]]
        begun = begun or any(one.kind == "number" and one.value > _LEAST_CARD for one in run)
        if run and rest:
            rest.append(replace(run[0], kind="soft", key=","))
        rest += run
    if len(tees) < least:
        return section
    for tee, number in tees:
        rest += [replace(tee, kind="hard", key=";"), tee, replace(tee, key="tee"), number]
    return [*rest, *section[-1:]] if section[-1].kind == "hard" else rest
