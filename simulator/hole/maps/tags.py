"""Tags as exporters write them: flat, nested, in one string; and the numbers and colours inside them."""

from __future__ import annotations

import json
import math
import re
from typing import Any

from simulator.units import FT_PER_YD, M_PER_YD, YD_PER_M

NESTED = ("tags", "other_tags", "all_tags", "@tags", "properties")
"""Properties that hold the tags once more, as an object or as text."""

NOTHING = frozenset({"", "null", "none", "nan", "<na>", "n/a", "undefined"})

MOST_LETTERS = 400
"""Longest value kept of a tag [characters]; OpenStreetMap allows 255."""

_HSTORE = re.compile(r'"((?:[^"\\]|\\.)*)"\s*=>\s*(?:"((?:[^"\\]|\\.)*)"|NULL)')
_NUMBER = re.compile(r"^\s*~?\s*([+-]?\d+(?:[.,]\d+)?)\s*([a-z'\"´’]*)\.?\s*$")

_UNIT_YD: dict[str, float] = {
    **dict.fromkeys(("m", "metre", "metres", "meter", "meters", "mtr", "mtrs"), YD_PER_M),
    **dict.fromkeys(("yd", "yds", "y", "yard", "yards"), 1.0),
    **dict.fromkeys(("ft", "'", "’", "´", "feet", "foot"), 1.0 / FT_PER_YD),
    **dict.fromkeys(("km",), 1000.0 * YD_PER_M),
    **dict.fromkeys(("cm",), 0.01 * YD_PER_M),
}

COLOURS: dict[str, str] = {
    # what maps call a tee, in several languages: the word used here
    **dict.fromkeys(("black", "schwarz", "noir", "negro", "negras", "zwart", "svart", "sort"), "black"),
    **dict.fromkeys(("gold", "oro", "or"), "gold"),
    **dict.fromkeys(("championship", "tournament", "champion", "tips", "pro"), "championship"),
    **dict.fromkeys(("blue", "blau", "bleu", "bleus", "azul", "azules", "blauw", "blå", "blu"), "blue"),
    **dict.fromkeys(("white", "weiss", "weiß", "blanc", "blancs", "blanco", "blancas", "wit", "vit", "hvid",
                     "hvit", "bianco", "medal"), "white"),
    **dict.fromkeys(("yellow", "gelb", "jaune", "jaunes", "amarillo", "amarillas", "geel", "gul", "giallo"),
                    "yellow"),
    **dict.fromkeys(("silver", "silber"), "silver"),
    **dict.fromkeys(("green", "grün", "vert", "verde", "groen", "grön"), "green"),
    **dict.fromkeys(("senior", "seniors"), "senior"),
    **dict.fromkeys(("orange", "oranje"), "orange"),
    **dict.fromkeys(("red", "rot", "rouge", "rojo", "rojas", "rood", "röd", "rød", "rosso"), "red"),
    **dict.fromkeys(("ladies", "lady", "women", "womens", "damen", "dames", "forward", "front"), "ladies"),
    **dict.fromkeys(("back",), "back"),
    **dict.fromkeys(("middle",), "middle"),
    **dict.fromkeys(("purple", "violet", "lila"), "purple"),
    **dict.fromkeys(("pink",), "pink"),
    **dict.fromkeys(("junior", "juniors", "kids"), "junior"),
}  # fmt: skip

ENDINGS = ("", "s", "e", "er", "en", "es")
"""What may follow a colour in a name: whites, gelbe, weißer."""

BACK_TO_FRONT = (
    "championship", "black", "gold", "back", "blue", "white", "middle", "yellow", "silver", "green", "senior",
    "purple", "orange", "red", "ladies", "pink", "junior",
)  # fmt: skip
"""Usual order of tees that share one ground, the back one first (common practice, from memory)."""


def clean_tags(properties: Any) -> dict[str, str]:
    """Tags from the properties of a feature, whatever way the exporter wrote them.

    Nested objects (`tags`), lists in one text (`"golf"=>"green","par"=>"4"`) and JSON text are opened; the
    feature's own properties win over them. Empty values, null and NaN are no tags.
    """
    out: dict[str, str] = {}
    if not isinstance(properties, dict):
        return out
    for key in NESTED:
        value = properties.get(key)
        if isinstance(value, str):
            value = _opened(value)
        if isinstance(value, dict) and value is not properties:
            out.update(_flat(value))
    out.update(_flat({k: v for k, v in properties.items() if k not in NESTED}))
    return out


def _opened(text: str) -> dict[str, Any]:
    """Tags inside one text: JSON, or pairs `"key"=>"value"`; none when it is neither."""
    if text.lstrip().startswith("{"):
        try:
            found = json.loads(text)
        except (ValueError, RecursionError):
            found = None
        if isinstance(found, dict):
            return found
    return {_unescaped(k): _unescaped(v) for k, v in _HSTORE.findall(text)}


def _unescaped(text: str) -> str:
    return re.sub(r"\\(.)", r"\1", text)


def _flat(properties: dict[Any, Any]) -> dict[str, str]:
    out = {}
    for key, value in properties.items():
        words = _as_text(value)
        name = re.sub(r"^(tags?[.:_]|@)", "", str(key).strip().lower())
        if words is not None and name:
            out[name] = words
    return out


def _as_text(value: Any) -> str | None:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        if isinstance(value, float) and not math.isfinite(value):
            return None
        try:
            return f"{value:.10g}"
        except OverflowError:  # an integer of hundreds of digits
            return None
    if isinstance(value, list | tuple):
        parts = [_as_text(v) for v in value[:20] if not isinstance(v, list | tuple)]
        return ";".join(p for p in parts if p) or None
    if not isinstance(value, str):
        return None
    text = " ".join("".join(c if c.isprintable() else " " for c in value[:MOST_LETTERS]).split())
    return None if text.lower() in NOTHING else text


def length_yd(text: str | None, unit: str = "m") -> float | None:
    """A length [yd] from a tag such as "3", "2.5 m", "10 ft", "385 yd"; without a unit `unit` is meant."""
    found = _NUMBER.match((text or "").lower())
    if not found:
        return None
    value, word = float(found[1].replace(",", ".")), found[2] or unit
    scale = _UNIT_YD.get(word)
    return None if scale is None else value * scale


def has_unit(text: str | None) -> bool:
    """Whether a length says its unit."""
    found = _NUMBER.match((text or "").lower())
    return bool(found and found[2])


def height_m(text: str | None) -> float | None:
    """A height [m] from an `ele` tag, metres unless it says feet."""
    yards = length_yd(text)
    return None if yards is None else yards * M_PER_YD


def number(text: str | None) -> float | None:
    """A plain number from a tag, None when it is none."""
    found = _NUMBER.match((text or "").lower())
    return float(found[1].replace(",", ".")) if found and not found[2] else None


def split(text: str | None, also: str = "") -> list[str]:
    """Values of a tag that holds several, split at ; , / | and at what `also` adds."""
    return [part.strip() for part in re.split(rf"[;,/|{also}]", text or "") if part.strip()]


def tee_words(tags: dict[str, str]) -> list[str]:
    """Colours (or ladies, back ...) of a tee: by its own tags, else by free text; [] when unsaid."""
    for key in ("tee", "tee:colour", "tee:color", "golf:tee", "colour", "color", "tees"):
        words = [w for part in split(tags.get(key), also="+&") for w in _colours_in(part)]
        if words:
            return list(dict.fromkeys(words))
    for key in ("name", "description", "note", "ref", "loc_name", "alt_name"):
        words = _colours_in(tags.get(key, ""))
        if words:
            return list(dict.fromkeys(words))
    return []


def _colours_in(text: str) -> list[str]:
    found = []
    for word in re.findall(r"[^\W\d_]+", text.lower()):
        stem = next((word.removesuffix(end) for end in ENDINGS if word.removesuffix(end) in COLOURS), None)
        if stem is not None:
            found.append(COLOURS[stem])
    return found
