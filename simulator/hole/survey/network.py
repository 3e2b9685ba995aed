"""Places from distances: weighted least squares, what stays uncertain, and which reading disagrees."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

SUSPECT = 3.29
"""A reading whose normalised residual is beyond this is suspected: 1 in 1,000 good ones are (Baarda, 1968, A
testing procedure for use in geodetic networks; from memory)."""

ALIKE = 0.95
"""Readings whose normalised residuals are this close cannot be told apart: one check sees them all alike."""

LEAST_WALKERS, STRETCH = 80, 2.0
"""Sets of places that walk together, and the scale of their moves (the paper's)."""

BURN_STEPS, THIN_STEPS = 150, 15
"""Moves before any place is kept, and between two that are."""

OFFSET_SD_YD = 40.0
"""What is believed of a point's offset before any reading [yd], so that a range alone still gives a place (on
an arc, most likely near the line); a reading of a yard moves it by less than a thousandth."""


MOST_STEPS = 60
"""Steps of one adjustment: a dozen settle any network that is fixed, one that is not would wander on."""


@dataclass(frozen=True)
class Reading:
    """One measured quantity between two points.

    Attributes
    ----------
    kind : str
        ``"distance"`` [yd], ``"direction"`` (clockwise from straight ahead, [rad]) or ``"offset"`` (of `a`
        from the line straight ahead [yd]; `b` is not used).
    a, b : str
        The points.
    value, sd : float
    words : str
        What it is called in a message; empty for what is believed and not read.
    """

    kind: str
    a: str
    b: str
    value: float
    sd: float
    words: str = ""


@dataclass(frozen=True)
class Network:
    """Readings between points, some of which stay where they are.

    Attributes
    ----------
    fixed : mapping of str to (x, y)
        Points that do not move [yd].
    ahead : str or None
        A point that lies straight ahead: its x is 0.
    """

    readings: tuple[Reading, ...]
    fixed: Mapping[str, tuple[float, float]]
    ahead: str | None = None


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
        Share of an error in a reading that shows in its own residual, 0 (nothing checks it) to 1.
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
        Its normalised residual.
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
    frame = _Frame(network, start)
    x = frame.settled(frame.free_of(start))
    rows = frame.jacobian(x)
    covariance = np.linalg.pinv(rows.T @ rows)
    redundancy = 1.0 - np.einsum("ij,jk,ik->i", rows, covariance, rows)
    return Adjusted(
        network, frame.places(x), frame.columns, covariance, frame.scaled(x) * frame.sd,
        np.clip(redundancy, 0.0, 1.0),
    )  # fmt: skip


def adjust_without_slips(
    network: Network, start: Mapping[str, tuple[float, float]], most: int = 3
) -> Adjusted:
    """Adjust, leave out the reading that disagrees most, and again, up to ``most`` of them."""
    dropped: list[Suspect] = []
    while True:
        found = adjust(network, start)
        worst = suspect(found)
        if worst is None or len(dropped) == most:
            return replace(found, dropped=tuple(dropped))
        dropped.append(worst)
        kept = tuple(reading for reading in network.readings if reading is not worst.reading)
        network = replace(network, readings=kept)


def suspect(found: Adjusted) -> Suspect | None:
    """The reading with the largest normalised residual, when that is beyond `SUSPECT`."""
    rows: list[Suspect] = []
    for reading, residual, share in zip(
        found.network.readings, found.residuals, found.redundancy, strict=True
    ):
        if not reading.words or share < 1e-4:  # nothing checks it
            continue
        times = abs(residual) / (reading.sd * np.sqrt(share))
        if times > SUSPECT:
            rows.append(Suspect(reading, float(residual / share), float(times)))
    if not rows:
        return None
    rows.sort(key=lambda row: -row.times)
    close = tuple(row.reading for row in rows[1:] if row.times > ALIKE * rows[0].times)
    return replace(rows[0], instead=close)


def sampled(found: Adjusted, draws: int, seed: int) -> dict[str, np.ndarray]:
    """Places that would fit the readings, each of shape (draws, 2), likely ones more often.

    Drawn with density exp(-1/2 sum of ((reading - f(places)) / sd)^2) over the free coordinates, so a place
    far from linear in its readings (a gap to a point at another range) keeps its skew. Sampler: affine
    invariant ensemble with stretch moves (Goodman and Weare, 2010, Comm. App. Math. Comp. Sci. 5, 65-80),
    started from adjustments of readings drawn anew.
    """
    rng = np.random.default_rng(seed)
    frame = _Frame(found.network, found.places)
    size = len(frame.columns)
    half = max(size + 1, LEAST_WALKERS // 2)
    start = frame.free_of(found.places)
    data = frame.value
    walkers = np.empty((2, half, size))
    for k in range(2 * half):
        frame.value = data + frame.sd * rng.standard_normal(len(data))
        walkers[k % 2, k // 2] = frame.settled(start)
    frame.value = data
    cost = np.stack([frame.cost(group) for group in walkers])
    kept: list[np.ndarray] = []
    keep_from = BURN_STEPS
    while sum(map(len, kept)) < draws:
        for _ in range(keep_from or THIN_STEPS):
            for group in (0, 1):
                _stretch(frame, walkers, cost, group, rng)
        keep_from = 0
        kept.append(walkers.reshape(-1, size).copy())
    rows = np.concatenate(kept)[:draws]
    base = np.repeat(frame.base.ravel()[None], len(rows), axis=0)
    base[:, frame.where] = rows
    return {name: base[:, 2 * k : 2 * k + 2] for k, name in enumerate(frame.names)}


def _stretch(
    frame: _Frame, walkers: np.ndarray, cost: np.ndarray, group: int, rng: np.random.Generator
) -> None:
    """One stretch move of every walker of a group, along the line to one of the other group."""
    count, size = walkers[group].shape
    others = walkers[1 - group][rng.integers(0, count, count)]
    z = ((STRETCH - 1.0) * rng.random(count) + 1.0) ** 2 / STRETCH
    moved = others + z[:, None] * (walkers[group] - others)
    new = frame.cost(moved)
    chance = (size - 1.0) * np.log(z) + cost[group] - new
    taken = np.log(rng.random(count)) < chance
    walkers[group][taken] = moved[taken]
    cost[group][taken] = new[taken]


def moved(found: Adjusted, places: Mapping[str, tuple[float, float]]) -> Adjusted:
    """The same readings made linear at other places: where a covariance at the best ones says too little."""
    frame = _Frame(found.network, places)
    x = frame.free_of(places)
    rows = frame.jacobian(x)
    return replace(found, places=frame.places(x), covariance=np.linalg.pinv(rows.T @ rows))


def jacobian(found: Adjusted, reading: Reading) -> np.ndarray:
    """Derivatives of one more reading's scaled residual by every free coordinate, (n,)."""
    frame = _Frame(replace(found.network, readings=(reading,)), found.places)
    return frame.jacobian(frame.free_of(found.places))[0]


class _Frame:
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
        self.offset, self.direction = kinds == "offset", kinds == "direction"
        self.a = np.array([at[reading.a] for reading in network.readings])
        self.b = np.array([at[reading.b] for reading in network.readings])
        self.value = np.array([reading.value for reading in network.readings])
        self.sd = np.array([reading.sd for reading in network.readings])

    def free_of(self, places: Mapping[str, tuple[float, float]]) -> np.ndarray:
        """The free coordinates of some places, (n,)."""
        return np.array([places[name] for name in self.names]).ravel()[self.where]

    def settled(self, x: np.ndarray) -> np.ndarray:
        """The free coordinates that fit the readings best, from some rough ones."""
        from scipy.optimize import least_squares

        method = "lm" if len(self.value) >= len(x) else "trf"
        return least_squares(
            self.scaled, x, jac=self.jacobian, method=method, xtol=1e-9, ftol=1e-9, max_nfev=MOST_STEPS
        ).x

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
        dx, dy = np.moveaxis(xy[..., self.b, :] - xy[..., self.a, :], -1, 0)
        off = self.value - np.hypot(dx, dy)
        turned = (self.value - np.arctan2(dx, dy) + np.pi) % (2.0 * np.pi) - np.pi
        off = np.where(self.direction, turned, off)
        return np.where(self.offset, self.value - xy[..., self.a, 0], off) / self.sd

    def cost(self, rows: np.ndarray) -> np.ndarray:
        """Half the sum of squares of `scaled` for many sets of free coordinates, (k, n) -> (k,)."""
        flat = np.repeat(self.base.ravel()[None], len(rows), axis=0)
        flat[:, self.where] = rows
        xy = flat.reshape(len(rows), -1, 2)
        return 0.5 * (self._scaled(xy) ** 2).sum(axis=-1)

    def jacobian(self, x: np.ndarray) -> np.ndarray:
        """Derivatives of `scaled`, (m, n)."""
        xy = self._xy(x)
        dx, dy = (xy[self.b] - xy[self.a]).T
        length = np.maximum(np.hypot(dx, dy), 1e-9)
        by_x = np.where(self.direction, dy / length**2, dx / length)
        by_y = np.where(self.direction, -dx / length**2, dy / length)
        rows = np.arange(len(self.value))
        full = np.zeros((len(self.value), len(self.names), 2))
        full[rows, self.b] += np.stack([by_x, by_y], axis=1)
        full[rows, self.a] -= np.stack([by_x, by_y], axis=1)
        full[self.offset] = 0.0
        full[rows[self.offset], self.a[self.offset], 0] = 1.0
        return -full.reshape(len(self.value), -1)[:, self.where] / self.sd[:, None]
