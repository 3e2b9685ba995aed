"""Half widths of 95 % intervals: degrees of freedom against scipy's, and the share of intervals that hold."""

import math

import numpy as np
import pytest
from scipy import stats

from simulator.strategy.errorbars import Estimate, errors_wide, mean, total


@pytest.mark.parametrize(("n", "m", "spread"), [(16, 20_000, 30.0), (16, 400, 1.0), (5, 9, 0.2), (40, 40, 1.0)])
def test_against_scipy_of_two_samples_of_unequal_variance(n: int, m: int, spread: float) -> None:
    """Welch's test of two means: the same degrees of freedom and the same interval."""
    luck = np.random.default_rng(n + m)
    one, two = luck.normal(4.0, 1.0, n), luck.normal(1.0, spread, m)
    ours = total([mean(one), mean(-two)])
    theirs = stats.ttest_ind(one, two, equal_var=False)
    low, high = theirs.confidence_interval(0.95)
    assert ours.freedom == pytest.approx(theirs.df, rel=1e-9)
    assert ours.value - ours.margin == pytest.approx(low, rel=1e-9)
    assert ours.value + ours.margin == pytest.approx(high, rel=1e-9)


def test_one_mean_against_scipy() -> None:
    values = np.random.default_rng(3).gamma(2.0, size=16)
    low, high = stats.ttest_1samp(values, 0.0).confidence_interval(0.95)
    ours = mean(values)
    assert (ours.value - ours.margin, ours.value + ours.margin) == pytest.approx((low, high), rel=1e-9)


def test_freedom_lies_between_the_least_and_the_sum() -> None:
    """Equal squared errors of equal parts share all their degrees; a part without error adds none."""
    part = Estimate(1.0, 0.1, 15.0)
    assert total([part, part, part]).freedom == pytest.approx(45.0)
    assert total([part, Estimate(2.0, 0.0, 399.0)]).freedom == pytest.approx(15.0)
    assert total([part, Estimate(2.0, 0.1)]).freedom == pytest.approx(60.0)  # 2^2 / (1 / 15 + 0)
    assert total([Estimate(2.0, 0.0, 15.0)] * 2) == Estimate(4.0, 0.0)  # common luck: no difference, no doubt
    assert part.times(-18.0).margin == pytest.approx(18.0 * part.margin) and part.times(-18.0).value == -18.0


def test_infinite_freedom_is_the_normal_point() -> None:
    assert errors_wide(math.inf) == pytest.approx(stats.norm.ppf(0.975), rel=1e-12)
    assert errors_wide(1e9) == pytest.approx(errors_wide(math.inf), rel=1e-6)


@pytest.mark.parametrize("share", [0.0, 0.1, 0.5, 0.9, 1.0])
def test_intervals_of_two_parts_hold_95_times_in_100(share: float) -> None:
    """16 scrambles with so much of the variance, 400 sequences with the rest: 20,000 intervals know it to 0.15 %.

    t with the 15 degrees of the scrambles alone would hold 96.7 % of them at a share of a tenth.
    """
    luck, sets, plays = np.random.default_rng(1), 16, 400
    # a mean and a variance of normal values are independent: drawn so, without the values
    first, rest = math.sqrt(share), math.sqrt(1.0 - share)
    held = 0
    for _ in range(repeats := 20_000):
        parts = [
            Estimate(
                luck.normal(0.0, sd), sd * math.sqrt(luck.chisquare(n - 1) / (n - 1)), float(n - 1)
            )
            for sd, n in ((first, sets), (rest, plays))
        ]  # fmt: skip
        whole = total(parts)
        held += abs(whole.value) <= whole.margin
    # Welch's own approximation is good to half a per cent with 15 degrees and more (from memory)
    assert held / repeats == pytest.approx(0.95, abs=3.5 * 0.0015 + 0.003)
