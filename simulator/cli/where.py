"""Which hole, who asks, and from where: what several commands read alike."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from ..errors import UsageError
from . import options as o
from .say import say

if TYPE_CHECKING:
    from ..hole import Hole
    from ..player import Player
    from ..strategy.result import Start


class Where(NamedTuple):
    """Who asks, and from where."""

    player: o.PlayerOption = None
    tee: o.TeeOption = None
    pin: o.PinOption = None
    from_: o.FromOption = None
    played: o.PlayedOption = None
    without: o.WithoutOption = None

    def check(self) -> None:
        """Refuse options that say nothing without another."""
        if self.played is not None and self.from_ is None:
            raise UsageError("--played goes with --from: on the tee nothing is played yet")

    def hole(self, name: str, player: Player) -> Hole:
        """The hole with the pin in use, from the tee that was asked for or the player's own."""
        from ..hole import load_hole
        from ..hole.collar import COLLAR_YD
        from ..strategy.by_fringe import fringed
        from ..strategy.places import counts_from_tee

        drawn = load_hole(name)
        hole = fringed(drawn, self.from_ or "")
        if hole is not drawn:
            say(f"{hole.name}: no fringe is drawn; {COLLAR_YD:g} paces of it all round the green are assumed")
        by_tee = self.from_ is None or counts_from_tee(self.from_, hole)
        return in_use(hole, self.tee, self.pin, player, by_tee=by_tee)

    def who(self) -> Player:
        """The player without the clubs left at home."""
        return o.player_of(self.player, self.without)

    def start(self, hole: Hole) -> Start | None:
        """The place asked from; None on the tee."""
        if self.from_ is None:
            return None
        from ..strategy.places import place, plainly

        found = place(self.from_, hole, self.played)
        told = plainly(self.from_, hole)
        if told is not None and told.taken:
            say(told.taken)
        return found


def hole_of(name: str, tee: str | None, pin: str | None) -> Hole:
    """A hole with the tee and pin in use, the pin by its name or in words."""
    from ..hole import load_hole

    return in_use(load_hole(name), tee, pin)


def in_use(
    hole: Hole, tee: str | None, pin: str | None, player: Player | None = None, *, by_tee: bool = True
) -> Hole:
    """The same of a hole that is read already; without a tee from that of the player, if one plays.

    A hole without the player's tee is not told of where the place asked from has nothing to do with tees.
    """
    from ..hole import pin_from_words

    if player is not None:
        from ..strategy.tees import has_tee, no_tee_words, on_tee

        missing = tee is None and player.tee is not None and not has_tee(hole, player.tee)
        if missing and by_tee:
            say(f"{hole.name}: {no_tee_words(hole, player)}")
        if by_tee or not missing:
            hole = on_tee(hole, player, tee)
    elif tee is not None:
        hole = hole.with_tee(tee)
    return pin_from_words(hole, pin) if pin is not None else hole


def holes_of(given: str) -> list[tuple[int | None, Hole]]:
    """A hole, or the numbered holes of a course; one that cannot be read is told and left out."""
    return list(course_or_hole(given)[1])


def course_or_hole(given: str) -> tuple[str | None, list[tuple[int | None, Hole]]]:
    """The same with the course's name; None: it is a single hole."""
    from ..hole import load_hole
    from ..hole.course import bundled_courses, hole_number, load_course
    from ..hole.files import bundled_name

    try:
        folder = Path(given).is_dir()
        file = Path(given).is_file()
    except (OSError, ValueError):  # a zero byte in it: the reader of holes says so
        folder = file = False
    if not folder and (file or bundled_name(given) not in bundled_courses()):
        return None, [(hole_number(given), load_hole(given))]
    course = load_course(given)
    for bad in course.bad:
        say(f"left out: {bad.error}")
    if not course.holes:
        raise UsageError(f"{given}: no hole of it can be read")
    return course.name, list(course.numbered())


def unnamed(named: str | None, player: Player) -> tuple[str, ...]:
    """What to say when nobody was named and the demo player plays."""
    return () if named is not None else (f"No --player given, so the demo player {player.name} plays.",)
