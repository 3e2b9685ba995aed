"""Later strokes tried twice for the expected score: the same on average, closer to it, and nothing else."""

from dataclasses import replace

import numba
import numpy as np
import pytest
from from_python import from_python
from scipy.special import ndtri
from small_games import bag_for, solved, tell

from simulator import load_hole
from simulator.engine import play, plays
from simulator.hole.surfaces import Lie
from simulator.kernels import codes as c
from simulator.kernels.luck import seed_key, sequence_key, stroke_key, uniform
from simulator.kernels.sequence import EVEN_TRIES

seed_key, sequence_key, stroke_key, uniform = map(
    from_python, (seed_key, sequence_key, stroke_key, uniform)
)

SEED = 31

SLOTS = np.array(
    [
        c.SLOT_MIXTURE, c.SLOT_SPEED, c.SLOT_START, c.SLOT_TILT, c.SLOT_LIE,
        c.SLOT_TREE_HIT, c.SLOT_TREE_REST, c.SLOT_TREE_TURN,
    ]
)  # fmt: skip
"""Luck of a stroke, in the order the next test lays it out."""


@numba.njit
def _units(sequence, slots, out):
    # keys stay inside: a Python integer would come back signed
    key = stroke_key(sequence_key(seed_key(np.uint64(SEED)), sequence), 1)
    for k in range(slots.size):
        out[k] = uniform(key, slots[k])


@pytest.fixture(scope="module")
def board():
    return solved(load_hole("withy-drain"), bag_for("barnaby", load_hole("withy-drain")))


def opening(board):
    row = next(k for k in board.allowed(Lie.TEE) if board.bag.shots.shots[k].club.name == "driver")
    action = np.array([row, 0.01, 0.0])
    return plays.Opening(0.0, 0.0, int(Lie.TEE), action, action, 5.7)


def run(board, sequences, evened, **more):
    return play(board, *opening(board), seed=SEED, sequences=sequences, threads=2, evened=evened, **more)


def test_nothing_but_the_expected_score_changes(board):
    once, twice = (run(board, 4_000, evened) for evened in (False, True))
    assert (once.expected != twice.expected).mean() > 0.9
    for name in once.__dataclass_fields__:
        if name != "expected":
            assert getattr(once, name).tobytes() == getattr(twice, name).tobytes(), name


def test_the_first_shot_is_never_tried_twice(board):
    once, twice = (run(board, 2_000, evened, most_strokes=1) for evened in (False, True))
    assert once.expected.tobytes() == twice.expected.tobytes()


@pytest.mark.parametrize("off", [0.0, 0.4])
def test_the_mean_stays_whatever_the_map(board, off):
    # Paired with plain sequences; with a map too high by `off` and tilted across the hole besides. Five
    # standard errors, as the tails are long.
    field = board.game.field
    tilt = np.linspace(-off, off, field.coarse.shape[2])
    wrong = field._replace(coarse=field.coarse + off + tilt, fine=field.fine + off)
    board = replace(board, game=board.game._replace(field=wrong))
    more = run(board, 200_000, True).expected - run(board, 200_000, False).expected
    error = more.std(ddof=1) / np.sqrt(more.size)
    tell(f"map off by {off}: evened minus plain {more.mean():+.4f} +- {error:.4f}")
    assert abs(more.mean()) < 5.0 * error < 0.02


def test_what_it_is_worth(board):
    # Two independent tries would halve what is after the first shot at best; opposite luck does better.
    once, twice = (run(board, 100_000, evened) for evened in (False, True))
    before, after = ((r.expected - r.first_cost - r.first_value).var() for r in (once, twice))
    tell(f"variance after the first shot: {before:.3f} plain, {after:.3f} evened")
    assert after < 0.5 * before


def test_second_strokes_against_the_scoring_kernel(board):
    # By the kernel that scores actions over prepared strikes, which shares the shot and nothing else: the
    # stroke's own luck and the same half-way round. Only sequences that end on the green with the second
    # stroke, where what the stroke came to is known from the outside.
    count = 3_000
    trail = plays._played(board, opening(board), SEED, count, 1, 2, True, 1)[1][:, 0]
    once, twice = (run(board, count, evened, most_strokes=2) for evened in (False, True))
    reached = (once.to_green == once.first_cost + 1.0) & (once.score > once.to_green)
    chosen = np.flatnonzero(reached & (trail[:, 2] >= 0.0))
    assert chosen.size > 50
    by_plan = np.array([[c.BY_PLAN, 0.0, 0.0]])
    for k in chosen:
        unit = np.empty(SLOTS.size)
        _units(k, SLOTS, unit)
        tries = (unit + np.arange(EVEN_TRIES)[:, None] / EVEN_TRIES) % 1.0
        strikes = np.zeros((1, EVEN_TRIES, c.STRIKE_LUCK))
        strikes[0, :, 0], strikes[0, :, 1:5] = tries[:, 0], ndtri(tries[:, 1:5])
        strikes[0, :, [c.LUCK_HIT, c.LUCK_KEEP, c.LUCK_TURN]] = tries[:, 5:].T - 0.5
        x_yd, y_yd, lie = trail[k]
        left = once.first_value[k]
        cost, again = plays.value_actions(board, x_yd, y_yd, int(lie), by_plan, left, strikes)[0, 0]
        assert twice.expected[k] == pytest.approx(once.first_cost[k] + cost + again * left, abs=1e-9)
