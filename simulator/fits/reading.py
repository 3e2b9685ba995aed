"""Fit the error of reading a slope to four published figures of the tour.

Run ``python -m simulator.fits.reading`` (about 20 s); it prints, and the rounded value is a constant of
``simulator/physics/putting.py``. Inputs: the tour's level in ``simulator/player/putting_levels.toml`` and the
figures below. Last run 2026-11-25.

It also prints how the mean over the directions on `TYPICAL_SLOPE` compares with the table of no told slope:
the share `ALLOWANCE` of ``simulator/tables/slope_errors.py`` is set so that the two agree.
"""

from __future__ import annotations

import math
import tomllib
from importlib import resources

import numpy as np

from ..physics import putting
from ..physics.aero import GRAVITY_MPS2
from ..player.model import Putting
from ..tables.putts import PuttTable, putt_table
from ..tables.slope_errors import errors_on_plane
from ..tables.slope_putts import PuttTables, putt_tables

STEEP_SLOPE = 0.03
"""A "large" slope in the article on leaves; taken for the "steep" one of the other too (assumed)."""

FIGURES = {"leave_up_ft": 1.1, "leave_down_ft": 2.1, "up_to_down": 1.05, "diagonal_down_to_up": 0.82}
"""Median leave of missed 10-footers on a 3 % slope, up and down [ft] (M. Broadie, golf.com 2020); 8-footers
up holed "five percent more often" than down on average, and on steep slopes diagonally down "almost 20
percent less frequently" than diagonally up (M. Broadie, golf.com, 11 June 2019), read as ratios."""

WITHIN = {"leave_up_ft": 0.2, "leave_down_ft": 0.2, "up_to_down": 0.03, "diagonal_down_to_up": 0.03}
"""Residuals that count the same: rounding, and what "uphill" takes in, is not told."""


def level(handicap: float) -> tuple[Putting, float]:
    """Skill of a level and the Stimpmeter reading it was fitted on."""
    text = resources.files("simulator.player").joinpath("putting_levels.toml").read_text(encoding="utf-8")
    row = next(row for row in tomllib.loads(text)["level"] if row["handicap"] == handicap)
    return Putting(row["angle_sd_deg"], row["distance_sd"]), row["fitted_stimp_ft"]


def straight_leaves_ft(
    tables: PuttTables, skill: Putting, flat: PuttTable, stimp_ft: float, reading_sd: float, up: bool
) -> np.ndarray:
    """Leaves [ft] of missed 10-footers straight up or down plane 0, drawn by the kernel's model."""
    feet, luck = 10.0, np.random.default_rng(5)
    slope, toward = tables.slopes[0], 1.0 if up else -1.0
    errors = errors_on_plane(skill, flat, stimp_ft, slope, told_stimp_ft=stimp_ft, reading_sd=reading_sd)
    pace = tables.at(0, 0.0 if up else math.pi, feet)[2]
    pull = putting.SLOPE_SHARE * GRAVITY_MPS2 * slope
    slowing = putting.deceleration_mps2(stimp_ft) + toward * pull
    bend = 1.0 - 0.5 * toward * pull / slowing
    line, read, across, share = luck.standard_normal((4, 400_000))
    share = share * math.sqrt(errors.roll_variance[0 if up else -1]) + read * reading_sd * pull / slowing
    roll = np.maximum((feet + pace) * (1.0 + share), 0.0)
    # the right line is straight; a slope across, misread: the aim it would take, at this local deceleration
    left = pace / (feet + pace)
    reach = (1.0 - left**bend) / bend
    across_aim = pull / slowing * (reach - 1.0 + left) / ((toward * pull / slowing) * reach)
    angle = line * math.sqrt(np.interp(feet / 3.0, flat.distance_yd, errors.line_variance))
    angle = angle + across * reading_sd * across_aim
    past = roll - feet
    ahead = np.clip(past / np.maximum(roll, 1e-9), 0.0, 1.0) ** bend
    side = np.sin(angle) * roll * (1.0 - ahead) / bend
    speed = np.sqrt(2.0 * slowing * np.maximum(past, 0.0) * putting.M_PER_FT)
    half = putting.HOLE_RADIUS_M / putting.M_PER_FT
    half = half * np.sqrt(np.maximum(1.0 - speed / putting.CAPTURE_LIMIT_MPS, 0.0))
    missed = (past < 0.0) | (np.abs(side) >= half)
    return np.hypot(past, np.sin(angle) * roll / bend)[missed]


def figures(reading_sd: float) -> dict[str, float]:
    """The four figures for a reading error, of the tour."""
    skill, stimp_ft = level(-5.0)
    flat = putt_table(skill.angle_sd_deg, skill.distance_sd, stimp_ft=stimp_ft)
    slopes = (STEEP_SLOPE, putting.TYPICAL_SLOPE)
    tables = putt_tables(skill, stimp_ft, slopes, flat=flat, told_stimp_ft=stimp_ft, reading_sd=reading_sd)
    leaves = [straight_leaves_ft(tables, skill, flat, stimp_ft, reading_sd, up) for up in (True, False)]

    def holed(plane: int, degrees: float) -> float:
        return float(tables.at(plane, math.radians(degrees), 8.0)[1][0])

    up = np.mean([holed(1, turn) for turn in (0.0, 22.5, 45.0)])
    down = np.mean([holed(1, 180.0 - turn) for turn in (0.0, 22.5, 45.0)])
    return {
        "leave_up_ft": float(np.median(leaves[0])),
        "leave_down_ft": float(np.median(leaves[1])),
        "up_to_down": float(up / down),
        "diagonal_down_to_up": holed(0, 135.0) / holed(0, 45.0),
    }


def main() -> None:
    """Print the fit, its figures and the mean over the directions against the table of no told slope."""
    from scipy.optimize import minimize_scalar

    def misfit(reading_sd: float) -> float:
        found = figures(reading_sd)
        return sum(((found[name] - FIGURES[name]) / WITHIN[name]) ** 2 for name in FIGURES)

    best = minimize_scalar(misfit, bounds=(0.0, 0.3), method="bounded", options={"xatol": 0.003})
    print(f"reading error {best.x:.3f} of the slope; misfit {best.fun:.1f}; used: {putting.READING_SD}")
    for reading_sd in (0.0, putting.READING_SD, float(best.x)):
        print(
            f"  at {reading_sd:.3f}", {k: f"{v:.2f} ({FIGURES[k]})" for k, v in figures(reading_sd).items()}
        )
    for handicap in (-5.0, 5.0, 18.0):
        skill, stimp_ft = level(handicap)
        flat = putt_table(skill.angle_sd_deg, skill.distance_sd, stimp_ft=stimp_ft)
        tables = putt_tables(skill, stimp_ft, (putting.TYPICAL_SLOPE,), flat=flat, told_stimp_ft=stimp_ft)
        weight = np.array([0.5] + [1.0] * (tables.direction_rad.size - 2) + [0.5])
        weight /= weight.sum()
        for feet in (3.0, 5.0, 8.0, 15.0, 30.0, 60.0):
            found = [tables.at(0, turn, feet) for turn in tables.direction_rad]
            putts = weight @ np.array([row[0] for row in found]) - flat.at_ft(feet)[0]
            holed = 100.0 * (weight @ np.array([row[1][0] for row in found]) - flat.at_ft(feet)[1][0])
            print(f"  handicap {handicap:.0f}, {feet:.0f} ft: putts {putts:+.4f}, holed {holed:+.2f} points")


if __name__ == "__main__":
    main()
