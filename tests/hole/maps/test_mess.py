"""One quirk of real maps at a time, on maps of one or two holes."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import make_course as mc
import numpy as np
import pytest
import shapely
import small_maps as sm

from simulator.hole import Surface, load_hole
from simulator.hole.maps import Settings, import_map
from simulator.hole.maps.model import OSM_ATTRIBUTION

pytest.importorskip("pyproj")


def names(folder: Path) -> list[str]:
    return sorted(p.name for p in (folder / "out").iterdir())


# -- where on Earth ------------------------------------------------------------------------------------


@pytest.mark.parametrize("place", [(180.0, -17.0), (-180.0, 65.0), (0.0, 0.0), (-3.0, 65.0), (179.9999, 51.0)])
def test_anywhere_on_earth(tmp_path: Path, place: tuple[float, float]) -> None:
    """The same hole, across the line of 180 degrees, on the equator, far north: the same to a tenth of a yard."""
    sheet, hole = sm.one_hole()
    hole.round(220.0, 0.0, 80.0, 60.0, natural="water")
    path = sm.write_map(tmp_path, sheet, *place)
    report = import_map(path, tmp_path / "out")
    found = load_hole(report.holes[0].file or "")
    assert found.length_yd == pytest.approx(400.0, abs=0.1) and found.bearing_deg == pytest.approx(0.0, abs=0.1)
    pond = next(f for f in found.features if f.surface is Surface.WATER)
    assert pond.area.bounds == pytest.approx((-40.0, 190.0, 40.0, 250.0), abs=0.6)


def test_the_seam_as_a_standard_cuts_it(tmp_path: Path) -> None:
    """RFC 7946, 3.1.9: what crosses 180 degrees is cut into parts there; the parts are one pond again."""
    sheet, _hole = sm.one_hole()
    data = sm.collection(sheet, 180.0, 10.0)
    ring = mc.degrees(mc.box(-40.0, 200.0, 40.0, 240.0), 180.0, 10.0)
    (w0, s), (e0, n) = (ring[0], ring[2])
    west, east = (w0, 180.0), (-180.0, e0)
    polygons = [[[[x0, s], [x1, s], [x1, n], [x0, n], [x0, s]]] for x0, x1 in (west, east)]
    data["features"].append({"type": "Feature", "properties": {"natural": "water"},
                             "geometry": {"type": "MultiPolygon", "coordinates": polygons}})  # fmt: skip
    (tmp_path / "map.json").write_text(json.dumps(data))
    report = import_map(tmp_path / "map.json", tmp_path / "out")
    found = load_hole(report.holes[0].file or "")
    water = [f.area for f in found.features if f.surface is Surface.WATER]
    assert shapely.union_all(water).area == pytest.approx(80.0 * 40.0, rel=0.01)


# -- numbers, loops, courses ---------------------------------------------------------------------------


def test_one_line_played_as_two_holes(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole(length=470.0, ref="1;10", par="4;5", handicap="7;2")
    report = sm.imported(tmp_path, sheet)
    assert [(h.hole, h.par, h.stroke_index) for h in report.holes] == [("1", 4, 7), ("10", 5, 2)]
    assert names(tmp_path) == ["01.toml", "10.toml"]


def test_one_line_played_as_two_holes_from_tees_and_to_pins_of_their_own(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(ref="1;10", tee=False)
    hole.tee(0.0, ref="1", tee="white")
    hole.tee(40.0, 12.0, ref="10", tee="white")
    hole.tee(70.0, tee="red")  # says no number: both holes'
    hole.pin(-8.0, ref="1")
    hole.pin(8.0, ref="10")
    one, ten = (load_hole(h.file or "") for h in sm.imported(tmp_path, sheet).holes)
    for found, away in ((one, (392.0, 322.0)), (ten, (math.hypot(368.0, 12.0), 338.0))):
        (pin,) = found.pins
        assert [t.name for t in found.tees] == ["white", "red"]
        assert [math.hypot(pin.x_yd - t.x_yd, pin.y_yd - t.y_yd) for t in found.tees] == pytest.approx(away, abs=0.3)
        # the other hole's tee is ground there all the same
        assert sum(f.surface is Surface.TEE for f in found.features) == 3


def test_two_nines_on_the_same_ground(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(ref="1")
    sheet.line(hole.line(), golf="hole", ref="10", par="5", handicap="2")
    report = sm.imported(tmp_path, sheet)
    assert [(h.hole, h.par) for h in report.holes] == [("1", 4), ("10", 5)]


@pytest.mark.parametrize("tags", [
    [{"ref": "A1"}, {"ref": "B1"}],
    [{"ref": "East 1"}, {"ref": "West 1"}],
    [{"golf:course:name": "Gull Loop"}, {"golf:course:name": "Tern Loop"}],
])  # fmt: skip
def test_loops_by_their_names(tmp_path: Path, tags: list[dict[str, str]]) -> None:
    sheet = mc.Sheet()
    for k, own in enumerate(tags):
        sm.one_hole(sheet=sheet, x=300.0 * k, **own)
    report = sm.imported(tmp_path, sheet)
    assert len(report.written) == 2 and not any("loops without names" in note for note in report.notes)
    stems = {f"{'-'.join(next(iter(own.values())).lower().replace('1', '').split()) or 'x'}" for own in tags}
    assert {n.removesuffix("-01.toml") for n in names(tmp_path)} == stems


def test_two_courses_side_by_side(tmp_path: Path) -> None:
    sheet = mc.Sheet()
    for k, name in enumerate(("Upper Ooze", "Lower Ooze")):
        sm.one_hole(sheet=sheet, x=500.0 * k)
        sheet.area(mc.box(500.0 * k - 200.0, -60.0, 500.0 * k + 200.0, 500.0), leisure="golf_course", name=name)
    sm.imported(tmp_path, sheet)
    assert names(tmp_path) == ["lower-ooze-01.toml", "upper-ooze-01.toml"]


def test_a_number_used_twice(tmp_path: Path) -> None:
    sheet = mc.Sheet()
    for k in range(3):
        sm.one_hole(sheet=sheet, x=400.0 * k, ref="7" if k else "6")
    report = sm.imported(tmp_path, sheet)
    assert names(tmp_path) == ["06.toml", "07-2.toml", "07.toml"]
    assert any("Used by two hole lines" in note for note in report.notes)


def test_a_hole_without_a_number(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole(ref="", name="Razorbill")
    _said, hole = sm.only(tmp_path, sheet)
    assert names(tmp_path) == ["razorbill.toml"] and hole.name == "Razorbill"


def test_another_tee_drawn_as_a_line(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    sheet.line([hole.at(60.0, 5.0), hole.at(400.0)], golf="hole", ref="1", par="4", tee="red")
    _said, found = sm.only(tmp_path, sheet)
    assert [t.name for t in found.tees] == ["white", "red"]
    assert found.with_tee("red").length_yd == pytest.approx(340.0, abs=1.0)


# -- greens and pins -----------------------------------------------------------------------------------


@pytest.mark.parametrize("short, plain", [(0.0, False), (20.0, False), (26.0, False), (60.0, False), (90.0, True)])
def test_how_far_a_green_may_be(tmp_path: Path, short: float, plain: bool) -> None:
    """The green reaches 15 yd short of its middle; a line that points at it 45 yd before its edge still ends on it."""
    sheet, hole = sm.one_hole(line=False)
    sheet.line([hole.at(0.0), hole.at(400.0 - short)], golf="hole", ref="1", par="4")
    said, found = sm.only(tmp_path, sheet)
    assert ("green" in said.missing) is plain
    assert found.pin.y_yd == pytest.approx(310.0 if plain else 400.0, abs=1.0)


def test_the_green_of_the_neighbour_is_not_borrowed(tmp_path: Path) -> None:
    sheet, _hole = sm.one_hole(ref="1")
    sheet.line([(40.0, 0.0), (35.0, 395.0)], golf="hole", ref="2", par="4")  # ends 22 yd beside the green of 1
    report = sm.imported(tmp_path, sheet)
    assert [h.missing.count("green") for h in report.holes] == [0, 1]


@pytest.mark.parametrize("tee", [True, False])
def test_a_tee_beside_the_green_before_is_no_line_drawn_backwards(tmp_path: Path, tee: bool) -> None:
    """Hole 2 starts 8 yd from the green of 1 and has no green in the map: it is not turned onto that one."""
    sheet, _ = sm.one_hole(ref="1")
    sm.one_hole(sheet=sheet, ref="2", tee=tee, green=False, line=False, x=21.0, up=False)
    sheet.line([(21.0, 400.0), (60.0, 0.0)], golf="hole", ref="2", par="4")
    two = sm.imported(tmp_path, sheet).holes[1]
    assert "green" in two.missing and not any("turned round" in words for words in two.assumed)


def test_double_green(tmp_path: Path) -> None:
    """One green of 90 yd for two holes: each has its own pin, without any where its line ends."""
    for pins in (True, False):
        sheet = mc.Sheet()
        sheet.area(mc.ellipse(30.0, 400.0, 90.0, 34.0, 32), golf="green")
        for k in range(2):
            sm.one_hole(sheet=sheet, x=60.0 * k, green=False, ref=str(k + 1))
            if pins:
                sheet.point(60.0 * k + 3.0, 402.0, golf="pin", ref=str(k + 1))
        report = sm.imported(tmp_path, sheet)
        for said in report.holes:
            hole = load_hole(said.file or "")
            assert len(hole.pins) == 1 and math.dist((hole.pin.x_yd, hole.pin.y_yd), (0, 400)) < 5.0


def test_holes_as_nodes_are_pins(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    sheet.point(*hole.at(405.0, 4.0), golf="hole", ref="1")
    said, found = sm.only(tmp_path, sheet)
    assert "pin" not in said.missing and (found.pin.x_yd, found.pin.y_yd) == pytest.approx((4.0, 405.0), abs=0.2)


def test_a_pin_on_the_edge_and_a_tee_on_the_green(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(length=100.0, par="3")
    sheet.point(*hole.at(85.0), golf="pin")
    hole.tee(97.0, tee="red", ref="1")
    said, found = sm.only(tmp_path, sheet)
    assert found.pin.y_yd == pytest.approx(85.5, abs=0.2) and [t.name for t in found.tees] == ["white"]
    assert "A pin on the edge of the green is moved in half a yard." in said.assumed
    assert "Tee red lies on the green: left out." in said.warnings


def test_green_as_a_closed_line_and_with_a_gap(tmp_path: Path) -> None:
    for gap in (0, 2):
        sheet, _hole = sm.one_hole(green=False)
        ring = mc.ellipse(0.0, 400.0, 26.0, 30.0)
        sheet.line([*ring, ring[0]] if not gap else ring, golf="green")
        said, _found = sm.only(tmp_path, sheet)
        assert "green" not in said.missing


def test_hole_drawn_as_an_area(tmp_path: Path) -> None:
    sheet, _hole = sm.one_hole(line=False)
    sheet.area(mc.box(-40.0, -20.0, 40.0, 430.0), golf="hole", ref="3", par="4")
    said, found = sm.only(tmp_path, sheet)
    assert said.hole == "3" and found.length_yd == pytest.approx(400.0, abs=1.0)
    assert any("straight from tee to green" in w for w in said.warnings)


def test_tee_and_green_with_a_number_but_no_line(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole(ref="1")
    hole = mc.Hole(sheet, 300.0, 0.0, 180.0, True)
    hole.tee(0.0, ref="2")
    hole.green(ref="2")
    report = sm.imported(tmp_path, sheet)
    assert [(h.hole, h.par) for h in report.holes] == [("1", 4), ("2", 3)]
    assert any("straight from tee to green" in w for w in report.holes[1].warnings)


# -- tees ----------------------------------------------------------------------------------------------


def test_tees_of_the_next_hole_stay_there(tmp_path: Path) -> None:
    """The next tees stand beside the green; each hole has its own three."""
    sheet = mc.Sheet()
    _, one = sm.one_hole(sheet=sheet, ref="1", tee=False)
    two = mc.Hole(sheet, 35.0, 420.0, 380.0, False)
    sheet.line(two.line(), golf="hole", ref="2", par="4")
    two.green()
    for hole in (one, two):
        for at, colour in ((0.0, "white"), (25.0, "yellow"), (60.0, "red")):
            hole.tee(at, tee=colour)
    report = sm.imported(tmp_path, sheet)
    assert [h.tees for h in report.holes] == [["white", "yellow", "red"]] * 2


def test_tee_points_inside_a_tee_area_name_it(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(tee=False)
    sheet.area(hole.quad(-5.0, 25.0, -4.0, 4.0), golf="tee")
    sheet.point(*hole.at(0.0), golf="tee", tee="blue")
    sheet.point(*hole.at(20.0), golf="tee", tee="red")
    _, found = sm.only(tmp_path, sheet)
    assert next(t.name for t in found.tees) == "blue" and "red" in [t.name for t in found.tees]


def test_island_tee_and_green_in_a_lake_without_islands(tmp_path: Path) -> None:
    sheet, _hole = sm.one_hole(length=160.0, par="3")
    sheet.area(mc.box(-60.0, -60.0, 60.0, 230.0), natural="water", water="lagoon", name="Loon Lagoon")
    said, found = sm.only(tmp_path, sheet)
    assert found.surface_at(*found.at(80.0)) is Surface.WATER
    assert found.surface_at(found.pin.x_yd, found.pin.y_yd) is Surface.GREEN
    assert any("Loon Lagoon is drawn over" in w for w in said.warnings)


# -- ground --------------------------------------------------------------------------------------------


@pytest.mark.parametrize("tags, surface, colour", [
    ({"golf": "water_hazard", "natural": "water"}, Surface.WATER, "yellow"),
    ({"golf": "lateral_water_hazard"}, Surface.WATER, "red"),
    ({"golf": "lateral_water_hazard", "natural": "scrub"}, Surface.DRY_PENALTY, "red"),
    ({"golf": "penalty_area", "penalty_area": "yellow"}, Surface.DRY_PENALTY, "yellow"),
    ({"natural": "water"}, Surface.WATER, "red"),
    ({"natural": "water", "water": "reservoir", "intermittent": "yes"}, Surface.DRY_PENALTY, "red"),
    ({"water": "pond"}, Surface.WATER, "red"),
    ({"waterway": "riverbank"}, Surface.WATER, "red"),
    ({"natural": "wetland"}, Surface.DRY_PENALTY, "red"),
    ({"golf": "rough"}, Surface.ROUGH, None),
    ({"landuse": "grass"}, Surface.ROUGH, None),
    ({"landuse": "forest"}, Surface.TREES, None),
    ({"natural": "wood"}, Surface.TREES, None),
    ({"natural": "scrub"}, Surface.HEAVY_ROUGH, None),
    ({"natural": "heath"}, Surface.HEAVY_ROUGH, None),
    ({"landuse": "residential"}, Surface.OUT_OF_BOUNDS, None),
    ({"golf": "out_of_bounds"}, Surface.OUT_OF_BOUNDS, None),
    ({"golf": "bunker", "natural": "beach"}, Surface.BUNKER, None),
    ({"golf": "fairway", "landuse": "grass"}, Surface.FAIRWAY, None),
    ({"golf": "Fairway"}, Surface.FAIRWAY, None),
    ({"golf": "bunker", "disused": "yes"}, Surface.ROUGH, None),
    ({"golf": "tee"}, Surface.TEE, None),
    ({"building": "yes"}, Surface.OUT_OF_BOUNDS, None),
])  # fmt: skip
def test_what_tags_become(tmp_path: Path, tags: dict[str, str], surface: Surface, colour: str | None) -> None:
    sheet, hole = sm.one_hole()
    sheet.area(hole.quad(230.0, 260.0, 40.0, 70.0), **tags)
    _, found = sm.only(tmp_path, sheet)
    assert found.surface_at(55.0, 245.0) is surface
    feature = found.feature_at(55.0, 245.0)
    assert (feature.relief if feature else None) == colour


@pytest.mark.parametrize("tags, wide", [
    ({"waterway": "stream"}, 2.5), ({"waterway": "ditch"}, 2.0), ({"waterway": "river"}, 12.0),
    ({"waterway": "stream", "width": "2 m"}, 2.187), ({"waterway": "river", "width": "30'"}, 10.0),
    ({"waterway": "stream", "tunnel": "culvert"}, 0.0), ({"highway": "path"}, 1.5), ({"golf": "cartpath"}, 2.5),
    ({"highway": "residential"}, 7.0), ({"natural": "tree_row"}, 8.0), ({"barrier": "fence"}, 0.0),
    ({"highway": "service", "bridge": "yes"}, 0.0), ({"railway": "rail"}, 6.0),
])  # fmt: skip
def test_lines_have_a_width(tmp_path: Path, tags: dict[str, str], wide: float) -> None:
    sheet, hole = sm.one_hole()
    sheet.line([hole.at(200.0, -60.0), hole.at(200.0, 60.0)], **tags)
    _, found = sm.only(tmp_path, sheet)
    area = sum(f.area.area for f in found.features if f.surface not in (Surface.GREEN, Surface.TEE))
    assert area / 120.0 == pytest.approx(wide, abs=0.15)


def test_a_boundary_drawn_round_the_course(tmp_path: Path) -> None:
    """golf=out_of_bounds as a closed way round everything means that the rest is out."""
    sheet, _ = sm.one_hole()
    ring = mc.box(-50.0, -40.0, 50.0, 450.0)
    sheet.line([*ring, ring[0]], golf="out_of_bounds")
    _, found = sm.only(tmp_path, sheet)
    assert found.surface_at(0.0, 200.0) is Surface.ROUGH and found.surface_at(70.0, 200.0) is Surface.OUT_OF_BOUNDS


@pytest.mark.parametrize(("metric", "names"), [
    (False, ["right bunker (259 yd on)", "left tree (200 yd on)", "left tree (30 yd behind the tee)"]),
    (True, ["right bunker (237 m on)", "left tree (183 m on)", "left tree (27 m behind the tee)"]),
])  # fmt: skip
def test_distances_in_names_have_their_unit(metric: bool, names: list[str], tmp_path: Path) -> None:
    """A name is shown as it is, on pages in metres too; nothing is -30 yards on."""
    sheet, hole = sm.one_hole()
    sheet.area(mc.box(16.0, 255.0, 24.0, 263.0), golf="bunker")
    sheet.point(*hole.at(200.0, -30.0), natural="tree")
    sheet.point(*hole.at(-30.0, -30.0), natural="tree")
    _, found = sm.only(tmp_path, sheet, metric=metric)
    bunker = [f.name for f in found.features if f.surface is Surface.BUNKER]
    assert [*bunker, *(t.name for t in found.single_trees)] == names


def test_beyond_a_boundary_line_is_out_however_far(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole()
    sheet.line([(30.0, -50.0), (30.0, 450.0)], golf="out_of_bounds")
    _, found = sm.only(tmp_path, sheet)
    places = [(x, found.surface_at(x, 200.0) is Surface.OUT_OF_BOUNDS) for x in (20.0, 40.0, 95.0, 180.0)]
    assert places == [(20.0, False), (40.0, True), (95.0, True), (180.0, True)]


@pytest.mark.parametrize("tilt", [0.0, 1e-9, -1e-9, 1.0])
def test_a_boundary_line_that_points_at_the_hole_has_no_side(tilt: float, tmp_path: Path) -> None:
    sheet, _ = sm.one_hole()
    sheet.line([(50.0, 150.0), (190.0, 150.0 + tilt)], golf="out_of_bounds")
    said, found = sm.only(tmp_path, sheet)
    assert not any(f.surface is Surface.OUT_OF_BOUNDS for f in found.features)
    assert any("points at the line of play" in words for words in said.warnings)


def test_grounds_that_leave_the_hole_outside_are_not_used(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole()
    sheet.area(mc.box(-100.0, 200.0, 100.0, 500.0), leisure="golf_course", name="Half")
    said, found = sm.only(tmp_path, sheet)
    assert not any(f.surface is Surface.OUT_OF_BOUNDS for f in found.features)
    assert any("leaves part of this hole outside" in w for w in said.warnings)


@pytest.mark.parametrize("north, wet", [(True, 100.0), (False, -100.0)])
def test_the_sea_is_right_of_the_coastline(tmp_path: Path, north: bool, wet: float) -> None:
    sheet, _ = sm.one_hole()
    line = [(60.0 if north else -60.0, y) for y in np.arange(-900.0, 1300.0, 50.0)]
    sheet.line(line if north else line[::-1], natural="coastline")
    _, found = sm.only(tmp_path, sheet, sea_is_red=True)
    assert found.surface_at(wet, 200.0) is Surface.WATER and found.surface_at(-wet, 200.0) is Surface.ROUGH


def test_an_island(tmp_path: Path) -> None:
    sheet, _ = sm.one_hole()
    ring = mc.box(-60.0, -50.0, 60.0, 460.0)  # counter-clockwise: land on the left
    sheet.line([*ring, ring[0]], natural="coastline")
    _, found = sm.only(tmp_path, sheet)
    assert found.surface_at(0.0, 200.0) is Surface.ROUGH and found.surface_at(90.0, 200.0) is Surface.OUT_OF_BOUNDS


def test_large_areas_are_cut_and_simple(tmp_path: Path) -> None:
    """A wood of 4,000 corners, mostly elsewhere: a small file, its edge within half a yard of the drawn one."""
    sheet, _ = sm.one_hole()
    y = np.linspace(-3000.0, 3000.0, 4000)
    edge = np.column_stack([50.0 + 6.0 * np.sin(y / 17.0), y])
    sheet.area([(float(a), float(b)) for a, b in edge] + [(3000.0, 3000.0), (3000.0, -3000.0)], natural="wood")
    said, found = sm.only(tmp_path, sheet)
    assert Path(said.file or "").stat().st_size < 8_000
    wood = next(f.area for f in found.features if f.surface is Surface.TREES)
    drawn = shapely.LineString(edge)
    corners = shapely.get_coordinates(wood)
    mine = corners[(corners[:, 0] < 60.0) & (np.abs(corners[:, 1] - 200.0) < 340.0)]
    assert shapely.distance(drawn, shapely.points(mine)).max() < 0.3
    seen = edge[(edge[:, 1] > -140.0) & (edge[:, 1] < 540.0)]
    assert shapely.distance(wood.exterior, shapely.points(seen)).max() < 0.5


def test_a_forest_of_single_trees(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole()
    for k in range(700):
        sheet.point(*hole.at(5.0 + 0.55 * k, 30.0 + k % 40), natural="tree")
    said, found = sm.only(tmp_path, sheet)
    assert len(found.single_trees) == 250 and any("the 250 nearest" in w for w in said.warnings)


# -- formats -------------------------------------------------------------------------------------------


def as_elements(geom: bool) -> dict[str, Any]:
    """The one hole as the JSON of a query tool: nodes and ways, or ways with their corners in them."""
    sheet, hole = sm.one_hole(line=False)
    elements: list[dict[str, Any]] = []
    number = 100
    lines = [(shape[0] if kind == "line" else [*shape[0][0], shape[0][0][0]], tags) for kind, shape, tags in sheet.items]
    lines.append((hole.line(), {"golf": "hole", "ref": "1", "par": "4"}))
    for points, tags in lines:
        refs = []
        for lon, lat in mc.degrees(points):
            number += 1
            refs.append(number)
            if not geom:
                elements.append({"type": "node", "id": number, "lon": lon, "lat": lat})
        way: dict[str, Any] = {"type": "way", "id": number, "tags": tags}
        if geom:
            way["geometry"] = [{"lon": lon, "lat": lat} for lon, lat in mc.degrees(points)]
        else:
            way["nodes"] = refs
            if points[0] == points[-1]:
                way["nodes"][-1] = refs[0]
        elements.append(way)
    return {"version": 0.6, "elements": elements}


@pytest.mark.parametrize("geom", [True, False])
def test_json_of_query_tools(tmp_path: Path, geom: bool) -> None:
    path = tmp_path / "query.json"
    path.write_text(json.dumps(as_elements(geom)))
    report = import_map(path, tmp_path / "out")
    assert report.attribution == OSM_ATTRIBUTION and report.holes[0].length_yd == pytest.approx(400.0, abs=0.2)


def test_a_hole_as_a_relation(tmp_path: Path) -> None:
    sheet, hole = sm.one_hole(line=False)
    xml = mc.Xml()
    for kind, shape, tags in sheet.items:
        assert kind == "area"
        xml.way([*shape[0][0], shape[0][0][0]], tags)
    parts = [xml.way([hole.at(0.0), hole.at(200.0)], {}), xml.way([hole.at(400.0), hole.at(200.0)], {})]
    xml.relation([(p, "") for p in parts], {"golf": "hole", "type": "route", "ref": "1", "par": "4"})
    (tmp_path / "m.osm").write_text("<osm version='0.6'>" + "".join(xml.rows) + "</osm>")
    report = import_map(tmp_path / "m.osm", tmp_path / "out")
    assert report.holes[0].length_yd == pytest.approx(400.0, abs=0.2)


def test_lines_of_features_web_mercator_and_bytes_in_front(tmp_path: Path) -> None:
    import pyproj

    data = sm.collection(sm.one_hole()[0])
    rows = "\n".join("\x1e" + json.dumps(f) for f in data["features"])
    (tmp_path / "a").write_text(rows)
    (tmp_path / "b").write_bytes(b"\xef\xbb\xbf" + json.dumps(data).encode())
    (tmp_path / "c").write_bytes(json.dumps(data).encode("utf-16"))
    to = pyproj.Transformer.from_crs(4326, 3857, always_xy=True)

    def turned(part: Any) -> Any:
        return list(to.transform(*part)) if isinstance(part[0], float) else [turned(p) for p in part]

    for feature in data["features"]:
        feature["geometry"]["coordinates"] = turned(feature["geometry"]["coordinates"])
    data["crs"] = {"type": "name", "properties": {"name": "urn:ogc:def:crs:EPSG::3857"}}
    (tmp_path / "d").write_text(json.dumps(data))
    for name in "abcd":
        report = import_map(tmp_path / name, tmp_path / f"out-{name}")
        assert report.holes[0].length_yd == pytest.approx(400.0, abs=0.2), name


# -- whose data ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("asked, top, want", [
    (None, {"generator": "an OpenStreetMap export"}, OSM_ATTRIBUTION),
    (None, {"attribution": "Greenkeepers of Ooze, 2026"}, "Greenkeepers of Ooze, 2026"),
    (None, {}, OSM_ATTRIBUTION),
    ("", {}, None),
    ("My own drawing", {"generator": "OpenStreetMap"}, "My own drawing"),
])  # fmt: skip
def test_attribution(tmp_path: Path, asked: str | None, top: dict[str, str], want: str | None) -> None:
    data = {**sm.collection(sm.one_hole()[0]), **top}
    (tmp_path / "m.json").write_text(json.dumps(data))
    report = import_map(tmp_path / "m.json", tmp_path / "out", Settings(attribution=asked))
    hole = load_hole(report.holes[0].file or "")
    assert report.attribution == hole.attribution == want
    assert (want is None) or want in Path(report.holes[0].file or "").read_text("utf-8").split("\n")[1]
