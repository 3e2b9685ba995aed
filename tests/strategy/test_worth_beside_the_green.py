"""Ten yards nearer is told only where ten yards nearer is a place short of the green."""

from __future__ import annotations

import types
from functools import cache

import numpy as np
import pytest

from simulator import load_hole, load_player
from simulator.hole.surfaces import Surface
from simulator.strategy.question import Clock, question, solve
from simulator.strategy.tries import Place
from simulator.strategy.worth import ValueMap, value_map


@cache
def _place() -> Place:
    asked = question("plan", load_hole("eel-trap"), load_player("isolde"), sequences=100, seed=1, threads=2)
    return solve(asked, Clock())


def _worth(out_yd: float, ground: Surface) -> ValueMap:
    """Of ten balls on some ground so far short of the pin, or right of it where the green is in the way."""
    hole = load_hole("eel-trap")
    pin = np.array(hole.pin.xy_yd)
    turns = np.radians(np.arange(0.0, 360.0, 2.0))
    ring = pin + out_yd * np.column_stack([np.sin(turns), np.cos(turns)])
    there = [xy for xy in ring if hole.surface_at(*xy) is ground][:10]
    assert there
    return value_map(_place(), types.SimpleNamespace(finishes_yd=np.array(there)), hole, 1)


def _nearest_rough_yd() -> float:
    hole = load_hole("eel-trap")
    pin = np.array(hole.pin.xy_yd)
    turns = np.radians(np.arange(0.0, 360.0, 2.0))
    for out in np.arange(2.0, 30.0, 0.5):
        ring = pin + out * np.column_stack([np.sin(turns), np.cos(turns)])
        if any(hole.surface_at(*xy) is Surface.ROUGH for xy in ring):
            return float(out)
    raise AssertionError


def test_beside_the_green_nothing_is_said_of_ten_yards_nearer() -> None:
    """A ball three yards from the pin was told that ten yards nearer saves 0.14: rough in the hole's place."""
    value = _worth(_nearest_rough_yd() + 0.5, Surface.ROUGH)
    assert value.ground == "rough" and value.ten_nearer is None and value.ten_farther is not None


@pytest.mark.parametrize("out_yd", [60.0])
def test_farther_off_it_is_said(out_yd: float) -> None:
    value = _worth(out_yd, Surface.ROUGH)
    assert value.ten_nearer is not None and value.ten_farther is not None


def test_where_every_ball_ends_on_the_green_the_place_it_is_played_from_is_told() -> None:
    """Of rough in the middle of a green the map knows nothing: the lesson on a putt from the apron broke off."""
    hole = load_hole("eel-trap")
    pin = np.array(hole.pin.xy_yd)
    value = value_map(_place(), types.SimpleNamespace(finishes_yd=pin + np.array([[0.0, 1.0], [1.0, -1.0]])), hole, 1)
    assert value.here_yd == (_place().x_yd, _place().y_yd) and np.isfinite(value.here)
