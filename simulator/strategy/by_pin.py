"""Places told by the pin ("pin high, 12 right", "12 short, 8 right of the flag") as places by the line."""

from __future__ import annotations

import re

from ..errors import WordsRefused
from ..hole.model import Hole
from .distancewords import NUMBER, UNIT, yards
from .placewords import GROUND_WORDS, SIDES, Told, on_words, plain, with_rest

_OF = r"\s*(?:of|from)?\s*(?:the\s+)?(?:pin|flag|hole)\b"
_END = r"(?=\s*(?:,|and\b|$|[-+]?\d))"
_HIGH = r"(?P<high>(?:flag|pin|hole)[\s-]+high\b[\s,]*)?"
_ALONG = (
    rf"(?:(?P<far>{NUMBER})\s*(?:(?P<unit>{UNIT})\s+)?(?P<way>short|shy|long|past|behind|beyond)"
    rf"(?:(?P<of>{_OF})|{_END})[\s,]*(?:and\s+)?)?"
)
_ACROSS = (
    rf"(?:(?P<beside>{NUMBER})?\s*(?:(?P<unit2>{UNIT})\s+)?(?:(?:to|in|on)\s+the\s+)?(?P<side>left|right)\b"
    rf"(?P<of2>{_OF})?)?"
)
_TOLD = re.compile(rf"\s*{_HIGH}{_ALONG}{_ACROSS}")
"""Any of them may be left out: pin high, so far short or long, so far left or right."""

_HIGH_LAST = re.compile(r"(?P<place>.*\b(?:left|right))[\s,]+(?:flag|pin|hole)[\s-]+high")
"""The words the other way round: "12 right, pin high"."""

_NUMBER_LAST = re.compile(
    rf"(?P<high>(?:flag|pin|hole)[\s-]+high)[\s,]+(?P<side>left|right)[\s,]+(?:by\s+)?"
    rf"(?P<far>{NUMBER}(?:\s*(?:{UNIT})\b)?)(?!\s*(?:ft|feet|foot|'|\d|out\b))"
)
"""A side before its yards: "pin high left 10"."""

_GROUND = re.compile(rf"\b(?:{'|'.join(GROUND_WORDS)})\b")
_SHORT = frozenset(("short", "shy"))


def by_the_pin(text: str, hole: Hole) -> Told | None:
    """A place told by the pin put into yards on and beside the line, which `places.place` reads.

    Parameters
    ----------
    text : str
        ``"pin high, 12 right"``, ``"pin high, right rough"`` (the nearest there), ``"12 short, 8 right of
        the pin"``, ``"10 m past the flag"``; short and long
        along the last leg of the line, left and right across it, as seen when coming up to the green. What
        else is said stays behind it.
    hole : Hole
        With the pin in use.

    Returns
    -------
    Told or None
        Words such as ``"393.0 on, 20.0 right"``. None: other words.

    Raises
    ------
    UsageError
        A side, but not how far to it.
    """
    usual = _HIGH_LAST.sub(r"pin high, \g<place>", plain(text))
    usual = _NUMBER_LAST.sub(r"\g<high>, \g<far> \g<side>", usual)
    told = _TOLD.match(usual)
    if told is None:
        return None
    far, side, of = told["far"], told["side"], told["of"] or told["of2"]
    as_out = told["way"] == "short" and of and not side  # "100 short of the pin" is 100 out
    if not (told["high"] or far or (told["beside"] and of)) or as_out:
        return None
    if side and not told["beside"] and _GROUND.search(usual[told.end() :]):
        station = hole.station_offset(*hole.pin.xy_yd)[0] + _along_yd(told)
        short = told[0].removesuffix(side).strip(" ,")
        taken = None if told["high"] or of else f"{short!r} is counted from the pin"
        return Told(f"{station:.1f} on, {side} {usual[told.end() :].strip(' ,')}", taken)
    if side and not told["beside"]:
        raise WordsRefused("place", text, f'how far {side}? Say "pin high, 12 {side}", "10 short, 6 {side}"')
    if told["high"] and not side:
        raise WordsRefused("place", text, 'pin high on which side? Say "pin high, 12 right"')
    station, offset = hole.station_offset(*hole.pin.xy_yd)
    station += _along_yd(told)
    if side:
        offset += yards(told["beside"], told["unit2"]) * SIDES[side]
    taken = None if of or told["high"] else f"{told[0].strip(' ,')!r} is counted from the pin"
    return Told(with_rest(on_words(station, offset), usual, told), taken)


def _along_yd(told: re.Match[str]) -> float:
    """Yards past the pin along the line, of a place short of it less than none."""
    if not told["far"]:
        return 0.0
    return yards(told["far"], told["unit"]) * (-1.0 if told["way"] in _SHORT else 1.0)
