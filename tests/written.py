"""What is written for users: the README and the page of JSON keys."""

from __future__ import annotations

from pathlib import Path

_ROOT = Path(__file__).parents[1]

README = (_ROOT / "README.md").read_text("utf-8")
JSON_KEYS = (_ROOT / "examples" / "JSON.md").read_text("utf-8")
