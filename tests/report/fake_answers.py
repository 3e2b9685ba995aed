"""Answers made up without the engine, so that the words and pictures can be tested on any case at all."""

from __future__ import annotations

import math
from functools import lru_cache
from types import SimpleNamespace

import numpy as np

from simulator.conditions import Conditions
from simulator.hole import WORDS, Hole, Surface, load_hole
from simulator.player import Player, load_player
from simulator.strategy.aimline import AimLine
from simulator.strategy.alternative import Alternative
from simulator.strategy.confidence import Confidence, Flip
from simulator.strategy.day import DayNote
from simulator.strategy.errorbars import Estimate, quantile
from simulator.strategy.goals import Goal, GoalLine
from simulator.strategy.ground import features_at
from simulator.strategy.places import tee_start
from simulator.strategy.pointing import point
from simulator.strategy.reach import Reach, find_reach
from simulator.strategy.result import Answer, Start
from simulator.strategy.room import find_room
from simulator.tables.rasters import Raster, ground_raster

N = 3000


def share(hits: np.ndarray) -> Estimate:
    p = float(hits.mean())
    return Estimate(p, math.sqrt(max(p * (1 - p), 1 / hits.size) / hits.size))


_hole = lru_cache(maxsize=8)(load_hole)


@lru_cache(maxsize=8)
def raster(hole: Hole) -> Raster:
    return ground_raster(hole)


def _reach(hole: Hole, line: AimLine, landings: np.ndarray, finishes: np.ndarray) -> tuple[Reach, ...]:
    """Reach as it is found, but for what would bring trouble into it: that needs a bag."""
    bag = SimpleNamespace(shots=SimpleNamespace(first_part=0))
    return find_reach(hole, bag, 0, line, landings, finishes)  # type: ignore[arg-type]


def alternative(
    hole: Hole,
    start: Start,
    club: str,
    carry_yd: float,
    *,
    score: float,
    difference: float = 0.0,
    error: float = 0.004,
    aim_offset_yd: float = 0.0,
    spread_deg: float = 4.5,
    asked: bool = False,
    flight: str = "stock",
    n: int = N,
    seed: int = 5,
    shares: tuple[float, float, float] = (0.10, 0.45, 0.30),
    goal: float | None = None,
    goal_difference: float = 0.0,
) -> Alternative:
    """One alternative whose finishes are normal round its aim and whose features are read off the hole."""
    luck = np.random.default_rng(seed)
    ahead = math.atan2(hole.pin.x_yd - start.x_yd, hole.pin.y_yd - start.y_yd)
    aim = ahead + math.asin(aim_offset_yd / carry_yd)
    turn = aim + np.radians(spread_deg) * luck.standard_normal(n)
    reach = carry_yd * (1.0 + 0.06 * luck.standard_normal(n) - 0.3 * (luck.random(n) < 0.1))
    landings = np.column_stack([start.x_yd + reach * np.sin(turn), start.y_yd + reach * np.cos(turn)])
    finishes = landings + 12.0 * np.column_stack([np.sin(turn), np.cos(turn)])
    index = features_at(hole, finishes[:, 0], finishes[:, 1])
    codes = np.array([int(f.surface) for f in hole.features] + [0])[index]
    known = start.played is not None
    line = AimLine(start.x_yd, start.y_yd, math.degrees(aim) % 360.0)
    _, across = line.seen(*finishes.T)
    left = np.hypot(hole.pin.x_yd - finishes[:, 0], hole.pin.y_yd - finishes[:, 1])
    out = np.isin(codes, [Surface.OUT_OF_BOUNDS, Surface.WATER])
    cut = np.cumsum(shares)
    draw = luck.random(n)
    scores = hole.par - 1 + np.searchsorted(cut, draw)

    def word(hits: np.ndarray) -> Estimate | None:
        return share(hits) if known else None

    return Alternative(
        club=club, flight=flight, carry_yd=carry_yd, today_carry_yd=carry_yd, aim_offset_yd=aim_offset_yd,
        aim_bearing_deg=math.degrees(aim) % 360.0, map_score=Estimate(score + 0.002, 0.001, 15),
        score=Estimate(score, error), difference=Estimate(difference, 0.0 if difference == 0.0 else error),
        chances={
            "birdie_or_better": word(scores < hole.par), "par": word(scores == hole.par),
            "bogey": word(scores == hole.par + 1), "double_or_worse": word(scores > hole.par + 1),
            "penalty_this_shot": share(out), "penalty_on_hole": share(out | (draw > 0.95)),
            "fairway": share(codes == Surface.FAIRWAY) if hole.par > 3 and start.played == 0 else None,
            "green_in_regulation": word(draw < 0.4), "three_putt": share(draw > 0.9),
        },
        worst_tenth_mean=Estimate(score + 2.0, 0.03),
        finish={WORDS[s]: share(codes == s) for s in Surface if (codes == s).any()},
        features={f.name: share(index == k) for k, f in enumerate(hole.features) if (index == k).any()},
        leaves_yd={"p10": quantile(left, 0.1), "p50": quantile(left, 0.5), "p90": quantile(left, 0.9)},
        aims_yd=(aim_offset_yd - 5.0, aim_offset_yd + 4.0), aims_error_yd=(1.5, 1.25), aim_given=False, asked=asked,
        finishes_yd=finishes, landings_yd=landings, scores=scores,
        point=point(hole, line, carry_yd),
        middle_right_yd=quantile(across, 0.5), wide_yd=quantile(np.abs(across), 0.95),
        room=find_room(raster(hole), hole, line, finishes),
        reach=_reach(hole, line, landings, finishes),
        goal=None if goal is None else Estimate(goal, 0.004),
        goal_difference=None if goal is None else Estimate(goal_difference, 0.004),
    )  # fmt: skip


def answer(
    hole: Hole | str = "withy-drain",
    player: Player | str = "barnaby",
    *,
    start: Start | None = None,
    question: str = "compare",
    clubs: tuple[dict, ...] = (
        {"club": "3-wood", "carry_yd": 178.0, "score": 5.31, "aim_offset_yd": -9.0, "asked": True},
        {
            "club": "driver",
            "carry_yd": 196.0,
            "score": 5.44,
            "difference": 0.13,
            "aim_offset_yd": -12.0,
            "asked": True,
            "spread_deg": 6.0,
            "shares": (0.12, 0.43, 0.25),
        },
    ),
    tied: tuple[int, ...] = (0,),
    warnings: tuple[str, ...] = (),
    n: int = N,
    goal: Goal | None = None,
    lowest_score: int = 0,
    goal_line: GoalLine | None = None,
    sure: float | None = None,
    flips: tuple[Flip, ...] = (),
) -> Answer:
    """A whole answer; `clubs` are the keyword arguments of `alternative`."""
    hole = _hole(hole) if isinstance(hole, str) else hole
    player = load_player(player) if isinstance(player, str) else player
    start = start or tee_start(hole)
    made = tuple(alternative(hole, start, **{"n": n, "seed": 5 + k, **c}) for k, c in enumerate(clubs))
    return Answer(
        conditions=Conditions(),
        day=DayNote(None, 6.0, None),
        question=question, hole=hole, player=player, start=start, seed=1, sequences=n,
        value_map_score=made[0].map_score, tied=tied, alternatives=made,
        clear_beyond_yd=273, clear_beyond_error_yd=3.5, warnings=warnings, settings={"raster_cell_yd": 1.0, "holesim": "0.1.0"},
        seconds={"value_map": 0.81, "sequences": 0.2}, goal=goal, lowest_score=lowest_score, goal_line=goal_line,
        confidence=_sure(sure, len(made)), flips=flips,
    )  # fmt: skip


def _sure(share: float | None, count: int) -> Confidence | None:
    """Confidence in the first alternative; the others share what is left."""
    if share is None:
        return None
    rest = (1.0 - share) / max(count - 1, 1)
    return Confidence(200, 16, (share, *(rest,) * (count - 1)), (0.02,) * count, share)
