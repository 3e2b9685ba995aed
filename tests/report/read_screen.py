"""Reads every figure off an answer screen and holds it against the answer's JSON; no digit may be left over."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from typing import Any

WORDS = [
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
]  # fmt: skip


def check_screen(text: str, data: dict[str, Any], *, per_yd: float = 1.0, unit: str = "yd") -> None:
    """Assert that a screen says what the JSON of the same answer says.

    Parameters
    ----------
    text : str
        The screen, in yards or (per_yd 0.9144, unit "m") metres.
    data : dict
        `Answer.to_dict()` of the same answer.
    """
    lines = text.splitlines()
    assert len(lines) <= 24 and max(map(len, lines)) <= 80
    first = next(k for k, line in enumerate(lines) if line.startswith("In 100 plays:"))
    last = next(k for k, line in enumerate(lines) if line.startswith("leaves, 8 in 10"))
    while last + 1 < len(lines) and lines[last + 1].startswith(" "):
        last += 1
    said = " ".join(" ".join([*lines[:first], *lines[last + 1 :]]).split())
    left_out = re.search(r"No room here for ([^:]*): --full has all that were asked about", said)
    _Sentences(said, data, per_yd, unit).check()
    names = re.split(r", | and ", left_out[1]) if left_out else []
    _table(lines[first : last + 1], data, per_yd, unit, [name.removeprefix("the ") for name in names])


class _Sentences:
    def __init__(self, text: str, data: dict[str, Any], per_yd: float, unit: str) -> None:
        self.data, self.per_yd, self.unit = data, per_yd, unit
        self.best = data["alternatives"][data["recommended"]]
        names = {r["name"] for one in data["alternatives"] for r in one["reach"]}
        names |= {name for one in data["alternatives"] for name in one["features"]}
        names |= {one["club"] for one in data["alternatives"]} | {data["hole"], data["player"]}
        for name in sorted(names, key=len, reverse=True):
            if any(map(str.isdigit, name)):
                text = text.replace(
                    name, re.sub(r"\d+", lambda d: WORDS[int(d[0])] if int(d[0]) < 13 else "x", name)
                )
        self.text = text

    def take(self, pattern: str) -> list[tuple[str, ...]]:
        """Groups of every place a pattern fits; the places are crossed out."""
        found = [m.groups() for m in re.finditer(pattern, self.text)]
        self.text = re.sub(pattern, " * ", self.text)
        return found

    def near(self, said: str, yards: float, off: float = 0.5) -> None:
        assert abs(float(said) - abs(yards) * self.per_yd) <= off + 1e-6, (said, yards, self.text)

    def check(self) -> None:
        best, data, unit = self.best, self.data, self.unit
        differences = [one["difference"] for one in data["alternatives"] if one["difference"] > 0.0]
        for word, size in self.take(
            r"by a shot every (\w+) times? you play (?:this hole|from here) \((\d\.\d+)\)"
        ):
            times = WORDS.index(word) if word in WORDS else int(word)
            half = 0.5 * 10.0 ** -len(size.partition(".")[2]) + 1e-9
            assert any(
                abs(d - float(size)) <= half and times == math.floor(1.0 / d + 0.5) for d in differences
            )
        for more, share, rival in self.take(
            r"(more than )?(\d) in 10 plausible versions of this player(?:, the [^.]*? for (?:fewer than )?(\d) in 10)?"
        ):
            self._tenths(data["confidence"]["best_share"], share, bool(more))
            if rival:
                self._tenths(max(s for k, s in enumerate(data["confidence"]["shares"]) if k != data["recommended"]), rival)
        for low, high in self.take(rf"it leaves (\d+) to (\d+) {unit}(?:, mostly past the flag)?"):
            self.near(low, best["leaves_yd"]["p10"])
            self.near(high, best["leaves_yd"]["p90"])
        for size, side in self.take(rf"pattern finishes (\d+) {unit} (left|right) of that line"):
            assert (side == "right") == (best["middle_right_yd"] > 0.0)
            self.near(size, best["middle_right_yd"])
        points = {one["point"]["offset_yd"] for one in data["alternatives"]}
        for size, side in self.take(rf"(\d+) {unit} (left|right) of (?:the middle|the straight)"):
            signed = int(size) * (1 if side == "right" else -1)
            assert min(abs(signed - p * self.per_yd) for p in points) <= 0.5
        self._trade()
        self._room()
        ends = [edge - best["aim_offset_yd"] for edge in best["aim_offset_within_tie_yd"]]
        for low, high in self.take(r"Anywhere from (\d+) (?:left|right) to (\d+) (?:left|right) of that line"):
            self.near(low, ends[0])
            self.near(high, ends[1])
        for size, side in self.take(r"Anywhere from that line to (\d+) (left|right) of it"):
            self.near(size, ends[side == "right"])
            self.near("0", ends[side == "left"])
        self._reach()
        for (n,) in self.take(r"[Ff]ewer than 1 in ([\d,]+)"):
            assert int(n.replace(",", "")) == data["sequences"] // 3
        ((clear, wide),) = self.take(
            rf"Nobody ahead nearer than (\d+) {unit}; 1 in 20 finish wider than (\d+) {unit}"
        )
        assert int(clear) == math.ceil(data["clear_beyond_yd"] * self.per_yd)
        assert int(wide) in [math.ceil(one["wide_yd"] * self.per_yd) for one in data["alternatives"]]
        for (count,) in self.take(r"(\d+) things assumed"):
            assert int(count) == len(data["assumed"])
        for (worth,) in self.take(
            r"[\d.]+ (?:ft|m) below the hole is worth (\d\.\d\d) strokes over [\d.]+ (?:ft|m) above"
        ):
            assert abs(float(worth) - data["below_hole_strokes"]) <= 0.005
        self.take(r"Rules of Golf 4\.3|\(handicap \+?[\d.]+\)")
        self._goal()
        self.take(r"in 100 plays")
        assert not re.search(r"\d", self.text), self.text

    @staticmethod
    def _tenths(share: float, said: str, more: bool = False) -> None:
        """The nearest tenth, but nine only of a share that a clear answer has."""
        if more:
            assert said == "9" and share >= 0.95
        elif share < 0.95:
            assert int(said) == max(min(round(10.0 * share), 9 if share >= 0.9 else 8), 1)

    def _trade(self) -> None:
        """Counts that the trade names: as far apart as the JSON's shares, rounding aside."""
        ones = self.data["alternatives"]
        for count, word in self.take(r"(\d+) (pars?|birdies?|bogeys?|doubles?|penalt(?:y|ies))\b"):
            keys = {"bi": "birdie_or_better", "bo": "bogey", "do": "double_or_worse", "pe": "penalty_this_shot"}
            key = keys.get(word[:2], "par")
            gaps = []
            for a in ones:
                for b in ones:
                    if word.startswith("par"):
                        pars = [o["birdie_or_better"] + o["par"] for o in (a, b)]
                        gaps.append(pars[0] - pars[1])
                    else:
                        gaps.append(a[key] - b[key])
            assert min(abs(int(count) - 100.0 * gap) for gap in gaps) <= 2.0
        for (size,) in self.take(rf"leaving (\d+) {self.unit} (?:more|less)"):
            left = [one["leaves_yd"]["p50"] for one in ones]
            assert min(abs(int(size) - abs(a - b) * self.per_yd) for a in left for b in left) <= 0.5

    def _room(self) -> None:
        room = self.best["room"]
        if room is None:
            return
        for words, key, by in (
            ("(?:carry|finish) at least", "carry_at_least_yd", "carry_over"),
            ("finish at most", "finish_at_most_yd", "finish_before"),
        ):
            said = self.take(rf"{words} (\d+) \(([^)]*)\)")
            assert (room[key] is None) == (not said)
            for size, name in said:
                self.near(size, room[key])
                assert name == room[by]
        sides = self.take(
            r"from (?:(\d+) left|(\d+) right|the line) \(([^)]*)\) to (?:(\d+) left|(\d+) right|the line) \(([^)]*)\)"
        )
        if sides:
            l1, l2, left_by, r1, r2, right_by = sides[0]
            assert (left_by, right_by) == (room["left_closed_by"], room["right_closed_by"])
            self.near(l1 or l2 or "0", room["left_edge_yd"])
            self.near(r1 or r2 or "0", room["right_edge_yd"])
        else:
            assert room["left_edge_yd"] is None or room["right_edge_yd"] is None
            for end, size, side, _ in self.take(r"(?:(from|to) )?(\d+) (left|right) \(([^)]*)\)"):
                which = {"from": "left", "to": "right"}.get(end, side)
                assert end or (side == "right") == (room[f"{which}_edge_yd"] > 0.0)
                self.near(size, room[f"{which}_edge_yd"])
        ((inside,),) = self.take(r"(\d+) in 100 finish inside")
        assert abs(int(inside) - 100.0 * room["inside"]) <= 0.5

    def _reach(self) -> None:
        said = self.take(
            r"999 of 1,000 carry under (\d+) and finish short of (\d+), (\d+) to spare today to the (.*?) at (\d+)(?= \(in|\.)"
        )
        for carry, finish, spare, name, starts in said:
            one = next(r for r in self.best["reach"] if r["name"] == name)
            self.near(carry, one["carry_999_yd"])
            self.near(finish, one["finish_999_yd"])
            self.near(starts, one["starts_yd"])
            self.near(spare, one["to_spare_yd"], 1.0)
            assert int(spare) == int(starts) - int(finish)
            for (speed, per) in self.take(r"(\d+(?:\.\d)?) (mph|m/s) more from behind"):
                in_unit = one["helping_mph"] * (0.44704 if per == "m/s" else 1.0)
                assert per == ("m/s" if self.unit == "m" else "mph") and abs(float(speed) - in_unit) <= 0.05

    def _goal(self) -> None:
        goal = self.data["goal"]
        if goal is None:
            return
        self.take(rf"For a {goal['most_strokes']} or better")
        for low, high in self.take(rf"To (?:leave|finish) (\d+) to (\d+) {self.unit}"):
            self.near(low, goal["low_yd"])
            self.near(high, goal["high_yd"])
        chances = [one["goal"] for one in self.data["alternatives"]]
        for (count,) in self.take(r"(\d+)(?= with the| in 100|\)|, \d+ with the| do)"):
            assert min(abs(int(count) - 100.0 * c) for c in chances) <= 0.5
        line = self.data["goal_line"]
        for side, way, more, _, cost in self.take(
            rf"lies (\d+) {self.unit} (left|right) of its best on average: (\d+) more in 100, (for (\d\.\d\d)|at no)"
        ):
            off = self.data["alternatives"][0]["aim_offset_yd"] - line["average_aim_offset_yd"]
            self.near(side, abs(off))
            assert way == ("left" if off < 0.0 else "right")
            assert abs(int(more) - 100.0 * line["gain"]) <= 0.5
            assert abs(float(cost) - line["cost"]) <= 0.005 if cost else line["cost"] < 0.005
        costs = [-one["difference"] for one in self.data["alternatives"]]
        for (cost,) in self.take(r"lowest average it is the [^,]*, by (\d\.\d\d)"):
            assert min(abs(float(cost) - c) for c in costs) <= 0.005


def _table(
    lines: list[str], data: dict[str, Any], per_yd: float, unit: str, left_out: Sequence[str]
) -> None:
    """The columns; every club asked about has one (each club once), or is said to be left out."""
    leaves = next(line for line in lines if line.startswith("leaves, 8 in 10"))
    columns = len(re.split(r"\s{2,}", leaves.strip())) - 1
    label = 31 if columns < 4 else 20  # four clubs have a narrower first column
    width = (80 - label) // columns
    cut = [[line[:label].strip(), *(line[label + k * width :][:width].strip() for k in range(columns))]
           for line in lines[1:]]  # fmt: skip
    while cut[0][0]:  # the caption's second line
        del cut[0]
    heads = [""] * (columns + 1)
    while not cut[0][0]:
        heads = [" ".join(both).strip() for both in zip(heads, cut.pop(0), strict=True)]
    rows: list[list[str]] = []
    for cells in cut:
        if all(cells[1:]):
            rows.append(cells)
        else:  # the second line of a long label or cell
            rows[-1] = [" ".join(both).strip() for both in zip(rows[-1], cells, strict=True)]
    ones = [_one(data, head.split(" (")[0]) for head in heads[1:]]
    named = [r[0].removeprefix("ball in ").removesuffix(" (out)") for r in rows if r[0].startswith("ball in")]
    for what, *cells in rows:
        for cell, one in zip(cells, ones, strict=True):
            _cell(what, cell, one, named, per_yd, unit)
    asked = {one["club"] for one in data["alternatives"] if one["asked"]}
    missing = asked - {one["club"] for one in ones}
    assert set(left_out) >= missing and not set(left_out) & {one["club"] for one in ones}, (missing, left_out)


def _one(data: dict[str, Any], club: str) -> dict[str, Any]:
    return next(one for one in data["alternatives"] if club.startswith(one["club"]))


TROUBLE = ("out of bounds", "water", "dry penalty area", "bunker", "trees", "heavy rough")


def _finish(name: str, one: dict[str, Any], rows: list[str]) -> float:
    """Share of the balls in a row of trouble; of the last row all that is in no other."""
    by_kind = {
        "any bunker": "bunker",
        "any penalty area": "water",
        "any dry penalty area": "dry penalty area",
    }
    if name in ("other trouble", "any trouble"):
        named = [row for row in rows if row not in ("other trouble", "any trouble")]
        whole = sum(share for kind, share in one["finish"].items() if kind in TROUBLE)
        return whole - sum(_finish(row, one, rows) for row in named)
    kind = by_kind.get(name, name)
    return float(one["features"][name] if name in one["features"] else one["finish"].get(kind, 0.0))


def _cell(label: str, cell: str, one: dict[str, Any], rows: list[str], per_yd: float, unit: str) -> None:
    if label == "leaves, 8 in 10":
        low, _, high = cell.removesuffix(f" {unit}").partition(" to ")
        assert abs(float(low) - one["leaves_yd"]["p10"] * per_yd) <= 0.5 + 1e-6
        assert abs(float(high or low) - one["leaves_yd"]["p90"] * per_yd) <= 0.5 + 1e-6
        return
    if label.startswith("average"):
        assert abs(float(cell) - one["expected_score"]) <= 0.5 * 10.0 ** -len(cell.partition(".")[2]) + 1e-9
        return
    shares = {
        "par or better": lambda: one["birdie_or_better"] + one["par"], "bogey": lambda: one["bogey"],
        "double or worse": lambda: one["double_or_worse"], "fairway hit": lambda: one["fairway"],
        "on the green": lambda: one["finish"].get("green", 0.0),
    }  # fmt: skip
    if label in shares:
        share = shares[label]()
    elif label.startswith("ball in"):
        name = label.removeprefix("ball in ").removesuffix(" (out)")
        share = _finish(name, one, rows)
    else:
        share = one["goal"]
    if cell.isdigit():
        assert abs(int(cell) - 100.0 * share) <= 1.0, (label, cell, share)
    elif cell.startswith("fewer"):
        assert share == 0.0
    else:
        assert abs(int(cell.removeprefix("1 in ").replace(",", "")) * share - 1.0) <= 0.06
