"""Patterns of notes: what parts strokes and stands beside them, putts, drops; of swings in `swings.py`."""

from __future__ import annotations

import re

from ...wording import one_of
from .parts import AN, AND, CLUB, FIGURE, GAP, NEXT_CLUB, ORDINAL, TAKES, THE, A, pattern

COUNTS = {"single": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}

_COUNT = rf"(?:\d{{1,9}}|{'|'.join(COUNTS)})"  # of thousands of digits Python makes no number
_PUTT = rf"(?:{_COUNT}[\s-]*putt|[1-5]p\b)"
_TAP_IN = r"tap(?:ped)?[\s-]*in\b"
_HOLED = r"holed\b"
_PICKED_UP = r"pick(?:ed|s)?\s+up"
_MADE = r"(?:made|sank|sunk|holed|drained)"
_BARE_PUTT = r"(?:a\s+)?putt(?=\s*(?:[;,.\n]|$))"
_FEET = rf"{FIGURE}[\s-]*(?:ft|feet|foot|'|m|metres?|meters?|paces?)"
_RELOAD = r"(?:again|re-?play(?:s|ed)?|re-?load(?:s|ed)?|re-?tee(?:s|d)?)"
"""Another ball from the same place."""

_WENT = r"(?:went|walk(?:ed|s)|goes)"
_BACK_TO_THE_TEE = rf"(?:{_WENT}\s+back(?:\s+to\s+{THE}tee)?|back\s+to\s+{THE}tee)"
_TOOK = rf"(?:took\s+{AN})?"
_UNPLAYABLE = (
    rf"(?:(?:{TAKES}|declare[sd]?(?:\s+it)?|call(?:s|ed)(?:\s+it)?)\s+)?"
    rf"(?:ball\s+)?{AN}unplayable(?:\s+(?:lie|ball))?"
)
_THREE_OFF_THE_TEE = r"(?:three|3) off (?:the )?tee"
_PROVISIONAL = r"(?:(?:hits?|played|plays)\s+)?(?:a\s+)?provisional(?:\s+ball)?"
_ON_A_LINE = r"back\s+on\s+(?:the|a)\s+line"
_DROPPED = r"(?:drop(?:s|ped)?|relief)\b"

UNPLAYABLE_THEN = pattern(
    rf"(?<![\w-])(?P<called>{_UNPLAYABLE})(?:\s+(?:in|under|among|behind|against)\s+[a-z' -]+?)?[\s,;.:]+"
    rf"(?={AND}(?:then\s+)?(?:{TAKES}|(?:penalty\s+)?drop|relief|{_RELOAD}|{_BACK_TO_THE_TEE}))"
)
"""An unplayable ball before its drop, which is one thing with it: where it lay, the stroke before it told."""

# What parts strokes, and what stands beside them

_STROKE = A + one_of(
    CLUB, _PUTT, r"putt(?:ed)?\b", "gimme", _TAP_IN, r"(?:penalty|free)?\s*drop",
    rf"{_TOOK}unplayable", rf"{_RELOAD}\b", _HOLED, _PICKED_UP, r"(?:4[4-9]|5\d|6[0-4])\s+(?:to|on)\b",
    rf"{_THREE_OFF_THE_TEE}\b", _PROVISIONAL, r"out\s+(?:to|onto)\b",
)  # fmt: skip
"""What a stroke, or what is done between two, begins with."""

_AFTER_COMMA = one_of(
    _PUTT, _TAP_IN, "gimme", _HOLED, _PICKED_UP,
    r"(?:made|sank|drained)\s+(?:it|the|an?|my|his|her)\b",
    r"(?:putt(?:ed)?|lag(?:ged)?)\s+(?:(?:up\s+)?to\b|\d)", rf"{_BACK_TO_THE_TEE}\b",
    r"(?:just\s+)?miss(?:ed|es)?(?:\s+(?:it|(?:the\s+)?putt))?(?=\s*[;,.\n])", r"(?:played|got)\s+out\s+to\b",
    r"(?:lob|flop)(?:bed|ped)?\s+(?:[a-z]+\s+){0,4}to\b",
    rf"{_TOOK}unplayable", _PROVISIONAL, rf"out\s+(?:\w+\s+){{0,2}}(?:to|onto)\s+{THE}(?:\d|green|fairway)",
)  # fmt: skip
"""What begins a stroke behind a comma or an "and", which part more than strokes."""

_THEN = r"(?:and\s+)?then"
_PARTED = one_of(
    rf"(?:[;\n]+|[.!](?=\s|$))(?:\s*{_THEN}\b)?",
    rf",?\s+{_THEN}\s+",
    r"\s/\s",
    # a dash with a blank beside it and an arrow part strokes; "driver - left rough" is one stroke
    rf"(?:\s[-–—]+|[-–—]+\s|->|→|>|\||\+)(?=\s*(?:{_STROKE}|in\s*(?:$|[;.\n])))",
    rf"\s+and\s+(?={CLUB}\s+to\s)",
    rf"(?:,|,?\s+(?:and|&))\s+(?={_AFTER_COMMA})",
    rf"(?<!unplayable)(?<!lie)(?<!ball),\s+(?={_RELOAD}\b)",
    rf",\s*{AND}(?={A}(?:{NEXT_CLUB}|{ORDINAL}\s+(?:shot|stroke)\b)|{_THREE_OFF_THE_TEE}\b|{_BARE_PUTT})",
)
BREAK = pattern(rf"\s*{_PARTED}\s*")

TO_BEGIN = pattern(rf"{A}(?:(?:{ORDINAL}|tee)[\s-]+(?:shot|stroke)|approach|drive)")
"""Which stroke it is: no stroke by itself, a comma behind it parts nothing."""

HEADING = pattern(
    r"\s*(?:hole\s+)?(?P<number>\d{1,2})(?:\s*[:.);]|\s+[-–—](?=\s)(?!\s*(?:wood|iron|hybrid|putt)))\s*(?P<rest>.*)"
)

SETUP = pattern(
    r"(?P<pin>pin|flag)\s+(?P<where>.+)",
    r"(?P<spot>[^\d,]+?)\s+(?:pin|flag)",
    r"(?P<tee>(?:(?!\b(?:off|from)\b)[^\d,])+?)\s+tees?",
    r"tee\s+(?!shot\b|stroke\b)(?P<other>.+)",
    r"from\s+(?P<start>.+)",
)

_END = one_of(
    r"putt(?:s|ed)?", "in", r"holed(?:\s+out)?", "gimme", "given", "conceded", "it", "footer",
    r"the\s+(?:hole|cup)", "second", "next", "return", rf"from\s+{_FEET}(?:\s+(?!for\b)\w+)?",
)  # fmt: skip
"""How notes of a hole that was played out end."""

_SCORE = one_of(
    "albatross", "eagle", "birdie", "par", "bogey", r"double(?:[\s-]+bogey)?", r"triple(?:[\s-]+bogey)?",
    r"\d{1,2}",
)  # fmt: skip
SCORED = pattern(
    rf"(?P<notes>(?:.*\b)?{_END})(?:\s*[;,.=]\s*|\s+[-–—]\s+|\s+)(?:for\s+)?{AN}(?P<score>{_SCORE})[\s.!]*",
    flags=re.DOTALL,
)

# Putts and the end of a hole

PUTTS = pattern(
    rf"(?P<count>{_COUNT})[\s-]*(?:p|putt(?:s|ed)?)(?:\s+out)?(?:\s+from\s+(?P<first>{_FEET}.*))?"
)
_LAST_PUTT = one_of(r"it", r"(?:the|a|my|his|her)\s+(?:\w+\s+)?putt", r"the\s+(?:second|third|next|return)")
TAPPED = pattern(
    r"(?:a\s+)?putt",
    r"tap(?:ped)?(?:\s+it)?[\s-]*in", r"(?:(?:it\s+)?(?:goes|went)\s+)?in", "gimme", "given", "conceded",
    r"(?:knocked|rolled|popped)(?:\s+it)?\s+in",
    rf"{_MADE}(?:\s+{_LAST_PUTT})?(?:\s+from\s+(?P<first>{_FEET}.*))?",
    rf"{_MADE}\s+{A}(?P<footer>\d+)[\s-]*(?:ft|foot|footer)(?:\s+putt)?",
    rf"(?P<before>\d+)[\s-]*(?:(?:ft|foot|feet)\s+putt|footer){GAP}(?:{_MADE}|in)",
)  # fmt: skip
MISSED_PUTT = pattern(
    r"putt(?:\s+just)?\s+miss(?:ed|es)|(?:just\s+)?(?:miss(?:ed|es)?|lip(?:ped|s)(?:\s+(?:it\s+)?out)?|burn(?:ed|t|s)\s+the\s+(?:edge|lip))"
    rf"(?:\s+(?:it|that|{A}(?:\w+\s+)?putt))?"
)
"""A putt of which only that it missed is said: with the one that was holed behind it, it is counted."""

STOPPED = pattern(r"pick(?:s|ed)?[\s-]+up", "no return", r"n\.?r\.?", "gave up")
ON_GREEN = pattern(rf"(?:on\s+)?{THE}green")

# Drops, and balls played again

_CLUB_LENGTHS = r"(?:(?:within\s+)?(?:two|2|a)\s+)?club[\s-]*lengths?"
NO_PLACE = pattern(
    rf"(?:{_CLUB_LENGTHS}|(?:out\s+)?beside\s+(?:it|{THE}[a-z ]+)|out|there|clear|sideways|lateral(?:ly)?)?"
    rf"(?:[\s,]+(?:{_CLUB_LENGTHS}|away|to\s+the\s+side|sideways|from\s+it|no\s+nearer))*"
)
"""What is said of a drop that tells nothing of the place."""

DROP = pattern(
    rf"(?:(?P<unplayable>{_UNPLAYABLE})\b[\s,:]*{AND})?(?:{TAKES}\s+{AN})?"
    rf"(?:(?P<kind>penalty|free)\s+)?{_DROPPED}"
    rf"(?:\s+(?:from|off)\s+{THE}[a-z' -]+?(?=,|\s+(?:at|to)\s))?[\s,]*"
    r"(?:back\s+(?:on\s+(?:the|a)\s+line\b)?[\s,]*)?(?:(?:at|to|it)\s+)*(?P<place>.*)"
)
UNPLAYABLE_BESIDE = pattern(rf"{_UNPLAYABLE}\b[\s,:]+{AND}{_CLUB_LENGTHS}")
UNPLAYABLE_AT = pattern(
    rf"{_UNPLAYABLE}\b[\s,:]+(?:(?:two|2)\s+club[\s-]*lengths?[\s,]*)?(?:{_ON_A_LINE}[\s,]*)?"
    rf"(?:(?:to|at|in)\s+)?{THE}(?P<place>.*\d.*)"
)
"""An unplayable ball and the place it was dropped, nobody saying that it was dropped."""

INSIDE = pattern(
    rf"(?P<swing>.+?){GAP}{AND}(?P<drop>(?:{TAKES}\s+{AN})?(?:(?:penalty|free)\s+)?{_DROPPED}.*)"
)
"""A drop told behind its stroke."""

_SAME_PLACE = one_of(
    _RELOAD, _BACK_TO_THE_TEE, r"another(?: ball)?", r"plays? again", _THREE_OFF_THE_TEE,
    r"(?:from )?the same (?:place|spot)", "stroke and distance",
)  # fmt: skip
AGAIN = pattern(rf"(?:{_UNPLAYABLE}[\s,:]+{AND})?{_SAME_PLACE}(?:\s+from\s.*)?")
SWING_AGAIN = pattern(rf"(?P<swing>.+?){GAP}{AND}(?P<again>{_RELOAD})")

PROVISIONAL = pattern(_PROVISIONAL)
NEXT_BALL = pattern(
    rf"(?P<again>(?P<provisional>{_PROVISIONAL})|{_RELOAD}|{_THREE_OFF_THE_TEE})"
    r"[\s,:]+(?:with\s+|was\s+)?(?:(?:an?|the)\s+)?(?P<rest>.+)"
)
NO_CLUB = "the club for it"
"""What stands for a club nobody said of a ball that came out of sand or trees."""

SAME_CLUB = "the same club"
"""What stands for a club nobody said again."""
