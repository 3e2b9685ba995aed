"""Jobs on threads share cores and no geometry: GEOS writes into areas it is asked about, and two at once end the process."""

from concurrent.futures import ThreadPoolExecutor

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


@pytest.mark.parametrize(("count", "cores", "given"), [(3, 2, [1, 1, 2]), (1, 4, [4]), (5, 4, [1, 1, 1, 1, 4]), (2, 5, [2, 5])])
def test_the_last_job_has_every_core(count: int, cores: int, given: list[int], monkeypatch: pytest.MonkeyPatch) -> None:
    """No other is waiting for them, so it does not leave them idle; on an executor of another's each has one thread."""
    seen: dict[int, int] = {}

    def work(job: Job, threads: int) -> None:
        seen[job.number] = threads
        raise NoAnswerError("not asked for")

    monkeypatch.setattr(running, "work", work)
    hole, player = load_hole("eel-trap"), load_player("isolde")
    todo = {k: Job(k, hole, player, "", "", Conditions(), 100, 1, True) for k in range(count)}
    running.Run(todo, {}, count, None, lambda _: None).all(threads=cores)
    assert [seen[k] for k in range(count)] == given
    with ThreadPoolExecutor(2) as pool:
        running.Run(todo, {}, count, None, lambda _: None).all(pool, threads=cores)
    assert [seen[k] for k in range(count)] == [1] * count
