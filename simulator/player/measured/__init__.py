"""A player's own measured shots: reading them, and what they say of the clubs."""

from .columns import Columns
from .fit import ClubFit, Fit, fit_player
from .readcsv import read_shots
from .shots import Read, Shots
from .write import player_text

__all__ = ["ClubFit", "Columns", "Fit", "Read", "Shots", "fit_player", "player_text", "read_shots"]
