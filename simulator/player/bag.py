"""Bag files: a player in TOML, everything left out filled from the level of the handicap.

    name = "Isolde"
    handicap = 5                    # a plus handicap is negative: +2 on the card is -2 here
    sex = "woman"                   # optional: whose tables fill in; "man" when left out
    clubs = ["driver", "3w", "7i"]  # optional: exactly these; a putter may be named and is left out
    short_game = 0.9                # optional: spread of part swings over the level's
    chipping = 0.9                  # optional: of chips and punches over part swings that go as far
    tee = "red"                     # optional: played from, on holes that have a tee of that name
    habit = "driver"                # optional: what is hit from the tee without a plan, "3w@-8" with an aim

    [club.driver]                   # optional sections; the numbers of ``model.Club``, or as in ``habits``
    carry_yd = 231
    direction_sd_deg = 4.6

    [part]                          # optional: handicap, or curves over carry_yd (lists of one length)
    [putting]                       # optional: handicap, angle_sd_deg, distance_sd_pct

Which clubs are in the bag: those of ``clubs``; without it the sections, when there are at least five; else
a standard set with the given clubs in it. Spreads are of solid strikes.
"""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import numpy as np

from ..errors import FileError, check_path
from ..toml_text import short_line
from .boxes import SEXES
from .check import LIMITS, Section, read_toml, shown
from .clubs import need_level, read_clubs
from .habits import TOP_KEYS, left_handed
from .levels import HIGHEST_HANDICAP, HIGHEST_WITH_DATA, LOWEST_HANDICAP, Level, handicap_said, level
from .model import Club, PartSwing, Player, Putting
from .names import club_key, did_you_mean
from .reader import in_words, quoted
from .words import looks_like_words, player_said

DEMO = Path(__file__).with_name("demo")

UNNAMED = "Player"
"""Name of a player in words that give none."""

PLAYER_KEYS = (
    "name", "handicap", "sex", "clubs", "club", "part", "putting", "short_game", "chipping", "habit", "tee",
    *TOP_KEYS,
)  # fmt: skip
"""Keys at the top of a player's file."""

_PART_CURVES = (
    "direction_sd_deg", "distance_sd_pct", "mishit_rate", "mishit_loss_pct", "mishit_distance_sd_pct",
)  # fmt: skip


def bundled_players() -> list[str]:
    """Names of the demo players that come with the package."""
    return sorted(path.stem for path in DEMO.glob("*.toml"))


def load_player(path_or_name: str | Path) -> Player:
    """Read a bag file, a bundled demo player by name, or a player in words.

    Raises
    ------
    FileError
        Anything that cannot be used, in one line.
    UsageError
        What is no path, name or words at all.
    """
    check_path(path_or_name, "a player file, a demo player, or words")
    source = short_line(path_or_name, 200) or "(no name)"
    path = Path(path_or_name)
    names = bundled_players()
    is_file = os.path.isfile(path)  # False for what is too long to be a path
    if not is_file and str(path_or_name).casefold() in names:
        path = DEMO / f"{str(path_or_name).casefold()}.toml"
    elif not is_file and isinstance(path_or_name, str) and looks_like_words(path_or_name):
        return player_from_words(path_or_name)
    elif not is_file and path.suffix == "" and len(path.parts) == 1 and not os.path.isdir(path):
        raise FileError(
            source,
            "",
            f"no such file or demo player{did_you_mean(source, names)}",
            f'a path, words such as "handicap 15, driver 205", or one of {", ".join(names)}',
        )
    return _player(Section(source, "", read_toml(path, source, "a player")), path.stem or "player")


def player_from_words(text: str) -> Player:
    """The player that some words mean: ``"handicap 15, driver 205"``, ``"24, woman, miss short right"``.

    Raises
    ------
    FileError
        A word that is not understood, or a number out of its range.
    """
    table, granted = player_said(text)
    player = _player(Section(quoted(text), "", table), UNNAMED)
    assumed = list(player.assumed)
    if any("carry_yd" in one or "carry_m" in one for one in table.get("club", {}).values()):
        assumed.append("Distances of clubs are taken as carry where the words do not say total.")
    return replace(player, assumed=(*assumed, *granted))


def player_from_table(table: dict[str, object], source: str) -> Player:
    """The player of a bag file's contents that are not (or not yet) in a file.

    Raises
    ------
    FileError
        Anything that cannot be used.
    """
    return _player(Section(source, "", table), "player")


def _player(top: Section, stem: str) -> Player:
    top.only(PLAYER_KEYS)
    assumed: list[str] = []
    name = top.text("name") or short_line(stem, 60)
    handicap = _handicap(top)
    sex = _sex(top)
    base = None if handicap is None else level(handicap, sex)
    left_handed(top)  # refused even when no shape needs it
    short_game = top.number("short_game", 0.1, 5.0) or 1.0
    clubs = read_clubs(top, base, assumed)
    part = _part(top, base, short_game, sex)
    putting = _putting(top, base)
    filled = sorted({f for c in clubs for f, s in c.sources.items() if s == "level"})
    if filled and base is not None:
        left_out = "the words leave" if in_words(top.source) else "the file leaves"
        assumed.append(
            f"What {left_out} out of clubs comes from the level of a "
            f"{handicap_said(base.handicap)} handicap{'' if 'sex' not in top.table else f' ({sex})'}."
        )
        if base.handicap > HIGHEST_WITH_DATA:
            assumed.append(
                f"No figures are published beyond {HIGHEST_WITH_DATA:g} handicap: the level is extrapolated."
            )
    if "level" in part.sources.values():
        assumed.append("Part swings are filled from a level.")
    if "level" in putting.sources.values():
        assumed.append("Putting is filled from a level.")
    carried = tuple(club for club in clubs if club.use != "never")
    left = tuple(club.name for club in clubs if club.use == "never")
    habit = _habit(top, carried)
    return Player(
        name, handicap, carried, part, putting, short_game, top.source, tuple(assumed), left, habit,
        top.text("tee"), top.number("chipping", 0.1, 5.0) or 1.0,
    )  # fmt: skip


def _habit(top: Section, clubs: tuple[Club, ...]) -> str | None:
    """Club and aim of the habit; the aim's words are read where they are used."""
    habit = top.text("habit")
    if habit is not None:
        name = club_key(habit.partition("@")[0])
        names = [club.name for club in clubs]
        if name not in [club_key(known) for known in names]:
            top.refuse("habit", f"the text {habit!r}", f"a club of the bag, one of {', '.join(names)}")
    return habit


def _handicap(section: Section) -> float | None:
    value = section.table.get("handicap")
    if isinstance(value, str):
        section.refuse("handicap", shown(value), "a number; a plus handicap is negative, +2 is -2")
    return section.number("handicap", LOWEST_HANDICAP, HIGHEST_HANDICAP)


def _sex(top: Section) -> str:
    """Whose tables of lengths and spreads fill what is left out: men's unless the file says otherwise."""
    value = top.table.get("sex", SEXES[0])
    if not isinstance(value, str) or value not in SEXES:
        top.refuse("sex", shown(value), " or ".join(f'"{word}"' for word in SEXES))
    return value


def _part(top: Section, base: Level | None, short_game: float, sex: str) -> PartSwing:
    section = Section(top.source, "part", top.table.get("part", {}))
    section.only(("handicap", "carry_yd", "carry_m", *_PART_CURVES, "mishit_direction_factor"))
    own = _handicap(section)
    if own is None and base is None:
        need_level(top, base, "part swings")
    curve = level(own, sex).part if own is not None else base.part  # type: ignore[union-attr]
    key, yards = section.length_unit("carry")
    nodes = section.numbers(key, 0.5 / yards, 200.0 / yards)
    given = {k: section.numbers(k, *LIMITS[k]) for k in _PART_CURVES}
    factor = section.number("mishit_direction_factor", *LIMITS["mishit_direction_factor"])
    sources = dict(curve.sources)
    if nodes is not None:
        carry = np.array(nodes) * yards
        if np.any(np.diff(carry) <= 0):
            section.refuse(key, "carries that do not rise", "each more than the one before")
        curve = replace(curve, carry_yd=carry, **{k: np.interp(carry, curve.carry_yd, getattr(curve, k))
                                                  for k in _PART_CURVES})  # fmt: skip
        sources["carry_yd"] = "file"
    for k, values in given.items():
        if values is None:
            continue
        if nodes is None:
            section.refuse(k, "a list without carries", "carry_yd (or carry_m), a list as long")
        if len(values) != len(nodes):
            section.refuse(k, f"a list of {len(values)}", f"a list of {len(nodes)}, as {key}")
        curve = replace(curve, **{k: np.array(values)})
        sources[k] = "file"
    if factor is not None:
        curve = replace(curve, mishit_direction_factor=factor)
        sources["mishit_direction_factor"] = "file"
    return replace(
        curve,
        direction_sd_deg=curve.direction_sd_deg * short_game,
        distance_sd_pct=curve.distance_sd_pct * short_game,
        mishit_distance_sd_pct=curve.mishit_distance_sd_pct * short_game,
        sources=sources,
    )


def _putting(top: Section, base: Level | None) -> Putting:
    section = Section(top.source, "putting", top.table.get("putting", {}))
    section.only(("handicap", "angle_sd_deg", "distance_sd_pct"))
    own = _handicap(section)
    angle = section.number("angle_sd_deg", 0.0, 15.0)
    distance = section.number("distance_sd_pct", 0.0, 60.0)
    if own is None and base is None and (angle is None or distance is None):
        need_level(top, base, "putting")
    skill = level(own).putting if own is not None else base.putting if base else Putting(0.0, 0.0)
    return Putting(
        angle_sd_deg=skill.angle_sd_deg if angle is None else angle,
        distance_sd=skill.distance_sd if distance is None else distance / 100.0,
        sources={
            "angle_sd_deg": "level" if angle is None else "file",
            "distance_sd": "level" if distance is None else "file",
        },
    )
