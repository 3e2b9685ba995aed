"""Shots of clubs whose numbers are known, and players drawn from what is believed before any shot."""

from dataclasses import replace

import numpy as np

from simulator.player.fill import level_carry_yd
from simulator.player.levels import level
from simulator.player.measured.landed import landed
from simulator.player.measured.likelihood import PARAMETERS
from simulator.player.measured.pooling import pools
from simulator.player.measured.shots import Shots
from simulator.player.model import CLUB_NUMBERS, Club

CLUBS = ("driver", "3-wood", "6-iron", "9-iron", "sand wedge")


def level_club(name, handicap):
    base = level(handicap)
    carry = level_carry_yd(name, name, base)
    numbers = base.spread(name, carry, base.driver_carry_yd)
    carry *= 1.0 + numbers["bias_long_pct"] / 100.0
    return Club(name=name, kind=name, **{**numbers, "carry_yd": carry, "bias_long_pct": 0.0})


def steps_from_level(rng, kinds):
    """How far every number of one player's clubs is from the level, float64[clubs, 6], as the fit believes."""
    steps = np.empty((len(kinds), len(PARAMETERS)))
    for j, parameter in enumerate(PARAMETERS):
        tried = pools(parameter)
        pool = tried[rng.choice(len(tried), p=[odds for _, odds in tried])][0]
        steps[:, j] = rng.multivariate_normal(np.zeros(len(kinds)), pool.covariance(kinds))
    return steps


def drawn_clubs(handicap, rng, names=CLUBS):
    """Clubs of one player, drawn as the fit believes players are before any shot."""
    clubs = []
    for name, step in zip(names, steps_from_level(rng, names), strict=True):
        club = level_club(name, handicap)
        odds = club.mishit_rate / (1 - club.mishit_rate) * np.exp(step[4])
        clubs.append(
            replace(
                club,
                carry_yd=club.carry_yd * np.exp(step[0]),
                bias_right_deg=club.bias_right_deg + step[1],
                direction_sd_deg=club.direction_sd_deg * np.exp(step[2]),
                distance_sd_pct=club.distance_sd_pct * np.exp(step[3]),
                mishit_distance_sd_pct=club.mishit_distance_sd_pct * np.exp(step[3]),
                mishit_rate=odds / (1 + odds),
                mishit_loss_pct=club.mishit_loss_pct * np.exp(step[5]),
            )
        )
    return clubs


def shots_of(club, count, rng):
    """Carries and sides of so many strikes of a club."""
    seen = landed(club.kind, {key: getattr(club, key) for key in CLUB_NUMBERS})
    missed = rng.random(count) < seen["mishit_rate"]
    mean = np.where(missed, 1 - seen["mishit_loss_pct"] / 100, 1.0)
    deep = np.where(missed, seen["mishit_distance_sd_pct"], seen["distance_sd_pct"]) / 100
    wide = seen["direction_sd_deg"] * np.where(missed, seen["mishit_direction_factor"], 1.0)
    carry = np.maximum(seen["carry_yd"] * rng.normal(mean, deep), 1.0)
    offline = carry * np.sin(np.radians(rng.normal(club.bias_right_deg, wide)))
    return Shots(club.name, carry, offline, None)
