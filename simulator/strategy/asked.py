"""Clubs as somebody typed them, and the alternatives to work out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from ..engine import PART_BEYOND, PART_SWING, PUNCH_SWING, PUTT_SWING, PUTTED_YD, RUNNING_YD
from ..errors import NoAnswerError, UsageError
from ..hole.surfaces import LIE_WORDS, Lie
from ..player.model import Player
from ..player.names import with_flight
from ..tables.game import Board
from ..tables.luck import strike_sets
from ..tables.shots import ShotList
from . import streams
from .clubwords import Aim, shot_meant
from .errorbars import Estimate
from .plays import FIRST_SETS, FIRST_STRIKES
from .pointing import FINEST_YD
from .search import best_short, given_aim, given_part, search
from .tries import SAME_YD, Choice, Place, is_one

MOST_ALTERNATIVES = 6
"""Alternatives worked out in full when nobody named clubs."""

_KINDS = {PART_SWING: "part swing", PUNCH_SWING: "chip or punch", PUTT_SWING: "putt"}
_ELSE = {
    PART_SWING: "name a full swing",
    PUNCH_SWING: "name a full swing",
    PUTT_SWING: f"allowed: from fairway or fringe within {PUTTED_YD:.0f} yd of the pin",
}
"""What the swings short of full are called where they cannot be played, and what to ask for then."""

TOO_MUCH, TOO_MUCH_YD = 1.25, 8.0
"""A full swing that carries farther than this times the distance to the pin, and so many yards more, is not
what the club's name alone means where part swings are played (assumed): "9-iron" 20 yd out is a chip."""

FAR_BEHIND = 0.6
"""A club farther behind the best than this is not an alternative [strokes]."""


ONE_LINE_YD = 0.002
"""Lines of the same swing nearer than this at its carry are one line, said twice: a rounding apart [yd]."""


@dataclass(frozen=True)
class Asked:
    """A club as somebody typed it.

    Attributes
    ----------
    rows : tuple of int
        Full swings that are meant; none of a swing short of full.
    aim : Aim or None
    short : float or None
        Code of a swing short of full, of a full one None.
    part_yd : float or None
        Its carry [yd]; None: whichever is best.
    shorter : tuple of int
        Swings short of full with the club, meant too where nobody said how it is hit: by the green "the lob
        wedge" is no full one.
    plain : bool
        Nobody said how it is hit.
    """

    rows: tuple[int, ...]
    aim: Aim | None
    short: float | None = None
    part_yd: float | None = None
    shorter: tuple[int, ...] = ()
    plain: bool = False


def asked_club(player: Player, text: str, listed: ShotList) -> Asked:
    """Shot rows and aim of a club as typed; without a flight word every way the player hits it is meant."""
    meant = shot_meant(player, text)
    if meant.short is not None:
        return Asked((), meant.aim, meant.short, meant.part_yd)
    same = [k for k, shot in enumerate(listed.shots) if shot.club is meant.club]
    full = tuple(k for k in same if k < listed.first_part and meant.flight in (None, listed.shots[k].flight))
    shorter = [k for k in same if listed.first_part <= k < listed.first_punch and meant.flight is None]
    return Asked(full, meant.aim, shorter=tuple(shorter), plain=meant.flight is None)


def meant_here(board: Board, lie: int, out_yd: float, club: Asked) -> Asked:
    """The club as meant from here: of one whose full swing would fly far past the pin, a swing short of full.

    Raises
    ------
    UsageError
        A full swing would fly far past the pin, and swings short of full are made with other clubs.
    """
    listed = board.bag.shots
    carry_yd = min((listed.shots[k].carry_yd for k in club.rows), default=0.0)
    in_reach = out_yd < PART_BEYOND * board.longest_yd(PART_SWING, lie)
    if not (club.plain and in_reach and carry_yd > TOO_MUCH * out_yd + TOO_MUCH_YD):
        return club
    name, aim = listed.shots[club.rows[0]].club.name, club.aim
    made_with = {code: listed.shots[board.family(code)[0]].club.name for code in (PART_SWING, PUNCH_SWING)}
    code = next((code for code, other in made_with.items() if other == name), None)
    if code is not None and aim is None:
        return Asked((), None, code)
    pitched, chipped = made_with.values()
    if aim is not None:
        said = f'a carry and your line, "{0.8 * out_yd:.0f} yd shot 1 left"'
    else:
        said = f'"pitch" (worked out with the {pitched})'
        said += f' or "chip" ({chipped})' if out_yd < RUNNING_YD else ""
    raise UsageError(
        f"a full {name} flies {carry_yd:.0f} yd and the pin is {out_yd:.0f} yd away: say {said}, "
        f'or "full {name}" if that is meant'
    )


def against_choice(place: Place, player: Player, text: str, replay: float, seed: int) -> Choice:
    """The choice of a club at the aim typed behind it, or straight at the pin.

    Raises
    ------
    UsageError
        No such club, or none that may be played from this lie.
    """
    shots = place.board.bag.shots
    club = asked_club(player, text, shots)
    rows = [row for row in club.rows if row in place.board.allowed(place.lie)]
    if not rows:
        raise UsageError(f"{text}: not played from here today")
    return given_aim(place, rows[0], club.aim or Aim(0.0), replay, seed)


@dataclass(frozen=True)
class Found:
    """Alternatives to work out from one place.

    Attributes
    ----------
    choices : list of Choice
    asked, given : frozenset of int
        Indices of those somebody asked about, and of those whose aim was given.
    home : Choice
        The map's own choice, one of them.
    worth : Estimate
        Its expected strokes from here, by the map.
    averages : dict of int to Choice
        With a goal: the best line for the average of every choice that is on another line.
    chosen : int or None
        With a goal: index of the choice that reaches it most often, by luck of its own.
    """

    choices: list[Choice]
    asked: frozenset[int]
    given: frozenset[int]
    home: Choice
    worth: Estimate
    averages: Mapping[int, Choice] = field(default_factory=dict)
    chosen: int | None = None

    @property
    def value(self) -> float:
        """Expected strokes of the map's own choice from here: what a stroke replayed is worth."""
        return self.worth.value


def check_playable(board: Board, lie: int, out_yd: float, wanted: Sequence[Asked]) -> None:
    """Refuse clubs that this place does not allow: known before the map is, and not worth waiting for it.

    Parameters
    ----------
    out_yd : float
        Straight distance to the pin.

    Raises
    ------
    UsageError
        One of those asked for is not played from the lie, or its full swing would fly far past the pin.
    NoAnswerError
        No club of the bag is.
    """
    rows, shots = board.allowed(lie), board.bag.shots.shots
    for one in wanted:
        here = LIE_WORDS[Lie(lie)]
        if one.short is None and not set(one.rows) & set(rows):
            shot = shots[one.rows[0]]
            name = with_flight(shot.club.name, shot.flight)
            allowed = dict.fromkeys(shots[k].club.name for k in rows)
            raise UsageError(f"{name} is not played from {here}; allowed: {', '.join(allowed)}")
        club = meant_here(board, lie, out_yd, one)
        if club.short is not None:
            far = club.short == PUTT_SWING and out_yd >= PUTTED_YD
            if board.longest_yd(club.short, lie) == 0.0 or far:
                where = f"{out_yd:.0f} yd out" if far else here
                raise UsageError(f"no {_KINDS[club.short]} is played from {where}; {_ELSE[club.short]}")
    if not rows:
        raise NoAnswerError("no club of the bag may be played from this lie")


def find_choices(place: Place, seed: int, wanted: list[Asked]) -> Found:
    """What to work out: the clubs asked for, or the best of all; the map's own choice is always there."""
    check_playable(place.board, place.lie, place.distance_yd, wanted)
    wanted = [meant_here(place.board, place.lie, place.distance_yd, club) for club in wanted]
    rows = place.board.allowed(place.lie)
    must = frozenset(row for club in wanted for row in club.rows if row in rows)
    found = search(place, seed, rows, keep_within=FAR_BEHIND, keep_most=MOST_ALTERNATIVES, must=must)
    strikes = strike_sets(seed + streams.CHOOSING, FIRST_SETS, FIRST_STRIKES)
    worth = place.worth(found[0].action, found[0].score, strikes)
    if not wanted:
        return Found(found, frozenset(), frozenset(), found[0], worth)
    choices: list[Choice] = []
    given: set[int] = set()
    for club in wanted:
        choice, with_aim = _wanted_choice(place, club, found, rows, worth.value, seed)
        if all(not is_one(choice, other, ONE_LINE_YD) for other in choices):  # "driver@8", "driver 8 right"
            given |= {len(choices)} if with_aim else set()
            choices.append(choice)
    asked = frozenset(range(len(choices)))
    home = found[0]
    if all(choice is not home for choice in choices):
        same_line = [k for k in sorted(given) if is_one(choices[k], home)]
        near_line = [k for k in sorted(given) if is_one(choices[k], home, FINEST_YD)]
        if same_line:  # a line given as the map would choose it: not twice on one screen
            choices[same_line[0]] = home
        elif near_line:  # "the driver 27 left" beside the 26 left that was asked about tells nobody anything
            home = choices[near_line[0]]
        else:
            choices.append(home)
    return Found(choices, asked, frozenset(given), home, worth)


def _wanted_choice(
    place: Place, club: Asked, found: list[Choice], rows: Sequence[int], value: float, seed: int
) -> tuple[Choice, bool]:
    """The choice a club as asked for comes to, and whether its line was given."""
    aimed = club.aim is not None
    if club.short is not None:
        like = [one for one in found if one.action[0] == club.short]
        if club.part_yd is None:  # the search has it, unless a full swing with the club does better
            return (like[0] if like else best_short(place, club.short, value, seed)), False
        carry_yd = club.part_yd
        like = [one for one in like if abs(one.carry_yd - carry_yd) < SAME_YD]
        if like and not aimed:  # the search's own swing, whose carry a name rounds
            return min(like, key=lambda one: abs(one.carry_yd - carry_yd)), False
        return given_part(place, carry_yd, club.aim, value, seed, club.short), aimed
    if club.aim is None:
        return next(choice for choice in found if choice.row in club.rows + club.shorter), False
    row = next(row for row in club.rows if row in rows)
    return given_aim(place, row, club.aim, value, seed), True
