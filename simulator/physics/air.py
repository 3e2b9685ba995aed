"""Density and viscosity of the air from temperature, pressure or altitude, and humidity."""

from __future__ import annotations

import math

REFERENCE_TEMPERATURE_C = 25.0
"""77 F: the stated basis of the published tour averages the flight model is fitted to."""

REFERENCE_HUMIDITY = 0.5
"""Relative humidity of the reference air: assumed (100 % against 0 % is worth about 1 yd of carry)."""

SEA_LEVEL_PRESSURE_PA = 101325.0
"""International Standard Atmosphere, ISO 2533:1975."""

STANDARD_LAPSE_PER_M = 2.25577e-5
STANDARD_EXPONENT = 5.25588
"""p = p0 (1 - lapse h)^exponent: ISO 2533:1975, below 11 km."""

KELVIN_AT_0_C = 273.15

GAS_CONSTANT_DRY = 287.058
"""Specific gas constant of dry air [J/(kg K)]."""

GAS_CONSTANT_VAPOUR = 461.495
"""Specific gas constant of water vapour [J/(kg K)]."""


def pressure_pa(altitude_m: float) -> float:
    """Pressure of the International Standard Atmosphere at an altitude [m] below 11 km [Pa].

    ``p = 101325 (1 - 2.25577e-5 h)^5.25588`` (ISO 2533:1975). A pressure already reduced to sea
    level, as weather reports give it, is not the pressure at the course.
    """
    return SEA_LEVEL_PRESSURE_PA * float((1.0 - STANDARD_LAPSE_PER_M * altitude_m) ** STANDARD_EXPONENT)


def pressure_from_sea_level_pa(sea_level_pa: float, altitude_m: float) -> float:
    """Pressure at an altitude [m] whose reading reduced to sea level (QNH, altimeter setting) is given [Pa].

    Weather services reduce by the standard atmosphere's own law, so ``p^(1/n) = q^(1/n) - p0^(1/n) lapse h``
    with its constants (ISO 2533:1975; ICAO Doc 7488 for the practice, from memory).
    """
    n = STANDARD_EXPONENT
    step = SEA_LEVEL_PRESSURE_PA ** (1.0 / n) * STANDARD_LAPSE_PER_M * altitude_m
    return float((sea_level_pa ** (1.0 / n) - step) ** n)


def density_kg_m3(temperature_c: float, pressure: float, humidity: float) -> float:
    """Density of moist air [kg/m^3].

    Ideal gases, saturation pressure by the Magnus formula ``e_s = 611.2 exp(17.62 t / (243.12 + t))`` Pa
    (WMO Guide to Instruments, WMO-No. 8, annex 4.B).

    Parameters
    ----------
    temperature_c : float
        The air's own temperature [C].
    pressure : float
        Pressure at the place [Pa].
    humidity : float
        Relative humidity, 0 to 1.
    """
    kelvin = temperature_c + KELVIN_AT_0_C
    vapour = humidity * 611.2 * math.exp(17.62 * temperature_c / (243.12 + temperature_c))
    return (pressure - vapour) / (GAS_CONSTANT_DRY * kelvin) + vapour / (GAS_CONSTANT_VAPOUR * kelvin)


def kinematic_viscosity_m2_s(temperature_c: float, density: float) -> float:
    """Kinematic viscosity of air [m^2/s] by Sutherland's law.

    ``mu = 1.716e-5 (T / 273.15)^1.5 (273.15 + 110.4) / (T + 110.4)`` (F. M. White, Viscous Fluid Flow).
    """
    kelvin = temperature_c + KELVIN_AT_0_C
    mu = 1.716e-5 * (kelvin / 273.15) ** 1.5 * (273.15 + 110.4) / (kelvin + 110.4)
    return float(mu / density)
