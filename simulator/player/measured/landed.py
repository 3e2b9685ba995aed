"""Between a club's numbers, which are of the strike, and what a launch monitor sees where balls come down.

A ball that curves carries less than one that flies straight, and turns less than in proportion to the tilt of
its spin axis, so balls come down shorter and a little nearer together than the club's numbers by themselves
say: a 20-handicapper's driver of 184 yd carries 182 on average when it is struck solidly. Shots are taken for
what they are, and turned into the numbers that make the game land its balls there.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from ...physics.strike import start_and_curve_sd
from ..runs import TILT_NODES, TILT_WEIGHTS, Tilted, tilted

CARRIES = 3
"""Times that the curve is read at a carry and the carry set by the curve; both are settled by the second."""


def landed(kind: str, numbers: Mapping[str, float]) -> dict[str, float]:
    """What a club's numbers look like where its balls come down.

    Parameters
    ----------
    kind : str
        Launch family.
    numbers : mapping of str to float
        Fields of a club without a curve.

    Returns
    -------
    dict of str to float
        The same fields as means and standard deviations of carries and directions at landing: carry of solid
        strikes, ``bias_long_pct`` 0, and the mishits' loss and spreads against them.
    """
    law = tilted(kind, numbers["carry_yd"])
    loss, deep = numbers["mishit_loss_pct"] / 100.0, numbers["distance_sd_pct"] / 100.0
    wide, wider = numbers["direction_sd_deg"], numbers["mishit_direction_factor"]
    solid = 1.0 + numbers["bias_long_pct"] / 100.0
    missed_deep = numbers["mishit_distance_sd_pct"] / 100.0
    kept, kept_sd, across = _seen(law, wide, 1.0, 1.0)
    missed_kept, missed_kept_sd, missed_across = _seen(law, wide, wider, 1.0 - loss / solid)
    mean, missed_mean = solid * kept, (solid - loss) * missed_kept
    return {
        **numbers,
        "carry_yd": numbers["carry_yd"] * mean,
        "bias_long_pct": 0.0,
        "direction_sd_deg": across,
        "mishit_direction_factor": missed_across / max(across, 1e-9),
        "distance_sd_pct": 100.0 * math.hypot(deep * kept, solid * kept_sd) / mean,
        "mishit_loss_pct": 100.0 * (1.0 - missed_mean / mean),
        "mishit_distance_sd_pct":
            100.0 * math.hypot(missed_deep * missed_kept, (solid - loss) * missed_kept_sd) / mean,
    }  # fmt: skip


def struck(kind: str, seen: Mapping[str, float], ratio: float, factor: float) -> dict[str, float]:
    """Numbers of the club whose balls come down as ``seen``: the inverse of `landed`.

    Parameters
    ----------
    kind : str
        Launch family.
    seen : mapping of str to float
        As `landed` gives them.
    ratio, factor : float
        Spread of a mishit over that of a solid strike, of distance and of direction, as the club has them.
    """
    from scipy.optimize import brentq

    across, carry_yd = seen["direction_sd_deg"], seen["carry_yd"]
    loss = seen["mishit_loss_pct"] / 100.0

    def over(sd_deg: float) -> float:
        return _seen(law, sd_deg, 1.0, 1.0)[2] - across

    for _ in range(CARRIES):
        law = tilted(kind, carry_yd)
        wide = (
            float(brentq(over, 0.5 * across, 2.0 * across, xtol=1e-6)) if over(2.0 * across) > 0.0 else across
        )
        kept, kept_sd, _ = _seen(law, wide, 1.0, 1.0)
        carry_yd = seen["carry_yd"] / kept
    missed_kept, _, _ = _seen(law, wide, factor, 1.0 - loss)
    # a pattern that the curve alone makes deeper than it is keeps half of its depth
    deep = seen["distance_sd_pct"] / 100.0
    deep = math.sqrt(max(deep**2 - (kept_sd / kept) ** 2, 0.25 * deep**2))
    return {
        **seen,
        "carry_yd": carry_yd,
        "direction_sd_deg": wide,
        "mishit_direction_factor": factor,
        "distance_sd_pct": 100.0 * deep,
        "mishit_loss_pct": 100.0 * max(1.0 - (1.0 - loss) * kept / missed_kept, 0.01),
        "mishit_distance_sd_pct": 100.0 * ratio * deep,
    }


def _seen(law: Tilted, sd_deg: float, wider: float, strike: float) -> tuple[float, float, float]:
    """Mean and standard deviation of the share of the carry that is kept, and of the direction [deg].

    Of strikes whose directions scatter by ``wider * sd_deg`` and that carry ``strike`` of the stock carry.
    """
    start, curve = start_and_curve_sd(math.radians(sd_deg))
    tilt = wider * curve / law.slope(0.0) * TILT_NODES
    kept = law.kept(tilt)
    mean = float(TILT_WEIGHTS @ kept)
    angle = strike * law.angle(tilt)
    across = math.sqrt((wider * start) ** 2 + float(TILT_WEIGHTS @ angle**2))
    return mean, math.sqrt(max(float(TILT_WEIGHTS @ kept**2) - mean**2, 0.0)), math.degrees(across)
