"""The line of play as a sketch gives it: a length with bends, or corners."""

from __future__ import annotations

import math

import numpy as np

from simulator.hole.fields import Fields, entries_of
from simulator.hole.line import PlayLine

MOST_TURN_DEG = 120.0
"""Sharpest bend of a line of play [deg]: no hole doubles back, and offsets would mean nothing."""

MOST_LENGTH_YD = 1e6
"""Longest line that is measured at all [yd]; what is absurd for the par is said by `check.check_line`."""


def read_line(top: Fields) -> PlayLine:
    """Line of play: `length` with `bends`, or `line`, its corners in x and y."""
    return _corners(top) if top.has("line") else _legs(top)


def _corners(top: Fields) -> PlayLine:
    key = top.key("line")
    if top.has("length") or "bends" in top.table:
        raise top.error(key, "a line as well as length or bends", "one of the two")
    corners = top.pairs("line", least=2)
    if np.any(np.hypot(*np.diff(corners, axis=0).T) < 1.0):
        raise top.error(key, "two corners less than a yard apart", "corners apart")
    line = PlayLine(corners)
    for (ax, ay), (bx, by) in zip(line.headings, line.headings[1:], strict=False):
        turn = math.degrees(math.atan2(ay * bx - ax * by, ax * bx + ay * by))
        if abs(turn) > MOST_TURN_DEG:
            raise top.error(key, f"a turn of {turn:.0f} degrees", f"turns up to {MOST_TURN_DEG:g} degrees")
    return line


def _legs(top: Fields) -> PlayLine:
    length = top.length("length", low=1.0, high=MOST_LENGTH_YD)
    corners, station, heading = [(0.0, 0.0)], 0.0, 0.0
    for number, entry in enumerate(entries_of(top, "bends"), start=1):
        bend = Fields(top.source, f"bend {number}", entry)
        bend.refuse_unknown(("turn_deg",), ("at",))
        at = bend.length("at")
        if not station + 1.0 <= at <= length - 1.0:
            allowed = f"between {station:.6g} and {length:.6g} yd, in order"
            raise bend.error(bend.key("at"), f"a bend at {at:.6g} yd", allowed)
        turn = bend.number("turn_deg", -MOST_TURN_DEG, MOST_TURN_DEG)
        if turn is None:
            raise bend.error("turn_deg", "no such key", "degrees, positive to the right")
        corners.append(_onward(corners[-1], heading, at - station))
        station, heading = at, heading + math.radians(turn)
    corners.append(_onward(corners[-1], heading, length - station))
    return PlayLine(np.array(corners))


def _onward(start: tuple[float, float], heading: float, distance: float) -> tuple[float, float]:
    return start[0] + math.sin(heading) * distance, start[1] + math.cos(heading) * distance
