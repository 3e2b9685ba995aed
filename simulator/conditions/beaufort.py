"""The Beaufort scale in miles an hour."""

from __future__ import annotations

BEAUFORT_MPH = (0.5, 2.0, 5.5, 10.0, 15.5, 21.5, 28.0, 35.0, 42.5, 50.5)
"""Middles [mph] of forces 0 to 9, from under 1, 1-3, 4-7, 8-12, 13-18, 19-24, 25-31, 32-38, 39-46, 47-54 as
weather services print the scale (from memory). No golf is played in stronger ones."""

BEAUFORT_NAMES = {
    "light air": 1, "light breeze": 2, "slight breeze": 2, "gentle breeze": 3, "moderate breeze": 4,
    "fresh breeze": 5, "strong breeze": 6, "near gale": 7, "strong gale": 9,
    "gale": 8,
    # the scale's adjectives with any other word behind them: "strong wind", "fresh, into"
    "light": 2, "gentle": 3, "moderate": 4, "fresh": 5, "strong": 6,
    # golfers' own words, no names of the scale (common practice)
    "breath of wind": 1, "breath": 1, "mild breeze": 3, "mild": 3, "brisk breeze": 5, "brisk": 5,
    "stiff breeze": 5, "stiff": 5,
}  # fmt: skip
"""The scale's own names of its forces, its adjectives alone, and words that stand for one of them."""
