"""Notes of several holes: each behind its number, which stands in whatever is refused of it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import TypeVar

from ...errors import UsageError
from . import phrases as p
from .notes import Notes, check_length, read_notes

NUMBERED = 'allowed: a line a hole, its number first, "7: driver to 215 out; ..."'

T = TypeVar("T")


def read_round(text: str) -> dict[int, Notes]:
    """The notes of a round: each hole behind its number, "hole 7: driver to ..." or "7: ...".

    Raises
    ------
    UsageError
        Words before the first number, a number twice, or what `read_notes` refuses; the hole is named.
    """
    check_length(text)
    holes: dict[int, list[str]] = {}
    lines: list[str] | None = None
    for line in filter(str.strip, text.splitlines()):
        heading = p.HEADING.fullmatch(line)
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
    return every_hole(holes, lambda number: read_notes("\n".join(holes[number])))


def every_hole(numbers: Iterable[int], read: Callable[[int], T]) -> dict[int, T]:
    """What is read of each hole.

    Raises
    ------
    UsageError
        What the first hole was refused for, with the numbers of the others that are refused too: all of
        them can be mended at once.
    """
    found, refusals = dict[int, T](), dict[int, UsageError]()
    for number in numbers:
        try:
            with of_hole(number):
                found[number] = read(number)
        except UsageError as error:
            refusals[number] = error
    if refusals:
        first, *others = refusals
        more = ", ".join(map(str, others))
        more = f"holes {more} need" if others[1:] else f"hole {more} needs"
        also = f" ({more} mending too)" if others else ""
        raise UsageError(f"{refusals[first]}{also}")
    return found


@contextmanager
def of_hole(number: int) -> Iterator[None]:
    """Errors inside it name the hole they are about."""
    try:
        yield
    except UsageError as error:
        raise UsageError(f"hole {number}: {error}") from None
