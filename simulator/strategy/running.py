"""Jobs worked side by side on any executor, each result kept as soon as it is there."""

from __future__ import annotations

import pickle
import time
from concurrent.futures import Executor, Future, ThreadPoolExecutor, as_completed
from typing import Any

from ..engine import default_threads
from ..errors import SimulatorError
from .jobs import Job, work
from .question import Progress
from .store import Store


class Run:
    """What is to do, and what has come of it.

    Parameters
    ----------
    todo : dict of int to Job
        By their place among all jobs.
    found : dict of int to dict
        Results; those of `todo` are added.
    count : int
        All jobs, for the progress.
    store : Store or None
    say : callable

    Attributes
    ----------
    failed : list of (Job, str)
        Jobs without an answer, and why.
    mistakes : list of BaseException
        Those among them that are mistakes of ours.
    """

    def __init__(
        self,
        todo: dict[int, Job],
        found: dict[int, dict[str, Any]],
        count: int,
        store: Store | None,
        say: Progress,
    ) -> None:
        self.todo, self.found, self.count, self.store, self.say = todo, found, count, store, say
        self.failed: list[tuple[Job, str]] = []
        self.mistakes: list[BaseException] = []
        self.started = time.perf_counter()

    def all(self, executor: Executor | None = None, threads: int | None = None) -> None:
        """Work everything.

        Parameters
        ----------
        executor : Executor, optional
            One thread for each job; it is not shut down. Threads of this process when left out.
        threads : int, optional
            Of this process. Kernels hold no lock, so jobs side by side on threads use all cores and share
            one set of compiled code and tables; threads left over work inside the jobs.

        Raises
        ------
        KeyboardInterrupt
            After what is being worked has been finished and kept.
        """
        cores = threads or default_threads()
        side_by_side = min(cores, len(self.todo))
        pool = executor or ThreadPoolExecutor(side_by_side, thread_name_prefix="holesim-course")
        inside = 1 if executor is not None else max(1, cores // side_by_side)
        # the last has them all: no other is waiting for them
        last = next(reversed(self.todo)) if executor is None else None
        waiting: dict[Future[dict[str, Any]], int] = {}
        taken: set[Future[dict[str, Any]]] = set()
        try:
            for k, job in self.todo.items():
                # a copy, on threads too: GEOS writes into areas it is asked about, and jobs share their holes
                own = cores if k == last else inside
                waiting[pool.submit(work, pickle.loads(pickle.dumps(job)), own)] = k
            for future in as_completed(waiting):
                taken.add(future)
                self._take(future, waiting[future])
        except KeyboardInterrupt:
            running = [future for future in waiting if future not in taken and not future.cancel()]
            plans = f"{len(self.found)} {'plan' if len(self.found) == 1 else 'plans'} kept"
            self.say(f"interrupted: {plans}, {len(running)} more once they are finished")
            for future in as_completed(running):
                self._take(future, waiting[future])
            raise
        finally:
            if executor is None:
                pool.shutdown(wait=False, cancel_futures=True)

    def _take(self, future: Future[dict[str, Any]], place: int) -> None:
        job = self.todo[place]
        try:
            result = future.result()
        except SimulatorError as error:
            self.failed.append((job, str(error)))
        except Exception as error:  # a mistake of ours on one hole is no reason to lose the others
            self.mistakes.append(error)
            self.failed.append((job, f"a mistake of ours ({type(error).__name__}: {error})"))
        else:
            if result["digest"] != job.digest:
                self.failed.append((job, "worked by another version: all workers need the same holesim"))
                return
            self.found[place] = result
            if self.store is not None:
                self.store.keep(job, result)
        done, seconds = len(self.found) + len(self.failed), time.perf_counter() - self.started
        self.say(f"{done} of {self.count}: hole {job.number}, {job.player.name} ({seconds:.0f} s)")
