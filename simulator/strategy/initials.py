"""Initials in place of names, so that a page can be pinned to a wall."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from ..player.model import Player


def with_initials(players: Sequence[Player]) -> list[Player]:
    """The same players named by initials, "AB"; a second AB is "AB2"."""
    seen: dict[str, int] = {}
    out = []
    for player in players:
        short = "".join(word[0] for word in player.name.split() if word[0].isalnum()).upper() or "X"
        seen[short] = seen.get(short, 0) + 1
        out.append(replace(player, name=short if seen[short] == 1 else f"{short}{seen[short]}"))
    return out
