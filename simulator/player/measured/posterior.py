"""Clubs' numbers given their shots: the most likely ones, what is still not known, summed over all pools.

With the standard deviations of every number's parts held (`pooling.Pool`), the numbers of all clubs have a
normal belief before the shots; the most likely numbers given the shots are found by Newton's method, and the
curvature there gives what is still not known and how likely the shots are under these standard deviations
(Laplace's approximation; Gelman et al., Bayesian Data Analysis, 3rd ed., sections 4.1 and 13.3, chapter 5 for
partial pooling; from memory). That is done for every pool of a number, the others held at their most likely
one, and the answers are averaged by how likely each is.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from .likelihood import PARAMETERS, Floats, Rows, curvature, log_likelihood
from .pooling import PARTS, Pool, pools

STEPS = 60
"""Newton steps at the most; a few are enough."""

SETTLED = 0.01
"""A step that moves no number by more, in standard deviations before any shot, ends the search."""

CLOSING = 0.3
"""The bend is looked at anew after a step longer than this share of the one before. It costs as much as seven
steps, and the bend where one pool's search ended serves most of the next one's."""


@dataclass(frozen=True)
class Mode:
    """The most likely numbers under one set of pools.

    Attributes
    ----------
    x : float64[clubs, 6]
    sd : float64[clubs, 6]
        What is still not known, one standard deviation.
    log_evidence : float
        How likely the shots are, up to a constant.
    bend : float64[clubs, 6, 6]
        Minus the second derivatives of each club's log likelihood there.
    """

    x: Floats
    sd: Floats
    log_evidence: float
    bend: Floats


def posterior(rows: Rows, centre: Floats, kinds: Sequence[str], start: Floats) -> tuple[Floats, Floats]:
    """Mean and standard deviation of every club's numbers.

    Parameters
    ----------
    rows : Rows
    centre : float64[clubs, 6]
        The level's numbers, in the order of `PARAMETERS`. Clubs beyond those of `rows` have no shots: theirs
        follow from what the others show, and they move none of them.
    kinds : sequence of str
        Launch family of each club.
    start : float64[clubs, 6]
        Where the search begins; of clubs without shots it is not read.

    Returns
    -------
    mean, sd : float64[clubs, 6]
    """
    held = {parameter: _usual(parameter) for parameter in PARAMETERS}
    mode = _mode(rows, centre, kinds, held, start, _bend(start, rows))
    mean, sd = np.empty_like(centre), np.empty_like(centre)
    for parameter in PARTS:
        tried, logs = [], []
        for pool, odds in pools(parameter):
            mode = _mode(rows, centre, kinds, {**held, parameter: pool}, mode.x, mode.bend)
            tried.append((pool, mode))
            logs.append(mode.log_evidence + np.log(odds))
        shares = np.exp(np.array(logs) - max(logs))
        shares /= shares.sum()
        held[parameter], mode = tried[int(np.argmax(shares))]
        xs, sds = (np.stack([getattr(one, what) for _, one in tried]) for what in ("x", "sd"))
        averaged = np.tensordot(shares, xs, 1)
        spread = np.sqrt(np.tensordot(shares, sds**2 + (xs - averaged) ** 2, 1))
        j = PARAMETERS.index(parameter)
        mean[:, j], sd[:, j] = averaged[:, j], spread[:, j]
    # the last of the pooled numbers, the depth, is the one that mishits and carries hang on
    others = [PARAMETERS.index(one) for one in PARAMETERS if one not in PARTS]
    mean[:, others], sd[:, others] = averaged[:, others], spread[:, others]
    return mean, sd


def _usual(parameter: str) -> Pool:
    """The likeliest pool before any shot."""
    return max(pools(parameter), key=lambda one: one[1])[0]


def _mode(
    rows: Rows, centre: Floats, kinds: Sequence[str], held: Mapping[str, Pool], start: Floats, bend: Floats
) -> Mode:
    """Newton's method on u, where x = centre + L u and L L' is what is believed before the shots.

    `bend` is the likelihood's at the start; it is kept for as long as the steps close in fast.
    """
    clubs, size = centre.shape
    roots = [_root(held[one], tuple(kinds)) for one in PARAMETERS]
    root, inverse = (np.stack(both) for both in zip(*roots, strict=True))

    def numbers(u: Floats) -> Floats:
        return centre + np.einsum("jkc,cj->kj", root, u)

    def cost(u: Floats) -> tuple[float, Floats]:
        value, gradient = _likelihood(numbers(u), rows)
        return 0.5 * float((u * u).sum()) - float(value.sum()), u - np.einsum("jkc,kj->cj", root, gradient)

    u = np.einsum("jkc,cj->kj", inverse, start - centre)
    u[len(rows.first) :] = 0.0  # without shots: what goes with the clubs before them, and nothing besides
    value, slope = cost(u)
    curve, before = _curve(bend, root), np.inf
    for _ in range(STEPS):
        step = -_solve(curve, slope.ravel()).reshape(clubs, size)
        share = 1.0
        while True:
            trial, trial_slope = cost(u + share * step)
            if trial <= value + 1e-4 * share * float((slope * step).sum()) or share < 1e-3:
                break
            share *= 0.5
        if not trial < value:
            break
        u, value, slope = u + share * step, trial, trial_slope
        moved = float(np.abs(share * step).max())
        if moved < SETTLED:
            break
        if share < 1.0 or moved > CLOSING * before:
            curve, moved = _curve(_bend(numbers(u), rows), root), np.inf
        before = moved
    bend = _bend(numbers(u), rows)
    values, vectors = np.linalg.eigh(_curve(bend, root))
    # a direction the shots make flat, or worse, is no better known than before any shot
    values = np.maximum(values, 1.0)
    half = (vectors / np.sqrt(values)).reshape(clubs, size, -1)
    away = np.einsum("jkc,cjn->kjn", root, half)
    evidence = -value - 0.5 * float(np.log(values).sum())
    return Mode(numbers(u), np.sqrt((away**2).sum(axis=-1)), evidence, bend)


@lru_cache(maxsize=1024)
def _root(pool: Pool, kinds: tuple[str, ...]) -> tuple[Floats, Floats]:
    """L of `_mode` for one number, and its inverse: one mode's are those of the next, but for one number."""
    root = np.asarray(np.linalg.cholesky(pool.covariance(kinds)), dtype=np.float64)
    return root, np.asarray(np.linalg.inv(root), dtype=np.float64)


def _likelihood(x: Floats, rows: Rows) -> tuple[Floats, Floats]:
    """Log likelihood of the shots of the clubs that have any, and its gradient, nothing for the others."""
    measured = len(rows.first)
    value, found = log_likelihood(x[:measured], rows)
    gradient = np.zeros_like(x)
    gradient[:measured] = found
    return value, gradient


def _bend(x: Floats, rows: Rows) -> Floats:
    """`curvature` of the clubs that have shots, nothing for the others; float64[clubs, 6, 6]."""
    measured = len(rows.first)
    found = np.zeros((*x.shape, x.shape[-1]))
    found[:measured] = curvature(x[:measured], rows)
    return found


_CURVE = "jkc,kji,ikd->cjdi"


@lru_cache
def _curve_path(clubs: int) -> list[Any]:
    """The order in which numpy takes the product of `_curve`: finding it takes as long as the product."""
    size = len(PARAMETERS)
    root, bend = np.empty((size, clubs, clubs)), np.empty((clubs, size, size))
    return np.einsum_path(_CURVE, root, bend, root, optimize=True)[0]


def _curve(bend: Floats, root: Floats) -> Floats:
    """Second derivatives of the cost by u, float64[clubs * 6, clubs * 6]."""
    size, clubs, _ = root.shape
    found = np.einsum(_CURVE, root, bend, root, optimize=_curve_path(clubs))
    return found.reshape(clubs * size, clubs * size) + np.eye(clubs * size)


def _solve(curve: Floats, slope: Floats) -> Floats:
    """Newton's step; where the curve bends the wrong way, as far as if it bent the right way."""
    try:
        root = np.linalg.cholesky(curve)
    except np.linalg.LinAlgError:
        values, vectors = np.linalg.eigh(curve)
        return (vectors / np.maximum(np.abs(values), 1.0)) @ (vectors.T @ slope)
    return np.linalg.solve(root.T, np.linalg.solve(root, slope))
