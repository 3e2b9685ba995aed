"""A question as it is asked, and the solved hole it is answered from."""

from __future__ import annotations

import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ..conditions import Conditions
from ..engine import compile_ahead, default_threads, must_compile
from ..errors import UsageError, check_text
from ..hole.model import Hole
from ..hole.surfaces import LIE_WORDS, Lie
from ..player.model import Player
from ..tables.bag import make_bag
from ..tables.game import CELL_YD, make_board
from ..tables.rasters import ground_raster
from .aimwords import all_in_degrees
from .asked import asked_club, check_playable
from .clubwords import shot_meant
from .goals import Goal
from .handed import check_kind, check_whole
from .places import tee_start
from .result import Start
from .traffic import solve_from
from .tries import Place

LEAST_SEQUENCES, MOST_SEQUENCES = 100, 1_000_000
MOST_SEED, MOST_THREADS = 2**32 - 1, 256
"""Numbers a question may have; fewer sequences say nothing, a seed has 32 bits."""

COMPILING = "compiling the simulation for this machine, once: up to half a minute"
"""Said before the first answer (`benchmarks/compile_seconds.py` measures it)."""

Progress = Callable[[str], None]


def silent(message: str) -> None:
    """Progress that nobody watches."""


@dataclass(frozen=True)
class Question:
    """Which club, which line?

    Attributes
    ----------
    kind : str
        Who asks: ``"plan"`` or ``"compare"``; ``"review"`` or ``"practice"`` where only the hole is solved.
    clubs : tuple of str
        Clubs asked about, as typed; empty for a plan.
    goal : Goal or None
        What the recommendation goes by; None: the lowest average score.
    against : str or None
        A club, with its aim or at the pin, that is measured beside the alternatives without being one.
    """

    kind: str
    hole: Hole
    player: Player
    clubs: tuple[str, ...]
    conditions: Conditions
    start: Start
    sequences: int
    seed: int
    threads: int
    goal: Goal | None = None
    against: str | None = None

    @property
    def lie(self) -> Lie:
        """The lie asked from."""
        return _lie(self.start)


def question(
    kind: str,
    hole: Hole,
    player: Player,
    clubs: Sequence[str] = (),
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int,
    seed: int,
    threads: int | None = None,
    goal: Goal | None = None,
    against: str | None = None,
) -> Question:
    """A question with its gaps filled and its numbers checked.

    Raises
    ------
    UsageError
        A number out of its range, a hole, player, day, place or goal that is none, a lie nobody asks from, a
        line down no fairway.
    """
    check_kind("hole", hole, Hole, "load_hole gives one")
    check_kind("player", player, Player, "load_player gives one")
    if isinstance(clubs, str):
        raise UsageError(f"clubs {clubs[:60]!r}; allowed: a list of clubs, [{clubs[:60]!r}]")
    for club in (*clubs, *(() if against is None else (against,))):
        check_text("club", club, "driver")
    for name, given, kind_of_it, how in (
        ("conditions", conditions, Conditions, "simulator.conditions.conditions_from gives them from words"),
        ("start", start, Start, "simulator.strategy.places.place gives one from words"),
        ("goal", goal, Goal, "simulator.strategy.goals.read_goal gives one from words"),
    ):
        if given is not None:
            check_kind(name, given, kind_of_it, f"{how}; or None")
    check_whole("sequences", sequences, LEAST_SEQUENCES, MOST_SEQUENCES)
    check_whole("seed", seed, 0, MOST_SEED)
    if threads is not None:
        check_whole("threads", threads, 1, MOST_THREADS)
    start = start or tee_start(hole, 0)
    _lie(start)
    if goal is not None:
        goal.check(start)
    conditions = Conditions() if conditions is None else conditions
    return Question(
        kind,
        hole,
        player,
        all_in_degrees(tuple(clubs), hole, player, start.xy_yd, conditions),
        conditions,
        start,
        sequences,
        seed,
        threads or default_threads(),
        goal,
        against,
    )


def _lie(start: Start) -> Lie:
    by_word = {word: lie for lie, word in LIE_WORDS.items() if lie is not Lie.GREEN}
    if start.lie not in by_word:
        raise UsageError(f"lie {start.lie!r} is none to ask from; allowed: {', '.join(by_word)}")
    return by_word[start.lie]


class Clock:
    """What is being waited for, said as it comes, and where the time went.

    Parameters
    ----------
    progress : callable, optional
        Told in a few words what is being waited for.

    Attributes
    ----------
    laps : dict of str to float
        Seconds of each piece of work.
    """

    def __init__(self, progress: Progress | None = None) -> None:
        self.say = progress or silent
        self.last = time.perf_counter()
        self.laps: dict[str, float] = {}

    def lap(self, name: str) -> None:
        """A piece of work is done."""
        now = time.perf_counter()
        self.laps[name] = now - self.last
        self.last = now


def solve(ask: Question, clock: Clock, others: Sequence[tuple[float, float, int]] = ()) -> Place:
    """The place asked from, on a board whose value map is solved; `others` are played from too."""
    if must_compile():
        clock.say(COMPILING)
        compile_ahead()
    clock.say("flights and putts")
    raster = ground_raster(ask.hole, CELL_YD)
    low = any(shot_meant(ask.player, text).flight == "low" for text in ask.clubs)
    bag = make_bag(ask.player, ask.conditions, raster, ask.threads, shaped=low)
    clock.lap("bag")
    clock.say("value map")
    empty = make_board(ask.hole, bag, raster)
    full = bag.shots.shots[: bag.shots.first_part]
    out_yd = empty.distance_yd(ask.start.x_yd, ask.start.y_yd)
    wanted = [asked_club(ask.player, text, bag.shots) for text in ask.clubs]
    check_playable(empty, int(ask.lie), out_yd, wanted)
    named = {shot_meant(ask.player, text).club.name for text in ask.clubs}  # `against` must change nothing
    must = [k for k, shot in enumerate(full) if shot.club.name in named]
    start = ask.start.x_yd, ask.start.y_yd, int(ask.lie)
    place = solve_from(empty, ask.hole, start, must=must, others=others, seed=ask.seed, threads=ask.threads)
    clock.lap("value_map")
    return place
