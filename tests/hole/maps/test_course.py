"""The invented course: every quirk imported, loaded, and said in the report; GeoJSON and .osm alike."""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import make_course
import pytest
import shapely
from as_user import core_slowness, processor_s

from simulator.hole import Hole, Surface, load_hole
from simulator.hole.maps import HoleReport, MapReport, Settings, import_map

HERE = Path(__file__).parent
OSM = "© OpenStreetMap contributors (ODbL)"
MAPS = ("tidewrack.geojson", "tidewrack.osm")


@pytest.fixture(scope="module", params=MAPS)
def course(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> tuple[MapReport, float]:
    folder = tmp_path_factory.mktemp("course") / "holes"
    start = processor_s()
    return import_map(HERE / request.param, folder), processor_s() - start


Course = tuple[MapReport, float]


def one(course: Course, name: str) -> tuple[HoleReport, Hole]:
    said = next(hole for hole in course[0].holes if hole.hole == name)
    assert said.file is not None, said.failed
    return said, load_hole(said.file)


def test_the_script_still_draws_the_files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pytest.importorskip("pyproj")
    monkeypatch.setattr(make_course, "HERE", tmp_path)
    make_course.write()
    for name in MAPS:
        assert (tmp_path / name).read_text("utf-8") == (HERE / name).read_text("utf-8")
        assert (HERE / name).stat().st_size < 400_000


def test_all_holes_in_ten_seconds(course: Course) -> None:
    report, seconds = course
    assert seconds < 10.0 * core_slowness()
    assert [h.hole for h in report.written] == [*map(str, range(1, 19)), *(f"B {k}" for k in range(1, 6))]
    assert sorted(Path(h.file or "").name for h in report.written) == [
        *(f"{k:02d}.toml" for k in range(1, 19)), *(f"b-{k:02d}.toml" for k in range(1, 6))
    ]  # fmt: skip


# hole: par, length [yd] as drawn, tees, missing, a part of each sentence that must be among those said
SAID: dict[str, tuple[int, float, list[str], list[str], list[str]]] = {
    "1": (4, 406.9, ["white", "yellow", "red"], [], []),
    "2": (3, 170.0, ["white", "yellow", "red"], [], ["drawn from green to tee: turned round", "red penalty area"]),
    "3": (5, 512.0, ["white", "yellow", "red"], ["pin", "par"], ["Par 5 by its length of 512", "middle of the green"]),
    "4": (4, 355.0, ["white", "yellow", "red"], ["green"], ["No green at the end", "a plain one"]),
    "5": (4, 394.8, ["white", "yellow", "red"], [], []),
    "6": (4, 420.0, ["main"], ["tee"], ["the start of its line", "1 single tree drawn on a green or tee left out"]),
    "7": (4, 365.0, ["white", "yellow", "ladies"], [], []),
    "8": (3, 158.0, ["white", "yellow", "red"], [], ["Of the pars 3, 4"]),
    "9": (4, 430.0, ["white", "yellow", "red"], ["stroke index"], ["Stroke index '27' is none from 1 to 18"]),
    "10": (5, 531.0, ["white", "yellow", "red"], [], ["in 2 pieces, joined"]),
    "11": (3, 180.0, ["white", "yellow", "red"], [], []),
    "12": (4, 398.1, ["start of line", "red"], [], ["starts 40 yd behind every tee"]),
    "13": (4, 410.0, ["white", "yellow", "red"], ["pin"], ["Small buildings are obstructions", "Paths and roads"]),
    "14": (5, 482.0, ["white", "yellow", "red"], [], ["says par 3, the line is 482 yd", "drawn over the hole"]),
    "15": (4, 375.0, ["white", "yellow", "red"], [], ["Par 4 is that of its white tee", "share one ground", "heavy rough"]),
    "16": (4, 440.0, ["back", "middle", "forward"], [], ["dist 320 m, its line is 440 yd", "named by their place"]),
    "17": (4, 352.0, ["white", "yellow", "red"], [], ["ends 7 yd short of the green", "through 6 heights"]),
    "18": (4, 405.0, ["white", "yellow", "red"], [], ["The sea is out of bounds", "Wetland is a red penalty"]),
}  # fmt: skip


@pytest.mark.parametrize("name", SAID)
def test_each_hole(course: Course, name: str) -> None:
    par, length, tees, missing, sentences = SAID[name]
    said, hole = one(course, name)
    assert (said.par, hole.par) == (par, par)
    assert hole.play_line.length_yd == pytest.approx(length, abs=6.0)  # its tee may stand a little off the line
    drawn = hole.drawn_line
    steps = itertools.pairwise(drawn)
    assert sum(math.dist(a, b) for a, b in steps) == pytest.approx(length, abs=0.3)
    assert [t.name for t in hole.tees] == tees == said.tees
    assert said.missing == missing
    for words in sentences:
        assert any(words in line for line in [*said.assumed, *said.warnings]), words
    assert said.complete == (not said.missing and not said.warnings)
    assert hole.attribution == OSM


def areas(hole: Hole, surface: Surface) -> float:
    return sum(f.area.area for f in hole.features if f.surface is surface)


def test_island_in_the_pond(course: Course) -> None:
    """Ellipses of 24 and 12 corners: area pi a b times sin(2 pi / n) n / 2 pi; the tee cuts nothing off."""
    _, hole = one(course, "2")
    pond = next(f for f in hole.features if f.name == "Island Pond")
    want = 12 * math.sin(2 * math.pi / 24) * 35 * 30 - 6 * math.sin(2 * math.pi / 12) * 9 * 7
    assert pond.area.area == pytest.approx(want, rel=0.01)
    x, y = pond.area.centroid.x, pond.area.centroid.y
    assert hole.surface_at(x, y) is Surface.ROUGH and hole.surface_at(x + 20.0, y) is Surface.WATER


def test_no_green_is_borrowed(course: Course) -> None:
    """The practice green 45 yd away stays what it is: ground like fairway."""
    _, hole = one(course, "4")
    assert hole.pin.y_yd == pytest.approx(357.0, abs=0.2) and abs(hole.pin.x_yd) < 0.2
    assert areas(hole, Surface.GREEN) == pytest.approx(math.pi * 15 * 13, rel=0.015)


def test_stream_has_its_width(course: Course) -> None:
    _, hole = one(course, "5")
    burn = next(f for f in hole.features if f.name == "Kelp Burn")
    length = math.hypot(120, 4) + math.hypot(110, 6)
    assert burn.area.area / length == pytest.approx(3.0 / 0.9144, rel=0.05)
    assert burn.relief == "red"


def test_trees(course: Course) -> None:
    _, hole = one(course, "6")
    assert len(hole.single_trees) == 6
    tree = hole.single_trees[0]
    assert (tree.crown_yd, tree.crown.top_yd) == (pytest.approx(9.8, abs=0.05), pytest.approx(15.3, abs=0.05))
    row = next(f for f in hole.features if "tree row" in f.name)
    assert row.area.area == pytest.approx(210.0 * 8.0, rel=0.02)
    assert sum("wood" in f.name for f in hole.features) == 1


def test_marked_margin_round_water_is_dry(course: Course) -> None:
    _, hole = one(course, "7")
    kinds = {f.surface: f.relief for f in hole.features if f.relief and "ditch" not in f.name}
    assert kinds == {Surface.DRY_PENALTY: "red", Surface.WATER: "red"}


def test_yellow_ditch(course: Course) -> None:
    _, hole = one(course, "8")
    assert {f.relief for f in hole.features if f.name.startswith("ditch")} == {"yellow"}


def test_shared_fairway(course: Course) -> None:
    for name in ("9", "10"):
        _, hole = one(course, name)
        assert hole.surface_at(*hole.at(250.0)) is Surface.FAIRWAY


def test_hole_13_has_its_furniture(course: Course) -> None:
    _, hole = one(course, "13")
    assert hole.surface_at(*hole.at(353.0, 44.0)) is Surface.PATH  # a shed: free relief
    assert hole.surface_at(*hole.at(310.0, 57.0)) is Surface.OUT_OF_BOUNDS  # a house
    hedge = next(f for f in hole.features if "hedge" in f.name)
    assert hedge.crown is not None and hedge.crown.base_yd == 0.0
    assert not any("fence" in f.name for f in hole.features)


def test_houses_drawn_over_the_hole_are_left_out(course: Course) -> None:
    _, hole = one(course, "14")
    assert hole.surface_at(*hole.at(240.0)) is Surface.FAIRWAY
    assert hole.surface_at(*hole.at(230.0, 75.0)) is Surface.OUT_OF_BOUNDS


def test_boundary_line_puts_the_far_side_out(course: Course) -> None:
    _, hole = one(course, "16")
    assert hole.surface_at(*hole.at(200.0, 60.0)) is Surface.OUT_OF_BOUNDS
    assert hole.surface_at(*hole.at(200.0, 40.0)) is Surface.ROUGH


def test_outside_the_grounds_is_out(course: Course) -> None:
    _, hole = one(course, "1")
    assert hole.surface_at(-113.0, 100.0) is Surface.OUT_OF_BOUNDS
    assert hole.surface_at(-107.0, 100.0) is Surface.ROUGH
    _, hole = one(course, "4")  # the enclave in the grounds, drawn from 640 to 760 in x and 600 to 680 in y
    assert hole.surface_at(*hole.at(-80.0, -80.0)) is Surface.OUT_OF_BOUNDS


def test_heights(course: Course) -> None:
    _, hole = one(course, "17")
    assert len(hole.heights) == 6
    high, low = hole.height_at(12.0, 0.0), hole.height_at(25.0, 100.0)
    assert high - low == pytest.approx(3.0 / 0.9144, abs=1.0)  # 12 m and 9 m; tees and green lead over


def test_sea(course: Course) -> None:
    _, hole = one(course, "18")
    sea = shapely.union_all([f.area for f in hole.features if f.name == "sea"])
    assert not sea.is_empty and sea.intersection(shapely.LineString(hole.line)).is_empty


def test_the_hole_that_fails(course: Course) -> None:
    report, _ = course
    failed = [h for h in report.holes if h.file is None]
    assert [(h.hole, h.failed) for h in failed] == [("19", "its line is 25 yd long; allowed are 40 to 1100 yd")]


@pytest.mark.parametrize("words", [
    "2 features drawn twice, taken once.",
    "its outline crosses itself: repaired.",
    "used by 2 loops without names",
    "1 green belongs to no hole line: 19",
    "2 practice greens belong to no hole.",
    "6 heights in the map.",
])  # fmt: skip
def test_what_is_said_of_the_map(course: Course, words: str) -> None:
    assert any(words in note for note in course[0].notes), course[0].notes


def test_red_sea_and_rough_outside(tmp_path: Path) -> None:
    report = import_map(HERE / MAPS[0], tmp_path, Settings(outside_is_out=False, sea_is_red=True))
    by_name = {h.hole: load_hole(h.file) for h in report.written if h.file}
    assert not areas(by_name["1"], Surface.OUT_OF_BOUNDS)
    assert {f.relief for f in by_name["18"].features if f.name == "sea"} == {"red"}


def test_again_the_same_bytes(tmp_path: Path) -> None:
    for folder in ("a", "b"):
        import_map(HERE / MAPS[1], tmp_path / folder)
    for path in (tmp_path / "a").iterdir():
        assert path.read_bytes() == (tmp_path / "b" / path.name).read_bytes()
    assert not list((tmp_path / "a").glob(".*"))
