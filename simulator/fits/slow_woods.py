"""Fit how the spin of woods changes below the women's tour speed; writes ``physics/slow_woods.toml``.

Run with ``python -m simulator.fits.slow_woods``. Two numbers of the driver, by two published runs on ordinary
fairway (Course Rating System): the men's bogey player carries 180 yd and runs 20; the women's finishes at
150 yd, split here as 130 + 20 (the split is ours). The scratch players' runs, men 225 + 25 and women
190 + 20 (split ours), are printed beside what comes out; the first lies above the women's tour speed, where
nothing is fitted. And one of the 5-wood, for which no run is published: the women's bogey player's runs as
far as her 3-wood (assumed).
"""

from __future__ import annotations

import datetime
from pathlib import Path

import numpy as np
from scipy.optimize import brentq, least_squares

from ..conditions import Conditions
from ..physics import launch
from ..player.model import Club
from ..tables.carries import runs_yd, stock_landings
from ..tables.shots import Shot, ShotList
from .tables import write_table

FITTED = {180.0: 20.0, 130.0: 20.0}
"""Carry [yd]: run [yd] that are met."""

SHOWN = {225.0: 25.0, 190.0: 20.0}
"""The same, for information."""

WOODS_YD = {"3-wood": 115.1, "5-wood": 108.8}
"""Carries of a women's bogey player, whose 5-wood runs as far as her 3-wood (assumed). They are an earlier
level's and no longer read from it: the levels are fitted on these flights."""

TARGET = Path(__file__).parents[1] / "physics" / "slow_woods.toml"


def stock(kind: str, carry_yd: float) -> Club:
    """A club that is always struck alike."""
    return Club(kind, kind, carry_yd, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1.0)


def straight_runs_yd(clubs: list[Club]) -> np.ndarray:
    """Run [yd] of each club's stock strike, on medium fairway in still air."""
    shots = tuple(Shot(club, "stock", club.carry_yd, club) for club in clubs)
    listed = ShotList.of_full(shots)
    return runs_yd(stock_landings(listed, Conditions(), 0.0, 0.0, len(shots)), Conditions())


def driver_runs_yd(power: float, least_share: float, carries_yd: list[float]) -> np.ndarray:
    """Run [yd] of a driver struck straight to each carry."""
    launch.SLOW_SPIN = (power, least_share)
    return straight_runs_yd([stock("driver", carry) for carry in carries_yd])


def woods_apart_yd(share: float) -> float:
    """How much farther the women's bogey player's 5-wood runs than her 3-wood [yd]."""
    lofts, (first, _, last) = launch.AS_DRIVER
    launch.AS_DRIVER = (lofts, (first, share, last))
    three, five = straight_runs_yd([stock(kind, carry_yd) for kind, carry_yd in WOODS_YD.items()])
    return float(five - three)


def main() -> None:
    """Fit the three numbers and write the file."""
    wanted = np.array(list(FITTED.values()))
    fit = least_squares(
        lambda x: driver_runs_yd(x[0], x[1], list(FITTED)) - wanted,
        [1.9, 0.74],
        bounds=([0.0, 0.5], [4.0, 0.95]),
        diff_step=0.03,
        xtol=1e-3,
    )
    carries = [*FITTED, *SHOWN]
    wanted_yd = [*FITTED.values(), *SHOWN.values()]
    rows = zip(carries, wanted_yd, driver_runs_yd(fit.x[0], fit.x[1], carries), strict=True)
    said = "; ".join(f"{carry:g} yd: {run:.1f} for {want:g}" for carry, want, run in rows)
    share = brentq(woods_apart_yd, 0.0, 1.0, xtol=1e-3)
    origin = {
        "script": "python -m simulator.fits.slow_woods",
        "inputs": "Course Rating System: driver of bogey players, carry + run; "
        "the bogey woman's 5-wood runs as her 3-wood (assumed)",
        "date": datetime.date.today().isoformat(),
        "runs": said,
    }
    numbers = {"power": fit.x[0], "least_share": fit.x[1], "five_wood_share": share}
    write_table(TARGET, origin, {name: round(float(value), 3) for name, value in numbers.items()})
    print(TARGET.read_text(encoding="utf-8"))


if __name__ == "__main__":
    main()
