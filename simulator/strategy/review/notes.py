"""What was played, as a golfer notes it: "driver to 215 out, right rough; 5-iron to 30 ft; 2 putts"."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise

from ...errors import UsageError, WordsRefused
from ..placewords import told_as_typed
from . import phrases as p
from . import swings as s
from .advice import MISSED, gone_or_left, say_instead
from .figures import in_figures, without_numbers
from .spoken import club_and_where, usual, without_mishits

ALLOWED = (
    'say strokes between semicolons, "driver to 215 out, right rough; 5-iron to 30 ft; 2 putts"; a club, '
    '"chip" or "putt", then "to" and a place as --from has it, feet on the green, "holed", "out of bounds", '
    '"lost", or a penalty area and "drop 165 out, left rough" (or "again")'
)
"""What notes may look like, the end of refusals that have no example of their own."""

LONGEST_TEXT = 20_000
"""Letters of a round of notes; a full one has 3,000. A limit on slips."""


@dataclass(frozen=True)
class Swing:
    """A stroke off the green or a putt that is told by itself: the club and where the ball came to rest."""

    said: str
    club: str
    where: str


@dataclass(frozen=True)
class Out:
    """A stroke whose ball was out of bounds or lost."""

    said: str
    club: str
    where: str


@dataclass(frozen=True)
class Drop:
    """A ball dropped; `free` without a penalty, `unplayable` where somebody called it so.

    `place` is empty where nobody said it, or only that it was within two club-lengths.
    """

    said: str
    place: str
    free: bool
    unplayable: bool


@dataclass(frozen=True)
class Again:
    """The next stroke is played from where the last one was."""

    said: str


@dataclass(frozen=True)
class Putts:
    """So many putts, the last of them holed; `first` says from where, if anybody did."""

    said: str
    count: int
    first: str | None = None


@dataclass(frozen=True)
class Stopped:
    """The ball was picked up."""

    said: str


@dataclass(frozen=True)
class Provisional:
    """What comes next is the ball that was put in play for one that was then out of bounds or lost."""

    said: str


HOLED = "holed"
"""What `Swing.where` says of a ball in the hole."""

Clause = Swing | Out | Drop | Again | Provisional | Putts | Stopped


@dataclass(frozen=True)
class Notes:
    """One hole's notes.

    Attributes
    ----------
    clauses : tuple of Clause
        In the order they were said.
    tee, pin, start : str or None
        Words for the tee and the pin, and for where the first stroke was played from.
    scored : str or None
        What the hole was scored as ("bogey", "5"), if that was noted.
    """

    clauses: tuple[Clause, ...]
    tee: str | None = None
    pin: str | None = None
    start: str | None = None
    scored: str | None = None


def refused(clause: str, why: str) -> WordsRefused:
    """The error for notes that are not understood, ending in what is: in general, if `why` has no example."""
    return WordsRefused("notes", clause, why if '"' in why else f"{why}; {ALLOWED}")


def read_notes(text: str) -> Notes:
    """The notes of one hole.

    Raises
    ------
    UsageError
        A clause that is not understood, nothing played, or a word behind the last stroke.
    """
    check_length(text)
    text, scored = _without_score(in_figures(without_numbers(text)))
    text = p.UNPLAYABLE_THEN.sub(r"\g<called>, ", text)
    said = _putts_counted(_begun([clause.strip(" ,") for clause in p.BREAK.split(text)]))
    clauses: list[Clause] = []
    setup: dict[str, str | None] = {"tee": None, "pin": None, "start": None}
    for part in filter(None, said):
        words = _setup(part) if not clauses else {}
        if words:
            setup.update(words)
        else:
            clauses += _clauses(part)
    clauses = _joined(clauses)
    if not clauses:
        raise refused(text.strip()[:60], "no stroke in it")
    for clause, behind in pairwise(clauses):
        if isinstance(clause, Putts | Stopped) or (isinstance(clause, Swing) and clause.where == HOLED):
            raise refused(behind.said, f"behind {clause.said!r} the hole is over")
    return Notes(tuple(clauses), **setup, scored=scored)


def _begun(said: list[str]) -> list[str]:
    """Which stroke it is ("tee shot,") and a club alone ("sw, splash ...") put before the clause behind."""
    begun: list[str] = []
    for clause in filter(None, said):
        alone = begun and (
            p.TO_BEGIN.fullmatch(begun[-1])
            or (s.CLUB_ALONE.fullmatch(begun[-1]) and s.SHORT_SWING_FIRST.match(clause))
        )
        if alone:
            begun[-1] = f"{begun[-1]} {clause}"
        else:
            begun.append(clause)
    return begun


def _each_putt(said: list[str]) -> Iterator[str]:
    """The clauses, putts that missed apart from what is noted behind a comma: "missed, in"."""
    for clause in filter(None, said):
        parts = [part.strip() for part in clause.split(",")]
        putts = len(parts) > 1 and all(p.MISSED_PUTT.fullmatch(part) for part in parts[:-1])
        yield from parts if putts else [clause]


def _putts_counted(said: list[str]) -> list[str]:
    """Clauses with putts that missed ("missed; tap-in") counted with the one behind them that was holed."""
    counted: list[str] = []
    missed: list[str] = []
    for clause in _each_putt(said):
        found = p.TAPPED.fullmatch(clause)
        if p.MISSED_PUTT.fullmatch(clause):
            missed.append(clause)
        elif missed and found and not any(found.groupdict().values()):
            counted.append(f"{len(missed) + 1} putts")
            missed = []
        else:
            counted += [*missed, clause]
            missed = []
    return counted + missed


def _without_score(text: str) -> tuple[str, str | None]:
    """The notes without the score at their end ("2 putts for bogey"), and that."""
    found = p.SCORED.fullmatch(text)
    return (found["notes"], found["score"]) if found else (text, None)


def _joined(clauses: list[Clause]) -> list[Clause]:
    """Clauses with what only those before them tell: the club of a second ball, how far a putt was."""
    joined: list[Clause] = []
    for clause in clauses:
        before = joined[-1] if joined else None
        if isinstance(clause, Swing) and clause.club == p.SAME_CLUB:
            clubs = [one.club for one in joined if isinstance(one, Swing | Out)]
            if not clubs:
                raise refused(clause.said, "which club?")
            clause = replace(clause, club=clubs[-1])
        if isinstance(clause, Provisional):
            if not isinstance(before, Out):
                raise refused(clause.said, "a provisional ball that was not played on with is left out")
            continue
        if isinstance(clause, Putts) and clause.first and isinstance(before, Swing):
            joined[-1] = _with_feet(before, clause)
        joined.append(clause)
    return joined


def _with_feet(swing: Swing, putts: Putts) -> Swing:
    """The stroke before the putts, ending as far from the hole as they are said to begin."""
    assert putts.first is not None
    if p.ON_GREEN.fullmatch(swing.where):
        return replace(swing, where=putts.first)
    if re.findall(r"[\d.]+", putts.first)[0] not in re.findall(r"[\d.]+", swing.where):
        raise refused(putts.said, f"the ball was noted as {swing.where!r}")
    return swing


def check_length(text: str) -> None:
    """Refuse (UsageError) what is longer than any round's notes."""
    if len(text) > LONGEST_TEXT:
        raise UsageError(f"notes: {len(text):,} letters; allowed: {LONGEST_TEXT:,}")


def _setup(clause: str) -> dict[str, str | None]:
    """Tee, pin or starting place, where a clause says one."""
    found = p.SETUP.fullmatch(clause)
    if found is None or s.SWING.fullmatch(clause):
        return {}
    if found["pin"] or found["spot"]:
        return {"pin": found["where"] or found["spot"]}
    if found["start"]:
        return {"start": found["start"]}
    return {"tee": found["tee"] or found["other"]}


def _clauses(clause: str, *, is_usual: bool = False) -> list[Clause]:
    """What one clause says; a drop told behind its stroke is a clause of its own."""
    if found := p.PUTTS.fullmatch(clause):
        count = p.COUNTS.get(found["count"].lower()) or int(found["count"])
        if not 1 <= count <= 9:
            raise refused(clause, f"found {count} putts, allowed are 1 to 9")
        return [Putts(clause, count, found["first"])]
    if found := p.TAPPED.fullmatch(clause):
        feet = found["footer"] or found["before"]
        return [Putts(clause, 1, f"{feet} ft" if feet else found["first"])]
    if p.STOPPED.fullmatch(clause):
        return [Stopped(clause)]
    if p.AGAIN.fullmatch(clause):
        return [Again(clause)]
    if found := p.DROP.fullmatch(clause):
        return [_drop(clause, found)]
    if found := p.UNPLAYABLE_BESIDE.fullmatch(clause):
        return [Drop(clause, "", False, True)]
    if found := p.UNPLAYABLE_AT.fullmatch(clause):
        return [Drop(clause, found["place"], False, True)]
    if found := p.INSIDE.fullmatch(clause):
        return [*_clauses(found["swing"]), *_clauses(found["drop"])]
    if found := p.SWING_AGAIN.fullmatch(clause):
        return [*_clauses(found["swing"]), Again(found["again"])]
    if p.PROVISIONAL.fullmatch(clause):
        return [Provisional(clause)]
    if found := p.NEXT_BALL.fullmatch(clause):
        bare = re.match(r"(?:to|into|in)\s|\d+\s*(?:yards?|m)?\s*(?:out|on)\b", found["rest"], re.IGNORECASE)
        ball: list[Clause]
        if s.GROUND_FIRST.fullmatch(found["rest"]):
            ball = [Swing(clause, p.SAME_CLUB, found["rest"])]
        else:
            ball = _clauses(f"{p.SAME_CLUB} {found['rest']}" if bare else found["rest"])
        first = Provisional(clause) if found["provisional"] else Again(found["again"])
        return [first, *(replace(one, said=clause) for one in ball)]
    if found := s.NO_CLUB.fullmatch(clause):
        return [Swing(clause, p.NO_CLUB, found["where"] or found["beside"])]
    plain = "" if is_usual else without_mishits(usual(clause))
    if plain != clause and plain:
        with told_as_typed(plain, clause):
            return [replace(one, said=clause) for one in _clauses(plain, is_usual=True)]
    return [_stroke(clause)]


def _stroke(clause: str) -> Clause:
    """A swing, with a club and where its ball went."""
    gone = s.TO_A_SIDE.fullmatch(clause)
    out = (
        (gone and s.LOST.fullmatch(gone["gone"]))
        or s.LOST_IN.fullmatch(clause)
        or s.GONE_THERE.fullmatch(clause)
    )
    if out:
        return Out(clause, club_and_where(out["club"], "")[0], out["where"])
    if found := s.ACE.fullmatch(clause):
        return Swing(clause, found["club"], HOLED)
    if (found := s.BY_THE_GREEN.fullmatch(clause)) or (found := s.SWING.fullmatch(clause)):
        club, where = club_and_where(found["club"], found["where"])
        if not club:
            raise refused(clause, "which club?")
        if instead := gone_or_left(club):
            raise refused(clause, instead)
        if s.GONE.fullmatch(where):
            return Out(clause, club, where)
        return Swing(clause, club, HOLED if s.THE_HOLE.fullmatch(where) else where)
    if found := s.GROUND_AT_ONCE.fullmatch(clause):
        return Swing(clause, found["club"], found["where"])
    if found := (
        s.LEFT_AT_ONCE.fullmatch(clause)
        or s.PLACE_AT_ONCE.fullmatch(clause)
        or s.SIDE_AT_ONCE.fullmatch(clause)
    ):
        return Swing(clause, *club_and_where(found["club"], found["where"]))
    if found := s.WATER_AT_ONCE.fullmatch(clause):
        return Swing(clause, found["club"], found["where"])
    if not MISSED.match(clause) and (found := s.OFF_GREEN.fullmatch(clause)):
        return Swing(clause, found["club"], found["where"])
    if found := s.ON.fullmatch(clause):
        return Swing(clause, found["club"] or found["bare"], "the green")
    if not MISSED.match(clause) and (found := s.LOST.fullmatch(clause)):
        return Out(clause, found["club"], found["where"])
    if found := s.HOLED.fullmatch(clause):
        return Swing(clause, found["club"], HOLED)
    raise refused(clause, say_instead(clause) or "which club, and to where?")


def _drop(clause: str, found: re.Match[str]) -> Drop:
    place = re.sub(r"^zone[\s,:]+(?=\d)", "", found["place"], flags=re.IGNORECASE)
    place = "" if p.NO_PLACE.fullmatch(place) else place
    free = (found["kind"] or "").lower() == "free"
    return Drop(clause, place, free, bool(found["unplayable"]))
