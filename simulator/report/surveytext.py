"""What a survey found: every point and how sure it is, what disagrees, what to read next."""

from __future__ import annotations

import math
from collections import Counter
from typing import Any

from ..hole.survey import Advice, Point, Surveyed
from .figures import join_words
from .screen import wrap
from .units import YARDS, Units

SCHEMA = "holesim-survey-1"


def survey_text(found: Surveyed, units: Units = YARDS) -> str:
    """The points as a table, then sentences."""
    width = max(12, *(len(name) for name in found.points)) + 2
    first = f"point ({units.short})"
    up = "up" if any(p.height_yd is not None for p in found.points.values()) else ""
    lines = [f"{first:<{width}}{'along':>7}{'8 in 10':>13}{'beside':>9}{'8 in 10':>14}{up:>7}"]
    for p in found.points.values():
        low, high = map(units.number, p.station_80_yd)
        height = "" if p.height_yd is None else units.number(p.height_yd, 1, signed=True)
        sides = " to ".join(map(units.mark, p.offset_80_yd))
        lines.append(
            f"{p.name:<{width}}{units.number(p.station_yd):>7}{f'{low} to {high}':>13}"
            f"{units.mark(p.offset_yd):>9}{sides:>14}{height:>7}"
        )
    said = [*_green(found, units), *warnings(found, units), *_advice(found, units)]
    lines = [line.rstrip() for line in lines]
    return "\n".join([*lines, ""] + [line for words in said for line in wrap(words)])


def warnings(found: Surveyed, units: Units = YARDS) -> list[str]:
    """Readings left out, names spelt two ways, heights that count from nowhere, points hardly fixed."""
    return [*_suspects(found, units), *_misspelt(found), *_untied(found), *_hardly(found, units)]


def survey_dict(found: Surveyed) -> dict[str, Any]:
    """The same as plain JSON-ready data."""
    advice = found.advice
    return {
        "schema": SCHEMA,
        "hole": found.survey.name,
        "length_yd": found.length_yd,
        "points": [
            {
                "name": p.name,
                "x_yd": p.x_yd,
                "y_yd": p.y_yd,
                "station_yd": p.station_yd,
                "offset_yd": p.offset_yd,
                "height_yd": p.height_yd,
                "station_8_in_10_yd": list(p.station_80_yd),
                "offset_8_in_10_yd": list(p.offset_80_yd),
                "hardly_fixed": p.hardly_fixed,
            }
            for p in found.points.values()
        ],
        "left_out": [
            {
                "reading": s.reading.words,
                "value": s.reading.value,
                "too_long_by": s.off,
                "times_its_error": s.times,
                "or": [r.words for r in s.instead],
            }
            for s in found.suspects
        ],
        "pinned_by": [
            {
                "point": point,
                "reading": None if pin is None else pin.reading.words,
                "about_yd": None if pin is None else pin.reading.value,
                "sd_after_yd": None if pin is None else pin.after_yd,
            }
            for point, pin in found.pinned_by.items()
        ],
        "next_reading": None
        if advice is None
        else {
            "reading": advice.reading.words,
            "about_yd": advice.reading.value,
            "helps": advice.point,
            "sd_before_yd": advice.before_yd,
            "sd_after_yd": advice.after_yd,
        },
    }


def _green(found: Surveyed, units: Units) -> list[str]:
    """Depth of the green and the room before and behind the flag, from one stand that read all three."""
    by_name = {name.casefold(): p for name, p in found.points.items()}
    if not {"front", "flag", "back"} <= by_name.keys():
        return []
    depth = _apart(by_name["front"], by_name["back"])
    before, behind = _apart(by_name["front"], by_name["flag"]), _apart(by_name["flag"], by_name["back"])
    return [
        f"The green is {units.number(depth)} {units.name} deep: {units.number(before)} of room in front of "
        f"the flag, {units.number(behind)} behind it."
    ]


def _apart(a: Point, b: Point) -> float:
    return math.hypot(a.x_yd - b.x_yd, a.y_yd - b.y_yd)


def _suspects(found: Surveyed, units: Units) -> list[str]:
    out = []
    for s in found.suspects:
        if s.reading.kind == "direction":
            amount = f"{abs(math.degrees(s.off)):.0f} degrees too far {'right' if s.off > 0 else 'left'}"
            value = f"{math.degrees(s.reading.value):.0f} degrees"
        else:
            amount = f"{units.number(abs(s.off))} {units.name} too {'long' if s.off > 0 else 'short'}"
            value = units.number(s.reading.value)
        words = (
            f"The {s.reading.words} ({value}) disagrees with the others: {amount} by them. It was left out"
        )
        if s.instead:
            words += f", but it may as well be the {' or the '.join(r.words for r in s.instead[:3])}"
        out.append(f"{words}; read {'them' if s.instead else 'it'} again.")
    return out


def _misspelt(found: Surveyed) -> list[str]:
    """Points read once whose names are another's but for the order of letters, capitals or blanks."""
    times = Counter(one.point for one in found.survey.ranges)
    return [
        f"{name} was read once: if it is {other}, write it the same."
        for name in times
        for other in times
        if times[name] == 1 and name != other and _letters(name) == _letters(other)
        if times[other] > 1 or list(times).index(other) < list(times).index(name)
    ]


def _letters(name: str) -> list[str]:
    return sorted(name.casefold().replace(" ", ""))


def _untied(found: Surveyed) -> list[str]:
    """Heights left out, because nothing ties the stand they were read from to the tee."""
    left_out: dict[str, list[str]] = {}
    for one in found.survey.ranges:
        if one.height_yd is not None and found.points[one.point].height_yd is None:
            left_out.setdefault(one.stand, []).append(one.point)
    return [
        f"{'Heights' if len(points) > 1 else 'The height'} of {join_words(points)} "
        f"{'were' if len(points) > 1 else 'was'} read from the {stand}, whose own nobody told: left out. "
        f"Read the height of the {stand} from the tee, or that of one of its points."
        for stand, points in left_out.items()
    ]


def _hardly(found: Surveyed, units: Units) -> list[str]:
    loose = [p for p in found.points.values() if p.hardly_fixed]
    if not loose:
        return []
    names = [f"{p.name} ({' to '.join(map(units.mark, p.offset_80_yd))})" for p in loose]
    return [
        f"Loose, left and right: {join_words(names)}. A range says how far, not how wide, and a gap helps "
        "only between two points at about the same range."
    ]


def _advice(found: Surveyed, units: Units) -> list[str]:
    out = []
    a = found.advice
    for point, pin in found.pinned_by.items():
        if a is not None and pin is not None and (point, pin.reading) == (a.point, a.reading):
            continue  # said first
        if pin is None:
            out.append(
                f"No one reading pins {point}: read it from a second stand well to one side, or its gap to a "
                "point at about its range."
            )
        else:
            out.append(f"To pin {point}: {_asked(pin, units)}.")
    if a is None:
        return out or ["No one reading more would help much."]
    return [
        f"One more reading would help most: {_asked(a, units)}: it brings {a.point} from "
        f"{units.number(a.before_yd)} {units.name} either way to {units.number(a.after_yd, 1)}.",
        *out,
    ]


def _asked(advice: Advice, units: Units) -> str:
    return f"the {advice.reading.words} (about {units.number(advice.reading.value)})"
