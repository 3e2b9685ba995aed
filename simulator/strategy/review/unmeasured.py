"""A ball of which only the ground was noted: "driver, right rough" went the club's usual length.

Where that reaches the green, a side alone is a side of the green: "7-iron short right".

On the fairway that is carry and run; elsewhere the carry alone. Balls that end there run less and are not the
best struck: the middle one of a player's own in the rough comes to within 15 yards of the carry.
"""

from __future__ import annotations

import re
from typing import Protocol

import numpy as np
import shapely

from ...conditions import Conditions
from ...errors import UsageError
from ...hole.model import Hole, Point
from ...player.model import Player
from ...player.names import club_name
from ...units import FT_PER_YD
from ..clubwords import shot_meant
from ..today import goes_today_yd
from .parts import AND, CENTRE, GAP, GROUND, JUST, OFF_GROUND, THE, pattern
from .spoken import short_of_full

LEAST_LEFT_YD = 40.0
"""Where the usual length leaves less than this to the pin the ball went another: it is asked for [yd]."""

FULL_SHOT_YD = 60.0
"""From farther out than this a swing that hit the green left a putt as far as any on it [yd]."""

CELL_YD = 0.5
"""Places on the green that putts are averaged over stand so far apart [yd]."""

NOT_NOTED = "no distance noted: "
"""What stands before how a place was taken that was noted without a distance."""

_GROUND_ALONE = pattern(GROUND)
_SIDED = pattern(r"\b(?P<side>left|right)\b")
_OFF_MOWN = pattern(r"\b(?:first\s+cut|(?:\w+[\s-]+)?rough|trees|woods?)\b")
_OFF_GREEN = pattern(
    rf"{JUST}(?:(?P<high>(?:pin|flag|hole|green)[\s-]+high)[\s,]*)?"
    r"(?P<way>short|long|(?:to|on)\s+the\s+(?=left|right)|(?=left|right))"
    r"(?:[\s,-]+and)?[\s,-]*(?:on\s+the\s+)?(?P<side>left|right)?"
    rf"(?:{GAP}{AND}(?P<after>short|long))?"
    rf"(?:{GAP}(?:in(?:to)?\s+)?{THE}(?P<ground>{OFF_GROUND}))?"
)
"""A side of the green: which way, how far along it, on what ground."""

_RUNS_ON = pattern(r"\b(?:fairway|half)\b")
_MIDDLE = pattern(rf"(?:(?:down|dead|the)\s+)*(?:middle|{CENTRE})")


class UsualLength(Protocol):
    """How far clubs usually go from a place (x, y) [yd], the tee when left out."""

    def __call__(self, club: str, here: Point = (0.0, 0.0)) -> Point | None:
        """Carry, and carry and run, of a club as noted [yd]; None for a swing that has no usual length."""


def usual_length(player: Player, hole: Hole, conditions: Conditions | None = None) -> UsualLength:
    """How far the player's clubs usually go along the line of play, on level fairway on the day.

    Parameters
    ----------
    conditions : Conditions, optional
        The day as it was; still air on medium ground when left out. A drive into 15 mph that went the usual
        way is not to be told as 20 yards better than usual.
    """

    def length_yd(club: str, here: Point = (0.0, 0.0)) -> Point | None:
        if short_of_full(club):
            return None
        try:
            meant = shot_meant(player, club)
        except UsageError:  # a club with a line in words, or what is none, is refused where clubs are
            if club_name(club) is not None:  # not in the bag: "on" would be refused for a distance
                raise
            return None
        return goes_today_yd(hole, here, meant, conditions or Conditions())

    return length_yd


def ground_alone(where: str) -> bool:
    """Whether words name ground, with a side or without, and not how far along it is."""
    return _GROUND_ALONE.fullmatch(where.strip()) is not None


def by_the_green_alone(where: str) -> tuple[str, str] | None:
    """A side of the green without a distance as a place, and what was taken for it; None for other words.

    Ground with a side ("right rough") is pin high: so is most of what misses a green to a side.
    """
    found = _OFF_GREEN.fullmatch(where.strip())
    if found is None:
        sided, grown = _SIDED.search(where), _OFF_MOWN.search(_SIDED.sub(" ", where))
        if not ground_alone(where) or sided is None or grown is None:
            return None
        return f"pin high, {sided[0]} {grown[0]}".lower(), f"{NOT_NOTED}taken as pin high"
    way = (found["after"] or found["way"]).strip().lower()
    side, ground = (found["side"] or "").lower(), (found["ground"] or "").lower()
    if way not in ("short", "long"):
        way = ""
    if found["high"] and (way or not side):
        return None
    if re.search(r"bunker|trap|sand", ground):
        if not way:  # a place already
            return None
        end = {"short": "front", "long": "back"}[way]
        return " ".join(filter(None, (end, side, "greenside bunker"))), ""
    if ground:
        beyond = {"short": "short of the green", "long": "behind the green"}.get(way)
        along, off = (f"just {beyond}", f"five paces {beyond}") if beyond else ("pin high", "pin high")
        return f"{along}, {side} {ground}".replace("  ", " "), f"{NOT_NOTED}taken as {off}"
    if found["high"]:
        return f"pin high, {side} of the green", f"{NOT_NOTED}taken as five paces {side} of the green"
    words = f"{way} {side} of the green".strip().replace("  ", " ")
    corner = "level with its edges there" if way and side else "five paces off its edge"
    return words, f"{NOT_NOTED}taken as {words}, {corner}"


def green_in_reach(hole: Hole, from_xy: tuple[float, float], usual_yd: tuple[float, float]) -> bool:
    """Whether a full swing with the club from there usually comes to the green."""
    out_yd = hole.out_yd(*from_xy)
    return out_yd >= FULL_SHOT_YD and out_yd - usual_yd[True] < LEAST_LEFT_YD


def with_length(
    where: str, hole: Hole, from_xy: tuple[float, float], usual_yd: tuple[float, float]
) -> tuple[str, str] | None:
    """Ground with its distance on from the tee, and what was taken for it.

    None where the usual length comes too near the pin.
    """
    ground = "fairway" if _MIDDLE.fullmatch(where.strip()) else where.strip()
    run = _RUNS_ON.search(ground) is not None
    length_yd = usual_yd[run]
    if hole.out_yd(*from_xy) - length_yd < LEAST_LEFT_YD:
        return None
    station_yd, _ = hole.station_offset(*from_xy)
    taken = f"{NOT_NOTED}the club's usual {'carry and run' if run else 'carry'}, {length_yd:.0f} yd"
    return f"{station_yd + length_yd:.0f} on, {ground}", taken


def usual_putt_ft(hole: Hole) -> float:
    """Distance to the hole, averaged over the green [ft]."""
    left, low, right, high = hole.green.bounds
    x, y = np.meshgrid(np.arange(left, right, CELL_YD), np.arange(low, high, CELL_YD))
    on = shapely.contains_xy(hole.green, x, y)
    return float(FT_PER_YD * np.hypot(x - hole.pin.x_yd, y - hole.pin.y_yd)[on].mean())
