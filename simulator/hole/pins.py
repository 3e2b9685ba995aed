"""Where a pin is, in the words of a golfer or of a hole-location sheet: "back", "22 on, 5 left"."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

import numpy as np
import shapely

from simulator.errors import UsageError
from simulator.hole.model import Hole, Spot
from simulator.hole.surfaces import WORDS, Surface
from simulator.spelt import in_figures, in_full
from simulator.units import YD_PER_M

PACE_YD = 1.0
"""A pace [yd]: sheets count in paces, and a pace is taken for a yard (common practice)."""



def _paces(name: str) -> str:
    """Pattern of a length, its number in the group of that name and its unit in that of NAME_unit."""
    units = "paces?|p|yards?|yds?|y|metres?|meters?|m"
    return rf"(?P<{name}>\d+(?:\.\d+)?)(?:\s*(?P<{name}_unit>{units})\b)?"


_ON = re.compile(rf"(?:{_paces('before')}\s*(?:on|deep|up)|on\s*{_paces('behind')})\b")
_SIDE = re.compile(
    rf"(?:{_paces('before')}\s*(?:in\s*)?(?:from|off)?\s*(?:the\s*)?(?P<side>left|right|l|r)\b"
    rf"|(?P<side_first>left|right|l|r)\s*{_paces('behind')})(?:\s*(?:edge|side))?"
)
"""Paces stand before the word that says where from, or behind it: "22 on", "on 22"; "5 left", "left 5"."""

_MIDDLE = re.compile(r"\b(?:middle|centre|center|c)\b")
_FILLERS = re.compile(r"[\s,;/]+|\b(?:and|dead)\b")
_OF_MIDDLE = re.compile(r"\b(?:of|from) (?:the )?(?:centre|center|middle)\b")

_DEPTHS = {"front": 0, "middle": 1, "centre": 1, "center": 1, "back": 2}
_WIDTHS = {"left": 0, "middle": 1, "centre": 1, "center": 1, "right": 2}

_IDLE = re.compile(
    r"\b(?:pin|flag|flagstick|hole|position|location|placement|the|a|at|in|to|of|on|up|green|side|part|section"
    r"|half|third|dead|just|cut|tucked|tight|hard|sucker|edge|corner|shelf|tier)\b"
)
"""Words that a place on the green is said with, and that do not move it."""
_NEARER = re.compile(r"\b(?:tucked|tight|hard|sucker|edge|corner|shelf|tier)\b")
"""Those of them that mean nearer to the edge than the middle of a ninth is."""
_SAME = {"short": "front", "long": "back", "deep": "back", "rear": "back"}
_FROM_END = re.compile(
    rf"{_paces('paces')}\s*(?:(?:in|on|up)\s+)?(?:from|off|short of)\s*(?:the\s*)?"
    r"(?P<end>front|back)(?:\s*edge)?\b"
)
_FROM_MIDDLE = re.compile(
    rf"{_paces('paces')}\s*(?P<way>behind|past|beyond|over|short of|before|in front of)\s*(?:the\s*)?"
    r"(?:middle|centre|center)\b"
    r"(?:\s*of\s*(?:the\s*)?green)?"
)
_BEHIND_BUNKER = re.compile(
    r"^(?P<before>.*?)\b(?:just\s+)?(?:over|behind|beyond)\s+(?:the\s+)?(?P<name>(?:[a-z]+\s+)*?)"
    r"(?:bunker|trap|sand)$"
)
BEHIND_BUNKER_YD, BY_GREEN_YD = 5.0, 20.0
"""A pin over a bunker is cut so far on from the edge of the green behind it; a bunker with more than so much
ground between it and the green is none that a pin is cut behind [yd] (common practice)."""

_SIGNED = re.compile(r"\s*(?P<sign>[+-]|plus|minus)\s*(?P<number>\d+)\b")
"""What "+4" counts from is not said."""
_COLOURS = frozenset(("red", "white", "blue", "yellow", "black", "orange"))

ALLOWED = 'a pin of the hole, "22 on, 5 left" (paces from the front and from the left edge), or "back left"'


@dataclass(frozen=True)
class PinPlace:
    """A pin as a hole-location sheet gives it.

    Attributes
    ----------
    on_yd : float
        From the green's front edge, along the approach [yd].
    side : -1, 0 or 1
        Edge it is counted from: left, none (half way between the edges), right.
    from_edge_yd : float
        From that edge, across, at that depth [yd]; 0 when `side` is 0.
    """

    on_yd: float
    side: int = 0
    from_edge_yd: float = 0.0

    @property
    def words(self) -> str:
        """As a golfer says it: "22 on, 5 left"."""
        if self.side == 0:
            return f"{self.on_yd:g} on"
        return f"{self.on_yd:g} on, {self.from_edge_yd:g} {'left' if self.side < 0 else 'right'}"


def pin_from_words(hole: Hole, words: str) -> Hole:
    """The hole with its pin where some words say.

    Parameters
    ----------
    hole : Hole
        With the tee in use: the approach is the last leg of its line of play.
    words : str
        In this order: the name of a pin of the hole; words found in one pin's name only (``"back"`` for
        ``"back left"``); paces, as a sheet counts them, ``"22 on, 5 left"`` (``m`` after a number for
        metres; without a side half way across); a ninth of the green, ``"back"``, ``"front right"``: the
        middle of that third of its depth and of that third of its width there. *Short* is the front, *long*
        the back; "tucked left", "front edge" and "back right corner" are ninths too, and the hole's `assumed`
        says so, unless a pin is called just that. ``"5 from the back"`` counts from the other end, ``"4
        behind the middle"`` from half the green's depth.

    Notes
    -----
    *On* counts from the front of the green, its first point along the approach, as a file's ``on_yd`` does;
    left and right count from the green's edge on that side at that depth, across the approach: so sheets
    count (common practice).

    Raises
    ------
    UsageError
        Words that are not understood or fit two pins, a pin off the green.
    """
    asked = in_figures(in_full(" ".join(words.casefold().replace("-", " ").split())))
    for pin in hole.pins:
        if pin.name.casefold() == words.strip().casefold():
            return replace(hole, pin=pin)
    plain = _plain(asked)
    found: list[Spot] = []
    for parts in (set(asked.split()), set(plain)):
        found = found or [pin for pin in hole.pins if parts and parts <= _words_of(pin.name)]
    if _NEARER.search(asked):  # "hard left" is a place: a pin called "front left" has an end that nobody said
        found = [pin for pin in found if _words_of(pin.name) in (set(asked.split()), set(plain))]
    if len(found) == 1:
        return replace(hole, pin=found[0])
    counted = _FROM_END.sub(lambda end: _on_from(hole, end), asked)
    counted = _FROM_MIDDLE.sub(lambda middle: _on_from_middle(hole, middle), counted)
    place = read_pin_place(counted)
    if place is not None:
        return pin_at(hole, place, words.strip() if counted != asked else None)
    if bunker := _BEHIND_BUNKER.search(asked):
        return _behind_bunker(hole, words.strip(), bunker)
    third = _third(plain)
    if third is not None and not found:
        moved = _at_third(hole, " ".join(plain), *third)
        if _NEARER.search(asked):
            said = f"Pin {words.strip()!r}: taken in the middle of that part of the green, 1 of 9 parts."
            moved = replace(moved, assumed=(*moved.assumed, said))
        return moved
    names = ", ".join(pin.name for pin in hole.pins)
    what = f"{len(found)} pins that {words!r} fits" if found else f"no pin called {words!r}"
    raise _refused(hole, f"{what}{_hint(words, asked)}; this hole has: {names}; allowed: {ALLOWED}")


def _refused(hole: Hole, why: str) -> UsageError:
    return UsageError(f"{hole.source or hole.name}: {why}")


def _hint(words: str, asked: str) -> str:
    """What to say for words that say where a pin is but for one thing; `asked` are the same in figures."""
    if _COLOURS & set(asked.split()):
        return " (what a colour means differs from course to course: say front, middle or back)"
    if signed := _SIGNED.match(words.casefold()):
        way = "behind" if signed["sign"] in ("+", "plus") else "short of"
        return f' (of the middle? Say "{signed["number"]} {way} the middle")'
    if _OF_MIDDLE.search(asked):
        return ' (count from an edge: "12 on, 8 left")'
    return " (how far on?)" if _SIDE.search(asked) and not re.search(r"\bon\b", asked) else ""


def read_pin_place(words: str) -> PinPlace | None:
    """Paces on and beside as typed; None when the words say nothing of the kind."""
    rest = in_figures(in_full(words.casefold()))
    on = _ON.search(rest)
    if on is None:
        return None
    on_yd = _either_yd(on)
    rest = rest[: on.start()] + " " + rest[on.end() :]
    beside = _SIDE.search(rest)
    if beside is not None:
        side = -1 if (beside["side"] or beside["side_first"])[0] == "l" else 1
        rest = rest[: beside.start()] + " " + rest[beside.end() :]
        place = PinPlace(on_yd, side, _either_yd(beside))
    else:
        rest = _MIDDLE.sub(" ", rest, count=1)
        place = PinPlace(on_yd)
    if _FILLERS.sub("", rest):
        return None
    return place


def names_a_part(words: str) -> bool:
    """Whether words name a ninth of the green, "back left", "middle", "tucked right"."""
    return _third(_plain(in_full(" ".join(words.casefold().replace("-", " ").split())))) is not None


def pin_at(hole: Hole, place: PinPlace, name: str | None = None) -> Hole:
    """The hole with its pin so far on and so far from an edge.

    Raises
    ------
    UsageError
        Farther on than the green is deep, farther from the edge than it is wide there, or not on the green.
    """
    approach = _Approach(hole)
    words = name or place.words
    if not 0.0 <= place.on_yd <= approach.depth_yd:
        raise _refused(
            hole,
            f"pin {words!r}: found {place.on_yd:g} yd on; allowed: 0 to {approach.depth_yd:.0f}, the depth "
            "of the green",
        )
    left, right = approach.edges(place.on_yd)
    if place.from_edge_yd > right - left:
        raise _refused(
            hole,
            f"pin {words!r}: found {place.from_edge_yd:g} yd from the edge; allowed: 0 to "
            f"{right - left:.0f}, the width of the green {place.on_yd:g} yd on",
        )
    across = {
        -1: left + place.from_edge_yd, 0: 0.5 * (left + right), 1: right - place.from_edge_yd,
    }[place.side]  # fmt: skip
    return _with_pin(hole, words, *approach.place(place.on_yd, across))


def _words_of(name: str) -> set[str]:
    return set(name.casefold().replace("-", " ").split())


def _plain(words: str) -> list[str]:
    """The words of a ninth of the green in their usual order: "left back corner" is back, left."""
    parts = [_SAME.get(word, word) for word in _IDLE.sub(" ", words).replace(",", " ").split()]
    if len(parts) == 2 and parts[1] in ("front", "back") and parts[0] in _WIDTHS:
        parts.reverse()
    return parts


def _on_from(hole: Hole, end: re.Match[str]) -> str:
    """Paces from the front or the back edge as paces on."""
    yards = _yards(end, "paces")
    if end["end"] == "front":
        return f"{yards:g} on"
    return f"{max(_Approach(hole).depth_yd - yards, 0.0):.2f} on"


def _on_from_middle(hole: Hole, middle: re.Match[str]) -> str:
    """Paces from the middle as paces on."""
    sign = 1.0 if middle["way"] in ("behind", "past", "beyond", "over") else -1.0
    return f"{max(0.5 * _Approach(hole).depth_yd + sign * _yards(middle, 'paces'), 0.0):.2f} on"


def _behind_bunker(hole: Hole, words: str, said: re.Match[str]) -> Hole:
    """The hole with its pin over a bunker that lies in front of the green ("front pin over the bunker")."""
    approach = _Approach(hole)
    named = {word for word in said["name"].split() if word not in ("front", "short", "greenside")}
    sides = {_SAME.get(word, word) for word in _IDLE.sub(" ", said["before"]).replace(",", " ").split()}
    sand = [one for one in hole.features if one.surface is Surface.BUNKER]
    near = [one for one in sand if one.area.distance(hole.green) < BY_GREEN_YD]
    found = [
        one for one in near
        if approach.seen(one.middle)[0] < approach.depth_yd / 3.0 and named <= _words_of(one.name)
    ]  # fmt: skip
    if len(found) != 1 or not sides <= {"front"}:
        names = ", ".join(one.name for one in found or near) or "none"
        what = f"pin {words!r}: of the bunkers by the green ({names}) one in front of it is meant"
        raise _refused(hole, f"{what}; allowed: its name, or {ALLOWED}")
    left, right = approach.edges(approach.depth_yd / 3.0)
    aside = min(BEHIND_BUNKER_YD, 0.5 * (right - left))
    across = min(max(approach.seen(found[0].middle)[1], left + aside), right - aside)
    cut = shapely.LineString([approach.place(-1.0, across), approach.place(approach.depth_yd + 1.0, across)])
    along = shapely.get_coordinates(hole.green.intersection(cut)) @ approach.ahead
    if not along.size or np.ptp(along) <= BEHIND_BUNKER_YD:
        raise _refused(hole, f"pin {words!r}: no green behind the {found[0].name}; allowed: {ALLOWED}")
    on_yd = float(along.min()) - approach.front + BEHIND_BUNKER_YD
    said_so = f"Pin {words!r}: taken as {BEHIND_BUNKER_YD:g} paces on behind the {found[0].name}."
    moved = _with_pin(hole, words, *approach.place(on_yd, across))
    return replace(moved, assumed=(*moved.assumed, said_so))


def _third(parts: list[str]) -> tuple[int, int] | None:
    """Third of the depth and of the width that words such as "back left" name."""
    if len(parts) == 1 and parts[0] in _DEPTHS:
        return _DEPTHS[parts[0]], 1
    if len(parts) == 1 and parts[0] in _WIDTHS:
        return 1, _WIDTHS[parts[0]]
    if len(parts) == 2 and parts[0] in _DEPTHS and parts[1] in _WIDTHS:
        return _DEPTHS[parts[0]], _WIDTHS[parts[1]]
    return None


def _at_third(hole: Hole, words: str, deep: int, wide: int) -> Hole:
    approach = _Approach(hole)
    on = approach.depth_yd * (2 * deep + 1) / 6.0
    left, right = approach.edges(on)
    return _with_pin(hole, words, *approach.place(on, left + (right - left) * (2 * wide + 1) / 6.0))


def _with_pin(hole: Hole, name: str, x_yd: float, y_yd: float) -> Hole:
    surface = hole.surface_at(x_yd, y_yd)
    if surface is not Surface.GREEN:
        raise _refused(hole, f"pin {name!r}: that place is {WORDS[surface]}; allowed: a place on the green")
    return replace(hole, pin=Spot(name, x_yd, y_yd))


def _yards(found: re.Match[str], name: str) -> float:
    """A length that `_paces` found, in yards."""
    metric = (found[f"{name}_unit"] or "").startswith("m")
    return float(found[name]) * (YD_PER_M if metric else PACE_YD)


def _either_yd(found: re.Match[str]) -> float:
    """That before or behind its word, in yards."""
    return _yards(found, "before" if found["before"] else "behind")


class _Approach:
    """The green as a player coming up the last leg of the line sees it."""

    def __init__(self, hole: Hole) -> None:
        self.green = hole.green
        self.ahead = hole.play_line.headings[-1]
        self.across = np.array([self.ahead[1], -self.ahead[0]])
        corners = shapely.get_coordinates(self.green)
        along, beside = corners @ self.ahead, corners @ self.across
        self.front, self.depth_yd = float(along.min()), float(np.ptp(along))
        self.left, self.right = float(beside.min()) - 1.0, float(beside.max()) + 1.0

    def place(self, on_yd: float, across_yd: float) -> tuple[float, float]:
        """The place (x, y) so far on, at an offset across the approach."""
        x, y = self.ahead * (self.front + on_yd) + self.across * across_yd
        return float(x), float(y)

    def seen(self, place: tuple[float, float]) -> tuple[float, float]:
        """How far on a place is, and its offset across the approach."""
        xy = np.array(place)
        return float(xy @ self.ahead) - self.front, float(xy @ self.across)

    def edges(self, on_yd: float) -> tuple[float, float]:
        """Offsets of the left and the right edge of the green at a depth."""
        # a hair inside the green: the very front and back are points
        on_yd = min(max(on_yd, 1e-6), self.depth_yd - 1e-6)
        cut = shapely.LineString([self.place(on_yd, self.left), self.place(on_yd, self.right)])
        beside = shapely.get_coordinates(self.green.intersection(cut)) @ self.across
        return float(beside.min()), float(beside.max())
