"""What is handed in from Python, refused in one line where it is of another kind or out of its range."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

import numpy as np

from ..errors import UsageError

Thing = TypeVar("Thing")


def check_kind(what: str, given: object, kind: type, how: str) -> None:
    """Refuse (UsageError) what is not of a kind that cannot be done without."""
    if not isinstance(given, kind):
        raise UsageError(f"{what} {str(given)[:60]!r}; allowed: a {kind.__name__} ({how})")


def check_whole(what: str, given: object, least: int, most: int) -> None:
    """Refuse (UsageError) what is no whole number in a range."""
    whole = isinstance(given, int | np.integer) and not isinstance(given, bool)
    if not whole or not least <= given <= most:  # type: ignore[operator]
        raise UsageError(f"{what} {str(given)[:60]}; allowed: a whole number from {least} to {most}")


def check_each(what: str, given: object, kind: type[Thing], how: str) -> tuple[Thing, ...]:
    """One or several of a kind, as a tuple; refuses (UsageError) anything else among them."""
    several = given if isinstance(given, Sequence) and not isinstance(given, str) else [given]
    for one in several:
        check_kind(what, one, kind, how)
    return tuple(several)
