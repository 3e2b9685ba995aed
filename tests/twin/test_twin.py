"""The numpy twin that the engine is raced against plays the same golf: same scores within their errors."""

import numpy as np
import pytest

from benchmarks.cases import plain_case, windy_case
from benchmarks.twin import Twin

SEQUENCES = 40_000


def agree(case):
    """Means within 3.3 standard errors (a chance of 1 in 1,000), counts of each score by chi-square."""
    ours = case.play(case.start.action, 5, SEQUENCES, threads=2).score
    theirs = Twin(case.board).play(case.start, SEQUENCES, np.random.default_rng(6))
    error = np.hypot(ours.std(), theirs.std()) / np.sqrt(SEQUENCES)
    assert abs(ours.mean() - theirs.mean()) < 3.3 * error
    top = int(np.quantile(ours, 0.99))
    counts = np.array(
        [np.bincount(np.minimum(s, top).astype(int), minlength=top + 1) for s in (ours, theirs)]
    )
    counts = counts[:, counts.sum(axis=0) >= 20]
    spread = ((counts[0] - counts[1]) ** 2 / counts.sum(axis=0)).sum()  # chi-square, equal totals
    assert spread < 3.0 * counts.shape[1] + 10.0  # beyond 1 in 1,000 at 2 to 10 degrees of freedom


def test_calm_plain_par_4():
    agree(plain_case(coarse_yd=14.0, fine_yd=7.0))


@pytest.mark.slow
def test_wind_slopes_trees_and_water():
    agree(windy_case())
