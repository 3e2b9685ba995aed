"""No line is looked for over ground that nobody drew and the value map does not cover."""

import numpy as np
import pytest
from solved import demo_board, tee

from simulator import compare, load_hole, load_player
from simulator.conditions import Conditions, Wind
from simulator.strategy.tries import EDGE_YD, first_lines, part_families
from simulator.tables.nodes import SIDE_YD

HOME = (
    "par 4, 318; fairway 28 wide; road right out of bounds 26; three bunkers left at 215, 235 and 255; "
    "pond short left of the green; small green"
)
HOLE = "par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34; green 24 deep, pin 7 on"


def aimed(board):
    """Where every action of the first look from the tee comes down in still air, the usual miss with it [yd]; its aim."""
    place = tee(board)
    owners, actions = first_lines(place, board.allowed(place.lie), part_families(place))
    shots = [board.bag.shots.shots[row] for row in owners]
    carry = np.array([shot.carry_yd for shot in shots])
    bias = np.radians([shot.club.bias_right_deg for shot in shots])
    assert (actions[:, 0] >= 0.0).all()  # full shots: from a tee nothing else is in reach of these greens
    bearing = board.bearing_rad(place.x_yd, place.y_yd) + actions[:, 1]
    aside = carry * np.sin(bias)
    return (
        place.x_yd + carry * np.sin(bearing) + aside * np.cos(bearing),
        place.y_yd + carry * np.cos(bearing) - aside * np.sin(bearing), actions[:, 1],
    )  # fmt: skip


@pytest.mark.parametrize("name", ["withy-drain", "long-sluice"])
def test_lines_stay_on_the_map(name):
    board = demo_board(name, "barnaby")
    x, y, aim = aimed(board)
    grid = board.nodes.coarse
    right = grid.x0_yd + (grid.columns - 1) * grid.step_yd
    off = (x < grid.x0_yd + EDGE_YD) | (x > right - EDGE_YD) | (y < grid.y0_yd)
    assert not off[aim != 0.0].any()
    assert (aim == 0.0).sum() >= 5 and np.ptp(aim) > np.radians(30.0)  # straight lines, and wide ones still


def test_a_pond_with_rough_behind_it_is_not_carried_to_nowhere():
    """Thirty yards of pond, then rough for ever: a driver far right would clear it all, on paper."""
    answer = compare(load_hole(HOLE), load_player("barnaby"), ["driver", "3-wood"], sequences=2000, quick=True)
    for one in answer.alternatives:
        assert abs(one.aim_offset_yd) < SIDE_YD - EDGE_YD
    assert not answer.warnings


def test_a_wind_does_not_carry_the_balls_off_it() -> None:
    """Bunkers left, a road right, a wind off the right: aimed far left the driver was blown to where nobody drew
    anything, 94 left of the line, and was worth 0.69 strokes more on the map than in play."""
    answer = compare(
        load_hole(HOME), load_player("scratch, driver 262, draw"), ["driver", "5-iron"], sequences=2000, quick=True,
        conditions=Conditions(wind=Wind(15.0, 90.0)),
    )  # fmt: skip
    for one in answer.alternatives:
        off = one.aim_offset_yd + one.middle_right_yd.value
        assert abs(off) < SIDE_YD - EDGE_YD + 10.0  # it runs on as it came down
        assert one.map_score.value == pytest.approx(one.score.value, abs=0.15)
