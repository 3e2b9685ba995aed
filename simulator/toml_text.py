"""Pieces of TOML text (TOML 1.0.0): the one place that knows how a name or a value is quoted."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from .units import M_PER_YD

_LENGTH = re.compile(
    r"""(?P<kept>"(?:[^"\\]|\\.)*"|\#.*)"""
    r"|\b(?P<stem>\w+)_yd = (?P<value>\[[-+\d.eE,\s\[\]]*\]|[-+]?[\d.]+(?:e[-+]?\d+)?)"
)
_FIGURE = re.compile(r"[-+]?\d+(?:\.\d+)?(?:e[-+]?\d+)?")


def in_metres(text: str) -> str:
    """A file with its lengths in metres, to a hundredth: ``carry_yd = 205`` is ``carry_m = 187.45``.

    Comments and texts stay as they are, and so does a list that is not of numbers alone.
    """

    def figure(found: re.Match[str]) -> str:
        return f"{round(float(found[0]) * M_PER_YD, 2) + 0.0:.10g}"

    def metres(found: re.Match[str]) -> str:
        return found["kept"] or f"{found['stem']}_m = {_FIGURE.sub(figure, found['value'])}"

    return _LENGTH.sub(metres, text)


def one_line(text: object) -> str:
    """Text on one line: every run of blanks and of characters that cannot be shown is one space."""
    return " ".join("".join(c if c.isprintable() else " " for c in str(text)).split())


def short_line(text: object, limit: int = 60) -> str:
    """The same cut to ``limit`` characters, as an error quotes what it found."""
    line = one_line(text)
    return line if len(line) <= limit else line[: limit - 3] + "..."


def comment(text: object) -> str:
    """A line of comment; TOML allows no control character in one."""
    return f"# {one_line(text)}".rstrip()


def quoted(text: str) -> str:
    """A basic string; a character that cannot be shown becomes a space (the readers refuse those)."""
    plain = "".join(c if c.isprintable() else " " for c in text)
    return '"' + plain.replace("\\", "\\\\").replace('"', '\\"') + '"'


def key(text: str) -> str:
    """A key: bare where it may be, else quoted."""
    return text if re.fullmatch(r"[\w-]+", text, re.ASCII) else quoted(text)


def value(found: Any, digits: int | None = None) -> str:
    """A value of a file: text, truth, number, list or table (written inline).

    Parameters
    ----------
    found : str, bool, int, float, list, tuple or Mapping
    digits : int, optional
        Significant figures of numbers that are not whole by type; all that they have when left out.
    """
    if isinstance(found, bool):
        return "true" if found else "false"
    if isinstance(found, str):
        return quoted(found)
    if isinstance(found, Mapping):
        return "{ " + ", ".join(f"{key(str(k))} = {value(v, digits)}" for k, v in found.items()) + " }"
    if isinstance(found, list | tuple):
        return "[" + ", ".join(value(v, digits) for v in found) + "]"
    if isinstance(found, float):
        return repr(float(found)) if digits is None else f"{found + 0.0:.{digits}g}"
    return str(found)


def block(name: str, entries: list[str]) -> list[str]:
    """Lines of a list of inline tables under one key, a blank line before them; nothing for no entries."""
    return ["", f"{name} = [", *(f"  {entry}," for entry in entries), "]"] if entries else []
