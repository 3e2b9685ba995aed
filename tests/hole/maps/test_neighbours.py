"""What else lies in the file of a course: other games, other loops, other courses, outlines that are not whole."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import make_course as mc
import mappers
import numpy as np
import pytest
import shapely
import small_maps as sm
from as_user import core_slowness, processor_s
from mappers import Habit

from simulator.hole import Surface, load_hole
from simulator.hole.maps import MapReport, import_map

pytest.importorskip("pyproj")


def from_xml(folder: Path, xml: mc.Xml, **attributes: str) -> MapReport:
    said = "".join(f" {k}='{v}'" for k, v in attributes.items())
    (folder / "m.osm").write_text(f"<osm version='0.6'{said}>" + "".join(xml.rows) + "</osm>", "utf-8")
    return import_map(folder / "m.osm", folder / "out")


def test_the_course_as_osm(tmp_path: Path) -> None:
    """The same nine holes from .osm as from GeoJSON."""
    sheet = mappers.drawn(Habit())
    (tmp_path / "m.osm").write_text(mc.osm(sheet), "utf-8")
    report = import_map(tmp_path / "m.osm", tmp_path / "out")
    assert [round(h.length_yd or 0.0) for h in report.holes] == list(mappers.LENGTHS)
    assert all(h.complete for h in report.holes)


@pytest.mark.parametrize("tags", [
    {"sport": "disc_golf"}, {"disc_golf": "hole"}, {"sport": "footgolf"}, {"sport": "minigolf"},
])  # fmt: skip
def test_other_games_are_left_out(tags: dict[str, str], tmp_path: Path) -> None:
    """Disc golf through the first hole, tagged with golf's words."""
    sheet = mappers.drawn(Habit())
    for k in range(9):
        sheet.line(
            [(20.0 * k, 100.0), (20.0 * k + 10.0, 200.0)], golf="hole", ref=str(k + 1), par="3", **tags
        )
        sheet.area(mc.ellipse(20.0 * k + 10.0, 200.0, 8.0, 8.0), golf="green", **tags)
    report = sm.imported(tmp_path, sheet)
    assert [h.hole for h in report.holes] == [str(k + 1) for k in range(9)]
    assert all(h.complete for h in report.holes) and any(
        "18 features of disc golf" in n for n in report.notes
    )


def test_miniature_golf_beside_the_clubhouse(tmp_path: Path) -> None:
    sheet = mappers.drawn(Habit())
    sheet.area(mc.box(-150.0, -60.0, -90.0, 20.0), leisure="miniature_golf")
    for k in range(9):
        sheet.line([(-140.0 + 4.0 * k, -40.0), (-140.0 + 4.0 * k, -28.0)], golf="hole", ref=str(k + 1))
    report = sm.imported(tmp_path, sheet)
    assert [h.hole for h in report.holes] == [str(k + 1) for k in range(9)]


def test_loops_named_in_names(tmp_path: Path) -> None:
    """27 holes, refs 1 to 9 three times, the loop only in the name."""
    sheet = mc.Sheet()
    for k, loop in enumerate(("Red", "White", "Blue")):
        for number in range(1, 10):
            sm.one_hole(sheet=sheet, x=100.0 * number + 1000.0 * k, length=380.0, up=number % 2 == 1,
                        ref=str(number), name=f"{loop} {number}")  # fmt: skip
    report = sm.imported(tmp_path, sheet)
    assert sorted(h.hole for h in report.holes) == sorted(
        f"{c} {n}" for c in ("Red", "White", "Blue") for n in range(1, 10)
    )
    assert (tmp_path / "out" / "red-07.toml").exists()


def test_the_word_for_hole_in_a_language_unknown_here_is_no_loop(tmp_path: Path) -> None:
    sheet = mc.Sheet()
    for number in range(1, 4):
        sm.one_hole(sheet=sheet, x=200.0 * number, ref="", name=f"Zulo {number}")
    report = sm.imported(tmp_path, sheet)
    assert [Path(h.file or "").name for h in report.holes] == ["01.toml", "02.toml", "03.toml"]


def test_nine_holes_drawn_once_more_without_refs(tmp_path: Path) -> None:
    """One line under another, told apart only by their names."""
    sheet, hole = sm.one_hole(ref="", name="Hole 1")
    sheet.line(hole.line(), golf="hole", par="4", handicap="5", name="Hole 10")
    assert [h.hole for h in sm.imported(tmp_path, sheet).holes] == ["1", "10"]


def test_pins_of_a_double_green_without_numbers(tmp_path: Path) -> None:
    sheet = mc.Sheet()
    sheet.area(mc.ellipse(30.0, 400.0, 90.0, 34.0, 32), golf="green")
    for k in range(2):
        sm.one_hole(sheet=sheet, x=60.0 * k, green=False, ref=str(k + 1))
        sheet.point(60.0 * k + 3.0, 402.0, golf="pin")
    for said in sm.imported(tmp_path, sheet).holes:
        hole = load_hole(said.file or "")
        assert len(hole.pins) == 1 and math.dist((hole.pin.x_yd, hole.pin.y_yd), (3, 402)) < 0.5


def test_a_relation_and_its_edge_both_tagged(tmp_path: Path) -> None:
    """A lake with an island whose outer way says natural=water too: the island stays dry."""
    xml, sheet = mc.Xml(), sm.one_hole()[0]
    for kind, shape, tags in sheet.items:
        xml.way(shape[0] if kind == "line" else [*shape[0][0], shape[0][0][0]], tags)
    outer, inner = mc.box(-60.0, 150.0, 60.0, 300.0), mc.box(-20.0, 200.0, 20.0, 250.0)
    ways = [(xml.way([*ring, ring[0]], {"natural": "water"} if k == 0 else {}), role)
            for k, (ring, role) in enumerate(((outer, "outer"), (inner, "inner")))]  # fmt: skip
    xml.relation(ways, {"type": "multipolygon", "natural": "water"})
    hole = load_hole(from_xml(tmp_path, xml).holes[0].file or "")
    assert hole.surface_at(0.0, 225.0) is Surface.ROUGH and hole.surface_at(0.0, 170.0) is Surface.WATER


def test_a_lake_cut_off_by_the_export_is_said(tmp_path: Path) -> None:
    """The far shore is not in the file: the hole beside the lake is not complete."""
    xml, sheet = mc.Xml(), sm.one_hole()[0]
    for kind, shape, tags in sheet.items:
        xml.way(shape[0] if kind == "line" else [*shape[0][0], shape[0][0][0]], tags)
    shore = xml.way([(60.0, -300.0), (40.0, 100.0), (50.0, 300.0), (70.0, 800.0)], {})
    xml.relation(
        [(shore, "outer"), (987654, "outer")],
        {"type": "multipolygon", "natural": "water", "name": "Loon Lake"},
    )
    said = from_xml(tmp_path, xml).holes[0]
    assert any("outline of Loon Lake has gaps" in w for w in said.warnings) and not said.complete


def test_a_ring_without_its_first_corner(tmp_path: Path) -> None:
    """A fairway whose node at the start is missing from the file is still a ring."""
    xml, sheet = mc.Xml(), sm.one_hole()[0]
    for kind, shape, tags in sheet.items:
        xml.way(shape[0] if kind == "line" else [*shape[0][0], shape[0][0][0]], tags)
    ring = mc.box(-20.0, 150.0, 20.0, 350.0)
    xml.way([*ring, ring[0]], {"golf": "fairway"})
    first = xml.nodes[ring[0]]
    xml.rows = [row for row in xml.rows if f'<node id="{first}"' not in row]
    hole = load_hole(from_xml(tmp_path, xml).holes[0].file or "")
    assert hole.surface_at(10.0, 300.0) is Surface.FAIRWAY


def test_a_hole_on_the_practice_ground_keeps_its_green(tmp_path: Path) -> None:
    """The driving range is drawn over the hole beside it."""
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(150.0, 460.0, -60.0, 60.0), golf="driving_range")
    said, found = sm.only(tmp_path, sheet)
    assert "green" not in said.missing and found.surface_at(0.0, 400.0) is Surface.GREEN


@pytest.mark.parametrize("tags", [{"natural": "heath"}, {"natural": "grassland"}, {"landuse": "meadow"}])
def test_long_grass_drawn_over_everything(tags: dict[str, str], tmp_path: Path) -> None:
    sheet, _hole = sm.one_hole()
    sheet.area(mc.box(-400.0, -300.0, 400.0, 800.0), **tags)
    said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(30.0, 200.0) is Surface.ROUGH
    assert any("drawn over the whole hole" in w for w in said.warnings)


def test_a_marsh_drawn_over_the_fairway(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(140.0, 380.0, -15.0, 15.0), golf="fairway")
    sheet.area(mc.box(-300.0, 120.0, 300.0, 500.0), natural="wetland")
    _said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(0.0, 250.0) is Surface.FAIRWAY and found.surface_at(0.0, 400.0) is Surface.GREEN
    assert found.surface_at(60.0, 250.0) is Surface.DRY_PENALTY


def test_a_wood_drawn_across_the_way_from_the_tee(tmp_path: Path) -> None:
    """A low ball cannot have passed where the edge of the wood was drawn: open there, trees beside it."""
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(6.0, 40.0, -4.0, 80.0), natural="wood")
    said, found = sm.only(tmp_path, sheet)
    assert all(found.surface_at(0.0, y) is not Surface.TREES for y in range(0, 60, 4))
    assert found.surface_at(20.0, 20.0) is Surface.TREES and not said.complete


def test_a_carry_over_a_marsh_stays(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(length=160.0, par="3")
    sheet.area(hole.quad(12.0, 130.0, -60.0, 60.0), natural="wetland")
    said, found = sm.only(tmp_path, sheet)
    assert (
        all(found.surface_at(0.0, y) is Surface.DRY_PENALTY for y in (20.0, 60.0, 120.0))
        and not said.warnings
    )


def test_a_corner_over_trees_stays(tmp_path: Path) -> None:
    """A carry over a wood 150 to 220 yards out is how the hole plays."""
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(150.0, 220.0, -4.0, 80.0), natural="wood")
    said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(0.0, 185.0) is Surface.TREES and not said.warnings


def test_a_clump_in_the_fairway_stays(tmp_path: Path) -> None:
    """A wood over the inside of a corner, and a clump in the fairway: as drawn, nothing to look at."""
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(140.0, 380.0, -15.0, 15.0), golf="fairway")
    sheet.area(mc.ellipse(*hole.at(260.0, 8.0), 8.0, 8.0), natural="wood")
    said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(8.0, 260.0) is Surface.TREES and not said.warnings


def test_a_course_next_door(tmp_path: Path) -> None:
    """Another club beyond the fence with the same numbers: both are written, told apart by their names."""
    sheet = mappers.drawn(Habit())
    sheet.area(mc.box(-80.0, -600.0, 730.0, 900.0), leisure="golf_course", name="Near Links")
    for k in range(4):
        sm.one_hole(sheet=sheet, x=900.0 + 90.0 * k, ref=str(k + 1), up=k % 2 == 0)
    sheet.area(mc.box(800.0, -80.0, 1300.0, 500.0), leisure="golf_course", name="Far Links")
    report = sm.imported(tmp_path, sheet)
    files = sorted(Path(h.file or "").name for h in report.holes)
    assert len([f for f in files if f.startswith("near-links-")]) == 9
    assert len([f for f in files if f.startswith("far-links-")]) == 4


def test_negative_ids_deleted_things_and_bounds(tmp_path: Path) -> None:
    """What an editor saves: numbers below zero, a box, elements that were deleted."""
    xml, sheet = mc.Xml(), sm.one_hole()[0]
    xml.next = -1000
    for kind, shape, tags in sheet.items:
        xml.way(shape[0] if kind == "line" else [*shape[0][0], shape[0][0][0]], tags)
    xml.way([(-20.0, 200.0), (20.0, 200.0), (20.0, 220.0), (-20.0, 200.0)], {"natural": "water"})
    xml.rows[-1] = xml.rows[-1].replace("<way ", "<way action='delete' ")
    xml.way([(-20.0, 250.0), (20.0, 250.0), (20.0, 270.0), (-20.0, 250.0)], {"natural": "water"})
    xml.rows[-1] = xml.rows[-1].replace("<way ", "<way visible='false' ")
    xml.rows.insert(0, "<bounds minlat='-50' minlon='-124' maxlat='-48' maxlon='-123'/>")
    hole = load_hole(from_xml(tmp_path, xml, upload="never", generator="JOSM").holes[0].file or "")
    assert not any(f.surface is Surface.WATER for f in hole.features) and hole.length_yd == pytest.approx(
        400.0, abs=0.3
    )


def test_one_hole_in_trouble_never_stops_the_rest(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Even a mistake of ours in one hole leaves the others and no file for that one."""
    from simulator.hole.maps import one_hole

    right = one_hole.plots_of

    def wrong(found: Any, line: Any, box: Any, names: Any) -> Any:
        if abs(shapely.LineString(line).length - mappers.LENGTHS[3]) < 1.0:
            raise IndexError("list index out of range")
        return right(found, line, box, names)

    monkeypatch.setattr(one_hole, "plots_of", wrong)
    report = sm.imported(tmp_path, mappers.drawn(Habit()))
    assert [h.hole for h in report.holes if h.failed] == ["4"] and len(report.written) == 8
    assert not (tmp_path / "out" / "04.toml").exists()


def test_nine_holes_played_twice_have_all_their_tees_both_times(tmp_path: Path) -> None:
    """Lines 1 and 10 one upon the other, tees behind and ahead of their start."""
    sheet, hole = sm.one_hole(ref="1", tee=False)
    sheet.line([hole.at(4.0, 3.0), hole.at(398.0)], golf="hole", ref="10", par="4", handicap="6")
    for at, colour in ((0.0, "white"), (25.0, "yellow"), (60.0, "red")):
        hole.tee(at, tee=colour)
    report = sm.imported(tmp_path, sheet)
    assert [(h.hole, h.tees) for h in report.holes] == [(n, ["white", "yellow", "red"]) for n in ("1", "10")]


def test_one_long_tee_for_two_holes(tmp_path: Path) -> None:
    """Holes 1 and 10 leave the same ground a few yards apart, each its own way."""
    sheet = mc.Sheet()
    sheet.area(mc.box(-20.0, -6.0, 20.0, 6.0), golf="tee")
    for ref, x in (("1", -15.0), ("10", 15.0)):
        sheet.line([(x, 0.0), (x * 10.0, 380.0)], golf="hole", ref=ref, par="4", handicap="3")
        sheet.area(mc.ellipse(x * 10.0, 380.0, 26.0, 30.0), golf="green")
    report = sm.imported(tmp_path, sheet)
    assert all("tee" not in h.missing for h in report.holes) and len(report.written) == 2


def test_a_line_from_ahead_of_every_tee(tmp_path: Path) -> None:
    sheet = mappers.drawn(Habit(start=112.0))
    report = sm.imported(tmp_path, sheet)
    got = [h.tees for h in report.holes]
    assert got == [["white", "yellow", "red"]] * 9


@pytest.mark.parametrize("until", [150.0, 260.0])
def test_a_coast_that_stops_in_the_middle(until: float, tmp_path: Path) -> None:
    """The file ends before the coast does: nobody knows where the sea is, and the hole is not drowned."""
    sheet, _ = sm.one_hole()
    sheet.line([(60.0, y) for y in range(-900, int(until), 25)], natural="coastline")
    said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(0.0, 200.0) is Surface.ROUGH and found.surface_at(-60.0, 200.0) is Surface.ROUGH
    assert any("coastline near the hole is not whole" in w for w in said.warnings)


def test_a_hole_across_the_road_between_two_parts_of_a_course(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole()
    for south, north in ((-60.0, 190.0), (202.0, 480.0)):
        sheet.area(mc.box(-80.0, south, 80.0, north), leisure="golf_course", name="Mudlark")
    sheet.line([(-300.0, 196.0), (300.0, 196.0)], highway="residential")
    _said, found = sm.only(tmp_path, sheet)
    places = {y: found.surface_at(0.0, y) for y in (100.0, 196.0, 300.0)}
    assert places == {100.0: Surface.ROUGH, 196.0: Surface.OUT_OF_BOUNDS, 300.0: Surface.ROUGH}
    assert found.surface_at(120.0, 100.0) is Surface.OUT_OF_BOUNDS


def test_a_hole_without_a_fairway_is_not_complete(tmp_path: Path) -> None:
    """A fairway of the hole beside it is none of its own; a par 3 needs none."""
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(140.0, 380.0, 60.0, 90.0), golf="fairway")
    hole.pin()
    sm.one_hole(sheet=sheet, x=300.0, length=150.0, par="3", ref="2")
    sheet.point(300.0, 150.0, golf="pin")
    report = sm.imported(tmp_path, sheet)
    assert [(h.missing, h.complete) for h in report.holes] == [(["fairway"], False), ([], True)]


def test_a_large_map_in_ten_seconds(tmp_path: Path) -> None:
    """Five megabytes of streets, houses and trees round the course, counted in processor time."""
    data = sm.collection(mappers.drawn(Habit()))
    rng = np.random.default_rng(7)
    corners = np.array([[0.0, 0.0], [1.5e-4, 0.0], [1.5e-4, 1e-4], [0.0, 1e-4], [0.0, 0.0]])
    for k, place in enumerate(rng.uniform(-0.05, 0.05, (22_000, 2)) + [mc.LON, mc.LAT]):
        ring = np.round(place + corners, 7).tolist()
        kind, rows, tags = (
            (
                "Polygon",
                [ring],
                {"building": "house", "addr:street": "Nowhere Street", "addr:housenumber": str(k)},
            ),
            (
                "LineString",
                ring[:4],
                {"highway": "residential", "surface": "asphalt", "name": "Nowhere Street"},
            ),
            ("Point", ring[0], {"natural": "tree", "leaf_type": "broadleaved"}),
        )[min(k % 5, 2)]
        data["features"].append({"type": "Feature", "properties": {"@id": f"way/{k}", **tags},
                                 "geometry": {"type": kind, "coordinates": rows}})  # fmt: skip
    path = tmp_path / "m.json"
    path.write_text(json.dumps(data))
    assert path.stat().st_size > 5_000_000
    start = processor_s()
    report = import_map(path, tmp_path / "out")
    assert len(report.written) == 9 and processor_s() - start < 10.0 * core_slowness()


def test_holes_without_a_line_are_named(tmp_path: Path) -> None:
    """Out and back, of no length, without any place: none of them vanishes without a word."""
    sheet = mappers.drawn(Habit())
    sheet.line([(0.0, 0.0), (0.0, 300.0), (0.0, 0.0)], golf="hole", ref="13")
    sheet.line([(0.0, 0.0), (0.0, 0.0)], golf="hole", ref="12")
    data = sm.collection(sheet)
    data["features"].append(
        {"type": "Feature", "geometry": None, "properties": {"golf": "hole", "ref": "11"}}
    )
    (tmp_path / "m.json").write_text(json.dumps(data))
    report = import_map(tmp_path / "m.json", tmp_path / "out")
    said = " ".join(report.notes)
    assert len(report.written) == 9 and "hole 11 among them" in said
    assert all(f"Hole {n}: no line from tee to green: left out." in said for n in ("12", "13"))


def test_no_line_ends_on_the_green_it_passes(tmp_path: Path) -> None:
    """A par 3 played past another green 40 yards short of its own: that one is left alone."""
    sheet, hole = sm.one_hole(length=180.0, par="3")
    sheet.area(mc.ellipse(*hole.at(130.0, 6.0), 22.0, 22.0), golf="green")
    said, found = sm.only(tmp_path, sheet)
    assert said.length_yd == pytest.approx(180.0, abs=0.3) and found.pin.y_yd == pytest.approx(180.0, abs=0.3)


def test_a_line_ends_between_two_greens_of_one_hole(tmp_path: Path) -> None:
    """Two greens, the line ends between them on neither: the nearer one, and the line does not turn back."""
    sheet, hole = sm.one_hole(green=False)
    sheet.area(mc.ellipse(*hole.at(398.0, -26.0), 26.0, 30.0), golf="green")
    sheet.area(mc.ellipse(*hole.at(402.0, 30.0), 26.0, 30.0), golf="green")
    said, found = sm.only(tmp_path, sheet)
    assert "green" not in said.missing and found.bearing_deg is not None and 350.0 < found.bearing_deg < 358.0
    assert any("belongs to no hole line" in n for n in sm.imported(tmp_path, sheet).notes)
