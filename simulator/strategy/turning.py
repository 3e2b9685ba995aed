"""Where a lead is lost, walking outwards from how things are."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np


class Turn(NamedTuple):
    """The smallest change that makes another alternative the best.

    Attributes
    ----------
    amount : float or None
        The value at which it turns, in the unit of what was tried; None where nothing tried does it.
    to : int or None
        Index of the alternative that is then the best.
    standard_error : float or None
        Of `amount`; None also where the lead is lost as things are.
    """

    amount: float | None
    to: int | None
    standard_error: float | None


NO_TURN = Turn(None, None, None)


def turning(
    behind: Callable[[float], np.ndarray],
    tried: Sequence[float],
    now: float,
    errors: np.ndarray,
    *,
    refine: bool = True,
) -> Turn:
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
    errors : float64[choices]
        Standard errors of the strokes behind at a value tried. Where the lead is lost moves by as much as the
        lead does, over how fast it is lost there.
    refine : bool
        Look once more where the straight line says the lead is lost.
    """
    start = behind(now)
    if len(start) < 2:
        return NO_TURN
    lead, to = _lead(start)
    if lead <= 0.0:
        return Turn(now, to, None)
    found: list[tuple[float, Turn]] = []
    for side in ([v for v in tried if v > now], [v for v in reversed(tried) if v < now]):
        last, last_lead = now, lead
        for value in side:
            here, other = _lead(behind(value))
            if here > 0.0:
                last, last_lead = value, here
                continue
            per_stroke = _per_stroke(value - last, last_lead - here)
            if refine:
                middle = last + last_lead * per_stroke
                between, third = _lead(behind(middle))
                if between > 0.0:
                    last, last_lead = middle, between
                else:
                    value, here, other = middle, between, third
                per_stroke = _per_stroke(value - last, last_lead - here)
            amount = float(last + last_lead * per_stroke)
            turn = Turn(amount, other, float(errors[other]) * abs(per_stroke))
            found.append((abs(amount - now) / abs(side[-1] - now), turn))
            break
    return min(found)[1] if found else NO_TURN


def _per_stroke(change: float, lost: float) -> float:
    """How much of a change costs a stroke of the lead, where it loses so much."""
    return change / max(lost, 1e-12)


def _lead(behind: np.ndarray) -> tuple[float, int]:
    """By how much the first is ahead of the best other, and which that is."""
    others = behind[1:] - behind[0]
    k = int(np.argmin(others))
    return float(others[k]), k + 1
