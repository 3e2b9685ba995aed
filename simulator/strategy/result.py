"""What an answer is: plain frozen data, finished before any word is written about it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

import numpy as np

from ..conditions import Conditions, other_height
from ..hole.model import Hole, Point
from ..player.model import Player
from .aimline import AimLine
from .confidence import Confidence, Flip, verdict
from .day import DayNote
from .errorbars import Estimate

if TYPE_CHECKING:
    from .goals import Goal, GoalLine
    from .pointing import Pointing
    from .reach import Reach
    from .room import Room

SCHEMA = "holesim-answer-1"
"""Name and version of the JSON layout; changes when a key changes its meaning."""

TIE_STROKES = 0.03
"""Differences below this are no difference to a player [strokes]: three in a hundred plays of the hole."""


@dataclass(frozen=True)
class Start:
    """Where the question is asked from.

    Attributes
    ----------
    x_yd, y_yd : float
        Place in the hole frame.
    lie : str
        Lie word, for example ``"tee"`` or ``"rough"``.
    words : str
        The place as a reader would say it, for example ``"the back tee"``.
    out_yd : float
        Straight distance to the pin.
    played : int or None
        Strokes already played on the hole; None when not known (then par words mean nothing).
    """

    x_yd: float
    y_yd: float
    lie: str
    words: str
    out_yd: float
    played: int | None

    @property
    def xy_yd(self) -> Point:
        return self.x_yd, self.y_yd


@dataclass(frozen=True)
class Alternative:
    """One way to play the asked shot, and what came of it.

    Attributes
    ----------
    club, flight : str
        Club name and flight (``"stock"``, ``"low"`` or ``"high"``; of part swings ``"part"``, ``"gripped"``
        or ``"punch"``).
    carry_yd : float
        Intended carry.
    today_carry_yd : float
        How far along its line a stock strike comes down in today's air and mean wind, on the hole's ground.
    aim_offset_yd : float
        Right-positive offset of the aim at stock carry, from the straight line ball to pin.
    aim_bearing_deg : float
        Direction of the aim, clockwise from +y.
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
    aim_given : bool
        The aim was asked for, not searched.
    asked : bool
        Somebody asked about this club.
    finishes_yd, landings_yd : float64[sequences, 2]
        Where each first shot came to rest (before relief) and came down.
    scores : int64[sequences]
        Strokes of each plain sequence, on the same footing as `score`.
    point : Pointing
        What the line is pointed by.
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

    club: str
    flight: str
    carry_yd: float
    today_carry_yd: float
    aim_offset_yd: float
    aim_bearing_deg: float
    map_score: Estimate
    score: Estimate
    difference: Estimate
    chances: dict[str, Estimate | None]
    worst_tenth_mean: Estimate
    finish: dict[str, Estimate]
    features: dict[str, Estimate]
    leaves_yd: dict[str, Estimate]
    aims_yd: tuple[float, float]
    aim_given: bool
    asked: bool
    finishes_yd: np.ndarray = field(repr=False)
    landings_yd: np.ndarray = field(repr=False)
    scores: np.ndarray = field(repr=False)
    point: Pointing
    middle_right_yd: Estimate
    wide_yd: Estimate
    room: Room | None = None
    reach: tuple[Reach, ...] = ()
    goal: Estimate | None = None
    goal_difference: Estimate | None = None
    action: np.ndarray | None = field(default=None, repr=False)
    first: np.ndarray | None = field(default=None, repr=False)
    rest: np.ndarray | None = field(default=None, repr=False)

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
        errors: dict[str, Any] = {}

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


def conditions_dict(conditions: Conditions) -> dict[str, Any]:
    """The day as plain JSON-ready data."""
    wind = conditions.wind
    blowing = None
    if wind is not None:
        at_10m, at_head = other_height(wind)
        blowing = {
            "speed_mph": wind.speed_mph,
            "from_deg": wind.from_deg,
            "height": wind.height,
            "gust_mph": wind.gust_mph,
            "swing_deg": wind.swing_deg,
            "at_10_m_mph": at_10m,
            "at_head_height_mph": at_head,
        }
    return {
        "wind": blowing,
        "temperature_c": conditions.temperature_c,
        "altitude_m": conditions.altitude_m,
        "pressure_hpa": conditions.pressure_pa / 100.0,
        "humidity": conditions.humidity,
        "fairway_firmness": conditions.fairway_firmness,
        "green_firmness": conditions.green_firmness,
        "stimp_ft": conditions.stimp_ft,
    }


@dataclass(frozen=True)
class Answer:
    """The answer to "which club, which line?" on one hole for one player.

    Attributes
    ----------
    question : str
        ``"plan"`` or ``"compare"``.
    value_map_score : float
        Expected strokes by the value map's own best choice (same footing as the scores).
    recommended : int
        Index of the recommended alternative.
    tied : tuple of int
        Alternatives that cannot be told from it: nothing is within the 95 % interval of the difference,
        or that is below TIE_STROKES. Includes `recommended`.
    alternatives : tuple of Alternative
        The recommended one, then the others by expected score; asked ones always among them.
    clear_beyond_yd : int
        Nobody ahead may be nearer than this.
    day : DayNote
        What the wind at the other height would change, and what a putt from below the hole saves.
    confidence : Confidence or None
        For how many plausible versions of the player each alternative is best; None: taken as exact.
    flips : tuple of Flip
        What would turn the answer; empty where it was not looked for.
    warnings : tuple of str
        One line each.
    settings : dict
        What made the numbers: cell and node sizes, strikes, versions.
    seconds : dict of str to float
        Where the time went; not part of the answer, left out of `to_dict`.
    goal : Goal or None
        What the recommendation goes by (then `tied` does too); None: the lowest average score.
    goal_line : GoalLine or None
        What the recommended line gains and costs where it is not the club's best line for the average.
    lowest_score : int
        Index of the alternative that would be recommended without a goal.
    against : Alternative or None
        What was measured beside the alternatives without being one of them; left out of `to_dict`.
    """

    question: str
    hole: Hole
    player: Player
    conditions: Conditions
    start: Start
    seed: int
    sequences: int
    value_map_score: float
    recommended: int
    tied: tuple[int, ...]
    alternatives: tuple[Alternative, ...]
    clear_beyond_yd: int
    day: DayNote
    warnings: tuple[str, ...]
    settings: dict[str, Any]
    seconds: dict[str, float] = field(repr=False)
    goal: Goal | None = None
    goal_line: GoalLine | None = None
    lowest_score: int = 0
    confidence: Confidence | None = None
    flips: tuple[Flip, ...] = ()
    against: Alternative | None = field(default=None, repr=False)

    @property
    def verdict(self) -> str:
        """``"clear"``, ``"slight"`` or ``"either"`` (`confidence.verdict`); with a goal by its ties."""
        if self.goal is not None:
            return "either" if len(self.tied) > 1 else "clear"
        others = [one.difference for k, one in enumerate(self.alternatives) if k != self.recommended]
        return verdict(others, self.confidence)

    @property
    def best(self) -> Alternative:
        """The recommended alternative."""
        return self.alternatives[self.recommended]

    def line_of(self, one: Alternative) -> AimLine:
        """The line an alternative is aimed on."""
        return AimLine(*self.start.xy_yd, one.aim_bearing_deg)

    def to_dict(self) -> dict[str, Any]:
        """The whole answer as plain JSON-ready data; the same for any thread count."""
        return {
            "schema": SCHEMA,
            "question": self.question,
            "hole": self.hole.name,
            "par": self.hole.par,
            "tee": self.hole.tee.name,
            "pin": self.hole.pin.name,
            "player": self.player.name,
            "start": {
                "words": self.start.words,
                "lie": self.start.lie,
                "x_yd": self.start.x_yd,
                "y_yd": self.start.y_yd,
                "out_yd": self.start.out_yd,
                "played": self.start.played,
            },
            "conditions": conditions_dict(self.conditions),
            "seed": self.seed,
            "sequences": self.sequences,
            "value_map_score": self.value_map_score,
            "recommended": self.recommended,
            "tied": list(self.tied),
            "goal": None if self.goal is None else dict(vars(self.goal)),
            "goal_line": None if self.goal_line is None else self.goal_line.to_dict(),
            "lowest_score": self.lowest_score,
            "verdict": self.verdict,
            "confidence": None if self.confidence is None else self.confidence.to_dict(),
            "flips": [flip.to_dict() for flip in self.flips],
            "clear_beyond_yd": self.clear_beyond_yd,
            "other_wind_height_carry_yd": self.day.other_height_carry_yd,
            "below_hole_strokes": self.day.below_hole_strokes,
            "alternatives": [alternative.to_dict() for alternative in self.alternatives],
            "attribution": self.hole.attribution,
            "assumed": [*self.hole.assumed, *self.player.assumed, *self.conditions.assumed],
            "warnings": list(self.warnings),
            "settings": self.settings,
        }
