"""The question: which club, which line?"""

from __future__ import annotations

from collections.abc import Sequence

from ..conditions import Conditions
from ..errors import UsageError
from ..hole.model import Hole
from ..player.model import Player
from .answering import Turns, always, answer_at, never
from .goals import Goal
from .plausible import BRIEF, FULL
from .question import Clock, Progress, question, solve
from .result import Answer, Start


def plan(
    hole: Hole,
    player: Player,
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    quick: bool = False,
    brief: bool = False,
    progress: Progress | None = None,
    threads: int | None = None,
    goal: Goal | None = None,
    against: str | None = None,
    turns: Turns = always,
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
    quick : bool
        Take the player as exact: neither confidence nor what would turn the answer is worked out.
    brief : bool
        Unless `quick`: confidence by the brief form (`plausible.BRIEF`), and not what would turn the answer.
    progress : callable, optional
        Told in a few words what is being waited for.
    threads : int, optional
        All cores when left out.
    goal : Goal, optional
        What the recommendation goes by; the lowest average score when left out.
    against : str, optional
        A club, with an aim (``"driver@-8"``) or straight at the pin, that is measured beside the
        alternatives without being one of them, with the same luck: `Answer.against`.
    turns : callable, optional
        Unless `quick` or `brief`: whether what would turn the answer (`Answer.flips`) is worked out too,
        given all the rest of it; always when left out. A quarter of the time goes into it.

    Raises
    ------
    UsageError
        A number out of its range, or a place nobody can play from.
    NoAnswerError
        No club of the bag may be played from there.
    """
    asked = question(
        "plan", hole, player, conditions=conditions, start=start, sequences=sequences, seed=seed,
        threads=threads, goal=goal, against=against,
    )  # fmt: skip
    clock, form = Clock(progress), BRIEF if brief else FULL
    turns = never if brief else turns
    return answer_at(solve(asked, clock), asked, clock, None if quick else form, turns)


def compare(
    hole: Hole,
    player: Player,
    clubs: Sequence[str],
    *,
    conditions: Conditions | None = None,
    start: Start | None = None,
    sequences: int = 20_000,
    seed: int = 1,
    quick: bool = False,
    progress: Progress | None = None,
    threads: int | None = None,
    goal: Goal | None = None,
    turns: Turns = always,
) -> Answer:
    """The clubs asked about, each at its best aim (or at the one given): "driver or 3-wood here?"

    Parameters
    ----------
    clubs : sequence of str
        Club names, or with an aim: ``"driver@-8"`` is 8 yards left of the pin line at stock carry,
        ``"driver@-3deg"`` three degrees left.

    Other parameters, and errors: see `plan`. A better club that nobody asked about is added.
    """
    if not clubs:
        raise UsageError("no club to compare: name at least one, for example driver")
    asked = question(
        "compare", hole, player, clubs, conditions=conditions, start=start, sequences=sequences,
        seed=seed, threads=threads, goal=goal,
    )  # fmt: skip
    clock = Clock(progress)
    return answer_at(solve(asked, clock), asked, clock, None if quick else FULL, turns)
