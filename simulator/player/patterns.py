"""Patterns that a player in words is read by: numbers, units, clubs' distances, drives, curves."""

from __future__ import annotations

import re

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
SKIP = re.compile(
    r"(?:[\s,;]|\b(?:he's|she's|and|with|a|an|the|is|of|who|he|she|her|his|player|golfer|hits?|plays?|has|have|i'm|i|am|my"
    r"|tends?\s+to|usually|mostly|often|always|generally|normally|at\s+home|carries(?=\s+(?:\D|(?:[2-9]|11)[\s-]*[a-z])))\b)+"
)
CLUB_SIZE = re.compile(
    r"\s*[:=]?\s*(?P<low>low|held[ -]down|knock-?down)?\s*"
    r"(?P<before>carr(?:y|ies)(?:\s+of)?|total(?:\s+of)?|goes|hits|is|of)?\s*"
    r"(?:(?:about|around|roughly|between)\s+|~\s*)?"
    rf"(?!(?:[1-9]|11)\s*-?\s*(?:irons?|woods?|hybrids?|[ihw])\b){NUMBER}(?:ish\b)?(?!\d)"
    rf"(?:{SIZE_UPPER}(?!\s*-?\s*(?:i|h|w)))?{UNIT}"
    r"(?!\s*(?:yards?|yds?|y|metres?|m)?\s*(?:wide|across|deep)\b)"
    r"(?:\s*(?P<after>carry|in the air|total|overall|with run|run included)\b)?"
)
CURVE_BEHIND = re.compile(
    rf"\s*(?:by\s+|about\s+|around\s+)?{NUMBER}(?![\d.]){UNIT}"
    r"(?!\s*(?:carry|total|overall|in the air|with run|run included|wide|across|deep|-|to\s+\d))"
)
"""How far a club curves, behind its name; not a width, a range or a distance that says it is one."""
CURVE_NEXT = re.compile(rf"[\s-]*(?:{SHAPED})\b")
DRIVES = re.compile(
    r"(?:(?:(?:average|avg\.?)\s+)?drives?(?:\s+(?:it|the\s+ball))?|driving\s+distance|tee\s+shots?|off\s+the\s+tee"
    r"|(?:(?<=hits )|(?<=carries ))(?:it|the\s+ball|drives?))"
    r"(?=\s*(?:[:=]|carr|goes|go\b|of\b|is\b|about\b|around\b|\d))"
    r"\s*(?:goes|go|about|around)?"
)
"""A drive spoken of without its club: the driver's, and a total unless a carry is said."""
NOT_ALONE = re.compile(rf"[\s,;]*(?:is\s+)?(?:{TEE_ONLY}"
                        r"|\d+(?:\.\d+)?\s*(?:yards?|yds?|y|m|metres?)?"
                        r"\s*(?:wide|deep)|misses|miss\b|goes\s+(?:left|right)\b"
                        r"|fades?\b|draws?\b|slices?\b|hooks?\b)")  # fmt: skip
