"""A player who is nothing but a level: the standard set, every number the level's own."""

from __future__ import annotations

from .fill import carries, fill_club
from .levels import STANDARD_SET, Level, handicap_said
from .model import Player


def standard_player(base: Level) -> Player:
    """Player of a level with the standard set, stock flights only."""
    kinds = {kind: kind for kind in STANDARD_SET}
    yards = carries(kinds, {}, base)
    return Player(
        name="level",
        handicap=base.handicap,
        clubs=tuple(
            fill_club(kind, kinds, yards, {}, base) for kind in sorted(kinds, key=lambda k: -yards[k])
        ),
        part=base.part,
        putting=base.putting,
        short_game=1.0,
        source=f"the level of a {handicap_said(base.handicap)} handicap",
        assumed=(),
    )
