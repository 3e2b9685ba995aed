"""Compile seconds of every kernel entry on a fresh machine: ``python benchmarks/compile_seconds.py``.

Compiles into an empty cache by answering one question, prints a row per entry and fails when all of
them together take longer than the limit: a user pays this once, before the first answer. Hosts compile at
speeds that differ by two, so the limit is counted in what a function that is not ours takes to compile here.
"""

from __future__ import annotations

import os
import sys
import tempfile
import time

MOST = 80.0
"""All entries together, in one process, over `stock_s`: see DEVELOPERS.md. Counted so it was 36 to 42 on one
host and 54 to 62 on another of half its speed and cache, the most with work on the other core (2026-12-01):
kernels are larger than what they are counted in, and miss the cache more. The limit catches what makes it
half as long again."""


def stock_s() -> float:
    """Seconds that functions out of numba's own stock take to compile, on average of three.

    One before them does not count: it waits for numba itself to be read in.
    """
    import numba
    import numpy as np

    took = []
    for _ in range(4):
        started = time.perf_counter()
        stock = numba.njit(lambda a: np.sort(a)[0] + np.median(a) + np.percentile(a, 30.0))
        stock.compile((numba.float64[::1],))
        took.append(time.perf_counter() - started)
    return sum(took[1:]) / 3


def main() -> int:
    """Measure, print, and say by the exit status whether the limit was kept."""
    before = stock_s()
    with tempfile.TemporaryDirectory() as cache:
        os.environ["HOLESIM_CACHE_DIR"] = cache
        from numba.core import event

        from simulator import load_hole, load_player, plan
        from simulator.engine import ahead
        from simulator.kernels._compile import entries

        ahead.start = lambda: None  # what the second process would compile is counted here
        with event.install_recorder("numba:compile") as recorder:
            plan(load_hole("withy-drain"), load_player("barnaby"), sequences=100, threads=1, quick=True)
    names = {id(compiled): name for name, compiled in entries().items()}
    started: dict[str, float] = {}
    seconds: dict[str, float] = {}
    for time_s, what in recorder.buffer:
        name = names.get(id(what.data["dispatcher"]))
        if name is None:
            continue
        if what.is_start:
            started[name] = time_s
        else:
            seconds[name] = seconds.get(name, 0.0) + time_s - started[name]
    for name, spent in seconds.items():
        print(f"{name:<14}{spent:7.2f} s")
    total = sum(seconds.values())
    stock = 0.5 * (before + stock_s())
    print(f"{'all':<14}{total:7.2f} s: {total / stock:.0f} times {stock:.2f} s, at most {MOST:.0f} times")
    return int(total > MOST * stock)


if __name__ == "__main__":
    sys.exit(main())
