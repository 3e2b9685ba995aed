"""Puts this folder on the path (naive.py, small_games.py) by standing in it."""
