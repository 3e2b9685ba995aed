"""Bounce, run and the way into penalty areas of many balls at once."""

from __future__ import annotations

import numpy as np

from simulator.kernels import codes as c

from .reading import Array, Reading

MOST_BOUNCES, MOST_STEPS = 30, 600


class Run:
    """Balls on the ground, from the landing to rest; what is asked of it afterwards is kept in arrays."""

    def __init__(
        self, read: Reading, x: Array, y: Array, vx: Array, vy: Array, down: Array, spin: Array
    ) -> None:
        self.read, n = read, x.size
        self.x, self.y = x.copy(), y.copy()
        self.entry_x, self.entry_y = x.copy(), y.copy()
        self.entered = np.zeros(n, bool)
        self.rolled, self.roll = np.zeros(n), np.zeros(n)
        self.head_x, self.head_y = np.zeros(n), np.ones(n)
        self._hop(vx, vy, down, spin)
        self._roll()

    def _bounce(self, code: Array, tangent: Array, into: Array, spin: Array) -> tuple[Array, Array, Array]:
        """Penner's bounce (Can. J. Phys. 80, 2002): the contact plane tips back, then grip or slide."""
        n, rows = self.read.numbers, self.read.rows
        steep = np.arctan2(tangent, into)
        speed = np.minimum(np.hypot(tangent, into), n[c.BOUNCE_TIP_SPEED])
        tip = n[c.BOUNCE_TILT] * speed * steep * rows[code, c.SURFACE_TILT]
        tip = np.minimum(tip, np.minimum(steep, n[c.BOUNCE_TIP_MOST]))
        sin_tip, cos_tip = np.sin(tip), np.cos(tip)
        along, normal = tangent * cos_tip - into * sin_tip, into * cos_tip + tangent * sin_tip
        elastic = n[c.BOUNCE_E0] + normal * (n[c.BOUNCE_E1] + normal * n[c.BOUNCE_E2])
        elastic = np.where(normal <= n[c.BOUNCE_N_CAP], elastic, n[c.BOUNCE_E_FLOOR])
        elastic = np.minimum(elastic * rows[code, c.SURFACE_RESTITUTION], n[c.BOUNCE_E_MOST])
        radius = n[c.BALL_RADIUS]
        slip = along + radius * spin
        grip = rows[code, c.SURFACE_FRICTION] * (1.0 + elastic) * normal
        rolls = 2.0 / 7.0 * np.abs(slip) <= grip
        push = np.copysign(grip, slip)
        after = np.where(rolls, 5.0 / 7.0 * along - 2.0 / 7.0 * radius * spin, along - push)
        spin = np.where(rolls, -after / radius, spin - 2.5 * push / radius)
        back = elastic * normal
        return after * cos_tip - back * sin_tip, back * cos_tip + after * sin_tip, spin

    def _hop(self, vx: Array, vy: Array, down: Array, spin: Array) -> None:
        read, n = self.read, self.read.numbers
        at = np.arange(self.x.size)
        cell = read.cell(self.x, self.y)
        inside = read.penalty[cell]
        for hop in range(MOST_BOUNCES):
            if not at.size:
                return
            dry = ~read.wet[cell]
            at, vx, vy, down, spin = at[dry], vx[dry], vy[dry], down[dry], spin[dry]
            inside, cell = inside[dry], (cell[0][dry], cell[1][dry])
            if read.level:
                nx, ny, nz, into = 0.0, 0.0, 1.0, down
                tx, ty, tz = vx, vy, 0.0
            else:
                grad_x, grad_y = read.grad_x[cell].astype(float), read.grad_y[cell].astype(float)
                nz = 1.0 / np.sqrt(1.0 + grad_x * grad_x + grad_y * grad_y)
                nx, ny = -grad_x * nz, -grad_y * nz
                into = down * nz - vx * nx - vy * ny
                tx, ty, tz = vx + into * nx, vy + into * ny, -down + into * nz
            tangent = np.sqrt(tx * tx + ty * ty + tz * tz)
            scale = 1.0 / np.maximum(tangent, 1e-9)
            head_x, head_y, head_z = tx * scale, ty * scale, tz * scale
            along, out, spin = self._bounce(read.surface[cell], tangent, np.maximum(into, 0.0), spin)
            stays = (out < n[c.BOUNCE_LEAST]) | ((out < n[c.BOUNCE_STOP]) & (spin <= 0.0))
            stays |= hop == MOST_BOUNCES - 1
            done = at[stays]
            self.roll[done] = (5.0 / 7.0 * along - 2.0 / 7.0 * n[c.BALL_RADIUS] * spin)[stays]
            self.head_x[done], self.head_y[done] = head_x[stays], head_y[stays]
            vx, vy, vz = along * head_x + out * nx, along * head_y + out * ny, along * head_z + out * nz
            time = 2.0 * out / (n[c.GRAVITY] * nz)
            go = ~stays
            at, vx, vy, spin, inside = at[go], vx[go], vy[go], spin[go], inside[go]
            down = (n[c.GRAVITY] * time - vz)[go]
            old_x, old_y = self.x[at], self.y[at]
            self.x[at], self.y[at] = old_x + vx * time[go], old_y + vy * time[go]
            spin = np.where(along[go] < 0.0, -spin, spin)  # a ball that came back: its way is ahead now
            cell = read.cell(self.x[at], self.y[at])
            now = read.penalty[cell]
            new = at[now & ~inside]
            if new.size:
                before = (now & ~inside).nonzero()[0]
                self.entry_x[new], self.entry_y[new] = last_outside(
                    read, self.x[new], self.y[new], old_x[before], old_y[before]
                )
                self.entered[new] = True
            inside = now

    def _roll(self) -> None:
        """Skips and roll: constant deceleration within each step of one raster cell."""
        read, n, skip = self.read, self.read.numbers, self.read.game.ground.skip
        step, pull = n[c.RASTER_CELL], n[c.ROLL_SLOPE] * n[c.GRAVITY]
        back = self.roll < 0.0
        turn = np.where(back, -1.0, 1.0)
        flat = np.hypot(self.head_x, self.head_y)
        turn /= np.where(flat > 1e-9, flat, 1.0)
        self.head_x *= turn
        self.head_y *= turn
        squared = self.roll * self.roll
        at = np.flatnonzero(squared >= 1e-12)
        squared, x, y = squared[at], self.x[at], self.y[at]
        flat = squared  # what it would be on the level: it tells how high the ball still skips
        head_x, head_y, rolled = self.head_x[at], self.head_y[at], np.zeros(at.size)
        per_step = np.where(back[at], 0.0, 1.0 / n[c.SKIP_STEP])  # backspin rolls back without the skips
        cell = read.cell(x, y)
        inside = read.penalty[cell]
        most = skip.shape[1] - 1
        for _ in range(MOST_STEPS):
            if not at.size:
                return
            slow = skip[read.surface[cell], np.minimum((flat * per_step).astype(np.intp), most)]
            flat = np.maximum(flat - 2.0 * slow * step, 0.0)
            if not read.level:
                grad_x, grad_y = read.grad_x[cell].astype(float), read.grad_y[cell].astype(float)
                slow = slow + pull * (grad_x * head_x + grad_y * head_y)
            left = squared - 2.0 * slow * step
            flat = np.minimum(flat, left)
            stops = left <= 0.0
            length = np.where(stops, squared / np.where(stops, 2.0 * slow, 1.0), step)
            old_x, old_y = x, y
            x, y, rolled = x + head_x * length, y + head_y * length, rolled + length
            if not read.level:
                total = np.where(stops, 1.0, squared + left)
                half = np.clip(-pull * (grad_y * head_x - grad_x * head_y) * length / total, -0.25, 0.25)
                half = np.where(stops, 0.0, half)
                per = 1.0 / (1.0 + half * half)
                cos_bend, sin_bend = (1.0 - half * half) * per, 2.0 * half * per
                head_x, head_y = head_x * cos_bend - head_y * sin_bend, head_y * cos_bend + head_x * sin_bend
            cell = read.cell(x, y)
            now = read.penalty[cell]
            new = now & ~inside
            if new.any():
                self.entry_x[at[new]], self.entry_y[at[new]] = old_x[new], old_y[new]
                self.entered[at[new]] = True
            ends = stops | read.wet[cell] | (left < 1e-12)
            if ends.any():
                done, go = at[ends], ~ends
                self.x[done], self.y[done], self.rolled[done] = x[ends], y[ends], rolled[ends]
                self.head_x[done], self.head_y[done] = head_x[ends], head_y[ends]
                at, x, y, rolled, squared, now = at[go], x[go], y[go], rolled[go], left[go], now[go]
                head_x, head_y, per_step, flat = head_x[go], head_y[go], per_step[go], flat[go]
                cell = cell[0][go], cell[1][go]
            else:
                squared = left
            inside = now
        self.x[at], self.y[at] = x, y


def pace(read: Reading, x: Array, y: Array, bearing: Array, way: Array) -> Array:
    """How far putts roll on the green they are tabled on that are to roll so far along a bearing here."""
    n, skip = read.numbers, read.game.ground.skip
    step, squared = n[c.RASTER_CELL], np.zeros(x.size)
    head_x, head_y = np.sin(bearing), np.cos(bearing)
    for k in range(int(way.max() / step) + 1):
        length = np.clip(way - k * step, 0.0, step)
        on = k * step + 0.5 * length
        cell = read.cell(x + on * head_x, y + on * head_y)
        slow = skip[read.surface[cell], 0]
        if not read.level:
            rises = read.grad_x[cell].astype(float) * head_x + read.grad_y[cell].astype(float) * head_y
            slow = slow + n[c.ROLL_SLOPE] * n[c.GRAVITY] * rises
        squared += 2.0 * slow * length
    return squared / (2.0 * n[c.PUTT_SLOWS])


def last_outside(read: Reading, x: Array, y: Array, back_x: Array, back_y: Array) -> tuple[Array, Array]:
    """Last place outside a penalty area on the straight way from (back) outside to (x, y) inside."""
    dx, dy = back_x - x, back_y - y
    length = np.hypot(dx, dy)
    step = read.numbers[c.RASTER_CELL]
    k = np.arange(1, int(np.max(length, initial=0.0) / step) + 2)
    way = k * step
    share = np.minimum(way / np.maximum(length, 1e-12)[:, None], 1.0)
    px, py = x[:, None] + dx[:, None] * share, y[:, None] + dy[:, None] * share
    outside = ~read.penalty[read.cell(px, py)] | (way > length[:, None])
    first = np.arange(x.size), outside.argmax(axis=1)
    return px[first], py[first]


def flight_entry(
    read: Reading, x: Array, y: Array, bearing: Array, along: Array, side: Array, land_x: Array, land_y: Array
) -> tuple[Array, Array]:
    """Last place outside a penalty area under flights that came down inside one."""
    step = 2.0 * read.numbers[c.RASTER_CELL]
    steps = np.maximum(along / step, 0.0).astype(np.intp)
    k = np.arange(0, int(steps.max(initial=0)) + 1)
    share = 1.0 - k * step / np.maximum(along, 1e-9)[:, None]
    sin_b, cos_b = np.sin(bearing)[:, None], np.cos(bearing)[:, None]
    a, s = along[:, None] * share, side[:, None] * share * share
    px, py = x[:, None] + a * sin_b + s * cos_b, y[:, None] + a * cos_b - s * sin_b
    px[:, 0], py[:, 0] = land_x, land_y
    outside = ~read.penalty[read.cell(px, py)] & (k <= steps[:, None]) & (k > 0)
    found = outside.any(axis=1)
    row, first = np.arange(x.size), outside.argmax(axis=1)
    entry_x, entry_y = x.copy(), y.copy()
    r, f = row[found], first[found]
    entry_x[r], entry_y[r] = last_outside(read, px[r, f - 1], py[r, f - 1], px[r, f], py[r, f])
    return entry_x, entry_y
