"""A whole course at once: holes x players x days x pins, on threads, any executor, or a cluster."""

from __future__ import annotations

import math
from collections.abc import Sequence
from concurrent.futures import Executor
from pathlib import Path
from typing import Any

from ..conditions import STILL, Scenario
from ..engine import compile_ahead, must_compile
from ..errors import SimulatorError, UsageError, check_path, check_text
from ..hole.course import Course
from ..player.model import Player
from .courseasked import FIRST_PINS, CourseAnswer, CourseAsked, Failure, Pins
from .handed import check_each, check_kind, check_whole
from .jobs import Job
from .question import (
    COMPILING,
    LEAST_SEQUENCES,
    MOST_SEED,
    MOST_SEQUENCES,
    MOST_THREADS,
    Progress,
    silent,
)
from .running import Run
from .store import Store
from .tees import holes_without, on_tee

DEFAULT_SEQUENCES = 5_000
"""Sequences for each alternative, a quarter of a single plan's: scores are still known to 0.01 strokes."""


def play_course(
    course: Course,
    players: Sequence[Player] | Player,
    *,
    scenarios: Sequence[Scenario] = (STILL,),
    pins: Sequence[Pins] = (FIRST_PINS,),
    tee: str | None = None,
    sequences: int = DEFAULT_SEQUENCES,
    seed: int = 1,
    quick: bool = False,
    out: str | Path | None = None,
    executor: Executor | None = None,
    threads: int | None = None,
    progress: Progress | None = None,
) -> CourseAnswer:
    """The plan of every hole for every player, day and set of pins, and each player's habit beside it.

    Parameters
    ----------
    course : Course
    players : Player or sequence of Player
        Names of their own.
    scenarios : sequence of Scenario
    pins : sequence of Pins
    tee : str, optional
        Tee in use on every hole; the player's own when left out, or each file's first.
    sequences, seed : int
        Of every plan: its numbers are those of `plan` with the same.
    quick : bool
        Take the players as exact: no confidence of the first shots (of the brief form, `plausible.BRIEF`).
    out : path, optional
        Folder where results are kept as they are finished; what is there from the same inputs is not done
        again.
    executor : concurrent.futures.Executor, optional
        Runs the jobs, on one thread each; it is not shut down. Threads of this process when left out.
    threads : int, optional
        Of this process; all cores when left out. Jobs side by side, or threads inside a job that is alone.
    progress : callable, optional
        Told what was finished.

    Raises
    ------
    UsageError
        No course, no player, a number out of its range, two of one name, a sheet with a hole that is not
        there, a folder that cannot be written. A hole that has no answer is in `failures` instead.
    KeyboardInterrupt
        Once what is being worked is finished and kept; interrupted again, at once.
    """
    check_kind("course", course, Course, "simulator.hole.load_course gives one")
    players = check_each("player", players, Player, "load_player gives one")
    scenarios = check_each("scenario", scenarios, Scenario, "conditions.Scenario, of a day's words")
    pins = check_each("pins", pins, Pins, "courseasked.Pins, of a name and words")
    if tee is not None:
        check_text("tee", tee, "white")
    if out is not None:
        check_path(out, "a folder for the results")
    if threads is not None:
        check_whole("threads", threads, 1, MOST_THREADS)
    check_whole("sequences", sequences, LEAST_SEQUENCES, MOST_SEQUENCES)
    check_whole("seed", seed, 0, MOST_SEED)
    asked = CourseAsked(course, tee, players, scenarios, pins, sequences, seed, quick)
    _check(asked)
    return _played(asked, None if out is None else Store(Path(out)), progress or silent, executor, threads)


def _played(
    asked: CourseAsked, store: Store | None, say: Progress, executor: Executor | None, threads: int | None
) -> CourseAnswer:
    """Everything that was asked, from an earlier run where it is there, else worked now."""
    if asked.tee is None:
        _say_tees(asked, say)
    jobs, failures = _jobs(asked)
    found: dict[int, dict[str, Any]] = {}
    if store is not None:
        found = {k: kept for k, job in enumerate(jobs) if (kept := store.find(job)) is not None}
    reused = len(found)
    if reused:
        say(f"{reused} of {len(jobs)} plans are there from an earlier run")
    todo = {k: job for k, job in enumerate(jobs) if k not in found}
    if todo and must_compile():
        say(COMPILING)
        compile_ahead()
    run = Run(todo, found, len(jobs), store, say)
    if todo:
        run.all(executor, threads)
    failures += [
        Failure(job.number, job.hole.name, message, job.player.name, job.scenario, job.pins)
        for job, message in run.failed
    ]
    return CourseAnswer(
        **vars(asked),
        results=tuple(found[k] for k in sorted(found)),
        failures=tuple(sorted(failures, key=_in_order)),
        reused=reused,
        mistakes=tuple(run.mistakes),
    )


def _in_order(one: Failure) -> tuple[float, str, str, str, str]:
    """Where a failure stands among others, whoever was faster."""
    return (math.inf if one.number is None else one.number), one.hole, one.pins, one.scenario, one.player


def _check(asked: CourseAsked) -> None:
    """Refuse players, days or pins that cannot be told apart, and a sheet that is another course's."""
    for what, names, said in (
        ("player", [one.name for one in asked.players], ' (name = "Ada" in a file, "called Ada" in words)'),
        ("scenario", [one.name for one in asked.scenarios], ""),
        ("set of pins", [one.name for one in asked.pins], ""),
    ):
        if not names:
            raise UsageError(f"no {what}: at least one is needed")
        twice = [name for name in names if names.count(name) > 1]
        if twice:
            raise UsageError(f"two times the {what} {twice[0]!r}; allowed: a name of its own for each{said}")
    course = asked.course
    known = {*course.numbers, *(bad.number for bad in course.bad)}
    for where in asked.pins:
        strange = sorted(set(where.sheet or {}) - known)
        if strange:
            holes = ", ".join(map(str, sorted(number for number in known if number is not None)))
            raise UsageError(
                f"{where.name}: a pin for hole {', '.join(map(str, strange))}, which {course.name} has not; "
                f"allowed: {holes}"
            )


def _say_tees(asked: CourseAsked, say: Progress) -> None:
    """Say on which holes a player's own tee is not there."""
    for player in asked.players:
        if player.tee is None:
            continue
        if without := holes_without(asked.course, player.tee):
            holes = f"hole{'s' if len(without) > 1 else ''} {', '.join(without)}"
            say(f"{player.name}: no {player.tee} tee on {holes}, where the first tee is played")


def _jobs(asked: CourseAsked) -> tuple[list[Job], list[Failure]]:
    """Everything there is to do, and the holes of which it is known already that they have no answer."""
    failures = [Failure(bad.number, bad.file, str(bad.error)) for bad in asked.course.bad]
    jobs: list[Job] = []
    for number, hole in asked.course.numbered():
        try:
            teed = [on_tee(hole, player, asked.tee) for player in asked.players]
        except SimulatorError as error:
            failures.append(Failure(number, hole.name, str(error)))
            continue
        for where in asked.pins:
            try:
                pinned = [where.on(number, one) for one in teed]  # counted from the tee in use
            except SimulatorError as error:
                failures.append(Failure(number, hole.name, str(error), pins=where.name))
                continue
            for day in asked.scenarios:
                try:
                    conditions = day.conditions(hole.bearing_deg)
                except SimulatorError as error:
                    message = f"{hole.source or hole.name}: {error}"
                    failures.append(Failure(number, hole.name, message, scenario=day.name, pins=where.name))
                    continue
                jobs += [
                    Job(
                        number, one, player, day.name, where.name, conditions, asked.sequences, asked.seed,
                        asked.quick,
                    )
                    for one, player in zip(pinned, asked.players, strict=True)
                ]  # fmt: skip
    return jobs, failures
