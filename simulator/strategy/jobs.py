"""One hole for one player on one day with one pin: the smallest piece of a course, and what comes of it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

import numpy as np

from ..conditions import Conditions
from ..hole.model import Hole
from ..player.model import Player
from .alternative import Alternative
from .ask import plan
from .digest import digest_of
from .habit import habit_of

SCHEMA = "holesim-course-hole-1"

BLOCKS = 40
"""Sequences are summed up in so many blocks: errors of sums over holes are read off blocks, which share
their luck from hole to hole."""


@dataclass(frozen=True)
class Job:
    """What one plan is made from.

    Attributes
    ----------
    number : int
        Of the hole.
    hole : Hole
        With tee and pin in use.
    player : Player
    scenario, pins : str
        Names of the day and of the set of pins.
    conditions : Conditions
    sequences, seed : int
    quick : bool
        Take the player as exact: no confidence.
    """

    number: int
    hole: Hole
    player: Player
    scenario: str
    pins: str
    conditions: Conditions
    sequences: int
    seed: int
    quick: bool = False

    @cached_property
    def digest(self) -> str:
        """Changes with anything that may change the result; not with the player's name (initials)."""
        nobody = replace(self.player, name="")
        return digest_of(
            SCHEMA, self.number, self.hole, nobody, self.scenario, self.pins, self.conditions, self.sequences,
            self.seed, self.quick,
        )  # fmt: skip


def work(job: Job, threads: int = 1) -> dict[str, Any]:
    """The job's result as plain JSON-ready data, the same whoever works it and on however many threads.

    ``answer`` is what `plan`, asked quickly, answers for the same hole, player, day and seed; unless the job
    is quick too, with confidence of the brief form, and the verdict that goes by it.

    Raises
    ------
    SimulatorError
        As `plan`.
    """
    answer = plan(
        job.hole,
        job.player,
        conditions=job.conditions,
        sequences=job.sequences,
        seed=job.seed,
        quick=job.quick,
        brief=True,
        threads=threads,
        against=habit_of(job.player, job.hole, job.conditions),
    )
    assert answer.against is not None
    return {
        "schema": SCHEMA,
        "digest": job.digest,
        "number": job.number,
        "stroke_index": job.hole.stroke_index,
        "scenario": job.scenario,
        "pins": job.pins,
        "answer": answer.to_dict(),
        "habit": answer.against.to_dict(),
        "plays": {"best": blocks(answer.best), "habit": blocks(answer.against)},
    }


def called(result: dict[str, Any], name: str) -> dict[str, Any]:
    """A job's result as that of a player of another name: it stands in it once."""
    return {**result, "answer": {**result["answer"], "player": name}}


def blocks(one: Alternative) -> dict[str, Any]:
    """An alternative's scores and what its expected score is the mean of, in blocks of sequences.

    ``counts[b][k]`` is how many sequences of block b took ``least + k`` strokes; ``first`` are the map's
    figures over each scramble of first strikes, ``rest`` what the sequences add, block by block.
    """
    assert one.first is not None and one.rest is not None
    least = int(one.scores.min())
    size = int(one.scores.max()) - least + 1
    parts = np.array_split(one.scores - least, BLOCKS)
    return {
        "least": least,
        "counts": [np.bincount(part, minlength=size).tolist() for part in parts],
        "first": one.first.tolist(),
        "rest": [float(part.mean()) for part in np.array_split(one.rest, BLOCKS)],
    }
