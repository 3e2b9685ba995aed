"""Clubs looked at for a goal: those that reach it most often on their line for it, whatever their average."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from ..engine import PART_SWING, PUNCH_SWING
from ..tables.shots import Shot
from .asked import MOST_ALTERNATIVES, Found
from .goal_lines import Reacher, Seen, chosen
from .goals import Goal
from .result import Start
from .search import coarse_strikes, search
from .tries import COARSE_AIMS_DEG, Choice, Place

PART_STEPS = (0.25, 0.5, 0.75)
"""Part swings tried, as shares of the way through the range."""


def reacher(place: Place, found: Found, goal: Goal, start: Start, seed: int) -> Reacher:
    """What counts how often a choice reaches the goal."""
    return Reacher(place, goal, start, found.home.action, found.value, seed)


def with_goal(look: Reacher, found: Found, *, asked: bool) -> Found:
    """The alternatives for a goal, each on its line for it (unless its aim was given), and the best of them.

    The club of the lowest average stays on that line too, so that the answer can say what the goal costs. A
    club that was not asked about is added to a comparison only when it reaches the goal most often.
    """
    shots = look.place.board.bag.shots.shots
    given = {id(found.choices[k]) for k in found.given}
    tried = [*_every_club(look.place, look.seed), *_part_swings(look.place, found, look.goal, look.seed)]
    seen = {id(c): look.first_look(c, moved=id(c) not in given) for c in (*found.choices, *tried)}
    tried.sort(key=lambda c: -seen[id(c)].chance)
    names = {_swing(shots[c.row]) for c in found.choices}
    more: list[Choice] = []
    for c in tried:  # a club in its best flight, as everywhere, and its best part swing
        if _swing(shots[c.row]) not in names:
            names.add(_swing(shots[c.row]))
            more.append(c)
    kept = list(found.choices)
    if asked:
        most = max(seen[id(c)].chance for c in found.choices)
        more = [c for c in more[:1] if seen[id(c)].chance > most]
    else:
        ranked = sorted((*kept, *more), key=lambda c: (c is not found.home, -seen[id(c)].chance))
        first = {id(c) for c in ranked[:MOST_ALTERNATIVES]}
        kept, more = [c for c in kept if id(c) in first], [c for c in more if id(c) in first]
    return _on_their_lines(look, found, [*kept, *more], seen)


def _swing(shot: Shot) -> tuple[str, bool]:
    """A club, and whether it is hit full."""
    return shot.club.name, shot.flight not in ("part", "gripped", "punch")


def _on_their_lines(look: Reacher, found: Found, kept: list[Choice], seen: dict[int, Seen]) -> Found:
    """The choices on their lines for the goal, that of the lowest average on both of its lines."""
    asked, given = ({id(found.choices[k]) for k in some} for some in (found.asked, found.given))
    choices: list[Choice] = []
    hits: list[np.ndarray] = []
    of: list[Choice] = []  # what each was before it was moved
    for c in kept:
        line, reached = (c, look.own(c)) if id(c) in given else look.decide(c, seen[id(c)].aim)
        if c is found.home and line is not c:
            choices, hits, of = [*choices, c], [*hits, look.own(c)], [*of, c]
        choices, hits, of = [*choices, line], [*hits, reached], [*of, c]
    return replace(
        found,
        choices=choices,
        asked=frozenset(k for k, c in enumerate(of) if id(c) in asked),
        given=frozenset(k for k, c in enumerate(of) if id(c) in given),
        averages={k: c for k, c in enumerate(of) if choices[k] is not c},
        chosen=chosen(choices, hits),
    )


def _every_club(place: Place, seed: int) -> list[Choice]:
    """Every shot the lie allows, each on its best line."""
    rows = place.board.allowed(place.lie)
    return search(place, seed, rows, keep_within=0.0, keep_most=1, must=frozenset(rows))


def _part_swings(place: Place, found: Found, goal: Goal, seed: int) -> list[Choice]:
    """Part swings into the range, each on its best line; none when it is a full shot away."""
    if goal.low_yd is None or goal.high_yd is None:
        return []
    board, distance = place.board, place.distance_yd
    aims = np.radians(COARSE_AIMS_DEG)
    out = []
    for code in (PART_SWING, PUNCH_SWING):
        longest = board.longest_yd(code, place.lie)
        for step in PART_STEPS:
            into = goal.low_yd + step * (goal.high_yd - goal.low_yd)
            carry = into if goal.kind == "land" else distance - into
            if not 1.0 < carry <= longest:
                continue
            reach = carry - distance
            actions = np.array([(code, aim, reach) for aim in aims])
            scores = place.scores(actions, found.value, coarse_strikes(seed))
            k = int(np.argmin(scores))
            row = board.part_row(code, place.lie, distance + reach)
            out.append(Choice(row, actions[k], carry, float(scores[k])))
    return out
