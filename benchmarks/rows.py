"""A measured figure, its target, and the table they are printed in."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np


@dataclass(frozen=True)
class Row:
    """One figure.

    Attributes
    ----------
    part : str
        Which benchmark it belongs to.
    what, unit : str
    figure : float
    target : float or None
        What was asked for.
    at_least : bool
        Whether the figure should be at least the target rather than at most.
    """

    part: str
    what: str
    figure: float
    unit: str
    target: float | None = None
    at_least: bool = False

    @property
    def met(self) -> bool | None:
        """Whether the target is met; None without one."""
        if self.target is None:
            return None
        return self.figure >= self.target if self.at_least else self.figure <= self.target

    def to_dict(self) -> dict[str, Any]:
        """As JSON has it."""
        return {**asdict(self), "met": self.met}


def table(rows: list[Row]) -> str:
    """Rows as lines of text, misses marked."""
    lines, part = [], ""
    for row in rows:
        if row.part != part:
            part = row.part
            lines.append(f"\n{part}")
        sign = "at least" if row.at_least else "at most"
        target = "" if row.target is None else f"  {sign} {row.target:,g}"
        verdict = "" if row.met is None else "  met" if row.met else "  MISSED"
        lines.append(f"  {row.what:<58}{row.figure:>14,.4g} {row.unit:<10}{target}{verdict}")
    return "\n".join(lines)


def seconds(work: Callable[[], Any], repeats: int = 3) -> tuple[float, float]:
    """Least wall seconds and least processor seconds of a few calls, after one that warms up.

    Processor seconds count all threads; on a busy machine they say more than wall seconds.
    """
    work()
    wall, cpu = [], []
    for _ in range(repeats):
        a, b = time.perf_counter(), time.process_time()
        work()
        wall.append(time.perf_counter() - a)
        cpu.append(time.process_time() - b)
    return float(np.min(wall)), float(np.min(cpu))
