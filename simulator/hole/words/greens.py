"""The green, how it falls, and the pins on it."""

from __future__ import annotations

import math

from simulator.hole.words import assumed as a
from simulator.hole.words.angled import Ellipse, own_depth_yd, turn_of
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, need, plain
from simulator.hole.words.lex import Token

FRONT_SHARE, SIDE_SHARE = 0.36, 0.3
"""A pin in about the first third is a front pin; that far from the middle to the edge, left or right."""

LEAST_GREEN_YD, MOST_GREEN_YD = 5.0, 100.0
"""Depth or width of a green outside these is a slip."""

_SENSE = {"short": "front", "long": "back", "front": "front", "back": "back"}


def read_green(features: list[Feature], draft: Draft) -> None:
    """The one green: size, place by its front and back or the length of the hole, fall.

    Raises
    ------
    UsageError
        A size that is none, a front behind the back.
    """
    mine = [f for f in features if f.kind == "green"]
    first = mine[0] if mine else Feature("green", "green", Token("word", "", "", 0, 0))
    for other in mine[1:]:
        first.said += other.take_all(*(one.what for one in other.said))
        first.text += "; " + other.text
    u = draft.units
    entry = Entry("green", {"name": "green"}, first.text)
    long, wide, by = first.take("deep", "long"), first.take("wide"), first.take("by")
    depth, width = _length(long, draft), _length(wide, draft)
    if by is not None:
        need(depth is None and width is None, by.token, "says the size of the green a second time")
        depth, width = u.yd(by.numbers["a"]), u.yd(by.numbers["b"])
    size = first.take("size") if depth is None or width is None else None
    usual = a.GREEN_SIZES[size.words["word"]] if size else (a.GREEN_DEPTH, a.GREEN_WIDTH)
    as_called = f", as a {size.words['word']} one" if size else ""
    bare = first.take("bare")
    if bare is not None:
        raise bare.token.error("of the green: deep or wide?")
    front, back = _ends(first, draft)
    if front is not None and back is not None:
        need(depth is None, first.token, "has a front, a back and a depth: leave one out")
        need(back > front, first.token, "has its back before its front")
        depth = back - front
    if depth is None:
        depth = usual[0]
        entry.assume(f"{u.shown(depth)} deep{as_called}", "depth", *(() if front is not None else ("front",)))
    if width is None:
        width = usual[1]
        entry.assume(f"{u.shown(width)} wide{as_called}", "width")
    turn, turned = turn_of(first)
    if turn and front is not None and back is not None:  # the ends were read along the line of play
        depth = own_depth_yd(back - front, width, turn)
    limits = f"allowed: {u.shown(LEAST_GREEN_YD)} to {u.shown(MOST_GREEN_YD)} each way"
    fits = all(LEAST_GREEN_YD <= size <= MOST_GREEN_YD for size in (depth, width))
    need(fits, first.token, f"is {u.shown(depth)} by {u.shown(width)}; {limits}")
    draft.green = Ellipse(depth, width, turn)
    deep = draft.green.deep_yd
    if front is None:
        front = back - deep if back is not None else draft.length_yd - deep / 2.0
    offset = first.take("offset")
    draft.green_offset_yd = _signed(offset, draft) if offset else 0.0
    draft.green_front_yd, draft.green_back_yd = front, front + deep
    draft.green_half_yd = draft.green.wide_yd / 2.0
    entry.keys |= {"front": front + (deep - depth) / 2.0, "depth": depth, "width": width}
    if turn:
        entry.keys["turn_deg"] = turn
        if turned:
            side = "left" if turn < 0.0 else "right"
            entry.assume(f"turned {abs(turn):g} degrees, its back {side}", "turn_deg")
    if draft.green_offset_yd:
        entry.keys["offset"] = draft.green_offset_yd
    _fall(first, entry)
    draft.entries.append(entry)


def _ends(green: Feature, draft: Draft) -> tuple[float | None, float | None]:
    """Stations of front and back edge, where said ("front 360, back 384", "358 to 384")."""
    front = back = None
    between = green.take("range")
    if between is not None:
        return draft.units.yd(between.numbers["a"]), draft.units.yd(between.numbers["b"])
    for said in green.take_all("front_at"):
        value = draft.units.yd(said.numbers["a"])
        if said.words["p"] == "front":
            need(front is None, said.token, "is a second front edge")
            front = value
        else:
            need(back is None, said.token, "is a second back edge")
            back = value
    return front, back


_OPPOSITE = {"front": "back", "back": "front", "left": "right", "right": "left"}


def _fall(green: Feature, entry: Entry) -> None:
    """How the green falls: "falls front left 2%", "2% back to front", "level"."""
    percent, level, verb = green.take("percent"), green.take("level"), green.take("falls")
    ways = green.take_all("way", "place", "side")
    if level is not None:
        need(percent is None and verb is None, level.token, "and a fall: one of the two")
        entry.keys["slope_pct"] = 0.0
        return
    if percent is None and verb is None and not ways:
        return
    end = side = ""
    downhill_from = verb is not None and verb.shown.casefold().endswith("from")
    for said in ways:
        p, s = said.words.get("q") or said.words.get("p", ""), said.words.get("s", "")
        told = [_SENSE.get(p, p), s]
        if "q" not in said.words and (downhill_from or said.shown.casefold().startswith("from")):
            told = [_OPPOSITE.get(word, word) for word in told]  # "falls from the right", "3% from the back"
        for word in told:
            if word in ("front", "back"):
                need(end in ("", word), said.token, "falls both ways")
                end = word
            elif word in ("left", "right"):
                need(side in ("", word), said.token, "falls both ways")
                side = word
            else:
                need(not word, said.token, "is no way a green falls; allowed: front, back, left, right")
    where = ways[0] if ways else percent or verb
    assert where is not None
    need(
        verb is not None or percent is not None,
        where.token,
        'of the green? Say "falls to the front", or a size',
    )
    need(bool(end or side), where.token, 'falls which way? For example "falls front left 2%"')
    entry.keys["falls"] = f"{end} {side}".strip()
    if percent is None:
        entry.keys["slope_pct"] = a.GREEN_SLOPE_PCT
        entry.assume(f"a fall of {a.GREEN_SLOPE_PCT:g} %", "slope_pct")
    else:
        entry.keys["slope_pct"] = plain(percent.numbers["a"], 0.0, 6.0, "fall of a green in percent")


def read_pins(features: list[Feature], draft: Draft) -> None:
    """Pins in the order of the words; the reader of the file puts one in the middle when there is none.

    Raises
    ------
    UsageError
        A pin off the green.
    """
    for feature in [f for f in features if f.kind == "pin"]:
        _pin(feature, draft)


def _pin(pin: Feature, draft: Draft) -> None:
    u = draft.units
    depth, half = draft.green_back_yd - draft.green_front_yd, draft.green_half_yd
    named = pin.take("named")
    on, at = pin.take("on"), pin.take("at", "bare", "back_by")
    place, edges = pin.take("place"), pin.take_all("off_place")
    offset = pin.take("offset", "side_number")
    side = pin.take("side", "beside_green")
    colour = pin.take("colour", "who")
    entry = Entry("pin", {}, pin.text)
    ahead = across = None
    words: list[str] = []
    if place is not None or side is not None:
        words, ahead, across = _part(place, side, depth, draft)
        entry.assume("", *([] if on else ["on"]), *([] if offset else ["offset"]))
    if on is not None:
        ahead = u.yd(on.numbers["a"])
    if at is not None:
        need(on is None, at.token, "is a second place of the pin")
        ahead = _at(at, depth, draft)
    from_end, aside = _edges(pin, edges, depth, draft, is_on=on is not None or at is not None)
    ahead = ahead if from_end is None else from_end
    if offset is not None:
        need(aside is None, offset.token, "is a second distance across")
        need(across is None or across * _signed(offset, draft) >= 0.0, offset.token, "is on the other side")
        across = _signed(offset, draft)
        number, which = offset.numbers["a"].shown, offset.words["s"]
        edge = f'"{number} from the {which}" counts from its edge, as --pin does'
        entry.assume(f"that {offset.shown} counts from the middle of the green ({edge})", "offset")
    if ahead is None:
        ahead = depth / 2.0
        entry.assume("half way on", "on")
    beyond = ahead - depth / 2.0
    middle = draft.green.middle_yd(beyond)
    if aside is not None:
        across = _from_edge(aside, beyond, draft)
    elif across is None:
        across = middle
    elif offset is None and draft.green.turn_deg:  # half way from the middle of the green there to its edge
        across = middle + (math.copysign(0.5, across) * draft.green.half_yd(beyond) if across else 0.0)
    if place is not None or side is not None:
        beside = f", {u.shown(abs(across))} {'left' if across < 0.0 else 'right'}" if across else ""
        entry.assume(f"{u.shown(ahead)} on{beside}")
    away = draft.green.away(beyond, across)
    here = f"at {u.shown(ahead)} on and {u.shown(abs(across))} from the middle"
    need(away < 0.98, pin.token, f"{here} is off a green {u.shown(depth)} deep and {u.shown(2 * half)} wide")
    wish = " ".join(words) or _about(ahead / depth, across / half)
    if named is not None or colour is not None:
        wish = named.numbers["a"].key if named else colour.words["word"] if colour else wish
    entry.keys = {"name": _free(draft, wish), "on": ahead}
    if across + draft.green_offset_yd:
        entry.keys["offset"] = across + draft.green_offset_yd
    draft.entries.append(entry)


def _part(
    place: Said | None, side: Said | None, depth: float, draft: Draft
) -> tuple[list[str], float, float]:
    """A part of the green a pin is in: its words, and how far on and right of the middle it is [yd]."""
    p = place.words.get("p", "middle") if place else ""
    s = (place.words.get("s", "") if place else "") or (side.words["s"] if side else "")
    p = _SENSE.get(p, p)
    ahead = {"front": a.PIN_SHARE, "back": 1.0 - a.PIN_SHARE}.get(p, 0.5) * depth
    across = {"left": -0.5, "right": 0.5}.get(s, 0.0) * draft.green_half_yd
    return [word for word in (p, "" if s == "middle" else s) if word], ahead, across


def _at(at: Said, depth: float, draft: Draft) -> float:
    """How far on [yd] a number is that says no more: from the tee, where the green is not so deep."""
    value = draft.units.yd(at.numbers["a"])
    if at.what == "back_by":
        raise at.token.error('of a pin? Say "5 from the back", or "20 on"')
    return value - draft.green_front_yd if value > depth else value


def _edges(
    pin: Feature, edges: list[Said], depth: float, draft: Draft, *, is_on: bool
) -> tuple[float | None, Said | None]:
    """Distances from the edges of the green: how far on that is [yd], and the one from a side."""
    twice = len({e.words["p"] in ("left", "right") for e in edges}) < len(edges)
    need(len(edges) < 3 and not twice, pin.token, "has two distances from its edges the same way")
    ahead = aside = None
    for edge in edges:
        p = edge.words["p"]
        need(p not in ("front", "back") or not is_on, edge.token, "is a second distance on")
        value = draft.units.yd(edge.numbers["a"])
        if p in ("front", "back"):
            ahead = value if p == "front" else depth - value
        elif p in ("left", "right"):
            aside = edge
        else:
            raise edge.token.error("of a pin? Say front, back, left or right")
    return ahead, aside


def _from_edge(said: Said, ahead_yd: float, draft: Draft) -> float:
    """Right of the middle [yd]: so far from the edge of the green on a side, so far beyond its middle.

    An ellipse is narrower there than in its middle: from its widest, 5 from the right may be off it.
    """
    side = -1.0 if said.words["p"] == "left" else 1.0
    half = draft.green.half_yd(ahead_yd)
    return draft.green.middle_yd(ahead_yd) + side * (half - draft.units.yd(said.numbers["a"]))


def _about(on_share: float, right_share: float) -> str:
    """Where a pin is, as it is spoken of: "front", "middle left" ..."""
    end = "front" if on_share < FRONT_SHARE else "back" if on_share > 1.0 - FRONT_SHARE else "middle"
    side = "" if abs(right_share) < SIDE_SHARE else " left" if right_share < 0.0 else " right"
    return end + side


def _free(draft: Draft, wish: str) -> str:
    """A pin's name that no other pin has."""
    taken = {str(e.keys["name"]).casefold() for e in draft.of("pin")}
    name, number = wish[:50], 2
    while name.casefold() in taken:
        name, number = f"{wish[:50]} {number}", number + 1
    return name


def _length(said: Said | None, draft: Draft) -> float | None:
    return None if said is None else draft.units.yd(said.numbers["a"])


def _signed(said: Said, draft: Draft) -> float:
    value = draft.units.yd(said.numbers["a"])
    return -value if said.words["s"] == "left" else value
