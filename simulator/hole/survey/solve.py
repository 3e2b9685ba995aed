"""A survey solved: every point with its uncertainty, what disagrees, what would help most."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from ...errors import FileError
from ..legs import MOST_TURN_DEG
from ..line import PlayLine
from .advise import Advice, Adviser
from .green import ENDS, FLAG, check_green
from .heights import heights_of
from .network import OFFSET_SD_YD, Adjusted, Network, Reading, Seen, Suspect
from .readings import COMPASS_SD_DEG, Survey
from .rough import line_so_far, rough_places
from .sampling import sampled
from .slips import adjust_without_slips

DRAWS, SEED = 400, 20_261
"""Sets of readings drawn anew for the intervals; their standard error is a twentieth of a width."""

IN_LINE_SD_YD = 1.5
"""How well a green's front and back are read in line with the flag, as an error of the gap between them [yd]:
at 14 yards from it, some 6 yards aside. Assumed."""

HARDLY_YD = 8.0
"""An offset that eight sets of readings in ten leave wider than this either side is said to be hardly fixed
[yd]: half a narrow fairway."""


@dataclass(frozen=True)
class Point:
    """One point of a survey.

    Attributes
    ----------
    station_yd, offset_yd, height_yd : float
        Along the line of play, right of it, over the tee (None where nobody told).
    station_80_yd, offset_80_yd : (float, float)
        Eight in ten readings would put it between these.
    """

    name: str
    x_yd: float
    y_yd: float
    station_yd: float
    offset_yd: float
    height_yd: float | None
    station_80_yd: tuple[float, float]
    offset_80_yd: tuple[float, float]

    @property
    def hardly_fixed(self) -> bool:
        """Whether its offset is little more than a guess."""
        low, high = self.offset_80_yd
        return high - low > 2.0 * HARDLY_YD

    @property
    def sd_yd(self) -> tuple[float, float]:
        """Rough standard deviation of station and offset, from the intervals."""
        widths = [(b - a) / (2.0 * 1.2816) for a, b in (self.station_80_yd, self.offset_80_yd)]
        return widths[0], widths[1]


@dataclass(frozen=True)
class Surveyed:
    """Everything a survey gives.

    Attributes
    ----------
    suspects : tuple of Suspect
        Readings left out because all the others disagree with them.
    advice : Advice or None
        The reading that would help most.
    pinned_by : mapping of str to Advice or None
        For every point that is hardly fixed, the reading that would pin it; None when no single one would.
    """

    survey: Survey
    line: PlayLine
    points: Mapping[str, Point]
    adjusted: Adjusted
    suspects: tuple[Suspect, ...]
    advice: Advice | None
    pinned_by: Mapping[str, Advice | None]

    @property
    def length_yd(self) -> float:
        """Along the line of play to its last point."""
        return self.line.length_yd


def solve_survey(survey: Survey) -> Surveyed:
    """Places of all points by weighted least squares, and how sure they are.

    Raises
    ------
    FileError
        A point without a side, or a line of play that doubles back.
    """
    adjusted = adjusted_survey(survey)
    line = _line(survey, adjusted.places)
    draws = sampled(adjusted, DRAWS, SEED)
    heights = heights_of(survey)
    points, beside = {}, {}
    corners = np.stack([draws[name] for name in survey.corners], axis=1)
    lines = [PlayLine(each) for each in corners]
    for name in [survey.stands[0], *survey.points]:
        x, y = adjusted.places[name]
        station, offset = line.station_offset(x, y)
        around = np.array([one.station_offset(*xy) for one, xy in zip(lines, draws[name], strict=True)])
        if name in survey.line:  # on the line however that runs: how far aside it may run is the question
            around[:, 1] = [line.station_offset(*xy)[1] for xy in draws[name]]
        beside[name] = around[:, 1]
        low, high = np.quantile(around, [0.1, 0.9], axis=0)
        if name not in survey.line and not low[1] <= offset <= high[1]:  # the likeliest of all is at the wall
            typical = int(np.argmin(np.abs(around[:, 1] - np.median(around[:, 1]))))
            station, offset = around[typical].tolist()
            x, y = line.at(station, offset)
        points[name] = Point(
            name, x, y, station, offset, heights.get(name),
            (float(low[0]), float(high[0])), (float(low[1]), float(high[1])),
        )  # fmt: skip
    check_green(survey, points)
    adviser = Adviser(survey, adjusted, draws, beside)
    loose = [p.name for p in points.values() if p.hardly_fixed]
    return Surveyed(
        survey, line, points, adjusted, adjusted.dropped, adviser.best(), adviser.pinning(loose)
    )


def adjusted_survey(survey: Survey) -> Adjusted:
    """The likeliest places and the readings left out for them: all of `solve_survey` but how sure they are.

    Raises
    ------
    FileError
        A point without a side.
    """
    start = rough_places(survey)
    return adjust_without_slips(_network(survey, start), start)


def _network(survey: Survey, start: Mapping[str, tuple[float, float]]) -> Network:
    tee, ahead = survey.corners[:2]
    rows = [Reading("distance", r.stand, r.point, r.level_yd, r.sd_yd, r.words) for r in survey.ranges]
    rows += [Reading("distance", g.first, g.second, g.gap_yd, g.sd_yd, g.words) for g in survey.gaps]
    rows += _bearings(survey)
    rows += _in_one_line(survey)
    line = line_so_far(survey, dict(start))
    rows += [_near_the_line(line, point, start[point]) for point in survey.points if point != ahead]
    return Network(tuple(rows), {tee: (0.0, 0.0)}, ahead, _sides(survey, line, start))


def _near_the_line(line: PlayLine, point: str, rough: tuple[float, float]) -> Reading:
    """The belief that a point is not far from the leg of the line of play on which it lies roughly."""
    station, _ = line.station_offset(*rough)
    leg = line.leg(station)
    hx, hy = line.headings[leg].tolist()
    right = (hy, -hx)
    return Reading("offset", point, point, float(line.points[leg] @ right), OFFSET_SD_YD, right=right)


def _sides(survey: Survey, line: PlayLine, start: Mapping[str, tuple[float, float]]) -> tuple[Seen, ...]:
    """Sides that were told: of the leg of the line of play that a point lies on roughly, and of gaps.

    Not of the sight from where it was read: a point behind a corner can be right of the line of play and left
    of the sight from there to the flag.
    """
    corners = survey.corners
    seen = []
    for r in survey.ranges if len(line.points) == len(corners) else ():
        if r.point in corners:
            end = corners.index(r.point) - 1  # a corner is to a side of the leg before its own
        else:
            end = line.leg(line.station_offset(*start[r.point])[0]) + 1
        if r.side and end > 0:
            seen.append(Seen(corners[end - 1], corners[end], r.point, r.side))
    seen += [Seen(g.stand, g.first, g.second, g.side) for g in survey.gaps if g.side]
    return tuple(seen)


def _bearings(survey: Survey) -> list[Reading]:
    """Compass bearings, turned so that straight ahead is 0 (by that of the line's first point)."""
    tee, ahead = survey.corners[:2]
    zero = survey.bearing_deg
    if zero is None:
        return []
    return [
        Reading(
            "direction", r.stand, r.point, np.radians((r.bearing_deg - zero + 180.0) % 360.0 - 180.0),
            np.radians(COMPASS_SD_DEG * 2**0.5), f"bearing from the {r.stand} to {r.point}",
        )  # both bearings have the compass's error
        for r in survey.ranges
        if r.bearing_deg is not None and (r.stand, r.point) != (tee, ahead)
    ]  # fmt: skip


def _in_one_line(survey: Survey) -> list[Reading]:
    """Front and back of a green are read past the flag, so they lie beyond it or before it, not beside it."""
    reach = {(r.stand, r.point.casefold()): r for r in survey.ranges}
    rows = []
    for (stand, point), r in reach.items():
        flag = reach.get((stand, FLAG))
        if point in ENDS and flag is not None:
            apart = max(abs(flag.level_yd - r.level_yd), 1.0)
            rows.append(Reading("distance", r.point, flag.point, apart, IN_LINE_SD_YD))
    return rows


def _line(survey: Survey, places: Mapping[str, tuple[float, float]]) -> PlayLine:
    corners = np.array([places[name] for name in survey.corners])
    steps = np.diff(corners, axis=0)
    if np.any(np.hypot(steps[:, 0], steps[:, 1]) < 1.0):
        raise FileError(
            survey.source, "line", "two points in one place", "points apart, in order from the tee"
        )
    line = PlayLine(corners)
    for point, before, after in zip(survey.line, line.headings, line.headings[1:], strict=False):
        turn = np.degrees(np.arccos(np.clip(before @ after, -1.0, 1.0)))
        if turn > MOST_TURN_DEG:
            found = f"a turn of {turn:.0f} degrees at {point!r}"
            raise FileError(survey.source, "line", found, "the points in order from the tee")
    return line
