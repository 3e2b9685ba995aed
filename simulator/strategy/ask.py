"""The question: which club, which line? Map, search, then independent sequences."""

from __future__ import annotations

import math
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..conditions import Conditions
from ..engine import MOST_STROKES, Effort, Sequences, default_threads, must_compile, play, solve_map
from ..errors import NoAnswerError, UsageError
from ..hole.model import Hole
from ..hole.surfaces import WORDS, Lie, Surface
from ..player.model import Player
from ..tables.bag import make_bag
from ..tables.game import CELL_YD, Board, make_board, make_sketch
from ..tables.luck import strike_sets
from ..tables.nodes import COARSE_YD, FINE_YD
from ..tables.rasters import ground_raster
from ..tables.shots import Shot
from . import estimate
from .day import day_note
from .places import club_and_aim, club_and_flight, tee_start
from .result import TIE_STROKES, Alternative, Answer, Estimate, Start
from .search import Choice, Place, given_aim, search, tie_band_yd

FIRST_SETS, FIRST_STRIKES = 16, 1024
"""Scrambles and strikes in each that value the first shot of an alternative."""

MOST_SHOWN = 6
"""Alternatives worked out in full when nobody named clubs."""

WORTH_SHOWING = 0.6
"""A club farther behind the best than this is not an alternative [strokes]."""

REACH_STRIKES, REACH_SEED = 65_536, 20_240
"""Strikes that measure how far anybody ahead must be, the same whatever the question's seed."""

AHEAD_MORE_YD = 20
"""Added to the longest of them (people are not a statistic)."""

MAP_TOLERANCE = 0.015
"""Map and sequences farther apart than this and three standard errors: a warning [strokes]."""

LEAST_SEQUENCES, MOST_SEQUENCES = 100, 1_000_000

Progress = Callable[[str], None]


def plan(
    hole: Hole,
    player: Player,
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    progress: Progress | None = None,
    threads: int | None = None,
) -> Answer:
    """The best club and line from a place, and every leading alternative.

    Parameters
    ----------
    hole : Hole
        With the tee and pin in use chosen (`Hole.with_tee`, `Hole.with_pin`).
    player : Player
    conditions : Conditions, optional
        Wind, air, firmness and green speed; still air on medium ground when left out.
    start : Start, optional
        Where the question is asked from; the tee in use when left out.
    sequences : int
        Full sequences played for each alternative.
    seed : int
        Same seed, same answer, whatever the thread count.
    progress : callable, optional
        Told in a few words what is being waited for.
    threads : int, optional
        All cores when left out.

    Raises
    ------
    UsageError
        A number out of its range, or a place nobody can play from.
    NoAnswerError
        No club of the bag may be played from there.
    """
    return _answer("plan", hole, player, [], conditions, start, sequences, seed, progress, threads)


def compare(
    hole: Hole,
    player: Player,
    clubs: Sequence[str],
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    progress: Progress | None = None,
    threads: int | None = None,
) -> Answer:
    """ "Driver or 3-wood here?": the clubs asked about, each at its best aim (or at the one given).

    Parameters
    ----------
    clubs : sequence of str
        Club names, or with an aim: ``"driver@-8"`` is 8 yards left of the pin line at stock carry,
        ``"driver@-3deg"`` three degrees left.

    Other parameters, and errors: see `plan`. A better club that nobody asked about is added.
    """
    if not clubs:
        raise UsageError("no club to compare: name at least one, for example driver")
    return _answer(
        "compare", hole, player, list(clubs), conditions, start, sequences, seed, progress, threads
    )


def _lie(start: Start) -> Lie:
    by_word = {lie.name.lower().replace("_", " "): lie for lie in Lie if lie is not Lie.GREEN}
    if start.lie not in by_word:
        raise UsageError(f"lie {start.lie!r} is none to ask from; allowed: {', '.join(by_word)}")
    return by_word[start.lie]


def _check(sequences: int, seed: int) -> None:
    if not LEAST_SEQUENCES <= sequences <= MOST_SEQUENCES:
        raise UsageError(f"sequences {sequences}; allowed: {LEAST_SEQUENCES} to {MOST_SEQUENCES}")
    if not 0 <= seed < 2**32:
        raise UsageError(f"seed {seed}; allowed: 0 to 4294967295")


def _answer(
    question: str,
    hole: Hole,
    player: Player,
    clubs: list[str],
    conditions: Conditions | None,
    start: Start | None,
    sequences: int,
    seed: int,
    progress: Progress | None,
    threads: int | None,
) -> Answer:
    _check(sequences, seed)
    threads = threads or default_threads()
    say = progress or (lambda message: None)
    clock = _Clock()
    if must_compile():
        say("compiling the simulation for this machine, once: about 25 s")
    start = start or tee_start(hole, 0)
    lie = _lie(start)
    say("flights and putts")
    conditions = Conditions() if conditions is None else conditions
    if not isinstance(conditions, Conditions):
        found = str(conditions)[:60]
        raise UsageError(f"conditions {found!r}; allowed: simulator.conditions.Conditions, or None")
    raster = ground_raster(hole, CELL_YD)
    low = any(club_and_flight(club_and_aim(text)[0])[1] == "low" for text in clubs)
    bag = make_bag(player, conditions, raster, threads, shaped=low)
    wanted = [_asked(player, text, bag.shots.shots[: bag.shots.first_part]) for text in clubs]
    clock.lap("bag")
    say("value map")
    empty = make_board(hole, bag, raster)
    board = solve_map(empty, sketch=make_sketch(empty, hole), seed=seed, threads=threads)
    clock.lap("value_map")
    say("clubs and lines")
    place = Place(board, start.x_yd, start.y_yd, int(lie), threads)
    choices, asked, given, home, value = _choices(place, seed, wanted)
    if value > MOST_STROKES:
        raise NoAnswerError(
            f"no shot of this bag gets home from {start.words}: {MOST_STROKES} strokes would not be enough"
        )
    clock.lap("search")
    say("sequences")
    one = _Work(place, start, hole, home.action, value, seed, sequences)
    played = [one.play(choice) for choice in choices]
    clock.lap("sequences")
    scores = [estimate.score(p) for p in played]
    best = _recommended(choices, played, home)
    order = [best] + sorted((k for k in range(len(choices)) if k != best), key=lambda k: scores[k].value)
    differences = {k: estimate.difference(played[k], played[best]) for k in order}
    limit = estimate.clear_multiple(FIRST_SETS)
    tied = tuple(
        n
        for n, k in enumerate(order)
        if k == best or abs(differences[k].value) < max(TIE_STROKES, limit * differences[k].standard_error)
    )
    alternatives = tuple(
        one.alternative(choices[k], played[k], differences[k], k in asked, k in given) for k in order
    )
    ahead = one.clear_beyond_yd(choices)
    clock.lap("figures")
    return Answer(
        question=question,
        hole=hole,
        player=player,
        conditions=conditions,
        start=start,
        seed=seed,
        sequences=sequences,
        value_map_score=value + (start.played or 0),
        recommended=0,
        tied=tied,
        alternatives=alternatives,
        clear_beyond_yd=ahead,
        day=day_note(bag, choices[best].row, alternatives[0].aim_bearing_deg),
        warnings=_warnings(choices, played, order),
        settings=_settings(),
        seconds=clock.laps,
    )


class _Clock:
    """Where the time goes."""

    def __init__(self) -> None:
        self.last = time.perf_counter()
        self.laps: dict[str, float] = {}

    def lap(self, name: str) -> None:
        now = time.perf_counter()
        self.laps[name] = now - self.last
        self.last = now


@dataclass(frozen=True)
class _Asked:
    """A club as somebody typed it: the shot rows meant, and the aim if one was given."""

    rows: tuple[int, ...]
    aim_yd: float | None
    aim_deg: float | None


def _asked(player: Player, text: str, shots: Sequence[Shot]) -> _Asked:
    """Shot rows and aim of a club as typed; without a flight word every way the player hits it is meant."""
    name, aim_yd, aim_deg = club_and_aim(text)
    name, flight = club_and_flight(name)
    club = player.club(name)
    if flight is not None and flight not in club.flights:
        raise UsageError(
            f"{club.name} {flight}: not in this player's bag; allowed: {', '.join(club.flights)}"
        )
    rows = tuple(k for k, shot in enumerate(shots) if shot.club is club and flight in (None, shot.flight))
    return _Asked(rows, aim_yd, aim_deg)


def _choices(
    place: Place, seed: int, wanted: list[_Asked]
) -> tuple[list[Choice], set[int], set[int], Choice, float]:
    """Choices to work out, which were asked for, which had their aim given, the map's own, its value."""
    rows = place.board.allowed(place.lie)
    bag = place.board.bag
    for club in wanted:
        if not set(club.rows) & set(rows):
            lie = Lie(place.lie).name.lower().replace("_", " ")
            names = dict.fromkeys(bag.shots.shots[k].club.name for k in rows)
            raise UsageError(
                f"{bag.shots.shots[club.rows[0]].club.name} is not played from {lie}; "
                f"allowed: {', '.join(names)}"
            )
    if not rows:
        raise NoAnswerError("no club of the bag may be played from this lie")
    must = frozenset(row for club in wanted for row in club.rows if row in rows)
    found, _ = search(place, seed, rows, keep_within=WORTH_SHOWING, keep_most=MOST_SHOWN, must=must)
    values = place.values(
        np.array([found[0].action]), found[0].score, strike_sets(seed + 21, FIRST_SETS, FIRST_STRIKES)
    ).mean(axis=1)[0]
    value = float(values[0] / max(1.0 - values[1], 1e-3))
    if not wanted:
        return found, set(), set(), found[0], value
    choices: list[Choice] = []
    asked: set[int] = set()
    given: set[int] = set()
    for club in wanted:
        asked.add(len(choices))
        if club.aim_yd is None and club.aim_deg is None:
            choices.append(next(choice for choice in found if choice.row in club.rows))
        else:
            given.add(len(choices))
            row = next(row for row in club.rows if row in rows)
            choices.append(given_aim(place, row, club.aim_yd, club.aim_deg, value, seed))
    home = found[0]
    if all(choice is not home for choice in choices):
        choices.append(home)
    return choices, asked, given, home, value


def _recommended(choices: list[Choice], played: list[estimate.Played], home: Choice) -> int:
    """The map's choice, unless another is better by two paired standard errors."""
    best = next(k for k, choice in enumerate(choices) if choice is home)
    limit = estimate.clear_multiple(FIRST_SETS)
    for k in range(len(choices)):
        gain = estimate.difference(played[best], played[k])
        if k != best and gain.value > limit * gain.standard_error:
            best = k
    return best


def _warnings(choices: list[Choice], played: list[estimate.Played], order: list[int]) -> tuple[str, ...]:
    out = []
    for k in order:
        rest = estimate.score(played[k])
        gap = float(played[k].rest.mean())
        if abs(gap) > MAP_TOLERANCE + 3.0 * rest.standard_error:
            out.append(
                f"value map and sequences differ by {gap:+.3f} strokes for alternative "
                f"{order.index(k)}: more than their errors allow"
            )
    return tuple(out)


def _settings() -> dict[str, Any]:
    import numba
    import numpy

    from .. import __version__

    effort = Effort()
    return {
        "holesim": __version__,
        "numpy": numpy.__version__,
        "numba": numba.__version__,
        "raster_cell_yd": CELL_YD,
        "node_spacing_yd": COARSE_YD,
        "node_spacing_near_pin_yd": FINE_YD,
        "strikes_screen": effort.few,
        "strikes_decide": effort.more,
        "strikes_value": effort.many,
        "first_shot_scrambles": FIRST_SETS,
        "first_shot_strikes": FIRST_STRIKES,
        "tie_strokes": TIE_STROKES,
    }


class _Work:
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
        )

    def play(self, choice: Choice) -> estimate.Played:
        """Value the first shot over even strikes and play the sequences."""
        values = self.place.values(choice.action[None], self.value, self.strikes)[0]
        return estimate.played(
            values, self.value, self._sequences(choice.action, self.seed + 23, self.sequences)
        )

    def clear_beyond_yd(self, choices: list[Choice]) -> int:
        """Nobody ahead nearer than this: the longest of the fixed strikes of every club shown, and more."""
        longest = 0.0
        for choice in choices:
            strikes = reach(self.place, choice.action, self.home, self.value)
            for ends in (strikes.rest_yd, strikes.landing_yd):
                away = np.hypot(ends[:, 0] - self.place.x_yd, ends[:, 1] - self.place.y_yd)
                longest = max(longest, float(away.max()))
        return math.ceil(longest + AHEAD_MORE_YD)

    def alternative(
        self, choice: Choice, one: estimate.Played, difference: Estimate, asked: bool, given: bool
    ) -> Alternative:
        """Count one alternative's sequences."""
        played, start, hole = one.sequences, self.start, self.hole
        shift = start.played or 0
        score = estimate.score(one)
        scores = np.rint(played.score).astype(np.int64) + shift
        shot = self.board.bag.shots.shots[choice.row]
        aim = float(choice.action[1])
        ahead = math.atan2(hole.pin.x_yd - start.x_yd, hole.pin.y_yd - start.y_yd)
        surfaces, features = played.surface, played.feature
        low, high = tie_band_yd(self.place, choice, self.value, self.seed)
        quantiles = np.quantile(played.leaves_yd, [0.1, 0.5, 0.9])
        return Alternative(
            club=shot.club.name,
            flight=shot.flight,
            carry_yd=choice.carry_yd,
            aim_offset_yd=choice.carry_yd * math.sin(aim),
            aim_bearing_deg=math.degrees(ahead + aim) % 360.0,
            map_score=choice.score + shift,
            score=Estimate(score.value + shift, score.standard_error),
            difference=difference,
            chances=self._chances(played, scores),
            worst_tenth_mean=estimate.worst_tenth_mean(scores),
            finish={
                WORDS[surface]: estimate.share(surfaces == surface)
                for surface in Surface
                if (surfaces == surface).any()
            },
            features={feature.name: estimate.share(features == k) for k, feature in enumerate(hole.features)},
            leaves_yd=dict(zip(("p10", "p50", "p90"), map(float, quantiles), strict=True)),
            aims_yd=(low, high),
            aim_given=given,
            asked=asked,
            finishes_yd=played.rest_yd,
            landings_yd=played.landing_yd,
            scores=scores,
        )

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
