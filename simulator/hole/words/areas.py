"""Areas beside or across the line: water, streams, trees, rough, paths."""

from __future__ import annotations

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.placing import Across, Along, read_across, read_along, take_gap

KEY_OF_KIND = {
    "water": "penalty_area", "stream": "penalty_area", "trees": "trees", "heavy_rough": "heavy_rough",
    "rough": "rough", "path": "path",
}  # fmt: skip

STREAM_WIDTH = {"river": a.RIVER_WIDTH, "canal": a.RIVER_WIDTH, "ravine": a.RAVINE_WIDTH, "ditch": a.DITCH_WIDTH,
                "drain": a.DITCH_WIDTH}  # fmt: skip

WIDTH_OF = STREAM_WIDTH | a.ROW_ACROSS
"""How far across the line by noun, where it differs from its kind."""

NEEDS_A_RANGE = frozenset("pond ponds lake water hazard reservoir pool lagoon loch marsh swamp".split())
"""Water that does not run the length of a hole unless somebody says so."""


def read_areas(features: list[Feature], draft: Draft) -> None:
    """Every area of these kinds, in the order of the words.

    Raises
    ------
    UsageError
        Words that do not settle where it is.
    """
    for feature in [f for f in features if f.kind in KEY_OF_KIND]:
        _area(feature, draft)


def _area(feature: Feature, draft: Draft) -> None:
    entry = Entry(KEY_OF_KIND[feature.kind], {}, feature.text)
    _what(feature, draft, entry)
    green = feature.take("short_green"), feature.take("behind_green"), feature.take("beside_green")
    at_green = feature.take("at_green")
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=True)
    place = feature.take("place")
    if place is not None:
        need(place.words.get("p", "middle") == "middle" and "s" not in place.words, place.token,
             f'({place.shown}): of the green? Say "left of the green", "behind the green"')  # fmt: skip
        across.middle = True
    bare = feature.take("bare")
    if bare is not None:
        value = draft.units.yd(bare.numbers["a"])
        if along.at is None and along.low is None:
            along.at = value
        else:
            need(across.near is None and value <= a.MOST_ACROSS_YD, bare.token, "of what? Say at, from, left or right")
            across.near = value
    if across.at is not None:
        need(along.at is None and along.low is None, feature.token, "is placed twice along the line")
        along.at = across.at
    if green[0] is not None and not across.sides:
        across.crosses = across.crosses or feature.kind == "stream"
    if feature.has("gap"):
        _by_gap(feature, draft, entry, along, across)
    _sizes(feature, draft, along, across)
    if any(green) or at_green is not None:
        _by_green(feature, draft, entry, (*green, at_green), along, across)
    else:
        _along_the_line(feature, draft, entry, along, across)
    entry_sides = across.sides if not (across.crosses or across.middle) else ("",)
    for side in entry_sides:
        one = Entry(entry.kind, dict(entry.keys), entry.text, list(entry.assumed), list(entry.reasons))
        _edges(one, draft, feature, across, side)
        noun = feature.word
        wishes = (one.keys.pop("name", ""), noun if len(entry_sides) == 1 else "", f"{side} {noun}")
        low, high = one.keys.pop("from"), one.keys.pop("to")
        one.keys = {"name": draft.name_for(*wishes), **_first(one), "from": low, "to": high, **one.keys}
        draft.entries.append(one)


def _first(entry: Entry) -> dict[str, object]:
    """Plain keys stand first in the line of the file."""
    keys = [key for key in ("colour", "playable") if key in entry.keys]
    return {key: entry.keys.pop(key) for key in keys}


def _what(feature: Feature, draft: Draft, entry: Entry) -> None:
    """Colour, whether it can be played from, height of trees, name."""
    named = feature.take("named")
    if named is not None:
        entry.keys["name"] = named.numbers["a"].key[:50]
    if entry.kind == "penalty_area":
        colour, playable = feature.take("colour"), feature.take("playable")
        if colour is not None:
            need(colour.words["word"] in ("red", "yellow"), colour.token, "is no penalty area; allowed: red, yellow")
            entry.keys["colour"] = colour.words["word"]
        else:
            # Rules of Golf 2023, Definitions, penalty area: one without a colour is treated as red
            entry.keys["colour"] = "red"
            entry.assume("red, as not marked (Rules of Golf, Definitions)", "colour")
        if playable is not None and playable.words["word"] in ("playable", "dry"):
            entry.keys["playable"] = True
        elif playable is None and feature.noun in ("penalty area", "hazard", "lateral hazard", "ditch", "ravine"):
            entry.assume("no ball in it can be played")
    if entry.kind == "trees":
        for what, key in (("tall", "height"), ("base", "base")):
            said = feature.take(what)
            if said is not None:
                entry.keys[key] = draft.units.yd(said.numbers["a"])
        density = feature.take("density")
        if density is not None:
            entry.keys["density"] = density.words["word"]


def _by_gap(feature: Feature, draft: Draft, entry: Entry, along: Along, across: Across) -> None:
    """Near edge from two ranges and a gap; it begins at that station."""
    reading = along.low if along.low is not None else along.at
    side = across.sides[0] if len(across.sides) == 1 else ""
    need(across.near is None, feature.token, "has an edge and a gap: leave one out")
    station, across.near = take_gap(feature, draft, reading, side, entry)
    along.low, along.at = station, None


def _sizes(feature: Feature, draft: Draft, along: Along, across: Across) -> None:
    """Lengths and widths, turned into ends: wide is across the line, along it for what crosses."""
    u = draft.units
    long, wide, deep, by = (feature.take(what) for what in ("long", "wide", "deep", "by"))
    lengthwise, crosswise = long or by, wide
    if across.crosses or feature.kind == "stream" and along.low is None:
        lengthwise, crosswise = wide or deep or by, long
        need(wide is None or deep is None, feature.token, "is wide and deep: leave one out")
    else:
        need(deep is None, feature.token, "is deep? Say how long (along the line) or wide (across)")
    if lengthwise is not None:
        size = u.yd(lengthwise.numbers["a"])
        need(size > 0.0, lengthwise.token, f"({lengthwise.shown}): no size")
        _stretch(along, size, lengthwise)
    across_yd = u.yd(by.numbers["b"]) if by is not None else u.yd(crosswise.numbers["a"]) if crosswise else None
    if across_yd is not None:
        need(across_yd > 0.0, feature.token, "has no size")
        need(across.far is None, feature.token, "has a far edge and a width: leave one out")
        across.width = across_yd
    if along.second is not None:
        need(across.near is None and across.far is None, feature.token, "has its edges twice")
        across.near, across.far = along.second


def _stretch(along: Along, size: float, said: Said) -> None:
    if along.low is not None and along.high is not None:
        raise said.token.error(f"({said.shown}): both ends are said already")
    if along.low is not None:
        along.high = along.low + size
    elif along.high is not None:
        along.low = along.high - size
    else:
        along.length = size


def _usual_length(feature: Feature) -> float:
    return STREAM_WIDTH.get(feature.noun, a.ALONG[feature.kind])


def _along_the_line(feature: Feature, draft: Draft, entry: Entry, along: Along, across: Across) -> None:
    """Both stations; what nobody said is assumed."""
    u, token = draft.units, feature.token
    size = along.length
    crosses = across.crosses or across.middle
    if not across.sides and not crosses:
        need(feature.kind in ("stream", "water", "path"), token, "on which side? Say left, right, both sides or across")
        across.crosses = crosses = True
        if feature.kind == "water":
            entry.assume("that it crosses the line")
    if along.at is not None and (size is not None or along.low is None and along.high is None):
        length = size if size is not None else _usual_length(feature)
        if crosses:
            along.low, along.high = along.at - length / 2.0, along.at + length / 2.0
        else:
            along.low, along.high = along.at, along.at + length
        if size is None:
            entry.assume(f"{u.shown(length)} along the line", "from", "to")
    elif along.low is not None and along.high is None:
        whole = feature.kind in ("trees", "heavy_rough", "rough") or feature.noun not in NEEDS_A_RANGE
        whole = whole and not crosses and feature.kind != "stream"
        length = _usual_length(feature)
        along.high = draft.green_back_yd if whole and along.low < draft.green_back_yd - length else along.low + length
        entry.assume(f"an end at {u.shown(along.high)}", "to")
    elif along.high is not None and along.low is None:
        along.low = along.high - _usual_length(feature)
        entry.assume(f"a beginning at {u.shown(along.low)}", "from")
    elif along.low is None:
        need((feature.noun not in NEEDS_A_RANGE or across.every) and not crosses, token,
             'where along the line? For example "213 to 254" or "at 230"')  # fmt: skip
        along.low, along.high = min(a.FROM_TEE_YD, 0.2 * draft.length_yd), draft.green_back_yd
        entry.assume(f"from {u.shown(along.low)} to the back of the green", "from", "to")
    assert along.low is not None and along.high is not None
    need(along.low < along.high, token, "ends before it begins")
    need(along.high > -150.0 and along.low < draft.length_yd + 150.0, token, "lies beyond the hole")
    entry.keys |= {"from": along.low, "to": along.high}


def _by_green(
    feature: Feature, draft: Draft, entry: Entry, said: tuple[Said | None, ...], along: Along, across: Across
) -> None:
    """Stations of an area short of, behind or beside the green."""
    short, behind, beside, at_green = said
    u = draft.units
    need(sum(one is not None for one in said) == 1, feature.token, "stands in two places by the green")
    need(along.low is None and along.high is None and along.at is None, feature.token,
         "stands by the green and elsewhere along the line: leave one out")  # fmt: skip
    gap = a.GREEN_GAP[feature.kind]
    front, back = draft.green_front_yd, draft.green_back_yd
    size = along.length
    end = short or behind
    if end is not None:
        if "a" in end.numbers:
            gap = u.yd(end.numbers["a"])
        else:
            entry.assume(f"{u.shown(gap)} from the green", "from", "to")
        length = size if size is not None else _usual_length(feature)
        if size is None:
            entry.assume(f"{u.shown(length)} along the line", "from", "to")
        low = front - gap - length if short is not None else back + gap
        entry.keys |= {"from": low, "to": low + length}
        if not across.sides:
            across.crosses = True
        return
    if beside is not None:
        across.sides = (beside.words["s"],)
        if "a" in beside.numbers and across.near is None:
            across.near = draft.green_half_yd + u.yd(beside.numbers["a"])
    need(bool(across.sides), feature.token, "on which side of the green? Say left, right, short or behind")
    if across.near is None:
        across.near = draft.green_half_yd + gap
        entry.assume(f"{u.shown(gap)} from the green", "left", "right")
    entry.keys |= {"from": front - 5.0, "to": back + 5.0}
    entry.assume("as long as the green", "from", "to")


def _edges(entry: Entry, draft: Draft, feature: Feature, across: Across, side: str) -> None:
    """Left and right edge of one area; side "" for what crosses the line."""
    u = draft.units
    if side == "":
        stream = feature.kind in ("stream", "path") or across.crosses and feature.noun not in NEEDS_A_RANGE
        reach = a.CROSSING_REACH if stream and feature.kind != "trees" else a.POND_REACH
        if across.width is not None:
            reach = across.width / 2.0
        else:
            entry.assume(f"{u.shown(reach)} to either side", "left", "right")
        entry.keys |= {"left": -reach, "right": reach}
        return
    near, far, width = across.near, across.far, across.width
    if near is None and far is None:
        near = draft.fairway_edge(side) + a.EDGE_BEYOND_FAIRWAY[feature.kind]
        entry.assume(f"its near edge {u.shown(near)} {side}", "left", "right")
    usual = WIDTH_OF.get(feature.noun, a.ACROSS[feature.kind])
    if near is None:
        assert far is not None
        near = far - usual
        entry.assume(f"{u.shown(usual)} across", side_key(side, near=True))
    if far is None:
        far = near + (width if width is not None else usual)
        if width is None:
            entry.assume(f"{u.shown(usual)} across", side_key(side, near=False))
    need(near < far, feature.token, "has its far edge nearer than its near one")
    entry.keys |= {"left": near, "right": far} if side == "right" else {"left": -far, "right": -near}


def side_key(side: str, near: bool) -> str:
    """Key of the near or far edge of an area on a side."""
    return "left" if (side == "right") == near else "right"
