"""Woods, heath and marsh that a mapper drew over a whole hole, cleared from where it is mown."""

from __future__ import annotations

import shapely
from shapely.ops import substring

from simulator.hole.maps.gather import Piece
from simulator.hole.maps.place import Area

COVERED = 0.5
"""Mown ground that lies in growth with more than this share of it was mapped without regard to it."""

EDGE_SHARE = 0.02
"""So much of a green or tee under growth is more than two outlines that meet (assumed)."""

OUT_YD, INTO_YD, LANE_YD = 80.0, 40.0, 6.0
"""No growth stands on the line so far from a tee, nor so far before a green, nor so far beside it there [yd]
(assumed)."""

ACROSS = 0.35
"""Growth over more than this share of the line of play is no carry but drawn over the hole (assumed)."""

ALL_OVER = 0.8
"""Long grass over this share of a line says nothing of where the rough is deep (assumed)."""

CORRIDOR_YD, ROUND_YD = 20.0, 8.0
"""What is cleared either side of the line, and round greens, tees and fairways [yd] (assumed)."""


def clear(
    pieces: list[Piece], play: shapely.LineString, green: Area, tees: list[Area], warnings: list[str]
) -> None:
    """Clear woods and marsh from fairways, green, tees and the line they cover; sentences to `warnings`.

    Long grass drawn over the whole hole is left out. What stands in a fairway with little of it stays.
    """
    ways = _open_ways(play, tees)
    fairways = [p.area for p in pieces if p.ground.key == "fairway"]
    for piece in list(pieces):
        word = piece.item.tags.get("name") or piece.ground.word
        word = word[:1].upper() + word[1:]
        share = piece.area.intersection(play).length / max(play.length, 1e-9)
        if piece.ground.key == "heavy_rough" and share > ALL_OVER:
            pieces.remove(piece)
            warnings.append(f"{word} is drawn over the whole hole: left out, the rough is ordinary.")
        if piece.ground.key != "trees" and piece.ground.word not in ("wetland", "beach"):
            continue
        if piece.ground.width_yd > 0.0:
            continue
        mown = [a for a in fairways if piece.area.intersection(a).area > COVERED * a.area]
        own = [a for a in (green, *tees) if piece.area.intersection(a).area > EDGE_SHARE * a.area]
        lane: list[shapely.Geometry] = []
        if piece.ground.key == "trees":  # over a marsh a ball is carried
            lane += [play.buffer(CORRIDOR_YD, cap_style="flat")] if share > ACROSS else []
            lane += [way.buffer(LANE_YD, quad_segs=2) for way in ways if piece.area.intersects(way)]
        if mown or own or lane:
            off = shapely.union_all([*(a.buffer(ROUND_YD, quad_segs=3) for a in [*mown, *own]), *lane])
            piece.area = piece.area.difference(off)
            warnings.append(f"{word} is drawn over mown ground of the hole: cleared there.")
    pieces[:] = [piece for piece in pieces if not piece.area.is_empty]


def _open_ways(play: shapely.LineString, tees: list[Area]) -> list[shapely.LineString]:
    """Where a ball is too low for trees: from each tee to the line ahead, and the way into the green."""
    length = play.length
    into = [substring(play, max(length - INTO_YD, 0.5 * length), length)]
    out = [substring(play, 0.0, min(OUT_YD, 0.5 * length))]
    for tee in tees:
        middle = tee.centroid
        ahead = play.interpolate(min(play.project(middle) + OUT_YD, 0.5 * length))
        if ahead.distance(middle) > 1.0:
            out.append(shapely.LineString([middle, ahead]))
    return out + into
