"""Who plays: players, clubs, levels and the bag files they come from."""

from .bag import bundled_players, load_player
from .levels import Level, level
from .model import Club, PartSpread, PartSwing, Player, Putting

__all__ = [
    "Club",
    "Level",
    "PartSpread",
    "PartSwing",
    "Player",
    "Putting",
    "bundled_players",
    "level",
    "load_player",
]
