"""What the columns and integer codes of the kernels' arrays mean; shared with the border, no golf in it."""

from __future__ import annotations

# --- what happens to a ball at rest on a surface -------------------------------------------------
FATE_PLAY = 0
FATE_GREEN = 1
FATE_PENALTY_WET = 2  # stops where it goes in, cannot be played
FATE_PENALTY_DRY = 3  # rolls on, may be played as it lies
FATE_OUT = 4

# --- what a player may do instead of playing from a lie ------------------------------------------
UNPLAYABLE_NEVER = 0  # never worth a thought, not considered
UNPLAYABLE_GENERAL = 1  # back on the line or sideways for one stroke
UNPLAYABLE_SAND = 2  # back on the line outside the sand for two strokes

# --- surface rows: Ground.rows[surface, column] --------------------------------------------------
SURFACE_FATE = 0
SURFACE_LIE = 1
SURFACE_TILT = 2  # scales of the bounce law
SURFACE_RESTITUTION = 3
SURFACE_FRICTION = 4
SURFACE_COLUMNS = 5

# --- feature rows: Game.feature_rows[feature + 1, column]; row 0 is ground nobody drew -----------
FEATURE_LOST = 0  # chance that a ball at rest here is not found
FEATURE_LATERAL = 1  # 1 where relief beside the crossing point is allowed
FEATURE_PLANE = 2  # green plane, 0 where it has none
FEATURE_COLUMNS = 3

# --- strike rows: Game.strikes[shot, lie, column] ------------------------------------------------
STRIKE_ALLOWED = 0
STRIKE_FRACTION = 1  # mean solid carry over the shot's tabled carry
STRIKE_SD = 2  # solid spread of that fraction, relative
STRIKE_LIE_SD = 3  # spread the lie adds, relative, a draw of its own
STRIKE_START_BIAS = 4  # rad, right positive
STRIKE_START_SD = 5  # rad
STRIKE_TILT_SD = 6  # rad, tilt of the spin axis
STRIKE_MISHIT_RATE = 7
STRIKE_MISHIT_KEEP = 8  # mean carry of a mishit over the solid mean
STRIKE_MISHIT_SD = 9  # spread of that, as a share of the solid mean
STRIKE_MISHIT_WIDE = 10  # direction spread of a mishit over the solid one
STRIKE_SPIN = 11  # landing spin over the clean strike's
STRIKE_CARRY = 12  # the carry that the flight tables have as 1, yd
STRIKE_SIDEWAYS = 13  # all-strike direction spread, rad: width of the hole-out window
STRIKE_LOW = 14  # 1 where the shot is held down
STRIKE_REACH = 15  # mean carry of a solid strike from the lie, yd
STRIKE_COLUMNS = 16

# --- flight columns: along, side (right positive) [yd], v_along, v_side, v_down [yd/s], spin [rad/s] --
FLIGHT_ALONG, FLIGHT_V_ALONG, FLIGHT_SPIN = 0, 2, 5
FLIGHT_COLUMNS = 6
FLIGHT_WIDE = 8  # columns of a node in the tables, two of them empty: three nodes are 24 numbers on end,
# which is what it takes for the compiler to sum several at once (descent.py)

# --- the lie of the land: Ground.relief[row, column, ...] -----------------------------------------
RELIEF_HEIGHT = 0  # yd
RELIEF_X, RELIEF_Y = 1, 2  # slope, yd/yd
RELIEF_UP = 3  # upward part of the unit normal
RELIEF_COLUMNS = 4

# --- green planes: Field.planes[plane, column] ---------------------------------------------------
PLANE_SLOPE = 0  # rise over run
PLANE_FALLS_X, PLANE_FALLS_Y = 1, 2  # unit vector down the fall line
PLANE_COLUMNS = 3

# --- crowns: Trees.crowns[crown, column] ---------------------------------------------------------
CROWN_BASE, CROWN_TOP, CROWN_HIT = 0, 1, 2  # yd above the ground; mean path to a hit, yd
CROWN_COLUMNS = 3

# --- numbers: Ground.numbers[column] -------------------------------------------------------------
PIN_X, PIN_Y = 0, 1
RASTER_X0, RASTER_Y0, RASTER_CELL = 2, 3, 4  # corner of the raster (not a cell's centre), yd
FRACTION_0, FRACTION_PER = 5, 6  # first node of an axis, and nodes in a unit of it
TILT_0, TILT_PER = 7, 8
HEIGHT_0, HEIGHT_STEP = 9, 10
WIND_BEARING = 11  # rad, the way the wind blows towards, clockwise from +y
GRAVITY = 12  # yd/s2
BALL_RADIUS = 13  # yd
BOUNCE_TILT = 14  # rad per (yd/s) per rad: tilt of the contact plane
BOUNCE_E0, BOUNCE_E1, BOUNCE_E2 = 15, 16, 17  # restitution polynomial in yd/s
BOUNCE_N_CAP, BOUNCE_E_FLOOR = 18, 19
BOUNCE_STOP = 20  # yd/s, upward speed below which a ball that grips skips on along the ground
ROLL_SLOPE = 21  # share of gravity's pull that a slope gives a rolling ball
PUTT_STEP = 22  # step of the putting table in sqrt(yd)
HOLE_HALF_WIDTH = 23  # yd
CAPTURE_PAST = 24  # yd, a ball that would stop farther past than this does not drop
HOLE_OUT_SCALE = 25  # fitted multiplier of the chance to hole out from off the green
DROP_BACK = 26  # yd behind the reference point where a dropped ball is taken to lie
TWO_CLUBS = 27  # yd
PENALTY_STROKES = 28
SAND_STROKES = 29  # unplayable in sand, dropped outside
LOCAL_RULE_STROKES = 30  # 0 where the local rule for lost balls is not in force
COARSE_X0, COARSE_Y0, COARSE_PER_YD = 31, 32, 33
FINE_X0, FINE_Y0, FINE_PER_YD = 34, 35, 36
GUESS_BASE, GUESS_PER_YD = 37, 38  # first guess of strokes to hole out
HEIGHTS = 39  # landing heights of the flight tables: one, or an odd number
WIND_RING = 40  # 1: axes of one speed and the angle off the start line [rad]; 0: along and across it [yd/s]
LIE_GREEN, LIE_FAIRWAY = 41, 42
SIDE = 43  # +1, or -1 to mirror all sideways luck
SURFACE_FAIRWAY = 44
BOUNCE_E_MOST = 45
SKIP_STEP = 46  # (yd/s)^2 between the columns of Ground.skip
BOUNCE_LEAST = 47  # yd/s, upward speed below which a ball is down whatever its spin
LIE_ROUGH = 48
LIE_GAIN = 49  # strokes the best lie is better than rough, at most
RASTER_PER_YD = 50  # cells in a yard
BOUNCE_TIP_MOST = 51  # rad
WIND_SPEED = 52  # yd/s at its reference height
WIND_GUST, WIND_SWING = 53, 54  # yd/s and rad either side, drawn once a sequence
WIND_U_0, WIND_U_PER = 55, 56  # first node of the flight table's first wind axis, and nodes in a unit of it
WIND_V_PER = 57  # the same of the second, see WIND_RING
SHADE_PER_YD = 58  # cells of Trees.shade in a yard
TREE_KEEP = 59  # most of its remaining carry that a ball keeps off a branch
TREE_SPEED = 60  # yd/s sideways speed of a ball dropping from a tree
WIND_TOWARDS_X, WIND_TOWARDS_Y = 61, 62  # unit vector of WIND_BEARING
WIND_V_0 = 63  # 0: wind from the right is read as its mirror image
BOUNCE_TIP_SPEED = 64  # yd/s, above which the contact plane tips no further
# first shot row and number of rows of each family of swings told by how far they go, shortest first, in the
# order of their codes: part swings, punches, putts
FAMILY_FIRST, FAMILY_COUNT, FAMILY_WIDE = 65, 66, 2
FAMILIES = 3
PUTT_SLOWS = FAMILY_FIRST + FAMILIES * FAMILY_WIDE  # yd/s2, on the level green putts are tabled on
NUMBERS = PUTT_SLOWS + 1

# --- an action: how a place is played ------------------------------------------------------------
# shot row (or the code of a family), aim [rad right of the straight line to the pin], and for a family the
# reach: intended carry minus distance to the pin [yd]
ACTION_COLUMNS = 3
PART_SHOT = -1.0
PUNCH_SHOT = -2.0  # a part swing that flies low
PUTT_SHOT = -3.0  # from off the green; its carry is how far it is meant to roll
NO_SHOT = -9.0
BY_PLAN = -8.0  # whatever the plan says

# --- luck slots: one independent number each, per stroke -----------------------------------------
SLOT_MIXTURE = 0
SLOT_SPEED = 1
SLOT_START = 2
SLOT_TILT = 3
SLOT_LIE = 4
SLOT_TREE_HIT = 5
SLOT_TREE_REST = 6
SLOT_GUST = 7
SLOT_SWING = 8
SLOT_PUTT = 9
SLOT_FOUND = 10
SLOT_HOLED = 11

SLOT_TREE_TURN = 12

STRIKE_LUCK = 12  # columns of a prepared strike: mixture, four normals, then uniforms about 0: cell x and y,
# gust, swing, tree hit, tree keep, tree turn
LUCK_CELL_X, LUCK_CELL_Y, LUCK_GUST, LUCK_SWING, LUCK_HIT, LUCK_KEEP, LUCK_TURN = 5, 6, 7, 8, 9, 10, 11

# --- what a played sequence leaves behind: out[sequence, column] ---------------------------------
OUT_SCORE = 0  # strokes from here
OUT_EXPECTED = 1  # the same with putts replaced by their expectation, and luck evened out where asked
OUT_FIRST_COST = 2  # strokes of the first shot with its penalty
OUT_FIRST_VALUE = 3  # value map after the first shot
OUT_X, OUT_Y = 4, 5  # where the first shot finished, before relief
OUT_SURFACE = 6
OUT_FEATURE = 7
OUT_LEAVES = 8  # yd to the pin after relief
OUT_PENALTY_FIRST = 9  # penalty strokes of the first shot
OUT_PENALTIES = 10  # of the whole sequence
OUT_TO_GREEN = 11  # strokes until the ball lay on the green or in the hole
OUT_PUTTS = 12
OUT_LAND_X, OUT_LAND_Y = 13, 14
OUT_BRANCH = 15  # 1 where the first shot hit a branch
OUT_COLUMNS = 16
