"""`holesim practice`: one hole or a folder, words or JSON, refusals; its keys are written down."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from written import JSON_KEYS

from simulator.cli import _run
from simulator.strategy import practice as work
from simulator.strategy.errorbars import Estimate
from simulator.strategy.practice import Gain, Practice


@pytest.fixture
def stand_in(monkeypatch: pytest.MonkeyPatch) -> list:
    asked: list = []

    def practice(holes, player, *, conditions, sequences, seed, threads, progress):
        asked.append((holes, player, conditions))
        one = tuple(Estimate(0.05, 0.01) for _ in holes)
        gain = Gain("mishits_halved", "half the mishits", Estimate(0.9, 0.2), one)
        return Practice(player, tuple(holes), tuple(conditions), one, (gain,), ("a: b",), seed, sequences)

    monkeypatch.setattr(work, "practice", practice)
    return asked


def test_json_alone_and_its_keys_are_written_down(stand_in, capsys) -> None:
    assert _run(["practice", "withy-drain", "--json", "--seed", "3"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["seed"] == 3 and found["gains"][0]["strokes_per_round"] == 0.9
    for key in (*found, *found["gains"][0]):
        assert f"`{key}`" in JSON_KEYS, key


def test_a_folder_is_a_course(stand_in, capsys, tmp_path) -> None:
    text = (Path(__file__).parents[2] / "holes" / "eel-trap.toml").read_text("utf-8")
    for name in ("b", "a"):
        (tmp_path / f"{name}.toml").write_text(text.replace("Eel Trap", name), encoding="utf-8")
    assert _run(["practice", str(tmp_path), "--wind", "10 mph against"]) == 0
    holes, _, days = stand_in[0]
    assert len(holes) == len(days) == 2 and days[0].wind.speed_mph == 10.0
    assert "2 holes" in capsys.readouterr().out


def test_a_course_by_its_name_plays_its_holes_in_order(stand_in, capsys) -> None:
    assert _run(["practice", "ostrel-heath", "--pin", "front"]) == 0
    holes = stand_in[0][0]
    assert len(holes) == 18 and holes[0].name == "First Furrow" and holes[3].name == "Crooked Ash"
    assert "18 holes" in capsys.readouterr().out


def test_a_bad_hole_of_a_folder_is_told_and_left_out(stand_in, capsys, tmp_path) -> None:
    text = (Path(__file__).parents[2] / "holes" / "eel-trap.toml").read_text("utf-8")
    (tmp_path / "01-good.toml").write_text(text, encoding="utf-8")
    (tmp_path / "02-torn.toml").write_text("name =", encoding="utf-8")
    assert _run(["practice", str(tmp_path)]) == 0
    assert len(stand_in[0][0]) == 1 and "left out: " in capsys.readouterr().err
    (tmp_path / "01-good.toml").unlink()
    assert _run(["practice", str(tmp_path)]) == 2
    assert "no hole of it can be read" in capsys.readouterr().err


def test_an_empty_folder_is_refused(tmp_path, capsys) -> None:
    assert _run(["practice", str(tmp_path)]) == 2
    assert "no hole file" in capsys.readouterr().err
