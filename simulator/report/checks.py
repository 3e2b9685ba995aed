"""What a hole or player file holds, in words and as plain data: what `holesim check` prints."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..hole.clashes import undrawn
from ..hole.model import Feature, Hole
from ..hole.surfaces import WORDS
from ..player.model import CLUB_NUMBERS, Player
from .credits import map_data
from .figures import handicap_said
from .screen import columns_of, hang, padded
from .slopewords import compass_words, falls_words
from .units import YARDS, Units

SCHEMA = "holesim-check-1"
"""Name and version of the JSON layout of `check`."""

FAR_YD = 999.0
"""A station or offset beyond this is not written out: the area runs off the hole [yd]."""

_CLUB_COLUMNS = (
    ("carry_yd", ("carry", "yd"), 9, 0),
    ("direction_sd_deg", ("direction", "sd deg"), 11, 1),
    ("distance_sd_pct", ("distance", "sd %"), 10, 1),
    ("bias_right_deg", ("bias", "deg R"), 8, 1),
    ("bias_long_pct", ("bias", "% long"), 8, 1),
    ("mishit_rate", ("mishits", "in 100"), 9, 0),
    ("mishit_loss_pct", ("lose", "%"), 7, 0),
)
"""Field of a club, the two lines of its heading, width and decimals."""


def hole_text(hole: Hole, units: Units = YARDS) -> str:
    """A hole in words: tees, pins, areas along the line, what was assumed."""
    lines = hang(
        f"{hole.source}: a hole. {hole.name}, par {hole.par}"
        f", {units.length(hole.length_yd)} from the {hole.tee.name} tee"
        + (f", stroke index {hole.stroke_index}" if hole.stroke_index is not None else "")
        + (f", first leg bears {compass_words(hole.bearing_deg)}" if hole.bearing_deg is not None else "")
        + "."
    )
    tees = [f"{t.name} {units.length(hole.with_tee(t.name).length_yd)}" for t in hole.tees]
    pins = [f"{p.name} ({_spot(hole, p.x_yd, p.y_yd, units)})" for p in hole.pins]
    lines += hang(f"Tees: {', '.join(tees)}") + hang(f"Pins: {', '.join(pins)}")
    width = max((columns_of(f.name) for f in hole.features), default=4) + 2
    lines.append(f"{'area':<{width}}{'ground':<18}{units.name + ' on':>16}{'left and right':>22}")
    for feature in hole.features:
        on, across = extent(hole, feature, units)
        ground = WORDS[feature.surface] + (f" ({feature.relief})" if feature.relief else "")
        lines.append(f"{padded(feature.name, width)}{ground:<18}{on:>16}{across:>22}")
    lines += _terrain(hole, units)
    lines += [words for line in map_data(hole) for words in hang(line)]
    if hole.marks:
        marks = [f"{m.name} ({_spot(hole, m.x_yd, m.y_yd, units)})" for m in hole.marks]
        lines += hang("Marks: " + ", ".join(marks))
    lines += _undrawn(hole, units)
    return "\n".join(line.rstrip() for line in [*lines, *_assumed(hole.assumed, units)])


def _undrawn(hole: Hole, units: Units) -> list[str]:
    """What lies farther out than anything drawn: it plays as rough for ever."""
    sides = undrawn(hole)
    if not sides:
        return []
    where = " or ".join(f"{units.length(yards)} {side}" for side, yards in sides.items())
    return hang(
        f"Nothing is drawn more than {where} of the line: it plays as rough, however wild the shot. Draw or "
        "name whatever one reaches."
    )


def _terrain(hole: Hole, units: Units) -> list[str]:
    """Slopes, crowns and single trees, each a line; none on a level hole without trees."""
    said = []
    for f in hole.features:
        if f.slope is not None and f.slope.percent > 0.0:
            said.append(falls_words(hole, f))
        if f.crown is not None:
            said.append(f"{f.name}: crowns from {units.range(f.crown.base_yd, f.crown.top_yd)} up")
    for t in hole.single_trees:
        spot, up = _spot(hole, t.x_yd, t.y_yd, units), units.range(t.crown.base_yd, t.crown.top_yd)
        said.append(f"{t.name} ({spot}): crown {units.length(t.crown_yd)} wide, {up} up")
    if hole.has_relief:
        up_yd = hole.height_at(*hole.pin.xy_yd)
        apart = f"{units.number(abs(up_yd), 1)} {units.short} {'above' if up_yd > 0.0 else 'below'}"
        said.append(f"the pin stands {'level with' if abs(up_yd) < 0.05 else apart} the tee")
    return hang("Ground and trees: " + "; ".join(said) + ".") if said else []


def hole_dict(hole: Hole) -> dict[str, Any]:
    """A hole as plain data; lengths in yards, angles in degrees."""
    return {
        "schema": SCHEMA,
        "kind": "hole",
        "source": hole.source,
        "name": hole.name,
        "par": hole.par,
        "length_yd": hole.length_yd,
        "stroke_index": hole.stroke_index,
        "bearing_deg": hole.bearing_deg,
        "local_rule_e5": hole.local_rule_e5,
        "attribution": hole.attribution,
        "tees": [
            {"name": t.name, "x_yd": t.x_yd, "y_yd": t.y_yd, "length_yd": hole.with_tee(t.name).length_yd}
            for t in hole.tees
        ],
        "pins": [{"name": p.name, "x_yd": p.x_yd, "y_yd": p.y_yd} for p in hole.pins],
        "features": [
            {
                "name": f.name, "surface": WORDS[f.surface], "relief": f.relief,
                "area_yd2": float(f.area.area),
                "lost_chance": f.lost_chance, "lost_chance_assumed": f.lost_assumed,
                "slope_pct": None if f.slope is None else f.slope.percent,
                "falls_bearing_deg": None if f.slope is None else f.slope.falls_bearing_deg,
                "crown_base_yd": None if f.crown is None else f.crown.base_yd,
                "crown_top_yd": None if f.crown is None else f.crown.top_yd,
            }
            for f in hole.features
        ],
        "single_trees": [
            {
                "name": t.name, "x_yd": t.x_yd, "y_yd": t.y_yd, "crown_yd": t.crown_yd,
                "crown_base_yd": t.crown.base_yd, "crown_top_yd": t.crown.top_yd,
            }
            for t in hole.single_trees
        ],
        "marks": [{"name": m.name, "x_yd": m.x_yd, "y_yd": m.y_yd} for m in hole.marks],
        "undrawn_beyond_yd": undrawn(hole),
        "pin_height_yd": hole.height_at(*hole.pin.xy_yd),
        "assumed": list(hole.assumed),
    }  # fmt: skip


def player_text(player: Player, units: Units = YARDS) -> str:
    """A player in words: every club's numbers, those from the level marked, what was assumed."""
    of = f", handicap {handicap_said(player.handicap)}" if player.handicap is not None else ""
    clubs = f"{len(player.clubs)} clubs (~ from the level)"
    lines = hang(f"{player.source}: a player. {player.name}{of}, {clubs}.")
    for heads in zip(*(column[1] for column in _CLUB_COLUMNS), strict=True):
        widths = (column[2] for column in _CLUB_COLUMNS)
        heads = tuple(units.short if h == "yd" else h for h in heads)
        lines.append(" " * 18 + "".join(f"{h:>{w}}" for h, w in zip(heads, widths, strict=True)))
    for club in player.clubs:
        row = f"{club.name:<18}"
        for key, _, width, digits in _CLUB_COLUMNS:
            scale = 100.0 if key == "mishit_rate" else units.of(1.0) if key.endswith("_yd") else 1.0
            mark = "~" if club.sources.get(key) == "level" else ""
            row += f"{mark + format(scale * getattr(club, key), f'.{digits}f'):>{width}}"
        lines.append(row)
    angle, distance = player.putting.angle_sd_deg, 100.0 * player.putting.distance_sd
    lines += hang(
        f"Putting: start line sd {angle:.2f} deg, distance sd {distance:.1f} %; "
        f"short game {_short_game(player.short_game)}."
    )
    habits = _habits(player, units)
    return "\n".join(line.rstrip() for line in [*lines, *habits, *_assumed(player.assumed, units)])


def _short_game(share: float) -> str:
    """Spread of part swings against the level's."""
    if share == 1.0:
        return "as the level's"
    way = "tighter" if share < 1.0 else "wider"
    return f"{100.0 * abs(share - 1.0):.3g} % {way} than the level's"


def _habits(player: Player, units: Units) -> list[str]:
    """Shapes, held-down carries, tee clubs and clubs left at home, a sentence each; none without any."""
    said = []
    curved = [
        f"{c.name} {units.whole(abs(c.curve_yd))} {'L' if c.curve_yd < 0.0 else 'R'}"
        for c in player.clubs
        if c.curve_yd
    ]
    if curved:
        said.append(f"Curve, {units.short}: {', '.join(curved)}.")
    low = [f"{c.name} {units.whole(c.low_carry_yd)}" for c in player.clubs if c.low_carry_yd is not None]
    if low:
        said.append(f"Held down, {units.short} of carry: {', '.join(low)}.")
    tee = [c.name for c in player.clubs if c.use == "tee only"]
    if tee:
        said.append(f"From a tee only: {', '.join(tee)}.")
    if player.left_out:
        said.append(f"Left at home: {', '.join(player.left_out)}.")
    return [line for sentence in said for line in hang(sentence)]


def player_dict(player: Player) -> dict[str, Any]:
    """A player as plain data; each club's numbers with their source, file or level."""
    return {
        "schema": SCHEMA,
        "kind": "player",
        "source": player.source,
        "name": player.name,
        "handicap": player.handicap,
        "clubs": [
            {
                "name": c.name, "kind": c.kind, **{k: getattr(c, k) for k in CLUB_NUMBERS},
                "curve_yd": c.curve_yd, "low_carry_yd": c.low_carry_yd, "use": c.use,
                "sources": dict(c.sources),
            }
            for c in player.clubs
        ],
        "putting": {
            "angle_sd_deg": player.putting.angle_sd_deg,
            "distance_sd_pct": 100.0 * player.putting.distance_sd,
            "sources": dict(player.putting.sources),
        },
        "short_game": player.short_game,
        "left_out": list(player.left_out),
        "assumed": list(player.assumed),
    }  # fmt: skip


def extent(hole: Hole, feature: Feature, units: Units = YARDS) -> tuple[str, str]:
    """Where an area is, by the line of play: ("207 to 288", "15 R to 54 R")."""
    found = hole.play_line.corners_of(feature.area)
    (s0, o0), (s1, o1) = found.min(axis=0), found.max(axis=0)
    low, high = (float(np.clip(station, -FAR_YD, FAR_YD)) for station in (s0, s1))
    on = units.range(low, high).removesuffix(f" {units.short}")
    return on, f"{_offset(o0, units)} to {_offset(o1, units)}"


def _offset(yards: float, units: Units) -> str:
    if abs(yards) > FAR_YD:
        return "far L" if yards < 0.0 else "far R"
    return f"{units.whole(abs(yards))} {'L' if yards < 0.0 else 'R'}" if units.whole(yards) else "0"


def _spot(hole: Hole, x_yd: float, y_yd: float, units: Units) -> str:
    station, offset = hole.station_offset(x_yd, y_yd)
    return f"{units.whole(station)} on, {_offset(offset, units)}"


def _assumed(sentences: tuple[str, ...], units: Units) -> list[str]:
    if not sentences:
        return ["Nothing assumed."]
    return ["Assumed:", *(line for s in sentences for line in hang(f"- {units.sentence(s)}"))]
