"""Name, par, stroke index and length of a hole: what the map says, and what is made of its silence."""

from __future__ import annotations

from collections.abc import Sequence

from simulator.hole.check import LENGTH_FOR_PAR_YD
from simulator.hole.maps.lines import HoleLine
from simulator.hole.maps.loops import Slot
from simulator.hole.maps.refs import read_indexes, read_par
from simulator.hole.maps.report import HoleReport
from simulator.hole.maps.tags import BACK_TO_FRONT, has_unit, length_yd

PAR_UP_TO_YD: tuple[tuple[float, int], ...] = ((250.0, 3), (470.0, 4), (690.0, 5))
"""Par taken for a length [yd]: the middle of where the men's ranges of the Rules of Handicapping overlap
(Appendix F, from memory: par 3 to 260, par 4 240-490, par 5 450-710)."""

LENGTH_SHARE = 0.06
"""A length tag that differs from the line by more than this share is said (assumed)."""


def name_of(slot: Slot) -> str:
    """The name of a hole, at most 60 characters."""
    given = slot.line.tags.get("name", "")
    if slot.label.number is None:
        return (given or "Hole without a number")[:60].strip()
    words = f"Hole {slot.words}"
    if given and not given.replace(" ", "").isdigit() and given.casefold() != words.casefold():
        return (given if len(slot.line.labels) == 1 else f"{given} ({slot.label.number})")[:60].strip()
    return words[:60]


def par_of(slot: Slot, said: HoleReport) -> int:
    """Par: the map's, of several that of this turn; by length when there is none or it is absurd."""
    line = slot.line
    found = read_par(line.tags.get("par"))
    if not found:
        tees = [k for k in line.tags if k.startswith("par:")]
        tees.sort(key=lambda k: BACK_TO_FRONT.index(k[4:]) if k[4:] in BACK_TO_FRONT else len(BACK_TO_FRONT))
        found = [par for key in tees for par in read_par(line.tags[key])][:1]
        if found:
            said.assumed.append(f"Par {found[0]} is that of its {tees[0][4:]} tee.")
    length = line.length_yd
    by_length = next((par for most, par in PAR_UP_TO_YD if length <= most), 6)
    if not found:
        said.missing.append("par")
        said.assumed.append(f"Par {by_length} by its length of {length:.0f} yd.")
        return by_length
    par = _of_turn(slot, found)
    if len(set(found)) > 1 and len(found) != len(line.labels):
        said.assumed.append(f"Of the pars {', '.join(map(str, found))} in the map the first counts.")
    low, high = LENGTH_FOR_PAR_YD[par]
    if not low <= length <= high:
        said.warnings.append(
            f"The map says par {par}, the line is {length:.0f} yd: par {by_length} by its length."
        )
        return by_length
    return par


def index_of(slot: Slot, said: HoleReport) -> int | None:
    """Stroke index: the map's, of several that of this turn."""
    found = read_indexes(slot.line.tags)
    if not found:
        given = slot.line.tags.get("handicap")
        if given:
            said.warnings.append(f"Stroke index {given[:20]!r} is none from 1 to 18: left out.")
        said.missing.append("stroke index")
        return None
    return _of_turn(slot, found)


def _of_turn(slot: Slot, found: Sequence[int]) -> int:
    """Of the numbers the map gives a line that of this turn of it; the first where there are too few."""
    return found[slot.turn] if slot.turn < len(found) else found[0]


def say_length(line: HoleLine, said: HoleReport) -> None:
    """Compare a length tag, in metres or yards, with the line."""
    for key in ("dist", "length", "distance", "dist:white", "dist:yellow"):
        text = line.tags.get(key)
        if text is None:
            continue
        ways = [length_yd(text)] if has_unit(text) else [length_yd(text, "m"), length_yd(text, "yd")]
        given = [way for way in ways if way is not None and way > 30.0]
        if given and not any(abs(way - line.length_yd) <= LENGTH_SHARE * line.length_yd for way in given):
            said.warnings.append(f"The map says {key} {text[:20]}, its line is {line.length_yd:.0f} yd long.")
        return
