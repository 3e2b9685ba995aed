"""Places told by the fairway's edge ("200 on, 10 right of the fairway") as places by the line."""

from __future__ import annotations

import re

from ..errors import UsageError
from ..hole.model import Hole
from ..hole.surfaces import Surface
from .ground import STEP_YD, WIDEST_YD, line_place
from .words import NUMBER, SIDES, UNIT, plain, read_words, yards

EDGE_YD = 0.02
"""The edge is found within so much [yd]."""

_TOLD = re.compile(
    rf"(?P<number>{NUMBER})\s*(?:(?P<unit>{UNIT})\s+)?(?:to\s+the\s+)?(?P<side>left|right)\s+of\s+"
    r"(?:the\s+)?(?:edge\s+of\s+(?:the\s+)?)?fairway\b"
)


def by_the_fairway(text: str, hole: Hole) -> tuple[str, str | None]:
    """A place so far left or right of the fairway put into yards on and beside the line.

    Parameters
    ----------
    text : str
        ``"200 on, 10 right of the fairway"``, ``"5 yards left of the fairway, 150 out"``: yards from the
        mown edge on that side. Another text comes back as it is.
    hole : Hole

    Returns
    -------
    words : str
        Such as ``"200.0 on, 26.0 right"``.
    taken : None
        Nothing is taken for granted.

    Raises
    ------
    UsageError
        No fairway on that side there.
    """
    usual = plain(text)
    told = _TOLD.search(usual)
    if told is None:
        return text, None
    rest = " ".join((usual[: told.start()] + " " + usual[told.end() :]).split()).strip(" ,")
    if not rest:
        raise UsageError(f"place {text!r}: how far along? Say \"200 on, {told[0]}\", for example")
    try:
        said = read_words(rest)
    except UsageError as error:  # told in the words that were typed
        raise UsageError(str(error).replace(repr(rest), repr(text))) from None
    station = said.station
    if station is None:
        if said.out is None:
            return text, None
        station = hole.station_offset(*line_place(hole, said.out))[0]
    side = SIDES[told["side"]]
    edge = fairway_edge_yd(hole, station, side)
    if edge is None:
        raise UsageError(f"place {text!r}: no fairway {told['side']} of the line there, {station:.0f} yd on")
    offset = edge + yards(told["number"], told["unit"])
    ground = "" if said.ground is None else f", {said.ground.name.lower().replace('_', ' ')}"
    return f"{station:.1f} on, {offset:.1f} {told['side']}{ground}", None


def fairway_edge_yd(hole: Hole, station: float, side: int) -> float | None:
    """From the line to where the fairway nearest to it ends on a side (-1 left, 1 right) [yd]; None: there
    is none."""
    mown = None
    for k in range(int(WIDEST_YD / STEP_YD)):
        away = k * STEP_YD
        if hole.surface_at(*hole.at(station, side * away)) is Surface.FAIRWAY:
            mown = away
        elif mown is not None:
            break
    if mown is None:
        return None
    rough = mown + STEP_YD
    while rough - mown > EDGE_YD:
        middle = 0.5 * (mown + rough)
        on = hole.surface_at(*hole.at(station, side * middle)) is Surface.FAIRWAY
        mown, rough = (middle, rough) if on else (mown, middle)
    return 0.5 * (mown + rough)
