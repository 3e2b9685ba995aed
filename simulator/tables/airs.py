"""Air as the flight kernel wants it: yards, seconds, radians."""

from __future__ import annotations

import math

from ..conditions import Conditions
from ..kernels.trajectory import Air
from ..physics import aero
from ..physics.air import (
    REFERENCE_HUMIDITY,
    REFERENCE_TEMPERATURE_C,
    density_kg_m3,
    kinematic_viscosity_m2_s,
    pressure_pa,
)
from ..physics.wind import FORECAST_HEIGHT_M, ROUGHNESS_OPEN_M
from ..units import M_PER_YD


def flight_air(
    *,
    temperature_c: float = REFERENCE_TEMPERATURE_C,
    altitude_m: float = 0.0,
    humidity: float = REFERENCE_HUMIDITY,
    pressure: float | None = None,
    wind_x_mps: float = 0.0,
    wind_y_mps: float = 0.0,
    wind_height_m: float = 10.0,
    roughness_m: float = 0.0,
) -> Air:
    """Constants of one flight through the air of the day.

    Parameters
    ----------
    temperature_c, altitude_m, humidity : float
        Air temperature [C], altitude of the course [m], relative humidity 0 to 1.
    pressure : float, optional
        Pressure at the course [Pa]; from the altitude when not given.
    wind_x_mps, wind_y_mps : float
        Where the wind blows to, in the hole frame [m/s].
    wind_height_m, roughness_m : float
        Height the wind is quoted at and roughness length of the ground [m]; with a roughness length
        of 0 the wind is the same at every height.
    """
    density = density_kg_m3(
        temperature_c, pressure_pa(altitude_m) if pressure is None else pressure, humidity
    )
    blend_from, blend_to = aero.LANDING_BLEND_SPIN_RATIOS
    return Air(
        drag_per_yd=density * aero.BALL_AREA_M2 / (2.0 * aero.BALL_MASS_KG) * M_PER_YD,
        nu=kinematic_viscosity_m2_s(temperature_c, density) / M_PER_YD**2,
        gravity=aero.GRAVITY_MPS2 / M_PER_YD,
        radius=aero.BALL_RADIUS_M / M_PER_YD,
        cd0=aero.DRAG_AT_NO_SPIN,
        cd1=aero.DRAG_WITH_LIFT,
        cl=aero.LIFT_LIMIT,
        s_half=aero.HALF_SPIN_RATIO,
        re_ref=aero.REYNOLDS_REFERENCE,
        re_min=aero.REYNOLDS_LEAST,
        spin_decay=aero.SPIN_DECAY_PER_S,
        wind_x=float(wind_x_mps) / M_PER_YD,
        wind_y=float(wind_y_mps) / M_PER_YD,
        wind_height=float(wind_height_m) / M_PER_YD,
        roughness=float(roughness_m) / M_PER_YD,
        land_low=math.radians(aero.LANDING_STEEPER_LOW_SPIN_DEG),
        land_high=math.radians(aero.LANDING_STEEPER_HIGH_SPIN_DEG),
        blend_from=blend_from,
        blend_to=blend_to,
        step_s=aero.STEP_S,
    )


def day_air(conditions: Conditions, *, blows: bool) -> Air:
    """The air of a day for flights tabled by the wind at 10 m; if it blows, it is slower near the ground."""
    return flight_air(
        temperature_c=conditions.temperature_c,
        altitude_m=conditions.altitude_m,
        humidity=conditions.humidity,
        pressure=conditions.pressure_pa,
        wind_height_m=FORECAST_HEIGHT_M,
        roughness_m=ROUGHNESS_OPEN_M if blows else 0.0,
    )
