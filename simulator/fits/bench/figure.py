"""The figure of the calibration: every curve of the levels with the figures it was fitted to or read from."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np

from ...player import published as pub
from ...player.curves import drive_total_yd
from ...player.levels import HIGHEST_HANDICAP, HIGHEST_WITH_DATA, LOWEST_HANDICAP, level
from .amateurs import rating
from .measure import Bench
from .published import FAR_YD, LADDER, NEAR_YD, TOUR_LIES, TOUR_STROKES
from .rounds import better_half

BLUE, RED, GREY = "#1f5fa8", "#c2410c", "#6b7280"
COLUMNS = {"tee": "#1f5fa8", "fairway": "#15803d", "rough": "#92400e", "sand": "#ca8a04"}
AT = (-5.0, 0.0, 5.0, 10.0, 18.0, 28.0, 36.0, 54.0)
"""Handicaps at which what must be simulated is."""

STYLE: Any = {
    "font.size": 10,
    "axes.grid": True,
    "grid.alpha": 0.25,
    "legend.fontsize": 8.5,
    "axes.titlesize": 11,
    "lines.linewidth": 1.8,
}

COURSE_YD = {"man": 6000.0, "woman": 5400.0}


def draw(path: Path, benches: Callable[[float, str], Bench]) -> None:
    """Draw the figure to a PNG file: two panels wide, readable on a telephone."""
    from matplotlib import rc_context
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    with rc_context(STYLE):
        figure = Figure(figsize=(9.0, 17.5), layout="constrained")
        FigureCanvasAgg(figure)
        _panels(figure, benches)
        figure.savefig(path, dpi=110)


def _panels(figure: Any, benches: Callable[[float, str], Bench]) -> None:
    axes = figure.subplots(5, 2)
    fine = np.linspace(LOWEST_HANDICAP, HIGHEST_HANDICAP, 119)
    levels = [level(float(h)) for h in fine]
    _drives(axes[0, 0], fine)
    _directions(axes[0, 1], fine, levels)
    _spreads(axes[1, 0], fine)
    _mishits(axes[1, 1], fine, levels)
    found = {h: [benches(h, "man").approaches("fairway", d) for d in (NEAR_YD, FAR_YD)] for h in AT}
    for column, title, scale in ((0, "greens hit [%]", 100.0), (1, "median leave [% of the shot]", 100.0)):
        axis = axes[2, column]
        for k, (name, colour) in enumerate((("20-60 yd", BLUE), ("100-150 yd", RED))):
            axis.plot(AT, [scale * found[h][k][column] for h in AT], color=colour, label=f"{name}, level")
            axis.plot(
                [r[0] for r in LADDER],
                [r[2 + 2 * k + column] for r in LADDER],
                "o",
                color=colour,
                label="Broadie 2008",
            )
        axis.set_title(f"From fairway, {title}")
        axis.legend()
    _scores(axes[3, 0], benches)
    _putts(axes[3, 1], fine)
    _tour(axes[4, 0], axes[4, 1], benches(LOWEST_HANDICAP, "man"))
    for axis in axes.ravel()[:8]:
        axis.set_xlabel("handicap index")
        axis.axvspan(HIGHEST_WITH_DATA, HIGHEST_HANDICAP, color=GREY, alpha=0.12, lw=0)
    figure.suptitle("Levels by handicap index, and the published figures (shaded: extrapolated)")


def _drives(axis: Any, fine: np.ndarray) -> None:
    for sex, colour in (("man", BLUE), ("woman", RED)):
        axis.plot(
            fine, [drive_total_yd(float(h), sex) for h in fine], color=colour, label=f"{sex}, all drives"
        )
    axis.plot([3, 9, 16.5, 26], [240, 220, 204, 187], "o", color=BLUE, label="R&A/USGA report")
    axis.plot([3, 9, 16.5, 24.5, 34], [196, 178, 153, 138, 118], "o", color=RED)
    axis.plot([0, 20], [250, 200], "s", color=BLUE, label="rating system", mfc="white")
    axis.plot([0, 24], [210, 150], "s", color=RED, mfc="white")
    axis.set_title("Drive, carry and run [yd]")
    axis.legend()


def _directions(axis: Any, fine: np.ndarray, levels: list[Any]) -> None:
    found = []
    for one in levels:
        s = one.spread("driver", one.driver_carry_yd, one.driver_carry_yd)
        p, k = s["mishit_rate"], s["mishit_direction_factor"]
        found.append(s["direction_sd_deg"] * np.sqrt(1 - p + p * k * k))
    axis.plot(fine, found, color=BLUE, label="level, all drives")
    at = np.r_[LOWEST_HANDICAP, pub.DRIVE_SCORE[1:] - pub.SCORE_OVER_HANDICAP]
    axis.plot(at, pub.DRIVE_DIRECTION_SD_DEG, "o", color=BLUE, label="Broadie 2008, 2009")
    axis.set_title("Direction of drives, sd [deg]")
    axis.legend()


def _spreads(axis: Any, fine: np.ndarray) -> None:
    for sex, colour in (("man", BLUE), ("woman", RED)):
        spread = [level(float(h), sex).spread("7-iron", 130.0, 250.0) for h in fine]
        across = [130 * np.tan(np.radians(s["direction_sd_deg"])) for s in spread]
        axis.plot(fine, across, color=colour, label=f"{sex}, across")
        axis.plot(
            fine, [1.3 * s["distance_sd_pct"] for s in spread], "--", color=colour, label=f"{sex}, along"
        )
    for sex, colour, wide, deep in (("man", BLUE, (13, 18), (15, 23)), ("woman", RED, (17, 21), (17, 27))):
        at = (0.0, pub.BOGEY_HANDICAP[sex])
        axis.plot(at, np.array(wide) / pub.PER_AXIS_TWO_THIRDS, "o", color=colour)
        axis.plot(at, np.array(deep) / pub.PER_AXIS_TWO_THIRDS, "s", color=colour, mfc="white")
    axis.plot([], [], "o", color=GREY, label="rating boxes, across")
    axis.plot([], [], "s", color=GREY, mfc="white", label="along")
    axis.set_title("Solid shots of 130 yd, sd [yd]")
    axis.legend()


def _mishits(axis: Any, fine: np.ndarray, levels: list[Any]) -> None:
    axis.plot(fine, [100 * one.mishit_rate for one in levels], color=BLUE, label="mishits [% of iron shots]")
    wider = [10.0 * 3.0**one.short_power for one in levels]
    axis.plot(fine, wider, "--", color=RED, label="30-yd pitch's spread over a full wedge's [x 10]")
    axis.plot(
        fine, [-s.bias_long_pct for s in levels], ":", color=GREY, label="solid shots short of stock [%]"
    )
    axis.set_title("Fitted; nobody publishes them")
    axis.set_ylim(-1.0, 48.0)
    axis.legend(loc="upper left")


def _scores(axis: Any, benches: Callable[[float, str], Bench]) -> None:
    for sex, colour in (("man", BLUE), ("woman", RED)):
        length = COURSE_YD[sex]
        axis.plot(AT, [better_half(benches(h, sex), (length, length))[0] / 18 for h in AT], color=colour,
                  label=f"{sex}, {length:,.0f} yd, level")  # fmt: skip
        at = (0.0, pub.BOGEY_HANDICAP[sex])
        lines = [rating(h, sex, np.array([length]))[0] / 18 for h in at]
        axis.plot(at, lines, "o", color=colour, label="scratch and bogey rating")
    axis.set_title("Better half of rounds [strokes a hole]")
    axis.legend()


def _putts(axis: Any, fine: np.ndarray) -> None:
    from ...tables.putts import putt_table
    from ..putting import AMATEUR_STIMP_FT, AMATEURS, TOUR_DISTANCES, distances_of

    at = [-5.0, 5.0, 10.0, 18.0, 28.0, 36.0, 54.0]
    skill = [level(h).putting for h in at]
    found = [
        distances_of(putt_table(s.angle_sd_deg, s.distance_sd, stimp_ft=AMATEUR_STIMP_FT)) for s in skill
    ]
    rows = {LOWEST_HANDICAP: TOUR_DISTANCES}
    rows.update({float(h): row[:2] for h, row in AMATEURS.items()})
    for k, (name, colour) in enumerate((("holed half the time", BLUE), ("two putts on average", RED))):
        axis.plot(at, [f[k] for f in found], color=colour, label=f"{name}, level")
        axis.plot(list(rows), [r[k] for r in rows.values()], "o", color=colour, label="Broadie 2008, 2012")
    axis.set_title("Putting distances [ft]")
    axis.legend()


def _tour(strokes: Any, misses: Any, measured: Bench) -> None:
    at = TOUR_STROKES[:, 0]
    for k, lie in enumerate(TOUR_LIES[:-1]):
        ours, published = measured.strokes(lie, at), TOUR_STROKES[:, 1 + k]
        keep = np.isfinite(published)
        strokes.plot(at[keep], ours[keep], color=COLUMNS[lie], label=f"{lie}, level")
        strokes.plot(at, published, "o", ms=3.5, color=COLUMNS[lie])
        misses.plot(at[keep], (ours - published)[keep], color=COLUMNS[lie], label=lie)
    strokes.plot([], [], "o", ms=3.5, color=GREY, label="Broadie 2012, table 9")
    strokes.set_title("Tour: strokes to hole out")
    misses.set_title("Tour: level less published [strokes];\nsand beyond 300 yd does not count")
    misses.set_ylim(-0.5, 0.3)
    misses.axhline(0.0, color=GREY, lw=0.8)
    for axis in (strokes, misses):
        axis.set_xlabel("distance [yd]")
        axis.legend()
