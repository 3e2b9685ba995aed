"""A map as read: features with tags and longitudes and latitudes, before anything is made of them."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

OSM_ATTRIBUTION = "© OpenStreetMap contributors (ODbL)"
"""What the Open Database License asks to be shown with work made from OpenStreetMap data
(openstreetmap.org/copyright)."""


@dataclass(eq=False)
class MapFeature:
    """One feature of a map.

    Parameters
    ----------
    ident : kind and number in the map ("way/12"), "" when it has none.
    tags : lower-case keys, plain text values.
    points, lines : arrays (n, 2) of longitude and latitude [deg].
    rings : role ("outer", "inner" or "" when the map does not say) and array (n, 2), closed.
    open_edges : arrays (n, 2), parts of an outline that does not close.
    heights : arrays (n, 3), longitude, latitude [deg] and height [m] of corners that have one.
    """

    ident: str
    tags: dict[str, str]
    points: list[np.ndarray] = field(default_factory=list)
    lines: list[np.ndarray] = field(default_factory=list)
    rings: list[tuple[str, np.ndarray]] = field(default_factory=list)
    open_edges: list[np.ndarray] = field(default_factory=list)
    heights: list[np.ndarray] = field(default_factory=list)

    @property
    def empty(self) -> bool:
        """Whether it has no place at all."""
        return not (self.points or self.lines or self.rings)


@dataclass(eq=False)
class MapData:
    """All of a map.

    Parameters
    ----------
    source : the file, for messages.
    notes : sentences about what was left out or mended while reading.
    attribution : line the data asks to be shown, None when nothing in the file says whose it is.
    """

    source: str
    features: list[MapFeature]
    notes: list[str] = field(default_factory=list)
    attribution: str | None = None


@dataclass(frozen=True)
class Settings:
    """What the user decides about a map.

    Parameters
    ----------
    elevation : CSV of points with heights.
    outside_is_out : the outline of the course is its boundary.
    sea_is_red : the sea is a red penalty area, else it is out of bounds.
    attribution : line the files carry; None takes the map's own, "" none.
    replace : write over hole files that are there already.
    metric : lengths in the files are metres.
    """

    elevation: str | None = None
    outside_is_out: bool = True
    sea_is_red: bool = False
    attribution: str | None = None
    replace: bool = False
    metric: bool = False
