"""What the tags of a feature make of the ground, and what is decided where they leave it open.

Tags: OpenStreetMap wiki, Key:golf, Key:natural, Key:water, Key:waterway, Key:landuse, Key:highway,
Key:barrier. Widths of lines nobody measured and the decisions in `said` are assumptions.
"""

from __future__ import annotations

import re
from typing import NamedTuple

from simulator.hole.maps.tags import length_yd, split


class Ground(NamedTuple):
    """What a feature is on a hole.

    Parameters
    ----------
    key : key of a hole file that holds it, or "range" (no part of any hole), "fence".
    word : what it is called when it has no name.
    colour, playable : of a penalty area; colour "" is not said by the map.
    width_yd : of a line; 0 for what has to be an area.
    said : what was decided, one sentence; "" when the tags say it all.
    top_yd, base_yd, dense : of trees; 0 when unknown.
    """

    key: str
    word: str
    colour: str = ""
    playable: bool = False
    width_yd: float = 0.0
    said: str = ""
    top_yd: float = 0.0
    base_yd: float = -1.0
    dense: bool = False


STREAM_YD: dict[str, float] = {
    "stream": 2.5,
    "ditch": 2.0,
    "drain": 2.0,
    "brook": 2.5,
    "river": 12.0,
    "canal": 12.0,
    "tidal_channel": 5.0,
}
"""Width of a watercourse without one [yd] (assumed)."""

PATH_YD: dict[str, float] = {
    "cartpath": 2.5, "path": 1.5, "footway": 2.0, "cycleway": 2.5, "bridleway": 2.5, "track": 3.0,
    "service": 4.0, "pedestrian": 4.0, "steps": 1.5,
}  # fmt: skip
ROAD_YD: dict[str, float] = {
    "motorway": 25.0,
    "trunk": 15.0,
    "primary": 10.0,
    "secondary": 9.0,
    "tertiary": 8.0,
    "unclassified": 6.0,
    "residential": 7.0,
    "living_street": 6.0,
    "road": 7.0,
}
ROW_YD = 8.0
HEDGE_YD = 2.0
RAIL_YD = 6.0
"""Widths of paths, roads, tree rows, hedges and railways without one [yd] (assumed)."""

HEDGE_TOP_YD = 2.2
"""Height of a hedge without one [yd] (assumed)."""

DRY_NATURAL = ("scrub", "heath", "grassland", "wood", "bare_rock", "shrubbery")
"""What a marked penalty area without water is covered with."""

PRACTICE = re.compile(r"practi[cs]e|putting|chipping|driving range|pitching green|short game", re.IGNORECASE)
PRIVATE = frozenset({
    "residential", "commercial", "industrial", "retail", "railway", "farmland", "farmyard", "orchard",
    "vineyard", "allotments", "cemetery", "military", "quarry", "construction", "greenhouse_horticulture",
})  # fmt: skip

SAID_WATER = "Water without a colour of stakes is a red penalty area."
SAID_STREAM = "Streams, ditches and rivers without a width get one by their kind (2 to 12 yards)."
SAID_WETLAND = "Wetland is a red penalty area that can be played from."
SAID_BEACH = "A beach is a red penalty area that can be played from."
SAID_SAND = "Bare sand (natural=sand) is a bunker."
SAID_SCRUB = "Scrub, heath and long grass are heavy rough."
SAID_LAND = "Houses, farmland, railways and public roads are out of bounds."
SAID_PATH = "Paths and roads of the course get a width by their kind (1.5 to 4 yards)."
SAID_RANGE = "Practice ground is rough."
SAID_BUILDING = "Small buildings are obstructions with free relief, larger ones out of bounds."
SAID_PENALTY = "A penalty area without a colour is red."
SAID_TREE_LINE = "Rows of trees without a width are 8 yards wide, hedges 2."


def is_practice(tags: dict[str, str]) -> bool:
    """Whether a green, tee or bunker says that it belongs to no hole."""
    if tags.get("golf") in ("practice", "driving_range", "putting_green", "practice_green"):
        return True
    if any(
        tags.get(k) in ("practice", "practise", "putting", "chipping") for k in ("green", "green:type", "tee")
    ):
        return True
    if tags.get("practice") == "yes" or tags.get("golf:practice") == "yes":
        return True
    return any(PRACTICE.search(tags.get(k, "")) for k in ("name", "description", "note", "loc_name"))


OTHER_SPORTS = ("disc_golf", "discgolf", "disc golf", "frisbee_golf", "miniature_golf", "minigolf",
                "footgolf", "foot_golf", "park_golf")  # fmt: skip
"""Values of `sport` whose tees, greens and holes are not golf's."""


def other_sport(tags: dict[str, str]) -> bool:
    """Whether a feature says that it belongs to a game that only borrows golf's words."""
    if any(key in tags for key in ("disc_golf", "miniature_golf", "footgolf")):
        return True
    sports = split(tags.get("sport", "").lower())
    return bool(sports) and "golf" not in sports and any(sport in OTHER_SPORTS for sport in sports)


def gone(tags: dict[str, str]) -> bool:
    """Whether a feature is there no more, or runs under the ground."""
    if any(
        tags.get(k) == "yes" for k in ("disused", "abandoned", "demolished", "proposed", "razed", "removed")
    ):
        return True
    if tags.get("tunnel", "no") not in ("no", "avalanche_protector"):
        return True
    return tags.get("location") == "underground" or (tags.get("covered") == "yes" and "building" not in tags)


def golf_kind(tags: dict[str, str]) -> str:
    """The value of `golf`, in lower case and singular; "" without one."""
    for value in split(tags.get("golf", "").lower().replace(" ", "_")):
        value = {
            "bunkers": "bunker",
            "fairways": "fairway",
            "greens": "green",
            "tees": "tee",
            "flag": "pin",
            "sand_trap": "bunker",
            "tee_box": "tee",
            "teebox": "tee",
            "semi_rough": "rough",
            "cart_path": "cartpath",
            "putting_green": "green",
            "practice_green": "green",
        }.get(value, value)
        if value not in ("yes", "no"):
            return value
    return ""


def ground_of(tags: dict[str, str]) -> Ground | None:
    """What a feature is on a hole, None for what changes no ground (or is none: tees, pins, hole lines)."""
    if gone(tags):
        return None
    golf = golf_kind(tags)
    if golf:
        return _golf(golf, tags)
    for of in (_water, _plants, _land):
        found = of(tags)
        if found is not None:
            return found
    return None


def _golf(golf: str, tags: dict[str, str]) -> Ground | None:
    if golf in ("fairway", "bunker", "green"):
        return Ground(golf, golf)
    if golf in ("tee", "hole", "pin"):
        return None
    if golf == "rough":
        deep = any(tags.get(k, "") in ("deep", "heavy", "tall", "long", "high", "fescue") for k in
                   ("rough", "grass", "rough:type", "height"))  # fmt: skip
        return Ground("heavy_rough", "heavy rough") if deep else Ground("rough", "rough")
    if golf in ("heavy_rough", "deep_rough"):
        return Ground("heavy_rough", "heavy rough")
    if golf in ("water_hazard", "lateral_water_hazard", "penalty_area", "hazard", "water"):
        return _penalty(golf, tags)
    if golf == "out_of_bounds":
        return Ground("out_of_bounds", "out of bounds", width_yd=1.0)
    if golf in ("cartpath", "path"):
        width = length_yd(tags.get("width"))
        return Ground("path", "path", width_yd=_width(width, PATH_YD[golf]), said="" if width else SAID_PATH)
    if golf in ("driving_range", "practice", "practice_area"):
        return Ground("range", "practice ground", said=SAID_RANGE)
    if golf in ("clubhouse", "building", "shelter"):
        return Ground("building", "clubhouse" if golf == "clubhouse" else "building", said=SAID_BUILDING)
    return _water(tags) or _plants(tags)


def _width(given: float | None, usual: float, most: float = 100.0) -> float:
    return usual if given is None or not 0.3 <= given <= most else given


def _penalty(golf: str, tags: dict[str, str]) -> Ground:
    """Penalty areas by their golf tag; they need not hold water."""
    said = ""
    colour = {"water_hazard": "yellow", "lateral_water_hazard": "red"}.get(golf, "")
    for key in ("penalty_area", "golf:penalty_area", "colour", "color", "stakes", "hazard"):
        if tags.get(key, "").lower() in ("red", "yellow"):
            colour = tags[key].lower()
    if not colour:
        colour, said = "red", SAID_PENALTY
    wet = _water({k: v for k, v in tags.items() if k != "golf"})
    dry = (
        (wet is None and tags.get("natural") in DRY_NATURAL)
        or any(tags.get(k) == "yes" for k in ("intermittent", "seasonal"))
        or (golf == "penalty_area" and wet is None)
    )
    width = wet.width_yd if wet is not None else _width(length_yd(tags.get("width")), STREAM_YD["stream"])
    word = wet.word if wet is not None else "penalty area" if dry else "water"
    return Ground("penalty_area", word, colour, dry or (wet is not None and wet.playable), width, said)


def _water(tags: dict[str, str]) -> Ground | None:
    natural, waterway = tags.get("natural"), tags.get("waterway", "")
    dry = any(tags.get(k) == "yes" for k in ("intermittent", "seasonal", "ephemeral"))
    if waterway in STREAM_YD:
        given = length_yd(tags.get("width")) or length_yd(tags.get("est_width"))
        width = _width(given, STREAM_YD[waterway], 400.0)
        return Ground(
            "penalty_area", waterway.replace("_", " "), "", dry, width, "" if given else SAID_STREAM
        )
    if natural in ("water", "bay", "strait") or waterway in ("riverbank", "dock"):
        word = tags.get("water", "river" if waterway == "riverbank" else "water").replace("_", " ")
        return Ground("penalty_area", "water" if word in ("yes", "no", "natural") else word, "", dry)
    if (
        tags.get("water", "no") != "no"
        and natural is None
        and "leisure" not in tags
        and "amenity" not in tags
    ):
        word = tags["water"].replace("_", " ")
        return Ground("penalty_area", "water" if word in ("yes", "natural") else word, "", dry)
    if tags.get("landuse") in ("reservoir", "basin", "pond", "salt_pond"):
        return Ground("penalty_area", tags["landuse"].replace("_", " "), "", dry)
    if natural in ("wetland", "marsh", "mud"):
        return Ground("penalty_area", "wetland", "red", True, said=SAID_WETLAND)
    if natural in ("beach", "shoal"):
        return Ground("penalty_area", "beach", "red", True, said=SAID_BEACH)
    return None


def _plants(tags: dict[str, str]) -> Ground | None:
    natural, landuse = tags.get("natural"), tags.get("landuse")
    top = length_yd(tags.get("height")) or length_yd(tags.get("est_height")) or 0.0
    if natural in ("wood", "tree_group") or landuse in ("forest", "wood"):
        return Ground("trees", "wood", top_yd=top)
    if natural == "tree_row":
        crown = length_yd(tags.get("diameter_crown")) or length_yd(tags.get("width"))
        return Ground("trees", "tree row", width_yd=_width(crown, ROW_YD, 40.0), top_yd=top,
                      said="" if crown else SAID_TREE_LINE)  # fmt: skip
    if tags.get("barrier") == "hedge":
        width = length_yd(tags.get("width"))
        return Ground("trees", "hedge", width_yd=_width(width, HEDGE_YD, 20.0), top_yd=top or HEDGE_TOP_YD,
                      base_yd=0.0, dense=True, said="" if width else SAID_TREE_LINE)  # fmt: skip
    if natural in ("scrub", "heath", "grassland", "shrubbery", "tussock", "fell", "bare_rock", "scree") or (
        landuse == "meadow" or tags.get("landcover") in ("scrub", "shrubs")
    ):
        return Ground("heavy_rough", natural or "meadow", said=SAID_SCRUB)
    if natural == "sand":
        return Ground("bunker", "sand", said=SAID_SAND)
    return None


def _land(tags: dict[str, str]) -> Ground | None:
    highway, landuse = tags.get("highway", "").removesuffix("_link"), tags.get("landuse")
    crosses = tags.get("bridge", "no") != "no"
    width = length_yd(tags.get("width"))
    if highway in PATH_YD:
        if crosses:
            return None
        word, wide = "drive" if highway == "service" else "path", _width(width, PATH_YD[highway], 30.0)
        return Ground("path", word, width_yd=wide, said="" if width else SAID_PATH)
    if highway in ROAD_YD and not crosses:
        return Ground("out_of_bounds", "road", width_yd=_width(width, ROAD_YD[highway]), said=SAID_LAND)
    if tags.get("railway") in ("rail", "light_rail", "tram", "narrow_gauge") and not crosses:
        return Ground("out_of_bounds", "railway", width_yd=RAIL_YD, said=SAID_LAND)
    if tags.get("building", "no") != "no":
        return Ground("building", "building", said=SAID_BUILDING)
    if landuse in PRIVATE or (tags.get("leisure") == "garden" and tags.get("access") == "private"):
        return Ground("out_of_bounds", str(landuse or "garden").replace("_", " "), said=SAID_LAND)
    if tags.get("barrier") in ("fence", "wall", "retaining_wall", "guard_rail"):
        return Ground("fence", tags["barrier"].replace("_", " "))
    return None
