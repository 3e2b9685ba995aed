"""Bunkers: beside the fairway, across it, round the green, one or several."""

from __future__ import annotations

from dataclasses import dataclass, replace

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.greenside import Bunkers, add_bunker, by_the_green
from simulator.hole.words.lists import MOST_BUNKERS
from simulator.hole.words.placing import Across, Along, read_across, read_along, take_gap

_WHICH_SIDE = "on which side? Say left, right, both sides or middle"
_SENSE = {"short": "front", "long": "back"}

FAR_SHORT_YD = 60.0
"""A bunker farther short of the green than this without a side is not taken to lie on the line [yd]."""

MOST_YD = 120.0
"""Longest and widest bunker taken [yd]; a limit on slips."""

ROW_GAP_YD = 3.0
"""Grass between bunkers that stand side by side across the fairway [yd] (assumed)."""

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
    bunkers, cross = _how_many_and_large(feature, draft), feature.noun.startswith("cross")
    feature.take_all("cuts_in")  # one at the edge of the fairway does
    one_only = bool(feature.take_all("one_only"))
    green, told = _said_by_the_green(feature), False
    for one in (green.beside, green.short, green.behind):  # "two bunkers left and one right of the green"
        number = one.numbers.get("a") if one is not None else None
        if one is not None and number == feature.token and number.key.isalpha() and not number.unit:
            bunkers.count, told = int(one.numbers.pop("a").value), True
    named = feature.take("named")
    bunkers.name = named.numbers["a"].key[:50] if named else ""
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=False)
    across.crosses = across.crosses or cross
    _bare(feature, draft, along, across)
    _check_across(bunkers, along, across)
    if green.beside is not None:
        across.sides = (green.beside.words["s"],)
        if "a" in green.beside.numbers:  # so far off the edge of the green
            across.near = draft.green_half_yd + draft.units.yd(green.beside.numbers["a"])
            along.at, green.beside = 0.5 * (draft.green_front_yd + draft.green_back_yd), None
    beyond_or_short = green.short is not None or green.behind is not None
    if beyond_or_short and green.place is not None and set(green.place.words.values()) <= {"middle"}:
        across.middle, green.place = True, None  # "in the middle, 30 short of the green"
    twice = sum(one is not None for one in (green.place, green.short, green.behind)) < 2
    need(twice, feature.token, "stands in two places")
    ends, away = _ends(green, across), _away_yd(green, draft)
    placed = along.at is not None or along.low is not None or along.high is not None
    sure = green.told or bool(ends) or feature.noun.startswith("green")
    if placed:
        need(not sure or feature.noun.startswith("green"), feature.token, "stands by the green and elsewhere")
    if placed or away is not None or feature.has("gap"):
        if away is not None:
            need(not placed, feature.token, "stands by the green and elsewhere along the line")
            _short_or_behind(bunkers, along, across, away, short=green.short is not None)
        _by_the_line(bunkers, along, across, one_only)
        return
    _check_round_the_green(feature, across, ends, at_green=green.at is not None)
    need(sure or not feature.noun.startswith("fairway"), feature.token,
         'how far along the line? For example "fairway bunker left at 230"')  # fmt: skip
    for side in across.sides or ("",):
        for which in range(bunkers.count):
            by_the_green(bunkers, ends, side, which, sure)
    if feature.noun.endswith("bunkers") and not told and bunkers.count * max(len(across.sides), 1) == 1:
        draft.of("bunker")[-1].assume("one bunker, as no number was said")


def _how_many_and_large(feature: Feature, draft: Draft) -> Bunkers:
    """How many there are and their size; the name is not known yet."""
    u, count = draft.units, _count(feature)
    size, long, wide, deep, by = (feature.take(w) for w in ("size", "long", "wide", "deep", "by"))
    need(sum(one is not None for one in (long, deep, by)) < 2 and not (by and wide), feature.token,
         "has its size twice")  # fmt: skip
    lengthwise = long or deep or by
    depth = u.yd(lengthwise.numbers["a"]) if lengthwise else None
    width = u.yd(by.numbers["b"]) if by else u.yd(wide.numbers["a"]) if wide else None
    factor = {"small": a.SMALL, "large": a.LARGE}[size.words["word"]] if size else 1.0
    for value in (depth, width):
        need(value is None or 1.0 <= value <= MOST_YD, feature.token,
             f"has a size out of range; allowed: {u.shown(1)} to {u.shown(MOST_YD)}")  # fmt: skip
    apart = feature.take("apart")
    need(apart is None or count > 1, feature.token if apart is None else apart.token,
         'apart? Of several: "three bunkers left at 230, 20 apart"')  # fmt: skip
    spacing = None if apart is None else u.yd(apart.numbers["a"])
    need(spacing is None or spacing > 0.0, feature.token, "stand in one place")
    return Bunkers(feature, draft, "", depth, width, factor, count, spacing)


@dataclass
class _ByTheGreen:
    """What was said of a place by the green."""

    at: Said | None
    """ "By the green", nothing more."""

    beside: Said | None
    short: Said | None
    behind: Said | None
    place: Said | None
    """ "Front left": an end of it, a side, or both."""

    both: bool
    """On both sides of it."""

    @property
    def told(self) -> bool:
        """Whether a side of it was said, or that it lies there."""
        return self.at is not None or self.beside is not None or self.both


def _said_by_the_green(feature: Feature) -> _ByTheGreen:
    at, beside, short, behind, place = (
        feature.take(w) for w in ("at_green", "beside_green", "short_green", "behind_green", "place")
    )
    both = feature.has("both") and any("g" in one.words for one in feature.said if one.what == "both")
    return _ByTheGreen(at, beside, short, behind, place, both)


def _check_across(bunkers: Bunkers, along: Along, across: Across) -> None:
    """A second range is its edges; of these and an offset only one is said."""
    need(not across.every, bunkers.token, "all along the hole? Say where each is")
    if along.second is not None:
        free = across.near is None and across.far is None and bunkers.width is None
        need(free, bunkers.token, "has its edges twice")
        across.near, bunkers.width = along.second[0], along.second[1] - along.second[0]
    offsets = sum(v is not None for v in (across.near, across.far, across.offset))
    need(offsets < 2, bunkers.token, "has two offsets: say one, and how wide")


def _ends(green: _ByTheGreen, across: Across) -> str:
    """Which end of the green it lies at, "front", "back" or ""; sides said with it are put to `across`."""
    place = green.place
    if place is None:
        return "front" if green.short is not None else "back" if green.behind is not None else ""
    end = _SENSE.get(place.words.get("p", ""), place.words.get("p", "middle"))
    across.middle = end == "middle"
    if "s" in place.words and place.words["s"] != "middle":
        need(across.sides in ((), (place.words["s"],)), place.token, f"({place.shown}): on two sides")
        across.sides = (place.words["s"],)
    if "lr" in place.words:
        need(not across.sides, place.token, f"({place.shown}): on two sides")
        across.sides = ("left", "right")
    return "" if end == "middle" else end


def _away_yd(green: _ByTheGreen, draft: Draft) -> float | None:
    """How far short of the green or behind it [yd]; None when nobody said how far."""
    said = (one for one in (green.short, green.behind) if one is not None and "a" in one.numbers)
    return next((draft.units.yd(one.numbers["a"]) for one in said), None)


def _short_or_behind(bunkers: Bunkers, along: Along, across: Across, away: float, *, short: bool) -> None:
    """Its end along the line, so far short of the green or behind it."""
    need(bool(across.sides) or across.middle or across.crosses or away <= FAR_SHORT_YD, bunkers.token,
         _WHICH_SIDE)  # fmt: skip
    across.middle = across.middle or not across.sides
    if short:
        along.high = bunkers.draft.green_front_yd - away
    else:
        along.low = bunkers.draft.green_back_yd + away


def _check_round_the_green(feature: Feature, across: Across, ends: str, *, at_green: bool) -> None:
    """Refuse a bunker that is not said to be anywhere, and yards that do not belong to one by the green."""
    need(not across.crosses, feature.token, 'where along the line? For example "cross bunker at 210"')
    need(bool(across.sides) or bool(ends) or not at_green, feature.token,
         'round the green on which sides? Say "bunkers front left, right and behind the green"')  # fmt: skip
    need(bool(across.sides) or bool(ends), feature.token,
         'where? For example "bunker left at 230", "bunker short right of the green"')  # fmt: skip
    need(across.offset is None and across.near is None and across.far is None, feature.token,
         'how far along the line? For example "bunker 14 right at 230"')  # fmt: skip


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
        need(along.at is along.low is along.high is None, feature.token, "is placed twice along the line")
        along.at = across.at
    for said in feature.take_all("bare"):
        value = draft.units.yd(said.numbers["a"])
        if value > a.MOST_ACROSS_YD and along.at is None and along.low is None:
            if along.high is None:
                along.at = value
            else:  # "260, carry 270"
                need(value < along.high, said.token, "ends before it begins")
                along.low = value
        else:
            need(value <= a.MOST_ACROSS_YD, said.token, "of what? Say at, left or right; a comma goes before "
                 'a second place, "right at 210, 230"')  # fmt: skip
            need(across.offset is None and bool(across.sides), said.token, "of what? Say at, left or right")
            across.bare(said.token)
            across.offset = value


def _by_the_line(bunkers: Bunkers, along: Along, across: Across, one_only: bool) -> None:
    feature, draft = bunkers.feature, bunkers.draft
    if across.crosses and bunkers.count > 1 and (along.low is None or along.high is None):
        _row_across(bunkers, along)
        return
    entry = Entry("bunker", {}, feature.text)
    if one_only and not across.crosses:
        entry.assume(f"one bunker{' on each side' if len(across.sides) > 1 else ''}, as no number was said")
    ranged = along.low is not None and along.high is not None
    if along.low is not None and along.high is not None and bunkers.count <= 1:
        need(bunkers.depth is None, feature.token, "has both ends and a length: leave one out")
        bunkers.depth = along.high - along.low
    edges = draft.fairway_left_yd + draft.fairway_right_yd
    depth, width = bunkers.size(
        entry,
        bunkers.factor * (a.CROSS_BUNKER_DEPTH if across.crosses else a.BUNKER_DEPTH),
        edges if across.crosses else bunkers.factor * a.BUNKER_WIDTH,
    )
    stations = _in_range(bunkers, along, depth) if ranged else _about(bunkers, along, depth, entry)
    need(all(-100.0 < s < draft.length_yd + 150.0 for s in stations), feature.token, "lies beyond the hole")
    if feature.has("gap"):
        aside = across.offset is not None or across.near is not None
        need(not aside, feature.token, "has an offset and a gap: leave one out")
        side = across.sides[0] if len(across.sides) == 1 else ""
        stations[0], across.offset = take_gap(feature, draft, stations[0], side, entry)
    if not across.sides:
        known = (across.near, across.far, across.offset)
        need(known == (None,) * 3, feature.token, "has an offset: to which side? Say left or right")
        need(across.crosses or across.middle, feature.token, _WHICH_SIDE)
    for side in across.sides or ("",):
        for station in stations:
            offset = _offset(entry, across, side, width, draft, station)
            keys = {"at": station, "offset": offset, "depth": depth, "width": width}
            if not offset:
                del keys["offset"]
            add_bunker(bunkers, entry, f"{side} bunker" if side else feature.noun.removesuffix("s"), keys)


def _row_across(bunkers: Bunkers, along: Along) -> None:
    """Several across the fairway at one place: side by side, from edge to edge of it."""
    feature, draft = bunkers.feature, bunkers.draft
    left, edges = -draft.fairway_left_yd, draft.fairway_left_yd + draft.fairway_right_yd
    each = (edges - (bunkers.count - 1) * ROW_GAP_YD) / bunkers.count
    wide = draft.units.shown(edges)
    need(each >= 1.0, bunkers.token, f"{bunkers.count} of them are too many for a fairway {wide} wide")
    entry = Entry("bunker", {}, feature.text)
    depth, width = bunkers.size(entry, bunkers.factor * a.CROSS_BUNKER_DEPTH, each)
    single = replace(bunkers, count=1)
    (station,) = _about(single, along, depth, entry)
    need(-100.0 < station < draft.length_yd + 150.0, feature.token, "lies beyond the hole")
    entry.assume("side by side across the fairway", "offset")
    for k in range(bunkers.count):
        offset = left + (k + 0.5) * edges / bunkers.count
        keys = {"at": station, "offset": offset, "depth": depth, "width": width}
        add_bunker(single, entry, "cross bunker", keys)


def _in_range(bunkers: Bunkers, along: Along, depth: float) -> list[float]:
    """Middles of bunkers from one station to another: one fills it, several stand evenly in it [yd]."""
    assert along.low is not None and along.high is not None
    if bunkers.count <= 1:
        return [0.5 * (along.low + along.high)]
    step = (along.high - along.low - depth) / (bunkers.count - 1)
    need(step > 0.0, bunkers.token, f"{bunkers.count} of them are too long for that")
    return [along.low + depth / 2.0 + k * step for k in range(bunkers.count)]


def _about(bunkers: Bunkers, along: Along, depth: float, entry: Entry) -> list[float]:
    """Middles of bunkers of which one station is said: a middle, the near or the far end [yd]."""
    middle = along.at
    if middle is None and along.high is not None:
        middle = along.high - depth / 2.0
    if middle is None and along.low is not None:
        middle = along.low + depth / 2.0
    need(middle is not None, bunkers.token, "where along the line?")
    assert middle is not None
    apart = bunkers.apart_yd
    if bunkers.count > 1 and apart is None:
        entry.assume(f"{bunkers.draft.units.shown(APART_YD)} from one to the next", "at")
    apart = APART_YD if apart is None else apart
    return [middle + apart * (k - (bunkers.count - 1) / 2.0) for k in range(bunkers.count)]


def _offset(entry: Entry, across: Across, side: str, width: float, draft: Draft, at_yd: float) -> float:
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
        away = draft.fairway_edge(side, at_yd) - a.BUNKER_EATS_YD + width / 2.0
        entry.assume("at the edge of the fairway", "offset")
    return -away if side == "left" else away
