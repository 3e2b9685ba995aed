"""What goes to standard error: progress, warnings, errors."""

from __future__ import annotations

import sys
from collections.abc import Callable

import typer


def say(message: str) -> None:
    typer.echo(f"holesim: {message}", err=True)


def progress() -> Callable[[str], None]:
    """Tells what is being waited for: compiling always (it is long), the rest only to somebody watching."""
    watched = sys.stderr.isatty()

    def tell(message: str) -> None:
        if watched or "compil" in message:
            say(message)

    return tell
