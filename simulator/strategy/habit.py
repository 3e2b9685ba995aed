"""What a player does from the tee without a plan."""

from __future__ import annotations

import math

from ..errors import FileError, UsageError
from ..hole.model import Hole
from ..player.model import Player
from .places import club_and_aim


def habit_of(player: Player, hole: Hole) -> str:
    """Club and aim, as `plan` takes them against.

    The player's own `habit`, else the longest club, straight at the flag where no aim is given. A club that
    carries past the flag is nobody's habit: there, the club whose stock carry comes nearest to the flag.

    Raises
    ------
    FileError
        The habit's aim is not understood.
    """
    text = player.habit or player.clubs[0].name
    try:
        name, aim_yd, aim_deg = club_and_aim(text)
        club = player.club(name)
    except UsageError as error:
        raise FileError(player.source or player.name, "habit", f"{text!r}: {error}", "see its message") from None
    out_yd = math.hypot(hole.pin.x_yd, hole.pin.y_yd)
    if club.carry_yd > out_yd:
        near = min(player.clubs, key=lambda one: abs(one.carry_yd - out_yd))
        return f"{near.name}@0"
    if aim_deg is not None:
        return f"{club.name}@{aim_deg:g}deg"
    return f"{club.name}@{aim_yd or 0.0:g}"
