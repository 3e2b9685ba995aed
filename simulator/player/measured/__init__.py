"""A player's own measured shots: reading them, and what they say of the clubs."""

from .fit import ClubFit, Fit, fit_player
from .readcsv import Columns, Read, Shots, read_shots
from .write import player_text

__all__ = ["ClubFit", "Columns", "Fit", "Read", "Shots", "fit_player", "player_text", "read_shots"]
