"""Places told by the green ("20 short of the green", "just off the green, right") as places by the line."""

from __future__ import annotations

import math
import re

import numpy as np
import shapely

from ..errors import WordsRefused
from ..hole.cuts import cut, strips_of
from ..hole.model import Hole
from ..hole.surfaces import PENALTY_SURFACES, WORDS, Surface
from .distancewords import NUMBER, UNIT, UNIT_OR_FEET, yards
from .placewords import Told, on_words, plain, read_words, with_rest

_NOT_MEANT = frozenset((Surface.BUNKER, Surface.TREES, Surface.OUT_OF_BOUNDS, *PENALTY_SURFACES))
"""Ground a ball is not taken to lie on unless somebody says so."""

RIM_YD = 1.0
"""How far inside the green a ball on its edge lies, and outside it one on the fringe [yd]: half way across
the usual one (assumed)."""

PART = 0.25
"""How far into the green "the front of the green" is, as a share of its depth, and its back from the back
(assumed)."""

SHORT_YD = 20.0
"""So many yards "from the green" are short of it (assumed) [yd]."""

JUST_YD = 5.0
"""How far off the green "just off" is, and a place of which nothing is said [yd]: five paces (assumed)."""

LONGEST_YD = 120.0
"""How far beside and beyond the line its edges are looked for [yd]; no green reaches farther."""

STEP_YD = 0.5
"""Step along the line [yd]: half the cell of the engine's raster."""

_AWAY = rf"(?:(?:just|right)\s+|(?P<n>{NUMBER})\s*(?P<unit>{UNIT_OR_FEET})?\s*)?(?:just\s+)?"
_AWAY_2 = _AWAY.replace("n>", "n2>").replace("unit>", "unit2>")
"""The same with groups of other names, for a second way of saying it in one pattern."""

_GREEN = r"(?:of\s+)?(?:the\s+)?(?:putting\s+)?green\b"
_SIDE = r"(?P<side>left|right)(?:[\s-]*hand)?(?:\s+(?:side|edge))?"
_WAYS = {
    "front": (
        rf"{_AWAY}(?:short|shy|in\s+front|before|off\s+the\s+front(?:\s+edge)?)\s+{_GREEN}"
        rf"|(?:{_AWAY_2})"
        rf"(?:(?:short|shy)\s+of|off|before)\s+(?:the\s+)?front(?:\s+edge)?\b(?!\s+(?:left|right|bunker))(?:\s+{_GREEN})?"
    ),
    "from": rf"(?P<n>{NUMBER})\s*(?P<unit>{UNIT_OR_FEET})?\s*(?:away\s+)?(?:from|to)\s+{_GREEN}",
    "back": (
        rf"{_AWAY}(?:behind|over|past|beyond|long|through|(?:off|over)\s+the\s+back(?:\s+edge)?)\s+{_GREEN}"
        rf"|(?:{_AWAY_2})"
        r"(?:over|off|through|past)\s+the\s+back\b"
    ),
    "beside": rf"{_AWAY}(?:off\s+|outside\s+)?(?:(?:on|to)\s+)?(?:the\s+)?{_SIDE}\s+{_GREEN}",
    "off": rf"{_AWAY}(?:off|outside)\s+{_GREEN}[\s,]*(?:(?:on|to)\s+)?(?:the\s+)?(?:{_SIDE})?",
}
PIN_HIGH = re.compile(r"\b(?:pin|flag|hole)[\s-]+high\b[\s,]*")
_TO = re.compile(
    rf"(?P<n>{NUMBER})\s*(?P<unit>{UNIT})?\s+(?:to|from)\s+(?:the\s+)?(?P<end>front|middle|cent(?:re|er)|back)"
    rf"(?:\s+edge)?(?:\s+{_GREEN}|(?=\s*(?:,|$)))"
)
_CORNER = re.compile(
    rf"{_AWAY}(?P<end>short|long|over|past|behind)(?:\s+and)?\s+(?:to\s+the\s+)?(?P<side>left|right)"
    rf"\s+{_GREEN}|{_AWAY_2}(?P<end2>short|long|over|past|behind)\s+{_GREEN}[\s,]*(?:and\s+)?"
    r"(?:(?:on|to)\s+the\s+)?(?P<side2>left|right)(?![\s-]*(?:hand\s+)?(?:heavy|rough|bunker|trees))"
)
"""Short or long of it and beside it too ("long left of the green")."""

_RIM = re.compile(
    r"(?:(?:on|to)\s+)?(?:the\s+)?(?P<end>front|back|left|right)(?:[\s-]*hand)?\s+edge"
    rf"(?:\s+{_GREEN})?|(?:on\s+)?(?:the\s+)?(?P<middle>middle|cent(?:re|er))\s+{_GREEN}"
)
_PART = re.compile(rf"(?:(?:on|to)\s+)?(?:the\s+)?(?P<end>front|back)\s+(?:part\s+)?{_GREEN}")
_PATTERNS = tuple((way, re.compile(pattern)) for way, pattern in _WAYS.items())


def by_the_green(text: str, hole: Hole) -> Told | None:
    """A place told by the green put into yards on and beside the line, which `places.place` reads.

    Parameters
    ----------
    text : str
        ``"20 short of the green"``, ``"10 m behind the green"``, ``"over the back"``, ``"6 right of the
        green"``, ``"just off the green, left"``; what else is said stays behind it. Short and behind are
        along the line of play, left and right across it half way up the green (pin high where that is said),
        each from the edge there. ``"long left of the green"`` is level with its back and its left edge,
        ``"front edge"`` is a yard inside of it.
        ``"150 to the front"`` (middle, back) is straight, as a laser measures it, from the line of play.
    hole : Hole
        With the tee in use.

    Returns
    -------
    Told or None
        Words such as ``"352.5 on"`` or ``"380 on, 21 right"``. None: other words.

    Raises
    ------
    UsageError
        Off the green, but not to which side; a line of play that does not come to the green.
    """
    usual = plain(text)
    level = PIN_HIGH.search(usual)
    usual = " ".join(PIN_HIGH.sub(" ", usual).split())
    if to := _TO.search(usual):
        return Told(with_rest(on_words(_before(text, hole, to)), usual, to))
    if part := _PART.fullmatch(usual):
        front, back = _ends(text, hole)
        share = PART if part["end"] == "front" else 1.0 - PART
        on_it = f"{part[0]!r} is taken as on it, a quarter of the way in"
        return Told(on_words(front + share * (back - front)), on_it)
    if rim := _RIM.fullmatch(usual):
        return Told(_rim(text, hole, rim))
    if corner := _CORNER.search(usual):
        return _corner(text, hole, usual, corner)
    searched = ((way, pattern.search(usual)) for way, pattern in _PATTERNS)
    way, found = next(((way, found) for way, found in searched if found), ("", None))
    if found is None:
        return None
    told = _away_yd(found)
    away = JUST_YD if told is None else told
    if way == "from" and away >= SHORT_YD:  # nobody counts so far from the back of it
        way = "front"
    side = found.groupdict().get("side")
    if way in ("off", "from") and side is None:
        raise WordsRefused("place", text, 'off the green where? Say "5 left of the green", "over the back"')
    front, back = _ends(text, hole)
    if side is None:
        words = on_words(front - away if way == "front" else back + away)
    else:
        middle = 0.5 * (front + back)
        if level is not None:
            middle = hole.station_offset(*hole.pin.xy_yd)[0]
        left, right = _sides(hole, middle)
        beside = right + away if side == "right" else left - away
        words = on_words(middle, beside)
    taken = None if told is not None else f"{found[0].strip(' ,')!r} is taken as five paces from its edge"
    return Told(with_rest(words, usual, found), taken, in_paces=told is None)


def _away_yd(found: re.Match[str]) -> float | None:
    """The distance that was said, in either way of saying it [yd]; None without one."""
    parts = found.groupdict()
    number, unit = parts["n"] or parts.get("n2"), parts["unit"] or parts.get("unit2")
    if number is None:
        return None
    return yards(number, unit)


def _rim(text: str, hole: Hole, found: re.Match[str]) -> str:
    """On the edge of the green, at the front, the back or a side; in its middle."""
    if found["middle"]:
        return on_words(0.5 * sum(_ends(text, hole)))
    front, back = _ends(text, hole)
    if found["end"] in ("front", "back"):
        return on_words(front + RIM_YD if found["end"] == "front" else back - RIM_YD)
    middle = 0.5 * (front + back)
    left, right = _sides(hole, middle)
    return on_words(middle, left + RIM_YD if found["end"] == "left" else right - RIM_YD)


def _corner(text: str, hole: Hole, usual: str, found: re.Match[str]) -> Told:
    """Level with an end of the green and with a side of it."""
    front, back = _ends(text, hole)
    left, right = _sides(hole, 0.5 * (front + back))
    end, side = found["end"] or found["end2"], found["side"] or found["side2"]
    away = _away_yd(found) or 0.0
    words = on_words(front - away if end == "short" else back + away, left if side == "left" else right)
    said, level = found[0].strip(" ,"), "front" if end == "short" else "back"
    whole, there = with_rest(words, usual, found), read_words(words)
    if found["n"] or found["n2"]:
        return Told(whole, f"{said!r} is taken as so far {end} of it, level with its {side} edge")
    feature = hole.feature_at(*hole.at(there.station or 0.0, there.offset or 0.0))
    if whole == words and feature is not None and feature.surface in _NOT_MEANT:
        raise WordsRefused(
            "place",
            text,
            f"level with its {level} and {side} edge there is {feature.name}: say what it "
            f'lies in, "{said}, {WORDS[feature.surface]}", or how far from the pin, "18 out, {side} rough"',
        )
    return Told(whole, f"{said!r} is taken as level with its {level} and {side} edge")


def _before(text: str, hole: Hole, to: re.Match[str]) -> float:
    """Station from which the front, middle or back of the green is so far, as a laser measures it [yd]."""
    away, (front, back) = yards(to["n"], to["unit"]), _ends(text, hole)
    end = {"front": front, "back": back}.get(to["end"], 0.5 * (front + back))
    there = hole.at(end)
    stations = np.arange(0.0, end, STEP_YD)[::-1]
    far = np.array([math.dist(hole.at(float(station)), there) for station in stations])
    if not (far >= away).any():
        most = far.max(initial=0.0)
        raise WordsRefused("place", text, f"the tee is {most:.0f} yd from the {to['end']} of the green")
    return float(stations[np.argmax(far >= away)])


def _ends(text: str, hole: Hole) -> tuple[float, float]:
    """Stations at which the line of play, led on straight, comes onto the green and leaves it [yd]."""
    stations = np.arange(0.0, hole.length_yd + LONGEST_YD, STEP_YD)
    on = stations[_on_green(hole, [hole.at(float(station)) for station in stations])]
    if not len(on):
        raise WordsRefused("place", text, 'the line of play misses the green; say "35 out, right rough"')
    return float(on[0]), float(on[-1])


def _sides(hole: Hole, station: float) -> tuple[float, float]:
    """Offsets of the left and the right edge of the green at a station [yd]."""
    on = strips_of(cut(hole, station, reach_yd=LONGEST_YD), hole.green)
    return (on[0][0], on[-1][1]) if on else (0.0, 0.0)


def _on_green(hole: Hole, places: list[tuple[float, float]]) -> np.ndarray:
    x, y = np.array(places).T
    return np.asarray(shapely.contains_xy(hole.green, x, y))
