"""The player's pattern per club: strikes of each on a level mown field in today's air."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from ..hole.model import Hole
from ..hole.sketch import read_sketch
from ..hole.surfaces import Lie
from ..tables.game import make_board
from . import streams
from .errorbars import Estimate, quantile, total
from .tries import Place

STRIKES = 2_000
"""Strikes of each club."""

FIELD = {
    "name": "practice field", "par": 5, "length_yd": 640,
    "green": [{"front_yd": 620, "depth_yd": 30, "width_yd": 30}],
    "fairway": [{"from_yd": -60, "to_yd": 760, "left_yd": -300, "right_yd": 300}],
}  # fmt: skip
"""Mown ground and nothing else, longer than anybody hits."""


@dataclass(frozen=True)
class ClubPattern:
    """Finishes of one club, all strikes, along +y: a driver from a tee, all else from fairway.

    Attributes
    ----------
    club : str
    carry_yd : float
        Stock carry.
    finishes_yd : float64[strikes, 2]
        Right of and along the line aimed on.
    width_yd, depth_yd : Estimate
        What 8 of 10 finishes stay inside across and along, each by itself.
    across_yd, along_yd : tuple of float
        The edges of that.
    """

    club: str
    carry_yd: float
    finishes_yd: np.ndarray
    width_yd: Estimate
    depth_yd: Estimate
    across_yd: tuple[float, float]
    along_yd: tuple[float, float]


@lru_cache(maxsize=1)
def _field() -> Hole:
    return read_sketch(dict(FIELD), "practice field")


def club_patterns(place: Place, seed: int) -> tuple[ClubPattern, ...]:
    """Strikes of every club's stock shot with the bag of a solved place, wind and air of its day."""
    bag = place.board.bag
    board = make_board(_field(), bag)
    found = []
    for row, shot in enumerate(bag.shots.shots[: bag.shots.first_part]):
        if shot.flight != "stock":
            continue
        action = np.array([float(row), 0.0, 0.0])
        teed = shot.club.kind == "driver" or row not in board.allowed(int(Lie.FAIRWAY))
        here = Place(board, 0.0, 0.0, int(Lie.TEE if teed else Lie.FAIRWAY), place.threads)
        rest = here.play(
            action, action, 5.0, seed=seed + streams.PATTERNS, sequences=STRIKES, most_strokes=1
        ).rest_yd
        across, along = rest[:, 0], rest[:, 1]
        found.append(
            ClubPattern(
                shot.club.name,
                shot.carry_yd,
                rest,
                _between(across),
                _between(along),
                _edges(across),
                _edges(along),
            ),
        )
    return tuple(sorted(found, key=lambda one: -one.carry_yd))


def _between(values: np.ndarray) -> Estimate:
    """Distance between the tenth and the ninetieth of a hundred, errors of the two ends added in squares."""
    return total([quantile(values, 0.9), quantile(values, 0.1).times(-1.0)])


def _edges(values: np.ndarray) -> tuple[float, float]:
    low, high = np.quantile(values, [0.1, 0.9])
    return float(low), float(high)
