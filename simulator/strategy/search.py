"""Which of what there is to try from a place is best by the value map."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from ..engine import PART_SWING
from ..tables.luck import strike_sets
from ..tables.rows import FIRST_GUESS
from . import streams
from .clubwords import Aim
from .errorbars import Estimate, crossing_error, mean
from .result import TIE_STROKES
from .tries import (
    COARSE_AIMS_DEG,
    Choice,
    Place,
    best_of_each,
    first_lines,
    is_one,
    on_the_map,
    part_families,
    repeated,
    scrambles,
)

FULL_STEPS_DEG, PART_STEPS_DEG, MOST_WALKS = (1.0,), (1.0, 0.5, 0.25), 4
"""Steps by which an aim is walked on while it pays [deg], so many at the most of each: of a full swing and of
a part swing, whose carry is walked on too."""

SETTLE_DEG = np.array([-3.0, -1.5, 0.0, 1.5, 3.0])
"""Aims either side at which a full swing is scored to find where it is best in between [deg]."""

FINE_GAIN = 0.005
"""An aim is walked on while that gains as much [strokes]."""

CLIFF = 0.015
"""Where the parabola's lowest place scores so much worse than the aim found by walking there is a cliff; less
is the luck of the strikes [strokes]."""

FLIGHTS_APART = 0.06
"""Flights of a club farther apart than this by the few strikes are not both settled [strokes]: on eel-trap
the stock and the held-down 6-iron, 0.015 apart, came out either way by the seed."""

PLAIN_TIE = 0.003
"""The stock flight is named before another of the club that is better by no more than this [strokes]: less
than the strikes can tell (their difference errs by 0.005), no reason to teach anybody a held-down wedge."""

NEAR_BEST = 0.3
"""Clubs that few strikes put so near the best are settled by more of them where only the best is wanted
[strokes]; chosen."""

BAND_DEG = np.arange(-12.0, 12.1, 1.0)
"""Aims round the best one at which the tie band is read [deg]."""


def _carry(place: Place, action: np.ndarray) -> float:
    code, reach = float(action[0]), float(action[2])
    if code >= 0.0:
        return place.board.bag.shots.shots[int(code)].carry_yd
    longest = place.board.longest_yd(code, place.lie)
    return min(max(place.distance_yd + reach, 1.0), longest)


def _refine(place: Place, action: np.ndarray, replay: float, strikes: np.ndarray) -> tuple[np.ndarray, float]:
    """Walk aim (and a part swing's carry) on by ever finer steps while it pays; then settle a full swing."""
    score = float(place.scores(action[None], replay, strikes)[0])
    part = bool(action[0] < 0.0)
    for step in PART_STEPS_DEG if part else FULL_STEPS_DEG:
        turn = math.radians(step)
        for _ in range(MOST_WALKS):
            tries = [action + (0.0, turn, 0.0), action - (0.0, turn, 0.0)]
            if part:
                stretch = 0.03 * step * place.distance_yd
                tries += [action + (0.0, 0.0, stretch), action - (0.0, 0.0, stretch)]
            tried = np.array(tries)
            scores = np.where(on_the_map(place, tried), place.scores(tried, replay, strikes), np.inf)
            k = int(np.argmin(scores))
            gain = score - scores[k]
            if gain <= 0.0:
                break
            action, score = tried[k], float(scores[k])
            if gain < FINE_GAIN:
                break
    return (action, score) if part else _settled(place, action, score, replay, strikes)


def _settled(
    place: Place, action: np.ndarray, score: float, replay: float, strikes: np.ndarray
) -> tuple[np.ndarray, float]:
    """A full swing aimed where the parabola through five scores, long steps apart, is lowest.

    So few strikes cannot tell which of two aims close together is better, and the lowest of many noisy scores
    is mostly the luckiest: on ten tees and fairways, six seeds each, that gave away 0.0011 strokes on average
    and 0.008 at the most, this 0.0001 and 0.003 (benchmarks/aim_choice.py). At a cliff, which is no parabola,
    the aim stays. So it does of a part swing, whose pattern is as narrow as the steps: settled, one of 40 yd
    gave away 0.02.
    """
    offsets = np.radians(SETTLE_DEG)
    tries = np.repeat(action[None], offsets.size, axis=0)
    tries[:, 1] += offsets
    scores = place.scores(tries, replay, strikes)
    bend, slope, _ = np.polyfit(offsets, scores, 2)
    lowest = -0.5 * slope / bend if bend > 0.0 else offsets[int(np.argmin(scores))]
    moved = action + (0.0, min(max(lowest, offsets[0]), offsets[-1]), 0.0)
    moved_score = float(place.scores(moved[None], replay, strikes)[0])
    settled = moved_score < score + CLIFF and on_the_map(place, moved[None])[0]
    return (moved, moved_score) if settled else (action, score)


def coarse_strikes(seed: int) -> np.ndarray:
    """The few strikes on which many aims are tried."""
    return strike_sets(seed + streams.COARSE, 2, 64)


def _fine_strikes(seed: int) -> np.ndarray:
    """Those on which an aim is settled."""
    return strike_sets(seed + streams.FINE, 8, 128)


def search(
    place: Place,
    seed: int,
    rows: list[int],
    *,
    keep_within: float,
    keep_most: int,
    must: frozenset[int] = frozenset(),
) -> list[Choice]:
    """Best aim of every club worth showing, best first: the score of the first is the map's of the place.

    Parameters
    ----------
    rows : list of int
        Full shots to try.
    keep_within : float
        Clubs whose coarse score is farther than this from the best are left out [strokes].
    keep_most : int
        So many clubs at the most.
    must : set of int
        Rows kept whatever they score.
    """
    few, more = coarse_strikes(seed), _fine_strikes(seed)
    distance = place.distance_yd
    owners, actions = first_lines(place, rows, part_families(place))
    replay = FIRST_GUESS[0] + FIRST_GUESS[1] * distance
    for _ in range(2):  # the value of a replay is only known once the place has been valued
        scores = place.scores(actions, replay, few)
        replay = float(scores.min())
    bests = [(float(scores[k]), int(owners[k]), actions[k]) for k in best_of_each(owners, scores)]
    bests.sort(key=lambda item: item[0])
    shown: list[tuple[float, int, np.ndarray]] = []
    leading: dict[str, float] = {}  # coarse score of every club's best flight
    for item in bests:
        name = place.board.bag.shots.shots[item[1]].club.name
        leads = name not in leading and len(leading) < keep_most and item[0] - bests[0][0] <= keep_within
        # the few strikes hardly tell the flights of a club apart
        close = name in leading and item[0] - leading[name] <= FLIGHTS_APART
        if item[1] in must or leads or close:
            shown.append(item)
            leading.setdefault(name, item[0])
    settled: list[tuple[Choice, str]] = []
    for _, row, start in shown:
        name = place.board.bag.shots.shots[row].club.name
        action, score = _refine(place, start, replay, more)
        carry = _carry(place, action)
        if action[0] < 0.0:  # its carry may have moved to the next club's
            row = place.board.part_row(float(action[0]), place.lie, carry)
        settled.append((Choice(row, action, carry, score), name))
    choices: list[Choice] = []
    told: set[str] = set()
    for choice, name in _plain_first(place, settled):
        # a club is shown in its best flight, and two clubs' swings short of full may have settled on one
        again = name in told or any(is_one(choice, other) for other in choices)
        if choice.row in must or not again:
            choices.append(choice)
            told.add(name)
    return choices


def _plain_first(place: Place, settled: list[tuple[Choice, str]]) -> list[tuple[Choice, str]]:
    """Choices and their clubs, best first, the stock flight before one that gains next to nothing on it."""
    shots = place.board.bag.shots.shots
    stock = {name: one.score for one, name in settled if shots[one.row].flight == "stock"}

    def rank(item: tuple[Choice, str]) -> tuple[float, bool]:
        one, name = item
        shaped = shots[one.row].flight in ("low", "high")
        tied = shaped and 0.0 <= stock.get(name, math.inf) - one.score <= PLAIN_TIE
        return (stock[name] if tied else one.score), shaped

    return sorted(settled, key=rank)


def given_aim(place: Place, row: int, aim: Aim, replay: float, seed: int) -> Choice:
    """The choice of a club at an aim that was asked for."""
    carry = place.board.bag.shots.shots[row].carry_yd
    action = np.array([float(row), aim.turn_rad(carry), 0.0])
    score = float(place.scores(action[None], replay, _fine_strikes(seed))[0])
    return Choice(row, action, carry, score)


def best_short(place: Place, code: float, replay: float, seed: int) -> Choice:
    """The best swing of a family short of full (its `code`): any carry, any line."""
    _, tries = first_lines(place, [], {0: (code, place.board.longest_yd(code, place.lie))})
    start = tries[int(np.argmin(place.scores(tries, replay, coarse_strikes(seed))))]
    action, score = _refine(place, start, replay, _fine_strikes(seed))
    carry = _carry(place, action)
    return Choice(place.board.part_row(code, place.lie, carry), action, carry, score)


def given_part(
    place: Place, carry_yd: float, aim: Aim | None, replay: float, seed: int, code: float = PART_SWING
) -> Choice:
    """The choice of a part swing, or a punch (its `code`), of a carry asked for, at an aim or its best."""
    few, more = coarse_strikes(seed), _fine_strikes(seed)
    carry = min(carry_yd, place.board.longest_yd(code, place.lie))
    reach = carry - place.distance_yd
    row = place.board.part_row(code, place.lie, place.distance_yd + reach)

    def actions(turns: np.ndarray) -> np.ndarray:
        return np.array([(code, turn, reach) for turn in turns])

    if aim is not None:
        tries = actions(np.array([aim.turn_rad(carry)]))
    else:
        tries = actions(np.radians(COARSE_AIMS_DEG))
        best = tries[int(np.argmin(place.scores(tries, replay, few)))]
        tries = actions(best[1] + np.radians(np.arange(-2.0, 2.1, 0.5)))
    scores = place.scores(tries, replay, more)
    k = int(np.argmin(scores))
    return Choice(row, tries[k], carry, float(scores[k]))


def run_about(good: np.ndarray, at: int) -> tuple[int, int]:
    """First and last index of the unbroken run of true ones about a place; good : bool (n,)."""
    low = high = at
    while low > 0 and good[low - 1]:
        low -= 1
    while high < good.size - 1 and good[high + 1]:
        high += 1
    return low, high


@dataclass(frozen=True)
class TieBand:
    """Aims round a choice that do as well.

    Attributes
    ----------
    ends_yd : tuple of float
        First and last aim offset at the choice's carry.
    errors_yd : tuple of float or None
        Standard error of each; None where nothing farther out was tried.
    """

    ends_yd: tuple[float, float]
    errors_yd: tuple[float | None, float | None]


def tie_band(place: Place, choice: Choice, replay: float, seed: int) -> TieBand:
    """First and last aim round a choice that the map scores within TIE_STROKES of it."""
    turns = np.radians(BAND_DEG)
    actions = np.repeat(choice.action[None], turns.size, axis=0)
    actions[:, 1] += turns
    values = place.values(actions, replay, strike_sets(seed + streams.TIE_BAND, 4, 128))
    scores, strokes = repeated(values), scrambles(values)
    middle = int(np.argmin(np.abs(turns)))
    good = scores <= min(scores[middle], scores.min()) + TIE_STROKES
    good[middle] = True
    behind = strokes - strokes[int(np.argmin(scores))]
    return banded(choice, turns, run_about(good, middle), lambda k: mean(behind[k]))


def banded(
    choice: Choice, turns: np.ndarray, ends: tuple[int, int], worse: Callable[[int], Estimate]
) -> TieBand:
    """The band between two of some turns off a choice's aim.

    Parameters
    ----------
    turns : float64[n]
        [rad], ascending.
    ends : (int, int)
        First and last of them that do as well.
    worse : callable
        By how much the aim at a turn does worse than the best, in whatever is gone by.
    """
    aims = [choice.carry_yd * math.sin(turn) for turn in choice.action[1] + turns]
    errors: list[float | None] = []
    for end, beyond in ((ends[0], ends[0] - 1), (ends[1], ends[1] + 1)):
        known = 0 <= beyond < len(turns)
        step = abs(aims[beyond] - aims[end]) if known else 0.0
        errors.append(crossing_error(worse(end), worse(beyond), step) if known else None)
    return TieBand((aims[ends[0]], aims[ends[1]]), (errors[0], errors[1]))
