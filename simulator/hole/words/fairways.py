"""The fairway: how wide, from where to where; assumed where nobody says."""

from __future__ import annotations

from copy import copy
from itertools import pairwise

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.placing import NEAR_TEE_YD
from simulator.hole.words.stretches import take_stretches

LEAST_WIDTH_YD, MOST_WIDTH_YD = 3.0, 150.0
"""Widths of fairways that are read [yd]: limits on slips."""

LEAST_BESIDE_YD = 3.0
"""What stands beside a fairway is no nearer to the line than this, wherever the edges lie [yd] (assumed)."""

SHORTEST_YD = 5.0
"""A fairway from end to end is longer than this [yd]: a limit on slips."""

FROM_TEE_YD = 10.0
"""Where a fairway begins that is said to run from the tee [yd on] (assumed): in front of its ground."""

ONTO_GREEN_YD = 2.0
"""How far an approach nobody spoke of runs in under the green, so that no rough lies between [yd]."""

SPLIT = 'a split fairway say each half: "left fairway 20 wide, edge 8; right fairway 30 wide, edge 8"'
"""How two fairways side by side are said; the edges are yards from the line."""


OF_A_PLACE = frozenset(("wide", "wide_at", "narrows", "narrowed", "from", "thereafter"))
"""What is said of how wide a fairway is somewhere, and nothing of where it ends."""

ENDS = ("range", "range_short", "to", "to_short")
"""What says where a fairway ends: one spoken of behind such a one is another."""


def read_fairways(features: list[Feature], draft: Draft) -> None:
    """All fairways; one that nobody spoke of on a par 4 or longer, the approach of a par 3.

    Raises
    ------
    UsageError
        A width out of range, an end before the beginning.
    """
    mine = [f for f in features if f.kind == "fairway"]
    shaped = _joined([f for f in mine if any(one.what not in ("up", "down") for one in f.said)])
    shaped = [part for feature in shaped for part in _broken(feature, draft)]
    features += [part for part in shaped if not any(part is one for one in features)]
    inner = _inner_edge(shaped, draft)
    for feature in shaped:
        _fairway(feature, draft, first=feature is shaped[0], inner_yd=inner)
    _between(draft)
    if not shaped:
        entry = _approach(draft) if draft.par == 3 else _unsaid(draft)
        if draft.par > 3 or not any(f.has("round") for f in features):  # water lies round the green
            draft.entries.append(entry)


def _approach(draft: Draft) -> Entry:
    """The mown grass before the green of a par 3 of which nobody spoke."""
    front, half = draft.green_front_yd, draft.green_half_yd
    start = front - a.APPROACH_YD
    keys = {"name": "approach", "from": start, "to": front + ONTO_GREEN_YD, "left": -half, "right": half}
    entry = Entry("fairway", keys)
    entry.assume(_approach_words(a.APPROACH_YD, draft), "from", "to", "left", "right")
    _note_reach(draft, half, start, front)
    return entry


def _unsaid(draft: Draft) -> Entry:
    """A fairway of which nobody spoke."""
    start, front, half = _usual_start(draft), draft.green_front_yd, a.FAIRWAY_WIDTH / 2.0
    keys = {"name": "fairway", "from": start, "to": front, "left": -half, "right": half}
    entry = Entry("fairway", {**keys, "from_assumed": True})
    entry.assume(_reach_words(draft, start, front), "from", "to")
    entry.assume(f"{draft.units.shown(a.FAIRWAY_WIDTH)} wide", "left", "right")
    _note_reach(draft, half, start, front)
    return entry


def _note_reach(draft: Draft, half_yd: float, start_yd: float, end_yd: float) -> None:
    """Note where mown grass lies, for what stands beside it."""
    draft.fairway_left_yd = draft.fairway_right_yd = half_yd
    draft.fairway_from_yd, draft.fairway_to_yd = start_yd, end_yd


def _inner_edge(shaped: list[Feature], draft: Draft) -> float | None:
    """From the line to each half of a split fairway [yd], where both halves are told and none has an edge."""
    halves = [f for f in shaped if f.has("side") and not f.has("falls", "edge", "far_edge")]
    sides = {one.words["s"] for f in halves for one in f.said if one.what == "side"}
    apart = [said for f in shaped for said in f.take_all("apart")]
    if apart:
        need(len(apart) == 1 and len(sides) == 2, apart[-1].token, "apart? Of the halves of a split fairway")
    if len(halves) != 2 or sides != {"left", "right"}:
        return None
    return 0.5 * (draft.units.yd(apart[0].numbers["a"]) if apart else a.SPLIT_GAP)


def _between(draft: Draft) -> None:
    """Note the ground between a left and a right fairway."""
    every = [(one.keys.get("left"), one.keys.get("right")) for one in draft.of("fairway")]
    edges = [(a, b) for a, b in every if isinstance(a, float | int) and isinstance(b, float | int)]
    left = [right for _, right in edges if right <= 0.0]
    right = [left for left, _ in edges if left >= 0.0]
    if len(every) == len(edges) == 2 and len(left) == len(right) == 1 and left[0] < right[0]:
        draft.between = (left[0], right[0])


def _approach_words(reach_yd: float, draft: Draft) -> str:
    return f"{draft.units.shown(reach_yd)} of mown grass before the green"


def clear_approach(draft: Draft) -> None:
    """An approach nobody spoke of begins behind water that lies over its beginning."""
    fairways = draft.of("fairway")
    approach = next((one for one in fairways if one.keys["name"] == "approach" and one.assumed), None)
    if approach is None:
        return
    front, start = draft.green_front_yd, approach.keys["from"]
    for area in (one.keys for one in draft.of("penalty_area")):
        crosses = "left" in area and not isinstance(area["left"], list) and area["left"] < 0.0 < area["right"]
        if crosses and area["from"] <= approach.keys["from"]:
            start = max(start, area["to"])
    if start >= front:
        draft.entries.remove(approach)
    elif start > approach.keys["from"]:
        approach.keys["from"] = start
        approach.reasons = [_approach_words(front - start, draft)]


def _joined(shaped: list[Feature]) -> list[Feature]:
    """Fairways, with what is said of one a second time: "fairway 30 wide; fairway 28 wide at 250"."""
    out: list[Feature] = []
    for feature in shaped:
        told = {one.what for one in feature.said}
        ends = told <= {*ENDS, "from"} and not (out and out[-1].has("from"))
        if out and (ends or told <= OF_A_PLACE) and not out[-1].has(*ENDS, "side"):
            out[-1].said += feature.take_all(*told)
            out[-1].text += f"; {feature.text}"
        else:
            out.append(feature)
    return out


def _broken(feature: Feature, draft: Draft) -> list[Feature]:
    """The parts of a fairway with a gap: "to 250, starts again at 290" or "150 to 270, 300 to 430"."""
    u = draft.units
    begins = [one for one in feature.said if one.what == "from"]
    ends = [one for one in feature.said if one.what == "to"]
    ranges = [one for one in feature.said if one.what == "range" and u.yd(one.numbers["b"]) > NEAR_TEE_YD]
    parts: list[Said] = []
    if len(begins) == len(ends) == 1 and not ranges:
        gap = u.yd(ends[0].numbers["a"]), u.yd(begins[0].numbers["a"])
        parts = [ends[0], begins[0]] if gap[0] < gap[1] else []
        breaks = [gap[0]]
    elif len(ranges) > 1 and not begins and not ends:
        ordered = [u.yd(one.numbers[key]) for one in ranges for key in ("a", "b")]
        parts = ranges if all(low < high for low, high in pairwise(ordered)) else []
        breaks = ordered[1:-1:2]
    widths = sum(one.what in ("wide", "narrowed", "bare") and "at" not in one.numbers for one in feature.said)
    if not parts or widths > 1:  # stretches of several widths are one fairway
        return [feature]
    rest = [one for one in feature.said if one not in parts]
    found = []
    for k, part in enumerate(parts):
        one = copy(feature)
        one.said = [part, *(said for said in rest if _of_part(said, draft, breaks) in (None, k))]
        found.append(one)
    feature.said = []
    return found


def _of_part(said: Said, draft: Draft, breaks: list[float]) -> int | None:
    """Which part of a broken fairway is so wide there; None for what is said of all of it."""
    at = said.numbers.get("at")
    return None if at is None else sum(draft.units.yd(at) > end for end in breaks)


def _usual_start(draft: Draft) -> float:
    return round(min(a.FAIRWAY_FROM, a.FAIRWAY_FROM_SHARE * draft.length_yd))


def _reach_words(draft: Draft, start: float, end: float) -> str:
    return f"from {draft.units.shown(start)} to {draft.units.shown(end)}"


def _fairway(feature: Feature, draft: Draft, first: bool, inner_yd: float | None) -> None:
    """One fairway, or one half of a split one; of the first the draft notes where it lies."""
    u = draft.units
    entry = Entry("fairway", {}, feature.text)
    beside = _beside(feature, draft, entry, inner_yd)
    name = "fairway" if beside is None else f"{'left' if beside[1] <= 0.0 else 'right'} fairway"
    entry.keys["name"] = draft.name_for(name)
    stretches = take_stretches(feature, draft, entry)
    start, end = _reach(feature, draft, entry)
    shown = _reach_words(draft, start, end)
    need(start + SHORTEST_YD < end, feature.token, f"runs {shown}: too short")
    widths = feature.take_all("wide", "wide_at", "narrows")
    widths += feature.take_all("bare") if not widths else []
    widths += stretches
    left, right, by_places = _across(feature, draft, entry, widths, beside, stepped=bool(stretches))
    if first:
        draft.fairway_left_yd = max(-left, LEAST_BESIDE_YD)
        draft.fairway_right_yd = max(right, LEAST_BESIDE_YD)
        draft.fairway_from_yd, draft.fairway_to_yd = start, end
    elif beside is not None:  # what stands beside a split fairway stands beside both halves
        draft.fairway_left_yd = max(draft.fairway_left_yd, -left)
        draft.fairway_right_yd = max(draft.fairway_right_yd, right)
    pairs = [(u.yd(s.numbers["at"]), _width(s, draft), s) for s in widths if "at" in s.numbers]
    pairs.sort(key=lambda pair: pair[0])
    if pairs:
        _narrowing(entry, start, end, (left, right), pairs, last=pairs[-1][1] if by_places else None)
    else:
        entry.keys |= {"from": start, "to": end, "left": left, "right": right}
    if "from" in entry.assumed:
        entry.keys["from_assumed"] = True
    draft.entries.append(entry)


def _across(
    feature: Feature,
    draft: Draft,
    entry: Entry,
    widths: list[Said],
    beside: tuple[float, float] | None,
    *,
    stepped: bool,
) -> tuple[float, float, bool]:
    """Offsets of both edges, and whether only widths at places were said, of which the nearest is theirs.

    `beside` are those of a fairway to one side of the line; `stepped`: the widths say it from end to end.
    """
    u = draft.units
    fixed = [said for said in widths if "at" not in said.numbers]
    need(len(fixed) < 2, feature.token, f"has two widths; say where each is (28 wide at 230); of {SPLIT}")
    edges = {"left": None, "right": None} | _edges(feature, draft)
    if beside is not None:
        edges |= {"left": beside[0], "right": beside[1]}
    width = _width(fixed[0], draft) if fixed else None
    if width is None and None in edges.values():
        width = a.FAIRWAY_WIDTH
        told = sorted((s for s in widths if "at" in s.numbers), key=lambda s: u.yd(s.numbers["at"]))
        if told and told[0].what == "narrows":  # it is another width that it narrows from
            _check_narrows(told[0], draft)
            entry.assume(f"{u.shown(width)} wide elsewhere", "left", "right")
        elif told:
            width = None
        else:
            entry.assume(f"{u.shown(width)} wide", "left", "right")
    left, right = edges["left"], edges["right"]
    by_places = width is None and None in edges.values()
    if by_places:
        width = _width(min(widths, key=lambda said: u.yd(said.numbers["at"])), draft)
        if not stepped:
            entry.assume("as wide before and beyond as at the nearest place told", "left", "right")
    if width is not None:
        need(left is None or right is None, feature.token, "has two edges and a width: leave one out")
        left = left if left is not None else (-width / 2.0 if right is None else right - width)
        right = right if right is not None else left + width
    assert left is not None and right is not None
    need(left < right, feature.token, "has its left edge right of its right edge")
    return left, right, by_places


def _beside(
    feature: Feature, draft: Draft, entry: Entry, inner_yd: float | None
) -> tuple[float, float] | None:
    """Both edges of a fairway to one side of the line, as offsets; None: the line runs down it.

    `inner_yd` is where both halves of a split one begin when nobody says an edge.

    "left fairway 20 wide, edge 8", "right fairway, 8 to 38": one half of a split fairway.
    """
    side = None if feature.has("falls") else feature.take("side")
    if side is None:
        return None
    u, sign = draft.units, -1.0 if side.words["s"] == "left" else 1.0
    ranges = [one for one in feature.said if one.what == "range" and "word" not in one.words]
    across = [one for one in ranges if u.yd(one.numbers["b"]) <= NEAR_TEE_YD]
    near, far = feature.take("edge"), feature.take("far_edge")
    if len(across) == 1 and near is None and far is None:
        feature.said.remove(across[0])
        low, high = u.yd(across[0].numbers["a"]), u.yd(across[0].numbers["b"])
    else:
        wide = feature.take("wide") if far is None else None
        if inner_yd is not None and near is None and far is None and wide is not None:
            width = _width(wide, draft)
            entry.assume(f"its near edge {draft.units.shown(inner_yd)} from the line", "left", "right")
            return (inner_yd, inner_yd + width) if sign > 0.0 else (-inner_yd - width, -inner_yd)
        need(near is not None and (wide is not None or far is not None), side.token,
             f"({side.shown}): how wide, and how far from the line? Of {SPLIT}")  # fmt: skip
        assert near is not None
        low = u.yd(near.numbers["a"])
        high = u.yd(far.numbers["a"]) if far is not None else low + _width(wide, draft) if wide else low
    need(LEAST_WIDTH_YD <= high - low <= MOST_WIDTH_YD, side.token,
         f"({side.shown}): allowed: {_widths_allowed(draft)} of width")  # fmt: skip
    return (sign * low, sign * high) if sign > 0.0 else (-high, -low)


def _check_narrows(said: Said, draft: Draft) -> None:
    """Refuse one that narrows to the usual width or more, when nobody says what from."""
    narrows = not said.shown.startswith("widen")
    need(not narrows or _width(said, draft) < a.FAIRWAY_WIDTH, said.token,
         f'({said.shown}): from how wide? For example "fairway 50 wide, {said.shown}"')  # fmt: skip


def _narrowing(
    entry: Entry,
    start: float,
    end: float,
    edges: tuple[float, float],
    pairs: list[tuple[float, float, Said]],
    last: float | None = None,
) -> None:
    """Edges through the widths said at some stations; between them they run straight.

    Before and beyond them it is as wide as `edges` are apart; `last` is its width at its end, if another.
    """
    middle = 0.5 * (edges[0] + edges[1])
    usual = edges[1] - edges[0]
    for (at, _, said), (after, _, _) in zip(pairs, [*pairs[1:], (end + 1.0, 0.0, pairs[0][2])], strict=True):
        need(start <= at <= end and at < after, said.token, f"({said.shown}): not on the fairway, or twice")
    stations = [at for at, _, _ in pairs]
    widths = [width for _, width, _ in pairs]
    if stations[0] > start:
        stations, widths = [start, *stations], [usual, *widths]
    if stations[-1] < end:
        stations, widths = [*stations, end], [*widths, last or usual]
    entry.keys |= {
        "stations": stations,
        "left": [middle - w / 2.0 for w in widths],
        "right": [middle + w / 2.0 for w in widths],
    }


def _reach(feature: Feature, draft: Draft, entry: Entry) -> tuple[float, float]:
    """Where it begins and ends; the usual ends are assumed."""
    u = draft.units
    between, begin, end = feature.take("range"), feature.take("from"), feature.take("to")
    both = feature.take("range_short")
    tee, green, short = feature.take("from_tee"), feature.take("to_green"), feature.take("to_short")
    along = feature.take("along")
    if between is not None and feature.noun.startswith(("landing", "drive", "driving")):
        shown = f"{u.shown(u.yd(between.numbers['a']))} to {u.shown(u.yd(between.numbers['b']))}"
        entry.assume(f"as wide all along as from {shown}", "left", "right")
        between = None  # where drives come down, not where the mown grass ends
    whole = between or both
    need(whole is None or not (begin or end or tee or green or short or along or (between and both)),
         feature.token, "says its ends a second time")  # fmt: skip
    need(end is None or short is None, feature.token, "has two ends")
    if both is not None:
        return u.yd(both.numbers["a"]), draft.green_front_yd - u.yd(both.numbers["b"])
    if between is not None:
        return u.yd(between.numbers["a"]), u.yd(between.numbers["b"])
    low, high = _usual_start(draft), draft.green_front_yd
    if begin is not None:
        low = u.yd(begin.numbers["a"])
    elif tee is not None or along is not None:
        low = FROM_TEE_YD
    else:
        entry.assume(f"from {u.shown(low)}", "from")
    if end is not None:
        high = u.yd(end.numbers["a"])
    elif short is not None:
        high = draft.green_front_yd - u.yd(short.numbers["a"])
    elif green is None and along is None:
        entry.assume(f"to the front of the green at {u.shown(high)}", "to")
    return low, high


def _edges(feature: Feature, draft: Draft) -> dict[str, float | None]:
    """Offsets of edges said one by one: "14 left, 16 right", "left edge 12"."""
    found: dict[str, float | None] = {}
    for said in feature.take_all("offset", "side_number", "side_edge", "edge"):
        side = said.words.get("s", "")
        need(
            bool(side) and side not in found, said.token, f"({said.shown}): say each edge once, left or right"
        )
        value = draft.units.yd(said.numbers["a"])
        found[side] = -value if side == "left" else value
    return found


def _width(said: Said, draft: Draft) -> float:
    """A width that was said [yd]."""
    width = draft.units.yd(said.numbers["a"])
    allowed = f"({said.shown}): allowed: {_widths_allowed(draft)}"
    need(LEAST_WIDTH_YD <= width <= MOST_WIDTH_YD, said.token, allowed)
    return width


def _widths_allowed(draft: Draft) -> str:
    return f"{draft.units.shown(LEAST_WIDTH_YD)} to {draft.units.shown(MOST_WIDTH_YD)}"
