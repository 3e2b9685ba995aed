"""Bounded least squares of a fit to published figures.

A fit starts from what is assumed, not from what the last fit found, and is pulled to it, weakly: run again it
comes to the same numbers, and a number the published figures do not tell stays where it is plausible instead
of running to a bound.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

import numpy as np
from scipy.optimize import OptimizeResult, least_squares, minimize

STEP = 0.05
"""Step of the differences over the width of the bounds: wide, because a player's choices jump."""

SETTLED = 3e-3
"""A fit is done when the misfit, or the place in widths, changes by less than this share."""

STARTS, GAIN = 4, 0.02
"""A fit that is done begins anew from where it stopped, with steps as long as at first: so many starts at the
most, and only while one takes this share off. Choices that jump stop it where a longer step would go on."""

TRIED_ON = 300
"""A jagged misfit is tried on from there without slopes, so many evaluations at the most."""

Assumed = Mapping[str, tuple[float, float, float]]
"""Lowest, plausible and highest of every number of a fit."""


def plausible(assumed: Assumed) -> np.ndarray:
    """The plausible numbers, float64[n]: where a fit starts."""
    return np.array([at for _, at, _ in assumed.values()])


def fit_bounded(
    misses: Callable[[np.ndarray], np.ndarray],
    assumed: Assumed,
    pull: float,
    steps: int,
    *,
    jagged: bool = False,
) -> OptimizeResult:
    """scipy's trust-region least squares from the plausible numbers; where misses jump COBYQA goes on.

    ``x`` are the numbers found, ``misfit`` is the sum of the squared misses there, without the pull.

    Parameters
    ----------
    misses : callable
        Of the numbers, in their order, each miss over its limit.
    pull : float
        What a number that goes the whole width of its bounds costs, as a miss over its limit.
    steps : int
        Tries of one start at the most; each takes as many evaluations as there are numbers, and one.
        ``nfev`` are those of all starts.
    jagged : bool
        Whether misses jump, as a player's choices do. Slopes taken over a long step then point nowhere
        before the misfit is least: the amateurs' came from 24.5 to 21.8 without them.
    """
    low, _, high = np.array(list(assumed.values())).T
    start, width = plausible(assumed), high - low

    def numbers(u: np.ndarray) -> np.ndarray:  # from 1 to 2, so that a relative step is one of their widths
        return low + (u - 1.0) * width

    def pulled(u: np.ndarray) -> np.ndarray:
        x = numbers(u)
        return np.concatenate([misses(x), pull * (x - start) / width])

    at, cost, tried = 1.0 + (start - low) / width, math.inf, 0
    for _ in range(STARTS):
        fit = least_squares(
            pulled, at, bounds=(1.0, 2.0), diff_step=STEP, max_nfev=steps, xtol=SETTLED, ftol=SETTLED
        )
        gained, at, cost, tried = cost - fit.cost, fit.x, fit.cost, tried + fit.nfev
        if gained < GAIN * cost:
            break
    fit.nfev = tried
    if jagged:
        on = minimize(
            lambda u: float(np.sum(pulled(np.clip(u, 1.0, 2.0)) ** 2)), fit.x, method="COBYQA",
            bounds=[(1.0, 2.0)] * start.size,
            options={"initial_tr_radius": 2.0 * STEP, "final_tr_radius": SETTLED, "maxfev": TRIED_ON},
        )  # fmt: skip
        fit.x, fit.nfev = np.clip(on.x, 1.0, 2.0), tried + on.nfev
        fit.fun = pulled(fit.x)
    fit.x, fit.misfit = numbers(fit.x), float(np.sum(fit.fun[: -start.size] ** 2))
    return fit
