"""Gusts, swings and the height of a wind, each from an option of its own."""

from __future__ import annotations

import re

from ..errors import UsageError
from ..toml_text import short_line
from .model import Height
from .phrases import DEGREE, NUMBER, UNIT, mph_of
from .text import clean

_GUSTS = re.compile(
    r"(?:gust(?:s|ing)? ?(?:of )?)?(?P<sign>\+ ?-|\+/-|up to|to|peak)? ?"
    rf"(?P<n>{NUMBER})(?: ?{UNIT})?(?: (?:either side|up and down|more or less))?"
)
_PEAK = re.compile(rf"gust(?:s|ing)? ?(?:up )?(?:to )?(?P<n>{NUMBER})(?: ?{UNIT})?")
"""As in a wind: "gusting 18" is a peak."""
_SWING = re.compile(
    rf"(?:swing(?:s|ing)? ?)?(?:\+ ?-|\+/-)? ?(?P<n>{NUMBER}) ?{DEGREE}?"
    r"(?: (?:either side|either way|both ways))?"
)
_NONE = ("none", "no", "nil", "no gusts", "no swing", "steady")

_HEIGHTS: dict[str, Height] = {
    "forecast": "forecast", "as forecast": "forecast", "10 m": "forecast", "10m": "forecast",
    "10 metres": "forecast", "felt": "felt", "felt here": "felt", "here": "felt", "head": "felt",
    "head height": "felt", "2 m": "felt", "2m": "felt",
}  # fmt: skip


def read_gusts(text: str) -> tuple[str, float]:
    """("gust_mph", +- so much) for ``"4"`` or ``"+-4 mph"``, ("peak_mph", peak) for ``"to 18"``."""
    phrase = clean(text)
    if phrase in _NONE:
        return "gust_mph", 0.0
    if told := _PEAK.fullmatch(phrase):
        return "peak_mph", mph_of(told)
    found = _GUSTS.fullmatch(phrase)
    if found is None:
        raise UsageError(
            f"gusts {short_line(text)!r}: allowed: how far either side, such as 4 or +-4 mph, or a peak "
            "such as to 18 mph"
        )
    peak = found["sign"] in ("up to", "to", "peak")
    return ("peak_mph" if peak else "gust_mph"), mph_of(found)


def read_swing(text: str) -> float:
    """Degrees to either side of ``"20"``, ``"+-20 degrees"``."""
    if clean(text) in _NONE:
        return 0.0
    found = _SWING.fullmatch(clean(text))
    if found is None:
        raise UsageError(
            f"swing {short_line(text)!r}: allowed: degrees to either side, such as 20 or +-20 (an hour of "
            "the clock is 30)"
        )
    return float(found["n"])


def read_height(text: str) -> Height:
    """Height a wind is given for."""
    found = _HEIGHTS.get(clean(text))
    if found is None:
        raise UsageError(
            f"wind at {short_line(text)!r}: 'forecast' (10 m, as weather services give it) or 'felt' (head "
            "height) is allowed"
        )
    return found
