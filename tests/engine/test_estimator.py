"""The estimator of expected strokes: unbiased, with error bars that mean what they say, and paired."""

from copy import copy
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats
from small_games import bag_for, solved, tell

from simulator import load_hole
from simulator.engine import play
from simulator.hole.surfaces import Lie
from simulator.strategy import estimate
from simulator.strategy.search import search
from simulator.strategy.tries import Place
from simulator.tables.luck import strike_sets

SEEDS, SEQUENCES = 40, 400
SETS, STRIKES = 16, 64


class Question:
    """One tee, its map, the best aim of two clubs; runs of any size on any seed."""

    def __init__(self, hole, player, clubs):
        # a coarse map on purpose: the estimator must not need a good one
        hole = load_hole(hole)
        board = solved(hole, bag_for(player, hole), coarse_yd=14, fine_yd=7)
        self.place = Place(board, 0.0, 0.0, int(Lie.TEE), 2)
        rows = [k for k in board.allowed(Lie.TEE) if board.bag.shots.shots[k].club.name in clubs]
        self.choices = search(
            self.place, 3, rows, keep_within=9.0, keep_most=9, must=frozenset(rows)
        )
        self.home, self.value = self.choices[0].action, self.choices[0].score

    def sequences(self, action, seed, count, evened=False):
        return play(
            self.place.board, 0.0, 0.0, int(Lie.TEE), action, self.home, self.value,
            seed=seed, sequences=count, threads=2, evened=evened,
        )  # fmt: skip

    def run(self, choice, seed, count=SEQUENCES, strikes=STRIKES):
        values = self.place.values(choice.action[None], self.value, strike_sets(seed, SETS, strikes))[0]
        return estimate.played(values, self.value, self.sequences(choice.action, seed, count, evened=True))


@pytest.fixture(scope="module")
def question():
    return Question("withy-drain", "isolde", ("driver", "3-wood"))


@pytest.fixture(scope="module")
def small_runs(question):
    return [[question.run(choice, 100 + seed) for choice in question.choices] for seed in range(SEEDS)]


def test_mean_over_seeds_is_that_of_a_long_plain_run(question, small_runs):
    # Against plain sequences, no control variate and real putts: 200,000 of them, error 0.003.
    for k, choice in enumerate(question.choices):
        scores = [estimate.score(run[k]) for run in small_runs]
        mean = np.mean([s.value for s in scores])
        error = np.std([s.value for s in scores], ddof=1) / np.sqrt(SEEDS)
        plain = question.sequences(choice.action, 9, 200_000).score
        both = np.hypot(error, plain.std(ddof=1) / np.sqrt(plain.size))
        tell(f"mean of {SEEDS} small runs {mean:.4f} +- {error:.4f}, plain {plain.mean():.4f}")
        assert abs(mean - plain.mean()) < 3.0 * both


def test_unbiased_with_a_wrong_map(question):
    # A map 0.3 strokes too high, tilted across the hole on top: what is added of it is taken away again.
    board, choice = question.place.board, question.choices[0]
    field = board.game.field
    tilt = np.linspace(-0.2, 0.2, field.coarse.shape[2])
    wrong = field._replace(coarse=field.coarse + 0.3 + tilt, fine=field.fine + 0.3)
    wrong_board = replace(board, game=board.game._replace(field=wrong))
    other = copy(question)
    other.place = replace(question.place, board=wrong_board)
    runs = [other.run(choice, 500 + seed) for seed in range(SEEDS)]
    mean = np.mean([estimate.score(run).value for run in runs])
    error = np.std([estimate.score(run).value for run in runs], ddof=1) / np.sqrt(SEEDS)
    plain = other.sequences(choice.action, 11, 200_000).score  # reliefs chosen by the same wrong map
    both = np.hypot(error, plain.std(ddof=1) / np.sqrt(plain.size))
    assert np.mean([run.first.mean() for run in runs]) - mean > 0.15  # the map alone is far off
    assert abs(mean - plain.mean()) < 3.0 * both


def test_standard_errors_are_the_spread_between_seeds(question, small_runs):
    # Sum of squared deviations over the stated variance is chi-square with SEEDS - 1 degrees of freedom.
    low, high = stats.chi2.ppf([0.0005, 0.9995], SEEDS - 1)
    for k in range(len(question.choices)):
        scores = [estimate.score(run[k]) for run in small_runs]
        stated = np.mean([s.standard_error**2 for s in scores])
        assert low < (SEEDS - 1) * np.var([s.value for s in scores], ddof=1) / stated < high
    gaps = [estimate.difference(run[1], run[0]) for run in small_runs]
    stated = np.mean([g.standard_error**2 for g in gaps])
    assert low < (SEEDS - 1) * np.var([g.value for g in gaps], ddof=1) / stated < high


def test_stated_intervals_hold(question, small_runs):
    # 95 of 100 intervals hold the truth: of 40 at least 33 do with chance 0.9995 (binomial).
    truth = question.sequences(question.choices[0].action, 10, 400_000).expected.mean()
    scores = [estimate.score(run[0]) for run in small_runs]
    inside = sum(abs(s.value - truth) < s.margin for s in scores)
    assert inside >= 33


def test_paired_difference_against_independent_runs(question, small_runs):
    # Driver minus 3-wood: common luck and the map as control, against two independent plain samples of the
    # same number of sequences. A toy of this estimator cut the variance 11 to 15 times.
    paired = np.var([estimate.difference(run[1], run[0]).value for run in small_runs], ddof=1)
    plain = [
        question.sequences(choice.action, 77 + k, 100_000).score for k, choice in enumerate(question.choices)
    ]
    independent = sum(scores.var(ddof=1) / SEQUENCES for scores in plain)
    tell(f"variance of a difference: independent {independent:.2e}, paired {paired:.2e}, "
          f"ratio {independent / paired:.1f}")  # fmt: skip
    # 40 runs know the paired variance to 22 %: a true ratio of 12 shows below 6 once in 10,000
    assert independent / paired >= 6.0


def test_common_luck_is_common(question):
    # The same action asked twice with the same seed is the same sequences: the difference is nothing at all.
    one, two = (question.run(question.choices[0], 5) for _ in range(2))
    gap = estimate.difference(one, two)
    assert (gap.value, gap.standard_error) == (0.0, 0.0)


def test_counts_and_worst_tenth():
    scores = np.array([4] * 60 + [5] * 30 + [6] * 6 + [9] * 4, dtype=float)
    tail = estimate.worst_tenth_mean(scores)
    assert tail.value == pytest.approx((6 * 6 + 4 * 9) / 10)
    none = estimate.share(np.zeros(400, dtype=bool))
    assert none.value == 0.0 and none.standard_error > 0.0
    half = estimate.share(np.arange(400) % 2 == 0)
    assert half.standard_error == pytest.approx(0.5 / np.sqrt(400))


def test_worst_tenth_error_against_the_spread_between_samples():
    # 400 samples of 500 scores drawn from a fixed list: the stated error against what really happens.
    rng = np.random.default_rng(1)
    pool = rng.choice([3, 4, 5, 6, 7, 9], p=[0.1, 0.4, 0.3, 0.12, 0.06, 0.02], size=(400, 500))
    tails = [estimate.worst_tenth_mean(row.astype(float)) for row in pool]
    assert np.mean([t.standard_error for t in tails]) == pytest.approx(
        np.std([t.value for t in tails]), rel=0.15
    )
