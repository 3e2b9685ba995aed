"""What the pieces of a wind phrase say, each taken into account by its kind."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import NoReturn

from ..errors import UsageError
from ..toml_text import short_line
from .beaufort import BEAUFORT_MPH, BEAUFORT_NAMES
from .direction import Direction
from .model import Height
from .phrases import CLUBS, HOURS, MPH_PER_UNIT, SENSE_OF, mph_of, names_unit, point_deg

_ON_NO_CLOCK = "is on no clock; allowed: 1 to 12 o'clock, 12 being dead against"
_ONE_WIND = '; a wind is one strength and one way: "1.5 clubs into, off the left"'


@dataclass
class Said:
    """What has been read of a phrase so far."""

    shown: str
    direction: Direction
    speed_mph: float | None = None
    clubs: float | None = None
    peak_mph: float | None = None
    gust_mph: float | None = None
    swing_deg: float | None = None
    height: Height | None = None
    unclear: str | None = None
    assumed: list[str] = field(default_factory=list)

    def refuse(self, word: str, why: str) -> NoReturn:
        """Refuse the wind at a word of it (UsageError)."""
        raise UsageError(f"wind {self.shown}: {short_line(word)!r} {why}")

    def set_once(self, name: str, value: float | str, word: str) -> None:
        """Store a value; a second one of its kind is refused."""
        if getattr(self, name) is not None:
            one = _ONE_WIND if name in ("speed_mph", "clubs") else ""
            self.refuse(word, f"says the {name.split('_')[0]} a second time{one}")
        setattr(self, name, value)

    def strength(self, value: float, word: str) -> None:
        """Store a speed [mph], said by a word."""
        self._strength("speed_mph", self.clubs, value, word)

    def strength_in_clubs(self, value: float, word: str) -> None:
        """Store how many clubs of wind were said."""
        self._strength("clubs", self.speed_mph, value, word)

    def _strength(self, name: str, other: float | None, value: float, word: str) -> None:
        """Store how strong it blows; told the other way already it is refused."""
        if other is not None:
            self.refuse(word, f"says the strength a second time{_ONE_WIND}")
        self.set_once(name, value, word)


def _word(found: re.Match[str]) -> str:
    return found.group().strip()


def _speed(said: Said, found: re.Match[str]) -> None:
    said.strength(mph_of(found), _word(found))


def _range(said: Said, found: re.Match[str]) -> None:
    low, high = sorted((mph_of(found, "low"), mph_of(found)))
    said.strength(0.5 * (low + high), _word(found))
    said.set_once("gust_mph", 0.5 * (high - low), _word(found))


def _force(said: Said, found: re.Match[str]) -> None:
    word, groups = _word(found), found.groupdict()
    force = int(groups["n"]) if groups.get("n") else BEAUFORT_NAMES[groups["name"]]
    if force >= len(BEAUFORT_MPH):
        said.refuse(word, f"is too strong; allowed: force 0 to {len(BEAUFORT_MPH) - 1}")
    said.strength(BEAUFORT_MPH[force], word)
    said.assumed.append(f"{word!r} taken as {BEAUFORT_MPH[force]:g} mph, the middle of Beaufort {force}")


def _clubs(said: Said, found: re.Match[str]) -> None:
    said.strength_in_clubs(_count(found["n"]) + (0.5 if found["half"] else 0.0), _word(found))


def _clubs_range(said: Said, found: re.Match[str]) -> None:
    """ "One to two clubs", "a club or two": the middle."""
    low, high = _count((found["low"] or "a").strip()), _count(found["n"])
    said.strength_in_clubs(0.5 * (low + high), _word(found))


def _count(number: str) -> float:
    """A number of clubs, in a word or in figures."""
    return CLUBS[number] if number in CLUBS else float(number)


def _gust_to(said: Said, found: re.Match[str]) -> None:
    said.set_once("peak_mph", mph_of(found), _word(found))


def _gust_by(said: Said, found: re.Match[str]) -> None:
    said.set_once("gust_mph", mph_of(found), _word(found))


def _gusts(said: Said, found: re.Match[str]) -> None:
    """ "10g20": the speed and its peak."""
    said.strength(mph_of(found), _word(found))
    said.set_once("peak_mph", mph_of(found, "peak"), _word(found))


def _blowing(said: Said, found: re.Match[str]) -> None:
    where = found["where"].strip(" -")
    the = "the " if where in ("left", "right") else ""
    why = f'may be where it comes from or where it goes; say "from {the}{where}" or "to {the}{where}"'
    said.refuse(_word(found), why)


def _either(said: Said, found: re.Match[str]) -> None:
    way = "into" if found["what"] in ("into", "against") else "helping"
    why = f'may be straight or off the right; say "straight {way}" or "{way}, off the right"'
    said.refuse(_word(found), why)


def _swing(said: Said, found: re.Match[str]) -> None:
    said.set_once("swing_deg", float(found["n"]), _word(found))


def _report(said: Said, found: re.Match[str]) -> None:
    unit = MPH_PER_UNIT[names_unit(found) or "kt"]
    said.direction.compass(float(found["ddd"]), _word(found))
    said.strength(float(found["mean"]) * unit, _word(found))
    if found["peak"]:
        said.set_once("peak_mph", float(found["peak"]) * unit, _word(found))


def _clock(said: Said, found: re.Match[str]) -> None:
    word, groups = _word(found), found.groupdict()
    minute = 30 if groups.get("half") else int(groups.get("minute") or 0)
    if minute and groups.get("half") == "half ":
        said.assumed.append(f"{word!r} taken as half past")
    if groups["hour"] not in HOURS or minute > 59:
        said.refuse(word, _ON_NO_CLOCK)
    said.direction.clock(30.0 * HOURS[groups["hour"]] + 0.5 * minute, word)


MOST_HOURS_APART = 3
"""Two hours of a clock farther apart than this are no one direction (assumed)."""


def _clock_range(said: Said, found: re.Match[str]) -> None:
    """ "Between 1 and 2 o'clock": the middle."""
    word = _word(found)
    if found["low"] not in HOURS or found["hour"] not in HOURS:
        said.refuse(word, _ON_NO_CLOCK)
    low, high = HOURS[found["low"]], HOURS[found["hour"]]
    apart = (high - low) % 12
    if not 0 < apart <= MOST_HOURS_APART:
        why = 'is no one direction; say the middle, "2 o\'clock", and "swinging 30" to either side'
        said.refuse(word, why)
    minutes = 60 * low + 30 * apart
    said.direction.clock(0.5 * minutes, word)
    said.assumed.append(f"{word!r} taken as {minutes // 60 % 12 or 12}:{minutes % 60:02d}, the middle of it")


def _degrees(said: Said, found: re.Match[str]) -> None:
    said.direction.degrees(float(found["n"]), _word(found))


def _from_number(said: Said, found: re.Match[str]) -> None:
    if float(found["n"]) <= 12:
        said.unclear = said.unclear or _word(found)
    else:
        said.direction.compass(float(found["n"]), _word(found))


def _compass(said: Said, found: re.Match[str]) -> None:
    bearing = point_deg(found["point"])
    if bearing is None:
        said.refuse(
            _word(found), "is no point of the compass; allowed: N, NNE, NE ... or north-west, southerly"
        )
    said.direction.compass(bearing, _word(found))


def _plain(said: Said, found: re.Match[str]) -> None:
    sense = SENSE_OF[found["word"]]
    if sense in ("forecast", "felt"):
        said.set_once("height", sense, _word(found))
    else:
        said.direction.plain(sense, _word(found))


TAKE: dict[str, Callable[[Said, re.Match[str]], None]] = {
    "speed": _speed, "range": _range, "force": _force, "clubs": _clubs, "gust_to": _gust_to,
    "gusts": _gusts, "blowing": _blowing, "clubs_range": _clubs_range,
    "gust_by": _gust_by, "plus_minus": _gust_by, "swing": _swing, "plus_minus_degrees": _swing,
    "report": _report, "clock": _clock, "clock_range": _clock_range,
    "degrees": _degrees, "from_number": _from_number,
    "compass": _compass, "word": _plain, "either": _either,
}  # fmt: skip
"""What takes a match of each kind of `phrases.patterns`."""
