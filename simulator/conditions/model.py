"""The day: wind, air, firmness and speed of greens, as plain frozen values."""

from __future__ import annotations

import math
from dataclasses import dataclass, field, replace
from typing import Any, Literal

from ..errors import UsageError
from ..physics.air import REFERENCE_HUMIDITY, REFERENCE_TEMPERATURE_C, pressure_pa
from ..physics.putting import DEFAULT_STIMP_FT
from ..physics.wind import WIND_MOST_MPH, felt_from_forecast, forecast_from_felt

Height = Literal["forecast", "felt"]

TEMPERATURE_C = (-20.0, 50.0)
"""Air temperatures taken [C]: wider than golf is played in (assumed)."""

ALTITUDE_M = (-450.0, 4500.0)
"""Altitudes taken [m]: from below the Dead Sea's shore to above the highest courses (assumed)."""

PRESSURE_HPA = (550.0, 1090.0)
"""Pressures at the course taken [hPa]: the standard atmosphere at 4800 m to above the highest ever measured
at sea level, 1084 (from memory)."""

HUMIDITY = (0.0, 1.0)
"""Relative humidity as a share."""

FIRMNESS = (0.0, 1.0)
"""Soft 0, medium 0.5, firm 1."""

MEDIUM_FIRMNESS = 0.5
"""What is taken where nobody says."""

STIMP_FT = (4.0, 16.0)
"""Stimpmeter readings taken [ft]: surveyed greens ran 6.5 to 12 (common practice), championships to 14."""

SWING_DEG = (0.0, 180.0)
"""Swing of the wind's direction to either side [deg]; 180 is every way."""


def _check(what: str, value: object, low: float, high: float, unit: str) -> None:
    """Refuse what is not a finite number in a range."""
    number = isinstance(value, int | float) and not isinstance(value, bool)
    if not number or not low <= value <= high:  # type: ignore[operator]
        shown = f"{value:g}" if number else repr(value)[:60]
        allowed = f"{low:g} to {high:g}" + (f" {unit}" if unit else "")
        raise UsageError(f"{what} {shown}{' ' + unit if number and unit else ''}: {allowed} is allowed")


@dataclass(frozen=True)
class Wind:
    """A wind by where it comes from.

    Parameters
    ----------
    speed_mph : float
        Mean speed at its height [mph], 0 to `WIND_MOST_MPH`.
    from_deg : float
        Bearing it comes from in the hole frame [deg], clockwise from +y, 0 <= from_deg < 360: 0 is dead
        against a shot along +y, 90 comes from the right of one.
    height : "forecast" or "felt"
        Height it was given for: 10 m, as weather services do, or a player's head.
    gust_mph : float
        The speed is anything from this much below to this much above the mean, all alike [mph]; at most the
        mean.
    swing_deg : float
        The direction is anything within this much of the mean to either side, all alike [deg].
    assumed : tuple of str
        What was not said and had to be taken for granted, a line each.

    Raises
    ------
    UsageError
        A number out of its range or not a number.
    """

    speed_mph: float
    from_deg: float
    height: Height = "forecast"
    gust_mph: float = 0.0
    swing_deg: float = 0.0
    assumed: tuple[str, ...] = field(default=(), compare=False)

    def __post_init__(self) -> None:
        _check("wind of", self.speed_mph, 0.0, WIND_MOST_MPH, "mph")
        _check("wind from", self.from_deg, 0.0, math.nextafter(360.0, 0.0), "degrees")
        if self.height not in ("forecast", "felt"):
            raise UsageError(f"wind height {str(self.height)[:40]!r}: 'forecast' or 'felt' is allowed")
        _check("gusts of +-", self.gust_mph, 0.0, self.speed_mph, "mph")
        _check("wind swinging +-", self.swing_deg, *SWING_DEG, "degrees")


def at_both_heights(wind: Wind) -> tuple[float, float]:
    """The same wind's speed [mph] at 10 m and at head height."""
    if wind.height == "forecast":
        return wind.speed_mph, felt_from_forecast(wind.speed_mph)
    return forecast_from_felt(wind.speed_mph), wind.speed_mph


def misread(wind: Wind) -> Wind:
    """The wind it would be had the same figures been meant at the other height."""
    return replace(wind, height="felt" if wind.height == "forecast" else "forecast")


@dataclass(frozen=True)
class Conditions:
    """What the day brings; as it stands, still air at 25 C on medium ground at sea level.

    Parameters
    ----------
    wind : Wind, optional
        None: still.
    temperature_c, altitude_m : float
        Of the air [C] and of the course [m].
    pressure_hpa : float, optional
        Pressure at the course itself [hPa], never one reduced to sea level; None: from the altitude.
    humidity : float
        Relative, 0 to 1.
    fairway_firmness, green_firmness : float
        0 soft, 0.5 medium, 1 firm.
    stimp_ft : float
        Stimpmeter reading of the greens [ft].
    assumed : tuple of str
        What was not said and is taken for granted, a line each.

    Raises
    ------
    UsageError
        A number out of its range or not a number.
    """

    wind: Wind | None = None
    temperature_c: float = REFERENCE_TEMPERATURE_C
    altitude_m: float = 0.0
    pressure_hpa: float | None = None
    humidity: float = REFERENCE_HUMIDITY
    fairway_firmness: float = MEDIUM_FIRMNESS
    green_firmness: float = MEDIUM_FIRMNESS
    stimp_ft: float = DEFAULT_STIMP_FT
    assumed: tuple[str, ...] = field(default=(), compare=False)

    def __post_init__(self) -> None:
        if self.wind is not None and not isinstance(self.wind, Wind):
            raise UsageError(f"wind {str(self.wind)[:40]!r}: a Wind or None is allowed")
        _check("temperature", self.temperature_c, *TEMPERATURE_C, "C")
        _check("altitude", self.altitude_m, *ALTITUDE_M, "m")
        if self.pressure_hpa is not None:
            _check("pressure at the course", self.pressure_hpa, *PRESSURE_HPA, "hPa")
        _check("humidity", self.humidity, *HUMIDITY, "")
        _check("fairway firmness", self.fairway_firmness, *FIRMNESS, "")
        _check("green firmness", self.green_firmness, *FIRMNESS, "")
        _check("Stimpmeter reading", self.stimp_ft, *STIMP_FT, "ft")

    @property
    def pressure_pa(self) -> float:
        """Pressure at the course [Pa], given or of the standard atmosphere at the altitude."""
        return pressure_pa(self.altitude_m) if self.pressure_hpa is None else 100.0 * self.pressure_hpa

    def firmness_of(self, surface: str) -> float:
        """Firmness to hand to ``physics.ground.ground_of`` for a surface by name."""
        return self.green_firmness if surface == "GREEN" else self.fairway_firmness

    def to_dict(self) -> dict[str, Any]:
        """The day as plain JSON-ready data."""
        wind = self.wind
        blowing = None
        if wind is not None:
            at_10m, at_head = at_both_heights(wind)
            blowing = {
                "speed_mph": wind.speed_mph,
                "from_deg": wind.from_deg,
                "height": wind.height,
                "gust_mph": wind.gust_mph,
                "swing_deg": wind.swing_deg,
                "at_10_m_mph": at_10m,
                "at_head_height_mph": at_head,
            }
        return {
            "wind": blowing,
            "temperature_c": self.temperature_c,
            "altitude_m": self.altitude_m,
            "pressure_hpa": self.pressure_pa / 100.0,
            "humidity": self.humidity,
            "fairway_firmness": self.fairway_firmness,
            "green_firmness": self.green_firmness,
            "stimp_ft": self.stimp_ft,
        }
