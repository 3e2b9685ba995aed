"""Sharing work between threads: who does it changes nothing of what comes out."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from functools import lru_cache
from typing import Any, TypeVar

Done = TypeVar("Done")


def default_threads() -> int:
    """Cores this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1


@lru_cache(maxsize=8)
def _pool(threads: int) -> ThreadPoolExecutor:
    """The threads that share the work, kept between questions."""
    return ThreadPoolExecutor(threads, thread_name_prefix="holesim")


def share(work: Callable[[int, int], Any], count: int, chunk: int, threads: int) -> None:
    """Call work(first, last) over range(count) in chunks, on so many threads."""
    if threads <= 1 or count <= chunk:
        if count:
            work(0, count)
        return
    starts = iter(range(0, count, chunk))  # who asks gets the next one; Python's lock lets one ask at a time

    def work_on() -> None:
        for k in starts:
            work(k, min(k + chunk, count))

    for done in [_pool(threads).submit(work_on) for _ in range(threads)]:
        done.result()


def at_once(works: Sequence[Callable[[], Done]], threads: int) -> list[Done]:
    """What each of some independent works returns, in order, done on so many threads.

    Each of them may use one thread only: the threads are these.
    """
    if threads <= 1 or len(works) <= 1:
        return [work() for work in works]
    return [done.result() for done in [_pool(threads).submit(work) for work in works]]
