"""Rounds added up: convolutions against counting every case, errors against repeated trials."""

from __future__ import annotations

import itertools
from typing import Any

import numpy as np
import pytest

from simulator.strategy.rounds import add_up, breaking, convolved, ranked, sum_over_holes

BLOCKS = 40


def plays(scores: np.ndarray, first: np.ndarray | None = None, rest: np.ndarray | None = None) -> dict[str, Any]:
    """A hole as `jobs.blocks` sums it up, from one score a sequence."""
    least = int(scores.min())
    parts = np.array_split(scores - least, BLOCKS)
    size = int(scores.max()) - least + 1
    return {
        "least": least,
        "counts": [np.bincount(part, minlength=size).tolist() for part in parts],
        "first": (np.full(16, scores.mean()) if first is None else first).tolist(),
        "rest": [float(part.mean()) for part in np.array_split(scores * 0.0 if rest is None else rest, BLOCKS)],
    }


def hole(chances: dict[int, float]) -> dict[str, Any]:
    """A hole whose scores come exactly as often as said (in 1,000)."""
    scores = np.concatenate([np.full(round(1000 * chance), score) for score, chance in chances.items()])
    return plays(scores.astype(int))


def round_result(number: int, played: dict[str, Any]) -> dict[str, Any]:
    """A hole as `add_up` takes it, the habit played as the best choice is."""
    return {"number": number, "answer": {"par": 4}, "plays": {"best": played, "habit": played}}


DIE = {3: 0.2, 4: 0.5, 5: 0.2, 7: 0.1}


def test_convolution_is_every_case_counted() -> None:
    """Three holes, every combination written out: the definition of a sum of independent holes."""
    holes = [DIE, {2: 0.3, 3: 0.7}, {4: 0.25, 6: 0.75}]
    expected: dict[int, float] = {}
    for case in itertools.product(*(h.items() for h in holes)):
        strokes = sum(score for score, _ in case)
        expected[strokes] = expected.get(strokes, 0.0) + float(np.prod([chance for _, chance in case]))
    least, chances = convolved([hole(h) for h in holes])
    assert least == 9 and chances.sum() == pytest.approx(1.0)
    for strokes in range(9, 17):
        assert chances[strokes - least] == pytest.approx(expected.get(strokes, 0.0), abs=1e-12)
    for target in (8, 9, 12, 14, 17, 30):
        below = sum(chance for strokes, chance in expected.items() if strokes < target)
        assert breaking([hole(h) for h in holes], target).value == pytest.approx(below, abs=1e-12)


def test_convolution_is_independent_rounds_played() -> None:
    """18 holes: against 400,000 rounds drawn hole by hole; tolerance four standard errors of the share."""
    luck = np.random.default_rng(5)
    chances = np.array(list(DIE.values()))
    drawn = luck.choice(list(DIE), p=chances, size=(400_000, 18)).sum(axis=1)
    found = breaking([hole(DIE)] * 18, 78).value
    share = float((drawn < 78).mean())
    assert abs(found - share) < 4.0 * (share * (1.0 - share) / drawn.size) ** 0.5


def test_error_of_breaking_is_that_of_repeated_trials() -> None:
    """Holes that share their luck, as a course's do: the error said is the spread of 300 repetitions."""

    def trial(seed: int) -> list[dict[str, Any]]:
        luck = np.random.default_rng(seed)
        shared = luck.normal(size=2_000)
        return [
            plays(np.rint(4.5 + 0.6 * shared + 0.8 * luck.normal(size=2_000)).astype(int).clip(2, 9))
            for _ in range(6)
        ]

    found = [breaking(trial(seed), 27) for seed in range(300)]
    spread = np.std([one.value for one in found], ddof=1)
    said = np.mean([one.standard_error for one in found])
    rounds = [add_up([round_result(k, one) for k, one in enumerate(trial(seed))]) for seed in range(300)]
    likely = [(one.chances[27 - one.least], one.chance_errors[27 - one.least]) for one in rounds]
    assert np.mean(likely, axis=0)[1] == pytest.approx(np.std(likely, axis=0, ddof=1)[0], rel=0.125)
    alone = (0.5 * 0.5 / 2_000 / 6) ** 0.5  # what holes of their own luck would have at the most, about
    assert said > 1.2 * alone  # the luck they share is counted
    # the spread of 300 values is known to 1 / sqrt(2 * 299) = 4.1 %; three of those
    assert said == pytest.approx(spread, rel=0.125)


def test_error_of_a_total_is_that_of_repeated_trials() -> None:
    """The same for the expected round, whose holes share scrambles and sequences."""

    def trial(seed: int) -> list[dict[str, Any]]:
        luck = np.random.default_rng(seed)
        first, rest = luck.normal(size=16), luck.normal(size=1_000)
        scores = np.full(1_000, 4)
        return [
            plays(scores, 4.0 + 0.02 * (first + luck.normal(size=16)), 0.3 * (rest + luck.normal(size=1_000)))
            for _ in range(9)
        ]

    found = [sum_over_holes(trial(seed)) for seed in range(400)]
    spread = np.std([one.value for one in found], ddof=1)
    said = float(np.sqrt(np.mean([one.standard_error**2 for one in found])))
    assert said == pytest.approx(spread, rel=0.11)  # three errors of a spread of 400
    apart = float(np.sqrt(9 * (2 * 0.02**2 / 16 + 2 * 0.3**2 / 1_000)))
    assert said > 1.5 * apart  # independent holes would be surer than these are


def test_a_round_and_what_it_is_worth() -> None:
    def result(number: int, best: dict[int, float], habit: dict[int, float], worth: float) -> dict[str, Any]:
        return {
            "number": number,
            "answer": {"par": 4},
            "habit": {"difference": worth, "difference_standard_error": 0.01},
            "plays": {"best": hole(best), "habit": hole(habit)},
        }

    worse = {4: 0.4, 5: 0.4, 7: 0.2}
    results = [result(1, DIE, DIE, 0.0), result(2, DIE, worse, 0.9), result(3, DIE, worse, 0.9)]
    one = add_up(results, target=12)
    mean, worse_mean = 4.3, 5.0
    assert (one.holes, one.par, one.least) == (3, 12, 9)
    assert one.best.value == pytest.approx(3 * mean)
    assert one.habit.value == pytest.approx(mean + 2 * worse_mean)
    assert one.gain.value == pytest.approx(2 * (worse_mean - mean))
    assert one.breaking is not None and one.breaking_by_habit is not None
    assert one.breaking.value > one.breaking_by_habit.value
    assert one.quantile(0.0) == 9 and one.quantile(1.0) == 21
    assert np.cumsum(one.chances)[one.quantile(0.5) - 9] >= 0.5
    low, high, held = one.most()
    shares = dict(zip(range(9, 22), one.chances, strict=True))
    runs = {(a, b): sum(shares[t] for t in range(a, b + 1)) for a in shares for b in shares if a <= b}
    enough = {run: share for run, share in runs.items() if share >= 0.8}
    shortest = min(b - a for a, b in enough)
    assert high - low == shortest  # by trying every run there is
    assert held == pytest.approx(max(share for (a, b), share in enough.items() if b - a == shortest))
    assert held == pytest.approx(runs[low, high])
    assert one.most(1.0)[:2] == (9, 21)
    assert [r["number"] for r in ranked(results)] == [2, 3, 1]
    assert add_up(results).breaking is None
    told = one.to_dict()
    assert told["breaking"] == one.breaking.value and sum(told["round_chances"]) == pytest.approx(1.0)
    assert len(told["round_chances_standard_error"]) == len(told["round_chances"])


@pytest.mark.parametrize("sequences", [500, 520, 1_003])
def test_a_round_is_the_sum_of_its_holes(sequences: int) -> None:
    """Whatever the sequences come to in a block: a mean over blocks of 13 and of 12 is not that over sequences."""
    luck = np.random.default_rng(sequences)
    holes, expected = [], 0.0
    for _ in range(3):
        first, rest = luck.normal(4.2, 0.01, 16), luck.standard_normal(sequences)
        holes.append(plays(luck.integers(3, 7, sequences), first, rest))
        expected += float(first.mean() + rest.mean())
    assert sum_over_holes(holes).value == pytest.approx(expected, abs=1e-12)
    assert sum_over_holes(holes, holes).value == pytest.approx(0.0, abs=1e-12)
