"""Courses: folders of holes in the order of their numbers, and the demo course that ships."""

from __future__ import annotations

from pathlib import Path

import pytest

from simulator.errors import FileError, UsageError
from simulator.hole import Surface, bundled_courses, load_course, load_hole

HOLE = """
name = "{name}"
par = 3
length_yd = 120
green = [{{ front_yd = 106, depth_yd = 28, width_yd = 26 }}]
"""


def folder_of(folder: Path, *names: str) -> Path:
    for name in names:
        (folder / f"{name}.toml").write_text(HOLE.format(name=name))
    return folder


def test_order_is_by_number_not_by_letters(tmp_path: Path) -> None:
    course = load_course(folder_of(tmp_path, "10-last", "2-second", "01-first"))
    assert course.numbers == (1, 2, 10)
    assert [hole.name for hole in course.holes] == ["01-first", "2-second", "10-last"]
    assert list(course.numbered())[2] == (10, course.holes[2])
    assert course.bad == () and course.par == 9


def test_names_without_numbers_are_numbered_in_their_order(tmp_path: Path) -> None:
    course = load_course(folder_of(tmp_path, "oak", "ash"))
    assert course.numbers == (1, 2)
    assert [hole.name for hole in course.holes] == ["ash", "oak"]


def test_the_name_is_the_folders(tmp_path: Path) -> None:
    (tmp_path / "green-dale").mkdir()
    assert load_course(folder_of(tmp_path / "green-dale", "1")).name == "Green Dale"


def test_a_bad_hole_is_reported_by_itself(tmp_path: Path) -> None:
    folder_of(tmp_path, "01-good", "03-good", "3-again", "loose")
    (tmp_path / "02-bad.toml").write_text('name = "Bad"\npar = 3\n')
    course = load_course(tmp_path)
    assert course.numbers == (1, 3)
    bad = {one.file: (one.number, str(one.error)) for one in course.bad}
    assert set(bad) == {"02-bad.toml", "3-again.toml", "loose.toml"}
    assert bad["02-bad.toml"][0] == 2 and "length" in bad["02-bad.toml"][1]
    assert bad["3-again.toml"][0] == 3 and "03-good.toml" in bad["3-again.toml"][1]
    assert bad["loose.toml"][0] is None and "number" in bad["loose.toml"][1]
    assert all("\n" not in message for _, message in bad.values())


@pytest.mark.parametrize(
    ("make", "found"),
    [
        (lambda p: p / "nowhere", "no such folder"),
        (lambda p: p, "no hole file"),
        (lambda p: ((p / "file").write_text("") and p) or p / "file", "a file"),
        (lambda p: "ostrel-heat", "perhaps ostrel-heath"),
        (lambda p: "a\0b", "no such folder"),
    ],
)
def test_what_is_no_course(tmp_path: Path, make: object, found: str) -> None:
    with pytest.raises(FileError, match=found):
        load_course(make(tmp_path))  # type: ignore[operator]


def test_a_hole_of_a_demo_course_by_number_or_name() -> None:
    assert load_hole("Ostrel Heath/7").source == "ostrel-heath/7"
    assert load_course("Ostrel Heath").name == load_course("ostrel-heath").name
    by_number, by_name = load_hole("ostrel-heath/7"), load_hole("ostrel-heath/07-drovers")
    assert by_number.name == by_name.name == load_hole("ostrel-heath/07").name == "Drovers"
    with pytest.raises(FileError):
        load_hole("ostrel-heath/19")
    with pytest.raises(FileError):
        load_hole("../ostrel-heath/7")


@pytest.fixture(scope="module")
def demo():  # type: ignore[no-untyped-def]
    return load_course("ostrel-heath")


def test_the_demo_course_is_eighteen_holes(demo) -> None:  # type: ignore[no-untyped-def]
    assert bundled_courses() == ["ostrel-heath"]
    assert demo.bad == () and demo.numbers == tuple(range(1, 19))
    assert sorted(hole.stroke_index for hole in demo.holes) == list(range(1, 19))
    # odd stroke indexes on one nine, even ones on the other: Rules of Handicapping, Appendix E (from memory)
    assert {hole.stroke_index % 2 for hole in demo.holes[:9]} == {1}
    assert demo.par == 72 and [hole.par for hole in demo.holes].count(3) == 4
    assert [hole.par for hole in demo.holes].count(5) == 4
    assert len({hole.name for hole in demo.holes}) == 18


def test_its_holes_have_what_pages_need(demo) -> None:  # type: ignore[no-untyped-def]
    for hole in demo.holes:
        assert hole.bearing_deg is not None
        assert 2 <= len(hole.tees) <= 3 and {"white", "red"} <= {tee.name for tee in hole.tees}
        assert len(hole.pins) == 3
        for part in ("front", "back"):
            assert sum(part in pin.name.split() for pin in hole.pins) == 1
        assert hole.has_relief and len(hole.features) >= 7


def test_its_holes_differ(demo) -> None:  # type: ignore[no-untyped-def]
    """Bends both ways, water across and beside, bounds near and far, trees at corners, slopes of every way."""
    turns = []
    for hole in demo.holes:
        (ax, ay), (bx, by) = hole.play_line.headings[0], hole.play_line.headings[-1]
        turns.append(ay * bx - ax * by)
    assert max(turns) > 0.3 and min(turns) < -0.3
    kinds = [{feature.surface for feature in hole.features} for hole in demo.holes]
    for surface in (Surface.WATER, Surface.OUT_OF_BOUNDS, Surface.TREES, Surface.HEAVY_ROUGH):
        assert 4 <= sum(surface in kind for kind in kinds) <= 16
    assert any(Surface.DRY_PENALTY in kind for kind in kinds)
    colours = {feature.relief for hole in demo.holes for feature in hole.features}
    assert {"red", "yellow"} <= colours
    lengths = {par: [hole.length_yd for hole in demo.holes if hole.par == par] for par in (3, 4, 5)}
    assert min(lengths[3]) < 140 < 215 < max(lengths[3])
    assert min(lengths[4]) < 290 < 430 < max(lengths[4])
    assert min(lengths[5]) < 490 < 560 < max(lengths[5])


@pytest.mark.parametrize("name", ["", "  "])
def test_no_name_is_no_folder(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It read the folder one stands in."""
    monkeypatch.chdir(folder_of(tmp_path, "1-here"))
    assert load_course(".").numbers == (1,)
    with pytest.raises(UsageError, match="allowed: a folder of hole files"):
        load_course(name)
