"""A club on a line from a place, and what came of playing it: plain frozen data."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np

from ..player.names import with_flight
from .errorbars import Estimate

if TYPE_CHECKING:
    from .pointing import Pointing
    from .reach import Reach
    from .room import Room


@dataclass(frozen=True)
class ClubAndLine:
    """A club and a line from a place.

    Attributes
    ----------
    club, flight : str
        Club name and flight (``"stock"``, ``"low"`` or ``"high"``; of part swings ``"part"``, ``"gripped"``
        or ``"punch"``; of a putt from off the green ``"putt"``).
    carry_yd : float
        Intended carry.
    today_carry_yd : float
        How far along its line a stock strike comes down in today's air and mean wind, on the hole's ground.
    aim_offset_yd : float
        Of the aim at stock carry, from the straight line ball to pin, right positive.
    aim_bearing_deg : float
        Direction of the aim, clockwise from +y.
    point : Pointing
        What the line is pointed by.
    """

    club: str
    flight: str
    carry_yd: float
    today_carry_yd: float
    aim_offset_yd: float
    aim_bearing_deg: float
    point: Pointing

    def turn_rad(self, offset_yd: float | None = None) -> float:
        """Angle of a line off the straight one to the pin, right positive [rad].

        Parameters
        ----------
        offset_yd : float, optional
            Of the line at stock carry, as `aim_offset_yd`, which it is when left out.
        """
        offset = self.aim_offset_yd if offset_yd is None else offset_yd
        return math.asin(min(max(offset / self.carry_yd, -1.0), 1.0))

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {**vars(self), "point": vars(self.point)}


@dataclass(frozen=True)
class Alternative(ClubAndLine):
    """One way to play the asked shot, and what came of it: beside the club and its line, the figures.

    Attributes
    ----------
    map_score : Estimate
        The value map's own figure for this alternative, over the even first strikes.
    score : Estimate
        Expected strokes (on the hole when `Start.played` is known, from here otherwise).
    difference : Estimate
        This minus the recommended one, paired.
    chances : dict of str to Estimate or None
        Shares of the plain sequences: birdie_or_better, par, bogey, double_or_worse,
        penalty_this_shot, penalty_on_hole, fairway, green_in_regulation, branch_this_shot, three_putt.
        None where the word has no meaning here.
    worst_tenth_mean : Estimate
        Mean score of the worst tenth of the sequences.
    finish : dict of str to Estimate
        Share of first shots at rest on each surface, before relief.
    features : dict of str to Estimate
        The same by named feature.
    leaves_yd : dict of str to Estimate
        p10, p50, p90 of the distance left after any relief.
    aims_yd : tuple of float
        First and last aim offset whose score on the map is within the tie band of the best aim's; with a
        goal, whose chance of it is.
    aims_error_yd : tuple of float or None
        Standard error of each of these; None where nothing farther out was tried.
    aim_given : bool
        The aim was asked for, not searched.
    asked : bool
        Somebody asked about this club.
    finishes_yd, landings_yd : float64[sequences, 2]
        Where each first shot came to rest (before relief) and came down.
    scores : int64[sequences]
        Strokes of each plain sequence, on the same footing as `score`.
    middle_right_yd : Estimate
        Where the middle of the pattern finishes, from the aim line, right positive.
    wide_yd : Estimate
        One ball in twenty finishes farther than this to the side of the aim line.
    room : Room or None
        None when all about the middle of the pattern is trouble.
    reach : tuple of Reach
        Troubles in the directions the balls take, the nearest to being reached first.
    goal, goal_difference : Estimate or None
        Chance of reaching the answer's goal, and that minus the recommended one's, paired.
    action : float64[3], optional
        Shot code, aim [rad] and reach [yd], as the engine plays it.
    first : float64[scrambles], optional
    rest : float64[sequences], optional
        What `score` is the mean of, the sum of the two means: the map's figure over each scramble of first
        strikes, and what each sequence adds. Luck is shared by alternatives and by holes, so errors of
        differences and of sums are read off these.
    """

    map_score: Estimate
    score: Estimate
    difference: Estimate
    chances: dict[str, Estimate | None]
    worst_tenth_mean: Estimate
    finish: dict[str, Estimate]
    features: dict[str, Estimate]
    leaves_yd: dict[str, Estimate]
    aims_yd: tuple[float, float]
    aims_error_yd: tuple[float | None, float | None]
    aim_given: bool
    asked: bool
    finishes_yd: np.ndarray = field(repr=False)
    landings_yd: np.ndarray = field(repr=False)
    scores: np.ndarray = field(repr=False)
    middle_right_yd: Estimate
    wide_yd: Estimate
    room: Room | None = None
    reach: tuple[Reach, ...] = ()
    goal: Estimate | None = None
    goal_difference: Estimate | None = None
    action: np.ndarray | None = field(default=None, repr=False)
    first: np.ndarray | None = field(default=None, repr=False)
    rest: np.ndarray | None = field(default=None, repr=False)

    def __repr__(self) -> str:
        """Club, line and score; the other figures are its attributes."""
        shot = with_flight(self.club, self.flight)
        score = f"{self.score.value:.3f} +- {self.score.standard_error:.3f}"
        return f"<{shot} {self.aim_offset_yd:+.1f} yd: {score}>"

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        out: dict[str, Any] = {
            "club": self.club,
            "flight": self.flight,
            "asked": self.asked,
            "carry_yd": self.carry_yd,
            "today_carry_yd": self.today_carry_yd,
            "aim_offset_yd": self.aim_offset_yd,
            "aim_bearing_deg": self.aim_bearing_deg,
            "aim_given": self.aim_given,
            "aim_offset_within_tie_yd": list(self.aims_yd),
            "expected_score": self.score.value,
            "standard_error": self.score.standard_error,
            "margin_95": self.score.margin,
            "difference": self.difference.value,
            "difference_standard_error": self.difference.standard_error,
            "difference_margin_95": self.difference.margin,
        }
        errors: dict[str, Any] = {"aim_offset_within_tie_yd": list(self.aims_error_yd)}

        def put(name: str, one: Estimate | None) -> None:
            out[name], errors[name] = (None, None) if one is None else (one.value, one.standard_error)

        put("map_score", self.map_score)
        for name, chance in self.chances.items():
            put(name, chance)
        put("worst_tenth_mean", self.worst_tenth_mean)
        for group in ("finish", "features", "leaves_yd"):
            figures: dict[str, Estimate] = getattr(self, group)
            out[group] = {name: one.value for name, one in figures.items()}
            errors[group] = {name: one.standard_error for name, one in figures.items()}
        out["point"] = dict(vars(self.point))
        put("middle_right_yd", self.middle_right_yd)
        put("wide_yd", self.wide_yd)
        out["room"] = None if self.room is None else self.room.to_dict()
        out["reach"] = [one.to_dict() for one in self.reach]
        put("goal", self.goal)
        put("goal_difference", self.goal_difference)
        out["standard_errors"] = errors
        return out
