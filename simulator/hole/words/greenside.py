"""Bunkers round the green: their long side along its edge, a little off it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature
from simulator.hole.words.lex import Token

_ROUND_DEG = {"front": 180.0, "back": 0.0, "left": 270.0, "right": 90.0}
_CORNERS = {
    ("front", "left"): 220.0,
    ("front", "right"): 140.0,
    ("back", "left"): 320.0,
    ("back", "right"): 40.0,
}
"""Ways from the middle of the green [deg], clockwise from the line of play."""

APART_DEG = 40.0
"""From one to the next of several on the same side of it (assumed) [deg]."""


@dataclass
class Bunkers:
    """A bunker as it was said, or several alike.

    Parameters
    ----------
    name : what it is called, "" when nobody said.
    depth, width : size along the line and across it [yd]; None when nobody said.
    factor : of a small or a large one, times the usual size.
    count : how many stand in each place; apart_yd : from one to the next [yd], None when nobody said.
    """

    feature: Feature
    draft: Draft
    name: str
    depth: float | None
    width: float | None
    factor: float
    count: int
    apart_yd: float | None = None

    @property
    def token(self) -> Token:
        """Where in the words it stands."""
        return self.feature.token

    def size(self, entry: Entry, usual_depth: float, usual_width: float) -> tuple[float, float]:
        """Depth and width [yd]: the usual ones, or a pot bunker's, are assumed of what nobody said."""
        shown, pot = self.draft.units.shown, self.feature.noun.startswith("pot")
        depth, width = self.depth, self.width
        if depth is None:
            depth = a.POT_SIZE if pot else usual_depth
            entry.assume(f"{shown(depth)} long", "depth")
        if width is None:
            width = a.POT_SIZE if pot else usual_width
            entry.assume(f"{shown(width)} wide", "width")
        return depth, width


def by_the_green(bunkers: Bunkers, ends: str, side: str, which: int, sure: bool) -> None:
    """A bunker round the green: its long side along the edge of the green, a little off it.

    Parameters
    ----------
    ends : "front", "back" or "", and `side`: "left", "right" or "".
    which : 0 for the first of them, up to the count.
    sure : whether somebody said that it lies there.
    """
    draft, u = bunkers.draft, bunkers.draft.units
    entry = Entry("bunker", {}, bunkers.feature.text)
    if not sure:
        entry.assume("that it lies by the green", "at")
    usual = (bunkers.factor * a.GREENSIDE_DEPTH, bunkers.factor * a.GREENSIDE_WIDTH)
    depth, width = bunkers.size(entry, *usual)
    entry.assume(f"{u.shown(a.GREEN_GAP['bunker'])} off the green", "at", "offset", "turn_deg")
    turn = _CORNERS[ends, side] if ends and side else _ROUND_DEG[ends or side]
    turn += APART_DEG * (which - (bunkers.count - 1) / 2.0)
    half_deep, half_wide = 0.5 * (draft.green_back_yd - draft.green_front_yd), draft.green_half_yd
    right, ahead = math.sin(math.radians(turn)), math.cos(math.radians(turn))
    normal = math.atan2(right / half_wide, ahead / half_deep)  # away from the edge, clockwise from the line
    push = a.GREEN_GAP["bunker"] + width / 2.0
    station = draft.green_front_yd + half_deep * (1.0 + ahead) + push * math.cos(normal)
    offset = draft.green_offset_yd + half_wide * right + push * math.sin(normal)
    along_edge = (math.degrees(normal) - 90.0 + 90.0) % 180.0 - 90.0
    keys = {"at": round(station, 1), "offset": round(offset, 1), "depth": depth, "width": width}
    if abs(along_edge) > 0.5:
        keys["turn_deg"] = round(along_edge)
    words = " ".join(word for word in (ends, side) if word)
    wish = f"{words} bunker" if ends and side else f"{words} greenside bunker"
    add_bunker(bunkers, entry, wish, keys)


def add_bunker(bunkers: Bunkers, entry: Entry, wish: str, keys: dict[str, float]) -> None:
    """One more, by its own name or as is wished, with what was assumed of all of them."""
    name = bunkers.draft.name_for(bunkers.name, wish)
    one = Entry("bunker", {"name": name, **keys, **entry.keys}, entry.text, list(entry.assumed))
    one.reasons = list(entry.reasons)
    bunkers.draft.entries.append(one)
