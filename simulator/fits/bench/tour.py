"""Stage one of the fit: the tour's skill and what lies do, to the tour's strokes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np
from scipy.optimize import minimize_scalar

from ...physics.lies import FITTED, effects
from ...player.curves import CURVES, Curves
from ...player.levels import LOWEST_HANDICAP, level
from ...player.standard import standard_player
from .. import tables
from . import solver
from .measure import MIDDLE_NODES, Bench, bench, recovery_strokes
from .published import FAR_YD, LADDER, LADDER_LIMIT, LIMITS, NEAR_YD, TOUR_LIES, tour_rows

SKILL = ("spread_scale", "short_power", "wood_factor")
"""Curves whose tour end is fitted here, and a number that all levels share."""

ASSUMED = {
    "spread_scale": (0.6, 0.85, 1.2), "short_power": (0.2, 0.45, 0.7), "hole_out_scale": (1.0, 2.0, 3.0),
    "wood_factor": (1.0, 1.2, 1.6),
    "rough_lie_sd": (0.03, 0.08, 0.14), "rough_part_lie_sd": (0.03, 0.12, 0.2),
    "rough_long_carry": (0.75, 0.86, 0.97),
    "sand_chip_lie_sd": (0.04, 0.12, 0.25), "sand_pitch_lie_sd": (0.06, 0.2, 0.35),
    "sand_full_lie_sd": (0.03, 0.11, 0.2), "sand_full_carry": (0.8, 0.88, 0.97),
    "sand_long_carry": (0.6, 0.78, 0.95),
}  # fmt: skip
"""Lowest, plausible and highest of every number of this stage, wide; plausible is about the middle."""

PULL = 0.1
"""A number that goes the whole width of its bounds costs a tenth of one lie's strokes, missed by their limit
all along."""

TREES_WIDER = (1.0, 3.0)
"""Bounds of the spread among trees; where a ball's way out is blocked, crowns do the rest."""


@dataclass(frozen=True)
class TourFit:
    """What stage one found: the tour ends of curves, the numbers of lies, the holing-out multiplier."""

    skill: dict[str, float]
    lies: dict[str, float]
    hole_out_scale: float


def as_kept(fit: TourFit) -> TourFit:
    """A fit as its files keep it: what starts from it does not hang on figures nobody can read."""
    skill, lies = ({n: tables.as_kept(v) for n, v in part.items()} for part in (fit.skill, fit.lies))
    return TourFit(skill, lies, tables.as_kept(fit.hole_out_scale))


def with_tour(curves: Curves, skill: Mapping[str, float]) -> Curves:
    """Curves with other tour ends and shared numbers."""
    changed: dict[str, Any] = {
        name: (value, *getattr(curves, name)[1:]) if name in CURVES else value
        for name, value in skill.items()
    }
    return Curves(**{**vars(curves), **changed})


def tour_bench(curves: Curves, fit: TourFit, quick: bool = True) -> Bench:
    """The tour's level on the bench."""
    who = standard_player(level(LOWEST_HANDICAP, curves=with_tour(curves, fit.skill)))
    return bench(
        who, lies=effects(fit.lies), hole_out_scale=fit.hole_out_scale, quick=quick, nodes=MIDDLE_NODES
    )


def residuals(measured: Bench) -> np.ndarray:
    """Misses of every counted row over the largest rms aimed for, and of the professionals' ladder."""
    out = []
    for lie in TOUR_LIES[:-1]:
        at, published = tour_rows(lie)
        out.append((measured.strokes(lie, at) - published) / LIMITS[lie][0] / np.sqrt(at.size))
    for near, distances in ((2, NEAR_YD), (4, FAR_YD)):
        green, left = measured.approaches("fairway", distances, 600)
        row = np.array(LADDER[0][2:], float)
        out.append(np.array([(100 * green - row[near - 2]) / LADDER_LIMIT[0],
                             (100 * left - row[near - 1]) / LADDER_LIMIT[1]]) * 0.3)  # fmt: skip
    return np.concatenate(out)


def unpacked(x: np.ndarray) -> TourFit:
    """The numbers of this stage as what they are; the trees' is fitted after them."""
    v = dict(zip(ASSUMED, map(float, x), strict=True))
    lies = {n: v.get(n, TREES_WIDER[0]) for n in FITTED}
    return TourFit({n: v[n] for n in SKILL}, lies, v["hole_out_scale"])


def plausible() -> TourFit:
    """What the fit starts from."""
    return unpacked(solver.plausible(ASSUMED))


def fit_tour(curves: Curves, say: Callable[[str], None], steps: int = 20) -> TourFit:
    """Fit every number of ``ASSUMED`` by bounded least squares with common luck."""

    def misses(x: np.ndarray) -> np.ndarray:
        return residuals(tour_bench(curves, unpacked(x)))

    fit = solver.fit_bounded(misses, ASSUMED, PULL, steps)
    say(
        f"tour, {fit.nfev} steps: misfit {fit.misfit:.2f}; "
        + ", ".join(f"{n} {v:.3f}" for n, v in zip(ASSUMED, fit.x, strict=True))
    )
    return unpacked(fit.x)


def trees_misses(curves: Curves, fit: TourFit, quick: bool = True) -> np.ndarray:
    """Misses of recovery shots through trees, the rows that count [strokes]."""
    who = standard_player(level(LOWEST_HANDICAP, curves=with_tour(curves, fit.skill)))
    at, published = tour_rows("trees")
    lies = effects(fit.lies)
    return recovery_strokes(who, at, lies=lies, hole_out_scale=fit.hole_out_scale, quick=quick) - published


def fit_trees(curves: Curves, fit: TourFit, say: Callable[[str], None]) -> TourFit:
    """Fit how much wider balls fly from among trees, all else given."""

    def rms(wider: float) -> float:
        lies = {**fit.lies, "trees_wider": float(wider)}
        misses = trees_misses(curves, TourFit(fit.skill, lies, fit.hole_out_scale))
        say(f"trees {wider:.2f} times wider: mean miss {misses.mean():+.3f}")
        return float(np.sqrt(np.mean(misses**2)))

    best = minimize_scalar(rms, bounds=TREES_WIDER, method="bounded", options={"maxiter": 6, "xatol": 0.05})
    return TourFit(fit.skill, {**fit.lies, "trees_wider": float(best.x)}, fit.hole_out_scale)
