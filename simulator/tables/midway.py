"""Tables flown at every other node of the winds: what lies between is read off cubics."""

from __future__ import annotations

import numpy as np

LEAST_NODES = 7
"""Fewer nodes on an axis are all flown: a cubic wants four."""


def flown_nodes(count: int) -> slice:
    """Which nodes are flown of an axis of so many."""
    return slice(None, None, 2 if count >= LEAST_NODES and count % 2 else 1)


def spread(flown: np.ndarray, out: np.ndarray) -> None:
    """Fill a table of winds along and across from what was flown at `flown_nodes` of both.

    Parameters
    ----------
    flown : float[flown along, flown across, ...]
    out : float[along, across, ...]
        Filled.
    """
    along, across = (flown_nodes(count) for count in out.shape[:2])
    out[along, across] = flown
    _fill_midway(np.moveaxis(out[along], 1, 0), across)
    _fill_midway(out, along)


def _fill_midway(nodes: np.ndarray, flown: slice) -> None:
    """Fill what was not flown of the first axis.

    Midway between two nodes: the cubic through the nearest two on either side, or through the four at an end
    (Lagrange). It errs by 3/128 of the fourth derivative times the step to the fourth, by 5/128 at an end.
    """
    if flown.step == 1:
        return
    known = nodes[flown]
    nodes[3:-3:2] = (9.0 * (known[1:-2] + known[2:-1]) - (known[:-3] + known[3:])) / 16.0
    for end, four in ((1, known[:4]), (-2, known[:-5:-1])):
        nodes[end] = (5.0 * four[0] + 15.0 * four[1] - 5.0 * four[2] + four[3]) / 16.0
