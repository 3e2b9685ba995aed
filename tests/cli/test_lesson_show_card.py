"""`lesson`, `show` and `card`: what they write, what they refuse before any work."""

from __future__ import annotations

import json
from pathlib import Path

import fake_lessons
import pytest

from simulator.cli import _run
from simulator.hole.course import hole_number
from simulator.strategy import lesson


@pytest.fixture(autouse=True)
def quiet(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setattr(lesson, "lesson", lambda *_, **__: fake_lessons.lesson("eel-trap"))
    monkeypatch.chdir(tmp_path)


def test_lesson_writes_what_it_says(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert _run(["lesson", "eel-trap", "--only", "aims", "--only", "scores", "-o", "l.png"]) == 0
    out, err = capsys.readouterr()
    assert out == "" and "wrote l-1-aims.png" in err and "wrote l-2-scores.png" in err
    assert {p.name for p in tmp_path.iterdir()} == {"l-1-aims.png", "l-2-scores.png"}


def test_show_prints_the_table_or_json_alone(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert _run(["show", "withy-drain", "--tee", "red", "--pin", "front left", "-o", "p.svg"]) == 0
    assert "from the red tee" in capsys.readouterr().out
    assert (tmp_path / "p.svg").read_text().startswith("<?xml")
    assert _run(["show", "withy-drain", "--units", "metres", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["length_yd"] == pytest.approx(404)


def test_card_of_a_folder_tells_a_bad_hole_and_goes_on(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    good = (Path(__file__).parents[2] / "holes" / "eel-trap.toml").read_text()
    folder = tmp_path / "links"
    folder.mkdir()
    (folder / "01-one.toml").write_text(good)
    (folder / "02-two.toml").write_text("par = 'four'")
    assert _run(["card", str(folder), "-o", "c.pdf"]) == 0
    err = capsys.readouterr().err
    assert "left out: " in err and "02-two" in err and "wrote c.pdf" in err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["lesson", "eel-trap", "--only", "clouds"], "allowed: plan, two, aims"),
        (["lesson", "eel-trap", "-o", "l.gif"], "allowed are files ending in"),
        (["lesson", "eel-trap", "no club at all"], "no club at all"),
        (["lesson", "eel-trap", "--played", "1"], "--played goes with --from"),
        (["show", "eel-trap", "-o", "nowhere/p.png"], "no folder"),
        (["show", "eel-trap", "--units", "feet"], "allowed: yards or metres"),
        (["show", "no-such-hole"], "no such file"),
        (["card", "eel-trap"], "--out"),
        (["card", "eel-trap", "--tee", "blue", "-o", "c.pdf"], "no tee called"),
    ],
)
def test_a_slip_is_told_in_one_line(
    words: list[str], said: str, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert _run(words) == 2
    err = capsys.readouterr().err
    assert said in err and len(err.strip().splitlines()) == 1
    assert not list(tmp_path.iterdir())


def test_an_empty_folder_of_cards(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    assert _run(["card", "empty", "-o", "c.pdf"]) == 2
    assert "no hole file" in capsys.readouterr().err


def test_a_hole_asked_for_alone_keeps_its_number(tmp_path: Path) -> None:
    """Cards of the 11th and the 3rd of a course are not called the 1st and the 2nd, of a demo or of own files."""
    out = tmp_path / "card.svg"
    assert _run(["card", "ostrel-heath/11", "ostrel-heath/3", "-o", str(out)]) == 0
    assert sorted(one.name for one in tmp_path.iterdir()) == ["card-hole-03.svg", "card-hole-11.svg"]
    assert hole_number("ostrel-heath/11") == 11 and hole_number("withy-drain") is None
    (tmp_path / "07-mine.toml").write_text("")
    (tmp_path / "mine.toml").write_text("")
    assert hole_number(str(tmp_path / "07-mine.toml")) == 7 and hole_number(str(tmp_path / "mine.toml")) is None
    assert hole_number("par 4, 372; out left 34") is None and hole_number("x" * 5000) is None


def test_cards_are_named_by_their_holes(tmp_path: Path) -> None:
    """A course of holes 1 and 3: the card of the 3rd is not called the 2nd's."""
    good = (Path(__file__).parents[2] / "holes" / "eel-trap.toml").read_text()
    (tmp_path / "links").mkdir()
    for name in ("01.toml", "03-low.toml"):
        (tmp_path / "links" / name).write_text(good)
    assert _run(["card", "links", "-o", "c.svg"]) == 0
    assert {path.name for path in tmp_path.glob("*.svg")} == {"c-hole-01.svg", "c-hole-03.svg"}
    assert _run(["card", "links", "links", "-o", "d.svg"]) == 0  # two of each number: their place in the book first
    twice = {"d-1-hole-1.svg", "d-2-hole-3.svg", "d-3-hole-1.svg", "d-4-hole-3.svg"}
    assert {path.name for path in tmp_path.glob("d*.svg")} == twice


def test_pages_of_a_longer_run_before_are_said(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """They are no part of what was asked now, and would be printed with it; nobody's file is removed."""
    out = tmp_path / "card.png"
    mine = tmp_path / "card-notes.png"
    mine.write_bytes(b"mine")
    assert _run(["card", "withy-drain", "eel-trap", "-o", str(out)]) == 0
    first = {one.name for one in tmp_path.iterdir()} - {"card-notes.png"}
    assert len(first) == 2 and "from before" not in capsys.readouterr().err
    assert _run(["card", "long-sluice", "-o", str(out)]) == 0
    told = capsys.readouterr().err.splitlines()
    assert told[-1] == f"holesim: there from before, not of this run: {', '.join(sorted(first))}"
    assert mine.read_bytes() == b"mine" and first < {one.name for one in tmp_path.iterdir()}


def test_letters_the_font_lacks_are_told_once(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    file = tmp_path / "a.toml"
    file.write_text(
        'name = "鬼の谷"\npar = 3\nlength_yd = 140\ngreen = [{ front_yd = 128, depth_yd = 24, width_yd = 22 }]\n'
        'bunker = [{ name = "谷", at_yd = 135, offset_yd = 18, depth_yd = 9, width_yd = 6 }]\n',
        encoding="utf-8",
    )
    assert _run(["show", str(file), "-o", str(tmp_path / "a.png")]) == 0
    told = [line for line in capsys.readouterr().err.splitlines() if "warning" in line]
    assert len(told) == 1 and all(letter in told[0] for letter in "鬼の谷") and "Glyph" not in told[0]


def test_a_sheet_nobody_named_is_not_written_over_another(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert _run(["lesson", "eel-trap", "--only", "aims"]) == 0
    first = (tmp_path / "lesson.pdf").read_bytes()
    capsys.readouterr()
    assert _run(["lesson", "eel-trap", "--only", "scores"]) == 2
    err = capsys.readouterr().err
    assert err.count("\n") == 1 and "'lesson.pdf' is there already" in err and "-o lesson.pdf" in err
    assert (tmp_path / "lesson.pdf").read_bytes() == first
    assert _run(["lesson", "eel-trap", "--only", "scores", "-o", "lesson.pdf"]) == 0
    assert (tmp_path / "lesson.pdf").read_bytes() != first
