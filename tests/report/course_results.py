"""Results of a course made up without the engine."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

import fake_answers
import numpy as np

from simulator.conditions import Scenario
from simulator.strategy.alternative import Alternative
from simulator.strategy.errorbars import Estimate
from simulator.strategy.jobs import SCHEMA, Job, blocks
from simulator.strategy.pointing import Pointing

NORTH = Scenario("north", {"wind": "14 mph from N"})

LONG = (
    "Ottoline-Marguerite Featherstonehaugh", "Bartholomew van der Hollebeke-Oxley", "Cy", "Persephone Quatermaine",
    "Llewellyn Abernathy-Carmichael", "Ed Holt", "Maximiliana Wolferstan", "Christopherus", "Dot",
)  # fmt: skip
"""Names that do not fit a column, and some that do."""


def _with_luck(one: Alternative) -> Alternative:
    rest = np.random.default_rng(3).normal(0.0, 0.2, one.scores.size)
    return replace(one, first=np.full(16, one.score.value - rest.mean()), rest=rest)


def result(job: Job, threads: int = 1) -> dict[str, Any]:
    """What `work` would answer, by a stand-in: still the 3-wood is best, in any wind the driver."""
    answer = fake_answers.answer(job.hole, job.player, n=300)
    alternatives = tuple(
        # the yards of one hole are those of all
        replace(one, point=Pointing("fairway", "the middle of the fairway", one.aim_offset_yd))
        for one in answer.alternatives
    )
    if job.conditions.wind is not None:
        worse = Estimate(0.21, 0.01)
        first, second = alternatives[0], alternatives[1]
        alternatives = (
            replace(second, difference=Estimate(0.0, 0.0)), replace(first, difference=worse), *alternatives[2:]
        )  # fmt: skip
    answer = replace(answer, alternatives=alternatives, conditions=job.conditions, seed=job.seed)
    habit = _with_luck(replace(answer.alternatives[answer.recommended], difference=Estimate(0.1 * job.number, 0.012)))
    return {
        "schema": SCHEMA, "digest": job.digest, "number": job.number, "stroke_index": job.hole.stroke_index,
        "scenario": job.scenario, "pins": job.pins, "answer": answer.to_dict(), "habit": habit.to_dict(),
        "plays": {"best": blocks(_with_luck(answer.best)), "habit": blocks(habit)},
    }  # fmt: skip


def down(text: str, name: str) -> str:
    """What stands in the column that begins where a name does, with the lines below it put together."""
    lines = text.splitlines()
    head = f" {name.split()[0][:9]}"
    top = next(k for k, line in enumerate(lines) if line.startswith("   hole, par") and head in line)
    first = lines[top].index(head) + 1
    later = [found.start() for found in re.finditer(r"(?<=  )\S", lines[top]) if found.start() > first]
    column = [line[first : later[0] if later else None].strip() for line in lines[top : lines.index("", top)]]
    return " ".join(word for word in column if word)
