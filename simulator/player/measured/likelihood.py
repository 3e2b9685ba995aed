"""How likely a club's shots are under a strike that is solid, a mishit, or a slip of the record.

Each shot is a carry c [yd] and a direction t [deg]:

    solid   c ~ N(C, (C d)^2)               t ~ N(b, s^2)
    mishit  c ~ N(C (1 - loss), (C d r)^2)  t ~ N(b, (f s)^2)      with probability p
    slip    anything up to half as far again as C_0, any direction within 45 degrees, with `SLIP`

The slip keeps one wild row (another club's shot, a topped ball, a missed decimal point) from widening the
pattern: no number of the player moves to explain it.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

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
    """

    carry_yd: np.ndarray
    direction_deg: np.ndarray
    mishit_distance_ratio: float
    mishit_direction_factor: float
    around_yd: float


def log_likelihood(x: np.ndarray, club: Club) -> tuple[float, np.ndarray]:
    """Log likelihood of a club's shots and its gradient.

    Parameters
    ----------
    x : float64[6]
        In the order of `PARAMETERS`.

    Returns
    -------
    value : float
    gradient : float64[6]
    """
    carry, bias, s, d = np.exp(x[0]), x[1], np.exp(x[2]), np.exp(x[3])
    p, loss = 1.0 / (1.0 + np.exp(-x[4])), np.exp(x[5])
    c, t = club.carry_yd, club.direction_deg
    wide = club.mishit_direction_factor * s
    means = (carry, carry * (1.0 - loss))
    sds = (carry * d, carry * d * club.mishit_distance_ratio)
    z = [(c - m) / sd for m, sd in zip(means, sds, strict=True)]
    u = [(t - bias) / sd for sd in (s, wide)]
    shares = (1.0 - p, p)
    logs = [
        np.log((1.0 - SLIP) * share / (2.0 * np.pi * sd * sw)) - 0.5 * (zk**2 + uk**2)
        for share, sd, sw, zk, uk in zip(shares, sds, (s, wide), z, u, strict=True)
    ]
    slip = np.full(len(c), np.log(SLIP / (1.5 * club.around_yd * 90.0)))
    stack = np.stack([*logs, slip])
    top = stack.max(axis=0)
    total = top + np.log(np.exp(stack - top).sum(axis=0))
    r = np.exp(stack - total)  # how likely each row is to be each of the three
    gradient = np.array(
        [
            sum((r[k] * (z[k] ** 2 - 1.0 + z[k] * means[k] / sds[k])).sum() for k in (0, 1)),
            (r[0] * u[0] / s + r[1] * u[1] / wide).sum(),
            sum((r[k] * (u[k] ** 2 - 1.0)).sum() for k in (0, 1)),
            sum((r[k] * (z[k] ** 2 - 1.0)).sum() for k in (0, 1)),
            (r[1] * (1.0 - p) - r[0] * p).sum(),
            (r[1] * z[1] * (-carry * loss) / sds[1]).sum(),
        ]
    )
    return float(total.sum()), gradient
