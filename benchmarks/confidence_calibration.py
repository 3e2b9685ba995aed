"""Is a decision called nine-in-ten sure right nine times in ten?

``python benchmarks/confidence_calibration.py``, from the folder that holds ``simulator``.

Players of random handicap stand on random invented holes and at random places of the demo holes. For the two
leading clubs of each place the confidence is worked out as in an answer. Then the truth is drawn: players
from the level's prior (what is not known of a level player), each with a map of his own solved in full. The
call was right if the recommended club has the lower value on it, half right within 0.01 strokes.

    --cases N    players-on-holes at most (each asks many places of several truths)
    --minutes M  start no case after so long
    --short      two cases: a look at whether it runs
    --from N     first case, to go on after an interruption (rows are appended to --rows FILE)
"""

from __future__ import annotations

import argparse
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np

from simulator import load_hole, load_player
from simulator.conditions import Conditions
from simulator.engine import solve_map
from simulator.hole.model import Hole
from simulator.hole.surfaces import LIE_OF, Lie, Surface
from simulator.player.doubt import plausible_players
from simulator.player.model import Player
from simulator.strategy.confidence import EVEN_STROKES
from simulator.strategy.plausible import DRAWS, SOLVED, plausible_behind, revalued_maps
from simulator.strategy.rescore import rescore
from simulator.strategy.search import search
from simulator.strategy.tries import Choice, Place
from simulator.tables.bag import make_bag
from simulator.tables.game import CELL_YD, make_board, make_sketch
from simulator.tables.luck import strike_sets
from simulator.tables.nodes import HELD_YD, place_nodes
from simulator.tables.rasters import Raster, ground_raster

PLACES, TRUTHS = 24, 8
"""Places asked on each hole, and truths each is held against."""

FIRST_LOOK = 40
"""Plausible players of a first look: places they agree on by far are not worked out further."""

LOW, HIGH = 0.85, 0.95
"""The calls that are checked."""


def invented_hole(rng: np.random.Generator) -> str:
    """A hole file: a par 3, 4 or 5 with water, out of bounds, bunkers and trees where chance puts them."""
    par = int(rng.choice([3, 4, 4, 4, 5]))
    length = int(rng.integers(*{3: (130, 200), 4: (290, 430), 5: (460, 540)}[par]))
    deep, wide = int(rng.integers(22, 34)), int(rng.integers(18, 30))
    lines = [
        'name = "Invented"', f"par = {par}", f"length_yd = {length}", 'tee = [{ name = "white" }]',
        f"green = [{{ front_yd = {length - deep // 2}, depth_yd = {deep}, width_yd = {wide} }}]",
        f'pin = [{{ name = "middle", on_yd = {deep // 2}, offset_yd = {int(rng.integers(-5, 6))} }}]',
    ]  # fmt: skip
    if par > 3:
        half = int(rng.integers(11, 20))
        lines.append(
            f"fairway = [{{ from_yd = 130, to_yd = {length - 20}, left_yd = {-half}, right_yd = {half} }}]"
        )
    side = int(rng.choice([-1, 1]))
    near, far = int(rng.integers(10, 28)), int(rng.integers(30, 60))
    at = int(rng.integers(0.35 * length, 0.8 * length))
    edges = sorted((side * near, side * (near + far)))
    lines.append(
        f'penalty_area = [{{ name = "pond", colour = "red", from_yd = {at}, to_yd = {at + 60}, '
        f"left_yd = {edges[0]}, right_yd = {edges[1]} }}]"
    )
    lines.append(
        f"bunker = [{{ at_yd = {length - deep // 2 - 8}, offset_yd = {-side * 6}, depth_yd = 10, "
        "width_yd = 14 }]"
    )
    if rng.random() < 0.7:
        key, edge = ("left_of_yd", -1) if side > 0 else ("right_of_yd", 1)
        lines.append(f'out_of_bounds = [{{ name = "road", {key} = {edge * int(rng.integers(24, 45))} }}]')
    return "\n".join(lines) + "\n"


def cases(first: int, folder: Path) -> Iterator[tuple[int, Hole, Player, np.random.Generator]]:
    """Players on holes, numbered; case n is the same whatever went before."""
    n = first
    while True:
        rng = np.random.default_rng([n, 0xCA11])
        handicap = int(rng.integers(0, 31))
        bag, drawn = folder / "player.toml", folder / "hole.toml"
        bag.write_text(f'name = "Level"\nhandicap = {handicap}\n', encoding="utf-8")
        drawn.write_text(invented_hole(rng), encoding="utf-8")
        named = ("withy-drain", "long-sluice", "eel-trap")[n // 4 % 3] if n % 4 == 0 else str(drawn)
        yield n, load_hole(named), load_player(str(bag)), rng
        n += 1


def solved(hole: Hole, player: Player, raster: Raster, threads: int) -> Place:
    """A solved map, seen from the tee."""
    bag = make_bag(player, Conditions(), raster, threads)
    empty = make_board(hole, bag, raster)  # worked alike everywhere: it is asked from many places
    board = solve_map(empty, sketch=make_sketch(empty, hole), seed=1, threads=threads)
    return Place(board, 0.0, 0.0, int(Lie.TEE), threads)


def places(place: Place, hole: Hole, raster: Raster, rng: np.random.Generator) -> Iterator[Place]:
    """The tee, then places along the line of play on fairway and rough."""
    yield place
    while True:
        x, y = hole.at(float(rng.uniform(20.0, hole.length_yd - 70.0)), float(rng.normal(0.0, 14.0)))
        column = round((x - raster.x0_yd) / raster.cell_yd)
        row = round((y - raster.y0_yd) / raster.cell_yd)
        surface = Surface(int(raster.surface[row, column]))
        if surface in (Surface.FAIRWAY, Surface.ROUGH):
            yield Place(place.board, x, y, int(LIE_OF[surface]), place.threads)


def values(place: Place, choices: list[Choice], seed: int) -> tuple[np.ndarray, float]:
    """Strokes of alternatives by the map over even strikes, and the value of playing again."""
    actions = np.array([choice.action for choice in choices])
    mean = place.values(actions, min(c.score for c in choices), strike_sets(seed, 16, 512)).mean(axis=1)
    again = float((mean[:, 0] / (1.0 - mean[:, 1])).min())
    return mean[:, 0] + again * mean[:, 1], again


def leading(place: Place, seed: int) -> list[Choice]:
    """The two leading clubs, full shots, the better first."""
    rows = place.board.allowed(place.lie)
    found = search(place, seed, rows, keep_within=0.6, keep_most=3)
    full = [choice for choice in found if choice.row < place.board.bag.shots.first_part]
    return full[:2] if full and full[0] is found[0] else []


def won(behind: np.ndarray) -> np.ndarray:
    """1, 1/2 or 0 for each: whether the first is better, by strokes behind of the second."""
    return np.where(np.abs(behind) <= EVEN_STROKES, 0.5, behind > 0.0)


def one_case(hole: Hole, player: Player, rng: np.random.Generator, seed: int, threads: int) -> list[tuple]:
    """(confidence, right) of every decision of a case that is called LOW to HIGH sure."""
    raster = ground_raster(hole, CELL_YD)
    home = solved(hole, player, raster, threads)
    players = plausible_players(player, DRAWS, seed)
    nodes = place_nodes(hole, raster, *HELD_YD)
    maps = revalued_maps(home, players[:SOLVED], player, seed, nodes=nodes)
    asked: list[tuple[Place, list[Choice], float]] = []
    for count, place in enumerate(places(home, hole, raster, rng)):
        if count == PLACES:
            break
        choices = leading(place, seed)
        if len(choices) < 2:
            continue
        strokes, again = values(place, choices, seed)
        if strokes[0] > strokes[1]:
            choices, strokes = choices[::-1], strokes[::-1]
        ready = rescore(place, hole, player, choices, (False, False), strokes - strokes[0], again, seed)
        look = won(plausible_behind(ready, players[:FIRST_LOOK], maps)[:, 1]).mean()
        if not LOW - 0.12 < look < 1.0:
            continue
        sure = float(won(plausible_behind(ready, players, maps)[:, 1]).mean())
        if LOW <= sure <= HIGH:
            asked.append((place, choices, sure))
    rows = []
    for k, true in enumerate(plausible_players(player, TRUTHS, seed + 1_000_003) if asked else ()):
        theirs = solved(hole, true, raster, threads)
        for where, (place, choices, sure) in enumerate(asked):
            here = Place(theirs.board, place.x_yd, place.y_yd, place.lie, threads)
            wanted = frozenset(choice.row for choice in choices)
            found = search(here, seed, sorted(wanted), keep_within=9.0, keep_most=9, must=wanted)
            best = [next(c for c in found if c.row == choice.row) for choice in choices]
            strokes, _ = values(here, best, seed)
            rows.append((seed, k, where, sure, float(won(strokes[1:] - strokes[0])[0])))
    return rows


def report(rows: list[tuple]) -> str:
    """What was called and what was right, with its standard error over cases and over truths."""
    if not rows:
        return "no decision called that sure yet"
    case, truth, sure, right = (np.array([row[k] for row in rows], float) for k in (0, 1, 3, 4))

    def error(clusters: np.ndarray) -> float:
        """Standard error of the share with decisions of one cluster judged together."""
        _, which = np.unique(clusters, axis=0, return_inverse=True)
        off = np.bincount(which.ravel(), right - right.mean())
        return float(np.sqrt(np.sum(np.square(off)))) / len(right)

    return (
        f"{len(rows)} decisions of {len(np.unique(case))} cases called {LOW:.0%} to {HIGH:.0%} sure "
        f"(mean {sure.mean():.1%}): right {right.mean():.1%} "
        f"+- {error(np.stack([case]).T):.1%} over cases, {error(np.stack([case, truth]).T):.1%} over truths"
    )


def main() -> None:
    """Run cases, append their rows, print what has been found after each."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawTextHelpFormatter)
    parser.add_argument("--cases", type=int, default=60)
    parser.add_argument("--minutes", type=float, default=1e9)
    parser.add_argument("--from", dest="first", type=int, default=0)
    parser.add_argument("--short", action="store_true")
    parser.add_argument("--threads", type=int, default=2)
    parser.add_argument("--rows", type=Path, default=None)
    asked = parser.parse_args()
    count = 2 if asked.short else asked.cases
    rows: list[tuple] = []
    if asked.rows is not None and asked.rows.exists():
        lines = asked.rows.read_text(encoding="utf-8").splitlines()
        rows = [tuple(float(word) for word in line.split()) for line in lines]
    started = time.monotonic()
    with tempfile.TemporaryDirectory() as folder:
        for n, hole, player, rng in cases(asked.first, Path(folder)):
            if n >= asked.first + count or time.monotonic() - started > 60.0 * asked.minutes:
                break
            new = one_case(hole, player, rng, n, asked.threads)
            rows += new
            if asked.rows is not None:
                with asked.rows.open("a", encoding="utf-8") as file:
                    file.writelines(" ".join(f"{value:g}" for value in row) + "\n" for row in new)
            print(f"case {n}, {hole.name}, handicap {player.handicap:g}: {report(rows)}", flush=True)


if __name__ == "__main__":
    main()
