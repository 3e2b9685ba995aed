"""Ground and areas that notes name without saying how far along: "the reed bed", "water right"."""

from __future__ import annotations

import re

from ...hole.model import Feature, Hole
from ...hole.surfaces import PENALTY_SURFACES, Surface
from ..placewords import FILLERS, GROUND_WORDS, SIDES

_WATER_WORDS = frozenset(
    ("water", "water hazard", "penalty area", "hazard", "red", "yellow", "pond", "lake", "stream", "ditch",
     "burn", "creek", "river", "brook", "dyke", "canal")
)  # fmt: skip

_SIDE_OF_AREA = re.compile(r"^(?:left|right)\s+|[\s,]+(?:on\s+the\s+)?(?:left|right|short|long)$")
"""A side beside a word for water: "water right"."""

_ANYWHERE = (
    FILLERS
    | SIDES.keys()
    | {"fairway", "rough", "heavy", "deep", "thick", "green", "tee", "bunker", "sand", "trees", "wood"}
    | {"front", "back", "behind", "short", "long", "over", "beyond", "past", "by", "beside", "near", "along"}
    | {"woods", "down", "up", "middle", "centre", "center", "inside", "corner", "edge", "half"}
)
"""Words that stand in names of areas and name none by themselves: a ball left is not in the left boundary."""


def is_ground(text: str, hole: Hole) -> bool:
    """Whether words name ground or an area of the hole, though not how far along ("the reed bed")."""
    words = {word.rstrip("s") for word in re.findall(r"[^\W\d_]+", text.casefold())} - {"the", "a", "some"}
    names = " ".join([feature.name.casefold() for feature in hole.features] + sorted(GROUND_WORDS))
    known = {word.rstrip("s") for word in re.findall(r"[^\W\d_]+", names)} | SIDES.keys()
    return bool(words) and words <= known and not re.search(r"\d", text)


def area_named(text: str, hole: Hole) -> Surface | None:
    """Penalty area or out of bounds that words name, None where they name none or say how far it is."""
    if _plain_area(text) in _WATER_WORDS:
        return Surface.WATER
    ends = [one for one in hole.features if one.surface in (*PENALTY_SURFACES, Surface.OUT_OF_BOUNDS)]
    named = _called(text, ends)
    return named[0].surface if named else None


def water_named(text: str, hole: Hole) -> list[Feature]:
    """The penalty areas that words may mean: those of that name, all where they only say it was water."""
    areas = [one for one in hole.features if one.surface in PENALTY_SURFACES]
    return _called(text, areas) or (areas if _plain_area(text) in _WATER_WORDS else [])


def _plain_area(text: str) -> str:
    """Words for an area without its article and without a side that says where on it the ball went."""
    plain, sideless = _with_and_without_side(text)
    return sideless if sideless in _WATER_WORDS else plain


def _with_and_without_side(text: str) -> tuple[str, str]:
    plain = re.sub(r"^(?:the|a|an)\s+", "", text.strip().casefold())
    return plain, _SIDE_OF_AREA.sub("", plain)


def _called(text: str, areas: list[Feature]) -> list[Feature]:
    """The areas of that name; where there is none, of that name without a side that the ball went to."""
    for words in map(set, map(str.split, _with_and_without_side(text))):
        named = {one: set(one.name.casefold().split()) for one in areas}
        clear = bool(words - _ANYWHERE)
        if found := [one for one, name in named.items() if words <= name and (clear or words == name)]:
            return found
    return []
