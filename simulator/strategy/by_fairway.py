"""Places told by the fairway's edge ("200 on, 10 right of the fairway") as places by the line."""

from __future__ import annotations

import re

from ..errors import WordsRefused
from ..hole.cuts import away_yd, fairways
from ..hole.model import Hole
from .by_green import JUST_YD
from .distancewords import NUMBER, UNIT, yards
from .ground import WIDEST_YD, line_place
from .placewords import SIDES, Told, on_words, plain, read_words, told_as_typed

_TOLD = re.compile(
    rf"(?:(?P<number>{NUMBER})\s*(?:(?P<unit>{UNIT})\s+)?|(?P<just>just\s+))?"
    r"(?:(?:off|in)\s+)?(?:(?:to|on)\s+)?(?:the\s+)?(?P<side>left|right)\s+of\s+"
    r"(?:the\s+)?(?:edge\s+of\s+(?:the\s+)?)?fairway\b"
)


_IN_THE_ROUGH = re.compile(
    rf"(?P<length>{NUMBER}\s*(?:(?:{UNIT})\s+)?)(?:in|into|inside)\s+(?:the\s+)?(?P<side>left|right)(?:[\s-]hand)?\s+rough\b"
)
"""How far off the mown grass, in other words: "5 yards into the right rough"."""

_OFF = re.compile(
    rf"(?P<length>{NUMBER}\s*(?:(?:{UNIT})\s+)?)(?:off|from|outside)\s+(?:the\s+)?fairway(?:\s+edge)?[\s,]*"
    r"(?:(?:on|to)\s+)?(?:the\s+)?(?P<side>left|right)\b(?![\s-]*(?:hand\s+)?(?:heavy|rough|trees|bunker))"
)
"""The side behind it: "10 off the fairway on the left"."""


def by_the_fairway(text: str, hole: Hole) -> Told | None:
    """A place so far left or right of the fairway put into yards on and beside the line.

    Parameters
    ----------
    text : str
        ``"200 on, 10 right of the fairway"``, ``"5 yards left of the fairway, 150 out"``: yards from the
        mown edge on that side.
    hole : Hole

    Returns
    -------
    Told or None
        Words such as ``"200.0 on, 26.0 right"``. None: other words.

    Raises
    ------
    UsageError
        No fairway there; a side of it, but neither how far off nor "just".
    """
    usual = _IN_THE_ROUGH.sub(r"\g<length>\g<side> of the fairway, rough", plain(text))
    usual = _OFF.sub(r"\g<length>\g<side> of the fairway", usual)
    told = _TOLD.search(usual)
    if told is None:
        return None
    side_word = told["side"]
    if not told["number"] and not told["just"]:
        raise WordsRefused(
            "place",
            text,
            f'on the fairway or beside it? Say "{side_word} half of the fairway", '
            f'"{side_word} rough" or how far off, "8 {side_word} of the fairway"',
        )
    rest = " ".join((usual[: told.start()] + " " + usual[told.end() :]).split()).strip(" ,")
    if not rest:
        raise WordsRefused("place", text, f'how far along? Say "200 on, {told[0]}", for example')
    with told_as_typed(rest, text):
        said = read_words(rest)
    station = said.station
    if station is None:
        if said.out is None:
            return None
        station = hole.station_offset(*line_place(hole, said.out))[0]
    side = SIDES[side_word]
    edge = fairway_edge_yd(hole, station, side)
    if edge is None:
        raise WordsRefused("place", text, f"no fairway there, {station:.0f} yd on")
    away = yards(told["number"], told["unit"]) if told["number"] else JUST_YD
    offset = edge + side * away
    taken = None if told["number"] else f"{told[0].strip()!r} is taken as five paces from its edge"
    ground = "" if said.ground is None else f", {said.ground.name.lower().replace('_', ' ')}"
    return Told(f"{on_words(station, offset)}{ground}", taken, in_paces=not told["number"])


def fairway_edge_yd(hole: Hole, station: float, side: int) -> float | None:
    """Offset of the fairway's edge on a side (-1 left, 1 right), right of the line positive [yd]; None: no
    fairway there.

    The fairway nearest to the line that has ground on that side of it: of two with water between them the
    left one is meant by what lies left. One that is wholly on the other side has an edge on this one, too.
    """
    found = fairways(hole, station, reach_yd=WIDEST_YD)
    there = [strip for strip in found if side * strip[side > 0] > 0.0]
    nearest = min(there or found, key=lambda strip: away_yd(strip, 0.0), default=None)
    return None if nearest is None else nearest[side > 0]
