"""The patterns of a swing in notes: a club, and where its ball went."""

from __future__ import annotations

from ...wording import one_of
from .parts import (
    AND,
    CAME,
    CENTRE,
    CLUB,
    FIGURE,
    GAP,
    GROUND,
    JUST,
    LEFT_RIGHT,
    OFF_GROUND,
    PIN_HIGH,
    THE,
    UNIT,
    pattern,
)

_THE_CLUB = rf"(?P<club>{CLUB}){GAP}"
_ANY_CLUB = rf"(?P<club>.+?){GAP}"
"""A club that is known by its name; whatever stands before the rest, which tells it is one."""

_LENGTH = rf"{FIGURE}\s*(?:(?:paces?|yards?|yds?|yd|y|metres?|meters?|m|feet|foot|ft)\s+)?"
_YARDS = rf"\s*(?:{UNIT}\s+)?"

# Holed, out of bounds, lost

HOLED = pattern(rf"(?P<club>.+?)(?<!left){GAP}(?:(?:goes|went)\s+)?(?:holed(?:\s+out)?|in)")
ACE = pattern(
    rf"{_ANY_CLUB}(?:holed\s+(?:for\s+)?)?(?:a\s+hole[\s-]in[\s-]one|hole[\s-]in[\s-]one|(?:an\s+)?ace)"
)
THE_HOLE = pattern(rf"{THE}(?:hole|cup)")

_LOST = r"lost(?: ball)?"
_OUT = r"out of bounds|o\.?b\.?"
_TO_A_SIDE = r"(?:,?\s+(?:on\s+the\s+)?(?:left|right|long|behind)(?:\s+side)?)?"
_WENT = r"(?:(?:goes|went|is|was)\s+)?"
GONE = pattern(rf"(?:{_OUT}|out|{_LOST}){_TO_A_SIDE}")
LOST = pattern(rf"{_ANY_CLUB}{_WENT}(?P<where>{GONE.pattern})")
TO_A_SIDE = pattern(rf"(?P<gone>.+)\s+to\s+the\s+{LEFT_RIGHT}")
GONE_THERE = pattern(rf"{_ANY_CLUB}(?:(?:in)?to|in|over|onto|on)\s+.+?{GAP}{AND}(?P<where>{_OUT}|{_LOST})")
LOST_IN = pattern(rf"{_ANY_CLUB}{_WENT}(?P<where>{_LOST}\s+(?:in|into|among)\s+[^\d,;]+)")

NO_CLUB = pattern(
    rf"{AND}(?:(?:played|plays|got|gets?|dug|came|comes)\s+(?:it\s+)?)?out\s+(?:(?:first\s+time|well|nicely|safely|fine)\s+)?(?:(?:to|onto)\s+(?=\D|\d+\s*(?:f|m|'|y|out))|(?=\d+\s*(?:f|m\b|')))"
    rf"(?P<where>.+)",
    rf"(?:thinned|bladed|skulled|duffed|fatted|chunked)\s+(?:it\s+)?(?P<beside>(?:over|through|short\s+of)\s+{THE}(?:green|back)|to\s+.+)",
)
"""A ball out of sand or trees without its club: "out to 15 ft"."""

GROUND_FIRST = pattern(rf"{GROUND}(?:{GAP}(?:{FIGURE}{_YARDS}(?:out|on|left|to\s+go)))?")
"""Where a second ball went, no club named again."""

CLUB_ALONE = pattern(CLUB)
SHORT_SWING_FIRST = pattern(r"(?:chip|pitch|splash|punch|blast|bump|flop|lob)\w*\b")
"""A club and the swing that was made with it, which a comma may part."""

# "To" a place

_RIM = r"(?:green|front|back|fringe|collar|apron|(?:left|right|front|back)\s+(?:edge|fringe|collar))\b"
_TO = one_of(
    r"to(?!\s+go\b)", r"in(?:to)?", rf"on(?:to)?(?=\s+{THE}{_RIM})", "finds", "found", r"leav(?:es|ing)"
)
SWING = pattern(rf"(?P<club>.+?)(?:\s*(?:->|→|>|:)\s*|\s+[-–]\s+|{GAP}{CAME}{_TO}\s+)(?P<where>.+)")

# Places that need no "to" before them

ON = pattern(
    rf"{_ANY_CLUB}(?:just\s+|safely\s+|hits?\s+)?(?:on|hits?\s+the\s+green|on\s+the\s+green|g\.?i\.?r\.?)",
    rf"(?P<bare>{CLUB}){GAP}{THE}green",
)
_NOT_TO = r"(?:(?!\sto\s).)*"
_OF_THE_GREEN = one_of(
    PIN_HIGH,
    rf"{LEFT_RIGHT}\s+of\s+{THE}green\b",
    r"(?:short\s+of|past|behind)\s+the\s+(?:(?!\sto\s)[a-z' -])+",
    r"(?:over|through|past|beyond|behind|off|short|long)\b(?:\s+(?!to\b)[a-z]+){0,4}?\s+(?:green|back|front)\b",
)
_BY_THE_GREEN = one_of(
    rf"(?:just\s+|{_LENGTH})?{_OF_THE_GREEN}{_NOT_TO}",
    rf"{_LENGTH}(?:to|from)\s+{THE}(?:front|middle|{CENTRE}|back|green)\b{_NOT_TO}",
)
BY_THE_GREEN = pattern(rf"(?P<club>(?:(?!\s(?:to|into|in|onto)\s).)+?){GAP}{CAME}(?P<where>{_BY_THE_GREEN})")
"""Over, short of, beside the green; so far to its front."""

_SIDE_FIRST = r"(?:(?:left|right|front|back|short|green-?side|fairway)\s+)+"
SIDE_AT_ONCE = pattern(
    rf"{_THE_CLUB}{THE}(?P<where>"
    + one_of(
        rf"{_SIDE_FIRST}(?:bunker|trap|edge|fringe|collar|apron)\b.*",
        rf"(?:bunker|trap)(?:{GAP}(?:left|right|front|back|short))*",
        r"(?:fringe|collar)",
        rf"(?:front|back|middle|{CENTRE})\s+of\s+{THE}green",
    )
    + ")"
)
"""A bunker or an edge told by its side: "4-hybrid front bunker"."""

GROUND_AT_ONCE = pattern(rf"{_THE_CLUB}{CAME}(?P<where>{GROUND})")
"""Ground: "driver, right rough"."""

WATER_AT_ONCE = pattern(
    rf"{_THE_CLUB}{CAME}{THE}(?P<where>water|pond|lake|burn|brook|stream|creek|ditch|dyke|canal|river|penalty\s+area|hazard)"
    rf"(?:{GAP}{LEFT_RIGHT})?"
)
"""Water a ball went into: "driver water"."""

_SIDES = one_of(
    rf"(?:short|long)(?:[\s,-]+{AND}(?:on\s+the\s+)?{LEFT_RIGHT})?",
    rf"{LEFT_RIGHT}(?:{GAP}{AND}(?:short|long))?",
)
OFF_GREEN = pattern(
    rf"{_THE_CLUB}{CAME}{JUST}(?P<where>{_SIDES}(?:{GAP}(?:in(?:to)?\s+)?{THE}{OFF_GROUND})?)"
)
"""A side of the green: "7-iron short right"; how far from it is taken in `unmeasured`."""

_COUNTS_FROM = one_of(
    rf"{LEFT_RIGHT}\s+of\s+{THE}(?:pin|flag|hole)", "out", "on", "short", "long", "past", "over", "behind",
    r"to\s+go", r"left\s+in", "remaining", rf"(?:off|from)\s+{THE}tee",
)  # fmt: skip
PLACE_AT_ONCE = pattern(
    rf"{_ANY_CLUB}{CAME}(?P<where>"
    + one_of(
        rf"{FIGURE}{_YARDS}{_COUNTS_FROM}\b.*",
        rf"{FIGURE}\s*(?:(?:ft|feet|foot)\b|['′’]).*",
        r"[12]?\d\s*(?:paces?|m|metres?|meters?)",
    )
    + ")"
)
"""A place that says itself whether it is out, on or in feet."""

_TO_GO = rf"(?:\d{{3}}|[6-9]\d){_YARDS}left"
LEFT_AT_ONCE = pattern(
    rf"{_THE_CLUB}{CAME}(?P<where>(?:{GROUND}{GAP})?{_TO_GO}"
    rf"|{_TO_GO}\s*,\s*(?:(?:in|on)\s+)?{THE}(?:fairway|middle))"
)
"""What was left to the hole: "driver, 150 left"; of fewer yards it may be the side."""
