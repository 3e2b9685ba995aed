"""Where a ball came to rest, in a golfer's words: a place on the hole, or feet on the green."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace

import shapely

from ...errors import UsageError, WordsRefused
from ...hole.model import Hole, Point
from ...hole.surfaces import LIE_OF, LIE_WORDS, WORDS, Lie, Surface
from ...units import FT_PER_YD, YD_PER_M
from ...wording import one_of
from ..by_green import RIM_YD, by_the_green
from ..distancewords import NUMBER
from ..places import place, plainly, spot
from ..placewords import Told, read_words
from ..result import Start
from . import notes as n
from .parts import GAP, THE, pattern

MOVED_YD = 0.5
"""A place farther than this from the distance that was noted [yd] is said: its whole yards are others."""

THERE_YD = 3.0
"""A ball that lay nearer than this to the fringe [yd] lay there: notes are that good."""

LONGEST_PUTT_FT = 180.0
"""Longest putt there is [ft]."""

_FT = r"feet|foot|ft|'|′|’"
_BESIDE_THE_HOLE = one_of(
    "from", "of", "the", "a", "hole", "pin", "flag", "on", "green", "putt", "away", "left", "right", "short",
    "past", "by", "long", "above", "below", "high", "side", "behind", "and",
)  # fmt: skip
_GREEN = pattern(
    rf"{THE}(?:green\b[\s,:]*)?(?:(?P<size>{NUMBER})\s*(?P<unit>{_FT}|m|metres?|meters?)?)"
    rf"(?P<rest>(?:{GAP}{_BESIDE_THE_HOLE})*)"
)
"""Feet from the hole, and which way from it."""

_TROUBLE = pattern(r"\b(?:bunkers?|traps?|sand|trees|woods?)\b")
_SAME = pattern(r"(?:(?:in\s+)?the\s+same\s+(?:place|spot|bunker|rough|trees))")
_TURNS = {
    "short": math.pi, "past": 0.0, "by": 0.0, "long": 0.0, "behind": 0.0,
    "left": -0.5 * math.pi, "right": 0.5 * math.pi,
}  # fmt: skip
"""Where the ball is from the hole, turned from the way to the hole as the player saw it."""

_BY_SLOPE = {"below": 0.0, "above": math.pi}
"""The same, turned from the way the green falls."""

_PIN_HIGH = pattern(
    rf"(?:pin|flag|hole)[\s-]+high{GAP}(?P<side>left|right)?[\s,]*(?P<feet>{NUMBER}\s*(?:{_FT}))(?P<rest>.*)"
)
"""Feet from the hole behind "pin high": "pin high, 15 ft left"."""

_PIN_HIGH_SAID = pattern(r"^pin high,\s*")
_FEET = rf"{NUMBER}\s*(?:{_FT})"
_TWO = pattern(rf"{_FEET}[^\d]*{_FEET}")
_LEFT_TO_GO = pattern(rf"(?P<yards>{NUMBER})\s*(?:yards?|yds?|yd|y|(?P<m>m|metres?|meters?))?\s+left")
_FRINGE = pattern(rf"(?:on\s+)?{THE}(?:fringe|collar)(?:\s+of\s+{THE}green)?")
LEFT_TO_GO_YD = 40.0
"""Nearer than this "20 left" may be left of the hole as well, in yards or metres."""


@dataclass(frozen=True)
class Rest:
    """Where a ball lies.

    Attributes
    ----------
    x_yd, y_yd : float
        In the hole frame.
    lie : Lie
    words : str
        The place as a reader would say it.
    putt_ft : float or None
        On the green: how far the hole is.
    sided : bool
        Whether it is known on which side of the hole; if not, the place is one of many.
    noted : str
        The distance that was noted, when the nearest such ground lies elsewhere; else empty.
    """

    x_yd: float
    y_yd: float
    lie: Lie
    words: str
    putt_ft: float | None = None
    sided: bool = True
    noted: str = ""

    @property
    def xy_yd(self) -> Point:
        return self.x_yd, self.y_yd

    @property
    def told(self) -> str:
        """The place, and what was noted where that is somewhere else."""
        return f"{self.words} ({self.noted})" if self.noted else self.words


class NoBallLies(WordsRefused):
    """A place in water or out of bounds; `there` says which: "in the water"."""

    def __init__(self, text: str, there: str, say: str) -> None:
        super().__init__("notes", text, n.refused(text, f"that is {there}: say {say}").why)
        self.there = there


def from_start(start: Start) -> Rest:
    """Where a question would be asked from."""
    return Rest(*start.xy_yd, Lie[start.lie.upper().replace(" ", "_")], start.words)


def resting(text: str, hole: Hole, before: Rest | None) -> Rest:
    """Where a ball came to rest, on the green in feet from the hole, elsewhere as `places.place` has it.

    Parameters
    ----------
    before : Rest or None
        Where it was played from: short, past, left and right are as seen from there.

    Raises
    ------
    NoBallLies
        Water, or out of bounds.
    UsageError
        Words that are not understood, or leave open where.
    """
    in_it = text.strip().casefold() == "left in the bunker"
    if before is not None and (_SAME.fullmatch(text.strip()) or (in_it and before.lie is Lie.BUNKER)):
        return replace(before, noted="the same place")
    text = _without_pin_high("left bunker" if in_it else text)
    left = _left_to_go(text)
    if before is not None and _FRINGE.fullmatch(text.strip()):
        return _fringe(text, hole, before)
    told = plainly(text, hole)
    if not left and (rest := _noted_in_feet(text, told, hole, before)) is not None:
        return rest
    words = text if told is None else told.words
    try:
        said = read_words(words)
    except WordsRefused as error:
        raise error.told_of(text, more='; on the green feet, "12 ft"') from None
    taken = None if told is None or told.of_bunker else told.taken
    if said.ground is not Surface.TEE:
        if said.out is None and said.station is None and not said.plain:
            raise n.refused(text, 'how far from the hole? For example "12 ft"')
        x, y, surface = spot(text, hole, said)
        _refuse_ground(text, surface)
        if surface is Surface.GREEN:
            return replace(_green_rest(hole, x, y), noted=taken or "")
    rest = from_start(place(text, hole))
    if told is None:
        rest = _moved(text, hole, rest)
    elif told.in_paces:
        _refuse_paces_into_trouble(text, rest)
    taken = f"{left} left is taken as what was left to the hole" if left else taken
    return replace(rest, noted=taken) if taken else rest


def _without_pin_high(text: str) -> str:
    """Feet beside the hole without "pin high", which "left" says too; two distances from it are refused."""
    if high := _PIN_HIGH.fullmatch(text.strip()):
        text = " ".join(filter(None, (high["feet"], high["side"], high["rest"].strip())))
        if re.fullmatch(r".*\d\s*\D+\b(?:left|right)\b.*", text, re.IGNORECASE) is None:
            raise n.refused(text, "'pin high' needs left or right")
    if _TWO.match(text.strip()):
        raise n.refused(text, 'two distances from the hole: say one, "to 6 ft" or "to 6 ft short left"')
    return text


def _left_to_go(text: str) -> str:
    """What was left to the hole ("150 left", "140 m left"), as said; empty where the words are others."""
    left = _LEFT_TO_GO.fullmatch(text.strip())
    if left is None:
        return ""
    far = left["yards"]
    if float(far) < LEFT_TO_GO_YD:
        if left["m"]:  # so few are a putt
            return ""
        say = f'"to {far} out", "to {far} left of the green", "to {far} ft left"'
        raise n.refused(text, f"left to go or left of what? Say {say}")
    return f"{far} m" if left["m"] else far


def _noted_in_feet(text: str, told: Told | None, hole: Hole, before: Rest | None) -> Rest | None:
    """On the green by feet or metres from the hole; None where the words are those of a place elsewhere.

    `told` is what `plainly` makes of the text.
    """
    elsewhere = told is not None and by_the_green(text, hole) is not None
    found = None if elsewhere else _GREEN.fullmatch(text.strip())
    told_green = "green" in text.casefold()
    if not found or not (found["unit"] or told_green):
        return None
    rest = _on_green(text, hole, found, before)
    if rest is None and (told_green or not found["unit"].casefold().startswith("m")):
        raise n.refused(text, "no place on the green is so far from the hole")
    return rest


def _refuse_ground(text: str, surface: Surface) -> None:
    """Refuse a bare number that comes to the green, and ground no ball is played from."""
    if surface is Surface.GREEN and re.fullmatch(r"\d+(?:\.\d+)?", text.strip()):
        raise n.refused(text, f'feet or yards from the hole? Say "to {text} ft" or "to {text} out"')
    if surface is Surface.WATER:
        raise NoBallLies(text, "in the water", '"the water", and where it was dropped')
    if surface is Surface.OUT_OF_BOUNDS:
        raise NoBallLies(text, "out of bounds", '"out of bounds"')


def _refuse_paces_into_trouble(text: str, rest: Rest) -> None:
    """Refuse the five paces that are assumed where nobody said how far, if they end in sand or trees."""
    if rest.lie in (Lie.BUNKER, Lie.TREES) and not _TROUBLE.search(text):
        there = LIE_WORDS[rest.lie]
        example = f'"8 {_PIN_HIGH_SAID.sub("", text)}"'
        raise n.refused(text, f"five paces off it is {there}: say so, or how far off, {example}")


def _fringe(text: str, hole: Hole, before: Rest) -> Rest:
    """The fringe where the way to the hole comes onto the green; its side was not said."""
    way = shapely.LineString([before.xy_yd, hole.pin.xy_yd])
    off = shapely.difference(way, hole.green.buffer(RIM_YD))
    near = 0.0 if off.is_empty or before.lie is Lie.GREEN else off.length
    if near < THERE_YD:
        raise n.refused(text, 'the ball lay there: on which side? Say "back fringe", "left fringe"')
    x, y = shapely.get_coordinates(shapely.line_interpolate_point(way, near))[0]
    rest = from_start(place(f"{x:.2f},{y:.2f}", hole))
    return replace(rest, noted="the fringe on the near side, as no side was noted")


def _moved(text: str, hole: Hole, rest: Rest) -> Rest:
    """The place with what was noted, where ground of that kind is found only so much nearer or farther."""
    try:
        said = read_words(text)
    except UsageError:  # told by the green or a bunker, without a distance
        return rest
    if said.out is not None:
        noted, found, word = said.out, hole.out_yd(rest.x_yd, rest.y_yd), "out"
    elif said.station is not None:
        noted, found, word = said.station, hole.station_offset(rest.x_yd, rest.y_yd)[0], "on"
    else:
        return rest
    return replace(rest, noted=f"noted as {noted:.0f} yd {word}") if abs(found - noted) > MOVED_YD else rest


def _on_green(text: str, hole: Hole, found: re.Match[str], before: Rest | None) -> Rest | None:
    """On the green, or beside it on a side that was said; None: there is no green so far from the hole."""
    unit = (found["unit"] or "ft").casefold()
    feet = float(found["size"]) * (YD_PER_M * FT_PER_YD if unit[0] == "m" else 1.0)
    if feet > LONGEST_PUTT_FT and unit[0] == "m":  # "200 m left" are to go, "150 m short" a place elsewhere
        return None
    if not 0.0 < feet <= LONGEST_PUTT_FT:
        raise n.refused(text, f"found {feet:g} ft from the hole, allowed are up to {LONGEST_PUTT_FT:g}")
    words = re.findall(r"[a-z]+", found["rest"].casefold())
    sides = [word for word in words if word in _TURNS or word in _BY_SLOPE]
    if "high" in words and not sides:
        raise n.refused(text, "'pin high' needs left or right")
    if not _go_together(sides):
        raise n.refused(text, f"{sides[0]} or {sides[1]} of the hole? allowed: one of them")
    away = feet / FT_PER_YD
    digits = 1 if unit[0] == "m" or feet < 1.0 else 0  # 1 m in whole feet would be told as 0.9 m again
    if not sides:
        around = shapely.Point(*hole.pin.xy_yd).buffer(away).exterior
        there = hole.green.intersects(around)
        return _green_rest(hole, *_beside(hole, away, "short", before), feet, digits) if there else None
    places = [_beside(hole, away / math.sqrt(len(sides)), side, before) for side in sides]
    x = sum(one[0] - hole.pin.x_yd for one in places) + hole.pin.x_yd
    y = sum(one[1] - hole.pin.y_yd for one in places) + hole.pin.y_yd
    surface = hole.surface_at(x, y)
    if surface is Surface.GREEN:
        rest = _green_rest(hole, x, y, digits=digits)
        return replace(rest, words=f"{rest.words} {' '.join(sides)}")
    lie = LIE_OF.get(surface)
    if lie is None:
        raise n.refused(text, f"that place is {WORDS[surface]}")
    return Rest(x, y, lie, f"{away:.0f} yd out, {WORDS[surface]}")


def _go_together(sides: list[str]) -> bool:
    """Whether words for sides of the hole are one of them, or one along the way there and one across it."""
    if len(sides) < 2:
        return True
    across = [side in ("left", "right") for side in sides]
    return len(sides) == 2 and sum(across) == 1 and not set(sides) & _BY_SLOPE.keys()


def _beside(hole: Hole, away_yd: float, side: str, before: Rest | None) -> tuple[float, float]:
    """The place so far from the hole on a side of it."""
    pin = hole.pin
    if side in _BY_SLOPE:
        feature = hole.feature_at(pin.x_yd, pin.y_yd)
        slope = None if feature is None else feature.slope
        turn = _BY_SLOPE[side] + (0.0 if slope is None else math.radians(slope.falls_bearing_deg))
    else:
        from_x, from_y = (0.0, 0.0) if before is None else (before.x_yd, before.y_yd)
        turn = _TURNS[side] + math.atan2(pin.x_yd - from_x, pin.y_yd - from_y)
    return pin.x_yd + away_yd * math.sin(turn), pin.y_yd + away_yd * math.cos(turn)


def _green_rest(hole: Hole, x: float, y: float, feet: float | None = None, digits: int = 0) -> Rest:
    """On the green; with `feet` alone known, the place is one of many."""
    far = feet or FT_PER_YD * math.hypot(x - hole.pin.x_yd, y - hole.pin.y_yd)
    return Rest(x, y, Lie.GREEN, f"{far:.{digits}f} ft", putt_ft=max(far, 0.1), sided=feet is None)
