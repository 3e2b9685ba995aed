"""Wind at other heights than the one it was given for: the logarithmic profile and its constants."""

from __future__ import annotations

import math

FORECAST_HEIGHT_M = 10.0
"""Height weather stations measure and forecasts speak of [m]: WMO Guide to Instruments, WMO-No. 8."""

HEAD_HEIGHT_M = 2.0
"""Height at which a player feels the wind or holds a meter up [m]: common practice."""

ROUGHNESS_OPEN_M = 0.03
"""Roughness length of open land with short rough and isolated obstacles [m]: class "open" of the Davenport
classes in WMO-No. 8 (from memory; short mown grass alone 0.01, with hedges and scattered trees 0.1). One
value for every course: shelter behind trees is not modelled."""

WIND_MOST_MPH = 60.0
"""Strongest wind taken at either height [mph] (assumed): Beaufort 10 begins at 55 mph; no golf is played in
it."""


def height_ratio(
    height_m: float, reference_m: float = FORECAST_HEIGHT_M, roughness_m: float = ROUGHNESS_OPEN_M
) -> float:
    """Wind at a height over wind at a reference height by the log law, ``ln(z/z0) / ln(z_ref/z0)``.

    Neutral air over flat open ground (R. B. Stull, Boundary Layer Meteorology, 1988; from memory); no wind
    at or below the roughness length.

    Parameters
    ----------
    height_m, reference_m, roughness_m : float
        Heights above the ground and roughness length [m]; the reference is above the roughness length.

    Raises
    ------
    ValueError
        A height that is not a positive number, or a reference at or below the roughness length.
    """
    if not (math.isfinite(height_m + reference_m) and height_m > 0.0 and 0.0 < roughness_m < reference_m):
        raise ValueError(f"no log law: heights {height_m} and {reference_m} m, roughness {roughness_m} m")
    if height_m <= roughness_m:
        return 0.0
    return math.log(height_m / roughness_m) / math.log(reference_m / roughness_m)


def forecast_from_felt(speed: float) -> float:
    """Wind at 10 m where `speed` (any unit) is felt at head height: about 1.38 times as much."""
    return speed / height_ratio(HEAD_HEIGHT_M)


def felt_from_forecast(speed: float) -> float:
    """Wind at head height where `speed` (any unit) is forecast for 10 m: about 0.72 of it."""
    return speed * height_ratio(HEAD_HEIGHT_M)
