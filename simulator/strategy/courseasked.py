"""What is asked of a course, and what came of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from ..conditions import Scenario
from ..hole.course import Course
from ..hole.model import Hole
from ..hole.pins import PinPlace, pin_at, pin_from_words
from ..player.model import Player


@dataclass(frozen=True)
class Pins:
    """Where the pins are, hole by hole.

    Attributes
    ----------
    name : str
    words : str or None
        For every hole, as `pin_from_words` takes them; None: each file's first pin.
    sheet : mapping of int to PinPlace or str
        By hole number, before the words; in words as `words`.
    """

    name: str
    words: str | None = None
    sheet: Mapping[int, PinPlace | str] | None = None

    def on(self, number: int, hole: Hole) -> Hole:
        """The hole with this pin.

        Raises
        ------
        UsageError
            Words not understood, or a place off the green.
        """
        place = (self.sheet or {}).get(number, self.words)
        if isinstance(place, PinPlace):
            return pin_at(hole, place)
        return hole if place is None else pin_from_words(hole, place)


FIRST_PINS = Pins("first")


@dataclass(frozen=True)
class Failure:
    """A hole that has no answer, or a part of it.

    Attributes
    ----------
    number : int or None
    hole : str
        Its name, or its file's.
    player, scenario, pins : str
        Empty where it failed for all.
    message : str
        One line.
    """

    number: int | None
    hole: str
    message: str
    player: str = ""
    scenario: str = ""
    pins: str = ""


@dataclass(frozen=True)
class CourseAsked:
    """What is asked of a course.

    Attributes
    ----------
    course : Course
    tee : str or None
        As asked; None: each player's own, or each file's first.
    players : tuple of Player
    scenarios : tuple of Scenario
    pins : tuple of Pins
    sequences, seed : int
        Of every plan.
    quick : bool
        Players are taken as exact.
    """

    course: Course
    tee: str | None
    players: tuple[Player, ...]
    scenarios: tuple[Scenario, ...]
    pins: tuple[Pins, ...]
    sequences: int
    seed: int
    quick: bool


@dataclass(frozen=True)
class CourseAnswer(CourseAsked):
    """Everything that came of a course: beside what was asked, the results.

    Attributes
    ----------
    results : tuple of dict
        Of `jobs.work`, in the order of holes, then pins, days and players.
    failures : tuple of Failure
    reused : int
        Results that were there from an earlier run.
    mistakes : tuple of BaseException
        What went wrong by a mistake of ours; each is among the failures too.
    """

    results: tuple[dict[str, Any], ...]
    failures: tuple[Failure, ...]
    reused: int = 0
    mistakes: tuple[BaseException, ...] = ()

    def __repr__(self) -> str:
        """What is there, on one line: the results would fill pages."""
        players = ", ".join(one.name for one in self.players)
        made = f"{len(self.results)} results, {len(self.failures)} failures"
        return f"<CourseAnswer: {self.course.name}, {len(self.course.holes)} holes, {players}: {made}>"

    def of(self, player: str, scenario: str | None = None, pins: str | None = None) -> list[dict[str, Any]]:
        """Results of one player, on the first day and with the first pins unless others are named."""
        wanted = player, *self._asked(scenario, pins)
        return [
            one for one in self.results if (one["answer"]["player"], one["scenario"], one["pins"]) == wanted
        ]

    def missing(self, player: str, scenario: str | None = None, pins: str | None = None) -> int:
        """Holes without an answer for one player; day and pins as for `of`."""
        day, where = self._asked(scenario, pins)
        return len({
            (one.number, one.hole)
            for one in self.failures
            if one.player in ("", player) and one.scenario in ("", day) and one.pins in ("", where)
        })  # fmt: skip

    def _asked(self, scenario: str | None, pins: str | None) -> tuple[str, str]:
        """Names of a day and of a set of pins, the first of each where none is named."""
        day = self.scenarios[0].name if scenario is None else scenario
        return day, self.pins[0].name if pins is None else pins
