"""Single trees, and marks to point at."""

from __future__ import annotations

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, need
from simulator.hole.words.placing import Across, Along, read_across, read_along, take_gap

BESIDE_FAIRWAY_YD = 6.0
"""A tree "left" at a distance stands this far off the mown edge (assumed)."""


def read_points(features: list[Feature], draft: Draft) -> None:
    """Single trees and marks, in the order of the words.

    Raises
    ------
    UsageError
        Words that do not settle where one is.
    """
    for feature in [f for f in features if f.kind == "tree"]:
        _tree(feature, draft)
    for feature in [f for f in features if f.kind == "mark"]:
        _mark(feature, draft)


def _tree(feature: Feature, draft: Draft) -> None:
    u = draft.units
    noun = feature.noun.removeprefix("lone ").removeprefix("single ")
    entry = Entry("tree", {}, feature.text)
    size = feature.take("size")
    named, density = feature.take("named"), feature.take("density")
    sizes = {key: feature.take(*what) for key, what in
             {"crown": ("crown", "wide"), "height": ("tall",), "base": ("base",)}.items()}  # fmt: skip
    place = feature.take("place")
    if place is not None:
        need(
            place.words.get("p", "middle") == "middle", place.token, f"({place.shown}): where along the line?"
        )
    station, across = _where(feature, draft, entry)
    sides = across.sides or ("",)
    need(bool(across.sides) or place is not None, feature.token, "on which side? Say left, right or middle")
    for side in sides:
        away = _away(across, draft, entry, side)
        keys = {
            "name": draft.name_for(named.numbers["a"].key if named else noun, f"{side} {noun}"),
            "at": station,
        }
        if away:
            keys["offset"] = -away if side == "left" else away
        for key, said in sizes.items():
            if said is not None:
                keys[key] = u.yd(said.numbers["a"])
        if "crown" not in keys:
            factor = {"small": a.SMALL, "large": a.LARGE}[size.words["word"]] if size else 1.0
            crown_yd = factor * a.CROWN_YD
            keys["crown"] = crown_yd
            entry.assume(f"a crown {u.shown(crown_yd)} wide", "crown")
        if density is not None:
            keys["density"] = density.words["word"]
        draft.entries.append(Entry("tree", keys, entry.text, list(entry.assumed), list(entry.reasons)))


def _away(across: Across, draft: Draft, entry: Entry, side: str) -> float:
    """Distance from the line to the middle of a crown."""
    if not side:
        return 0.0
    for known in (across.offset, across.near):
        if known is not None:
            return known
    away = draft.fairway_edge(side) + BESIDE_FAIRWAY_YD
    entry.assume(f"{draft.units.shown(away)} {side}", "offset")
    return away


def _where(feature: Feature, draft: Draft, entry: Entry) -> tuple[float, Across]:
    """Station and what is said across the line."""
    u = draft.units
    short, behind = feature.take("short_green"), feature.take("behind_green", "back_by")
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=False)
    spread = across.crosses or across.every or across.far is not None or along.second is not None
    need(not spread, feature.token, "stands in one place: say at, and how far left or right")
    bare = feature.take("bare")
    known = [
        v
        for v in (along.at, across.at, along.low, u.yd(bare.numbers["a"]) if bare else None)
        if v is not None
    ]
    for said, edge, sense in ((short, draft.green_front_yd, -1.0), (behind, draft.green_back_yd, 1.0)):
        if said is None:
            continue
        if "a" in said.numbers:
            away = u.yd(said.numbers["a"])
        else:
            away = a.MARK_BEHIND_YD if feature.kind == "mark" else a.GREEN_GAP["trees"]
            entry.assume(f"{u.shown(away)} from the green", "at")
        known.append(edge + sense * away)
    need(bool(known), feature.token, 'where along the line? For example "at 230"')
    need(len(known) == 1 and along.high is None, feature.token, "is placed twice along the line")
    station = known[0]
    if feature.has("gap"):
        aside = across.offset is not None or across.near is not None
        need(not aside, feature.token, "has an offset and a gap: leave one out")
        station, across.offset = take_gap(
            feature, draft, station, across.sides[0] if across.sides else "", entry
        )
    if feature.kind == "tree":
        need(-100.0 < station < draft.length_yd + 150.0, feature.token, "stands beyond the hole")
    return station, across


def _mark(feature: Feature, draft: Draft) -> None:
    need(bool(feature.noun), feature.token, 'needs a name: "mark church tower 12 right at 400"')
    entry = Entry("mark", {}, feature.text)
    named = feature.take("named")
    feature.take("place")
    station, across = _where(feature, draft, entry)
    side = across.sides[0] if across.sides else ""
    need(not side or across.offset is not None or across.near is not None, feature.token,
         f"how far {side}? For example 12 {side}")  # fmt: skip
    away = across.offset if across.offset is not None else across.near or 0.0
    name = (named.numbers["a"].key if named else feature.noun)[:50]
    taken = {str(e.keys["name"]).casefold() for e in draft.of("mark")}
    need(name.casefold() not in taken, feature.token, f"is a second mark called {name}")
    entry.keys = {"name": name, "at": station}
    if away:
        entry.keys["offset"] = -away if side == "left" else away
    draft.entries.append(entry)


__all__ = ["Along", "read_points"]
