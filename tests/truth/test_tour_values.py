"""Strokes to hole out of a tour player by distance and lie, against the published table.

M. Broadie, "Assessing golfer performance on the PGA TOUR", Interfaces 42(2), 2012, table 9: averages over all
tour holes and pins. Here: one plain hole, a round green of 28 yd with the pin in its middle, not the bench on
which the tour's level is fitted to this table. The differences are printed.
"""

import numpy as np
import pytest
from small_games import bag_of, solved, straight_hole, tell
from truth_rows import outside

from simulator.hole.surfaces import Lie
from simulator.strategy.search import search
from simulator.strategy.tries import Place

# distance [yd]: fairway, rough, sand
TABLE_9 = {
    20: (2.40, 2.59, 2.53), 40: (2.60, 2.78, 2.82), 60: (2.70, 2.91, 3.15), 80: (2.75, 2.96, 3.24),
    100: (2.80, 3.02, 3.23), 120: (2.85, 3.08, 3.21), 140: (2.91, 3.15, 3.22), 160: (2.98, 3.23, 3.28),
    180: (3.08, 3.31, 3.40), 200: (3.19, 3.42, 3.55),
}  # fmt: skip
LIES = {"fairway": Lie.FAIRWAY, "rough": Lie.ROUGH, "sand": Lie.BUNKER}
TOLERANCE = {"fairway": 0.14, "rough": 0.2, "sand": 0.22}
"""Strokes, a little over the measured worst: fairway 0.08 (rms 0.04), rough 0.14 (0.08), sand 0.15 (0.08)."""


@pytest.fixture(scope="module")
def gaps():
    hole = straight_hole(
        320, green_yd=28.0,
        more="fairway = [{ from_yd = 20, to_yd = 300, left_yd = -15, right_yd = 15 }]\n"
        "bunker = [{ at_yd = 320, offset_yd = -21, depth_yd = 16, width_yd = 8 }]",
    )  # fmt: skip
    board = solved(hole, bag_of('name = "tour"\nhandicap = -5\n'))
    out = {}
    tell("\nengine (minus table 9)\n  yd  " + "".join(f"{name:>16s}" for name in LIES))
    for distance, published in TABLE_9.items():
        cells = []
        for (name, lie), known in zip(LIES.items(), published, strict=True):
            place = Place(board, 0.0, 320.0 - distance, int(lie), 2)
            value = search(place, 2, board.allowed(lie), keep_within=0.2, keep_most=3)[0].score
            out[name, distance] = value - known
            table = "M. Broadie, Interfaces 42(2), 2012, table 9"
            outside(table, f"strokes of a tour player from {name}, {distance} yd, one plain hole", value, known, 0.15)
            cells.append(f"{value:9.2f} ({value - known:+.2f})")
        tell(f"{distance:5d} " + "".join(cells))
    return out


@pytest.mark.parametrize("lie", LIES)
def test_table_9(gaps, lie):
    mine = np.array([gaps[lie, distance] for distance in TABLE_9])
    tell(
        f"{lie}: mean {mine.mean():+.2f}, rms {np.sqrt((mine**2).mean()):.2f}, worst {np.abs(mine).max():.2f}"
    )
    assert np.abs(mine).max() < TOLERANCE[lie]


def test_fairway_is_better_than_rough_and_rough_than_sand(gaps):
    # On the whole: mean cost of rough +0.16 to +0.25 and of sand +0.13 to +0.49 in the table.
    values = {key: gap + TABLE_9[key[1]][list(LIES).index(key[0])] for key, gap in gaps.items()}
    rough = np.array([values["rough", d] - values["fairway", d] for d in TABLE_9])
    sand = np.array([values["sand", d] - values["fairway", d] for d in TABLE_9])
    tell(f"rough {rough.mean():+.2f}, sand {sand.mean():+.2f} over fairway")
    assert 0.1 < rough.mean() < 0.35 and rough.min() > 0.05
    assert 0.2 < sand.mean() < 0.5 and sand.min() > 0.05
