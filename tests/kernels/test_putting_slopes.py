"""Putting on planes against balls whose path is integrated in small steps, and against the level table."""

from __future__ import annotations

import itertools
import json
import math
import os
import subprocess
import sys
from dataclasses import replace

import numpy as np
import pytest
from as_user import core_slowness, processor_s

from simulator.physics.putting import READING_SD
from simulator.player.model import Putting
from simulator.tables.putts import putt_table
from simulator.tables.slope_errors import errors_on_plane
from simulator.tables.slope_putts import putt_tables

SKILL, STIMP, SLOPES = Putting(1.6, 0.09), 10.0, (0.0, 0.01, 0.02, 0.03)
GRAVITY, RADIUS, LIMIT = 9.80665 / 0.3048, 0.0540 / 0.3048, 1.63 / 0.3048
LEVEL = (1.829 / 0.3048) ** 2 / (2 * STIMP)  # ft/s^2: a ball let go at 6 ft/s rolls one Stimpmeter reading


@pytest.fixture(scope="module")
def flat():
    return putt_table(SKILL.angle_sd_deg, SKILL.distance_sd, stimp_ft=STIMP)


@pytest.fixture(scope="module")
def tables(flat):
    return putt_tables(SKILL, STIMP, SLOPES, flat=flat)


def roll_out(feet, speed, angle, up, until_across=False, step=0.01):
    """Balls from (-feet, 0) at `angle` above the line to the hole on a plane rising along `up` [rise/run].

    Midpoint steps. Returns nearest distance to the hole (signed to the side) and speed there, or with
    `until_across` the side and speed where the line x = 0 is crossed; then x and y at rest.
    """
    n = np.broadcast(speed, angle, up[0]).size
    tilt = [5.0 / 7.0 * GRAVITY * np.broadcast_to(one, n) for one in up]
    near, at_speed, rest = np.full(n, 1e9), np.zeros(n), np.full((2, n), math.nan)
    who, ball = np.arange(n), [np.full(n, -float(feet)), np.zeros(n)]  # which roll yet; where, and how fast
    ball += [speed * np.cos(angle) * np.ones(n), speed * np.sin(angle) * np.ones(n)]
    for _ in range(int(25 / step)):
        (x, y, u, v), (down, aside) = ball, tilt
        now = np.maximum(np.sqrt(u * u + v * v), 1e-9)
        um = u + 0.5 * step * (-LEVEL * u / now - down)
        vm = v + 0.5 * step * (-LEVEL * v / now - aside)
        half = np.maximum(np.sqrt(um * um + vm * vm), 1e-9)
        du, dv = step * (-LEVEL * um / half - down), step * (-LEVEL * vm / half - aside)
        a, b = step * um, step * vm  # this step
        ahead, whole = (-x, a) if until_across else (-(x * a + y * b), a * a + b * b)
        stops = now < 1.01 * step * (LEVEL + np.sqrt(down * down + aside * aside))
        here = np.flatnonzero(~stops & (ahead > 0) & (ahead <= whole))  # those that pass in this step
        share, a_h, b_h, x_h, y_h = ahead[here] / whole[here], a[here], b[here], x[here], y[here]
        near[who[here]] = y_h + share * b_h if until_across else (a_h * y_h - b_h * x_h) / np.sqrt(whole[here])
        at_speed[who[here]] = now[here] + share * (np.hypot((u + du)[here], (v + dv)[here]) - now[here])
        rest[:, who[stops]] = x[stops], y[stops]
        ball = [x + a, y + b, u + du, v + dv]
        if stops.any():
            who, ball, tilt = who[~stops], [one[~stops] for one in ball], [one[~stops] for one in tilt]
        if not who.size:
            break
    rest[:, who] = ball[:2]
    return near, at_speed, *rest


def intended(feet, pace, up):
    """Speed and angle (arrays like `up`) to pass over the hole and stop `pace` past it: by shooting."""
    slowing = LEVEL + 5.0 / 7.0 * GRAVITY * up[0]
    wanted = np.sqrt(2 * slowing * pace)
    speed = np.sqrt(2 * slowing * (feet + pace)) * 1.02
    angle = 5.0 / 7.0 * GRAVITY * up[1] / slowing * 0.35
    for _ in range(7):
        three = np.concatenate([speed, speed + 0.01, speed]), np.concatenate([angle, angle, angle + 0.003])
        sides, ats = roll_out(feet, *three, np.tile(up, 3), True)[:2]
        (side, side_s, side_a), (at, at_s, at_a) = np.split(sides, 3), np.split(ats, 3)
        m = np.array([[side_s - side, side_a - side], [at_s - at, at_a - at]]).transpose(2, 0, 1)
        move = np.linalg.solve(m, np.stack([-side, wanted - at], axis=-1)[..., None])[..., 0] * [0.01, 0.003]
        speed, angle = speed + np.clip(move[:, 0], -0.5, 0.5), angle + np.clip(move[:, 1], -0.1, 0.1)
    return speed, angle


def putt(tables, flat, plane, phi, feet, n, seed, mirror=1.0):
    """(holed, x and y of the leave from the hole, both of n putts) with the table's pace."""
    luck, slope = np.random.default_rng(seed), tables.slopes[plane]
    errors = errors_on_plane(SKILL, flat, STIMP, slope)
    pace = tables.at(plane, phi, feet)[2]
    share_sd = math.sqrt(np.interp(phi, tables.direction_rad, errors.roll_variance))
    line_sd = math.sqrt(np.interp(math.sqrt(feet / 3), np.sqrt(flat.distance_yd), errors.line_variance))
    up = np.array([math.cos(phi), mirror * math.sin(phi)]) * slope
    # what the player would do for slopes read a little otherwise: a surface through 25 of them
    e, f = (g.ravel() for g in np.meshgrid(np.linspace(-0.4, 0.4, 5), np.linspace(-0.4, 0.4, 5)))
    speed, angle = intended(feet, pace, (up[0] + slope * e, up[1] + slope * f))
    terms = np.stack([e**i * f**j for i in range(4) for j in range(4 - i)], axis=-1)
    fit = np.linalg.lstsq(terms, np.stack([speed**2, angle], axis=-1), rcond=None)[0]
    along, across, share, line = luck.standard_normal((4, n))
    along, across = errors.reading_sd * along, errors.reading_sd * across
    meant = np.stack([along**i * across**j for i in range(4) for j in range(4 - i)], axis=-1) @ fit
    slowing = LEVEL + 5.0 / 7.0 * GRAVITY * up[0]
    square = np.maximum(meant[:, 0] + 2 * slowing * (feet + pace) * share_sd * share, 1e-3)
    near, at, x, y = roll_out(feet, np.sqrt(square), meant[:, 1] + line_sd * line, up)
    drops = (np.abs(near) < RADIUS) & (at <= LIMIT * (1 - np.minimum(near / RADIUS, 1) ** 2))
    return drops, x, y


def looked_up(tables, plane, phi, x, y, mirror=1.0):
    """Expected putts of leaves (x along the putt, y across) in the table: bilinear, numpy."""
    gap = np.hypot(x, y)
    below = -(x * math.cos(phi) + mirror * y * math.sin(phi)) / np.maximum(gap, 1e-9)
    turn = np.arccos(np.clip(below, -1, 1)) / tables.direction_rad[1]
    place = np.sqrt(gap / 3) / tables.root_step
    k, i = np.minimum(turn.astype(int), tables.direction_rad.size - 2), place.astype(int)
    u, w, e = turn - k, place - i, tables.expected[plane]
    low = (1 - w) * e[k, i] + w * e[k, i + 1]
    return (1 - u) * low + u * ((1 - w) * e[k + 1, i] + w * e[k + 1, i + 1])


@pytest.mark.parametrize(
    ("plane", "degrees", "feet"),
    [(1, 90, 10), (2, 0, 10), (2, 45, 6), (2, 90, 10), (2, 90, 20), (2, 135, 10), (2, 180, 10), (3, 0, 8),
     (3, 180, 8), (3, 90, 8), (3, 135, 5), (2, 45, 25)],
)  # fmt: skip
def test_against_integrated_paths(tables, flat, plane, degrees, feet):
    n, phi = 30_000, math.radians(degrees)
    holed, x, y = putt(tables, flat, plane, phi, feet, n, seed=degrees + feet)
    expected, chances, _ = tables.at(plane, phi, feet)
    share = float(holed.mean())
    # 3 standard errors, and 0.8 points and 0.01 strokes for small angles and the table's steps; measured:
    # at most 0.45 points and 0.004 strokes, but 1.5 and 0.012 squarely across 3 %
    assert chances[0] == pytest.approx(share, abs=3 * math.sqrt(share * (1 - share) / n) + 0.008)
    strokes = 1.0 + np.where(holed, 0.0, looked_up(tables, plane, phi, x, y))
    assert expected == pytest.approx(strokes.mean(), abs=3 * strokes.std() / math.sqrt(n) + 0.010)


@pytest.mark.parametrize("degrees", [0, 180])
def test_leaves_of_misses_agree(tables, flat, degrees):
    """Median leave of the twin's misses against the same model sampled in closed form: what the fit uses."""
    from simulator.fits.reading import straight_leaves_ft

    holed, x, y = putt(tables, flat, 3, math.radians(degrees), 10.0, 40_000, seed=3)
    alone = putt_tables(SKILL, STIMP, (0.03,), flat=flat)
    closed = straight_leaves_ft(alone, SKILL, flat, STIMP, READING_SD, up=degrees == 0)
    for share in (0.25, 0.5, 0.75):  # measured: within 3 %
        assert np.quantile(np.hypot(x, y)[~holed], share) == pytest.approx(
            np.quantile(closed, share), rel=0.05
        )


def test_left_and_right_are_alike(tables, flat):
    phi, n = math.radians(67.5), 20_000
    found = [putt(tables, flat, 2, phi, 10.0, n, seed=int(5 + side), mirror=side) for side in (1.0, -1.0)]
    share = [float(holed.mean()) for holed, _, _ in found]
    assert share[0] == pytest.approx(share[1], abs=4 * math.sqrt(0.5 / n))
    assert np.median(found[0][2]) == pytest.approx(-np.median(found[1][2]), abs=0.1)
    assert tables.at(2, phi, 10.0)[0] == tables.at(2, -phi, 10.0)[0]


def test_slope_0_is_the_level_table(tables, flat):
    for k in range(tables.direction_rad.size):
        assert np.array_equal(tables.expected[0, k], flat.expected[0])
        assert np.array_equal(tables.chances[0, k], flat.chances[0])
        assert np.array_equal(tables.pace_ft[0, k], flat.pace_ft[0])


def test_a_tiny_slope_is_nearly_level(flat):
    """Another kernel, another quadrature: they have to meet where the slope vanishes."""
    tiny = putt_tables(SKILL, STIMP, (1e-7,), flat=flat)
    gap = np.abs(tiny.expected[0] - flat.expected[0]).max(axis=0)
    assert gap[flat.distance_yd < 10.0].max() < 0.003
    assert gap.max() < 0.05  # beyond 75 ft the level table's coarser quadrature shows
    assert np.abs(tiny.chances[0] - flat.chances[0])[:, flat.distance_yd < 10.0, 0].max() < 0.003


def mean(table):
    """Mean over the directions: axis 0, ends once for the two sides."""
    weight = np.array([0.5] + [1.0] * (table.shape[0] - 2) + [0.5])
    return np.tensordot(weight / weight.sum(), table, axes=1)


def test_a_larger_slope_is_harder_and_a_slower_green_suffers_less(flat):
    slopes = (0.0, 0.0175, 0.02, 0.03, 0.04)
    near = (flat.distance_yd > 1.0) & (flat.distance_yd < 25.0)
    cost = {}
    for stimp in (8.0, 10.0, 12.0):
        tables = putt_tables(SKILL, stimp, slopes)
        means = [mean(tables.expected[p])[near] for p in range(len(slopes))]
        assert np.all(means[1] > means[0] - 0.015)
        for less, more in itertools.pairwise(means[1:]):
            assert np.all(more > less + 0.002)
        cost[stimp] = means[3] - means[0]
        if stimp <= 10.0:  # the slope behind figures that tell none: the same on average
            assert np.abs(means[1] - means[0]).max() < 0.015
    assert np.all(cost[8.0] < cost[10.0]) and np.all(cost[10.0] < cost[12.0])


def test_the_pace_is_the_best(flat):
    """Expected putts of the twin, first putt firmer or softer than the table's, are not better."""
    tables = putt_tables(SKILL, STIMP, (0.025,), flat=flat)
    for degrees, feet in ((0, 10.0), (180, 10.0)):
        phi, putts = math.radians(degrees), []
        for change in (-0.8, 0.0, 0.8):
            moved = replace(tables, pace_ft=tables.pace_ft + change)
            holed, x, y = putt(moved, flat, 0, phi, feet, 20_000, seed=11)
            putts.append(1.0 + float((looked_up(tables, 0, phi, x, y) * ~holed).mean()))
        assert putts[1] < min(putts[0], putts[2]) + 0.002  # same luck in all three


def test_where_no_ball_stops(flat):
    """Beyond the critical slope everything is finite and in order, and above the hole is where not to be."""
    for stimp in (10.0, 14.0):
        tables = putt_tables(SKILL, stimp, (0.05, 0.08, 0.15))
        assert np.all(np.isfinite(tables.expected)) and np.all(np.isfinite(tables.pace_ft))
        assert np.all(tables.expected >= 1.0) and np.all(tables.expected < 8.0)
        assert np.all(np.diff(tables.chances, axis=-1) >= -1e-9)
        assert tables.at(0, math.pi, 12.0)[0] > tables.at(0, 0.0, 12.0)[0] + 0.1


def test_wrong_slopes():
    for slope in (-0.01, math.nan):
        with pytest.raises(ValueError, match="not negative"):
            putt_tables(SKILL, STIMP, (slope,))


def test_time(tables, flat):
    """0.15 s for a plane on an idle core of usual speed (measured 0.09); twice that on a busy one."""
    start = processor_s()
    putt_tables(SKILL, STIMP, (0.015, 0.025, 0.025, 0.0), flat=flat)
    took = processor_s() - start
    assert took < 2 * 2 * 0.15 * core_slowness()


SMALL = """
import json
from simulator.physics.putting import READING_SD
from simulator.player.model import Putting
from simulator.tables import slope_putts
from simulator.tables.putts import putt_table
slope_putts.LATTICE = (0.9, 1.4, 2.5)
flat = putt_table(1.6, 0.09, distances=7)
tables = slope_putts.putt_tables(Putting(1.6, 0.09), 10.0, (0.02,), flat=flat)
print(json.dumps([tables.expected.tolist(), tables.chances.tolist()]))
"""


def test_without_the_compiler():
    found = []
    for switch in ("1", "0"):
        environment = {**os.environ, "NUMBA_DISABLE_JIT": switch}
        command = [sys.executable, "-c", SMALL]
        run = subprocess.run(command, env=environment, capture_output=True, text=True, check=True)
        found.append(json.loads(run.stdout))
    for plain, compiled in zip(*found, strict=True):
        assert np.allclose(plain, compiled, rtol=0, atol=1e-9)
