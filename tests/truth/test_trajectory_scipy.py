"""The integrator against scipy's DOP853 on the same equation, written here afresh in metres."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from simulator.kernels.trajectory import fly_one
from simulator.tables.airs import flight_air

YD = 0.9144
MASS, DIAMETER = 0.04593, 0.04267  # kg, m: greatest mass and least size of a legal ball (from memory)


def scipy_landing(mps, launch, spin, tilt, wind, roughness, height_m, rho=1.1769, nu=1.561e-5):
    """Side and along [m] at the landing height; air of 25 C and 50 % humidity at sea level."""
    k = rho * math.pi * DIAMETER**2 / 4 / (2 * MASS)
    line = np.array([0.0, math.cos(launch), math.sin(launch)])
    up = np.array([0.0, -math.sin(launch), math.cos(launch)])
    axis = math.cos(tilt) * np.array([1.0, 0, 0]) - math.sin(tilt) * up

    def rate(t, state):
        share = 1.0
        if roughness > 0:
            share = math.log(max(state[2], roughness) / roughness) / math.log(10.0 / roughness)
        u = state[3:] - share * np.array([wind[0], wind[1], 0.0])
        v = np.linalg.norm(u)
        ratio = spin * math.exp(-0.04 * t) * DIAMETER / 2 / v
        f = ratio / (ratio + 0.158)
        h = (1e5 / max(v * DIAMETER / nu, 3e4)) ** 0.25
        a = k * v * h * (-(0.142 + 0.327 * f) * u + 0.512 * f * np.cross(axis, u))
        return np.concatenate([state[3:], a - np.array([0, 0, 9.80665])])

    def lands(t, state):
        return state[2] - height_m if state[5] < 0 else 1.0

    lands.terminal, lands.direction = True, -1.0
    start = np.concatenate([np.zeros(3), mps * line])
    path = solve_ivp(
        rate, (0.0, 20.0), start, method="DOP853", events=lands, rtol=1e-9, atol=1e-9, max_step=0.2
    )
    return path.y_events[0][0][:2]


DRIVER = (76.4, 10.4, 2545)
IRON = (55.0, 16.1, 7124)
WEDGE = (33.0, 29.0, 8500)
PITCH = (15.0, 35.0, 4500)


@pytest.mark.parametrize(
    ("strike", "tilt_deg", "wind", "roughness", "height_yd"),
    [
        (DRIVER, 0.0, (0.0, 0.0), 0.0, 0.0),
        (DRIVER, 8.0, (3.0, -6.0), 0.0, 0.0),
        (DRIVER, -12.0, (-5.0, 4.0), 0.03, -15.0),
        (IRON, 0.0, (0.0, -9.0), 0.0, 0.0),
        (IRON, 5.0, (6.0, 0.0), 0.03, 12.0),
        (IRON, -20.0, (-2.0, 7.0), 0.1, -20.0),
        (WEDGE, 3.0, (4.0, -4.0), 0.0, 6.0),
        (PITCH, 0.0, (0.0, 0.0), 0.0, 0.0),
    ],
)
def test_landing_place(strike, tilt_deg, wind, roughness, height_yd):
    mps, launch_deg, rpm = strike
    launch, spin, tilt = math.radians(launch_deg), rpm * math.pi / 30, math.radians(tilt_deg)
    side, along = scipy_landing(mps, launch, spin, tilt, wind, roughness, height_yd * YD)
    air = flight_air(temperature_c=25.0, wind_x_mps=wind[0], wind_y_mps=wind[1], roughness_m=roughness)
    landing = np.empty((1, 6))
    fly_one(air, mps / YD, launch, spin, tilt, 0.0, np.array([height_yd]), landing)
    # 0.1 yd asked; in uniform wind 0.02 is met (air constants here are rounded to four digits)
    tolerance = 0.1 if roughness > 0.0 else 0.03
    assert landing[0, 0] == pytest.approx(along / YD, abs=tolerance)
    assert landing[0, 1] == pytest.approx(side / YD, abs=tolerance)
