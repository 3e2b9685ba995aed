"""What to say for notes that leave open where a ball went, with which club or in how many strokes."""

from __future__ import annotations

import re

from .parts import CLUB, GAP, LEFT_RIGHT, THE, UNIT, pattern
from .spoken import MISHIT

_GONE_OR_LEFT = (
    'gone or left? Say "to {yards} on, fairway" for what it went from the tee, '
    '"to {yards} out, fairway" for what was left ("left half" and "right rough" are places too)'
)
_HOW_FAR = (
    'how far, and on what? Say "to 10 behind the green", "to 20 short of the green", "to 15 out, left rough"'
)
MISSED = pattern(r".*\b(?:missed|lipped|burn(?:ed|t)|horseshoed)\b")
"""A stroke of which only that it missed is said."""

_STRUCK = rf"(?:{MISHIT.pattern})*"
_CLUB = r"(?:driver|\w+[\s-]?(?:wood|hybrid|iron)|wedge|[1-9][wih]?)"
"""As `parts.CLUB`, bare numbers too."""

_ON_WHAT = r"(?:middle|centre|center|fairway|straight|left|right|rough|down|the|out)"
_YARDS = r"(?:yards?|yds?|yd|y|m)?"
_UP_AND_DOWN = (
    r".*\bup[\s-]+and[\s-]+down\b.*",
    r".*\b(?:chip|pitch|splash|wedge)\w*\s+and\s+(?:an?\s+|one\s+)?putt\w*",
)
_INSTEAD = tuple(
    (pattern(*ways), why)
    for ways, why in (
        (_UP_AND_DOWN, 'how near did it come? Say both strokes, "chip to 6 ft; 1 putt"'),
        (
            (rf"{MISSED.pattern}.*",),
            'where did it come to? Say each stroke, "putt to 2 ft; tap-in", or all putts, "2 putts"; '
            'of a green, "to 8 right of the green"',
        ),
        (
            (rf".+?{GAP}(?:to\s+)?(?:stiff|close|dead|nothing|kick-in|tap-in|gimme)(?:\s+range)?",),
            'how near? Say "to 2 ft"',
        ),
        ((r"to\s+(?P<place>\d.*)",), 'with which club? Say it first, "8-iron to {place}"'),
        (
            (r"(?:played\s+|got\s+|came\s+)?out(?:\s+.*)?",),
            'out to where? Say "out to 15 ft", "out to 100 out, fairway"',
        ),
        (
            (r"unplayable.*",),
            'and then? Say "unplayable, drop 150 out, rough" or "unplayable, again" (stroke and distance)',
        ),
        (
            (rf".+?\b(?P<side>left|right)\s+of\s+{THE}fairway\b.*",),
            'on it or beside it? Say "{side} half" or "{side} rough", or how far off, '
            '"160 out, 8 {side} of the fairway"',
        ),
        (
            (rf".+?{GAP}(?P<yards>[1-5]?\d)\s*{_YARDS}{GAP}(?P<side>left|right)\b.*",),
            'of what? Say "to {yards} {side} of the green", "to {yards} ft {side}" of the hole, '
            'or its distance, "to {yards} out, {side} rough"',
        ),
        (
            (rf".+?{GAP}(?P<yards>\d+)\s*{_YARDS}{GAP}(?:down\s+the\s+)?{_ON_WHAT}.*",),
            _GONE_OR_LEFT,
        ),
        (
            (
                rf"{_STRUCK}{CLUB}{GAP}(?:(?:went|goes|carried|rolled|only|about|just|{_ON_WHAT}){GAP})*"
                rf"(?P<yards>\d{{2,3}})\s*{UNIT}?(?:\s+(?:carry|total|forwards?|along|down|in|away))*",
            ),
            _GONE_OR_LEFT,
        ),
        (
            (rf"{_STRUCK}(?:{_CLUB}|{CLUB})?\s*",),
            'to where? For example "to 150 out", "to 60 out, right rough"',
        ),
        (
            (rf".+?{GAP}(?:(?:well|way|miles)\s+)?(?:(?:short|long|left|right|pin[\s-]high)[\s,]*)+",),
            _HOW_FAR,
        ),
    )
)
"""What golfers note that leaves the place open, and what to say for it."""


def gone_or_left(club: str) -> str | None:
    """What to say for a club with yards behind it ("driver 215 yards"), which may be either; None without."""
    found = re.fullmatch(rf".+?[\s,]+(?P<yards>\d{{3}})\s*{UNIT}?", club, re.IGNORECASE)
    return _GONE_OR_LEFT.format(yards=found["yards"]) if found else None


def say_instead(clause: str) -> str | None:
    """What to say for a clause that leaves the place open; None where it is not known."""
    for way, why in _INSTEAD:
        if found := way.fullmatch(clause):
            return why.format(**found.groupdict())
    return None


def say_how_far(where: str) -> str:
    """What to say for a side without a distance, where it is not known of what."""
    side = re.search(rf"\b({LEFT_RIGHT})\b", where, re.IGNORECASE)
    if side is None:
        return _HOW_FAR
    return f'{_HOW_FAR}, or on what it lies, "{side[1].lower()} rough"'
