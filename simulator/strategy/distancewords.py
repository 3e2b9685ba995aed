"""Distances and heights as they are typed: "164, adjusted 169", "150 m", "-20 ft"."""

from __future__ import annotations

import re

from ..errors import UsageError
from ..spelt import in_figures
from ..units import FT_PER_YD, YD_PER_M

UNITS = {"yd": 1.0, "yds": 1.0, "y": 1.0, "yard": 1.0, "yards": 1.0, "m": YD_PER_M, "metre": YD_PER_M,
         "metres": YD_PER_M, "meter": YD_PER_M, "meters": YD_PER_M,
         "pace": 1.0, "paces": 1.0, "step": 1.0, "steps": 1.0}  # fmt: skip
"""Yards in each unit; a pace is a yard (common practice)."""

FEET = {"feet": 1.0 / FT_PER_YD, "foot": 1.0 / FT_PER_YD, "ft": 1.0 / FT_PER_YD}
"""Yards in a foot, by its names: read where heights and places by the green are told."""

NUMBER = r"[-+]?[0-9]{1,9}(?:\.[0-9]{0,9})?"
UNIT, UNIT_OR_FEET = "|".join(UNITS), "|".join((*UNITS, *FEET))
"""Patterns of a number and of its unit."""

_PAIR = re.compile(
    rf"\s*(?P<level>\d+(?:\.\d+)?)\s*(?P<unit>{UNIT})?\s*"
    r"(?:,?\s*(?:adjusted|slope|plays)\s*(?:to|like)?\s*(?P<pair>\d+(?:\.\d+)?)"
    rf"\s*(?P<last>{UNIT})?)?\s*"
)
_DAY = re.compile(r"\b(?:up|down|uphill|downhill|above|below|into|against|help\w*|down\s*wind|wind|clubs?)\b")
"""Words of a slope or a wind behind a distance: options of their own."""

_LENGTH = re.compile(rf"\s*(?P<number>[+-]?\d+(?:\.\d+)?)\s*(?P<unit>{UNIT_OR_FEET})?\s*")


def yards(number: str, unit: str | None) -> float:
    """A length [yd]; without a unit it is in yards."""
    return float(number) * (UNITS | FEET)[unit or "yd"]


def _plain(text: str) -> str:
    """Small letters, numbers in figures."""
    return in_figures(text.casefold(), ones=True)


def read_height(text: str) -> float:
    """Height of a target over the ball as typed [yd]: yards, or ``m`` or ``ft`` behind; below negative.

    Raises
    ------
    UsageError
        Anything else.
    """
    found = _LENGTH.fullmatch(_plain(text))
    if not found:
        raise UsageError(f'height {text!r}; allowed: yards such as 6 or -6, or "5 m", "-20 ft"')
    return yards(found["number"], found["unit"])


def read_adjusted(text: str, distance: str) -> float:
    """A laser's second number typed by itself [yd]: in the unit of the distance, as in a pair, or its own.

    Raises
    ------
    UsageError
        Anything else.
    """
    found, first = _LENGTH.fullmatch(_plain(text)), _PAIR.fullmatch(_plain(distance))
    if not found or found["unit"] not in (None, *UNITS):
        raise UsageError(f'adjusted distance {text!r}; allowed: a number such as 169, or "155 m"')
    unit = found["unit"] or (first["unit"] if first else None)
    return yards(found["number"], unit)


def read_distance(text: str) -> tuple[float, float | None]:
    """A distance as typed, and the laser's second number if it was given: ``"164, adjusted 169"``.

    Raises
    ------
    UsageError
        Anything else.
    """
    found = _PAIR.fullmatch(_plain(text))
    if not found:
        allowed = 'yards such as 164, metres such as "150 m", or "164, adjusted 169"'
        more = _DAY.search(_plain(text))
        options = '; a height is said with --height "-20 ft", the wind with --wind "12 mph against"'
        raise UsageError(f"distance {text!r}; allowed: {allowed}{options if more else ''}")
    unit, last = found["unit"] or found["last"], found["last"] or found["unit"]
    pair = None if found["pair"] is None else yards(found["pair"], last)
    return yards(found["level"], unit), pair
