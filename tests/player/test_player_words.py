"""Players in words: understood as meant, or refused by pointing at the word."""

from __future__ import annotations

import re
from typing import Any

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from simulator.cli import _run
from simulator.errors import FileError, SimulatorError, UsageError
from simulator.player import level, load_player
from simulator.player.words import is_player_words, looks_like_words, player_table
from simulator.report.phrases import swing_words
from simulator.report.units import METRES
from simulator.strategy.clubwords import shot_meant
from simulator.tables.shots import PUTTER

D = "driver"
IRONS = ["5-iron", "6-iron", "7-iron", "8-iron", "9-iron", "pitching wedge"]
UNDERSTOOD: list[tuple[str, dict[str, Any]]] = [
    # a whole set as it is said, and kinds that stay at home
    ("handicap 8, only driver, 3w, 5-PW, 52, putter", {"handicap": 8, "clubs": [D, "3-wood", *IRONS, "52-degree wedge", "putter"]}),
    ("handicap 8, bag: driver 230, 5 to 9 iron, PW, putter",
     {"handicap": 8, "clubs": [D, *IRONS, "putter"], "club": {D: {"carry_yd": 230}}}),
    ("handicap 8, bag: driver 230, 3 and 5 woods, hybrids 4 and 5, 6-PW, putter",
     {"handicap": 8, "clubs": [D, "3-wood", "5-wood", "4-hybrid", "5-hybrid", *IRONS[1:], "putter"], "club": {D: {"carry_yd": 230}}}),
    ("handicap 8, 7/9 woods, hybrids 3, 6",
     {"handicap": 8, "club": {club: {} for club in ("7-wood", "9-wood", "3-hybrid", "6-hybrid")}}),
    ("handicap 8, no hybrids", {"handicap": 8, "club": {"4-hybrid": {"use": "never"}}}),
    ("handicap 8, no fairway woods", {"handicap": 8, "club": {"3-wood": {"use": "never"}, "5-wood": {"use": "never"}}}),
    ("avg drive 215, hcp 16", {"handicap": 16, "club": {D: {"total_yd": 215}}}),
    ("handicap 16 (man), driver 205 (carry)", {"handicap": 16, "sex": "man", "club": {D: {"carry_yd": 205}}}),
    # what a golfer types, and the bag file it stands for
    ("handicap 15, driver 205", {"handicap": 15, "club": {D: {"carry_yd": 205}}}),
    ("12 man", {"handicap": 12, "sex": "man"}),
    ("12, woman, driver 170", {"handicap": 12, "sex": "woman", "club": {D: {"carry_yd": 170}}}),
    ("handicap 24, woman", {"handicap": 24, "sex": "woman"}),
    ("handicap: 12, 7i: 150, driver-210", {"handicap": 12, "club": {"7-iron": {"carry_yd": 150}, D: {"carry_yd": 210}}}),
    ("12 handicap off the yellows, leftie", {"handicap": 12, "tee": "yellow", "hand": "left"}),
    ("handicap 12, sand wedge 56 yards", {"handicap": 12, "club": {"sand wedge": {"carry_yd": 56}}}),
    ("scratch", {"handicap": 0}),
    ("handicap twelve", {"handicap": 12}),
    ("plays off twelve", {"handicap": 12}),
    ("12 hcp", {"handicap": 12}),
    ("off scratch", {"handicap": 0}),
    ("h'cap 18. driver 200. 7-iron 130.", {"handicap": 18, "club": {D: {"carry_yd": 200}, "7-iron": {"carry_yd": 130}}}),
    ("off a 12", {"handicap": 12}),
    ("high teens handicap", {"handicap": 18}),
    ("plays in the mid teens", {"handicap": 15}),
    ("low single figures", {"handicap": 3}),
    ("handicap 12 to 15", {"handicap": 13.5}),
    ("twelve to fifteen handicap, 7i 140", {"handicap": 13.5, "club": {"7-iron": {"carry_yd": 140}}}),
    ("plays off plus one", {"handicap": -1}),
    ("off one", {"handicap": 1}),
    ("twelve point four handicap, seven iron one forty", {"handicap": 12.4, "club": {"7-iron": {"carry_yd": 140}}}),
    ("shoots in the mid eighties", {"handicap": 13}),
    ("a scratch golfer", {"handicap": 0}),
    ("plus 2", {"handicap": -2}),
    ("+2", {"handicap": -2}),
    ("handicap +1.5", {"handicap": -1.5}),
    ("hcp 12, 7-iron 140, miss short right", {"handicap": 12, "club": {"7-iron": {"carry_yd": 140}}, "miss": "short right"}),
    ("bogey golfer", {"handicap": 20}),  # Rules of Handicapping, definitions: about 20, 24 for a woman
    ("woman, bogey golfer", {"handicap": 24, "sex": "woman"}),
    ("handicap 9, driver 190 m", {"handicap": 9, "club": {D: {"carry_m": 190}}}),
    ("handicap 9, driver 190m", {"handicap": 9, "club": {D: {"carry_m": 190}}}),
    ("18 handicap, driver 220 total", {"handicap": 18, "club": {D: {"total_yd": 220}}}),
    ("off 7, driver carries 240, fade", {"handicap": 7, "club": {D: {"carry_yd": 240}}, "shape": "fade"}),
    ("Handicap 7; 5 Wood 200 yards; seven iron 150", {"handicap": 7, "club": {"5-wood": {"carry_yd": 200}, "7-iron": {"carry_yd": 150}}}),
    ("15-handicapper, lady, hits a draw", {"handicap": 15, "sex": "woman", "shape": "draw"}),
    ("shoots 90", {"handicap": 18}),  # average score less 72, as the levels read published scores
    ("90-shooter, left-handed, slice", {"handicap": 18, "hand": "left", "shape": "slice"}),
    ("handicap 10, driver 230, 50 wide, 40 deep", {"handicap": 10, "club": {D: {"carry_yd": 230, "width_yd": 50, "depth_yd": 40}}}),
    ("handicap 10, driver 230 tee only", {"handicap": 10, "club": {D: {"carry_yd": 230, "use": "tee only"}}}),
    ("handicap 10, no driver", {"handicap": 10, "club": {D: {"use": "never"}}}),
    ("handicap 10 without 3w, 52 105", {"handicap": 10, "club": {"3-wood": {"use": "never"}, "52-degree wedge": {"carry_yd": 105}}}),
    ("handicap 5, 7i 150, 7i low 130", {"handicap": 5, "club": {"7-iron": {"carry_yd": 150, "low_carry_yd": 130}}}),
    ("handicap 12, driver 205 fade 10 yards", {"handicap": 12, "club": {D: {"carry_yd": 205, "shape": "fade", "curve_yd": 10}}}),
    ("handicap 12, driver 205 misses right, pw 100", {"handicap": 12, "club": {D: {"carry_yd": 205, "miss": "right"}, "pitching wedge": {"carry_yd": 100}}}),
    ("handicap 12, slices the driver 30 yards", {"handicap": 12, "club": {D: {"shape": "slice", "curve_yd": 30}}}),
    ("handicap 12, hooks his driver 20", {"handicap": 12, "club": {D: {"shape": "hook", "curve_yd": 20}}}),
    ("handicap 12, slices his driver 220 total, 7i 150", {"handicap": 12, "club": {D: {"shape": "slice", "total_yd": 220}, "7-iron": {"carry_yd": 150}}}),
    ("handicap 12, 30 yd slice", {"handicap": 12, "shape": "slice", "curve_yd": 30}),
    ("handicap 12, fades the ball 10 metres", {"handicap": 12, "shape": "fade", "curve_m": 10}),
    ("handicap 12, driver 30 yd slice", {"handicap": 12, "club": {D: {"shape": "slice", "curve_yd": 30}}}),
    ("handicap 12, 20-yard fade with the 3 wood", {"handicap": 12, "club": {"3-wood": {"shape": "fade", "curve_yd": 20}}}),
    ("handicap 12, driver 205 slice", {"handicap": 12, "club": {D: {"carry_yd": 205, "shape": "slice"}}}),
    ("12 handicapper, drives it 250", {"handicap": 12, "club": {D: {"total_yd": 250}}}),
    ("scratch golfer drives 280", {"handicap": 0, "club": {D: {"total_yd": 280}}}),
    ("handicap 9, drives it 230 m carry", {"handicap": 9, "club": {D: {"carry_m": 230}}}),
    ("handicap 9, drive carries 220", {"handicap": 9, "club": {D: {"carry_yd": 220}}}),
    ("handicap 9, driving distance of 240, 50 wide", {"handicap": 9, "club": {D: {"total_yd": 240, "width_yd": 50}}}),
    ("handicap 20, only driver 150 and 56", {"handicap": 20, "clubs": [D, "56-degree wedge"], "club": {D: {"carry_yd": 150}}}),
    ("handicap 9, driver between 200 and 210", {"handicap": 9, "club": {D: {"carry_yd": 205}}}),
    ("handicap 9, driver 60 yards wide", {"handicap": 9, "club": {D: {"width_yd": 60}}}),  # not 60 of carry
    ("handicap 9, hits it right", {"handicap": 9, "miss": "right"}),
    ("handicap 9, loses it right", {"handicap": 9, "miss": "right"}),
    ("he's a 9 handicap, always misses everything left", {"handicap": 9, "miss": "left"}),
    ("handicap 9, misses right with the driver, 7i 140", {"handicap": 9, "club": {D: {"miss": "right"}, "7-iron": {"carry_yd": 140}}}),
    ("handicap 9, misses right with a draw", {"handicap": 9, "miss": "right", "shape": "draw"}),
    ("handicap 9, without driver and 3-wood", {"handicap": 9, "club": {D: {"use": "never"}, "3-wood": {"use": "never"}}}),
    ("handicap 9, leaves the driver and the 3w at home", {"handicap": 9, "club": {D: {"use": "never"}, "3-wood": {"use": "never"}}}),
    ("handicap 9, no driver and 7-iron 140", {"handicap": 9, "club": {D: {"use": "never"}, "7-iron": {"carry_yd": 140}}}),
    ("handicap 9, driver goes left", {"handicap": 9, "club": {D: {"miss": "left"}}}),
    ("handicap 9, in metres: driver 190, 7-iron 130 yards", {"handicap": 9, "club": {D: {"carry_m": 190}, "7-iron": {"carry_yd": 130}}}),
    ("handicap 9, driver 205ish 3-wood 190 hybrid ~175", {"handicap": 9, "club": {D: {"carry_yd": 205}, "3-wood": {"carry_yd": 190}, "hybrid": {"carry_yd": 175}}}),
    ("handicap 9, tee shot goes 240, misses right", {"handicap": 9, "club": {D: {"total_yd": 240}}, "miss": "right"}),
    ("handicap 20, never hits driver", {"handicap": 20, "club": {D: {"use": "never"}}}),
    ("handicap 20, doesn't carry a 3-wood", {"handicap": 20, "club": {"3-wood": {"use": "never"}}}),
    ("called Ada, handicap 12", {"name": "Ada", "handicap": 12}),
    ("handicap about 18", {"handicap": 18}),
    ("plays to 12, woman", {"handicap": 12, "sex": "woman"}),
    ("scr, left handed", {"handicap": 0, "hand": "left"}),
    ("handicap 20, woman, off the red tees", {"handicap": 20, "sex": "woman", "tee": "red"}),
    ("beginner", {"handicap": 36}),
    ("a high handicapper, woman", {"handicap": 26, "sex": "woman"}),
    ("mid-handicapper", {"handicap": 14}),
    ("low handicap golfer", {"handicap": 5}),
    ("single figure handicapper, fade", {"handicap": 7, "shape": "fade"}),
    ("shoots in the 90s", {"handicap": 23}),
    ("shoots high 80s", {"handicap": 16}),
    ("shoots 85 to 90", {"handicap": 15.5}),
    ("handicap 12, hits it 230", {"handicap": 12, "club": {D: {"total_yd": 230}}}),
    ("handicap 18, carries driver 200", {"handicap": 18, "club": {D: {"carry_yd": 200}}}),
    ("handicap 18, carries it 200", {"handicap": 18, "club": {D: {"carry_yd": 200}}}),
    ("handicap 18, driver about 200, 7 iron roughly 140", {"handicap": 18, "club": {D: {"carry_yd": 200}, "7-iron": {"carry_yd": 140}}}),
    ("handicap 18, driver 200-210, 9-iron 110", {"handicap": 18, "club": {D: {"carry_yd": 205}, "9-iron": {"carry_yd": 110}}}),
    ("handicap 18, tends to slice it", {"handicap": 18, "shape": "slice"}),
    ("handicap 18, draws the ball", {"handicap": 18, "shape": "draw"}),
    ("handicap 18, usually misses left", {"handicap": 18, "miss": "left"}),
    ("handicap 18, misses both ways", {"handicap": 18}),
    ("handicap 18, leaves his driver at home", {"handicap": 18, "club": {D: {"use": "never"}}}),
    ("handicap 30, only driver 150, 7-iron, 9-iron, sand wedge",
     {"handicap": 30, "clubs": [D, "7-iron", "9-iron", "sand wedge"], "club": {D: {"carry_yd": 150}}}),
    ("handicap 40, girl, with only a 7 iron, a 9 iron, a sand wedge and a putter",
     {"handicap": 40, "sex": "woman", "clubs": ["7-iron", "9-iron", "sand wedge", "putter"]}),
    ("only has driver tee only, 7i 100, sw; handicap 30, no 3-wood, slice",
     {"handicap": 30, "clubs": [D, "7-iron", "sand wedge"], "club": {D: {"use": "tee only"}, "7-iron": {"carry_yd": 100}},
      "shape": "slice"}),
    ("handicap 30, only driver, 7-iron, drives it 150", {"handicap": 30, "clubs": [D, "7-iron"], "club": {D: {"total_yd": 150}}}),
    ("handicap 18, 3 wood off the tee only", {"handicap": 18, "club": {"3-wood": {"use": "tee only"}}}),
]  # fmt: skip


@pytest.mark.parametrize(("words", "meant"), UNDERSTOOD, ids=[words for words, _ in UNDERSTOOD])
def test_understood(words: str, meant: dict[str, Any]) -> None:
    assert player_table(words) == meant
    assert is_player_words(words)
    player = load_player(words)
    assert player.handicap == meant["handicap"] and player.source == f'"{words}"'


def test_a_set_in_words_is_the_whole_bag() -> None:
    player = load_player("handicap 30, only driver 150, 7-iron, 9-iron, sand wedge and putter")
    assert [club.name for club in player.clubs] == [D, "7-iron", "9-iron", "sand wedge"]
    assert player.clubs[0].carry_yd == 150.0
    assert not [one for one in player.assumed if "standard set" in one or "only some clubs" in one]


def test_a_drive_is_a_total_and_says_so() -> None:
    taken = "is taken as the driver's total: drives are measured at rest."
    assert f"'drives it 250' {taken}" in load_player("handicap 12, drives it 250").assumed
    for words in ("handicap 12, drives it 250 total", "handicap 12, drives it 250 carry", "handicap 12, driver 230"):
        assert not [one for one in load_player(words).assumed if taken in one]
    from_words, from_club = load_player("handicap 12, drives 250"), load_player("handicap 12, driver 250 total")
    assert from_words.clubs[0] == from_club.clubs[0] and from_words.clubs[0].carry_yd < 245.0


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        ("beginner", "'beginner' is taken as handicap 36 (golfers mean 28 to 54)"),
        ("12, man", "'12' is taken as handicap 12."),
        ("high handicapper", "'high handicapper' is taken as handicap 26 (golfers mean 19 and more)"),
        ("shoots low 80s", "'shoots low 80s' is taken as an average score of 82."),
        ("handicap 15, driver 200-210", "'200-210' is taken as 205, the middle of it."),
        ("handicap 15, hits it both ways", "'it both ways' is taken as no side missed more than the other."),
        ("handicap 15, misses both ways", "'misses both ways' is taken as no side missed more than the other."),
        ("handicap 15, hits it 230", "'hits it 230' is taken as the driver's total"),
    ],
)
def test_what_is_taken_for_a_word_is_said(words: str, sentence: str) -> None:
    assumed = load_player(words).assumed
    assert [one for one in assumed if one.startswith(sentence)]
    assert not [one for one in assumed if "file" in one]  # there is none


REFUSED = [
    # the words, and what the refusal points at
    ("pro", "'pro'; say a handicap: \"plus 2\""),
    ("15 driver 220", "'15 driver'; a number alone: say \"handicap 14\""),
    ("an average golfer", "'average golfer'; say a handicap"),
    ("handicap 15, senior", "'senior'; age changes nothing by itself: say how far too"),
    ("senior, handicap 54", "'senior'; age changes nothing by itself: say how far too"),
    ("junior, driver 150", "'junior'; age changes nothing by itself: say a handicap too"),
    ("junior girl", "'junior'; age changes nothing by itself: say a handicap and a distance"),
    ("handicap 15, short hitter", "'short hitter'; say how far"),
    ("handicap 15, big slice", "'big slice'; say how far it curves"),
    ("handicap 15, push", "'push'; say to which side"),
    ("handicap 15, weak putter", "'weak putter'; putting goes into a player file"),
    ("handicap 15, good short game", "'good short game'; the short game goes into a player file"),
    ("breaks 90", "'breaks 90'; say an average score"),
    ("Sam, handicap 12", "'sam', which is not understood there (a name is said \"called Sam\")"),
    ("beginner, handicap 40", "says the handicap a second time"),
    ("handicap 15, drivr 205", "'drivr', which is not understood there (did you mean 'driver'?)"),
    ("handicap 15, driver banana", "'banana', which is no distance of the driver"),
    ("handicap 15, driver", "the driver without a distance"),
    ("handicap 15, driver 205 215", "'215', which is not understood there"),
    ("handicap 15, handicap 16", "'handicap', which says the handicap a second time"),
    ("handicap 15, driver 200, driver 210", "which says a second carry of the driver"),
    ("handicap 12 to 54", "its two numbers are too far apart"),
    ("handicap 18, 200 off the tee", 'say the usual drive: "drives it 210"'),
    ("handicap 18, usually short", 'say that it is missed there: "miss short"'),
    ("plus handicap", 'say how far: "plus 2"'),
    ("handicap umpteen", "'handicap', which is not followed by 'umpteen'"),
    ("handicap 15, miss up", "'miss', which is not followed by 'up'"),
    ("handicap 15, 50 wide", "'50', which needs a club before it"),
    ("handicap 15, tall", "'tall', which is not understood there"),
    ("handicap 99", "handicap: found 99; allowed: a number from -5 to 54"),
    ("handicap 15, driver 2000", "club 'driver', carry_yd: found 2000"),
    ("handicap 15, without banana", "'banana', which is no club to leave out"),
    ("driver 205", "handicap: found none"),
    ("handicap 30, driver 150, only 7-iron, 9-iron", "found the driver, and a set without it"),
    ("handicap 30, only 7-iron, 9-iron, drives it 150", "found the driver, and a set without it"),
    ("handicap 30, only 7-iron, 9-iron, no 7-iron", "leaves out the 7-iron that was just given"),
    ("handicap 30, no driver, only driver, 7-iron", "names the driver, which was left out"),
    ("handicap 30, only 7-iron, 7i", "'7i', which names the 7-iron a second time"),
    ("handicap 30, only 7-iron, only 9-iron", "says the clubs a second time"),
    ("handicap 30, only sometimes", "'only', which is not followed by a club"),
    ("handicap 30, only putter", "'only', which is not followed by a club"),
    ("handicap 30, only driver 150 215, 7-iron", "'215', which is not understood there"),
    ("15", "'15'; a number alone: say"),
    ("handicap 15, driver 150 and 56", "the 56-degree wedge without a distance; say it behind the club"),  # no range
    ("handicap 15, sand wedge 56", "'56', which may be its loft or its carry: say \"56 80\""),  # it was a carry
    ("handicap 15, lw 60 75", "'60', which may be its loft or its carry"),
    ("handicap 15, driver 205 to 56", "205 and 56 are too far apart for one club"),
    ("handicap 15, driver 7-iron 140", "'7-iron', which is no distance of the driver"),  # not 7 yards
    ("handicap 15, never misses left", "'never misses left'; say the side that is missed"),
    ("handicap 15, hits it straight", "'it straight'; say how wide"),
    ("handicap 15, driver 205 carry 225 total", "'225 total'; a club has its carry or its total"),
    ("handicap 15, sand wedge 85, half 45", "'half'; swings short of full are worked out"),
    ("handicap 15, wedges 110, 95 and 80", "'wedges'; say each club with its distance"),
    ("handicap 15, swing speed 95", "'swing speed'; say the carry"),
    ("70 year old, handicap 18", "'70 year old'; age changes nothing by itself"),
    ("handicap 15, putter 20", "'putter'"),
    ("handicap 8, driver, 3w, 5-PW, 52", 'before the 3-wood; a whole set is said "only driver, 3w, 5-PW, 52, putter"'),
    ("handicap 8, 4h 180, no hybrids", "leaves out the 4-hybrid that was just given"),
    ("handicap 8, driver swing speed 95", "'swing speed'; say the carry"),
    ("48 year old woman, handicap 22", "'48 year old'; age changes nothing by itself"),  # no 48-degree wedge
    ("handicap 12, wild driver", "'wild driver'; say how wide"),
    ("handicap 12, driver 210 +/- 15", "'+/-'; say how deep"),
]


@pytest.mark.parametrize(
    "text",
    ["junior, handicap 30, driver 150", "handicap 30, 14 years old, drives it 150", "senior aged 72, bogey golfer, driver 175",
     "handicap 18, 70 year old, 7-iron 110"],
)
def test_an_age_beside_a_handicap_and_a_distance_is_no_reason_to_refuse(text: str) -> None:
    without = re.sub(r"junior, |, 14 years old|senior aged 72, |, 70 year old", "", text)
    told, plain = load_player(text), load_player(without)
    assert told.clubs == plain.clubs and told.handicap == plain.handicap
    assert any("changes nothing by itself" in one for one in told.assumed)


@pytest.mark.parametrize(
    ("text", "name"),
    [("called Anna Berg, handicap 12", "Anna Berg"), ("handicap 12, called Ada Maria O'Neill", "Ada Maria O'Neill"),
     ("called Ada, Handicap 12", "Ada"), ("called ada woman, handicap 12", "Ada"), ("called Ada Driver 200, handicap 12", "Ada")],
)  # fmt: skip
def test_a_name_may_have_a_surname(text: str, name: str) -> None:
    assert load_player(text).name.replace("’", "'") == name


@pytest.mark.parametrize(
    ("text", "found"),
    [("junior, drives it 150", "'junior'"), ("left-handed, 12, slices it", "'12,'"), ("Lucy, 9, woman, driver 190", 'said "called Lucy"'),
     ("called Anna, 12", "'12'")],
)  # fmt: skip
def test_check_tells_what_is_wrong_with_a_players_words(
    text: str, found: str, capsys: pytest.CaptureFixture[str]
) -> None:
    """It was "no such file; allowed: a .toml file, or one of eel-trap, long-sluice, withy-drain"."""
    assert _run(["check", text]) == 2
    told = capsys.readouterr().err
    assert found in told and "no such file" not in told


@pytest.mark.parametrize("words", ["red tees", "plays the red tees", "tees red", "off the red tees", "off the reds"])
def test_the_tee_a_player_plays(words: str) -> None:
    assert load_player(f"handicap 9, woman, {words}").tee == "red"
    assert load_player(f"handicap 9, {words}, driver 160").tee == "red"


@pytest.mark.parametrize(("words", "pointed"), REFUSED, ids=[words for words, _ in REFUSED])
def test_refused_by_pointing_at_the_word(words: str, pointed: str) -> None:
    with pytest.raises(FileError) as caught:
        load_player(words)
    assert pointed in str(caught.value) and "\n" not in str(caught.value)
    assert f'"{words}"' in str(caught.value) and "allowed: " in str(caught.value)


@pytest.mark.parametrize("path", ["bags/ada.toml", "ada.toml", "./ada", "nobody", "my bags/ada 2.toml", "C:\\ada 2"])
def test_a_path_is_not_words(path: str) -> None:
    assert not looks_like_words(path)
    with pytest.raises(FileError, match="no such file"):
        load_player(path)


CLUBS = [
    # what is typed, club, flight, part swing's carry, aim in yards, aim in degrees
    ("3w", "3-wood", None, None, None, None),
    ("3-wood", "3-wood", None, None, None, None),
    ("three wood", "3-wood", None, None, None, None),
    ("7 iron", "7-iron", None, None, None, None),
    ("seven", "7-iron", None, None, None, None),
    ("7", "7-iron", None, None, None, None),
    ("gap", "gap wedge", None, None, None, None),
    ("52", "gap wedge", None, None, None, None),  # the bag's gap wedge has no loft on it
    ("rescue", "5-hybrid", None, None, None, None),
    ("5 rescue", "5-hybrid", None, None, None, None),
    ("5 Hyb", "5-hybrid", None, None, None, None),
    ("W3", "3-wood", None, None, None, None),
    ("7-iron low", "7-iron", "low", None, None, None),
    ("low 7-iron", "7-iron", "low", None, None, None),
    ("knock-down 7", "7-iron", "low", None, None, None),
    ("held-down 9 iron", "9-iron", "low", None, None, None),
    ("127 shot", "7-iron", "stock", None, None, None),
    ("a 116 metre shot", "7-iron", "stock", None, None, None),
    ("128", "7-iron", "stock", None, None, None),
    ("45 shot", "sand wedge", None, 45.0, None, None),
    ("40 m shot 2 right", "sand wedge", None, 40 / 0.9144, 2.0, None),
    ("low 118 shot", "7-iron", "low", None, None, None),
    ("driver 8 left", D, None, None, -8.0, None),
    ("driver at 8 left", D, None, None, -8.0, None),
    ("driver, 8 yards right", D, None, None, 8.0, None),
    ("driver 8 yards left of the pin", D, None, None, -8.0, None),
    ("driver 3 degrees left", D, None, None, None, -3.0),
    ("low 7-iron 5 m left", "7-iron", "low", None, -5 / 0.9144, None),
    ("7 iron 8 left", "7-iron", None, None, -8.0, None),
    ("driver straight", D, None, None, 0.0, None),
    ("driver at the flag", D, None, None, 0.0, None),
    ("driver@-8", D, None, None, -8.0, None),
    ("3w@3deg", "3-wood", None, None, None, 3.0),
    ("drv", D, None, None, None, None),
    ("Wood 3", "3-wood", None, None, None, None),
    ("iron 7 left 8", "7-iron", None, None, -8.0, None),
    ("driver, right 5 m", D, None, None, 5 / 0.9144, None),
    ("driver left 3 degrees", D, None, None, None, -3.0),
    # Barnaby's carries: pitching wedge 98, gap wedge 87 (yd): a full swing that is 3 off or less is taken
    ("96 shot", "pitching wedge", "stock", None, None, None),
    ("93 shot", "pitching wedge", None, 93.0, None, None),
    ("82 shot 4 right", "gap wedge", None, 82.0, 4.0, None),
    ("103 shot", "pitching wedge", "stock", None, None, None),  # beyond what is gripped down
    ("full 93 shot", "pitching wedge", None, 93.0, None, None),
]


@pytest.mark.parametrize(("words", "club", "flight", "part", "yards", "degrees"), CLUBS, ids=[c[0] for c in CLUBS])
def test_clubs_and_aims(words: str, club: str, flight: str, part: float, yards: float, degrees: float) -> None:
    meant = shot_meant(load_player("barnaby"), words)
    assert (meant.club.name, meant.flight) == (club, flight)
    assert meant.part_yd == (part if part is None else pytest.approx(part))
    right = yards if degrees is None else degrees
    if right is None:
        assert meant.aim is None
    else:
        assert (meant.aim.right, meant.aim.in_degrees) == (pytest.approx(right), degrees is not None)


@pytest.mark.parametrize(
    ("words", "pointed"),
    [
        ("mashie", "no club 'mashie'"),
        ("2", "no club '2'"),
        ("60", "no club '60'"),
        ("driver left", "'left' does not say how far"),
        ("driver -8 left", "both a sign and 'left'"),
        ("driver 400 left", "found an aim of -400 yd"),
        ("300 shot", "found 300 yd of carry; allowed: 3 to 196, the driver"),
        ("low driver", "driver low: not in this player's bag"),
        ("driver 8 furlongs left", "'furlongs' is no unit of an aim"),
        ("8 left", "no club named"),
        ("3/4 pw", 'asked by the carry it has, the full pw having 98 yd; for example "78 shot"'),
        ("PW 3/4", "asked by the carry it has"),
        ("half-swing gap wedge", "asked by the carry it has"),
        ("3/4 mashie", "no club '3/4 mashie'"),
        ("punch 7-iron", 'for example "102 shot", or "7-iron low"'),
        ("4 hybrid", "no club '4 hybrid' in the bag of Barnaby (did you mean '5-hybrid'?)"),
        ("5i", "no club '5i' in the bag of Barnaby (did you mean '5-hybrid'?)"),  # spelt most like the 9-iron
        ("lw", "no club 'lw' in the bag of Barnaby (did you mean 'sand wedge'?)"),
        ("3w left", "'left' does not say how far"),
        ("choked down 7", "asked by the carry it has"),
        ("easy 7-iron", "asked by the carry it has"),
        ("driver down the middle", "the driver, but 'down the middle' is no aim here: say"),
        ("3 wood at the bunker", "the 3-wood, but 'at the bunker' is no aim"),
        ("draw driver", "the driver, but 'draw' is no flight: shapes belong to the player"),
        ("hard 8 iron", "the 8-iron, but 'hard' is neither a flight nor an aim"),
        ("lay up to 100", "a lay-up is asked by what it leaves (--leave 90-110)"),
        ("wedge", "which one? allowed: pitching wedge, gap wedge, sand wedge"),
        ("driver left edge", "the driver, but 'left edge' is no aim"),
        ("", "no club named"),
    ],
)
def test_clubs_refused(words: str, pointed: str) -> None:
    with pytest.raises(UsageError) as caught:
        shot_meant(load_player("barnaby"), words)
    assert pointed in str(caught.value) and "\n" not in str(caught.value)


@pytest.mark.parametrize(
    "words", ["hcp. 15, driver 205", "I'm a 15 handicap and hit my driver 205", "Handicap 15; DRV 205 yards"]
)
def test_ways_to_say_the_same_player(words: str) -> None:
    player = load_player(words)
    assert player.handicap == 15.0 and player.club("driver").carry_yd == pytest.approx(205.0)


def test_words_that_speak_of_a_handicap_are_refused_as_a_players(capsys: pytest.CaptureFixture[str]) -> None:
    """Not as a hole file that is missing."""
    assert _run(["check", "handicap 15, drivr 205"]) == 2
    assert "did you mean 'driver'" in capsys.readouterr().err
    assert _run(["check", "Isolde"]) == 0


def test_a_shot_held_down_at_a_carry_of_his_own_is_a_swing_he_has() -> None:
    """Between 9-iron and 8-iron, the held-down 7-iron that he says goes 128."""
    player = load_player("handicap 15, 7-iron 142, 8-iron 133, 9-iron 123, 7-iron low 128")
    meant = shot_meant(player, "128 shot")
    assert (meant.club.name, meant.flight, meant.part_yd) == ("7-iron", "low", None)
    assert swing_words(meant) == "the 7-iron low, which carries 128 yd"
    assert swing_words(shot_meant(player, "132 shot"), METRES) == "the nearest is the 8-iron, which carries 122 m"
    wedge = shot_meant(player, "40 shot")
    assert swing_words(wedge).startswith(f"a part swing with the {wedge.club.name}, to carry 40 yd; its full swing")


PIECES = st.sampled_from(
    ["handicap", "15", "-3", "+2", "driver", "7-iron", "205", "1e9", "m", "total", "wide", "50", "deep", ",", ";", "miss",
     "short", "right", "fade", "woman", "without", "no", "tee only", "called", "Ada", "off", "scratch", "bogey", "low",
     "low_carry", "52", "é", "\u0661", "999999999999", "left", "shot", "at", "@", "3 degrees", "only",
     "putter", "9-iron"]
)  # fmt: skip


@settings(max_examples=400, deadline=None)
@given(st.one_of(st.text(max_size=60), st.lists(PIECES, max_size=9).map(" ".join)))
@example("handicap 15, no driver, driver 200")
@example("called")
@example("handicap 15, driver 205 50 wide 2 deep")
def test_any_words_are_a_player_or_one_line(words: str) -> None:
    try:
        load_player(words)
    except FileError as error:
        assert "\n" not in str(error)


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(max_size=40), st.lists(PIECES, max_size=6).map(" ".join)))
def test_any_club_words_are_a_shot_or_one_line(words: str) -> None:
    try:
        meant = shot_meant(load_player("barnaby"), words)
    except SimulatorError as error:
        assert isinstance(error, UsageError)
    else:
        assert meant.club in (*load_player("barnaby").clubs, PUTTER)


def test_a_curve_for_the_ball_is_the_longest_clubs_and_the_rest_in_proportion():
    player = load_player("handicap 12, driver 220, 30 yd slice")
    curve = {club.name: club.curve_yd for club in player.clubs}
    assert curve["driver"] == 30.0
    assert 0.0 < curve["pitching wedge"] < curve["7-iron"] < curve["3-wood"] < 30.0
    assert any("taken as the driver's" in sentence for sentence in player.assumed)
    lefty = load_player("handicap 12, left-handed, driver 220, 30 yd slice")
    assert lefty.clubs[0].curve_yd == -30.0


@pytest.mark.parametrize("words", ["handicap 12, driver 20", "handicap 12, 7-iron 20"])
def test_a_carry_under_a_fifth_of_the_levels_is_refused(words):
    with pytest.raises(FileError, match="a fifth of") as error:
        load_player(words)
    assert "\n" not in str(error.value)


def test_a_carry_far_from_the_levels_is_said():
    said = [s for s in load_player("scratch, driver 150, 7-iron 140").assumed if s.startswith("Far from")]
    usual = f"the level {level(0.0).driver_carry_yd:.0f} yd"
    assert len(said) == 1 and f"driver 34 % shorter (150 yd, {usual})" in said[0] and "7-iron" not in said[0]
    assert not any(s.startswith("Far from") for s in load_player("handicap 15, driver 205").assumed)


def test_a_3_wood_may_carry_a_little_farther_than_the_driver():
    player = load_player("handicap 32, woman, driver 120, 3-wood 124")
    assert [(club.name, club.carry_yd) for club in player.clubs[:2]] == [("3-wood", 124.0), ("driver", 120.0)]
    with pytest.raises(FileError, match="less carry than the club with less loft"):  # names swapped
        load_player("handicap 14, driver 190, 3-wood 210")
    with pytest.raises(FileError, match="less carry than the club with less loft"):  # no slow swing does that to irons
        load_player("handicap 14, 6-iron 140, 7-iron 144")
