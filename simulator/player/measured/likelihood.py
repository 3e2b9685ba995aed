"""How likely clubs' shots are under a strike that is solid, a mishit, or a slip of the record.

Each shot is a carry c [yd] and a direction t [deg]:

    solid   c ~ N(C, (C d)^2)               t ~ N(b, s^2)
    mishit  c ~ N(C (1 - loss), (C d r)^2)  t ~ N(b, (f s)^2)      with probability p
    slip    anything up to half as far again as C_0, any direction within 45 degrees, with `SLIP`

Each spread is widened by how finely the record was kept (`Club.carry_error_yd`, `Club.direction_error_deg`):
five shots noted as "0 yd off line" in steps of 5 yd are no golfer without a spread.

The slip keeps one wild row (another club's shot, a topped ball, a missed decimal point) from widening the
pattern: no number of the player moves to explain it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

SLIP = 0.01
"""Share of rows that are no strike of this club's pattern; assumed."""

PARAMETERS = ("log_carry", "bias_right_deg", "log_direction", "log_distance", "mishit_logit", "log_loss")


@dataclass(frozen=True)
class Club:
    """What stays as the level has it while one club is fitted.

    Attributes
    ----------
    carry_yd, direction_deg : float64[shots]
    mishit_distance_ratio, mishit_direction_factor : float
        Spread of a mishit over that of a solid strike.
    around_yd : float
        Carry that bounds a slip.
    carry_error_yd, direction_error_deg : float
        Standard deviation of what rounding added.
    """

    carry_yd: Floats
    direction_deg: Floats
    mishit_distance_ratio: float
    mishit_direction_factor: float
    around_yd: float
    carry_error_yd: float = 0.0
    direction_error_deg: float = 0.0


@dataclass(frozen=True)
class Rows:
    """The shots of all clubs, one after the other, so that numpy works them all at once.

    Attributes
    ----------
    carry_yd, direction_deg : float64[rows]
    club : int64[rows]
        Which club each row belongs to; rows of a club stand together.
    first : int64[clubs]
        Where each club's rows begin.
    ratio, factor, log_slip : float64[rows]
        Of the row's club: `Club.mishit_distance_ratio`, `Club.mishit_direction_factor`, and the logarithm of
        how likely a slip is to stand there.
    carry_error, direction_error : float64[rows]
        Of the row's club: `Club.carry_error_yd`, `Club.direction_error_deg`.
    """

    carry_yd: Floats
    direction_deg: Floats
    club: NDArray[np.int64]
    first: NDArray[np.int64]
    ratio: Floats
    factor: Floats
    log_slip: Floats
    carry_error: Floats
    direction_error: Floats

    @classmethod
    def of(cls, clubs: Sequence[Club]) -> Rows:
        """The rows of clubs, each of which has one at least."""
        counts = np.array([len(club.carry_yd) for club in clubs])
        slip = np.log(SLIP / (1.5 * np.array([club.around_yd for club in clubs]) * 90.0))
        return cls(
            np.concatenate([club.carry_yd for club in clubs]),
            np.concatenate([club.direction_deg for club in clubs]),
            np.repeat(np.arange(len(clubs)), counts),
            np.r_[0, np.cumsum(counts)[:-1]],
            np.repeat([club.mishit_distance_ratio for club in clubs], counts),
            np.repeat([club.mishit_direction_factor for club in clubs], counts),
            np.repeat(slip, counts),
            np.repeat([club.carry_error_yd for club in clubs], counts),
            np.repeat([club.direction_error_deg for club in clubs], counts),
        )


def log_likelihood(x: Floats, rows: Rows) -> tuple[Floats, Floats]:
    """Log likelihood of each club's shots and its gradient.

    Parameters
    ----------
    x : float64[..., clubs, 6]
        In the order of `PARAMETERS`.
    rows : Rows

    Returns
    -------
    value : float64[..., clubs]
    gradient : float64[..., clubs, 6]
    """
    carry_of, s_of, d_of = np.exp(x[..., 0]), np.exp(x[..., 2]), np.exp(x[..., 3])
    logit, loss_of = x[..., 4], np.exp(x[..., 5])
    log_p, log_rest = -np.logaddexp(0.0, -logit), -np.logaddexp(0.0, logit)
    # what all rows of a club share is worked out once a club
    deep = (carry_of * d_of, carry_of * d_of * rows.ratio[rows.first])
    wide = (s_of, s_of * rows.factor[rows.first])
    deep_seen = [np.hypot(one, rows.carry_error[rows.first]) for one in deep]
    wide_seen = [np.hypot(one, rows.direction_error[rows.first]) for one in wide]
    plain = np.log((1.0 - SLIP) / (2.0 * np.pi))
    top_solid, top_mishit = (
        plain + log_of - np.log(c * t)
        for log_of, c, t in zip((log_rest, log_p), deep_seen, wide_seen, strict=True)
    )
    shared = np.stack(
        [
            carry_of, x[..., 1], np.exp(log_p), loss_of, top_solid, top_mishit, *deep_seen, *wide_seen,
            *((one / seen) ** 2 for one, seen in zip((*deep, *wide), (*deep_seen, *wide_seen), strict=True)),
        ]
    )  # fmt: skip
    carry, bias, p, loss, top_solid, top_mishit, *rest = np.take(shared, rows.club, axis=-1)
    sd_c, sd_t, own_c, own_t = rest[:2], rest[2:4], rest[4:6], rest[6:]
    missed = 1.0 - loss
    z = ((rows.carry_yd - carry) / sd_c[0], (rows.carry_yd - carry * missed) / sd_c[1])
    u = tuple((rows.direction_deg - bias) / sd for sd in sd_t)
    solid = top_solid - 0.5 * (z[0] ** 2 + u[0] ** 2)
    mishit = top_mishit - 0.5 * (z[1] ** 2 + u[1] ** 2)
    total = np.logaddexp(np.logaddexp(solid, mishit), rows.log_slip)
    r = np.exp(solid - total), np.exp(mishit - total)  # how likely each row is to be either
    deeper = [rk * (zk**2 - 1.0) * own for rk, zk, own in zip(r, z, own_c, strict=True)]
    by_row = np.stack(
        [
            total,
            sum(deeper) + carry * (r[0] * z[0] / sd_c[0] + r[1] * z[1] * missed / sd_c[1]),
            r[0] * u[0] / sd_t[0] + r[1] * u[1] / sd_t[1],
            r[0] * (u[0] ** 2 - 1.0) * own_t[0] + r[1] * (u[1] ** 2 - 1.0) * own_t[1],
            sum(deeper),
            r[1] * (1.0 - p) - r[0] * p,
            -r[1] * z[1] * carry * loss / sd_c[1],
        ]
    )
    by_club = np.add.reduceat(by_row, rows.first, axis=-1)
    return by_club[0], np.moveaxis(by_club[1:], 0, -1)


STEP = 1e-6
"""Step of `curvature`: small against a standard deviation of anything, large against rounding."""


def curvature(x: Floats, rows: Rows) -> Floats:
    """Minus the second derivatives of each club's log likelihood, from differences of the gradient.

    Parameters
    ----------
    x : float64[clubs, 6]

    Returns
    -------
    float64[clubs, 6, 6]
    """
    steps = STEP * np.eye(x.shape[-1])[:, None, :]
    _, gradient = log_likelihood(np.concatenate([x[None], x + steps]), rows)
    found = np.moveaxis((gradient[0] - gradient[1:]) / STEP, 0, 1)
    return 0.5 * (found + np.swapaxes(found, -1, -2))
