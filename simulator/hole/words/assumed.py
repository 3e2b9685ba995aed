"""What is taken for granted about a hole in words, each figure once with its reason. All yards unless named.

None of it is measured on the hole: the file marks every use, and every answer says it. "Common practice" is
what courses usually look like, from memory; the rest are our own choices.
"""

from __future__ import annotations

GREEN_DEPTH, GREEN_WIDTH = 28.0, 24.0
"""An ellipse of 530 square yards, 4,750 square feet: a middling green (5,000 to 6,000 is often named for
modern courses, less for old ones; common practice)."""

GREEN_SIZES = {"small": (22.0, 19.0), "large": (35.0, 30.0)}
"""Depth and width of a green called small or large: ellipses of 2,950 and 7,420 square feet (common practice:
small ones are under 4,000, large ones over 7,000)."""

GREEN_SLOPE_PCT = 2.0
"""Fall of a green said to fall: holes are cut on 1 to 3 % (common practice)."""

GREEN_TURN_DEG = 30.0
"""Angle to the line of play of a green called angled: less is hardly seen from the fairway, at 45 it lies as
much across as along (assumed)."""

FALSE_FRONT, FALSE_FRONT_PCT = 5.0, 6.0
"""Depth [yd] (common practice, from memory) and fall of a false front: the steepest a green of a file may be;
on it a ball stops only on greens slower than 9 ft of Stimpmeter (6 ft/s off the ramp, 0.06 of gravity)."""

TIER_STEP = 1.0
"""Step between the two levels of a green said to have two: three feet (two to four are usual; common
practice, from memory)."""

FAIRWAY_WIDTH = 32.0
"""Common practice: 25 for championships to 40 for members."""

FAIRWAY_FROM, FAIRWAY_FROM_SHARE = 150.0, 0.4
"""Where it begins: 150 on, or 40 % of a short hole, so that a topped drive is in rough. It runs to the front
of the green, whose approach is mown (common practice)."""

STEP_YD = 5.0
"""How long the step is from one width of a fairway to another told "from 250 on": mown in a curve."""

APPROACH_YD = 20.0
"""Mown approach before the green of a par 3 (common practice)."""

DOGLEG_DEG, BEND_DEG, SLIGHT_DEG, SHARP_DEG = 40.0, 20.0, 10.0, 60.0
"""Turn of a dogleg, a bend, a slight and a sharp one of which no degrees are said."""

BEND_SHARE, BEND_TO_GREEN = 0.62, 250.0
"""Where a hole bends if nobody says: that share along it, where a drive ends and a middle iron is left; on a
long hole this far from the green, for there it bends for the second shot."""

EDGE_BEYOND_FAIRWAY = {
    "water": 5.0,
    "stream": 5.0,
    "trees": 12.0,
    "heavy_rough": 8.0,
    "rough": 0.0,
    "path": 6.0,
    "waste": 0.0,
    "runoff": 0.0,
}
"""From the edge of the fairway to an area beside it of which no edge is said: a strip of mown rough first."""

ACROSS = {
    "water": 30.0, "stream": 4.0, "trees": 30.0, "heavy_rough": 30.0, "rough": 20.0, "path": 2.5,
    "waste": 30.0, "runoff": 12.0,
}  # fmt: skip
"""How far an area reaches across the line: beyond 30 yards it is far off the play."""

ROW_ACROSS = {
    "hedge": 3.0, "row of trees": 9.0, "line of trees": 9.0,
    **dict.fromkeys(("tree line", "treeline", "tree lines", "treelines"), 10.0),
}  # fmt: skip
"""The same for single rows."""

SEA_ACROSS = 150.0
"""How far the sea reaches: no ball flies to the other side of it."""

RIVER_WIDTH = 20.0
RAVINE_WIDTH = 12.0
DITCH_WIDTH = 3.0

ALONG = {
    "water": 40.0, "stream": 4.0, "trees": 40.0, "heavy_rough": 40.0, "rough": 40.0, "path": 2.5,
    "waste": 40.0, "runoff": 12.0,
}  # fmt: skip
"""How far an area reaches along the line when only one end of it is said."""

CROSSING_REACH = 90.0
"""How far either side of the line an area that crosses it reaches: too far to go round."""

POND_REACH = 30.0
"""The same for a wood, and for a pond nobody called "across": it can be gone round."""

PRICKLY, LOST_IN_PRICKLY = frozenset(("gorse", "whins", "brambles", "bushes", "scrub")), 0.1
"""What hides a ball as no long grass does, and the share lost in it (assumed, as on the demo course)."""

ROUND_GREEN, NARROWEST_ROUND_GREEN = 30.0, 3.0
"""How far water goes on every side of a green that it goes all round; the least that may be said."""

FROM_TEE_YD = 60.0
"""Trees and rough "all along" begin here; a boundary begins behind the tee."""

GREEN_GAP = {
    "bunker": 2.0,
    "water": 8.0,
    "stream": 10.0,
    "trees": 12.0,
    "heavy_rough": 8.0,
    "rough": 3.0,
    "path": 8.0,
    "waste": 5.0,
    "runoff": 0.0,
}
"""From the edge of the green to what is beside it."""

PAST_GREEN = 5.0
"""What lies beside a green begins so far before it and goes so far past it."""

CORNER_SHARE = 0.33
"""Near edge of an area "short right" of the green, as a share of half the green's width."""

GREENSIDE_DEPTH, GREENSIDE_WIDTH = 12.0, 7.0
"""Along and across a bunker beside a green; turned round in front of it and behind (common practice)."""

BUNKER_DEPTH, BUNKER_WIDTH = 14.0, 8.0
"""Along and across a bunker beside a fairway (common practice)."""

CAMBER_PCT, CAMBER_REACH = 4.0, 40.0
"""Fall of a fairway said to slope to a side [%] (a ball still stands on it; assumed), and how far from the
line the ground goes on falling."""

SPLIT_GAP = 12.0
"""Ground between the halves of a split fairway, when nobody says how far they are apart."""

CORNER_BEFORE, CORNER_AFTER = 60.0, 40.0
"""What lies inside a corner begins so far before it and ends so far past it: not all along the hole."""

POT_SIZE = 4.0
CROSS_BUNKER_DEPTH = 7.0
SMALL, LARGE = 0.6, 1.5
"""Small and large ones against those sizes."""

BUNKER_EATS_YD = 2.0
"""How far a bunker "left" at a distance cuts into the mown edge."""

CROWN_YD = 9.0
"""Width of the crown of a single tree (common practice: 6 to 12 for grown parkland trees)."""

MARK_BEHIND_YD = 40.0
"""A mark "behind the green" of which no distance is said."""

PIN_SHARE = 0.2
"""A front pin is this share of the depth on, a back pin as far from the back; a left or right one stands half
way from the middle to the edge. On 28 yards that is 5 to 6 paces, more than the four a hole is cut from the
edge (common practice)."""

MOST_ACROSS_YD = 80.0
"""A number right beside "left" or "right" up to this is yards from the line; a larger one is along it."""
