"""How sure the answer is: what plausible versions of the player would be told, and what would turn it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .errorbars import Estimate

EVEN_STROKES = 0.01
"""Alternatives nearer than this to the best of a plausible player share the draw [strokes]."""

CLEAR_STROKES = 0.03
"""A clear answer is ahead by this at least [strokes]: three in a hundred plays of the hole."""

CLEAR_SHARE, EITHER_SHARE = 0.9, 2.0 / 3.0
"""A clear answer is best for this share of the plausible players at least; below the other it is either."""


@dataclass(frozen=True)
class Confidence:
    """For how many plausible versions of the player each alternative is the best.

    Attributes
    ----------
    draws : int
        Plausible players.
    solved : int
        Those of them for whom the value map was worked out anew (the plan held); for the rest its change
        is regressed on what differs between players.
    shares : tuple of float
        For each alternative of the answer, in its order: share of the players for whom it is best. Those
        within EVEN_STROKES of the best share the draw.
    shares_standard_error : tuple of float
        Of each: from the number of draws, and from the errors of the answer's differences, which shift the
        lead for all players alike.
    best_share : float
        Of the recommended alternative.
    form : str
        ``"full"``, or ``"brief"`` where fewer strikes were spent on it (`plausible.BRIEF`).
    """

    draws: int
    solved: int
    shares: tuple[float, ...]
    shares_standard_error: tuple[float, ...]
    best_share: float
    form: str = "full"

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "draws": self.draws,
            "solved": self.solved,
            "shares": list(self.shares),
            "shares_standard_error": list(self.shares_standard_error),
            "best_share": self.best_share,
            "form": self.form,
        }


@dataclass(frozen=True)
class Flip:
    """How much one thing must change for another alternative to be the best.

    Attributes
    ----------
    what : str
        ``"driver_spread"`` (all spreads of the longest club among the alternatives), ``"driver_carry"`` (its
        carry), ``"wind_along"`` (wind added along the recommended line, helping positive), ``"wind_across"``
        (added across it, blowing to the right positive), ``"hazard_edge"`` (the edge of one area, moved
        outwards all round; inwards is negative).
    name : str
        The club or area meant; empty for wind.
    unit : str
        ``"times"``, ``"yd"`` or ``"mph"``.
    tried : tuple of float
        Least and most that was tried.
    amount : float or None
        Smallest change that turns the answer; None when nothing within `tried` does.
    to : int or None
        Index of the alternative that is then the best.
    amount_standard_error : float or None
        From the errors of the lead and of what the change does to it, over how fast the lead is lost there.
    """

    what: str
    name: str
    unit: str
    tried: tuple[float, float]
    amount: float | None
    to: int | None
    amount_standard_error: float | None = None

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {**vars(self), "tried": list(self.tried)}


def is_ahead(difference: Estimate) -> bool:
    """Whether a lead over another alternative counts as one, the player taken as exact."""
    return difference.value >= max(CLEAR_STROKES, difference.margin)


def verdict(differences: Sequence[Estimate], confidence: Confidence | None) -> str:
    """``"clear"``, ``"slight"`` or ``"either"``.

    Clear: ahead of the best other alternative by CLEAR_STROKES and by the margin of the difference (half
    its 95 % interval) at least, and best for CLEAR_SHARE of the plausible players. Either: not ahead by one
    of the first two, or best for fewer than EITHER_SHARE of them. Without `confidence` the player is taken
    as exact.

    Parameters
    ----------
    differences : sequence of Estimate
        Of every other alternative from the recommended one.
    """
    if not differences:
        return "clear"
    other = min(differences, key=lambda difference: difference.value)
    if not is_ahead(other):
        return "either"
    share = 1.0 if confidence is None else confidence.best_share
    if share < EITHER_SHARE:
        return "either"
    return "clear" if share >= CLEAR_SHARE else "slight"
