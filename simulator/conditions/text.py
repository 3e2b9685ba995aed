"""Text of options, made plain to read."""

from __future__ import annotations

import re
import unicodedata

from ..spelt import in_figures, in_full


def clean(text: str) -> str:
    """A phrase in lower case, numbers in figures, with plain quotes, hyphens, plus-minus and points."""
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
    return in_figures(in_full(" ".join(text.split())))
