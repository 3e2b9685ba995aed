"""A process that a user would start from this checkout, and how slow the machine is that it runs on."""

from __future__ import annotations

import os
import time
from pathlib import Path

ROOT = Path(__file__).parents[1]

USERS = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"} | {
    "PYTHONPATH": str(ROOT)
}
"""Where nothing keeps Python from writing byte code, only a user's first answer waits for it to be made."""

CORE_SECONDS = 0.05
"""What `core_slowness` counts takes on a core that the times asked for are meant for, an idle one of the 2020s
(assumed) [s]."""


def processor_s() -> float:
    """Processor seconds so far of this process and of those it has waited for [s]: other tests may run beside.

    Of work with one thread they are what a user waits on an idle machine.
    """
    ended = os.times()
    return time.process_time() + ended.children_user + ended.children_system


def core_slowness() -> float:
    """How many times slower than that a core is just now, 1 at the least: hosts are shared, and some are slow."""
    took = []
    for _ in range(3):
        start = time.process_time()
        sum(k * k for k in range(1_000_000))
        took.append(time.process_time() - start)
    return max(min(took) / CORE_SECONDS, 1.0)
