"""Places on the fringe of a green ("fringe", "back fringe, 12 out") as places by their coordinates."""

from __future__ import annotations

import re

import numpy as np
import shapely

from ..errors import WordsRefused
from ..hole.collar import with_collars
from ..hole.model import Hole
from ..hole.surfaces import Surface
from ..units import FT_PER_YD
from .by_green import RIM_YD
from .distancewords import NUMBER, UNIT, yards
from .placewords import Told, plain

STEP_YD = 0.25
"""Step round the green [yd]."""

SLACK_YD = 1.5
"""How far from the distance that was said the fringe may be [yd]: two paces short or long (assumed)."""

NAMED = re.compile(r"\b(?:fringe|collar|apron)s?\b", re.IGNORECASE)
"""Words for it."""

_WHERE = re.compile(
    r"(?:just\s+)?(?:(?:on|in|from)\s+)?(?:the\s+)?(?:(?P<end>front|near|back|far|left|right)(?:[\s-]*hand)?"
    r"(?:\s+side)?(?:\s+of)?(?:\s+the)?\s+)?(?:fringe|collar|apron)"
    r"(?:\s+(?:of\s+)?(?:the\s+)?(?:putting\s+)?green)?"
    r"(?:[\s,]+(?:(?:on|at|to)\s+)?(?:the\s+)?(?P<end2>front|near|back|far|left|right)(?:[\s-]*hand)?(?:\s+side)?)?"
)
_FAR = re.compile(
    rf"(?P<n>{NUMBER})\s*(?P<unit>{UNIT}|feet|foot|ft|paces?)?"
    r"(?:\s*(?:out|away|short|off)|\s+(?:from|to|of|off)\s+(?:the\s+)?(?:pin|flag|hole))*"
)
_NEAR = {"near": "front", "far": "back"}
_PIN_HIGH = re.compile(r"\b(?:pin|flag|hole)[\s-]+high\b")


def fringed(hole: Hole, text: str) -> Hole:
    """The hole with fringe round its green where words name it and the hole draws none."""
    return with_collars(hole) if _names_it(hole, text) else hole


def _names_it(hole: Hole, text: str) -> bool:
    """Whether words name the fringe of a green, and no area of the hole that is called so ("apron")."""
    drawn = [re.escape(f.name) for f in hole.features if not f.is_fringe]
    return NAMED.search(re.sub("|".join(drawn), " ", text, flags=re.IGNORECASE)) is not None


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
    level, rest = _PIN_HIGH.search(rest) is not None, _PIN_HIGH.sub(" ", rest).strip(" ,")
    far = _FAR.fullmatch(rest)
    if rest and far is None:
        return None
    if not any(one.is_fringe for one in hole.features):
        why = "no fringe is drawn: collar_yd of the green, or simulator.hole.collar.with_collars, draws one"
        raise WordsRefused("place", text, why)
    end = where["end"] or where["end2"] or ""
    end = _NEAR.get(end, end)
    ring = _ring(hole, end)
    if not len(ring):
        raise WordsRefused("place", text, "no fringe there: say what the ball lies in")
    if far is None:
        x, y = _halfway(hole, ring, end or "front", level=level and end in ("left", "right"))
        taken = None if end else "the fringe is taken as that in front of the green"
        return Told(f"{x:.2f},{y:.2f}", taken)
    unit = far["unit"] or "yd"
    asked_yd = float(far["n"]) / FT_PER_YD if unit in ("feet", "foot", "ft") else _yards(far["n"], unit)
    out_yd = np.hypot(*(ring - hole.pin.xy_yd).T)
    off_yd = np.abs(out_yd - asked_yd)
    if off_yd.min() > SLACK_YD:
        side = f"{end} " if end else ""
        ends = f"{out_yd.min():.0f} to {out_yd.max():.0f} yd"
        raise WordsRefused("place", text, f"the {side}fringe is {ends} from the {hole.pin.name} pin")
    x, y = min(ring[off_yd <= off_yd.min() + STEP_YD].tolist(), key=lambda xy: hole.station_offset(*xy)[0])
    return Told(f"{x:.2f},{y:.2f}")


def _yards(number: str, unit: str) -> float:
    return float(number) if unit.startswith("pace") else yards(number, unit)


def _ring(hole: Hole, end: str) -> np.ndarray:
    """Places half way across the fringe on a side of the green, or all round it, float64[n, 2] [yd]."""
    edge = hole.green.buffer(RIM_YD).boundary
    xy = shapely.get_coordinates(shapely.line_interpolate_point(edge, np.arange(0.0, edge.length, STEP_YD)))
    mown = np.array([hole.surface_at(*one) in (Surface.FAIRWAY, Surface.ROUGH) for one in xy.tolist()])
    xy = xy[mown]
    if not end or not len(xy):
        return xy
    along = np.array([hole.station_offset(*one) for one in xy.tolist()])
    middle = hole.station_offset(hole.green.centroid.x, hole.green.centroid.y)
    off = along - middle
    sides = {"front": -off[:, 0], "back": off[:, 0], "left": -off[:, 1], "right": off[:, 1]}
    return xy[sides[end] > 0.5 * max(float(sides[end].max()), 0.0)]


def _halfway(hole: Hole, ring: np.ndarray, end: str, *, level: bool) -> tuple[float, float]:
    """The place of a side of the fringe that is level with the middle of the green, or with the pin."""
    of = hole.pin.xy_yd if level else (hole.green.centroid.x, hole.green.centroid.y)
    middle = hole.station_offset(*of)
    along = np.array([hole.station_offset(*one) for one in ring.tolist()]) - middle
    across = 1 if end in ("front", "back") else 0
    sign = -1.0 if end in ("front", "left") else 1.0
    behind = sign * along[:, 1 - across] <= 0.0
    away = np.where(behind & ~behind.all(), np.inf, np.abs(along[:, across]))  # sand may lie all along a side
    x, y = ring[int(np.argmin(away))].tolist()
    return x, y
