"""Stage two of the fit: amateurs' curves, to rating lines and to greens hit and leaves."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from ...physics.lies import effects
from ...player.curves import Curves
from ...player.levels import HIGHEST_HANDICAP, level
from ...player.standard import standard_player
from . import solver
from .measure import Bench, bench
from .published import FAR_YD, LADDER, LADDER_LIMIT, NEAR_YD, RATING_LIMIT, RATING_LINES, ROUGH_LADDER
from .rounds import COURSES_YD, better_half
from .tour import TourFit

TOUR_MISHIT_RATE = 0.01
"""Share of a tour player's middle iron strikes that are mishits (assumed)."""

SHORT_GAME_TOLD = 20.0
"""Handicap beyond which no short game is published: from there on a chip widens as the full wedge does
(assumed). A power fitted at 36 fell faster than wedges widen, and a 36 chipped no worse than a 20."""

MISHIT_FACTOR = 1.5
"""How much wider a mishit spreads than a solid strike (assumed)."""

ANCHORS = (0.0, 6.0, 20.0, 36.0)
"""Handicaps whose numbers are fitted here; the tour's come from stage one."""

ASSUMED = {
    "rate at 0": (0.01, 0.03, 0.05), "rate, 0 to 6": (0.0, 0.05, 0.1), "rate, 6 to 20": (0.0, 0.08, 0.16),
    "rate, 20 to 36": (0.0, 0.06, 0.12),
    "spread at 0": (0.8, 0.95, 1.2), "spread, 0 to 6": (0.0, 0.1, 0.3), "spread, 6 to 20": (0.0, 0.15, 0.4),
    "spread, 20 to 36": (0.0, 0.1, 0.4),
    "power at 20": (0.2, 0.4, 0.5), "loss": (15.0, 25.0, 45.0), "short loss": (20.0, 35.0, 70.0),
}  # fmt: skip
"""Lowest, plausible and highest of every number of this stage; steps that are not negative keep the curves
monotone. Of a scratch player's iron strikes 1 in 30 is a mishit, of a bogey golfer's 1 in 6, of a 36's 1 in 5
(common practice, from memory: no source counts them, and scores, greens and leaves do not tell more mishits
from a wider spread)."""

PULL = 2.0
"""A number half the width of its bounds from where it is plausible costs what a miss of one limit costs."""

LADDER_WEIGHT = {"fairway": 1.2, "rough": 0.8}
"""Weight of a ladder's four misses over a score's, each in its own limit."""

SLOPE_WEIGHT = 3.0
"""Weight of the slope's four misses: the score of both players enters it."""

WEAKEST_LIMIT = 0.60
"""The weakest level has no rating line. Its better half is asked to lie on scratch and bogey continued by
index (that is how a slope turns an index into strokes), with a wide limit."""


def rating(handicap: float, sex: str, courses_yd: np.ndarray) -> np.ndarray:
    """Better-half score of the rating lines over courses; straight in index beyond scratch and bogey."""
    bogey = max(h for s, h in RATING_LINES if s == sex)
    (base_0, per_0), (base_1, per_1) = RATING_LINES[sex, 0.0], RATING_LINES[sex, bogey]
    scratch, weak = 18 * base_0 + per_0 * courses_yd, 18 * base_1 + per_1 * courses_yd
    return np.asarray(scratch + (weak - scratch) * handicap / bogey)


def ladder_row(handicap: float, lie: str = "fairway") -> np.ndarray:
    """Published greens and leaves of a handicap, straight between the amateurs' groups."""
    rows = np.array([(row[0], *row[2:]) for row in (ROUGH_LADDER if lie == "rough" else LADDER[2:])])
    return np.array([np.interp(handicap, rows[:, 0], column) for column in rows[:, 1:].T])


def ladder_found(measured: Bench, lie: str, each: int = 1000) -> np.ndarray:
    """Percent of greens and of leaves, float64[4]: near greens, near leave, far greens, far leave."""
    spans = (NEAR_YD, FAR_YD)
    return np.array([100.0 * x for distances in spans for x in measured.approaches(lie, distances, each)])


def ladder_misses(measured: Bench, handicap: float, lie: str) -> np.ndarray:
    """The same less published, over the limits."""
    return (ladder_found(measured, lie, 600) - ladder_row(handicap, lie)) / np.array(LADDER_LIMIT * 2)


def residuals(curves: Curves, tour: TourFit) -> np.ndarray:
    """Misses over what is aimed for: scores at 0, 20, 36 (4 each), slope (4), ladders at 4.5, 20, 36 (4
    each)."""
    at, scores, ladders, halves = np.array(COURSES_YD["man"]), [], [], {}
    for handicap in (0.0, 4.5, 20.0, 36.0):
        measured = bench(
            standard_player(level(handicap, curves=curves)),
            lies=effects(tour.lies),
            hole_out_scale=tour.hole_out_scale,
        )
        if handicap:
            for lie, weight in LADDER_WEIGHT.items():
                ladders.append(weight * ladder_misses(measured, handicap, lie))
        if handicap != 4.5:
            limit = RATING_LIMIT.get(handicap, WEAKEST_LIMIT)
            halves[handicap] = better_half(measured, COURSES_YD["man"])
            scores.append(
                (halves[handicap] - rating(handicap, "man", at)) / 18 / limit / np.sqrt(at.size) * 2.0
            )
    wanted = rating(20.0, "man", at) - rating(0.0, "man", at)
    slope = ((halves[20.0] - halves[0.0]) / wanted - 1.0) / 0.10 / np.sqrt(at.size) * SLOPE_WEIGHT
    return np.concatenate([*scores, slope, *ladders])


def unpacked(x: np.ndarray, tour: Mapping[str, float]) -> Curves:
    """Curves from the numbers of this stage and the tour's skill; scratch keeps the tour's power.

    Beyond the last anchor the rate goes on rising half as fast and the spread keeps its value: the boxes it
    is applied to go on growing. So does the power beyond ``SHORT_GAME_TOLD``.
    """
    n = len(ANCHORS)
    rate, spread = np.cumsum(x[:n]), np.cumsum(x[n : 2 * n])
    power = np.interp(ANCHORS, (ANCHORS[0], SHORT_GAME_TOLD), (tour["short_power"], x[2 * n]))
    rise = 0.5 * x[n - 1] / (ANCHORS[-1] - ANCHORS[-2]) * (HIGHEST_HANDICAP - ANCHORS[-1])
    ends = {"mishit_rate": TOUR_MISHIT_RATE, **tour}

    def column(name: str, values: np.ndarray, end: float) -> tuple[float, ...]:
        return (ends[name], *map(float, values), float(end))

    return Curves(
        handicap=(-5.0, *ANCHORS, HIGHEST_HANDICAP),
        mishit_rate=column("mishit_rate", rate, rate[-1] + rise),
        spread_scale=column("spread_scale", spread, spread[-1]),
        short_power=column("short_power", power, power[-1]),
        mishit_loss_pct=float(x[-2]),
        short_loss_pct=float(x[-1]),
        mishit_factor=MISHIT_FACTOR,
        wood_factor=tour["wood_factor"],
    )


def plausible(tour: TourFit) -> Curves:
    """The curves the fit starts from."""
    return unpacked(solver.plausible(ASSUMED), tour.skill)


def fit_amateurs(tour: TourFit, say: Callable[[str], None], steps: int = 20) -> Curves:
    """Fit the numbers of ``ASSUMED`` by bounded least squares with common luck."""
    assumed = dict(ASSUMED)
    _, spread, highest = assumed["spread at 0"]
    assumed["spread at 0"] = (tour.skill["spread_scale"], spread, highest)  # no amateur's is tighter

    def misses(x: np.ndarray) -> np.ndarray:
        return residuals(unpacked(x, tour.skill), tour)

    fit = solver.fit_bounded(misses, assumed, PULL, steps, jagged=True)
    said = ", ".join(f"{name} {value:.3g}" for name, value in zip(ASSUMED, fit.x, strict=True))
    say(f"amateurs, {fit.nfev} steps: misfit {fit.misfit:.2f}; {said}")
    return unpacked(fit.x, tour.skill)
