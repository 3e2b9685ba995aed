"""Game: everything one player on one hole today is, as arrays (made by the border, read by kernels).

The arrays stand in groups by who reads them: a compiled call passes every array it is given, one word
after another, so small functions are handed the group they need and nothing else.
"""

from __future__ import annotations

from typing import Any, NamedTuple


class Ground(NamedTuple):
    """What the ground is.

    Attributes
    ----------
    numbers : float64[NUMBERS]
    surface : uint8[ny, nx]
        Surface code of each raster cell.
    relief : float32[ny, nx, RELIEF_COLUMNS]
        Height [yd], its slope along x and y [yd/yd] and the upward part of the normal, side by side: they
        are read together. ``[1, 1, RELIEF_COLUMNS]`` of zeros on level ground.
    rows : float64[surfaces, SURFACE_COLUMNS]
    skip : float64[surfaces, squared speeds]
        Deceleration [yd/s2] of a ball that skips and rolls along a surface, by its speed squared.
    """

    numbers: Any
    surface: Any
    relief: Any
    rows: Any
    skip: Any


class Field(NamedTuple):
    """What a place is worth.

    Attributes
    ----------
    numbers : float64[NUMBERS]
    putts : float64[planes, directions, distances, 5]
        Expected putts, then the chances of at most 1, 2, 3 and 4 putts, at squared steps of distance;
        directions evenly from straight below the hole to straight above it, one on level greens.
    planes : float64[planes, PLANE_COLUMNS]
        Slopes of the greens. A lie of LIE_GREEN + k is on plane k.
    coarse, fine : float64[lies, rows, columns]
        Value map: strokes to hole out, NaN where no ball can lie.
    """

    numbers: Any
    putts: Any
    planes: Any
    coarse: Any
    fine: Any


class Trees(NamedTuple):
    """What stands in the way.

    Attributes
    ----------
    canopy : uint8[ny, nx]
        Crown over each raster cell, plus one; 0 open sky. ``[1, 1]`` where no tree stands.
    shade : float32[my, mx]
        Greatest height of any crown in and around each wide cell, over the zero of the heights [yd].
    clear : float32[my, mx]
        How far a ball may go from anywhere in a wide cell before it is near a crown [yd]; 0 near one.
    crowns : float64[crowns, CROWN_COLUMNS]
    tracks : float32[shots, wind, wind, fractions, tilts, points, 2]
        Side and height of the flight at even shares of its way to the lowest landing height.
    """

    canopy: Any
    shade: Any
    clear: Any
    crowns: Any
    tracks: Any


class Luck(NamedTuple):
    """What one stroke draws.

    Attributes
    ----------
    mixture
        Uniform: solid or mishit.
    speed, start, tilt, lie
        Standard normal: of the strike, and of what the lie does to it.
    wind_x, wind_y
        Velocity of the wind of the moment [yd/s].
    hit, keep, turn
        Uniform: how far through a crown, what way is left after a branch, and which way it goes.
    """

    mixture: Any
    speed: Any
    start: Any
    tilt: Any
    lie: Any
    wind_x: Any
    wind_y: Any
    hit: Any
    keep: Any
    turn: Any


class Cell(NamedTuple):
    """Where a strike is in the flight tables: lower node on each axis, and the share of the way to the next.

    Attributes
    ----------
    u, wu, v, wv
        On the two axes of the wind.
    f, wf
        Share of the shot's tabled carry.
    t, wt
        Tilt of the spin axis.
    mirror
        -1 where it is read as the mirror image of a strike in wind from the left, else 1.
    """

    u: Any
    wu: Any
    v: Any
    wv: Any
    f: Any
    wf: Any
    t: Any
    wt: Any
    mirror: Any


class Landing(NamedTuple):
    """A ball that comes down.

    Attributes
    ----------
    x, y
        Where [yd].
    vx, vy, down
        Its velocity, `down` positive downwards [yd/s].
    spin
        Backspin [rad/s].
    along, side
        The way flown, along the start line and to its right [yd].
    branch
        1 if it drops from a branch.
    """

    x: Any
    y: Any
    vx: Any
    vy: Any
    down: Any
    spin: Any
    along: Any
    side: Any
    branch: Any


class Played(NamedTuple):
    """What became of one shot; every entry a number.

    Attributes
    ----------
    x, y, lie
        Where the next stroke is played; lie -1 = from the old place.
    cost
        Strokes spent, penalties included.
    value
        Value of the next place (that of the old one where it is played from there).
    holed
        Chance that the ball is in the hole instead.
    lost, lost_cost, lost_x, lost_y, lost_lie, lost_value
        Chance that the ball is not found instead, and what then follows.
    rest_x, rest_y, surface, feature, land_x, land_y
        Where the ball itself finished, and came down.
    branch
        1 if it hit a branch on the way.
    """

    x: Any
    y: Any
    lie: Any
    cost: Any
    value: Any
    holed: Any
    lost: Any
    lost_cost: Any
    lost_x: Any
    lost_y: Any
    lost_lie: Any
    lost_value: Any
    rest_x: Any
    rest_y: Any
    surface: Any
    feature: Any
    land_x: Any
    land_y: Any
    branch: Any


class Game(NamedTuple):
    """All of it; codes.py says what each column means.

    Attributes
    ----------
    ground : Ground
    field : Field
    feature : int16[ny, nx]
        Feature index of each cell, -1 where nothing was drawn.
    feature_rows : float64[features + 1, FEATURE_COLUMNS]
    lie_rows : int64[lies]
        Which unplayable-ball options are worth a look from a lie.
    strikes : float64[shots, lies, STRIKE_COLUMNS]
    flights : float32[shots, wind, wind, fractions, tilts, heights * FLIGHT_WIDE]
    trees : Trees
    coarse_plan, fine_plan : float32[lies, rows, columns, ACTION_COLUMNS]
        The action chosen at each node.
    """

    ground: Any
    field: Any
    feature: Any
    feature_rows: Any
    lie_rows: Any
    strikes: Any
    flights: Any
    trees: Any
    coarse_plan: Any
    fine_plan: Any

    @property
    def numbers(self) -> Any:
        """float64[NUMBERS], shared by the groups."""
        return self.ground.numbers
