"""Bounded least squares with few evaluations: each costs seconds."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from scipy.optimize import OptimizeResult, least_squares

STEP = 0.07
"""Step of the first differences over the width of the bounds: wide, because a player's choices jump."""


def fit_bounded(
    misses: Callable[[np.ndarray], np.ndarray],
    start: np.ndarray,
    low: np.ndarray,
    high: np.ndarray,
    steps: int,
) -> OptimizeResult:
    """scipy's trust-region least squares, its Jacobian differenced once, then kept by secants."""
    width = high - low
    known: list[tuple[np.ndarray, np.ndarray]] = []
    slopes: list[np.ndarray] = []

    def call(x: np.ndarray) -> np.ndarray:
        found = misses(x)
        known.append((x.copy(), found))
        return found

    def jacobian(x: np.ndarray) -> np.ndarray:
        here = next(f for y, f in reversed(known) if np.array_equal(x, y))
        if not slopes:
            first = np.empty((here.size, x.size))
            for k in range(x.size):
                step = STEP * width[k] if x[k] + STEP * width[k] < high[k] else -STEP * width[k]
                moved = x.copy()
                moved[k] += step
                first[:, k] = (misses(moved) - here) / step
            slopes.append(first)
        else:
            for y, f in known[-3:]:  # what was seen since, least-change secant
                move = (y - x) / width
                if move @ move > 1e-10:
                    error = f - here - slopes[-1] @ (y - x)
                    slopes.append(slopes[-1] + np.outer(error, move / width) / (move @ move))
        return slopes[-1]

    inside = np.clip(start, low + 1e-3 * width, high - 1e-3 * width)
    return least_squares(
        call, inside, jac=jacobian, bounds=(low, high), x_scale=width, max_nfev=steps, xtol=1e-3, ftol=1e-3
    )
