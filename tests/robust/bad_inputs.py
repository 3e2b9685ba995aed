"""Bad inputs by number: files of every kind with something wrong in them, and options with bad values.

Input number n is the same on every machine: it is drawn from `random.Random(n)`.
"""

from __future__ import annotations

import json
import random
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from simulator.cli import command_line

ROOT = Path(__file__).parents[2]
HOLES = sorted((ROOT / "holes").glob("*.toml"))

BAG = """name = "Ada"
handicap = 15
clubs = ["driver", "3w", "5-hybrid", "6i", "7i", "8i", "9i", "pw", "sw", "putter"]
shape = "fade"
short_game = 1.1
[club.driver]
carry_yd = 205
direction_sd_deg = 4.5
mishit_rate = 0.2
[club.7i]
total_yd = 148
width_yd = 34
depth_yd = 30
miss = "short right"
[part]
carry_yd = [20, 60, 100]
direction_sd_deg = [6, 5, 4.5]
[putting]
handicap = 12
"""
SURVEY = """name = "Mill 7th"
par = 4
line = ["pine", "flag"]
[[stand]]
name = "tee"
readings = [
  { to = "pine", range_yd = 236 },
  { to = "post", range_yd = 235, side = "left" },
  { to = "landing", range_yd = 192, side = "left" },
  { to = "flag", range_yd = 362, height_yd = 3 },
  { gap_yd = 24, between = ["post", "pine"] },
]
[[stand]]
name = "landing"
readings = [
  { to = "pine", range_yd = 46, side = "right" },
  { to = "front", range_yd = 162 },
  { to = "flag", range_yd = 171, side = "right" },
  { to = "back", range_yd = 189 },
]
[hole]
fairway = [{ from_yd = 150, to_yd = "front", left_yd = "post", right_yd = 14 }]
"""
SHOTS = "club,carry (yd),offline,total\n" + "".join(
    f"{club},{carry + k % 7},{k % 5 - 2},{carry + 9}\n" for club, carry in (("7i", 140), ("driver", 208)) for k in range(9)
)


def _feature(tags: dict[str, str], kind: str, where: Any) -> dict[str, Any]:
    return {"type": "Feature", "properties": tags, "geometry": {"type": kind, "coordinates": where}}


def _box(x: float, y: float, half: float) -> list[Any]:
    return [[[x - half, y - half], [x + half, y - half], [x + half, y + half], [x - half, y + half], [x - half, y - half]]]


MAP = json.dumps({"type": "FeatureCollection", "features": [
    _feature({"golf": "hole", "ref": "1", "par": "4"}, "LineString", [[-123.4, -48.9], [-123.4, -48.8967]]),
    _feature({"golf": "green"}, "Polygon", _box(-123.4, -48.8967, 0.00015)),
    _feature({"golf": "bunker", "name": "big"}, "Polygon", _box(-123.4004, -48.8969, 0.00007)),
    _feature({"golf": "lateral_water_hazard"}, "Polygon", _box(-123.3994, -48.898, 0.0002)),
    _feature({"golf": "tee"}, "Polygon", _box(-123.4, -48.9, 0.00005)),
    _feature({"golf": "pin", "ele": "12"}, "Point", [-123.4, -48.8967]),
]})  # fmt: skip

WORDS = "My 12th: par 4, 372; dogleg left at 230; fairway 28 wide; pond right 213 to 254, edge 14; out left 34; " \
        "bunker left at 230; green 24 deep, 20 wide, falls front left 2%; pin 7 on, 3 left; trees right 180 to 260, 15 tall"
PLAYER_WORDS = "handicap 15, driver 205, 7-iron 150 total, fade, miss short right, no 3-wood"

NUMBERS = ["0", "-1", "-0.0", "1", "3", "1e-300", "1e300", "1e9", "99999999999999999999", "250", "nan", "inf", "-inf", "0.001",
           "2000", "1999.9", "3.5", "true", '"x"', "[]", "{}", "[[1]]", "1979-05-27", "-40", "17", "404", "9" * 5000]  # fmt: skip
TEXTS = ["", " ", "\n", "x" * 300, "é", "高尔夫", "a\u202eb", "\x07", "🏌", "'", '"', "\\", "%s", "{}", "--", "..", "/", "\u2028"]
OPTION_VALUES = [*NUMBERS[:-1], *TEXTS, "250 mph", "nan mph", "-5 mph from 3 o'clock", "1e400", "/", "/nowhere/x.png", "/dev/full",
                 "x.bmp", ".", "\udcff", "driver", "putter", "1,2,3", "nan,nan", "1e308,-1e308", "9 out, moon", "12 C", "-300 C",
                 "1200 m", "9" * 400, "par 4", "withy-drain", "isolde", "handicap nan", "handicap 1e9"]  # fmt: skip


def mutated(text: str, luck: random.Random) -> str | bytes:
    """The text with one to four things wrong; sometimes bytes that are no text."""
    for _ in range(luck.choice((1, 1, 1, 2, 4))):
        how = luck.randrange(11)
        lines = text.split("\n")
        at = luck.randrange(len(lines))
        numbers = [m.span() for m in re.finditer(r"-?\d+(\.\d+)?", text)]
        if how <= 3 and numbers:
            a, b = luck.choice(numbers)
            text = text[:a] + luck.choice(NUMBERS) + text[b:]
        elif how == 4:
            del lines[at]
            text = "\n".join(lines)
        elif how == 5:
            lines.insert(luck.randrange(len(lines) + 1), lines[at])
            text = "\n".join(lines)
        elif how == 6:
            text = text[: luck.randrange(len(text) + 1)]
        elif how == 7:
            words = list(re.finditer(r"[A-Za-z_]+", text)) or [re.match("", text)]
            a, b = luck.choice(words).span()  # type: ignore[union-attr]
            text = text[:a] + luck.choice([*TEXTS, "par", "green", "nan", "left"]) + text[b:]
        elif how == 8:
            a = luck.randrange(len(text) + 1)
            text = text[:a] + luck.choice(['"', "[", "]", "{", "}", "=", ",", ";", "\0", "#", "\t", "\ufeff", "."]) + text[a:]
        elif how == 9:
            text = text.replace("\n", "\r\n")
        else:
            raw = bytearray(text.encode("utf-8", "surrogatepass"))
            if raw:
                raw[luck.randrange(len(raw))] = luck.randrange(256)
            return bytes(raw)
    return text


def commands() -> Iterator[tuple[list[str], Any]]:
    """Every command with the words that call it, groups too."""

    def walk(group: Any, words: list[str]) -> Iterator[tuple[list[str], Any]]:
        for name, one in group.commands.items():
            if hasattr(one, "commands"):
                yield from walk(one, [*words, name])
            else:
                yield [*words, name], one

    return walk(command_line(), [])


def options(command: Any) -> list[Any]:
    """The options of a command, read off the program, so that a new one is tried without a line here."""
    return [p for p in command.params if p.param_type_name == "option" and p.name != "help"]


class Folder:
    """Good files to begin with, in a folder."""

    def __init__(self, path: Path) -> None:
        self.path = path
        for name, text in (("hole.toml", HOLES[0].read_text("utf-8")), ("bag.toml", BAG), ("survey.toml", SURVEY),
                           ("shots.csv", SHOTS), ("map.geojson", MAP)):  # fmt: skip
            (path / name).write_text(text, "utf-8")

    def call(self, command: list[str]) -> list[str]:
        """Arguments with which a command answers quickly."""
        files = {
            "plan": ["withy-drain", "--sequences", "100"], "compare": ["withy-drain", "driver", "3w", "--sequences", "100"],
            "carries": ["150"], "check": [str(self.path / "hole.toml")], "list": [], "sketch": ["par 4, 372"],
            "survey": [str(self.path / "survey.toml")], "player fit": [str(self.path / "shots.csv"), "--level", "12"],
            "import-map": [str(self.path / "map.geojson"), "-o", str(self.path / "out")],
            "new player": ["--name", "Ada", "--handicap", "15"],
        }  # fmt: skip
        return [*command, *files.get(" ".join(command), ["x"])]

    def put(self, name: str, content: str | bytes) -> str:
        path = self.path / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8", "surrogatepass"))
        return str(path)


def bad_input(number: int, folder: Folder) -> list[str]:
    """Arguments of one run; files are put into the folder."""
    luck = random.Random(number)
    kind = luck.choice(("hole", "hole", "bag", "bag", "survey", "shots", "map", "words", "player words", "option", "option"))
    out = str(folder.path / f"new{luck.choice(['.toml', '.toml', '', '.txt'])}")
    if kind == "hole":
        return ["check", folder.put("bad.toml", mutated(luck.choice(HOLES).read_text("utf-8"), luck)), *luck.choice(([], ["--json"]))]
    if kind == "bag":
        path = folder.put("bad.toml", mutated(BAG, luck))
        return luck.choice((["check", path], ["check", path, "--json"], ["carries", "--player", path, "--json"]))
    if kind == "survey":
        return ["survey", folder.put("bad.toml", mutated(SURVEY, luck)), *luck.choice(([], ["-o", out, "--force"], ["--json", "-o", out]))]
    if kind == "shots":
        return ["player", "fit", folder.put("bad.csv", mutated(SHOTS, luck)), "--level", "12", *luck.choice(([], ["-o", out], ["--json"]))]
    if kind == "map":
        suffix = luck.choice((".geojson", ".osm", ".csv"))
        if suffix == ".csv":
            points = "lon,lat,ele_m\n" + "".join(f"-123.4,{-48.9 + k * 0.0004:.4f},{k}\n" for k in range(9))
            heights = folder.put("bad.csv", mutated(points, luck))
            return ["import-map", str(folder.path / "map.geojson"), "--elevation", heights, "-o", str(folder.path / "m"), "--force"]
        return ["import-map", folder.put(f"bad{suffix}", mutated(MAP, luck)), "-o", str(folder.path / "m"), *luck.choice(([], ["--json"]))]
    if kind in ("words", "player words"):
        raw = mutated(WORDS if kind == "words" else PLAYER_WORDS, luck)
        text = raw.decode("utf-8", "surrogateescape") if isinstance(raw, bytes) else raw  # as a shell hands it over
        if kind == "words":
            return ["sketch", text, *luck.choice(([], ["--json"], ["-o", out, "--force"]))]
        return luck.choice((["carries", "--player", text], ["check", text]))
    return bad_option(luck, folder)


def bad_option(luck: random.Random, folder: Folder) -> list[str]:
    """A command that would answer, with values for one or two of its options that may well be wrong."""
    names, command = luck.choice([(n, c) for n, c in commands() if n != ["list"]])
    call = folder.call(names)
    for option in luck.sample(options(command), k=min(len(options(command)), luck.choice((1, 1, 2)))):
        call.append(luck.choice(option.opts))
        if not option.is_flag:
            value = luck.choice(OPTION_VALUES)
            # what is written goes into the folder, or where nothing can be written
            if option.name in ("out", "output", "plot") and "/" not in value and "\0" not in value:
                value = str(folder.path / (value or "x"))
            call.append(value)
    return call
