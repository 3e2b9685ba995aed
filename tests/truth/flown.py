"""Six strikes flown by the kernel, and by an independent integrator of scipy's written in metres."""

from __future__ import annotations

import math
from typing import NamedTuple

import numpy as np
from scipy.integrate import solve_ivp

from simulator.kernels.trajectory import fly_one
from simulator.tables.airs import flight_air

YD, MPH, FT = 0.9144, 0.44704, 0.3048  # metres, m/s, metres: exact

STRIKES = {
    # ball mph, launch deg, backspin rpm; tour averages as publicly reprinted: men's table of 2023, and of the
    # women's older table as slower players
    "driver": (171, 10.4, 2545),
    "7-iron": (123, 16.1, 7124),
    "PW": (104, 23.7, 9316),
    "slower driver": (140, 13.2, 2611),
    "slower 7-iron": (104, 19.0, 6699),
    "slower PW": (86, 25.7, 8403),
}
NAMES = list(STRIKES)


class Landing(NamedTuple):
    """Where and how a strike lands: yards, degrees, mph, rpm; positive side is right."""

    carry_yd: float
    side_yd: float
    angle_deg: float
    mph: float
    rpm: float


def fly(
    strike: tuple[float, float, float],
    *,
    tilt_deg: float = 0.0,
    up_yd: float = 0.0,
    head_mph: float = 0.0,
    from_left_mph: float = 0.0,
    **air: float,
) -> Landing:
    """The kernel's flight. Wind is the same at every height unless a roughness is given."""
    mph, launch_deg, rpm = strike
    landing = np.empty((1, 6))
    day = flight_air(wind_x_mps=from_left_mph * MPH, wind_y_mps=-head_mph * MPH, **air)
    fly_one(
        day, mph * MPH / YD, math.radians(launch_deg), rpm * math.pi / 30, math.radians(tilt_deg), 0.0,
        np.array([float(up_yd)]), landing,
    )  # fmt: skip
    along, side, v_along, v_side, v_down, spin = landing[0]
    level = math.hypot(v_along, v_side)
    return Landing(
        along, side, math.degrees(math.atan2(v_down, level)), math.hypot(level, v_down) * YD / MPH,
        spin * 30 / math.pi,
    )  # fmt: skip


def gain(name: str, **change: float) -> float:
    """Yards of carry a change of the day adds to a strike in still air of 25 C at sea level."""
    return fly(STRIKES[name], **change).carry_yd - fly(STRIKES[name]).carry_yd


def density_and_viscosity(temperature_c: float, altitude_m: float, humidity: float) -> tuple[float, float]:
    """Of air, written afresh from memory: ISO 2533 pressure, Magnus vapour, Sutherland viscosity."""
    p = 101325 * (1 - 2.25577e-5 * altitude_m) ** 5.25588
    t = temperature_c + 273.15
    vapour = humidity * 611.2 * math.exp(17.62 * temperature_c / (243.12 + temperature_c))
    rho = (p - vapour) / (287.058 * t) + vapour / (461.495 * t)
    return rho, 1.716e-5 * (t / 273.15) ** 1.5 * (273.15 + 110.4) / (t + 110.4) / rho


def by_scipy(
    strike: tuple[float, float, float],
    *,
    tilt_deg: float = 0.0,
    up_yd: float = 0.0,
    head_mph: float = 0.0,
    from_left_mph: float = 0.0,
    temperature_c: float = 25.0,
    altitude_m: float = 0.0,
    humidity: float = 0.5,
    wind_height_m: float = 10.0,
    roughness_m: float = 0.0,
) -> tuple[float, float]:
    """(carry, side) [yd] of the same equation by scipy's DOP853 at tight tolerance."""
    mph, launch_deg, rpm = strike
    mass, diameter = 0.04593, 0.04267
    rho, nu = density_and_viscosity(temperature_c, altitude_m, humidity)
    k = rho * math.pi * diameter**2 / 4 / (2 * mass)
    la, tilt, w0 = math.radians(launch_deg), math.radians(tilt_deg), rpm * math.pi / 30
    nx, ny, nz = math.cos(tilt), math.sin(tilt) * math.sin(la), -math.sin(tilt) * math.cos(la)

    def rate(t, s):
        share = 1.0
        if roughness_m > 0:
            share = math.log(max(s[2], roughness_m) / roughness_m) / math.log(wind_height_m / roughness_m)
        ux, uy, uz = s[3] - share * from_left_mph * MPH, s[4] + share * head_mph * MPH, s[5]
        v = math.sqrt(ux * ux + uy * uy + uz * uz)
        ratio = w0 * math.exp(-0.04 * t) * diameter / 2 / v
        f = ratio / (ratio + 0.158)
        h = (1e5 / max(v * diameter / nu, 3e4)) ** 0.25
        drag, lift = k * v * h * (0.142 + 0.327 * f), k * v * h * 0.512 * f
        return [
            s[3], s[4], s[5],
            -drag * ux + lift * (ny * uz - nz * uy),
            -drag * uy + lift * (nz * ux - nx * uz),
            -drag * uz + lift * (nx * uy - ny * ux) - 9.80665,
        ]  # fmt: skip

    def lands(t, s):
        return s[2] - up_yd * YD if s[5] < 0 else 1.0

    lands.terminal, lands.direction = True, -1.0
    start = [0.0, 0.0, 0.0, 0.0, mph * MPH * math.cos(la), mph * MPH * math.sin(la)]
    path = solve_ivp(rate, (0, 20), start, method="DOP853", events=lands, rtol=1e-7, atol=1e-7, max_step=0.3)
    side, along = path.y_events[0][0][:2]
    return along / YD, side / YD
