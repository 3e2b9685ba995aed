"""Parts that the patterns of notes are put together from: clubs, ground, units, words that say nothing."""

from __future__ import annotations

import re

from ...wording import one_of


def pattern(*ways: str, flags: re.RegexFlag = re.NOFLAG) -> re.Pattern[str]:
    """Any of these ways of saying it, in capitals or not."""
    return re.compile("|".join(ways), re.IGNORECASE | flags)


A = r"(?:(?:an?|the|my|his|her)\s+)?"
AN = r"(?:an?\s+)?"
THE = r"(?:the\s+)?"
"""What may stand before a noun."""

AND = r"(?:and\s+)?"
GAP = r"[\s,]+"
"""What stands between a club and what is said of its ball."""

CAME = r"(?:(?:goes|went|finish(?:es|ed)|end(?:s|ed)(?:\s+up)?|c[ao]mes?(?:\s+up)?|runs|ran)\s+)?"
"""How a ball came to where it lies: says nothing."""

JUST = r"(?:(?:just|slightly|a\s+(?:bit|touch|little))\s+)?"
ORDINAL = r"(?:1st|2nd|3rd|[4-9]th|first|second|third|fourth|fifth|sixth)"
TAKES = r"(?:takes?|took)"

FIGURE = r"\d+(?:\.\d+)?"
UNIT = r"(?:yards?|yds?|yd|y|metres?|meters?|m)"
"""Units of a distance along the ground."""

_OTHER_CLUBS = (
    r"driver|drv?|d|[2-9](?:[wih]|hy|wd)|hybrid|rescue|(?:pitching|gap|sand|lob)\s+wedge|"
    r"[pgsla]w|wedge|chip|pitch|splash|punch"
)
CLUB = rf"(?:\w+[\s-](?:wood|hybrid|iron)|{_OTHER_CLUBS})\b"
"""A club, or a swing short of full, as notes begin with one; bare numbers are left out."""

_NUMBERS = r"[1-9]|11|one|two|three|four|five|six|seven|eight|nine|driving|sand"
NEXT_CLUB = (
    rf"(?:(?:{_NUMBERS})[\s-]?(?:wood|hybrid|iron|rescue)|{_OTHER_CLUBS}"
    r"|(?:chipp|pitch|splash|punch|blast|hack|knock)ed|(?:hack|knock|got|gets?)\s+(?:it\s+)?out)\b"
)
"""What a stroke behind a comma begins with: a club (no wood a ball is in), or what was done with one."""

PIN_HIGH = r"(?:pin|flag|hole)[\s-]high\b"
CENTRE = r"cent(?:re|er)"
LEFT_RIGHT = r"(?:left|right)"
ROUGHS = r"(?:(?:light|semi|heavy|deep|thick)[\s-]+)?"
"""What kind of rough it is."""

GROWN = r"(?:gorse|whins|heather|bracken|brambles|reeds|fescue|scrub|bushes)"
"""What a drawn area of heavy rough is often called."""

_SIDE = rf"(?:on\s+the\s+)?{LEFT_RIGHT}(?:[\s-]+(?:hand[\s-]+)?side)?(?:\s+of(?:\s+the)?)?"
_INTO = rf"(?:(?:in(?:to)?|on(?:to)?)\s+)?{THE}(?:just\s+)?"
_NOT_BESIDE = r"(?<!(?:left|ight)\sof\s)(?<!(?:left|ight)\sof\sthe\s)"
"""Left of the fairway is not on it."""

GROUND = one_of(
    rf"{_INTO}(?:{_SIDE}\s+)?(?:in\s+)?{THE}"
    + one_of(
        rf"(?:first\s+cut|{ROUGHS}rough|trees|woods?|{GROWN})\b",
        rf"(?:(?:half|{CENTRE}|middle)(?:\s+of)?(?:\s+the)?\s+)?{_NOT_BESIDE}fairway\b",
    )
    + rf"(?:{GAP}{_SIDE})?",
    rf"{THE}{LEFT_RIGHT}\s+half",
    rf"(?:(?:down|dead|the)\s+)*(?:middle|{CENTRE})",
)
"""Ground a ball lies on, with a side or without, and no word of how far along."""

OFF_GROUND = rf"{ROUGHS}(?:rough|bunker|trap|sand|trees|fairway)"
"""Ground beside a green."""
