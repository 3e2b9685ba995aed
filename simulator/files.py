"""Files: read, or refused in one line; written beside their place and renamed: nobody finds half of one."""

from __future__ import annotations

import errno
import os
import tempfile
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from .errors import FileError, UnwritableError

NO_ROOM = frozenset({errno.ENOSPC, errno.EDQUOT, errno.EFBIG})
"""What the system says where a disk is full, or no more is allowed on it."""

ANYBODY = 0o666
"""Rights of a written file before the mask of its owner: a temporary file would be its owner's alone."""


def read_bytes(path: str | Path, source: str, most_bytes: int, allowed: str) -> bytes:
    """The bytes of a file.

    Raises
    ------
    FileError
        No such file, a folder, a device or a pipe, not readable, or larger than ``most_bytes``.
    """
    path = Path(path)
    try:
        if not path.exists():
            raise FileError(source, "", "no such file", allowed)
        if not path.is_file():
            found = "a folder" if path.is_dir() else "something that is not a file"
            raise FileError(source, "", found, allowed)
        with path.open("rb") as file:
            raw = file.read(most_bytes + 1)
    except (OSError, ValueError, RuntimeError) as error:  # a zero byte in the path; a ring of links
        reason = getattr(error, "strerror", None) or str(error)
        raise FileError(source, "", f"a file that cannot be read ({reason})", allowed) from None
    if len(raw) > most_bytes:
        raise FileError(source, "", f"more than {most_bytes:,} bytes", allowed)
    return raw


def decoded(raw: bytes, source: str, encoding: str = "utf-8-sig") -> str:
    """Bytes of a file as text; a mark of byte order at its start is left out.

    Raises
    ------
    FileError
        A byte that does not belong.
    """
    try:
        return raw.decode(encoding)
    except UnicodeDecodeError as error:
        name = encoding.removesuffix("-sig").upper()
        raise FileError(source, "", f"a byte at {error.start} that is not {name}", "UTF-8 text") from None


def read_toml(path: str | Path, source: str, most_bytes: int, allowed: str) -> dict[str, Any]:
    """The contents of a TOML file; every failure to get them is a FileError."""
    text = decoded(read_bytes(path, source, most_bytes, allowed), source)
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise FileError(source, "", "lists nested too deep", "TOML") from None
    except ValueError as error:  # TOMLDecodeError is one; so is an absurd date or integer
        words = " ".join(str(error).split())[:120]
        raise FileError(source, "", f"a mistake in the TOML ({words})", "TOML 1.0") from None


@contextmanager
def written_whole(path: str | Path) -> Iterator[Path]:
    """A temporary path beside ``path``, of the same suffix; renamed to it when the block ends well.

    Raises
    ------
    UnwritableError
        The folder is missing or cannot be written, or the disk is full. Nothing is left behind.
    FileError
        There is a folder or a device of that name.
    """
    target = Path(path)
    draft: Path | None = None
    try:
        target = target.resolve()  # a link stays a link: what it leads to is written
        if target.exists() and not target.is_file():  # a device would be replaced by a file
            found = "a folder" if target.is_dir() else "something that is not a file"
            raise FileError(str(path), "", found, "a file of yours")
        handle, name = tempfile.mkstemp(prefix=".holesim-", suffix=target.suffix, dir=target.parent)
        os.close(handle)
        draft = Path(name)
        yield draft
        os.chmod(draft, ANYBODY & ~_mask())
        os.replace(draft, target)
        draft = None
    except (OSError, ValueError, RuntimeError) as error:  # a zero byte in the path; a ring of links
        reason = getattr(error, "strerror", None) or str(error)
        full = getattr(error, "errno", None) in NO_ROOM
        raise UnwritableError(str(path), str(reason), full) from None
    finally:
        if draft is not None:
            draft.unlink(missing_ok=True)


def write_text(path: str | Path, text: str) -> None:
    """Write text as UTF-8, whole or not at all (see `written_whole`)."""
    with written_whole(path) as draft:
        draft.write_text(text, encoding="utf-8", newline="")


def _mask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
