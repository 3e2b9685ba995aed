"""Confidence: the alternatives scored for players that would fit what is known of this one.

Plausible players' first shots are scored against the unchanged map; for the first few players the map is
worked out anew with its plan held. Either is done for some of them: what changes is regressed on what differs
between the players, and the scatter about that dealt out again to the rest.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

import numpy as np

from ..engine import Effort, at_once, hold_plan, revalue_map
from ..player.doubt import plausible_players
from ..player.model import Club, Player
from ..tables.game import Board, with_nodes
from ..tables.nodes import Nodes
from ..tables.shots import Shot, in_other_hands
from ..tables.varied import same_yards, varied_strikes
from . import streams
from .confidence import EVEN_STROKES, Confidence
from .rescore import MOST_STRIKES, Rescore
from .tries import Place

DRAWS = 200
"""Plausible players."""

SCORED = 72
"""Those of them whose first shots are scored."""

SOLVED = 24
"""Those of them for whom the map is worked out anew."""

ONCE = Effort(many=64, again=0, least=4, unseen=0)
"""How hard the map is worked for each of them: differences of shared strikes need few, and places nobody was
seen at none."""


@dataclass(frozen=True)
class Form:
    """How thoroughly confidence is worked out; players and maps are as many in every form.

    Attributes
    ----------
    name : str
    strikes : int
        Strikes in each scramble of the first shots; half as many where a map is worked anew: they tell two
        maps apart, and nobody's shots.
    once : Effort
        How hard the map is worked for each of the first players.
    """

    name: str
    strikes: int
    once: Effort


FULL = Form("full", MOST_STRIKES, ONCE)
"""Of a single answer."""

BRIEF = Form("brief", 128, Effort(many=32, again=0, least=4, unseen=0))
"""Of a course. Fewer strikes, not fewer players: with 8 maps in place of 24, or none, it strays farther from
the full form than with a quarter of the strikes at each node (``benchmarks/brief_confidence.py``)."""


def confidence(
    again: Rescore, errors: np.ndarray, edge: np.ndarray | None = None, form: Form = FULL
) -> Confidence:
    """For how many plausible players each alternative is the best.

    Parameters
    ----------
    again : Rescore
    errors : float64[choices]
        Standard errors of the answer's own differences; each draw is moved by one of them.
    edge : float64[choices], optional
        What one standard deviation of an uncertain edge does to them (`flips.edge_doubt`).
    form : Form
        That `again` was made for too.

    Notes
    -----
    A plausible player is taken to know his own bias and to aim off for it, as a plan made for him would: a
    bias to the side moves no score, except of a shot whose aim was given. Swings short of full and putts have
    a doubt of their own where they are the alternative; on the way home it adds 3 % at the most to what the
    clubs' doubt scatters a lead by, and is left out.
    """
    player, seed = again.player, again.seed
    first_part = again.place.board.bag.shots.first_part
    named = any(row >= first_part for row in again.rows)
    players = plausible_players(player, DRAWS, seed, short_game=named)
    maps = revalued_maps(again.place, players[:SOLVED], player, seed, form.once, again.balls, again.nodes)
    behind = plausible_behind(again, players, maps, form.strikes)
    luck = np.random.default_rng([seed, 0xC0FF])
    behind = behind + errors * luck.standard_normal(behind.shape)
    if edge is not None:
        behind = behind + edge * luck.standard_normal((len(behind), 1))
    won = won_by(behind)
    kept = np.clip(won, 1.0 / DRAWS, 1.0 - 1.0 / DRAWS)  # none of them is no certainty
    # an error of the answer's own difference is the same for every player
    moved = np.array([0.5 * (won_by(behind + error) - won_by(behind - error)) for error in np.diag(errors)])
    scatter = np.sqrt(kept * (1.0 - kept) / DRAWS + (moved**2).sum(axis=0))
    return Confidence(
        draws=DRAWS,
        solved=SOLVED,
        shares=tuple(won.tolist()),
        shares_standard_error=tuple(scatter.tolist()),
        best_share=float(won[0]),
        form=form.name,
    )


def won_by(behind: np.ndarray) -> np.ndarray:
    """Share of the players for whom each alternative is the best, float64[choices]; even ones share the draw.

    Parameters
    ----------
    behind : float64[players, choices]
        Strokes behind any one of them.
    """
    good = behind <= behind.min(axis=1, keepdims=True) + EVEN_STROKES
    return np.asarray((good / good.sum(axis=1, keepdims=True)).mean(axis=0))


def plausible_behind(
    again: Rescore, players: Sequence[Player], maps: Sequence[Board], strikes: int = FULL.strikes
) -> np.ndarray:
    """Strokes behind the recommended alternative for each plausible player, float64[players, choices].

    Aims are not moved: a plausible player aims off for his own bias already, and of a best aim that moves a
    little the score is the same to first order.

    Parameters
    ----------
    maps : sequence of Board
        Of `revalued_maps`, for the first of the players.
    strikes : int
        See `Form.strikes`.
    """
    board, threads, alone = again.place.board, again.place.threads, again.alone()

    def strokes(board: Board, count: int, turned_deg: Sequence[float] | None = None) -> np.ndarray:
        return alone.strokes(board, turns_deg=(0.0,), turned_deg=turned_deg, strikes=count)

    def first(one: Player) -> np.ndarray:
        theirs = with_strikes(board, varied_strikes(board.bag, aimed_off(one, again.player), again.rows))
        return strokes(theirs, strikes, turned_right_deg(again, one))

    def rest(anew: Board) -> np.ndarray:
        theirs = with_strikes(maps[0], anew.game.strikes)
        return strokes(anew, strikes // 2) - strokes(theirs, strikes // 2)

    scored = np.array(at_once([partial(first, one) for one in players[:SCORED]], threads))
    later = np.array(at_once([partial(rest, anew) for anew in maps[1:]], threads))
    now = for_all(scored - strokes(board, strikes), shot_features(again, players), again.seed)
    then = for_all(
        later, [_bag_features(players, again.player)] * len(again.choices), again.seed + streams.MAP_SCATTER
    )
    behind = again.behind + now + then
    return np.asarray(behind - behind[:, :1])


def revalued_maps(
    place: Place,
    players: Sequence[Player],
    player: Player,
    seed: int,
    once: Effort = ONCE,
    balls: np.ndarray | None = None,
    nodes: Nodes | None = None,
) -> list[Board]:
    """The map worked out anew, its plan held: for the player asked about, then for each of the others.

    Held in yards: where a club is planned, each takes his own that carries as far. `balls` is where the
    alternatives' balls come to; without it every node is worked alike. `nodes` are those to value, the map's
    own when left out.
    """
    board = place.board if nodes is None else with_nodes(place.board, nodes)
    rows = [board.game.strikes]
    rows += [varied_strikes(board.bag, aimed_off(one, player)) for one in players]
    held = hold_plan(board, place.board, seed=seed, places=balls, effort=once)
    return at_once(
        [
            partial(revalue_map, with_strikes(board, strikes), held, instead=same_yards(board.bag, strikes))
            for strikes in rows
        ],
        place.threads,
    )


def aimed_off(one: Player, player: Player) -> Player:
    """A plausible player who aims off for his own bias: the side bias of the player asked about."""
    clubs = tuple(
        replace(club, bias_right_deg=own.bias_right_deg)
        for club, own in zip(one.clubs, player.clubs, strict=True)
    )
    return replace(one, clubs=clubs)


def with_strikes(board: Board, strikes: np.ndarray) -> Board:
    """The board with other strike rows, its values as they are."""
    return replace(board, game=board.game._replace(strikes=strikes))


def turned_right_deg(again: Rescore, one: Player) -> list[float]:
    """How far each alternative's club starts right of where the player's own does [deg]."""
    shots = again.place.board.bag.shots
    turned = []
    for row in again.rows:
        name = shots.shots[row].club.name
        part = row >= shots.first_part
        turned.append(0.0 if part else one.club(name).bias_right_deg - again.player.club(name).bias_right_deg)
    return turned


def for_all(known: np.ndarray, features: Sequence[np.ndarray], seed: int) -> np.ndarray:
    """What changes for every player, float64[players, choices].

    For the first of them as worked out; for the rest by regression, and a scatter drawn from the first, all
    choices together.

    Parameters
    ----------
    known : float64[first, choices]
    features : sequence of float64[players, numbers]
        For each choice, what differs between the players.
    """
    first, rest = len(known), len(features[0]) - len(known)
    if rest <= 0:
        return known
    found, scatter = np.empty((first + rest, len(features))), np.empty_like(known)
    for k, numbers in enumerate(features):
        weights, _, rank, _ = np.linalg.lstsq(numbers[:first], known[:, k], rcond=None)
        found[:, k] = numbers @ weights
        scatter[:, k] = (known[:, k] - found[:first, k]) * math.sqrt(first / (first - rank))
    found[:first] = known
    found[first:] += scatter[np.random.default_rng([seed, 0x5CA7]).integers(0, first, rest)]
    return found


def shot_features(again: Rescore, players: Sequence[Player]) -> list[np.ndarray]:
    """For each choice what its first shot's score hangs on, its club's numbers: float64[players, numbers]."""
    shots = again.place.board.bag.shots
    found = []
    for row, given in zip(again.rows, again.given, strict=True):
        if row >= shots.first_part:
            found.append(_short_features(shots.shots[row], players))
            continue
        name = shots.shots[row].club.name
        own = again.player.club(name)
        found.append(_bent(np.array([_differs(one.club(name), own) for one in players]), given))
    return found


def _short_features(shot: Shot, players: Sequence[Player]) -> np.ndarray:
    """The same of a swing short of full: how wide it spreads, and how often it is mishit, as no putt is."""
    spreads = [in_other_hands(shot, one).spread for one in players]
    differs = np.array([
        (_log_ratio(one.distance_sd_pct, shot.spread.distance_sd_pct), _logit(one.mishit_rate))
        for one in spreads
    ])  # fmt: skip
    wider, mishits = (differs / np.maximum(differs.std(axis=0), 1e-9)).T
    columns = [np.ones_like(wider), wider, wider**2]
    if shot.flight != "putt":
        mishits = mishits - mishits.mean()
        columns += [mishits, mishits**2, wider * mishits]
    return np.column_stack(columns)


def _bent(differs: np.ndarray, given: bool) -> np.ndarray:
    """Numbers of a club, float64[players, 5], as columns of which a bent score is a sum.

    A bias to the side, the last of them, counts only where the aim was given: nobody aims off for it.
    """
    reach, wider, longer, mishits, right = (differs / np.maximum(differs.std(axis=0), 1e-9)).T
    columns = [
        np.ones_like(reach), reach, reach**2, reach**3, reach**4, wider, wider**2, longer, longer**2, mishits,
        mishits**2, reach * wider, reach**2 * wider, reach * longer, reach * mishits, wider * longer,
        wider * mishits,
    ]  # fmt: skip
    if given:
        columns += [right, right**2, right**3, right * reach, right * wider]
    return np.column_stack(columns)


def _bag_features(players: Sequence[Player], player: Player) -> np.ndarray:
    """What differs between players over the whole bag, float64[players, 5]: the map hangs on all clubs."""
    rows = []
    for one in players:
        clubs = zip(one.clubs, player.clubs, strict=True)
        rows.append([1.0, *np.mean([_differs(club, own)[:4] for club, own in clubs], axis=0).tolist()])
    return np.array(rows)


def _differs(club: Club, own: Club) -> list[float]:
    """What differs between two versions of a club: reach, spreads, mishits, bias to the side [deg]."""
    reach = math.log(club.carry_yd / own.carry_yd) + (club.bias_long_pct - own.bias_long_pct) / 100.0
    wider = _log_ratio(club.direction_sd_deg, own.direction_sd_deg)
    longer = _log_ratio(club.distance_sd_pct, own.distance_sd_pct)
    mishits = _logit(club.mishit_rate) - _logit(own.mishit_rate)
    return [reach, wider, longer, mishits, club.bias_right_deg - own.bias_right_deg]


def _log_ratio(new: float, old: float) -> float:
    return math.log(new / old) if old > 0.0 and new > 0.0 else 0.0


def _logit(share: float) -> float:
    inside = min(max(share, 1e-6), 1.0 - 1e-6)
    return math.log(inside / (1.0 - inside))
