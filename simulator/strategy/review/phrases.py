"""The patterns that notes of what was played are read by."""

from __future__ import annotations

import re

from .spoken import CLUB, GROUND, OFF_GROUND, UNIT

COUNTS = {"single": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}

_RELOAD = r"(?:again|re-?play(?:s|ed)?|re-?load(?:s|ed)?|re-?tee(?:s|d)?)"
_STROKE = (
    rf"(?:(?:an?|the|my|his|her)\s+)?(?:{CLUB}|(?:\d+|{'|'.join(COUNTS)})[\s-]*putt|putt(?:ed)?\b|"
    r"gimme|tap(?:ped)?[\s-]*in\b|(?:penalty|free)?\s*drop|(?:took\s+(?:an?\s+)?)?unplayable|"
    rf"{_RELOAD}\b|holed\b|pick(?:ed|s)?\s+up)"
)
"""What a stroke, or what is done between two, begins with."""

_NUMBER_WORD = rf"(?:\d+|{'|'.join(COUNTS)})"
BREAK = re.compile(
    r"\s*(?:(?:[;\n]+|[.!](?=\s|$))(?:\s*(?:and\s+)?then\b)?|,?\s+(?:and\s+)?then\s+|\s/\s"
    # a dash with a blank beside it and an arrow part strokes; "driver - left rough" is one stroke
    rf"|(?:\s[-–—]+|[-–—]+\s|->|→|>|\||\+)(?=\s*{_STROKE})|\s+and\s+(?={CLUB}\s+to\s)"
    rf"|(?:,|,?\s+(?:and|&))\s+(?={_NUMBER_WORD}[\s-]*putt|tap(?:ped)?[\s-]*in\b|gimme|holed\b|pick(?:ed|s)?\s+up|"
    r"(?:made|sank|drained)\s+(?:it|the|an?|my|his|her)\b|(?:putt(?:ed)?|lag(?:ged)?)\s+(?:up\s+)?to\b|"
    rf"(?:took\s+(?:an?\s+)?)?unplayable|(?:hit\s+|played\s+)?(?:a\s+)?provisional)"
    rf"|(?<!unplayable)(?<!lie)(?<!ball),\s+(?={_RELOAD}\b)"
    rf"|,\s+(?:and\s+)?(?={CLUB}[^;\n]*\d|(?:3|three)\s+off\s+(?:the\s+)?tee))\s*",
    re.IGNORECASE,
)
HEADING = re.compile(r"\s*(?:hole\s+)?(?P<number>\d{1,2})\s*[:.)]\s*(?P<rest>.*)", re.IGNORECASE)
ON = re.compile(
    r"(?P<club>.+?)[\s,]+(?:just\s+|safely\s+|hits?\s+)?(?:on|hits?\s+the\s+green|on\s+the\s+green|g\.?i\.?r\.?)"
    rf"|(?P<bare>{CLUB})[\s,]+(?:the\s+)?green",
    re.IGNORECASE,
)
HOLED = re.compile(
    r"(?P<club>.+?)(?<!left)[\s,]+(?:(?:goes|went)\s+)?(?:holed(?:\s+out)?|in)", re.IGNORECASE
)
ACE = re.compile(
    r"(?P<club>.+?)[\s,]+(?:holed\s+(?:for\s+)?)?(?:a\s+hole[\s-]in[\s-]one|hole[\s-]in[\s-]one|(?:an\s+)?ace)",
    re.IGNORECASE,
)
THE_HOLE = re.compile(r"(?:the\s+)?(?:hole|cup)", re.IGNORECASE)
_SIDE = r"(?:,?\s+(?:on\s+the\s+)?(?:left|right|long|behind)(?:\s+side)?)?"
GONE = re.compile(rf"(?:out of bounds|o\.?b\.?|out|lost(?: ball)?){_SIDE}", re.IGNORECASE)
LOST = re.compile(rf"(?P<club>.+?)[\s,]+(?:(?:goes|went|is|was)\s+)?(?P<where>{GONE.pattern})", re.IGNORECASE)
TO_A_SIDE = re.compile(r"(?P<gone>.+)\s+to\s+the\s+(?:left|right)", re.IGNORECASE)
GONE_THERE = re.compile(
    r"(?P<club>.+?)[\s,]+(?:(?:in)?to|in|over|onto|on)\s+.+?[\s,]+(?:and\s+)?"
    r"(?P<where>out of bounds|o\.?b\.?|lost(?: ball)?)",
    re.IGNORECASE,
)
LOST_IN = re.compile(
    r"(?P<club>.+?)[\s,]+(?:(?:goes|went|is|was)\s+)?(?P<where>lost(?: ball)?\s+(?:in|into|among)\s+.+)",
    re.IGNORECASE,
)
_RIM = r"(?:green|front|back|fringe|collar|apron|(?:left|right|front|back)\s+(?:edge|fringe|collar))\b"
_CAME = r"(?:(?:goes|went|finish(?:es|ed)|end(?:s|ed)(?:\s+up)?|c[ao]mes?(?:\s+up)?|runs|ran)\s+)?"
"""How a ball came to where it lies: says nothing."""

SWING = re.compile(
    rf"(?P<club>.+?)(?:\s*(?:->|→|>|:)\s*|\s+[-–]\s+|[\s,]+{_CAME}"
    rf"(?:to(?!\s+go\b)|in(?:to)?|on(?:to)?(?=\s+(?:the\s+)?{_RIM})|finds|found|leav(?:es|ing))\s+)(?P<where>.+)",
    re.IGNORECASE,
)
_LENGTH = r"\d+(?:\.\d+)?\s*(?:(?:paces?|yards?|yds?|yd|y|metres?|meters?|m|feet|foot|ft)\s+)?"
BY_THE_GREEN = re.compile(
    r"(?P<club>(?:(?!\s(?:to|into|in|onto)\s).)+?)[\s,]+"
    rf"{_CAME}(?P<where>(?:just\s+|{_LENGTH})?(?:(?:pin|flag|hole)[\s-]high\b|(?:left|right)\s+of\s+(?:the\s+)?green\b|"
    r"(?:short\s+of|past|behind)\s+the\s+(?:(?!\sto\s)[a-z' -])+|"
    r"(?:over|through|past|beyond|behind|off|short|long)\b"
    r"(?:\s+(?!to\b)[a-z]+){0,4}?\s+(?:green|back|front)\b)(?:(?!\sto\s).)*"
    rf"|{_LENGTH}(?:to|from)\s+(?:the\s+)?(?:front|middle|cent(?:re|er)|back|green)\b(?:(?!\sto\s).)*)",
    re.IGNORECASE,
)
"""A place told by the green needs no "to" before it either."""

_UNPLAYABLE = (
    r"(?:(?:takes?|took|declare[sd]?(?:\s+it)?|call(?:s|ed)(?:\s+it)?)\s+)?"
    r"(?:an?\s+)?unplayable(?:\s+(?:lie|ball))?"
)
DROP = re.compile(
    rf"(?:(?P<unplayable>{_UNPLAYABLE})\b[\s,:]*(?:and\s+)?)?(?:(?:takes?|took)\s+(?:an?\s+)?)?"
    r"(?:(?P<kind>penalty|free)\s+)?(?:drop(?:s|ped)?|relief)\b"
    r"(?:\s+(?:from|off)\s+(?:the\s+)?[a-z' -]+?(?=,|\s+(?:at|to)\s))?[\s,]*"
    r"(?:back\s+(?:on\s+(?:the|a)\s+line\b)?[\s,]*)?(?:(?:at|to|it)\s+)*(?P<place>.*)",
    re.IGNORECASE,
)
UNPLAYABLE_AT = re.compile(
    rf"{_UNPLAYABLE}\b[\s,:]+(?:(?:two|2)\s+club[\s-]*lengths?[\s,]*)?(?:back\s+on\s+(?:the|a)\s+line[\s,]*)?"
    r"(?:(?:to|at|in)\s+)?(?:the\s+)?(?P<place>.*\d.*)",
    re.IGNORECASE,
)
"""An unplayable ball and the place it was dropped, nobody saying that it was dropped."""

INSIDE = re.compile(
    r"(?P<swing>.+?)[\s,]+(?:and\s+)?(?P<drop>(?:(?:takes?|took)\s+(?:an?\s+)?)?"
    r"(?:(?:penalty|free)\s+)?(?:drop(?:s|ped)?|relief)\b.+)",
    re.IGNORECASE,
)
AGAIN = re.compile(
    rf"(?:{_UNPLAYABLE}[\s,:]+(?:and\s+)?)?(?:{_RELOAD}|another(?: ball)?|plays? again"
    r"|(?:three|3) off (?:the )?tee|back to the tee|(?:from )?the same (?:place|spot)|stroke and distance)"
    r"(?:\s+from\s.*)?",
    re.IGNORECASE,
)
SIDE_AT_ONCE = re.compile(
    rf"(?P<club>{CLUB})[\s,]+(?:the\s+)?"
    r"(?P<where>(?:(?:left|right|front|back|short|green-?side|fairway)\s+)+(?:bunker|trap|edge|fringe|collar|apron)\b.*"
    r"|(?:bunker|trap)(?:[\s,]+(?:left|right|front|back|short))+"
    r"|(?:fringe|collar)|(?:front|back|middle|cent(?:re|er))\s+of\s+(?:the\s+)?green)",
    re.IGNORECASE,
)
"""A bunker or an edge told by its side needs no "to" either: "4-hybrid front bunker"."""

GROUND_AT_ONCE = re.compile(rf"(?P<club>{CLUB})[\s,]+{_CAME}(?P<where>{GROUND})", re.IGNORECASE)
"""Nor does ground: "driver, right rough"."""

_SIDES = (
    r"(?:(?:short|long)(?:[\s,-]+(?:and\s+)?(?:on\s+the\s+)?(?:left|right))?"
    r"|(?:left|right)(?:[\s,]+(?:and\s+)?(?:short|long))?)"
)
OFF_GREEN = re.compile(
    rf"(?P<club>{CLUB})[\s,]+{_CAME}(?:(?:just|slightly|a\s+(?:bit|touch|little))\s+)?"
    rf"(?P<where>{_SIDES}(?:[\s,]+(?:in(?:to)?\s+)?(?:the\s+)?{OFF_GROUND})?)",
    re.IGNORECASE,
)
"""Nor does a side of the green: "7-iron short right"; how far from it is taken in `unmeasured`."""

SWING_AGAIN = re.compile(rf"(?P<swing>.+?)[\s,]+(?:and\s+)?(?P<again>{_RELOAD})", re.IGNORECASE)
PROVISIONAL = r"(?:(?:hits?|played|plays)\s+)?(?:a\s+)?provisional(?:\s+ball)?"
NEXT_BALL = re.compile(
    rf"(?P<again>(?P<provisional>{PROVISIONAL})|{_RELOAD}|(?:three|3) off (?:the )?tee)"
    r"[\s,:]+(?:with\s+|was\s+)?(?:(?:an?|the)\s+)?(?P<rest>.+)",
    re.IGNORECASE,
)
SAME_CLUB = "the same club"
"""What stands for a club nobody said again."""

PLACE_AT_ONCE = re.compile(
    rf"(?P<club>.+?)[\s,]+{_CAME}(?P<where>\d+(?:\.\d+)?\s*(?:{UNIT}\s+)?"
    r"(?:(?:left|right)\s+of\s+(?:the\s+)?(?:pin|flag|hole)|out|on|short|long|past|over|behind|to\s+go|left\s+in|remaining|(?:off|from)\s+(?:the\s+)?tee)\b.*|\d+(?:\.\d+)?\s*(?:ft|feet|foot)\b.*|[12]?\d\s*(?:paces?|m|metres?|meters?))",
    re.IGNORECASE,
)
"""A place that says itself whether it is out, on or in feet needs no "to" before it."""

LEFT_AT_ONCE = re.compile(
    rf"(?P<club>{CLUB})[\s,]+{_CAME}(?P<where>(?:\d{{3}}|[6-9]\d)\s*(?:{UNIT}\s+)?left)",
    re.IGNORECASE,
)
"""Nor does what was left to the hole: "driver, 150 left"; of fewer yards it may be the side."""

_FEET = r"\d+(?:\.\d+)?[\s-]*(?:ft|feet|foot|'|m|metres?|meters?|paces?)"
PUTTS = re.compile(
    rf"(?P<count>{_NUMBER_WORD})[\s-]*putt(?:s|ed)?(?:\s+out)?(?:\s+from\s+(?P<first>{_FEET}.*))?",
    re.IGNORECASE,
)
_MADE = r"(?:made|sank|sunk|holed|drained)"
TAPPED = re.compile(
    rf"tap(?:ped)?(?:\s+it)?[\s-]*in|gimme|given|conceded|(?:knocked|rolled|popped)(?:\s+it)?\s+in"
    rf"|{_MADE}(?:\s+(?:it|(?:the|a|my|his|her)\s+(?:\w+\s+)?putt|the\s+(?:second|third|next|return)))?(?:\s+from\s+(?P<first>{_FEET}.*))?"
    rf"|{_MADE}\s+(?:(?:the|an?|my|his|her)\s+)?(?P<footer>\d+)[\s-]*(?:ft|foot|footer)(?:\s+putt)?"
    rf"|(?P<before>\d+)[\s-]*(?:(?:ft|foot|feet)\s+putt|footer)[\s,]+(?:{_MADE}|in)",
    re.IGNORECASE,
)
STOPPED = re.compile(r"pick(?:s|ed)?[\s-]+up|no return|n\.?r\.?|gave up", re.IGNORECASE)
ON_GREEN = re.compile(r"(?:on\s+)?(?:the\s+)?green", re.IGNORECASE)
_END = (
    r"(?:putt(?:s|ed)?|in|holed(?:\s+out)?|gimme|given|conceded|it|footer|the\s+(?:hole|cup)|second|next|return"
    rf"|from\s+{_FEET}(?:\s+(?!for\b)\w+)?)"
)
"""How notes of a hole that was played out end."""

SCORED = re.compile(
    rf"(?P<notes>(?:.*\b)?{_END})(?:\s*[;,.=]\s*|\s+[-–—]\s+|\s+)(?:for\s+)?(?:an?\s+)?"
    r"(?P<score>albatross|eagle|birdie|par|bogey|double(?:[\s-]+bogey)?|triple(?:[\s-]+bogey)?|\d{1,2})[\s.!]*",
    re.IGNORECASE | re.DOTALL,
)
SETUP = re.compile(
    r"(?:(?P<pin>pin|flag)\s+(?P<where>.+)|(?P<spot>[^\d,]+?)\s+(?:pin|flag)|(?P<tee>(?:(?!\b(?:off|from)\b)[^\d,])+?)\s+tees?|tee\s+(?P<other>.+)"
    r"|from\s+(?P<start>.+))",
    re.IGNORECASE,
)
