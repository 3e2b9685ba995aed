"""Which green ends a hole line, and which way the line runs."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.ops import substring

from simulator.hole.maps.gather import GREEN, Piece, Site
from simulator.hole.maps.lines import HoleLine
from simulator.hole.maps.place import Area, distinct

OWN_GREEN_YD = 12.0
"""A line that ends within this of a green ends on it [yd]: mappers stop at the front edge."""

LOOSE_GREEN_YD = 25.0
"""A line may end up to this from a green that no other line ends on [yd]; farther ones are never borrowed."""

AHEAD_YD, AHEAD_DEG = 60.0, 30.0
"""A line may stop this far short of a green that nobody else plays to, when it points at it within this."""

PAST_YD = 60.0
"""A line may run on this far past the green that it crosses [yd]."""

REVERSED_YD = 15.0
"""A line starts on a green when it starts within this of one [yd]."""

TEE_YD = 20.0
"""A line starts on a tee when the middle of one is within this of it [yd]."""

TURNED = "Its line was drawn from green to tee: turned round."

PLAIN_DEPTH_YD, PLAIN_WIDTH_YD = 30.0, 26.0
"""A green drawn where the map has none [yd]: 610 yd2, about the mean of 5,000 to 6,000 square feet (common
practice, from memory)."""


@dataclass(eq=False)
class HoleGreen:
    """The green of a hole: its area, and whether it was drawn for want of one in the map."""

    area: Area
    plain: bool
    piece: Piece | None


def nearest(pieces: list[Piece], place: np.ndarray) -> tuple[float, Piece | None]:
    """The nearest of some areas and how far it is; the smallest of several that hold the place."""
    point = shapely.Point(place)
    found = [(piece.area.distance(point), piece.area.area, k) for k, piece in enumerate(pieces)]
    if not found:
        return math.inf, None
    away, _, k = min(found)
    return away, pieces[k]


def set_directions(site: Site) -> None:
    """Turn round the lines that run from green to tee: a green at the start, none or a tee at the end."""
    tees = [t.area for t in site.tees] + [shapely.Point(t.points[0]) for t in site.tee_points]
    ground = shapely.MultiPoint([t.centroid for t in tees]) if tees else shapely.Point()
    for line in site.lines:
        start, end = line.xy[0], line.xy[-1]
        green_start, green_end = nearest(site.greens, start)[0], nearest(site.greens, end)[0]
        tee_end = ground.distance(shapely.Point(end)) if tees else math.inf
        tee_start = ground.distance(shapely.Point(start)) if tees else math.inf
        if _comes_from_green(site, line, green_end, tee_start, tee_end):
            line.reverse()
            line.assumed.append(TURNED)
            continue
        if green_start > REVERSED_YD or (green_end <= OWN_GREEN_YD and tee_start <= tee_end + 5.0):
            continue
        if (
            (green_end > LOOSE_GREEN_YD and not _starts_on_a_tee(site, line, tee_start, tee_end))
            or (OWN_GREEN_YD < green_end <= LOOSE_GREEN_YD and tee_end < min(tee_start, 2.0 * TEE_YD))
            or (green_start == 0.0 and green_end > 0.0 and tee_end < min(tee_start, 20.0))
        ):
            line.reverse()
            line.assumed.append(TURNED)


def _comes_from_green(site: Site, line: HoleLine, green_end: float, tee_start: float, tee_end: float) -> bool:
    """Whether a line that ends on a tee would lead to a green if turned, or the map has none anywhere."""
    if green_end <= LOOSE_GREEN_YD or tee_end > TEE_YD or tee_start < tee_end + TEE_YD / 2.0:
        return False
    back = line.xy[::-1]
    return not site.greens or bool(_ahead(site, line, back) or _crossed(site, line, back))


def _starts_on_a_tee(site: Site, line: HoleLine, tee_start: float, tee_end: float) -> bool:
    """Whether a line without a green at its end starts at a tee beside the green of another hole."""
    if tee_start <= min(tee_end, TEE_YD):
        return True
    _, green = nearest(site.greens, line.xy[0])
    return green is not None and tee_end > TEE_YD and _claimed(site, line, green, OWN_GREEN_YD)


def green_of(site: Site, line: HoleLine) -> HoleGreen:
    """The green a line ends on; a plain one at its end, said in its warnings, where the map has none near."""
    end = line.xy[-1]
    away, piece = nearest(site.greens, end)
    if away > 0.0:
        crossed = _crossed(site, line, line.xy)
        if crossed is not None and (crossed is piece or away > OWN_GREEN_YD):
            _end_on(line, crossed)
            return HoleGreen(crossed.area, False, crossed)
    if piece is not None and away > OWN_GREEN_YD:
        if away > LOOSE_GREEN_YD or min(_from_other_ends(site, line, piece), default=away) < away:
            piece = None
    if piece is None:
        ahead = _ahead(site, line, line.xy)
        if ahead is not None:
            far = ahead.area.distance(shapely.Point(end))
            line.warnings.append(f"Its line ends {far:.0f} yd short of the green it points at: led on to it.")
            _lead_to(line, ahead)
            return HoleGreen(ahead.area, False, ahead)
        near = f"the nearest is {away:.0f} yd away" if away < 1000.0 else "there is none near"
        line.warnings.append(
            f"No green at the end of its line ({near}): a plain one,"
            f" {PLAIN_DEPTH_YD:.0f} by {PLAIN_WIDTH_YD:.0f} yd."
        )
        return HoleGreen(_plain(line), True, None)
    if away > 0.0:
        line.assumed.append(f"Its line ends {away:.0f} yd short of the green: led on to the middle of it.")
        _lead_to(line, piece)
    return HoleGreen(piece.area, False, piece)


def _middle(area: Area) -> np.ndarray:
    """A place well on a green."""
    middle = area.centroid if area.contains(area.centroid) else area.representative_point()
    return np.array([middle.x, middle.y])


def _lead_to(line: HoleLine, piece: Piece) -> None:
    """End a line in the middle of a green; a last corner beyond that is given up, no line turns back."""
    middle, kept = _middle(piece.area), line.xy
    if len(kept) > 1 and (middle - kept[-1]) @ (kept[-1] - kept[-2]) < 0.0:
        kept = kept[:-1]
    line.xy = np.vstack([kept, middle])


def _from_other_ends(site: Site, line: HoleLine, piece: Piece) -> list[float]:
    """How far a green is from the end of each other line [yd]."""
    return [piece.area.distance(shapely.Point(one.xy[-1])) for one in site.lines if one is not line]


def _claimed(site: Site, line: HoleLine, piece: Piece, yards: float) -> bool:
    """Whether another line ends within a distance of a green."""
    return min(_from_other_ends(site, line, piece), default=math.inf) <= yards


def _crossed(site: Site, line: HoleLine, xy: np.ndarray) -> Piece | None:
    """The last green that the end of a line (n, 2) runs over and that is nobody else's."""
    shape = shapely.LineString(xy)
    tail = substring(shape, max(shape.length - PAST_YD, 0.5 * shape.length), shape.length)
    over = [p for p in site.greens if p.area.intersection(tail).length > 5.0]
    over = [p for p in over if not _claimed(site, line, p, OWN_GREEN_YD)]
    return max(over, key=lambda p: shape.project(p.area.centroid), default=None)


def _end_on(line: HoleLine, piece: Piece) -> None:
    """Cut a line off in the middle of its way over a green."""
    shape = line.shape()
    over = max(shapely.get_parts(shape.intersection(piece.area)), key=lambda part: part.length)
    stop = shape.project(over.interpolate(0.5, normalized=True))
    past = shape.length - stop
    line.assumed.append(f"Its line runs {past:.0f} yd past the middle of the green: ended there.")
    line.xy = distinct(shapely.get_coordinates(substring(shape, 0.0, stop)))


def _ahead(site: Site, line: HoleLine, xy: np.ndarray) -> Piece | None:
    """The nearest green that a line (n, 2) points at from some way short, if no other line ends near it."""
    end, last = shapely.Point(xy[-1]), xy[-1] - xy[-2]
    found: list[tuple[float, int, Piece]] = []
    for piece in site.greens:
        away = piece.area.distance(end)
        way = _middle(piece.area) - xy[-1]
        off = abs(math.degrees(math.atan2(last[0] * way[1] - last[1] * way[0], way @ last)))
        if away <= AHEAD_YD and off <= AHEAD_DEG and not _claimed(site, line, piece, LOOSE_GREEN_YD):
            found.append((away, len(found), piece))
    return min(found)[2] if found else None


def _plain(line: HoleLine) -> Area:
    """An ellipse round the end of a line, lengthwise along its last leg."""
    (x, y), (dx, dy) = line.xy[-1], line.xy[-1] - line.xy[-2]
    size = math.hypot(dx, dy)
    ux, uy = dx / size, dy / size
    turn = np.linspace(0.0, 2.0 * math.pi, 48, endpoint=False)
    along, across = PLAIN_DEPTH_YD / 2.0 * np.cos(turn), PLAIN_WIDTH_YD / 2.0 * np.sin(turn)
    return shapely.Polygon(np.column_stack([x + along * ux - across * uy, y + along * uy + across * ux]))


def other_greens(site: Site, green: HoleGreen) -> list[Piece]:
    """Every other green and practice green: ground with free relief (Rule 13.1f), so it plays as fairway."""
    said = "Other greens play as fairway (free relief from a wrong green, Rule 13.1f)."
    ground = GREEN._replace(key="fairway", word="other green", said=said)
    return [
        Piece(p.item, p.area, ground) for p in [*site.greens, *site.practice_greens] if p is not green.piece
    ]
