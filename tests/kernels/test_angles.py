"""Angles without the mathematics library, against numpy's."""

import math

import numpy as np
import pytest
from from_python import from_python

from simulator.kernels import angles

quick_sine, quick_cosine, quick_angle, quick_arccosine, line_to, turned_line = map(
    from_python,
    (
        angles.quick_sine, angles.quick_cosine, angles.quick_angle, angles.quick_arccosine, angles.line_to,
        angles.turned_line,
    ),
)
SMALL = np.linspace(-1.0, 1.0, 4001)


@pytest.mark.parametrize(("mine", "known", "within"), [(quick_sine, np.sin, 3e-8), (quick_cosine, np.cos, 3e-9)])
def test_series_of_small_angles_are_as_near_as_they_say(mine, known, within):
    assert np.abs([mine(x) for x in SMALL] - known(SMALL)).max() < within
    assert [mine(x) for x in -SMALL] == [(-1 if known is np.sin else 1) * mine(x) for x in SMALL]


def test_an_angle_of_two_sides_is_as_near_as_it_says():
    turn = np.linspace(0.0, 0.5 * math.pi, 2001)
    for long in (1e-6, 1.0, 80.0):
        mine = [quick_angle(long * math.sin(t), long * math.cos(t)) for t in turn]
        assert np.abs(mine - turn).max() < 1.2e-5


def test_a_line_to_a_place_and_none_to_the_place_itself():
    assert line_to(3.0, -4.0, 5.0) == pytest.approx((0.6, -0.8), abs=1e-15)
    assert line_to(0.0, 0.0, 0.0) == (0.0, 1.0)


def test_lines_turn_clockwise_by_any_angle():
    # 3e-8 of 300 yd is a hundredth of a millimetre
    rng = np.random.default_rng(3)
    for start, turn in rng.uniform(-3.5, 3.5, (500, 2)):
        line = turned_line(math.sin(start), math.cos(start), turn)
        assert line == pytest.approx((math.sin(start + turn), math.cos(start + turn)), abs=5e-8)


def test_quick_arccosine_against_numpy():
    x = np.concatenate([np.linspace(-1.0, 1.0, 20001), [-1.0 + 1e-12, 1.0 - 1e-12, 0.0, -0.0]])
    assert np.max(np.abs([quick_arccosine(one) for one in x] - np.arccos(x))) < 3e-8
