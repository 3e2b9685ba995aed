"""Places told by a bunker ("left greenside bunker", "elbow bunker") as coordinates."""

from __future__ import annotations

import re

from ..errors import WordsRefused
from ..hole.model import Feature, Hole
from ..hole.surfaces import Surface
from ..spelt import in_full
from .placewords import FILLERS, SIDES, Told

GREENSIDE_YD = 20.0
"""A bunker no farther from the green than this is called greenside [yd] (assumed)."""

END_YD = 5.0
"""A bunker at an end of the green is so much nearer or farther than its middle [yd] (assumed)."""

_BUNKER = frozenset(("bunker", "trap", "sand"))
_NUMBERS = frozenset("123456789")
"""What tells bunkers of one name apart ("left bunker", "left bunker 2")."""

_KINDS = frozenset(("fairway", "cross", "pot", "greenside"))
_ENDS = {"front": -1, "short": -1, "back": 1, "long": 1}
"""Ends of the green that a bunker may lie at, by the direction along the line from its middle."""


_BEFORE = re.compile(r"\b(?:short|long)\s+of\s+(?!(?:the\s+)?green\b)")


def by_the_bunker(text: str, hole: Hole) -> Told | None:
    """A bunker told without a distance put into coordinates, which `places.place` reads.

    Parameters
    ----------
    text : str
        The bunker's name on this hole, or a bunker by its side and whether it is greenside: ``"in the left
        fairway bunker"``.
    hole : Hole

    Returns
    -------
    Told or None
        Words such as ``"30.33,387.28, bunker"``: its middle. None: other words, and any with a number.

    Raises
    ------
    UsageError
        There is no such bunker, or there are several.
    """
    usual = re.sub(r"\bgreen[\s-]side\b", "greenside", in_full(text.casefold()).replace(",", " "))
    if _BEFORE.search(usual):  # not in it
        return None
    words = {word for word in usual.split() if word not in FILLERS}
    bunkers = [feature for feature in hole.features if feature.surface is Surface.BUNKER]
    named = [one for one in bunkers if words <= set(one.name.casefold().split()) <= words | _NUMBERS]
    if not named:
        if not words & _BUNKER or not words <= _BUNKER | _KINDS | SIDES.keys() | _ENDS.keys():
            return None
        named = [one for one in bunkers if _is_meant(one, hole, words)]
    if len(named) != 1:
        said = [_told(one, hole) for one in (named or bunkers)]
        what = "which of them" if named else "there is none such" if bunkers else "there is none"
        raise WordsRefused("place", text, f"{what} on this hole{': ' if said else ''}{', '.join(said)}")
    x, y = named[0].middle
    taken = f"the ball is taken to lie in the middle of the {named[0].name}"
    return Told(f"{x:.2f},{y:.2f}, bunker", taken, of_bunker=True)


def _is_meant(bunker: Feature, hole: Hole, words: set[str]) -> bool:
    side = hole.station_offset(*bunker.middle)[1]
    if any(SIDES[word] * side < 0.0 for word in words & SIDES.keys()):
        return False
    kinds = words & _KINDS - {"pot"}
    is_greenside = bunker.area.distance(hole.green) <= GREENSIDE_YD
    if ends := [_ENDS[word] for word in words & _ENDS.keys()]:
        middle = hole.green.centroid
        past = hole.station_offset(*bunker.middle)[0] - hole.station_offset(middle.x, middle.y)[0]
        if not is_greenside or any(end * past < END_YD for end in ends):
            return False
    return not kinds or ("greenside" in kinds) == is_greenside


def _told(bunker: Feature, hole: Hole) -> str:
    return f"{bunker.name} ({hole.out_yd(*bunker.middle):.0f} yd out)"
