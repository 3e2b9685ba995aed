"""What would turn the answer, in words."""

from __future__ import annotations

import math

from ..strategy.confidence import Flip
from ..strategy.result import Answer
from ..units import MPS_PER_MPH
from .chosen import title
from .figures import join_words, known_to
from .units import YARDS, Units


def turns(answer: Answer, units: Units = YARDS) -> str:
    """The smallest change of each kind that turns the answer, a sentence for each club it turns to."""
    ways: dict[int, list[str]] = {}
    for flip in answer.flips:
        if flip.amount is not None and flip.to is not None:
            ways.setdefault(flip.to, []).append(way_words(flip, units))
    return " ".join(
        f"It would be the {title(answer, to, units)} with {join_words(said, 'or with')}."
        for to, said in ways.items()
    )


def way_words(flip: Flip, units: Units = YARDS, exact: bool = False) -> str:
    """What turns an answer: "the driver's spread 20 % tighter"; `exact` with its standard error."""
    amount, name = flip.amount or 0.0, f"the {flip.name}"
    size = _size(flip, units, exact)
    if flip.unit == "times":
        return f"{name}'s spread {size} {'tighter' if amount < 1.0 else 'wider'}"
    if flip.what == "wind_along":
        return f"{size} more {'behind' if amount > 0.0 else 'against'}"
    if flip.what == "wind_across":
        return f"{size} more from the {'left' if amount > 0.0 else 'right'}"
    if flip.what == "hazard_edge":
        return f"the edge of {name} {size} {'nearer' if amount > 0.0 else 'farther off'}"
    return f"{name} {size} {'longer' if amount > 0.0 else 'shorter'}"


def _size(flip: Flip, units: Units, exact: bool) -> str:
    """How much of it, in no finer steps than it is known in, and its unit: "20 %", "less than 5 mph"."""
    size, error = abs(flip.amount or 0.0), flip.amount_standard_error or 0.0
    unit = flip.unit
    if unit == "times":
        size, error, unit = 100.0 * abs((flip.amount or 0.0) - 1.0), 100.0 * error, "%"
    elif unit == "yd":
        size, error, unit = units.of(size), units.of(error), units.short
    elif unit == "mph" and units.metric:
        size, error, unit = MPS_PER_MPH * size, MPS_PER_MPH * error, units.wind_unit
    if exact:
        return f"{size:.1f} +- {error:.1f} {unit}"
    step = known_to(error)
    said = step * math.floor(size / step + 0.5)
    return f"{said} {unit}" if said else f"less than {step} {unit}"
