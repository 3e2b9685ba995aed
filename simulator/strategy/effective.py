"""The number to hit for a distance today, part by part: the height, the air and the wind each add theirs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ..conditions import Conditions
from ..errors import NoAnswerError
from ..physics.strike import SHORTEST_PART_CARRY_YD
from ..player.model import Club, Player
from ..tables.carries import gets_there, part_landings, stock_landings
from ..tables.shots import Shot, ShotList, list_shots
from .carries import HEIGHT_YD, check_within

DISTANCE_YD = (10.0, 400.0)
"""Distances taken [yd]."""

REACH_OVER = 1.15
"""A target up to so many times as far as the longest club carries still gets its number to hit (assumed)."""

REPORTED_PER_YD = 1.0
"""Yards a laser adds for a yard of rise: the trade's rule (common practice), which most of them use."""

PART_SWING_YD = 3.0
"""A distance that every full swing carries over by more than this wants a part swing [yd] (assumed)."""

PART_STEP_YD = 2.0
"""Step between the carries of part swings that a short distance is looked up among [yd] (assumed)."""

LOW_NEARER_YD = 3.0
"""A low shot is named for a distance where it comes so much nearer than any full swing [yd] (assumed)."""


@dataclass(frozen=True)
class Effective:
    """The number to hit for a distance, part by part.

    Attributes
    ----------
    distance_yd, height_yd : float
        Level distance to the target and its height over the ball.
    height_adds_yd, air_adds_yd, wind_adds_yd : float
        What each adds to the number to hit.
    effective_yd : float
        The still, level carry that covers the distance today: the sum.
    club, flight : str
        The shot to hit: the full swing whose carry is nearest to the distance, or one held down into the
        wind that comes nearer by `LOW_NEARER_YD`.
    still_carry_yd : float
        That shot's own carry, in still air on level ground.
    carry_yd : float
        That shot's carry today, to today's height.
    drift_yd : float
        How far the wind moves it sideways, right positive.
    height_from_pair : bool
        The height was read off a laser's two numbers (common practice, rough).
    part_swing : bool
        The shortest full swing, which then is the shot named, carries farther by more than `PART_SWING_YD`.
    """

    distance_yd: float
    height_yd: float
    height_adds_yd: float
    air_adds_yd: float
    wind_adds_yd: float
    effective_yd: float
    club: str
    flight: str
    still_carry_yd: float
    carry_yd: float
    drift_yd: float
    height_from_pair: bool
    part_swing: bool


def effective_distance(
    player: Player,
    conditions: Conditions,
    distance_yd: float,
    *,
    height_yd: float | None = None,
    adjusted_yd: float | None = None,
    along_deg: float = 0.0,
) -> Effective:
    """The number to hit for a distance today, with its parts.

    The still, level carry whose strike covers the distance is found between the player's stock clubs, below
    the shortest between its part swings: first with the height alone, then in today's air, then in today's
    wind; each step's change is that part.

    Parameters
    ----------
    distance_yd : float
        Level distance to where the ball must come down.
    height_yd : float, optional
        Height of that place over the ball.
    adjusted_yd : float, optional
        The second number of a laser that adjusts for slope: with the first it gives a rough height (a
        yard a yard, common practice) unless the height is given. It is never counted twice.

    Raises
    ------
    UsageError
        A number out of its range.
    NoAnswerError
        No club of the bag reaches, none gets a ball as high as the target, or those that do come down
        beyond it.
    """
    check_within("distance", distance_yd, DISTANCE_YD)
    from_pair = height_yd is None and adjusted_yd is not None
    if from_pair and adjusted_yd is not None:
        check_within("adjusted distance", adjusted_yd, DISTANCE_YD)
        height_yd = (adjusted_yd - distance_yd) / REPORTED_PER_YD
    height = 0.0 if height_yd is None else height_yd
    check_within("height", height, HEIGHT_YD)
    listed = list_shots(player, shaped=True)
    count = listed.first_part
    shots = listed.shots[:count]
    landings = stock_landings(listed, conditions, along_deg, height, count)
    reached = np.where(gets_there(landings), landings[:, 0], np.nan)
    swings = _Swings.of(shots)
    today = swings.landing(conditions, along_deg, height)
    _check_reach(distance_yd, height, reached[[shot.flight == "stock" for shot in shots]], today)
    numbers = [_number_for(distance_yd, swings.still_yd, today)]
    # where only today's wind lifts a ball so high, all of it is the height's
    for day in (replace(conditions, wind=None), Conditions()):
        there = swings.landing(day, along_deg, height)
        numbers.insert(0, _number_for(distance_yd, swings.still_yd, there, otherwise=numbers[0]))
    nearest = _to_hit(distance_yd, shots, reached, into=numbers[2] > numbers[1])
    return Effective(
        distance_yd=distance_yd,
        height_yd=height,
        height_adds_yd=numbers[0] - distance_yd,
        air_adds_yd=numbers[1] - numbers[0],
        wind_adds_yd=numbers[2] - numbers[1],
        effective_yd=numbers[2],
        club=shots[nearest].club.name,
        flight=shots[nearest].flight,
        still_carry_yd=float(shots[nearest].carry_yd),
        carry_yd=float(landings[nearest, 0]),
        drift_yd=float(landings[nearest, 1]),
        height_from_pair=from_pair,
        part_swing=_wants_a_part_swing(player, shots[nearest], float(landings[nearest, 0]) - distance_yd),
    )


def _check_reach(distance_yd: float, height_yd: float, stock_yd: np.ndarray, swings_yd: np.ndarray) -> None:
    """Refuse (NoAnswerError) a target that no ball comes down at, by the carries of full swings and of all
    swings today; NaN: not as high."""
    wanted = f"{distance_yd:.0f} yd{_up(height_yd)}"
    if np.all(np.isnan(stock_yd)):
        raise NoAnswerError(f"{wanted}: no full swing gets as high as that today")
    longest, nearest = np.nanmax(stock_yd), np.nanmin(swings_yd)
    if distance_yd > REACH_OVER * longest:
        raise NoAnswerError(f"{wanted} is out of reach today: the longest club carries {longest:.0f} yd")
    if distance_yd < nearest - PART_SWING_YD:
        raise NoAnswerError(
            f"{wanted}: a ball that gets as high as that today comes down {nearest:.0f} yd on at the least; "
            "allowed: that far and farther, or a lower target"
        )


def _to_hit(distance_yd: float, shots: Sequence[Shot], carries_yd: np.ndarray, *, into: bool) -> int:
    """Index of the shot to hit; `into` the wind a low one may be it. NaN: not there at all."""
    off = np.nan_to_num(np.abs(carries_yd - distance_yd), nan=np.inf)
    of_flight = {
        flight: [k for k, shot in enumerate(shots) if shot.flight == flight] for flight in ("stock", "low")
    }
    best = min(of_flight["stock"], key=lambda k: off[k])
    if into and of_flight["low"]:
        low = min(of_flight["low"], key=lambda k: off[k])
        best = low if off[low] + LOW_NEARER_YD < off[best] else best
    return best


def _wants_a_part_swing(player: Player, nearest: Shot, over_yd: float) -> bool:
    """Whether the full swing nearest to a distance is the shortest club's and too long by so much [yd]."""
    shortest = min(player.clubs, key=lambda club: club.carry_yd)
    return nearest.club.name == shortest.name and over_yd > PART_SWING_YD


@dataclass(frozen=True)
class _Swings:
    """What a distance is looked up among: part swings with the shortest club, then every stock club.

    A part swing is not the full one scaled down: it starts higher and softer, so wind does less
    to it.
    """

    listed: ShotList
    shortest: Club
    parts_yd: np.ndarray

    @classmethod
    def of(cls, shots: Sequence[Shot]) -> _Swings:
        """Of the full shots, longest first."""
        stock = tuple(shot for shot in shots if shot.flight == "stock")
        shortest = stock[-1].club
        count = int(np.ceil((shortest.carry_yd - SHORTEST_PART_CARRY_YD) / PART_STEP_YD)) + 1
        parts = np.linspace(SHORTEST_PART_CARRY_YD, shortest.carry_yd, max(count, 2))[:-1]
        return cls(ShotList.of_full(stock), shortest, parts)

    @property
    def still_yd(self) -> np.ndarray:
        """Still, level carries [yd], shortest first."""
        return np.array([*self.parts_yd, *(shot.carry_yd for shot in reversed(self.listed.shots))])

    def landing(self, day: Conditions, along_deg: float, height_yd: float) -> np.ndarray:
        """Carries on a day to a height [yd], in the same order; NaN where a ball does not get so high."""
        stock = stock_landings(self.listed, day, along_deg, height_yd, len(self.listed))
        parts = part_landings(self.shortest, self.parts_yd, day, along_deg, height_yd)
        flown = np.vstack([parts, stock[::-1]])
        return np.where(gets_there(flown), flown[:, 0], np.nan)


def _number_for(
    distance_yd: float, still_yd: np.ndarray, today_yd: np.ndarray, otherwise: float = np.nan
) -> float:
    """Still carry whose strike carries `distance_yd`: straight between swings, in proportion beyond.

    Of swings that carry alike to a height (one that flies low comes down on it early or, NaN, not at all) it
    is the shortest that does. `otherwise` where no ball gets so high.
    """
    there = np.isfinite(today_yd)
    if not there.any():
        return otherwise
    today, still = today_yd[there], still_yd[there]
    longest = int(np.argmax(today))
    if distance_yd > today[longest]:
        return float(still[longest] * distance_yd / today[longest])
    if distance_yd < today[0]:
        return float(still[0] * distance_yd / max(today[0], 1e-6))
    if longest == 0:
        return float(still[0])
    k = int(np.argmax((today[:-1] <= distance_yd) & (distance_yd <= today[1:])))
    return float(np.interp(distance_yd, today[k : k + 2], still[k : k + 2]))


def _up(height_yd: float) -> str:
    return f" to a target {height_yd:.0f} yd up" if height_yd > 0.0 else ""
