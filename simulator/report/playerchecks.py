"""What a player file holds, in words and as plain data: what `holesim check` prints."""

from __future__ import annotations

from typing import Any

from ..player.model import CLUB_NUMBERS, Player
from .checks import SCHEMA, assumed_lines
from .figures import handicap_said
from .screen import hang
from .units import YARDS, Units

_CLUB_COLUMNS = (
    ("carry_yd", ("carry", "yd"), 9, 0),
    ("direction_sd_deg", ("direction", "sd deg"), 11, 1),
    ("distance_sd_pct", ("distance", "sd %"), 10, 1),
    ("bias_right_deg", ("bias", "deg R"), 8, 1),
    ("bias_long_pct", ("bias", "% long"), 8, 1),
    ("mishit_rate", ("mishits", "in 100"), 9, 0),
    ("mishit_loss_pct", ("lose", "%"), 7, 0),
)
"""Field of a club, the two lines of its heading, width and decimals."""


def player_text(player: Player, units: Units = YARDS) -> str:
    """A player in words: every club's numbers, those from the level marked, what was assumed."""
    of = f", handicap {handicap_said(player.handicap)}" if player.handicap is not None else ""
    clubs = f"{len(player.clubs)} clubs (~ from the level)"
    lines = hang(f"{player.source}: a player. {player.name}{of}, {clubs}.")
    for heads in zip(*(column[1] for column in _CLUB_COLUMNS), strict=True):
        widths = (column[2] for column in _CLUB_COLUMNS)
        heads = tuple(units.short if h == "yd" else h for h in heads)
        lines.append(" " * 18 + "".join(f"{h:>{w}}" for h, w in zip(heads, widths, strict=True)))
    for club in player.clubs:
        row = f"{club.name:<18}"
        for key, _, width, digits in _CLUB_COLUMNS:
            scale = 100.0 if key == "mishit_rate" else units.of(1.0) if key.endswith("_yd") else 1.0
            mark = "~" if club.sources.get(key) == "level" else ""
            row += f"{mark + format(scale * getattr(club, key), f'.{digits}f'):>{width}}"
        lines.append(row)
    angle, distance = player.putting.angle_sd_deg, 100.0 * player.putting.distance_sd
    lines += hang(
        f"Putting: start line sd {angle:.2f} deg, distance sd {distance:.1f} %; "
        f"short game {_short_game(player.short_game)}"
        f"{'' if player.chipping == 1.0 else f', chips {_wider(player.chipping)} than pitches'}."
    )
    habits = _habits(player, units)
    return "\n".join(line.rstrip() for line in [*lines, *habits, *assumed_lines(player.assumed, units)])


def _short_game(share: float) -> str:
    """Spread of part swings against the level's."""
    return "as the level's" if share == 1.0 else f"{_wider(share)} than the level's"


def _wider(share: float) -> str:
    return f"{100.0 * abs(share - 1.0):.3g} % {'tighter' if share < 1.0 else 'wider'}"


def _habits(player: Player, units: Units) -> list[str]:
    """Shapes, held-down carries, tee clubs and clubs left at home, a sentence each; none without any."""
    said = []
    curved = [
        f"{c.name} {units.whole(abs(c.curve_yd))} {'L' if c.curve_yd < 0.0 else 'R'}"
        for c in player.clubs
        if c.curve_yd
    ]
    if curved:
        said.append(f"Curve, {units.short}: {', '.join(curved)}.")
    low = [f"{c.name} {units.whole(c.low_carry_yd)}" for c in player.clubs if c.low_carry_yd is not None]
    if low:
        said.append(f"Held down, {units.short} of carry: {', '.join(low)}.")
    tee = [c.name for c in player.clubs if c.use == "tee only"]
    if tee:
        said.append(f"From a tee only: {', '.join(tee)}.")
    if player.left_out:
        said.append(f"Left at home: {', '.join(player.left_out)}.")
    return [line for sentence in said for line in hang(sentence)]


def player_dict(player: Player) -> dict[str, Any]:
    """A player as plain data; each club's numbers with their source, file or level."""
    return {
        "schema": SCHEMA,
        "kind": "player",
        "source": player.source,
        "name": player.name,
        "handicap": player.handicap,
        "clubs": [
            {
                "name": c.name, "kind": c.kind, **{k: getattr(c, k) for k in CLUB_NUMBERS},
                "curve_yd": c.curve_yd, "low_carry_yd": c.low_carry_yd, "use": c.use,
                "sources": dict(c.sources),
            }
            for c in player.clubs
        ],
        "putting": {
            "angle_sd_deg": player.putting.angle_sd_deg,
            "distance_sd_pct": 100.0 * player.putting.distance_sd,
            "sources": dict(player.putting.sources),
        },
        "short_game": player.short_game,
        "chipping": player.chipping,
        "left_out": list(player.left_out),
        "assumed": list(player.assumed),
    }  # fmt: skip
