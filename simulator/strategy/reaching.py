"""Clubs looked at for a goal: those that reach it most often, whatever their average score."""

from __future__ import annotations

import numpy as np

from ..engine import PART_SWING, PUNCH_SWING, play
from ..hole.model import Hole
from ..tables.luck import strike_sets
from .asked import MOST_SHOWN, Found
from .goals import Goal
from .result import Start
from .search import COARSE_AIMS_DEG, Choice, Place, search

SCREEN_STRIKES = 4096
"""Strikes that tell which clubs reach a goal."""

PART_STEPS = (0.25, 0.5, 0.75)
"""Part swings tried, as shares of the way through the range."""


def with_goal(
    place: Place, found: Found, goal: Goal, hole: Hole, start: Start, seed: int, *, asked: bool
) -> Found:
    """The alternatives found, and those that a goal for this ball asks for.

    A club that was not asked about is added to a comparison only when it reaches the goal most often.
    A target score needs none of this: the brave clubs are worked out as it is.
    """
    if goal.kind == "target":
        return found
    shots = place.board.bag.shots.shots
    tried = [*_every_club(place, seed), *_part_swings(place, found, goal, seed)]
    share = {id(c): _share(place, c, found, goal, hole, start, seed) for c in (*found.choices, *tried)}
    tried.sort(key=lambda c: -share[id(c)])
    names = {shots[c.row].club.name for c in found.choices if shots[c.row].flight != "part"}
    more: list[Choice] = []
    for c in tried:  # a club in its best flight, as everywhere
        if shots[c.row].club.name not in names:
            names.add(shots[c.row].club.name)
            more.append(c)
    if asked:
        most = max(share[id(c)] for c in found.choices)
        more = [c for c in more[:1] if share[id(c)] > most]
    kept = list(found.choices)
    if not asked:
        ranked = sorted((*kept, *more), key=lambda c: (c is not found.home, -share[id(c)]))
        chosen = {id(c) for c in ranked[:MOST_SHOWN]}
        kept, more = [c for c in kept if id(c) in chosen], [c for c in more if id(c) in chosen]
    return Found([*kept, *more], found.asked, found.given, found.home, found.value)


def _every_club(place: Place, seed: int) -> list[Choice]:
    """Every shot the lie allows, each on its best line."""
    rows = place.board.allowed(place.lie)
    return search(place, seed, rows, keep_within=0.0, keep_most=1, must=frozenset(rows))[0]


def _part_swings(place: Place, found: Found, goal: Goal, seed: int) -> list[Choice]:
    """Part swings into the range, each on its best line; none when it is a full shot away."""
    if goal.low_yd is None or goal.high_yd is None:
        return []
    board, distance = place.board, place.distance_yd
    aims = np.radians(COARSE_AIMS_DEG)
    out = []
    shots = board.bag.shots
    for code, row, longest in (
        (PART_SWING, shots.first_part, board.longest_part_yd(place.lie)),
        (PUNCH_SWING, shots.first_punch, board.longest_punch_yd(place.lie)),
    ):
        for step in PART_STEPS:
            into = goal.low_yd + step * (goal.high_yd - goal.low_yd)
            carry = into if goal.kind == "land" else distance - into
            if not 1.0 < carry <= longest:
                continue
            actions = np.array([(code, aim, carry - distance) for aim in aims])
            scores = place.scores(actions, found.value, strike_sets(seed + 11, 2, 64))
            k = int(np.argmin(scores))
            out.append(Choice(row, actions[k], carry, float(scores[k])))
    return out


def _share(
    place: Place, choice: Choice, found: Found, goal: Goal, hole: Hole, start: Start, seed: int
) -> float:
    played = play(
        place.board, place.x_yd, place.y_yd, place.lie, choice.action, found.home.action, found.value,
        seed=seed + 25, sequences=SCREEN_STRIKES, threads=place.threads, most_strokes=1,
    )  # fmt: skip
    return float(goal.hits(played, hole, start).mean())
