"""What measured shots say of each club: pulled towards the level when shots are few, by as much as is due.

What is believed before any shot is said in `pooling`, how likely shots are in `likelihood`; `posterior` puts
the two together.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from ...errors import UsageError
from ...units import M_PER_YD
from ..boxes import SEXES
from ..check import LIMITS
from ..clubs import standard_around
from ..doubt import LEVEL, Doubt
from ..fill import carries, driver_yd, level_carry_yd
from ..levels import Level
from ..model import Club as BagClub
from ..names import kind_of
from ..runs import LONGEST_YD, SHORTEST_YD
from .landed import landed, struck
from .likelihood import PARAMETERS, Club, Rows
from .order import in_order
from .pooling import before_sd
from .posterior import posterior
from .shots import Shots

MOST_MISHITS_LOGIT = 2.0
"""Rates are held below 0.88, as a player file holds them."""


@dataclass(frozen=True)
class ClubFit:
    """One club after its shots.

    Attributes
    ----------
    club, kind : str
    shots : Shots
    numbers : mapping of str to float
        Fields of a club as a player file has them.
    seen : mapping of str to float
        The same where its balls come down (`landed`).
    level : mapping of str to float
        The same before any shot was seen.
    doubt : Doubt
        What is still not known.
    learnt : mapping of str to float
        For each part of the doubt, the share of what was not known that the shots took away, 0 to 1.
    slips : int64[n]
        Rows of `shots` that look like no strike of this club.
    """

    club: str
    kind: str
    shots: Shots
    numbers: Mapping[str, float]
    seen: Mapping[str, float]
    level: Mapping[str, float]
    doubt: Doubt
    learnt: Mapping[str, float]
    slips: np.ndarray

    @property
    def strikes(self) -> int:
        """Shots that were taken for strikes of this club: all but `slips`."""
        return len(self.shots.carry_yd) - len(self.slips)

    def as_club(self) -> BagClub:
        """The fitted club as a bag holds it, before the rest of the bag is known."""
        numbers: dict[str, Any] = dict(self.numbers)
        return BagClub(self.club, self.kind, **numbers)


@dataclass(frozen=True)
class Fit:
    """A player after the shots.

    Attributes
    ----------
    handicap : float
        Of the level it leaned on.
    clubs : tuple of ClubFit
        Longest first.
    by_loft : tuple of str
        Clubs that too few shots put out of the order of their lofts, and that were put into it.
    sex : str
        Whose level that is.
    others : tuple of ClubFit
        Clubs of a standard set that fill up the bag: no shots, carries in line with those of `clubs`, and the
        spreads and misses that go with theirs.
    """

    handicap: float
    clubs: tuple[ClubFit, ...]
    by_loft: tuple[str, ...] = ()
    sex: str = SEXES[0]
    others: tuple[ClubFit, ...] = ()


def fit_player(shots: Mapping[str, Shots], base: Level) -> Fit:
    """Fit every club that has shots.

    Parameters
    ----------
    shots : mapping of str to Shots
        By simple club name, as `read_shots` gives them.
    base : Level
        What is believed before any shot.

    Raises
    ------
    UsageError
        An iron or wedge that surely outcarries one with less loft.
    """
    _check_sides(shots)
    names = list(shots)
    kinds = {name: kind_of(name) or "" for name in names}
    rough = {name: _rough_yd(one) for name, one in shots.items()}
    levels = _levels(rough, kinds, base)
    seen = {name: landed(kinds[name], levels[name]) for name in names}
    side_yd = _rounding_yd(np.concatenate([one.offline_yd for one in shots.values()]))
    carry_yd = _rounding_yd(np.concatenate([one.carry_yd for one in shots.values()]))
    clubs = [_club(shots[name], seen[name], rough[name], carry_yd, side_yd) for name in names]
    more = standard_around(kinds)
    more_levels = _levels(rough, kinds | more, base, more)
    more_seen = {name: landed(kind, more_levels[name]) for name, kind in more.items()}
    centre = np.stack([_centre(one) for one in (*seen.values(), *more_seen.values())])
    start = centre.copy()
    start[: len(names), 0] = np.log([rough[name] for name in names])
    best, spread = posterior(Rows.of(clubs), centre, [*kinds.values(), *more.values()], start)
    fits = [
        _club_fit(name, kinds[name], shots[name], best[k], spread[k], clubs[k], levels[name])
        for k, name in enumerate(names)
    ]
    found_yd = {fit.club: fit.numbers["carry_yd"] for fit in fits}
    doubt_yd = {fit.club: found_yd[fit.club] * fit.doubt.carry_pct / 100.0 for fit in fits}
    placed_yd, by_loft = in_order(kinds, found_yd, doubt_yd)
    fits = [_carrying(fit, placed_yd[fit.club]) for fit in fits]
    fits.sort(key=lambda fit: -fit.numbers["carry_yd"])
    carry_of = carries(kinds | more, placed_yd, base)
    others = [
        _other(name, more[name], carry_of[name], best[k], spread[k], more_seen[name], more_levels[name])
        for k, name in enumerate(more, start=len(names))
    ]
    return Fit(base.handicap, tuple(fits), by_loft, base.sex, tuple(others))


def _check_sides(shots: Mapping[str, Shots]) -> None:
    """Refuse a record in which nobody noted the sides: its golfer would have no width at all."""
    sides = np.concatenate([one.offline_yd for one in shots.values()])
    if len(sides) > 2 and np.ptp(sides) == 0.0:
        raise UsageError(
            f"all {len(sides)} shots finish {sides[0]:g} yd to the side; allowed: sides as they were "
            "measured, for the width is learnt of them"
        )


def _rough_yd(shots: Shots) -> float:
    """A carry no wild row can move [yd]: the middle of the balls that went half as far as the longest."""
    if shots.carry_yd.max() <= 1.0:
        raise UsageError(f"{shots.club}: no shot carries more than a yard, so nothing can be learnt of it")
    struck = shots.carry_yd[shots.carry_yd >= 0.5 * np.quantile(shots.carry_yd, 0.9)]
    return float(np.median(struck))


def _levels(
    rough_yd: Mapping[str, float], kinds: Mapping[str, str], base: Level, of: Collection[str] | None = None
) -> dict[str, dict[str, float]]:
    """The level's numbers of each club, spreads at the carry this player roughly has.

    Of the clubs whose rough carries are given, unless others of `kinds` are asked for.
    """
    carry_yd = carries(kinds, rough_yd, base)
    driver = driver_yd(kinds, carry_yd, base)
    return {
        name: {
            **base.spread(kinds[name], carry_yd[name], driver),
            "carry_yd": level_carry_yd(name, kinds[name], base),
        }
        for name in (rough_yd if of is None else of)
    }


STEPS_YD = tuple(step * unit for step in (10.0, 5.0, 1.0) for unit in (1.0, 1.0 / M_PER_YD))
"""Steps in which a record may be kept: yards and metres, whole or by fives and tens [yd]."""


def _rounding_yd(values_yd: np.ndarray) -> float:
    """Standard deviation that keeping a record in steps adds, read off the record [yd].

    A step spreads evenly what it rounds: its twelfth, squared. Two rows are too few to tell.
    """
    for step in STEPS_YD if len(values_yd) > 2 else ():
        off = values_yd / step
        if np.abs(off - np.round(off)).max() < 1e-6 * max(1.0, float(np.abs(off).max())):
            return float(step / 12.0**0.5)
    return 0.0


def _club(
    shots: Shots, seen: Mapping[str, float], around_yd: float, carry_error_yd: float, side_error_yd: float
) -> Club:
    return Club(
        shots.carry_yd,
        shots.direction_deg,
        seen["mishit_distance_sd_pct"] / seen["distance_sd_pct"],
        seen["mishit_direction_factor"],
        around_yd,
        carry_error_yd,
        float(np.degrees(np.arctan2(side_error_yd, around_yd))),
    )


def _centre(seen: Mapping[str, float]) -> np.ndarray:
    """The level's numbers of one club where its balls come down, in the order of `PARAMETERS`."""
    rate = seen["mishit_rate"]
    return np.array(
        [
            np.log(seen["carry_yd"]),
            seen["bias_right_deg"],
            np.log(seen["direction_sd_deg"]),
            np.log(seen["distance_sd_pct"] / 100.0),
            np.log(rate / (1.0 - rate)),
            np.log(seen["mishit_loss_pct"] / 100.0),
        ]
    )


def _club_fit(
    name: str, kind: str, shots: Shots, x: np.ndarray, spread: np.ndarray, club: Club,
    level: Mapping[str, float],
) -> ClubFit:  # fmt: skip
    logit = min(float(x[4]), MOST_MISHITS_LOGIT)
    distance = 100.0 * float(np.exp(x[3]))
    seen = {
        "carry_yd": float(np.exp(x[0])),
        "direction_sd_deg": float(np.exp(x[2])),
        "distance_sd_pct": distance,
        "bias_right_deg": float(x[1]),
        "bias_long_pct": 0.0,  # a carry that was measured is what the club carries
        "mishit_rate": float(1.0 / (1.0 + np.exp(-logit))),
        "mishit_loss_pct": 100.0 * float(np.exp(x[5])),
        "mishit_distance_sd_pct": club.mishit_distance_ratio * distance,
        "mishit_direction_factor": club.mishit_direction_factor,
    }
    ratio = level["mishit_distance_sd_pct"] / level["distance_sd_pct"]
    told = struck(kind, seen, ratio, level["mishit_direction_factor"])
    numbers = _within_limits(name, told, refuse=len(shots.carry_yd) > 0)
    doubt = Doubt(100.0 * spread[0], spread[2], spread[3], spread[1], 0.0, spread[4])
    order = {"carry_pct": 0, "bias_right_deg": 1, "direction_log": 2, "distance_log": 3, "mishit_logit": 4}
    before = [before_sd(parameter) for parameter in PARAMETERS]
    learnt = {part: float(np.clip(1.0 - (spread[j] / before[j]) ** 2, 0.0, 1.0)) for part, j in order.items()}
    return ClubFit(name, kind, shots, numbers, seen, level, doubt, learnt, _slips(seen, shots))


def _other(
    name: str, kind: str, carry_yd: float, x: np.ndarray, spread: np.ndarray, seen: Mapping[str, float],
    level: Mapping[str, float],
) -> ClubFit:  # fmt: skip
    """A club nobody measured, by what the others show.

    Its carry stands between theirs, not where its own numbers would put it; of that the doubt is a level's.
    """
    none = Shots(name, np.empty(0), np.empty(0), None)
    fit = _club_fit(name, kind, none, x, spread, _club(none, seen, carry_yd, 0.0, 0.0), level)
    return _carrying(replace(fit, doubt=replace(fit.doubt, carry_pct=LEVEL.carry_pct)), carry_yd)


def _carrying(fit: ClubFit, carry_yd: float) -> ClubFit:
    """A club whose carry was put into its place in the bag."""
    longer = carry_yd / fit.numbers["carry_yd"]
    seen = {**fit.seen, "carry_yd": fit.seen["carry_yd"] * longer}
    return replace(fit, numbers={**fit.numbers, "carry_yd": carry_yd}, seen=seen)


def _within_limits(name: str, numbers: Mapping[str, float], *, refuse: bool) -> dict[str, float]:
    """Numbers that a player file may hold: where balls fly must be, what mishits do is cut off.

    Raises
    ------
    UsageError
        A carry, a bias or a spread no golfer has.
    """
    limits = {**LIMITS, "carry_yd": (SHORTEST_YD, LONGEST_YD)}
    for key in ("carry_yd", "bias_right_deg", "direction_sd_deg", "distance_sd_pct"):
        low, high = limits[key]
        if refuse and not low <= numbers[key] <= high:
            raise UsageError(
                f"{name}: {key} {numbers[key]:.4g} in these shots; allowed: {low:g} to {high:g} (check the "
                "columns and their units)"
            )
    return {key: float(np.clip(value, *limits[key])) for key, value in numbers.items()}


SLIP_SDS = 4.0
"""A row this many mishit standard deviations from every strike is named as no strike of the club."""


def _slips(seen: Mapping[str, float], shots: Shots) -> np.ndarray:
    carry = seen["carry_yd"]
    solid = np.abs(shots.carry_yd / carry - 1.0) * 100.0 / seen["mishit_distance_sd_pct"]
    missed = np.abs(shots.carry_yd / carry - 1.0 + seen["mishit_loss_pct"] / 100.0) * 100.0
    along = np.minimum(solid, missed / seen["mishit_distance_sd_pct"])
    wide = seen["direction_sd_deg"] * seen["mishit_direction_factor"]
    across = np.abs(shots.direction_deg - seen["bias_right_deg"]) / wide
    return np.flatnonzero(np.hypot(along, across) > SLIP_SDS)
