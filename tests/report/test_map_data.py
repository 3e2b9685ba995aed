"""Whose data a hole was made from stands on the screen, in the tables, on the picture, in the JSON."""

from __future__ import annotations

from dataclasses import replace

import fake_answers
import pytest

from simulator.hole import load_hole
from simulator.report import checks
from simulator.report.full import full_tables
from simulator.report.plot import draw_plan
from simulator.report.screen import COLUMNS
from simulator.report.text import LINES, answer_screen
from simulator.strategy.result import Answer

OSM = "© OpenStreetMap contributors (ODbL)"
LINE = f"Map data: {OSM}."


@pytest.fixture(params=["withy-drain", "eel-trap", "long-sluice"])
def answer(request: pytest.FixtureRequest) -> Answer:
    return fake_answers.answer(replace(load_hole(request.param), attribution=OSM), n=300)


def test_on_the_screen(answer: Answer) -> None:
    screen = answer_screen(answer)
    assert LINE in " ".join(screen.split())
    assert len(screen.splitlines()) <= LINES and max(map(len, screen.splitlines())) <= COLUMNS
    assert "Rules of Golf 4.3" in " ".join(screen.split())


def test_in_the_tables_and_the_json(answer: Answer) -> None:
    assert LINE in " ".join(full_tables(answer).split())
    assert answer.to_dict()["attribution"] == OSM


def test_on_the_picture(answer: Answer) -> None:
    words = " ".join(" ".join(text.get_text() for text in draw_plan(answer).texts).split())
    assert LINE in words


def test_in_check(answer: Answer) -> None:
    assert LINE in " ".join(checks.hole_text(answer.hole).split())
    assert checks.hole_dict(answer.hole)["attribution"] == OSM


def test_not_where_nobody_asks() -> None:
    answer = fake_answers.answer(n=300)
    assert answer.to_dict()["attribution"] is None
    assert "Map data" not in answer_screen(answer) + full_tables(answer) + checks.hole_text(answer.hole)
