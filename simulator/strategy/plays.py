"""Playing and counting the alternatives of one question."""

from __future__ import annotations

import math
from copy import copy
from dataclasses import replace
from typing import Any

import numpy as np

from ..engine import Sequences
from ..hole.model import Hole
from ..hole.surfaces import WORDS, Surface
from ..tables.game import Board
from ..tables.luck import strike_sets
from . import estimate, streams
from .aimline import AimLine
from .alternative import Alternative
from .clubline import club_and_line
from .errorbars import Estimate, largest, mean, quantile
from .goals import chance_difference
from .reach import find_reach
from .result import Start
from .room import find_room
from .search import TieBand, tie_band
from .tries import Choice, Place

FIRST_SETS, FIRST_STRIKES = 16, 1024
"""Scrambles and strikes in each that value the first shot of an alternative."""

REACH_STRIKES, REACH_SEED = 32_768, 20_240
"""Strikes that measure how far anybody ahead must be, the same whatever the question's seed."""

AHEAD_MORE_YD = 20
"""Added to the longest of them (people are not a statistic)."""


class Plays:
    """Playing and counting the alternatives of one question."""

    def __init__(
        self,
        place: Place,
        start: Start,
        hole: Hole,
        home: np.ndarray,
        value: float,
        seed: int,
        sequences: int,
    ) -> None:
        self.place, self.start, self.hole = place, start, hole
        self.home, self.value, self.seed, self.sequences = home, value, seed, sequences
        self.strikes = strike_sets(seed + streams.FIRST_SHOTS, FIRST_SETS, FIRST_STRIKES)
        self._fixed: dict[bytes, Sequences] = {}

    @property
    def board(self) -> Board:
        return self.place.board

    @property
    def wooded(self) -> bool:
        return len(self.board.raster.crowns) > 0

    def alone(self) -> Plays:
        """The same on one thread, to be one of several works done at once."""
        one = copy(self)  # what is played once is shared
        one.place = replace(self.place, threads=1)
        return one

    def play(self, choice: Choice) -> estimate.PlayedChoice:
        """Value the first shot over even strikes and play the sequences."""
        values = self.place.values(choice.action[None], self.value, self.strikes)[0]
        sequences = self.place.play(
            choice.action,
            self.home,
            self.value,
            seed=self.seed + streams.PLAYS,
            sequences=self.sequences,
            evened=True,
        )
        return estimate.played(values, self.value, sequences)

    def fixed(self, choice: Choice) -> Sequences:
        """The fixed strikes of a choice, played once."""
        key = choice.action.tobytes()
        if key not in self._fixed:
            self._fixed[key] = self.place.play(
                choice.action, self.home, self.value, seed=REACH_SEED, sequences=REACH_STRIKES, most_strokes=1
            )
        return self._fixed[key]

    def clear_beyond_yd(self, choices: list[Choice]) -> tuple[int, float]:
        """Nobody ahead nearer than this: the longest of the fixed strikes of every club shown, and more.

        And its standard error.
        """
        away = np.zeros(REACH_STRIKES)
        for choice in choices:
            strikes = self.fixed(choice)
            for ends in (strikes.rest_yd, strikes.landing_yd):
                away = np.maximum(away, np.hypot(ends[:, 0] - self.place.x_yd, ends[:, 1] - self.place.y_yd))
        longest = largest(away)
        return math.ceil(longest.value + AHEAD_MORE_YD), longest.standard_error

    def alternative(
        self,
        choice: Choice,
        one: estimate.PlayedChoice,
        difference: Estimate,
        asked: bool,
        given: bool,
        hits: tuple[np.ndarray, np.ndarray] | None = None,
        band: TieBand | None = None,
    ) -> Alternative:
        """Count one alternative's sequences; `hits` of a goal are its own and the recommended one's.

        `band` is of the aims that do as well, by the average when left out.
        """
        swung = club_and_line(self.hole, self.place, choice)
        line = AimLine(self.place.x_yd, self.place.y_yd, swung.aim_bearing_deg)
        band = band or tie_band(self.place, choice, self.value, self.seed)
        return Alternative(
            difference=difference,
            aims_yd=band.ends_yd,
            aims_error_yd=band.errors_yd,
            aim_given=given,
            asked=asked,
            action=choice.action,
            goal=None if hits is None else estimate.share(hits[0]),
            goal_difference=None if hits is None else chance_difference(*hits),
            **vars(swung),
            **self._strokes(one),
            **self._finishes(one.sequences, line),
            **self._ground(choice, one.sequences, line),
        )

    def _strokes(self, one: estimate.PlayedChoice) -> dict[str, Any]:
        """What it comes to on the hole, with the strokes already played."""
        shift = self.start.played or 0
        scores = np.rint(one.sequences.score).astype(np.int64) + shift
        return {
            "map_score": estimate.by_map(mean(one.first)).plus(shift),
            "score": estimate.score(one).plus(shift),
            "chances": self._chances(one.sequences, scores),
            "worst_tenth_mean": estimate.worst_tenth_mean(scores),
            "scores": scores,
            "first": one.first + shift,
            "rest": one.rest,
        }

    def _finishes(self, played: Sequences, line: AimLine) -> dict[str, Any]:
        """Where the first shot comes to rest."""
        surfaces, features = played.surface, played.feature
        _, across = line.seen(*played.rest_yd.T)
        return {
            "finish": {
                WORDS[surface]: estimate.share(surfaces == surface)
                for surface in Surface
                if (surfaces == surface).any()
            },
            "features": {
                feature.name: estimate.share(features == k) for k, feature in enumerate(self.hole.features)
            },
            "leaves_yd": {f"p{tenths}0": quantile(played.leaves_yd, tenths / 10.0) for tenths in (1, 5, 9)},
            "finishes_yd": played.rest_yd,
            "landings_yd": played.landing_yd,
            "middle_right_yd": quantile(across, 0.5),
            "wide_yd": quantile(np.abs(across), 0.95),
        }

    def _ground(self, choice: Choice, played: Sequences, line: AimLine) -> dict[str, Any]:
        """What the ground ahead gives it, and what it can reach."""
        bag, fixed = self.board.bag, self.fixed(choice)
        return {
            "room": find_room(self.board.raster, self.hole, line, played.rest_yd),
            "reach": find_reach(self.hole, bag, choice.row, line, fixed.landing_yd, fixed.rest_yd),
        }

    def _chances(self, rows: Sequences, scores: np.ndarray) -> dict[str, Estimate | None]:
        par, played = self.hole.par, self.start.played
        known = played is not None
        on_green = rows.to_green + (played or 0)
        share = estimate.share
        drive = par > 3 and played == 0
        return {
            "birdie_or_better": share(scores < par) if known else None,
            "par": share(scores == par) if known else None,
            "bogey": share(scores == par + 1) if known else None,
            "double_or_worse": share(scores > par + 1) if known else None,
            "penalty_this_shot": share(rows.penalty_first > 0.0),
            "penalty_on_hole": share(rows.penalties > 0.0),
            "fairway": share(rows.surface == Surface.FAIRWAY) if drive else None,
            "green_in_regulation": share(on_green <= par - 2) if known else None,
            "branch_this_shot": share(rows.branch > 0.0) if self.wooded else None,
            "three_putt": share(rows.putts >= 3.0),
        }
