"""Pins in words: paces from the front and from an edge, as hole-location sheets count (common practice)."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest
import shapely

from simulator.errors import FileError, UsageError
from simulator.hole import Hole, PinPlace, load_hole, pin_at, pin_from_words, read_pin_place, read_pin_sheet
from simulator.strategy.courseasked import Pins

SQUARE = "points_yd = [[300, -13], [300, 13], [330, 13], [330, -13]]"


def square(folder: Path, pins: str = "", bend: str = "", shape: str = SQUARE) -> Hole:
    """A green 30 deep and 26 wide whose front is at 300."""
    path = folder / "square.toml"
    path.write_text(
        f'name = "Square"\npar = 4\nlength_yd = 315\n{bend}\n'
        f"green = [{{ {shape} }}]\n{pins}"
    )
    return load_hole(path)


@pytest.mark.parametrize("bend", ["", "bends = [{ at_yd = 200, turn_deg = 33 }]"])
@pytest.mark.parametrize(
    ("words", "station", "offset"),
    [
        ("22 on, 5 left", 322.0, -8.0),
        ("22 on, 5 right", 322.0, 8.0),
        ("10 on", 310.0, 0.0),
        ("10 on, middle", 310.0, 0.0),
        ("10 deep", 310.0, 0.0),
        ("R4 / 12 on", 312.0, 9.0),
        ("on 12, left 4", 312.0, -9.0),
        ("12 paces on, 4 from the left edge", 312.0, -9.0),
        ("12.5 yards on and 0.5 yd left", 312.5, -12.5),
        ("10 m on, 4m right", 300.0 + 10.0 / 0.9144, 13.0 - 4.0 / 0.9144),
        ("back", 325.0, 0.0),
        ("front right", 305.0, 26.0 / 3.0),
        ("left", 315.0, -26.0 / 3.0),
        ("tucked left", 315.0, -26.0 / 3.0),
        ("front edge", 305.0, 0.0),
        ("back right corner", 325.0, 26.0 / 3.0),
        ("right front", 305.0, 26.0 / 3.0),
        ("short left", 305.0, -26.0 / 3.0),
        ("flag at the back", 325.0, 0.0),
        ("long, on the right side", 325.0, 26.0 / 3.0),
        ("middle of the green", 315.0, 0.0),
        ("cut tight to the left", 315.0, -26.0 / 3.0),
        ("5 from the front, 4 from the left", 305.0, -9.0),
        ("5 from the back", 325.0, 0.0),
        ("6 paces from the back edge, 3 right", 324.0, 10.0),
    ],
)
def test_places(tmp_path: Path, bend: str, words: str, station: float, offset: float) -> None:
    """On a straight-sided green every number can be said by hand; a bend turns the whole of it."""
    hole = square(tmp_path, bend=bend)
    moved = pin_from_words(hole, words)
    assert moved.station_offset(moved.pin.x_yd, moved.pin.y_yd) == pytest.approx((station, offset), abs=0.01)
    assert moved.pins == hole.pins and moved.features == hole.features


def test_left_counts_from_the_edge_at_that_depth(tmp_path: Path) -> None:
    """On a green that narrows, five from the left is five from the edge beside the pin, by shapely's cut."""
    hole = square(tmp_path, shape="front_yd = 300, depth_yd = 30, width_yd = [30, 24, 12]")
    for on in (6.0, 14.0, 22.0):
        moved = pin_from_words(hole, f"{on:g} on, 3 left")
        cut = hole.green.intersection(shapely.LineString([(-50.0, 300.0 + on), (50.0, 300.0 + on)]))
        assert moved.pin.x_yd == pytest.approx(cut.bounds[0] + 3.0, abs=1e-6)
        assert moved.pin.y_yd == pytest.approx(300.0 + on, abs=1e-6)


def test_on_is_what_a_file_calls_on(tmp_path: Path) -> None:
    hole = square(tmp_path, 'pin = [{ name = "flag", on_yd = 11 }]\n')
    moved = pin_from_words(hole, "11 on")
    assert (moved.pin.x_yd, moved.pin.y_yd) == pytest.approx((hole.pin.x_yd, hole.pin.y_yd))


PINS = 'pin = [{ name = "middle", on_yd = 15 }, { name = "back left", on_yd = 24, offset_yd = -6 }]\n'


def test_the_files_own_names_come_first(tmp_path: Path) -> None:
    hole = square(tmp_path, PINS)
    for words in ("back left", "Back Left", "back", "left", "back-left"):
        assert pin_from_words(hole, words).pin == hole.pins[1]
    assert pin_from_words(hole, "middle").pin == hole.pins[0]
    assert pin_from_words(hole, "back right").pin.name == "back right"  # no pin of the file: a ninth of the green


def test_paces_in_words(tmp_path: Path) -> None:
    hole = square(tmp_path)
    said, meant = (pin_from_words(hole, words).pin for words in ("twenty two on, five from the left", "22 on, 5 left"))
    assert (said.x_yd, said.y_yd) == (meant.x_yd, meant.y_yd)


@pytest.mark.parametrize(
    ("words", "same"),
    [
        ("12 on, dead centre", "12 on"),
        ("5 in from the left, 12 up", "12 on, 5 left"),
        ("12 on from the front, 5 from the left", "12 on, 5 left"),
        ("5 on from the back", "5 from the back"),
        ("4 behind the middle", "19 on"),
        ("3 paces short of the centre of the green, 5 left", "12 on, 5 left"),
    ],
)
def test_paces_said_otherwise(tmp_path: Path, words: str, same: str) -> None:
    hole = square(tmp_path)
    said, meant = pin_from_words(hole, words).pin, pin_from_words(hole, same).pin
    assert (said.x_yd, said.y_yd) == (meant.x_yd, meant.y_yd)


def test_what_a_tucked_pin_is_taken_for_is_said(tmp_path: Path) -> None:
    hole = square(tmp_path)
    moved = pin_from_words(hole, "tucked left")
    assert moved.pin.name == "left"
    assert moved.assumed[-1] == "Pin 'tucked left': taken in the middle of that part of the green, 1 of 9 parts."
    assert pin_from_words(hole, "left").assumed == hole.assumed
    assert pin_from_words(hole, "5 from the back").pin.name == "5 from the back"
    assert pin_from_words(square(tmp_path, PINS), "tucked back left").pin.name == "back left"  # the file's own


def test_words_that_fit_two_pins_are_refused(tmp_path: Path) -> None:
    both = PINS.replace(" }]", ' }, { name = "back right", on_yd = 24, offset_yd = 6 }]')
    with pytest.raises(UsageError, match=r"2 pins that 'back' fits; this hole has: middle, back left, back right"):
        pin_from_words(square(tmp_path, both), "back")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("+4", 'Say "4 behind the middle"'),
        ("-3", 'Say "3 short of the middle"'),
        ("31 on", "found 31 yd on; allowed: 0 to 30"),
        ("15 on, 30 left", "found 30 yd from the edge; allowed: 0 to 26"),
        ("blue", "no pin called 'blue' .what a colour means differs from course to course: say front, middle"),
        ("4 from the right edge", "no pin called '4 from the right edge' .how far on"),
        ("12 on, 4 left of the middle", "no pin called '12 on, 4 left of the middle' .count from an edge"),
        ("behind the bunker", "pin 'behind the bunker': of the bunkers by the green .none."),
        ("22 on, 5 left, 3 right", "no pin called"),
        ("22", "no pin called"),
        ("", "no pin called"),
        ("on", "no pin called"),
    ],
)
def test_what_is_no_pin(tmp_path: Path, words: str, said: str) -> None:
    with pytest.raises(UsageError, match=said):
        pin_from_words(square(tmp_path), words)


def test_a_pin_in_a_bunker_is_refused(tmp_path: Path) -> None:
    sand = "bunker = [{ at_yd = 315, depth_yd = 6, width_yd = 6 }]\n"
    with pytest.raises(UsageError, match="that place is bunker"):
        pin_from_words(square(tmp_path, 'pin = [{ name = "x", on_yd = 4 }]\n' + sand), "15 on")


@pytest.mark.parametrize("number", range(1, 19))
def test_every_place_on_a_demo_green_comes_back(number: int) -> None:
    """Words for a place on the green, read again, are the same place to the paces' last digit."""
    hole = load_hole(f"ostrel-heath/{number}")
    ahead = hole.play_line.headings[-1]
    across = np.array([ahead[1], -ahead[0]])
    corners = shapely.get_coordinates(hole.green)
    front = float((corners @ ahead).min())
    for pin in hole.pins:
        x, y = pin.x_yd, pin.y_yd
        on = float(np.dot((x, y), ahead)) - front
        far = shapely.LineString([np.array([x, y]) - 99.0 * across, np.array([x, y]) + 99.0 * across])
        left = float((shapely.get_coordinates(hole.green.intersection(far)) @ across).min())
        moved = pin_at(hole, PinPlace(on, -1, float(np.dot((x, y), across)) - left))
        assert (moved.pin.x_yd, moved.pin.y_yd) == pytest.approx((x, y), abs=1e-6)


def test_words_of_a_place_are_read_back() -> None:
    for place in (PinPlace(22.0, -1, 5.0), PinPlace(9.5, 1, 4.0), PinPlace(12.0)):
        assert read_pin_place(place.words) == place


SHEET = "hole,on,left,right,side\n1,22,5,,\n2,9,,4,\n3,14,,,\n4,11,,,L6\n5,12,,,7 right\n6,8,,,C\n\n"


def test_a_sheet(tmp_path: Path) -> None:
    path = tmp_path / "pins.csv"
    expected = {
        1: PinPlace(22.0, -1, 5.0), 2: PinPlace(9.0, 1, 4.0), 3: PinPlace(14.0), 4: PinPlace(11.0, -1, 6.0),
        5: PinPlace(12.0, 1, 7.0), 6: PinPlace(8.0),
    }  # fmt: skip
    for text in (SHEET, SHEET.replace(",", ";"), "\ufeff" + SHEET.replace("\n", "\r\n"), SHEET.upper()):
        path.write_text(text, encoding="utf-8", newline="")
        assert read_pin_sheet(path) == expected


def test_a_sheet_as_it_is_scribbled(tmp_path: Path) -> None:
    """A blank hole stopped the course, and the paces' own word was refused in favour of paces."""
    path = tmp_path / "pins.csv"
    path.write_text("Hole No.,Depth,Side\n4,12 paces,L4\n5,,\n6,9p,C\n")
    assert read_pin_sheet(path) == {4: PinPlace(12.0, -1, 4.0), 6: PinPlace(9.0)}
    path.write_text("hole,on,from left,from right\n4,12,4,\n5,8,,3 paces\n")
    assert read_pin_sheet(path) == {4: PinPlace(12.0, -1, 4.0), 5: PinPlace(8.0, 1, 3.0)}
    path.write_text("Hole No.;Depth;On (paces);Side\n4;30;12;L4\n9;22;;\n")  # how deep the green is
    assert read_pin_sheet(path) == {4: PinPlace(12.0, -1, 4.0)}
    path.write_text("hole,on,side\n4,,L4\n")
    with pytest.raises(FileError, match="line 2, on"):  # a side without a depth is no blank
        read_pin_sheet(path)


def test_a_sheet_in_words(tmp_path: Path) -> None:
    """ "back left" and "middle" were refused where --pin takes them; each hole has the pin that --pin has."""
    path = tmp_path / "pins.csv"
    path.write_text("Hole,Pin\n1,Back left\n2,middle\n3,\n4,\"22 on, 5 left\"\n5,tucked right\n")
    sheet = read_pin_sheet(path)
    assert sheet == {1: "back left", 2: "middle", 4: PinPlace(22.0, -1, 5.0), 5: "tucked right"}
    path.write_text("hole,on,side\n1,back,L\n2,front,\n3,9,C\n")
    assert read_pin_sheet(path) == {1: "back left", 2: "front", 3: PinPlace(9.0)}
    hole, pins = load_hole("withy-drain"), Pins("today", None, sheet)
    for number, words in ((1, "back left"), (2, "middle"), (4, "22 on, 5 left"), (5, "tucked right")):
        assert pins.on(number, hole).pin == pin_from_words(hole, words).pin
    assert pins.on(3, hole).pin == hole.pin


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "an empty file"),
        ("hole,paces\n1,3\n", "line 1: found the column 'paces'"),
        ("hole,left\n1,3\n", "hole and on among them"),
        ("hole,on\n1,sunny\n", 'line 2, on: found \'sunny\'; allowed: paces from 0 to 100, or words: "back left"'),
        ("hole,on,left\n1,back,5\n", "line 2, on"),
        ("hole,on\nx,3\n", "line 2, hole"),
        ("hole,on\n1,nan\n", "line 2, on"),
        ("hole,on\n1,3\n1,4\n", "line 3: found hole 1 a second time"),
        ("hole,on,left,right\n1,3,4,5\n", "two sides"),
        ("hole,on,side\n1,3,up\n", "line 2, side"),
        ("hole,on\n1,3,5\n", "3 cells"),
        ("hole,on\n1,-3\n", "line 2, on"),
        ("on,hole\n22\n", "line 2, hole"),
        ("hole,on\n" + 100_000 * " ", "more than 100,000 bytes"),
    ],
)
def test_a_bad_sheet(tmp_path: Path, text: str, said: str) -> None:
    path = tmp_path / "pins.csv"
    path.write_text(text)
    with pytest.raises(FileError, match=said) as error:
        read_pin_sheet(path)
    assert "\n" not in str(error.value)


def test_no_sheet(tmp_path: Path) -> None:
    with pytest.raises(FileError, match="no such file"):
        read_pin_sheet(tmp_path / "none.csv")
    with pytest.raises(FileError, match="a folder"):
        read_pin_sheet(tmp_path)
    with pytest.raises(FileError, match="something that is not a file"):
        read_pin_sheet("/dev/null")
    (tmp_path / "latin.csv").write_bytes(b"hole,on\n1,3\xff\n")
    with pytest.raises(FileError, match="not UTF-8"):
        read_pin_sheet(tmp_path / "latin.csv")


def test_hard_left_is_a_place_and_no_pin_called_front_left(tmp_path: Path) -> None:
    """An end that nobody said; "tucked back left" is the pin of that name, "left" any pin that is left."""
    hole = square(tmp_path, 'pin = [{ name = "front left", on_yd = 4, offset_yd = -8 }, { name = "middle", on_yd = 15 }]')
    moved = pin_from_words(hole, "hard left").pin
    front = pin_from_words(hole, "left").pin
    assert front.name == "front left" and pin_from_words(hole, "tucked front left").pin == front
    assert moved.name == "left" and moved.y_yd > front.y_yd + 5.0 and moved.x_yd < -5.0
