"""`holesim review`: a hole or a round, words or JSON, pictures, refusals; its keys are written down."""

from __future__ import annotations

import dataclasses
import json
import re

import fake_review
import pytest
from written import JSON_KEYS

from simulator.cli import _run
from simulator.strategy import review as work

ROUND = "hole 1: driver to 200 out, left rough; 6i to 30 ft; 2 putts\n3: 6-iron to 30 out, right rough; chip to 6 ft; 1 putt\n"


@pytest.fixture
def stand_in(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(work, "review", fake_review.hole_review)
    monkeypatch.setattr(work, "review_round", fake_review.round_review)


def test_a_hole_on_the_screen(stand_in, capsys) -> None:
    assert _run(["review", "withy-drain", fake_review.BUSY]) == 0
    out = capsys.readouterr().out
    assert max(map(len, out.splitlines())) <= 80
    assert "12 strokes; Barnaby needs 8.10 here on average: 3.90 lost." in out
    assert "Choices lost 0.70,\nswings lost 3.20." in out
    assert "out of bounds, again" in out and "Rules of Golf 4.3" in out
    assert "the 3-wood 4 yd left of the middle of" in out
    assert "4 more cost 0.03 or more" in out


def test_metres_and_standard_errors(stand_in, capsys) -> None:
    assert _run(["review", "withy-drain", fake_review.BUSY, "--units", "metres", "--full"]) == 0
    out = capsys.readouterr().out
    assert "9.1 m" in out and "dropped 160 m" in out and " yd" not in out and " ft" not in out
    assert out.count("standard errors") == 9


def test_putts_noted_in_metres_are_told_as_noted(stand_in, capsys) -> None:
    """By way of whole feet 8 m came back as 7.9 and 1 m as 0.9."""
    notes = "3w to 190 m out; 5-hybrid to 8 m; putt to 1 m left; 1 putt"
    assert _run(["review", "withy-drain", notes, "--units", "metres"]) == 0
    out = " ".join(capsys.readouterr().out.split())
    assert " 8.0 m " in out and " 1.0 m left" in out
    assert _run(["review", "withy-drain", notes]) == 0
    assert " 26.2 ft " in " ".join(capsys.readouterr().out.split())


def test_a_round_from_a_file(stand_in, capsys, tmp_path) -> None:
    path = tmp_path / "round.txt"
    path.write_text(ROUND)
    assert _run(["review", "ostrel-heath", str(path), "--player", "isolde"]) == 0
    out = capsys.readouterr().out
    assert max(map(len, out.splitlines())) <= 80
    assert "Ostrel Heath, 2 holes; Isolde" in out and " 1 First Furrow" in out
    for name in work.holes.PARTS:
        assert name in out
    assert "hole 1, stroke 1, driver: the 3-wood" in out


def test_the_parts_of_the_game_and_the_penalties_are_the_score(stand_in, capsys, tmp_path) -> None:
    path = tmp_path / "round.txt"
    path.write_text(f"1: {ROUND.splitlines()[0].partition(':')[2]}\n3: 6-iron out of bounds, reload; 6-iron to 9 ft; 2 putts\n")
    assert _run(["review", "ostrel-heath", str(path), "--player", "isolde"]) == 0
    rows = {line[:26].strip(): line[26:34].strip() for line in capsys.readouterr().out.splitlines()}
    counts = [int(rows[name]) for name in (*work.holes.PARTS, "penalties")]
    assert counts[-1] == 1 and sum(counts) == 4 + 5


@pytest.mark.parametrize("last", ["2 putts", "picked up"])
def test_what_a_round_lost_is_what_its_choices_and_swings_lost(last: str, stand_in, capsys, tmp_path) -> None:
    """A hole that was picked up: what was still to play belongs to what it came to."""
    path = tmp_path / "round.txt"
    path.write_text(f"3: 6-iron to 9 ft; 2 putts\n11: 8-iron to 20 ft; {last}\n")
    assert _run(["review", "ostrel-heath", str(path), "--player", "isolde"]) == 0
    out = " ".join(capsys.readouterr().out.split())
    more, choices, swings = map(float, re.search(r"average: ([\d.]+) lost. Choices lost ([\d.]+), swings lost (\d+\.\d+)", out).groups())
    assert more == pytest.approx(choices + swings, abs=0.011)
    assert ("strokes and 2.07 still to play on average" in out) == (last == "picked up")
    assert _run(["review", "ostrel-heath", str(path), "--player", "isolde", "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    came_to = found["score"] + found["left"]
    assert came_to - found["expected"] == pytest.approx(found["choice"] + found["swing"])


def test_a_ball_far_beyond_its_club_is_said(stand_in, capsys) -> None:
    assert _run(["review", "withy-drain", "3w to 30 out, fairway; chip to 9 ft; 2 putts"]) == 0
    out = " ".join(capsys.readouterr().out.split())
    assert re.search(r"Look again at stroke 1: 3[67]\d yd with the 3-wood is far beyond this player, who carries it 176 yd", out)
    assert _run(["review", "withy-drain", "3w to 200 out; 3w to 30 out, fairway; chip to 9 ft; 2 putts"]) == 0
    assert "Look again" not in capsys.readouterr().out


def test_json_alone_and_its_keys_are_written_down(stand_in, capsys, tmp_path) -> None:
    path = tmp_path / "round.txt"
    path.write_text(ROUND)
    assert _run(["review", "ostrel-heath", str(path), "--json", "--seed", "4"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["schema"] == "holesim-review-1" and found["seed"] == 4 and len(found["holes"]) == 2
    hole = found["holes"][0]
    stroke = hole["strokes"][0]
    lost = sum(one["choice"] + one["swing"] for one in hole["strokes"])
    assert lost == pytest.approx(hole["score"] - hole["expected"])
    keys = {*found, *found["parts"][0], *hole, *stroke, *stroke["from"], *stroke["best"]}
    missing = [key for key in keys if f"`{key}`" not in JSON_KEYS and not key.endswith("_standard_error")]
    assert not missing


def test_lines_that_were_all_noted_are_not_said_to_be_taken(monkeypatch, capsys) -> None:
    def given(*arguments, **more):
        found = fake_review.round_review(*arguments, **more)
        holes = {
            number: dataclasses.replace(one, strokes=tuple(dataclasses.replace(s, aim_given=True) for s in one.strokes))
            for number, one in found.holes.items()
        }
        return dataclasses.replace(found, holes=holes)

    for made, said in ((fake_review.round_review, True), (given, False)):
        monkeypatch.setattr(work, "review_round", made)
        assert _run(["review", "ostrel-heath", ROUND]) == 0
        assert ("Lines nobody noted" in capsys.readouterr().out) is said


def test_the_picture_of_every_hole(stand_in, capsys, tmp_path) -> None:
    notes = tmp_path / "round.txt"
    notes.write_text(ROUND)
    assert _run(["review", "ostrel-heath", str(notes), "--plot", str(tmp_path / "r.png")]) == 0
    assert sorted(path.name for path in tmp_path.glob("*.png")) == ["r-hole-01.png", "r-hole-03.png"]
    assert "wrote" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "why"),
    [
        (["withy-drain", "driver"], "to where?"),
        (["withy-drain", "2-iron to 200 out"], "no club '2-iron'"),
        (["withy-drain", "driver to 200 out; 2 putts"], "not on the green"),
        (["ostrel-heath", "driver to 200 out"], "which hole?"),
        (["ostrel-heath", "77: driver to 200 out"], "hole 77 is not on Ostrel Heath"),
        (["withy-drain", "missing.txt"], "missing.txt"),
        (["withy-drain", "driver to 200 out", "--json", "--full"], "choose one"),
        (["withy-drain", "driver to 200 out", "--plot", "a.docx"], "a.docx"),
        (["withy-drain", "nowhere tee; driver to 200 out"], "no tee called 'nowhere'"),
    ],
)
def test_a_refusal_is_one_line(arguments: list[str], why: str, capsys) -> None:
    assert _run(["review", *arguments]) == 2
    shown = capsys.readouterr()
    assert why in shown.err and shown.err.count("\n") == 1 and not shown.out


def test_an_interrupted_round_shows_the_holes_that_are_finished(monkeypatch, capsys) -> None:
    def review(hole, player, notes, **more):
        if hole.name != "First Furrow":
            raise KeyboardInterrupt
        return fake_review.hole_review(hole, player, notes)

    monkeypatch.setattr(work.working, "review", review)
    assert _run(["review", "ostrel-heath", ROUND]) == 130
    shown = capsys.readouterr()
    assert "Ostrel Heath, 1 hole;" in shown.out and "First Furrow" in shown.out
    assert "hole 3: left out" in shown.err and "interrupted" in shown.err
    assert _run(["review", "ostrel-heath", ROUND.splitlines()[1]]) == 130
    assert not capsys.readouterr().out
