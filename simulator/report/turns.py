"""What would turn the answer, in words."""

from __future__ import annotations

from ..strategy.confidence import Flip
from ..strategy.result import Answer
from .chosen import title
from .figures import join_words
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


def way_words(flip: Flip, units: Units = YARDS) -> str:
    """The change that turns an answer: "the driver's spread 20 % tighter"."""
    amount, name = flip.amount or 0.0, f"the {flip.name}"
    if flip.unit == "times":
        way = "tighter" if amount < 1.0 else "wider"
        return f"{name}'s spread {100.0 * abs(amount - 1.0):.0f} % {way}"
    if flip.what == "wind_along":
        return f"{abs(amount):.0f} mph more {'behind' if amount > 0.0 else 'against'}"
    if flip.what == "wind_across":
        return f"{abs(amount):.0f} mph more from the {'left' if amount > 0.0 else 'right'}"
    size = units.length(abs(amount))
    if flip.what == "hazard_edge":
        return f"the edge of {name} {size} {'nearer' if amount > 0.0 else 'farther off'}"
    return f"{name} {size} {'longer' if amount > 0.0 else 'shorter'}"
