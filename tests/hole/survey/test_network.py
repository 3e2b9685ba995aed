"""The adjustment against published surveying and against plain algebra."""

import math

import numpy as np
import pytest

from simulator.hole.survey.network import Network, Reading, adjust, jacobian
from simulator.hole.survey.rough import angle_between
from simulator.hole.survey.sampling import sampled
from simulator.hole.survey.slips import adjust_without_slips


def distance(a, b, value, sd=1.0):
    return Reading("distance", a, b, value, sd, f"{a}-{b}")


GHILANI = {"A": (865.40, 4527.15), "B": (2432.55, 2047.25), "C": (2865.22, 27.15)}


def test_textbook_trilateration():
    """C. Ghilani, Adjustment Computations, example 14.2: three distances to station U from three controls.

    Control stations, distances and the rough place are the book's (as reprinted in its course material); the
    adjusted place, 6861.32 and 3727.82 ft, is from memory and agrees with the iteration written out below.
    """
    readings = (distance("A", "U", 6049.00), distance("B", "U", 4736.83), distance("C", "U", 5446.49))
    found = adjust(Network(readings, GHILANI), {**GHILANI, "U": (6861.325, 3727.596)})
    assert found.places["U"] == pytest.approx((6861.32, 3727.82), abs=0.006)
    # Gauss-Newton by hand
    u = np.array([6861.325, 3727.596])
    control = np.array(list(GHILANI.values()))
    for _ in range(6):
        away = u - control
        length = np.hypot(*away.T)
        rows = away / length[:, None]
        u = u + np.linalg.lstsq(rows, np.array([6049.00, 4736.83, 5446.49]) - length, rcond=None)[0]
    assert found.places["U"] == pytest.approx(tuple(u), abs=1e-4)
    assert found.covariance == pytest.approx(np.linalg.inv(rows.T @ rows), rel=1e-5)
    # redundancy numbers of an adjustment sum to its degrees of freedom: 3 readings, 2 unknowns
    assert found.redundancy.sum() == pytest.approx(1.0, abs=1e-9)


def test_two_ranges_and_the_gap_are_the_law_of_cosines():
    rng = np.random.default_rng(1)
    for _ in range(50):
        r1, r2 = rng.uniform(50, 300, 2)
        gap = rng.uniform(abs(r1 - r2) + 1, r1 + r2 - 1)
        readings = (distance("tee", "p", r1), distance("tee", "q", r2), distance("p", "q", gap))
        turn = angle_between(r1, r2, gap)
        start = {"tee": (0.0, 0.0), "p": (0.0, r1), "q": (r2 * math.sin(turn) * 0.97 + 0.5, r2 * math.cos(turn))}
        found = adjust(Network(readings, {"tee": (0.0, 0.0)}, "p"), start)
        x, y = found.places["q"]
        cosine = (r1**2 + r2**2 - gap**2) / (2 * r1 * r2)
        assert math.cos(turn) == pytest.approx(cosine, abs=1e-12)
        assert math.cos(math.atan2(x, y)) == pytest.approx(cosine, abs=1e-9)


def test_jacobian_against_differences():
    places = {"a": (0.0, 0.0), "b": (30.0, 200.0), "c": (-20.0, 150.0)}
    readings = (
        distance("b", "c", 71.0, 0.7),
        Reading("direction", "a", "b", 0.15, 0.05, "x"),
        Reading("offset", "c", "c", -18.0, 5.0),
        distance("a", "c", 151.0),
        distance("a", "b", 202.0),
    )
    found = adjust(Network(readings, {"a": (0.0, 0.0)}), places)
    for reading in readings:
        row = jacobian(found, reading)
        for (point, axis), column in found.columns.items():
            def scaled(step, reading=reading, point=point, axis=axis):
                at = dict(found.places)
                moved = list(at[point])
                moved[axis] += step
                at[point] = tuple(moved)
                (ax, ay), (bx, by) = at[reading.a], at[reading.b]
                value = {"distance": math.hypot(bx - ax, by - ay), "direction": math.atan2(bx - ax, by - ay),
                         "offset": ax}[reading.kind]
                return (reading.value - value) / reading.sd
            slope = (scaled(1e-4) - scaled(-1e-4)) / 2e-4
            assert row[column] == pytest.approx(slope, rel=1e-5, abs=1e-7)


def test_a_slip_is_found_and_left_out():
    truth = {"tee": (0.0, 0.0), "p": (0.0, 220.0), "q": (25.0, 205.0), "s": (-15.0, 120.0), "t": (20.0, 130.0)}
    pairs = [("tee", k) for k in "pqst"] + [("s", k) for k in "pqt"] + [("t", k) for k in "pq"] + [("p", "q")]
    readings = [distance(a, b, math.dist(truth[a], truth[b]), 0.6) for a, b in pairs]
    readings[1] = distance("tee", "q", readings[1].value + 9.0, 0.6)
    found = adjust_without_slips(Network(tuple(readings), {"tee": (0.0, 0.0)}, "p"), truth)
    (slip,) = found.dropped
    assert slip.reading.words == "tee-q"
    assert slip.off == pytest.approx(9.0, abs=0.3)
    assert found.places["q"] == pytest.approx(truth["q"], abs=1e-3)


def test_sampling_a_straight_network_is_its_covariance():
    """Far from any bend of the circles the drawn places have the linear covariance."""
    truth = {"a": (0.0, 0.0), "b": (200.0, 0.0), "u": (100.0, 120.0)}
    fixed = {k: truth[k] for k in "ab"}
    readings = tuple(distance(k, "u", math.dist(truth[k], truth["u"]), 0.5) for k in "ab")
    found = adjust(Network(readings, fixed), truth)
    draws = sampled(found, 2000, 3)["u"]
    # a standard deviation from n draws is good to sd / sqrt(2 n)
    assert draws.std(axis=0) == pytest.approx([found.sd("u", 0), found.sd("u", 1)], rel=4 / 4000**0.5)
