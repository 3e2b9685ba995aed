"""Playing and counting the alternatives of one question."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

import numpy as np

from ..engine import Sequences, play
from ..hole.model import Hole
from ..hole.surfaces import WORDS, Surface
from ..tables.game import Board
from ..tables.luck import strike_sets
from ..units import one_turn_deg
from . import estimate, goals
from .errorbars import Estimate, mean, quantile
from .pointing import point
from .reach import find_reach
from .result import Alternative, Start
from .room import along_and_across, find_room
from .search import Choice, Place, tie_band_yd
from .today import carries_today_yd

FIRST_SETS, FIRST_STRIKES = 16, 1024
"""Scrambles and strikes in each that value the first shot of an alternative."""

REACH_STRIKES, REACH_SEED = 65_536, 20_240
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
        self.strikes = strike_sets(seed + 22, FIRST_SETS, FIRST_STRIKES)
        self._fixed: dict[bytes, Sequences] = {}

    @property
    def board(self) -> Board:
        return self.place.board

    @property
    def wooded(self) -> bool:
        return len(self.board.raster.crowns) > 0

    def _sequences(self, action: np.ndarray, seed: int, count: int) -> Sequences:
        place = self.place
        return play(
            self.board,
            place.x_yd,
            place.y_yd,
            place.lie,
            action,
            self.home,
            self.value,
            seed=seed,
            sequences=count,
            threads=place.threads,
            evened=True,
        )

    def play(self, choice: Choice) -> estimate.PlayedChoice:
        """Value the first shot over even strikes and play the sequences."""
        values = self.place.values(choice.action[None], self.value, self.strikes)[0]
        return estimate.played(
            values, self.value, self._sequences(choice.action, self.seed + 23, self.sequences)
        )

    def fixed(self, choice: Choice) -> Sequences:
        """The fixed strikes of a choice, played once."""
        key = choice.action.tobytes()
        if key not in self._fixed:
            self._fixed[key] = reach(self.place, choice.action, self.home, self.value)
        return self._fixed[key]

    def clear_beyond_yd(self, choices: list[Choice]) -> int:
        """Nobody ahead nearer than this: the longest of the fixed strikes of every club shown, and more."""
        longest = 0.0
        for choice in choices:
            strikes = self.fixed(choice)
            for ends in (strikes.rest_yd, strikes.landing_yd):
                away = np.hypot(ends[:, 0] - self.place.x_yd, ends[:, 1] - self.place.y_yd)
                longest = max(longest, float(away.max()))
        return math.ceil(longest + AHEAD_MORE_YD)

    def alternative(
        self,
        choice: Choice,
        one: estimate.PlayedChoice,
        difference: Estimate,
        asked: bool,
        given: bool,
        hits: tuple[np.ndarray, np.ndarray] | None = None,
        band_yd: tuple[float, float] | None = None,
    ) -> Alternative:
        """Count one alternative's sequences; `hits` of a goal are its own and the recommended one's.

        `band_yd` are the first and the last aim that do as well, by the average when left out.
        """
        bearing = self._bearing_deg(choice)
        return Alternative(
            difference=difference,
            aims_yd=band_yd or tie_band_yd(self.place, choice, self.value, self.seed),
            aim_given=given,
            asked=asked,
            goal=None if hits is None else goals.chance(hits[0]),
            goal_difference=None if hits is None else goals.chance_difference(*hits),
            **self._line(choice, bearing),
            **self._strokes(one),
            **self._finishes(one.sequences, bearing),
            **self._ground(choice, one.sequences, bearing),
        )

    def _bearing_deg(self, choice: Choice) -> float:
        ahead = math.atan2(self.hole.pin.x_yd - self.start.x_yd, self.hole.pin.y_yd - self.start.y_yd)
        return one_turn_deg(math.degrees(ahead + float(choice.action[1])))

    def _line(self, choice: Choice, bearing_deg: float) -> dict[str, Any]:
        """What is swung, and where it is aimed."""
        bag, here = self.board.bag, (self.start.x_yd, self.start.y_yd)
        shot = bag.shots.shots[choice.row]
        swung = replace(shot, carry_yd=choice.carry_yd)
        down = carries_today_yd(swung, bag.conditions, bearing_deg, self.hole, here)
        return {
            "club": shot.club.name,
            "flight": shot.flight,
            "carry_yd": choice.carry_yd,
            "today_carry_yd": down,
            "aim_offset_yd": choice.carry_yd * math.sin(float(choice.action[1])),
            "aim_bearing_deg": bearing_deg,
            "point": point(self.hole, *here, bearing_deg, choice.carry_yd, down),
        }

    def _strokes(self, one: estimate.PlayedChoice) -> dict[str, Any]:
        """What it comes to on the hole, with the strokes already played."""
        shift = self.start.played or 0
        score = estimate.score(one)

        def shifted(figure: Estimate) -> Estimate:
            return replace(figure, value=figure.value + shift)

        scores = np.rint(one.sequences.score).astype(np.int64) + shift
        return {
            "map_score": shifted(mean(one.first)),
            "score": shifted(score),
            "chances": self._chances(one.sequences, scores),
            "worst_tenth_mean": estimate.worst_tenth_mean(scores),
            "scores": scores,
            "first": one.first + shift,
            "rest": one.rest,
        }

    def _finishes(self, played: Sequences, bearing_deg: float) -> dict[str, Any]:
        """Where the first shot comes to rest."""
        surfaces, features = played.surface, played.feature
        _, across = along_and_across(played.rest_yd, self.start.x_yd, self.start.y_yd, bearing_deg)
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

    def _ground(self, choice: Choice, played: Sequences, bearing_deg: float) -> dict[str, Any]:
        """What the ground ahead gives it, and what it can reach."""
        at = self.start.x_yd, self.start.y_yd, bearing_deg
        fixed = self.fixed(choice)
        return {
            "room": find_room(self.board.raster, self.hole, *at, played.rest_yd),
            "reach": find_reach(
                self.hole, self.board.bag, choice.row, *at, fixed.landing_yd, fixed.rest_yd
            ),
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


def reach(place: Place, action: np.ndarray, home: np.ndarray, value: float) -> Sequences:
    """The fixed strikes of one action, one shot each: how far and how wide it can go."""
    return play(
        place.board,
        place.x_yd,
        place.y_yd,
        place.lie,
        action,
        home,
        value,
        seed=REACH_SEED,
        sequences=REACH_STRIKES,
        threads=place.threads,
        most_strokes=1,
    )
