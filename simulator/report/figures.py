"""Numbers as a golfer reads them: counts in 100 plays, one in so many, scores with honest digits."""

from __future__ import annotations

import math
from collections.abc import Sequence

from ..player.levels import handicap_said as handicap_said  # told with the figures of answers too
from ..player.model import Player
from ..strategy.confidence import CLEAR_SHARE
from ..strategy.errorbars import Estimate

LEAST_COUNT = 0.005
"""A share below this is no count in 100 plays but one in so many."""

HELD = "\N{NO-BREAK SPACE}"
"""A space that no line is broken at; `plain_spaces` makes it an ordinary one in the end."""

NOTHING_STROKES = 0.005
"""Strokes fewer than this are 0.00 in two decimals [strokes]."""

_WORDS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip

MOST_SCORE_DIGITS = 2
"""Decimals of a score nobody needs more of."""

STEPS = (1, 2, 5, 10, 20, 50, 100)
"""Steps that a size is told in."""


def name_said(player: Player, word: str = "") -> str:
    """A player with the handicap behind the name, and a word before it: "Isolde (handicap 5)"."""
    of = "" if player.handicap is None else f" ({word}{handicap_said(player.handicap)})"
    return f"{player.name}{of}"


def unseen(sequences: int) -> str:
    """What is known of something that happened in none of the sequences.

    None of n leaves a chance of at most about 3/n at 95 % confidence (the "rule of three": (1 - 3/n)^n is
    near exp(-3)), hence a third of the sequences.
    """
    return f"fewer than {one_in(sequences // 3)}"


def one_in(number: int) -> str:
    """ "1 in 330", held together where lines are wrapped."""
    return f"1{HELD}in{HELD}{number:,}"


def count_words(share: float, sequences: int) -> str:
    """A share as a count in 100 plays; rare ones as one in so many."""
    if share <= 0.0:
        return unseen(sequences)
    if share < LEAST_COUNT:
        return one_in(_two_figures(1.0 / share))
    return f"{nearest(100.0 * share)}"


def nearest(number: float) -> int:
    """The nearest whole number, halves up."""
    return math.floor(number + 0.5)


def plain_spaces(text: str) -> str:
    """Text whose lines are made up, with ordinary spaces."""
    return text.replace(HELD, " ")


def _two_figures(number: float) -> int:
    scale = 10 ** max(0, math.floor(math.log10(number)) - 1)
    return round(number / scale) * scale


def in_hundred(shares: Sequence[float]) -> list[int]:
    """Whole counts that add up to 100 times the sum of the shares: the largest remainders are rounded up."""
    return adding_up([100.0 * s for s in shares])


def adding_up(exact: Sequence[float]) -> list[int]:
    """Whole numbers that add up to the sum, rounded: the largest remainders are rounded up."""
    counts = [math.floor(e + 1e-9) for e in exact]
    short = round(sum(exact)) - sum(counts)
    by_remainder = sorted(range(len(exact)), key=lambda k: counts[k] - exact[k])
    for k in by_remainder[:short]:
        counts[k] += 1
    return counts


def plus_minus(one: Estimate, scale: float = 1.0, digits: int = 3, signed: bool = False) -> str:
    """A figure with its standard error: "4.312 +- 0.004"."""
    sign = "+" if signed else ""
    return f"{scale * one.value:{sign}.{digits}f} +- {scale * one.standard_error:.{digits}f}"


def score_words(score: Estimate) -> str:
    """A score with only the digits its standard error supports (the last one at least one error wide)."""
    return f"{score.value:.{score_digits(score.standard_error)}f}"


def score_digits(standard_error: float) -> int:
    """Decimals of a score: the last is worth at least one standard error, two at most."""
    if standard_error <= 0.0:
        return MOST_SCORE_DIGITS
    return min(MOST_SCORE_DIGITS, max(0, math.floor(-math.log10(standard_error) + 1e-9)))


def known_to(standard_error: float) -> int:
    """The step a size is told in: the least of 1, 2, 5, 10 ... that its standard error does not exceed."""
    return next((step for step in STEPS if step >= standard_error), STEPS[-1])


def every_words(strokes: float, where: str = "you play this hole") -> str:
    """A difference as a shot every so many times: "a shot every five times you play this hole"."""
    times = nearest(1.0 / strokes)
    if times <= 1:
        shots = "a shot" if strokes < 1.5 else f"{strokes:.1f} shots"
        return f"{shots} every time {where}"
    return f"a shot every {number_word(times)} times {where}"


def number_word(number: int) -> str:
    """A whole number as it is read aloud: a word up to twelve."""
    return _WORDS[number] if 0 <= number < len(_WORDS) else f"{number:,}"


def in_ten(share: float) -> str:
    """A share as so many in 10, never all of them or none; 9 only from the share a clear answer has."""
    if share >= 0.95:
        return "more than 9 in 10"
    most = 9 if share >= CLEAR_SHARE else 8
    tenths = min(round(10.0 * share), most)
    return f"{tenths} in 10" if tenths else "fewer than 1 in 10"


def tenths(share: float) -> str:
    """The same for a narrow column: "9/10", ">9/10"."""
    return in_ten(share).replace("more than ", ">").replace("fewer than ", "<").replace(" in ", "/")


def pin_said(name: str) -> str:
    """A pin by its name or by its paces: "back left pin", "pin 22 on, 5 left"."""
    return f"pin {name}" if any(letter.isdigit() for letter in name) else f"{name} pin"


def capital(words: str) -> str:
    """The words with a capital first letter, as a sentence begins."""
    return words[:1].upper() + words[1:]


def join_words(words: Sequence[str], last: str = "and") -> str:
    """ "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"
