"""From longitude and latitude to a level plane of yards, and back from two common map grids.

The plane touches the WGS 84 ellipsoid at its origin: east and north of the Earth-centred coordinates of a
place. Distances on it differ from those over the ellipsoid by the factor cos(distance from origin / radius):
0.02 yd in 700 at 50 km. Heights above the ellipsoid are left out: at 1,000 m everything is 0.016 % longer.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from simulator.units import M_PER_YD

WGS84_A_M = 6378137.0
"""Semi-major axis of the WGS 84 ellipsoid [m] (NGA.STND.0036, table 3.1)."""

WGS84_F = 1.0 / 298.257223563
"""Flattening of the WGS 84 ellipsoid (the same table)."""

UTM_SCALE = 0.9996
UTM_EAST_M = 500_000.0
UTM_NORTH_SOUTH_M = 10_000_000.0
"""Scale on the central meridian, false easting, false northing of the southern half (NGA.SIG.0012)."""

_E2 = WGS84_F * (2.0 - WGS84_F)


def geocentric(lonlat: np.ndarray) -> np.ndarray:
    """Earth-centred coordinates (n, 3) [m] of longitudes and latitudes (n, 2) [deg], on the ellipsoid.

    Hofmann-Wellenhof, Lichtenegger and Wasle (2008), GNSS, eq. 8.3.
    """
    lon, lat = np.radians(lonlat[:, 0]), np.radians(lonlat[:, 1])
    n = WGS84_A_M / np.sqrt(1.0 - _E2 * np.sin(lat) ** 2)
    return np.column_stack([
        n * np.cos(lat) * np.cos(lon), n * np.cos(lat) * np.sin(lon), (1.0 - _E2) * n * np.sin(lat),
    ])  # fmt: skip


@dataclass(frozen=True)
class LocalPlane:
    """Plane of yards, x east and y north, that touches the ellipsoid at a place.

    Parameters
    ----------
    lon_deg, lat_deg : the place where x = y = 0.
    """

    lon_deg: float
    lat_deg: float

    @cached_property
    def _frame(self) -> tuple[np.ndarray, np.ndarray]:
        lon, lat = math.radians(self.lon_deg), math.radians(self.lat_deg)
        east = [-math.sin(lon), math.cos(lon), 0.0]
        north = [-math.sin(lat) * math.cos(lon), -math.sin(lat) * math.sin(lon), math.cos(lat)]
        return geocentric(np.array([[self.lon_deg, self.lat_deg]]))[0], np.array([east, north]).T

    def xy(self, lonlat: np.ndarray) -> np.ndarray:
        """Places (n, 2) [yd] of longitudes and latitudes (n, 2) [deg]; no seam at 180 degrees."""
        origin, frame = self._frame
        return (geocentric(np.asarray(lonlat, dtype=float)) - origin) @ frame / M_PER_YD

    def away_yd(self, lonlat: np.ndarray) -> np.ndarray:
        """Straight distance through the Earth (n,) [yd], right on its far side too, where the plane folds."""
        origin, _ = self._frame
        return np.linalg.norm(geocentric(np.asarray(lonlat, dtype=float)) - origin, axis=1) / M_PER_YD


def from_web_mercator(xy_m: np.ndarray) -> np.ndarray:
    """Longitudes and latitudes (n, 2) [deg] of EPSG:3857 coordinates [m] (IOGP guidance note 7-2, 1024)."""
    lat = 2.0 * np.arctan(np.exp(xy_m[:, 1] / WGS84_A_M)) - math.pi / 2.0
    return np.degrees(np.column_stack([xy_m[:, 0] / WGS84_A_M, lat]))


def utm_zone(lon_deg: float) -> int:
    """Zone of Universal Transverse Mercator by longitude (Norway's and Svalbard's exceptions left out)."""
    return int((lon_deg + 180.0) % 360.0 // 6.0) + 1


def from_utm(xy_m: np.ndarray, zone: int, south: bool) -> np.ndarray:
    """Longitudes and latitudes (n, 2) [deg] of UTM coordinates [m].

    Krüger's series in the third flattening to the fourth order (Karney 2011, J. Geodesy 85:475, eq. 36 and
    7-9 to order 4; good to a tenth of a millimetre within a zone).
    """
    n = WGS84_F / (2.0 - WGS84_F)
    radius = WGS84_A_M / (1.0 + n) * (1.0 + n**2 / 4.0 + n**4 / 64.0)
    beta = (
        n / 2 - 2 * n**2 / 3 + 37 * n**3 / 96 - n**4 / 360,
        n**2 / 48 + n**3 / 15 - 437 * n**4 / 1440,
        17 * n**3 / 480 - 37 * n**4 / 840,
        4397 * n**4 / 161280,
    )
    north = xy_m[:, 1] - (UTM_NORTH_SOUTH_M if south else 0.0)
    xi, eta = north / (UTM_SCALE * radius), (xy_m[:, 0] - UTM_EAST_M) / (UTM_SCALE * radius)
    xi0, eta0 = xi.copy(), eta.copy()
    for k, b in enumerate(beta, start=1):
        xi0 -= b * np.sin(2 * k * xi) * np.cosh(2 * k * eta)
        eta0 -= b * np.cos(2 * k * xi) * np.sinh(2 * k * eta)
    tau_conformal = np.sin(xi0) / np.hypot(np.sinh(eta0), np.cos(xi0))
    tau = _geodetic_tangent(tau_conformal)
    lon = np.arctan2(np.sinh(eta0), np.cos(xi0))
    return np.column_stack([np.degrees(lon) + 6.0 * zone - 183.0, np.degrees(np.arctan(tau))])


def _geodetic_tangent(conformal: np.ndarray) -> np.ndarray:
    """Tangent of the latitude from that of the conformal latitude, by Newton (Karney 2011, eq. 19-21)."""
    e, tau = math.sqrt(_E2), conformal.copy()
    for _ in range(5):
        sigma = np.sinh(e * np.arctanh(e * tau / np.hypot(1.0, tau)))
        here = tau * np.hypot(1.0, sigma) - sigma * np.hypot(1.0, tau)
        slope = (1.0 - _E2) * np.hypot(1.0, here) * np.hypot(1.0, tau) / (1.0 + (1.0 - _E2) * tau**2)
        tau = tau + (conformal - here) / slope
    return tau
