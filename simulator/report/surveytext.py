"""What a survey found: every point and how sure it is, what disagrees, what to read next."""

from __future__ import annotations

import math
from typing import Any

from ..hole.survey import Point, Surveyed
from .screen import wrap

SCHEMA = "holesim-survey-1"


def survey_text(found: Surveyed) -> str:
    """The points as a table, then sentences."""
    width = max(12, *(len(name) for name in found.points)) + 2
    lines = [f"{'point':<{width}}{'along':>7}{'8 in 10':>13}{'beside':>9}{'8 in 10':>14}{'up':>7}"]
    for p in found.points.values():
        low, high = p.station_80_yd
        height = "" if p.height_yd is None else f"{p.height_yd:+.1f}"
        lines.append(
            f"{p.name[: width - 2]:<{width}}{p.station_yd:>7.0f}{f'{low:.0f} to {high:.0f}':>13}"
            f"{_side(p.offset_yd):>9}{' to '.join(map(_side, p.offset_80_yd)):>14}{height:>7}"
        )
    said = [*_green(found), *_suspects(found), *_hardly(found), *_advice(found)]
    lines = [line.rstrip() for line in lines]
    return "\n".join([*lines, ""] + [line for words in said for line in wrap(words)])


def warnings(found: Surveyed) -> list[str]:
    """Readings left out and points hardly fixed, for standard error."""
    return [*_suspects(found), *_hardly(found)]


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


def _side(offset_yd: float) -> str:
    if abs(offset_yd) < 0.5:
        return "0"
    return f"{abs(offset_yd):.0f}{'L' if offset_yd < 0.0 else 'R'}"


def _green(found: Surveyed) -> list[str]:
    """Depth of the green and the room before and behind the flag, from one stand that read all three."""
    by_name = {name.casefold(): p for name, p in found.points.items()}
    if not {"front", "flag", "back"} <= by_name.keys():
        return []
    depth = _apart(by_name["front"], by_name["back"])
    before, behind = _apart(by_name["front"], by_name["flag"]), _apart(by_name["flag"], by_name["back"])
    return [
        f"The green is {depth:.0f} yards deep: {before:.0f} of room in front of the flag, "
        f"{behind:.0f} behind it."
    ]


def _apart(a: Point, b: Point) -> float:
    return math.hypot(a.x_yd - b.x_yd, a.y_yd - b.y_yd)


def _suspects(found: Surveyed) -> list[str]:
    out = []
    for s in found.suspects:
        if s.reading.kind == "direction":
            amount = f"{abs(math.degrees(s.off)):.0f} degrees too far {'right' if s.off > 0 else 'left'}"
            value = f"{math.degrees(s.reading.value):.0f} degrees"
        else:
            amount = f"{abs(s.off):.0f} yards too {'long' if s.off > 0 else 'short'}"
            value = f"{s.reading.value:.0f}"
        words = (
            f"The {s.reading.words} ({value}) disagrees with the others: {amount} by them. It was left out"
        )
        if s.instead:
            words += f", but it may as well be the {' or the '.join(r.words for r in s.instead[:3])}"
        out.append(f"{words}; read {'them' if s.instead else 'it'} again.")
    return out


def _hardly(found: Surveyed) -> list[str]:
    names = [p.name for p in found.points.values() if p.hardly_fixed]
    if not names:
        return []
    return [
        f"Left and right of {', '.join(names)} {'is' if len(names) == 1 else 'are'} hardly fixed: a range "
        "says how far, not how wide, and a gap helps only between two points at about the same range."
    ]


def _advice(found: Surveyed) -> list[str]:
    a = found.advice
    if a is None:
        return ["No one reading more would help much."]
    return [
        f"One more reading would help most: the {a.reading.words} (about {a.reading.value:.0f}): it brings "
        f"{a.point} from {a.before_yd:.0f} yards either way to {a.after_yd:.1f}."
    ]
