"""From a map file to hole files: everything above put together, one hole at a time."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import shapely

from simulator.errors import FileError, SimulatorError, UnwritableError
from simulator.hole.maps import greens
from simulator.hole.maps.elevation import read_points
from simulator.hole.maps.gather import Site, gather
from simulator.hole.maps.kinds import golf_kind
from simulator.hole.maps.lines import without_copies
from simulator.hole.maps.loops import Slot, lines_without, slots_of
from simulator.hole.maps.model import OSM_ATTRIBUTION, MapData, Settings
from simulator.hole.maps.one_hole import make_hole
from simulator.hole.maps.reading import read_map
from simulator.hole.maps.report import HoleReport, MapReport
from simulator.hole.maps.tees import HoleTees, assign_tees

MOST_HOLES = 400
"""Most holes of one map: more is a whole county."""


def import_map(
    path_or_name: str | Path,
    folder: str | Path,
    settings: Settings | None = None,
    progress: Callable[[str], None] | None = None,
) -> MapReport:
    """Read a map and write a hole file for every hole in it.

    Parameters
    ----------
    path_or_name : GeoJSON or .osm file.
    folder : where the holes go; made when the first one is ready.
    progress : told the words of every hole as it is done.

    Returns
    -------
    MapReport
        A hole that fails is in it with the reason; the others are written.

    Raises
    ------
    FileError
        The map or the CSV of heights cannot be used at all.
    UnwritableError
        The folder cannot be written, or the disk is full: holes written before that stay.
    """
    wanted = settings or Settings()
    data = read_map(path_or_name)
    site = gather(data)
    if wanted.elevation is not None:
        site.heights = read_points(wanted.elevation, site.plane)
    attribution = _attribution(data, wanted)
    report = MapReport(data.source, str(folder), attribution or None)
    left_over = lines_without(site)
    site.lines, twice = without_copies(site.lines)
    greens.set_directions(site)
    slots, loops = slots_of(site)
    if not slots:
        raise FileError(
            data.source,
            "",
            f"no hole line ({len(site.greens)} greens, {len(site.tees) + len(site.tee_points)} tees"
            f"{_points(site)})",
            "a line golf=hole from tee to green for every hole, with its number in ref",
        )
    if len(slots) > MOST_HOLES:
        raise FileError(
            data.source, "", f"{len(slots)} holes", f"at most {MOST_HOLES}: cut the map to one course"
        )
    found = {id(line): greens.green_of(site, line) for line in site.lines}
    tees = assign_tees(site)
    tees_of = {(id(site.lines[k]), turn): of_hole for (k, turn), of_hole in tees.items()}
    for slot in slots:
        of_hole = tees_of[id(slot.line), slot.turn]
        said = _tried(site, slot, found[id(slot.line)], of_hole, wanted, report)
        report.holes.append(said)
        if progress is not None:
            progress(f"hole {said.hole}: {said.failed or 'written'}")
    report.notes = [*data.notes, *site.notes, *left_over, *twice, *loops, *_unused(site, found)]
    return report


def _attribution(data: MapData, wanted: Settings) -> str:
    """The line the files carry; a note where the map does not say whose data it is."""
    if wanted.attribution is not None:
        return wanted.attribution
    if data.attribution is None:
        data.notes.append(f"The map does not say whose data it is: taken as {OSM_ATTRIBUTION}.")
    return data.attribution or OSM_ATTRIBUTION


def _tried(
    site: Site, slot: Slot, green: greens.HoleGreen, tees: HoleTees, wanted: Settings, report: MapReport
) -> HoleReport:
    """What came of a hole: no hole may stop the others, but a place that cannot be written does."""
    said = HoleReport(slot.words)
    try:
        make_hole(site, slot, green, tees, wanted, report, said)
    except UnwritableError:
        raise
    except (SimulatorError, shapely.errors.ShapelyError, ValueError, ArithmeticError) as error:
        said.failed, said.file = " ".join(str(error).split())[:200], None
    except (LookupError, TypeError, AttributeError) as error:
        words = f"{type(error).__name__}: {' '.join(str(error).split())[:120]}"
        said.failed, said.file = f"a mistake of ours, please report it ({words})", None
    said.warnings = list(dict.fromkeys(said.warnings))
    return said


def _points(site: Site) -> str:
    """Words about holes that are only points, as an export of centres has them; "" without."""
    count = sum(golf_kind(pin.tags) == "hole" for pin in site.pins)
    return f"; {count} golf=hole are points, not lines" if count else ""


def _unused(site: Site, found: dict[int, greens.HoleGreen]) -> list[str]:
    """Greens that no hole line ends on, in words."""
    used = {id(green.piece) for green in found.values() if green.piece is not None}
    taken = [green.area for green in found.values() if not green.plain]
    loose = [
        g for g in site.greens if id(g) not in used and not any(g.area.intersects(area) for area in taken)
    ]
    notes = []
    if loose:
        named = [g.item.label for g in loose if g.item.label != "unnamed"]
        names = f": {', '.join(named[:6])}{', ...' if len(named) > 6 else ''}" if named else ""
        many = (
            "1 green belongs to no hole line"
            if len(loose) == 1
            else f"{len(loose)} greens belong to no hole line"
        )
        notes.append(f"{many}{names}.")
    count = len(site.practice_greens)
    if count:
        notes.append(
            "1 practice green belongs to no hole."
            if count == 1
            else f"{count} practice greens belong to no hole."
        )
    return notes
