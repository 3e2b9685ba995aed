"""A round from its holes: expected strokes, their distribution, and what better decisions are worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from . import errorbars
from .errorbars import Estimate, figure

MOST_ROUNDS = 0.8
"""Share of rounds that "most" are, at least: totals are whole, so a run of them holds more."""


@dataclass(frozen=True)
class Round:
    """Holes added up.

    Attributes
    ----------
    holes, par : int
    best, habit : Estimate
        Expected strokes by the recommended choices, and by the habit from every tee.
    gain : Estimate
        The difference, with common luck.
    least : int
        Fewest strokes of `chances`.
    chances : float64[n]
        Chance of each total, ``least`` strokes first: the holes' own distributions convolved, holes taken as
        independent.
    chance_errors : float64[n]
        Their standard errors.
    target : int or None
    breaking : Estimate or None
        Chance of fewer strokes than the target; None without one, and where holes are missing.
    breaking_by_habit : Estimate or None
    """

    holes: int
    par: int
    best: Estimate
    habit: Estimate
    gain: Estimate
    least: int
    chances: np.ndarray
    chance_errors: np.ndarray
    target: int | None = None
    breaking: Estimate | None = None
    breaking_by_habit: Estimate | None = None

    def quantile(self, share: float) -> int:
        """The least total that this share of rounds does not exceed."""
        return self.least + int(np.searchsorted(np.cumsum(self.chances), share - 1e-12))

    def most(self, share: float = MOST_ROUNDS) -> tuple[int, int, float]:
        """The shortest run of totals that holds at least this share of rounds: its ends, and what it holds.

        Of runs as short the one that holds most.
        """
        sums = np.concatenate([[0.0], np.cumsum(self.chances)])
        for length in range(1, self.chances.size + 1):
            held = sums[length:] - sums[:-length]
            k = int(held.argmax())
            if held[k] >= min(share, sums[-1] - 1e-12):
                break
        return self.least + k, self.least + k + length - 1, float(held[k])

    def to_dict(self) -> dict[str, Any]:
        """As plain JSON-ready data."""
        return {
            "holes": self.holes,
            "par": self.par,
            **figure("expected_round", self.best),
            **figure("habit_round", self.habit),
            **figure("worth", self.gain),
            "least_round": self.least,
            "round_chances": self.chances.tolist(),
            "round_chances_standard_error": self.chance_errors.tolist(),
            "target": self.target,
            **figure("breaking", self.breaking),
            **figure("habit_breaking", self.breaking_by_habit),
        }


def add_up(results: Sequence[dict[str, Any]], target: int | None = None, *, missing: int = 0) -> Round:
    """The round of some holes' results (of `jobs.work`), all of one player, day and seed.

    Parameters
    ----------
    target : int, optional
        Score to be broken: the chance is that of fewer strokes.
    missing : int
        Holes of the course without a result. A target is meant for all of it: fewer holes break it by being
        fewer, so its chance is left out.
    """
    best = [one["plays"]["best"] for one in results]
    habit = [one["plays"]["habit"] for one in results]
    least, chances = convolved(best)
    broken = by_habit = None
    if target is not None and not missing:
        broken, by_habit = breaking(best, target), breaking(habit, target)
    return Round(
        holes=len(results),
        par=sum(one["answer"]["par"] for one in results),
        best=sum_over_holes(best),
        habit=sum_over_holes(habit),
        gain=sum_over_holes(habit, best),
        least=least,
        chances=chances,
        chance_errors=np.array([errorbars.mean(column).standard_error for column in _by_block(best).T]),
        target=target,
        breaking=broken,
        breaking_by_habit=by_habit,
    )


def sum_over_holes(plays: Sequence[dict[str, Any]], minus: Sequence[dict[str, Any]] = ()) -> Estimate:
    """Expected strokes of some holes together, less those of others.

    Sequence k strikes with the same luck on every hole, so the errors of the holes are not independent: they
    are read off sums over the holes, scramble by scramble and block by block.
    """
    parts = []
    for name in ("first", "rest"):
        row = np.sum([one[name] for one in plays], axis=0)
        if minus:
            row = row - np.sum([one[name] for one in minus], axis=0)
        part = errorbars.mean(row)
        if name == "rest":  # blocks of 13 sequences and of 12: their mean is not that of the sequences
            sizes = np.asarray(plays[0]["counts"]).sum(axis=1)
            part = replace(part, value=float(np.average(row, weights=sizes)))
        parts.append(part)
    return errorbars.total(parts)


def _shares(one: dict[str, Any]) -> np.ndarray:
    counts = np.asarray(one["counts"], dtype=float).sum(axis=0)
    return np.asarray(counts / counts.sum())


def convolved(plays: Sequence[dict[str, Any]]) -> tuple[int, np.ndarray]:
    """Least total and the chance of each from there on, of independent holes."""
    chances, least = np.ones(1), 0
    for one in plays:
        chances = np.convolve(chances, _shares(one))
        least += int(one["least"])
    return least, chances


def _by_block(plays: Sequence[dict[str, Any]]) -> np.ndarray:
    """What each block of sequences tells of each total of independent holes, float64[blocks, totals].

    The chance of a total is linear in each hole's distribution, so its error is that of the sum over holes of
    ``P(all the others = total - score)`` over blocks of sequences, whose luck the holes share.
    """
    told: list[np.ndarray] = []
    for k, one in enumerate(plays):
        _, others = convolved([*plays[:k], *plays[k + 1 :]])
        counts = np.asarray(one["counts"], dtype=float)
        last = counts.shape[1] - 1
        by_score = np.stack([np.pad(others, (score, last - score)) for score in range(last + 1)])
        told.append(counts @ by_score / counts.sum(axis=1, keepdims=True))
    return np.asarray(np.sum(told, axis=0))


def breaking(plays: Sequence[dict[str, Any]], target: int) -> Estimate:
    """Chance that independent holes add up to fewer strokes than a target, and its Monte Carlo error."""
    least, chances = convolved(plays)
    below = int(np.clip(target - least, 0, chances.size))
    value = float(chances[:below].sum())
    return replace(errorbars.mean(_by_block(plays)[:, :below].sum(axis=1)), value=min(max(value, 0.0), 1.0))


def worth(result: dict[str, Any]) -> Estimate:
    """What the recommended choice is worth on one hole against the habit."""
    return Estimate(result["habit"]["difference"], result["habit"]["difference_standard_error"])


def ranked(results: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    """Results with the hole first where a better decision is worth most."""
    return sorted(results, key=lambda one: (-worth(one).value, one["number"]))
