"""What stands on everything that advises: the Rules, and the people ahead."""

from __future__ import annotations

RULE = "For preparation, practice and lessons, not during a round (Rules of Golf 4.3)."
"""Rule 4.3a (Rules of Golf 2023): no device that recommends a club or a line during a round."""

RULES = f"{RULE.removesuffix('.')}; local rules and the committee decide."

EXACT = "Player taken as exact."
"""Where no confidence was worked out."""

LOOK = "Blind ground, paths, other holes: look and shout."
