"""Areas beside or across the line: water, streams, trees, rough, paths."""

from __future__ import annotations

from collections import Counter

from simulator.hole.words import assumed as a
from simulator.hole.words.area_ends import NEEDS_A_RANGE, along_the_line, by_green, edges
from simulator.hole.words.diagonal import diagonal
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.placing import Across, Along, read_across, read_along, take_gap

KEY_OF_KIND = {
    "water": "penalty_area", "stream": "penalty_area", "trees": "trees", "heavy_rough": "heavy_rough",
    "rough": "rough", "path": "path", "waste": "bunker", "runoff": "fairway",
}  # fmt: skip


def read_areas(features: list[Feature], draft: Draft) -> None:
    """Every area of these kinds, in the order of the words.

    Raises
    ------
    UsageError
        Words that do not settle where it is.
    """
    mine = [f for f in features if f.kind in KEY_OF_KIND]
    times = Counter(f.word for f in mine)
    for feature in mine:
        _area(feature, draft, alone=times[feature.word] == 1)


def _area(feature: Feature, draft: Draft, *, alone: bool) -> None:
    """One area; named by its noun where that is `alone`, else by its side or end of the green too."""
    entry = Entry(KEY_OF_KIND[feature.kind], {}, feature.text)
    _what(feature, draft, entry)
    count = feature.take("count")
    need(count is None or count.numbers["a"].value == 1.0, feature.token if count is None else count.token,
         f"{feature.called}: say each by itself, where it is")  # fmt: skip
    if feature.has("diagonal"):
        diagonal(feature, draft, entry)
        return
    if feature.take("round") is not None:
        _round_the_green(feature, draft, entry)
        return
    if feature.kind == "runoff" and {one.what for one in feature.said} <= {"all_round", "at_green", "wide"}:
        _mown_round_the_green(feature, draft, entry)
        return
    green = feature.take("short_green"), feature.take("behind_green"), feature.take("beside_green")
    at_green = feature.take("at_green")
    if at_green is None:  # "both sides of the green"
        at_green = next((one for one in feature.said if one.what == "both" and "g" in one.words), None)
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=True)
    place = feature.take("place")
    if place is not None and place.words.get("p", "middle") == "middle":
        across.middle = True
    elif place is not None:
        need(not any(green), feature.token, "stands in two places by the green: say each by itself")
        green = _corner(place, across, draft, entry)
    bare = feature.take("bare")
    if bare is not None:
        need(bare.token.start > feature.token.start, bare.token,
             f"{feature.word}: say each by itself, where it is")  # fmt: skip
        value = draft.units.yd(bare.numbers["a"])
        beside = bool(across.sides) and across.near is None and value <= a.MOST_ACROSS_YD
        if along.at is None and along.low is None and not beside:  # "pond right, 220"
            along.at = value
        else:
            need(
                across.near is None and value <= a.MOST_ACROSS_YD,
                bare.token,
                "of what? Say at, from, left or right",
            )
            across.bare(bare.token)
            across.near = value
    cuts_in = feature.take("cuts_in")
    need(cuts_in is None, feature.token if cuts_in is None else cuts_in.token,
         'the fairway by how much? Say "5 into the fairway"')  # fmt: skip
    if across.at is not None:
        need(along.at is None and along.low is None, feature.token, "is placed twice along the line")
        along.at = across.at
    if green[0] is not None and not across.sides:
        across.crosses = across.crosses or feature.kind == "stream"
    if feature.has("gap"):
        _by_gap(feature, draft, entry, along, across)
    _sizes(feature, draft, along, across)
    if at_green is None and not any(green) and _by_the_green_unsaid(feature, draft, along, across):
        at_green = Said("at_green", feature.token, {}, {}, feature.called)
        entry.assume("that it lies by the green", "from", "to")
    if any(green) or at_green is not None:
        by_green(feature, draft, entry, (*green, at_green), along, across)
    else:
        along_the_line(feature, draft, entry, along, across)
    crossing = (across.crosses or across.middle) and bool(across.sides)
    need(not crossing, feature.token, "crosses the line and lies on one side: which of the two?")
    entry_sides = across.sides if not (across.crosses or across.middle) else ("",)
    for side in entry_sides:
        one = Entry(entry.kind, dict(entry.keys), entry.text, list(entry.assumed), list(entry.reasons))
        edges(one, draft, feature, across, side)
        noun = feature.word
        bare_noun = noun if len(entry_sides) == 1 and (alone or not side) else ""
        wishes = (one.keys.pop("name", ""), bare_noun, f"{side} {noun}")
        low, high = one.keys.pop("from"), one.keys.pop("to")
        one.keys = {"name": draft.name_for(*wishes), **_first(one), "from": low, "to": high, **one.keys}
        draft.entries.append(one)


def _by_the_green_unsaid(feature: Feature, draft: Draft, along: Along, across: Across) -> bool:
    """Whether "water left" of a par 3 says nothing of where along the line: it is left of the green.

    A run-off is by the green on any hole.
    """
    placed = (along.low, along.high, along.at, along.second) != (None,) * 4 or along.runs
    sided = bool(across.sides) and not (across.every or across.runs or across.crosses)
    of_green = feature.kind == "runoff" or (draft.par == 3 and feature.noun in NEEDS_A_RANGE)
    return of_green and sided and not placed


def _round_the_green(feature: Feature, draft: Draft, entry: Entry) -> None:
    """Water up to the edge of the green on every side: the green is cut out of it (`hole/islands.py`)."""
    need(feature.kind == "water", feature.token,
         "all round the green? Say left, right, short or behind of it")  # fmt: skip
    wide = feature.take("wide")
    reach = a.ROUND_GREEN if wide is None else draft.units.yd(wide.numbers["a"])
    u, least = draft.units, a.NARROWEST_ROUND_GREEN
    need(least <= reach <= a.MOST_ACROSS_YD, feature.token,
         f"has a width out of range; allowed: {u.shown(least)} to {u.shown(a.MOST_ACROSS_YD)}")  # fmt: skip
    if wide is None:
        entry.assume(f"{u.shown(reach)} on every side of the green", "from", "to", "left", "right")
    half, middle = draft.green_half_yd + reach, draft.green_offset_yd
    name = draft.name_for(str(entry.keys.pop("name", "")), feature.word)
    entry.keys = {
        "name": name, **_first(entry),
        "from": draft.green_front_yd - reach, "to": draft.green_back_yd + reach,
        "left": middle - half, "right": middle + half,
    }  # fmt: skip
    draft.entries.append(entry)


def _mown_round_the_green(feature: Feature, draft: Draft, entry: Entry) -> None:
    """Short grass on every side of the green, which lies on top of it."""
    need(feature.has("all_round", "at_green"), feature.token,
         'where? Say "run-off left of the green", "run-off all round the green"')  # fmt: skip
    feature.take_all("all_round", "at_green")
    wide = feature.take("wide")
    reach = a.ACROSS["runoff"] if wide is None else draft.units.yd(wide.numbers["a"])
    need(0.0 < reach <= a.MOST_ACROSS_YD, feature.token, "has no width that can be drawn")
    if wide is None:
        entry.assume(f"{draft.units.shown(reach)} on every side of the green", "depth", "width")
    front, back = draft.green_front_yd, draft.green_back_yd
    name = draft.name_for(str(entry.keys.pop("name", "")), feature.word)
    entry.keys = {
        "name": name, "at": 0.5 * (front + back), "offset": draft.green_offset_yd,
        "depth": back - front + 2.0 * reach, "width": 2.0 * (draft.green_half_yd + reach),
    }  # fmt: skip
    draft.entries.append(entry)


def _corner(
    place: Said, across: Across, draft: Draft, entry: Entry
) -> tuple[Said | None, Said | None, Said | None]:
    """ "Front" is short of the green; "short right of the green" from a third of its half width outwards."""
    side, short = place.words.get("s", ""), place.words["p"] in ("front", "short")
    if not side and not across.sides and "lr" not in place.words:  # "guards the front of the green"
        return (place, None, None) if short else (None, place, None)
    need(side in ("left", "right") and across.sides in ((), (side,)), place.token,
         f'({place.shown}): of the green? Say "short right of the green", "behind the green"')  # fmt: skip
    across.sides = (side,)
    if across.near is None:
        across.near = draft.green_half_yd * a.CORNER_SHARE
        entry.assume(f"its near edge {draft.units.shown(across.near)} {side}", "left", "right")
    return (place, None, None) if short else (None, place, None)


def _first(entry: Entry) -> dict[str, object]:
    """Plain keys stand first in the line of the file."""
    keys = [key for key in ("colour", "playable") if key in entry.keys]
    return {key: entry.keys.pop(key) for key in keys}


def _what(feature: Feature, draft: Draft, entry: Entry) -> None:
    """Colour, whether it can be played from, height of trees, name."""
    named = feature.take("named")
    if named is not None:
        entry.keys["name"] = named.numbers["a"].key[:50]
    if feature.noun in a.PRICKLY:
        entry.keys["lost_chance"] = a.LOST_IN_PRICKLY
        entry.assume(f"one ball in {1.0 / a.LOST_IN_PRICKLY:g} in it lost", "lost_chance")
    if entry.kind == "penalty_area":
        colour, playable = feature.take("colour"), feature.take("playable")
        if colour is None and feature.noun in ("red stakes", "yellow stakes"):
            entry.keys["colour"] = feature.noun.split()[0]
        elif colour is not None:
            need(
                colour.words["word"] in ("red", "yellow"),
                colour.token,
                "is no penalty area; allowed: red, yellow",
            )
            entry.keys["colour"] = colour.words["word"]
        elif feature.has("round"):
            # a ball over the back of a red one may be dropped beside the green (Rule 17.1d(3)): too much club
            # would be the best plan
            entry.keys["colour"] = "yellow"
            entry.assume("yellow, as water round a green mostly is (common practice)", "colour")
        else:
            # Rules of Golf 2023, Definitions, penalty area: one without a colour is treated as red
            entry.keys["colour"] = "red"
            entry.assume("red, as not marked (Rules of Golf, Definitions)", "colour")
        if playable is not None and playable.words["word"] in ("playable", "dry"):
            entry.keys["playable"] = True
        elif playable is None and feature.noun in (
            "penalty area",
            "hazard",
            "lateral hazard",
            "ditch",
            "ravine",
        ):
            entry.assume("no ball in it can be played")
    if feature.kind == "waste":
        # Rules of Golf 2023, Definitions, bunker: sand that nobody prepared as one is general area
        entry.assume("that its sand plays as a bunker's (Rules of Golf, Definitions: general area)")
    if feature.kind == "runoff":
        entry.assume("mown as short as a fairway, and level")
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
    need(by is None or not (long or wide or deep), feature.token, "has its size twice")
    lengthwise, crosswise = long or by, wide
    if across.crosses or (feature.kind == "stream" and not across.sides):
        lengthwise, crosswise = wide or deep or by, long
        need(wide is None or deep is None, feature.token, "is wide and deep: leave one out")
    else:
        need(deep is None, feature.token, "is deep? Say how long (along the line) or wide (across)")
    if lengthwise is not None:
        size = u.yd(lengthwise.numbers["a"])
        need(size > 0.0, lengthwise.token, f"({lengthwise.shown}): no size")
        _stretch(along, size, lengthwise)
    across_yd = (
        u.yd(by.numbers["b"]) if by is not None else u.yd(crosswise.numbers["a"]) if crosswise else None
    )
    if across_yd is not None:
        need(across_yd > 0.0, feature.token, "has no size")
        need(across.far is None, feature.token, "has a far edge and a width: leave one out")
        across.width = across_yd
    if along.second is not None:
        edged = across.near is not None or across.far is not None or across.width is not None
        need(not edged, feature.token, "has its edges twice")
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
