"""Carry in warm, thin and damp air: an independent integrator and published figures."""

from __future__ import annotations

import pytest
from flown import FT, NAMES, STRIKES, by_scipy, fly, gain
from truth_rows import outside

from simulator.physics.air import density_kg_m3, kinematic_viscosity_m2_s, pressure_pa

TEN_F_WARMER = {"temperature_c": 25.0 + 10 / 1.8}
FORTY_F = {"temperature_c": 8 / 1.8}
THOUSAND_FT, DENVER = {"altitude_m": 1000 * FT}, {"altitude_m": 5280 * FT}

# Yards gained by the six strikes from 77 F, sea level, 50 %: another program's, printed to 0.1
CHANGES = [
    ("+10 F", TEN_F_WARMER, (1.5, 1.2, 0.9, 1.0, 0.8, 0.5)),
    ("40 F", FORTY_F, (-5.7, -4.2, -3.3, -3.6, -2.8, -2.0)),
    ("+1000 ft", THOUSAND_FT, (3.5, 2.6, 2.1, 2.2, 1.7, 1.2)),
]
DENVER_PERCENT = (6.1, 7.9, 7.9, 4.7, 6.1, 5.7)
DAMP_YD = (1.1, 0.9, 0.7, 0.7, 0.6, 0.4)  # 0 -> 100 % at 25 C


@pytest.mark.parametrize(("label", "change", "known"), CHANGES, ids=[c[0] for c in CHANGES])
def test_warmth_and_altitude(label, change, known):
    for name, expected in zip(NAMES, known, strict=True):
        assert fly(STRIKES[name], **change).carry_yd == pytest.approx(
            by_scipy(STRIKES[name], **change)[0], abs=0.1
        )
        assert gain(name, **change) == pytest.approx(expected, abs=0.06), name


def test_a_mile_high():
    for name, expected in zip(NAMES, DENVER_PERCENT, strict=True):
        assert fly(STRIKES[name], **DENVER).carry_yd == pytest.approx(
            by_scipy(STRIKES[name], **DENVER)[0], abs=0.1
        )
        percent = 100 * gain(name, **DENVER) / fly(STRIKES[name]).carry_yd
        assert percent == pytest.approx(expected, abs=0.06)
        # rule of thumb, common practice: 10 % a mile high; it is an upper bound, we stay 2 to 5 below it
        assert 10.0 - 5.5 <= percent <= 10.0 - 2.0
    # A ball maker's page on playing at altitude: about 6 % at Denver and a flatter descent (driver)
    driver = fly(STRIKES["driver"], **DENVER)
    page = "a ball maker's page on playing at altitude"
    gained = 100 * (driver.carry_yd / fly(STRIKES["driver"]).carry_yd - 1)
    outside(page, "driver carry, Denver over sea level", gained, 6.0, 0.5, "%")
    flatter = fly(STRIKES["driver"]).angle_deg - driver.angle_deg
    outside(page, "driver descends flatter in Denver", flatter, 6.0, 1.0, "deg")
    assert 100 * (driver.carry_yd / fly(STRIKES["driver"]).carry_yd - 1) == pytest.approx(6.0, abs=0.5)
    assert fly(STRIKES["driver"]).angle_deg - driver.angle_deg == pytest.approx(41 - 35, abs=1.0)


def test_dampness():
    for name, expected in zip(NAMES, DAMP_YD, strict=True):
        change = fly(STRIKES[name], humidity=1.0).carry_yd - fly(STRIKES[name], humidity=0.0).carry_yd
        assert change == pytest.approx(expected, abs=0.06)
        outside("thegolfnewsnet", f"dry to damp air, {name}", change, (0.0, 1.0), 0.5, "yd")
        # golf.com (Rice): humidity almost nil; thegolfnewsnet: about 1 yd in all. Damp air is the lighter
        assert 0.0 < change < 1.5


def test_published_figures_of_warmth_and_altitude():
    driver, wedge = gain("driver", **TEN_F_WARMER), gain("PW", **TEN_F_WARMER)
    # golf.com (Rice): about 2 yd per 10 F with a driver, half a yard less with a pitching wedge. We give the
    # air's share alone: 0.5 yd less; a cold ball also leaves the face slower, which is not modelled
    assert driver == pytest.approx(2.0, abs=0.55) and wedge == pytest.approx(1.5, abs=0.65)
    assert driver - wedge == pytest.approx(0.5, abs=0.2)
    rice = "golf.com (Rice)"
    outside(rice, "driver, 10 F warmer", driver, 2.0, 0.3, "yd")
    outside(rice, "pitching wedge, 10 F warmer", wedge, 1.5, 0.3, "yd")
    outside(rice, "driver, 1000 ft higher", gain("driver", **THOUSAND_FT), 2.5, 0.5, "yd")
    for name in NAMES:
        warmer = gain(name, **TEN_F_WARMER)
        outside("thegolfnewsnet", f"{name}, 10 F warmer", warmer, (1.33, 1.66), 0.3, "yd")
        higher = 100 * gain(name, **THOUSAND_FT) / fly(STRIKES[name]).carry_yd
        outside("thegolfnewsnet", f"{name}, 1000 ft higher", higher, 2.0, 0.4, "%")
    # thegolfnewsnet: 1.33-1.66 yd per 10 F: tour driver inside, others below by up to 0.8
    assert 1.33 <= driver <= 1.66
    assert all(1.33 - 0.8 <= gain(name, **TEN_F_WARMER) <= 1.66 for name in NAMES)
    # golf.com (Rice): driver +2.5 yd per 1000 ft; we give 3.5
    assert gain("driver", **THOUSAND_FT) == pytest.approx(2.5, abs=1.0)
    # thegolfnewsnet: about 2 % per 1000 ft; we give 1.0-1.5 %, half a per cent or more below
    for name in NAMES:
        percent = 100 * gain(name, **THOUSAND_FT) / fly(STRIKES[name]).carry_yd
        assert 0.9 <= percent <= 1.6


@pytest.mark.parametrize(
    ("temperature_c", "humidity", "altitude_ft", "density", "viscosity"),
    [  # another program's, from ISO 2533, the Magnus formula and Sutherland's law; printed to four digits
        (15.0, 0.0, 0, 1.2250, 1.461e-5),
        (25.0, 0.5, 0, 1.1769, 1.561e-5),
        (10.0, 0.5, 0, 1.2438, None),
        (35.0, 0.5, 0, 1.1335, None),
        (25.0, 0.5, 5280, 0.9678, None),
    ],
)
def test_density_and_viscosity(temperature_c, humidity, altitude_ft, density, viscosity):
    found = density_kg_m3(temperature_c, pressure_pa(altitude_ft * FT), humidity)
    assert found == pytest.approx(density, abs=6e-5)
    if viscosity is not None:
        assert kinematic_viscosity_m2_s(temperature_c, found) == pytest.approx(viscosity, rel=4e-4)


@pytest.mark.parametrize(("altitude_ft", "pressure"), [(0, 101325.0), (1000, 97717.0), (5280, 83428.0)])
def test_pressure_with_altitude(altitude_ft, pressure):
    outside(
        "ISO 2533:1975 (from memory)",
        f"pressure at {altitude_ft} ft",
        pressure_pa(altitude_ft * FT),
        pressure,
        15.0,
        "Pa",
    )
    # International Standard Atmosphere (from memory: 28.86 inHg at 1000 ft, 24.63 at a mile)
    assert pressure_pa(altitude_ft * FT) == pytest.approx(pressure, abs=15.0)
    inches = {0: 29.92, 1000: 28.86, 5280: 24.63}[altitude_ft]
    assert pressure_pa(altitude_ft * FT) / 3386.39 == pytest.approx(inches, abs=0.02)
