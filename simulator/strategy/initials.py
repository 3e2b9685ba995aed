"""Names of players side by side: numbers for those without one, initials for a page on a wall."""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import replace

from ..player.bag import UNNAMED
from ..player.model import Player


def numbered(players: Sequence[Player]) -> list[Player]:
    """The same players; two or more whose words give no name are "Player 1", "Player 2" in their order."""
    if sum(player.name == UNNAMED for player in players) < 2:
        return list(players)
    count = itertools.count(1)
    return [
        replace(player, name=f"{UNNAMED} {next(count)}") if player.name == UNNAMED else player
        for player in players
    ]


def with_initials(players: Sequence[Player]) -> list[Player]:
    """The same players named by initials, "AB"; a second AB is "AB2"."""
    seen: dict[str, int] = {}
    out = []
    for player in players:
        short = "".join(word[0] for word in player.name.split() if word[0].isalnum()).upper() or "X"
        seen[short] = seen.get(short, 0) + 1
        out.append(replace(player, name=short if seen[short] == 1 else f"{short}{seen[short]}"))
    return out
