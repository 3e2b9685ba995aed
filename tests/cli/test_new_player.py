"""`new player`: every question an option, no prompt where nobody can be asked, no file lost."""

from __future__ import annotations

import os
import stat
from pathlib import Path
from typing import Any

import pytest

from simulator.cli import _run
from simulator.player import load_player

GIVEN = ["new", "player", "--name", "Ada", "--handicap", "15"]


class Keyboard:
    """A terminal with somebody at it, who types these lines."""

    def __init__(self, *lines: str) -> None:
        self.lines = list(lines)
        self.asked: list[str] = []

    def isatty(self) -> bool:
        return True

    def prompt(self, question: str, **how: Any) -> str:
        assert how["err"]  # standard output is the file's
        self.asked.append(question)
        return self.lines.pop(0)


def sit_down(monkeypatch: pytest.MonkeyPatch, *lines: str) -> Keyboard:
    keyboard = Keyboard(*lines)
    monkeypatch.setattr("sys.stdin", keyboard)
    monkeypatch.setattr("typer.prompt", keyboard.prompt)
    return keyboard


def test_options_alone_write_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "ada.toml"
    more = ["--sex", "woman", "--driver", "200 total", "--iron", "7-iron 120 m", "--miss", "short right", "--shape", "fade"]
    assert _run([*GIVEN, *more, "-o", str(target)]) == 0
    streams = capsys.readouterr()
    assert streams.out == "" and "wrote" in streams.err
    who = load_player(target)
    assert (who.name, who.handicap) == ("Ada", 15)
    assert who.club("7i").carry_yd == pytest.approx(120 / 0.9144)
    assert who.club("driver").carry_yd < 195 and who.club("driver").curve_yd > 0 < who.club("driver").bias_right_deg
    assert any("(woman)" in sentence for sentence in who.assumed)
    lines = target.read_text().splitlines()
    assert all("#" in line for line in lines if "=" in line and not line.startswith(("#", "name")))  # each explained
    assert list(tmp_path.iterdir()) == [target]
    assert stat.S_IMODE(target.stat().st_mode) & 0o600 == 0o600


def test_standard_output_without_a_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run([*GIVEN, "--driver", "190 m"]) == 0
    path = tmp_path / "x.toml"
    path.write_text(capsys.readouterr().out)
    assert load_player(path).club("driver").carry_yd == pytest.approx(190 / 0.9144)


def test_a_file_that_is_there_is_kept(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    target = tmp_path / "ada.toml"
    target.write_text("mine")
    assert _run([*GIVEN, "-o", str(target)]) == 2
    assert target.read_text() == "mine" and "--force" in capsys.readouterr().err
    assert _run([*GIVEN, "-o", str(target), "--force"]) == 0
    assert load_player(target).handicap == 15


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["new", "player", "--name", "Ada"], "--handicap not given, and nobody there to ask"),
        (["new", "player"], "--name and --handicap not given"),
        ([*GIVEN[:-1], "99"], "handicap: found 99"),
        ([*GIVEN, "--driver", "potato"], "'potato', which is no distance of the driver"),
        ([*GIVEN, "--driver", "2000"], "carry_yd: found 2000"),
        ([*GIVEN, "--iron", "140"], "'140', which is not understood"),
        ([*GIVEN, "--iron", "woman"], "'woman' is no answer to: One iron"),
        ([*GIVEN, "--miss", "up"], "'miss', which is not followed by 'up'"),
        ([*GIVEN, "--shape", "banana"], "'banana', which is not understood"),
        ([*GIVEN, "--sex", "dog"], "'dog', which is not understood"),
        (["new", "player", "--name", "", "--handicap", "9"], "found nothing between the quotes"),
        ([*GIVEN, "--driver", "205, 7-iron 140", "--units", "metres"], "is no answer to: Driver, metres of carry"),
        ([*GIVEN, "-o", "/nowhere/at/all.toml"], "cannot be written"),
        ([*GIVEN, "-o", "/"], "--out '/'; allowed: a file that ends in .toml"),
    ],
)
def test_slips_cost_one_line(arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(arguments) == 2
    streams = capsys.readouterr()
    assert streams.out == "" and words in streams.err and len(streams.err.splitlines()) == 1


def test_questions_are_asked_until_understood(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    target = tmp_path / "bo.toml"
    keyboard = sit_down(monkeypatch, "Bo", "ninety", "plus 2", "", "far", "250 total", "", "none", "straight")
    assert _run(["new", "player", "-o", str(target)]) == 0
    assert not keyboard.lines and len(keyboard.asked) == 9
    who = load_player(target)
    assert (who.name, who.handicap) == ("Bo", -2)
    assert 210 < who.club("driver").carry_yd < 240 and who.club("driver").curve_yd == 0.0
    assert capsys.readouterr().out == ""


def test_what_is_given_is_not_asked(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    keyboard = sit_down(monkeypatch, "", "", "", "", "")
    assert _run([*GIVEN, "-o", str(tmp_path / "a.toml")]) == 0
    assert [words.split()[0] for words in keyboard.asked] == ["Man", "Driver,", "One", "Usual", "Usual"]


def test_interrupted_while_asking(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    sit_down(monkeypatch)

    def stop(*_: object, **__: object) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr("typer.prompt", stop)
    assert _run([*GIVEN, "-o", str(tmp_path / "a.toml")]) == 130
    assert os.listdir(tmp_path) == []


def test_new_alone_says_what_there_is(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["new"]) == 0
    assert "player" in capsys.readouterr().out


def test_words_reach_the_question(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    from simulator.strategy import ask

    seen: list[Any] = []

    class Stop(Exception):
        pass

    def stand_in(hole: Any, player: Any, clubs: Any = None, **_: Any) -> None:
        seen.append((player, clubs))
        raise Stop

    monkeypatch.setattr(ask, "compare", stand_in)
    monkeypatch.setattr(ask, "plan", stand_in)
    with pytest.raises(Stop):
        _run(["compare", "withy-drain", "driver 8 left", "152 shot", "--player", "handicap 15, driver 205", "--without", "3w,lob",
              "--without", "gap"])  # fmt: skip
    player, clubs = seen[0]
    assert player.club("driver").carry_yd == 205 and player.left_out == ("3-wood", "lob wedge", "gap wedge")
    assert clubs == ["driver 8 left", "152 shot"]
    assert "152 shot: the nearest is the" in capsys.readouterr().err
    for arguments, words in (
        (["compare", "withy-drain", "3w", "--without", "3w"], "'3w' is left out of the bag"),
        (["plan", "withy-drain", "--without", "mashie"], "no club 'mashie'"),
        (["plan", "withy-drain", "--player", "handicap 15, drivr 205"], "'drivr', which is not understood"),
        (["carries", "--without", "mashie"], "no club 'mashie'"),
    ):
        assert _run(arguments) == 2
        assert words in capsys.readouterr().err


def test_check_takes_words_too(capsys: pytest.CaptureFixture[str]) -> None:
    assert _run(["check", "handicap 15, driver 205 fade 9 yards tee only, 7i low 120, no 3w"]) == 0
    out = capsys.readouterr().out
    for line in ("Curve, yd: driver 9 R.", "Held down, yd of carry: 7-iron 120.", "From a tee only: driver.",
                 "Left at home: 3-wood."):  # fmt: skip
        assert line in out
    assert max(map(len, out.splitlines())) <= 80


def test_a_new_hole_is_pointed_to_what_makes_it(capsys):
    assert _run(["new", "hole", "-o", "it.toml"]) == 2
    told = capsys.readouterr().err
    assert "holesim sketch" in told and "survey" in told and told.count("\n") == 1
