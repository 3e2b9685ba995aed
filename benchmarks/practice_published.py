"""What practice is worth against published figures: ``python benchmarks/practice_published.py``.

Published (strokes a round):

- Broadie and Ko, "A simulation model to analyze the impact of distance and direction on golf scores", Winter
  Simulation Conference 2009: direction tighter by 1, 2, 3 degrees saves a 100-golfer 1.4, 2.6, 3.9 and an
  80-golfer 1.1, 2.1, 2.7 on a course with trees.
- Ko, doctoral thesis, Columbia 2012: 20 yards more of drive are worth almost 3 to a high handicap, a little
  under 1 to a tour player.

Ours: invented holes in the proportion of a par-72 course (four par 3, ten par 4, four par 5), between woods
25 yd from the middle of the fairway, or with ``--open`` without a tree: theirs lies between. The
100-golfer and the 80-golfer as levels of the handicap that scores so.
"""

from __future__ import annotations

import argparse
import tempfile
from collections.abc import Callable
from pathlib import Path

from simulator import load_hole, load_player
from simulator.hole.model import Hole
from simulator.player.model import Player
from simulator.strategy.better import Change, longer, longer_driver, straighter
from simulator.strategy.practice import practice

LENGTHS = {3: (150, 178), 4: (335, 360, 385, 400, 415), 5: (490, 515)}
"""Two par 3s, five par 4s, two par 5s: half a course of 6,500 yards."""

GOLFERS = {"100-golfer": 28.0, "80-golfer": 8.0, "tour player": -5.0}
"""Handicap that stands for each: score less 72, as the levels read every published group."""

PUBLISHED = {
    ("100-golfer", "direction 1"): "1.4", ("100-golfer", "direction 2"): "2.6",
    ("100-golfer", "direction 3"): "3.9", ("80-golfer", "direction 1"): "1.1",
    ("80-golfer", "direction 2"): "2.1", ("80-golfer", "direction 3"): "2.7",
    ("100-golfer", "drive 20 yd"): "almost 3", ("tour player", "drive 20 yd"): "a little under 1",
}  # fmt: skip


def plain(par: int, length: int, wooded: bool) -> str:
    """A fairway 30 yd wide, a bunker either side of the green, woods 25 yd from the middle or none."""
    lines = [
        f'name = "Par {par}, {length}"', f"par = {par}", f"length_yd = {length}",
        'tee = [{ name = "white" }]',
        f"green = [{{ front_yd = {length - 13}, depth_yd = 28, width_yd = 24 }}]",
        'pin = [{ name = "middle", on_yd = 14 }]',
        f"bunker = [{{ at_yd = {length}, offset_yd = -18, depth_yd = 14, width_yd = 8 }}, "
        f"{{ at_yd = {length}, offset_yd = 18, depth_yd = 14, width_yd = 8 }}]",
    ]  # fmt: skip
    if wooded:
        lines.append(
            f"trees = [{{ from_yd = 60, to_yd = {length + 30}, left_yd = -75, right_yd = -25 }}, "
            f"{{ from_yd = 60, to_yd = {length + 30}, left_yd = 25, right_yd = 75 }}]"
        )
    if par > 3:
        lines.append(f"fairway = [{{ from_yd = 130, to_yd = {length - 16}, left_yd = -15, right_yd = 15 }}]")
    return "\n".join(lines) + "\n"


def changes(golfer: str) -> dict[str, Change]:
    """What the publications change."""
    made: dict[str, tuple[Callable[[Player], Player], int]] = {
        "drive 20 yd": (lambda p: longer_driver(p, 20.0), 0),
        "all 20 yd": (lambda p: longer(p, 20.0), 2),
    }
    if golfer != "tour player":
        for degrees in (1, 2, 3):
            made[f"direction {degrees}"] = ((lambda p, d=degrees: straighter(p, float(d))), 0)
    return {key: Change(key, make, shorter) for key, (make, shorter) in made.items()}


def main() -> None:
    """Print ours beside theirs."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--short", action="store_true", help="one hole of each par")
    parser.add_argument("--sequences", type=int, default=5_000)
    parser.add_argument("--open", action="store_true", help="no trees")
    asked = parser.parse_args()
    with tempfile.TemporaryDirectory() as folder:
        holes: list[Hole] = []
        for par, lengths in LENGTHS.items():
            for length in lengths[: 1 if asked.short else None]:
                path = Path(folder) / f"{par}-{length}.toml"
                path.write_text(plain(par, length, not asked.open), encoding="utf-8")
                holes.append(load_hole(str(path)))
        for golfer, handicap in GOLFERS.items():
            path = Path(folder) / "player.toml"
            path.write_text(f'name = "{golfer}"\nhandicap = {handicap}\n', encoding="utf-8")
            player = load_player(str(path))
            found = practice(holes, player, changes=changes(golfer), sequences=asked.sequences)
            score = sum(one.value for one in found.scores) * 18 / len(holes)
            print(f"{golfer}, handicap {handicap:g}, scores {score:.1f}", flush=True)
            for gain in found.gains:
                theirs = PUBLISHED.get((golfer, gain.what), "not published")
                ours = f"{gain.per_round.value:+.2f} +- {gain.per_round.standard_error:.2f}"
                print(f"  {gain.what:<14}{ours:>16}   published {theirs}", flush=True)


if __name__ == "__main__":
    main()
