"""Validate, allocate, call kernels, wrap: the value map solved, actions valued, sequences played.

Work is dealt to threads in chunks whose results do not depend on who does them, so the numbers are
the same bit for bit at any thread count. Kernels hold no lock while they run.
"""

from __future__ import annotations

from ..kernels._compile import waiting_for_compiler
from .effort import LONG, LONG_STROKES, Effort, Traffic
from .held import Held, hold_plan, revalue_map
from .maps import solve_map
from .plays import (
    MOST_STROKES,
    PART_BEYOND,
    PART_SWING,
    PUNCH_SWING,
    PUTT_SWING,
    PUTTED_YD,
    RUNNING_YD,
    Opening,
    Sequences,
    places_played,
    play,
    value_actions,
)
from .sweeps import AIMS_DEG, WIDE_AIMS_DEG, room_to_choose
from .threads import at_once, default_threads

__all__ = [
    "AIMS_DEG", "ENTRIES", "LONG", "LONG_STROKES", "MOST_STROKES", "PART_BEYOND", "PART_SWING",
    "PUNCH_SWING", "PUTTED_YD", "PUTT_SWING", "RUNNING_YD", "WIDE_AIMS_DEG", "Effort", "Held", "Opening",
    "Sequences", "Traffic", "at_once", "compile_ahead", "default_threads", "hold_plan", "must_compile",
    "places_played", "play", "revalue_map", "room_to_choose", "solve_map", "value_actions",
]  # fmt: skip

ENTRIES = ["solve_nodes", "evaluate", "play", "fill_flights", "fill_putts", "fill_sloped_putts"]


def must_compile() -> bool:
    """Whether the next answer has to wait for the compiler."""
    return waiting_for_compiler(ENTRIES)


def compile_ahead() -> None:
    """Have another process compile a part of what has to be compiled, if there is a core for it."""
    from .ahead import start

    start()
