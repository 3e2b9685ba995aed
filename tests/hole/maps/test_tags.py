"""Tags as exporters and mappers write them."""

from __future__ import annotations

import math
from typing import Any

import pytest

from simulator.hole.maps.assemble import join_rings
from simulator.hole.maps.refs import Label, labels_of, read_indexes, read_par, slug
from simulator.hole.maps.tags import clean_tags, length_yd, tee_words


@pytest.mark.parametrize("properties", [
    {"golf": "hole", "ref": "7", "par": 4},
    {"golf": "hole", "ref": 7.0, "par": 4.0, "natural": None, "name": float("nan"), "note": "NULL"},
    {"tags": {"golf": "hole", "ref": "7", "par": "4"}, "meta": {}},
    {"tags": '{"golf": "hole", "ref": 7, "par": 4}'},
    {"other_tags": '"golf"=>"hole","ref"=>"7","par"=>"4"'},
    {"golf": "hole", "other_tags": '"ref" => "7", "par" => "4", "x" => NULL'},
    {"GOLF": "hole", "Ref": " 7 ", "par": "4"},
    {"tags.golf": "hole", "tag:ref": "7", "tags_par": "4"},
])  # fmt: skip
def test_the_same_tags_in_every_style(properties: dict[str, Any]) -> None:
    assert clean_tags(properties) == {"golf": "hole", "ref": "7", "par": "4"}


def test_no_tags() -> None:
    for nothing in (None, [], "x", 3, {"a": None, "b": math.inf, "c": "", "d": {}}):
        assert clean_tags(nothing) == {}


@pytest.mark.parametrize("text, yards", [
    ("3", 3 / 0.9144), ("3 m", 3 / 0.9144), ("2,5", 2.5 / 0.9144), ("10 ft", 10 / 3), ("12'", 4.0), ("385 yd", 385.0),
    ("385 Yards", 385.0), ("0.5 km", 500 / 0.9144), ("wide", None), ("", None), (None, None), ("3 parsec", None),
])  # fmt: skip
def test_lengths(text: str | None, yards: float | None) -> None:
    assert length_yd(text) == (None if yards is None else pytest.approx(yards))


@pytest.mark.parametrize("ref, want", [
    ("1", [("", 1, "")]), ("01", [("", 1, "")]), ("1.0", [("", 1, "")]), ("Hole 1", [("", 1, "")]), ("#12", [("", 12, "")]),
    ("1;10", [("", 1, ""), ("", 10, "")]), ("1, 10", [("", 1, ""), ("", 10, "")]), ("1/10", [("", 1, ""), ("", 10, "")]),
    ("1-10", [("", 1, ""), ("", 10, "")]), ("1 (10)", [("", 1, ""), ("", 10, "")]), ("A1", [("A", 1, "")]), ("B 12", [("B", 12, "")]),
    ("East-3", [("East", 3, "")]), ("10a", [("", 10, "a")]), ("Loch 3", [("", 3, "")]), ("Trou n°5", [("", 5, "")]),
    ("1st", [("", 1, "")]), ("", [("", None, "")]), ("x", [("", None, "")]), ("0", [("", None, "")]),
])  # fmt: skip
def test_refs(ref: str, want: list[tuple[str, int | None, str]]) -> None:
    assert labels_of({"ref": ref}) == [Label(*one) for one in want]


@pytest.mark.parametrize("name, number", [
    ("Hole 7", 7), ("7", 7), ("7. Postern", 7), ("7 - Postern", 7), ("Postern (Hole 7)", 7), ("Postern", None),
    ("Hole #7 Postern", 7), ("7th", 7), ("7th Hole", 7), ("7. Bahn", 7), ("Bahn 7", 7), ("7番ホール", 7), ("7e", 7),
    ("Hole7", 7), ("7th - Postern", 7),
])  # fmt: skip
def test_numbers_from_names(name: str, number: int | None) -> None:
    assert [label.number for label in labels_of({"name": name})] == [number]


@pytest.mark.parametrize("text, pars", [
    ("4", [4]), ("par 4", [4]), ("4/5", [4, 5]), ("4;5", [4, 5]), ("4.0", [4]), ("4-5", [4, 5]), ("72", []), ("four", []),
    ("", []), (None, []), ("4.5", []),
])  # fmt: skip
def test_pars(text: str | None, pars: list[int]) -> None:
    assert read_par(text) == pars


def test_stroke_indexes() -> None:
    assert read_indexes({"handicap": "7"}) == [7] and read_indexes({"handicap": "7/9"}) == [7, 9]
    assert read_indexes({"handicap": "27", "handicap:white": "3"}) == [3]
    assert read_indexes({"handicap": "SI 7"}) == [7] == read_indexes({"handicap:blue": "7", "par": "4"})
    assert read_indexes({"handicap": "x"}) == [] == read_indexes({})


@pytest.mark.parametrize("tags, words", [
    ({"tee": "red"}, ["red"]), ({"tee": "gold;white"}, ["gold", "white"]), ({"colour": "yellow"}, ["yellow"]),
    ({"name": "White tee"}, ["white"]), ({"name": "Hole 4 Ladies"}, ["ladies"]), ({"description": "gelbe Abschläge"}, ["yellow"]),
    ({"name": "Départ rouge"}, ["red"]), ({"tee": "Championship"}, ["championship"]), ({"tee": "yes", "name": "Blues"}, ["blue"]),
    ({"tee": "red & white"}, ["red", "white"]), ({"name": "Whitechapel"}, []), ({}, []),
])  # fmt: skip
def test_colours_of_tees(tags: dict[str, str], words: list[str]) -> None:
    assert tee_words(tags) == words


def test_slugs_are_harmless_names() -> None:
    assert slug("../../etc/passwd") == "etc-passwd" and slug("Château d'Eau №1") == "chateau-d-eau-no1" and slug("東") == ""


def test_rings_from_pieces() -> None:
    rings, left = join_rings([[1, 2, 3], [5, 4, 3], [5, 6, 1], [10, 11, 12, 10], [20, 21, 22]])
    assert sorted(map(len, rings)) == [4, 7] and left == [[20, 21, 22]]
    assert all(ring[0] == ring[-1] for ring in rings)
