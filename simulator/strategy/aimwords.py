"""A line as golfers say it, in degrees: "driver down the fairway", "3w left edge", "5i at the barn"."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence

from ..conditions import Conditions
from ..errors import UsageError
from ..hole.cuts import fairway_across, fairway_ahead, fairways_near
from ..hole.model import Hole, Point
from ..player.model import Player
from .clubwords import Meant, shot_meant
from .distancewords import NUMBER, UNIT, yards
from .ground import station_reached
from .placewords import SIDES
from .today import down_the_line_yd

_THE = r"(?:\s*,\s*|\s+)(?:aimed\s+|aim\s+|going\s+)?"
_MIDDLE = r"(?:(?:the\s+)?(?:middle|cent(?:re|er)))"
_OF_FAIRWAY = r"(?:(?:\s+of)?\s+(?:the\s+)?fairway(?:\s+ahead)?)"
_BESIDE = (
    rf"(?:(?P<n>{NUMBER})\s*(?P<unit>{UNIT})?\s*(?:to\s+the\s+)?(?P<way>left|right)"
    r"\s+of\s+(?:the\s+)?)"
)
"""Yards beside what is aimed at, as answers say it: "3 yd left of the middle of the fairway"."""

_FAIRWAY = re.compile(
    rf"(?P<club>.*?\S){_THE}{_BESIDE}?(?:"
    rf"(?:(?:at|on|up|down)\s+)?(?:{_MIDDLE}{_OF_FAIRWAY}?"
    rf"|(?:{_MIDDLE}\s+of\s+)?(?:the\s+)?(?:(?P<strip>left|right)\s+)?fairway(?:\s+ahead)?|"
    r"(?:the\s+)?(?P<side>left|right)(?:[\s-]+hand)?\s+(?P<part>edge|half|side|cent(?:re|er))"
    rf"{_OF_FAIRWAY}?))",
    re.IGNORECASE,
)
_GREEN = re.compile(
    rf"(?P<club>.*?\S){_THE}(?:(?:at|on|for)\s+(?:the\s+)?green"
    rf"|(?:{_BESIDE}|(?:(?:at|on|for)\s+)?){_MIDDLE}\s+of\s+(?:the\s+)?green)",
    re.IGNORECASE,
)
_THING = re.compile(
    rf"(?P<club>.*?\S){_THE}(?:{_BESIDE}|(?:at|over|on)\s+(?:the\s+)?)(?P<name>\S.*)", re.IGNORECASE
)

_ACROSS = {"edge": 1.0, "half": 0.5, "side": 0.5, "centre": 0.5, "center": 0.5}
"""How far from the middle of the fairway to its edge these are: half of it is aimed at by its own middle."""

AIMS = (
    'lines in words: "driver down the fairway", "driver left edge", "driver right half of the fairway", '
    '"driver 3 left of the middle of the fairway", '
    '"5i at the green", "3w at the flag", at or over a mark or an area by its name'
)


def in_degrees(
    text: str,
    hole: Hole,
    player: Player,
    from_yd: Point | None = None,
    conditions: Conditions | None = None,
) -> str:
    """A club with a line in words, the line in degrees off the straight one to the pin; others as they are.

    The fairway is aimed at where the club comes down: where the line of play is as far from the ball as the
    club carries today; short of a fairway that begins farther on, where that begins. Its edge is the edge
    itself, its half the middle of that half.

    Parameters
    ----------
    from_yd : (x, y) or None
        The ball's place; None is the tee.
    conditions : Conditions, optional
        The day; still air at 25 C when left out.

    Raises
    ------
    UsageError
        No fairway there.
    """
    plain = " ".join(text.split())
    here = from_yd or (0.0, 0.0)
    if "@" in plain:
        return text
    if found := _FAIRWAY.fullmatch(plain):
        meant = _meant(player, found["club"])
        if meant is None or (found["n"] and found["part"] in ("half", "side")):
            return text
        down_yd = down_the_line_yd(hole, here, meant, conditions or Conditions())
        return _aimed(found["club"], hole, here, _on_fairway(text, hole, here, down_yd, found))
    if found := _GREEN.fullmatch(plain):
        middle = hole.green.centroid
        known = _meant(player, found["club"]) is not None
        aim = _beside(found, here, (middle.x, middle.y))
        return _aimed(found["club"], hole, here, aim) if known else text
    if found := _THING.fullmatch(plain):
        there = _named(hole, found["name"], marks_alone=bool(found["n"]))
        if there is not None and _meant(player, found["club"]) is not None:
            return _aimed(found["club"], hole, here, _beside(found, here, there))
    return text


def all_in_degrees(
    clubs: Sequence[str], hole: Hole, player: Player, from_yd: Point | None, conditions: Conditions
) -> tuple[str, ...]:
    """`in_degrees` of each."""
    return tuple(in_degrees(text, hole, player, from_yd, conditions) for text in clubs)


def _meant(player: Player, club: str) -> Meant | None:
    """The swing of the words before the line, None where they are none or have an aim of their own."""
    try:
        meant = shot_meant(player, club)
    except UsageError:
        return None  # told with the whole of the words
    return meant if meant.aim is None else None


def _on_fairway(text: str, hole: Hole, here: Point, carry: float, found: re.Match[str]) -> Point:
    station = station_reached(hole, here, carry)
    ahead = None if station is None else fairway_ahead(hole, station)
    station = station if ahead is None else ahead
    across = None if station is None else fairway_across(hole, station, 0.0)
    if station is None or across is None:
        raise UsageError(f"club {text!r}: no fairway where it comes down, {carry:.0f} yd from here; {AIMS}")
    if found["strip"]:
        strips = fairways_near(hole, station, 0.0)
        if len(strips) < 2:
            raise UsageError(f'club {text!r}: one fairway there; say "{found["strip"]} half of the fairway"')
        across = strips[0 if found["strip"].casefold() == "left" else -1]
    left, right = across
    size = 0.0 if not found["side"] else _ACROSS[found["part"].casefold()]
    sign = SIDES[found["side"].casefold()] if found["side"] else 1
    return hole.at(station, 0.5 * (left + right) + sign * size * 0.5 * (right - left) + _right_of(found))


def _right_of(found: re.Match[str]) -> float:
    """Yards right of what is aimed at; 0 where none were said."""
    return yards(found["n"], found["unit"]) * SIDES[found["way"].casefold()] if found["n"] else 0.0


def _beside(found: re.Match[str], here: Point, there: Point) -> Point:
    """The place so far beside another, as seen from the ball."""
    turn = math.atan2(there[0] - here[0], there[1] - here[1])
    right = _right_of(found)
    return there[0] + right * math.cos(turn), there[1] - right * math.sin(turn)


def _named(hole: Hole, name: str, *, marks_alone: bool) -> Point | None:
    """The one mark or area of that name: a mark, or the middle of an area (yards beside one count from its
    edge for golfers, so that only marks have them)."""
    plain = name.casefold()
    found = [(mark.x_yd, mark.y_yd) for mark in hole.marks if mark.name.casefold() == plain]
    areas = () if marks_alone else hole.features
    middles = [f.area.centroid for f in areas if f.name.casefold() == plain]
    found += [(middle.x, middle.y) for middle in middles]
    return found[0] if len(found) == 1 else None


def _aimed(club: str, hole: Hole, here: Point, there: Point) -> str:
    to_pin = math.atan2(hole.pin.x_yd - here[0], hole.pin.y_yd - here[1])
    turn = math.degrees(math.atan2(there[0] - here[0], there[1] - here[1]) - to_pin)
    turn = (turn + 180.0) % 360.0 - 180.0
    return f"{club.rstrip(' ,')}@{turn:.2f}deg"
