"""Wind in the ways people say it."""

from __future__ import annotations

import difflib
import re

from ..errors import UsageError
from ..toml_text import short_line
from .direction import Direction
from .extras import read_gusts, read_swing
from .model import Height, Wind
from .phrases import ALLOWED, FILLERS, INSTEAD, patterns, vocabulary
from .said import TAKE, Said
from .text import clean

MPH_PER_CLUB = 11.0
"""Head or side wind that golfers call a one-club wind [mph]: common practice says 10 to 12."""

LONGEST_PHRASE = 200
"""Letters of a phrase; more is not a wind."""

_CALM = re.compile(
    r"(?:none|no wind|no breeze|nothing|(?:flat )?calm|"
    r"(?:dead )?still(?: air)?|dead calm|windless|nil|zero|0(?: ?mph)?)"
)


def _scan(said: Said, phrase: str) -> None:
    at = 0
    while at < len(phrase):
        if skip := re.match(r"[\s,;()&.]+|-(?= )", phrase[at:]):
            at += skip.end()
            continue
        for kind, pattern in patterns():
            if found := pattern.match(phrase, at):
                TAKE[kind](said, found)
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
    said = Said(shown, Direction(shown, along_deg, y_bearing_deg))
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
    return _wind(said, from_deg, height)


def _wind(said: Said, from_deg: float, height: Height | None) -> Wind:
    """The wind that was said, and what is taken of it where nobody said."""
    assumed = said.assumed + said.direction.assumed
    speed = said.speed_mph
    if speed is None:
        clubs = 1.0 if said.clubs is None else said.clubs
        speed = clubs * MPH_PER_CLUB
        what = (
            "no strength said: a one-club wind"
            if said.clubs is None
            else f"a {'one' if clubs == 1 else f'{clubs:g}'}-club wind"
        )
        assumed.append(f"{what} taken as {speed:.3g} mph (common practice, 10 to 12 mph a club)")
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
