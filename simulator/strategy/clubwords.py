"""A club as golfers say it: "3w", "low 7-iron", "152 shot", "driver 8 left" -> which swing, and where at."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from ..engine import PART_SWING, PUNCH_SWING, PUTT_SWING
from ..errors import UsageError
from ..physics.heights import SHAPES
from ..player.model import Club, Player
from ..player.names import club_name
from ..spelt import in_figures
from ..tables.shots import PUTTER, full_carry_yd, list_shots, part_club
from .distancewords import NUMBER, UNIT, UNITS, yards
from .placewords import SIDES

MOST_AIM_YD = 300.0
"""Widest aim that is understood [yd beside the straight line to the pin]."""

MOST_AIM_DEG = 75.0
"""Widest aim that is understood [deg beside the straight line to the pin]."""

LEAST_SHOT_YD = 3.0
"""Shortest distance a shot is asked by [yd]."""

REACHED = 1.06
"""A distance farther than this times the longest carry is no shot of the player's: about half a club."""

NEARER_YD = 3.0
"""A full swing that misses a distance by more than this gives way to a swing of the player's that fits it
better by more than this: gripped down, a part swing, or held down at a carry of his own (assumed) [yd]."""

HIGHEST_LOFT_DEG = 64.0
"""A bare number up to this is a wedge's loft, above it a distance."""

ALLOWED = (
    'a club ("3w", "five wood", "52", "gap"), a flight ("7-iron low", "knock-down 7"), a distance '
    '("152 shot"), each with an aim if wanted: "driver 8 left" (yards), "driver 3 degrees left", '
    '"driver@-8", "driver@-3deg"'
)

_AIM_UNIT = "yd|yds|yards?|y|metres?|meters?|m|degrees?|deg|°"
_AIM = re.compile(rf"(?P<size>{NUMBER})\s*(?P<unit>{_AIM_UNIT})?\s*(?P<side>left|right|l|r)?")
_CLUB_THEN = r"(?P<club>.*?\S)(?:\s*,\s*|\s+)"
_TO_THE_SIDE = rf"(?P<size>{NUMBER})\s*(?P<unit>{_AIM_UNIT})?\s*(?P<side>left|right|l|r)\b"
_STRAIGHT = r"(?P<straight>straight(?:\s+at\s+(?:the\s+)?(?:pin|flag))?|(?<=at\s)(?:the\s+)?(?:pin|flag))"
_OF_THE_PIN = r"(?:\s+of\s+(?:the\s+)?(?:pin|flag|line|target|straight\s+line(?:\s+to\s+the\s+pin)?))?"
_SAID_AIM = re.compile(
    rf"{_CLUB_THEN}(?:(?:at|aimed(?:\s+at)?|aim|on|going)\s+)?(?:{_TO_THE_SIDE}|{_STRAIGHT}){_OF_THE_PIN}"
)
_SIDE_FIRST = re.compile(rf"{_CLUB_THEN}(?P<side>left|right)\s+(?P<aim>(?:{NUMBER})\s*(?:{_AIM_UNIT})?)")
_SIDE_ONLY = re.compile(rf"(?P<club>.*?)(?:\s*(?P<size>{NUMBER})\s*(?P<unit>\S+)?)?\s(?P<side>left|right)")

_FLIGHTS = {
    "low": r"low(?:\s+one)?|held[\s-]+down|hold[\s-]+down|knock(?:ed)?[\s-]*down|stinger",
    "high": r"high(?:\s+one)?",
    "stock": r"stock|full|normal",
}
"""Words for the flights of ``physics.heights.SHAPES`` (common practice)."""

_PART_WORDS = re.compile(
    r"(?:(?:3/4|1/2|three[\s-]+quarters?|half|part|grip(?:ped)?(?:[\s-]+down)?|chok(?:e|ed)(?:[\s-]+(?:down|up))?"
    r"|pitch|chip|punch(?:ed)?|smooth|easy|soft|little|bump[\s-]+and[\s-]+run)\b|[¾½])(?:[\s-]*(?:swing|shot))?",
    re.IGNORECASE,
)
"""Words of swings shorter than full: how far such a swing goes is each player's own."""

_SHORT_SWINGS = {
    PUTT_SWING: r"putt(?:er)?(?:\s+it)?|texas\s+wedge",
    PUNCH_SWING: r"chip(?:[\s-]+and[\s-]+run|\s+shot)?|bump[\s-]+and[\s-]+run|punch(?:\s+shot)?",
    PART_SWING: r"pitch(?:\s+shot)?",
}
"""Swings short of full asked for by what they are, the carry being whichever is best: "putt or chip?"."""

_SHOT = re.compile(
    rf"(?:an?\s+|the\s+)?(?P<size>\d{{1,4}}(?:\.\d{{1,3}})?)[\s-]*(?P<unit>{UNIT})?[\s-]*"
    r"(?P<word>shot|carry|swing|club)?"
)

_AS_ANSWERED = re.compile(
    r"(?P<club>.+?)[\s,]*\(?\s*(?P<swing>part|gripped(?:\s+down)?|chip|punch)(?:\s+to)?\s+"
    rf"(?P<size>{NUMBER})\s*(?P<unit>{UNIT})?\s*\)?",
    re.IGNORECASE,
)
"""A swing short of full as answers name it: "sand wedge (part 26 yd)", "6-iron (chip 6 yd)"."""

_LINE_ONLY = re.compile(
    r"(?P<club>.+?)\s*\((?:(?:left|middle|right)\s+line|line\s+\d+\s+of\s+\d+)\)", re.IGNORECASE
)
"""One of several lines of a club as answers name it; its yards the name has no room for."""


@dataclass(frozen=True)
class Aim:
    """An aim as it was said, from the straight line to the pin.

    Attributes
    ----------
    right : float
        Yards at the club's stock carry, or degrees; left is negative.
    in_degrees : bool
    """

    right: float
    in_degrees: bool = False

    def turn_rad(self, carry_yd: float) -> float:
        """The angle off that line of a club with so much carry [rad]."""
        if self.in_degrees:
            return math.radians(self.right)
        return math.asin(min(max(self.right / carry_yd, -1.0), 1.0))

    def __str__(self) -> str:
        return f"{self.right:g}{'deg' if self.in_degrees else ''}"


@dataclass(frozen=True)
class Meant:
    """A swing somebody asked for.

    Attributes
    ----------
    club : Club
        Of a chip or a pitch the one it is tabled with, of a putt one that stands for the putter.
    flight : str or None
        None: every way the player hits the club.
    part_yd : float or None
        Carry of a swing short of full [yd], where it was said.
    by_distance : bool
        Named by its distance rather than by its club.
    aim : Aim or None
        None: none was said.
    short : float or None
        Code of a swing short of full: PART_SWING, PUNCH_SWING (a chip too) or PUTT_SWING; None: a full one.
    """

    club: Club
    flight: str | None
    part_yd: float | None
    by_distance: bool
    aim: Aim | None
    short: float | None = None

    @property
    def carry_yd(self) -> float:
        """Its carry in still air [yd]: what was said, or of the stock swing where no flight is."""
        return self.part_yd or full_carry_yd(self.club, self.flight or "stock")


def shot_meant(player: Player, text: str) -> Meant:
    """The swing and aim that some words mean in a player's bag.

    Raises
    ------
    UsageError
        No such club, no such flight with it, a distance nobody's club carries, an aim that is none.
    """
    said, aim = club_and_aim(text)
    if answered := _AS_ANSWERED.fullmatch(said):
        return _as_answered(player, text, answered, aim)
    name, flight = club_and_flight(said)
    asked_yd = shot_distance(name)
    if asked_yd is not None:
        club, flight, part_yd = _by_distance(player, text, asked_yd, flight)
        return Meant(club, flight, part_yd, True, aim, PART_SWING if part_yd is not None else None)
    if (short := short_swing(name)) is not None:
        return _at_its_best(player, text, short, aim)
    _refuse_part_words(player, text, name)
    try:
        club = player.club(name)
    except UsageError:
        _refuse_what_is_no_club(player, text, name)
        raise
    if flight is not None and flight not in club.flights:
        raise UsageError(
            f"{club.name} {flight}: not in this player's bag; allowed: {', '.join(club.flights)}"
        )
    return Meant(club, flight, None, False, aim)


def short_swing(name: str) -> float | None:
    """Code of the swing short of full that some words ask for by what it is; None: other words."""
    plain = re.sub(r"^(?:an?|the|my)\s+", "", " ".join(name.casefold().split()))
    return next((short for short, words in _SHORT_SWINGS.items() if re.fullmatch(words, plain)), None)


def _at_its_best(player: Player, text: str, short: float, aim: Aim | None) -> Meant:
    """A swing short of full of which nobody said how far it is to go."""
    if aim is not None:
        raise UsageError(
            f"club {text!r}: a putt, a chip and a pitch are looked for on their best line; on yours a swing "
            'goes by its carry, "26 shot 2 left"'
        )
    listed = list_shots(player)
    punched = listed.shots[listed.first_putt - 1].club
    clubs = {PART_SWING: player.clubs[-1], PUNCH_SWING: punched, PUTT_SWING: PUTTER}
    return Meant(clubs[short], None, None, False, None, short)


def _as_answered(player: Player, text: str, found: re.Match[str], aim: Aim | None) -> Meant:
    """A swing short of full by the name an answer has for it."""
    club = player.club(found["club"])
    carry_yd = yards(found["size"], found["unit"])
    listed = list_shots(player)
    longest = listed.shots[listed.first_putt - 1]
    punched = found["swing"].casefold() in ("chip", "punch")
    if punched and club is not longest.club:
        raise UsageError(f"club {text!r}: chips and punches are worked out with the {longest.club.name}")
    most_yd = longest.carry_yd if punched else club.carry_yd
    if not LEAST_SHOT_YD <= carry_yd <= most_yd + 0.5:
        allowed = f"{LEAST_SHOT_YD:g} to {most_yd:.0f}"
        raise UsageError(f"club {text!r}: found {carry_yd:.0f} yd of carry; allowed: {allowed}")
    made_with = club if punched else part_club(player, carry_yd) or club
    short = PUNCH_SWING if punched else PART_SWING
    return Meant(made_with, None, carry_yd, made_with is not club, aim, short)


def _refuse_part_words(player: Player, text: str, name: str) -> None:
    """Refuse "three-quarter pw" with how it is asked, where the rest of the words is a club."""
    rest = " ".join(_PART_WORDS.sub(" ", name).split()).strip(",").strip()
    if rest == " ".join(name.split()):
        return
    try:
        club = player.club(rest)
    except UsageError:
        return  # what is wrong is the club, or nothing of this
    low = f', or "{club.name} low"' if "punch" in name.casefold() and "low" in club.flights else ""
    raise UsageError(
        f"club {text!r}: a swing short of full is asked by the carry it has, the full {rest} having "
        f'{club.carry_yd:.0f} yd; for example "{0.8 * club.carry_yd:.0f} shot"{low}'
    )


_PLACES = re.compile(
    r"\b(?:middle|cent(?:re|er)|edge|side|half|fairway|bunkers?|trees?|pin|flag|line|left|right|down|over|at|between)\b"
)
_FROM_THERE = re.compile(
    r"(?:off|from)\s+(?:the\s+)?(?:deck|tee|ground|turf|floor|fairway|rough|peg)|on\s+(?:the|a)\s+peg"
)
_LAY_UP = re.compile(r"\blay(?:ing)?[\s-]*up\b")


def _refuse_what_is_no_club(player: Player, text: str, name: str) -> None:
    """Point at the words before or behind a club of the bag that say neither a flight nor an aim."""
    plain = name.casefold()
    if lines := _LINE_ONLY.fullmatch(name):
        say = lines["club"]
        raise UsageError(f'club {text!r}: which line that is, its name does not tell: say "{say} 8 left"')
    if _LAY_UP.search(plain):
        raise UsageError(
            f"club {text!r}: no club named; a lay-up is asked by what it leaves (--leave 90-110) or by the "
            'shot: "152 shot"'
        )
    if club_name(name) is not None:
        return  # a club, though none of this bag
    words = name.split()
    for size in range(len(words) - 1, 0, -1):
        for club, rest in ((words[:size], words[size:]), (words[-size:], words[:-size])):
            try:
                found = player.club(" ".join(club).strip(","))
            except UsageError:
                continue
            other = " ".join(rest).strip(",")
            if _PLACES.search(other.casefold()) and not _FROM_THERE.fullmatch(other.casefold()):
                why = (
                    'is no aim here: say "down the fairway", "left edge", "right half of the fairway", '
                    '"at the green", "at the flag", at a mark or an area by its name, yards beside the pin, '
                    '"8 left", or leave it out (the best is found)'
                )
            elif _FROM_THERE.fullmatch(other.casefold()):
                why = "says where it is hit from: leave it out, --from does that"
            elif re.search(r"\b(?:draw|fade|slice|hook)\b", other.casefold()):
                why = "is no flight: shapes belong to the player (--player, or the player's file)"
            else:
                why = f"is neither a flight nor an aim; allowed: {ALLOWED}"
            raise UsageError(f"club {text!r}: the {found.name}, but {other!r} {why}")
    kinds = [club.name for club in player.clubs if club.kind.endswith("wedge")]
    if plain == "wedge" and kinds:
        raise UsageError(f"club {text!r}: which one? allowed: {', '.join(kinds)}")


def club_and_flight(text: str) -> tuple[str, str | None]:
    """A club and the flight word before or behind it (None without): ``"7-iron low"``, ``"knock-down 7"``."""
    plain = " ".join(text.split())
    for flight, words in _FLIGHTS.items():
        before = re.fullmatch(rf"(?:an?\s+|the\s+)?(?:{words})[\s,-]+(?P<club>.+?)", plain, re.IGNORECASE)
        behind = re.fullmatch(rf"(?P<club>.+?)[\s,]+(?:{words})(?:\s+shot)?", plain, re.IGNORECASE)
        found = before or behind
        if found and flight in SHAPES:
            return found["club"], flight
    return text, None


def shot_distance(text: str) -> float | None:
    """Carry of a shot named by it [yd]: ``"152 shot"``, ``"140 m"``, ``"152"``; None: it is none."""
    found = _SHOT.fullmatch(text.strip().casefold())
    if not found or not (found["unit"] or found["word"] or float(found["size"]) > HIGHEST_LOFT_DEG):
        return None
    return yards(found["size"], found["unit"])


def _by_distance(
    player: Player, text: str, asked_yd: float, flight: str | None
) -> tuple[Club, str | None, float | None]:
    """The club and swing that go a distance: (club, flight of a full swing, carry of a part swing).

    The full swing that carries nearest, unless another swing the player has fits clearly better.
    """
    last, longest = player.clubs[-1], player.clubs[0]
    if not LEAST_SHOT_YD <= asked_yd <= REACHED * longest.carry_yd:
        raise UsageError(
            f"shot {text!r}: found {asked_yd:.0f} yd of carry; "
            f"allowed: {LEAST_SHOT_YD:g} to {longest.carry_yd:.0f}, "
            f"the {longest.name}"
        )
    able = [club for club in player.clubs if (flight or "stock") in club.flights]
    if not able:
        raise UsageError(f"shot {text!r}: no club of this bag is hit {flight}")
    nearest = min(able, key=lambda club: abs(full_carry_yd(club, flight or "stock") - asked_yd))
    if flight not in (None, "stock"):
        return nearest, flight, None
    if asked_yd < last.carry_yd - 0.5:
        return last, None, asked_yd
    off = abs(nearest.carry_yd - asked_yd)
    gripped = part_club(player, asked_yd)
    if gripped is not None and off > NEARER_YD:
        return gripped, None, asked_yd
    held = [club for club in player.clubs if club.low_carry_yd is not None and "low" in club.flights]
    low = min(held, key=lambda club: abs(full_carry_yd(club, "low") - asked_yd), default=None)
    if flight is None and low is not None and abs(full_carry_yd(low, "low") - asked_yd) < off - NEARER_YD:
        return low, "low", None
    return nearest, "stock", None


_COUNTED = r"(?:yards?|yds?|paces?|feet|met(?:re|er)s?|degrees?|degs?|left|right|shot)\b|$"
"""What stands behind a number of an aim, a distance or a loft; a club's own number is read as it is."""


def club_and_aim(text: str) -> tuple[str, Aim | None]:
    """A club and the aim it is to be hit on.

    Returns
    -------
    club : str
        As typed, without the aim.
    aim : Aim or None
        In yards: ``"driver 8 left"``, ``"driver@-8"``, ``"3w@5m right"``; ``"driver straight"`` is 0. In
        degrees: ``"driver 3 degrees left"``, ``"driver@-3deg"``.

    Raises
    ------
    UsageError
        No club, or an aim that is not understood.
    """
    club, at, aim = in_figures(text, before=_COUNTED).partition("@")
    club = club.strip()
    if not club:
        raise UsageError(f"club {text!r}: no club named; allowed: {ALLOWED}")
    if at:
        found = _AIM.fullmatch(aim.strip().casefold())
        if not found:
            raise UsageError(f"club {text!r}: {aim!r} is not an aim; allowed: {ALLOWED}")
        return club, _aim(text, found["size"], found["unit"], found["side"])
    if turned := _SIDE_FIRST.fullmatch(club.casefold()):  # "driver left 8"
        club = f"{club[: turned.end('club')]} {turned['aim']} {turned['side']}"
    said = _SAID_AIM.fullmatch(club.casefold())
    if said is None:
        if aimed := _SIDE_ONLY.fullmatch(club.casefold()):
            why = f"{aimed['side']!r} does not say how far"
            if aimed["size"] and club_name(f"{aimed['size']}{aimed['unit'] or ''}") is None:
                why = f"{aimed['unit']!r} is no unit of an aim" if aimed["club"].strip() else "no club named"
            raise UsageError(f"club {text!r}: {why}; allowed: {ALLOWED}")
        return club, None
    name = club[: said.end("club")].strip()
    if said["straight"]:
        return name, Aim(0.0)
    return name, _aim(text, said["size"], said["unit"], said["side"])


def _aim(text: str, digits: str, unit: str | None, side: str | None) -> Aim:
    size = float(digits)
    if side:
        if digits[0] in "+-":
            raise UsageError(f"club {text!r}: both a sign and {side!r}; allowed: {ALLOWED}")
        size *= SIDES[side]
    if unit is None or unit in UNITS:
        return Aim(_within(text, size * UNITS[unit or "yd"], MOST_AIM_YD, "yd"))
    return Aim(_within(text, size, MOST_AIM_DEG, "degrees"), in_degrees=True)


def _within(text: str, size: float, most: float, unit: str) -> float:
    if abs(size) > most:
        raise UsageError(f"club {text!r}: found an aim of {size:g} {unit}; allowed: {-most:g} to {most:g}")
    return size + 0.0  # no minus zero
