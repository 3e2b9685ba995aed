"""Which reading disagrees with all the others: a slip of the laser or of the pencil, and left out."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from .network import Adjusted, Frame, Network, Reading, Suspect, adjust, misfit

SUSPECT = 3.29
"""A reading whose normalised residual is beyond this is suspected: 1 in 1,000 good ones are (Baarda, 1968, A
testing procedure for use in geodetic networks; from memory)."""

MOST_SLIPS = 3
"""Readings left out at most, one after another (assumed): beyond that nobody can say which are right."""

LEAST_SHARE = 1e-4
"""Share of a reading's error that must show in its own residual, or nothing checks it."""

ALIKE = 0.95
"""Readings whose normalised residuals are this close cannot be told apart: one check sees them all alike."""


def adjust_without_slips(network: Network, start: Mapping[str, tuple[float, float]]) -> Adjusted:
    """Adjust, leave out the reading that disagrees most, and again, up to `MOST_SLIPS` of them."""
    dropped: list[Suspect] = []
    while True:
        found = adjust(network, start)
        worst = suspect(found, start)
        if worst is None or len(dropped) == MOST_SLIPS:
            return replace(found, dropped=tuple(dropped))
        network = _without(network, worst.reading)
        dropped.append(worst)


def suspect(found: Adjusted, start: Mapping[str, tuple[float, float]]) -> Suspect | None:
    """The reading without which the others fit best, when they fit so much better that it must be wrong.

    Where all is nearly linear the square root of what the fit's sum of squares loses is the normalised
    residual; a slip of many yards in a small net bends the places so far that the largest residual is
    another's, so every reading that is checked is left out in turn and the rest adjusted anew.

    Parameters
    ----------
    start : mapping of str to (x, y)
        Rough places; an adjustment begins there and where the slip has put things, and keeps the better.
    """
    checked = _checked(found)
    if not any(abs(off) > SUSPECT * one.sd * math.sqrt(share) for one, off, share in checked):
        return None
    network, cost = found.network, _cost(found.network, found.places)
    rows: list[tuple[float, Reading, Mapping[str, tuple[float, float]]]] = []
    for reading, _, _ in checked:
        less = _without(network, reading)
        places = min((_settled(less, start), _settled(less, found.places)), key=lambda at: _cost(less, at))
        rows.append((math.sqrt(max(2.0 * (cost - _cost(less, places)), 0.0)), reading, places))
    rows.sort(key=lambda row: -row[0])
    times, worst, settled = rows[0]
    off = misfit(replace(found, places=settled), worst)
    alike = tuple(reading for other, reading, _ in rows[1:] if other > ALIKE * times)
    return Suspect(worst, off, times, alike)


def _checked(found: Adjusted) -> list[tuple[Reading, float, float]]:
    """Readings that others check, each with its residual and the share of its error that shows there."""
    rows = zip(found.network.readings, found.residuals, found.redundancy, strict=True)
    return [(reading, off, share) for reading, off, share in rows if reading.words and share >= LEAST_SHARE]


def _without(network: Network, reading: Reading) -> Network:
    return replace(network, readings=tuple(one for one in network.readings if one is not reading))


def _settled(network: Network, start: Mapping[str, tuple[float, float]]) -> dict[str, tuple[float, float]]:
    frame = Frame(network, start)
    return frame.places(frame.settled(frame.free_of(start)))


def _cost(network: Network, places: Mapping[str, tuple[float, float]]) -> float:
    """Half the sum of squares of the readings' scaled residuals at some places."""
    frame = Frame(network, places)
    return float(0.5 * (frame.scaled(frame.free_of(places)) ** 2).sum())
