"""Places told by the name of a drawn area ("reed bed, 180 out", "the willow carr") as coordinates."""

from __future__ import annotations

import re

import numpy as np
import shapely

from ..errors import WordsRefused
from ..hole.model import Feature, Hole
from ..hole.surfaces import Surface
from .by_green import JUST_YD
from .distancewords import NUMBER, UNIT, UNITS, yards
from .ground import find_in
from .placewords import (
    FILLERS,
    GROUND_WORDS,
    SIDES,
    Told,
    on_words,
    plain,
    read_words,
    told_as_typed,
    with_rest,
)

SMALL_YD = 35.0
"""An area no longer than this is a place without a distance: its middle is taken (assumed) [yd]."""

MOVED_YD = 3.0
"""An area that is found only farther than this from the distance that was said is told [yd]."""

_NOISE = FILLERS | UNITS.keys() | SIDES.keys() | {"out", "on", "away", "by", "into", "go", "remaining"}
_KINDS = GROUND_WORDS | {"hazard", "behind", "back", "front", "short"}
"""Words of names that say no more than what ground it is, and on which side."""

_BESIDE = re.compile(r"\b(?:by|(?:left|right)\s+of)\s+(?:(?:the|a)\s+)?(?P<word>[^\W\d_]+)")
_BUNKER = frozenset(("bunker", "trap"))

_SHORT_OF = re.compile(
    rf"(?:just\s+|(?P<n>{NUMBER})\s*(?P<unit>{UNIT})?\s*)?(?:in\s+)?(?P<way>(?:short|shy|front)(?=\s+of\b)|before|past|behind|beyond)"
    r"\s+(?:of\s+)?(?:the\s+)?(?P<name>[^\d,]+?)\s*(?=,|$)"
)
_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")


def by_the_name(text: str, hole: Hole) -> Told | None:
    """A place in an area that has a name of its own put into coordinates, which `places.place` reads.

    Parameters
    ----------
    text : str
        ``"reed bed, 180 out"``, ``"the willow carr, 250 on"``, ``"in the elbow bunker, 137 out"``: some
        words of its name, that no other area shares, and how far along; a small one needs no distance; or
        ``"10 short of the cross dyke"``, along the line.
    hole : Hole

    Returns
    -------
    Told or None
        Words such as ``"36.10,315.25"``: where the area is nearest to the line of play at that distance.
        None: other words.

    Raises
    ------
    UsageError
        Several such areas, one that lies elsewhere, a large one without a distance.
    """
    usual = plain(text)
    if before := _SHORT_OF.search(usual):
        return _short_of(text, hole, usual, before)
    said = _core(usual)
    for one in hole.features:  # the number of its name is no distance: "left bunker 2, 160 out"
        rest = re.sub(rf"\b{re.escape(one.name.casefold())}(?![\w.])", "", usual)
        if one.name[-1:].isdigit() and rest != usual and re.search(r"\d", rest):
            return _in_area(text, hole, one, rest.strip(" ,"))
    if not said - _KINDS:
        return None
    areas = _areas(said, hole)
    if not re.search(r"\d", usual):
        areas = [one for one in areas if one.surface is not Surface.BUNKER]  # `by_the_bunker` has those
    if not areas:
        return None
    area = _the_one(text, [one for one in areas if _on_side(one, usual, hole)] or areas, hole)
    beside = _BESIDE.search(usual)
    if beside and _stem(beside["word"]) in said and beside[0] not in area.name.casefold():
        raise WordsRefused(
            "place",
            text,
            f"beside {area.name}, not in it: say how far it is to the pin and on what, "
            '"150 out, right rough"',
        )
    numbers = _without_name(usual, said)
    if not re.search(r"\d", numbers):
        return _middle(text, hole, area)
    return _in_area(text, hole, area, numbers)


def _in_area(text: str, hole: Hole, area: Feature, numbers: str) -> Told | None:
    """The place of an area at the distance that the words without its name say."""
    with told_as_typed(numbers, text):
        along = read_words(numbers)
    if along.offset is not None or not along.told:
        return None
    found = find_in(hole, area, out_yd=along.out, station_yd=along.station)
    if found is None and along.out is not None:  # beyond the pin
        past = hole.station_offset(*hole.pin.xy_yd)[0] + along.out
        found = find_in(hole, area, out_yd=None, station_yd=past)
    if found is None:
        raise WordsRefused("place", text, f"not there; on this hole: {_told([area], hole)}")
    is_at, wanted, word = hole.out_yd(*found), along.out, "out"
    if along.station is not None:
        is_at, wanted, word = hole.station_offset(*found)[0], along.station, "on"
    taken = None
    if wanted is not None and abs(is_at - wanted) > MOVED_YD:
        taken = f"{area.name}: found only {is_at:.0f} yd {word}"
    return Told(f"{found[0]:.2f},{found[1]:.2f}", taken)


def _areas(said: set[str], hole: Hole) -> list[Feature]:
    """The areas that some words may name."""
    able = (one for one in hole.features if one.surface is not Surface.TEE and not one.is_fringe)
    return [one for one in able if said <= _core(one.name)]


def _the_one(text: str, areas: list[Feature], hole: Hole) -> Feature:
    """The one area that is left of those some words may name; of several a reader is asked which."""
    if len(areas) > 1:
        raise WordsRefused("place", text, f"which of them on this hole: {_told(areas, hole)}")
    return areas[0]


def _short_of(text: str, hole: Hole, usual: str, found: re.Match[str]) -> Told | None:
    """ "10 short of the cross dyke", "past the elbow bunker": along the line of play from where it begins or
    ends, on the line where it crosses it, else by its own stations."""
    said = _core(found["name"])
    areas = _areas(said, hole) if said - _KINDS or said & _BUNKER else []
    areas = [one for one in areas if _on_side(one, found["name"], hole)] or areas
    areas = [one for one in areas if one.name.casefold() == found["name"]] or areas
    if not areas:
        return None
    area = _the_one(text, areas, hole)
    over = shapely.intersection(shapely.LineString(hole.line), area.area)
    stations = hole.play_line.corners_of(area.area if over.is_empty else over)[:, 0].tolist()
    short = found["way"] in ("short", "shy", "before", "front")
    away = JUST_YD if found["n"] is None else yards(found["n"], found["unit"])
    station = min(stations) - away if short else max(stations) + away
    said_so = f"{found[0].strip(' ,')!r} is taken as {away:.0f} yards along the line of play"
    return Told(with_rest(on_words(station), usual, found), said_so)


def _on_side(area: Feature, usual: str, hole: Hole) -> bool:
    """Whether an area lies on the side of the line that was said, if one was."""
    sides = {SIDES[word] for word in _WORD.findall(usual) if word in SIDES}
    return len(sides) != 1 or sides.pop() * hole.station_offset(*area.middle)[1] > 0.0


def _without_name(usual: str, said: set[str]) -> str:
    """The words without those of the name, and without a side that no number stands before."""
    rest = _WORD.sub(lambda word: "" if _stem(word[0]) in said or word[0] == "by" else word[0], usual)
    rest = re.sub(r"(?<![\d\s])\s*\b(?:left|right)\b|^\s*(?:left|right)\b", "", rest)
    return " ".join(rest.split()).strip(" ,")


def _core(words: str) -> set[str]:
    """The words of a name without their plurals and what any place may say."""
    return {_stem(word) for word in _WORD.findall(words.casefold()) if word not in _NOISE}


def _stem(word: str) -> str:
    word = re.sub("['’]", "", word)
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def _middle(text: str, hole: Hole, area: Feature) -> Told:
    low, high = _out(area, hole)
    if high - low > SMALL_YD:
        raise WordsRefused(
            "place",
            text,
            f'whereabouts? It begins {low:.0f} and ends {high:.0f} yd out: say "{area.name}, '
            f'{0.5 * (low + high):.0f} out"',
        )
    x, y = area.middle
    return Told(f"{x:.2f},{y:.2f}", f"the ball is taken to lie in the middle of the {area.name}")


def _out(area: Feature, hole: Hole) -> tuple[float, float]:
    """How far from the pin it begins and ends [yd]."""
    corners = shapely.get_coordinates(area.area)
    far = np.hypot(corners[:, 0] - hole.pin.x_yd, corners[:, 1] - hole.pin.y_yd)
    near = area.area.distance(shapely.Point(*hole.pin.xy_yd))
    return float(near), float(far.max())


def _told(areas: list[Feature], hole: Hole) -> str:
    told = [(one.name, *_out(one, hole)) for one in areas]
    return ", ".join(f"{name} ({low:.0f} to {high:.0f} yd out)" for name, low, high in told)
