"""Temperature, altitude, pressure, humidity and speed of greens as people write them."""

from __future__ import annotations

import re

from ..errors import UsageError
from ..physics.air import pressure_from_sea_level_pa, pressure_pa
from ..physics.putting import M_PER_FT
from ..toml_text import short_line
from .text import clean

_SIGNED = r"(?:about |around |roughly )?(?P<n>(?:[+-]|minus|plus)? ?\d+(?:\.\d+)?)"
_TEMPERATURE = re.compile(
    rf"{_SIGNED} ?(?:°|º|deg(?:ree)?s?)? ?(?:(?P<c>c|celsius|centigrade)|(?P<f>f|fahrenheit))"
)
_ALTITUDE = re.compile(
    rf"{_SIGNED} ?(?:(?P<m>m|met(?:er|re)s?)|(?P<ft>ft|feet|foot|'))(?: (?:up|high|above sea level|asl))?"
)
_DEGREES = re.compile(
    r"(?:(?:very )?(?:freezing|cold|chilly|cool|mild|warm|hot),? )?"
    r"(?P<n>(?:minus |plus |[-+])?\d{1,3}(?:\.\d+)?) ?(?:°|degrees?|deg)?"
)
_PRESSURE = re.compile(
    r"(?P<before>(?:at )?sea[ -]level|qnh|altimeter|reduced|station|qfe|here|at the course)?:? ?"
    r"(?P<n>\d+(?:\.\d+)?) ?(?P<unit>hpa|mbar|mb|millibars?|kpa|inhg|in ?hg|mmhg|mm ?hg)?,? ?"
    r"(?P<after>(?:at )?sea[ -]level|qnh|altimeter|reduced|station|qfe|here|at the course)?"
)
_HUMIDITY = re.compile(r"(?P<n>\d+(?:\.\d+)?) ?(?P<percent>%|per ?cent|percent)?(?: rh)?")
_STIMP = re.compile(
    r"(?:(?:stimp(?:ing|ed|meter)?|running|rolling)(?: (?:of|at))? |about |around )?"
    r"(?:(?P<low>\d+(?:\.\d+)?) ?(?:-|to) ?)?"
    r"(?:(?P<n>\d+(?:\.\d+)?) ?(?P<unit>ft|feet|m|met(?:er|re)s)?"
    r"|(?P<feet>\d+) ?(?:'|ft) ?(?P<inches>\d+(?:\.\d+)?) ?(?:\"|''|in))(?: (?:on the )?stimp(?:meter)?)?"
)

HPA_PER = {"hpa": 1.0, "mb": 1.0, "kpa": 10.0, "inhg": 33.8639, "mmhg": 1.333224}
"""Hectopascals in each unit of pressure; mercury at 0 C (from memory)."""

STIMP_WORDS = {
    "very slow": 7.0, "slow": 8.0, "medium slow": 9.0, "medium": 10.0, "normal": 10.0, "average": 10.0,
    "medium fast": 11.0, "fairly fast": 11.0, "quick": 11.0, "fast": 12.0, "very fast": 13.0, "slick": 13.0,
}  # fmt: skip
"""Stimpmeter readings meant by a word [ft] (common practice)."""

MOST_BARE_C, LEAST_BARE_F = 30.0, 46.0
"""A temperature without a scale is in Celsius up to the first and in Fahrenheit from the second on: nobody
plays in 30 F or 46 C (assumed). Between them it may be either."""

TEMPERATURE_WORDS = {"freezing": 0, "cold": 5, "chilly": 8, "cool": 12, "mild": 16, "warm": 22, "hot": 30}
"""Degrees Celsius offered for a word, not taken: what is warm depends on where one plays (assumed)."""

REDUCED_BEYOND = 0.05
"""A pressure this share above the standard atmosphere's at its altitude is one reduced to sea level: weather
alone moves it by less (1064 hPa at sea level; assumed)."""


def read_temperature(text: str) -> float:
    """Temperature [C] of ``"12 C"``, ``"55 F"``, ``"12 degrees Celsius"``, ``"cold, 5 degrees"``."""
    phrase = clean(text)
    if bare := _DEGREES.fullmatch(phrase):
        degrees = _signed(bare["n"])
        if degrees <= MOST_BARE_C:
            return degrees
        if degrees >= LEAST_BARE_F:
            return _celsius(degrees)
    found = _TEMPERATURE.fullmatch(phrase)
    if found is None:
        celsius = TEMPERATURE_WORDS.get(phrase.removeprefix("very "))
        example = "12 C or 55 F" if celsius is None else f"{celsius} C or {1.8 * celsius + 32:.0f} F"
        raise UsageError(
            f"temperature {short_line(text)!r}: allowed: a number with its scale, such as {example}"
        )
    value = _signed(found["n"])
    return value if found["c"] else _celsius(value)


def _celsius(fahrenheit: float) -> float:
    return (fahrenheit - 32.0) / 1.8


def _signed(text: str) -> float:
    return float(text.replace("minus", "-").replace("plus", "+").replace(" ", ""))


def read_altitude(text: str) -> float:
    """Altitude [m] of ``"1200 m"`` or ``"3,000 ft"``."""
    if clean(text) in ("sea level", "at sea level"):
        return 0.0
    found = _ALTITUDE.fullmatch(clean(text))
    if found is None:
        raise UsageError(
            f"altitude {short_line(text)!r}: allowed: a number with its unit, such as 1200 m or 3,000 ft, or "
            "sea level"
        )
    return _signed(found["n"]) * (1.0 if found["m"] else M_PER_FT)


def read_pressure(text: str, altitude_m: float | None) -> tuple[float, str | None]:
    """Pressure at the course [hPa] and what was assumed of it.

    ``"950 hPa"`` is taken at the course; ``"sea level 1020"``, ``"QNH 1020"`` and ``"altimeter 30.1 inHg"``
    are reduced to sea level and turned back with the altitude. A bare number is in hPa.

    Raises
    ------
    UsageError
        Words that are not understood; a reduced pressure without an altitude; a pressure that at this
        altitude can only be a reduced one.
    """
    shown = short_line(text)
    found = _PRESSURE.fullmatch(clean(text))
    if found is None or (found["before"] and found["after"]):
        raise UsageError(f"pressure {shown!r}: such as 1013 hPa, 29.9 inHg or sea level 1020 is allowed")
    unit = (found["unit"] or "hpa").replace(" ", "")
    unit = "mb" if unit.startswith("m") and unit != "mmhg" else unit
    value = float(found["n"]) * HPA_PER[unit]
    words = found["before"] or found["after"]
    reduced = words is not None and words not in ("station", "qfe", "here", "at the course")
    if reduced:
        if altitude_m is None:
            raise UsageError(f"pressure {shown!r}: reduced to sea level, so the altitude is needed with it")
        if not 850.0 <= value <= 1090.0:
            raise UsageError(f"pressure {shown!r}: 850 to 1090 hPa is allowed at sea level")
        at_course = pressure_from_sea_level_pa(100.0 * value, altitude_m) / 100.0
        return at_course, None
    standard = pressure_pa(altitude_m or 0.0) / 100.0
    if altitude_m is not None and value > (1.0 + REDUCED_BEYOND) * standard:
        raise UsageError(
            f"pressure {shown!r}: too much for {altitude_m:.0f} m, where {standard:.0f} hPa is usual; if it "
            f"is reduced to sea level, say 'sea level {value:.0f}'"
        )
    if words is None:
        return value, f"{value:.4g} hPa taken as the pressure at the course, not one reduced to sea level"
    return value, None


def read_humidity(text: str) -> float:
    """Relative humidity, 0 to 1, of ``"60 %"``, ``"60"`` or ``"0.6"``."""
    found = _HUMIDITY.fullmatch(clean(text))
    if found is None:
        raise UsageError(f"humidity {short_line(text)!r}: a percentage such as 60 % is allowed")
    value = float(found["n"])
    if found["percent"] is None and value == 1.0:
        raise UsageError(f"humidity {short_line(text)!r}: may be 1 % or all; say 1 % or 100 %")
    share = value / 100.0 if found["percent"] or value > 1.0 else value
    if not share <= 1.0:
        raise UsageError(f"humidity {short_line(text)!r}: 0 to 100 % is allowed")
    return share


def stimp_taken(text: str) -> str | None:
    """What to say of a speed of greens that was a word or a range; None when it was a number."""
    found = _STIMP.fullmatch(clean(text))
    if _stimp_word(text) is None and (found is None or found["low"] is None):
        return None
    return f"{short_line(text)!r} greens taken as Stimp {read_stimp(text):g}"


def _stimp_word(text: str) -> str | None:
    phrase = clean(text).removesuffix(" greens").replace("medium-", "medium ")
    return phrase if phrase in STIMP_WORDS else None


def read_stimp(text: str) -> float:
    """Stimpmeter reading [ft] of ``"10"``, ``10'6"``, ``"9 to 10"``, ``"3.1 m"``, ``"fast"``."""
    word = _stimp_word(text)
    if word is not None:
        return STIMP_WORDS[word]
    found = _STIMP.fullmatch(clean(text))
    if found is None or (found["low"] and found["feet"]):
        raise UsageError(
            f"stimp {short_line(text)!r}: allowed: feet such as 10 or 10'6\", or slow, medium, fast, very "
            "fast"
        )
    if found["feet"]:
        inches = float(found["inches"])
        if inches >= 12.0:
            raise UsageError(f"stimp {short_line(text)!r}: a foot has 12 inches")
        return float(found["feet"]) + inches / 12.0
    value = float(found["n"])
    if found["low"]:
        value = 0.5 * (value + float(found["low"]))
    return value / M_PER_FT if (found["unit"] or "f").startswith("m") else value
