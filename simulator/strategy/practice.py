"""What practice is worth: strokes gained by one thing better, everything else as it is.

The better player keeps to the plan, but for his first shot and, where he is longer, for the shorter club that
now does; the map is worked out anew for him and full sequences are played with the same luck as the player's
own. So a gain is that of play that was really played, and a new plan would bring as much or more.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ..conditions import Conditions
from ..engine import Effort, default_threads, hold_plan, revalue_map
from ..errors import UsageError
from ..hole.model import Hole
from ..player.model import Player
from ..tables.bag import Bag, make_bag
from ..tables.game import make_board
from ..tables.luck import strike_sets
from . import estimate, streams
from .better import CHANGES, Change, biased, unbiased
from .errorbars import Estimate, total
from .handed import check_each, check_kind, check_whole
from .plays import FIRST_SETS, FIRST_STRIKES
from .question import MOST_SEED, Clock, Progress, Question, question, silent, solve
from .search import NEAR_BEST, search
from .tries import Place, shaped

ROUND = 18
"""Holes of a round."""

BIAS = "bias_removed"
"""The change that is held against a player who does not aim off for his bias: one who does has it already."""

BIAS_WORDS = "bias gone, or aimed off for, against aiming as if there were none"

REPLAY_GUESS = 5.0
"""Strokes a replay is taken for until the first shot is valued: it parts reliefs alone (assumed)."""

EFFORT = Effort(many=128, again=0)
"""How hard a held plan is valued anew: by half the strikes of a map, for every change alike."""


@dataclass(frozen=True)
class Gain:
    """What one change is worth.

    Attributes
    ----------
    what, words : str
        Key and words of the change.
    per_round : Estimate
        Strokes gained in 18 holes; fewer strokes are positive.
    by_hole : tuple of Estimate
        Strokes gained on each hole.
    """

    what: str
    words: str
    per_round: Estimate
    by_hole: tuple[Estimate, ...]

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "what": self.what,
            "words": self.words,
            "strokes_per_round": self.per_round.value,
            "standard_error": self.per_round.standard_error,
            "by_hole": [one.value for one in self.by_hole],
            "by_hole_standard_error": [one.standard_error for one in self.by_hole],
        }


@dataclass(frozen=True)
class Practice:
    """What practice is worth to a player on some holes.

    Attributes
    ----------
    player : Player
    holes : tuple of Hole
    conditions : tuple of Conditions
        Hole by hole.
    scores : tuple of Estimate
        Expected strokes of the player as he is, hole by hole.
    gains : tuple of Gain
        Greatest first.
    left_out : tuple of str
        Changes that mean nothing for this player, a line each.
    seed, sequences : int
    """

    player: Player
    holes: tuple[Hole, ...]
    conditions: tuple[Conditions, ...]
    scores: tuple[Estimate, ...]
    gains: tuple[Gain, ...]
    left_out: tuple[str, ...]
    seed: int
    sequences: int

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "schema": "holesim-practice-1",
            "player": self.player.name,
            "holes": [hole.name for hole in self.holes],
            "scores": [score.value for score in self.scores],
            "scores_standard_error": [score.standard_error for score in self.scores],
            "gains": [gain.to_dict() for gain in self.gains],
            "left_out": list(self.left_out),
            "seed": self.seed,
            "sequences": self.sequences,
        }


def practice(
    holes: Sequence[Hole] | Hole,
    player: Player,
    *,
    conditions: Conditions | Sequence[Conditions] | None = None,
    changes: Mapping[str, Change] = CHANGES,
    sequences: int = 5_000,
    seed: int = 1,
    progress: Progress | None = None,
    threads: int | None = None,
) -> Practice:
    """What each change of a player is worth over some holes, and in proportion over a round.

    Parameters
    ----------
    holes : Hole or sequence of Hole
        Tee and pin chosen.
    conditions : Conditions or sequence of Conditions, optional
        Of all holes, or of each in its own frame.
    changes : mapping of str to Change
        What is tried; the bias is tried too, if there is one.
    sequences : int
        Full sequences on each hole, the same luck for every change.

    Raises
    ------
    UsageError
        No hole, another number of days than of holes, or numbers out of their range.
    """
    check_kind("player", player, Player, "load_player gives one")
    holes = check_each("hole", holes, Hole, "load_hole gives one")
    if not holes:
        raise UsageError("no hole to play: name a hole file, or a folder with hole files in it")
    check_whole("seed", seed, 0, MOST_SEED)
    days = check_each("conditions", conditions or Conditions(), Conditions, "conditions_from gives them")
    days = days * len(holes) if isinstance(conditions, Conditions | None) else days
    if len(days) != len(holes):
        raise UsageError(f"{len(days)} conditions; allowed: one of all holes, or {len(holes)}, one of each")
    workers = threads or default_threads()
    say = progress or silent
    tried = {key: change for key, change in changes.items() if not change.nothing(player)}
    left_out = [f"{change.words}: {why}" for change in changes.values() if (why := change.nothing(player))]
    if not biased(player):
        left_out.append(f"{BIAS_WORDS}: the player's file has no bias")
    scores: list[Estimate] = []
    gained: dict[str, list[Estimate]] = {}
    for k, (hole, day) in enumerate(zip(holes, days, strict=True)):
        own_seed = streams.of_hole(seed, k)
        say(f"{hole.name}: as the player is")
        ask = question(
            "practice", hole, player, conditions=day, sequences=sequences, seed=own_seed, threads=workers
        )
        own = solve(ask, Clock(say))
        today = _Today(hole, own, day, own_seed, sequences)
        base = today.played(own)
        scores.append(estimate.score(base))
        for key, change in tried.items():
            say(f"{hole.name}: {change.words}")
            theirs = today.played(today.changed(change.make(player), change.shorter))
            gained.setdefault(key, []).append(estimate.difference(base, theirs))
        if biased(player):
            say(f"{hole.name}: {bias_words(player)}")
            gained.setdefault(BIAS, []).append(today.bias(player, ask))
    words = {**{k: c.words for k, c in tried.items()}, BIAS: bias_words(player)}
    gains = [Gain(key, words[key], _round(by_hole), tuple(by_hole)) for key, by_hole in gained.items()]
    gains.sort(key=lambda gain: -gain.per_round.value)
    return Practice(
        player, holes, days, tuple(scores), tuple(gains), tuple(left_out), seed, sequences
    )


def bias_words(player: Player) -> str:
    """What goes with the bias: of a player who is off in length alone no line is to be moved.

    The levels' irons come up a little short on average, so that most players have a bias in length.
    """
    if any(club.bias_right_deg != 0.0 for club in player.clubs):
        return BIAS_WORDS
    return "bias in length gone, or clubbed for, against clubbing as if there were none"


class _Today:
    """One hole on one day, played by one player and by better ones with the same luck."""

    def __init__(self, hole: Hole, own: Place, day: Conditions, seed: int, sequences: int) -> None:
        self.hole, self.own, self.day, self.seed, self.sequences = hole, own, day, seed, sequences
        self.strikes = strike_sets(seed + streams.FIRST_SHOTS, FIRST_SETS, FIRST_STRIKES)

    def played(self, place: Place) -> estimate.PlayedChoice:
        """The best first shot valued and full sequences played."""
        return self._sequences(place, self._best(place))

    def _best(self, place: Place) -> np.ndarray:
        """The action that the map of a place scores best, float64[3] as of a `Choice`."""
        rows = place.board.allowed(place.lie)
        return search(place, self.seed, rows, keep_within=NEAR_BEST, keep_most=2)[0].action

    def _sequences(self, place: Place, action: np.ndarray) -> estimate.PlayedChoice:
        value = float(place.scores(action[None], REPLAY_GUESS, self.strikes)[0])
        values = place.values(action[None], value, self.strikes)[0]
        sequences = place.play(
            action, action, value, seed=self.seed + streams.PLAYS, sequences=self.sequences, evened=True
        )
        return estimate.played(values, value, sequences)

    def changed(self, player: Player, shorter: int) -> Place:
        """The place on a board of another player, the own plan held but for clubs up to so many shorter."""
        own = self.own
        bag = make_bag(player, self.day, own.board.raster, own.threads, shaped=shaped(own))
        board = make_board(self.hole, bag, own.board.raster, nodes=own.board.nodes)
        also = _clubs_near(own.board.bag, shorter) if shorter else None
        plan = hold_plan(board, own.board, seed=self.seed, effort=EFFORT)
        return replace(own, board=revalue_map(board, plan, also=also, threads=own.threads))

    def bias(self, player: Player, ask: Question) -> Estimate:
        """Plan and play as if there were no bias: without it, less with it."""
        none = solve(replace(ask, player=unbiased(player)), Clock())
        action = self._best(none)
        own = self.own
        board = make_board(self.hole, own.board.bag, own.board.raster)
        plan = hold_plan(board, none.board, seed=self.seed, effort=EFFORT)
        unaware = self._sequences(replace(own, board=revalue_map(board, plan, threads=own.threads)), action)
        return estimate.difference(unaware, self._sequences(none, action))


def _clubs_near(bag: Bag, shorter: int) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """Clubs tried beside the held one: up to so many shorter."""
    steps = range(1, shorter + 1)
    full: dict[str, list[int]] = {}
    for row, shot in enumerate(bag.shots.shots[: bag.shots.first_part]):
        full.setdefault(shot.flight, []).append(row)
    to = np.tile(np.arange(len(bag.shots)), (len(steps), 1))
    for rows in full.values():
        for k, step in enumerate(steps):
            for at, row in enumerate(rows):
                to[k, row] = rows[min(at + step, len(rows) - 1)]

    def also(nodes: np.ndarray, plan: np.ndarray) -> np.ndarray:
        part = plan[:, 0] < 0.0
        rows = np.where(part, 0, plan[:, 0]).astype(int)
        out = np.repeat(plan[:, None], len(steps), axis=1)
        out[:, :, 0] = np.where(part[:, None], plan[:, :1], to[:, rows].T)
        return out

    return also


def _round(by_hole: Sequence[Estimate]) -> Estimate:
    """In proportion over 18 holes; holes err independently of each other."""
    return total(by_hole).times(ROUND / len(by_hole))
