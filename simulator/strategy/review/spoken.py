"""How golfers speak of a stroke: words for the strike, which say nothing, and other ways of saying it."""

from __future__ import annotations

import re

from ...tables.shots import PUTTER
from ...wording import one_of
from ..clubwords import club_and_aim, short_swing
from .parts import AN, CLUB, FIGURE, GAP, GROUND, LEFT_RIGHT, ORDINAL, THE, UNIT, A, pattern

_STRUCK = one_of(
    "topped", "thinned", "thin", "shanked", "duffed", "chunked", "fatted", "fat", "skulled", "bladed",
    "skied", "toed", "heeled", "hooked", "sliced", "pulled", "pushed", "blocked", "duck-hooked", "mishit",
    "miss-hit", "flushed", "pured", "striped", "hit", "plugged", "buried", "smothered", r"pop(?:ped)?-up",
)  # fmt: skip
_A_BIT = r"a\s+(?:bit|touch|little)"
MISHIT = pattern(rf"\b(?:(?:{_A_BIT}|slightly|badly|really|just)\s+)?{_STRUCK}\b,?\s*")
"""How a ball was struck: the place it came to says it all."""

_STRUCK_AT_END = pattern(rf"\s*,\s*(?:{_A_BIT}\s+)?{_STRUCK}(?:\s+it)?$")
_WHERE_BEGINS = pattern(r"\s(?:to|into|in|onto|on|finds|found|leaving)\s", "->", "→", ":")

PART_WORDS = (
    "chip", "chip out", "pitch", "pitch out", "punch", "punch out", "lob", "flop", "splash", "blast",
    "bunker shot", "wedge", "bump and run", "bump-and-run", PUTTER.name,
)  # fmt: skip
"""Swings short of full, told without their club or with it: the best such swing from there is meant. With the
putter those from off the green are."""

_SHORT_SWING = r"(?:chip|pitch|splash|punch|bump[\s-]and[\s-]run|bump|flop)"
_THE_CLUB = rf"^({CLUB})"
_FT_FOLLOW = r"(?=\d+\s*f(?:oo|ee)?t\b)"
_PACES = r"(?:yards?|yds?|yd|y|paces?|metres?|m)"
_MISSES = r"miss(?:es|ed)(?:\s+(?:it|(?:the\s+)?green))?"
_TO_BEGIN = one_of(
    r"(?:and|my|his|her|i|he|she)\s+",
    rf"approach(?:ed)?[\s,:]+(?:shot[\s,:]+)?(?=with\s|{A}{CLUB})",
    rf"{ORDINAL}\s+(?:shot|stroke)?[\s,:]*",
    r"tee[\s-]+shot[\s,:]*",
    r"(?:shot|stroke)\s+\d[\s,:]+",
    rf"drive[\s,:]+(?=(?:with\s+|was\s+)?(?:an?\s+|the\s+)?{CLUB})",
)
"""Which stroke it was, which its place in the notes tells."""

NEAREST_FAIRWAY, A_TAP_IN = "the nearest fairway", "a tap-in"
"""Places that are put for "sideways" and "stone dead"."""

_OFF_A_TREE = (
    r"(?:(?:and\s+)?(?:hit(?:s|ting)?|clip(?:s|ped)|caught|catch(?:es)?|kick(?:s|ed)\s+off|off|rattled)\s+"
    r"(?:(?:an?|the|some|overhanging)\s+)*(?:tree(?:\s+trunk)?|branch(?:es)?|trees|trunk|path|cart\s+path|rake|marker))"
)
_LEFT = r"(?:left|out|to\s+go|remaining)"
_SIDED = r"(?:bunker|trap|rough|trees|woods?|fringe|half|greenside)\b"
_BADLY = r"(?:topped|duffed|chunked|thinned|fatted|shanked|skulled|bladed|skied|mishit|foozled|scuffed)"
_ONLY = r"(?:(?:it|only|about|just|for|maybe|barely)\s+)*"
_FORWARD = r"(?:\s+(?:forwards?|along|down|up)(?:\s+the\s+(?:fairway|line|hole|middle))?)?"
_SO_FAR = rf"{_ONLY}({FIGURE}\s*{_PACES}?){_FORWARD}"

_LAGGED = one_of(
    r"lag(?:ged)?(?:\s+(?:it|putt))?",
    r"roll(?:ed|s)(?:\s+it)?",
    "putted",
    rf"(?:just\s+)?(?:missed|lipped\s+out)(?:\s+(?:the|a|my|his|her))?(?:\s+{ORDINAL})?(?:\s+putt)?",
)
_SPOKEN = tuple(
    (pattern(way), meant)
    for way, meant in (
        # what says nothing before the club
        (rf"^{_TO_BEGIN}+(?:(?:with|was|is|used)\s+)?(?:(?:an?|the)\s+)?(?=\S)", ""),
        (
            rf"^(?:used?|took|played|plays|hits?)\s+{A}(?=\w)"
            rf"(?!{AN}(?:unplayable|drop|relief|free|penalty|provisional)\b)",
            "",
        ),
        (rf"^\d\s+(?={CLUB}|\d\s*putts?\b)(?!hybrid|rescue)", ""),
        (r"^(?:drive|drove(?:\s+(?:it|the\s+ball))?)\b", "driver"),
        # what was hit on the way, and a length gone where what was left is said too
        (rf",?\s+{_OFF_A_TREE}\b(?!\s*bunker)", ""),
        (r"\bdown\s+the\s+(left|right)(?:\s+side)?(?=\s*(?:,|$))", r"\1"),
        (rf"{_THE_CLUB}{GAP}l\s+(?={_SIDED})", r"\1 left "),
        (rf"{_THE_CLUB}{GAP}r\s+(?={_SIDED})", r"\1 right "),
        (rf"(?<=\s)({FIGURE}\s*{UNIT}?)\s+{_LEFT}\s+(?:from|in|on)\s+({GROUND})$", r"\1 out, \2"),
        (
            rf"{_THE_CLUB}{GAP}{FIGURE}\s*{UNIT}?((?:{GAP}{GROUND})?),\s*(?={FIGURE}\s*{UNIT}?\s*{_LEFT}$)",
            r"\1\2, ",
        ),
        (rf"^{_BADLY}\s+{A}({CLUB}){GAP}{_SO_FAR}$", r"\1 to \2 gone"),
        (rf"{_THE_CLUB}{GAP}{_BADLY}(?:\s+it)?{GAP}{_SO_FAR}$", r"\1 to \2 gone"),
        # what says nothing behind it, and places in the words they are read by
        (rf"{_THE_CLUB}\s+(?:off|from)\s+the\s+tee\b", r"\1"),
        (rf"{_THE_CLUB}{GAP}(?:whiff(?:ed)?|air[\s-]?shot|fresh[\s-]air)$", r"\1 to the same place"),
        (rf"{_THE_CLUB}\s+(?:carried|cleared)\s+{THE}[a-z' ]+?(?=\s+to\s)", r"\1"),
        (rf"{_THE_CLUB}\s+approach\b", r"\1"),
        (rf"\s(?:to|on)\s+{THE}(front|back)$", r" to the \1 edge"),
        (r"\s+in\s+regulation\b", ""),
        (rf"(?<=\d)(\s*{UNIT}|(?<=\d\d\d))\s+in$", r"\1 out"),
        (rf"{_THE_CLUB}{GAP}(short|long){GAP}(?:by\s+)?(\d+\s*{UNIT}?)$", r"\1 \3 \2"),
        (
            rf"(?<!\d)(\d{{1,2}}\s*{_PACES}?)\s+in(?:to|side)?\s+{THE}(left|right)\s+rough\b",
            r"\1 \2 of the fairway",
        ),
        (rf"{_THE_CLUB}{GAP}(?:hits?\s+)?{THE}green{GAP}{_FT_FOLLOW}", r"\1 to "),
        (
            rf"{_THE_CLUB}\s+{_MISSES}{GAP}(\d+\s*(?:\w+\s+)?)(left|right|short|long)"
            rf"(?:\s+of\s+{THE}green)?(?=\s*(?:,|$))",
            r"\1 to \2\3 of the green",
        ),
        (rf"{_THE_CLUB}\s+{_MISSES}{GAP}(?=(?:short|long|left|right)\b)", r"\1 "),
        (r"\s+in\s+(?:\d|two|three|four)(?=\s*(?:,|$))", ""),
        (
            rf"\b((?:through|over|past|off)\s+{THE}(?:green|back))\s+into\s+{THE}(?=(?:\w+\s+)?rough\b)",
            r"\1, ",
        ),
        (rf"\b(?:front|middle|back|cent(?:re|er))\s+of\s+{THE}green{GAP}{_FT_FOLLOW}", ""),
        (rf"\b(?:through|over|past|off)\s+{THE}(?:green|back)\s+(?=into\s)", ""),
        (rf"\b(?:lay(?:s|ing)?|laid)[\s-]*up\b(?!\s+bunker)[\s,]*(?:with\s+)?{A}", ""),
        # a ball that stayed where it was
        (
            r"^((?:(?!\s(?:to|into)\s|\d\d).)*?)(?:\b(?:is|was)\s+)?"
            r"\b(?:left\s+it\s+|still\s+|stay(?:s|ed)\s+)in\b"
            rf"(?:\s+(?:there|it|{THE}(?:same\s+)?(?:bunker|sand|trap|rough|trees)))?$",
            r"\1to the same place",
        ),
        (rf"(?<!to\s)\bleft\s+in\s+{THE}(?:same\s+)?(?:bunker|sand|trap)$", "to left in the bunker"),
        # short swings and putts
        (r"\b(chip|pitch|splash|punch)(?:es|ped|ed)\b", r"\1"),
        (r"\b(chip|pitch|splash)[\s-]in\b", r"\1 in"),
        (
            r"^(?:holed|sank|made)(?:\s+(?:out|it))*\s+(?:from|out\s+of)\s+(?:the\s+)?(?:[a-z]+\s+)*?(?:bunker|sand|trap)$",
            "splash in",
        ),
        (r"^(?:holed|sank)\s+(?:the\s+|my\s+|a\s+)?(?:bunker\s+shot|splash)$", "splash in"),
        (r"^(?:holed|sank)\s+(?:the\s+|my\s+|a\s+)?(chip|pitch)$", r"\1 in"),
        (r"\b(?:hack|knock|gouge)(?:ed|s|d)?\s+(?:it\s+)?(?:back\s+)?out\b", "punch out"),
        (
            rf"{_THE_CLUB}{GAP}(?:to\s+)?(?:(?:stone\s+)?dead|(?:a\s+)?(?:tap[\s-]?in|kick[\s-]?in|gimme)(?:\s+(?:range|distance))?)$",
            rf"\1 to {A_TAP_IN}",
        ),
        (rf"{_THE_CLUB}{GAP}(?:out\s+)?sideways$", rf"\1 to {NEAREST_FAIRWAY}"),
        (r"\b(?:blasted|bunker\s+shot|explosion)\b", "splash"),
        (rf"^{_LAGGED}{GAP}(?=(?:up\s+)?to\s)", "putt "),
        (rf"\b({CLUB})\s+{_SHORT_SWING}\b", r"\1"),
        (rf"\b{_SHORT_SWING}\s+with\s+{A}(?={CLUB}|\d)", ""),
        # the club last
        (rf"^(?:it\s+)?((?:in)?to\s.+?)\s+with\s+{A}({CLUB})$", r"\2 \1"),
    )
)
"""Other ways of saying it, put one after the other into the words that notes are read by."""

_BESIDE_CLUB = pattern(
    r"(?:[\s,]+(?:on|out|up|back(?:\s+in(?:to)?\s+play)?|sideways|forwards?|along|safely|clear|away|it))+[\s,]*$"
)
"""Words between a club and where its ball went that say neither."""

_AIMED = pattern(rf"\d\s*(?:yards?|yds?|yd|y|m|metres?|meters?|deg\w*|°)?\s*{LEFT_RIGHT}$")
_ASIDE = pattern(rf"(?P<club>.+?){GAP}(?P<side>left|right)")
_OFF_FAIRWAY = pattern(
    rf"(?P<club>{CLUB}){GAP}(?P<off>(?:\d+\s*(?:\w+\s+)?|just\s+)?(?:(?:off|to|on|in)\s+)?"
    rf"{THE}{LEFT_RIGHT}\s+of\s+{THE}fairway)"
)
_ON_GROUND = pattern(rf"(?P<club>{CLUB}){GAP}(?P<ground>{GROUND})")


def without_mishits(clause: str) -> str:
    """A clause without words for how the ball was struck; none is looked for in the place it went to."""
    clause = _STRUCK_AT_END.sub("", clause)
    begins = _WHERE_BEGINS.search(f" {clause}")
    at = len(clause) if begins is None else max(begins.start() - 1, 0)
    before = MISHIT.sub("", clause[:at]).rstrip(" ,")
    if before == clause[:at].rstrip(" ,"):
        return clause
    return f"{before} {clause[at:].lstrip()}".strip() if before else ""


def usual(clause: str) -> str:
    """A clause in the words that notes are read by: "laid up with 8-iron to 70 out" as "8-iron to 70 out"."""
    for way, meant in _SPOKEN:
        clause = way.sub(meant, clause)
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
    sided = re.search(rf"\b{LEFT_RIGHT}\b", where, re.IGNORECASE)
    return aside["club"], where if sided else f"{where}, {aside['side']}"


def short_of_full(text: str) -> bool:
    """Whether words name a swing short of full without a club."""
    plain = club_and_aim(text)[0].casefold().removeprefix("a ").strip(" ,")
    return plain in PART_WORDS or short_swing(plain) is not None
