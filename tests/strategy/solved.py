"""Boards solved once a test session, and small holes written out as TOML, for the tests of sense."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from simulator import load_hole, load_player
from simulator.conditions import Conditions
from simulator.engine import Effort, solve_map
from simulator.hole.model import Hole
from simulator.hole.surfaces import Lie
from simulator.player.model import Player
from simulator.strategy import ask
from simulator.strategy.question import Clock, Question
from simulator.strategy.search import search
from simulator.strategy.tries import Choice, Place
from simulator.tables.bag import Bag, make_bag
from simulator.tables.game import Board, make_board, make_sketch
from simulator.tables.luck import strike_sets
from simulator.tables.rasters import ground_raster

HOLES = ("withy-drain", "eel-trap", "long-sluice")
PLAYERS = ("isolde", "barnaby")
THREADS = 2
SEED = 7


@cache
def player_named(name: str) -> Player:
    """A demo player, read once."""
    return load_player(name)


hole_named = cache(load_hole)
"""A hole read once: its questions share a map (`one_map_for_one_place`)."""

MAPS: dict[tuple[Any, ...], Place] = {}


def one_map_for_one_place(monkeypatch: pytest.MonkeyPatch) -> None:
    """While a test runs, `plan` and `compare` solve a hole once for all they are asked from one place of it.

    How many sequences are played, what was played before and the goal are no part of a map.
    """
    solve = ask.solve

    def once(asked: Question, clock: Clock) -> Place:
        start = asked.start
        key = (
            asked.hole, asked.player.name, asked.conditions, asked.clubs, asked.seed, asked.threads,
            start.x_yd, start.y_yd, start.lie,
        )  # fmt: skip
        if key not in MAPS:
            MAPS[key] = solve(asked, clock)
        return MAPS[key]

    monkeypatch.setattr(ask, "solve", once)


@cache
def bag_named(name: str) -> Bag:
    """The bag of a demo player on level, treeless ground on a still day, flown once."""
    return make_bag(player_named(name), threads=THREADS)


@cache
def level(name: str) -> Hole:
    """A demo hole without its heights, slopes and trees' crowns: what stands on the ground stays."""
    hole = load_hole(name)
    bare = tuple(replace(f, crown=None, slope=None, height_yd=None) for f in hole.features)
    return replace(hole, features=bare, single_trees=(), heights=())


def solved(hole: Hole, player: Player | Bag, conditions: Conditions | None = None, *,
           effort: Effort | None = None, seed: int = SEED, cell_yd: float = 1.0, coarse_yd: float = 8.0,
           fine_yd: float = 3.5, shaped: bool = False, threads: int | None = None) -> Board:  # fmt: skip
    """A hole's board with its value map, worked alike everywhere: tests ask from many places of it.

    A bag already made serves on level, treeless ground only.
    """
    threads = threads or THREADS
    raster = ground_raster(hole, cell_yd)
    if isinstance(player, Bag):
        assert len(raster.crowns) == 0 and not raster.height.any() and not raster.planes[:, 0].any()
        bag = player
    else:
        bag = make_bag(player, conditions, raster, threads, shaped=shaped)
    board = make_board(hole, bag, raster, cell_yd=cell_yd, coarse_yd=coarse_yd, fine_yd=fine_yd)
    return solve_map(board, sketch=make_sketch(board, hole), seed=seed, effort=effort, threads=threads)


@cache
def demo_board(hole: str, player: str) -> Board:
    """The solved board of a demo hole, hills, trees and all, for a demo player."""
    return solved(load_hole(hole), player_named(player))


@cache
def level_board(hole: str, player: str) -> Board:
    """The same on the level, treeless copy of the hole."""
    return solved(level(hole), bag_named(player))


def tee(board: Board) -> Place:
    """The tee in use (the origin) as a place to search from."""
    return Place(board, 0.0, 0.0, int(Lie.TEE), THREADS)


def searched(
    board: Board, clubs: tuple[str, ...] = (), *, keep: tuple[str, ...] = (), seed: int = SEED
) -> tuple[list[Choice], float]:
    """Best aim of some clubs (every club left out) from the tee, best first; value of the tee.

    `keep` are clubs shown whatever they score, among all the others.
    The value is of strikes that did not choose: 16 scrambles of 1,024, as `plan` takes it.
    """
    place = tee(board)
    rows = [k for k in board.allowed(place.lie) if not clubs or board.bag.shots.shots[k].club.name in clubs]
    kept = {k for k in rows if board.bag.shots.shots[k].club.name in keep}
    must = frozenset(rows if clubs else kept)
    choices = search(place, seed, rows, keep_within=0.6, keep_most=6, must=must)
    return choices, value_of(place, choices[0].action, choices[0].score, seed)


def value_of(place: Place, action: np.ndarray, replay: float, seed: int = SEED) -> float:
    """Strokes of one action by the map over fresh strikes, replays summed."""
    values = place.values(action[None], replay, strike_sets(seed + 21, 16, 1024)).mean(axis=1)[0]
    return float(values[0] / (1.0 - values[1]))


def club_of(board: Board, choice: Choice) -> str:
    """Name of a choice's club."""
    return board.bag.shots.shots[choice.row].club.name


def straight_hole(length_yd: float, extra: str = "", par: int = 4, width_yd: float = 36.0) -> str:
    """TOML of a straight hole: fairway from 120 to the green, a green 32 deep, the pin in its middle.

    Parameters
    ----------
    extra : str
        More TOML, after the fairway.
    """
    half = width_yd / 2.0
    mown = f"from_yd = 120, to_yd = {length_yd - 12}, left_yd = {-half}, right_yd = {half}"
    return f"""
name = "Test"
par = {par}
length_yd = {length_yd}
green = [{{ name = "green", front_yd = {length_yd - 16}, depth_yd = 32, width_yd = 28 }}]
pin = [{{ name = "middle", on_yd = 16 }}]
fairway = [{{ name = "fairway", {mown} }}]
{extra}
"""


def with_clubs(player: Player, **changes: Any) -> Player:
    """A player with the same change made to every club."""
    return replace(player, clubs=tuple(replace(club, **changes) for club in player.clubs))


def wider(player: Player, factor: float) -> Player:
    """A player whose direction spreads, full and part swings, are so many times as wide."""
    clubs = tuple(replace(k, direction_sd_deg=k.direction_sd_deg * factor) for k in player.clubs)
    part = replace(player.part, direction_sd_deg=player.part.direction_sd_deg * factor)
    return replace(player, clubs=clubs, part=part)
