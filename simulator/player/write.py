"""A bag file written from a few answers, every line explained."""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from typing import Any

from ..toml_text import comment as comment_line
from ..toml_text import key as toml_key
from ..toml_text import value as toml_value

_TOP_COMMENT = {
    "handicap": "handicap index; a plus handicap is negative: +2 on the card is -2 here",
    "sex": 'whose tables fill in what is left out; "man" when this line is not there',
    "hand": "whose fade goes left",
    "miss": 'of every club: "left" or "right", "short" or "long", or both',
    "shape": 'of every club: "fade", "draw", "slice", "hook"; curve_yd in a club says how far',
    "curve_yd": "with the longest club, the others in proportion",
    "curve_m": "with the longest club, the others in proportion",
    "tee": "played from, on holes that have a tee of that name",
}
_CLUB_COMMENT = {
    "carry_yd": "through the air, solid",
    "carry_m": "through the air, solid",
    "total_yd": "carry and run on level medium fairway",
    "total_m": "carry and run on level medium fairway",
    "width_yd": "8 of 10 balls finish inside, mishits included",
    "width_m": "8 of 10 balls finish inside, mishits included",
    "depth_yd": "8 of 10 balls finish inside, mishits included",
    "depth_m": "8 of 10 balls finish inside, mishits included",
    "curve_yd": "from the start line to where a solid one comes down",
    "low_carry_yd": "held down",
    "use": '"tee only", "never", or "anywhere"',
}
_MORE = """
# More that may be said of any club (8 of 10 balls finish inside the width and the depth, mishits included):
# [club.7-iron]
# total_yd = 150                # in place of carry_yd: carry and run on level medium fairway
# width_yd = 24
# depth_yd = 22
# low_carry_yd = 128            # held down
# use = "tee only"              # or "never"
# The tee played from, on holes that have one of that name (above the sections): tee = "red"
# The clubs in the bag, if they are not a standard set:
# clubs = ["driver", "3-wood", "5-hybrid", "7-iron", "9-iron", "pw", "sw", "putter"]   (above the sections)
"""


FIGURES = 6
"""Significant figures of a number in a bag file."""


def bag_text(table: Mapping[str, Any], name: str) -> str:
    """The text of a bag file.

    Parameters
    ----------
    table : Mapping
        Contents, as ``words.player_table`` has them.
    name : str
        The player's name.
    """
    today = datetime.date.today().isoformat()
    lines = [
        comment_line(f"{name}'s bag. Written {today}; what is left out comes from the handicap's level."),
        "# For preparation, practice and lessons, not during a round (Rules of Golf 4.3).",
        "",
        f"name = {toml_value(name)}",
    ]
    for key in ("handicap", "sex", "hand", "tee", "miss", "shape", "curve_yd", "curve_m"):
        if key in table:
            lines.append(_line(key, table[key], _TOP_COMMENT[key]))
    for club, section in table.get("club", {}).items():
        lines += ["", f"[club.{toml_key(club)}]"]
        lines += [_line(key, value, _CLUB_COMMENT.get(key, "")) for key, value in section.items()]
    return "\n".join(lines) + "\n" + _MORE


def _line(key: str, value: object, comment: str) -> str:
    said = f"{key} = {toml_value(value, FIGURES)}"
    return f"{said:<32}# {comment}" if comment else said
