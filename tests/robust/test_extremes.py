"""Ground on which nothing goes well, and numbers at the edge of what is allowed and beyond."""

from __future__ import annotations

import json
import math
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from runs import judge, run

from simulator.engine import maps

HEAD = 'name = "It"\npar = 4\nlength_yd = 380\ntee = [{ name = "white" }]\npin = [{ name = "m", on_yd = 2 }]\n'
GREEN = "green = [{ front_yd = 370, depth_yd = 20, width_yd = 20 }]\n"
LOST = {
    "out on all sides": GREEN + "out_of_bounds = ["
    '{ name = "a", from_yd = 5, to_yd = 365, left_yd = -900, right_yd = 900 },'
    '{ name = "b", from_yd = 395, to_yd = 900, left_yd = -900, right_yd = 900 }]\n',
    "a wood in which every ball is lost": GREEN + 'trees = [{ name = "wood", from_yd = 2, to_yd = 600, left_yd = -500,'
    'right_yd = 500, height_yd = 40, base_yd = 0, density = "dense", lost_chance = 1.0 }]\n',
}
THIN = (
    "green = [{ front_yd = 378, depth_yd = 4, width_yd = 3 }]\n"
    "fairway = [{ from_yd = 1, to_yd = 379, left_yd = -1.5, right_yd = 1.5 }]\n"
    'penalty_area = [{ name = "w", colour = "red", from_yd = 1, to_yd = 377, left_yd = 1.5, right_yd = 300 },'
    '{ name = "v", colour = "yellow", from_yd = 1, to_yd = 377, left_yd = -300, right_yd = -1.5 }]\n'
)


def numbers(found: Any) -> Iterator[float]:
    if isinstance(found, dict | list):
        for one in found.values() if isinstance(found, dict) else found:
            yield from numbers(one)
    elif isinstance(found, float):
        yield found


def asked(tmp_path: Path, text: str, *more: str, head: str = HEAD) -> Any:
    path = tmp_path / "hole.toml"
    path.write_text(head + text)
    arguments = ["plan", str(path), "--sequences", "100", "--json", *more]
    seen = run(arguments, seconds=120)  # the first may compile
    judge(arguments, seen, tmp_path)
    return seen


@pytest.mark.parametrize("name", LOST)
def test_every_shot_is_lost(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """No answer, in words; not a mean of plays that were cut.

    However far such a map got: it never settles. The wood's, three times as large, is left after five sweeps, and
    three clubs are enough to get lost with.
    """
    if "wood" in name:
        monkeypatch.setattr(maps, "MOST_SWEEPS", 4)
    seen = asked(tmp_path, LOST[name], "--player", "handicap 18, only 5-iron, 9-iron and sand wedge")
    assert seen.status == 3 and "60 strokes" in seen.err and seen.out == ""


def test_a_fairway_three_yards_wide(tmp_path: Path) -> None:
    """Water on both sides, yet every play ends: half the drives may miss, and each miss is played again.

    A map that is sharpened across such edges promises what no strike holds, and 97 plays in 100 never end.
    """
    seen = asked(tmp_path, THIN, "--quick")
    assert seen.status == 0, seen.err
    answer = json.loads(seen.out)
    assert all(math.isfinite(x) for x in numbers(answer))
    best = answer["alternatives"][0]
    assert 5.0 < best["expected_score"] < 25.0
    assert best["expected_score"] == pytest.approx(answer["value_map_score"], rel=0.15)


def of_length(yards: int, par: int, more: str) -> str:
    text = HEAD.replace("par = 4", f"par = {par}").replace("380", str(yards)) + more
    return text.replace("on_yd = 2", f"at_yd = {yards}")


POND = 'penalty_area = [{ name = "p", colour = "yellow", from_yd = 20, to_yd = 200, left_yd = -80, right_yd = 80 }]\n'
PLAYED = {  # the hole, what is least and most of its expected score
    "a green two yards across": (of_length(380, 4, "green = [{ front_yd = 379, depth_yd = 2, width_yd = 2 }]\n"), 4.5, 12.0),
    "nine hundred yards": (of_length(900, 6, "green = [{ front_yd = 890, depth_yd = 20, width_yd = 20 }]\n"), 6.0, 10.0),
    "the same corner several times": (
        HEAD + GREEN + 'bunker = [{ points_yd = [[200, 10], [200, 10], [210, 10], [210, 20], [210, 20], [200, 20], [200, 10]] }]\n',
        4.0, 8.0,
    ),
    "an island": (of_length(150, 3, "green = [{ front_yd = 140, depth_yd = 20, width_yd = 20 }]\n" + POND), 3.5, 9.0),
}  # fmt: skip


@pytest.mark.parametrize("name", PLAYED)
def test_odd_holes_are_played(name: str, tmp_path: Path) -> None:
    text, least, most = PLAYED[name]
    seen = asked(tmp_path, text, "--quick", "--player", "isolde", head="")
    assert seen.status == 0, seen.err
    answer = json.loads(seen.out)
    assert all(math.isfinite(x) for x in numbers(answer))
    assert least < answer["alternatives"][0]["expected_score"] < most
    if name == "an island":
        assert "Assumed of p: that green inside it is an island." in answer["assumed"]
        assert answer["alternatives"][0]["penalty_this_shot"] > 0.2


GROUND = ("from_yd = -30", "left_yd = -40", "right_yd = 40")
REFUSED = {  # the hole, what the refusal must name
    "fifteen yards": (of_length(15, 3, "green = [{ front_yd = 5, depth_yd = 20, width_yd = 20 }]\n"), "15 yd"),
    "a par 5 of nine hundred yards": (of_length(900, 5, "green = [{ front_yd = 890, depth_yd = 20, width_yd = 20 }]\n"), "900 yd"),
    "a pond over the tee": (
        HEAD + GREEN + f'penalty_area = [{{ name = "pond", colour = "red", to_yd = 30, {", ".join(GROUND)} }}]\n', "tee 'white'",
    ),
    "a tee out of bounds": (HEAD + GREEN + f'out_of_bounds = [{{ name = "lane", to_yd = 60, {", ".join(GROUND)} }}]\n', "tee 'white'"),
    "a pond over half the green": (
        HEAD + GREEN + 'penalty_area = [{ name = "pond", colour = "red", from_yd = 300, to_yd = 382, left_yd = -40, right_yd = 40 }]\n', "pin 'm'",
    ),
    "corners that are all one": (HEAD + GREEN + "bunker = [{ points_yd = [[200, 10], [200, 10], [200, 10], [200, 10]] }]\n", "empty area"),
    "a bunker that crosses itself": (HEAD + GREEN + "bunker = [{ points_yd = [[200, 10], [220, 30], [220, 10], [200, 30]] }]\n", "crosses itself"),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_odd_holes_are_refused(name: str, tmp_path: Path) -> None:
    text, named = REFUSED[name]
    seen = asked(tmp_path, text, head="")
    assert seen.status == 2 and named in seen.err, seen.err


DAYS = [  # option, value, accepted
    ("--wind", "250 mph from 12 o'clock", False), ("--wind", "nan mph", False), ("--wind", "-5 mph against", False),
    ("--wind", "60 mph against", None), ("--temperature", "40 C", True), ("--temperature", "-40 C", None), ("--temperature", "-300 C", False),
    ("--temperature", "104 F", True), ("--altitude", "1e9 m", False), ("--pressure", "0 hPa", False), ("--humidity", "101 %", False),
    ("--humidity", "100 %", True), ("--firmness", "1.0001", False), ("--firmness", "1", True), ("--firmness", "nan", False),
]  # fmt: skip


@pytest.mark.parametrize(("option", "value", "accepted"), DAYS)
def test_days(option: str, value: str, accepted: bool | None, tmp_path: Path) -> None:
    """Refused in one line, or finite numbers."""
    arguments = ["carries", option, value, "--json"]
    seen = run(arguments, seconds=120)
    judge(arguments, seen, tmp_path)
    assert accepted is None or (seen.status == 0) == accepted, seen.err
    if seen.status == 0:
        found = json.loads(seen.out)
        assert all(math.isfinite(x) for x in numbers(found))
        # a gale dead against blows a high ball back over the player, so below zero is a carry too
        assert all(-120.0 < row["today_carry_yd"] < 500.0 for row in found["carries"])


@pytest.mark.parametrize("carry", ["0", "-10", "1000", "nan", "inf", "1e300", "400.1"])
def test_carries_nobody_hits(carry: str, tmp_path: Path) -> None:
    (tmp_path / "bag.toml").write_text(f'name = "A"\nhandicap = 9\n[club.driver]\ncarry_yd = {carry}\n')
    for arguments in (["check", str(tmp_path / "bag.toml")], ["carries", "--player", f"handicap 9, driver {carry}"]):
        seen = run(arguments)
        judge(arguments, seen, tmp_path)
        assert seen.status == 2 and "driver" in seen.err


LONG = "Llanfair" * 12


@pytest.mark.parametrize(("name", "accepted"), [("高尔夫俱乐部", True), ("Ωμέγα Ångström", True), ("ملعب", True), ("🏌️‍♀️", None), (LONG, False), ("", False)])
def test_names(name: str, accepted: bool | None, tmp_path: Path) -> None:
    """In any alphabet, up to a length: and the file that is written is read again."""
    out = str(tmp_path / "ada.toml")
    arguments = ["new", "player", "--name", name, "--handicap", "15", "-o", out]
    seen = run(arguments)
    judge(arguments, seen, tmp_path)
    assert accepted is None or (seen.status == 0) == accepted
    if seen.status == 0:
        assert json.loads(run(["check", out, "--json"]).out)["name"] == name
