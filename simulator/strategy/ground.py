"""The nearest ground of a kind to the line of play, at a distance from the pin or from the tee."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import partial

import numpy as np
import shapely

from ..hole.model import Feature, Hole
from ..hole.surfaces import LIE_OF, Lie, Surface

DISTANCE_SLACK_YD = 15
"""How far from the asked distance the asked ground may be [yd]: a laser reads a bunker to its lip."""

WIDEST_DEG = 80.0
"""How far round the pin from the line of play ground is looked for [deg]."""

WIDEST_YD = 80.0
"""How far across the line of play ground is looked for [yd]."""

STEP_YD = 0.5
"""Step along an arc round the pin or across the line [yd]: half the cell of the engine's raster."""

ALONG_STEP_YD = 0.25
"""Step along the line of play when it is followed as far as a club carries [yd]."""

FAR_YD = 40.0
"""Ground farther than this from the line gives way to such ground within half of it a little nearer or
farther along ("40 short of the green, rough", where a ditch crosses) [yd]."""

INSIDE_YD = 3.0
"""How far inside the edge of the ground the ball is put, where the ground is wide enough [yd]."""

CLEAR_YD = 1.0
"""Same ground this far round the ball, where there is such a place [yd]: a cell of the engine's raster."""

NEAREST_YD = 1.0
"""Shortest distance from the pin that is searched [yd]."""


def line_place(hole: Hole, out_yd: float) -> tuple[float, float]:
    """The place (x, y) on the line of play at a straight distance from the pin [yd].

    The last such place on the way from the tee; nearer to the pin than the line comes, the place straight
    between the pin and the end of that line's last leg.
    """
    pin = np.array(hole.pin.xy_yd)
    corners = np.asarray(hole.line, dtype=float)
    for first, last in zip(corners[-2::-1], corners[:0:-1], strict=True):
        # |last + t (first - last) - pin| = out_yd, walking back from the green: the smallest t in 0..1
        step, gap = first - last, last - pin
        a, b, c = step @ step, 2.0 * (gap @ step), gap @ gap - out_yd**2
        disc = b * b - 4.0 * a * c
        if disc < 0.0:
            continue
        for t in sorted(((-b - math.sqrt(disc)) / (2.0 * a), (-b + math.sqrt(disc)) / (2.0 * a))):
            if 0.0 <= t <= 1.0:
                x, y = last + t * step
                return float(x), float(y)
    back = corners[-2] - pin
    x, y = pin + back / math.hypot(*back) * out_yd
    return float(x), float(y)


def station_reached(hole: Hole, here: tuple[float, float], carry_yd: float) -> float | None:
    """Station of the first place of the line of play a carry ahead of the ball [yd], None past its end."""
    own = hole.station_offset(*here)[0]
    stations = np.arange(max(own, 0.0), hole.length_yd, ALONG_STEP_YD)
    places = np.array([hole.at(station, 0.0) for station in stations]).reshape(-1, 2)
    far = np.hypot(places[:, 0] - here[0], places[:, 1] - here[1])
    reached = np.flatnonzero(far >= carry_yd)
    return float(stations[reached[0]]) if reached.size else None


Way = Callable[[float, int], tuple[np.ndarray, np.ndarray]]
"""Places x, y, each (n,) [yd], at a distance: from the line of play outwards to a hand (-1 left, 1 right)."""

Wanted = Callable[[np.ndarray, np.ndarray], np.ndarray]
"""Whether places x, y, each (n,) [yd], are on the ground that is looked for, bool (n,)."""


def find_ground(
    hole: Hole, out_yd: float, side: int, wanted: Surface, *, slack_yd: int = DISTANCE_SLACK_YD
) -> tuple[float, float] | None:
    """Where a ball lies that is on some ground at about a distance from the pin, None if nowhere.

    Parameters
    ----------
    hole : Hole
    out_yd : float
        Straight distance to the pin [yd]; the nearest distance that has such ground is taken.
    side : int
        -1 left of the line of play as seen looking at the pin, 1 right, 0 the nearer of the two.
    wanted : Surface
    slack_yd : int
        How far from `out_yd` is still near enough [yd].

    Returns
    -------
    (x, y) [yd], `INSIDE_YD` inside the edge nearer the line; half way from the line to the edge when the
    line itself is on that ground and a side is asked for.
    """
    return _nearest(partial(_arc, hole), out_yd, slack_yd, side, _of_surface(hole, wanted))


def find_beside(
    hole: Hole, station_yd: float, side: int, wanted: Surface, *, slack_yd: int = DISTANCE_SLACK_YD
) -> tuple[float, float] | None:
    """The same at about a distance from the tee along the line of play, straight across the line."""
    return _nearest(partial(_across, hole), station_yd, slack_yd, side, _of_surface(hole, wanted))


def find_in(
    hole: Hole, area: Feature, *, out_yd: float | None, station_yd: float | None
) -> tuple[float, float] | None:
    """The place of one area nearest to the line at about a distance from the pin, or else from the tee."""
    top = hole.features.index(area)

    def wanted(x: np.ndarray, y: np.ndarray) -> np.ndarray:
        return features_at(hole, x, y) == top

    if out_yd is not None:
        return _nearest(partial(_arc, hole), out_yd, DISTANCE_SLACK_YD, 0, wanted)
    assert station_yd is not None
    return _nearest(partial(_across, hole), station_yd, DISTANCE_SLACK_YD, 0, wanted)


def _of_surface(hole: Hole, surface: Surface) -> Wanted:
    return lambda x, y: surfaces_at(hole, x, y) == surface


def _nearest(way: Way, at_yd: float, slack_yd: int, side: int, wanted: Wanted) -> tuple[float, float] | None:
    rim: tuple[float, float] | None = None
    far: tuple[float, float] | None = None
    for away in sorted(range(-slack_yd, slack_yd + 1), key=abs):
        found = _on_way(way, at_yd + away, side, wanted) if at_yd + away >= NEAREST_YD else None
        if found is not None and _clear(found, wanted):
            if far is None and _from_line(way, at_yd + away, found) > FAR_YD:
                far = found
            elif far is None or _from_line(way, at_yd + away, found) < 0.5 * FAR_YD:
                return found
        rim = rim or found
    return far or rim


def _from_line(way: Way, at_yd: float, place: tuple[float, float]) -> float:
    """How far a place lies from where its way leaves the line of play [yd]."""
    x, y = way(at_yd, 1)
    return math.hypot(place[0] - float(x[0]), place[1] - float(y[0]))


def _clear(place: tuple[float, float], wanted: Wanted) -> bool:
    """Whether the ground all round a place is the same."""
    turn = np.arange(8) * (math.pi / 4.0)
    return bool(wanted(place[0] + CLEAR_YD * np.cos(turn), place[1] + CLEAR_YD * np.sin(turn)).all())


def _on_way(way: Way, at_yd: float, side: int, wanted: Wanted) -> tuple[float, float] | None:
    """The place of some ground nearest to the line of play at one distance."""
    found: tuple[int, float, float] | None = None
    for hand in (-1, 1) if side == 0 else (side,):
        x, y = way(at_yd, hand)
        there = wanted(x, y)
        if there.any():
            k = _rest_index(there, bool(side))
            if found is None or k < found[0]:
                found = k, float(x[k]), float(y[k])
    return None if found is None else found[1:]


def _arc(hole: Hole, radius: float, hand: int) -> tuple[np.ndarray, np.ndarray]:
    """Round the pin, at one distance from it."""
    pin_x, pin_y = hole.pin.x_yd, hole.pin.y_yd
    middle_x, middle_y = line_place(hole, radius)
    # seen from the pin the line runs towards the ball, so turning anticlockwise there is the ball's right
    turn = hand * np.arange(int(radius * math.radians(WIDEST_DEG) / STEP_YD) + 1) * STEP_YD / radius
    angle = math.atan2(middle_y - pin_y, middle_x - pin_x) + turn
    return pin_x + radius * np.cos(angle), pin_y + radius * np.sin(angle)


def _across(hole: Hole, station: float, hand: int) -> tuple[np.ndarray, np.ndarray]:
    """Straight across the line of play, at one distance along it."""
    (x, y), (beside_x, beside_y) = hole.at(station), hole.at(station, float(hand))
    off = np.arange(int(WIDEST_YD / STEP_YD) + 1) * STEP_YD
    return x + off * (beside_x - x), y + off * (beside_y - y)


def _rest_index(there: np.ndarray, sided: bool) -> int:
    """Step along the arc where the ball lies, in the first run of the wanted ground."""
    first = int(np.argmax(there))
    run = there[first:]
    half = ((len(run) if run.all() else int(np.argmin(run))) - 1) // 2
    if first == 0:  # the line itself is on it
        return half if sided else 0
    return first + min(int(INSIDE_YD / STEP_YD), half)


def surfaces_at(hole: Hole, x_yd: np.ndarray, y_yd: np.ndarray) -> np.ndarray:
    """Surface code of each place, int (n,); x_yd, y_yd : (n,) [yd]."""
    index = features_at(hole, x_yd, y_yd)
    codes = np.array([int(f.surface) for f in hole.features] + [int(Surface.ROUGH)])
    return codes[index]


def likeliest(xy_yd: np.ndarray, surfaces: np.ndarray) -> tuple[np.ndarray, Surface] | None:
    """The ball nearest to the middle of those on the ground most of them lie on, and that ground.

    Only ground that a shot is played from counts; None where no ball lies on such.

    Parameters
    ----------
    xy_yd : float64[n, 2]
    surfaces : int[n]
        Surface code of each.
    """
    playable = [s for s in Surface if s in LIE_OF and LIE_OF[s] is not Lie.GREEN]
    counts = [int(np.count_nonzero(surfaces == s)) for s in playable]
    if not max(counts):
        return None
    ground = playable[int(np.argmax(counts))]
    here = xy_yd[surfaces == ground]
    return here[int(np.argmin(np.hypot(*(here - np.median(here, axis=0)).T)))], ground


def features_at(hole: Hole, x_yd: np.ndarray, y_yd: np.ndarray) -> np.ndarray:
    """Index in `hole.features` of the topmost feature at each place, -1 on bare rough, int (n,)."""
    index = np.full(np.shape(x_yd), -1)
    for k, feature in enumerate(hole.features):
        index[shapely.contains_xy(feature.area, x_yd, y_yd)] = k
    return index
