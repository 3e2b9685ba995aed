"""Holes from maps: GeoJSON and OpenStreetMap files with golf tags in, hole files out.

Tags as documented on the OpenStreetMap wiki, Key:golf, Tag:golf=hole and Tag:leisure=golf_course.
"""

from simulator.hole.maps.importer import import_map
from simulator.hole.maps.model import Settings
from simulator.hole.maps.report import HoleReport, MapReport

__all__ = ["HoleReport", "MapReport", "Settings", "import_map"]
