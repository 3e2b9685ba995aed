"""How much more wind would turn the answer."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import partial

import numpy as np

from ..conditions import Conditions
from ..conditions.model import Wind
from ..engine import PUTT_SWING, Effort, at_once, hold_plan, revalue_map
from ..hole.model import Hole
from ..physics.wind import WIND_MOST_MPH
from ..tables.bag import Bag, day_wind
from ..tables.flights import YDPS_PER_MPH
from ..tables.game import Board, make_board, with_nodes
from ..tables.nodes import WIDE_YD, place_nodes
from ..tables.varied import in_wind, stock_flights
from ..units import compass_deg
from .confidence import Flip
from .rescore import Rescore
from .turning import turning

WIND_MPH = (-12.0, -6.0, 0.0, 6.0, 12.0)
"""Winds added along and across [mph at 10 m]: up to a gentle breeze, Beaufort 3 (8 to 12 mph)."""

TURNS_DEG = tuple(np.arange(-12.0, 12.1, 2.0).tolist())
"""Aims looked at: a drive drifts by some 8 degrees in the strongest of them."""

EFFORT = Effort(more=32, many=64, again=0, least=8, idle=8, unseen=8)
"""How hard the plan is valued in each wind: by a quarter of the strikes of a map, for every wind alike."""


def wind_flips(again: Rescore, errors: np.ndarray) -> tuple[Flip, Flip]:
    """Wind to add along and across the recommended line, each until another alternative is the best.

    A map of wider nodes is worked out for each wind; at every node the held action is tried beside those that
    make up for the wind. Shots held down are in it only if they are in the day's own bag.
    """
    alone, threads, hole = again.alone(), again.place.threads, again.hole
    place = alone.place
    conditions = place.board.bag.conditions
    speed, gust = day_wind(conditions)
    bag = in_wind(place.board.bag, speed + gust + WIND_MPH[-1], threads)
    choice = again.choices[0]
    pin = hole.pin
    bearing = math.atan2(pin.x_yd - place.x_yd, pin.y_yd - place.y_yd) + float(choice.action[1])
    nodes = place_nodes(hole, place.board.raster, *WIDE_YD)
    wide = with_nodes(place.board, nodes)
    held = hold_plan(wide, place.board, seed=again.seed, places=again.balls, effort=EFFORT)

    def strokes(mph: float, toward: float) -> np.ndarray:
        windy = replace(bag, conditions=_blown(conditions, mph, toward))
        empty = make_board(hole, windy, place.board.raster, nodes=nodes)
        also = _making_up(place.board, windy, hole)
        anew = revalue_map(empty, held, also=also, threads=place.threads)
        return alone.strokes(anew, turns_deg=TURNS_DEG)

    own = strokes(0.0, 0.0)

    def walked(what: str, toward: float) -> Flip:
        def behind(mph: float) -> np.ndarray:
            return again.behind + (strokes(mph, toward) - own if mph != 0.0 else 0.0)

        turn = turning(behind, WIND_MPH, 0.0, errors, refine=False)
        return Flip(what, "", "mph", (WIND_MPH[0], WIND_MPH[-1]), *turn)

    across = bearing + 0.5 * math.pi
    walks = [partial(walked, "wind_along", bearing), partial(walked, "wind_across", across)]
    along_flip, across_flip = at_once(walks, threads)
    return along_flip, across_flip


def _blown(conditions: Conditions, mph: float, toward: float) -> Conditions:
    """The day with so much more wind at 10 m towards a bearing [rad]."""
    speed, gust = day_wind(conditions)
    x, y = mph * math.sin(toward), mph * math.cos(toward)
    swing = 0.0
    if conditions.wind is not None:
        swing = conditions.wind.swing_deg
        blows = math.radians(conditions.wind.from_deg + 180.0)
        x, y = x + speed * math.sin(blows), y + speed * math.cos(blows)
    total = min(math.hypot(x, y), WIND_MOST_MPH)
    wind = Wind(total, compass_deg(-x, -y), "forecast", min(gust, total), swing)
    return replace(conditions, wind=wind)


def _mean_wind(conditions: Conditions) -> tuple[float, float]:
    """Velocity of the mean wind in the hole frame at 10 m [yd/s]."""
    if conditions.wind is None:
        return 0.0, 0.0
    blows = math.radians(conditions.wind.from_deg + 180.0)
    speed = day_wind(conditions)[0] * YDPS_PER_MPH
    return speed * math.sin(blows), speed * math.cos(blows)


def _making_up(held: Board, windy: Bag, hole: Hole) -> Callable[[np.ndarray, np.ndarray], np.ndarray]:
    """What makes up for the new wind at each node: the drift, the club that carries as far, and the next."""
    shots = windy.shots
    old, new = _mean_wind(held.bag.conditions), _mean_wind(windy.conditions)
    longer = _next_longer(windy)

    def also(nodes: np.ndarray, plan: np.ndarray) -> np.ndarray:
        part = plan[:, 0] < 0.0
        middle = np.array([(first + end - 1) // 2 for first, end in shots.families])
        family = np.clip(-plan[:, 0] - 1.0, 0.0, len(middle) - 1.0).astype(int)
        rows = np.where(part, middle[family], plan[:, 0]).astype(int)
        bearing = np.arctan2(hole.pin.x_yd - nodes[:, 0], hole.pin.y_yd - nodes[:, 1]) + plan[:, 1]

        def flown(shot: np.ndarray, wind: tuple[float, float]) -> np.ndarray:
            along = wind[0] * np.sin(bearing) + wind[1] * np.cos(bearing)
            cross = wind[0] * np.cos(bearing) - wind[1] * np.sin(bearing)
            return stock_flights(windy, shot, along, cross)

        before, after = flown(rows, old), flown(rows, new)
        out = np.repeat(plan[:, None], 3, axis=1)
        drift = np.arctan2(after[:, 1], after[:, 0]) - np.arctan2(before[:, 1], before[:, 0])
        out[:, :, 1] -= drift[:, None]
        carry = np.maximum(nodes[:, 3] + plan[:, 2], 1.0)
        flies = plan[:, 0] != PUTT_SWING
        stretch = np.where(flies, carry * (before[:, 0] / np.maximum(after[:, 0], 1.0) - 1.0), 0.0)
        club = rows.copy()
        for _ in range(3):  # up to three clubs more or fewer
            for chain in (longer, _inverse(longer)):
                other = chain[club]
                better = np.abs(flown(other, new)[:, 0] - before[:, 0]) < np.abs(
                    flown(club, new)[:, 0] - before[:, 0]
                )
                club = np.where(better & ~part, other, club)
        out[:, 1, 0] = np.where(part, plan[:, 0], club)
        out[:, 2, 0] = np.where(part, plan[:, 0], longer[club])
        out[:, 1, 2] += np.where(part, stretch, 0.0)
        out[:, 2, 2] += np.where(part, 0.5 * stretch, 0.0)
        return out

    return also


def _next_longer(bag: Bag) -> np.ndarray:
    """Row of the next longer full shot of the same flight; the longest is its own."""
    out = np.arange(len(bag.shots))
    last: dict[str, int] = {}
    for row, shot in enumerate(bag.shots.shots[: bag.shots.first_part]):
        out[row] = last.get(shot.flight, row)
        last[shot.flight] = row
    return out


def _inverse(longer: np.ndarray) -> np.ndarray:
    """Row of the next shorter one."""
    out = np.arange(longer.size)
    for row, above in enumerate(longer.tolist()):
        if above != row:
            out[above] = row
    return out
