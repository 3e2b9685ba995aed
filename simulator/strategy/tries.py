"""A place to play from, and what there is to try there: every club's lines of the first pass."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from ..engine import (
    MOST_STROKES,
    PART_BEYOND,
    PART_SWING,
    PUNCH_SWING,
    PUTT_SWING,
    PUTTED_YD,
    RUNNING_YD,
    Sequences,
    play,
    value_actions,
)
from ..hole.surfaces import Lie
from ..tables.carries import stock_landings
from ..tables.game import Board
from .errorbars import Estimate, mean

COARSE_AIMS_DEG = np.concatenate(
    [np.arange(-28.0, 28.1, 2.0), [-90.0, -60.0, -45.0, -35.0, 35.0, 45.0, 60.0, 90.0]]
)
"""Aims off the pin of the first pass [deg]."""

PART_SHARES = np.array([0.45, 0.55, 0.65, 0.74, 0.82, 0.88, 0.93, 0.97, 1.0, 1.04])
"""Carries of part swings tried, as shares of the distance to the pin."""

PUNCH_SHARES = np.array([0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9])
"""The same for punches, which run."""

PUTT_SHARES = np.array([0.85, 0.9, 0.94, 0.97, 1.0, 1.03, 1.06, 1.1, 1.15])
"""The same for putts from off the green: how far they are meant to roll."""

SHARES = {PART_SWING: PART_SHARES, PUNCH_SWING: PUNCH_SHARES, PUTT_SWING: PUTT_SHARES}

EDGE_YD = 20.0
"""Lines are not looked for that aim nearer than this to the sides of the map [yd]: a pattern is as wide."""

SAME_YD = 1.5
"""Part swings whose carries are nearer than this are one."""

RECOVERY_LIES = (Lie.TREES, Lie.HEAVY_ROUGH)
"""Lies from which short shots out sideways are looked at too."""


@dataclass(frozen=True)
class Choice:
    """One action from the asked place and what the map says of it.

    Attributes
    ----------
    row : int
        Shot row (its club, flight and carry are in the bag).
    action : float64[3]
        Shot code, aim [rad], reach [yd].
    carry_yd : float
        Intended carry.
    score : float
        Strokes by the map over the choosing strikes, replays summed.
    """

    row: int
    action: np.ndarray
    carry_yd: float
    score: float


def is_one(one: Choice, other: Choice, within_yd: float = 0.5) -> bool:
    """Whether two choices are the same swing on a line that is the same to the yard, or within so many."""
    apart_yd = abs(one.action[1] - other.action[1]) * other.carry_yd
    return one.row == other.row and abs(one.carry_yd - other.carry_yd) < SAME_YD and apart_yd < within_yd


@dataclass(frozen=True)
class Place:
    """The asked place as the search sees it."""

    board: Board
    x_yd: float
    y_yd: float
    lie: int
    threads: int

    @property
    def distance_yd(self) -> float:
        """Straight distance to the pin."""
        return self.board.distance_yd(self.x_yd, self.y_yd)

    @cached_property
    def drift_yd(self) -> np.ndarray:
        """How far right of its aim each shot comes down on the day, struck at the pin, float64[shots] [yd].

        By the player's usual miss and the mean wind; what is swung shorter than full is not moved.
        """
        bag = self.board.bag
        shots = bag.shots.shots[: bag.shots.first_part]
        carry = np.array([shot.carry_yd for shot in shots])
        drift = carry * np.sin(np.radians([shot.club.bias_right_deg for shot in shots]))
        if bag.conditions.wind is not None and shots:
            bearing_deg = math.degrees(self.board.bearing_rad(self.x_yd, self.y_yd))
            drift += stock_landings(bag.shots, bag.conditions, bearing_deg, 0.0, len(shots))[:, 1]
        return np.concatenate([drift, np.zeros(len(bag.shots.shots) - len(shots))])

    def values(self, actions: np.ndarray, replay: float, strikes: np.ndarray) -> np.ndarray:
        """Engine values of actions from here, float64[n, sets, 2]."""
        return value_actions(
            self.board, self.x_yd, self.y_yd, self.lie, actions, replay, strikes, threads=self.threads
        )

    def scores(self, actions: np.ndarray, replay: float, strikes: np.ndarray) -> np.ndarray:
        """Strokes of actions, each repeated until it is not replayed, float64[n]."""
        return repeated(self.values(actions, replay, strikes))

    def worth(self, action: np.ndarray, replay: float, strikes: np.ndarray) -> Estimate:
        """The same of one action, with the error that its strikes leave."""
        values = self.values(action[None], replay, strikes)
        return replace(mean(scrambles(values)[0]), value=float(repeated(values)[0]))

    def play(
        self, action: np.ndarray, home: np.ndarray, value: float, *, seed: int, sequences: int,
        most_strokes: int = MOST_STROKES, evened: bool = False,
    ) -> Sequences:  # fmt: skip
        """Sequences that begin with an action from here; `home` and `value` are of a stroke replayed here."""
        return play(
            self.board, self.x_yd, self.y_yd, self.lie, action, home, value, seed=seed, sequences=sequences,
            threads=self.threads, most_strokes=most_strokes, evened=evened,
        )  # fmt: skip


def repeated(values: np.ndarray) -> np.ndarray:
    """Strokes of `Place.values`, each action repeated until it is not replayed, float64[n]."""
    mean = values.mean(axis=1)
    return np.asarray(mean[:, 0] / np.maximum(1.0 - mean[:, 1], 1e-3))


def scrambles(values: np.ndarray) -> np.ndarray:
    """The same scramble by scramble, float64[n, sets]: their mean is `repeated`, their scatter its error.

    A ratio r = strokes / (1 - share replayed) errs as the mean of ``strokes + r share`` does, over 1 - share
    (the delta method).
    """
    strokes = repeated(values)[:, None]
    played_on = np.maximum(1.0 - values[..., 1].mean(axis=1, keepdims=True), 1e-3)
    return np.asarray(strokes + (values[..., 0] + strokes * values[..., 1] - strokes) / played_on)


def first_lines(
    place: Place, rows: list[int], parts: dict[int, tuple[float, float]]
) -> tuple[np.ndarray, np.ndarray]:
    """(row of each, actions) of the coarse search; `parts` is first row -> (code, longest carry)."""
    aims = np.radians(COARSE_AIMS_DEG)
    owners, actions = [], []
    for row in rows:
        owners += [row] * aims.size
        actions += [(float(row), aim, 0.0) for aim in aims]
    for code, longest in parts.values():
        for carry in np.unique(np.minimum(SHARES[code] * place.distance_yd, longest)):
            reach = float(carry) - place.distance_yd
            row = place.board.part_row(code, place.lie, place.distance_yd + reach)
            owners += [row] * aims.size
            actions += [(code, aim, reach) for aim in aims]
    found = np.array(actions)
    kept = on_the_map(place, found)
    return np.array(owners, dtype=int)[kept], found[kept]


def best_of_each(owners: np.ndarray, scores: np.ndarray) -> list[int]:
    """Index of the lowest score of every owner, owners in the order in which they come first."""
    found = []
    for owner in dict.fromkeys(owners.tolist()):
        mine = np.flatnonzero(owners == owner)
        found.append(int(mine[int(np.argmin(scores[mine]))]))
    return found


def on_the_map(place: Place, actions: np.ndarray) -> np.ndarray:
    """Which actions come down on ground that the value map covers, those straight at the pin always, bool[n].

    Ground nobody drew is rough for ever, and a ball beyond the map is valued at its edge: a line out there
    would look as good as a fairway. In a wind that is where the ball comes down, not where it is aimed.
    """
    board, grid = place.board, place.board.nodes.coarse
    full = actions[:, 0] >= 0.0
    rows = np.where(full, actions[:, 0], 0).astype(int)
    stock = np.array([shot.carry_yd for shot in board.bag.shots.shots])
    carry = np.where(full, stock[rows], place.distance_yd + actions[:, 2])
    carry = np.where(actions[:, 0] == PUTT_SWING, 0.0, carry)
    drift = np.where(full, place.drift_yd[rows], 0.0)
    bearing = board.bearing_rad(place.x_yd, place.y_yd) + actions[:, 1]
    x = place.x_yd + carry * np.sin(bearing) + drift * np.cos(bearing)
    y = place.y_yd + carry * np.cos(bearing) - drift * np.sin(bearing)
    right = grid.x0_yd + (grid.columns - 1) * grid.step_yd
    far = grid.y0_yd + (grid.rows - 1) * grid.step_yd
    left_edge = grid.x0_yd + min(EDGE_YD, max(place.x_yd - grid.x0_yd, 0.0))
    right_edge = right - min(EDGE_YD, max(right - place.x_yd, 0.0))  # a ball that lies out there may come in
    inside = (x > left_edge) & (x < right_edge) & (y > grid.y0_yd) & (y < far)
    return inside | (actions[:, 1] == 0.0)


def shaped(place: Place) -> bool:
    """Whether shots held down are in the bag today: there is wind or a tree, or somebody asked."""
    return any(shot.flight == "low" for shot in place.board.bag.shots.shots)


def part_families(place: Place) -> dict[int, tuple[float, float]]:
    """Part swings worth a look from here: first row of the family -> (shot code, longest carry)."""
    board, lie = place.board, place.lie
    found = {}
    longest = board.longest_yd(PART_SWING, lie)
    recovery = lie in RECOVERY_LIES
    if place.distance_yd < PART_BEYOND * longest or recovery:
        found[board.bag.shots.first_part] = (PART_SWING, longest)
    longest = board.longest_yd(PUNCH_SWING, lie)
    running = place.distance_yd < RUNNING_YD  # on any day
    near = running or (shaped(place) and place.distance_yd < PART_BEYOND * longest)
    if longest > 0.0 and (near or recovery):
        found[board.bag.shots.first_punch] = (PUNCH_SWING, longest)
    longest = board.longest_yd(PUTT_SWING, lie)
    if longest > 0.0 and place.distance_yd < PUTTED_YD:
        found[board.bag.shots.first_putt] = (PUTT_SWING, longest)
    return found
