"""What goes to standard error: progress, warnings, errors."""

from __future__ import annotations

import contextlib
import re
import sys
import warnings
from collections.abc import Callable, Container, Iterator, Sequence
from pathlib import Path
from typing import Any

import typer

from ..toml_text import one_line

INTERRUPTED = 130
"""Exit status after ctrl-C: 128 and the number of the signal, as shells have it."""

_NO_LETTER = re.compile(r"Glyph (\d+) .* missing from font")
"""How the library that draws says that its font lacks a letter: once for each, for every word it is in."""

MOST_HALF = 450
"""Letters kept from each end of an error: what was found may be a whole file on one line."""


def say(message: str) -> None:
    """A line on standard error."""
    with contextlib.suppress(OSError):  # nobody can be told; the exit status still says it
        typer.echo(f"holesim: {message}", err=True)


def say_written(pages: Sequence[Path], path: Path) -> None:
    """Every page that was written, and those of an earlier run that still lie beside them."""
    from ..report.sheet import left_from_before

    for page in pages:
        say(f"wrote {page}")
    if pages and (before := left_from_before(pages, path)):
        names = ", ".join(one.name for one in before[:6])
        more = f" and {len(before) - 6} more" if len(before) > 6 else ""
        say(f"there from before, not of this run: {names}{more}")


def say_short(message: str) -> None:
    """One printable line, however long and odd the thing it complains of."""
    line = one_line(message)
    if len(line) > 2 * MOST_HALF:
        line = f"{line[:MOST_HALF]} ... {line[-MOST_HALF:]}"
    say(line)


@contextlib.contextmanager
def warnings_said() -> Iterator[None]:
    """What a library warns its caller of (a cache that cannot be written) is one line of ours.

    Letters that the font of pictures lacks are one line in the end, however many words have them. Warnings of
    other kinds are mistakes of ours and keep Python's form, which says where.
    """
    missing: dict[str, None] = {}
    with warnings.catch_warnings():
        usual = warnings.showwarning

        def show(message: Warning | str, category: type[Warning], *where: Any, **more: Any) -> None:
            if letter := _NO_LETTER.match(str(message)):
                missing[chr(int(letter[1]))] = None
            elif issubclass(category, UserWarning):
                say_short(f"warning: {message}")
            else:
                usual(message, category, *where, **more)

        warnings.showwarning = show
        try:
            yield
        finally:
            if missing:
                letters = "".join(missing)
                say_short(f"warning: the font of the pictures has no {letters}: boxes stand there instead")


def progress(always: Container[str] = ()) -> Callable[[str], None]:
    """Tells what is being waited for, only to somebody watching; `always` are the waits that are long."""
    watched = sys.stderr is not None and sys.stderr.isatty()

    def tell(message: str) -> None:
        if watched or message in always:
            say(message)

    return tell


def play_progress() -> Callable[[str], None]:
    """The same of what is worked out by playing: compiling, which is long, is told to everybody."""
    from ..strategy.question import COMPILING

    return progress((COMPILING,))
