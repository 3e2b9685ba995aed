"""Numbers and short forms as people write them, read once for everything they type: "one fifty", "bkr"."""

from __future__ import annotations

import re
from collections.abc import Sequence

SMALL = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,
}  # fmt: skip
"""Words below twenty."""

TENS = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
    "ninety": 90,
}  # fmt: skip

SHORT_FOR = {
    "fwy": "fairway", "fw": "fairway", "fwys": "fairways", "bkr": "bunker", "bkrs": "bunkers", "grn": "green",
    "grns": "greens", "grnside": "greenside", "rgh": "rough", "rt": "right", "lft": "left",
}  # fmt: skip
"""Short forms on yardage cards and in notebooks, and the words they stand for."""

MOST_HUNDREDS = 6
""" "Six twenty" is 620, "seven twenty" is two numbers: no hole is so long [hundreds of yards]."""

_CLUB_NOUNS = ("iron", "wood", "hybrid", "rescue")
_NOUGHT = ("oh", "o")
_BY_TENS = {f"{word[:-1]}ies": f"{tens}s" for word, tens in TENS.items()}
_WORD = re.compile(r"[^\W\d_]+(?:['’][^\W\d_]+)*")
_SHORT = re.compile(rf"\b(?:{'|'.join(SHORT_FOR)})\b", re.IGNORECASE)
_AND_A_HALF = re.compile(r"\b(\d+)[ -]and[ -]a[ -]half\b", re.IGNORECASE)
_TIED = re.compile(
    r"(?<=\d)-(?=(?:yards?|yds?|feet|foot|ft|met(?:re|er)s?|paces?|mph|knots?|degrees?)\b)", re.IGNORECASE
)
"""The hyphen of "160-yards"."""
_LOOSE = re.compile(r"(?<=\d)[ -]?ish\b", re.IGNORECASE)
""" "10ish" is about 10."""
_BETWEEN = re.compile(r"[ \t]+|[ \t]*-[ \t]*")
"""What may stand between the words of one number."""


def in_full(text: str) -> str:
    """A text with the words that short forms stand for ("bkr": "bunker")."""
    return _SHORT.sub(lambda found: SHORT_FOR[found[0].casefold()], text)


def read_number(words: Sequence[str]) -> tuple[float, int] | None:
    """The number that some words in small letters begin with, and how many it takes; None without one.

    ``twelve``, ``twenty five``, ``one fifty`` and ``two oh five`` (hundreds, as yards are spoken),
    ``a hundred and ten``, ``three thousand``, ``two and a half``, ``seven point five``.
    """
    value, used = _whole(words)
    if used > 1 and _at(words, used) in _CLUB_NOUNS:  # "twenty seven iron" are a number and a club
        value, used = _whole(words[: used - 1])
    if not used:
        return None
    rest = tuple(words[used : used + 3])
    if rest == ("and", "a", "half"):
        return value + 0.5, used + 3
    if len(rest) > 1 and rest[0] == "point" and SMALL.get(rest[1], 10) < 10:
        return value + SMALL[rest[1]] / 10.0, used + 2
    return float(value), used


def _whole(words: Sequence[str]) -> tuple[int, int]:
    """A whole number and its words; 0 words without one."""
    value, used = _hundreds(words)
    if value == 0 or _at(words, used) != "thousand":
        return value, used
    more, behind = _hundreds(words[used + 1 :])
    return 1000 * value + (more if behind and more < 1000 else 0), used + 1 + behind


def _at(words: Sequence[str], k: int) -> str:
    return words[k] if k < len(words) else ""


def _hundreds(words: Sequence[str]) -> tuple[int, int]:
    if not words:
        return 0, 0
    second = _at(words, 1)
    unit = 1 if words[0] == "a" else SMALL.get(words[0], 0)
    if words[0] == "hundred" or (0 < unit < 10 and second == "hundred"):
        at = 1 if words[0] == "hundred" else 2
        unit = 1 if words[0] == "hundred" else unit
        joined = at + (_at(words, at) == "and")
        more, behind = _hundreds(words[joined:])
        more *= more < 100  # "between one hundred and one ten" are two
        return (100 * unit + more, joined + behind) if behind and more else (100 * unit, at)
    if 0 < unit <= MOST_HUNDREDS and words[0] != "a":
        if second in _NOUGHT and 0 < SMALL.get(_at(words, 2), 0) < 10:
            return 100 * unit + SMALL[words[2]], 3
        more, behind = _tens(words[1:])
        if more >= 10:
            return 100 * unit + more, 1 + behind
    return _tens(words)


def _tens(words: Sequence[str]) -> tuple[int, int]:
    if not words:
        return 0, 0
    tens = TENS.get(words[0])
    if tens is None:
        return (SMALL[words[0]], 1) if words[0] in SMALL else (0, 0)
    unit = SMALL.get(_at(words, 1), 0)
    return (tens + unit, 2) if 0 < unit < 10 else (tens, 1)


def in_figures(text: str, *, least: float = 0.0, before: str = "", ones: bool = False) -> str:
    """A text with its numbers in figures; "eighties" is "80s", "ten-ish" 10, "160-yards" loses its hyphen.

    A lone "one" stays as it is ("a good one") unless `ones`, or `before` says what makes it a number.

    Parameters
    ----------
    least : float
        Smaller numbers stay in words.
    before : str
        A pattern of what has to follow a number (blanks before it are skipped); without it anything may.
    """
    follows = re.compile(rf"[ \t-]*(?:{before})") if before else None
    out, at = "", 0
    while found := _WORD.search(text, at):
        out += text[at : found.start()]
        at = found.start()
        words, ends = _run(text, found)
        read = read_number(words)
        end = ends[read[1] - 1] if read else at
        lone = read is not None and words[: read[1]] == ["one"]
        if read and read[0] >= least and (follows.match(text, end) if follows else ones or not lone):
            out, at = f"{out}{read[0]:g}", end
        elif words[0] in _BY_TENS and not before:
            out, at = out + _BY_TENS[words[0]], found.end()
        else:
            out, at = out + found[0], found.end()
    return _LOOSE.sub("", _TIED.sub(" ", _AND_A_HALF.sub(r"\1.5", out + text[at:])))


def _run(text: str, first: re.Match[str]) -> tuple[list[str], list[int]]:
    """Words in small letters that one number may be made of, from one on, and where each ends."""
    words, ends = [first[0].casefold()], [first.end()]
    while len(words) < 10 and (gap := _BETWEEN.match(text, ends[-1])):
        word = _WORD.match(text, gap.end())
        if word is None:
            break
        words.append(word[0].casefold())
        ends.append(word.end())
    return words, ends
