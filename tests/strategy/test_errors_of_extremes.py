"""Stated errors of the longest ball, of where a band ends and of a replayed stroke against their real scatter."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest

from simulator.strategy.errorbars import Estimate, crossing_error, largest, mean
from simulator.strategy.tries import repeated, scrambles

Draw = Callable[[np.random.Generator], np.ndarray]


@pytest.mark.parametrize(
    "draw", [lambda luck: luck.exponential(9.0, 4096), lambda luck: luck.normal(230.0, 12.0, 4096)]
)
def test_the_largest_scatters_as_it_says(draw: Draw) -> None:
    """Of 400 samples: a scatter of Gumbel's law is read to 5 %, an excess over 32 values to 1 %; four errors, and
    what a normal's tail is off an exponential's by at this size (a tenth)."""
    luck = np.random.default_rng(2)
    found = [largest(draw(luck)) for _ in range(400)]
    scatter = np.std([one.value for one in found], ddof=1)
    said = math.sqrt(np.mean([one.standard_error**2 for one in found]))
    assert said == pytest.approx(scatter, rel=0.3)


def test_the_largest_of_two_is_the_larger() -> None:
    assert largest(np.array([3.0, 8.0])).value == 8.0
    assert largest(np.array([5.0, 5.0, 5.0])) == Estimate(5.0, 0.0)


@pytest.mark.parametrize(("slope", "noise"), [(0.004, 0.01), (0.02, 0.01), (0.05, 0.002)])
def test_the_end_of_a_band_scatters_as_it_says(slope: float, noise: float) -> None:
    """A rising score read in steps of 4 from a start that is anywhere: 4,000 ends, their scatter known to 1.2 %."""
    luck, step, bound = np.random.default_rng(3), 4.0, 0.03
    ends, said = [], []
    for _ in range(4000):
        at = luck.uniform(0.0, step) + step * np.arange(-40, 60)
        score = slope * at + luck.normal(0.0, noise)
        k = int(np.flatnonzero(score <= bound)[-1])
        ends.append(at[k])
        said.append(crossing_error(Estimate(score[k], noise), Estimate(score[k + 1], noise), step))
    assert np.std(ends, ddof=1) == pytest.approx(math.sqrt(np.mean(np.square(said))), rel=0.05)


def test_a_band_that_does_not_rise_is_known_to_the_steps_looked_at() -> None:
    """The aim itself is in the band however its own few strikes came out: no slope, and no error without end."""
    error = crossing_error(Estimate(0.04, 0.01), Estimate(0.035, 0.01), 4.0)
    assert 4.0 / math.sqrt(12.0) < error <= math.hypot(4.0 / math.sqrt(12.0), 12.0)


def test_a_replayed_stroke_errs_as_its_scrambles_scatter() -> None:
    """Strokes over the share that is not replayed, of 16 scrambles drawn 2,000 times: scatter known to 1.6 %."""
    luck = np.random.default_rng(4)
    share = np.clip(luck.normal(0.3, 0.05, (2000, 16)), 0.0, 1.0)
    values = np.stack([4.0 - 3.0 * share + luck.normal(0.0, 0.1, share.shape), share], axis=-1)
    strokes, parts = repeated(values), scrambles(values)
    assert parts.mean(axis=1) == pytest.approx(strokes, abs=1e-12)
    said = math.sqrt(np.mean([mean(part).standard_error ** 2 for part in parts]))
    assert said == pytest.approx(float(strokes.std(ddof=1)), rel=0.07)
