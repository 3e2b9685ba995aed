"""Numbers, loops, pars and stroke indexes of hole lines, as mappers write them."""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple

from simulator.hole.maps.tags import number, split

MOST_NUMBER = 99
"""Highest number of a hole that is taken for one."""

LOOP_KEYS = ("golf:course:name", "golf:course", "course:name", "course", "loop", "nine", "golf:loop")
"""Tags of a hole line that may name the loop it belongs to."""

_LABEL = re.compile(r"^(?P<loop>[^\d]*?)[\s\-_.:#°º№]*(?P<number>\d{1,3})\s*(?P<suffix>[a-zA-Z]?)$")
_WORDS = re.compile(
    r"\b(hole|holes|no|nr|number|loch|bahn|spielbahn|trou|hoyo|buca|buraco|hål|"
    r"hul|hull|bana|bane|reikä|väylä|jamka|dołek|lyuk|n)\b\.?",
    re.IGNORECASE,
)  # fmt: skip
_ORDINAL = re.compile(
    r"(?<=\d)\s*(st|nd|rd|th|er|ère|ème|e|º|ª|番ホール|番|홀|번홀|번 홀|号洞)(?![^\W\d_])",
    re.IGNORECASE,
)
"""What follows a number that counts: 7th, 7e, 7番."""


class Label(NamedTuple):
    """Which hole a line is: loop ("" without one), number (None without one) and a letter behind it."""

    loop: str
    number: int | None
    suffix: str = ""

    @property
    def words(self) -> str:
        """As a reader would say it: "7", "A 1"; "" without a number."""
        return " ".join(p for p in (self.loop, f"{self.number or ''}{self.suffix}") if p)


def read_label(text: str) -> Label | None:
    """One of "1", "01", "Hole 1", "A1", "East 3", "10a", "7."; None when there is no number in it."""
    plain = _ORDINAL.sub("", re.sub(r"\.0$", "", text.strip()).strip(".#:)( "))
    plain = _WORDS.sub(" ", re.sub(r"(?i)^hole(?=\d)", "", plain))
    found = _LABEL.match(plain.strip())
    if not found or not 1 <= int(found["number"]) <= MOST_NUMBER:
        return None
    loop = " ".join(re.sub(r"[^\w ]", " ", found["loop"]).split())
    return Label(loop if len(loop) <= 30 else "", int(found["number"]), found["suffix"].lower())


def labels_of(tags: dict[str, str]) -> list[Label]:
    """Labels of a hole line, one for each hole it is played as ("1;10" is two); from its name without a ref.

    The loop of a tag (`golf:course:name`) wins over none in the ref.
    """
    found: list[Label] = []
    ref = tags.get("ref") or tags.get("golf:hole") or tags.get("hole") or tags.get("golf:ref") or ""
    for part in split(ref, also="&+"):
        label = read_label(part)
        if label is None:
            pair = re.fullmatch(r"(\d{1,2})\s*[-–]\s*(\d{1,2})", part)
            if pair and int(pair[2]) - int(pair[1]) == 9:  # one green, two rounds of nine
                found += [Label("", int(pair[1])), Label("", int(pair[2]))]
                continue
            inside = [int(n) for n in re.findall(r"\d{1,2}", part) if 1 <= int(n) <= MOST_NUMBER]
            found += [Label("", n) for k, n in enumerate(inside) if k == 0 or n - inside[0] == 9]
            continue
        found.append(label)
    if not found:
        name = tags.get("name", "")
        counted = _ORDINAL.sub("", name)
        ahead = re.match(r"^\W*(?:hole|no|nr)?\W*(\d{1,2})\b(?![\d-])", counted, re.IGNORECASE)
        label = read_label(name) or (read_label(ahead[1]) if ahead else None)
        if label is None:
            behind = re.search(r"\b(?:hole|no|nr)\W*(\d{1,2})\b", name, re.IGNORECASE)
            label = read_label(behind[1]) if behind else None
        if label is not None:
            found.append(label if _is_loop(label.loop, name) else label._replace(loop=""))
    loop = next(
        (tags[k] for k in LOOP_KEYS if tags.get(k) and not re.fullmatch(r"\d+([_ ]holes?)?", tags[k])), ""
    )
    if loop:
        found = [f if f.loop else f._replace(loop=loop[:30]) for f in found]
    return list(dict.fromkeys(found)) or [Label(loop[:30], None)]


def loop_in_name(tags: dict[str, str], number: int | None) -> str:
    """The loop that the name of a hole line says beside its number ("Red 7"), "" when it says none."""
    name = tags.get("name", "")
    label = read_label(name)
    return label.loop if label is not None and label.number == number and _is_loop(label.loop, name) else ""


def _is_loop(loop: str, name: str) -> bool:
    """Whether the words before the number of a name are a loop's, not the hole's own."""
    return bool(loop) and len(loop.split()) <= 2 and len(name) <= 30


def read_par(text: str | None) -> list[int]:
    """Pars of a tag such as "4", "par 4", "4/5" or "4.0"; those out of 3 to 6 are left out."""
    out = []
    for part in split(re.sub(r"(?i)\bpar\b", " ", text or ""), also="-"):
        value = number(part)
        if value is not None and value == int(value) and 3 <= value <= 6:
            out.append(int(value))
    return out


def read_indexes(tags: dict[str, str]) -> list[int]:
    """Stroke indexes of a hole line (`handicap` on OpenStreetMap), those from 1 to 18."""
    keys = ["handicap", "stroke_index", "golf:handicap", "si", "hcp", "handicap:men", "handicap:white",
            "handicap:yellow", *sorted(key for key in tags if key.startswith("handicap:"))]  # fmt: skip
    for key in keys:
        plain = re.sub(r"(?i)\b(s\.?i|stroke index|index|hcp|handicap)\b[.:]*", " ", tags.get(key, ""))
        found = [number(part) for part in split(plain, also="-")]
        good = [int(v) for v in found if v is not None and v == int(v) and 1 <= v <= 18]
        if good:
            return good
    return []


def slug(text: str) -> str:
    """Words as a part of a file name: lower-case ASCII letters and digits with dashes; may be ""."""
    plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode()
    return "-".join(re.findall(r"[a-z0-9]+", plain.lower()))[:40].strip("-")


def tee_number(tags: dict[str, str]) -> list[Label]:
    """Which holes a tee, green or pin says it belongs to, [] when it does not."""
    found = [label for part in split(tags.get("ref"), also="&+") if (label := read_label(part)) is not None]
    if not found:
        name = tags.get("name", "")
        ahead = re.search(
            r"(?:^|\b(?:hole|no|nr|tee|green)\W*)(\d{1,2})(?:st|nd|rd|th)?\b", name, re.IGNORECASE
        )
        label = read_label(ahead[1]) if ahead else None
        found = [] if label is None else [label]
    return found
