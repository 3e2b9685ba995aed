"""Bunkers round the green: their long side along its edge, a little off it."""

from __future__ import annotations

import math

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature

_ROUND_DEG = {"front": 180.0, "back": 0.0, "left": 270.0, "right": 90.0}
_CORNERS = {
    ("front", "left"): 220.0,
    ("front", "right"): 140.0,
    ("back", "left"): 320.0,
    ("back", "right"): 40.0,
}
"""Ways from the middle of the green [deg], clockwise from the line of play."""


def by_the_green(
    names: tuple[str, Feature, Draft], ends: str, side: str, sizes: tuple[float | None, float | None, float],
    which: tuple[int, int], sure: bool,
) -> None:  # fmt: skip
    """A bunker round the green: its long side along the edge of the green, a little off it."""
    name, feature, draft = names
    u = draft.units
    depth, width, factor = sizes
    entry = Entry("bunker", {}, feature.text)
    if not sure:
        entry.assume("that it lies by the green", "at")
    pot = feature.noun.startswith("pot")
    if depth is None:
        depth = a.POT_SIZE if pot else factor * a.GREENSIDE_DEPTH
        entry.assume(f"{u.shown(depth)} long", "depth")
    if width is None:
        width = a.POT_SIZE if pot else factor * a.GREENSIDE_WIDTH
        entry.assume(f"{u.shown(width)} wide", "width")
    entry.assume(f"{u.shown(a.GREEN_GAP['bunker'])} off the green", "at", "offset", "turn_deg")
    turn = _CORNERS[ends, side] if ends and side else _ROUND_DEG[ends or side]
    turn += 40.0 * (which[0] - (which[1] - 1) / 2.0)
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
    add_bunker(draft, entry, name, wish, keys)


def add_bunker(draft: Draft, entry: Entry, name: str, wish: str, keys: dict[str, float]) -> None:
    one = Entry(
        "bunker", {"name": draft.name_for(name, wish), **keys, **entry.keys}, entry.text, list(entry.assumed)
    )
    one.reasons = list(entry.reasons)
    draft.entries.append(one)
