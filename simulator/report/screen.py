"""The width of a screen, and words wrapped to it."""

from __future__ import annotations

import textwrap

COLUMNS = 80
"""Width of the screen."""


def wrap(words: str, indent: str = "", first: str = "", width: int = COLUMNS) -> list[str]:
    """Lines of at most ``width`` characters: the first behind ``first``, the others behind ``indent``."""
    return textwrap.wrap(words, width, initial_indent=first, subsequent_indent=indent, break_on_hyphens=False)


def hang(words: str) -> list[str]:
    """The same with every line after the first two blanks in."""
    return wrap(words, "  ")
