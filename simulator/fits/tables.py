"""Write a small fitted table as TOML: where it came from, then numbers and lists of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path

from ..files import write_text
from ..toml_text import quoted


def write_table(path: Path, origin: Mapping[str, str], table: Mapping[str, float | Sequence[object]]) -> None:
    """Write ``origin`` (script, inputs, date) and ``table`` to ``path``, by a temporary file and a rename.

    An entry is a number, a list of numbers or a list of such lists; numbers are kept to five figures.
    """
    lines = ["# Made by a script: run it again, do not edit."]
    lines += [f"{key} = {quoted(value)}" for key, value in origin.items()]
    lines += [""]
    for key, values in table.items():
        if not isinstance(values, Sequence):
            lines += [f"{key} = {_figure(values)}"]
        elif values and isinstance(values[0], Sequence):
            lines += [f"{key} = ["] + [f"    {_list(row)}," for row in values] + ["]"]  # type: ignore[arg-type]
        else:
            lines += [f"{key} = {_list(values)}"]
    write_text(path, "\n".join(lines) + "\n")


def as_kept(value: float) -> float:
    """A number as the table keeps it."""
    return float(_figure(value))


def _list(values: Sequence[object]) -> str:
    return "[" + ", ".join(map(_figure, values)) + "]"


def _figure(value: object) -> str:
    return f"{float(value):.5g}"  # type: ignore[arg-type]
