"""Whole shots with drawn luck against the slow twin: strike, flight, every hop, roll, map reading."""

import math

import numpy as np
import pytest
from naive import YD, Flights, Ground, hop_loop_yd, strike
from small_games import bag_of, shot, straight_hole, tell, with_fields, with_numbers

from simulator.hole.surfaces import LIE_OF, Lie
from simulator.kernels import codes as c
from simulator.physics.ground import GROUNDS
from simulator.tables.flights import turn_per_tilt
from simulator.tables.game import make_board

N = 120


@pytest.fixture(scope="module", params=["isolde", "barnaby"])
def world(request):
    bag = bag_of(request.param)
    hole = straight_hole(420, more="fairway = [{ from_yd = 100, to_yd = 330, left_yd = -15, right_yd = 15 }]")
    board = with_fields(
        make_board(hole, bag, coarse_yd=10, fine_yd=5),
        lambda lie, x, y: 2.4 + 0.05 * lie + 0.006 * np.hypot(x, 420 - y),
    )
    return board, Ground(board, hole), turn_per_tilt(bag.flights.still)


def drawn(rng):
    return (rng.uniform(), *rng.normal(size=4))


def played_by_hand(world, x, y, lie, row, bearing, scale, luck):
    """(landing, surface of the run, run) of the twin; the run on the surface it lands on."""
    board, ground, turn = world
    bag = board.bag
    hit = strike(bag.shots.shots[row], lie, turn[row], scale, bearing, *luck)
    along, side, v_along, v_side, v_down, spin = Flights(bag.flights, row)(hit.start, hit.fraction, hit.tilt)
    s, k = math.sin(hit.start), math.cos(hit.start)
    landing = np.array([x + along * s + side * k, y + along * k - side * s])
    heading = np.array([v_along * s + v_side * k, v_along * k - v_side * s])
    level = math.hypot(*heading)
    surface = ground.surface(*landing)
    run, rolled = hop_loop_yd(surface.name, level * YD, v_down * YD, spin * hit.spin_factor)
    return landing, surface, landing + run * heading / level, rolled


def test_landing_and_finish(world):
    board, ground, _ = world
    rng = np.random.default_rng(2)
    lies = (Lie.TEE, Lie.FAIRWAY, Lie.ROUGH, Lie.HEAVY_ROUGH, Lie.BUNKER, Lie.TREES)
    gaps, whole = [], 0
    for _ in range(N):
        lie = lies[rng.integers(len(lies))]
        rows = board.allowed(lie)
        part = rng.uniform() < 0.3
        held = range(board.bag.shots.first_part, board.bag.shots.first_putt)  # part swings and punches
        row = int(rng.choice(held)) if part else int(rng.choice(rows))
        scale = float(rng.uniform(0.78, 1.0)) if part else 1.0
        x, y, bearing, luck = rng.uniform(-20, 20), rng.uniform(0, 150), rng.uniform(-0.4, 0.4), drawn(rng)
        mine = shot(board, x, y, lie, row, math.degrees(bearing), scale=scale, luck=luck, replay=4.0)
        landing, surface, rest, _ = played_by_hand(world, x, y, lie, row, bearing, scale, luck)
        # the table is float32: 1e-5 of 250 yd
        assert (mine["land_x"], mine["land_y"]) == pytest.approx(tuple(landing), abs=5e-3)
        if ground.surface(*rest) is surface and ground.surface(mine["rest_x"], mine["rest_y"]) is surface:
            whole += 1
            gaps.append(math.dist(rest, (mine["rest_x"], mine["rest_y"])))
        # what it is worth is the map at the place, in the lie of the place
        here = ground.surface(mine["rest_x"], mine["rest_y"])
        assert int(mine["surface"]) == here and mine["cost"] == 1.0
        value = ground.value(LIE_OF[here], mine["rest_x"], mine["rest_y"])
        assert mine["value"] == pytest.approx(value, abs=2e-3 if here.name == "GREEN" else 1e-6)
        assert mine["lie"] == LIE_OF[here]
    gaps = np.array(gaps)
    carry = board.bag.shots.shots[0].club.carry_yd
    tell(f"{carry:.0f} yd driver: run gap rms {np.sqrt((gaps**2).mean()):.2f} yd "
          f"worst {gaps.max():.2f} yd of {whole} shots")  # fmt: skip
    assert whole > N / 2
    # as in test_bounce_and_run: the skips played as one run
    assert np.sqrt((gaps**2).mean()) <= 0.6 and gaps.max() <= 1.8


def test_strikes_have_the_spreads_of_the_bag(world):
    # 4,000 drawn strikes of a club from its definition: mixture mean and sd of carry and of direction.
    board, _, _ = world
    bag = board.bag
    row = next(k for k, one in enumerate(bag.shots.shots) if one.club.kind.endswith("iron"))  # clean off fairway
    club = bag.shots.shots[row].club
    rng = np.random.default_rng(8)
    n = 4000
    land = np.array([
        (out["land_x"], out["land_y"])
        for out in (shot(board, 0, 0, Lie.FAIRWAY, row, luck=drawn(rng)) for _ in range(n))
    ])  # fmt: skip
    p, f = club.mishit_rate, club.mishit_direction_factor
    mean = 1 + club.bias_long_pct / 100 - p * club.mishit_loss_pct / 100
    solid, mishit = club.distance_sd_pct / 100, club.mishit_distance_sd_pct / 100
    variance = (1 - p) * solid**2 + p * mishit**2 + p * (1 - p) * (club.mishit_loss_pct / 100) ** 2
    carry = np.hypot(*land.T) / club.carry_yd
    # curved balls carry a little less (up to 0.5 % on the mean at these spreads)
    assert carry.mean() == pytest.approx(mean, abs=4 * math.sqrt(variance / n) + 0.006)
    assert carry.std() == pytest.approx(math.sqrt(variance), rel=0.08)
    angle = np.degrees(np.arctan2(*land.T))
    wide = club.direction_sd_deg * math.sqrt(1 - p + p * f * f)
    assert angle.mean() == pytest.approx(club.bias_right_deg, abs=4 * wide / math.sqrt(n) + 0.02)
    assert angle.std() == pytest.approx(wide, rel=0.08)


def test_mirrored_luck_mirrors_the_shot(world):
    board, _, _ = world
    row = next(k for k in board.allowed(Lie.FAIRWAY) if board.bag.shots.shots[k].club.bias_right_deg == 0.0)
    mirrored = with_numbers(board, {c.SIDE: -1.0})
    rng = np.random.default_rng(5)
    for _ in range(40):
        bearing, luck = rng.uniform(-20, 20), drawn(rng)
        a = shot(board, 3.0, 20.0, Lie.FAIRWAY, row, bearing, luck=luck)
        b = shot(mirrored, -3.0, 20.0, Lie.FAIRWAY, row, -bearing, luck=luck)
        assert a["rest_x"] == pytest.approx(-b["rest_x"], abs=1e-9)
        assert a["rest_y"] == pytest.approx(b["rest_y"], abs=1e-9)


def test_chance_to_hole_out_against_balls_that_really_roll_over_the_hole(world):
    # A chip of 15 yd, from the side of the green: the engine adds up a chance per shot; the twin rolls every
    # ball to its rest and asks whether its path crossed the hole slowly enough: within
    # R sqrt(1 - v / 1.63 m/s) of its middle (Penner 2002, from memory).
    board, ground, _ = world
    plain = with_numbers(board, {c.HOLE_OUT_SCALE: 1.0})
    bag = board.bag
    x, y, lie = 15.0, 420.0, Lie.FAIRWAY
    parts = range(bag.shots.first_part, bag.shots.first_punch)
    row = next(k for k in parts if bag.shots.shots[k].carry_yd > 10.0)
    rng = np.random.default_rng(6)
    n = 20_000
    chance, counted = np.empty(n), np.empty(n)
    slow = GROUNDS["GREEN"].rolling_friction * 9.80665 / YD
    for k in range(n):
        luck = drawn(rng)
        mine = shot(plain, x, y, lie, row, -90.0, scale=0.95, luck=luck)
        chance[k] = mine["holed"]
        counted[k] = 0.0
        rest = np.array([mine["rest_x"], mine["rest_y"]])
        landing = np.array([mine["land_x"], mine["land_y"]])
        u = (rest - landing) / max(math.dist(rest, landing), 1e-9)
        past = (rest - ground.pin) @ u
        wide = abs((rest - ground.pin) @ (u[1], -u[0]))
        if 0.0 < past < math.dist(rest, landing):
            v = math.sqrt(2.0 * slow * past) * YD
            counted[k] = v < 1.63 and wide < 0.054 / YD * math.sqrt(1.0 - v / 1.63)
    assert ground.surface(0.0, 420.0).name == "GREEN"
    error = math.hypot(counted.std() / math.sqrt(n), chance.std() / math.sqrt(n))
    tell(f"holed {chance.mean():.4f} by the strip, {counted.mean():.4f} counted, +- {error:.4f}")
    assert chance.mean() == pytest.approx(counted.mean(), abs=3.5 * error)
    assert counted.sum() > 25  # enough to compare; the weaker player holes 38
