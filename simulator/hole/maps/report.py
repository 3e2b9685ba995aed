"""What came of a map: for each hole what was written, what is missing, what was assumed."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

SCHEMA = "holesim-import-1"
"""Name and version of the JSON layout of `import-map`."""


@dataclass(eq=False)
class HoleReport:
    """One hole of a map.

    Parameters
    ----------
    hole : what a reader calls it; name : as in its file.
    file : where it was written, None when it was not; failed : why not, "" when it was.
    missing : what the map lacks; assumed : what was taken for it; warnings : what to look at.
    """

    hole: str
    name: str = ""
    file: str | None = None
    par: int | None = None
    length_yd: float | None = None
    stroke_index: int | None = None
    tees: list[str] = field(default_factory=list)
    pins: list[str] = field(default_factory=list)
    ground: dict[str, int] = field(default_factory=dict)
    missing: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    failed: str = ""

    @property
    def complete(self) -> bool:
        """Written, with nothing missing and nothing to look at."""
        return not (self.failed or self.missing or self.warnings)

    def to_dict(self) -> dict[str, Any]:
        """As plain data."""
        return {
            "hole": self.hole, "name": self.name, "file": self.file, "complete": self.complete,
            "failed": self.failed or None, "par": self.par, "length_yd": self.length_yd,
            "stroke_index": self.stroke_index, "tees": self.tees, "pins": self.pins, "ground": self.ground,
            "missing": self.missing, "assumed": self.assumed, "warnings": self.warnings,
        }  # fmt: skip


@dataclass(eq=False)
class MapReport:
    """A whole map.

    Parameters
    ----------
    source : the map; folder : where the holes are.
    notes : about the map as a whole; assumed : sentences that hold for every hole.
    """

    source: str
    folder: str
    attribution: str | None
    holes: list[HoleReport] = field(default_factory=list)
    notes: list[str] = field(default_factory=list)

    @property
    def written(self) -> list[HoleReport]:
        """The holes that have a file now."""
        return [hole for hole in self.holes if hole.file is not None]

    @property
    def assumed(self) -> list[str]:
        """What was assumed on every hole that was written."""
        if not self.written:
            return []
        first, *rest = self.written
        return [words for words in first.assumed if all(words in hole.assumed for hole in rest)]

    def to_dict(self) -> dict[str, Any]:
        """As plain data."""
        return {
            "schema": SCHEMA, "source": self.source, "folder": self.folder, "attribution": self.attribution,
            "notes": self.notes, "holes": [hole.to_dict() for hole in self.holes],
        }  # fmt: skip
