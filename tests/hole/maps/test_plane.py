"""The map's plane against pyproj (PROJ): distances, directions, UTM, Web Mercator."""

from __future__ import annotations

import math

import numpy as np
import pytest

from simulator.hole.maps.plane import LocalPlane, from_utm, from_web_mercator, utm_zone

pyproj = pytest.importorskip("pyproj")
GEOD = pyproj.Geod(ellps="WGS84")
YD = 0.9144
LATITUDES = [0.0, 0.5, 15.0, 33.0, 45.0, 52.6, 60.0, 65.0, -0.5, -25.0, -48.9, -65.0]


@pytest.mark.parametrize("lat", LATITUDES)
@pytest.mark.parametrize("lon", [0.0, -123.4, 179.999, -180.0])
def test_distances_over_700_yd(lat: float, lon: float) -> None:
    """Geodesic distances between places up to 700 yd apart, the plane touching a mile away: within 0.1 yd."""
    plane = LocalPlane(*GEOD.fwd(lon, lat, 40.0, 1760 * YD)[:2])
    for azimuth in range(0, 360, 15):
        for yards in (3.0, 150.0, 700.0):
            far = GEOD.fwd(lon, lat, azimuth, yards * YD)[:2]
            a, b = plane.xy(np.array([(lon, lat), far]))
            assert math.hypot(*(b - a)) == pytest.approx(yards, abs=1e-4)  # a thousandth of what is asked


@pytest.mark.parametrize("lat", LATITUDES)
def test_bearings(lat: float) -> None:
    for azimuth in range(0, 360, 30):
        far = GEOD.fwd(10.0, lat, azimuth, 640.0)[:2]
        x, y = LocalPlane(10.0, lat).xy(np.array([far]))[0]
        off = (math.degrees(math.atan2(x, y)) - azimuth + 180.0) % 360.0 - 180.0
        assert abs(off) < 0.01


def test_far_from_the_middle_is_still_good() -> None:
    """20 miles from where the plane touches: 0.02 yd in 700."""
    plane = LocalPlane(-3.0, 56.0)
    lon, lat, _ = GEOD.fwd(-3.0, 56.0, 77.0, 32_000.0)
    a, b = plane.xy(np.array([(lon, lat), GEOD.fwd(lon, lat, 77.0, 700 * YD)[:2]]))
    assert math.hypot(*(b - a)) == pytest.approx(700.0, abs=0.02)


@pytest.mark.parametrize("lat", [0.1, -20.0, 33.0, 52.0, 65.0, -65.0])
@pytest.mark.parametrize("lon", [3.5, 5.9, 0.2])
def test_utm(lat: float, lon: float) -> None:
    zone = 31
    there = pyproj.Transformer.from_crs(4326, (32600 if lat > 0 else 32700) + zone, always_xy=True)
    back = from_utm(np.array([there.transform(lon, lat)]), zone, lat < 0.0)[0]
    assert utm_zone(lon) == zone
    assert back == pytest.approx((lon, lat), abs=1e-9)


def test_web_mercator() -> None:
    there = pyproj.Transformer.from_crs(4326, 3857, always_xy=True)
    for place in ((0.0, 0.0), (-123.4, -48.9), (179.9, 65.0)):
        back = from_web_mercator(np.array([there.transform(*place)]))[0]
        assert back == pytest.approx(place, abs=1e-9)
