"""Flight tables: every shot at every wind, strike speed, tilt and landing height it may need."""

from __future__ import annotations

import math
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from ..kernels import codes as c
from ..kernels.flight import TRACK_POINTS, Air, Axes, Launches, fill_flights
from ..physics import putting
from ..physics.aero import BALL_RADIUS_M
from ..physics.heights import PUNCH, SHAPES
from ..physics.launch import launch, part_launch
from ..units import M_PER_YD, MPS_PER_MPH, RADPS_PER_RPM
from .curved import tilts_and_carries
from .midway import flown_nodes, spread
from .shots import LONGEST_STRIKE, Shot, ShotList

FRACTIONS = np.linspace(0.1, LONGEST_STRIKE, 13)
"""Strike speed axis, as still-air carry over the shot's tabled carry (`Shot.tabled_yd`): a topped ball to a
flier."""

TILTS_DEG = np.linspace(-60.0, 60.0, 19)
"""Tilt axis [deg] about the shot's mean tilt (its shape; none for most): a wild mishit's curve is inside it;
between nodes a line errs by 0.4 yd at most."""

SPEED_GRID_MPH = np.linspace(5.0, 225.0, 45)
"""Ball speeds [mph] at which launch and spin are tabled for the solver."""

YDPS_PER_MPH = MPS_PER_MPH / M_PER_YD


DRIVE_LOSES_YD, DRIVE_BENDS_YD = 2.2, 0.034
"""What a drive loses to wind against it [yd a mph, and yd a mph squared]: by these tables themselves."""

DISC_STEP_MPH = 4.5
"""Widest step between nodes of wind along the shot [mph]: a straight line between nodes errs by an eighth of
the second derivative times the step squared, 0.17 yd at the most."""

RING_ERROR_YD = 0.25
"""The same between two sides one wind may blow from [yd]."""


PUTT_SLOWS_YDPS2 = putting.deceleration_mps2(putting.DEFAULT_STIMP_FT) / M_PER_YD
"""Of the level green that putts from off the green are tabled on."""

SET_DOWN_YD, SET_DOWN_YDPS = 0.01, 1e-3
"""How far before its place a putt from off the green starts to roll, and how fast it moves there, backwards:
only that it has a direction."""


@dataclass(frozen=True)
class WindAxes:
    """Nodes of the two axes of the wind.

    Attributes
    ----------
    u, v : float64[nu], float64[nv]
        On a disc, which holds every wind up to some speed: along the shot (helping positive) and across it
        (to the right) [yd/s]. On a ring, which holds one speed from every side: that speed, and the angle
        from the start line to the way it blows [rad]. Wind to the left is read as the mirror image of wind to
        the right where `v` starts at 0.
    ring : bool
    """

    u: np.ndarray
    v: np.ndarray
    ring: bool = False

    @property
    def winds(self) -> tuple[np.ndarray, np.ndarray]:
        """Wind along and across the shot at every node, float64[nu, nv] each."""
        first, second = np.meshgrid(self.u, self.v, indexing="ij")
        if self.ring:
            return first * np.cos(second), first * np.sin(second)
        return first, second


def wind_axes(speed_mph: float, gust_mph: float, curved: bool = False) -> WindAxes:
    """Nodes that hold a day's wind from any side, with its gusts; one node in still air.

    With `curved` shots the second axis has both sides: mirrored, a fade would be a draw.
    """
    most = speed_mph + gust_mph
    if most <= 0.0:
        return WindAxes(np.zeros(1), np.zeros(1))
    if gust_mph == 0.0:
        return ring_axes(speed_mph, curved)
    half = max(math.ceil(most / DISC_STEP_MPH), 1)
    return disc_axes(most, 2 * half, 2 * math.ceil(half / 3.0), curved)  # even: see midway.py


def ring_axes(speed_mph: float, curved: bool) -> WindAxes:
    """One wind from every side."""
    # round the ring a drive bends the most straight into the wind
    bends = speed_mph * (DRIVE_LOSES_YD + 2.0 * DRIVE_BENDS_YD * speed_mph)
    half = max(math.ceil(0.5 * math.pi / math.sqrt(8.0 * RING_ERROR_YD / bends)), 1)
    steps = 2 * half
    sides = np.linspace(-math.pi, math.pi, 2 * steps + 1) if curved else np.linspace(0.0, math.pi, steps + 1)
    return WindAxes(np.array([speed_mph * YDPS_PER_MPH]), sides, ring=True)


def disc_axes(most_mph: float, steps: int, half: int, curved: bool) -> WindAxes:
    """Every wind up to `most_mph`, with so many steps along, and across from 0 to one side."""
    most = most_mph * YDPS_PER_MPH
    across = np.linspace(-most, most, 2 * half + 1) if curved else np.linspace(0.0, most, half + 1)
    return WindAxes(np.linspace(-most, most, steps + 1), across)


@dataclass(frozen=True)
class FlightTables:
    """Flights by [shot, wind u, wind v, fraction, tilt, height]; columns as in kernels/codes.py.

    Attributes
    ----------
    packed : float32[shots, nu, nv, fractions, tilts, heights * FLIGHT_WIDE]
        As kernels read them: the columns of one height after another.
    tracks : float32[shots, nu, nv, fractions, tilts, 12, 2]
        Side and height along the way, for trees; no shots where there are none.
    speeds_mph : float64[shots, fractions]
        Ball speed of each strike.
    winds : WindAxes
    heights_yd : float64[heights]
    still : float32[shots, fractions, tilts, 6]
        Flights to their own level in the still air the player's carries are meant in: what the player's
        swing is read off, which no weather changes.
    """

    packed: np.ndarray
    tracks: np.ndarray
    speeds_mph: np.ndarray
    winds: WindAxes
    heights_yd: np.ndarray
    still: np.ndarray

    @property
    def flights(self) -> np.ndarray:
        """The flights, float32[shots, nu, nv, fractions, tilts, heights, 6]: a view."""
        by_height = self.packed.reshape(*self.packed.shape[:-1], -1, c.FLIGHT_WIDE)
        return by_height[..., : c.FLIGHT_COLUMNS]


class _Tables(NamedTuple):
    """Flights and tracks of one air; `winds` are those flown, between them it is filled in (`midway.py`)."""

    air: Air
    winds: tuple[np.ndarray, np.ndarray]
    heights_yd: np.ndarray
    flights: np.ndarray
    tracks: np.ndarray

    @classmethod
    def empty(cls, shots: int, air: Air, winds: WindAxes, heights_yd: np.ndarray, tracks: bool) -> _Tables:
        """Room for them."""
        nodes = winds.u.size, winds.v.size
        some = tuple(flown_nodes(count) for count in nodes)
        along, across = (np.ascontiguousarray(wind[some]) for wind in winds.winds)
        swings = FRACTIONS.size, TILTS_DEG.size
        flights = np.zeros((shots, *nodes, *swings, heights_yd.size, c.FLIGHT_WIDE), np.float32)
        way = (shots, *nodes, *swings) if tracks else (0, 1, 1, 1, 1)
        return cls(air, (along, across), heights_yd, flights, np.zeros((*way, TRACK_POINTS, 2), np.float32))

    def fill(
        self,
        shot: int,
        reference: Air,
        launches: Launches,
        carries: np.ndarray,
        tilts: np.ndarray,
        speeds: np.ndarray,
    ) -> None:
        """Fly one shot; the arguments are those of `fill_flights`, for it alone."""
        own, nodes = slice(shot, shot + 1), self.winds[0].shape
        whole = [self.flights[own], self.tracks[own]]
        flown = whole
        if self.flights.shape[1:3] != nodes:
            whole[0] = whole[0][..., : c.FLIGHT_COLUMNS]
            flown = [np.zeros((len(one), *nodes, *one.shape[3:]), np.float32) for one in whole]
        axes = Axes(FRACTIONS, tilts, *self.winds, self.heights_yd)
        fill_flights(reference, self.air, launches, carries, axes, 0, 1, *flown, speeds)
        if flown is whole:
            return
        for few, out in zip(flown, whole, strict=True):
            for k in range(len(out)):  # there may be no tracks
                spread(few[k], out[k])
        down = whole[0][..., 4]  # nothing comes down upwards, whatever a cubic says
        np.maximum(down, 0.0, out=down)


def launches_of(shots: tuple[Shot, ...], full_speeds_mph: dict[str, float]) -> Launches:
    """Launch and spin of each shot on the speed grid; part swings ask for their clubs' full ball speeds."""
    angles, spins = np.empty((2, len(shots), SPEED_GRID_MPH.size))
    for k, shot in enumerate(shots):
        shape = PUNCH if shot.flight == "punch" else SHAPES.get(shot.flight, SHAPES["stock"])
        if shot.flight in ("part", "punch"):
            angle, spin = part_launch(shot.club.kind, full_speeds_mph[shot.club.name], SPEED_GRID_MPH)
        else:
            angle, spin = launch(shot.club.kind, SPEED_GRID_MPH)
        angles[k], spins[k] = np.radians(angle), spin * RADPS_PER_RPM
        angles[k] *= shape.launch_factor
        spins[k] *= shape.spin_factor
    start, then = SPEED_GRID_MPH[:2] * YDPS_PER_MPH
    meant = np.array([1.0 / shot.stretch for shot in shots])
    return Launches(angles, spins, meant, float(start), float(then - start))


def flight_tables(
    listed: ShotList,
    reference: Air,
    air: Air,
    *,
    winds: WindAxes | None = None,
    heights_yd: np.ndarray | None = None,
    tracks: bool = False,
    threads: int = 1,
) -> FlightTables:
    """Solve every strike of every shot and fly it.

    Parameters
    ----------
    listed : ShotList
    reference : Air
        Still air the player's carries are meant in.
    air : Air
        Air of the day; its own wind is not used.
    winds : WindAxes, optional
        Still air when left out.
    heights_yd : float64[n], optional
        Landing heights, evenly spaced, an odd number; level ground when left out.
    tracks : bool
        Keep ground tracks too.
    threads : int
        The answer does not depend on it.
    """
    shots, first_part, first_putt = listed.shots, listed.first_part, listed.first_putt
    winds = winds or wind_axes(0.0, 0.0)
    heights = np.zeros(1) if heights_yd is None else np.asarray(heights_yd, float)
    speeds = np.zeros((len(shots), FRACTIONS.size))
    tilts = np.radians(TILTS_DEG)
    bent, carries = np.zeros(len(shots)), np.zeros(len(shots))

    of_day = _Tables.empty(len(shots), air, winds, heights, tracks)
    days = [of_day]
    level = int(np.argmin(np.abs(heights)))
    if air == reference and winds.u.size == winds.v.size == 1 and heights[level] == 0.0:
        still = of_day.flights[:, :, :, :, :, level : level + 1]  # flown already
    else:
        days.append(_Tables.empty(len(shots), reference, wind_axes(0.0, 0.0), np.zeros(1), tracks=False))
        still = days[-1].flights

    def fill(shot: int, launches: Launches) -> None:
        own = slice(shot, shot + 1)
        angles, spins, meant = (of_all[own] for of_all in launches[:3])
        its_launches = launches._replace(angles=angles, spins=spins, meant=meant)
        its_tilts = tilts + bent[shot]  # the axis is the departure from the shot's own mean tilt
        for one in days:
            one.fill(shot, reference, its_launches, carries[own], its_tilts, speeds[own])

    def fill_all(first: int, last: int, launches: Launches) -> None:
        bent[first:last], carries[first:last] = tilts_and_carries(shots, reference, launches, first, last)
        if threads > 1:
            with ThreadPoolExecutor(threads) as pool:
                for done in [pool.submit(fill, k, launches) for k in range(first, last)]:
                    done.result()
        else:
            for k in range(first, last):
                fill(k, launches)

    fill_all(0, first_part, launches_of(shots[:first_part], {}))
    # a club's own full speed must be known before its part swings can be flown
    stock = int(np.argmin(np.abs(FRACTIONS - 1.0)))
    full = {
        shot.club.name: float(speeds[k, stock]) / YDPS_PER_MPH
        for k, shot in enumerate(shots[:first_part])
        if shot.flight == "stock"
    }
    fill_all(first_part, first_putt, launches_of(shots[:first_putt], full))
    for one in days:
        rolled(shots[first_putt:], one.flights[first_putt:])
    # a copy: a view would keep the whole table alive
    own = still[:, 0, 0, :, :, 0, : c.FLIGHT_COLUMNS].copy()
    packed = of_day.flights.reshape(*of_day.flights.shape[:-2], -1)
    return FlightTables(packed, of_day.tracks, speeds / YDPS_PER_MPH, winds, heights, own)


def rolled(shots: tuple[Shot, ...], out: np.ndarray) -> None:
    """The flights of putts from off the green, float[shots, nu, nv, fractions, tilts, heights, n]: none.

    The ball is set down beside its place, as good as at rest, with a spin that rolls it on: the run along the
    ground takes it from there, without a skip, as it does a ball that spins back (`kernels/rest.py`).
    """
    for shot, flown in zip(shots, out, strict=True):
        speed_ydps = np.sqrt(2.0 * PUTT_SLOWS_YDPS2 * shot.tabled_yd * FRACTIONS)
        flown[..., c.FLIGHT_ALONG], flown[..., c.FLIGHT_V_ALONG] = SET_DOWN_YD, -SET_DOWN_YDPS
        # at rest it keeps 2/7 of the speed of its rim
        spin = 3.5 * speed_ydps / (BALL_RADIUS_M / M_PER_YD)
        flown[..., c.FLIGHT_SPIN] = spin[:, None, None]


def turn_per_tilt(still: np.ndarray) -> np.ndarray:
    """Angle off line at landing per angle of tilt, float64[shots, fractions].

    Slope between the nodes either side of the shot's own tilt.

    Parameters
    ----------
    still : float[shots, fractions, tilts, 6]
        `FlightTables.still`.
    """
    level = int(np.argmin(np.abs(TILTS_DEG)))
    right, left = still[:, :, level + 1], still[:, :, level - 1]
    angle = np.arctan2(right[..., 1], right[..., 0]) - np.arctan2(left[..., 1], left[..., 0])
    return np.asarray(angle / math.radians(TILTS_DEG[level + 1] - TILTS_DEG[level - 1]), float)
