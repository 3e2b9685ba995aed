"""Where a lead is lost, walking outwards from how things are."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np


def turning(
    behind: Callable[[float], np.ndarray], tried: Sequence[float], now: float, *, refine: bool = True
) -> tuple[float | None, int | None]:
    """The smallest change that makes another alternative the best, and which.

    Parameters
    ----------
    behind : callable
        Strokes behind the recommended alternative (the first) at a value, float64[choices].
    tried : sequence of float
        Values, ascending, `now` among them. Each side is walked outwards until the lead is lost; the value
        is read off a straight line between the last two.
    now : float
        As it is. Returned when the lead is lost already.
    refine : bool
        Look once more where the straight line says the lead is lost.

    Returns
    -------
    amount : float or None
        The value at which it turns, in the unit of `tried`; None where nothing tried does it.
    to : int or None
        Index of the alternative that is then the best.
    """
    start = behind(now)
    if len(start) < 2:
        return None, None
    lead, to = _lead(start)
    if lead <= 0.0:
        return now, to
    found: list[tuple[float, float, int]] = []
    for side in ([v for v in tried if v > now], [v for v in reversed(tried) if v < now]):
        last, last_lead = now, lead
        for value in side:
            here, other = _lead(behind(value))
            if here > 0.0:
                last, last_lead = value, here
                continue
            middle = last + (value - last) * last_lead / (last_lead - here)
            if refine:
                between, third = _lead(behind(middle))
                if between > 0.0:
                    last, last_lead = middle, between
                else:
                    value, here, other = middle, between, third
                middle = last + (value - last) * last_lead / max(last_lead - here, 1e-12)
            found.append((abs(middle - now) / abs(side[-1] - now), middle, other))
            break
    if not found:
        return None, None
    _, amount, to = min(found)
    return float(amount), to


def _lead(behind: np.ndarray) -> tuple[float, int]:
    """By how much the first is ahead of the best other, and which that is."""
    others = behind[1:] - behind[0]
    k = int(np.argmin(others))
    return float(others[k]), k + 1
