"""How patterns and tables of what people type are put together, whatever it is about."""

from __future__ import annotations

from collections.abc import Mapping


def one_of(*ways: str) -> str:
    """A part of a pattern that is any of these."""
    return f"(?:{'|'.join(ways)})"


def by_word(table: Mapping[str, str]) -> dict[str, str]:
    """A table whose keys are words between blanks, by each of these words."""
    return {word: meant for words, meant in table.items() for word in words.split()}
