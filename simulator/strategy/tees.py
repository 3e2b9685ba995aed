"""The tee a player plays from: the one that was asked for, his own, or the hole's first."""

from __future__ import annotations

from dataclasses import replace

from ..hole.course import Course
from ..hole.model import Hole, tee_name
from ..player.model import Player


def on_tee(hole: Hole, player: Player, asked: str | None) -> Hole:
    """The hole from the tee that is asked for; without one from the player's own, where the hole has it.

    Where it has not, the first tee is used, and that is among what the hole assumes.

    Raises
    ------
    UsageError
        The hole has no tee of the name that was asked for.
    """
    if asked is not None:
        return hole.with_tee(asked)
    if player.tee is None:
        return hole
    if has_tee(hole, player.tee):
        return hole.with_tee(player.tee)
    return replace(hole, assumed=(*hole.assumed, no_tee_words(hole, player)))


def has_tee(hole: Hole, name: str) -> bool:
    """Whether a hole has a tee of a name."""
    return tee_name(name).strip().casefold() in (tee.name.casefold() for tee in hole.tees)


def holes_without(course: Course, name: str) -> list[str]:
    """Numbers of the holes of a course that have no tee of a name, as they are said."""
    return [str(number) for number, hole in course.numbered() if not has_tee(hole, name)]


def no_tee_words(hole: Hole, player: Player) -> str:
    """What is said of a hole without the player's tee."""
    return f"{player.name} plays from the {hole.tee.name} tee: no {tee_name(player.tee or '')} tee there."
