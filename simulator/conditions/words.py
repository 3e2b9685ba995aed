"""Wind in the ways people say it."""

from __future__ import annotations

import difflib
import re
from dataclasses import dataclass, field
from typing import NoReturn

from ..errors import UsageError
from ..toml_text import short_line
from .beaufort import BEAUFORT_MPH, BEAUFORT_NAMES
from .clubs import ClubsToMph, clubs_to_mph
from .direction import Direction
from .extras import read_gusts, read_swing
from .model import Height, Wind
from .phrases import (
    ALLOWED,
    CLUBS,
    FILLERS,
    HOURS,
    INSTEAD,
    MPH_PER_UNIT,
    PATTERNS,
    SENSE_OF,
    mph_of,
    names_unit,
    point_deg,
    vocabulary,
)
from .text import clean

LONGEST_PHRASE = 200
"""Letters of a phrase; more is not a wind."""

_CALM = re.compile(
    r"(?:none|no wind|no breeze|calm|(?:dead )?still(?: air)?|dead calm|windless|nil|zero|0(?: ?mph)?)"
)


@dataclass
class _Said:
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
        raise UsageError(f"wind {self.shown}: {short_line(word)!r} {why}")

    def set_once(self, name: str, value: float | str, word: str) -> None:
        """Store a value; a second one of its kind is refused."""
        if getattr(self, name) is not None:
            self.refuse(word, f"says the {name.split('_')[0]} a second time")
        setattr(self, name, value)

    def strength(self, value: float, word: str) -> None:
        if self.clubs is not None:
            self.refuse(word, "says the strength a second time")
        self.set_once("speed_mph", value, word)


def _token(said: _Said, kind: str, found: re.Match[str]) -> None:
    """Take one match into account."""
    word, groups = found.group().strip(), found.groupdict()
    if kind == "speed":
        said.strength(mph_of(found), word)
    elif kind == "range":
        low, high = sorted((mph_of(found, "low"), mph_of(found)))
        said.strength(0.5 * (low + high), word)
        said.set_once("gust_mph", 0.5 * (high - low), word)
    elif kind == "force":
        force = int(groups["n"]) if groups.get("n") else BEAUFORT_NAMES[groups["name"]]
        if force >= len(BEAUFORT_MPH):
            said.refuse(word, f"is too strong; allowed: force 0 to {len(BEAUFORT_MPH) - 1}")
        said.strength(BEAUFORT_MPH[force], word)
        said.assumed.append(f"{word!r} taken as {BEAUFORT_MPH[force]:g} mph, the middle of Beaufort {force}")
    elif kind == "clubs":
        number = CLUBS[groups["n"]] if groups["n"] in CLUBS else float(groups["n"])
        if said.speed_mph is not None:
            said.refuse(word, "says the strength a second time")
        said.set_once("clubs", number + (0.5 if groups["half"] else 0.0), word)
    elif kind == "gust_to":
        said.set_once("peak_mph", mph_of(found), word)
    elif kind in ("gust_by", "plus_minus"):
        said.set_once("gust_mph", mph_of(found), word)
    elif kind in ("swing", "plus_minus_degrees"):
        said.set_once("swing_deg", float(groups["n"]), word)
    elif kind == "report":
        unit = MPH_PER_UNIT[names_unit(found) or "kt"]
        said.direction.compass(float(groups["ddd"]), word)
        said.strength(float(groups["mean"]) * unit, word)
        if groups["peak"]:
            said.set_once("peak_mph", float(groups["peak"]) * unit, word)
    elif kind == "clock":
        minute = 30 if groups.get("half") else int(groups.get("minute") or 0)
        if groups["hour"] not in HOURS or minute > 59:
            said.refuse(word, "is on no clock; allowed: 1 to 12 o'clock, 12 being dead against")
        said.direction.clock(30.0 * HOURS[groups["hour"]] + 0.5 * minute, word)
    elif kind == "degrees":
        said.direction.degrees(float(groups["n"]), word)
    elif kind == "from_number":
        if float(groups["n"]) <= 12:
            said.unclear = said.unclear or word
        else:
            said.direction.compass(float(groups["n"]), word)
    elif kind == "compass":
        bearing = point_deg(groups["point"])
        if bearing is None:
            said.refuse(word, "is no point of the compass; allowed: N, NNE, NE ... or north-west, southerly")
        said.direction.compass(bearing, word)
    else:
        sense = SENSE_OF[groups["word"]]
        if sense in ("forecast", "felt"):
            said.set_once("height", sense, word)
        else:
            said.direction.plain(sense, word)


def _scan(said: _Said, phrase: str) -> None:
    at = 0
    while at < len(phrase):
        if skip := re.match(r"[\s,;()&.]+|-(?= )", phrase[at:]):
            at += skip.end()
            continue
        for kind, pattern in PATTERNS:
            if found := pattern.match(phrase, at):
                _token(said, kind, found)
                at = found.end()
                break
        else:
            word = re.match(r"[^\s,;()&]+", phrase[at:])
            assert word is not None  # the separators were skipped
            plain = word.group().strip(".")
            if plain in INSTEAD:
                said.refuse(plain, f"is not understood; {INSTEAD[plain]}")
            if plain not in FILLERS:
                close = difflib.get_close_matches(word.group(), vocabulary(), n=1, cutoff=0.75)
                close = [one for one in close if one != plain]
                hint = f" (did you mean {close[0]!r}?)" if close else ""
                said.refuse(word.group(), f"is not understood{hint}; allowed: {ALLOWED}")
            at += word.end()


def read_wind(
    text: str,
    *,
    along_deg: float,
    y_bearing_deg: float | None,
    height: Height | None = None,
    gusts: str | None = None,
    swing: str | None = None,
    mph_of_clubs: ClubsToMph | None = None,
) -> Wind | None:
    """Wind a person means.

    ``"12 mph from 2 o'clock"``, ``"8 m/s NW"``, ``"from 240 degrees, 10 knots gusting 18"``, ``"into, 15"``,
    ``"helping, off the right"``, ``"one-club wind against"``, ``"10-15 from the left, swinging 20"``,
    ``"calm"``.

    Parameters
    ----------
    text : str
        The phrase. A bare number is mph. Without a strength it is a one-club wind, and says so in `assumed`.
    along_deg : float
        Bearing in the hole frame [deg] of the shot that clock and plain words are about: 12 o'clock is
        dead against it.
    y_bearing_deg : float or None
        Compass bearing of the hole frame's +y [deg]; without it a compass wind cannot be used.
    height : "forecast" or "felt", optional
        Height it was given for, unless the phrase says so; forecast when nobody does.
    gusts, swing : str, optional
        ``"4"``, ``"+-4 mph"`` or ``"to 18"``, and ``"20"`` degrees, unless the phrase says so.
    mph_of_clubs : callable, optional
        (clubs, degrees off dead against) -> mph for an "n-club wind"; common practice when not given.

    Returns
    -------
    Wind or None
        None for calm.

    Raises
    ------
    UsageError
        A word that is not understood, said twice or contradicted, a wind without a direction, a compass
        wind on a hole whose bearing is unknown, a number out of its range.
    """
    shown = repr(short_line(text))
    if len(text) > LONGEST_PHRASE:
        raise UsageError(f"wind {shown}: {len(text)} letters; at most {LONGEST_PHRASE} are allowed")
    phrase = clean(text)
    said = _Said(shown, Direction(shown, along_deg, y_bearing_deg))
    if not phrase:
        raise UsageError(f"wind {shown}: nothing is said; allowed: {ALLOWED}, or calm")
    if _CALM.fullmatch(phrase.strip(" ,.")):
        for what, option in (("gusts", gusts), ("swing", swing)):
            if option is not None:
                raise UsageError(f"wind {shown}: calm, yet {what} {short_line(option)!r}; say one of the two")
        return None
    _scan(said, phrase)
    if said.unclear is not None:
        said.refuse(said.unclear, "may be a clock or a compass; say o'clock or degrees")
    if height is not None and said.height not in (None, height):
        raise UsageError(
            f"wind {shown}: {said.height}, yet asked to be taken as {height}; say one of the two"
        )
    if gusts is not None:
        name, value = read_gusts(gusts)
        if said.gust_mph is not None or said.peak_mph is not None:
            raise UsageError(f"wind {shown}: the gusts are said twice, in it and as {short_line(gusts)!r}")
        setattr(said, name, value)
    if swing is not None:
        said.set_once("swing_deg", read_swing(swing), swing)
    from_deg = said.direction.from_deg()
    return _wind(said, from_deg, height, mph_of_clubs)


def _wind(said: _Said, from_deg: float, height: Height | None, mph_of_clubs: ClubsToMph | None) -> Wind:
    assumed = said.assumed + said.direction.assumed
    speed = said.speed_mph
    if speed is None:
        clubs = 1.0 if said.clubs is None else said.clubs
        off = abs((from_deg - said.direction.along_deg + 180.0) % 360.0 - 180.0)
        speed = clubs_to_mph(clubs) if mph_of_clubs is None else mph_of_clubs(clubs, off)
        what = (
            "no strength said: a one-club wind"
            if said.clubs is None
            else f"a {'one' if clubs == 1 else f'{clubs:g}'}-club wind"
        )
        why = "common practice, 10 to 12 mph a club" if mph_of_clubs is None else "by this player's clubs"
        assumed.append(f"{what} taken as {speed:.3g} mph ({why})")
    if said.height is None and height is None:
        assumed.append("wind taken as forecast, at 10 m")
    gust = said.gust_mph or 0.0
    if said.peak_mph is not None:
        if said.gust_mph is not None:
            raise UsageError(f"wind {said.shown}: the gusts are said twice")
        if said.peak_mph < speed:
            raise UsageError(f"wind {said.shown}: gusts to {said.peak_mph:.3g} mph are below the wind itself")
        gust = min(said.peak_mph - speed, speed)
        assumed.append(f"gusts to {said.peak_mph:.3g} mph taken as {speed:.3g} +- {gust:.3g} mph")
    return Wind(
        speed, from_deg, said.height or height or "forecast", gust, said.swing_deg or 0.0, tuple(assumed)
    )
