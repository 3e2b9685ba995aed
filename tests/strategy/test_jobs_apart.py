"""Jobs on threads share no geometry: GEOS writes into areas it is asked about, and two at once end the process."""

import pytest

from simulator.conditions import Conditions
from simulator.errors import NoAnswerError
from simulator.hole import load_hole
from simulator.player import load_player
from simulator.strategy import running
from simulator.strategy.jobs import Job


def test_each_job_has_a_hole_of_its_own(monkeypatch: pytest.MonkeyPatch) -> None:
    worked: list[Job] = []

    def work(job: Job, threads: int) -> None:
        worked.append(job)
        raise NoAnswerError("not asked for")

    monkeypatch.setattr(running, "work", work)
    hole, day = load_hole("withy-drain"), Conditions()
    todo = {k: Job(1, hole, load_player(name), "", "", day, 100, 1, True) for k, name in enumerate(("barnaby", "isolde"))}
    running.Run(todo, {}, 2, None, lambda _: None).all(threads=2)
    assert sorted(job.digest for job in worked) == sorted(job.digest for job in todo.values())
    areas = [id(feature.area) for job in (*worked, todo[0]) for feature in job.hole.features]
    assert len(set(areas)) == len(areas)
