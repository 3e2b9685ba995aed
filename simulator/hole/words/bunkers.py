"""Bunkers: beside the fairway, across it, round the green, one or several."""

from __future__ import annotations

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, need
from simulator.hole.words.greenside import add_bunker, by_the_green
from simulator.hole.words.lists import MOST_BUNKERS
from simulator.hole.words.placing import Across, Along, read_across, read_along, take_gap

_SENSE = {"short": "front", "long": "back"}

FAR_SHORT_YD = 60.0
"""A bunker farther short of the green than this without a side is not taken to lie on the line [yd]."""

APART_YD = 16.0
"""Spacing of several bunkers of which only one place is said (assumed)."""


def read_bunkers(features: list[Feature], draft: Draft) -> None:
    """Every bunker, in the order of the words.

    Raises
    ------
    UsageError
        Words that do not settle where it is.
    """
    for feature in [f for f in features if f.kind == "bunker"]:
        _bunker(feature, draft)


def _bunker(feature: Feature, draft: Draft) -> None:
    u = draft.units
    count = _count(feature)
    cross = feature.noun.startswith("cross")
    size, long, wide, deep, by = (feature.take(w) for w in ("size", "long", "wide", "deep", "by"))
    need(sum(one is not None for one in (long, deep, by)) < 2 and not (by and wide), feature.token,
         "has its size twice")  # fmt: skip
    lengthwise = long or deep or by
    depth = u.yd(lengthwise.numbers["a"]) if lengthwise else None
    width = u.yd(by.numbers["b"]) if by else u.yd(wide.numbers["a"]) if wide else None
    factor = {"small": a.SMALL, "large": a.LARGE}[size.words["word"]] if size else 1.0
    for value in (depth, width):
        need(value is None or 1.0 <= value <= 120.0, feature.token,
             f"has a size out of range; allowed: {u.shown(1)} to {u.shown(120)}")  # fmt: skip
    at_green, beside = feature.take("at_green"), feature.take("beside_green")
    short, behind, place = feature.take("short_green"), feature.take("behind_green"), feature.take("place")
    told = False
    for one in (beside, short, behind):  # "two bunkers left and one right of the green"
        number = one.numbers.get("a") if one is not None else None
        if one is not None and number == feature.token and number.key.isalpha() and not number.unit:
            count, told = int(one.numbers.pop("a").value), True
    round_both = feature.has("both") and any("g" in one.words for one in feature.said if one.what == "both")
    named = feature.take("named")
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=False)
    across.crosses = across.crosses or cross
    _bare(feature, draft, along, across)
    need(not across.every, feature.token, "all along the hole? Say where each is")
    if along.second is not None:
        need(
            across.near is None and across.far is None and width is None, feature.token, "has its edges twice"
        )
        across.near, width = along.second[0], along.second[1] - along.second[0]
    offsets = sum(v is not None for v in (across.near, across.far, across.offset))
    need(offsets < 2, feature.token, "has two offsets: say one, and how wide")
    if beside is not None:
        across.sides = (beside.words["s"],)
        if "a" in beside.numbers:
            across.near = draft.green_half_yd + u.yd(beside.numbers["a"])
            along.at, beside = 0.5 * (draft.green_front_yd + draft.green_back_yd), None
    need(sum(one is not None for one in (place, short, behind)) < 2, feature.token, "stands in two places")
    if place is not None:
        p = _SENSE.get(place.words.get("p", ""), place.words.get("p", "middle"))
        across.middle = p == "middle"
        if "s" in place.words and place.words["s"] != "middle":
            need(across.sides in ((), (place.words["s"],)), place.token, f"({place.shown}): on two sides")
            across.sides = (place.words["s"],)
        if "lr" in place.words:
            need(not across.sides, place.token, f"({place.shown}): on two sides")
            across.sides = ("left", "right")
        ends = "" if p == "middle" else p
    else:
        ends = "front" if short is not None else "back" if behind is not None else ""
    away = next(
        (u.yd(one.numbers["a"]) for one in (short, behind) if one is not None and "a" in one.numbers), None
    )
    placed = along.at is not None or along.low is not None or along.high is not None
    sure = (
        at_green is not None
        or beside is not None
        or bool(ends)
        or round_both
        or feature.noun.startswith("green")
    )
    if placed:
        need(not sure or feature.noun.startswith("green"), feature.token, "stands by the green and elsewhere")
    names = (named.numbers["a"].key[:50] if named else "", feature, draft)
    if placed or (away is not None) or feature.has("gap"):
        if away is not None:
            need(not placed, feature.token, "stands by the green and elsewhere along the line")
            need(bool(across.sides) or across.middle or across.crosses or away <= FAR_SHORT_YD, feature.token,
                 "on which side? Say left, right, both sides or middle")  # fmt: skip
            across.middle = across.middle or not across.sides
            along.high = draft.green_front_yd - away if short is not None else None
            along.low = draft.green_back_yd + away if behind is not None else None
        _by_the_line(names, along, across, (depth, width, factor), count)
        return
    need(not across.crosses, feature.token, 'where along the line? For example "cross bunker at 210"')
    need(bool(across.sides) or bool(ends) or at_green is None, feature.token,
         'round the green on which sides? Say "bunkers front left, right and behind the green"')  # fmt: skip
    need(bool(across.sides) or bool(ends), feature.token,
         'where? For example "bunker left at 230", "bunker short right of the green"')  # fmt: skip
    need(across.offset is None and across.near is None and across.far is None, feature.token,
         'how far along the line? For example "bunker 14 right at 230"')  # fmt: skip
    for side in across.sides or ("",):
        for k in range(count):
            by_the_green(names, ends, side, (depth, width, factor), (k, count), sure)
    if feature.noun.endswith("bunkers") and not told and count * max(len(across.sides), 1) == 1:
        draft.of("bunker")[-1].assume("one bunker, as no number was said")


def _count(feature: Feature) -> int:
    """How many: a bare number before the noun."""
    said = feature.take("count")
    if said is None:
        return 1
    value = said.numbers["a"].value
    need(1.0 <= value <= MOST_BUNKERS and value == int(value), said.token, f"bunkers? Up to {MOST_BUNKERS}")
    return int(value)


def _bare(feature: Feature, draft: Draft, along: Along, across: Across) -> None:
    """A number on its own: along the line when large or still wanted there, else yards from it."""
    if across.at is not None:
        need(along.at is None and along.low is None, feature.token, "is placed twice along the line")
        along.at = across.at
    for said in feature.take_all("bare"):
        value = draft.units.yd(said.numbers["a"])
        if value > a.MOST_ACROSS_YD and along.at is None and along.low is None:
            along.at = value
        else:
            need(value <= a.MOST_ACROSS_YD, said.token, "of what? Say at, left or right; a comma goes before "
                 'a second place, "right at 210, 230"')  # fmt: skip
            need(across.offset is None and bool(across.sides), said.token, "of what? Say at, left or right")
            across.bare(said.token)
            across.offset = value


def _by_the_line(
    names: tuple[str, Feature, Draft],
    along: Along,
    across: Across,
    sizes: tuple[float | None, float | None, float],
    count: int,
) -> None:
    name, feature, draft = names
    u = draft.units
    depth, width, factor = sizes
    entry = Entry("bunker", {}, feature.text)
    pot = feature.noun.startswith("pot")
    spread = along.low is not None and along.high is not None and count > 1
    if along.low is not None and along.high is not None and not spread:
        need(depth is None, feature.token, "has both ends and a length: leave one out")
        depth = along.high - along.low
    if depth is None:
        depth = a.POT_SIZE if pot else factor * (a.CROSS_BUNKER_DEPTH if across.crosses else a.BUNKER_DEPTH)
        entry.assume(f"{u.shown(depth)} long", "depth")
    if width is None:
        edges = draft.fairway_left_yd + draft.fairway_right_yd
        width = a.POT_SIZE if pot else edges if across.crosses else factor * a.BUNKER_WIDTH
        entry.assume(f"{u.shown(width)} wide", "width")
    if along.low is not None and along.high is not None:
        stations = [0.5 * (along.low + along.high)]
        if spread:
            step = (along.high - along.low - depth) / (count - 1)
            stations = [along.low + depth / 2.0 + k * step for k in range(count)]
            need(step > 0.0, feature.token, f"{count} of them are too long for that")
    else:
        one = along.at
        if one is None:
            one = along.high - depth / 2.0 if along.high is not None else None
        if one is None:
            one = along.low + depth / 2.0 if along.low is not None else None
        need(one is not None, feature.token, "where along the line?")
        assert one is not None
        stations = [one + APART_YD * (k - (count - 1) / 2.0) for k in range(count)]
        if count > 1:
            entry.assume(f"{u.shown(APART_YD)} from one to the next", "at")
    need(all(-100.0 < s < draft.length_yd + 150.0 for s in stations), feature.token, "lies beyond the hole")
    if feature.has("gap"):
        aside = across.offset is not None or across.near is not None
        need(not aside, feature.token, "has an offset and a gap: leave one out")
        side = across.sides[0] if len(across.sides) == 1 else ""
        stations[0], across.offset = take_gap(feature, draft, stations[0], side, entry)
    sides = across.sides or ("",)
    if not across.sides:
        known = (across.near, across.far, across.offset)
        need(known == (None,) * 3, feature.token, "has an offset: to which side? Say left or right")
        need(
            across.crosses or across.middle,
            feature.token,
            "on which side? Say left, right, both sides or middle",
        )
    for side in sides:
        for station in stations:
            offset = _offset(entry, across, side, width, draft)
            keys = {"at": station, "offset": offset, "depth": depth, "width": width}
            if not offset:
                del keys["offset"]
            add_bunker(draft, entry, name, f"{side} bunker" if side else feature.noun, keys)


def _offset(entry: Entry, across: Across, side: str, width: float, draft: Draft) -> float:
    """Offset of the middle of a bunker beside or on the line."""
    if side == "":
        return 0.0
    if across.near is not None:
        away = across.near + width / 2.0
    elif across.far is not None:
        away = across.far - width / 2.0
    elif across.offset is not None:
        away = across.offset
    else:
        away = draft.fairway_edge(side) - a.BUNKER_EATS_YD + width / 2.0
        entry.assume("at the edge of the fairway", "offset")
    return -away if side == "left" else away
