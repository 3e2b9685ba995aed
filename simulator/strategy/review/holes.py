"""A hole, or a round of them, as it was played, judged stroke by stroke."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from typing import Any

from ...conditions import Conditions
from ...errors import UsageError
from ...hole.model import Hole
from ...hole.surfaces import Lie
from ...player.model import Player
from ..aimwords import in_degrees
from ..clubwords import shot_meant
from ..errorbars import Estimate, total
from ..question import Clock, Progress, question, silent, solve
from .judging import EXACT, ClubAndLine, Judge, Judged, short_of_full
from .notes import Notes
from .rests import Rest
from .strokes import PlayedHole, strokes_of

SHORT_GAME_YD = 50.0
"""Nearer to the pin than this a stroke off the green is short game [yd] (assumed; bounds vary)."""

BEYOND, BEYOND_YD = 1.4, 40.0
"""A ball that ends farther off than this times the club's carry, and so many yards more than it, is doubted:
run, wind and slope rarely add half as much (assumed)."""

PARTS = ("tee shots", "approaches", "short game", "putting")
"""Parts of the game, as the trade has them; tee shots are those of par 4s and 5s (common practice)."""


@dataclass(frozen=True)
class HoleReview:
    """One hole as it was played.

    Attributes
    ----------
    hole : Hole
        With the tee and pin that were in use.
    player : Player
    conditions : Conditions
    strokes : tuple of Judged
    score : int
        Strokes and penalties.
    holed : bool
        False: picked up, or the notes stop before the hole.
    expected : Estimate
        What the player needs on average from where the first stroke was played, by the map's plan.
    left : Estimate
        The same from where the last ball lies, nothing where it is holed.
    seed : int
    """

    hole: Hole
    player: Player
    conditions: Conditions
    strokes: tuple[Judged, ...]
    score: int
    holed: bool
    expected: Estimate
    left: Estimate
    seed: int

    @property
    def choice(self) -> Estimate:
        """Strokes lost by choices."""
        return total(one.choice for one in self.strokes)

    @property
    def swing(self) -> Estimate:
        """Strokes lost by swings: with the choices exactly the score, less what the player needs on average.

        Values in between take each other away; what is left to be unsure of are the choices and the ends.
        """
        unsure = total([self.choice, self.expected, self.left])
        value = self.score + self.left.value - self.expected.value - self.choice.value
        return Estimate(value, unsure.standard_error, unsure.freedom)

    @property
    def penalties(self) -> int:
        """Penalty strokes, which are no part of the game: they are lost where the ball was hit."""
        return sum(one.stroke.penalty for one in self.strokes)

    @property
    def doubtful(self) -> tuple[tuple[int, str, float, float], ...]:
        """Strokes whose ball ends far beyond the club: number, club, how far it went and its carry [yd]."""
        found = []
        for one in self.strokes:
            end, chosen = one.stroke.end, one.chosen
            if chosen is None or end is None or one.stroke.penalty:
                continue
            went = math.hypot(end.x_yd - one.stroke.start.x_yd, end.y_yd - one.stroke.start.y_yd)
            if went > max(BEYOND * chosen.carry_yd, chosen.carry_yd + BEYOND_YD):
                found.append((one.stroke.number, chosen.club, went, chosen.carry_yd))
        return tuple(found)

    def part_of(self, one: Judged) -> str:
        """Which part of the game a stroke belongs to."""
        if one.stroke.kind == "putt":
            return "putting"
        if one.stroke.start.lie is Lie.TEE and self.hole.par > 3:
            return "tee shots"
        away = self.hole.out_yd(one.stroke.start.x_yd, one.stroke.start.y_yd)
        return "short game" if away <= SHORT_GAME_YD else "approaches"

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        return {
            "hole": self.hole.name, "par": self.hole.par,
            "tee": self.hole.tee.name, "pin": self.hole.pin.name,
            "score": self.score, "penalties": self.penalties, "holed": self.holed,
            "doubtful": [
                {"number": number, "club": club, "went_yd": went, "carry_yd": carry}
                for number, club, went, carry in self.doubtful
            ],
            **_figure("expected", self.expected), **_figure("left", self.left),
            **_figure("choice", self.choice), **_figure("swing", self.swing),
            "strokes": [self._stroke(one) for one in self.strokes],
        }  # fmt: skip

    def _stroke(self, one: Judged) -> dict[str, Any]:
        stroke = one.stroke
        return {
            "number": stroke.number, "kind": stroke.kind, "part": self.part_of(one), "club": stroke.club,
            "strokes": stroke.strokes, "penalty": stroke.penalty,
            "from": _spot(stroke.start), "to": _spot(stroke.end), "went": stroke.went,
            **_figure("before", one.before), **_figure("choice", one.choice), **_figure("swing", one.swing),
            "better_than": one.better_than, "aim_given": one.aim_given,
            "chosen": _shot(one.chosen), "best": _shot(one.best),
        }  # fmt: skip


@dataclass(frozen=True)
class RoundReview:
    """Some holes of a course as they were played, by number, in the order of the notes.

    Attributes
    ----------
    course : str
    holes : mapping of int to HoleReview
    left_out : tuple of int
        Holes there are notes of that were not worked: somebody interrupted.
    """

    course: str
    holes: Mapping[int, HoleReview]
    left_out: tuple[int, ...] = ()

    @property
    def score(self) -> int:
        """Strokes and penalties of all holes."""
        return sum(one.score for one in self.holes.values())

    @property
    def penalties(self) -> int:
        """Penalty strokes of all holes."""
        return sum(one.penalties for one in self.holes.values())

    @property
    def expected(self) -> Estimate:
        """What the player needs on average for them."""
        return total(one.expected for one in self.holes.values())

    @property
    def holed(self) -> bool:
        """Whether every one of them was played to the end."""
        return all(one.holed for one in self.holes.values())

    @property
    def left(self) -> Estimate:
        """What was still to play on average where they were not: with the score it is what they came to."""
        return total(one.left for one in self.holes.values())

    @property
    def choice(self) -> Estimate:
        """Strokes lost by choices."""
        return total(one.choice for one in self.holes.values())

    @property
    def swing(self) -> Estimate:
        """Strokes lost by swings."""
        return total(one.swing for one in self.holes.values())

    def part(self, name: str) -> tuple[int, Estimate, Estimate]:
        """Strokes of a part of the game, and what was lost there by choices and by swings."""
        mine = [one for hole in self.holes.values() for one in hole.strokes if hole.part_of(one) == name]
        count = sum(one.stroke.strokes for one in mine)
        return count, total(one.choice for one in mine), total(one.swing for one in mine)

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        parts = []
        for name in PARTS:
            count, choice, swing = self.part(name)
            parts.append(
                {"part": name, "strokes": count, **_figure("choice", choice), **_figure("swing", swing)}
            )
        return {
            "course": self.course, "left_out": list(self.left_out), "score": self.score,
            "penalties": self.penalties,
            **_figure("expected", self.expected), **_figure("left", self.left),
            **_figure("choice", self.choice), **_figure("swing", self.swing),
            "parts": parts,
            "holes": [{"number": number, **hole.to_dict()} for number, hole in self.holes.items()],
        }  # fmt: skip


def review(
    hole: Hole,
    player: Player,
    notes: Notes,
    *,
    conditions: Conditions | None = None,
    seed: int = 1,
    progress: Progress | None = None,
    threads: int | None = None,
) -> HoleReview:
    """One hole as it was played, stroke by stroke.

    Parameters
    ----------
    hole : Hole
        The tee and pin that the notes name are put in use.
    player : Player
    notes : Notes
        Of `read_notes`.
    conditions : Conditions, optional
        The day as it was; still air on medium ground when left out.
    seed : int
        Same seed, same figures, whatever the thread count.

    Raises
    ------
    UsageError
        Notes that tell of no golf on this hole, a club that is not in the bag.
    """
    hole = in_play(hole, notes)
    played = strokes_of(notes, hole)
    clubs = check_clubs(played, hole, player)
    ask = question(
        "review", hole, player, clubs, conditions=conditions, start=None, sequences=1_000, seed=seed,
        threads=threads,
    )  # fmt: skip
    spots = dict.fromkeys(spot for stroke in played.strokes for spot in (stroke.start, stroke.end) if spot)
    others = [(spot.x_yd, spot.y_yd, int(spot.lie)) for spot in spots if spot.lie not in (Lie.GREEN, Lie.TEE)]
    place = solve(ask, progress or silent, Clock(), others)
    judge = Judge(place, hole, player, seed, first=played.strokes[0].start)
    strokes = tuple(judge.judged(stroke) for stroke in played.strokes)
    last = played.strokes[-1].end
    return HoleReview(
        hole=hole, player=player, conditions=ask.conditions, strokes=strokes,
        score=played.score, holed=played.holed, expected=judge.value(played.strokes[0].start),
        left=EXACT if last is None else judge.value(last), seed=seed,
    )  # fmt: skip


def review_round(
    course: str,
    holes: Sequence[tuple[int, Hole]],
    player: Player,
    notes: Mapping[int, Notes],
    *,
    day: Callable[[Hole], Conditions] | None = None,
    seed: int = 1,
    progress: Progress | None = None,
    threads: int | None = None,
) -> RoundReview:
    """The holes of a course that there are notes of.

    Parameters
    ----------
    course : str
        Its name.
    holes : sequence of (number, Hole)
    notes : mapping of int to Notes
    day : callable, optional
        The day in a hole's frame; still air on medium ground when left out.

    Raises
    ------
    UsageError
        Notes of a hole that is not there, or what `review` refuses; the hole is named. All notes are read
        before anything is worked.
    KeyboardInterrupt
        Before the first hole is finished; later the finished ones are returned.
    """
    by_number = dict(holes)
    for number in notes:
        if number not in by_number:
            allowed = ", ".join(map(str, by_number))
            raise UsageError(f"notes: hole {number} is not on {course}; allowed: {allowed}")
    for number, told in notes.items():
        with _named(number):
            hole = in_play(by_number[number], told)
            check_clubs(strokes_of(told, hole), hole, player)
    say, done = progress or silent, dict[int, HoleReview]()
    for number, told in notes.items():
        hole = by_number[number]
        say(f"hole {number}, {hole.name}: {len(done) + 1} of {len(notes)}")
        with _named(number), _kept(done):
            done[number] = review(
                hole, player, told, conditions=None if day is None else day(hole),
                seed=(seed + 101 * number) % 2**32, threads=threads, progress=progress,
            )  # fmt: skip
        if number not in done:
            break
    return RoundReview(course, done, tuple(number for number in notes if number not in done))


def in_play(hole: Hole, notes: Notes) -> Hole:
    """The hole with the tee and pin that notes name in use."""
    from ...hole import pin_from_words

    hole = hole.with_tee(notes.tee) if notes.tee is not None else hole
    return pin_from_words(hole, notes.pin) if notes.pin is not None else hole


def check_clubs(played: PlayedHole, hole: Hole, player: Player) -> tuple[str, ...]:
    """The clubs that were swung, as noted, but lines in words as degrees.

    Raises
    ------
    UsageError
        One that is not in the bag, or a line down no fairway.
    """
    swings = [one for one in played.strokes if one.kind == "swing" and not short_of_full(one.club)]
    clubs = [in_degrees(one.club, hole, player, (one.start.x_yd, one.start.y_yd)) for one in swings]
    for text in clubs:
        shot_meant(player, text)
    return tuple(dict.fromkeys(clubs))


@contextmanager
def _named(number: int) -> Iterator[None]:
    """Errors inside it name the hole they are about."""
    try:
        yield
    except UsageError as error:
        raise UsageError(f"hole {number}: {error}") from None


@contextmanager
def _kept(done: Mapping[int, HoleReview]) -> Iterator[None]:
    """An interruption ends what is worked, but for the first hole: what is finished is worth seeing."""
    try:
        yield
    except KeyboardInterrupt:
        if not done:
            raise


def _figure(name: str, one: Estimate) -> dict[str, float]:
    return {name: one.value, f"{name}_standard_error": one.standard_error}


def _spot(rest: Rest | None) -> dict[str, Any] | None:
    if rest is None:
        return None
    lie = rest.lie.name.lower().replace("_", " ")
    return {"words": rest.words, "lie": lie, "x_yd": rest.x_yd, "y_yd": rest.y_yd, "putt_ft": rest.putt_ft}


def _shot(shot: ClubAndLine | None) -> dict[str, Any] | None:
    return None if shot is None else shot.to_dict()
