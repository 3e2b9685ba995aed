"""Out of bounds: everything beyond an offset, or behind the green."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from simulator.hole.shapes import OPEN_END_YD, OPEN_SIDE_YD
from simulator.hole.words.assumed import MOST_ACROSS_YD, PAST_GREEN
from simulator.hole.words.entry import Draft, Entry
from simulator.hole.words.feature import Feature, Said, Units, need
from simulator.hole.words.placing import Across, Along, read_across, read_along

_FAR = ("long", "back")

PLAIN_NOUNS = ("out", "ob", "oob", "out of bounds", "white stakes")


def read_bounds(features: list[Feature], draft: Draft) -> None:
    """Every boundary. How far it is has to be said: a guess would decide the answer.

    Raises
    ------
    UsageError
        No side, or no distance.
    """
    for feature in [f for f in features if f.kind == "out"]:
        _bound(feature, draft)


def _check_range(feature: Feature, units: Units) -> None:
    """Refuse "ob right 30 to 250": from 30 on, or 30 from the line as far as 250."""
    one = next((one for one in feature.said if one.what == "range"), None)
    if one is None or feature.has("offset", "side_number", "edge", "at"):
        return
    if "word" in one.words and feature.has("bare"):  # "from 30 to 250, 34"
        return
    low, high = (one.numbers[end] for end in "ab")
    side = next((said.words["s"] for said in feature.said if said.what == "side"), "left")
    out = f"{feature.noun} {side}"
    need(units.yd(low) > MOST_ACROSS_YD or units.yd(high) <= MOST_ACROSS_YD, one.token,
         f'({one.shown}): {low.shown} from the line, or from {low.shown} on? Say "{out} {low.shown}, '
         f'to {high.shown}", or "{out} 34, from {low.shown} to {high.shown}"')  # fmt: skip


def _bound(feature: Feature, draft: Draft) -> None:
    u = draft.units
    colour = feature.take("colour")
    if colour is not None:
        need(colour.words["word"] == "white", colour.token, "for out of bounds? White stakes mark it")
    named, behind = feature.take("named"), feature.take("behind_green", "back_by")
    beside = feature.take("beside_green")
    beyond = feature.take("long")
    behind = behind or beyond  # "out 12 long"
    far = next((one for one in feature.said if one.what == "place" and one.words.get("p") in _FAR), None)
    if far is not None and "s" not in far.words:  # "out long, 15", "20 over the back"
        feature.said.remove(far)
        number = feature.take("bare") if behind is None else None
        behind = behind or replace(far, what="behind_green", numbers=number.numbers if number else {})
    name = named.numbers["a"].key if named else ""
    _check_range(feature, u)
    at_token = next((one.numbers["a"] for one in feature.said if one.what == "at"), feature.token)
    along, across = read_along(feature, draft), read_across(feature, draft, near_edge=True)
    if along.at is not None and along.at <= MOST_ACROSS_YD and across.near is None:
        across.bare(at_token)
        across.near, along.at = along.at, None  # "out right at 30"
    if across.at is not None and across.near is None:
        across.near, across.at = across.at, None  # "out left 90": a boundary is nowhere along the line
    bare = feature.take("bare")
    if bare is not None:
        need(across.near is None, bare.token, "is a second distance")
        across.bare(bare.token)
        across.near = u.yd(bare.numbers["a"])
    noun = feature.noun if feature.noun not in PLAIN_NOUNS else "boundary"
    if beside is not None:
        need(not across.sides and along.at is None, beside.token, "and beside the line: which of the two?")
        _beside_the_green(feature, beside, across.near, name or noun, along, draft)
        return
    if behind is not None:
        _behind_the_green(feature, behind, name, noun, draft)
    else:
        _down_the_sides(feature, along, across, name, noun, draft)


def _behind_the_green(feature: Feature, behind: Said, name: str, noun: str, draft: Draft) -> None:
    """Everything so far behind the green, from side to side."""
    need("a" in behind.numbers, behind.token, f'how far? For example "{feature.noun} 15 behind the green"')
    start = draft.green_back_yd + draft.units.yd(behind.numbers["a"])
    need(start < draft.length_yd + OPEN_END_YD - 1.0, behind.token, "is too far off to matter")
    reach = OPEN_SIDE_YD - 1.0
    keys = {"name": draft.name_for(name, f"{noun} behind the green"), "from": start,
            "to": draft.length_yd + OPEN_END_YD, "left": -reach, "right": reach}  # fmt: skip
    draft.entries.append(Entry("out_of_bounds", keys, feature.text))


def _down_the_sides(
    feature: Feature, along: Along, across: Across, name: str, noun: str, draft: Draft
) -> None:
    """Everything beyond a distance from the line on a side or both, all along the hole or a part of it."""
    need(not across.crosses, feature.token, "across the line? Say left or right, and how far")
    need(bool(across.sides), feature.token, 'on which side, and how far? For example "out left 34"')
    need(across.near is not None, feature.token, f'how far {across.sides[0]} of the line? For example "'
         f'{feature.noun} {across.sides[0]} 34"')  # fmt: skip
    open_ended = across.far is None and along.second is None
    need(open_ended, feature.token, "ends nowhere: everything beyond it is out")
    need(along.at is None, feature.token,
         "at one place? Say from where to where, or leave it out for all of the hole")  # fmt: skip
    near = across.near
    assert near is not None
    need(near < OPEN_SIDE_YD, feature.token, "is too far off to matter")
    for side in across.sides:
        wish = noun if noun != "boundary" and len(across.sides) == 1 else ""
        keys: dict[str, Any] = {"name": draft.name_for(name, wish, f"{side} {noun}")}
        if along.low is not None:
            keys["from"] = along.low
        if along.high is not None:
            keys["to"] = along.high
        keys |= {"left_of": -near} if side == "left" else {"right_of": near}
        draft.entries.append(Entry("out_of_bounds", keys, feature.text))


def _beside_the_green(
    feature: Feature, beside: Said, off_green_yd: float | None, name: str, along: Along, draft: Draft
) -> None:
    """ "Out 15 right of the green": beyond so many yards from its edge, from the green on unless told."""
    side = beside.words["s"]
    if "a" in beside.numbers:
        off_green_yd = draft.units.yd(beside.numbers["a"])
    need(off_green_yd is not None, beside.token,
         f'how far? For example "{feature.noun} 15 {side} of the green"')  # fmt: skip
    assert off_green_yd is not None
    middle, half = draft.green_offset_yd, draft.green_half_yd + off_green_yd
    entry = Entry("out_of_bounds", {"name": draft.name_for(f"{name} {side} of the green")}, feature.text)
    if along.low is None:
        entry.assume(f"from {draft.units.shown(PAST_GREEN)} before the green on", "from")
    entry.keys["from"] = draft.green_front_yd - PAST_GREEN if along.low is None else along.low
    if along.high is not None:
        entry.keys["to"] = along.high
    entry.keys |= {"left_of": middle - half} if side == "left" else {"right_of": middle + half}
    draft.entries.append(entry)
