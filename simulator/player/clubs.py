"""The clubs of a bag file: which are in the bag, what the file says of them, and whether that can be."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from ..errors import FileError
from ..physics.heights import HELD_DOWN_KINDS, SHAPES
from ..physics.launch import KINDS, LOFT_DEG, family
from ..toml_text import short_line
from .check import LIMITS, Section, shown
from .doubt import Doubt
from .far_from_level import check_lengths
from .fill import carries, fill_club
from .habits import HABIT_KEYS, given_total_yd, stand_ins, total_carry_yd, with_habits
from .levels import STANDARD_SET, Level
from .model import CLUB_NUMBERS, MOST_CLUBS, Club
from .names import club_name, did_you_mean, kind_of
from .reader import in_words
from .runs import LONGEST_YD, SHORTEST_YD

FEW_SECTIONS = 5
"""From this many club sections on, and no ``clubs`` list, the sections are the whole bag."""

WOODS_MAY = 1.05
"""A wood may carry so many times as far as one with less loft: slow swings hit the 3-wood as far as the
driver (common practice). Farther, and the names were probably swapped."""

DOUBT_LIMITS = {
    "carry_pct": 30.0, "direction_log": 1.0, "distance_log": 1.0, "bias_right_deg": 10.0,
    "bias_long_pct": 20.0, "mishit_logit": 3.0,
}  # fmt: skip
"""The most a file may leave unknown of a club."""


def read_clubs(top: Section, base: Level | None, assumed: list[str]) -> tuple[Club, ...]:
    """Clubs of a bag, longest first; sentences on what was assumed are added to ``assumed``.

    Raises
    ------
    FileError
        Anything about the clubs that cannot be.
    """
    given = _club_sections(top)
    kinds = _kinds(top, given, base, assumed)
    numbers = {name: _numbers(given[name], kinds[name]) if name in given else {} for name in kinds}
    if any("carry_yd" not in numbers[name] for name in kinds):
        need_level(top, base, "a club's carry")
    carry_yd = carries(kinds, {n: v["carry_yd"] for n, v in numbers.items() if "carry_yd" in v}, base)
    totals = {name: given_total_yd(section) for name, section in given.items()}
    measured = {name for name, one in given.items() if "doubt" in one.table}
    said = {name: total for name, total in totals.items() if total is not None}
    _check_order(top, kinds, carry_yd, said, measured)
    if base is not None:
        typed = {name: carry_yd[name] for name in given if name not in measured}
        check_lengths(top.source, typed, kinds, base, assumed)  # what was measured is no slip
    filled = []
    for name in sorted(kinds, key=lambda n: -carry_yd[n]):
        section = given.get(name, Section(top.source, f"club {name!r}", {}))
        if base is None:
            numbers[name] = {**stand_ins(section, top), **numbers[name]}
            for key in CLUB_NUMBERS:
                if key not in numbers[name]:
                    need_level(top, base, f"{key} of club {name!r}")
        club = fill_club(name, kinds, carry_yd, numbers[name], base)
        filled.append((section, replace(club, flights=_flights(section, club))))
    longest = filled[0][1]
    clubs = [
        _measured(section, with_habits(club, section, top, longest, assumed)) for section, club in filled
    ]
    if all(club.use != "anywhere" for club in clubs):
        top.refuse(
            "club", "no club that may be played from everywhere", 'one without use = "tee only" or "never"'
        )
    return tuple(clubs)


def _kinds(top: Section, given: dict[str, Section], base: Level | None, assumed: list[str]) -> dict[str, str]:
    """Launch family of every club of the bag: of those listed or given, or of a standard set around them."""
    kinds = {name: _kind(section, name) for name, section in given.items()}
    listed = _listed(top, set(given))
    if listed is not None:
        for name in given:
            if name not in listed:
                top.refuse(f"club {name!r}", "a section for a club that is not in clubs", ", ".join(listed))
        kinds |= {name: _listed_kind(top, name) for name in listed if name not in kinds}
    elif len(given) < FEW_SECTIONS:
        need_level(top, base, "clubs")
        kinds |= standard_around(kinds)
        who = "The player" if in_words(top.source) else "The file"
        if given:
            assumed.append(f"{who} names only some clubs: the rest of a standard set is put around them.")
        else:
            assumed.append(f"{who} names no clubs: a standard set of thirteen and a putter is used.")
    if not kinds:
        top.refuse("clubs", "an empty bag", "at least one club besides the putter")
    if len(kinds) > MOST_CLUBS:
        top.refuse(
            "clubs", f"{len(kinds)} clubs besides the putter", f"{MOST_CLUBS} and a putter (Rule 4.1b: 14)"
        )
    return kinds


def _measured(section: Section, club: Club) -> Club:
    """The club with what is not known of it, where its numbers were measured (``[club.NAME.doubt]``)."""
    if "doubt" not in section.table:
        return club
    inner = Section(section.source, f"{section.where}, doubt", section.table["doubt"])
    parts = tuple(DOUBT_LIMITS)
    inner.only(("shots", *parts))
    if (shots := inner.number("shots", 0, 1e7)) is None:
        inner.refuse("shots", "nothing", "the number of shots measured")
    values = {part: inner.number(part, 0.0, DOUBT_LIMITS[part]) for part in parts}
    for part, value in values.items():
        if value is None:
            inner.refuse(part, "nothing", f"all of {', '.join(parts)}")
    came = "measured" if shots else "level"  # without shots: the level, and what the other clubs show
    sources = {key: came if source == "file" else source for key, source in club.sources.items()}
    return replace(club, sources=sources, doubt=Doubt(**values))  # type: ignore[arg-type]


def _flights(section: Section, club: Club) -> tuple[str, ...]:
    """Ways a club is hit: as the file says, else held down too where players usually can."""
    values = section.table.get("flights")
    if values is None:
        return ("stock", "low") if family(club.kind) in HELD_DOWN_KINDS else ("stock",)
    if not isinstance(values, list) or not values or not all(v in tuple(SHAPES) for v in values):
        section.refuse("flights", shown(values), f"a list of {', '.join(SHAPES)}")
    return ("stock", *(flight for flight in SHAPES if flight in values and flight != "stock"))


def need_level(top: Section, base: Level | None, what: str) -> None:
    """Refuse a file that leaves something to the level but has no handicap."""
    if base is None:
        top.refuse("handicap", f"none, and {what} left out", "a handicap to fill what is left out")


def _club_sections(top: Section) -> dict[str, Section]:
    """Sections [club.NAME] by simple name."""
    sections: dict[str, Section] = {}
    for text, table in Section(top.source, "club", top.table.get("club", {})).table.items():
        name = club_name(text) or short_line(text, 40)
        where = f"club {short_line(text, 40)!r}"
        if name == "putter":
            raise FileError(top.source, where, "a putter", "its skill in the section [putting]")
        if not name:
            raise FileError(top.source, where, "a club without a name", "a name such as 7-iron")
        if name in sections:
            raise FileError(top.source, where, f"the club {name!r} a second time", "each club once")
        section = Section(top.source, where, table)
        section.only(("kind", "carry_yd", "carry_m", "flights", "doubt", *HABIT_KEYS, *LIMITS))
        sections[name] = section
    return sections


def _kind(section: Section, name: str) -> str:
    text = section.text("kind")
    if text is None:
        kind = kind_of(name)
        if kind is None:
            raise FileError(
                section.source,
                section.where,
                f"a name that is no club we know{did_you_mean(name, KINDS)}",
                "a name such as driver, 3-wood, 4-hybrid, 7-iron, pw, 56-degree; or say its kind",
            )
        return kind
    kind = kind_of(club_name(text) or text)
    if kind is None:
        section.refuse("kind", f"{shown(text)}{did_you_mean(text, KINDS)}", ", ".join(KINDS))
    return kind


def _listed(top: Section, own_names: set[str]) -> list[str] | None:
    """Simple names of the list ``clubs``, the putter dropped, or None when there is no list."""
    if "clubs" not in top.table:
        return None
    values = top.table["clubs"]
    if not isinstance(values, list):
        top.refuse("clubs", shown(values), "a list of club names")
    names: list[str] = []
    putters = 0
    for i, text in enumerate(values, start=1):
        if not isinstance(text, str) or not text.strip():
            top.refuse(f"clubs[{i}]", shown(text), "the name of a club")
        name = club_name(text) or short_line(text, 40)
        if name in names or (name == "putter" and putters):
            top.refuse(f"clubs[{i}]", f"the club {name!r} a second time", "each club once")
        if name == "putter":
            putters += 1
            continue
        if kind_of(name) is None and name not in own_names:
            _listed_kind(top, name)
        names.append(name)
    return names


def _listed_kind(top: Section, name: str) -> str:
    kind = kind_of(name)
    if kind is None:
        top.refuse(
            "clubs",
            f"{name!r}, no club we know{did_you_mean(name, KINDS)}",
            "a name such as driver, 3-wood, 4-hybrid, 7-iron, pw, 56-degree; or a section with its kind",
        )
    return kind


def standard_around(kinds: dict[str, str]) -> dict[str, str]:
    """Clubs of the standard set round given ones: none whose place in the bag (loft) one of them takes."""
    lofts = [LOFT_DEG[kind] for kind in kinds.values()]
    extra = {k: k for k in STANDARD_SET if all(abs(LOFT_DEG[k] - loft) >= 1.6 for loft in lofts)}
    return dict(list(extra.items())[: max(0, MOST_CLUBS - len(kinds))])


def _numbers(section: Section, kind: str) -> dict[str, float]:
    """The numbers a club's section gives, carry in yards (a total less its run)."""
    found = {key: section.number(key, low, high) for key, (low, high) in LIMITS.items()}
    found["carry_yd"] = total_carry_yd(section, kind) or section.length_yd(
        "carry", SHORTEST_YD, LONGEST_YD
    )
    return {key: value for key, value in found.items() if value is not None}


def _check_order(
    top: Section,
    kinds: dict[str, str],
    carry_yd: dict[str, float],
    total_yd: dict[str, float],
    measured: set[str],
) -> None:
    """Refuse two clubs of one carry, and a club that outcarries a stronger one of its own family.

    Where both were given by totals these decide: a slow 3-wood flies low, runs far and may carry less. So may
    one that was measured beside the other wood, and one that is not far behind it.
    """
    names = sorted(kinds, key=lambda n: -carry_yd[n])
    for name in names:
        if not SHORTEST_YD <= carry_yd[name] <= LONGEST_YD:
            top.refuse(
                f"club {name!r}",
                f"a carry of {carry_yd[name]:.1f} yd in line with the carries given",
                f"{SHORTEST_YD:g} to {LONGEST_YD:g}: give its carry_yd",
            )
    for longer, shorter in pairwise(names):
        if carry_yd[longer] - carry_yd[shorter] < 1e-6:
            top.refuse(
                f"club {shorter!r}",
                f"{carry_yd[shorter]:.4g} yd, the carry of {longer!r} too",
                "a carry of its own",
            )
    for i, shorter in enumerate(names):
        for longer in names[:i]:
            if (
                line_of(kinds[longer]) == line_of(kinds[shorter])
                and LOFT_DEG[kinds[longer]] > LOFT_DEG[kinds[shorter]]
                and not total_yd.get(longer, 1.0) < total_yd.get(shorter, 0.0)
                and not (
                    line_of(kinds[longer]) == "wood"
                    and ({longer, shorter} <= measured or carry_yd[longer] <= WOODS_MAY * carry_yd[shorter])
                )
            ):
                top.refuse(
                    f"club {longer!r}",
                    f"{carry_yd[longer]:.4g} yd, beyond {shorter!r} ({carry_yd[shorter]:.4g} yd)",
                    "less carry than the club with less loft",
                )


def line_of(kind: str) -> str:
    """Clubs that must go by loft: irons with wedges, driver with woods, hybrids."""
    return {"wedge": "iron", "driver": "wood"}.get(family(kind), family(kind))
