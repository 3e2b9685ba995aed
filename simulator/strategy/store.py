"""Results kept as they are finished, a JSON file each, so that a rerun does only what is missing."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

from ..errors import UsageError
from ..files import write_text
from .jobs import SCHEMA, Job, called

FOLDER = "holes"
"""Folder of the results inside the one the user names."""


class Store:
    """A folder of finished results.

    Parameters
    ----------
    folder : Path
        Made if it is not there.

    Raises
    ------
    UsageError
        When it cannot be made or written to.
    """

    def __init__(self, folder: Path) -> None:
        self.folder = folder / FOLDER
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
        except OSError as error:
            raise UsageError(f"{folder}: cannot be written to ({error.strerror})") from None

    def path(self, job: Job) -> Path:
        """Where a job's result is kept: readable names first, then what it was made from."""
        names = "-".join(_slug(part) for part in (job.player.name, job.scenario, job.pins))
        return self.folder / f"{job.number:02d}-{names}-{job.digest[:16]}.json"

    def find(self, job: Job) -> dict[str, Any] | None:
        """The result of a job done before from the very same inputs, else None.

        It may have been done for the same player under another name (`--initials`): the name is put right.
        """
        same = f"{job.number:02d}-*-{job.digest[:16]}.json"
        for path in (self.path(job), *sorted(self.folder.glob(same))):
            try:
                found = json.loads(path.read_text("utf-8"))
            except (OSError, ValueError):
                continue
            if isinstance(found, dict) and (found.get("schema"), found.get("digest")) == (SCHEMA, job.digest):
                return called(found, job.player.name)
        return None

    def keep(self, job: Job, result: dict[str, Any]) -> None:
        """Write a result beside its place, then rename it: a file that is there is whole."""
        write_text(self.path(job), json.dumps(result, allow_nan=False))


def _slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "_", text.casefold()).strip("_")[:24] or "x"
