"""Fit putting skill to published putts, for the tour and for two levels of amateur.

Run ``python -m simulator.fits.putting``; it writes ``simulator/player/putting_levels.toml``.

Tour: angle sd and distance sd together, to the share holed (31 rows, 1.25 million putts) *and* to average
putts and three-putts. Shares holed alone leave the pace free and choose too bold a one: long putts are then
three-putted half as often again as published. The growth of the angle error with distance is fitted too
and printed; its rounded value is a constant of ``simulator/physics/putting.py``.

Amateurs: two figures are published for each level, the distance holed half the time and the distance
of two putts on average; two unknowns are fitted, with the distance sd not below the tour's. (Left free, the
better level's would be 0.077, less than the tour's 0.086: nobody rolls a ball truer to length than the tour,
so its two-putt distance is missed instead.)
"""

from __future__ import annotations

import datetime
from importlib import resources
from pathlib import Path

import numpy as np

from ..files import write_text
from ..physics.putting import ANGLE_GROWTH_DEG_PER_FT
from ..tables.putts import PuttTable, putt_table

TOUR_STIMP_FT = 11.0
"""Assumed for tour greens (common practice 10.5-13); the make figures hardly depend on it."""

AMATEUR_STIMP_FT = 9.25
"""Middle of the 8 ft 1 in - 10 ft 5 in found on courses in a 2007 survey (second hand)."""

TOUR_AVERAGE_PUTTS = {
    3: 1.04, 4: 1.13, 5: 1.23, 6: 1.34, 8: 1.50, 10: 1.61, 15: 1.78, 20: 1.87, 30: 1.98, 40: 2.06, 50: 2.14,
    60: 2.21, 90: 2.40,
}  # fmt: skip
"""Average putts from a distance [ft]: M. Broadie, Every Shot Counts (2014), PGA Tour table, second hand."""

TOUR_THREE_PUTT_PCT = {20: 2.2, 32: 6.0, 40: 10.0}
"""Share of three putts or more [%]: same table, second hand, the rows more than one place gives."""

TOUR_DISTANCES = (8.0, 33.0)
"""Distance holed half the time and distance of two putts on average [ft]: M. Broadie, "Assessing golfer
performance on the PGA Tour", Interfaces 42 (2012), section 3.3, second hand; for information, not fitted."""

AMATEURS = {
    5: (5.8, 25.0, "scores 70-83"),
    18: (5.1, 19.0, "scores 84-97"),
}
"""Handicap -> (distance holed half the time, distance of two putts on average [ft], who): M. Broadie
in Science and Golf V (2008), table 1, second hand. The handicaps put to the score groups are assumed."""

CONTINUED = (28, 36, 54)
"""Handicaps beyond the published levels: the straight line through the two amateur levels, assumed."""

AVERAGE_SD = 0.02
"""Residual of average putts that counts as much as one percentage point of makes."""

THREE_PUTT_SD_PCT = 2.0
"""The same for three-putts: the figures agree between reprints to about this."""


def tour_rows() -> np.ndarray:
    """Rows (distance ft, tries, holed) of the tour table: Broadie 2018, see the file's head."""
    text = resources.files("simulator.fits").joinpath("data/putts_tour_2016_2018.csv").read_text()
    lines = [line for line in text.splitlines() if line and not line.startswith(("#", "distance"))]
    return np.array([[float(cell) for cell in line.split(",")] for line in lines])


def _table(skill: np.ndarray, stimp_ft: float) -> PuttTable:
    reading = float(skill[2]) if skill.size == 3 else ANGLE_GROWTH_DEG_PER_FT
    return putt_table(float(skill[0]), float(skill[1]), angle_growth_deg_per_ft=reading, stimp_ft=stimp_ft)


def fit_tour(start: tuple[float, ...]) -> np.ndarray:
    """Angle sd [deg], distance sd and, if `start` has a third, growth [deg/ft]: least squares."""
    from scipy.optimize import least_squares

    rows = tour_rows()
    holed = rows[:, 2] / rows[:, 1]

    def residuals(skill: np.ndarray) -> np.ndarray:
        table = _table(skill, TOUR_STIMP_FT)
        makes = [100.0 * (table.at_ft(d)[1][0] - p) for d, p in zip(rows[:, 0], holed, strict=True)]
        putts = [(table.at_ft(d)[0] - a) / AVERAGE_SD for d, a in TOUR_AVERAGE_PUTTS.items()]
        threes = [
            (100.0 * (1.0 - table.at_ft(d)[1][1]) - p) / THREE_PUTT_SD_PCT
            for d, p in TOUR_THREE_PUTT_PCT.items()
        ]
        return np.array(makes + putts + threes)

    return np.asarray(least_squares(residuals, start, x_scale=start, diff_step=1e-3).x)


def distances_of(table: PuttTable) -> tuple[float, float]:
    """(distance holed half the time, distance of two putts on average) of a putting table [ft]."""
    feet = np.linspace(1.0, 100.0, 2000)
    makes = np.array([table.at_ft(d)[1][0] for d in feet])
    putts = np.array([table.at_ft(d)[0] for d in feet])
    return float(np.interp(-0.5, -makes, feet)), float(np.interp(2.0, putts, feet))


def fit_amateur(half_ft: float, two_putt_ft: float, least_distance_sd: float) -> np.ndarray:
    """Angle sd [deg] and distance sd that meet both distances, as far as the bound lets them."""
    from scipy.optimize import least_squares

    def residuals(skill: np.ndarray) -> list[float]:
        half, two = distances_of(_table(skill, AMATEUR_STIMP_FT))
        return [half / half_ft - 1.0, two / two_putt_ft - 1.0]

    start = (2.0, least_distance_sd + 0.01)
    bounds = ((0.5, least_distance_sd), (6.0, 0.5))
    return np.asarray(least_squares(residuals, start, x_scale=start, diff_step=3e-3, bounds=bounds).x)


def _row(
    handicap: float,
    who: str,
    skill: np.ndarray,
    stimp_ft: float,
    published: tuple[float, float] | None = None,
) -> str:
    half, two = distances_of(_table(skill, stimp_ft))
    beside = [f"; published {value}" for value in published] if published else ["", ""]
    return (
        "[[level]]\n"
        f"handicap = {handicap:.1f}  # {who}\n"
        f"angle_sd_deg = {skill[0]:.4f}\n"
        f"distance_sd = {skill[1]:.4f}\n"
        f"fitted_stimp_ft = {stimp_ft}\n"
        f"holed_half_the_time_ft = {half:.1f}  # what the model gives{beside[0]}\n"
        f"two_putts_on_average_ft = {two:.1f}  # what the model gives{beside[1]}\n"
    )


def main() -> None:
    """Fit every level and write the file (to a temporary file, then renamed)."""
    free = fit_tour((1.3, 0.08, 0.02))
    tour = fit_tour((1.3, 0.08))
    rows = tour_rows()
    table = _table(tour, TOUR_STIMP_FT)
    error = [100.0 * (table.at_ft(d)[1][0] - holed / tries) for d, tries, holed in rows]
    rms = float(np.sqrt(np.mean(np.square(error))))
    blocks = [_row(-5.0, "tour; the handicap put to it is assumed", tour, TOUR_STIMP_FT, TOUR_DISTANCES)]
    amateurs = []
    for handicap, (half, two, who) in AMATEURS.items():
        skill = fit_amateur(half, two, float(tour[1]))
        amateurs.append((handicap, skill))
        blocks.append(_row(handicap, who, skill, AMATEUR_STIMP_FT, (half, two)))
    (low, better), (high, worse) = amateurs
    for handicap in CONTINUED:
        skill = better + (worse - better) * (handicap - low) / (high - low)
        blocks.append(_row(handicap, "assumed: the line of the two above continued", skill, AMATEUR_STIMP_FT))
    head = (
        "# Putting skill by level. Written by `python -m simulator.fits.putting`, do not edit.\n"
        "# Inputs: simulator/fits/data/putts_tour_2016_2018.csv (Broadie 2018) and tables in the script.\n"
        f"# Date: {datetime.date.today()}. Tour share holed: rms {rms:.2f} percentage points over "
        f"{len(rows)} rows.\n\n"
    )
    target = Path(__file__).parent.parent / "player" / "putting_levels.toml"
    write_text(target, head + "\n".join(blocks))
    print(
        f"with the growth free: angle {free[0]:.3f} deg, distance {free[1]:.4f}, growth {free[2]:.4f} deg/ft"
    )
    print(head + "\n".join(blocks))
    for d, a in TOUR_AVERAGE_PUTTS.items():
        putts, chances = table.at_ft(d)
        print(f"tour {d:3d} ft: putts {putts:.3f} (published {a:.2f}), threes {100 - 100 * chances[1]:.1f} %")


if __name__ == "__main__":
    main()
