"""What is written for users and contributors: every page of the repository, by its path."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).parents[1]

PAGES = {
    path.relative_to(ROOT).as_posix(): path.read_text("utf-8")
    for folder in (".", "benchmarks", "examples", "holes")
    for path in sorted(ROOT.glob(f"{folder}/*.md"))
}
"""All pages."""

GUIDE = {name: text for name, text in PAGES.items() if name.startswith(("README", "examples/", "holes/"))}
"""The pages for users."""

README = PAGES["README.md"]
JSON_KEYS = PAGES["examples/JSON.md"]
WHOLE_GUIDE = "\n".join(GUIDE.values())
"""What a user is told somewhere."""


def blocks(language: str, page: str) -> list[str]:
    """The fenced blocks of a page in one language."""
    return re.findall(rf"^```{language}\n(.*?)^```$", PAGES[page], re.DOTALL | re.MULTILINE)
