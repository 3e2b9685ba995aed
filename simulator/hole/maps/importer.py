"""From a map file to hole files: everything above put together, one hole at a time."""

from __future__ import annotations

import tomllib
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import shapely

from simulator.errors import FileError, SimulatorError
from simulator.files import write_text
from simulator.hole.maps import greens
from simulator.hole.maps.elevation import read_points, spots_of
from simulator.hole.maps.facts import index_of, name_of, par_of, say_length
from simulator.hole.maps.frame import Frame, box_round
from simulator.hole.maps.gather import Site, gather
from simulator.hole.maps.ground import around
from simulator.hole.maps.kinds import golf_kind
from simulator.hole.maps.lines import LONGEST_YD, SHORTEST_YD, HoleLine, clean, without_copies
from simulator.hole.maps.loops import Slot, lines_without, slots_of
from simulator.hole.maps.model import OSM_ATTRIBUTION
from simulator.hole.maps.pins import SHARED_YD, pins_of, settled_pins
from simulator.hole.maps.plots import Names, plots_of, trees_of
from simulator.hole.maps.reading import read_map
from simulator.hole.maps.report import HoleReport, MapReport
from simulator.hole.maps.tees import HoleTees, assign_tees
from simulator.hole.maps.write import HoleText
from simulator.hole.sketch import read_sketch
from simulator.toml_text import in_metres

MOST_HOLES = 400
"""Most holes of one map: more is a whole county."""


@dataclass(frozen=True)
class Settings:
    """What the user decides about a map.

    Parameters
    ----------
    elevation : CSV of points with heights.
    outside_is_out : the outline of the course is its boundary.
    sea_is_red : the sea is a red penalty area, else it is out of bounds.
    attribution : line the files carry; None takes the map's own, "" none.
    replace : write over hole files that are there already.
    metric : lengths in the files are metres.
    """

    elevation: str | None = None
    outside_is_out: bool = True
    sea_is_red: bool = False
    attribution: str | None = None
    replace: bool = False
    metric: bool = False


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
    """
    wanted = settings or Settings()
    data = read_map(path_or_name)
    site = gather(data)
    if wanted.elevation is not None:
        site.heights = read_points(wanted.elevation, site.plane)
    attribution = wanted.attribution
    if attribution is None:
        attribution = data.attribution or OSM_ATTRIBUTION
        if data.attribution is None:
            data.notes.append(f"The map does not say whose data it is: taken as {attribution}.")
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
        said = HoleReport(slot.words)
        try:
            _one(site, slot, found[id(slot.line)], tees_of[id(slot.line), slot.turn], wanted, report, said)
        except (SimulatorError, shapely.errors.ShapelyError, ValueError, ArithmeticError) as error:
            said.failed, said.file = " ".join(str(error).split())[:200], None
        except (LookupError, TypeError, AttributeError) as error:  # no hole may stop the others
            words = f"{type(error).__name__}: {' '.join(str(error).split())[:120]}"
            said.failed, said.file = f"a mistake of ours, please report it ({words})", None
        said.warnings = list(dict.fromkeys(said.warnings))
        report.holes.append(said)
        if progress is not None:
            progress(f"hole {said.hole}: {said.failed or 'written'}")
    report.notes = [*data.notes, *site.notes, *left_over, *twice, *loops, *_unused(site, found)]
    return report


def _points(site: Site) -> str:
    """Words about holes that are only points, as an export of centres has them; "" without."""
    count = sum(golf_kind(pin.tags) == "hole" for pin in site.pins)
    return f"; {count} golf=hole are points, not lines" if count else ""


def _one(
    site: Site,
    slot: Slot,
    green: greens.HoleGreen,
    tees: HoleTees,
    wanted: Settings,
    report: MapReport,
    said: HoleReport,
) -> None:
    """Make, check and write one hole; its report is filled on the way."""
    line = slot.line
    said.name = name_of(slot)
    said.assumed += [*line.assumed, *tees.assumed]
    said.warnings += line.warnings
    if green.plain:
        said.missing.append("green")
    if not tees.mapped:
        said.missing.append("tee")
    if not SHORTEST_YD <= line.length_yd <= LONGEST_YD:
        raise ValueError(
            f"its line is {line.length_yd:,.0f} yd long; allowed are {SHORTEST_YD:.0f} to {LONGEST_YD:.0f} yd"
        )
    corners = clean(line.xy)
    if corners is None:
        raise ValueError("its line doubles back on itself")
    frame = Frame.of(corners)
    local = np.round(frame.xy(corners), 1)
    names = Names(wanted.metric)
    play = shapely.LineString(local)
    own_green = frame.area(green.area)
    tee_spots = [(name, *frame.xy(np.array([[x, y]]))[0].tolist()) for name, x, y in tees.spots]
    on_green = [t for t in tee_spots if own_green.intersects(shapely.Point(t[1:]))]
    if len(on_green) == len(tee_spots):
        raise ValueError("its tee lies on its green")
    for tee in on_green:
        said.warnings.append(f"Tee {tee[0]} lies on the green: left out.")
        tee_spots.remove(tee)
    shared = _is_shared(site, line, green)
    pins = pins_of(site, green.area, line, slot.label, said.assumed)
    box = box_round(np.vstack([local, [t[1:] for t in tee_spots], shapely.get_coordinates(own_green)]))
    around_it = around(site, corners, green, tees, frame, box, wanted.outside_is_out, wanted.sea_is_red)
    plots = plots_of(around_it, local, box, names)
    pads = [shapely.Point(x, y).buffer(6.0) for _, x, y in tee_spots]
    off = shapely.union_all([*(p.area for p in plots if p.key in ("green", "tee_ground")), *pads])
    trees = trees_of(site, frame, local, around_it, off, names)
    heights: list[tuple[float, float, float]] = []
    if len(site.heights):
        xyz = np.column_stack([frame.xy(site.heights[:, :2]), site.heights[:, 2]])
        heights, words = spots_of(xyz, play, own_green)
        said.assumed += words
    pin_spots = [(name, *frame.xy(np.array([[x, y]]))[0].tolist()) for name, x, y in pins]
    pin_spots = settled_pins(pin_spots, plots, shapely.Point(local[-1]), shared)
    if pin_spots[0][0] == "middle":
        said.missing.append("pin")
        said.assumed.append(
            "The green is another hole's too: the pin is where the line ends."
            if shared
            else "The pin is in the middle of the green."
        )
    par = par_of(slot, said)
    if par > 3 and not any(
        p.key == "fairway" and p.ground.word == "fairway" and p.area.intersects(play) for p in plots
    ):
        said.missing.append("fairway")
        said.assumed.append("No fairway in the map on its line: rough all the way.")
    text = HoleText(
        said.name,
        par,
        local,
        tee_spots,
        pin_spots,
        plots,
        trees,
        heights,
        index_of(slot, said),
        round(frame.bearing_deg, 1) % 360.0,
        report.attribution,
    )
    say_length(line, said)
    said.assumed += [words for words in around_it.assumed if words not in said.assumed]
    said.warnings += around_it.warnings
    text.comments = _comments(slot, said, report)
    toml, path = text.toml(), Path(report.folder) / f"{slot.stem}.toml"
    toml = in_metres(toml) if wanted.metric else toml
    hole = read_sketch(tomllib.loads(toml), path.name)
    said.par, said.length_yd, said.stroke_index = hole.par, round(hole.length_yd, 1), hole.stroke_index
    said.tees, said.pins = [t.name for t in hole.tees], [p.name for p in hole.pins]
    said.ground = dict(Counter(p.key for p in plots))
    if trees:
        said.ground["tree"] = len(trees)
    try:
        if path.exists() and not wanted.replace:
            raise ValueError(f"{path} is there already (--force writes over it)")
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise FileError(
            report.folder, "", error.strerror or "no place to write", "a folder of yours"
        ) from None
    write_text(path, toml)
    said.file = str(path)


def _is_shared(site: Site, line: HoleLine, green: greens.HoleGreen) -> bool:
    """Whether another line ends elsewhere on the same green."""
    ends = [one.xy[-1] for one in site.lines if one is not line]
    return any(
        np.hypot(*(end - line.xy[-1])) > SHARED_YD and green.area.distance(shapely.Point(end)) < 1.0
        for end in ends
    )


def _comments(slot: Slot, said: HoleReport, report: MapReport) -> list[str]:
    """The head of a file: what it is, where it comes from, what is not from the map."""
    where = f", {slot.line.course}" if slot.line.course else ""
    head = [f"{said.name}{where}: made from the map {Path(report.source).name}."]
    if report.attribution:
        head.append(f"Map data: {report.attribution}")
    head += [
        "",
        "Places in yards: x right and y ahead of the start of the line of play, y along its first leg.",
    ]
    if said.missing:
        head.append(f"Not in the map: {', '.join(said.missing)}.")
    if said.assumed or said.warnings:
        head += ["", "Look at this before you trust it:"] if said.warnings else [""]
        head += [f"- {words}" for words in [*said.warnings, *said.assumed]]
    return head


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
