"""What was played, as a golfer notes it: "driver to 215 out, right rough; 5-iron to 30 ft; 2 putts"."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from itertools import pairwise

from ...errors import UsageError
from .spoken import say_instead, without_mishits

ALLOWED = (
    'say strokes between semicolons, "driver to 215 out, right rough; 5-iron to 30 ft; 2 putts"; a club, '
    '"chip" or "putt", then "to" and a place as --from has it, feet on the green, "holed", "out of bounds", '
    '"lost", or a penalty area and "drop 165 out, left rough" (or "again")'
)
"""What notes may look like, the end of every refusal."""

NUMBERED = 'allowed: a line a hole, its number first, "7: driver to 215 out; ..."'

LONGEST_TEXT = 20_000
"""Letters of a round of notes; a full one has 3,000. A limit on slips."""

_COUNTS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6}

_BREAK = re.compile(r"\s*(?:[;\n]+|[.!](?=\s|$)|,?\s+then\s+)\s*")
_HEADING = re.compile(r"\s*(?:hole\s+)?(?P<number>\d{1,2})\s*[:.)]\s*(?P<rest>.*)", re.IGNORECASE)
_HOLED = re.compile(r"(?P<club>.+?)[\s,]+(?:(?:goes|went)\s+)?(?:holed(?:\s+out)?|in)", re.IGNORECASE)
_THE_HOLE = re.compile(r"(?:the\s+)?(?:hole|cup)", re.IGNORECASE)
_SIDE = r"(?:,?\s+(?:on\s+the\s+)?(?:left|right|long|behind)(?:\s+side)?)?"
_GONE = re.compile(rf"(?:out of bounds|o\.?b\.?|out|lost(?: ball)?){_SIDE}", re.IGNORECASE)
_LOST = re.compile(
    rf"(?P<club>.+?)[\s,]+(?:(?:goes|went|is|was)\s+)?(?P<where>{_GONE.pattern})", re.IGNORECASE
)
_TO_A_SIDE = re.compile(r"(?P<gone>.+)\s+to\s+the\s+(?:left|right)", re.IGNORECASE)
_SWING = re.compile(
    r"(?P<club>.+?)(?:\s*(?:->|→|:)\s*|[\s,]+(?:(?:goes|went|finish(?:es|ed)|end(?:s|ed)(?:\s+up)?|runs|ran)\s+)?"
    r"(?:to|in(?:to)?|on(?:to)?(?=\s+(?:the\s+)?green)|finds|found|leav(?:es|ing))\s+)(?P<where>.+)",
    re.IGNORECASE,
)
_DROP = re.compile(
    r"(?:(?P<unplayable>(?:takes?\s+(?:an\s+)?)?unplayable)\b[\s,:]*)?(?:(?P<kind>penalty|free)\s+)?drop(?:s|ped)?\b"
    r"(?:\s+(?:at|to|it))?\s*(?P<place>.*)",
    re.IGNORECASE,
)
_INSIDE = re.compile(
    r"(?P<swing>.+?)[\s,]+(?:and\s+)?(?P<drop>(?:(?:penalty|free)\s+)?drop(?:s|ped)?\b.+)", re.IGNORECASE
)
_AGAIN = re.compile(
    r"(?:again|replay(?:s|ed)?|re-?load(?:s|ed)?|another(?: ball)?|plays? again|three off the tee)"
    r"(?:\s+from\s.*)?",
    re.IGNORECASE,
)
_SWING_AGAIN = re.compile(
    r"(?P<swing>.+?)[\s,]+(?:and\s+)?(?P<again>again|replay(?:s|ed)?|re-?load(?:s|ed)?)", re.IGNORECASE
)
_PLACE_AT_ONCE = re.compile(
    r"(?P<club>.+?)[\s,]+(?P<where>\d+(?:\.\d+)?\s*(?:(?:yards?|yds?|yd|y|metres?|meters?|m)\s+)?"
    r"(?:out|on|short\s+of|behind)\b.*|\d+(?:\.\d+)?\s*(?:ft|feet|foot)\b.*)",
    re.IGNORECASE,
)
"""A place that says itself whether it is out, on or in feet needs no "to" before it."""

_PUTTS = re.compile(rf"(?P<count>\d+|{'|'.join(_COUNTS)})[\s-]*putt(?:s|ed)?(?:\s+out)?", re.IGNORECASE)
_TAPPED = re.compile(r"tap(?:ped)?[\s-]*in|holed (?:the|a) putt|holed it|gimme|conceded|holed", re.IGNORECASE)
_STOPPED = re.compile(r"pick(?:s|ed)?[\s-]+up|no return|n\.?r\.?|gave up", re.IGNORECASE)
_SETUP = re.compile(
    r"(?:(?P<pin>pin|flag)\s+(?P<where>.+)|(?P<spot>.+?)\s+(?:pin|flag)|(?P<tee>.+?)\s+tees?|tee\s+(?P<other>.+)"
    r"|from\s+(?P<start>.+))",
    re.IGNORECASE,
)


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
    """A ball dropped at a place; `free` without a penalty, `unplayable` where somebody called it so."""

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
    """So many putts, the last of them holed."""

    said: str
    count: int


@dataclass(frozen=True)
class Stopped:
    """The ball was picked up."""

    said: str


HOLED = "holed"
"""What `Swing.where` says of a ball in the hole."""

Clause = Swing | Out | Drop | Again | Putts | Stopped


@dataclass(frozen=True)
class Notes:
    """One hole's notes.

    Attributes
    ----------
    clauses : tuple of Clause
        In the order they were said.
    tee, pin, start : str or None
        Words for the tee and the pin, and for where the first stroke was played from.
    """

    clauses: tuple[Clause, ...]
    tee: str | None = None
    pin: str | None = None
    start: str | None = None


def refused(clause: str, why: str) -> UsageError:
    """The error for notes that are not understood, ending in what is."""
    return UsageError(f"notes {clause!r}: {why}; {ALLOWED}")


def read_notes(text: str) -> Notes:
    """The notes of one hole.

    Raises
    ------
    UsageError
        A clause that is not understood, nothing played, or a word behind the last stroke.
    """
    _check_length(text)
    said = [clause.strip(" ,") for clause in _BREAK.split(text)]
    clauses: list[Clause] = []
    setup: dict[str, str | None] = {"tee": None, "pin": None, "start": None}
    for clause in filter(None, said):
        words = _setup(clause) if not clauses else {}
        if words:
            setup.update(words)
        else:
            clauses += _clauses(clause)
    if not clauses:
        raise refused(text.strip()[:60], "no stroke in it")
    for clause, behind in pairwise(clauses):
        if isinstance(clause, Putts | Stopped) or (isinstance(clause, Swing) and clause.where == HOLED):
            raise refused(behind.said, f"behind {clause.said!r} the hole is over")
    return Notes(tuple(clauses), **setup)


def read_round(text: str) -> dict[int, Notes]:
    """The notes of a round: each hole behind its number, "hole 7: driver to ..." or "7: ...".

    Raises
    ------
    UsageError
        Words before the first number, a number twice, or what `read_notes` refuses; the hole is named.
    """
    _check_length(text)
    holes: dict[int, list[str]] = {}
    lines: list[str] | None = None
    for line in filter(str.strip, text.splitlines()):
        heading = _HEADING.fullmatch(line)
        if heading:
            number = int(heading["number"])
            if number in holes:
                raise UsageError(f"notes: hole {number} stands there twice; allowed: each hole once")
            lines = holes[number] = [heading["rest"]]
        elif lines is None:
            raise UsageError(f"notes {line.strip()[:60]!r}: which hole? {NUMBERED}")
        else:
            lines.append(line)
    if not holes:
        raise UsageError(f"notes: no hole in them; {NUMBERED}")
    found = {}
    for number, lines in holes.items():
        try:
            found[number] = read_notes("\n".join(lines))
        except UsageError as error:
            raise UsageError(f"hole {number}: {error}") from None
    return found


def _check_length(text: str) -> None:
    if len(text) > LONGEST_TEXT:
        raise UsageError(f"notes: {len(text):,} letters; allowed: {LONGEST_TEXT:,}")


def _setup(clause: str) -> dict[str, str | None]:
    """Tee, pin or starting place, where a clause says one."""
    found = _SETUP.fullmatch(clause)
    if found is None or _SWING.fullmatch(clause):
        return {}
    if found["pin"] or found["spot"]:
        return {"pin": found["where"] or found["spot"]}
    if found["start"]:
        return {"start": found["start"]}
    return {"tee": found["tee"] or found["other"]}


def _clauses(clause: str) -> list[Clause]:
    """What one clause says; a drop told behind its stroke is a clause of its own."""
    if found := _PUTTS.fullmatch(clause):
        count = _COUNTS.get(found["count"].lower()) or int(found["count"])
        if not 1 <= count <= 9:
            raise refused(clause, f"found {count} putts, allowed are 1 to 9")
        return [Putts(clause, count)]
    if _TAPPED.fullmatch(clause):
        return [Putts(clause, 1)]
    if _STOPPED.fullmatch(clause):
        return [Stopped(clause)]
    if _AGAIN.fullmatch(clause):
        return [Again(clause)]
    if found := _DROP.fullmatch(clause):
        return [_drop(clause, found)]
    if found := _INSIDE.fullmatch(clause):
        return [*_clauses(found["swing"]), *_clauses(found["drop"])]
    if found := _SWING_AGAIN.fullmatch(clause):
        return [*_clauses(found["swing"]), Again(found["again"])]
    plain = without_mishits(clause)
    if plain != clause and plain:
        try:
            return [replace(one, said=clause) for one in _clauses(plain)]
        except UsageError:
            raise _not_understood(clause, plain) from None
    if (found := _TO_A_SIDE.fullmatch(clause)) and (gone := _LOST.fullmatch(found["gone"])):
        return [Out(clause, gone["club"], gone["where"])]
    if found := _SWING.fullmatch(clause):
        club, where = found["club"], found["where"]
        if _GONE.fullmatch(where):
            return [Out(clause, club, where)]
        return [Swing(clause, club, HOLED if _THE_HOLE.fullmatch(where) else where)]
    if found := _PLACE_AT_ONCE.fullmatch(clause):
        return [Swing(clause, found["club"], found["where"])]
    if found := _LOST.fullmatch(clause):
        return [Out(clause, found["club"], found["where"])]
    if found := _HOLED.fullmatch(clause):
        return [Swing(clause, found["club"], HOLED)]
    raise _not_understood(clause, clause)


def _not_understood(clause: str, plain: str) -> UsageError:
    """The refusal of a clause, with what to say instead where that is known."""
    return refused(clause, say_instead(plain) or "which club, and to where?")


def _drop(clause: str, found: re.Match[str]) -> Drop:
    if not found["place"]:
        raise refused(clause, "dropped where?")
    return Drop(clause, found["place"], (found["kind"] or "").lower() == "free", bool(found["unplayable"]))
