"""Text of options: made plain to read, made short to quote."""

from __future__ import annotations

import re
import unicodedata


def one_line(value: object, limit: int = 60) -> str:
    """A value on one printable line of at most ``limit`` characters."""
    text = " ".join("".join(c if c.isprintable() else " " for c in str(value)).split())
    return text if len(text) <= limit else text[: limit - 3] + "..."


def clean(text: str) -> str:
    """A phrase in lower case with plain quotes, hyphens, plus-minus and decimal points, blanks single."""
    text = unicodedata.normalize("NFC", text).casefold()
    for old, new in (
        ("’", "'"),
        ("‘", "'"),
        ("`", "'"),
        ("´", "'"),
        ("±", "+-"),
        ("½", " half "),
        ("″", '"'),
    ):
        text = text.replace(old, new)
    text = re.sub("[–—−‐‑]", "-", text)
    text = re.sub(r"(?<=\d),(?=\d{3}(?!\d))", "", text)  # 3,000 ft
    text = re.sub(r"(?<=\d),(?=\d)", ".", text)  # 7,5 m/s
    return " ".join(text.split())
