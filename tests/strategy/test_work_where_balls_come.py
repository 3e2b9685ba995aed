"""Where balls come to, and the strikes that nodes are worked with for it."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.interpolate import RegularGridInterpolator
from solved import SEED, THREADS, bag_named, demo_board, level, player_named, solved, tee

from simulator import load_hole
from simulator.engine import Effort, Opening, at_once, maps, places_played, play, solve_map
from simulator.engine.effort import node_rows
from simulator.hole.surfaces import Lie
from simulator.kernels import codes
from simulator.strategy import traffic
from simulator.strategy.search import search
from simulator.strategy.traffic import likely_traffic, places_of, solve_from
from simulator.strategy.tries import Place
from simulator.tables.bag import make_bag
from simulator.tables.game import make_board, make_draft, make_sketch
from simulator.tables.nodes import Grid
from simulator.tables.rasters import ground_raster
from simulator.tables.reads import node_reads

ROUGH = Effort(few=8, more=32, near=32, commit=32, again=0)
LUCK = {"seed": 11, "sequences": 4_000, "threads": THREADS}


def test_bilinear_weights_are_scipys() -> None:
    grid = Grid(-20.0, 5.0, 8.0, 6, 7, np.ones((1, 6, 7), bool))
    values = np.random.default_rng(1).normal(size=(6, 7))
    x, y = np.random.default_rng(2).uniform((-20.0, 5.0), (28.0, 45.0), (500, 2)).T
    rows, columns, weight = grid.weights(x, y)
    read = RegularGridInterpolator((5.0 + 8.0 * np.arange(6), -20.0 + 8.0 * np.arange(7)), values)
    assert (weight * values[rows, columns]).sum(axis=1) == pytest.approx(read(np.column_stack([y, x])))


def test_every_place_is_read_once() -> None:
    board = demo_board("eel-trap", "isolde")
    nodes, beside = board.nodes, board.nodes.table[:, :3] + (0.4, 0.3, 0.0)
    own_grid = nodes.fine.holds(beside[:, 0], beside[:, 1]) == (nodes.place[:, 0] == 1)
    at = np.random.default_rng(3).choice(np.flatnonzero(own_grid), 300)
    places = beside[at]  # the node at least is ground of the lie
    reads = node_reads(board.nodes, places)
    assert reads.sum() == pytest.approx(300.0)
    assert (reads[at] > 0.0).all()
    # straight on a node all of it is that node's
    one = node_reads(board.nodes, board.nodes.table[at[:1], :3])
    assert one[at[0]] == pytest.approx(1.0) and one.sum() == pytest.approx(1.0)


def test_a_trail_has_a_place_for_every_stroke_off_the_green() -> None:
    """Strokes to the green are counted by the sequence itself: one more than its places, penalties aside."""
    board = demo_board("eel-trap", "isolde")
    choice = search(tee(board), SEED, board.allowed(Lie.TEE), keep_within=0.3, keep_most=1)[0]
    start = Opening(0.0, 0.0, int(Lie.TEE), choice.action, choice.action, choice.score)
    rows, places = play(board, *start, **LUCK), places_played(board, start, **LUCK)
    later = rows.to_green - rows.penalties - 1.0  # strokes after the first
    assert 0 < len(places) <= later.sum()
    assert len(places) == pytest.approx(later.sum(), rel=0.02)
    assert set(np.unique(places[:, 2])) <= {float(lie) for lie in Lie if lie is not Lie.GREEN}
    first = rows.leaves_yd[(rows.to_green > 1.0) & (rows.penalties == 0.0)]
    gone = np.hypot(places[:, 0] - board.game.ground.numbers[0], places[:, 1] - board.game.ground.numbers[1])
    assert np.isin(np.round(first[first > 40.0], 6), np.round(gone, 6)).all()


def test_more_strikes_where_more_balls_lie() -> None:
    board = demo_board("eel-trap", "isolde")
    choices = search(tee(board), SEED, board.allowed(Lie.TEE), keep_within=0.3, keep_most=2)
    places = places_of(tee(board), choices, choices[0].score, 5)
    reads = node_reads(board.nodes, places)
    nodes = node_rows(board, np.zeros(len(reads)), Effort(), places)
    alike = node_rows(board, np.zeros(len(reads)), Effort(), None)
    decide, valued = nodes[:, 7], nodes[:, 8]
    assert (decide[reads == 0.0] == 16.0).all() and (valued[reads == 0.0] == 32.0).all()
    assert (decide <= alike[:, 7]).all() and (valued <= alike[:, 8]).all()
    busy = np.argsort(reads)[-20:]
    assert (valued[busy] == 256.0).all() and (decide[busy] == alike[busy, 7]).all()
    order = np.argsort(reads)
    assert (np.diff(valued[order]) >= 0.0).all()
    assert set(np.unique(valued)) <= {32.0, 64.0, 128.0, 256.0}
    assert valued.sum() < 0.5 * alike[:, 8].sum()  # what it is for


def test_from_near_the_green_part_swings_are_played() -> None:
    board = demo_board("eel-trap", "isolde")
    pin = board.game.ground.numbers[: codes.PIN_Y + 1]
    near = Place(board, float(pin[codes.PIN_X]), float(pin[codes.PIN_Y]) - 40.0, int(Lie.ROUGH), THREADS)
    places = likely_traffic(near, [], 5).places
    away = np.hypot(places[:, 0] - pin[codes.PIN_X], places[:, 1] - pin[codes.PIN_Y])
    assert len(places) > 0 and np.median(away) < 25.0  # no full shot of hers stays so near


def test_a_club_that_was_asked_about_is_played_whatever_it_scores() -> None:
    board = demo_board("eel-trap", "isolde")
    shots = board.bag.shots
    last = max(board.allowed(Lie.TEE), key=lambda row: -shots.shots[row].carry_yd)
    few, more = (likely_traffic(tee(board), must, 5).places for must in ([], [last]))
    assert len(more) > len(few)
    carry = shots.shots[last].carry_yd
    away = np.hypot(more[:, 0], more[:, 1])
    assert (np.abs(away - carry) < 25.0).sum() > (np.abs(np.hypot(few[:, 0], few[:, 1]) - carry) < 25.0).sum()


def test_drops_that_may_turn_out_the_cheaper_are_played_from(monkeypatch) -> None:
    """A green on an island: on the rough map balls in the water are played again from the tee, which is a little
    cheaper there than a drop short of the water. Which of the two is, only a map that knows both can tell."""
    hole = load_hole("ostrel-heath/11")
    raster = ground_raster(hole)
    empty = make_board(hole, make_bag(player_named("barnaby"), None, raster, THREADS), raster)
    rough = solve_map(make_draft(make_sketch(empty, hole), hole), seed=SEED, effort=ROUGH, threads=THREADS)
    bank = []
    for doubt in (1e-9, traffic.DOUBT_STROKES):
        monkeypatch.setattr(traffic, "DOUBT_STROKES", doubt)
        places = likely_traffic(tee(rough), [], 5).places
        bank.append(int(((places[:, 1] > 40.0) & (places[:, 1] < 62.0)).sum()))
    assert bank[0] < 5 and bank[1] > 30, bank


def test_the_work_saved_costs_nothing() -> None:
    """On the same luck the map worked where balls come to plays as well from the tee as one worked alike."""
    hole = level("withy-drain")
    empty = make_board(hole, bag_named("barnaby"))
    ours = solve_from(empty, hole, (0.0, 0.0, int(Lie.TEE)), seed=SEED, threads=THREADS)
    alike = tee(solved(hole, bag_named("barnaby")))
    scores = []
    for place in (ours, alike):
        best = search(place, SEED, place.board.allowed(Lie.TEE), keep_within=0.3, keep_most=1)[0]
        luck = {"seed": 3, "sequences": 100_000, "threads": THREADS}
        scores.append(play(place.board, 0.0, 0.0, int(Lie.TEE), best.action, best.action, best.score, **luck).expected)
    lost = scores[0] - scores[1]
    assert lost.mean() < 0.01 + 3.0 * lost.std() / np.sqrt(lost.size)


def most_deciding(monkeypatch, name: str, player: str, effort: Effort | None = None) -> list[float]:
    """Most strikes that decide at any node, of each sweep of a map worked from the tee."""
    hole, most, one_sweep = level(name), [], maps.sweep

    def watched(board, game, nodes, *rest):
        most.append(nodes[:, 7].max())
        return one_sweep(board, game, nodes, *rest)

    monkeypatch.setattr(maps, "sweep", watched)
    start = 0.0, 0.0, int(Lie.TEE)
    solve_from(make_board(hole, bag_named(player)), hole, start, seed=SEED, effort=effort, threads=THREADS)
    return most


@pytest.mark.parametrize("name, player, strikes", [("long-sluice", "barnaby", 512), ("withy-drain", "isolde", 256)])
def test_a_hole_of_many_strokes_is_worked_harder(monkeypatch, name: str, player: str, strikes: int) -> None:
    assert most_deciding(monkeypatch, name, player) == [Effort().draft, strikes // 2, strikes, strikes]


def test_a_hole_is_worked_as_hard_as_was_asked(monkeypatch) -> None:
    """What is given is never changed for the length of the hole: a benchmark says what it means."""
    least = Effort(few=8, more=32, near=32, sketch=32, many=32, commit=32)
    assert set(most_deciding(monkeypatch, "long-sluice", "barnaby", least)) == {32.0}


def test_works_come_back_in_order_on_any_threads() -> None:
    works = [lambda k=k: k * k for k in range(20)]
    assert at_once(works, 1) == at_once(works, 2) == [k * k for k in range(20)]
