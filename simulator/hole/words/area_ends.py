"""Where an area begins, ends and has its edges; what nobody said is assumed."""

from __future__ import annotations

from simulator.hole.words import assumed as a
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, Units, need
from simulator.hole.words.lex import listed
from simulator.hole.words.placing import Across, Along

STREAM_WIDTH = {
    "river": a.RIVER_WIDTH, "canal": a.RIVER_WIDTH, "ditch": a.DITCH_WIDTH, "drain": a.DITCH_WIDTH,
    **dict.fromkeys(
        ("ravine", "gully", "gulley", "chasm", "gorge", "canyon", "gulch", "barranca"), a.RAVINE_WIDTH
    ),
}  # fmt: skip

WIDTH_OF = STREAM_WIDTH | a.ROW_ACROSS | dict.fromkeys(("sea", "ocean"), a.SEA_ACROSS)
"""How far across the line by noun, where it differs from its kind."""

NEEDS_A_RANGE = frozenset(listed("pond lake water hazard reservoir pool lagoon loch marsh swamp"))
"""Water that does not run the length of a hole unless somebody says so."""


SLACK_YD, NEAR_GREEN_YD = 4.0, 60.0
"""An area "in front of the green, 100 to 140" may reach so far into it, or end so far off [yd]; assumed."""


def _usual_length(feature: Feature, *, crosses: bool = False) -> float:
    """Along the line [yd]; a hedge that crosses it is no thicker than one beside it."""
    widths = WIDTH_OF if crosses else STREAM_WIDTH
    return widths.get(feature.noun, a.ALONG[feature.kind])


def along_the_line(feature: Feature, draft: Draft, entry: Entry, along: Along, across: Across) -> None:
    """Both stations; what nobody said is assumed."""
    u, token = draft.units, feature.token
    size = along.length
    crosses = across.crosses or across.middle
    whole_hole = False
    whole = feature.kind in ("trees", "heavy_rough", "rough") or feature.noun not in NEEDS_A_RANGE
    whole = whole or across.every or across.runs or along.runs
    corner = feature.take("corner")
    if corner is not None and along.at is None:
        _round_the_corner(u.yd(corner.numbers["a"]), draft, entry, along)
    if along.at is not None and along.low is None and along.high is not None:  # "right 200 to the green"
        along.low, along.at = along.at, None
    carried = along.high is not None and along.low is None and along.at is None
    if not across.sides and not crosses:
        need(not (carried and feature.kind == "rough"), token,
             'to be carried? Say "fairway from 150", or "heavy rough" for what is longer; what is not drawn '
             "is rough")  # fmt: skip
        need(
            feature.kind in ("stream", "water", "path") or (carried and feature.kind == "heavy_rough"),
            token,
            "on which side? Say left, right, both sides or across",
        )
        across.crosses = crosses = True
        if feature.kind == "water":
            entry.assume("that it crosses the line")
    if along.at is not None and (size is not None or (along.low is None and along.high is None)):
        need(crosses or size is not None or feature.kind != "stream", token,
             'beside the line at one place? Say from where to where, "190 to 230", or "across"')  # fmt: skip
        length = size if size is not None else _usual_length(feature, crosses=crosses)
        if crosses:
            along.low, along.high = along.at - length / 2.0, along.at + length / 2.0
        else:
            along.low, along.high = along.at, along.at + length
        if size is None:
            entry.assume(f"{u.shown(length)} along the line", "from", "to")
    elif along.low is not None and along.high is None:
        whole = whole and not crosses
        length = _usual_length(feature, crosses=crosses)
        along.high = (
            draft.green_back_yd if whole and along.low < draft.green_back_yd - length else along.low + length
        )
        entry.assume(f"an end at {u.shown(along.high)}", "to")
    elif along.high is not None and along.low is None:
        along.low = along.high - _usual_length(feature, crosses=crosses)
        if along.until and not crosses and whole:  # "trees left to 200"
            along.low = min(a.FROM_TEE_YD, 0.2 * draft.length_yd, along.low)
        if crosses and feature.kind == "heavy_rough":  # "carry 160 over heather" from the tee
            along.low = min(a.FROM_TEE_YD, 0.5 * along.high)
        entry.assume(f"a beginning at {u.shown(along.low)}", "from")
    elif along.low is None:
        need((feature.noun not in NEEDS_A_RANGE or across.every) and not crosses, token,
             'where along the line? For example "213 to 254" or "at 230"')  # fmt: skip
        whole_hole = True
        along.low, along.high = min(a.FROM_TEE_YD, 0.2 * draft.length_yd), draft.green_back_yd
        entry.assume(f"from {u.shown(along.low)} to the back of the green", "from", "to")
    assert along.low is not None and along.high is not None
    need(along.low < along.high, token, "ends before it begins")
    need(along.length is None or not whole_hole, token, "has a length: where along the line does it begin?")
    need(along.high > -150.0 and along.low < draft.length_yd + 150.0, token, "lies beyond the hole")
    entry.keys |= {"from": along.low, "to": along.high}


def _round_the_corner(bend: float, draft: Draft, entry: Entry, along: Along) -> None:
    """Ends, as far as nobody said them, of what lies at a bend of the line."""
    shown = draft.units.shown
    if along.low is None:
        along.low = max(bend - a.CORNER_BEFORE, 0.0)
        entry.assume(f"from {shown(along.low)}, round the corner", "from")
    if along.high is None:
        along.high = min(bend + a.CORNER_AFTER, draft.green_back_yd)
        entry.assume(f"to {shown(along.high)}", "to")


def by_green(
    feature: Feature, draft: Draft, entry: Entry, said: tuple[Said | None, ...], along: Along, across: Across
) -> None:
    """Stations of an area short of, behind or beside the green."""
    short, behind, beside, _ = said
    u = draft.units
    need(sum(one is not None for one in said) == 1, feature.token, "stands in two places by the green")
    front, back = draft.green_front_yd, draft.green_back_yd
    if along.low is not None or along.high is not None or along.at is not None:
        _both_said(feature, draft, entry, said, along, across)
        return
    gap = a.GREEN_GAP[feature.kind]
    size = along.length
    end = short or behind
    if end is not None:
        if "a" in end.numbers:
            gap = u.yd(end.numbers["a"])
        else:
            entry.assume(_off(gap, u), "from", "to")
        length = size if size is not None else _usual_length(feature)
        if size is None:
            entry.assume(f"{u.shown(length)} along the line", "from", "to")
        low = front - gap - length if short is not None else back + gap
        entry.keys |= {"from": low, "to": low + length}
        if not across.sides:
            across.crosses = True
        if feature.kind == "runoff" and across.width is None:
            across.width = 2.0 * draft.green_half_yd
            entry.assume("as wide as the green", "left", "right")
        return
    if beside is not None:
        across.sides = (beside.words["s"],)
        if "a" in beside.numbers and across.near is None:
            across.near = draft.green_half_yd + u.yd(beside.numbers["a"])
    need(bool(across.sides), feature.token, "on which side of the green? Say left, right, short or behind")
    if across.near is None:
        across.near = draft.green_half_yd + gap
        entry.assume(_off(gap, u), "left", "right")
    if size is not None:
        middle = 0.5 * (front + back)
        entry.keys |= {"from": middle - size / 2.0, "to": middle + size / 2.0}
        return
    entry.keys |= {"from": front - a.PAST_GREEN, "to": back + a.PAST_GREEN}
    entry.assume("as long as the green", "from", "to")


def _off(gap: float, units: Units) -> str:
    """How far from the green, in words."""
    return f"{units.shown(gap)} from the green" if gap > 0.0 else "from the edge of the green on"


def _both_said(
    feature: Feature, draft: Draft, entry: Entry, said: tuple[Said | None, ...], along: Along, across: Across
) -> None:
    """ "Pond in front of the green, 100 to 140": the yards count when they lie there."""
    short, behind, beside, _ = said
    end = short or behind
    if end is not None and "a" in end.numbers:
        raise end.token.error(f"({end.shown}): placed along the line already: leave one out")
    if end is not None and not across.sides:
        across.crosses = True
    if beside is not None:
        across.sides = (beside.words["s"],)
    if end is None and across.near is None:
        across.near = draft.green_half_yd + a.GREEN_GAP[feature.kind]
        entry.assume(f"{draft.units.shown(a.GREEN_GAP[feature.kind])} from the green", "left", "right")
    along_the_line(feature, draft, entry, along, across)
    low, high = entry.keys["from"], entry.keys["to"]
    front, back = draft.green_front_yd, draft.green_back_yd
    there = (
        front - NEAR_GREEN_YD <= high <= front + SLACK_YD if short is not None
        else back - SLACK_YD <= low <= back + NEAR_GREEN_YD if behind is not None
        else low < back and high > front
    )  # fmt: skip
    shown = draft.units.shown
    where = f"{shown(low).split()[0]} to {shown(high)} on"
    need(there, feature.token, f"stands by the green, yet {where}, the green {shown(front).split()[0]} to "
         f"{shown(back)}: leave one out (yards count from the tee)")  # fmt: skip


def edges(entry: Entry, draft: Draft, feature: Feature, across: Across, side: str) -> None:
    """Left and right edge of one area; side "" for what crosses the line."""
    u = draft.units
    if side == "":
        need(across.near is None and across.far is None, feature.token,
             "crosses the line and has an edge beside it: which of the two?")  # fmt: skip
        crosses = across.said_across or (across.crosses and feature.noun not in NEEDS_A_RANGE)
        spans = feature.kind in ("stream", "path") or (crosses and feature.kind != "trees")
        reach = a.CROSSING_REACH if spans else a.POND_REACH
        if across.middle and draft.between is not None and across.width is None:
            entry.keys |= {"left": draft.between[0], "right": draft.between[1]}
            entry.assume("all the ground between the fairways", "left", "right")
            return
        need(draft.between is None or crosses or spans, feature.token, 'on a hole with a split fairway: say '
             f'"{feature.word} between the fairways" or "{feature.word} across"')  # fmt: skip
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
