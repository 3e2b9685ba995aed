"""Carries in an order a bag can hold: what few shots cannot tell apart goes by loft."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from ...errors import UsageError
from ...physics.launch import LOFT_DEG
from ..clubs import line_of
from .likelihood import Floats

APART_YD = 0.5
"""Carries of a bag are at least so far apart [yd]."""

SURE_SDS = 3.0
"""A difference of so many of its standard deviations is no chance: the shots say that the weaker club carries
farther. Assumed; among the twelve neighbours of a bag one in sixty bags reaches it by chance where two clubs
truly carry the same."""


def in_order(
    kinds: Mapping[str, str], carry_yd: Mapping[str, float], doubt_yd: Mapping[str, float]
) -> tuple[dict[str, float], tuple[str, ...]]:
    """Carries nearest to those found that a bag can hold, and the clubs that went by their loft.

    Irons with wedges and woods with the driver go by loft, where their order is within the doubt. Woods whose
    shots surely say otherwise stay (a slow swing carries a 5-wood farther than a 3-wood, common practice).

    Parameters
    ----------
    kinds, carry_yd, doubt_yd : mapping
        Launch family, carry and its standard deviation [yd] of every club.

    Raises
    ------
    UsageError
        An iron or a wedge that surely outcarries one with less loft: the names are probably swapped.
    """
    found = dict(carry_yd)
    moved: set[str] = set()
    for line in dict.fromkeys(line_of(kind) for kind in kinds.values()):
        names = [name for name in carry_yd if line_of(kinds[name]) == line]
        names.sort(key=lambda name: (LOFT_DEG[kinds[name]], -carry_yd[name]))
        if sure := _surely_wrong(names, kinds, carry_yd, doubt_yd):
            if line == "wood":
                continue
            longer, shorter = sure
            raise UsageError(
                f"{longer} carries {carry_yd[longer]:.0f} yd and {shorter} {carry_yd[shorter]:.0f} yd in "
                "these shots; the club with more loft carries less: leave one out, or check the club column"
            )
        placed = _spaced(names, carry_yd, doubt_yd)
        moved |= {name for name in names if abs(placed[name] - carry_yd[name]) > 0.01}
        found |= placed
    names = sorted(found, key=lambda name: -found[name])  # stable: of one carry, as the lines have them
    return _spaced(names, found, doubt_yd), tuple(name for name in names if name in moved)


def _surely_wrong(
    names: Sequence[str],
    kinds: Mapping[str, str],
    carry_yd: Mapping[str, float],
    doubt_yd: Mapping[str, float],
) -> tuple[str, str] | None:
    """The first two clubs, weaker first, of which the weaker surely carries farther."""
    for i, stronger in enumerate(names):
        for weaker in names[i + 1 :]:
            sd = float(np.hypot(doubt_yd[stronger], doubt_yd[weaker]))
            farther = carry_yd[weaker] - carry_yd[stronger]
            if LOFT_DEG[kinds[weaker]] > LOFT_DEG[kinds[stronger]] and farther > max(SURE_SDS * sd, APART_YD):
                return weaker, stronger
    return None


def _spaced(
    names: Sequence[str], carry_yd: Mapping[str, float], doubt_yd: Mapping[str, float]
) -> dict[str, float]:
    """Nearest carries, by their doubts, that fall from each of ``names`` to the next."""
    from scipy.optimize import lsq_linear

    wanted = np.array([carry_yd[name] for name in names])
    if (np.diff(wanted) <= -APART_YD).all():
        return dict(zip(names, map(float, wanted), strict=True))
    weight = 1.0 / np.array([max(doubt_yd[name], 1e-3) for name in names])
    steps: Floats = -np.tri(
        len(names)
    )  # the first column is the longest carry, the others the falls after it
    steps[:, 0] = 1.0
    least = np.r_[-np.inf, np.full(len(names) - 1, APART_YD)]
    solved = lsq_linear(weight[:, None] * steps, weight * wanted, (least, np.inf), method="bvls")
    return dict(zip(names, map(float, steps @ solved.x), strict=True))
