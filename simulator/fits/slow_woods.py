"""Fit how spin of the driver and 3-wood rises below the women's tour speed; writes
``physics/slow_woods.toml``.

Run with ``python -m simulator.fits.slow_woods``. Two numbers, two published runs of a driver on ordinary
fairway (Course Rating System): the men's bogey player carries 180 yd and runs 20; the women's finishes at
150 yd, split here as 130 + 20 (the split is ours). The scratch players' runs, men 225 + 25 and women
190 + 20 (split ours), are printed beside what comes out; the first lies above the women's tour speed, where
nothing is fitted.
"""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np
from scipy.optimize import least_squares

from ..engine import play
from ..hole.surfaces import Lie
from ..physics import launch
from ..player.levels import level
from ..player.model import Club
from ..player.standard import standard_player
from ..tables.bag import make_bag
from ..tables.game import make_board
from .bench.holes import open_hole
from .tables import write_table

FITTED = {180.0: 20.0, 130.0: 20.0}
"""Carry [yd]: run [yd] that are met."""

SHOWN = {225.0: 25.0, 190.0: 20.0}
"""The same, for information."""

TARGET = Path(__file__).parents[1] / "physics" / "slow_woods.toml"


def runs_yd(power: float, least_share: float, carries_yd: list[float]) -> np.ndarray:
    """Run [yd] of a driver struck straight to each carry, on medium fairway."""
    launch.SLOW_SPIN = (power, least_share)
    found = []
    for carry in carries_yd:
        who = standard_player(level(20.0))
        driver = Club("driver", "driver", carry, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0)
        bag = make_bag(type(who)(**{**vars(who), "clubs": (driver,)}))
        board = make_board(open_hole(500.0), bag, coarse_yd=40.0, fine_yd=25.0)
        action = np.zeros(3)
        shot = play(board, 0.0, 0.0, int(Lie.TEE), action, action, 5.0, seed=1, sequences=1, most_strokes=1)
        found.append(float(shot.rest_yd[0, 1] - shot.landing_yd[0, 1]))
    return np.array(found)


def main() -> None:
    """Fit both numbers and write the file."""
    wanted = np.array(list(FITTED.values()))
    fit = least_squares(
        lambda x: runs_yd(x[0], x[1], list(FITTED)) - wanted,
        [1.9, 0.74],
        bounds=([0.0, 0.5], [4.0, 0.95]),
        diff_step=0.03,
        xtol=1e-3,
    )
    carries = [*FITTED, *SHOWN]
    wanted_yd = [*FITTED.values(), *SHOWN.values()]
    rows = zip(carries, wanted_yd, runs_yd(fit.x[0], fit.x[1], carries), strict=True)
    said = "; ".join(f"{carry:g} yd: {run:.1f} for {want:g}" for carry, want, run in rows)
    origin = {
        "script": "python -m simulator.fits.slow_woods",
        "inputs": "Course Rating System: driver of bogey players, carry + run",
        "date": datetime.date.today().isoformat(),
        "runs": said,
    }
    write_table(TARGET, origin, {"power": round(fit.x[0], 3), "least_share": round(fit.x[1], 3)})
    print(TARGET.read_text(encoding="utf-8"))


if __name__ == "__main__":
    main()
