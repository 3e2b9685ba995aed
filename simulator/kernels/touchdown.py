"""A ball of a volley comes down: where, and where on its flight it entered a penalty area."""

from __future__ import annotations

from . import codes as c
from . import volley as v
from ._compile import apart, in_place
from .ground import crossing, fate_at, is_gone, is_penalty
from .rest import bring_down


@apart
def flight_crossing(ground, x, y, line_x, line_y, along, side, land_x, land_y, out):
    """Last place that is not gone (`is_gone`) under a flight that came down in a place that is.

    The ground track is taken to bend as the square of the way flown.
    """
    step = 2.0 * ground.numbers[c.RASTER_CELL]
    steps = int(along / step)
    back_x, back_y = land_x, land_y
    for k in range(1, steps + 1):
        share = 1.0 - k * step / along
        bx = x + along * share * line_x + side * share * share * line_y
        by = y + along * share * line_y - side * share * share * line_x
        if not is_gone(fate_at(ground, bx, by), out):
            return crossing(ground, back_x, back_y, bx, by, out)
        back_x, back_y = bx, by
    return x, y


@in_place
def touch_down(ground, strikes, balls, i, landing):
    """A struck ball's landing: what stands of it afterwards, and its state before the first bounce.

    Parameters
    ----------
    balls : float64[ROOM]
        Where it was struck from and how stands there already.
    i : uintp
        Which of the volley.
    landing : Landing
    """
    x, y = balls[v.FROM_X + i], balls[v.FROM_Y + i]
    lie, shot = int(balls[v.FROM_LIE + i]), int(balls[v.SHOT + i])
    entry_x, entry_y = x, y
    if is_penalty(fate_at(ground, landing.x, landing.y)):
        line_x, line_y = balls[v.LINE_X + i], balls[v.LINE_Y + i]
        entry_x, entry_y = flight_crossing(
            ground, x, y, line_x, line_y, landing.along, landing.side, landing.x, landing.y, False
        )
    balls[v.LAND_X + i], balls[v.LAND_Y + i] = landing.x, landing.y
    balls[v.ALONG + i], balls[v.SIDE + i], balls[v.BRANCH + i] = landing.along, landing.side, landing.branch
    balls[v.ENTRY_X + i], balls[v.ENTRY_Y + i] = entry_x, entry_y
    spin = landing.spin * strikes[shot, lie, c.STRIKE_SPIN]
    bring_down(balls, i, landing.x, landing.y, landing.vx, landing.vy, landing.down, spin)
