"""Winds with --units metres are in metres a second (0.44704 of a mile an hour, exactly), never in mph."""

from __future__ import annotations

import math
from dataclasses import replace

import fake_answers

from simulator.conditions import Conditions, Wind
from simulator.player import load_player
from simulator.report import daywords
from simulator.report.carrytext import table
from simulator.report.full import full_tables
from simulator.report.text import answer_screen
from simulator.report.turns import way_words
from simulator.report.units import METRES
from simulator.strategy.confidence import Flip

TAKEN = "a one-club wind taken as 11 mph (common practice)"
WINDY = Conditions(wind=Wind(12.0, 0.0, "forecast", 4.0), assumed=(TAKEN,))
ALONG = Flip("wind_along", "", "mph", (-12.0, 12.0), 6.4, 1, 0.4)


def _answer():
    answer = fake_answers.answer(flips=(ALONG,), sure=0.9)
    best = answer.alternatives[0]
    near = replace(best.reach[0], helping_mph=5, starts_yd=best.reach[0].finish_yd.value + 3.0)
    one = replace(best, reach=(near,))
    return replace(answer, conditions=WINDY, alternatives=(one, *answer.alternatives[1:]))


def test_the_day_is_told_in_the_unit_asked_for() -> None:
    """12 mph are 5.36 m/s, gusts of 4 mph 1.79; 12 mph at 10 m are some 9 at head height."""
    assert daywords.wind_words(WINDY, 0.0).startswith("wind 12 +- 4 mph from 12 o'clock")
    assert daywords.wind_words(WINDY, 0.0, units=METRES).startswith("wind 5.4 +- 1.8 m/s from 12 o'clock")
    assert daywords.day_told(WINDY, units=METRES).startswith("Wind 5.4 +- 1.8 m/s")
    assert daywords.day_words(WINDY).startswith("wind 12 mph") and "9 at head" in daywords.day_words(WINDY)
    assert daywords.day_words(WINDY, METRES).startswith("wind 5.4 m/s") and "m/s" in daywords.day_words(WINDY, METRES)
    five = replace(WINDY, wind=Wind(5.0 / 0.44704, 0.0))
    assert daywords.wind_words(five, 0.0, units=METRES).startswith("wind 5 m/s")  # as it was typed


def test_what_turns_the_answer_is_a_wind_in_that_unit() -> None:
    """6.4 +- 0.4 mph: 6 in whole miles an hour; 2.86 +- 0.18 m/s."""
    assert way_words(ALONG) == "6 mph more behind" and way_words(ALONG, METRES) == "3 m/s more behind"
    assert way_words(ALONG, METRES, exact=True) == "2.9 +- 0.2 m/s more behind"


def test_no_mile_is_left_where_metres_are_asked_for() -> None:
    answer = _answer()
    texts = [answer_screen(answer, units=METRES), full_tables(answer, units=METRES),
             table(load_player("barnaby"), WINDY, (), METRES)]  # fmt: skip
    for text in texts:
        assert "mph" not in text and "m/s" in text, text
    assert "tried -5.4 to 5.4 m/s" in texts[1] and "taken as 4.9 m/s" in " ".join(texts[1].split())
    assert math.isclose(12 * 0.44704, 5.4, abs_tol=0.05) and math.isclose(11 * 0.44704, 4.9, abs_tol=0.05)
    for text in (answer_screen(answer), full_tables(answer)):
        assert "m/s" not in text and "mph" in text


def test_a_complaint_keeps_its_miles() -> None:
    """It tells how winds may be typed: "12 mph, 8 m/s, 20 km/h" says nothing as "5.4 m/s, 8 m/s"."""
    line = "wind 'x': allowed: 12 mph, 8 m/s; 100 yd"
    assert METRES.complaint(line) == "wind 'x': allowed: 12 mph, 8 m/s; 91 m"
