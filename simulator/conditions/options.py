"""The day put together from the options of a command, all of them optional."""

from __future__ import annotations

import math

from ..errors import UsageError
from ..physics.air import REFERENCE_HUMIDITY, REFERENCE_TEMPERATURE_C
from ..physics.putting import DEFAULT_STIMP_FT
from .extras import read_height
from .firmness import firmness_assumed, read_firmness
from .model import MEDIUM_FIRMNESS, Conditions, Wind
from .quantities import (
    read_altitude,
    read_humidity,
    read_pressure,
    read_stimp,
    read_temperature,
    stimp_taken,
)
from .windwords import read_wind

LARGEST = 1e9
"""No option takes a number as large as this, and Python has whole ones that no float holds."""


def as_words(given: object) -> str | None:
    """An option's words, a number as it would be typed; None: it is neither."""
    if isinstance(given, str):
        return given
    number_like = isinstance(given, int | float) and not isinstance(given, bool)
    return f"{given:g}" if number_like and abs(given) < LARGEST else None  # type: ignore[arg-type]


Option = str | float | None
"""What an option of the day may be: words, a number as it would be typed, or left out."""


def conditions_from(
    wind: Option = None,
    wind_at: Option = None,
    gusts: Option = None,
    swing: Option = None,
    temperature: Option = None,
    altitude: Option = None,
    pressure: Option = None,
    humidity: Option = None,
    firmness: Option = None,
    stimp: Option = None,
    *,
    along_deg: float = 0.0,
    y_bearing_deg: float | None = None,
) -> Conditions:
    """Conditions of the day.

    Parameters
    ----------
    wind, wind_at, gusts, swing, temperature, altitude, pressure, humidity, firmness, stimp : str or float
        As typed: ``"12 mph from 2 o'clock"``, ``"forecast"`` or ``"felt"``, ``"4"``, ``"20"``, ``"12 C"``,
        ``"3,000 ft"``, ``"sea level 1020"``, ``"60 %"``, ``"soft fairways, medium greens"``, ``"10"``; or a
        number as it would be typed (``gusts=4``). What is left out is as in `Conditions`, and said in its
        `assumed`.
    along_deg, y_bearing_deg : float, optional
        As in `windwords.read_wind`: winds are told from a shot along the first leg, and of no compass, unless
        these say more.

    Raises
    ------
    UsageError
        One line naming the option, what was found and what is allowed.
    """
    wind, wind_at = _said("wind", wind), _said("wind at", wind_at)
    gusts, swing = _said("gusts", gusts), _said("swing", swing)
    temperature, altitude = _said("temperature", temperature), _said("altitude", altitude)
    pressure, humidity = _said("pressure", pressure), _said("humidity", humidity)
    firmness, stimp = _said("firmness", firmness), _said("stimp", stimp)
    for name, bearing in (("along_deg", along_deg), ("y_bearing_deg", y_bearing_deg)):
        if bearing is not None and not (isinstance(bearing, int | float) and math.isfinite(bearing)):
            raise UsageError(f"{name} {str(bearing)[:60]}: a number of degrees is allowed")
    blowing, assumed = _wind(wind, wind_at, gusts, swing, along_deg, y_bearing_deg)
    altitude_m = None if altitude is None else read_altitude(altitude)
    pressure_hpa = None
    if pressure is not None:
        pressure_hpa, note = read_pressure(pressure, altitude_m)
        assumed.extend([note] if note else [])
    elif altitude_m is None:
        assumed.append("sea level, 1013 hPa")
    if temperature is None:
        assumed.append(f"{REFERENCE_TEMPERATURE_C:g} C ({REFERENCE_TEMPERATURE_C * 1.8 + 32:g} F)")
    if humidity is None:
        assumed.append(f"humidity {100 * REFERENCE_HUMIDITY:g} %")
    fairway, green, taken = _firmness(firmness)
    assumed.extend(taken)
    if stimp is None:
        assumed.append(f"greens at Stimp {DEFAULT_STIMP_FT:g}")
    elif (reading := stimp_taken(stimp)) is not None:
        assumed.append(reading)
    return Conditions(
        wind=blowing,
        temperature_c=REFERENCE_TEMPERATURE_C if temperature is None else read_temperature(temperature),
        altitude_m=altitude_m or 0.0,
        pressure_hpa=pressure_hpa,
        humidity=REFERENCE_HUMIDITY if humidity is None else read_humidity(humidity),
        fairway_firmness=fairway,
        green_firmness=green,
        stimp_ft=DEFAULT_STIMP_FT if stimp is None else read_stimp(stimp),
        assumed=tuple(assumed),
    )


def _said(name: str, given: Option) -> str | None:
    """An option in words, None where it is left out."""
    words = as_words(given)
    if words is None and given is not None:
        raise UsageError(f"{name} {str(given)[:60]}: text is allowed, or a number as it would be typed")
    return words


def _wind(
    wind: str | None,
    wind_at: str | None,
    gusts: str | None,
    swing: str | None,
    along_deg: float,
    y_bearing_deg: float | None,
) -> tuple[Wind | None, list[str]]:
    """The wind, None without one, and what was taken for granted of it."""
    height = None if wind_at is None else read_height(wind_at)
    if wind is None:
        for name, option in (("wind height", wind_at), ("gusts", gusts), ("swing", swing)):
            if option is not None:
                raise UsageError(f"{name} given without a wind; give the wind too, or leave it out")
        return None, ["no wind"]
    blowing = read_wind(
        wind,
        along_deg=along_deg,
        y_bearing_deg=y_bearing_deg,
        height=height,
        gusts=gusts,
        swing=swing,
    )
    return blowing, list(blowing.assumed if blowing else ())


def _firmness(words: str | None) -> tuple[float, float, tuple[str, ...]]:
    """Firmness of fairways and greens, 0 soft to 1 firm, and what was taken for granted."""
    fairway, green = (None, None) if words is None else read_firmness(words)
    left_out = [name for name, said in (("fairways", fairway), ("greens", green)) if said is None]
    assumed = [f"{' and '.join(left_out)} of medium firmness"] if left_out else []
    if words is not None:
        assumed.extend(firmness_assumed(words))
    return (
        MEDIUM_FIRMNESS if fairway is None else fairway,
        MEDIUM_FIRMNESS if green is None else green,
        tuple(assumed),
    )
