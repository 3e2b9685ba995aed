"""Words on the command line, or a file of them."""

from __future__ import annotations

NOTES = ".txt"
"""Suffix of a file of notes that may stand in place of the words."""

MOST_NOTES_BYTES = 100_000
"""Largest file of notes read [bytes]: a hole is a few hundred, a round a few thousand."""


def notes_of(words: str) -> str:
    """The words, or those of a file of notes."""
    from ..files import decoded, read_bytes

    if not words.lower().endswith(NOTES) or "\n" in words:
        return words
    return decoded(read_bytes(words, words, MOST_NOTES_BYTES, "a file of notes"), words)
