"""The words of `holesim carries`: the table of clubs, and the sum that ends in a club."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ..conditions import Conditions
from ..player.model import Player
from ..player.names import with_flight
from ..strategy.carries import Carry
from ..strategy.effective import Effective
from .cautions import RULE
from .daywords import day_words
from .figures import adding_up
from .screen import wrap
from .units import YARDS, Units


def table(player: Player, conditions: Conditions, rows: Sequence[Carry], units: Units = YARDS) -> str:
    """Carry and run of every shot, still and today, as text of at most 80 columns."""
    lines = [f"{player.name} today: {day_words(conditions, units)}", ""]
    drifts = [_drift(row.drift_yd or 0.0, units) for row in rows]
    lines.append(f"{'':<22}{'still air':>16}{'today':>18}{'drift' if any(drifts) else '':>12}")
    lines.append(f"{'':<22}{'carry':>9}{'run':>7}{'carry':>11}{'run':>7}{'':>12}")
    for row, side in zip(rows, drifts, strict=True):
        name = with_flight(row.club, row.flight)
        today = (row.today_carry_yd, row.today_run_yd)
        carry, run = ("-" if one is None else units.whole(one) for one in today)
        lines.append(
            f"{name:<22}{units.whole(row.still_carry_yd):>9}{units.whole(row.still_run_yd):>7}"
            f"{carry:>11}{run:>7}{side:>12}"
        )
    lines += ["", f"{units.name.capitalize()}; well-struck shots, run on level fairway."]
    if any(row.today_carry_yd is None for row in rows):
        lines.append("-: its ball never gets as high as the target.")
    lines.append(RULE)
    return "\n".join(line.rstrip() for line in lines)


def table_dict(player: Player, conditions: Conditions, rows: Sequence[Carry]) -> dict[str, Any]:
    """The same as JSON-ready data."""
    return {
        "schema": "holesim-carries-1",
        "player": player.name,
        "conditions": conditions.to_dict(),
        "carries": [vars(row) for row in rows],
        "assumed": [*player.assumed, *conditions.assumed],
    }


LEAST_OFF_YD = 5.0
"""A nearest club that comes down so far from the distance is said to [yd]: half the step of two clubs."""


def sum_text(player: Player, conditions: Conditions, found: Effective, units: Units = YARDS) -> str:
    """The number to hit, part by part, ending in the club; the parts as shown add up."""
    pair = " (rough, from the laser's pair: common practice)" if found.height_from_pair else ""
    parts = (found.distance_yd, found.height_adds_yd, found.air_adds_yd, found.wind_adds_yd)
    distance, height, air, wind = adding_up([units.of(part) for part in parts])
    lines = [
        f"{player.name} today: {day_words(conditions, units)}",
        "",
        f"{'distance':<12}{distance:>6} {units.short}",
        f"{'height':<12}{height:>+6}    {units.number(found.height_yd, signed=True)} {units.short}{pair}",
        f"{'air':<12}{air:>+6}",
        f"{'wind':<12}{wind:>+6}",
        f"{'to hit':<12}{distance + height + air + wind:>6} {units.short} effective distance",
        "",
        *wrap(_to_hit(found, units)),
        RULE,
    ]
    return "\n".join(lines)


def _to_hit(found: Effective, units: Units) -> str:
    """The club with its own carry, to be held against the number to hit, and what it carries today."""
    name = with_flight(found.club, found.flight)
    height = units.whole(abs(found.height_yd))
    target = ""
    if height:
        target = f" to a target {height} {units.short} {'above' if found.height_yd > 0 else 'below'} the ball"
    own = f"whose own carry of {units.length(found.still_carry_yd)} (still air, level ground)"
    which = "A part swing. Shortest full one" if found.part_swing else "Nearest"
    drift = _drift(found.drift_yd, units)
    drifts = f" and drifts {drift}" if drift else ""
    off = found.distance_yd - found.carry_yd
    misses = "" if found.part_swing or abs(off) < LEAST_OFF_YD else (
        f" That is {units.length(abs(off))} {'short' if off > 0.0 else 'long'}."
    )  # fmt: skip
    return f"{which}: {name}, {own} comes to {units.length(found.carry_yd)} today{target}{drifts}.{misses}"


def sum_dict(player: Player, conditions: Conditions, found: Effective) -> dict[str, Any]:
    """The same as JSON-ready data."""
    return {
        "schema": "holesim-effective-distance-1",
        "player": player.name,
        "conditions": conditions.to_dict(),
        **vars(found),
        "assumed": [*player.assumed, *conditions.assumed],
    }


def _drift(yards: float, units: Units) -> str:
    """To which side and how far; empty where that rounds to nothing."""
    return units.bare_side(yards) if units.whole(yards) else ""
