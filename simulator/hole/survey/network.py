"""Places from distances: weighted least squares, and what stays uncertain."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

OFFSET_SD_YD = 40.0
"""What is believed of a point's offset before any reading [yd], so that a range alone still gives a place (on
an arc, most likely near the line); a reading of a yard moves it by less than a thousandth."""


SIDE_SD_YD = 1.0
"""How far on the wrong side of a sight a point may lie [yd]: sides are told by eye; assumed."""

HELD_SD = 1000.0
"""What is only believed is this much less sure where readings are checked: it shows no slip of theirs, and
yet a point that nothing else fixes stays where it is."""

MOST_STEPS = 60
"""Steps of one adjustment: a dozen settle any network that is fixed, one that is not would wander on."""

TOLERANCE, LEAST_SLOPE = 1e-9, 1e-8
"""An adjustment is settled when a step changes sum of squares or places by less than this share, or when no
coordinate changes the residuals by more than that (the cosine between them)."""


@dataclass(frozen=True)
class Reading:
    """One measured quantity between two points.

    Attributes
    ----------
    kind : str
        ``"distance"`` [yd], ``"direction"`` (clockwise from straight ahead, [rad]) or ``"offset"`` (how far
        `a` lies along `right` [yd]; `b` is not used).
    a, b : str
        The points.
    value, sd : float
    words : str
        What it is called in a message; empty for what is believed and not read.
    right : (float, float)
        Unit vector to the right of the line that an offset is counted from.
    """

    kind: str
    a: str
    b: str
    value: float
    sd: float
    words: str = ""
    right: tuple[float, float] = (1.0, 0.0)


@dataclass(frozen=True)
class Seen:
    """Which of two points is the right one, seen from a third: no number, but told.

    Attributes
    ----------
    side : int
        1 when `point` is right of the sight from `stand` to `ahead`, -1 left.
    """

    stand: str
    ahead: str
    point: str
    side: int


@dataclass(frozen=True)
class Network:
    """Readings between points, some of which stay where they are.

    Attributes
    ----------
    fixed : mapping of str to (x, y)
        Points that do not move [yd].
    ahead : str or None
        A point that lies straight ahead: its x is 0.
    sides : tuple of Seen
        Sides that were told; they hold for the sampled places.
    """

    readings: tuple[Reading, ...]
    fixed: Mapping[str, tuple[float, float]]
    ahead: str | None = None
    sides: tuple[Seen, ...] = ()


@dataclass(frozen=True)
class Adjusted:
    """Places after the adjustment.

    Attributes
    ----------
    places : mapping of str to (x, y)
        All points, the fixed ones too [yd].
    columns : mapping of (point, 0 or 1) to int
        Column of each free coordinate in `covariance`.
    covariance : float64[n, n]
        Of the free coordinates, from the stated errors of the readings.
    residuals : float64[m]
        Reading minus adjusted, in its own unit.
    redundancy : float64[m]
        Share of an error in a reading that shows in its own residual, 0 (nothing checks it) to 1. Beliefs
        about offsets check nothing.
    """

    network: Network
    places: Mapping[str, tuple[float, float]]
    columns: Mapping[tuple[str, int], int]
    covariance: np.ndarray
    residuals: np.ndarray
    redundancy: np.ndarray
    dropped: tuple[Suspect, ...] = field(default=())

    def sd(self, point: str, axis: int) -> float:
        """Standard deviation of x (0) or y (1) of a point [yd]; 0 when it is fixed."""
        column = self.columns.get((point, axis))
        return 0.0 if column is None else float(np.sqrt(max(self.covariance[column, column], 0.0)))


@dataclass(frozen=True)
class Suspect:
    """A reading that disagrees with all the others.

    Attributes
    ----------
    off : float
        How much it is too long (positive) or too short, by the others [its unit].
    times : float
        Square root of what the sum of squares loses without it: nearly its normalised residual.
    instead : tuple of Reading
        Readings that could as well be the wrong one: nothing tells them apart.
    """

    reading: Reading
    off: float
    times: float
    instead: tuple[Reading, ...] = ()


def adjust(network: Network, start: Mapping[str, tuple[float, float]]) -> Adjusted:
    """Least squares places of all free points.

    Parameters
    ----------
    start : mapping of str to (x, y)
        Rough places, on the right side of their mirror images.

    Notes
    -----
    Minimises the sum of ((reading - f(places)) / sd)^2; covariance (J' J)^-1 with J the scaled Jacobian;
    redundancy numbers are the diagonal of I - J (J' J)^-1 J' (Ghilani, Adjustment Computations, chapters 14
    and 21; from memory).
    """
    frame = Frame(network, start)
    x = frame.settled(frame.free_of(start))
    rows = frame.jacobian(x)
    covariance = np.linalg.pinv(rows.T @ rows)
    read = rows.copy()
    read[frame.offset] /= HELD_SD
    redundancy = 1.0 - np.einsum("ij,jk,ik->i", read, np.linalg.pinv(read.T @ read), read)
    return Adjusted(
        network, frame.places(x), frame.columns, covariance, frame.scaled(x) * frame.sd,
        np.clip(redundancy, 0.0, 1.0),
    )  # fmt: skip


def moved(found: Adjusted, places: Mapping[str, tuple[float, float]]) -> Adjusted:
    """The same readings made linear at other places: where a covariance at the best ones says too little."""
    frame = Frame(found.network, places)
    x = frame.free_of(places)
    rows = frame.jacobian(x)
    return replace(found, places=frame.places(x), covariance=np.linalg.pinv(rows.T @ rows))


def misfit(found: Adjusted, reading: Reading) -> float:
    """One more reading minus what the places make of it [its unit]."""
    frame = Frame(replace(found.network, readings=(reading,)), found.places)
    return float(frame.scaled(frame.free_of(found.places))[0] * reading.sd)


def jacobian(found: Adjusted, reading: Reading) -> np.ndarray:
    """Derivatives of one more reading's scaled residual by every free coordinate, (n,)."""
    frame = Frame(replace(found.network, readings=(reading,)), found.places)
    return frame.jacobian(frame.free_of(found.places))[0]


class Frame:
    """A network as arrays: which coordinates are free, which reading joins which points."""

    def __init__(self, network: Network, start: Mapping[str, tuple[float, float]]) -> None:
        self.names = list(start)
        at = {name: k for k, name in enumerate(self.names)}
        base = {**start, **network.fixed}
        if network.ahead is not None:
            base[network.ahead] = (0.0, base[network.ahead][1])
        self.base = np.array([base[name] for name in self.names])
        free = [
            (name, axis)
            for name in self.names
            for axis in (0, 1)
            if name not in network.fixed and not (name == network.ahead and axis == 0)
        ]
        self.columns = {key: k for k, key in enumerate(free)}
        self.where = np.array([2 * at[name] + axis for name, axis in free], dtype=int)
        kinds = np.array([reading.kind for reading in network.readings])
        self.offset, self.direction = (np.flatnonzero(kinds == kind) for kind in ("offset", "direction"))
        self.a = np.array([at[reading.a] for reading in network.readings])
        self.b = np.array([at[reading.b] for reading in network.readings])
        self.value = np.array([reading.value for reading in network.readings])
        self.sd = np.array([reading.sd for reading in network.readings])
        self.right = np.array([reading.right for reading in network.readings])
        self.seen = np.array([[at[s.stand], at[s.ahead], at[s.point]] for s in network.sides], dtype=int)
        self.seen_side = np.array([float(s.side) for s in network.sides])

    def free_of(self, places: Mapping[str, tuple[float, float]]) -> np.ndarray:
        """The free coordinates of some places, (n,)."""
        return np.array([places[name] for name in self.names]).ravel()[self.where]

    def settled(self, x: np.ndarray) -> np.ndarray:
        """The free coordinates that fit the readings best, from some rough ones."""
        from scipy.optimize import least_squares, leastsq

        if len(self.value) < len(x):
            return least_squares(
                self.scaled, x, jac=self.jacobian, xtol=TOLERANCE, ftol=TOLERANCE, max_nfev=MOST_STEPS
            ).x
        # least_squares(method="lm") is this with as much again of wrapping round each call
        found, *_ = leastsq(
            self.scaled, x, Dfun=self.jacobian, full_output=True, maxfev=MOST_STEPS,
            ftol=TOLERANCE, xtol=TOLERANCE, gtol=LEAST_SLOPE,
        )  # fmt: skip
        return found

    def _xy(self, x: np.ndarray) -> np.ndarray:
        flat = self.base.ravel().copy()
        flat[self.where] = x
        return flat.reshape(-1, 2)

    def places(self, x: np.ndarray) -> dict[str, tuple[float, float]]:
        """Every point's place."""
        return {name: (float(px), float(py)) for name, (px, py) in zip(self.names, self._xy(x), strict=True)}

    def scaled(self, x: np.ndarray) -> np.ndarray:
        """(Reading - computed) / sd, (m,)."""
        return self._scaled(self._xy(x))

    def _scaled(self, xy: np.ndarray) -> np.ndarray:
        """The same for places of shape (..., points, 2)."""
        step = xy[..., self.b, :] - xy[..., self.a, :]
        off = self.value - np.hypot(step[..., 0], step[..., 1])
        if len(turn := self.direction):
            turned = self.value[turn] - np.arctan2(step[..., turn, 0], step[..., turn, 1])
            off[..., turn] = (turned + np.pi) % (2.0 * np.pi) - np.pi
        if len(aside := self.offset):
            off[..., aside] = self.value[aside] - (xy[..., self.a[aside], :] * self.right[aside]).sum(axis=-1)
        return off / self.sd

    def spread(self, rows: np.ndarray) -> np.ndarray:
        """Every point's place for many sets of free coordinates, (k, n) -> (k, points, 2)."""
        flat = np.repeat(self.base.ravel()[None], len(rows), axis=0)
        flat[:, self.where] = rows
        return flat.reshape(len(rows), -1, 2)

    def cost(self, xy: np.ndarray) -> np.ndarray:
        """Half the sum of squares of `scaled`, and of wrong sides, for places (k, points, 2); (k,)."""
        return 0.5 * ((self._scaled(xy) ** 2).sum(axis=-1) + (self._wrong_side(xy) ** 2).sum(axis=-1))

    def _wrong_side(self, xy: np.ndarray) -> np.ndarray:
        """How far points lie on the wrong side of sights, over `SIDE_SD_YD`, 0 on the right; (k, sides)."""
        if not len(self.seen):
            return np.zeros((len(xy), 0))
        stand, ahead, point = (xy[:, self.seen[:, k]] for k in range(3))
        sight, way = ahead - stand, point - stand
        right = (way[..., 0] * sight[..., 1] - way[..., 1] * sight[..., 0]) / np.maximum(
            np.hypot(sight[..., 0], sight[..., 1]), 1e-9
        )
        return np.maximum(-self.seen_side * right, 0.0) / SIDE_SD_YD

    def jacobian(self, x: np.ndarray) -> np.ndarray:
        """Derivatives of `scaled`, (m, n)."""
        xy = self._xy(x)
        step = xy[self.b] - xy[self.a]
        length = np.maximum(np.hypot(step[:, 0], step[:, 1]), 1e-9)[:, None]
        by = step / length
        if len(turn := self.direction):
            by[turn] = step[turn, ::-1] * (1.0, -1.0) / length[turn] ** 2
        rows = np.arange(len(self.value))
        full = np.zeros((len(self.value), len(self.names), 2))
        full[rows, self.b] = by
        full[rows, self.a] = -by
        full[self.offset, self.a[self.offset]] = self.right[self.offset]
        return -full.reshape(len(self.value), -1)[:, self.where] / self.sd[:, None]
