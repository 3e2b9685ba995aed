"""Of a club's flights the better is shown, whatever the luck of the strikes that screen them."""

from __future__ import annotations

import solved as sv

from simulator.hole.surfaces import Lie
from simulator.strategy.search import search
from simulator.strategy.tries import Place
from simulator.tables.luck import strike_sets


def test_flights_that_are_close_are_both_settled() -> None:
    """The held-down 6-iron is 0.015 better than the stock one; with 3 seeds of 10 the stock one was shown."""
    board = sv.demo_board("eel-trap", "isolde")
    tee = Place(board, 0.0, 0.0, int(Lie.TEE), sv.THREADS)
    shots = board.bag.shots.shots
    rows = [k for k in board.allowed(tee.lie) if shots[k].club.name == "6-iron"]
    both = search(tee, 1, rows, keep_within=1.0, keep_most=1, must=frozenset(rows))
    values = {one.row: tee.scores(one.action[None], 3.24, strike_sets(99, 16, 1024))[0] for one in both}
    better, other = sorted(rows, key=lambda row: values[row])
    assert values[other] - values[better] > 0.01
    for seed in range(1, 11):
        found = search(tee, seed, board.allowed(tee.lie), keep_within=0.6, keep_most=6)
        assert [one.row for one in found if shots[one.row].club.name == "6-iron"] == [better], seed
