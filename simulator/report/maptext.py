"""What came of a map, in words: what `holesim import-map` prints."""

from __future__ import annotations

from ..hole.maps.report import HoleReport, MapReport
from .screen import hang, wrap
from .units import YARDS, Units

RULES = (
    "A map is not the course: compare tees, greens and stakes with what you see; local rules and the"
    " committee decide."
)


def import_text(report: MapReport, units: Units = YARDS) -> str:
    """The report of a map: a line a hole, then what to look at and what was assumed, hole by hole."""
    written, total = len(report.written), len(report.holes)
    whole = sum(hole.complete for hole in report.holes)
    lines = hang(
        f"{report.source}: {written} of {total} {'hole' if total == 1 else 'holes'} written to"
        f" {report.folder}, {whole} complete."
    )
    width = min(max((4, *(len(hole.hole) for hole in report.holes))), 24) + 2
    lines.append(f"{'hole':<{width}}{'par':>3}{units.short:>6}  file, tees, and what the map lacks")
    for hole in report.holes:
        lines += _hole(hole, width, units)
    for title, kind in (("Look at", "warnings"), ("Assumed", "assumed")):
        said: dict[str, list[str]] = {}
        for hole in report.written:
            for words in getattr(hole, kind):
                said.setdefault(words, []).append(hole.hole)
        if said:
            lines.append(f"{title}:")
            for words, holes in said.items():
                which = "all" if len(holes) == written > 1 else _ranges(holes)
                lines += hang(f"- {which}: {units.sentence(words)}")
    if report.notes:
        lines.append("The map:")
        for words in report.notes:
            lines += hang(f"- {units.sentence(words)}")
    if report.attribution:
        lines += hang(f"Map data: {report.attribution}")
    return "\n".join([*lines, *wrap(RULES)])


def _hole(hole: HoleReport, width: int, units: Units) -> list[str]:
    name = hole.hole if len(hole.hole) <= width - 2 else hole.hole[: width - 5] + "..."
    if hole.file is None:
        head = f"{name:<{width}}"
        return wrap(f"not written: {units.sentence(str(hole.failed))}", " " * width, head)
    lacks = (
        f"no {', no '.join(hole.missing)}" if hole.missing else "complete" if hole.complete else "look at it"
    )
    words = f"{hole.file.rsplit('/', 1)[-1]}: {', '.join(hole.tees)}; {lacks}"
    head = f"{name:<{width}}{hole.par:>3}{units.whole(hole.length_yd or 0.0):>6}  "
    return wrap(words, " " * len(head), head)


def _ranges(names: list[str]) -> str:
    """Names of holes, numbers in a row as "1-4"."""
    parts: list[str] = []
    first = last = None
    for name in [*names, ""]:
        number = int(name) if name.isdigit() else None
        if number is not None and last is not None and number == last + 1:
            last = number
            continue
        if first is not None:
            parts.append(str(first) if first == last else f"{first}-{last}")
        first = last = number
        if number is None and name:
            parts.append(name)
    return ", ".join(parts)
