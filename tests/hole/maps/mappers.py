"""The same invented course as mappers of different habits draw it: nine holes on a tight piece of ground.

Every hole is straight. The next tee stands beside the green before it, corridors are 85 yd apart: what real
courses are like, and where greens, tees and lines are easily taken for a neighbour's.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import make_course as mc

LENGTHS = (395, 168, 510, 352, 410, 187, 378, 433, 402)
PARS = (4, 3, 5, 4, 4, 3, 4, 4, 4)
INDEXES = (5, 17, 1, 13, 7, 15, 9, 3, 11)
APART = 85.0
TEES = (("white", 0.0), ("yellow", 22.0), ("red", 58.0))


@dataclass(frozen=True)
class Habit:
    """What one mapper does.

    Parameters
    ----------
    backwards : lines from green to tee.
    start, end : where a line starts along its hole, and how far past the middle of its green it ends [yd].
    tees, greens : area, node, line or none.
    numbers : how a line says which hole it is: ref, name, ordinal, titled, loop.
    fairway : own, one (one area for the whole course), inner (a relation with its bunkers as holes in it).
    sand : bunkers are natural=sand; wood : none, beside, or over (one forest drawn over the whole course).
    second : a winter green beside each green. pins : pins for each green.
    """

    backwards: bool = False
    start: float = 0.0
    end: float = 0.0
    tees: str = "area"
    greens: str = "area"
    numbers: str = "ref"
    fairway: str = "own"
    sand: bool = False
    wood: str = "beside"
    second: bool = False
    pins: int = 1


def holes(sheet: mc.Sheet) -> list[mc.Hole]:
    """Up one corridor and down the next, each starting 22 yd beyond the green before."""
    out, y = [], 0.0
    for k, length in enumerate(LENGTHS):
        up = k % 2 == 0
        out.append(mc.Hole(sheet, APART * k, y, length, up))
        y += (length + 22.0) * (1.0 if up else -1.0)
    return out


def drawn(habit: Habit, sheet: mc.Sheet | None = None) -> mc.Sheet:
    """The course as one mapper draws it."""
    sheet = mc.Sheet() if sheet is None else sheet
    for k, hole in enumerate(holes(sheet)):
        _line(sheet, hole, k, habit)
        _tees(sheet, hole, habit)
        _green(sheet, hole, habit)
        _ground(sheet, hole, habit)
        for pin in range(habit.pins):
            hole.pin(2.0 + 3.0 * pin)
    everything = mc.box(-45.0, -600.0, APART * 8 + 45.0, 900.0)
    if habit.fairway == "one":
        sheet.area(everything, golf="fairway")
    if habit.wood == "over":
        sheet.area(mc.box(-400.0, -600.0, 1100.0, 1100.0), landuse="forest")
    return sheet


def _line(sheet: mc.Sheet, hole: mc.Hole, k: int, habit: Habit) -> None:
    corners = [hole.at(habit.start), hole.at(hole.length + habit.end)]
    number = str(k + 1)
    ordinal = {1: "st", 2: "nd", 3: "rd"}.get(k + 1, "th")
    said: dict[str, Any] = {
        "ref": {"ref": number}, "name": {"name": f"Hole {number}"}, "ordinal": {"name": f"{number}{ordinal}"},
        "titled": {"name": f"{number} - The Dyke"}, "loop": {"ref": number, "name": f"Red {number}"},
    }[habit.numbers]  # fmt: skip
    sheet.line(corners[::-1] if habit.backwards else corners, golf="hole", par=str(PARS[k]),
               handicap=str(INDEXES[k]), **said)  # fmt: skip


def _tees(sheet: mc.Sheet, hole: mc.Hole, habit: Habit) -> None:
    for colour, at in TEES:
        if habit.tees == "area":
            hole.tee(at, tee=colour)
        elif habit.tees == "node":
            sheet.point(*hole.at(at), golf="tee", tee=colour)
        elif habit.tees == "line":
            sheet.line([hole.at(at - 3.0), hole.at(at + 3.0)], golf="tee", tee=colour)


def _green(sheet: mc.Sheet, hole: mc.Hole, habit: Habit) -> None:
    if habit.greens == "area":
        hole.green()
    elif habit.greens == "node":
        sheet.point(*hole.at(hole.length), golf="green")
    if habit.second:
        hole.round(hole.length - 12.0, -32.0, 18.0, 20.0, golf="green")


def _ground(sheet: mc.Sheet, hole: mc.Hole, habit: Habit) -> None:
    sand = {"natural": "sand"} if habit.sand else {"golf": "bunker", "natural": "sand"}
    hole.round(hole.length - 8.0, 21.0, 9.0, 13.0, **sand)
    if hole.length > 300:
        bunker = mc.ellipse(*hole.at(235.0, -10.0), 9.0, 12.0)
        sheet.area(bunker, **sand)
        ring = hole.quad(130.0, hole.length - (22.0 if habit.fairway != "inner" else 40.0), -16.0, 16.0)
        if habit.fairway != "one":
            sheet.area(ring, *([bunker] if habit.fairway == "inner" else []), golf="fairway")
        hole.round(190.0, 30.0, 14.0, 40.0, natural="water")
    if habit.wood == "beside":
        sheet.area(hole.quad(60.0, hole.length - 60.0, -44.0, -34.0), natural="wood")
