"""A course: a folder of hole files, played in the order of the numbers their names begin with."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from simulator.errors import FileError, SimulatorError, UsageError, check_path
from simulator.hole.files import bundled_file, bundled_folder, bundled_name, load_hole
from simulator.hole.model import Hole

MOST_HOLES = 99
"""Most hole files of a course; a limit on slips (two folders in one), not on golf."""

_NUMBERED = re.compile(r"(\d+)")


@dataclass(frozen=True)
class BadHole:
    """A hole file of the course that cannot be used.

    Attributes
    ----------
    number : int or None
        Hole number, None when the file's name has none of its own.
    file : str
    error : SimulatorError
    """

    number: int | None
    file: str
    error: SimulatorError


@dataclass(frozen=True)
class Course:
    """Holes in the order of play.

    Attributes
    ----------
    name : str
    holes : tuple of Hole
    numbers : tuple of int
        Of the holes.
    bad : tuple of BadHole
        Files that could not be read, each with its error; the other holes are there all the same.
    """

    name: str
    holes: tuple[Hole, ...]
    numbers: tuple[int, ...]
    bad: tuple[BadHole, ...] = ()

    @property
    def par(self) -> int:
        """Par of the holes that could be read."""
        return sum(hole.par for hole in self.holes)

    def numbered(self) -> Iterator[tuple[int, Hole]]:
        """Hole number and hole, in the order of play."""
        return zip(self.numbers, self.holes, strict=True)


def bundled_courses() -> list[str]:
    """Names of the demo courses, sorted."""
    return sorted(folder.name for folder in bundled_folder().iterdir() if any(folder.glob("*.toml")))


def load_course(folder_or_name: str | Path) -> Course:
    """Read a folder of hole files, or a demo course by name.

    Parameters
    ----------
    folder_or_name : str or Path
        A folder wins over a demo course of the same name. Holes are numbered by the digits their file names
        begin with (``07-drovers.toml``); in a folder where no name has any, in the order of the names.

    Returns
    -------
    Course
        Its name is the folder's. A hole that cannot be read is in `bad`, and is no reason to stop.

    Raises
    ------
    FileError
        No such folder, no hole file in it, or more than `MOST_HOLES`.
    UsageError
        What is no path and no name at all.
    """
    check_path(folder_or_name, "a folder of hole files, or a demo course")
    source = str(folder_or_name)
    if not source.strip():  # "" is the folder one stands in
        raise UsageError(f"course {source!r}; allowed: a folder of hole files, or a demo course")
    folder = _folder(source)
    try:
        files = sorted(folder.glob("*.toml"))
    except OSError as error:
        found = f"a folder that cannot be read ({error.strerror})"
        raise FileError(source, "", found, "a folder of hole files") from None
    if not 0 < len(files) <= MOST_HOLES:
        found = f"{len(files)} hole files" if files else "no hole file"
        raise FileError(source, "", found, f"1 to {MOST_HOLES} of them, 01-first.toml and so on")
    is_demo = folder != Path(source)
    holes: list[tuple[int, Hole]] = []
    bad: list[BadHole] = []
    taken: dict[int, str] = {}
    for number, file in _numbered(files):
        shown = f"{source}/{file.stem}" if is_demo else str(file)
        try:
            if number is None:
                raise FileError(shown, "", "a file name without a number", "a number first, like the others")
            if number in taken:
                raise FileError(shown, "", f"number {number} as {taken[number]} has", "each number once")
            taken[number] = file.name
            holes.append((number, load_hole(shown if is_demo else file)))
        except SimulatorError as error:
            bad.append(BadHole(number, file.name, error))
    holes.sort(key=lambda item: item[0])
    name = folder.resolve().name.replace("-", " ").replace("_", " ").strip().title()
    return Course(name, tuple(hole for _, hole in holes), tuple(number for number, _ in holes), tuple(bad))


def hole_number(path_or_name: str) -> int | None:
    """Number in a hole's file name (``07-drovers.toml``, ``ostrel-heath/7``); None: there is none."""
    try:
        file = Path(path_or_name) if Path(path_or_name).is_file() else bundled_file(path_or_name)
    except (OSError, ValueError):  # a name too long, a zero byte in it
        return None
    found = None if file is None else _NUMBERED.match(file.name)
    return int(found[1]) if found and 0 < int(found[1]) <= MOST_HOLES else None


def _numbered(files: list[Path]) -> Iterator[tuple[int | None, Path]]:
    """Number of each file by its name; by their order when no name has one."""
    found = [_NUMBERED.match(file.name) for file in files]
    if not any(found):
        yield from enumerate(files, start=1)
        return
    for match, file in zip(found, files, strict=True):
        yield (int(match[1]) if match else None), file


def _folder(source: str) -> Path:
    path = Path(source)
    try:
        if path.is_dir():
            return path
        exists = path.exists()
    except (OSError, ValueError):  # a name too long, a zero byte in it
        exists = False
    if exists:
        raise FileError(source, "", "a file", "a folder of hole files")
    names = bundled_courses()
    name = bundled_name(source)
    if name in names:
        return bundled_folder() / name
    near = difflib.get_close_matches(name, names, n=1)
    hint = f"perhaps {near[0]}" if near else f"a folder of hole files, or {', '.join(names)}"
    raise FileError(source, "", "no such folder", hint)
