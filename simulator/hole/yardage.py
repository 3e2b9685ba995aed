"""What a yardage page says of a hole: its troubles, how wide the fairway is, the green."""

from __future__ import annotations

import math
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np
import shapely

from simulator.hole.cuts import cut, mown_strips, strips_of
from simulator.hole.model import Hole
from simulator.hole.troubles import EDGE_STEP_YD, Trouble, troubles_of

WIDTH_STEP_YD = 10.0
"""The fairway is measured at every so many yards along the line, unless others are asked for [yd]."""


@dataclass(frozen=True)
class Width:
    """Unbroken mown ground across the line at one station: offsets of its edges, right positive.

    A bunker in the fairway ends it: this is what a ball can come down on. `others_yd` are the edges of the
    mown pieces beside it there, from left to right: past a bunker, the other half of a split fairway.
    """

    station_yd: float
    left_yd: float
    right_yd: float
    others_yd: tuple[tuple[float, float], ...] = ()

    @property
    def width_yd(self) -> float:
        return self.right_yd - self.left_yd

    @property
    def pieces(self) -> list[tuple[float, float]]:
        """Left and right edge of everything mown there, from left to right."""
        return sorted([(self.left_yd, self.right_yd), *self.others_yd])


@dataclass(frozen=True)
class PinOnGreen:
    """A pin on its green: yards on from the front edge and yards from either side at its depth."""

    name: str
    on_yd: float
    from_left_yd: float
    from_right_yd: float


@dataclass(frozen=True)
class GreenSize:
    """The green that the pin in use stands on.

    Attributes
    ----------
    front_yd, back_yd : float
        Stations of its edges.
    ball_front_yd, ball_back_yd : float
        Nearest and farthest edge straight from the ball.
    width_yd : float
        Greatest width across the line.
    pins : tuple of PinOnGreen
        Pins of the hole that stand on it.
    """

    front_yd: float
    back_yd: float
    ball_front_yd: float
    ball_back_yd: float
    width_yd: float
    pins: tuple[PinOnGreen, ...]

    @property
    def depth_yd(self) -> float:
        return self.back_yd - self.front_yd


@dataclass(frozen=True)
class Yardage:
    """Everything measured on one hole; lengths in yards.

    Attributes
    ----------
    troubles : tuple of Trouble
        In order of their nearest edge.
    widths : tuple of Width
        Every `width_step_yd` of the line where there is fairway.
    green : GreenSize
    width_step_yd : float
    """

    hole: Hole
    troubles: tuple[Trouble, ...]
    widths: tuple[Width, ...]
    green: GreenSize
    width_step_yd: float = WIDTH_STEP_YD

    def to_dict(self) -> dict[str, Any]:
        """The figures as plain JSON-ready data."""
        hole = self.hole
        return {
            "schema": "holesim-show-1",
            "hole": hole.name,
            "par": hole.par,
            "tee": hole.tee.name,
            "pin": hole.pin.name,
            "length_yd": hole.length_yd,
            "troubles": [trouble.to_dict() for trouble in self.troubles],
            "fairway_widths": [{**asdict(width), "width_yd": width.width_yd} for width in self.widths],
            "green": {**asdict(self.green), "depth_yd": self.green.depth_yd},
            "assumed": list(hole.assumed),
        }


def measure(
    hole: Hole, ball: tuple[float, float] = (0.0, 0.0), *, width_step_yd: float = WIDTH_STEP_YD
) -> Yardage:
    """Everything a yardage page says of a hole, with its tee and pin in use.

    Parameters
    ----------
    hole : Hole
    ball : (x, y) [yd]
        Where straight distances are measured from; the middle of the tee in use when left out. Stations
        stay yards along the line of play from the tee.
    width_step_yd : float
        The fairway is measured at every so many yards along the line: those of 10 metres, say.

    Notes
    -----
    Stations are those of the nearest point of the line (`PlayLine`).
    """
    green = _green(hole, ball)
    widths = tuple(_widths(hole, green.front_yd, width_step_yd))
    return Yardage(hole, troubles_of(hole, ball), widths, green, width_step_yd)


def _widths(hole: Hole, end_yd: float, step_yd: float) -> list[Width]:
    """The mown ground the line runs on, or else the widest piece of it, at every step short of the green."""
    found = []
    for k in range(1, math.ceil(end_yd / step_yd)):
        station = k * step_yd
        pieces = mown_strips(hole, station)
        if pieces:
            here = [piece for piece in pieces if piece[0] <= 0.0 <= piece[1]]
            main = here[0] if here else max(pieces, key=lambda piece: piece[1] - piece[0])
            found.append(Width(station, *main, tuple(piece for piece in pieces if piece != main)))
    return found


def _green(hole: Hole, ball: tuple[float, float]) -> GreenSize:
    green = hole.green
    edge = shapely.segmentize(green, EDGE_STEP_YD)
    xy, places = shapely.get_coordinates(edge), hole.play_line.corners_of(edge)
    front, back = float(places[:, 0].min()), float(places[:, 0].max())
    stations = np.arange(front, back, EDGE_STEP_YD)
    widths = [b - a for s in stations for a, b in strips_of(cut(hole, float(s)), green)]
    pins = []
    for pin in hole.pins:
        if not green.covers(shapely.Point(pin.x_yd, pin.y_yd)):
            continue
        station, offset = hole.station_offset(pin.x_yd, pin.y_yd)
        pieces = strips_of(cut(hole, station), green)
        left, right = min(pieces, key=lambda piece: abs(offset - (piece[0] + piece[1]) / 2.0))
        pins.append(PinOnGreen(pin.name, station - front, offset - left, right - offset))
    away = np.hypot(xy[:, 0] - ball[0], xy[:, 1] - ball[1])
    return GreenSize(
        front_yd=front,
        back_yd=back,
        ball_front_yd=float(green.distance(shapely.Point(ball))),
        ball_back_yd=float(away.max()),
        width_yd=max(widths),
        pins=tuple(pins),
    )
