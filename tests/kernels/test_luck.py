"""Luck: published outputs, uniformity, independence, and error bars that mean what they say."""

import itertools

import numba
import numpy as np
import pytest
from from_python import from_python
from naive import splitmix64
from scipy import special, stats
from scipy.stats import qmc

from simulator.kernels import codes as c
from simulator.kernels import volley
from simulator.kernels.luck import mix, normals, seed_key, sequence_key, stroke_key, turned, uniform
from simulator.kernels.sequence import draw_strike, luck_of, turn_normal
from simulator.tables import luck as prepared

mix, normals, seed_key, sequence_key, stroke_key, turned, uniform, draw_strike, turn_normal, luck_of = map(
    from_python,
    (mix, normals, seed_key, sequence_key, stroke_key, turned, uniform, draw_strike, turn_normal, luck_of),
)

SLOTS = (
    c.SLOT_MIXTURE, c.SLOT_SPEED, c.SLOT_START, c.SLOT_TILT, c.SLOT_LIE, c.SLOT_TREE_HIT,
    c.SLOT_TREE_REST, c.SLOT_GUST, c.SLOT_SWING, c.SLOT_PUTT, c.SLOT_FOUND, c.SLOT_HOLED, c.SLOT_TREE_TURN,
)  # fmt: skip


@numba.njit
def _uniforms(seed, sequences, stroke, slot, out):
    root = seed_key(seed)
    for k in range(sequences):
        out[k] = uniform(stroke_key(sequence_key(root, k), stroke), slot)


def uniforms(seed, sequences, stroke=0, slot=0):
    out = np.empty(sequences)
    _uniforms(np.uint64(seed), sequences, stroke, slot, out)
    return out


def test_splitmix64_reference_outputs():
    # First outputs for seed 1234567, as published with several public implementations (from memory).
    known = [
        6457827717110365317, 3203168211198807973, 9817491932198370423,
        4593380528125082431, 16408922859458223821,
    ]  # fmt: skip
    assert splitmix64(1234567, 5) == known
    golden = 0x9E3779B97F4A7C15
    with np.errstate(over="ignore"):
        mine = [int(mix(np.uint64((1234567 + (k + 1) * golden) % 2**64))) for k in range(5)]
    assert mine == known


def test_every_slot_has_a_number_of_its_own():
    assert sorted(SLOTS) == list(range(len(SLOTS)))


def test_normal_quantile_against_scipy():
    p = np.concatenate(
        [np.logspace(-300, -1, 3000), np.linspace(0.001, 0.999, 4001), 1 - np.logspace(-15, -1, 500)]
    )
    mine = p.copy()
    normals(mine, np.uint64(0), p.size)
    # scipy's ndtri (Cephes) is itself good to a few 1e-15; away from the zero at 1/2 errors are relative
    assert np.abs(mine - special.ndtri(p)).max() < 1e-13 * np.abs(mine).max()
    away = np.abs(p - 0.5) > 1e-3
    assert np.abs(mine[away] / special.ndtri(p[away]) - 1).max() < 1e-13


def test_quantiles_do_not_depend_on_what_stands_beside_them():
    # alone as among others, and what is not asked for stays
    p = np.random.default_rng(4).uniform(size=70)
    among = p.copy()
    normals(among, np.uint64(5), 60)
    assert (among[:5] == p[:5]).all() and (among[65:] == p[65:]).all()
    for k in range(5, 65):
        alone = p[k : k + 1].copy()
        normals(alone, np.uint64(0), 1)
        assert alone[0] == among[k]


def test_a_strike_draws_the_quantiles_of_its_slots():
    room, keys = np.full(volley.ROOM, np.nan), [np.uint64(stroke_key(seed_key(np.uint64(5)), k)) for k in range(9)]
    turn = np.uint64(2**63)
    for ball, key in enumerate(keys):
        draw_strike(room, ball, key, turn)
    turn_normal(room, len(keys))
    for ball, key in enumerate(keys):
        luck = luck_of(room, ball, key, turn, 3.0, 4.0)
        assert (luck.mixture, luck.hit) == (turned(key, c.SLOT_MIXTURE, turn), turned(key, c.SLOT_TREE_HIT, turn))
        assert (luck.wind_x, luck.wind_y) == (3.0, 4.0)
        slots = (c.SLOT_SPEED, c.SLOT_START, c.SLOT_TILT, c.SLOT_LIE)
        known = special.ndtri([turned(key, slot, turn) for slot in slots])
        assert (luck.speed, luck.start, luck.tilt, luck.lie) == pytest.approx(known, abs=1e-13)


@pytest.mark.parametrize("parts", [2, 3, 7])
def test_a_turned_number_is_so_far_on_round_the_circle(parts):
    for k in range(200):
        key = np.uint64(stroke_key(sequence_key(seed_key(np.uint64(5)), k), 1))
        own = uniform(key, 4)
        for part in range(parts):
            on = turned(key, 4, np.uint64(part * 2**64 // parts))
            assert on == pytest.approx((own + part / parts) % 1.0, abs=1e-15)


@pytest.mark.parametrize("slot", SLOTS)
def test_uniform(slot):
    # One fixed seed, so the test cannot flicker; a p-value below 1e-3 has chance 1.3 % over thirteen slots.
    u = uniforms(11, 100_000, slot=slot)
    assert u.min() > 0.0 and u.max() < 1.0
    assert stats.kstest(u, "uniform").pvalue > 1e-3
    assert stats.chisquare(np.bincount((u * 256).astype(int), minlength=256)).pvalue > 1e-3


def test_slots_strokes_and_sequences_are_independent():
    n = 100_000
    columns = [uniforms(3, n, stroke, slot) for stroke in range(3) for slot in SLOTS]
    columns += [
        np.roll(columns[0], 1),
        np.roll(columns[0], 2),
    ]  # the sequence before, and the one before that
    columns += [uniforms(seed, n) for seed in (0, 1, 2, 4, 5)]  # the seeds next door
    r = np.corrcoef(columns)[np.triu_indices(len(columns), 1)]
    # r sqrt(n) is standard normal; 903 pairs exceed 4.5 with chance 0.6 %
    assert np.abs(r).max() * np.sqrt(n) < 4.5
    # pairs of numbers, not only their correlation: 16 x 16 boxes
    for a, b in itertools.combinations((0, 1, 5, 12, 36), 2):
        boxes = (columns[a] * 16).astype(int) * 16 + (columns[b] * 16).astype(int)
        assert stats.chisquare(np.bincount(boxes, minlength=256)).pvalue > 1e-4


def test_mean_of_seeds_varies_as_it_must():
    # Var(mean) = s^2/n: seeds that shared keys would make this too small (or, shared unevenly, too large).
    n, seeds = 2000, 200
    means = np.array([uniforms(seed, n).mean() for seed in range(seeds)])
    statistic = (seeds - 1) * means.var(ddof=1) / ((1.0 / 12.0) / n)
    low, high = stats.chi2.ppf([0.0005, 0.9995], seeds - 1)
    assert low < statistic < high
    assert stats.kstest((means - 0.5) / np.sqrt(1.0 / 12.0 / n), "norm").pvalue > 1e-3


def test_no_two_seeds_share_a_key():
    draws = np.concatenate([uniforms(seed, 500) for seed in range(400)])
    # 200,000 numbers of 53 bits: two alike by accident with chance 2e-6
    assert np.unique(draws).size == draws.size


def test_points_are_scipys_sobol_sequence():
    points = prepared._points()
    again = qmc.Sobol(points.shape[1], scramble=False, bits=32).random(len(points))
    assert np.array_equal(points, np.round(again * 2.0**32).astype(np.uint32))


def test_scrambles_are_unbiased_and_even():
    sets = prepared.strike_sets(1, 400, 64)
    u = np.concatenate([sets[..., :1], special.ndtr(sets[..., 1:5]), sets[..., 5:] + 0.5], axis=-1)
    # Every point of a random digital shift is uniform: the means of 400 sets scatter round 1/2 ...
    means = u.mean(axis=1)
    t = (means.mean(axis=0) - 0.5) / (means.std(axis=0, ddof=1) / np.sqrt(len(means)))
    assert np.abs(t).max() < 4.0
    # ... far more tightly than 64 independent numbers would (variance 1/12/64),
    assert (means.var(axis=0) < 0.05 / 12 / 64).all()
    # and each set has one point in each 64th of each axis: the sequence is a (t, m, s) net in every axis.
    for axis in range(u.shape[-1]):
        assert (np.sort((u[0, :, axis] * 64).astype(int)) == np.arange(64)).all()


def test_a_smooth_mean_over_scrambles_is_unbiased():
    # E exp(z/2) = exp(1/8) for a standard normal z, through columns 1 to 4.
    sets = prepared.strike_sets(7, 200, 128)
    means = np.exp(sets[..., 1:5] / 2).mean(axis=1)
    t = (means.mean(axis=0) - np.exp(0.125)) / (means.std(axis=0, ddof=1) / np.sqrt(len(means)))
    assert np.abs(t).max() < 4.0
