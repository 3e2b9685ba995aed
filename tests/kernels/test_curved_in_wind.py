"""Curved shots in wind from either side, and a player's swing on any day."""

import math
from functools import cache

import numpy as np
import pytest
from flight_reading import flight_read
from small_games import player_of, straight_hole, tell

from simulator.conditions import Conditions
from simulator.conditions.model import Wind
from simulator.engine import play
from simulator.hole.surfaces import Lie
from simulator.player.model import Player
from simulator.tables.airs import flight_air
from simulator.tables.bag import make_bag
from simulator.tables.curved import tilts_and_carries
from simulator.tables.flights import FRACTIONS, YDPS_PER_MPH, launches_of
from simulator.tables.game import Board, make_board
from simulator.tables.landings import axes, landings
from simulator.tables.varied import in_wind, stock_flights

BAG = """
name = "shaper"
handicap = 12
clubs = ["driver", "7-iron", "pitching wedge"]
[club.driver]
carry_yd = 225
{driver}
[club.7-iron]
carry_yd = 150
{iron}
"""
WINDS = [None, *((mph, float(side)) for mph in (0.1, 12.0) for side in range(0, 360, 45))]


def day_of(wind: tuple[float, float] | None) -> Conditions:
    return Conditions(wind=None if wind is None else Wind(*wind))


def shaper(driver: float, iron: float) -> Player:
    """Curves of two clubs [yd], to the right positive; 0 is straight."""
    shapes = [
        f'shape = "{"fade" if curve > 0 else "draw"}"\ncurve_yd = {abs(curve)}' if curve else ""
        for curve in (driver, iron)
    ]
    return player_of(BAG.format(driver=shapes[0], iron=shapes[1]))


@cache
def board_of(driver: float, iron: float, wind: tuple[float, float] | None) -> Board:
    player = shaper(driver, iron)
    bag = make_bag(player, day_of(wind), shaped=True, threads=2)
    return make_board(straight_hole(400), bag, coarse_yd=40, fine_yd=25)


def stock_landing(board: Board, row: int, along: float, cross: float) -> np.ndarray:
    return np.array(flight_read(board.game.numbers, board.game.flights, row, 1.0, 0.0, 0, along, cross))


def any_side(rng: np.random.Generator, count: int) -> np.ndarray:
    """Wind of 12 mph along and across a strike, float64[count, 2] [yd/s]."""
    angle = rng.uniform(-math.pi, math.pi, count)
    return 12.0 * YDPS_PER_MPH * np.column_stack([np.cos(angle), np.sin(angle)])


def drives(board: Board, count: int = 20_000) -> np.ndarray:
    """Landings of many drives at the pin, float64[n, 2]: same luck for all."""
    action = np.zeros(3)
    played = play(
        board, 0.0, 0.0, int(Lie.TEE), action, action, 5.0, seed=7, sequences=count, threads=2, most_strokes=1
    )
    return played.landing_yd


@pytest.mark.parametrize("wind", WINDS[9:], ids=str)
def test_a_fade_in_wind_is_the_mirror_image_of_a_draw_in_its_mirror_image(wind) -> None:
    """Each is read from its own table at its own nodes; float32, so 1e-5 of 250 yd."""
    fade, draw = board_of(15.0, -20.0, wind), board_of(-15.0, 20.0, wind)
    rng = np.random.default_rng(5)
    for row in range(3):
        for along, cross in any_side(rng, 40):
            one, other = stock_landing(fade, row, along, cross), stock_landing(draw, row, along, -cross)
            assert one * [1, -1, 1, -1, 1, 1] == pytest.approx(other, rel=2e-5, abs=2e-3)


def test_curved_strikes_between_the_nodes_are_those_integrated_directly() -> None:
    """Half a yard, as for straight shots (`test_wind_tables.py`)."""
    board = board_of(15.0, -20.0, (12.0, 0.0))
    shots = board.bag.shots.shots[:3]
    launches = launches_of(shots, {})
    tilts, carries = tilts_and_carries(shots, flight_air(), launches, 0, 3)
    air = flight_air(wind_height_m=10.0, roughness_m=0.03)
    rng, worst = np.random.default_rng(6), 0.0
    for along, cross in any_side(rng, 60):
        for row in range(3):
            strike = axes(
                tilts=tilts[row : row + 1], along_wind=along, cross_wind=cross
            )
            known = landings(flight_air(), air, launches, carries, strike, row, row + 1)[0, 0, 0, 0, 0, 0, :2]
            worst = max(worst, math.dist(stock_landing(board, row, along, cross)[:2], known))
    tell(f"curved, 12 mph: worst {worst:.3f} yd")
    assert worst <= 0.5


@pytest.mark.parametrize("curve", [15.0, -15.0, 0.0])
def test_a_breath_of_wind_from_any_side_changes_nothing(curve: float) -> None:
    """A tenth of a mile an hour drifts a drive by a tenth of a yard; the luck is the same."""
    still = drives(board_of(curve, 0.0, None))
    for wind in WINDS[1:9]:
        moved = drives(board_of(curve, 0.0, wind)) - still
        assert np.abs(moved.mean(axis=0)).max() < 0.3, wind
        assert np.abs(np.quantile(moved, [0.05, 0.95], axis=0)).max() < 1.0, wind


@pytest.mark.parametrize("cross_mph", [-12.0, 12.0])
def test_stock_flights_of_curved_shots_know_the_side(cross_mph: float) -> None:
    """The coarse tables of other winds: a fade drifts by as much as the same shot read by the kernel."""
    board = board_of(15.0, -20.0, (12.0, 0.0))
    windy = in_wind(board.bag, 14.0)
    cross = cross_mph * YDPS_PER_MPH
    for row in range(3):
        mine = stock_flights(windy, np.array([row]), np.zeros(1), np.array([cross]))[0]
        assert mine == pytest.approx(stock_landing(board, row, 0.0, cross)[:2], abs=0.8)


DAYS = [
    *(Conditions(wind=Wind(mph, 30.0)) for mph in (3.0, 7.0, 8.0, 13.0)),
    Conditions(altitude_m=2_500.0), Conditions(temperature_c=-5.0),
]  # fmt: skip


@pytest.mark.parametrize("day", DAYS, ids=str)
def test_a_swing_is_the_same_on_any_day(day: Conditions) -> None:
    """How wide a player starts and curves the ball is the player's; what the air makes of it is the day's."""
    player = shaper(15.0, -20.0)
    usual = make_bag(player, shaped=True, threads=2)
    assert np.array_equal(make_bag(player, day, shaped=True, threads=2).strikes, usual.strikes)


def test_thin_air_narrows_the_curve() -> None:
    """A quarter less dense air at 2,500 m pushes a tilted ball sideways less (standard atmosphere)."""
    player = shaper(15.0, 0.0)
    turns = []
    for altitude_m in (0.0, 2_500.0):
        tables = make_bag(player, Conditions(altitude_m=altitude_m), threads=2).flights
        stock = int(np.argmin(np.abs(FRACTIONS - 1.0)))
        left, right = tables.flights[0, 0, 0, stock, [8, 10], 0].astype(float)
        turns.append(math.atan2(right[1], right[0]) - math.atan2(left[1], left[0]))
    assert turns[1] < 0.95 * turns[0]
