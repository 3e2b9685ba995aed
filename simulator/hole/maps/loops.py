"""Which lines make one course: grounds, loops that reuse the same numbers, and names of files."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely

from simulator.hole.maps.gather import Site
from simulator.hole.maps.lines import LONGEST_YD, SHORTEST_YD, HoleLine
from simulator.hole.maps.refs import Label, loop_in_name, slug

NEW_LOOP_YD = 400.0
"""What starting a loop counts against the walk from the green before [yd] (assumed)."""

LEAST_LOOP = 4
"""Fewest holes of a loop that is told apart by walking [holes] (assumed)."""

LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


@dataclass(eq=False)
class Slot:
    """One hole to be written: a line, and which of the holes it is played as.

    `turn` counts the labels of the line: 1 for the 10 of "1;10".
    """

    line: HoleLine
    label: Label
    turn: int
    loop: str = ""
    stem: str = ""

    @property
    def words(self) -> str:
        """The hole as a reader would call it."""
        if self.label.number is None:
            return self.line.tags.get("name") or f"without a number ({self.line.ident or self.stem})"
        return " ".join(p for p in (self.loop, f"{self.label.number}{self.label.suffix}") if p)


def slots_of(site: Site) -> tuple[list[Slot], list[str]]:
    """Every hole of a map with the name of its file, in order of loops and numbers; and what was decided."""
    notes: list[str] = []
    for line in site.lines:
        line.course = _course_of(site, line)
    slots = [
        Slot(line, label, turn, label.loop) for line in site.lines for turn, label in enumerate(line.labels)
    ]
    _loops_by_name(slots)
    _drop_lone_loops(slots)
    several = _several(slots)
    if not several:
        named = [slot.line.course for slot in slots if slot.line.course]
        for slot in slots:
            slot.line.course = named[0] if named else ""
    groups: dict[tuple[str, str, str], list[Slot]] = {}
    for slot in slots:
        key = (slot.line.course, slot.loop.casefold(), slot.label.suffix)
        groups.setdefault(key, []).append(slot)
    for (course, _, _), group in groups.items():
        numbers = [s.label.number for s in group if s.label.number is not None]
        if len(set(numbers)) < len(numbers):
            where = f" of {course}" if course and several else ""
            names = _split(group)
            if len(names) > 1:
                said = f"The numbers{where} are used by {len(names)} loops without names:"
                way = "told apart by the walk from each green to the next tee"
                notes.append(f"{said} {way}, called {', '.join(names)}.")
            else:
                twice = sorted({n for n in numbers if numbers.count(n) > 1})
                notes.append(f"Used by two hole lines{where}: number {', '.join(map(str, twice))}.")
    _name(slots, several)
    return sorted(
        slots, key=lambda s: (s.line.course, s.loop.casefold(), s.label.number or 999, s.stem)
    ), notes


def _loops_by_name(slots: list[Slot]) -> None:
    """Numbers used more than once belong to the loops that the names of the lines say ("Red 7", ref 7)."""
    plain = [slot for slot in slots if not slot.loop]
    numbers = [slot.label.number for slot in plain]
    names = {id(slot): loop_in_name(slot.line.tags, slot.label.number) for slot in plain}
    again = [s for s in plain if s.label.number is not None and numbers.count(s.label.number) > 1]
    said = [(names[id(slot)].casefold(), slot.label.number) for slot in again]
    if again and all(name for name, _ in said) and len(set(said)) == len(said):
        for slot in plain:
            slot.loop = names[id(slot)]


def _drop_lone_loops(slots: list[Slot]) -> None:
    """A loop of one hole is none: its words are the hole's own ("Mill 7") unless its number is another's.

    Nor is one of all the holes of a map: the name of the course, or "hole" in another language.
    """
    if len({slot.loop.casefold() for slot in slots if slot.label.number is not None}) == 1:
        numbers = [slot.label.number for slot in slots]
        if len(set(numbers)) == len(numbers):
            for slot in slots:
                slot.loop = ""
    for slot in slots:
        others = [o for o in slots if o is not slot and o.line.course == slot.line.course]
        alone = not any(o.loop.casefold() == slot.loop.casefold() for o in others)
        if slot.loop and alone and not any(o.label.number == slot.label.number for o in others):
            slot.loop = ""


def _several(slots: list[Slot]) -> bool:
    """Whether the map holds several courses: grounds on which the same numbers are used."""
    grounds: dict[tuple[str, int | None, str], set[str]] = {}
    for slot in slots:
        if slot.line.course:
            key = (slot.loop.casefold(), slot.label.number, slot.label.suffix)
            grounds.setdefault(key, set()).add(slot.line.course)
    return any(len(courses) > 1 for (_, number, _), courses in grounds.items() if number is not None)


def _course_of(site: Site, line: HoleLine) -> str:
    """Name of the smallest grounds that hold most of a line; "" without."""
    shape = line.shape()
    holding = [p for p in site.courses if p.area.intersection(shape).length > 0.5 * shape.length]
    if not holding:
        return ""
    best = min(holding, key=lambda piece: piece.area.area)
    return best.item.tags.get("name") or f"course {1 + site.courses.index(best)}"


def _split(group: list[Slot]) -> list[str]:
    """Tell loops apart that use the same numbers: the next tee is the near one. Returns their names.

    Fewer holes than `LEAST_LOOP` are no loop but a number used twice: nothing gets a name then.
    """
    from scipy.optimize import linear_sum_assignment

    by_number: dict[int, list[Slot]] = {}
    for slot in group:
        if slot.label.number is not None and SHORTEST_YD <= slot.line.length_yd <= LONGEST_YD:
            by_number.setdefault(slot.label.number, []).append(slot)
    count = max(map(len, by_number.values()), default=0)
    if count < 2:
        return []
    last: list[np.ndarray | None] = [None] * count
    members: list[list[Slot]] = [[] for _ in range(count)]
    for number in sorted(by_number):
        here = by_number[number]
        cost = np.full((len(here), count), NEW_LOOP_YD)
        for row, slot in enumerate(here):
            for k, end in enumerate(last):
                if end is not None:
                    cost[row, k] = float(np.hypot(*(slot.line.xy[0] - end)))
        for row, k in zip(*linear_sum_assignment(cost), strict=True):
            members[k].append(here[row])
            last[k] = here[row].line.xy[-1]
    if min(map(len, members)) < LEAST_LOOP:
        return []
    names = []
    sizes = sorted(map(len, members))
    for k, loop in enumerate(members):
        if len(loop) == sizes[-1] > sizes[-2]:
            names.append(loop[0].loop or "the main loop")
            continue
        letter = LETTERS[k] if k < len(LETTERS) else str(k + 1)
        names.append(" ".join(p for p in (loop[0].loop, letter) if p))
        for slot in loop:
            slot.loop = names[-1]
    return names


def _name(slots: list[Slot], several: bool) -> None:
    """Names of files: 07, a-07, north-course-07; holes without a number by their own name."""
    taken: set[str] = set()
    for slot in slots:
        if slot.label.number is not None:
            last = f"{slot.label.number:02d}{slot.label.suffix}"
        else:
            last = slug(slot.line.tags.get("name", "")) or "hole-without-number"
        course = slug(slot.line.course) if several else ""
        stem = "-".join(p for p in (course, slug(slot.loop), last) if p)
        name, k = stem, 2
        while name in taken:
            name, k = f"{stem}-{k}", k + 1
        slot.stem = name
        taken.add(name)


def lines_without(site: Site) -> list[str]:
    """Make lines for holes that have none: areas drawn as holes, then tees and greens of the same number.

    They are added to the site, straight from tee to green and said so; returns sentences about the rest.
    """
    from simulator.hole.maps.refs import tee_number

    said = []
    for hole in site.hole_areas:
        ends = [g for g in site.greens if hole.area.contains(g.area.centroid)]
        tees = [t for t in site.tees if hole.area.contains(t.area.centroid)]
        if not ends or not tees:
            words = "is drawn as an area without a tee and a green in it: left out."
            said.append(f"Hole {hole.item.label} {words}")
            continue
        middle = ends[0].area.centroid
        start = max(tees, key=lambda t: t.area.centroid.distance(middle))
        _add_line(site, hole.item.ident, hole.item.tags, start.area, ends[0].area)
    drawn = {label.number for line in site.lines for label in line.labels}
    ends = shapely.MultiPoint([line.xy[-1] for line in site.lines]) if site.lines else shapely.Point()
    for green in site.greens:
        numbers = [one for one in tee_number(green.item.tags) if one.number not in drawn]
        if not numbers or green.area.distance(ends) < 25.0:
            continue
        tees = [t for t in site.tees if set(tee_number(t.item.tags)) & set(numbers)]
        tees = [t for t in tees if 60.0 < t.area.centroid.distance(green.area.centroid) < 700.0]
        if tees:
            start = max(tees, key=lambda t: t.area.centroid.distance(green.area.centroid))
            _add_line(site, green.item.ident, {"ref": numbers[0].words}, start.area, green.area)
    return said


def _add_line(
    site: Site, ident: str, tags: dict[str, str], tee: shapely.Geometry, green: shapely.Geometry
) -> None:
    from simulator.hole.maps.refs import labels_of

    a, b = tee.centroid, green.centroid
    line = HoleLine(ident, tags, np.array([[a.x, a.y], [b.x, b.y]]), labels_of(tags))
    line.warnings.append("No hole line: taken as straight from tee to green.")
    site.lines.append(line)
