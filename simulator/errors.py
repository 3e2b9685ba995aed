"""The errors holesim raises on purpose, one tree.

    SimulatorError          anything we can explain in one line
    |-- FileError           a hole, player or other file that cannot be used (exit 2)
    |   `-- UnwritableError a place that nothing can be written to (exit 2)
    |-- UsageError          a request that makes no sense (exit 2)
    |   `-- WordsRefused    words of a golfer that cannot be meant (exit 2)
    `-- NoAnswerError       a fair question that has no answer (exit 3)

Only ``cli`` turns them into text on standard error and an exit status.
"""

from __future__ import annotations

from pathlib import PurePath


class SimulatorError(Exception):
    """Root of every error holesim raises on purpose; its text is one line."""

    exit_status = 2


class UsageError(SimulatorError):
    """A club, place, option or number that cannot be meant."""


class WordsRefused(UsageError):
    """Words that cannot be meant: what they were read as ("place", "notes"), the words, and why not."""

    def __init__(self, what: str, words: str, why: str) -> None:
        super().__init__(f"{what} {words!r}: {why}")
        self.what, self.words, self.why = what, words, why

    def told_of(self, words: str, what: str | None = None, more: str = "") -> WordsRefused:
        """The same of the words that somebody typed, where these were put into others."""
        return WordsRefused(what or self.what, words, f"{self.why}{more}")


def check_text(what: str, given: object, example: str) -> None:
    """Refuse (UsageError) what is no text where words are read."""
    if not isinstance(given, str):
        raise UsageError(f"{what} {str(given)[:60]}; allowed: text, for example {example!r}")


class NoAnswerError(SimulatorError):
    """The question is well put, but no legal plan answers it."""

    exit_status = 3


def check_path(given: object, allowed: str) -> None:
    """Refuse (UsageError) what is neither the path of a file nor a name in its place."""
    if not isinstance(given, str | PurePath):
        raise UsageError(f"{str(given)[:60]} is no path and no name; allowed: {allowed}")


class FileError(SimulatorError):
    """A file that cannot be used: says where, what was found and what is allowed.

    Parameters
    ----------
    source : str
        Path or bundled name of the file.
    where : str
        Feature (and field) at fault, for example ``"feature 'mill pond', to_yd"``.
        Empty when the whole file is at fault.
    found : str
        What was found there.
    allowed : str
        What would have been right.
    """

    def __init__(self, source: str, where: str, found: str, allowed: str) -> None:
        self.source, self.where, self.found, self.allowed = source, where, found, allowed
        place = f"{source}: {where}" if where else source
        super().__init__(f"{place}: found {found}; allowed: {allowed}")


class UnwritableError(FileError):
    """A place that cannot be written: the next file would fare no better.

    Parameters
    ----------
    path : str
    reason : str
        As the system says it.
    full : bool
        Whether it is room that is wanting.
    """

    def __init__(self, path: str, reason: str, full: bool) -> None:
        allowed = "a place with room" if full else "a folder of yours"
        super().__init__(path, "", f"a place that cannot be written ({reason})", allowed)
