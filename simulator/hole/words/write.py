"""A drafted hole as the text of a hole file, with comments."""

from __future__ import annotations

import textwrap
from typing import Any

from simulator.hole.words.entry import PLAIN, Draft, Entry
from simulator.toml_text import comment, one_line, quoted
from simulator.toml_text import value as toml_value
from simulator.units import M_PER_YD

COLUMNS = 100
"""Letters of a line of comments."""

ORDER = (
    "tee", "green", "green_part", "pin", "fairway", "rough", "heavy_rough", "trees", "tree", "path", "bunker",
    "penalty_area", "out_of_bounds", "mark",
)  # fmt: skip

_ABOUT = {
    "tee": "Tees: at, yards along the line from its start; without, the start itself.",
    "green": "The green from its front edge.",
    "green_part": "Parts of the green with a slope and a height of their own (of their middle).",
    "pin": "Pins: on, yards on from the front edge of the green; offset, right of the line.",
    "fairway": "Mown from one station (from_assumed: nobody said which) to another; edges by their offsets.",
    "trees": "Trees without a height, base or density: holesim check says what is assumed.",
    "bunker": "Bunkers: the station of the middle, depth along the line, width across it.",
    "penalty_area": "Penalty areas; playable = true if a ball in one can be struck.",
    "out_of_bounds": "Out of bounds: everything beyond an offset.",
    "mark": "Marks: only to word a line by.",
}


def toml_text(draft: Draft, words: str) -> str:
    """The file: the words it came from, how to read it, every value; `# assumed` behind what nobody said."""
    unit = "yards" if draft.units.written == "yd" else "metres"
    lines = [f"# {line}" for line in textwrap.wrap(f"A hole from words: {one_line(words)}", COLUMNS - 2)]
    lines += [
        "#",
        f"# Places: {unit} along the line of play from the tee (at, from, to), and {unit} right of it",
        "# (offset, left, right; negative is left). What is not drawn is rough. Lines marked assumed hold",
        "# values that the words did not give: measure them, put yours in, and delete the sentence about",
        "# them below.",
        "",
    ]
    marked = "  # assumed" if "name" in draft.top_assumed else ""
    lines += [f"name = {quoted(draft.name)}{marked}", f"par = {draft.par}"]
    lines.append(f"{_key('length', draft)} = {_length(draft.length_yd, draft)}")
    if draft.turns:
        bends = ", ".join(
            f"{{ {_key('at', draft)} = {_length(at, draft)}, turn_deg = {turn:g} }}"
            for at, turn in draft.turns
        )
        gaps = [key for key in ("at", "turn_deg") if key in draft.top_assumed]
        note = f"  # assumed: {', '.join(gaps)}" if gaps else ""
        lines.append(f"bends = [{bends}]{note}")
    lines += [f"{key} = {toml_value(value)}" for key, value in draft.top.items()]
    if draft.heights:
        rows = ", ".join("[" + ", ".join(_length(v, draft) for v in row) + "]" for row in draft.heights)
        lines += [
            "",
            "# Heights: [station, offset, height], the tee being zero.",
            f"{_key('heights', draft)} = [{rows}]",
        ]
    sentences = said(draft)
    if sentences:
        lines += ["", "# Said with every answer until it is deleted here:", "assumed = ["]
        lines += [f"  {quoted(sentence)}," for sentence in sentences] + ["]"]
    for kind in ORDER:
        entries = draft.of(kind)
        if entries:
            about = [f"# {_ABOUT[kind].replace('yards', unit)}"] if kind in _ABOUT else []
            lines += ["", *about, f"{kind} = ["]
            for entry in entries:
                lines += _entry(entry, draft)
            lines.append("]")
    return "\n".join(lines) + "\n"


def said(draft: Draft) -> list[str]:
    """What was assumed, sentence by sentence; warnings first."""
    sentences = [*draft.warnings, *draft.assumed, *(entry.sentence for entry in draft.entries)]
    return list(dict.fromkeys(s[:200] for s in sentences if s))


def _entry(entry: Entry, draft: Draft) -> list[str]:
    pairs = []
    for key, value in entry.keys.items():
        name = key if key in PLAIN else _key(key, draft)
        pairs.append(f"{name} = {_value(key, value, draft)}")
    note = ""
    if entry.assumed:
        known = [key for key in entry.assumed if key in entry.keys or key == "offset"]
        note = "  # assumed" + (f": {', '.join(known)}" if known else "")
    line = f"  {{ {', '.join(pairs)} }},{note}"
    shown = one_line(entry.text)
    return [*([f"  {comment(shown[: COLUMNS - 4])}"] if shown else []), line]


def _value(key: str, value: Any, draft: Draft) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, list):
        return "[" + ", ".join(_value(key, v, draft) for v in value) + "]"
    return f"{value:g}" if key in PLAIN else _length(value, draft)


def _key(stem: str, draft: Draft) -> str:
    return f"{stem}_{draft.units.written}"


def _length(yards: float, draft: Draft) -> str:
    """A length in the unit of the file, to a hundredth."""
    value = round(yards if draft.units.written == "yd" else yards * M_PER_YD, 2)
    return f"{value:.10g}" if value else "0"
