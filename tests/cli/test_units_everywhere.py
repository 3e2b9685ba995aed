"""`--units metres` on every command that shows a length: on screen, in files and pictures, never in the JSON."""

from __future__ import annotations

import json
import random
import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from all_commands import COMMANDS

from simulator.cli import _run
from simulator.errors import UsageError
from simulator.hole import load_hole
from simulator.player import load_player
from simulator.toml_text import in_metres

YARD = 0.9144
"""Metres in a yard, exactly (international yard and pound agreement, 1959)."""

WORDS = "par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14; out left 34; green 24 deep, pin 7 on"
COURSE = str(Path(__file__).parents[1] / "hole" / "maps" / "tidewrack.osm")
Said = Callable[..., str]


@pytest.fixture
def said(capsys: pytest.CaptureFixture[str]) -> Said:
    """What a command prints."""

    def run(*arguments: str) -> str:
        assert _run(list(arguments)) == 0, capsys.readouterr().err
        return capsys.readouterr().out

    return run


@pytest.fixture
def shots(tmp_path: Path) -> Path:
    """Measured shots in a file whose headings name no unit."""
    draw = random.Random(3)
    rows = ["club,carry,offline"]
    for club, carry in (("driver", 190.0), ("7-iron", 128.0)):
        rows += [f"{club},{draw.gauss(carry, 8):.1f},{draw.gauss(1, 10):.1f}" for _ in range(14)]
    path = tmp_path / "shots.csv"
    path.write_text("\n".join(rows))
    return path


def no_yards(text: str) -> None:
    assert not re.search(r"\byd\b|\byards?\b|_yd\b", text), text


def test_every_command_takes_units() -> None:
    assert not [name for name, one in COMMANDS.items() if not any("--units" in p.opts for p in one.params)]


def test_list(said: Said) -> None:
    assert "Withy Drain, par 4, 404 yd" in said("list")
    metric = said("list", "--units", "metres")
    assert "Withy Drain, par 4, 369 m" in metric
    no_yards(metric)


def test_a_word_that_is_no_unit_is_refused_everywhere(readings: Path, shots: Path) -> None:
    for arguments in (
        ["list"], ["survey", str(readings)], ["practice", "withy-drain"], ["sketch", WORDS], ["show", "eel-trap"],
        ["import-map", COURSE, "-o", str(shots.parent / "out")], ["player", "fit", str(shots), "--level", "12"],
        ["new", "player", "--name", "Ada", "--handicap", "15"], ["check", "isolde"],
        ["course", "ostrel-heath"],
    ):  # fmt: skip
        assert _run([*arguments, "--units", "feet"]) == UsageError("").exit_status


def test_survey(said: Said, readings: Path, tmp_path: Path) -> None:
    out = tmp_path / "mill.toml"
    yards = said("survey", str(readings))
    metric = said("survey", str(readings), "-o", str(out), "--units", "metres")
    no_yards(metric)
    far = [int(re.search(r"^flag +(\d+)", text, re.M)[1]) for text in (yards, metric)]  # type: ignore[index]
    assert far == [340, round(YARD * 340)]
    assert "23 metres deep: 8 of room in front of the flag, 15 behind" in metric  # 25, 9 and 16 yards
    no_yards(out.read_text())
    hole = load_hole(out)
    assert hole.length_yd == pytest.approx(340.0, abs=0.05)
    assert said("survey", str(readings), "--json", "--units", "metres") == said("survey", str(readings), "--json")


def test_sketch(said: Said, tmp_path: Path) -> None:
    yards, metric = tmp_path / "yards.toml", tmp_path / "metres.toml"
    said("sketch", WORDS, "-o", str(yards))
    screen = said("sketch", WORDS, "-o", str(metric), "--units", "metres")
    no_yards(screen)
    assert f"par 4, {YARD * 372:.0f} m" in " ".join(screen.split()) and "195 to 232" in screen
    text = metric.read_text()
    assert "_yd" not in text and tomllib.loads(text)["length_m"] == pytest.approx(YARD * 372, abs=0.006)
    one, two = load_hole(yards), load_hole(metric)
    assert two.length_yd == pytest.approx(one.length_yd, abs=0.01)
    for a, b in zip(one.features, two.features, strict=True):
        assert a.name == b.name and b.area.area == pytest.approx(a.area.area, rel=2e-3)
    # words in metres stay in metres, and may be turned into yards
    assert "length_m = 342" in said("sketch", "par 4, 342 m")
    assert "length_yd = 374.02" in said("sketch", "par 4, 342 m", "--units", "yards")


def test_import_map(said: Said, tmp_path: Path) -> None:
    folders = [tmp_path / "yards", tmp_path / "metres"]
    yards, metric = (
        said("import-map", COURSE, "-o", str(folder), "--units", folder.name) for folder in folders
    )
    no_yards(metric)
    assert "4 4 355 04.toml" in " ".join(yards.split())
    assert f"4 4 {YARD * 355:.0f} 04.toml" in " ".join(metric.split())
    for path in sorted(folders[0].glob("*.toml")):
        one, two = load_hole(path), load_hole(folders[1] / path.name)
        values = (folders[1] / path.name).read_text().split("\n\n", 1)[1]  # what stands above are comments
        assert not re.search(r"_yd = ", values)
        assert two.length_yd == pytest.approx(one.length_yd, abs=0.1)
        # a name says how far on in the file's own unit, the rest of it is the same
        assert not any(re.search(r"\d yd ", f.name) for f in two.features)
        assert [re.sub(r"\d+ m ", "", f.name) for f in two.features] == [
            re.sub(r"\d+ yd ", "", f.name) for f in one.features
        ]


def test_player_fit(said: Said, shots: Path, tmp_path: Path) -> None:
    """Headings that name no unit are read in that of `--units`, so the figures on screen are those of the file.

    A straight strike carries up to 2 % farther than the ones that curve, which the file has at 190.
    """
    out, picture = tmp_path / "me.toml", tmp_path / "shots.svg"
    fit = ("player", "fit", str(shots), "--level", "12")
    metric = said(*fit, "--units", "metres", "-o", str(out), "--plot", str(picture))
    no_yards(metric)
    assert re.search(r"^driver +14 +19[0-3] ", metric, re.M)
    no_yards(out.read_text().split("name =", 1)[1])
    driver = load_player(out).club("driver")
    assert driver.carry_yd == pytest.approx(190.0 / YARD, abs=3.0)
    drawn = picture.read_text()
    assert "yard" not in drawn and " yd" not in drawn
    found = json.loads(said(*fit, "--units", "metres", "--json"))
    assert found["clubs"][0]["carry_yd"] == pytest.approx(driver.carry_yd, abs=0.06)  # four figures in the file


def test_a_heading_that_names_its_unit_is_believed(said: Said, shots: Path) -> None:
    shots.write_text(shots.read_text().replace("carry,offline", "carry (m),offline (m)"))
    yards, metric = (
        said("player", "fit", str(shots), "--level", "12", "--units", u) for u in ("yards", "metres")
    )
    assert re.search(r"^driver +14 +20\d ", yards, re.M) and re.search(r"^driver +14 +19[0-3] ", metric, re.M)


@pytest.mark.parametrize(
    ("driver", "iron", "carry_m"),
    [("190", "7-iron 128", 190.0), ("190 m", "7i 128 m", 190.0), ("208 yd", "7 iron 140 yd", YARD * 208)],
)
def test_new_player(said: Said, tmp_path: Path, driver: str, iron: str, carry_m: float) -> None:
    out = tmp_path / "ada.toml"
    said("new", "player", "--name", "Ada", "--handicap", "15", "--driver", driver, "--iron", iron, "-o", str(out),
         "--units", "metres")  # fmt: skip
    clubs = tomllib.loads(out.read_text())["club"]
    assert clubs["driver"]["carry_m"] == pytest.approx(carry_m, abs=0.006)
    assert clubs["7-iron"]["carry_m"] == pytest.approx(128.0, abs=0.1)
    assert load_player(out).club("driver").carry_yd == pytest.approx(carry_m / YARD, abs=0.01)


def test_new_player_total_in_metres(said: Said) -> None:
    text = said("new", "player", "--name", "Ada", "--handicap", "15", "--driver", "205 total", "--units", "m")
    assert tomllib.loads(text)["club"]["driver"] == {"total_m": 205.0}


@pytest.mark.slow
def test_practice(said: Said) -> None:
    work = ("practice", "eel-trap", "--sequences", "100")
    metric = said(*work, "--units", "metres")
    assert "9 m more with the driver" in metric and "10 yd more with the driver" in said(*work)
    no_yards(metric)


def test_lengths_of_a_file_in_metres() -> None:
    """Numbers and lists of them; comments, texts, counts and names of points stay as they are."""
    text = (
        "# at_yd = 10\n"
        'at_yd = 100  # carry_yd = 1\n'
        'name = "the low_yd = 3 # wood"\n'
        "xy_yd = [[0, -10], [2.5, 1e1]]\n"
        'tee = [{ name = "a", at_yd = -0.01, turn_deg = 8 }]\n'
        "playable = true\n"
    )
    assert in_metres(text) == (
        "# at_yd = 10\n"
        'at_m = 91.44  # carry_yd = 1\n'
        'name = "the low_yd = 3 # wood"\n'
        "xy_m = [[0, -9.14], [2.29, 9.14]]\n"
        'tee = [{ name = "a", at_m = -0.01, turn_deg = 8 }]\n'
        "playable = true\n"
    )


@pytest.mark.parametrize(
    ("arguments", "line"),
    [
        (["carries", "300 m"], "300 m is out of reach today: the longest club carries 179 m"),
        (["carries", "5 m"], "distance 5.0 m: 9 to 366 m is allowed"),
        (["plan", "long-sluice", "--from", "700 m out"], "place '700 m out': found 700.0 m out, the white tee is 456 m"),
        (["plan", "long-sluice", "--from", "700 yd out"], "place '700 yd out': found 640 m out"),
        (
            ["compare", "withy-drain", "9-iron", "--from", "22 yd out, fairway"],
            'a full 9-iron flies 92 m and the pin is 20 m away: say "pitch"',
        ),
        (["carries", "150 m", "--height", "far"], "height 'far'; allowed: yards such as 6"),
    ],
)
def test_a_refusal_is_in_the_unit_asked_for(
    arguments: list[str], line: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """What was typed stays as it was typed."""
    assert _run([*arguments, "--units", "metres"]) in (2, 3)
    assert line in capsys.readouterr().err
