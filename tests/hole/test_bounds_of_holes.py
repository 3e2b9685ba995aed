"""Bounds of what a hole file may say, and places that must move or stay, each held from both sides."""

from __future__ import annotations

from pathlib import Path

import pytest
import shapely
from small_games import hole_of

from simulator.errors import FileError
from simulator.hole import course as courses
from simulator.hole import files, load_course
from simulator.hole.clashes import clashes
from simulator.hole.model import Hole
from simulator.hole.yardage import measure

PLAIN = """
name = "Plain"
par = 4
length_yd = 300
green = [{ name = "green", front_yd = 288, depth_yd = 24, width_yd = 20 }]
fairway = [{ from_yd = 100, to_yd = 310, left_yd = -25, right_yd = 25 }]
"""


def plain(more: str = "", **other: str) -> Hole:
    text = PLAIN
    for old, new in other.items():
        text = text.replace(old, new)
    return hole_of(text + more)


def test_the_fairway_is_measured_short_of_the_green_alone() -> None:
    """Mown ground goes on beside the green; stations at or past its front are the green's."""
    told = measure(plain(), width_step_yd=36.0)  # eight steps are the front itself
    assert told.green.front_yd == pytest.approx(288.0)
    assert [round(one.station_yd) for one in told.widths] == [108, 144, 180, 216, 252]


@pytest.mark.parametrize("side", [-1.0, 1.0])
def test_a_line_that_doubles_back_to_either_side(side: float) -> None:
    """Corners 200 on, then back: 130 degrees is too sharp, 110 is not."""
    for x, y, fine in ((68.4, 200.0 - 25.0, True), (76.6, 200.0 - 64.3, False)):
        text = f"""
name = "Bent"
par = 4
line_yd = [[0, 0], [0, 200], [{side * x * 2}, {200 - (200 - y) * 2}]]
green = [{{ at_yd = 340, depth_yd = 20, width_yd = 20 }}]
"""
        if fine:
            assert hole_of(text).par == 4
        else:
            with pytest.raises(FileError, match=r"a turn of -?130 degrees; allowed: turns up to 120"):
                hole_of(text)


@pytest.mark.parametrize(("at", "fine"), [(1.0, True), (0.5, False), (299.0, True), (299.5, False)])
def test_a_bend_is_a_yard_from_either_end(at: float, fine: bool) -> None:
    more = f"bends = [{{ at_yd = {at}, turn_deg = 5 }}]\n"
    if fine:
        assert plain(more).length_yd == pytest.approx(300.0)
    else:
        with pytest.raises(FileError, match="a bend at"):
            plain(more)


def test_only_longer_holes_want_a_fairway() -> None:
    def about(par: int) -> list[str]:
        text = PLAIN.replace("par = 4", f"par = {par}").partition("fairway")[0].replace("300", "160").replace("288", "148")
        return [one for one in clashes(hole_of(text)) if "No fairway is drawn" in one]

    assert about(3) == [] and len(about(4)) == 1


def test_ninety_nine_files_are_a_course(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(courses, "MOST_HOLES", 2)
    for number in (1, 2, 3):
        (tmp_path / f"{number:02d}.toml").write_text(PLAIN)
        if number < 3:
            assert len(load_course(tmp_path).holes) == number
    with pytest.raises(FileError, match="3 hole files; allowed: 1 to 2 of them"):
        load_course(tmp_path)


def test_a_holes_number_is_all_of_its_digits(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "links").mkdir()
    twelfth = tmp_path / "links" / "12-dell.toml"
    twelfth.write_text(PLAIN)
    monkeypatch.setattr(files, "bundled_folder", lambda: tmp_path)
    assert files.bundled_file("links/12") == twelfth == files.bundled_file("links/012")
    assert files.bundled_file("links/1") is None


def test_the_green_is_the_one_the_pin_stands_on() -> None:
    both = PLAIN.replace("width_yd = 20 }]", "width_yd = 20 }, { name = \"other\", at_yd = 200, offset_yd = 60, depth_yd = 20, width_yd = 20 }]")
    hole = hole_of(both + 'pin = [{ name = "here", at_yd = 300 }, { name = "there", at_yd = 200, offset_yd = 60 }]\n')
    assert hole.green.bounds == pytest.approx((-10.0, 288.0, 10.0, 312.0), abs=0.2)
    assert hole.with_pin("there").green.bounds == pytest.approx((50.0, 190.0, 70.0, 210.0), abs=0.2)


def test_a_mark_stays_where_it_is_when_the_tee_moves() -> None:
    hole = plain('tee = [{ name = "back" }, { name = "front", at_yd = 40, offset_yd = 6 }]\n'
                 'mark = [{ name = "mast", at_yd = 320, offset_yd = 15 }]\n')  # fmt: skip
    other = hole.with_tee("front")
    for one in (hole, other):
        mark, pin = one.marks[0], one.pin
        assert (mark.x_yd - pin.x_yd, mark.y_yd - pin.y_yd) == pytest.approx((15.0, 20.0))


@pytest.mark.parametrize("height", [-1e6, 1e6])
def test_a_tee_stands_on_the_earth(height: float) -> None:
    with pytest.raises(FileError, match="height_yd"):
        plain(f'tee = [{{ name = "white", height_yd = {height} }}]\nheights_yd = [[0, 0, 0], [99, 9, 1], [99, -9, 1]]\n')


def test_on_counts_from_the_green_and_not_from_a_part_of_it() -> None:
    """A back tier that lies nearer to the end of the line is no green of its own."""
    more = 'green_part = [{ name = "tier", at_yd = 304, depth_yd = 12, width_yd = 16, slope_pct = 2, falls = "front" }]\n'
    hole = plain(f'{more}pin = [{{ name = "on", on_yd = 5 }}]\n')
    assert hole.pin.xy_yd == pytest.approx((0.0, 293.0), abs=0.2)


def test_what_is_uncovered_is_what_lies_on_top() -> None:
    hole = plain('bunker = [{ name = "pot", at_yd = 200, depth_yd = 10, width_yd = 10 }]\n')
    fairway, bunker = (next(f for f in hole.features if f.name == name) for name in ("fairway", "pot"))
    assert not hole.uncovered(fairway).contains(shapely.Point(0.0, 200.0))
    assert hole.uncovered(bunker).equals(bunker.area)
