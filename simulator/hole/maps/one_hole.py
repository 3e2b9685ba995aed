"""One hole of a map: put together in the frame of its line, checked, written."""

from __future__ import annotations

import tomllib
from collections import Counter
from pathlib import Path

import numpy as np
import shapely

from simulator.errors import UnwritableError
from simulator.files import NO_ROOM, write_text
from simulator.hole.maps.elevation import spots_of
from simulator.hole.maps.facts import index_of, name_of, par_of, say_length
from simulator.hole.maps.frame import Frame, box_round
from simulator.hole.maps.gather import Site
from simulator.hole.maps.greens import HoleGreen
from simulator.hole.maps.ground import Around, around
from simulator.hole.maps.lines import LONGEST_YD, SHORTEST_YD, HoleLine, clean
from simulator.hole.maps.loops import Slot
from simulator.hole.maps.model import Settings
from simulator.hole.maps.pins import SHARED_YD, pins_of, settled_pins
from simulator.hole.maps.plots import Names, Plot, plots_of, trees_of
from simulator.hole.maps.report import HoleReport, MapReport
from simulator.hole.maps.tees import HoleTees
from simulator.hole.maps.write import HoleText
from simulator.hole.sketch import read_sketch
from simulator.toml_text import in_metres

TEE_RADIUS_YD = 6.0
"""No tree stands so near a tee [yd] (assumed)."""

NamedSpot = tuple[str, float, float]
"""Name, x and y [yd]."""


def make_hole(
    site: Site,
    slot: Slot,
    green: HoleGreen,
    tees: HoleTees,
    wanted: Settings,
    report: MapReport,
    said: HoleReport,
) -> None:
    """Make, check and write one hole; its report is filled on the way.

    Raises
    ------
    ValueError
        A line, tee or green that no hole can be made of; a file that is there already.
    FileError
        No place to write it.
    """
    text = _drawn(site, slot, green, tees, wanted, said)
    text.attribution = report.attribution
    text.comments = _comments(slot, said, report)
    toml, path = text.toml(), Path(report.folder) / f"{slot.stem}.toml"
    toml = in_metres(toml) if wanted.metric else toml
    hole = read_sketch(tomllib.loads(toml), path.name)
    said.par, said.length_yd, said.stroke_index = hole.par, round(hole.length_yd, 1), hole.stroke_index
    said.tees, said.pins = [t.name for t in hole.tees], [p.name for p in hole.pins]
    said.ground = dict(Counter(p.key for p in text.plots))
    if text.trees:
        said.ground["tree"] = len(text.trees)
    _write(path, toml, report.folder, wanted.replace)
    said.file = str(path)


def _drawn(
    site: Site, slot: Slot, green: HoleGreen, tees: HoleTees, wanted: Settings, said: HoleReport
) -> HoleText:
    """What the hole file says but for its comments, in the frame of the line."""
    line = slot.line
    said.name = name_of(slot)
    said.assumed += [*line.assumed, *tees.assumed]
    said.warnings += line.warnings
    if green.plain:
        said.missing.append("green")
    if not tees.mapped:
        said.missing.append("tee")
    corners = _corners(line)
    frame = Frame.of(corners)
    local = np.round(frame.xy(corners), 1)
    own_green = frame.area(green.area)
    tee_spots = _off_the_green(_in_frame(tees.spots, frame), own_green, said)
    shared = _is_shared(site, line, green)
    pins = pins_of(site, green.area, line, slot.label, said.assumed)

    box = box_round(np.vstack([local, [t[1:] for t in tee_spots], shapely.get_coordinates(own_green)]))
    names = Names(wanted.metric)
    ground = around(site, corners, green, tees, frame, box, wanted.outside_is_out, wanted.sea_is_red)
    plots = plots_of(ground, local, box, names)
    pads = [shapely.Point(x, y).buffer(TEE_RADIUS_YD) for _, x, y in tee_spots]
    off = shapely.union_all([*(p.area for p in plots if p.key in ("green", "tee_ground")), *pads])
    trees = trees_of(site, frame, local, ground, off, names)
    heights = _heights(site, frame, local, own_green, said)
    pin_spots = settled_pins(_in_frame(pins, frame), plots, shapely.Point(local[-1]), shared)
    _say_pin(pin_spots, shared, said)

    par = par_of(slot, said)
    if par > 3 and not _has_fairway(plots, local):
        said.missing.append("fairway")
        said.assumed.append("No fairway in the map on its line: rough all the way.")
    index = index_of(slot, said)
    say_length(line, said)
    _say_ground(ground, said)
    bearing_deg = round(frame.bearing_deg, 1) % 360.0
    return HoleText(said.name, par, local, tee_spots, pin_spots, plots, trees, heights, index, bearing_deg)


def _corners(line: HoleLine) -> np.ndarray:
    """Corners of a line that may be a hole's, float64[n, 2]."""
    if not SHORTEST_YD <= line.length_yd <= LONGEST_YD:
        raise ValueError(
            f"its line is {line.length_yd:,.0f} yd long; allowed are {SHORTEST_YD:.0f} to {LONGEST_YD:.0f} yd"
        )
    corners = clean(line.xy)
    if corners is None:
        raise ValueError("its line doubles back on itself")
    return corners


def _in_frame(spots: list[NamedSpot], frame: Frame) -> list[NamedSpot]:
    """Named places of the map in the frame of the hole."""
    return [(name, *frame.xy(np.array([[x, y]]))[0].tolist()) for name, x, y in spots]


def _off_the_green(tees: list[NamedSpot], green: shapely.Geometry, said: HoleReport) -> list[NamedSpot]:
    """Tees without those that lie on the green."""
    on_green = [tee for tee in tees if green.intersects(shapely.Point(tee[1:]))]
    if len(on_green) == len(tees):
        raise ValueError("its tee lies on its green")
    said.warnings += [f"Tee {tee[0]} lies on the green: left out." for tee in on_green]
    return [tee for tee in tees if tee not in on_green]


def _heights(
    site: Site, frame: Frame, local: np.ndarray, green: shapely.Geometry, said: HoleReport
) -> list[tuple[float, float, float]]:
    """Spot heights of the hole; none where the map has none."""
    if not len(site.heights):
        return []
    xyz = np.column_stack([frame.xy(site.heights[:, :2]), site.heights[:, 2]])
    heights, words = spots_of(xyz, shapely.LineString(local), green)
    said.assumed += words
    return heights


def _say_pin(pins: list[NamedSpot], shared: bool, said: HoleReport) -> None:
    """Report a pin that was put where the map has none."""
    if pins[0][0] != "middle":
        return
    said.missing.append("pin")
    said.assumed.append(
        "The green is another hole's too: the pin is where the line ends."
        if shared
        else "The pin is in the middle of the green."
    )


def _has_fairway(plots: list[Plot], local: np.ndarray) -> bool:
    """Whether fairway lies on the line."""
    play = shapely.LineString(local)
    return any(p.key == "fairway" and p.ground.word == "fairway" and p.area.intersects(play) for p in plots)


def _say_ground(ground: Around, said: HoleReport) -> None:
    """Report what was taken for granted of the ground, and what to look at."""
    said.assumed += [words for words in ground.assumed if words not in said.assumed]
    said.warnings += ground.warnings


def _write(path: Path, toml: str, folder: str, replace: bool) -> None:
    """Write a hole file, over one that is there only if asked to."""
    try:
        if path.exists() and not replace:
            raise ValueError(f"{path} is there already (--force writes over it)")
        path.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise UnwritableError(folder, error.strerror or str(error), error.errno in NO_ROOM) from None
    write_text(path, toml)


def _is_shared(site: Site, line: HoleLine, green: HoleGreen) -> bool:
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
