"""A file of laser readings: stands, ranges, gaps."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from ...errors import FileError
from ...units import YD_PER_M
from ..fields import Fields, entries_of, show

LASER_ERROR_YD = 1.0
"""Stated error of a hand laser, plus or minus [yd] (common practice: "accurate to a yard")."""

SDS_IN_STATED_ERROR = 1.96
"""A stated error holds 95 of 100 readings (from memory: a maker's figure is rarely said to be more)."""

COMPASS_SD_DEG = 3.0
"""Of a bearing taken with a hand compass [deg]; assumed."""

LONGEST_YD = 1000.0
"""Longest range read [yd]: farther than a laser reads. A limit on slips."""

TOP_KEYS = ("name", "par", "line", "stand", "hole")
TOP_LENGTHS = ("laser_error",)


def called(name: str, stand: bool = False) -> str:
    """A point's name in a sentence: in quotes where it is more than one word; "the tee" of a stand."""
    if " " in name:
        return f'"{name}"'
    return f"the {name}" if stand else name


def range_words(stand: str, point: str) -> str:
    """What a range is called: ``range from the tee to "pond far"``."""
    return f"range from {called(stand, stand=True)} to {called(point)}"


def gap_words(stand: str, first: str, second: str) -> str:
    """What a gap is called."""
    return f"gap from {called(stand, stand=True)} between {called(first)} and {called(second)}"


@dataclass(frozen=True)
class Range:
    """A range from a stand to a point.

    Attributes
    ----------
    level_yd : float
        Horizontal distance.
    height_yd : float or None
        Of the point over the stand, where it was told.
    side : int
        -1 left of the line of play, 1 right, 0 not said.
    bearing_deg : float or None
        Compass bearing.
    """

    stand: str
    point: str
    level_yd: float
    sd_yd: float
    height_yd: float | None
    side: int
    bearing_deg: float | None

    @property
    def words(self) -> str:
        """What the reading is called."""
        return range_words(self.stand, self.point)


@dataclass(frozen=True)
class Gap:
    """A gap between two points, both seen from one stand.

    Attributes
    ----------
    side : int
        1 when the second point is right of the first seen from the stand, -1 left, 0 not said.
    """

    stand: str
    first: str
    second: str
    gap_yd: float
    sd_yd: float
    side: int

    @property
    def words(self) -> str:
        """What the reading is called."""
        return gap_words(self.stand, self.first, self.second)


@dataclass(frozen=True)
class Survey:
    """What was measured on one hole, and the sketch that uses it.

    Attributes
    ----------
    stands : tuple of str
        The first is the tee.
    line : tuple of str
        Points the line of play runs through, the first straight ahead.
    sketch : mapping
        Keys of a hole file, with names of points where numbers belong.
    """

    source: str
    name: str
    par: int
    stands: tuple[str, ...]
    line: tuple[str, ...]
    ranges: tuple[Range, ...]
    gaps: tuple[Gap, ...]
    sketch: Mapping[str, Any]

    @property
    def corners(self) -> tuple[str, ...]:
        """Names of the corners of the line of play: the tee, the point straight ahead of it, and on."""
        return self.stands[0], *self.line

    @property
    def bearing_deg(self) -> float | None:
        """Compass bearing of the first leg, None where it was not read."""
        sight = self.corners[:2]
        read = (r.bearing_deg for r in self.ranges if (r.stand, r.point) == sight)
        return next((bearing for bearing in read if bearing is not None), None)

    @property
    def points(self) -> list[str]:
        """Every point that was read, in the order of the file."""
        return list(dict.fromkeys([r.point for r in self.ranges]))


def read_survey(data: dict[str, Any], source: str) -> Survey:
    """A survey from the parsed TOML of its file.

    Raises
    ------
    FileError
        Anything that cannot be used, in one line.
    """
    top = Fields(source, "", data, elsewhere=TOP_KEYS)
    top.refuse_unknown(TOP_KEYS, TOP_LENGTHS, {"stands": "stand", "readings": "stand"})
    name = top.text("name")
    if name is None:
        raise top.error("name", "no such key", "the name of the hole, in quotes")
    par = top.integer("par", 3, 6, required=True)
    assert par is not None
    error = top.length("laser_error", LASER_ERROR_YD, 0.05, 20.0)
    entries = entries_of(top, "stand")
    if not entries:
        raise top.error("stand", "no stand", 'at least one, [[stand]] with name = "tee" and readings = [...]')
    stands: list[str] = []
    ranges: list[Range] = []
    gaps: list[Gap] = []
    for number, entry in enumerate(entries, start=1):
        _read_stand(Fields(source, f"stand {number}", entry), number, error, stands, ranges, gaps)
    sketch = data.get("hole", {})
    if not isinstance(sketch, dict):
        raise top.error("hole", show(sketch), "a section [hole] with the keys of a hole file")
    survey = Survey(source, name, par, tuple(stands), _line(top, ranges), tuple(ranges), tuple(gaps), sketch)
    _check(survey)
    return survey


def _read_stand(
    fields: Fields, number: int, error: float, stands: list[str], ranges: list[Range], gaps: list[Gap]
) -> None:
    fields.refuse_unknown(("name", "readings"), ())
    stand = fields.text("name", "tee" if number == 1 else None)
    if stand is None:
        raise fields.error("name", "no such key", "the name of a point read from an earlier stand")
    if stand in stands:
        raise fields.error("name", f"the stand {stand!r} a second time", "each stand once")
    if stands and stand not in {r.point for r in ranges}:
        raise fields.error("name", f"{stand!r}, read from no earlier stand", "a point with a range from one")
    stands.append(stand)
    rows = fields.table.get("readings")
    if not isinstance(rows, list) or not rows:
        raise fields.error("readings", show(rows), 'a list, [{ to = "flag", range_yd = 345 }, ...]')
    for k, row in enumerate(rows, start=1):
        one = Fields(fields.source, f"{fields.where}, reading {k}", row)
        if "between" in one.table or one.has("gap"):
            gaps.append(_gap(one, stand, error))
        else:
            ranges.append(_range(one, stand, error))


STEEPEST = 0.5
"""Height over the range that no golf hole has: a second number farther from the range is a slip (assumed)."""


def _range(one: Fields, stand: str, error: float) -> Range:
    one.refuse_unknown(("to", "side", "incline_deg", "bearing_deg"), ("range", "height", "adjusted"))
    point = one.text("to")
    if point is None:
        raise one.error("to", "no such key", "the name of the point, in quotes")
    if point == stand:
        raise one.error("to", f"{point!r}, the stand itself", "another point")
    slant = one.length("range", None, 1.0, LONGEST_YD)
    told = [key for key in ("height", "adjusted") if one.has(key)] + ["incline_deg"] * (
        "incline_deg" in one.table
    )
    if len(told) > 1:
        raise one.error(told[0], f"{' and '.join(told)}", "one of height_yd, incline_deg and adjusted_yd")
    height = None
    if one.has("height"):
        height = one.length("height", None, -200.0, 200.0)
    elif "incline_deg" in one.table:
        height = slant * math.sin(math.radians(one.number("incline_deg", -60.0, 60.0) or 0.0))
    elif one.has("adjusted"):
        adjusted = one.length("adjusted", None, 1.0, LONGEST_YD)
        height = adjusted - slant  # a yard a yard: common practice
        if abs(height) > STEEPEST * slant:
            found = f"{adjusted:.4g} yd beside a range of {slant:.4g} yd"
            raise one.error(one.key("adjusted"), found, "no more than half of the range from it")
    if height is not None and abs(height) >= slant:
        raise one.error("", f"a height of {height:.4g} yd at {slant:.4g} yd", "less than the range")
    level = math.sqrt(slant**2 - (height or 0.0) ** 2)
    bearing = one.number("bearing_deg", 0.0, 360.0)
    return Range(stand, point, level, _sd(error, one, "range"), height, _side(one), bearing)


def _gap(one: Fields, stand: str, error: float) -> Gap:
    one.refuse_unknown(("between", "side"), ("gap",))
    both = one.table.get("between")
    if (
        not isinstance(both, list)
        or len(both) != 2
        or not all(isinstance(p, str) and p.strip() for p in both)
    ):
        raise one.error("between", show(both), 'two names of points, ["pond edge", "pine"]')
    first, second = (p.strip() for p in both)
    if first == second:
        raise one.error("between", f"{first!r} twice", "two points")
    gap = one.length("gap", None, 0.5, LONGEST_YD)
    return Gap(stand, first, second, gap, _sd(error, one, "gap"), _side(one))


def _sd(error: float, one: Fields, what: str) -> float:
    """Standard deviation of one reading [yd]: the laser's, and the rounding of the number as written."""
    key = one.key(what)
    rounding = 1.0 if isinstance(one.table.get(key), int) else 0.1
    rounding *= YD_PER_M if key.endswith("_m") else 1.0
    return math.hypot(error / SDS_IN_STATED_ERROR, rounding / math.sqrt(12.0))


def _side(one: Fields) -> int:
    if "side" not in one.table:
        return 0
    return {"left": -1, "right": 1}[one.choice("side", ("left", "right"))]


def _line(top: Fields, ranges: list[Range]) -> tuple[str, ...]:
    points = {r.point for r in ranges}
    given = top.table.get("line")
    if given is None:
        if "flag" in points:
            return ("flag",)
        raise top.error(
            "line", "no such key, and no point called flag", "points of the line of play, in order"
        )
    given = [given] if isinstance(given, str) else given
    if not isinstance(given, list) or not given or not all(isinstance(p, str) for p in given):
        raise top.error("line", show(given), "a list of points, the first straight ahead of the tee")
    for point in given:
        if point not in points:
            raise top.error("line", f"{point!r}, a point without a range", ", ".join(sorted(points)))
    return tuple(given)


def _check(survey: Survey) -> None:
    for point in survey.points:
        told = {r.side: r for r in survey.ranges if r.point == point and r.side}
        if len(told) == 2:
            raise FileError(
                survey.source, told[1].words, f'side = "right", and "left" for the {told[-1].words}',
                "one side: that of the line of play on which the point lies",
            )  # fmt: skip
    seen = {(r.stand, r.point) for r in survey.ranges}
    tee, ahead = survey.corners[:2]
    if (tee, ahead) not in seen:
        raise FileError(
            survey.source, "line", f"{ahead!r} has no range from the {tee}",
            "a first point of the line that was read from the tee",
        )  # fmt: skip
    for gap in survey.gaps:
        for point in (gap.first, gap.second):
            if (gap.stand, point) not in seen:
                raise FileError(
                    survey.source, gap.words, f"no range from the {gap.stand} to {point}",
                    "both ranges: a gap is measured through them",
                )  # fmt: skip
        r1, r2 = (next(r for r in survey.ranges if (r.stand, r.point) == (gap.stand, p))
                  for p in (gap.first, gap.second))  # fmt: skip
        if gap.gap_yd > r1.level_yd + r2.level_yd:
            raise FileError(
                survey.source, gap.words, f"{gap.gap_yd:g} yd, more than both ranges together",
                f"at most {r1.level_yd + r2.level_yd:.0f}",
            )  # fmt: skip
