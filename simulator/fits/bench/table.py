"""The table of the calibration: published figure, ours, tolerance and miss, row by row."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from scipy.optimize import brentq

from ...player.levels import LOWEST_HANDICAP, level
from ...player.model import Player
from ...player.standard import standard_player
from ...tables.putts import putt_table
from ..putting import TOUR_AVERAGE_PUTTS, TOUR_STIMP_FT, TOUR_THREE_PUTT_PCT
from .amateurs import rating
from .measure import Bench, bench, recovery_strokes
from .published import (
    FAR_YD,
    FIFTEEN_GREENS,
    LADDER,
    LADDER_LIMIT,
    LIMITS,
    NEAR_YD,
    NINETY_COURSE_YD,
    NINETY_LIMIT,
    NINETY_LINE,
    RATING_LIMIT,
    RATING_LINES,
    ROUGH_LADDER,
    SAND_LEAVES,
    SAND_YD,
    SHOOTER_OF_90,
    SLOPE_LIMIT,
    SLOPE_PER_STROKE,
    TOUR_LIES,
    TOUR_STROKES,
    tour_rows,
)
from .rounds import COURSES_YD, mean_scores, simulated


@dataclass(frozen=True)
class Row:
    """One figure.

    Attributes
    ----------
    group, what : str
    target, ours : float
    tolerance : float or None
        None: printed, not counted.
    unit : str
    """

    group: str
    what: str
    target: float
    ours: float
    tolerance: float | None
    unit: str

    @property
    def miss(self) -> float:
        """Ours less the target."""
        return self.ours - self.target

    @property
    def met(self) -> bool:
        """Whether it counts and is met, or does not count."""
        return self.tolerance is None or abs(self.miss) <= self.tolerance + 1e-9

    def text(self) -> str:
        """One line of the printed table."""
        limit = "not counted" if self.tolerance is None else f"{self.tolerance:g}"
        mark = "" if self.met else "  MISSED"
        return (
            f"{self.group:<22}{self.what:<44}{self.target:>9.3f}{self.ours:>9.3f}  {limit:>11}"
            f"{self.miss:>+9.3f} {self.unit}{mark}"
        )


def who(handicap: float, sex: str = "man") -> Player:
    """The player of a level as the package has it."""
    return standard_player(level(handicap, sex))


def tour_columns(measured: Bench, quick: bool = True) -> Iterator[Row]:
    """Rms and worst miss of each column of the tour's strokes, then the rows that are not counted."""
    for lie in TOUR_LIES:
        at, published = tour_rows(lie)
        if lie == "trees":
            ours = recovery_strokes(who(LOWEST_HANDICAP), at, quick=quick)
        else:
            ours = measured.strokes(lie, at)
        rms, worst = LIMITS[lie]
        span = f"{at.min():.0f}-{at.max():.0f} yd"
        yield Row(
            "tour strokes",
            f"{lie} {span}, rms",
            0.0,
            float(np.sqrt(np.mean((ours - published) ** 2))),
            rms,
            "strokes",
        )
        yield Row(
            "tour strokes",
            f"{lie} {span}, worst",
            0.0,
            float(np.abs(ours - published).max()),
            worst,
            "strokes",
        )


def tour_misses(measured: Bench) -> dict[str, np.ndarray]:
    """Ours less published at every distance of the table, by lie (recovery apart)."""
    at = TOUR_STROKES[:, 0]
    return {lie: measured.strokes(lie, at) - TOUR_STROKES[:, 1 + k] for k, lie in enumerate(TOUR_LIES[:-1])}


def tour_putting() -> Iterator[Row]:
    """Average putts and three-putts of the tour."""
    skill = level(LOWEST_HANDICAP).putting
    table = putt_table(skill.angle_sd_deg, skill.distance_sd, stimp_ft=TOUR_STIMP_FT)
    for feet, published in TOUR_AVERAGE_PUTTS.items():
        yield Row(
            "tour putting",
            f"average putts from {feet} ft",
            published,
            float(table.at_ft(feet)[0]),
            0.05,
            "putts",
        )
    for feet, pct in TOUR_THREE_PUTT_PCT.items():
        more = 1.0 - float(table.at_ft(feet)[1][1])
        yield Row("tour putting", f"three putts or more from {feet} ft", pct / 100, more, 0.05, "chance")


def ladders(benches: Callable[[float], Bench]) -> Iterator[Row]:
    """Greens hit and leaves at rest, by score group."""
    for handicap, group, *published in LADDER:
        for name, distances, (greens, left) in (
            ("20-60 yd", NEAR_YD, published[:2]),
            ("100-150 yd", FAR_YD, published[2:]),
        ):
            green, leave = benches(handicap).approaches("fairway", distances)
            yield Row(
                f"scores {group}", f"greens hit, {name}", greens, 100 * green, LADDER_LIMIT[0], "points"
            )
            yield Row(
                f"scores {group}", f"median leave, {name}", left, 100 * leave, LADDER_LIMIT[1], "% of it"
            )
    for handicap, group, *published in ROUGH_LADDER:
        for name, distances, (greens, left) in (
            ("20-60 yd", NEAR_YD, published[:2]),
            ("100-150 yd", FAR_YD, published[2:]),
        ):
            green, leave = benches(handicap).approaches("rough", distances)
            who_ = f"scores {group}, rough"
            yield Row(who_, f"greens hit, {name}", greens, 100 * green, LADDER_LIMIT[0], "points")
            yield Row(who_, f"median leave, {name}", left, 100 * leave, LADDER_LIMIT[1], "% of it")
    for handicap, leave_pct in SAND_LEAVES.items():
        leave = benches(handicap).approaches("sand", SAND_YD)[1]
        yield Row("sand, 15 yd", f"median leave, index {handicap:g}", leave_pct, 100 * leave, None, "% of it")
    green, leave = benches(18.0).approaches("fairway", np.array([150.0]), 4000)
    yield Row(
        "90-shooter", "greens hit from 150 yd", SHOOTER_OF_90[0], 100 * green, LADDER_LIMIT[0], "points"
    )
    yield Row("90-shooter", "median leave from 150 yd", SHOOTER_OF_90[1], 450 * leave, None, "ft")
    green, leave = benches(15.0).approaches("fairway", np.arange(155.0, 200.0, 10.0))
    yield Row("15 handicap", "greens hit, 150-200 yd", FIFTEEN_GREENS, 100 * green, LADDER_LIMIT[0], "points")


def rating_rows(benches: Callable[[float, str], Bench], open_: bool, rounds: int) -> Iterator[Row]:
    """Better half of simulated rounds against the yardage ratings, strokes a hole; slope where it counts."""
    for sex, courses in COURSES_YD.items():
        found: dict[float, np.ndarray] = {}
        for handicap in (h for s, h in RATING_LINES if s == sex):
            halves = []
            for length in courses:
                scores = np.sort(simulated(benches(handicap, sex), length, rounds))
                halves.append(scores[: rounds // 2].mean())
            found[handicap] = np.array(halves)
            lines = rating(handicap, sex, np.array(courses)) / 18
            name = "scratch" if handicap == 0 else "bogey"
            for length, line, half in zip(courses, lines, found[handicap] / 18, strict=True):
                limit = None if open_ else RATING_LIMIT[handicap]
                where = "open bench" if open_ else "plain bench"
                yield Row(
                    f"{name} {sex}",
                    f"better half a hole, {length:.0f} yd, {where}",
                    line,
                    float(half),
                    limit,
                    "strokes",
                )
        if not open_:
            low, high = sorted(found)
            for k, length in enumerate(courses):
                wanted = rating(high, sex, np.array([length]))[0] - rating(low, sex, np.array([length]))[0]
                got = found[high][k] - found[low][k]
                per = SLOPE_PER_STROKE[sex]
                yield Row(
                    f"slope, {sex}",
                    f"{length:.0f} yd",
                    per * wanted,
                    per * got,
                    SLOPE_LIMIT * per * wanted,
                    "slope",
                )


def ninety_rows() -> Iterator[Row]:
    """The golfer who averages 90 over 6,300 yd, by index, and the published line of such golfers."""

    def over(handicap: float) -> float:
        return float(mean_scores(bench(who(handicap)), (NINETY_COURSE_YD,))[0]) - 90.0

    index = float(brentq(over, 5.0, 36.0, xtol=0.3))
    yield Row("90-golfer", "index whose mean over 6,300 yd is 90", 18.0, index, None, "index")
    at = np.array([150.0, 200.0, 250.0, 300.0, 350.0, 400.0, 450.0, 500.0])
    ours = bench(who(index)).strokes("tee", at)
    for d, value in zip(at, ours, strict=True):
        line = NINETY_LINE[0] + NINETY_LINE[1] * d
        yield Row(
            "90-golfer", f"strokes from the tee, {d:.0f} yd", line, float(value), NINETY_LIMIT, "strokes"
        )
