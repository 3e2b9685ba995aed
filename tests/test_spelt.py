"""Numbers in words: as golfers say them, and where a word is no number."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from simulator.spelt import SMALL, TENS, in_figures, in_full, read_number

TENS_WORDS = {value: word for word, value in TENS.items()}
SMALL_WORDS = {value: word for word, value in SMALL.items()}


def below_hundred(n: int) -> str:
    if n in SMALL_WORDS:
        return SMALL_WORDS[n]
    return TENS_WORDS[n - n % 10] + (f"-{SMALL_WORDS[n % 10]}" if n % 10 else "")


@given(st.integers(100, 999), st.sampled_from(("", "and ")))
def test_hundreds_are_read_back(n: int, joined: str) -> None:
    words = f"{SMALL_WORDS[n // 100]} hundred" + (f" {joined}{below_hundred(n % 100)}" if n % 100 else "")
    assert in_figures(f"{words} out") == f"{n} out"


@given(st.integers(110, 699).filter(lambda n: n % 100 >= 10))
def test_hundreds_without_the_word_are_read_back(n: int) -> None:
    """ "One sixty-four", as yards are called out."""
    assert in_figures(f"{SMALL_WORDS[n // 100]} {below_hundred(n % 100)} out") == f"{n} out"


@pytest.mark.parametrize(
    "words, figures",
    [
        ("Twelve", "12"),
        ("two oh five", "205"),
        ("a hundred and ten", "110"),
        ("three thousand five hundred ft", "3500 ft"),
        ("two and a half clubs", "2.5 clubs"),
        ("10 and a half", "10.5"),
        ("10ish, ten-ish, 10 irish", "10, 10, 10 irish"),
        ("160-yards, a 7-iron", "160 yards, a 7-iron"),
        ("seven point five", "7.5"),
        ("minus five", "minus 5"),
        ("ten to fifteen mph", "10 to 15 mph"),
        ("par four, four twelve", "par 4, 412"),
        ("par four four twelve", "par 4 412"),
        ("between one hundred and one ten", "between 100 and 110"),  # not 101 and 10
        ("seven iron one fifty", "7 iron 150"),
        ("two o'clock", "2 o'clock"),
        ("handicap twenty four wood two hundred seven iron 140", "handicap 20 4 wood 200 7 iron 140"),
        ("seven twenty", "7 20"),
        ("mid eighties", "mid 80s"),
        ("a good one, a left one", "a good one, a left one"),
        ("someone often weighs a stone", "someone often weighs a stone"),
    ],
)
def test_in_figures(words: str, figures: str) -> None:
    assert in_figures(words) == figures


def test_only_before_what_makes_it_a_number() -> None:
    assert in_figures("ten acre wood, one eighty out", before="out") == "ten acre wood, 180 out"
    assert in_figures("one putt", before="putt") == "1 putt"
    assert in_figures("seven on, twelve on", least=10.0) == "seven on, 12 on"
    assert in_figures("plus one", ones=True) == "plus 1"


def test_short_forms() -> None:
    assert in_full("Bkr rt of the GRN, fwys") == "bunker right of the green, fairways"


def test_words_that_begin_no_number() -> None:
    assert read_number([]) is None
    assert read_number(["half", "past", "two"]) is None
    assert read_number(["a", "pond"]) is None
