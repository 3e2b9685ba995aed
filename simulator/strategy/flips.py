"""What would turn the answer: the longest club tighter or wider, longer or shorter, an edge moved, wind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from ..engine import hold_plan, revalue_map
from ..hole.model import Feature, Hole
from ..hole.surfaces import Surface
from ..player.model import Club
from ..player.pattern import widened
from ..tables.game import make_board, with_nodes
from ..tables.nodes import WIDE_YD, place_nodes
from ..tables.rasters import ground_raster
from ..tables.varied import varied_strikes
from .alternative import Alternative
from .confidence import Flip
from .plausible import ONCE, with_strikes
from .rescore import Rescore
from .turning import NO_TURN, turning
from .windflips import wind_flips

SPREAD_FACTORS = (0.5, 0.7, 0.85, 1.0, 1.2, 1.5, 2.0)
"""Spreads of the longest club tried, as factors."""

CARRY_YD = (-20.0, -10.0, 0.0, 10.0, 20.0)
"""Changes of its carry tried [yd]."""

EDGE_YD = (-16.0, -8.0, 0.0, 8.0, 16.0)
"""Moves of the edge tried [yd]."""

EDGES = frozenset({Surface.WATER, Surface.DRY_PENALTY, Surface.OUT_OF_BOUNDS, Surface.TREES, Surface.BUNKER})
"""What has an edge that may decide."""

MET = 0.01
"""An area that fewer first shots than this share reach decides nothing."""

RESCORED_SD, REWORKED_SD = 0.011, 0.012
"""How much a change to a lead scatters from one seed to the next, on the same map and on one worked anew
[strokes]. With them turning points of five boards and eight seeds scatter by 0.9 (spread) to 1.2 times
(carry, edge) what is said of them; of wind along by 0.5 to 2 times, and by 3 on a board on which it turns
to either side in three seeds of eight (``benchmarks/turning_points.py``, 2026-11-29)."""

CLEAR_OF_YD = 2.0
"""A moved edge stays so far from tees and greens [yd]."""


def all_flips(again: Rescore, alternatives: Sequence[Alternative], errors: np.ndarray) -> tuple[Flip, ...]:
    """Everything that is tried; see `Flip.what`.

    Parameters
    ----------
    errors : float64[choices]
        Standard errors of the answer's own differences.
    """
    rescored, reworked = np.hypot(errors, RESCORED_SD), np.hypot(errors, REWORKED_SD)
    edge = edge_flip(again, alternatives, reworked)
    return (
        *player_flips(again, rescored),
        *wind_flips(again, reworked),
        *(() if edge is None else (edge,)),
    )


def player_flips(again: Rescore, errors: np.ndarray) -> tuple[Flip, Flip]:
    """How much wider or tighter, and how much longer or shorter, the longest club named must be."""
    shots = again.place.board.bag.shots
    full = [shots.shots[row] for row in again.rows if row < shots.first_part]
    name, wide, far = "", NO_TURN, NO_TURN
    if full:
        club = again.player.club(max(full, key=lambda shot: shot.carry_yd).club.name)
        board, own = again.place.board, again.strokes(again.place.board)

        def behind(changed: Club) -> np.ndarray:
            clubs = tuple(changed if one.name == club.name else one for one in again.player.clubs)
            strikes = varied_strikes(board.bag, replace(again.player, clubs=clubs), again.rows)
            return again.behind + again.strokes(with_strikes(board, strikes)) - own

        name = club.name
        wide = turning(lambda factor: behind(wider(club, factor)), SPREAD_FACTORS, 1.0, errors)
        far = turning(lambda yd: behind(replace(club, carry_yd=club.carry_yd + yd)), CARRY_YD, 0.0, errors)
    return (
        Flip("driver_spread", name, "times", (SPREAD_FACTORS[0], SPREAD_FACTORS[-1]), *wide),
        Flip("driver_carry", name, "yd", (CARRY_YD[0], CARRY_YD[-1]), *far),
    )


def wider(club: Club, factor: float) -> Club:
    """A club with every spread of it so many times as wide."""
    return replace(widened(club, factor), direction_sd_deg=factor * club.direction_sd_deg)


def edge_flip(again: Rescore, alternatives: Sequence[Alternative], errors: np.ndarray) -> Flip | None:
    """How far the edge that parts the alternatives most must move; None where no edge does.

    The plan is held on the changed ground, on a map of wider nodes.
    """
    feature = _parting(again.hole, alternatives)
    if feature is None:
        return None
    own = _with_edge(again, feature, 0.0)

    def behind(yards: float) -> np.ndarray:
        change = _with_edge(again, feature, yards) - own if yards != 0.0 else 0.0
        return np.asarray(again.behind + change)

    turn = turning(behind, EDGE_YD, 0.0, errors, refine=False)
    return Flip("hazard_edge", feature.name, "yd", (EDGE_YD[0], EDGE_YD[-1]), *turn)


def edge_doubt(again: Rescore, alternatives: Sequence[Alternative]) -> np.ndarray | None:
    """What one standard deviation of the parting edge does to the strokes behind, float64[choices].

    None where that edge is taken as exact (`Feature.edge_sd_yd` 0) or no edge parts the alternatives.
    """
    feature = _parting(again.hole, alternatives)
    if feature is None or feature.edge_sd_yd == 0.0:
        return None
    out, back = (_with_edge(again, feature, side * feature.edge_sd_yd) for side in (1.0, -1.0))
    change = 0.5 * (out - back)
    return np.asarray(change - change[0])


def _with_edge(again: Rescore, feature: Feature, yards: float) -> np.ndarray:
    """Strokes of the alternatives with an area's edge moved outwards, the plan held, on wider nodes."""
    board, threads, hole = again.place.board, again.place.threads, again.hole
    ground = with_nodes(board, place_nodes(hole, board.raster, *WIDE_YD))
    if yards != 0.0:
        changed = _moved(hole, feature, yards)
        raster = ground_raster(changed, board.raster.cell_yd)
        ground = make_board(changed, board.bag, raster, nodes=place_nodes(changed, raster, *WIDE_YD))
    held = hold_plan(ground, board, seed=again.seed, places=again.balls, effort=ONCE)
    return again.strokes(revalue_map(ground, held, threads=threads))


def _parting(hole: Hole, alternatives: Sequence[Alternative]) -> Feature | None:
    """The area whose share of first shots differs most between the recommended and the best other."""
    if len(alternatives) < 2:
        return None
    best, other = alternatives[0], alternatives[1]
    found, most = None, MET
    for feature in hole.features:
        if feature.surface not in EDGES:
            continue
        shares = [one.features[feature.name].value for one in (best, other)]
        if abs(shares[0] - shares[1]) > most:
            found, most = feature, abs(shares[0] - shares[1])
    return found


def _moved(hole: Hole, feature: Feature, yards: float) -> Hole:
    """The hole with an area's edge moved outwards, but for tees and greens."""
    import shapely

    area = feature.area.buffer(yards)
    kept = [f.area for f in hole.features if f.surface in (Surface.TEE, Surface.GREEN)]
    if yards > 0.0 and kept:
        grown = area.difference(shapely.union_all(kept).buffer(CLEAR_OF_YD))
        area = shapely.union(grown, feature.area)
    polygons = [part for part in shapely.get_parts(area) if part.geom_type == "Polygon" and not part.is_empty]
    if not polygons:  # shrunk to nothing: a spot too small to matter
        polygons = [feature.area.representative_point().buffer(0.05)]
    changed = replace(feature, area=shapely.MultiPolygon(polygons))
    return replace(hole, features=tuple(changed if f is feature else f for f in hole.features))
