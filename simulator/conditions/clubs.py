"""How much wind golfers mean by "a one-club wind"."""

from __future__ import annotations

from collections.abc import Callable

MPH_PER_CLUB = 11.0
"""Head or side wind that golfers call a one-club wind [mph]: common practice says 10 to 12."""


def clubs_to_mph(
    n_clubs: float, carry_gap_yd: float | None = None, yards_per_mph: float | None = None
) -> float:
    """Wind [mph] of an "n-club wind".

    Parameters
    ----------
    n_clubs : float
        Clubs.
    carry_gap_yd, yards_per_mph : float, optional
        Carry between the player's neighbouring clubs [yd] and what a mile an hour against costs them
        [yd/mph]; without both, `MPH_PER_CLUB`.
    """
    if carry_gap_yd is None or yards_per_mph is None:
        return n_clubs * MPH_PER_CLUB
    return n_clubs * carry_gap_yd / yards_per_mph


ClubsToMph = Callable[[float, float], float]
"""(clubs, bearing of the wind off the shot [deg]: 0 against, 180 helping) -> mph."""
