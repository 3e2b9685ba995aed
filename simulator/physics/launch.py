"""Launch conditions of full and part swings: launch angle and spin from the kind of club and ball speed.

The anchors are the tour averages of 2023, men and women (the launch-monitor maker's updated tables as
publicly reprinted, stated basis 77 F, sea level, no wind). A slower player's club is not the tour club
struck softly: the women's rows show the same club launching higher with less spin, so a kind's launch and
spin run between its two rows along ball speed and are continued gently beyond them.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class LaunchRow:
    """One club's tour average: ball speed [mph], launch angle [deg], spin rate [rpm], carry [yd]."""

    ball_speed_mph: float
    launch_deg: float
    spin_rpm: float
    carry_yd: float


TOUR_MEN_2023: dict[str, LaunchRow] = {
    "driver": LaunchRow(171, 10.4, 2545, 282),
    "3-wood": LaunchRow(162, 9.3, 3663, 249),
    "5-wood": LaunchRow(156, 9.7, 4322, 236),
    "hybrid": LaunchRow(149, 10.2, 4587, 231),
    "3-iron": LaunchRow(145, 10.3, 4404, 218),
    "4-iron": LaunchRow(140, 10.8, 4782, 209),
    "5-iron": LaunchRow(135, 11.9, 5280, 199),
    "6-iron": LaunchRow(130, 14.0, 6204, 188),
    "7-iron": LaunchRow(123, 16.1, 7124, 176),
    "8-iron": LaunchRow(118, 17.8, 8078, 164),
    "9-iron": LaunchRow(112, 20.0, 8793, 152),
    "pitching wedge": LaunchRow(104, 23.7, 9316, 142),
}
"""Men's tour averages, 2023 table, 40+ events (two independent public transcriptions agree)."""

TOUR_WOMEN_2023: dict[str, LaunchRow] = {
    "driver": LaunchRow(143, 12.6, 2506, 223),
    "3-wood": LaunchRow(135, 11.6, 2595, 200),
    "5-wood": LaunchRow(130, 12.3, 4320, 189),
    "hybrid": LaunchRow(125, 13.9, 4504, 178),
    "4-iron": LaunchRow(118, 13.9, 4608, 175),
    "5-iron": LaunchRow(114, 14.6, 4966, 166),
    "6-iron": LaunchRow(111, 16.7, 5904, 155),
    "7-iron": LaunchRow(106, 18.5, 6630, 143),
    "8-iron": LaunchRow(102, 20.8, 7413, 133),
    "9-iron": LaunchRow(95, 23.5, 7605, 123),
    "pitching wedge": LaunchRow(88, 25.2, 8465, 111),
}
"""Women's tour averages, 2023 table, 30+ events (one public transcription)."""

WEDGES_FROM_MEMORY: dict[str, tuple[LaunchRow, LaunchRow]] = {
    "gap wedge": (LaunchRow(97, 26.0, 9650, 128), LaunchRow(82, 27.4, 8850, 99)),
    "sand wedge": (LaunchRow(90, 28.6, 9900, 114), LaunchRow(76, 30.0, 9150, 88)),
    "lob wedge": (LaunchRow(82, 31.2, 10000, 97), LaunchRow(69, 32.6, 9300, 75)),
}
"""(men, women) rows below the pitching wedge, which the tables do not print: from memory, continuing the
tables."""

LOFT_DEG: dict[str, float] = {
    "driver": 10.5, "2-wood": 13.0, "3-wood": 15.0, "4-wood": 16.5, "5-wood": 18.0, "7-wood": 21.0,
    "9-wood": 24.0, "11-wood": 27.0, "2-hybrid": 17.0, "hybrid": 19.0, "3-hybrid": 19.5, "4-hybrid": 22.5,
    "5-hybrid": 25.5, "6-hybrid": 28.5, "7-hybrid": 31.5, "8-hybrid": 35.0, "9-hybrid": 39.0,
    "2-iron": 18.0, "3-iron": 20.5, "4-iron": 23.5, "5-iron": 27.0, "6-iron": 30.5, "7-iron": 34.0,
    "8-iron": 38.0, "9-iron": 42.0, "pitching wedge": 46.0, "gap wedge": 51.0, "sand wedge": 56.0,
    "lob wedge": 60.0,
}  # fmt: skip
"""Reference lofts [deg] (common practice); used only to order clubs and to place those without a published
row."""

TOUR_HYBRID_LOFT_DEG = (19.0, 21.0)
"""Loft taken for the tables' one "hybrid" row, men and women [deg]: assumed; the women's stands where the
older women's table has a 7-wood."""

KINDS: tuple[str, ...] = tuple(LOFT_DEG)
"""Every launch family known here."""

SLOW_RISE_LIMIT_DEG = 4.0
"""Most the launch rises below the women's row [deg], assumed; approached exponentially from the rows' own
slope."""

_SLOW = tomllib.loads(Path(__file__).with_name("slow_woods.toml").read_text(encoding="utf-8"))
SLOW_SPIN = (float(_SLOW["power"]), float(_SLOW["least_share"]))
"""Below the women's ball speed a driver's spin goes as its ``-power``, down to ``least_share`` of that
speed, and then with speed: falling with speed, as irons', it would run half as far again as the rating
system's bogey player's does (180 yd of carry + 20 of run). Fitted to published runs:
``python -m simulator.fits.slow_woods``."""

AS_DRIVER = (
    (LOFT_DEG["3-wood"], LOFT_DEG["5-wood"], LOFT_DEG["5-iron"]),
    (1.0, float(_SLOW["five_wood_share"]), 0.0),
)
"""How much the spin of a slow strike changes as a driver's and not as an iron's, by loft [deg], straight
between. The 5-wood's share is fitted by the same script, so that a slow player's 5-wood runs as far as her
3-wood: as an iron it finished beyond it. That hybrids and long irons come between is assumed."""

FAST_FALL_LIMIT_DEG = 1.5
"""Most the launch falls above the men's row [deg], assumed."""

FAST_SPIN_LIMIT = 0.1
"""Most the spin grows above the men's row, as a share of it, assumed."""

PART_RISE_DEG = {"wood": 2.0, "iron": 6.0, "wedge": 12.0}
"""How much higher than a full swing a very soft part swing starts [deg], assumed from soft pitches of 28 mph
that were measured at 30 to 52 degrees (A. Rice's published pitching test): the middle of a lob wedge's
range."""


def family(kind: str) -> str:
    """Broad family of a kind: ``driver``, ``wood``, ``hybrid``, ``iron`` or ``wedge``.

    Raises
    ------
    ValueError
        Unknown kind.
    """
    if kind not in LOFT_DEG:
        raise ValueError(f"unknown kind of club {kind!r}")
    return kind if kind == "driver" else kind.replace("-", " ").split()[-1]


def _from_irons(loft_deg: float, rows: dict[str, LaunchRow]) -> Floats:
    """Iron row at any loft, straight lines between the printed irons and continued beyond the longest."""
    irons = [k for k in rows if k.endswith("iron")]
    lofts = np.array([LOFT_DEG[k] for k in irons])
    table = np.array([_numbers(rows[k]) for k in irons])
    i = int(np.clip(np.searchsorted(lofts, loft_deg) - 1, 0, len(lofts) - 2))
    share = (loft_deg - lofts[i]) / (lofts[i + 1] - lofts[i])
    return table[i] + share * (table[i + 1] - table[i])


def _between_woods(loft_deg: float, rows: dict[str, LaunchRow]) -> Floats:
    """Row of a wood the tables do not print, by loft on straight lines between those they do."""
    woods = ("driver", "3-wood", "5-wood")
    table = np.array([_numbers(rows[k]) for k in woods])
    return np.array([np.interp(loft_deg, [LOFT_DEG[k] for k in woods], column) for column in table.T])


def _numbers(row: LaunchRow) -> tuple[float, float, float, float]:
    return row.ball_speed_mph, row.launch_deg, row.spin_rpm, row.carry_yd


def _row(kind: str, sex: int) -> LaunchRow:
    """Printed row, or one placed by loft: woods between or beyond those printed, hybrids beside the irons."""
    rows = TOUR_WOMEN_2023 if sex else TOUR_MEN_2023
    if kind in rows:
        return rows[kind]
    if kind in WEDGES_FROM_MEMORY:
        return WEDGES_FROM_MEMORY[kind][sex]
    if family(kind) == "wood" and LOFT_DEG[kind] < LOFT_DEG["5-wood"]:
        return LaunchRow(*_between_woods(LOFT_DEG[kind], rows))
    if family(kind) == "wood":
        # Beyond the 5-wood a wood changes with loft as the irons do.
        anchor, loft_deg = "5-wood", LOFT_DEG["5-wood"]
    elif family(kind) == "hybrid":
        anchor, loft_deg = "hybrid", TOUR_HYBRID_LOFT_DEG[sex]
    else:
        return LaunchRow(*_from_irons(LOFT_DEG[kind], rows))
    shift = _from_irons(LOFT_DEG[kind], rows) - _from_irons(loft_deg, rows)
    return LaunchRow(*(np.array(_numbers(rows[anchor])) + shift))


MEN: dict[str, LaunchRow] = {kind: _row(kind, 0) for kind in KINDS}
"""The men's row of every kind, printed or placed."""

WOMEN: dict[str, LaunchRow] = {kind: _row(kind, 1) for kind in KINDS}
"""The women's row of every kind, printed or placed."""


def launch(kind: str, ball_speed_mph: ArrayLike) -> tuple[Floats, Floats]:
    """Launch angle and spin of a full swing.

    Parameters
    ----------
    kind : str
        One of ``KINDS``.
    ball_speed_mph : array_like
        Ball speed [mph], more than 0.

    Returns
    -------
    launch_deg, spin_rpm : ndarray
        Of the shape of ``ball_speed_mph``. Launch never rises with ball speed, and spin never falls but for
        slow strikes of clubs of less loft than a 5-iron (``AS_DRIVER``).

    Raises
    ------
    ValueError
        Unknown kind.
    """
    if kind not in LOFT_DEG:
        raise ValueError(f"unknown kind of club {kind!r}")
    men, women = MEN[kind], WOMEN[kind]
    v = np.asarray(ball_speed_mph, dtype=float)
    width = men.ball_speed_mph - women.ball_speed_mph
    fall = (women.launch_deg - men.launch_deg) / width  # deg per mph, not negative in any row
    gain = max(0.0, (men.spin_rpm - women.spin_rpm) / width)
    inside = np.clip(v, women.ball_speed_mph, men.ball_speed_mph)
    slow = np.maximum(0.0, women.ball_speed_mph - v)
    fast = np.maximum(0.0, v - men.ball_speed_mph)
    angle = women.launch_deg - fall * (inside - women.ball_speed_mph)
    angle = angle + SLOW_RISE_LIMIT_DEG * -np.expm1(-fall * slow / SLOW_RISE_LIMIT_DEG)
    angle = angle - FAST_FALL_LIMIT_DEG * -np.expm1(-fall * fast / FAST_FALL_LIMIT_DEG)
    spin = women.spin_rpm + gain * (inside - women.ball_speed_mph)
    room = FAST_SPIN_LIMIT * men.spin_rpm
    spin = spin + room * -np.expm1(-gain * fast / room)
    share = np.minimum(1.0, v / women.ball_speed_mph)
    power, least = SLOW_SPIN
    as_driver = np.maximum(share, least) ** -power * np.minimum(1.0, share / least)
    as_iron = share  # same angles of club and path: spin goes with speed
    part = np.interp(LOFT_DEG[kind], *AS_DRIVER)
    return angle, spin * as_driver**part * as_iron ** (1.0 - part)


def part_launch(kind: str, full_speed_mph: float, ball_speed_mph: ArrayLike) -> tuple[Floats, Floats]:
    """Launch angle and spin of a part swing with a club whose full swing gives ``full_speed_mph``.

    Spin falls with ball speed; launch rises by ``PART_RISE_DEG`` times the share of speed given up. At
    full speed it is ``launch`` exactly.

    Parameters
    ----------
    kind : str
        One of ``KINDS``.
    full_speed_mph : float
        Ball speed of the same player's full swing [mph].
    ball_speed_mph : array_like
        Ball speed of the part swing [mph]; faster than full is treated as full.

    Returns
    -------
    launch_deg, spin_rpm : ndarray
        Of the shape of ``ball_speed_mph``.

    Raises
    ------
    ValueError
        Unknown kind.
    """
    full_angle, full_spin = launch(kind, full_speed_mph)
    share = np.clip(np.asarray(ball_speed_mph, dtype=float) / full_speed_mph, 0.0, 1.0)
    group = family(kind)
    rise = PART_RISE_DEG["wedge" if group == "wedge" else "iron" if group == "iron" else "wood"]
    return full_angle + rise * (1.0 - share), full_spin * share
