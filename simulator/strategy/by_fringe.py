"""Places on the fringe of a green ("fringe", "back fringe, 12 out") as places by their coordinates."""

from __future__ import annotations

import re

import numpy as np
import shapely

from ..errors import WordsRefused
from ..hole.collar import with_collars
from ..hole.model import Hole
from ..hole.surfaces import Surface
from .by_green import PIN_HIGH, RIM_YD
from .distancewords import NUMBER, UNIT_OR_FEET, yards
from .placewords import Told, plain

STEP_YD = 0.25
"""Step round the green [yd]."""

SLACK_YD = 1.5
"""How far from the distance that was said the fringe may be [yd]: two paces short or long (assumed)."""

_NAMED = re.compile(r"\b(?:fringe|collar|apron)s?\b", re.IGNORECASE)
"""Words for it."""

_WHERE = re.compile(
    r"(?:just\s+)?(?:(?:on|in|from)\s+)?(?:the\s+)?(?:(?P<end>front|near|back|far|left|right)(?:[\s-]*hand)?"
    r"(?:\s+side)?(?:\s+of)?(?:\s+the)?\s+)?(?:fringe|collar|apron)"
    r"(?:\s+(?:of\s+)?(?:the\s+)?(?:putting\s+)?green)?"
    r"(?:[\s,]+(?:(?:on|at|to)\s+)?(?:the\s+)?(?P<end2>front|near|back|far|left|right)(?:[\s-]*hand)?(?:\s+side)?)?"
)
_FAR = re.compile(
    rf"(?P<n>{NUMBER})\s*(?P<unit>{UNIT_OR_FEET})?"
    r"(?:\s*(?:out|away|short|off)|\s+(?:from|to|of|off)\s+(?:the\s+)?(?:pin|flag|hole))*"
)
_NEAR = {"near": "front", "far": "back"}
_WAYS = {"front": (-1.0, 0.0), "back": (1.0, 0.0), "left": (0.0, -1.0), "right": (0.0, 1.0)}
"""Which way each side lies: on along the line of play, and right of it."""



def fringed(hole: Hole, text: str) -> Hole:
    """The hole with fringe round its green where words name it and the hole draws none."""
    return with_collars(hole) if _names_it(hole, text) else hole


def _names_it(hole: Hole, text: str) -> bool:
    """Whether words name the fringe of a green, and no area of the hole that is called so ("apron")."""
    drawn = [re.escape(f.name) for f in hole.features if not f.is_fringe]
    return _NAMED.search(re.sub("|".join(drawn), " ", text, flags=re.IGNORECASE)) is not None


def by_the_fringe(text: str, hole: Hole) -> Told | None:
    """A place on the fringe put into coordinates, which `places.place` reads.

    Parameters
    ----------
    text : str
        ``"fringe"``, ``"back fringe"``, ``"on the fringe, 12 yards from the pin"``, ``"left fringe, 40 ft"``.
        Without a side it is nearest to the tee; without a distance half way along its side, or level with the
        pin where that is said (``"pin high, right fringe"``).
    hole : Hole
        With the tee and pin in use.

    Raises
    ------
    UsageError
        No fringe is drawn, none at that distance, or none that bunkers and water leave.
    """
    usual = plain(text)
    where = _WHERE.search(usual)
    if where is None or not _names_it(hole, text):
        return None
    rest = f"{usual[: where.start()]} {usual[where.end() :]}"
    level, rest = PIN_HIGH.search(rest) is not None, PIN_HIGH.sub(" ", rest).strip(" ,")
    far = _FAR.fullmatch(rest)
    if rest and far is None:
        return None
    if not any(one.is_fringe for one in hole.features):
        why = "no fringe is drawn: collar_yd of the green, or simulator.hole.collar.with_collars, draws one"
        raise WordsRefused("place", text, why)
    end = where["end"] or where["end2"] or ""
    end = _NEAR.get(end, end)
    ring, off = _ring(hole)
    outwards = off @ _WAYS[end or "front"]
    if end:  # not where a side goes over into the next
        there = outwards > 0.5 * outwards.max(initial=0.0)
        ring, off, outwards = ring[there], off[there], outwards[there]
    if not len(ring):
        raise WordsRefused("place", text, "no fringe there: say what the ball lies in")
    if far is not None:
        x, y = _so_far(text, hole, ring, end, yards(far["n"], far["unit"]))
        return Told(f"{x:.2f},{y:.2f}")
    beside = end in ("left", "right")
    at_on = hole.station_offset(*hole.pin.xy_yd)[0] - _middle(hole)[0] if level and beside else 0.0
    away = np.abs(off[:, 0] - at_on) if beside else np.abs(off[:, 1])
    behind = outwards <= 0.0
    away[behind & ~behind.all()] = np.inf  # sand may lie all along the front
    x, y = ring[int(np.argmin(away))].tolist()
    return Told(f"{x:.2f},{y:.2f}", None if end else "the fringe is taken as that in front of the green")


def _so_far(text: str, hole: Hole, ring: np.ndarray, end: str, asked_yd: float) -> tuple[float, float]:
    """The place of a side of the fringe that is so far from the pin, of several the nearest to the tee."""
    out_yd = np.hypot(*(ring - hole.pin.xy_yd).T)
    off_yd = np.abs(out_yd - asked_yd)
    if off_yd.min() > SLACK_YD:
        side = f"{end} " if end else ""
        ends = f"{out_yd.min():.0f} to {out_yd.max():.0f} yd"
        raise WordsRefused("place", text, f"the {side}fringe is {ends} from the {hole.pin.name} pin")
    able = ring[off_yd <= off_yd.min() + STEP_YD].tolist()
    x, y = min(able, key=lambda xy: hole.station_offset(*xy)[0])
    return x, y


def _middle(hole: Hole) -> tuple[float, float]:
    """Station and offset of the middle of the green [yd]."""
    return hole.station_offset(hole.green.centroid.x, hole.green.centroid.y)


def _ring(hole: Hole) -> tuple[np.ndarray, np.ndarray]:
    """Places half way across the fringe all round the green, and how far each is on from the middle of that
    green and right of it, both float64[n, 2] [yd]; none in sand or water."""
    edge = hole.green.buffer(RIM_YD).boundary
    places = shapely.line_interpolate_point(edge, np.arange(0.0, edge.length, STEP_YD))
    xy = shapely.get_coordinates(places)
    mown = np.array([hole.surface_at(*one) in (Surface.FAIRWAY, Surface.ROUGH) for one in xy.tolist()])
    along = hole.play_line.corners_of(shapely.multipoints(xy[mown]))
    return xy[mown], along - _middle(hole)
