"""Which tees belong to a hole line, what they are called and where on their ground they stand."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np
import shapely

from simulator.hole.line import PlayLine
from simulator.hole.maps.gather import Site
from simulator.hole.maps.lines import HoleLine, clean
from simulator.hole.maps.place import Area
from simulator.hole.maps.refs import Label, tee_number
from simulator.hole.maps.tags import BACK_TO_FRONT, tee_words

BEHIND_YD = 130.0
"""A tee may lie this far behind the start of its line [yd]."""

ASIDE_YD = 40.0
"""And this far beside it [yd]."""

AHEAD_SHARE, AHEAD_YD = 0.45, 220.0
"""Forward tees lie within this share of the line and this distance of its start [yd] (common practice)."""

NUMBERED_YD = 250.0
"""A tee that says its hole may lie this far from the start of the line [yd]."""

START_YD = 25.0
"""A line that starts farther than this behind every tee starts on one that is not in the map [yd]."""

SHARED_YD = 4.0
"""A line that starts within this of a tee's ground uses it, whoever else does [yd]."""


TWICE_YD = 15.0
"""Lines nearer to one another than this all the way share their tees [yd]: nine holes played twice."""


@dataclass(eq=False)
class HoleTees:
    """Tees of a hole: names and places, the back one first, the ground they stand on, and sentences."""

    spots: list[tuple[str, float, float]] = field(default_factory=list)
    grounds: list[Area] = field(default_factory=list)
    mapped: int = 0
    assumed: list[str] = field(default_factory=list)


@dataclass(eq=False)
class _Tee:
    """A tee of the map, area or point."""

    tags: dict[str, str]
    x: float
    y: float
    area: Area | None


def assign_tees(site: Site) -> dict[tuple[int, int], HoleTees]:
    """Tees of every hole of a site, by the place of its line in `site.lines` and of its label on that line.

    Of a line that is played as two holes, tees that say the number of one are no tees of the other.
    """
    tees = [_Tee(p.item.tags, p.area.centroid.x, p.area.centroid.y, p.area) for p in site.tees]
    grounds = [t.area for t in tees if t.area is not None]
    tees += [
        _Tee(p.tags, float(x), float(y), None) for p in site.tee_points for x, y in p.points
        if not any(shapely.intersects_xy(area, x, y) for area in grounds) or tee_words(p.tags)
    ]  # fmt: skip
    mine: dict[int, list[_Tee]] = {k: [] for k in range(len(site.lines))}
    plays = [_play(line) for line in site.lines]
    for tee in tees:
        for k in _whose(tee, site.lines, plays):
            mine[k].append(tee)
    return {
        (k, turn): _settled(site.lines[k], plays[k], mine[k], _of_label(mine[k], site.lines[k], label))
        for k in mine
        for turn, label in enumerate(site.lines[k].labels)
    }


def _of_label(tees: list[_Tee], line: HoleLine, label: Label) -> list[_Tee]:
    """Tees of a line without those of another of its numbers; all of them when nothing would be left."""
    others = {one.number for one in line.labels} - {label.number}

    def elsewhere(tee: _Tee) -> bool:
        says = {one.number for one in tee_number(tee.tags)}
        return bool(says & others) and label.number not in says

    return [tee for tee in tees if not elsewhere(tee)] or tees


def _play(line: HoleLine) -> PlayLine:
    """The line of play to measure along; straight where the mapper's doubles back."""
    corners = clean(line.xy)
    if corners is None:
        corners = line.xy[[0, -1]]
        if np.hypot(*(corners[1] - corners[0])) < 1.0:
            corners = line.xy[[0, 0]] + [[0.0, 0.0], [0.0, 1.0]]  # no hole is made of it anyway
    return PlayLine(corners)


def _whose(tee: _Tee, lines: list[HoleLine], plays: list[PlayLine]) -> list[int]:
    """Lines a tee belongs to: those of the number it says if one starts near, else the line it fits best."""
    costs = [_cost(tee, line, play) for line, play in zip(lines, plays, strict=True)]
    numbers = tee_number(tee.tags)
    named = []
    for label in numbers:
        fits = [
            (float(np.hypot(tee.x - line.xy[0, 0], tee.y - line.xy[0, 1])), k)
            for k, line in enumerate(lines)
            if any(label.number == own.number and label.loop in ("", own.loop) for own in line.labels)
        ]  # fmt: skip
        if (
            fits
            and min(fits)[0] < NUMBERED_YD
            and plays[min(fits)[1]].station_offset(tee.x, tee.y)[0] < AHEAD_YD + 50.0
        ):
            named.append(min(fits)[1])
    if named:
        return list(dict.fromkeys(named))
    found = [k for k, cost in enumerate(costs) if cost < np.inf]
    if not found:
        return []
    best = min(found, key=lambda k: costs[k])
    shared = [
        k
        for k in found
        if tee.area is not None and tee.area.distance(shapely.Point(lines[k].xy[0])) < SHARED_YD
    ]
    mine = list(dict.fromkeys([*shared, best])) if best in shared or not shared else shared
    return mine + [k for k in found if k not in mine and any(_same_way(lines[k], lines[own]) for own in mine)]


def _same_way(line: HoleLine, other: HoleLine) -> bool:
    """Whether two lines are one hole played as two: both ends and the way between them are near."""
    ends = np.hypot(*(line.xy[[0, -1]] - other.xy[[0, -1]]).T)
    return bool(ends.max() < TWICE_YD) and shapely.hausdorff_distance(line.shape(), other.shape()) < TWICE_YD


def _cost(tee: _Tee, line: HoleLine, play: PlayLine) -> float:
    """How badly a tee fits a line [yd]: mostly how far it is beside it; infinite when it cannot be."""
    station, offset = play.station_offset(tee.x, tee.y)
    limit = min(AHEAD_SHARE * play.length_yd, AHEAD_YD)
    if not -BEHIND_YD <= station <= limit or abs(offset) > ASIDE_YD:
        return np.inf
    return abs(offset) + 0.1 * max(station, 0.0) + 0.3 * max(-station, 0.0)


def _settled(line: HoleLine, play: PlayLine, every: list[_Tee], tees: list[_Tee]) -> HoleTees:
    """Names and places of the tees of a hole, from the back; the start of its line where there is none.

    `every` tee of the line has its ground there, also one of the other hole that the line is played as.
    """
    own = [t.area for t in tees if t.area is not None]
    others = [t.area for t in every if t.area is not None and t not in tees]
    out = HoleTees([], own + others, len(tees))
    spots: list[tuple[float, str, float, float]] = []
    for tee in tees:
        spots += _spots_on(tee, play, out.assumed)
    for x, y, tags in line.starts:
        if all(np.hypot(x - a, y - b) > 12.0 for _, _, a, b in spots):
            words = tee_words(tags)
            spots.append((play.station_offset(x, y)[0], words[0] if words else "", x, y))
    spots.sort(key=lambda s: s[0])
    start = shapely.Point(line.xy[0])
    on_tee = any(area.distance(start) < START_YD for area in out.grounds)
    if not spots:
        out.assumed.append("No tee in the map: the start of its line.")
    if (
        not on_tee
        and all(np.hypot(x - line.xy[0, 0], y - line.xy[0, 1]) > START_YD for _, _, x, y in spots)
        and (not spots or spots[0][0] > 0.0)
    ):
        if spots:
            out.assumed.append(
                f"Its line starts {spots[0][0]:.0f} yd behind every tee in the map: a tee there too."
            )
        name = "start of line" if spots else "main"
        spots.insert(0, (0.0, name, float(line.xy[0, 0]), float(line.xy[0, 1])))
    out.spots = [(name, x, y) for name, (_, _, x, y) in zip(_names(spots, out.assumed), spots, strict=True)]
    return out


def _spots_on(tee: _Tee, play: PlayLine, assumed: list[str]) -> list[tuple[float, str, float, float]]:
    """(station, name, x, y) of a tee, one for each colour of its ground, spaced from back to front."""
    words = sorted(tee_words(tee.tags), key=lambda w: BACK_TO_FRONT.index(w) if w in BACK_TO_FRONT else 99)
    if tee.area is None:
        station = play.station_offset(tee.x, tee.y)[0]
        return [(station, word, tee.x, tee.y) for word in words[:1] or [""]]
    stations = play.corners_of(tee.area)[:, 0]
    low, high = stations.min(), stations.max()
    if len(words) < 2 or high - low < 3.0 * len(words):
        point = shapely.Point(tee.x, tee.y)
        if not tee.area.contains(point):
            point = tee.area.representative_point()
        station = play.station_offset(point.x, point.y)[0]
        return [(station, " and ".join(words) if len(words) > 1 else (words or [""])[0], point.x, point.y)]
    assumed.append(f"Tees {', '.join(words)} share one ground: spaced along it from back to front.")
    out = []
    for k, word in enumerate(words):
        station = low + (k + 0.5) / len(words) * (high - low)
        across = shapely.LineString([play.at(station, -80.0), play.at(station, 80.0)]).intersection(tee.area)
        point = across.centroid if not across.is_empty else tee.area.representative_point()
        out.append((station, word, point.x, point.y))
    return out


def _names(spots: list[tuple[float, str, float, float]], assumed: list[str]) -> list[str]:
    """A name for each of some tees, back first: what the map says, else back, middle, forward."""
    nameless = [k for k, (_, word, _, _) in enumerate(spots) if not word]
    names = [word for _, word, _, _ in spots]
    if nameless:
        said = {1: ["main"], 2: ["back", "forward"], 3: ["back", "middle", "forward"]}.get(len(nameless))
        for number, k in enumerate(nameless):
            names[k] = said[number] if said else f"tee {number + 1}"
        if (len(nameless) < len(spots) and len(nameless) > 0) or len(nameless) > 1:
            assumed.append("Tees without a colour in the map are named by their place.")
    out: list[str] = []
    for name in names:
        full, k = name, 2
        while full in out:
            full, k = f"{name} {k}", k + 1
        out.append(full)
    return out
