"""Text of options, made plain to read."""

from __future__ import annotations

import re
import unicodedata


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
