"""Figures in notes: the numbers of strokes, and lengths in words."""

from __future__ import annotations

import re

from ...spelt import in_figures as numbers_in_figures
from ...spelt import in_full

_MEASURED = r"(?:feet|foot|footers?|ft|inch(?:es)?|yards?|yds?|paces?|metres?|meters?)\b"
_COUPLE = re.compile(rf"(?<!half )\b(?:a couple(?: of)?|an?)\s+(?={_MEASURED})", re.IGNORECASE)
_ALONG = r"(?:out|on|away|to go|left|right|short|past|behind|from|to|off|remaining)\b|[,;.\n]|$"
"""What stands behind a distance; a number below ten before it may be a club ("seven on the green")."""
_HALF = re.compile(r"\bhalf\s+(?:an?\s+)?(?P<unit>foot|yard|pace|metre|meter)\b", re.IGNORECASE)
_HALF_FT = {"foot": 0.5, "metre": 1.6, "meter": 1.6}
"""Feet in half of each unit; a yard and a pace have three."""

_PUTTS_BEFORE = re.compile(
    r"(?P<break>^|[;,.\n])\s*putts\s*[:=]?\s*(?P<count>[1-9]|one|two|three|four)\b(?!\s*(?:ft|feet|foot|'))",
    re.IGNORECASE,
)
"""The number behind the word, as on a card: "putts 2", "putts: 2"."""

_INCHES = re.compile(r"\b(?P<number>\d{1,9})\s*inch(?:es)?\b", re.IGNORECASE)


_NUMBERED = re.compile(r"(?P<break>^|[;,\n]|(?<=\s))\s*(?P<number>\d{1,2})[.):](?=\s)\s*")

_WITH_PENALTY = re.compile(r"\b(?:ob|o\.b\.|bounds|lost|water|hazard|unplayable)[\s,]*$", re.IGNORECASE)
"""Behind these the penalty stroke has a number, too."""


def without_numbers(text: str) -> str:
    """Notes without the numbers of strokes ("1. driver ... 2. 7i ..."), which part them."""
    told = list(_NUMBERED.finditer(text))
    unbroken = bool(told) and not told[0]["break"] and bool(text[: told[0].start()].strip())
    if not told or unbroken or int(told[0]["number"]) != 1:
        return text
    out, at, last = "", 0, 0
    for found in told:
        skips_one = bool(found["break"]) or _WITH_PENALTY.search(text[: found.start()]) is not None
        if int(found["number"]) - last in ((1, 2) if skips_one else (1,)):
            out, at, last = f"{out}{text[at : found.start()]};", found.end(), int(found["number"])
    return out + text[at:]


def in_figures(text: str) -> str:
    """Lengths in words as figures ("six feet", "a couple of feet", "one fifty out"), inches as feet."""
    text = _PUTTS_BEFORE.sub(r"\g<break> \g<count> putts", in_full(text))
    text = _HALF.sub(lambda found: f"{_HALF_FT.get(found['unit'].casefold(), 1.5):g} ft", text)
    text = _COUPLE.sub(lambda found: "2 " if "couple" in found[0].casefold() else "1 ", text)
    text = numbers_in_figures(numbers_in_figures(text, before=_MEASURED), least=10.0, before=_ALONG)
    return _INCHES.sub(lambda found: f"{int(found['number']) / 12.0:.3g} ft", text)
