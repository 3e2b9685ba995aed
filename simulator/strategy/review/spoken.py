"""How golfers speak of a stroke: words for the strike, which say nothing, and places that are none yet."""

from __future__ import annotations

import re

from ...spelt import in_figures as numbers_in_figures
from ...spelt import in_full
from ..clubwords import club_and_aim

UNIT = r"(?:yards?|yds?|yd|y|metres?|meters?|m)"
"""Units of a distance along the ground."""

_HOW = (
    "topped|thinned|thin|shanked|duffed|chunked|fatted|fat|skulled|bladed|skied|toed|heeled|hooked|sliced|pulled|"
    "pushed|blocked|duck-hooked|mishit|miss-hit|flushed|pured|striped|hit|plugged|buried|smothered|pop(?:ped)?-up"
)
_MISHIT = re.compile(
    rf"\b(?:(?:a\s+(?:bit|touch|little)|slightly|badly|really|just)\s+)?(?:{_HOW})\b,?\s*", re.IGNORECASE
)
"""How a ball was struck: the place it came to says it all."""

_STRUCK_AT_END = re.compile(rf"\s*,\s*(?:a\s+(?:bit|touch|little)\s+)?(?:{_HOW})(?:\s+it)?$", re.IGNORECASE)
_WHERE_BEGINS = re.compile(r"\s(?:to|into|in|onto|on|finds|found|leaving)\s|->|→|:", re.IGNORECASE)

_CLUB = r"(?:driver|\w+[\s-]?(?:wood|hybrid|iron)|wedge|[1-9][wih]?)"
_GROUND = r"(?:middle|centre|center|fairway|straight|left|right|rough)"
CLUB = (
    r"(?:driver|\w+[\s-](?:wood|hybrid|iron)|[2-9][wih]|hybrid|rescue|(?:pitching|gap|sand|lob)\s+wedge|"
    r"[pgsla]w|wedge|chip|pitch|splash|punch)\b"
)
"""A club, or a swing short of full, as notes begin with one; bare numbers are left out."""

_LEFT_RIGHT = r"(?:on\s+the\s+)?(?:left|right)(?:[\s-]+(?:hand[\s-]+)?side)?(?:\s+of(?:\s+the)?)?"
GROUND = (
    rf"(?:(?:(?:in(?:to)?|on(?:to)?)\s+)?(?:the\s+)?(?:just\s+)?(?:{_LEFT_RIGHT}\s+)?(?:in\s+)?(?:the\s+)?"
    r"(?:(?:first\s+cut|(?:(?:light|semi|heavy|deep|thick)[\s-]+)?rough|trees|woods?)\b"
    r"|(?:(?:half|cent(?:re|er)|middle)(?:\s+of)?(?:\s+the)?\s+)?(?<!(?:left|ight)\sof\s)(?<!(?:left|ight)\sof\sthe\s)fairway\b)"
    rf"(?:[\s,]+{_LEFT_RIGHT})?|(?:the\s+)?(?:left|right)\s+half|(?:(?:down|dead|the)\s+)*(?:middle|cent(?:re|er)))"
)
"""Ground a ball lies on, with a side or without, and no word of how far along."""

OFF_GROUND = r"(?:(?:light|semi|heavy|deep|thick)[\s-]+)?(?:rough|bunker|trap|sand|trees|fairway)"
"""Ground beside a green."""

_SHORT_SWING = r"(?:chip|pitch|splash|punch|bump[\s-]and[\s-]run|bump|flop)"
PART_WORDS = (
    "chip", "chip out", "pitch", "pitch out", "punch", "punch out", "lob", "flop", "splash", "blast",
    "bunker shot", "wedge", "bump and run", "bump-and-run",
)  # fmt: skip
"""Swings short of full, told without their club or with it: the best such swing from there is meant."""

_MISSES = r"miss(?:es|ed)(?:\s+(?:it|(?:the\s+)?green))?"
_ORDINAL = r"(?:1st|2nd|3rd|[4-9]th|first|second|third|fourth|fifth|sixth)"
_SPOKEN = tuple(
    (re.compile(pattern, re.IGNORECASE), meant)
    for pattern, meant in (
        (
            rf"^(?:(?:and|my|his|her|i|he|she)\s+|approach(?:ed)?\s+(?:shot\s+)?(?=with\s)|{_ORDINAL}\s+(?:shot|stroke)?[\s,:]*|tee[\s-]+shot[\s,:]*|"
            rf"(?:shot|stroke)\s+\d[\s,:]+|drive[\s,:]+(?=(?:with\s+|was\s+)?(?:an?\s+|the\s+)?{CLUB}))+"
            r"(?:(?:with|was|is|used)\s+)?(?:(?:an?|the)\s+)?(?=\S)",
            "",
        ),
        (
            r"^(?:used?|took|played|plays|hits?)\s+(?:(?:an?|the|my|his|her)\s+)?(?=\w)"
            r"(?!(?:an?\s+)?(?:unplayable|drop|relief|free|penalty|provisional)\b)",
            "",
        ),
        (rf"^\d\s+(?={CLUB}|\d\s*putts?\b)(?!hybrid|rescue)", ""),
        (r"^drive\b", "driver"),
        (rf"^({CLUB})\s+(?:off|from)\s+the\s+tee\b", r"\1"),
        (rf"^({CLUB})[\s,]+(?:whiff(?:ed)?|air[\s-]?shot|fresh[\s-]air)$", r"\1 to the same place"),
        (rf"^({CLUB})\s+(?:carried|cleared)\s+(?:the\s+)?[a-z' ]+?(?=\s+to\s)", r"\1"),
        (rf"^({CLUB})\s+approach\b", r"\1"),
        (r"\s+in\s+regulation\b", ""),
        (rf"(?<=\d)(\s*{UNIT}|(?<=\d\d\d))\s+in$", r"\1 out"),
        (rf"^({CLUB})[\s,]+(short|long)[\s,]+(?:by\s+)?(\d+\s*{UNIT}?)$", r"\1 \3 \2"),
        (
            r"(?<!\d)(\d{1,2}\s*(?:yards?|yds?|yd|y|paces?|metres?|m)?)\s+in(?:to|side)?\s+(?:the\s+)?(left|right)\s+rough\b",
            r"\1 \2 of the fairway",
        ),
        (rf"^({CLUB})[\s,]+(?:hits?\s+)?(?:the\s+)?green[\s,]+(?=\d+\s*f(?:oo|ee)?t\b)", r"\1 to "),
        (
            rf"^({CLUB})\s+{_MISSES}[\s,]+(\d+\s*(?:\w+\s+)?)(left|right|short|long)"
            r"(?:\s+of\s+(?:the\s+)?green)?(?=\s*(?:,|$))",
            r"\1 to \2\3 of the green",
        ),
        (rf"^({CLUB})\s+{_MISSES}[\s,]+(?=(?:short|long|left|right)\b)", r"\1 "),
        (r"\s+in\s+(?:\d|two|three|four)(?=\s*(?:,|$))", ""),
        (
            r"\b((?:through|over|past|off)\s+(?:the\s+)?(?:green|back))\s+into\s+(?:the\s+)?"
            r"(?=(?:\w+\s+)?rough\b)",
            r"\1, ",
        ),
        (r"\b(?:front|middle|back|cent(?:re|er))\s+of\s+(?:the\s+)?green[\s,]+(?=\d+\s*f(?:oo|ee)?t\b)", ""),
        (r"\b(?:through|over|past|off)\s+(?:the\s+)?(?:green|back)\s+(?=into\s)", ""),
        (
            r"\b(?:lay(?:s|ing)?|laid)[\s-]*up\b(?!\s+bunker)[\s,]*(?:with\s+)?(?:(?:an?|the|my|his|her)\s+)?",
            "",
        ),
        (
            r"^((?:(?!\s(?:to|into)\s|\d\d).)*?)(?:\b(?:is|was)\s+)?\b(?:left\s+it\s+|still\s+|stay(?:s|ed)\s+)in\b"
            r"(?:\s+(?:there|it|(?:the\s+)?(?:same\s+)?(?:bunker|sand|trap|rough|trees)))?$",
            r"\1to the same place",
        ),
        (r"(?<!to\s)\bleft\s+in\s+(?:the\s+)?(?:same\s+)?(?:bunker|sand|trap)$", "to left in the bunker"),
        (r"\b(chip|pitch|splash|punch)(?:es|ped|ed)\b", r"\1"),
        (r"\b(?:blasted|bunker\s+shot|explosion)\b", "splash"),
        (
            r"^(?:lag(?:ged)?(?:\s+(?:it|putt))?|roll(?:ed|s)(?:\s+it)?|putted|(?:just\s+)?(?:missed|lipped\s+out)"
            rf"(?:\s+(?:the|a|my|his|her))?(?:\s+{_ORDINAL})?(?:\s+putt)?)[\s,]+(?=(?:up\s+)?to\s)",
            "putt ",
        ),
        (rf"\b({CLUB})\s+{_SHORT_SWING}\b", r"\1"),
        (rf"\b{_SHORT_SWING}\s+with\s+(?:(?:an?|the|my|his|her)\s+)?(?={CLUB}|\d)", ""),
        (rf"^(?:it\s+)?((?:in)?to\s.+?)\s+with\s+(?:(?:an?|the|my|his|her)\s+)?({CLUB})$", r"\2 \1"),
    )
)
"""Other ways of saying it, put into the words that notes are read by."""

_BESIDE_CLUB = re.compile(
    r"(?:[\s,]+(?:on|out|up|back(?:\s+in(?:to)?\s+play)?|sideways|forwards?|along|safely|clear|away|it))+[\s,]*$",
    re.IGNORECASE,
)
"""Words between a club and where its ball went that say neither."""

_AIMED = re.compile(r"\d\s*(?:yards?|yds?|yd|y|m|metres?|meters?|deg\w*|°)?\s*(?:left|right)$", re.IGNORECASE)
_ASIDE = re.compile(r"(?P<club>.+?)[\s,]+(?P<side>left|right)", re.IGNORECASE)
_OFF_FAIRWAY = re.compile(
    rf"(?P<club>{CLUB})[\s,]+(?P<off>(?:\d+\s*(?:\w+\s+)?|just\s+)?(?:(?:off|to|on|in)\s+)?(?:the\s+)?"
    r"(?:left|right)\s+of\s+(?:the\s+)?fairway)",
    re.IGNORECASE,
)
_ON_GROUND = re.compile(rf"(?P<club>{CLUB})[\s,]+(?P<ground>{GROUND})", re.IGNORECASE)

MISSED = re.compile(r".*\b(?:missed|lipped|burn(?:ed|t)|horseshoed)\b", re.IGNORECASE)
"""A stroke of which only that it missed is said."""

_GONE_OR_LEFT = (
    'gone or left? Say "to {yards} on, fairway" for what it went from the tee, '
    '"to {yards} out, fairway" for what was left ("left half" and "right rough" are places too)'
)
_HOW_FAR = (
    'how far, and on what? Say "to 10 behind the green", "to 20 short of the green", "to 15 out, left rough"'
)
_INSTEAD = tuple(
    (re.compile(pattern, re.IGNORECASE), why)
    for pattern, why in (
        (
            r".*\bup[\s-]+and[\s-]+down\b.*|.*\b(?:chip|pitch|splash|wedge)\w*\s+and\s+(?:an?\s+|one\s+)?putt\w*",
            'how near did it come? Say both strokes, "chip to 6 ft; 1 putt"',
        ),
        (
            rf"{MISSED.pattern}.*",
            'where did it come to? Say each stroke, "putt to 2 ft; tap-in", or all putts, "2 putts"; '
            'of a green, "to 8 right of the green"',
        ),
        (
            r".+?[\s,]+(?:to\s+)?(?:stiff|close|dead|nothing|kick-in|tap-in|gimme)(?:\s+range)?",
            'how near? Say "to 2 ft"',
        ),
        (
            r"to\s+(?P<place>\d.*)",
            'with which club? Say it first, "8-iron to {place}"',
        ),
        (
            r"unplayable.*",
            'and then? Say "unplayable, drop 150 out, rough" or "unplayable, again" (stroke and distance)',
        ),
        (
            r".+?\b(?P<side>left|right)\s+of\s+(?:the\s+)?fairway\b.*",
            'on it or beside it? Say "{side} half" or "{side} rough", or how far off, '
            '"160 out, 8 {side} of the fairway"',
        ),
        (
            r".+?[\s,]+(?P<yards>[1-5]?\d)\s*(?:yards?|yds?|yd|y|m)?[\s,]+(?P<side>left|right)\b.*",
            'of what? Say "to {yards} {side} of the green", "to {yards} ft {side}" of the hole, '
            'or its distance, "to {yards} out, {side} rough"',
        ),
        (
            rf".+?[\s,]+(?P<yards>\d+)\s*(?:yards?|yds?|yd|y|m)?[\s,]+(?:down\s+the\s+)?{_GROUND}.*",
            _GONE_OR_LEFT,
        ),
        (
            rf"(?:{_MISHIT.pattern})*{CLUB}[\s,]+(?:(?:went|goes|carried|rolled|only|about|just|{_GROUND})[\s,]+)*"
            rf"(?P<yards>\d{{2,3}})\s*{UNIT}?"
            r"(?:\s+(?:carry|total|forwards?|along|down|in|away))*",
            _GONE_OR_LEFT,
        ),
        (
            rf"(?:{_MISHIT.pattern})*(?:{_CLUB}|{CLUB})?\s*",
            'to where? For example "to 150 out", "to 60 out, right rough"',
        ),
        (
            r".+?[\s,]+(?:(?:well|way|miles)\s+)?(?:(?:short|long|left|right|pin[\s-]high)[\s,]*)+",
            _HOW_FAR,
        ),
    )
)
"""What golfers note that leaves the place open, and what to say for it."""


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

_INCHES = re.compile(r"\b(?P<number>\d+)\s*inch(?:es)?\b", re.IGNORECASE)


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


def without_mishits(clause: str) -> str:
    """A clause without words for how the ball was struck; none is looked for in the place it went to."""
    clause = _STRUCK_AT_END.sub("", clause)
    begins = _WHERE_BEGINS.search(f" {clause}")
    at = len(clause) if begins is None else max(begins.start() - 1, 0)
    before = _MISHIT.sub("", clause[:at]).rstrip(" ,")
    if before == clause[:at].rstrip(" ,"):
        return clause
    return f"{before} {clause[at:].lstrip()}".strip() if before else ""


def usual(clause: str) -> str:
    """A clause in the words that notes are read by: "laid up with 8-iron to 70 out" as "8-iron to 70 out"."""
    for pattern, meant in _SPOKEN:
        clause = pattern.sub(meant, clause)
    return clause.strip(" ,")


def club_and_where(club: str, where: str) -> tuple[str, str]:
    """A club without the words beside it ("8-iron out"), a side or ground said there put to the place."""
    club = _BESIDE_CLUB.sub("", f" {club}").strip(" ,-–")
    if found := _OFF_FAIRWAY.fullmatch(club):  # no line, nobody aims there
        return found["club"], f"{where}, {found['off']}"
    if found := _ON_GROUND.fullmatch(club):
        return found["club"], f"{where}, {found['ground']}"
    aside = None if _AIMED.search(club) else _ASIDE.fullmatch(club)
    if aside is None:
        return club, where
    sided = re.search(r"\b(?:left|right)\b", where, re.IGNORECASE)
    return aside["club"], where if sided else f"{where}, {aside['side']}"


def gone_or_left(club: str) -> str | None:
    """What to say for a club with yards behind it ("driver 215 yards"), which may be either; None without."""
    found = re.fullmatch(rf".+?[\s,]+(?P<yards>\d{{3}})\s*{UNIT}?", club, re.IGNORECASE)
    return _GONE_OR_LEFT.format(yards=found["yards"]) if found else None


def say_instead(clause: str) -> str | None:
    """What to say for a clause that leaves the place open; None where it is not known."""
    for pattern, why in _INSTEAD:
        if found := pattern.fullmatch(clause):
            return why.format(**found.groupdict())
    return None


def say_how_far(where: str) -> str:
    """What to say for a side without a distance, where it is not known of what."""
    side = re.search(r"\b(left|right)\b", where, re.IGNORECASE)
    if side is None:
        return _HOW_FAR
    return f'{_HOW_FAR}, or on what it lies, "{side[1].lower()} rough"'


def short_of_full(text: str) -> bool:
    """Whether words name a swing short of full without a club."""
    return club_and_aim(text)[0].casefold().removeprefix("a ").strip(" ,") in PART_WORDS
