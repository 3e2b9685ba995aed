"""A Monte Carlo figure, its standard error and its 95 % interval: every test of a difference goes by these.

The errors are estimated themselves, some from sixteen scrambles only, so an interval is a multiple of the
error that hangs on its degrees of freedom: Student's t. A sum of independent means has those of Satterthwaite
("An approximate distribution of estimates of variance components", Biometrics Bulletin 2, 1946) and Welch
("The generalization of Student's problem when several different population variances are involved",
Biometrika 34, 1947); the formula is from memory and is held to scipy's own in the tests.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

COVERAGE = 0.95
"""Share of the intervals that hold the truth."""


@dataclass(frozen=True)
class Estimate:
    """A Monte Carlo figure and its standard error.

    Attributes
    ----------
    value, standard_error : float
    freedom : float
        Degrees of freedom of the standard error; infinite where it is as good as known.
    """

    value: float
    standard_error: float
    freedom: float = math.inf

    @property
    def margin(self) -> float:
        """Half the width of the 95 % interval about `value`."""
        return errors_wide(self.freedom) * self.standard_error

    def plus(self, known: float) -> Estimate:
        """The figure and something that is known."""
        return replace(self, value=self.value + known)

    def times(self, factor: float) -> Estimate:
        """The figure in another unit, or of so many holes like this one."""
        return Estimate(factor * self.value, abs(factor) * self.standard_error, self.freedom)


@lru_cache(maxsize=1024)
def errors_wide(freedom: float) -> float:
    """Standard errors in half a 95 % interval: the two-sided point of t (1.96 at infinite freedom)."""
    from scipy.special import ndtri, stdtrit  # not before a figure is asked for: its import takes a while

    upper = 0.5 + 0.5 * COVERAGE
    return float(ndtri(upper) if math.isinf(freedom) else stdtrit(freedom, upper))


def mean(values: np.ndarray) -> Estimate:
    """Mean of independent values, float64[n] with n of 2 or more."""
    return Estimate(float(values.mean()), float(values.std(ddof=1)) / math.sqrt(values.size), values.size - 1)


def quantile(values: np.ndarray, share: float) -> Estimate:
    """A quantile of independent values, float64[n], with its error: half of what lies between the order
    statistics one binomial error of the share either side of it."""
    p = share + math.sqrt(share * (1.0 - share) / values.size) * np.array([-1.0, 0.0, 1.0])
    low, middle, high = np.quantile(values, p.clip(0.0, 1.0))
    return Estimate(float(middle), float(high - low) / 2.0)


TAIL = 32
"""Values beyond the tail whose mean excess tells how far the largest strays: a thousandth of 32,768."""


def largest(values: np.ndarray) -> Estimate:
    """The largest of independent values, float64[n] with n of 2 or more.

    Its error is that of the largest of an exponential tail (Gumbel's law: pi / sqrt(6) times the mean
    excess), the excess read off the `TAIL` largest; from memory.
    """
    count = min(TAIL, values.size - 1)
    top = np.partition(values, values.size - count - 1)[-count - 1 :]
    excess = float((top - top.min()).sum()) / count
    return Estimate(float(top.max()), math.pi / math.sqrt(6.0) * excess)


FLATTEST = 3.0
"""Where a figure rises over a step by less than its error, the end is unsure by so many steps at the most: of
two noisy figures nothing more is known (assumed)."""


def crossing_error(inside: Estimate, outside: Estimate, step: float) -> float:
    """Standard error of where a rising figure passes a bound, known to lie between two places `step` apart.

    The figure's own error over its slope there, `FLATTEST` steps at the most; and the place told, the last
    one inside, may be anywhere in the step before the crossing: a twelfth of it, squared.
    """
    error = 0.5 * (inside.standard_error + outside.standard_error)
    rise = max(outside.value - inside.value, error / FLATTEST, 1e-9)
    return step * math.hypot(error / rise, 1.0 / math.sqrt(12.0))


def total(parts: Iterable[Estimate]) -> Estimate:
    """Sum of independent figures.

    The degrees of freedom are ``(sum v)^2 / sum(v^2 / f)`` for squared errors v with degrees of freedom f
    (Satterthwaite 1946, Welch 1947): between the least f and their sum.
    """
    parts = list(parts)
    squares = [part.standard_error**2 for part in parts]
    unsure = sum(square**2 / part.freedom for square, part in zip(squares, parts, strict=True))
    freedom = sum(squares) ** 2 / unsure if unsure > 0.0 else math.inf
    return Estimate(sum(part.value for part in parts), math.sqrt(sum(squares)), freedom)


def figure(name: str, one: Estimate | None) -> dict[str, float | None]:
    """A figure as JSON-ready data, under a name and the name of its standard error; None without one."""
    value, error = (None, None) if one is None else (one.value, one.standard_error)
    return {name: value, f"{name}_standard_error": error}
