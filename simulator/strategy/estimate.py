"""From prepared strikes and full sequences to means, paired differences and their standard errors."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from ..engine import Sequences
from .errorbars import Estimate, mean, total

MAP_ERROR = 0.005
"""What a value map is off by, one standard error [strokes]: how it scatters from map to map and departs from
full sequences of its plan, 0.0046 root mean square over places other than tees and 0.0056 on tees
(``python benchmarks/map_error.py``, 2026-11-28)."""


def by_map(strikes: Estimate) -> Estimate:
    """A figure of the value map, its error that of its strikes and of the map itself."""
    return total([strikes, Estimate(0.0, MAP_ERROR)])


@dataclass(frozen=True)
class PlayedChoice:
    """One alternative, valued and played.

    Attributes
    ----------
    first : float64[sets]
        Mean strokes of the first shot plus the map's value after it, for each scramble.
    rest : float64[sequences]
        Strokes with putts replaced by their expectation, minus the first shot's strokes and the map's
        value after it: what the map did not know.
    sequences : Sequences
    """

    first: np.ndarray
    rest: np.ndarray
    sequences: Sequences


def played(values: np.ndarray, replay: float, sequences: Sequences) -> PlayedChoice:
    """Pair the engine's values of one action, float64[sets, 2], with its sequences."""
    rest = sequences.expected - sequences.first_cost - sequences.first_value
    return PlayedChoice(values[:, 0] + replay * values[:, 1], rest, sequences)


def score(one: PlayedChoice) -> Estimate:
    """Expected strokes: the map's figure over even first strikes, corrected by the sequences.

    Unbiased whatever the map, since what is added of it is taken away again; the better the map, the
    smaller the error.
    """
    return total([mean(one.first), mean(one.rest)])


def difference(one: PlayedChoice, other: PlayedChoice) -> Estimate:
    """Expected strokes of `one` minus `other`, paired strike by strike and sequence by sequence."""
    return total([mean(one.first - other.first), mean(one.rest - other.rest)])


def share(hits: np.ndarray) -> Estimate:
    """Share of the sequences in which something happened.

    The error of a share of none or all is that of one more sequence going the other way (a count of zero
    is not a certainty).
    """
    n = hits.size
    p = float(np.count_nonzero(hits)) / n
    q = min(max(p, 1.0 / n), 1.0 - 1.0 / n)
    return Estimate(p, math.sqrt(q * (1.0 - q) / n))


def worst_tenth_mean(scores: np.ndarray) -> Estimate:
    """Mean of the worst tenth of the scores.

    The tenth is cut inside a tie where it must be; error by the influence function of the tail mean,
    ``q + E[(x - q)+] / 0.1``.
    """
    cut = float(np.quantile(scores, 0.9, method="inverted_cdf"))
    over = np.maximum(scores - cut, 0.0)
    tail = mean(over).times(10.0)
    return replace(tail, value=cut + tail.value)
