"""One course in many mappers' hands gives the same holes."""

from __future__ import annotations

import math
from pathlib import Path

import mappers
import pytest
import small_maps as sm
from mappers import Habit

from simulator.hole import Hole, Surface, load_hole
from simulator.hole.maps import HoleReport

pytest.importorskip("pyproj")

HABITS = {
    "as it is meant": Habit(),
    "from green to tee": Habit(backwards=True),
    "stopping 30 yd short of the green": Habit(end=-45.0),
    "stopping 50 yd short of the green": Habit(end=-65.0),
    "from green to tee, 30 yd short": Habit(backwards=True, end=-45.0),
    "past the green": Habit(end=15.0),
    "just past the green": Habit(end=26.0),
    "far past the green": Habit(end=40.0),
    "from past the green to the tee": Habit(backwards=True, end=26.0),
    "from far past the green to the tee": Habit(backwards=True, end=35.0),
    "from the forward tee": Habit(start=58.0),
    "from green to forward tee": Habit(backwards=True, start=58.0),
    "from behind the tee": Habit(start=-20.0),
    "tees as points": Habit(tees="node"),
    "tees as lines": Habit(tees="line"),
    "short, forward, points": Habit(end=-25.0, start=58.0, tees="node"),
    "no greens": Habit(greens="none"),
    "no greens, from where they are to the tee": Habit(greens="none", backwards=True),
    "greens as points": Habit(greens="node"),
    "numbers in names": Habit(numbers="name"),
    "ordinal numbers": Habit(numbers="ordinal"),
    "numbers before names": Habit(numbers="titled"),
    "a loop in the name": Habit(numbers="loop"),
    "one fairway": Habit(fairway="one"),
    "bunkers cut out of fairways": Habit(fairway="inner"),
    "bunkers as sand": Habit(sand=True),
    "a forest over it all": Habit(wood="over"),
    "winter greens": Habit(second=True),
    "winter greens, lines short": Habit(second=True, end=-20.0),
    "no pins": Habit(pins=0),
    "three pins": Habit(pins=3),
}


@pytest.mark.parametrize("name", HABITS)
def test_the_same_holes(name: str, tmp_path: Path) -> None:
    """Par, index, tees and places of every hole; lengths to 4 yd, as a pin 3 yd off or a plain green moves them."""
    habit = HABITS[name]
    report = sm.imported(tmp_path, mappers.drawn(habit))
    assert [said.hole for said in report.holes] == [str(k + 1) for k in range(9)]
    for k, said in enumerate(report.holes):
        assert said.file is not None, said.failed
        assert (said.par, said.stroke_index) == (mappers.PARS[k], mappers.INDEXES[k])
        assert ("green" in said.missing, "tee" in said.missing) == (habit.greens != "area", False), (
            said.missing
        )
        hole = load_hole(said.file)
        assert [tee.name for tee in hole.tees] == ["white", "yellow", "red"]
        tee, pin = hole.tees[0], hole.pin
        assert math.hypot(pin.x_yd - tee.x_yd, pin.y_yd - tee.y_yd) == pytest.approx(
            mappers.LENGTHS[k], abs=4.0
        )
        _ground(hole, mappers.LENGTHS[k], habit)


def _ground(hole: Hole, length: float, habit: Habit) -> None:
    """What lies where it was drawn, by the yards on from the back tee and the yards right of the line."""
    places = [(0.0, 0.0, Surface.TEE), (length, 5.0, Surface.GREEN), (length - 8.0, 20.0, Surface.BUNKER)]
    if length > 300.0:
        places += [
            (235.0, -10.0, Surface.BUNKER),
            (170.0, 0.0, Surface.FAIRWAY),
            (190.0, 30.0, Surface.WATER),
        ]
    if habit.wood == "beside":
        places.append((90.0, -39.0, Surface.TREES))
    for on, right, surface in places:
        assert hole.surface_at(hole.tees[0].x_yd + right, hole.tees[0].y_yd + on) is surface, (on, right)
    if habit.wood == "over":
        assert hole.surface_at(hole.tees[0].x_yd, hole.tees[0].y_yd + 110.0) is not Surface.TREES


@pytest.mark.parametrize("name, words", [
    ("stopping 30 yd short of the green", "30 yd short of the green it points at"),
    ("a forest over it all", "is drawn over mown ground"),
])  # fmt: skip
def test_what_was_mended_is_to_be_looked_at(name: str, words: str, tmp_path: Path) -> None:
    report = sm.imported(tmp_path, mappers.drawn(HABITS[name]))
    for said in report.holes:
        assert any(words in warning for warning in said.warnings) and not said.complete


def test_nothing_is_wrong_with_a_course_as_it_is_meant(tmp_path: Path) -> None:
    report = sm.imported(tmp_path, mappers.drawn(Habit()))
    assert all(said.complete for said in report.holes), [said.warnings for said in report.holes]


def test_a_back_tee_that_is_not_in_the_map(tmp_path: Path) -> None:
    """A line that starts 40 yd behind every tee starts on one; it is said and does not rename the others."""
    said: HoleReport = sm.imported(tmp_path, mappers.drawn(Habit(start=-40.0))).holes[0]
    assert said.tees == ["start of line", "white", "yellow", "red"]


def test_a_line_from_its_tee_beside_a_green_without_a_line_is_not_turned(tmp_path: Path) -> None:
    """Its own green is not in the map, and another one lies by its tee: the tee says where it starts."""
    sheet, hole = sm.one_hole(400.0, green=False)
    hole.round(-20.0, 0.0, 20.0, 20.0, golf="green")
    said: HoleReport = sm.imported(tmp_path, sheet).holes[0]
    assert "green" in said.missing and "tee" not in said.missing and said.file is not None
    loaded = load_hole(said.file)
    assert math.hypot(loaded.pin.x_yd - loaded.tees[0].x_yd, loaded.pin.y_yd - loaded.tees[0].y_yd) > 380.0
    assert not any("green to tee" in one for one in said.assumed)
