"""The words of a place sorted into distances, a side and a kind of ground."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import NamedTuple

from ..errors import WordsRefused
from ..hole.surfaces import Surface
from ..spelt import in_figures, in_full
from ..wording import by_word
from .distancewords import NUMBER, UNIT, UNITS

ALLOWED = (
    'say "164 out, left rough", "230 on, 12 right", "20 short of the green", "left bunker", "x,y" in yards, '
    'or "tee"; '
    "ground: fairway, rough, heavy rough, bunker, trees, penalty area"
)
"""What a place may look like, the end of every refusal."""

_GROUND = {
    "fairway": Surface.FAIRWAY, "rough": Surface.ROUGH, "bunker": Surface.BUNKER, "sand": Surface.BUNKER,
    "trees": Surface.TREES, "wood": Surface.TREES, "woods": Surface.TREES, "path": Surface.PATH,
    "tee": Surface.TEE, "green": Surface.GREEN, "water": Surface.WATER, "pond": Surface.WATER,
}  # fmt: skip
GROUND_WORDS = frozenset(_GROUND) | {"heavy", "deep", "thick", "penalty", "area", "ditch", "trap"}
"""Words of a kind of ground; "trap" and others are put into these first."""

SIDES = {"left": -1, "l": -1, "right": 1, "r": 1}
FILLERS = frozenset((
    "a", "about", "among", "an", "and", "around", "at", "flag", "from", "go", "hand", "hole", "in", "leaves",
    "leaving", "lie", "lying", "of", "on", "pin", "roughly", "side", "the", "to", "under",
))  # fmt: skip
"""Words that say nothing of the place."""

_SAY_INSTEAD = {
    "by beside near next opposite": 'say how far it is to the pin and on what: "150 out, right rough"',
    "edge": 'say "left side of the fairway, 150 out", or the yards: "230 on, 14 left"',
    "fringe apron collar": 'say "back fringe", "fringe, 17 out" or "15 out, left rough"',
    "feet foot ft": "yards or m are read; a putt is not planned",
    "- –": 'a comma goes there, "160 out, left rough"',
    "drive gone after": 'say how far on from the tee it is: "240 on", "240 on, left rough"',
    "half halfway midway": 'say how far: "200 on" from the tee, "200 out" from the pin',
    "down": 'say "250 on" from the tee or "250 out", and on what: "left rough"',
    "between": 'say how far it is to the pin and on what: "150 out, right rough"',
    "into": 'say the yards beside the line or the fairway: "200 on, 12 right", "8 right of the fairway"',
    "inches": "yards or m are read",
    "lay lay-up layup laying drop wedge": 'say how far it is to the pin: "90 out", "150 out, fairway"',
    "behind past over beyond long short front back just off": (
        'say how far it is to the pin, "35 out", or on from the tee, "350 on, 12 right"'
    ),
    "white yellow red blue black gold silver forward": "the tee is chosen by --tee",
    "plugged buried divot bare hardpan straw uphill downhill sidehill flyer": (
        "how the ball lies is taken as usual for its ground; leave it out"
    ),
}
_INSTEAD = by_word(_SAY_INSTEAD)
"""Words that name no place, and what to say for them."""

_SIDE_LETTERS = {"l": "left", "lhs": "left side", "r": "right", "rhs": "right side"}
_SIDE_LETTER = re.compile(r"(?<![^\W\d_])(?:lhs|rhs|l|r)(?![\w'’])")

_COUNTED = (
    rf"(?:{'|'.join(UNITS)}|out|on|off|away|left|right|l|r|short|shy|before|behind|past|beyond|over|in|into|inside|"
    r"from|to|of|remaining|down|and)\b|[,-]|$"
)
"""What stands behind a number of a place: in "ten acre wood" it is part of a name."""

_READ_AS = tuple(
    (re.compile(pattern), meant)
    for pattern, meant in (
        (r"(?<=\d)\s*(?:yards?|yds?|y)?\s+(?:from|off) (?:the )?tee\b", " on"),
        (r"(?<=\d)\s*(m|metres?|meters?)\s+(?:from|off) (?:the )?tee\b", r" \1 on"),
        (r"\bshort of (?:the )?(?:pin|flag|hole)\b", "out"),
        (rf"(?<=\d)(\s*(?:{UNIT})?)\s+(?:remaining|to go|left in)\b", r"\1 out"),
        (rf"^({NUMBER}\s*(?:{UNIT})?)\s+left(?=$|[\s,].*\b(?:left|right)\b)", r"\1 out"),
        (
            rf"^({NUMBER}\s*(?:{UNIT})?)\s+left(?=\s*,\s*(?:(?:in|on) )?(?:the )?(?:fairway|middle)$)",
            r"\1 out",
        ),
        (
            rf"^([^\d]*\b(?:fairway|rough|trees|bunker|middle)\b[\s,]*)({NUMBER}\s*(?:{UNIT})?)\s+left$",
            r"\1\2 out",
        ),
        (r"\b(?:tee box|teeing (?:ground|area)|tee shot)\b", "tee"),
        (r"\b(?:fairway|greenside|pot|cross|sand)\s+(?=bunker|sand|trap)", ""),
        (r"\b(?:cart|buggy) path\b", "path"),
        (r"\b(left|right) of (?:the )?(?:line(?: of play)?|cent(?:re|er)(?: ?line)?|middle)(?! of\b)", r"\1"),
        (
            rf"(?<=\d)(\s*(?:{UNIT})?)\s+(?:straight )?down (?:the )?(?:middle|cent(?:re|er)|fairway)\b",
            r"\1 on fairway",
        ),
        (r"\btrap\b", "bunker"),
        (r"\b(?:first cut|(?:semi|light)[ -]rough)\b", "rough"),
        (r"\b(?:middle|cent(?:re|er))(?: of)?(?: the)? fairway\b", "fairway"),
        (r"\b(left|right) (?:half|cent(?:re|er))(?:(?: of)?(?: the)? fairway)?(?=$|,)", r"\1 fairway"),
        (r"\b(on|out)(,? )(?:(?:in|down|up) )?(?:the )?(?:middle|cent(?:re|er))$", r"\1\2fairway"),
        (r"\b(?:water )?hazard\b", "penalty area"),
        (r"(?<=\d)(\s*(?:yards?|yds?|y|m|metres?|meters?)?)[\s-]+(?:marker|post|stake|plate)\b", r"\1 out"),
    )
)
"""Other ways of saying it, put into the words read below."""

_RANGE = re.compile(r"(?P<low>\d+)\s*(?:-|–|to)\s*(?P<high>\d+)(?=\s*(?:[a-z]+\s+)?(?:out|on|to|away)\b)")
_EITHER = tuple(
    (re.compile(pattern), why)
    for pattern, why in (
        (
            rf"\b(?:at )?(?P<n>{NUMBER})\s*(?:{UNIT})?\s+on the (?P<side>left|right)\b",
            'on from the tee or out from the pin? Say "{n} on, {side} rough" or "{n} out, {side} rough" '
            '(or "{side} half")',
        ),
        (
            rf"\bat (?P<n>{NUMBER})(?!\d)\s*(?:{UNIT}\b)?(?!\s*(?:out|on|away|to)\b)(?=$|[\s,])",
            'on from the tee or out from the pin? Say "{n} on" or "{n} out"',
        ),
        (
            rf"^(?P<n>{NUMBER})\s*(?:{UNIT})?\s+left\s*,\s*(?:in )?(?:the )?"
            r"(?P<ground>(?:heavy )?rough|trees|bunker)$",
            'left to go or on the left? Say "{n} out, {ground}" or "{n} out, left {ground}"',
        ),
    )
)
"""What may be meant either way, and what to say for each."""

_TOKEN = re.compile(rf"\s*(?:(?P<number>{NUMBER})|(?P<comma>,)|(?P<word>[^\s,0-9]+)|(?P<other>\S))")


def plain(text: str) -> str:
    """Small letters, single blanks, sides in full, numbers in figures: what patterns are looked for in."""
    usual = in_figures(in_full(" ".join(text.casefold().split())), before=_COUNTED)
    return _SIDE_LETTER.sub(lambda found: _SIDE_LETTERS[found[0]], usual)


def on_words(station_yd: float, offset_yd: float | None = None) -> str:
    """A place by the line of play, as `read_words` takes it: "352.5 on", "380.0 on, 21.0 right"."""
    words = f"{station_yd:.1f} on"
    if offset_yd is None:
        return words
    return f"{words}, {abs(offset_yd):.1f} {'right' if offset_yd >= 0.0 else 'left'}"


def with_rest(words: str, usual: str, found: re.Match[str]) -> str:
    """What a part of a text was put into, and behind it what else was said there."""
    rest = " ".join((usual[: found.start()] + " " + usual[found.end() :]).replace(",", " ").split())
    return f"{words}, {rest}" if rest else words


class Told(NamedTuple):
    """A place told by something on the hole, put into words that `places.place` reads.

    Attributes
    ----------
    words : str
    taken : str or None
        What was taken for granted, as a sentence begins.
    in_paces : bool
        Nobody said how far: five paces were taken.
    of_bunker : bool
        A bunker and no more was said: its middle was taken.
    """

    words: str
    taken: str | None = None
    in_paces: bool = False
    of_bunker: bool = False


@dataclass
class Said:
    """What was read out of the words: numbers in yards, each with its role."""

    plain: list[float]
    out: float | None = None
    station: float | None = None
    offset: float | None = None
    side: int = 0
    ground: Surface | None = None

    @property
    def told(self) -> bool:
        """Whether it is known how far along the hole the place is."""
        return self.out is not None or self.station is not None


def read_words(text: str) -> Said:
    """Sort the words of a place.

    Raises
    ------
    UsageError
        A word that is not understood where it stands, numbers without a role, no distance at all.
    """
    usual = _as_read(text)
    sorter = _Sorter()
    for token in _TOKEN.finditer(usual):
        kind = token.lastgroup or "other"
        word = token[kind]
        if kind == "number":
            sorter.take_number(float(word))
        elif kind == "comma":
            sorter.end_number()
        elif not (sorter.take_role(word) or sorter.take_ground(word) or word in FILLERS):
            if word in _INSTEAD:
                raise WordsRefused("place", text, f"{word!r} is not understood there ({_INSTEAD[word]})")
            raise refused(text, f"{word!r} is not understood there")
    sorter.end_number()
    said = sorter.said
    if sorter.heavy and said.ground is not Surface.ROUGH:
        raise refused(text, "'heavy' goes with rough")
    if sorter.heavy:
        said.ground = Surface.HEAVY_ROUGH
    return _with_roles(text, said)


def _as_read(text: str) -> str:
    """A place in the usual words; what may be meant two ways is refused."""
    usual = plain(text)
    for pattern, meant in _READ_AS:
        usual = pattern.sub(meant, usual)
    if between := _RANGE.search(usual):
        middle = 0.5 * (float(between["low"]) + float(between["high"]))
        raise WordsRefused("place", text, f'{between[0]!r} is not one distance; say one, "{middle:.0f} out"')
    for pattern, why in _EITHER:
        if found := pattern.search(usual):
            raise WordsRefused("place", text, f"{found[0]!r}: {why.format(**found.groupdict())}")
    return usual


class _Sorter:
    """Takes the words of a place one after the other.

    Attributes
    ----------
    said : Said
    number : float or None
        The number just read [yd], until its role is known.
    heavy, penalty : bool
        Whether rough is to be heavy, and whether "area" may follow.
    """

    def __init__(self) -> None:
        self.said = Said(plain=[])
        self.number: float | None = None
        self.heavy = self.penalty = False

    def end_number(self) -> None:
        """The number just read has no word of its own."""
        if self.number is not None:
            self.said.plain.append(self.number)
        self.number = None

    def take_number(self, number: float) -> None:
        """A number, in yards until a unit follows."""
        self.end_number()
        self.number = number

    def take_role(self, word: str) -> bool:
        """Whether a word says what the number before it is, or tells a side."""
        said, number = self.said, self.number
        if number is not None and word in UNITS:
            self.number = number * UNITS[word]
        elif number is not None and word == "on" and said.station is None:
            said.station, self.number = number, None
        elif number is not None and word in SIDES and said.told and said.offset is None:
            said.offset, self.number = number * SIDES[word], None
        elif number is not None and word == "out" and said.out is None:
            said.out, self.number = number, None
        elif word in ("out", "away") and said.out is None and len(said.plain) == 1:
            said.out = said.plain.pop()
        elif word in SIDES and not said.side:
            said.side = SIDES[word]
        else:
            return False
        return True

    def take_ground(self, word: str) -> bool:
        """Whether a word is of a kind of ground."""
        said = self.said
        if word in ("heavy", "deep", "thick"):
            self.heavy = True
        elif word in ("penalty", "ditch"):
            self.penalty = True
            said.ground = Surface.DRY_PENALTY if said.ground is None else said.ground
        elif self.penalty and word == "area":
            pass
        elif word in _GROUND and said.ground is None:
            said.ground = _GROUND[word]
        else:
            return False
        return True


def _with_roles(text: str, said: Said) -> Said:
    """Numbers without a word after them: one is a distance out, two are coordinates."""
    forms = (said.out is not None) + (said.station is not None)
    if forms == 0 and len(said.plain) == 1:
        said.out = said.plain.pop()
    if said.station is not None and said.out is not None:
        raise refused(text, "both a distance on and a distance out")
    if said.told and said.side and said.offset is None and len(said.plain) == 1:  # "20 left, 200 out"
        said.offset, said.side = said.plain.pop() * said.side, 0
    out_first = len(said.plain) == 2 and said.plain[0] > said.plain[1] > 0.0
    if forms == 0 and said.side and out_first:  # "150, 10 left"
        said.out, said.offset = said.plain[0], said.plain[1] * said.side
        said.plain, said.side = [], 0
    if said.plain and (said.told or len(said.plain) != 2):
        raise refused(text, f"the number {said.plain[0]:g} (yards) has no meaning there")
    named = said.ground in (Surface.TEE, Surface.GREEN, Surface.WATER)  # refused or taken without one
    if said.out is None and said.station is None and not said.plain and not named:
        raise refused(text, "no distance in it")
    if said.side and said.ground is None:
        far = f"{said.station:g} on" if said.station is not None else f"{said.out or 164:g} out"
        example = f"{far}, {'left' if said.side < 0 else 'right'} rough"
        raise refused(text, f'a side needs a kind of ground ("{example}")')
    return said


def refused(text: str, why: str) -> WordsRefused:
    """The error for a place that is not understood, ending in what is."""
    return WordsRefused("place", text, f"{why}; {ALLOWED}")


@contextmanager
def told_as_typed(words: str, typed: str) -> Iterator[None]:
    """What is refused of words that others were put into is told in those that were typed."""
    try:
        yield
    except WordsRefused as error:
        raise (error.told_of(typed) if error.words == words else error) from None
