"""What toml_text writes, the standard library reads back (TOML 1.0.0)."""

from __future__ import annotations

import tomllib

from hypothesis import given, settings
from hypothesis import strategies as st

from simulator.toml_text import comment, key, one_line, quoted, short_line, value

WORDS = st.text(st.characters(exclude_categories=()), max_size=30)  # lone halves of pairs and controls too
PLAIN = st.text(max_size=20).filter(str.isprintable)
VALUES = st.recursive(
    st.booleans() | st.integers(-(2**53), 2**53) | st.floats() | PLAIN,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(PLAIN, inner, max_size=4),
    max_leaves=12,
)


@settings(max_examples=300, deadline=None)
@given(VALUES)
def test_values_come_back(found: object) -> None:
    assert repr(tomllib.loads(f"a = {value(found)}")["a"]) == repr(found)


@settings(max_examples=300, deadline=None)
@given(WORDS)
def test_any_text_stays_in_its_place(text: str) -> None:
    lines = f"{comment(text)}\n{key(text)} = {quoted(text)}\nnext = 1\n"
    lines.encode("utf-8")  # no lone half of a pair gets into a file
    read = tomllib.loads(lines)
    assert read.pop("next") == 1 or key(text) == "next"
    shown = "".join(c if c.isprintable() else " " for c in text)
    assert list(read.items()) == [(text if key(text) == text else shown, shown)]
    assert "\n" not in one_line(text) and one_line(text).isprintable()
    short = short_line(text, 12)
    assert short == one_line(text) or (len(short) == 12 and short.endswith("...") and one_line(text).startswith(short[:9]))
