"""Holes from words: a small grammar of the trade, told in holes/WORDS.md and `holesim sketch --help`."""

from simulator.hole.words.build import WordsHole, hole_from_words, looks_like_words

__all__ = ["WordsHole", "hole_from_words", "looks_like_words"]
