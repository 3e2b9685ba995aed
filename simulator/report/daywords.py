"""The day in words: wind as the hands of a clock, air, firmness, and what the day does to the shot."""

from __future__ import annotations

from ..conditions import Conditions, at_both_heights
from ..strategy.day import PUTT_FT
from ..strategy.result import TIE_STROKES, Answer
from .figures import capital
from .units import YARDS, Units


def day_words(conditions: Conditions, units: Units = YARDS) -> str:
    """The day in a phrase; the other height's wind beside the one given."""
    wind = conditions.wind
    air = f"{conditions.temperature_c:.0f} C"
    if conditions.altitude_m:
        air += f", {conditions.altitude_m:.0f} m up"
    if wind is None or wind.speed_mph == 0.0:
        return f"still air, {air}"
    at_10m, at_head = at_both_heights(wind)
    told = (
        f"as forecast, {units.wind(at_head)} at head height"
        if wind.height == "forecast"
        else f"as felt, {units.wind(at_10m)} at 10 m"
    )
    speed = f"{units.wind(wind.speed_mph)} {units.wind_unit}"
    return f"wind {speed} from {clock(wind.from_deg)} ({told}), {air}"


def clock(from_deg: float) -> str:
    """A direction by the clock, to half an hour, 12 dead against: "half past 10" is into and off the left."""
    hour, half = divmod(round(from_deg / 15.0) % 24, 2)
    return f"half past {hour or 12}" if half else f"{hour or 12} o'clock"


def firmness_words(conditions: Conditions) -> str:
    """Firmness and green speed where they are not the usual ones; empty where they are."""
    said = []
    for what, value in (("fairways", conditions.fairway_firmness), ("greens", conditions.green_firmness)):
        if value != 0.5:
            word = "firm" if value >= 0.75 else "soft" if value <= 0.25 else f"of firmness {value:g}"
            said.append(f"{what} {word}")
    if conditions.stimp_ft != Conditions().stimp_ft:
        said.append(f"greens at {conditions.stimp_ft:g} ft")
    return ", ".join(said)


def wind_words(
    conditions: Conditions, along_deg: float, of: str = "the shot", units: Units = YARDS
) -> str:
    """A mean wind above nothing as a line on a bearing meets it, without a capital; else empty."""
    wind = conditions.wind
    if wind is None or wind.speed_mph <= 0.0:
        return ""
    gusts = f" +- {units.wind(wind.gust_mph)}" if round(wind.gust_mph) else ""
    level = "forecast, at 10 m" if wind.height == "forecast" else "felt at head height"
    swing = f", +- {wind.swing_deg:.0f} degrees" if round(wind.swing_deg) else ""
    hands = clock(wind.from_deg - along_deg)
    speed = f"{units.wind(wind.speed_mph)}{gusts} {units.wind_unit}"
    return f"wind {speed} from {hands} of {of}{swing}, taken as {level}"


def day_told(
    conditions: Conditions, along_deg: float = 0.0, of: str = "the first leg", units: Units = YARDS
) -> str:
    """The day as a page says it: wind, air and ground where they are not the usual ones, else empty.

    Parameters
    ----------
    along_deg : float
        Bearing the wind's direction is told from, clockwise from the first leg [deg].
    of : str
        What has that bearing.
    """
    usual = Conditions()
    air = []
    if round(conditions.temperature_c) != round(usual.temperature_c):
        air.append(f"{conditions.temperature_c:.0f} C")
    if round(conditions.altitude_m):
        air.append(f"{conditions.altitude_m:.0f} m up")
    if conditions.pressure_hpa is not None:
        air.append(f"{conditions.pressure_hpa:.0f} hPa at the course")
    parts = (wind_words(conditions, along_deg, of, units), ", ".join(air), firmness_words(conditions))
    words = "; ".join(part for part in parts if part)
    return f"{capital(words)}." if words else ""


def day_sentence(answer: Answer, units: Units = YARDS, *, putt: bool = True) -> str:
    """What the day is and does, for the answer screen; empty on a still, level, usual day.

    `putt`: with the side of the hole to be on.
    """
    conditions, day = answer.conditions, answer.day
    said = []
    wind = conditions.wind
    text = wind_words(conditions, answer.best.aim_bearing_deg, units=units)
    if wind is not None and text:
        text = capital(text)
        other = day.other_height_carry_yd
        if other is not None and abs(other) >= day.half_club_yd:
            meant = "felt at head height" if wind.height == "forecast" else "forecast at 10 m"
            text += f"; if {meant}, {units.length(abs(other))} {'more' if other > 0 else 'less'} carry"
        said.append(text)
    ground = firmness_words(conditions)
    if ground:
        said.append(ground if said else capital(ground))
    if putt and day.below_hole_strokes is not None and day.below_hole_strokes >= TIE_STROKES:
        length = units.putt(PUTT_FT)
        said.append(
            f"{length} below the hole is worth {day.below_hole_strokes:.2f} strokes over {length} above"
        )
    return "; ".join(said) + "." if said else ""
