"""Days to be compared, from a file: each a name and the words of the day's options."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from ..errors import FileError, UsageError
from ..files import read_toml
from .model import Conditions
from .options import as_words, conditions_from

KEYS = (
    "wind", "wind_at", "gusts", "swing", "temperature", "altitude", "pressure", "humidity", "firmness",
    "stimp",
)  # fmt: skip
"""Keys of a scenario besides its name: the day's options on the command line, with the same words."""

MOST_SCENARIOS, MOST_BYTES = 20, 100_000
"""Most days of a file, and the largest file read [bytes]."""

_EXAMPLE = '[[scenario]] with name = "west wind" and wind = "12 mph from W"'


@dataclass(frozen=True)
class Scenario:
    """One day.

    Attributes
    ----------
    name : str
    words : mapping of str to str
        What is said of it, by the names of `KEYS`; the rest is as `Conditions` has it.
    """

    name: str
    words: Mapping[str, str] = field(default_factory=dict)

    def conditions(self, y_bearing_deg: float | None) -> Conditions:
        """The day on a hole whose first leg has a compass bearing [deg], None where it is unknown.

        Clock and plain words are about the first leg, as on the command line.

        Raises
        ------
        UsageError
            Words that are not understood, or a compass wind on a hole without a bearing.
        """
        words = {key: self.words.get(key) for key in KEYS}
        return conditions_from(*words.values(), along_deg=0.0, y_bearing_deg=y_bearing_deg)


STILL = Scenario("still")
"""The day nobody said anything about."""


def read_scenarios(path: str | Path) -> tuple[Scenario, ...]:
    """Scenarios of a TOML file, in its order.

    Raises
    ------
    FileError
        One line saying what cannot be used. Words are tried out on a hole that faces north.
    """
    source = str(path)
    top = read_toml(path, source, MOST_BYTES, "a file of scenarios")
    for key in top:
        if key != "scenario":
            raise FileError(source, "", f"unknown key {key!r}", _EXAMPLE)
    entries = top.get("scenario", [])
    if not isinstance(entries, list) or not 0 < len(entries) <= MOST_SCENARIOS:
        found = f"{len(entries)} of them" if isinstance(entries, list) else "no list"
        raise FileError(source, "scenario", found, f"1 to {MOST_SCENARIOS}: {_EXAMPLE}")
    found_all: list[Scenario] = []
    for number, entry in enumerate(entries, start=1):
        one = _read(source, number, entry)
        if one.name.casefold() in {other.name.casefold() for other in found_all}:
            raise FileError(source, f"scenario {one.name!r}", "the name twice", "a name of its own for each")
        found_all.append(one)
    return tuple(found_all)


def _read(source: str, number: int, entry: Any) -> Scenario:
    where = f"scenario {number}"
    if not isinstance(entry, dict):
        raise FileError(source, where, "no table", _EXAMPLE)
    name = entry.get("name", where)
    if not isinstance(name, str) or not name.strip() or len(name) > 40 or not name.isprintable():
        raise FileError(source, f"{where}, name", repr(name)[:60], "1 to 40 printable characters")
    words: dict[str, str] = {}
    for key, value in entry.items():
        if key == "name":
            continue
        if key not in KEYS:
            raise FileError(source, where, f"unknown key {key!r}", ", ".join(("name", *KEYS)))
        said = as_words(value)
        if said is None:
            raise FileError(source, f"{where}, {key}", repr(value)[:60], "text in quotes, or a number")
        words[key] = said
    one = Scenario(name.strip(), words)
    try:
        one.conditions(0.0)
    except UsageError as error:
        where = f"scenario {one.name!r}"
        raise FileError(source, where, f"words refused ({error})", "words of the options") from None
    return one
