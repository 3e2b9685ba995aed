"""A slow, obvious twin of the engine: one shot, written from its definitions with numpy and scipy alone.

Nothing here is compiled and nothing is taken from the kernels. Ground speeds are metres and seconds, as
Penner's law is published; places are yards. The numbers of that law are written out again; the project's
own assumptions (scales by surface, caps) are read from where they are kept.
"""

from __future__ import annotations

import math
from typing import Any, NamedTuple

import numpy as np
from scipy.interpolate import RegularGridInterpolator

from simulator.hole.surfaces import LIE_OF, Lie, Surface
from simulator.physics.ground import GROUNDS, RESTITUTION_MOST, TILT_MOST_MPS, TILT_MOST_RAD
from simulator.physics.lies import lie_effect, lie_group
from simulator.physics.strike import start_and_curve_sd
from simulator.tables.flights import FRACTIONS, TILTS_DEG
from simulator.tables.skips import SKIP_BELOW_YDPS

YD = 0.9144  # m, exact
G = 9.80665
BALL_RADIUS_M = 0.04267 / 2  # 1.680 in across, Equipment Rules part 4
TWO_CLUB_LENGTHS_YD = 2 * 1.27  # the longest club but the putter, about 45 3/4 in (assumed)
LOST_BALL_STROKES = PENALTY_STROKES = 1  # Rules 17.1d, 18.2, 19.2
E5_STROKES = 2  # Model Local Rule E-5
OUT_OF_SAND_STROKES = 2  # Rule 19.3b
MASK = 2**64 - 1


# --- luck ---------------------------------------------------------------------------------------------


def splitmix64(seed: int, count: int) -> list[int]:
    """First outputs of SplitMix64 (Steele, Lea and Flood 2014) in Python's own integers."""
    out, state = [], seed
    for _ in range(count):
        state = (state + 0x9E3779B97F4A7C15) & MASK
        z = state
        z = ((z ^ (z >> 30)) * 0xBF58476D1CE4E5B9) & MASK
        z = ((z ^ (z >> 27)) * 0x94D049BB133111EB) & MASK
        out.append(z ^ (z >> 31))
    return out


# --- strike -------------------------------------------------------------------------------------------


class Strike(NamedTuple):
    """What leaves the club: share of the stock carry, start direction and tilt of the spin axis [rad]."""

    fraction: float
    start: float
    tilt: float
    spin_factor: float


def strike(
    shot: Any,
    lie: Lie,
    turn_per_tilt: np.ndarray,
    scale: float,
    bearing: float,
    mixture: float,
    z_speed: float,
    z_start: float,
    z_tilt: float,
    z_lie: float,
) -> Strike:
    """One strike of a shot from its definition (player/model.py): solid or mishit, then the lie.

    `turn_per_tilt` is the turn of this shot at each of FRACTIONS, shares of `stretch` times its carry; the solid
    strike's is meant.
    """
    spread = shot.spread
    group = lie_group(shot.club.kind, shot.flight in ("part", "punch"))
    effect = lie_effect(lie.name.lower().replace("_", " "), group, shot.carry_yd)
    mishit = mixture < min(spread.mishit_rate * effect.mishit_factor, 0.8)
    solid = 1.0 + spread.bias_long_pct / 100
    mean, sd, wide = solid, spread.distance_sd_pct / 100, 1.0
    if mishit:
        mean -= spread.mishit_loss_pct / 100
        sd, wide = spread.mishit_distance_sd_pct / 100, spread.mishit_direction_factor
    carry = mean + sd * effect.distance_factor * z_speed
    carry *= effect.carry_factor + effect.carry_factor_sd * z_lie
    start_sd, curve_sd = start_and_curve_sd(
        wide * effect.direction_factor * math.radians(spread.direction_sd_deg)
    )
    return Strike(
        scale * carry / shot.stretch,
        bearing + math.radians(spread.bias_right_deg) + start_sd * z_start,
        curve_sd * z_tilt / np.interp(solid * effect.carry_factor / shot.stretch, FRACTIONS, turn_per_tilt),
        effect.spin_factor,
    )


# --- flight -------------------------------------------------------------------------------------------


class Flights:
    """The flight table of one shot read by scipy, linear on every axis; wind from the right mirrored by hand,
    unless the table has both sides of it (curved shots).
    """

    def __init__(self, tables: Any, row: int, wind: tuple[float, float] = (0.0, 0.0)) -> None:
        table = tables.flights[row].astype(float)  # [wind, wind, fraction, tilt, height, 6]
        self.wind = wind  # velocity along x and y [yd/s]
        self.ring = tables.winds.ring
        axes = [tables.winds.u, tables.winds.v, FRACTIONS, np.radians(TILTS_DEG), tables.heights_yd]
        for axis, nodes in enumerate(axes):
            if nodes.size == 1:  # scipy wants two nodes
                axes[axis] = np.array([nodes[0], nodes[0] + 1.0])
                table = np.concatenate([table, table], axis=axis)
        self.axes = axes
        self.read = RegularGridInterpolator(axes, table)

    def __call__(self, start: Any, fraction: Any, tilt: Any, height: Any = 0.0) -> np.ndarray:
        """along, side, v_along, v_side, v_down, spin in the frame of the start line [rad clockwise from +y]."""
        sine, cosine = np.sin(start), np.cos(start)
        along, cross = (self.wind[0] * sine + self.wind[1] * cosine, self.wind[0] * cosine - self.wind[1] * sine)
        flip = np.where((cross < 0.0) & (self.axes[1][0] == 0.0), -1.0, 1.0)
        if self.ring:  # one wind, by the angle it blows at
            along, cross = np.hypot(along, cross), np.arctan2(cross, along)
        asked = np.broadcast_arrays(along, flip * cross, fraction, flip * np.asarray(tilt), height)
        points = [np.clip(p, nodes[0], nodes[-1]) for p, nodes in zip(asked, self.axes, strict=True)]
        stacked = np.stack(points, axis=-1)
        out = self.read(stacked).reshape(*stacked.shape[:-1], 6)
        out[..., [1, 3]] *= np.broadcast_to(flip, out.shape[:-1])[..., None]
        return out


# --- ground -------------------------------------------------------------------------------------------


def penner_bounce(surface: str, along: float, into: float, spin: float) -> tuple[float, float, float]:
    """One impact on level ground [m/s, rad/s]: Penner, Can. J. Phys. 80 (2002) 931, by its angles.

    The caps on the tilt of the contact plane and on restitution are the project's own.
    """
    ground = GROUNDS[surface]
    v, phi = math.hypot(along, into), math.atan2(along, into)
    theta = math.radians(15.4) * (min(v, TILT_MOST_MPS) / 18.6) * (phi / math.radians(44.4)) * ground.tilt_scale
    theta = min(theta, phi, TILT_MOST_RAD)
    u, n = v * math.sin(phi - theta), v * math.cos(phi - theta)
    e = 0.510 - 0.0375 * n + 0.000903 * n * n if n <= 20.0 else 0.120
    e = min(e * ground.restitution_scale, RESTITUTION_MOST)
    slip = u + BALL_RADIUS_M * spin
    if 2.0 / 7.0 * abs(slip) <= ground.friction * (1.0 + e) * n:
        u = 5.0 / 7.0 * u - 2.0 / 7.0 * BALL_RADIUS_M * spin
        spin = -u / BALL_RADIUS_M
    else:
        push = math.copysign(ground.friction * (1.0 + e) * n, slip)
        u, spin = u - push, spin - 2.5 * push / BALL_RADIUS_M
    n *= e
    return u * math.cos(theta) - n * math.sin(theta), n * math.cos(theta) + u * math.sin(theta), spin


def hop_loop_yd(surface: str, along: float, into: float, spin: float) -> tuple[float, float]:
    """(run, part of it rolled) [yd] on level ground: every hop to the last one above 0.6 m/s, then the roll.

    along, into [m/s], backspin [rad/s]. A ball that comes back runs with a negative sign. Sand takes the
    ball as soon as it would only skip (an assumption of the project).
    """
    ground = GROUNDS[surface]
    least = 0.6 if ground.skips else SKIP_BELOW_YDPS * YD
    place, sign = 0.0, 1.0
    for _ in range(2000):
        along, out, spin = penner_bounce(surface, along, into, spin)
        if out < least:
            break
        place += sign * along * 2.0 * out / G
        into = out
        if along < 0.0:
            along, spin, sign = -along, -spin, -sign
    roll = 5.0 / 7.0 * along - 2.0 / 7.0 * BALL_RADIUS_M * spin
    rolled = math.copysign(roll * roll / (2.0 * ground.rolling_friction * G), sign * roll)
    return (place + rolled) / YD, rolled / YD


def hops_down_a_plane_yd(surface: str, forward: float, down: float, spin: float, fall: float) -> float:
    """Way run [yd] on a plane that falls away by `fall` (rise over run, in the direction of play).

    forward, down [m/s] on landing, backspin [rad/s]. Every hop to the last one above 0.6 m/s, each until the
    ball meets the plane again, then rolling friction against the pull of the plane.
    """
    ground = GROUNDS[surface]
    scale = math.sqrt(1.0 + fall * fall)
    way, rise = np.array([1.0, -fall]) / scale, np.array([fall, 1.0]) / scale  # along the plane, and off it
    velocity, place = np.array([forward, -down]), 0.0
    for _ in range(2000):
        along, out, spin = penner_bounce(surface, float(velocity @ way), max(-float(velocity @ rise), 0.0), spin)
        if out < 0.6 or along <= 0.0:
            break
        velocity = along * way + out * rise
        time = 2.0 * out * scale / G
        place += velocity[0] * time
        velocity[1] -= G * time
    roll = 5.0 / 7.0 * along - 2.0 / 7.0 * BALL_RADIUS_M * spin
    return (place + roll * abs(roll) / (2.0 * G * (ground.rolling_friction - 5.0 / 7.0 * fall))) / YD


# --- value map ----------------------------------------------------------------------------------------


def bilinear(field: np.ndarray, x0: float, y0: float, step: float, x: float, y: float) -> float:
    """Reading of one lie's grid [row, column]; corners without a value are left out of the mean."""
    rows, columns = field.shape
    column = min(max((x - x0) / step, 0.0), columns - 1.0)
    row = min(max((y - y0) / step, 0.0), rows - 1.0)
    i, j = min(int(column), columns - 2), min(int(row), rows - 2)
    total = weight = 0.0
    for dj in (0, 1):
        for di in (0, 1):
            w = (1.0 - abs(column - i - di)) * (1.0 - abs(row - j - dj))
            if w > 0.0 and not math.isnan(field[j + dj, i + di]):
                total, weight = total + w * field[j + dj, i + di], weight + w
    return total / weight if weight > 0.0 else math.nan


class Ground:
    """A board as its plain parts: what lies where, and what a place is worth."""

    def __init__(self, board: Any, hole: Any) -> None:
        self.board, self.hole = board, hole
        self.pin = np.array([hole.pin.x_yd, hole.pin.y_yd])

    def cell(self, x: float, y: float) -> tuple[int, int]:
        raster = self.board.raster
        j = math.floor((y - raster.y0_yd) / raster.cell_yd + 0.5)
        i = math.floor((x - raster.x0_yd) / raster.cell_yd + 0.5)
        ny, nx = raster.surface.shape
        return min(max(j, 0), ny - 1), min(max(i, 0), nx - 1)

    def surface(self, x: float, y: float) -> Surface:
        return Surface(int(self.board.raster.surface[self.cell(x, y)]))

    def out(self, x: float, y: float) -> float:
        return math.hypot(x - self.pin[0], y - self.pin[1])

    def value(self, lie: Lie, x: float, y: float) -> float:
        """Strokes to hole out by the map (expected putts on the green)."""
        if lie is Lie.GREEN:
            putts = self.board.bag.putts
            assert not any(putts.slopes)  # the twin knows level greens only
            roots = np.sqrt(putts.distance_yd)
            return float(np.interp(math.sqrt(self.out(x, y)), roots, putts.expected[0, 0]))
        fine, coarse = self.board.nodes.fine, self.board.nodes.coarse
        field, grid = self.board.game.field.coarse, coarse
        if (
            0.0 <= (x - fine.x0_yd) / fine.step_yd < fine.columns - 1
            and 0.0 <= (y - fine.y0_yd) / fine.step_yd < fine.rows - 1
        ):
            field, grid = self.board.game.field.fine, fine
        return bilinear(field[int(lie)], grid.x0_yd, grid.y0_yd, grid.step_yd, x, y)

    # --- relief: the least total over a dense set of every place the Rules allow ---------------------

    def drop(self, x: float, y: float, banned: tuple[Surface, ...] = ()) -> float:
        """Value of a ball dropped at a place, infinite where it may not be dropped."""
        surface = self.surface(x, y)
        if surface in (Surface.WATER, Surface.DRY_PENALTY, Surface.OUT_OF_BOUNDS, *banned):
            return math.inf
        return self.value(LIE_OF[surface], x, y)

    def best_behind(self, x: float, y: float, banned: tuple[Surface, ...] = (), far: float = 250.0) -> float:
        """Back on the line from the hole through (x, y), every half yard (17.1d(2), 19.2b, 19.3b)."""
        u = np.array([x, y]) - self.pin
        u /= math.hypot(*u)
        return min(self.drop(x + u[0] * s, y + u[1] * s, banned) for s in np.arange(0.5, far, 0.5))

    def best_beside(self, x: float, y: float) -> float:
        """Anywhere within two club-lengths, not nearer the hole (17.1d(3), 19.2c): a fine lattice."""
        limit, lowest = self.out(x, y), math.inf
        steps = np.arange(-TWO_CLUB_LENGTHS_YD, TWO_CLUB_LENGTHS_YD + 1e-9, TWO_CLUB_LENGTHS_YD / 12)
        for dx in steps:
            for dy in steps:
                px, py = x + dx, y + dy
                if math.hypot(dx, dy) <= TWO_CLUB_LENGTHS_YD + 1e-9 and self.out(px, py) >= limit - 1e-9:
                    lowest = min(lowest, self.drop(px, py))
        return lowest

    def penalty_total(self, x: float, y: float, red: bool, replay: float) -> float:
        """Least strokes to come from a penalty area last crossed at (x, y), its penalty included."""
        ways = [replay, self.best_behind(x, y)]
        if red:
            ways.append(self.best_beside(x, y))
        return PENALTY_STROKES + min(ways)

    def unplayable_total(self, x: float, y: float, replay: float, in_bunker: bool) -> float:
        """Least strokes to come from a ball declared unplayable (19.2, and in a bunker 19.3)."""
        if in_bunker:
            out_of_sand = OUT_OF_SAND_STROKES + self.best_behind(x, y, (Surface.BUNKER,))
            return min(PENALTY_STROKES + replay, out_of_sand)
        return PENALTY_STROKES + min(replay, self.best_behind(x, y), self.best_beside(x, y))
