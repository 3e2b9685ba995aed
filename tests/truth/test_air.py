"""Air against published standards."""

from __future__ import annotations

import pytest
from truth_rows import outside

from simulator.physics.air import density_kg_m3, kinematic_viscosity_m2_s, pressure_pa


@pytest.mark.parametrize(
    ("altitude_m", "pressure", "density"),
    [  # International Standard Atmosphere, ISO 2533:1975 (from memory)
        (0.0, 101325.0, 1.2250),
        (1000.0, 89874.6, 1.1116),
        (2000.0, 79495.2, 1.0065),
        (3000.0, 70108.5, 0.9091),
    ],
)
def test_standard_atmosphere(altitude_m, pressure, density):
    iso = "ISO 2533:1975 (from memory)"
    outside(iso, f"pressure at {altitude_m:.0f} m", pressure_pa(altitude_m), pressure, 1e-4 * pressure, "Pa")
    assert pressure_pa(altitude_m) == pytest.approx(pressure, rel=1e-4)
    standard_c = 15.0 - 0.0065 * altitude_m  # the same standard
    found = density_kg_m3(standard_c, pressure_pa(altitude_m), 0.0)
    outside(iso, f"density at {altitude_m:.0f} m", found, density, 2e-4 * density, "kg/m3")
    assert found == pytest.approx(density, rel=2e-4)


def test_moist_air():
    # Metrology's usual laboratory air, 20 C, 101325 Pa, 50 %: 1.1992 kg/m3 by the CIPM formula (from memory);
    # the formula has a compressibility the ideal gas lacks, worth 0.04 %
    cipm = "CIPM formula for moist air (from memory)"
    outside(cipm, "density at 20 C, 50 %", density_kg_m3(20.0, 101325.0, 0.5), 1.1992, 7e-4, "kg/m3")
    assert density_kg_m3(20.0, 101325.0, 0.5) == pytest.approx(1.1992, rel=6e-4)
    # saturated air at 30 C weighs less than dry: vapour pressure 4246 Pa (steam tables, from memory)
    dry, wet = density_kg_m3(30.0, 101325.0, 0.0), density_kg_m3(30.0, 101325.0, 1.0)
    assert 1.0 - wet / dry == pytest.approx(4246.0 / 101325.0 * (1.0 - 287.058 / 461.495), rel=0.01)


def test_viscosity():
    # ISO 2533 at sea level: kinematic 1.4607e-5 m2/s; at 300 K the dynamic viscosity is 1.846e-5 Pa s
    # (heat-transfer tables, both from memory)
    assert kinematic_viscosity_m2_s(15.0, 1.2250) == pytest.approx(1.4607e-5, rel=2e-3)
    density = density_kg_m3(26.85, 101325.0, 0.0)
    assert density * kinematic_viscosity_m2_s(26.85, density) == pytest.approx(1.846e-5, rel=2e-3)
