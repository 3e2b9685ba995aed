"""Alternatives scored again near their best aims when something has changed, by shared strikes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..hole.model import Hole
from ..player.model import Player
from ..tables.game import Board
from ..tables.luck import strike_sets
from ..tables.nodes import HELD_YD, Nodes, place_nodes
from . import streams
from .traffic import places_of
from .tries import Choice, Place, repeated

NEAR_TURNS_DEG = (-2.0, 0.0, 2.0)
"""Aims tried round the best one [deg]; a parabola through them reads the best between."""

SETS, STRIKES = 4, 128
"""Scrambles, and strikes in each, that score an alternative at several aims."""

MOST_STRIKES = 256
"""Strikes in each where few scores are wanted and their scatter counts."""


@dataclass(frozen=True)
class Rescore:
    """The alternatives of one answer, ready to be scored again.

    Attributes
    ----------
    place : Place
    hole : Hole
    player : Player
    choices : tuple of Choice
        In the order of the answer, the recommended one first.
    given : tuple of bool
        Whose aim was given: it is not moved.
    behind : float64[choices]
        Expected strokes behind the recommended one as the answer has them.
    replay : float
        Value of playing again from the place, which decides between reliefs.
    seed : int
        Of the answer.
    balls : float64[n, 3]
        Where the alternatives' balls come to, x, y [yd] and lie (`traffic.places_of`).
    nodes : Nodes
        Where a plan that is held is valued anew.
    strikes : float64[SETS, MOST_STRIKES, STRIKE_LUCK]
    """

    place: Place
    hole: Hole
    player: Player
    choices: tuple[Choice, ...]
    given: tuple[bool, ...]
    behind: np.ndarray
    replay: float
    seed: int
    balls: np.ndarray
    nodes: Nodes
    strikes: np.ndarray

    @property
    def rows(self) -> list[int]:
        """Shot rows of the alternatives."""
        return [choice.row for choice in self.choices]

    def alone(self) -> Rescore:
        """The same on one thread, to be one of several works done at once."""
        return replace(self, place=replace(self.place, threads=1))

    def strokes(
        self,
        board: Board,
        *,
        turns_deg: Sequence[float] = NEAR_TURNS_DEG,
        turned_deg: Sequence[float] | None = None,
        strikes: int = STRIKES,
    ) -> np.ndarray:
        """Strokes of every alternative on a board, each at its best aim, float64[choices].

        Parameters
        ----------
        board : Board
            With strikes, flights, ground or values changed; shots in the order of the place's own.
        turns_deg : sequence of float
            Evenly spaced turns off the best aim that are tried.
        turned_deg : sequence of float, optional
            Turn of each alternative whose aim was given (a bias that nobody aims off for).
        strikes : int
            How many in each scramble.
        """
        turns = np.radians(turns_deg)
        turned = np.radians(np.zeros(len(self.choices)) if turned_deg is None else turned_deg)
        actions = np.repeat(np.array([choice.action for choice in self.choices])[:, None], turns.size, axis=1)
        for k, given in enumerate(self.given):
            actions[k, :, 1] += turned[k] if given else turns
        values = replace(self.place, board=board).values(
            actions.reshape(-1, 3), self.replay, np.ascontiguousarray(self.strikes[:, :strikes])
        )
        # strokes replayed from here are played the best way there is, worked out on this board
        again = float(repeated(values).min())
        mean = values.mean(axis=1)
        return lowest((mean[:, 0] + again * mean[:, 1]).reshape(len(self.choices), turns.size))


def rescore(
    place: Place,
    hole: Hole,
    player: Player,
    choices: Sequence[Choice],
    given: Sequence[bool],
    behind: np.ndarray,
    replay: float,
    seed: int,
) -> Rescore:
    """Alternatives ready to be scored again; see `Rescore`."""
    balls = places_of(place, choices, replay, seed + streams.PLAUSIBLE_BALLS)
    strikes = strike_sets(seed + streams.PLAUSIBLE, SETS, MOST_STRIKES)
    nodes = place_nodes(hole, place.board.raster, *HELD_YD)
    return Rescore(
        place, hole, player, tuple(choices), tuple(given), behind, replay, seed, balls, nodes, strikes
    )


def lowest(values: np.ndarray) -> np.ndarray:
    """Lowest point of the parabola through the lowest value of each row and its neighbours, float64[rows].

    The lowest value itself where the row is not bent upwards there; never lower than half the rise to
    the nearer neighbour allows.
    """
    out = values.min(axis=1)
    if values.shape[1] < 3:
        return np.asarray(out)
    k = np.clip(values.argmin(axis=1), 1, values.shape[1] - 2)
    rows = np.arange(len(values))
    left, middle, right = values[rows, k - 1], values[rows, k], values[rows, k + 1]
    bend = left - 2.0 * middle + right
    inside = (bend > 1e-9) & (np.abs(left - right) <= 2.0 * bend)
    dip = np.where(inside, (left - right) ** 2 / np.where(inside, 8.0 * bend, 1.0), 0.0)
    return np.minimum(out, middle - dip)
