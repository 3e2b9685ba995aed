"""Players that would fit what is known: the draws have the spread that was said."""

from dataclasses import replace

import numpy as np
import pytest

from simulator.player import load_player
from simulator.player.doubt import (
    LEVEL,
    SHARED,
    SHORT_LEVEL,
    SHORT_TYPED,
    TYPED,
    Doubt,
    doubt_of,
    moved,
    plausible_players,
)

DRAWS = 2000


@pytest.fixture(scope="module")
def drawn():
    player = load_player("barnaby")
    return player, plausible_players(player, DRAWS, 3)


def test_the_draws_have_the_spread_that_was_said(drawn):
    player, draws = drawn
    for k, club in enumerate(player.clubs):
        doubt = doubt_of(club)
        wide = np.log([one.clubs[k].direction_sd_deg / club.direction_sd_deg for one in draws])
        # a standard deviation from n independent normal draws has the standard error sd / sqrt(2 n); of n
        # draws in pairs half are independent
        assert wide.std() == pytest.approx(doubt.direction_log, abs=4 * doubt.direction_log / DRAWS**0.5)
        assert wide.mean() == pytest.approx(0.0, abs=1e-12)  # pairs to either side
        odds = np.array([one.clubs[k].mishit_rate for one in draws])
        logit = np.log(odds / (1 - odds))
        assert logit.std() == pytest.approx(doubt.mishit_logit, rel=4 / DRAWS**0.5)


def test_clubs_move_together_by_the_shared_part(drawn):
    _, draws = drawn
    a, b = (np.log([one.clubs[k].distance_sd_pct for one in draws]) for k in (2, 6))
    # standard error of a correlation: (1 - r^2) / sqrt(n), of n / 2 independent pairs
    assert np.corrcoef(a, b)[0, 1] == pytest.approx(SHARED, abs=4 * (1 - SHARED**2) / (DRAWS / 2) ** 0.5)


def test_the_short_game_is_drawn_apart(drawn):
    """As wide as was said, a putter's as a putter's, half as wide where numbers were typed; nothing to do with clubs."""
    player, draws = drawn

    def scatter(of, doubt):
        assert of.std() == pytest.approx(doubt, abs=4 * doubt / DRAWS**0.5)
        assert of.mean() == pytest.approx(0.0, abs=1e-12)

    wide = np.log([one.part.at(20.0).distance_sd_pct / player.part.at(20.0).distance_sd_pct for one in draws])
    odds = np.array([one.part.at(20.0).mishit_rate for one in draws])
    putts = np.log([one.putting.distance_sd / player.putting.distance_sd for one in draws])
    scatter(wide, SHORT_LEVEL.spread_log)
    scatter(np.log(odds / (1 - odds)) - np.log(odds / (1 - odds)).mean(), SHORT_LEVEL.mishit_logit)
    scatter(putts, SHORT_LEVEL.putting_log)
    chips = wide + np.log([one.chipping for one in draws])
    scatter(chips, SHORT_LEVEL.spread_log)
    assert np.corrcoef(wide, chips)[0, 1] == pytest.approx(SHARED, abs=4 * (1 - SHARED**2) / (DRAWS / 2) ** 0.5)
    clubs = np.log([one.clubs[2].distance_sd_pct for one in draws])
    for one, other in ((wide, clubs), (wide, putts), (putts, clubs)):
        assert abs(np.corrcoef(one, other)[0, 1]) < 4 / (DRAWS / 2) ** 0.5
    sources = {**player.part.sources, "distance_sd_pct": "file"}
    for typed in (replace(player, short_game=0.9), replace(player, part=replace(player.part, sources=sources))):
        few = plausible_players(typed, DRAWS, 3)
        scatter(np.log([one.part.distance_sd_pct[2] / player.part.distance_sd_pct[2] for one in few]), SHORT_TYPED.spread_log)


def test_the_bag_keeps_its_order(drawn):
    _, draws = drawn
    assert all(np.all(np.diff([club.carry_yd for club in one.clubs]) < 0) for one in draws)


def test_same_seed_same_players_and_draws_do_not_depend_on_their_number(drawn):
    player, draws = drawn


    def numbers(players):
        return [(one.clubs, one.part.distance_sd_pct.tolist(), one.putting.distance_sd) for one in players]

    assert numbers(plausible_players(player, 3, 3)) == numbers(draws[:3])
    assert numbers(plausible_players(player, 3, 4)) != numbers(draws[:3])


def test_where_a_number_came_from_decides():
    player = load_player("barnaby")
    driver = player.club("driver")
    assert doubt_of(driver).carry_pct == (TYPED if driver.sources["carry_yd"] == "file" else LEVEL).carry_pct
    assert moved(driver, {}).carry_yd == driver.carry_yd
    assert moved(driver, {"carry_pct": 1.0}).carry_yd > driver.carry_yd
    own = Doubt(1.0, 0.05, 0.05, 0.2, 0.5, 0.1)
    assert doubt_of(replace(driver, doubt=own)) is own
