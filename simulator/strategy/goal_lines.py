"""The line of a club for a goal: not the best average, but the one that reaches the goal most often."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..engine import MOST_STROKES
from ..tables.luck import strike_sets
from . import streams
from .goals import TIE_SHARE, Goal, chance_difference
from .result import Start
from .search import TieBand, banded
from .tries import COARSE_AIMS_DEG, Choice, Place, on_the_map

LOOK_PLAYS, DECIDE_PLAYS, BAND_PLAYS = 384, 4096, 512
"""Plays that find the aim to look round, that decide between the aims there, and that find its tie band."""

FAN_DEG = 28.0
"""Aims farther off the pin than this are for recoveries: a goal is not looked for out there [deg]."""

ROUND_DEG = (-2.0, -1.0, 0.0, 1.0, 2.0)
"""Aims decided between, off the one found first [deg]; the first pass has steps of two."""

BAND_DEG = np.arange(-8.0, 8.1, 1.0)
"""Aims round the chosen one at which its tie band is read [deg]."""

MOST_COST = 0.3
"""A line for a distance may cost so much more than the club's best on average (assumed) [strokes].

Any ground without trouble counts for a distance, the rough beside the hole too: without a limit a club would
be sent out there. A target needs none, the score is what it is about.
"""


PAYS = 1.0
"""A line for a distance gains at least so many of its balls for a stroke that it costs: 10 in 100 for 0.1
(chosen). In the rough balls run less, and a lay-up was pointed 39 yards off the fairway for 14 in 100."""


@dataclass(frozen=True)
class Seen:
    """What a first look found: the highest chance of a goal, and the aim it has it at [rad]."""

    chance: float
    aim: float


@dataclass(frozen=True)
class Reacher:
    """Counts how often an action from the asked place reaches a goal, with luck that all actions share.

    Attributes
    ----------
    home : float64[3]
        What a stroke played again from here is.
    value : float
        Strokes from here by the map.
    """

    place: Place
    goal: Goal
    start: Start
    home: np.ndarray
    value: float
    seed: int

    def hits(self, action: np.ndarray, luck: int, plays: int) -> np.ndarray:
        """Which plays reach it, bool[plays]; only a target needs more than this ball."""
        most = MOST_STROKES if self.goal.kind == "target" else 1
        played = self.place.play(
            action, self.home, self.value, seed=self.seed + luck, sequences=plays, most_strokes=most
        )
        return self.goal.hits(played, self.start)

    def own(self, choice: Choice) -> np.ndarray:
        """Which of the deciding plays reach it on the line the choice has."""
        return self.hits(choice.action, streams.GOAL_DECIDE, DECIDE_PLAYS)

    def first_look(self, choice: Choice, moved: bool = True) -> Seen:
        """The aim that reaches the goal most often in a few plays; its own where it is not to be moved."""
        aims = [choice.action[1]]
        if moved:
            aims += np.radians(COARSE_AIMS_DEG[np.abs(COARSE_AIMS_DEG) <= FAN_DEG]).tolist()
        tries, scores = self._allowed(choice, np.array(aims))
        hits = [self.hits(a, streams.GOAL_LOOK, LOOK_PLAYS) for a in tries]
        tries, scores, hits = self._that_pay(tries, scores, hits)
        most = int(np.argmax([np.count_nonzero(one) for one in hits]))
        level = [k for k in range(len(hits)) if not beats(hits[most], hits[k], TIE_SHARE)]
        k = min(level, key=lambda k: float(scores[k]))  # where many aims will do, the cheapest
        return Seen(float(hits[most].mean()), float(tries[k, 1]))

    def decide(self, choice: Choice, aim: float) -> tuple[Choice, np.ndarray]:
        """The choice on its line for the goal, and which of the deciding plays reach it there.

        Its own line unless another gains more than a tie; then the lowest average of the aims that cannot be
        told from the best.
        """
        tries, scores = self._allowed(choice, np.array([choice.action[1], *(aim + np.radians(ROUND_DEG))]))
        hits = [self.hits(a, streams.GOAL_DECIDE, DECIDE_PLAYS) for a in tries]
        tries, scores, hits = self._that_pay(tries, scores, hits)
        most = max(range(len(hits)), key=lambda k: (np.count_nonzero(hits[k]), -k))
        if not beats(hits[most], hits[0], TIE_SHARE):
            return choice, hits[0]
        level = [k for k in range(len(hits)) if not beats(hits[most], hits[k], 0.0)]
        k = min(level, key=lambda k: float(scores[k]))
        return replace(choice, action=tries[k], score=float(scores[k])), hits[k]

    def band(self, choice: Choice) -> TieBand:
        """First and last aim round a choice that reach the goal as often, but for a tie."""
        tries = np.repeat(choice.action[None], BAND_DEG.size, axis=0)
        tries[:, 1] += np.radians(BAND_DEG)
        hits = [self.hits(a, streams.GOAL_BAND, BAND_PLAYS) for a in tries]
        low = high = middle = BAND_DEG.size // 2
        while low > 0 and not beats(hits[middle], hits[low - 1], TIE_SHARE, errors=0.0):
            low -= 1
        while high < len(hits) - 1 and not beats(hits[middle], hits[high + 1], TIE_SHARE, errors=0.0):
            high += 1
        return banded(
            choice, np.radians(BAND_DEG), (low, high), lambda k: chance_difference(hits[middle], hits[k])
        )

    def _that_pay(
        self, tries: np.ndarray, scores: np.ndarray, hits: list[np.ndarray]
    ) -> tuple[np.ndarray, np.ndarray, list[np.ndarray]]:
        """The first of some lines, and those that gain on it what they cost; of a target all."""
        if self.goal.kind == "target":
            return tries, scores, hits
        gains = np.array([one.mean() for one in hits]) - hits[0].mean()
        paid = gains >= PAYS * (scores - scores[0])
        paid[0] = True
        return tries[paid], scores[paid], [one for one, kept in zip(hits, paid, strict=True) if kept]

    def _allowed(self, choice: Choice, aims: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        """Actions of a choice at some aims and their strokes by the map, its own first.

        All are on the map, and none costs too much.
        """
        tries = np.repeat(choice.action[None], aims.size, axis=0)
        tries[:, 1] = aims
        scores = self.place.scores(tries, self.value, strike_sets(self.seed + streams.FINE, 4, 128))
        kept = on_the_map(self.place, tries)
        if self.goal.kind != "target":
            kept &= scores <= scores[0] + MOST_COST
        kept[0] = True
        return tries[kept], scores[kept]


def beats(one: np.ndarray, other: np.ndarray, least: float, errors: float = 2.0) -> bool:
    """Whether one reaches the goal more often than another, by `least` and so many paired errors."""
    gap = chance_difference(one, other)
    return gap.value > max(least, errors * gap.standard_error)


def chosen(choices: Sequence[Choice], hits: Sequence[np.ndarray]) -> int:
    """The choice that reaches the goal most often; of those that tie with it, the lowest on the map."""
    most = max(range(len(hits)), key=lambda k: (np.count_nonzero(hits[k]), -choices[k].score))
    level = [k for k in range(len(hits)) if k == most or not beats(hits[most], hits[k], TIE_SHARE)]
    return min(level, key=lambda k: choices[k].score)
