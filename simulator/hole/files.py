"""Hole files by path, and the demo holes that come with the program by name."""

from __future__ import annotations

import difflib
import os
import re
from pathlib import Path

from simulator.errors import FileError, check_path
from simulator.files import read_toml
from simulator.hole.model import Hole
from simulator.hole.sketch import read_sketch

MOST_BYTES = 1_000_000
"""Largest hole file read [bytes]: a hundred times a very detailed sketch."""

_DEMO = re.compile(r"(?:[\w-]{1,60}/)?[\w-]{1,60}")
"""A demo hole's name: its own, or its course's before it."""

_PACKAGE = Path(__file__).resolve().parents[1]


def bundled_folder() -> Path:
    """Folder of the demo holes: inside an installed package, else beside it in a checkout."""
    installed = _PACKAGE / "bundled" / "holes"
    return installed if installed.is_dir() else _PACKAGE.parent / "holes"


def bundled_holes() -> list[str]:
    """Names of the demo holes, sorted."""
    return sorted(path.stem for path in bundled_folder().glob("*.toml"))


def bundled_name(typed: str) -> str:
    """A demo's name as its file has it: "Withy Drain" is withy-drain."""
    return re.sub(r"[\s_]+", "-", typed.strip().casefold())


def bundled_file(source: str) -> Path | None:
    """File of a demo hole by its name, or of a demo course's by course and file name or number."""
    source = bundled_name(source)
    if not _DEMO.fullmatch(source):
        return None
    folder, _, name = source.rpartition("/")
    if not name.isdecimal():
        file = bundled_folder() / folder / f"{name}.toml"
        return file if file.is_file() else None
    if not folder:
        return None
    numbered = re.compile(rf"0*{int(name)}(?!\d)")
    files = sorted((bundled_folder() / folder).glob("*.toml"))
    return next((file for file in files if numbered.match(file.name)), None)


def load_hole(path_or_name: str | Path) -> Hole:
    """Read a hole from a sketch file, a demo hole by name, or from words ("par 4, 372; out left 34 ...").

    Parameters
    ----------
    path_or_name : str or Path
        A file wins over a demo hole of the same name, and over words. A demo's name may have capitals and
        spaces. Holes of a demo course: ``"ostrel-heath/7"``.

    Raises
    ------
    FileError
        When there is no such file, it cannot be read, or anything in it is wrong.
    UsageError
        Words that are not understood, or what is no path, name or words at all.
    """
    check_path(path_or_name, "a hole file, a demo hole, or words")
    source = str(path_or_name)
    if " " in source and not os.path.isfile(source):
        from simulator.hole.words import hole_from_words, looks_like_words

        if looks_like_words(source):
            return hole_from_words(source).hole
    bundled = bundled_file(source)
    if bundled is not None and not os.path.isfile(source):
        source = bundled_name(source)
        return read_sketch(parse_file(bundled, source), source)
    return read_sketch(parse_file(Path(path_or_name), source), source)


def parse_file(path: Path, source: str) -> dict:
    """The TOML of a hole file; every failure to get it is a FileError."""
    if not os.path.exists(path):  # a path too long, or with a zero byte, is none either
        names = bundled_holes()
        near = difflib.get_close_matches(bundled_name(source), names, n=1)
        hint = f"perhaps {near[0]}" if near else f"a .toml file, or one of {', '.join(names)}"
        raise FileError(source, "", "no such file", hint)
    return _toml_alone(path, source, "a hole sketch, a .toml file")


def parse_readings(path: Path, source: str) -> dict:
    """The TOML of a file of laser readings; every failure to get it is a FileError."""
    wanted = "a .toml file of laser readings, [[stand]] with readings = [{ to, range_yd }, ...]"
    if not os.path.exists(path):
        raise FileError(source, "", "no such file", wanted)
    return _toml_alone(path, source, wanted)


def _toml_alone(path: Path, source: str, wanted: str) -> dict:
    """The TOML of a file that is there; one of another kind is refused (FileError), with what is wanted."""
    if os.path.isfile(path) and path.suffix.lower() not in ("", ".toml"):
        raise FileError(source, "", f"a {path.suffix} file", wanted)
    return read_toml(path, source, MOST_BYTES, "a .toml file")
