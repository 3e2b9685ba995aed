"""Where something lies along the line and across it, out of what was said."""

from __future__ import annotations

from dataclasses import dataclass

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need
from simulator.hole.words.gap import LOOSE_YD, offset_from_gap, offset_limits, offset_sd_yd
from simulator.hole.words.lex import Token

SAME_YD = 0.5
"""Two ends nearer than this are the same one said twice."""

NEAR_TEE_YD = 60.0
"""A range up to this, without "from", is distances from the line ("trees right 20 to 50")."""

NEAR_GREEN_YD = 100.0
"""A range "short of the green" that begins so low, without "from", counts both ends from there (assumed)."""


RUNS_ALONG = frozenset(("trees", "heavy_rough", "rough", "path"))
"""What lies along a side and may end short of a place; a bunker or a pond lies in one place."""


@dataclass
class Along:
    """Stations said: both ends of a range, one end, a middle, or the far edge to carry."""

    low: float | None = None
    high: float | None = None
    at: float | None = None
    length: float | None = None
    runs: bool = False
    """From where it begins to the green ("180 onwards")."""

    until: bool = False
    """The far end was said as where it ends, not as what is to be carried."""

    second: tuple[float, float] | None = None
    """A second range: distances from the line."""


@dataclass
class Across:
    """What was said across the line: sides, near and far edge, offset, that it crosses."""

    sides: tuple[str, ...] = ()
    near: float | None = None
    far: float | None = None
    width: float | None = None
    offset: float | None = None
    crosses: bool = False
    said_across: bool = False
    middle: bool = False
    every: bool = False
    """All along the hole."""

    runs: bool = False
    """Down a side: from where it begins to the green, unless an end is said."""

    at: float | None = None
    """A number beside "left" or "right" too large for an offset: a station."""

    of_fairway: bool = False
    """The side was said to be the fairway's, and no distance with it."""

    def bare(self, token: Token) -> None:
        """Refuse a distance that says nothing of what it is from, where the side is the fairway's."""
        side = self.sides[0] if self.sides else "left"
        need(not self.of_fairway, token,
             f'from the fairway or from the line? Say "{token.shown} {side} of the fairway", or '
             f'"{side} {token.shown}" for the line')  # fmt: skip


def read_along(feature: Feature, draft: Draft) -> Along:
    """Everything said along the line.

    Raises
    ------
    UsageError
        Ends in the wrong order, said twice, or beyond the hole.
    """
    u, found = draft.units, Along()
    ranges = feature.take_all("range")
    edged = feature.has("edge", "far_edge", "offset", "side_number", "gap")
    if len(ranges) == 1 and "word" not in ranges[0].words and not edged and _is_across(ranges[0], draft):
        found.second = _range(ranges.pop(), draft)
    if ranges:
        main = next((one for one in ranges if "word" in one.words), ranges[0])
        ranges.remove(main)
        found.low, found.high = _range(main, draft)
        to_carry = main.words.get("word") in ("carry", "clear")
        need(not to_carry or found.low > a.MOST_ACROSS_YD, main.token,
             f'({main.shown}): along the line or beside it? Say "edge {main.numbers["a"].shown}, carry '
             f'{main.numbers["b"].shown}"')  # fmt: skip
    if ranges:
        need(len(ranges) == 1, ranges[-1].token, "is a third range")
        found.second = _range(ranges[0], draft)
    carried = feature.has("carry")
    for what, name in (("from", "low"), ("to", "high"), ("carry", "high")):
        said = feature.take(what)
        if said is not None:
            value, known = u.yd(said.numbers["a"]), getattr(found, name)
            need(known is None or abs(known - value) < SAME_YD, said.token, f"({said.shown}): a second end")
            setattr(found, name, value)
            found.until = found.until or what == "to"
            found.runs = found.runs or "run" in said.words
    between = feature.take("range_short")
    if between is not None:
        need(found.low is None and found.high is None, between.token, f"({between.shown}): a second range")
        ends = [u.yd(between.numbers[one]) for one in "ab"]
        found.low, found.high = ends[0], draft.green_front_yd - ends[1]
        if ends[0] <= NEAR_GREEN_YD and not between.shown.startswith("from"):  # "40 to 60 short of the green"
            found.low, found.high = (draft.green_front_yd - end for end in sorted(ends, reverse=True))
    short = feature.take("to_short")
    if short is not None:
        need(found.high is None, short.token, f"({short.shown}): a second end")
        found.high, found.until = draft.green_front_yd - u.yd(short.numbers["a"]), True
    if feature.take("from_tee") is not None:
        found.low = 0.0 if found.low is None else found.low
    if feature.take("to_green") is not None:
        found.high = draft.green_back_yd if found.high is None else found.high
        found.until = True
    _counted_out(feature, draft, found)
    at = feature.take("at", "on")
    if at is not None and carried and found.low is found.at is None:  # "at 230, carry 245": it begins there
        found.low = u.yd(at.numbers["a"])
    elif at is not None:
        need(
            (found.low, found.high, found.at) == (None,) * 3,
            at.token,
            f"({at.shown}): placed along the line already",
        )
        found.at = u.yd(at.numbers["a"])
    _check_order(feature, found)
    return found


def _counted_out(feature: Feature, draft: Draft, found: Along) -> None:
    """Yards "out", back from the middle of the green along the line; where woods end "short of 200"."""
    told = (feature.take("out_at"), feature.take("out_range"), feature.take("out_from"))
    for said in (one for one in told if one is not None):
        need((found.low, found.high, found.at) == (None,) * 3, said.token, f"({said.shown}): placed already")
        draft.assume_once("Distances out count to the middle of the green, along the line of play.")
        _check_out(feature, said, draft)
        ends = sorted(draft.length_yd - draft.units.yd(number) for number in said.numbers.values())
        if said.what == "out_at":
            found.at = ends[0]
        elif said.what == "out_from":
            found.low, found.high, found.until = ends[0], draft.green_back_yd, True
        else:
            found.low, found.high = ends
    short = feature.take("short_of") if feature.kind in RUNS_ALONG else None
    if short is not None:
        need(found.high is None, short.token, f"({short.shown}): a second end")
        found.high, found.until = draft.units.yd(short.numbers["a"]), True


def _check_out(feature: Feature, said: Said, draft: Draft) -> None:
    """Refuse "trees left 30 out": so near, it may be out from the line as well."""
    side = next((one.words.get("s", "left") for one in feature.said if one.what in ("side", "both")), None)
    shown = said.numbers["a"].shown
    near = said.what == "out_at" and draft.units.yd(said.numbers["a"]) <= a.MOST_ACROSS_YD
    need(side is None or not near, said.token,
         f'({said.shown}): from the green or from the line? Say "{shown} from the green", or '
         f'"{side} {shown}" for the line')  # fmt: skip


def _is_across(said: Said, draft: Draft) -> bool:
    """Whether a bare range can only be distances from the line: nothing that near the tee is in play."""
    return all(draft.units.yd(token) <= NEAR_TEE_YD for token in said.numbers.values())


def _range(said: Said, draft: Draft) -> tuple[float, float]:
    low, high = draft.units.yd(said.numbers["a"]), draft.units.yd(said.numbers["b"])
    need(low < high, said.numbers["b"], f"({said.shown}): the first number has to be the smaller")
    return low, high


def _check_order(feature: Feature, found: Along) -> None:
    if found.low is not None and found.high is not None:
        need(found.low < found.high, feature.token, "ends before it begins")


def read_across(feature: Feature, draft: Draft, near_edge: bool) -> Across:
    """Everything said across the line; `near_edge`: "14 right" is the near edge, not the middle.

    Raises
    ------
    UsageError
        Two sides, two offsets.
    """
    u, found = draft.units, Across()
    both, sides = feature.take("both"), feature.take_all("side")
    along = feature.take("along")
    if along is not None:
        found.every = True
        if "s" in along.words:
            found.sides = (along.words["s"],)
    if both is not None:
        found.sides = ("left", "right")
        found.offset = u.yd(both.numbers["a"]) if "a" in both.numbers else None
    for side in sides:
        need(
            both is None and found.sides in ((), (side.words["s"],)),
            side.token,
            f"({side.shown}): on two sides",
        )
        found.sides = (side.words["s"],)
        found.of_fairway = found.of_fairway or "f" in side.words
        found.runs = found.runs or "run" in side.words
    found.crosses = found.said_across = feature.take("across") is not None
    for said in feature.take_all("offset", "side_number"):
        value = u.yd(said.numbers["a"])
        if value > a.MOST_ACROSS_YD:
            need(found.at is None, said.token, f"({said.shown}): a second distance")
            found.at = value
        else:
            need(found.offset is None and found.near is None, said.token, f"({said.shown}): a second offset")
            found.offset = value
        need(found.sides in ((), (said.words["s"],)), said.token, f"({said.shown}): on two sides")
        found.sides = (said.words["s"],)
        if "f" in said.words and found.at is None:  # from the mown edge a bunker is measured to its own
            found.near, found.offset = value + _fairway_edge(said, found, draft), None
    _side_edges(feature, draft, found)
    edge, far = feature.take("edge"), feature.take("far_edge")
    if edge is not None:
        need(found.offset is None and found.near is None, edge.token, f"({edge.shown}): a second offset")
        found.near = _from_line(edge, found, draft)
    if far is not None:
        found.far = _from_line(far, found, draft)
    if near_edge and found.offset is not None:
        found.near, found.offset = found.offset, None
    return found


def _side_edges(feature: Feature, draft: Draft, found: Across) -> None:
    """ "left edge 14, right edge 40": of an area on the right the left edge is the near one; alone it is
    "left, edge 14"."""
    said = feature.take_all("side_edge")
    for one in said:
        value, side = draft.units.yd(one.numbers["a"]), one.words["s"]
        if not found.sides:
            need(
                len(said) == 1,
                one.token,
                f"({one.shown}): on which side of the line? Say left or right first",
            )
            found.sides = (side,)
            found.near = value
        elif found.sides == (side,):
            need(found.far is None, one.token, f"({one.shown}): a second far edge")
            found.far = value
        else:
            need(
                len(found.sides) == 1 and found.near is None, one.token, f"({one.shown}): a second near edge"
            )
            found.near = value


def _from_line(said: Said, found: Across, draft: Draft) -> float:
    """Yards from the line towards the feature's own side; negative when the edge lies over the line."""
    value, side = draft.units.yd(said.numbers["a"]), said.words.get("s")
    if "f" in said.words:
        if side is not None and not found.sides:
            found.sides = (side,)
        need(side is None or side in found.sides, said.token, f"({said.shown}): on two sides")
        return _fairway_edge(said, found, draft) + (-value if "into" in said.words else value)
    if side is None:
        return value
    if not found.sides:
        found.sides = (side,)
    return value if side in found.sides else -value


def _fairway_edge(said: Said, found: Across, draft: Draft) -> float:
    """From the line to the fairway's edge on the feature's side [yd]."""
    need(bool(found.sides), said.token, f"({said.shown}): left or right of it?")
    edges = {draft.fairway_edge(side) for side in found.sides}
    need(len(edges) == 1, said.token,
         f"({said.shown}): the fairway's two edges are not alike: say each side by itself")  # fmt: skip
    return edges.pop()


def take_gap(
    feature: Feature, draft: Draft, range_yd: float | None, side: str, entry: Entry
) -> tuple[float, float]:
    """Station and distance from the line [yd] of a point read by its range and its gap to the line.

    Raises
    ------
    UsageError
        No range, no side, a bend before the reading, or readings that fit no triangle.
    """
    said = feature.take("gap")
    assert said is not None
    need(range_yd is not None, said.token, f"({said.shown}): say the range of the point as well")
    need(bool(side), said.token, f"({said.shown}): left or right?")
    assert range_yd is not None
    gap = draft.units.yd(said.numbers["g"])
    if "r" in said.numbers:
        line = draft.units.yd(said.numbers["r"])
    else:
        line = range_yd
        entry.assume(f"that the gap was read to the line at {draft.units.shown(line)}")
    if draft.turns:
        why = "beyond the bend, where the line cannot be read from the tee"
        need(line <= draft.turns[0][0], said.token, f"({said.shown}): {why}")
    place = offset_from_gap(range_yd, line, gap)
    shown = draft.units.shown
    ranges = f"{shown(range_yd)} and {shown(line)}"
    need(place is not None, said.token, f"({said.shown}): fits no triangle with ranges of {ranges}")
    assert place is not None
    if entry.kind not in ("tree", "mark"):  # areas carry how well their edge is known
        entry.keys["edge_sd"] = round(offset_sd_yd(range_yd, line, gap), 1)
    low, high = offset_limits(range_yd, line, gap)
    if high - low > 2.0 * LOOSE_YD:
        limits = f"{shown(low).split()[0]} to {shown(high)} {side}"
        draft.warnings.append(
            f"The gap of {shown(gap)} hardly fixes {feature.word[:30]}: {limits} if each "
            f"reading is a yard out. Read point and line at about the same range, not {ranges}."
        )
    return place
