"""Where the next ball may be put down, and the cheapest legal choice by the value map."""

from __future__ import annotations

import math

from . import codes as c
from ._compile import apart, in_place
from .ground import surface_at
from .value import lie_bound, value_at

LINE_DROPS, BESIDE_DROPS = 7, 5
"""Places that stand for the line back from the hole, and for the edge of the area beside a point."""


@in_place
def _cheaper(ground, field, lie_rows, x, y, strokes, best, avoid_sand):
    """The better of `best` (total, x, y, lie, strokes) and a ball dropped at (x, y) for `strokes`."""
    surface = surface_at(ground, x, y)
    lie = int(ground.rows[surface, c.SURFACE_LIE])
    total = 1e9
    if ground.rows[surface, c.SURFACE_FATE] <= c.FATE_GREEN:
        if not (avoid_sand and lie_rows[lie] == c.UNPLAYABLE_SAND):
            total = strokes + value_at(field, lie, x, y)
    return (total, x, y, lie, strokes) if total < best[0] else best


@apart
def _drops(ground, field, lie_rows, x, y, lateral, strokes, best, avoid_sand):
    """Cheapest of `best` and the drops that relief from (x, y) allows for `strokes`.

    On the line from the hole through (x, y), behind it, no limit how far (17.1d(2), 19.2b): seven places, the
    nearest a yard behind and each about twice as far as the last. With `lateral` also within two club-lengths
    of (x, y), not nearer the hole (17.1d(3), 19.2c): five places on the edge of that area, from sideways
    round the back to sideways.
    """
    numbers = ground.numbers
    ux, uy = x - numbers[c.PIN_X], y - numbers[c.PIN_Y]
    length = math.sqrt(ux * ux + uy * uy)
    if length < 1e-6:
        return best
    ux, uy = ux / length, uy / length
    next_back = numbers[c.DROP_BACK]
    for k in range(LINE_DROPS + BESIDE_DROPS if lateral else LINE_DROPS):
        back, side = next_back, 0.0
        next_back = 1.8 * back + 1.5
        if k >= LINE_DROPS:
            turn = 0.7853981633974483 * (k - LINE_DROPS - 2)  # pi / 4
            back, side = numbers[c.TWO_CLUBS] * math.cos(turn), numbers[c.TWO_CLUBS] * math.sin(turn)
        px, py = x + ux * back + uy * side, y + uy * back - ux * side
        best = _cheaper(ground, field, lie_rows, px, py, strokes, best, avoid_sand)
    return best


@apart
def fairway_drop(ground, field, lie_rows, x, y, strokes, best):
    """Local rule for a ball lost or out of bounds: two strokes, on the fairway edge beside it (E-5).

    Looks for the nearest fairway not nearer the hole than (x, y), then lets the ball be dropped up to
    two club-lengths inside that edge.
    """
    numbers = ground.numbers
    dx, dy = x - numbers[c.PIN_X], y - numbers[c.PIN_Y]
    limit = dx * dx + dy * dy
    for ring in range(1, 61):
        reach = 2.0 * ring
        found = False
        for k in range(32):
            angle = 0.19634954084936207 * k
            ux, uy = math.sin(angle), math.cos(angle)
            px, py = x + reach * ux, y + reach * uy
            qx, qy = px - numbers[c.PIN_X], py - numbers[c.PIN_Y]
            if qx * qx + qy * qy >= limit and surface_at(ground, px, py) == numbers[c.SURFACE_FAIRWAY]:
                found = True
                best = _cheaper(ground, field, lie_rows, px, py, strokes, best, False)
                ix, iy = px + numbers[c.TWO_CLUBS] * ux, py + numbers[c.TWO_CLUBS] * uy
                wx, wy = ix - numbers[c.PIN_X], iy - numbers[c.PIN_Y]
                if wx * wx + wy * wy >= limit:
                    best = _cheaper(ground, field, lie_rows, ix, iy, strokes, best, False)
        if found:
            break
    return best


@in_place
def penalty_relief(game, x, y, lateral, replay, best):
    """Cheapest way on from a penalty area last crossed at (x, y), or stroke and distance at `replay`."""
    strokes = game.ground.numbers[c.PENALTY_STROKES]
    best = _drops(game.ground, game.field, game.lie_rows, x, y, lateral, strokes, best, False)
    if strokes + replay < best[0]:
        best = (strokes + replay, x, y, -1, strokes)
    return best


@in_place
def unplayable(game, lie, x, y, replay, best):
    """Cheapest of playing the ball as it lies (`best`) and the unplayable-ball options (19.2, 19.3)."""
    numbers = game.ground.numbers
    strokes = numbers[c.PENALTY_STROKES]
    if best[0] <= strokes + min(replay, lie_bound(game.field, x, y)):
        return best
    # inside the sand a drop for one stroke never beats playing the ball: only the way out is tried
    sand = game.lie_rows[lie] == c.UNPLAYABLE_SAND
    cost = numbers[c.SAND_STROKES] if sand else strokes
    best = _drops(game.ground, game.field, game.lie_rows, x, y, not sand, cost, best, sand)
    if strokes + replay < best[0]:
        best = (strokes + replay, x, y, -1, strokes)
    return best


@in_place
def out_of_bounds(game, x, y, replay):
    """Cheapest way on after a ball lost at (x, y) or gone out of bounds there: 18.2, or the local rule."""
    strokes = game.ground.numbers[c.PENALTY_STROKES]
    best = (strokes + replay, x, y, -1, strokes)
    local = game.ground.numbers[c.LOCAL_RULE_STROKES]
    if local > 0.0 and local < best[0]:
        best = fairway_drop(game.ground, game.field, game.lie_rows, x, y, local, best)
    return best
