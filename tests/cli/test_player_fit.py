"""`holesim player fit`, as somebody types it."""

import json
import re
import tomllib

import pytest

from simulator.cli import _run
from simulator.player import load_player
from simulator.player.levels import level
from simulator.player.measured import Columns, fit_player, read_shots
from simulator.report.shotsplot import _page, draw_shots
from simulator.report.units import YARDS

SHOTS = "club,carry,offline\n" + "".join(f"7i,{130 + 3 * (k % 7)},{5 * (k % 5) - 9}\n" for k in range(30))


@pytest.fixture
def shots(tmp_path):
    path = tmp_path / "shots.csv"
    path.write_text(SHOTS)
    return path


def test_screen_file_and_picture(shots, tmp_path, capsys):
    out, picture = tmp_path / "me.toml", tmp_path / "me.png"
    assert _run(["player", "fit", str(shots), "--level", "12", "-o", str(out), "--plot", str(picture)]) == 0
    text = capsys.readouterr().out
    assert "7-iron" in text and max(map(len, text.splitlines())) <= 80
    assert picture.stat().st_size > 5000
    assert _run(["check", str(out)]) == 0
    assert not list(tmp_path.glob(".holesim-*"))


def test_clubs_nobody_measured_are_told(shots, tmp_path, capsys):
    """The file's bag is filled up from a standard set: a club the pupil does not own must not come unsaid."""
    out = tmp_path / "me.toml"
    assert _run(["player", "fit", str(shots), "--level", "12", "-o", str(out)]) == 0
    text = " ".join(capsys.readouterr().out.split())
    said = re.search(r"put into the file's bag from a standard set: (.+?)\. Delete", text)
    assert said is not None
    told = set(re.split(r", | and ", said[1]))
    written = set(tomllib.loads(out.read_text())["clubs"])
    assert told == written - {"7-iron"} and "driver" in told


def test_json_alone(shots, capsys):
    assert _run(["player", "fit", str(shots), "--level", "12", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    (club,) = found["clubs"]
    assert club["shots"] == 30
    assert 0.0 < club["doubt"]["direction_log"] < 0.18
    assert club["measured_run_yd"] is None


@pytest.mark.parametrize(
    "arguments",
    [
        ["--level", "99"],
        ["--level", "12", "--columns", "carry"],
        ["--level", "12", "--columns", "carry=Flight"],
        ["--level", "12", "--units", "feet"],
        ["--level", "12", "--sex", "x"],
        ["--level", "12", "-o", "no/such/folder/me.toml"],
        ["--level", "12", "--plot", "me.doc"],
        ["--level", "12", "--mapping", "none.toml"],
    ],
)
def test_slips_are_told_in_one_line(shots, arguments, capsys):
    assert _run(["player", "fit", str(shots), *arguments]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    assert len(captured.err.strip().splitlines()) == 1


def test_a_woman_s_file_says_whose_level_fills_it_in(shots, tmp_path, capsys):
    """Her part swings, and the clubs nobody measured, came from a man's level."""
    files = {}
    for sex in ("man", "woman"):
        out = tmp_path / f"{sex}.toml"
        assert (
            _run(["player", "fit", str(shots), "--level", "24", "--sex", sex, "-o", str(out), "--json"]) == 0
        )
        found = json.loads(capsys.readouterr().out)
        assert found["sex"] == sex
        files[sex] = load_player(out)
    assert tomllib.loads((tmp_path / "woman.toml").read_text())["sex"] == "woman"
    parts = {sex: player.part.direction_sd_deg.tolist() for sex, player in files.items()}
    assert parts["woman"] == level(24, "woman").part.direction_sd_deg.tolist() != parts["man"]


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("7i,13,0\n", "7-iron: 13 yd straight fits no strike of this club and was left aside."),
        ("7i,13,10\n7i,15,0\n", "7-iron: 13 yd 10 right, 15 yd straight fit no strike of this club and were left aside."),
    ],
)
def test_a_row_that_is_no_strike_is_told_in_the_singular(rows, said, shots, capsys):
    """It was "13 yd 0 fit no strike"."""
    shots.write_text(SHOTS + rows)
    assert _run(["player", "fit", str(shots), "--level", "12"]) == 0
    assert said in " ".join(capsys.readouterr().out.split())


def test_a_row_that_is_left_aside_is_not_counted(shots, tmp_path, capsys):
    """Thirty shots and a slip were "31" in the table, on the picture and in the file."""
    shots.write_text(SHOTS + "7i,13,0\n")
    out = tmp_path / "me.toml"
    assert _run(["player", "fit", str(shots), "--level", "12", "-o", str(out)]) == 0
    count = SHOTS.count("\n7i,")
    assert re.search(r"^7-iron +(\d+) ", capsys.readouterr().out, re.MULTILINE)[1] == str(count)
    assert tomllib.loads(out.read_text())["club"]["7-iron"]["doubt"]["shots"] == count
    fit = fit_player(read_shots(shots, Columns()).shots, level(12.0))
    club = next(one for one in fit.clubs if one.club == "7-iron")
    assert draw_shots(club).get_title(loc="left").endswith(f"({count})")


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("7i,13,0\n", "beyond the picture: 1."), ("7i,140,100\n7i,13,0\n", "beyond the picture: 2."), ("", "a usual mishit."),
    ],
)  # fmt: skip
def test_a_cross_that_is_not_on_the_picture_is_not_explained(rows, said, shots):
    shots.write_text(SHOTS + rows)
    fit = fit_player(read_shots(shots, Columns()).shots, level(12.0))
    assert sum(club.slips.size for club in fit.clubs) == rows.count("\n")
    words = [text.get_text() for text in _page(fit, YARDS).texts][-1]
    assert words.endswith(said) and "Cross" not in words
