"""Yards or metres: 0.9144 exactly, on every human output, never in the JSON."""

from __future__ import annotations

import json
import re

import fake_answers
import pytest

from simulator import load_hole, load_player
from simulator.errors import UsageError
from simulator.report import checks, full, playerchecks
from simulator.report.jsonout import answer_json
from simulator.report.text import answer_screen
from simulator.report.units import METRES, YARDS, units_named


@pytest.mark.parametrize(
    ("yards", "words"), [(100.0, "91 m"), (0.0, "0 m"), (1.0, "1 m"), (404.0, "369 m"), (-10.0, "-9 m")]
)
def test_a_yard_is_0_9144_metres(yards: float, words: str) -> None:
    """International yard and pound agreement, 1959."""
    assert METRES.length(yards) == words
    assert YARDS.length(yards) == f"{yards:.0f} yd"


def test_words_of_lengths() -> None:
    assert YARDS.range(199.6, 200.4) == "200 yd" and METRES.range(100.0, 110.0) == "91 to 101 m"
    assert (YARDS.side(-8.7), YARDS.side(0.3), METRES.side(10.0)) == ("9 yd left", "", "9 m right")
    assert (YARDS.bare_side(-0.4), YARDS.bare_side(4.0)) == ("0", "4 right")
    assert (YARDS.putt(12.0), METRES.putt(12.0)) == ("12 ft", "3.7 m")  # 12 ft are 3.6576 m
    assert (METRES.number(-0.2), METRES.number(5.0, 1, signed=True)) == ("0", "+4.6")


@pytest.mark.parametrize(
    ("words", "metric"),
    [
        ("164 yd out, left rough", "150 m out, left rough"),
        ("stand on 8 by 6 yards of it", "stand on 7 by 5 metres of it"),
        ("from 100 to 120 yd", "from 91 to 110 m"),
        ("about 2.5 yards up", "about 2.3 metres up"),
        ("1,000 yd", "914 m"),
        ("lost 3 times in 100", "lost 3 times in 100"),
        ("the 12th, par 4", "the 12th, par 4"),
        ("a one-club wind taken as 11.3 mph", "a one-club wind taken as 5.1 m/s"),
        ("gusts to 18 mph taken as 15 +- 3 mph", "gusts to 8 m/s taken as 6.7 +- 1.3 m/s"),
        ("10 to 12 mph a club; 100 yards", "4.5 to 5.4 m/s a club; 91 metres"),
    ],
)
def test_ready_sentences(words: str, metric: str) -> None:
    assert METRES.sentence(words) == metric and YARDS.sentence(words) == words


def test_names() -> None:
    assert units_named("Metres") is METRES and units_named("yd") is YARDS
    with pytest.raises(UsageError, match="yards or metres"):
        units_named("feet")


def test_no_yard_is_left_on_a_metric_page() -> None:
    answer = fake_answers.answer()
    hole, player = load_hole("withy-drain"), load_player("isolde")
    for text in (
        answer_screen(answer, units=METRES), full.full_tables(answer, units=METRES),
        checks.hole_text(hole, METRES), playerchecks.player_text(player, METRES),
    ):  # fmt: skip
        body = text.split("Made with seed")[0]  # settings are named as in the JSON
        assert not re.search(r"\byd\b|\byards?\b", body), body
        assert re.search(r"\d m\b|\bm\b", body)
    for text in (answer_screen(answer), full.full_tables(answer), checks.hole_text(hole)):
        assert not re.search(r"\d m\b", text)


def test_a_check_in_metres_is_the_same_hole() -> None:
    hole = load_hole("withy-drain")
    yards, metres = checks.hole_text(hole), checks.hole_text(hole, METRES)
    drain = [
        next(line for line in text.splitlines() if line.startswith("withy drain")) for text in (yards, metres)
    ]
    numbers = [[int(n) for n in re.findall(r"\d+", line)] for line in drain]
    assert all(abs(m - 0.9144 * y) <= 1.0 for y, m in zip(*numbers, strict=True))


def test_keys_carry_the_unit_they_hold() -> None:
    """The JSON is the same whatever the units of the screen, and lengths say yards in their names."""
    data = json.loads(answer_json(fake_answers.answer()))
    lengths = {"room": ("carry_at_least_yd", "finish_at_most_yd", "left_edge_yd", "right_edge_yd")}
    one = data["alternatives"][0]
    assert set(lengths["room"]) <= set(one["room"])
    assert all(
        key.endswith("_yd") or key in ("name", "helping_mph", "firm_reaches") for key in one["reach"][0]
    )
    assert one["point"].keys() == {"by", "name", "offset_yd", "half"}
