"""A hole, or a round of them, worked from the notes of it, stroke by stroke."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager

from ...conditions import Conditions
from ...errors import UsageError
from ...hole.model import Hole
from ...hole.surfaces import Lie
from ...player.model import Player
from .. import streams
from ..aimwords import in_degrees
from ..by_fringe import fringed
from ..clubwords import shot_meant
from ..handed import check_kind
from ..question import Clock, Progress, question, silent, solve
from .adding import RoundReview
from .holes import HoleReview
from .judging import EXACT, Judge
from .notes import Notes, read_notes
from .numbered import every_hole, of_hole
from .spoken import short_of_full
from .strokes import PlayedHole, strokes_of
from .unmeasured import usual_length


def review(
    hole: Hole,
    player: Player,
    notes: Notes | str,
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
    notes : Notes or str
        Of `read_notes`, or the words themselves.
    conditions : Conditions, optional
        The day as it was; still air on medium ground when left out.
    seed : int
        Same seed, same figures, whatever the thread count.

    Raises
    ------
    UsageError
        Notes that tell of no golf on this hole, a club that is not in the bag.
    """
    check_kind("hole", hole, Hole, "load_hole gives one")
    check_kind("player", player, Player, "load_player gives one")
    hole = in_play(hole, notes := read_notes(notes) if isinstance(notes, str) else notes)
    played = strokes_of(notes, hole, usual_length(player, hole, conditions))
    clubs = check_clubs(played, hole, player, conditions)
    ask = question(
        "review", hole, player, clubs, conditions=conditions, sequences=1_000, seed=seed, threads=threads
    )
    spots = dict.fromkeys(spot for stroke in played.strokes for spot in (stroke.start, stroke.end) if spot)
    others = [(*spot.xy_yd, int(spot.lie)) for spot in spots if spot.lie not in (Lie.GREEN, Lie.TEE)]
    place = solve(ask, Clock(progress), others)
    judge = Judge(place, hole, player, seed, first=played.strokes[0].start)
    strokes = judge.hole_played(played.strokes)
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

    def check(number: int) -> None:
        hole = in_play(by_number[number], notes[number])
        today = None if day is None else day(hole)
        usual = usual_length(player, hole, today)
        check_clubs(strokes_of(notes[number], hole, usual), hole, player, today)

    every_hole(notes, check)
    say, done = progress or silent, dict[int, HoleReview]()
    for number, told in notes.items():
        hole = by_number[number]
        say(f"hole {number}, {hole.name}: {len(done) + 1} of {len(notes)}")
        with of_hole(number), _kept(done):
            done[number] = review(
                hole, player, told, conditions=None if day is None else day(hole),
                seed=streams.of_hole(seed, number), threads=threads, progress=progress,
            )  # fmt: skip
        if number not in done:
            break
    return RoundReview(course, done, tuple(number for number in notes if number not in done))


def in_play(hole: Hole, notes: Notes) -> Hole:
    """The hole with the tee and pin that notes name in use, and with fringe where they name it."""
    from ...hole import pin_from_words

    hole = fringed(hole, "; ".join([notes.start or "", *(clause.said for clause in notes.clauses)]))
    hole = hole.with_tee(notes.tee) if notes.tee is not None else hole
    return pin_from_words(hole, notes.pin) if notes.pin is not None else hole


def check_clubs(
    played: PlayedHole, hole: Hole, player: Player, conditions: Conditions | None = None
) -> tuple[str, ...]:
    """The clubs that were swung, as noted, but lines in words as degrees.

    Raises
    ------
    UsageError
        One that is not in the bag, or a line down no fairway.
    """
    swings = [one for one in played.strokes if one.kind == "swing" and not short_of_full(one.club)]
    clubs = [in_degrees(one.club, hole, player, one.start.xy_yd, conditions) for one in swings]
    for text in clubs:
        shot_meant(player, text)
    return tuple(dict.fromkeys(clubs))


@contextmanager
def _kept(done: Mapping[int, HoleReview]) -> Iterator[None]:
    """An interruption ends what is worked, but for the first hole: what is finished is worth seeing."""
    try:
        yield
    except KeyboardInterrupt:
        if not done:
            raise
