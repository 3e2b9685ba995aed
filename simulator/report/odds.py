"""How often trouble is found, as times in words: "the drain 1 time in 7"."""

from __future__ import annotations

from collections.abc import Sequence

from ..hole.surfaces import WORDS, Surface
from .chosen import TroubleRow
from .figures import HELD, LEAST_COUNT, nearest, unseen

TROUBLE_WORD = "trouble"
"""What a ball finds where no one area, but all of them together, are worth a sentence."""

LEAST_MORE = 0.02
"""Trouble found so much more often is worth a sentence (share of the plays)."""


def times_words(share: float, sequences: int) -> str:
    """A share as times: "1 time in 7", "6 times in 10", "fewer than 1 in 6,666" for what never came up."""
    if share <= 0.0:
        return unseen(sequences)
    if share < LEAST_COUNT:
        number = nearest(1.0 / share)
        return f"1{HELD}time in{HELD}{round(number, -2 if number >= 1000 else -1):,}"
    if share <= 0.4:
        number = nearest(1.0 / share)
        return f"1{HELD}time in{HELD}{number if number < 100 else round(number, -1)}"
    tens = nearest(10.0 * share)
    return f"{tens} times in{HELD}10" if tens < 10 else "nearly always"


def odds(row: TroubleRow, times: str) -> str:
    """A trouble and how often: "the drain 1 time in 7"; "burn 2: 1 time in 7" has two figures to part."""
    if row.said:
        return f"{row.said} {times}"
    words = row.words
    if words[-1:].isdigit():
        return f"{words}: {times}"
    common = words.islower() and not words.startswith(("the ", WORDS[Surface.OUT_OF_BOUNDS]))
    return f"{'the ' if common else ''}{words} {times}"


def apart(shares: Sequence[float], sequences: int) -> tuple[str, str]:
    """Two shares of trouble as times; in a hundred where they would be told by the same words."""
    one, two = (times_words(share, sequences) for share in shares)
    if one != two:
        return one, two
    one, two = (f"{nearest(100.0 * share)} times in{HELD}100" for share in shares)
    return one, two


def told(shares: Sequence[float], sequences: int) -> tuple[str, str]:
    """Two shares as times, told apart where they lie far enough from each other to be worth it."""
    if abs(shares[0] - shares[1]) >= LEAST_MORE:
        return apart(shares, sequences)
    one, two = (times_words(share, sequences) for share in shares)
    return one, two
