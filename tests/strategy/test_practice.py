"""What practice is worth: each change does what it says, and a gain is that of a plan held."""

from __future__ import annotations

from dataclasses import replace

import pytest
from small_games import hole_of
from solved import SEED, THREADS, player_named, solved, straight_hole, tee, value_of

from simulator.player.levels import level
from simulator.strategy.better import (
    CHANGES,
    better_short_game,
    fewer_mishits,
    longer,
    longer_driver,
    no_short_game,
    straighter,
    total_direction_deg,
    unbiased,
)
from simulator.strategy.practice import BIAS, BIAS_WORDS, bias_words, practice
from simulator.strategy.search import search


@pytest.fixture(scope="module")
def barnaby():
    return player_named("barnaby")


def test_each_change_does_what_it_says(barnaby) -> None:
    first, last = barnaby.clubs[0], barnaby.clubs[-1]
    assert longer(barnaby, 10).clubs[0].carry_yd == pytest.approx(first.carry_yd + 10)
    assert longer(barnaby, 10).clubs[-1].carry_yd == pytest.approx(last.carry_yd * (1 + 10 / first.carry_yd))
    assert longer_driver(barnaby, 10).clubs[0].carry_yd == first.carry_yd + 10
    assert longer_driver(barnaby, 10).clubs[1:] == barnaby.clubs[1:]
    for was, now in zip(barnaby.clubs, straighter(barnaby, 1.0).clubs, strict=True):
        assert total_direction_deg(now) == pytest.approx(total_direction_deg(was) - 1.0)
    fewer = fewer_mishits(barnaby, 0.5)
    assert fewer.clubs[3].mishit_rate == barnaby.clubs[3].mishit_rate / 2
    assert fewer.part.mishit_rate == pytest.approx(barnaby.part.mishit_rate / 2)
    assert all(c.bias_long_pct == c.bias_right_deg == 0.0 for c in unbiased(barnaby).clubs)
    # his part swings are the level's, so five better are the better level's
    to = level(barnaby.handicap - 5.0).part
    assert better_short_game(barnaby).part.direction_sd_deg == pytest.approx(to.direction_sd_deg)


@pytest.mark.parametrize(("right_deg", "length"), [(0.0, True), (1.5, False), (-1.5, False)])
def test_a_bias_in_length_alone_moves_no_line(barnaby, right_deg: float, length: bool) -> None:
    """Of a player who is off to no side "aimed off for" meant nothing."""
    clubs = tuple(replace(club, bias_right_deg=right_deg, bias_long_pct=-2.0) for club in barnaby.clubs)
    words = bias_words(replace(barnaby, clubs=clubs))
    assert ("in length" in words and "aim" not in words) if length else words == BIAS_WORDS


@pytest.mark.parametrize(("handicap", "alike"), [(-5, True), (5, False), (18, False), (30, False), (45, False)])
def test_a_better_level_that_chips_alike_is_no_gain_to_tell(barnaby, handicap: float, alike: bool) -> None:
    """No level is better than the tour's: "+0.0 strokes" would mislead. The fit had 25 and 30 chip alike once."""
    player = replace(barnaby, handicap=handicap, part=level(handicap).part)
    assert bool(no_short_game(player)) is alike


def test_it_is_left_out_with_the_reason(barnaby) -> None:
    hole = hole_of(straight_hole(300))
    player = replace(barnaby, handicap=-5.0, part=level(-5.0).part)
    wanted = {k: CHANGES[k] for k in ("short_game_5_better", "putting_tour")}
    said = practice([hole], player, changes=wanted, sequences=200, seed=SEED, threads=THREADS)
    assert "short_game_5_better" not in [gain.what for gain in said.gains]
    assert any("chip alike" in line for line in said.left_out)


@pytest.fixture(scope="module")
def found(barnaby):
    hole = hole_of(straight_hole(300))
    wanted = {k: CHANGES[k] for k in ("carry_all_10_yd", "direction_1_deg", "putting_tour")}
    return practice([hole], barnaby, changes=wanted, sequences=4_000, seed=SEED, threads=THREADS)


def test_every_gain_is_one(found) -> None:
    """Longer, straighter and holing more putts on a plain hole: each is worth something."""
    gains = {gain.what: gain for gain in found.gains}
    assert set(gains) == {"carry_all_10_yd", "direction_1_deg", "putting_tour", BIAS}
    for gain in gains.values():
        assert gain.per_round.value > -2.0 * gain.per_round.standard_error, gain.what
        assert gain.per_round.value == pytest.approx(18 * gain.by_hole[0].value)
    for what in ("direction_1_deg", "putting_tour"):
        assert gains[what].per_round.value > 3.0 * gains[what].per_round.standard_error
    values = [gain.per_round.value for gain in found.gains]
    assert values == sorted(values, reverse=True)


@pytest.mark.parametrize("what", ["carry_all_10_yd", "direction_1_deg"])
def test_a_plan_made_anew_brings_as_much_or_little_more(found, barnaby, what: str) -> None:
    hole, gain = found.holes[0], next(gain for gain in found.gains if gain.what == what)

    def strokes(player) -> float:
        place = tee(solved(hole, player))
        rows = place.board.allowed(place.lie)
        choice = search(place, SEED, rows, keep_within=0.3, keep_most=2)[0]
        return value_of(place, choice.action, choice.score)

    anew = strokes(barnaby) - strokes(CHANGES[what].make(barnaby))
    kept = gain.by_hole[0]
    # the map's own noise, 256 strikes a node smoothed over many, is 0.01 strokes on a difference of maps
    assert kept.value < anew + 0.01 + 3.0 * kept.standard_error
    assert kept.value > anew - 0.04 - 3.0 * kept.standard_error


def test_the_words_and_the_data(found) -> None:
    from simulator.report.jsonout import dumps
    from simulator.report.practicetext import practice_text

    text = practice_text(found)
    assert all(len(line) <= 80 for line in text.splitlines())
    assert "times 18" in text and "putting of a tour player" in text and "Rules of Golf 4.3" in text
    assert "safe" not in text.casefold()
    assert '"strokes_per_round"' in dumps(found.to_dict())
