"""No line is recommended over ground that nobody drew and the value map does not cover."""

from simulator import compare, load_hole, load_player
from simulator.tables.nodes import SIDE_YD

HOLE = "par 4, 372; fairway 28 wide; pond right 213 to 254, edge 14 right; out left 34; green 24 deep, pin 7 on"


def test_a_pond_with_rough_behind_it_is_not_carried_to_nowhere():
    """Thirty yards of pond, then rough for ever: a driver far right would clear it all, on paper."""
    answer = compare(load_hole(HOLE), load_player("barnaby"), ["driver", "3-wood"], sequences=2000)
    for one in answer.alternatives:
        assert abs(one.aim_offset_yd) < SIDE_YD - 20.0
    assert not answer.warnings
