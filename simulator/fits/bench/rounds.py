"""Courses made of bench holes, and what rounds over them come to."""

from __future__ import annotations

import numpy as np

from .measure import Bench

HOLES_YD = np.array(
    [150.0, 165, 185, 200, 320, 350, 360, 370, 380, 385, 400, 410, 425, 440, 490, 505, 520, 545]
)
"""Lengths of eighteen holes that add up to 6,600 yd, in the usual mix of short, middling and long (assumed);
other courses are this one longer or shorter."""

COURSES_YD = {"man": (5400.0, 6000.0, 6600.0, 7200.0), "woman": (4200.0, 4800.0, 5400.0, 6000.0)}
"""The four lengths at which rating lines are checked; the longest hole is then 595 yd."""

HALF_NORMAL = float(np.sqrt(2.0 / np.pi))
"""Mean of the lower half of a normal lies so many standard deviations under its mean."""


def course(length_yd: float) -> np.ndarray:
    """Lengths of the eighteen holes [yd]."""
    return HOLES_YD * (length_yd / HOLES_YD.sum())


def mean_scores(bench: Bench, courses_yd: tuple[float, ...]) -> np.ndarray:
    """Expected score over each course by the maps: strokes read at twelve lengths, straight between."""
    every = np.concatenate([course(length) for length in courses_yd])
    at = np.linspace(every.min(), every.max(), 14)
    strokes = bench.strokes("tee", at)
    return np.array([np.interp(course(length), at, strokes).sum() for length in courses_yd])


def score_sd(bench: Bench, length_yd: float, each: int = 600) -> float:
    """Standard deviation of a score, holes taken as independent, from six of its holes."""
    played = bench.holes(course(length_yd)[1::3], each)
    return float(np.sqrt(3.0 * sum(p.score.var() for p in played)))


def better_half(bench: Bench, courses_yd: tuple[float, ...]) -> np.ndarray:
    """Mean of the better half of rounds over each course, scores taken as normal: quick, for the fit."""
    return mean_scores(bench, courses_yd) - HALF_NORMAL * score_sd(bench, courses_yd[1])


def simulated(bench: Bench, length_yd: float, rounds: int = 5000) -> np.ndarray:
    """Scores of rounds over a course, every hole played out from the tee, float64[rounds]."""
    return np.sum([p.score for p in bench.holes(course(length_yd), rounds)], axis=0)
