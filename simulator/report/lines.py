"""Words of the line: where to point, where the pattern finishes, the room, the reach."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from ..strategy.alternative import Alternative
from ..strategy.pointing import FINEST_YD, Pointing
from ..strategy.reach import NARROW_YD, Reach
from ..strategy.result import Answer
from ..strategy.room import Room
from .chosen import PENALTY, level, out_of_reach_goal, shown, title, told_by_line
from .figures import capital, count_words, join_words
from .units import YARDS, Units

APART_YD = 3.0
"""Aim and middle of the pattern are both said when they are farther apart than this [yd]."""

LEAST_PAST_YD, MOST_PAST = 15.0, 2.0 / 3.0
"""What a shot leaves is said to lie past the flag from so far on [yd], when that share does (assumed)."""

FAR_YD = 50.0
"""Trouble with more than this to spare is told only when there is room for it [yd]."""


def line_words(one: Alternative, units: Units = YARDS) -> str:
    """Where to point: "at the church tower", "6 yd left of the middle of the fairway"."""
    return point_words(one.point, units)


def point_words(point: Pointing, units: Units = YARDS) -> str:
    """The same of any line."""
    side = units.side(point.offset_yd) if abs(point.offset_yd) >= FINEST_YD else ""
    name = point.name
    if point.by == "mark" and not name.casefold().startswith("the "):
        name = f"the {name}"
    return f"{side} of {name}" if side else f"{'down' if point.by == 'pin' else 'at'} {name}"


def pointing(answer: Answer, units: Units = YARDS) -> str:
    """Where to point and what it leaves; both where two clubs will do, and every line that is a name."""
    names = level(answer) if answer.verdict == "either" or out_of_reach_goal(answer) else [answer.recommended]
    best = answer.alternatives[names[0]]
    low, high = best.leaves_yd["p10"].value, best.leaves_yd["p90"].value
    leaves = f"leaves {units.range(low, high)}{past_flag(answer, best)}"
    others = other_lines(answer, names, units)
    if len(names) > 1:
        aims = [_line(answer, k, units) for k in names]
        titles = [title(answer, k, units) for k in names]
        # what a title has in brackets is parted from the yards behind it
        bracket = any(name.endswith(")") for name in titles)
        colon, between = (":", "; the ") if bracket else ("", ", the ")
        said = between.join(f"{name}{colon} {aim}" for name, aim in zip(titles, aims, strict=True))
        words = f"Point each of them {aims[0]}." if len(set(aims)) == 1 else f"Point the {said}."
        with_ = f"With the {titles[0]} the"
        return f"{words}{others}{middle_words(best, units, with_)}"
    middle = middle_words(best, units, "The")
    return f"Point {_line(answer, names[0], units)}; it {leaves}.{middle}{others}"


def other_lines(answer: Answer, told: Sequence[int], units: Units = YARDS) -> str:
    """Where the lines point that are the names of others than those told of; empty without such."""
    named = [k for k in shown(answer) if k not in told and told_by_line(answer, k, units)]
    if not named:
        return ""
    said = [f"the {title(answer, k, units)} points {_line(answer, k, units)}" for k in named]
    return f" {capital(', '.join(said))}."


def _line(answer: Answer, index: int, units: Units) -> str:
    """Where an alternative points; of one of several lines that was asked for, as it was asked too."""
    one = answer.alternatives[index]
    words = line_words(one, units)
    if one.point.by == "pin" or not (one.aim_given and told_by_line(answer, index, units)):
        return words
    side = units.bare_side(one.aim_offset_yd)
    return f"{words} ({f'{side} of the pin line' if side != '0' else 'at the pin'})"


def past_flag(answer: Answer, one: Alternative) -> str:
    """ ", mostly past the flag" of a shot that finishes well beyond it more often than not; else empty."""
    if one.leaves_yd["p50"].value < LEAST_PAST_YD or not len(one.finishes_yd):
        return ""
    ball = np.array([answer.start.x_yd, answer.start.y_yd])
    way = np.array(answer.hole.pin.xy_yd) - ball
    beyond = (one.finishes_yd - ball) @ way > way @ way
    return ", mostly past the flag" if beyond.mean() >= MOST_PAST else ""


def middle_words(one: Alternative, units: Units, opening: str) -> str:
    """Where the middle of the pattern finishes, when that is not where it is pointed."""
    off = one.middle_right_yd.value
    if abs(off) <= APART_YD:
        return ""
    return f" {opening} middle of the pattern finishes {units.side(off)} of that line."


def indifference(answer: Answer, units: Units = YARDS) -> str:
    """Which lines play alike; empty for a line that was asked for or has no width."""
    one = answer.best
    low, high = (edge - one.aim_offset_yd for edge in one.aims_yd)
    if one.aim_given or out_of_reach_goal(answer) or units.whole(low) == units.whole(high):
        return ""
    alike = "plays alike" if answer.goal is None else "reaches it as often"
    first, last = units.bare_side(low), units.bare_side(high)
    if units.whole(abs(high)) == 0:
        return f"Anywhere from that line to {first} of it {alike}."
    if units.whole(abs(low)) == 0:
        return f"Anywhere from that line to {last} of it {alike}."
    return f"Anywhere from {first} to {last} of that line {alike}."


def room_words(answer: Answer, units: Units = YARDS) -> str:
    """The room of the recommended shot: its ends, its sides, what closes them, how many finish inside."""
    room = answer.best.room
    if room is None:
        return "Room: none, there is trouble all about the middle of the pattern."
    inside = count_words(room.inside.value, answer.sequences)
    return f"{room_of(room, units)} {inside} in 100 finish inside."


def room_of(room: Room, units: Units) -> str:
    """The ends and sides of a room, up to the count."""
    said = []
    if room.carry_at_least_yd is not None:
        verb = "carry" if room.lies_across else "finish"
        said.append(f"{verb} at least {units.whole(room.carry_at_least_yd)} ({room.carry_over})")
    if room.finish_at_most_yd is not None:
        said.append(f"finish at most {units.whole(room.finish_at_most_yd)} ({room.finish_before})")
    sides = [
        f"{units.bare_side(edge) if edge else 'the line'} ({by})" if edge is not None else f"open {side}"
        for side, edge, by in (
            ("left", room.left_edge_yd, room.left_closed_by),
            ("right", room.right_edge_yd, room.right_closed_by),
        )
    ]
    if room.left_edge_yd is not None and room.right_edge_yd is not None:
        said.append(f"from {sides[0]} to {sides[1]} of the line")
    else:
        # an end on the other side of the line: "4 right (copse), open right" alone would name no left end
        if room.left_edge_yd is not None and room.left_edge_yd > 0.0:
            sides[0] = f"from {sides[0]}"
        if room.right_edge_yd is not None and room.right_edge_yd < 0.0:
            sides[1] = f"to {sides[1]}"
        said.append(", ".join(sides))
    return f"Room ({units.short}): {', '.join(said)};"


def reach_words(answer: Answer, units: Units = YARDS) -> tuple[str, bool]:
    """How near the recommended club's longest balls come to trouble, and whether that is close.

    Empty when every trouble ahead is in reach, or none is ahead.
    """
    one = answer.best
    hard = {f.name for f in answer.hole.features if f.surface in PENALTY}
    beyond = sorted((r for r in one.reach if r.spare_yd >= 0.0), key=lambda r: r.spare_yd)
    narrow = [r for r in beyond if r.spare_yd < NARROW_YD]
    picked = next((r for r in narrow if r.name in hard), None) or next(iter(narrow), None)
    picked = picked or next((r for r in beyond if r.name in hard), None) or next(iter(beyond), None)
    if picked is None:
        return "", False
    starts, finish = units.whole(picked.starts_yd), units.whole(picked.finish_yd.value)
    carry = "" if one.flight == "putt" else f"carry under {units.whole(picked.carry_yd.value)} and "
    words = (
        f"Reach: 999 of 1,000 {carry}finish short of {finish}, "
        f"{starts - finish} to spare today to the {picked.name} at {starts}{_brings(picked, units)}."
    )
    return words, picked.spare_yd < FAR_YD


def _brings(reach: Reach, units: Units) -> str:
    """What would use up the yards to spare."""
    ways = []
    if reach.firm_reaches:
        ways.append("on firm ground")
    if reach.helping_mph is not None:
        ways.append(f"with {units.wind(reach.helping_mph)} {units.wind_unit} more from behind")
    return f" (in reach {join_words(ways, 'or')})" if ways else ""
