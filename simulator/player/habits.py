"""What a coach says of a club besides its numbers: width, depth, usual miss, shape, held-down carry, use.

    [club.driver]
    total_yd = 225                  # carry and run on level medium fairway; or carry_yd
    width_yd = 58                   # 8 of 10 balls finish inside, mishits included (``pattern``)
    depth_yd = 40
    miss = "short right"
    shape = "fade"                  # a left-hander's fade goes left: hand = "left" at the top of the file
    curve_yd = 12                   # from the start line to where a solid one comes down
    use = "tee only"                # or "never"

``miss``, ``shape`` and ``hand`` may stand at the top of the file, for every club; ``curve_yd`` beside such a
``shape`` is the longest club's, and the others curve in proportion.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from ..physics.heights import SHAPES
from ..physics.launch import family
from .check import LIMITS, Section, shown
from .model import USES, Club
from .pattern import LEAST_SD_DEG, Pattern, direction_for_width, widened
from .runs import LONGEST_YD, SHORTEST_YD, carry_of_total, tilted

HABIT_KEYS = (
    "total_yd", "total_m", "width_yd", "width_m", "depth_yd", "depth_m", "miss", "shape", "curve_yd",
    "curve_m", "low_carry_yd", "low_carry_m", "use",
)  # fmt: skip
"""Keys of a club's section that are read here."""

TOP_KEYS = ("miss", "shape", "hand", "curve_yd", "curve_m")
"""Keys that may stand at the top of a bag file."""

CURVED = 'shape = "fade", "draw", "slice" or "hook" beside it'
"""What a curve wants."""

MISS_SD = 0.431
"""A usual miss moves the middle of solid strikes by so many of their standard deviations: two balls of three
finish on that side of the aim, the normal quantile of 2/3 (our reading of "usual", assumed)."""

MISS_WORDS = {"left": "across", "right": "across", "short": "along", "long": "along"}

SHAPE_SIDE = {"straight": 0, "fade": 1, "slice": 1, "draw": -1, "hook": -1}
"""The way a right-hander's ball curves."""

CURVE_SHARE_OF_CARRY = {
    "fade": {"wedge": 0.015, "iron": 0.03, "other": 0.04},
    "slice": {"wedge": 0.03, "iron": 0.07, "other": 0.10},
}
"""How far a ball curves when nobody says: a share of its carry (assumed; draw as fade, hook as slice)."""

STEEPEST_TILT_RAD = 0.785
"""Tilt of the most a stock strike may curve: 45 degrees, beyond which it hardly curves more."""

MOST_CURVE = 0.9
"""Share of that allowed: the table of tilts is coarse there."""

MOST_SIZE_YD = 300.0
"""Widest width, depth and curve that are read [yd] (assumed)."""

HALF = 0.5
"""A depth that asks for spreads below this share of the club's leaves no room for its mishits: they get fewer
in proportion (assumed)."""


def given_total_yd(section: Section) -> float | None:
    """Total of a club as its section says it, or None [yd]."""
    return section.length_yd("total", SHORTEST_YD, LONGEST_YD + 50.0)


def total_carry_yd(section: Section, kind: str) -> float | None:
    """Carry of a club whose section says its total, or None [yd]."""
    total = given_total_yd(section)
    if total is None:
        return None
    if "carry_yd" in section.table or "carry_m" in section.table:
        section.refuse("carry and total", "both", "one of the two")
    carry = carry_of_total(kind, total)
    if not SHORTEST_YD < carry < LONGEST_YD:
        key, _ = section.length_unit("total")
        allowed = f"a total with a carry of {SHORTEST_YD:g} to {LONGEST_YD:g} yd in it"
        section.refuse(key, shown(section.table[key]), allowed)
    return carry


def stand_ins(section: Section, top: Section) -> dict[str, float]:
    """Numbers that the habits will replace, so that they need no level."""
    found: dict[str, float] = {}
    if "width_yd" in section.table or "width_m" in section.table:
        found["direction_sd_deg"] = 3.0
    if "miss" in section.table or "miss" in top.table:
        found |= {"bias_right_deg": 0.0, "bias_long_pct": 0.0}
    return found


def with_habits(club: Club, section: Section, top: Section, longest: Club, assumed: list[str]) -> Club:
    """A club with the habits its section, or the top of the file, gives it.

    Parameters
    ----------
    longest : Club
        Of the bag: a curve at the top of the file is its.

    Raises
    ------
    FileError
        A habit that is none, or that no spread gives.
    """
    club = _curved(club, section, top, longest, assumed)
    settle = _misses(club, section, top, assumed)
    level_of_it = club
    both = {"width_yd", "width_m"} & section.table.keys() and {"depth_yd", "depth_m"} & section.table.keys()
    for last in (False, False, True) if both else (True,):  # wild is deeper too, deep is wider: settles fast
        club = replace(level_of_it, direction_sd_deg=club.direction_sd_deg)
        club = _deep(club, section, settle, assumed if last else [])
        club = settle(_wide(club, section))
    return _held_down(replace(club, use=_one_of(section, "use", USES) or USES[0]), section)


def _one_of(section: Section, key: str, words: tuple[str, ...]) -> str | None:
    value = section.table.get(key)
    if value is None:
        return None
    if not isinstance(value, str) or value.strip().casefold() not in words:
        section.refuse(key, shown(value), ", ".join(f'"{word}"' for word in words))
    return value.strip().casefold()


def left_handed(top: Section) -> bool:
    """Whether the file says a left-hander plays."""
    return _one_of(top, "hand", ("right", "left")) == "left"


def read_miss(section: Section) -> dict[str, str]:
    """Words of a usual miss by direction ("across", "along"); empty when there is none."""
    value = section.table.get("miss")
    if value is None:
        return {}
    words = value.casefold().replace("-", " ").split() if isinstance(value, str) else []
    words = [word for word in words if word != "and"]
    said = {MISS_WORDS[word]: word for word in words if word in MISS_WORDS}
    if words != ["none"] and (not words or len(said) != len(words)):
        section.refuse(
            "miss", shown(value), '"left" or "right", "short" or "long", both as "short right", or "none"'
        )
    return said


def _misses(club: Club, section: Section, top: Section, assumed: list[str]) -> Callable[[Club], Club]:
    """What sets the biases of a club by its usual miss, once its spreads are known."""
    where = section if "miss" in section.table else top
    said = read_miss(where)
    for key, direction in (("bias_right_deg", "across"), ("bias_long_pct", "along")):
        if direction in said and key in section.table:
            if where is section:
                section.refuse(f"{key} and miss", "both", "one of the two")
            del said[direction]  # a club's own number goes before a word for all clubs
    if said:
        words = " ".join(said[d] for d in ("along", "across") if d in said)
        sentence = (
            f"A usual miss ({words}) is taken as two solid balls of three on that side of the aim (assumed)."
        )
        if sentence not in assumed:
            assumed.append(sentence)
    level_long = club.bias_long_pct
    marks = {"bias_right_deg": "file"} if "across" in said else {}
    marks |= {"bias_long_pct": "file"} if "along" in said else {}

    def settle(one: Club) -> Club:
        right, long_ = one.bias_right_deg, level_long
        if "across" in said:
            right = MISS_SD * one.direction_sd_deg * (1.0 if said["across"] == "right" else -1.0)
        if "along" in said:
            by = MISS_SD * one.distance_sd_pct
            long_ = by if said["along"] == "long" else min(level_long, -by)
        return replace(one, bias_right_deg=right, bias_long_pct=long_, sources={**one.sources, **marks})

    return settle


def _size(section: Section, stem: str) -> tuple[str, float] | None:
    key, _ = section.length_unit(stem)
    size = section.length_yd(stem, 0.5, MOST_SIZE_YD)
    return None if size is None else (key, size)


def _deep(club: Club, section: Section, settle: Callable[[Club], Club], assumed: list[str]) -> Club:
    """Solve the spread of distance for the depth; tighter than the mishits allow, these become fewer."""
    given = _size(section, "depth")
    if given is None:
        return settle(club)
    key, depth_yd = given
    if "distance_sd_pct" in section.table:
        section.refuse(f"{key} and distance_sd_pct", "both", "one of the two")
    fewer = "mishit_rate" not in section.table

    def at(by: float) -> Club:
        one = widened(club, by) if "mishit_distance_sd_pct" not in section.table else replace(
            club, distance_sd_pct=club.distance_sd_pct * by)  # fmt: skip
        if fewer and by < HALF:
            one = replace(one, mishit_rate=one.mishit_rate * by / HALF)
        return settle(one)

    from scipy.optimize import brentq

    low, high = 0.02, LIMITS["distance_sd_pct"][1] / max(club.distance_sd_pct, 0.1)
    least, most = Pattern(at(low)).depth_yd, Pattern(at(high)).depth_yd
    if not least < depth_yd < most:
        why = "" if fewer else f" at a mishit_rate of {club.mishit_rate:g}"
        section.refuse(key, f"{depth_yd:.4g} yd", f"{least:.1f} to {most:.0f} yd for 8 balls of 10{why}")
    by = float(brentq(lambda b: Pattern(at(b)).depth_yd - depth_yd, low, high, xtol=1e-8))
    done = at(by)
    if done.mishit_rate < club.mishit_rate:
        assumed.append(
            f"{club.name}: a depth of {depth_yd:.0f} yd leaves room for fewer mishits than the level's; "
            f"{100 * done.mishit_rate:.0f} in 100 are taken instead of {100 * club.mishit_rate:.0f}."
        )
    return replace(done, sources={**done.sources, "distance_sd_pct": "file"})


def _wide(club: Club, section: Section) -> Club:
    """Solve the spread of direction for the width."""
    given = _size(section, "width")
    if given is None:
        return club
    key, width_yd = given
    if "direction_sd_deg" in section.table:
        section.refuse(f"{key} and direction_sd_deg", "both", "one of the two")
    most_deg = LIMITS["direction_sd_deg"][1]
    sd = direction_for_width(club, width_yd, most_deg)
    if sd is None:
        pattern = Pattern(club)
        low, high = pattern.width_yd(LEAST_SD_DEG), pattern.width_yd(most_deg)
        section.refuse(key, f"{width_yd:.4g} yd", f"{low:.1f} to {high:.0f} yd for 8 balls of 10")
    return replace(club, direction_sd_deg=sd, sources={**club.sources, "direction_sd_deg": "file"})


def _curved(club: Club, section: Section, top: Section, longest: Club, assumed: list[str]) -> Club:
    """The curve of a club that is hit with a shape."""
    words = tuple(SHAPE_SIDE)
    shape = _one_of(section, "shape", words) or _one_of(top, "shape", words)
    given = _size(section, "curve")
    of_all = _size(top, "curve")
    if of_all is not None and not SHAPE_SIDE.get(_one_of(top, "shape", words) or "", 0):
        top.refuse(of_all[0], "a curve without a shape", CURVED)
    if given is not None and (shape is None or not SHAPE_SIDE[shape]):
        section.refuse(given[0], "a curve without a shape", CURVED)
    if shape is None or not SHAPE_SIDE[shape]:
        return club
    side = SHAPE_SIDE[shape] * (-1 if left_handed(top) else 1)
    most = most_curve_yd(club)
    if given is not None and given[1] > most:
        section.refuse(given[0], f"{given[1]:.4g} yd", f"at most {most:.0f} yd at its speed")
    if given is not None:
        return replace(club, curve_yd=side * given[1])
    shares = CURVE_SHARE_OF_CARRY["slice" if shape in ("slice", "hook") else "fade"]

    def usual_yd(one: Club) -> float:
        return shares.get(family(one.kind), shares["other"]) * one.carry_yd

    if of_all is not None and "shape" not in section.table:
        if of_all[1] > most_curve_yd(longest):
            found = f"{of_all[1]:.4g} yd of curve with the {longest.name}"
            top.refuse(of_all[0], found, f"at most {most_curve_yd(longest):.0f} yd at its speed")
        sentence = (
            f"A {shape} of {of_all[1]:.4g} yd without a club is taken as the {longest.name}'s; the others "
            "curve in proportion to their carry and kind."
        )
        if sentence not in assumed:
            assumed.append(sentence)
        curve = of_all[1] * usual_yd(club) / usual_yd(longest)
        return replace(club, curve_yd=side * min(curve, most))
    sentence = (
        f"A {shape} without curve_yd curves {100 * shares['other']:g} % of the carry with a driver or wood, "
        f"{100 * shares['iron']:g} % with an iron, {100 * shares['wedge']:g} % with a wedge."
    )
    if sentence not in assumed:
        assumed.append(sentence)
    return replace(club, curve_yd=side * min(usual_yd(club), most))


def most_curve_yd(club: Club) -> float:
    """The farthest a solid strike of a club may curve [yd]."""
    angle = float(tilted(club.kind, club.carry_yd).angle(STEEPEST_TILT_RAD))
    return MOST_CURVE * club.carry_yd * float(np.sin(angle))


def _held_down(club: Club, section: Section) -> Club:
    """The carry of the shot held down, if the section gives one."""
    key, _ = section.length_unit("low_carry")
    low_yd = section.length_yd("low_carry", SHORTEST_YD, LONGEST_YD)
    if low_yd is None:
        return club
    if low_yd >= club.carry_yd:
        section.refuse(key, f"{low_yd:.4g} yd", f"less than the club's carry, {club.carry_yd:.4g} yd")
    flights = tuple(flight for flight in SHAPES if flight in club.flights or flight == "low")
    return replace(club, low_carry_yd=low_yd, flights=flights)
