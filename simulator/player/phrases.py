"""What the phrases of a player in words say: a handicap, a score, a shape, a miss, a club left at home."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Any

from .levels import STANDARD_SET
from .patterns import (
    CLUB_SIZE,
    CURVE_BEHIND,
    HANDICAP,
    NEEDED_UNIT,
    NO_NUMBER,
    NUMBER,
    SHAPED,
    SIDE,
    TEE_ONLY,
    UNIT,
    UPPER,
    WHOSE,
)
from .published import SCORE_OVER_HANDICAP
from .reader import Phrase, Reader, plain_number, stem_of
from .spoken import AGE, LOW_OR_HIGH_SINGLE, SPOKEN_HANDICAP, TEENS, THIRDS_OF_TEN


def _handicap(reader: Reader, found: re.Match[str]) -> None:
    sign = found["sign"]
    number = plain_number(found["number"])
    reader.put("handicap", -number if sign else number)


def _alone(reader: Reader, found: re.Match[str]) -> None:
    """ "12, man": a number that begins the words, before man or woman."""
    reader.put("handicap", plain_number(found["number"]))
    reader.granted.append(f"{found['number']!r} is taken as handicap {found['number']}.")


def _score(reader: Reader, found: re.Match[str]) -> None:
    reader.put("handicap", plain_number(found["number"]) - SCORE_OVER_HANDICAP)


def _scores(reader: Reader, found: re.Match[str]) -> None:
    """ "85 to 90", "high 80s": the middle, and that it was taken."""
    parts = found.groupdict()
    if parts.get("decade"):
        score = float(parts["decade"]) + THIRDS_OF_TEN[parts["third"] or "mid"]
    else:
        score = 0.5 * (float(parts["number"]) + float(parts["upper"]))
    reader.put("handicap", score - SCORE_OVER_HANDICAP)
    reader.granted.append(f"{found[0].strip()!r} is taken as an average score of {score:g}.")


def _beginner(reader: Reader, found: re.Match[str]) -> None:
    _put_spoken(reader, found, *SPOKEN_HANDICAP["beginner"])


def _handicapper(reader: Reader, found: re.Match[str]) -> None:
    """ "High handicapper", "mid handicap"."""
    _put_spoken(reader, found, *SPOKEN_HANDICAP[found["part"]])


def _single_figures(reader: Reader, found: re.Match[str]) -> None:
    _put_spoken(reader, found, *SPOKEN_HANDICAP["single"])


def _single(reader: Reader, found: re.Match[str]) -> None:
    """ "Low single figures": a part of them."""
    _put_spoken(reader, found, *LOW_OR_HIGH_SINGLE[found["part"]])


def _teens(reader: Reader, found: re.Match[str]) -> None:
    _put_spoken(reader, found, *TEENS[(found["part"] or "").replace("middle", "mid")])


def _put_spoken(reader: Reader, found: re.Match[str], value: float, meant: str) -> None:
    """A word for a level: the handicap that stands for it, and that it was taken."""
    reader.put("handicap", value)
    said = found[0].strip()
    reader.granted.append(
        f"{said!r} is taken as handicap {value:g} (golfers mean {meant}): say the number if you know it."
    )


MOST_HANDICAPS_APART = 10.0
"""A range of handicaps wider than this says nothing of a player (assumed)."""


def _handicaps(reader: Reader, found: re.Match[str]) -> None:
    """ "Handicap 12 to 15": the middle, and that it was taken."""
    apart = plain_number(found["upper"]) - plain_number(found["number"])
    if not 0.0 < apart <= MOST_HANDICAPS_APART:
        reader.refuse("is no handicap: its two numbers are too far apart")
    middle = 0.5 * (plain_number(found["number"]) + plain_number(found["upper"]))
    reader.put("handicap", middle)
    reader.granted.append(f"{found[0].strip()!r} is taken as handicap {middle:g}, the middle of it.")


def _both_ways(reader: Reader, found: re.Match[str]) -> None:
    reader.granted.append(f"{found[0].strip()!r} is taken as no side missed more than the other.")


def _age(reader: Reader, found: re.Match[str]) -> None:
    """ "Junior", "72 years old": nothing of its own, and too little without a handicap and a distance."""
    reader.aged = found
    said = found[0].strip()
    reader.granted.append(f"{said!r} changes nothing by itself: the handicap and the distances tell.")


def _bogey(reader: Reader, found: re.Match[str]) -> None:
    if reader.bogey or "handicap" in reader.table:
        reader.refuse("says the handicap a second time")
    reader.bogey = True


def _hand(reader: Reader, found: re.Match[str]) -> None:
    reader.put("hand", "left" if found[0].startswith("left") else "right")


def _place(reader: Reader) -> dict[str, Any]:
    """Where a habit goes: to the club just spoken of, when no comma lies between, else to all clubs."""
    return reader.section(reader.club) if reader.on_club and reader.club is not None else reader.table


def _miss(reader: Reader, found: re.Match[str]) -> None:
    table = _place(reader)
    if "miss" in table:
        reader.refuse("says the miss a second time")
    table["miss"] = found["miss"]


def _miss_of_club(reader: Reader, found: re.Match[str]) -> None:
    """ "misses right with the driver": the side of that club alone."""
    named = reader.name_of_club(found.end())
    if named is None:  # "misses right with a draw"
        _miss(reader, found)
        return
    section = reader.section(named[0])
    if "miss" in section:
        reader.refuse(f"says the miss of the {named[0]} a second time")
    section["miss"] = found["miss"]
    reader.club = named[0]
    end = named[1]
    if size := CLUB_SIZE.match(reader.text, end):
        reader.put_size(named[0], stem_of(size), size)
        end = size.end()
    reader.pass_over(found, end)


def _nothing(reader: Reader, found: re.Match[str]) -> None:
    """Words that were looked for before the reading began."""


def _shape(reader: Reader, found: re.Match[str]) -> None:
    table = _place(reader)
    if "shape" in table:
        reader.refuse("says the shape a second time")
    table["shape"] = found["shape"]
    if found["number"]:
        _put_curve(reader, table, found)


def _put_curve(reader: Reader, table: dict[str, Any], found: re.Match[str]) -> None:
    """How far it curves; without a club the longest one's."""
    if table is not reader.table:
        reader.put_size(None, "curve", found)
        return
    unit = reader.unit_of(found)
    table[f"curve_{unit}"] = plain_number(found["number"])


def _shape_of_club(reader: Reader, found: re.Match[str]) -> None:
    """ "slices the driver 30 yards", "30 yd slice with the driver": a club's own shape, and how far."""
    named = reader.name_of_club(found.end())
    if named is None:
        reader.at = found.end()
        reader.refuse("is no club that curves")
    name, end = named
    section = reader.section(name)
    if "shape" in section:
        reader.refuse(f"says the shape of the {name} a second time")
    section["shape"] = found["shape"]
    reader.club = name
    behind = None if found["number"] else CURVE_BEHIND.match(reader.text, end)
    if found["number"]:
        reader.put_size(name, "curve", found)
    elif behind:
        reader.put_size(name, "curve", behind)
        end = behind.end()
    elif size := CLUB_SIZE.match(reader.text, end):
        reader.put_size(name, stem_of(size), size)
        end = size.end()
    reader.pass_over(found, end)  # the phrase ends behind the club


def _driver_behind(reader: Reader, found: re.Match[str]) -> None:
    """ "A 230 driver": the number before it is its carry, as the one behind it is."""
    reader.put_size("driver", "carry", found)
    reader.club = "driver"
    if "clubs" in reader.table:
        reader.put_into_set("driver", sized=True)


def _tee(reader: Reader, found: re.Match[str]) -> None:
    reader.put("tee", found["tee"])


def _width(reader: Reader, found: re.Match[str]) -> None:
    reader.put_size(None, "width" if found["what"] in ("wide", "across") else "depth", found)


def _tee_only(reader: Reader, found: re.Match[str]) -> None:
    if reader.club is None:
        reader.refuse("needs a club before it")
    reader.section(reader.club)["use"] = "tee only"


def _only(reader: Reader, found: re.Match[str]) -> None:
    """ "only driver 150, 7-iron, sand wedge": from here on clubs named are the whole set."""
    if reader.name_of_club(found.end()) is None:
        reader.refuse("is not followed by a club")
    reader.put("clubs", [])


_AND_CLUB = re.compile(r"\s+(?:and|or|nor|&)\s+(?:no\s+|the\s+|an?\s+|his\s+|her\s+|my\s+)?")


def _without_kind(reader: Reader, found: re.Match[str]) -> None:
    """ "No hybrids": those of a standard set stay at home, none of which was given."""
    kind = "wood" if "wood" in found["kind"] else "hybrid"
    for club in STANDARD_SET:
        if club.endswith(f"-{kind}"):
            if reader.section(club):
                reader.refuse(f"leaves out the {club} that was just given")
            reader.section(club)["use"] = "never"


def _without(reader: Reader, found: re.Match[str]) -> None:
    named = reader.name_of_club(found.end())
    if named is None:
        reader.at = found.end()
        reader.refuse("is no club to leave out")
    end = found.end()
    while named is not None:
        section = reader.section(named[0])
        if section or named[0] in reader.table.get("clubs", ()):
            reader.refuse(f"leaves out the {named[0]} that was just given")
        section["use"] = "never"
        end = named[1]
        more = _AND_CLUB.match(reader.text, end)
        named = reader.name_of_club(more.end()) if more else None
        if named is not None and CLUB_SIZE.match(reader.text, named[1]):  # "no driver and 7-iron 140"
            named = None
    reader.pass_over(found, end)  # the phrase ends behind the club


_SURNAME = re.compile(r"(?:\s+[^\W\d_a-z][\w'’-]*){1,2}(?=\s*(?:[,;]|$))")
"""More words with a capital each, up to the comma: "called Ada Berg, 12"."""


def _name(reader: Reader, found: re.Match[str]) -> None:
    name, more = found["name"], _SURNAME.match(reader.said, found.end())
    if more:
        name += more[0]
        reader.pass_over(found, more.end())
    reader.put("name", " ".join(name.split()).title())


_TO = r"\s*(?:-|–|to)\s*(?P<upper>\d{1,2})(?![\d.])(?!\s*-?\s*(?:[ihw]\b|iron|hybrid|wood|deg))"
_WOMAN, _MAN = r"(?:woman|women|female|lady|ladies|girl)", r"(?:man|men|male|gentleman|boy)"
_COLOUR = "white|yellow|red|blue|black|gold|green"
_SEX = rf"(?:{_WOMAN}|{_MAN})"
_SIGN = r"(?P<sign>plus\s*|\+\s*|-\s*)?"
_PHRASES: tuple[tuple[str, Callable[[Reader, re.Match[str]], None]], ...] = (
    (AGE, _age),
    (rf"(?<![^\s])(?<!\S\s){NUMBER}[\s,]+(?={_SEX}\b)", _alone),
    (rf"{HANDICAP}\s*(?:of\s+)?{NUMBER}{_TO}(?!\w)", _handicaps),
    (rf"(?:off\s+)?{NUMBER}{_TO}[\s-]*{HANDICAP}\b", _handicaps),
    (rf"(?:(?:off|{HANDICAP}|in)\s+)*(?:the\s+)?(?:(?P<part>low|mid(?:dle)?|high)[\s-]+)?teens\b"
     rf"(?:\s+{HANDICAP})?", _teens),
    (rf"{HANDICAP}\s*(?:index\s*)?(?:of\s*|is\s*|[:=]\s*)?(?:(?:about|around|roughly)\s+)?"
     rf"{_SIGN}{NUMBER}(?![\w.])", _handicap),
    (rf"(?<=plays )to\s+{_SIGN}{NUMBER}(?![\w.])", _handicap),
    (r"(?:beginner|novice|newcomer)\b", _beginner),
    (rf"(?P<part>high|mid|low)(?:dle)?[\s-]+{HANDICAP}s?\b(?!\s*\d)", _handicapper),
    (rf"(?P<part>low|high)[\s-]+single[\s-]+(?:figures?|digits?)(?:\s+{HANDICAP})?\b", _single),
    (rf"single[\s-]+(?:figures?|digits?)(?:\s+{HANDICAP})?\b", _single_figures),
    (rf"off\s+(?:of\s+)?(?:an?\s+)?{_SIGN}{NUMBER}(?![\w.])", _handicap),
    (rf"{_SIGN}{NUMBER}[\s-]*{HANDICAP}(?:\s+index)?\b", _handicap),
    (rf"(?P<sign>plus\s*|\+\s*){NUMBER}(?![\w.])", _handicap),
    (r"(?:off\s+)?scr(?:atch)?\b", lambda reader, found: reader.put("handicap", 0.0)),
    (r"bogey\b", _bogey),
    (rf"shoots?\s+(?:between\s+|from\s+)?{NUMBER}{UPPER}(?!\w)", _scores),
    (rf"shoots?\s+(?:about\s+|around\s+)?{NUMBER}(?![\w.])", _score),
    (r"(?:shoots?\s+)?(?:in\s+)?(?:the\s+)?(?:(?P<third>low|mid(?:dle)?|high)[\s-]*)?(?P<decade>[6-9]0|1[0-3]0)"
     r"(?:['’]?s)\b(?:[\s-]*shooter)?", _scores),
    (rf"{NUMBER}[\s-]*shooter\b", _score),
    (rf"{_WOMAN}(?:'s)?\b", lambda reader, found: reader.put("sex", "woman")),
    (rf"{_MAN}(?:'s)?\b", lambda reader, found: reader.put("sex", "man")),
    (r"(?:from|off)\s+(?:the\s+)?(?P<tee>[^\W\d_]+)\s+tees?\b(?!\s+only)", _tee),
    (rf"(?P<tee>{_COLOUR})\s+tees?\b(?!\s+only)", _tee),
    (rf"tees?\s+(?P<tee>{_COLOUR})\b", _tee),
    (rf"(?:from|off)\s+(?:the\s+)?(?P<tee>{_COLOUR})s\b", _tee),
    (r"(?:left|right)[\s-]?hand(?:ed|er)?\b|left(?:y|ie)\b", _hand),
    (r"(?:usual\s+)?miss(?:es|ing)?\s*(?:is\s+|[:=]\s*)?(?:both\s+(?:ways|sides)|left\s+and\s+right"
     r"|right\s+and\s+left|either\s+(?:way|side))\b(?:\s+(?:with|off)\s+(?:the|his|her|my)?\s*driver\b)?"
     r"|(?:loses?\s+)?(?:it|them)\s+both\s+(?:ways|sides)"
     r"|(?:two|2)[\s-]way\s+miss(?:es)?\b(?:\s+(?:with|off)\s+(?:the|his|her|my)?\s*driver\b)?", _both_ways),
    (rf"miss(?:es)?\s+(?P<miss>{SIDE}(?:[\s-]+(?:and\s+)?{SIDE})?)\s+(?:with|off)\s+"
     rf"{WHOSE}(?=[^\s,;])", _miss_of_club),
    (r"(?:(?:loses?|leaks?)\s+)?(?:it|everything|the\s+ball|goes)\s+(?:goes\s+)?(?:to\s+the\s+)?(?P<miss>left|right)\b(?!\s+and)",
     _miss),
    (r"(?:comes?|leaves?\s+it)\s+(?:up\s+)?(?P<miss>short)\b", _miss),
    (rf"(?:usual\s+)?miss(?:es|ing)?\s*(?:is\s+|[:=]\s*|it\s+|everything\s+)?(?P<miss>{SIDE}(?:[\s-]+(?:and\s+)?{SIDE})?)\b",
     _miss),
    (rf"(?P<shape>{SHAPED})(?:e?s)?\s+(?:the|his|her|my|a)\s+(?!balls?\b)(?=[^\s,;]){NO_NUMBER}",
     _shape_of_club),
    (rf"(?P<shape>{SHAPED})e?s\s+(?=driver\b|(?:[1-9]|11)[\s-]?(?:w|i|h)){NO_NUMBER}", _shape_of_club),
    (rf"{NUMBER}[\s-]*{NEEDED_UNIT}[\s-]*(?P<shape>{SHAPED})\s+(?:with|off)\s+{WHOSE}",
     _shape_of_club),
    (rf"{NUMBER}[\s-]*{NEEDED_UNIT}[\s-]*(?P<shape>{SHAPED})\b", _shape),
    (rf"(?P<shape>{SHAPED})(?:s|r)?\b(?:\s+(?:it|everything|(?:the|his|her|my)\s+ball)\b)?(?:\s*(?:of\s+)?{NUMBER}{UNIT}(?![\s\w]*(?:wide|deep)))?",
     _shape),
    (rf"{NUMBER}{UNIT}\s*(?P<what>wide|across|deep)\b", _width),
    (rf"(?P<what>width|depth)\s*(?:of\s+)?{NUMBER}{UNIT}",
     lambda reader, found: reader.put_size(None, found["what"], found)),
    (rf"{TEE_ONLY}\b", _tee_only),
    (r"(?:only|just|nothing\s+but)\s+(?:(?:has|have|carr(?:y|ies)|owns?|plays?|uses?|hits?)\s+)?"
     rf"(?:(?:these\s+)?clubs?\s*[:,]?\s+)?{WHOSE}", _only),
    (r"(?:all\s+)?in\s+met(?:re|er)s\s*:?|all\s+met(?:re|er)s\b", _nothing),
    (r"(?:his|her|my)?\s*(?:bag|set|clubs)\s*(?:[:=]|is\b|are\b|of\b)\s*", _only),
    (r"(?:without|no)\s+(?:any\s+)?(?P<kind>(?:fairway\s+)?woods|hybrids|rescues|rescue\s+clubs)\b",
     _without_kind),
    (r"(?:without|no|never(?!\s+(?:miss|go))|leav(?:es|ing)"
     r"|(?:doesn't|does not|don't|do not|can't|cannot|won't)(?=\s+(?:hit|use|carry|play|have|own)))\s+"
     r"(?:(?:hits?|uses?|using|carry|carries|plays?|have|has|owns?)\s+)?" + WHOSE, _without),
    (rf"{NUMBER}{UNIT}[\s-]+driver\b(?!\s*\d)", _driver_behind),
    (r"(?:called|named?)\s*[:=]?\s*(?P<name>[^\W\d_][\w'’-]*)", _name),
)  # fmt: skip
"""What is looked for and what it does; the first that fits is taken."""


@cache
def phrases() -> tuple[Phrase, ...]:
    """What is looked for, compiled when a player is said: most questions name a file."""
    of_club = _width, _tee_only, _miss, _shape
    return tuple(Phrase(re.compile(pattern), act, act in of_club) for pattern, act in _PHRASES)
