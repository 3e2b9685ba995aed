"""Patterns that a player in words is read by: numbers, units, clubs' distances, drives, curves."""

from __future__ import annotations

import re

from ..wording import one_of

NUMBER = r"(?P<number>\d{1,9}(?:\.\d{1,9})?)"
UNIT = r"(?:\s*(?P<unit>yards?|yds?|y|metres?|meters?|m)\b)?"
UPPER = r"\s*(?:-|–|to|and)\s*(?P<upper>\d{2,3})(?![\d.])"
"""The other end of a range of yards or scores."""
SIZE_UPPER = (
    r"(?:\s*(?:-|–|to)\s*|(?<=between \d\d\d)\s*and\s*|(?<=between \d\d)\s*and\s*)(?P<upper>\d{2,3})(?![\d.])"
)
"""The same of a club: "and" only behind "between", as "driver 150 and 56" are two clubs."""
TEE_ONLY = r"(?:only\s+(?:from|off)\s+(?:the\s+)?tee|tee\s+only|(?:from|off)\s+(?:the\s+)?tee\s+only)"
HANDICAP = r"(?:handicap(?:per)?|hcp\.?|hdcp\.?|h['’/]?cap\.?|hc|hi|index)"
NEEDED_UNIT = r"(?P<unit>yards?|yds?|y|metres?|meters?|m)\b"
NO_NUMBER = r"(?P<number>)(?P<unit>)"
"""Groups of a pattern whose number stands behind the club."""
SHAPED = "fade|draw|slice|hook"
SIDE = r"(?:short|long|left|right)"
MOST_CURVE_SAID_YD = 60.0
"""More yards than this before a shape are the club's carry [yd]: no solid strike curves so far (assumed)."""
WHOSE = r"(?:the\s+|an?\s+|his\s+|her\s+|my\s+)?"
"""What may stand before a club."""

_SAYS_NOTHING = one_of(
    "he's", "she's", "and", "with", "a", "an", "the", "is", "of", "who", "he", "she", "her", "his", "player",
    "golfer", "hits?", "plays?", "has", "have", "i'm", "i", "am", "my", r"tends?\s+to", "usually", "mostly",
    "often", "always", "generally", "normally", r"at\s+home",
    r"carries(?=\s+(?:\D|(?:[2-9]|11)[\s-]*[a-z]))",  # a club, not yards
)  # fmt: skip
SKIP = re.compile(rf"(?:[\s,;]|\b{_SAYS_NOTHING}\b)+")

_CARRY_BEFORE = r"carr(?:y|ies)(?:\s+of)?|total(?:\s+of)?|goes|hits|is|of"
_CARRY_AFTER = r"carry|in the air|total|overall|with run|run included"
_NEXT_CLUB = r"(?:[1-9]|11)\s*-?\s*(?:irons?|woods?|hybrids?|[ihw])\b"
_ACROSS_BEHIND = r"\s*(?:yards?|yds?|y|metres?|m)?\s*(?:wide|across|deep)\b"
CLUB_SIZE = re.compile(
    r"\s*[:=]?\s*(?P<low>low|held[ -]down|knock-?down)?\s*"
    rf"(?P<before>{_CARRY_BEFORE})?\s*"
    r"(?:(?:about|around|roughly|between)\s+|~\s*)?"
    rf"(?!{_NEXT_CLUB}){NUMBER}(?:ish\b)?(?!\d)"
    rf"(?:{SIZE_UPPER}(?!\s*-?\s*(?:i|h|w)))?{UNIT}"
    rf"(?!{_ACROSS_BEHIND})"
    rf"(?:\s*(?P<after>{_CARRY_AFTER})\b)?"
)
"""How far a club goes, behind its name."""

CURVE_BEHIND = re.compile(
    rf"\s*(?:by\s+|about\s+|around\s+)?{NUMBER}(?![\d.]){UNIT}"
    r"(?!\s*(?:carry|total|overall|in the air|with run|run included|wide|across|deep|-|to\s+\d))"
)
"""How far a club curves, behind its name; not a width, a range or a distance that says it is one."""
CURVE_NEXT = re.compile(rf"[\s-]*(?:{SHAPED})\b")
_A_DRIVE = one_of(
    r"(?:(?:average|avg\.?)\s+)?drives?(?:\s+(?:it|the\s+ball))?",
    r"driving\s+distance", r"tee\s+shots?", r"off\s+the\s+tee",
    r"(?:(?<=hits )|(?<=carries ))(?:it|the\s+ball|drives?)",
)  # fmt: skip
_FAR = r"(?=\s*(?:[:=]|carr|goes|go\b|of\b|is\b|about\b|around\b|\d))"
DRIVES = re.compile(rf"{_A_DRIVE}{_FAR}\s*(?:goes|go|about|around)?")
"""A drive spoken of without its club: the driver's, and a total unless a carry is said."""
NOT_ALONE = re.compile(r"[\s,;]*(?:is\s+)?" + one_of(
    TEE_ONLY, r"\d+(?:\.\d+)?\s*(?:yards?|yds?|y|m|metres?)?\s*(?:wide|deep)", r"misses", r"miss\b",
    r"goes\s+(?:left|right)\b", r"fades?\b", r"draws?\b", r"slices?\b", r"hooks?\b",
))  # fmt: skip
