"""Where a question is asked from, in a golfer's words: "164 out, left rough", "230 on, 12 right"."""

from __future__ import annotations

import math
import re

from ..engine import MOST_STROKES
from ..errors import UsageError, WordsRefused, check_text
from ..hole.model import Hole
from ..hole.surfaces import LIE_OF, LIE_WORDS, WORDS, Lie, Surface
from .by_bunker import by_the_bunker
from .by_fairway import by_the_fairway
from .by_fringe import by_the_fringe
from .by_green import by_the_green
from .by_name import by_the_name
from .by_pin import by_the_pin
from .distancewords import NUMBER, UNIT
from .ground import find_beside, find_ground, line_place
from .handed import check_kind, check_whole
from .placewords import Said, Told, plain, read_words, refused, told_as_typed
from .result import Start

OFF_HOLE_YD = 80.0
"""How far outside the box round line, tees and pins a place may be [yd]: inside the engine's margin."""

TEE_YD = 5.0
"""A place on a tee this near the tee in use is the tee in use [yd]."""

_SIDE_BEFORE = {-1: "left ", 0: "", 1: "right "}
"""What stands before a kind of ground for the side that was said (`placewords.Said.side`)."""

_YARDS_ON = re.compile(rf"{NUMBER}\s*(?:{UNIT})?\s*on\b")
"""A distance from the tee, in words that say more of the place."""


def plainly(text: str, hole: Hole) -> Told | None:
    """A place told by a name, the fringe, fairway, green, pin or bunker in numbers; None: by none of them."""
    readers = (by_the_fringe, by_the_name, by_the_fairway, by_the_green, by_the_pin, by_the_bunker)
    return next((told for read in readers if (told := read(text, hole)) is not None), None)


def place(text: str, hole: Hole, played: int | None = None) -> Start:
    """The place and lie that some words mean.

    Parameters
    ----------
    text : str
        ``"tee"``; a straight distance to the pin in yards (``m`` after the number for metres) with, in any
        order, a side and a kind of ground: ``"164 out"``, ``"rough, 140 out"``, ``"92 out, right bunker"``;
        yards on from the tee along the line of play and yards or the ground beside it: ``"230 on, 12
        right"``, ``"230 on, left rough"``; a place told by the green (`by_green`): ``"20 short of the
        green"``; on its fringe (`by_fringe`): ``"back fringe"``; by the pin (`by_pin`): ``"pin high, 12
        right"``; a bunker (`by_bunker`): ``"left greenside bunker"``; an area by its name (`by_name`):
        ``"reed bed, 180 out"``; or coordinates in the hole frame: ``"-8,231"``.
    hole : Hole
        With the tee and pin in use.
    played : int or None
        Strokes already played on the hole, 0 from the tee.

    Returns
    -------
    Start
        A distance without a side or kind of ground is on the line of play. With one, it is the nearest such
        ground to the line at that distance (or as near to that distance as there is any).

    Raises
    ------
    UsageError
        Words that are not understood, a place outside the hole, on the green, in water or out of bounds; no
        count of strokes.
    """
    check_text("place", text, "164 out, left rough")
    check_kind("hole", hole, Hole, "load_hole gives one")
    if played is not None:
        check_whole("played", played, 0, MOST_STROKES)
    if (told := plainly(text, hole)) is not None:
        with told_as_typed(told.words, text):
            return place(told.words, hole, played)
    said = read_words(text)
    if said.ground is Surface.TEE:
        return _tee(text, hole, said, played)
    if said.ground in (Surface.GREEN, Surface.WATER):
        raise WordsRefused("place", text, f"no shot is planned from {_where(said.ground)}")
    x_yd, y_yd, surface = spot(text, hole, said)
    if surface is Surface.TEE and math.hypot(x_yd, y_yd) <= TEE_YD and said.ground is None:
        return tee_start(hole, played)
    lie = LIE_OF.get(surface)
    if lie is None or lie is Lie.GREEN:
        raise WordsRefused("place", text, f"that is {_where(surface)}, no shot is planned from there")
    out_yd = hole.out_yd(x_yd, y_yd)
    lies_on = hole.feature_at(x_yd, y_yd)
    ground = "fringe" if lies_on is not None and lies_on.is_fringe else WORDS[surface]
    words = f"{out_yd:.0f} yd out, {_SIDE_BEFORE[said.side]}{ground}"
    return Start(x_yd, y_yd, LIE_WORDS[lie], words, out_yd, played)


def counts_from_tee(text: str, hole: Hole) -> bool:
    """Whether some words put a place by the tee in use: the tee itself, yards on from it, coordinates.

    Words that are not understood count as such: they are refused where the place is read.
    """
    try:
        if plainly(text, hole):  # "200 on, 10 right of the fairway", but not "20 short of the green"
            return _YARDS_ON.search(plain(text)) is not None
        said = read_words(text)
    except UsageError:
        return True
    return said.ground is Surface.TEE or said.out is None


def spot(text: str, hole: Hole, said: Said) -> tuple[float, float, Surface]:
    """Where some words are on a hole, x and y [yd], and the ground there.

    Raises
    ------
    UsageError
        A place outside the hole, or one that is not the ground that was said.
    """
    if said.out is not None:
        x_yd, y_yd = _by_distance(text, hole, said)
    else:
        x_yd, y_yd = _by_coordinates(text, hole, said)
    surface = hole.surface_at(x_yd, y_yd)
    if said.ground is not None and surface is not said.ground:
        raise refused(text, f"that place is {WORDS[surface]}, not {WORDS[said.ground]}")
    return x_yd, y_yd, surface


def _where(surface: Surface) -> str:
    return {Surface.GREEN: "on the green", Surface.WATER: "in the water"}.get(surface, WORDS[surface])


def _tee(text: str, hole: Hole, said: Said, played: int | None) -> Start:
    if said.out is not None or said.station is not None or said.plain or said.side:
        raise refused(text, 'a tee shot starts at the tee in use, say "tee" alone')
    return tee_start(hole, played)


def tee_start(hole: Hole, played: int | None = None) -> Start:
    """The tee in use; `played` defaults to 0 there."""
    out_yd = hole.out_yd(0.0, 0.0)
    return Start(0.0, 0.0, LIE_WORDS[Lie.TEE], f"the {hole.tee.name} tee", out_yd, played or 0)


def _by_distance(text: str, hole: Hole, said: Said) -> tuple[float, float]:
    assert said.out is not None
    longest = hole.out_yd(0.0, 0.0)
    if not 0.0 < said.out <= longest:
        tee = f"the {hole.tee.name} tee is {longest:.0f} yd from the pin"
        raise refused(text, f"found {said.out:.4g} yd out, {tee}")
    if said.offset is not None:
        return hole.at(hole.station_offset(*line_place(hole, said.out))[0], said.offset)
    if said.ground is None:
        return line_place(hole, said.out)
    found = find_ground(hole, said.out, said.side, said.ground)
    if found is None:
        other = find_ground(hole, said.out, said.side, said.ground, slack_yd=int(longest))
        near = other and f"{hole.out_yd(*other):.0f} yd out"
        raise _no_ground(text, said, f"{said.out:.0f} yd from the pin", near)
    return found


def _beside_the_line(text: str, hole: Hole, said: Said) -> tuple[float, float]:
    assert said.station is not None and said.ground is not None
    found = find_beside(hole, said.station, said.side, said.ground)
    if found is None:
        far = int(hole.length_yd + OFF_HOLE_YD)
        other = find_beside(hole, said.station, said.side, said.ground, slack_yd=far)
        near = other and f"{hole.station_offset(*other)[0]:.0f} yd on"
        raise _no_ground(text, said, f"{said.station:.0f} yd on", near)
    return found


def _no_ground(text: str, said: Said, where: str, nearest: str | None) -> UsageError:
    assert said.ground is not None
    what = _SIDE_BEFORE[said.side] + WORDS[said.ground]
    near = f"the nearest is {nearest}" if nearest else "there is none on this hole"
    return WordsRefused("place", text, f"no {what} about {where}; {near}")


def _by_coordinates(text: str, hole: Hole, said: Said) -> tuple[float, float]:
    if said.station is not None:
        if said.station < 0.0 or said.station > hole.length_yd + OFF_HOLE_YD:
            raise refused(text, f"found {said.station:.4g} yd on; the hole is {hole.length_yd:.0f} yd long")
        if said.ground is not None and said.offset is None:
            return _beside_the_line(text, hole, said)
        x_yd, y_yd = hole.at(said.station, said.offset or 0.0)
    else:
        x_yd, y_yd = said.plain
    low_x, low_y, high_x, high_y = hole.bounds(OFF_HOLE_YD)
    if not (low_x <= x_yd <= high_x and low_y <= y_yd <= high_y):
        box = f"x {low_x:.0f} to {high_x:.0f}, y {low_y:.0f} to {high_y:.0f}"
        raise refused(text, f"({x_yd:.0f}, {y_yd:.0f}) in yards is outside the hole ({box})")
    return x_yd, y_yd
