"""The words of the trade: what starts a feature, what says nothing, what a misspelt word may have meant."""

from __future__ import annotations

import difflib

from simulator.hole.words.lex import listed
from simulator.wording import by_word

SPECIES = listed(
    "oak pine poplar willow birch beech lime ash fir cedar elm maple spruce larch chestnut sycamore "
    "eucalyptus palm hawthorn thorn alder hornbeam cypress redwood walnut cherry plane holly yew conifer"
)
_PLURALS = {
    "birch": "birches", "beech": "beeches", "ash": "ashes", "larch": "larches", "cypress": "cypresses",
    "cherry": "cherries", "holly": "hollies", "eucalyptus": "eucalypts",
}  # fmt: skip

_NOUNS: dict[str, str] = {
    "fairway": "fairway, fairways, landing area, landing zone, drive zone, driving zone",
    "green": "green, putting surface",
    "pin": "pin, pins, flag, flags, flagstick, hole location, hole cut",
    "tee": "tee, tees, tee box, tee boxes, teeing area",
    "path": "path, cart path, buggy path, track",
    "rough": "rough, semi rough, light rough, first cut",
    "heavy_rough": (
        "heavy rough, deep rough, thick rough, long rough, tall rough, long grass, tall grass, heather, "
        "gorse, whins, reeds, fescue, bracken, brambles, scrub, bushes, native area"
    ),
    "water": (
        "pond, ponds, lake, lakes, water, water hazard, hazard, lateral hazard, lateral water, "
        "lateral water hazard, reservoir, pool, lagoon, moat, loch, "
        "marsh, swamp, sea, ocean, penalty area, red stakes, yellow stakes"
    ),
    "stream": (
        "stream, burn, brook, creek, beck, ditch, drain, dyke, dike, river, canal, ravine, gully, gulley, "
        "chasm, gorge, canyon, gulch, barranca, streams, burns, brooks, creeks, ditches, drains"
    ),
    "out": (
        "out, ob, oob, out of bounds, boundary, fence, wall, road, lane, railway, property line, white "
        "stakes, garden, gardens, garden fence, houses, field"
    ),
    "bunker": (
        "bunker, bunkers, trap, traps, sand, sand trap, sand traps, fairway bunker, fairway bunkers, cross "
        "bunker, cross bunkers, pot bunker, pot bunkers, greenside bunker, greenside bunkers"
    ),
    "trees": (
        "trees, wood, woods, forest, copse, spinney, plantation, grove, tree line, treeline, tree lines, "
        "treelines, row of trees, line of trees, hedge"
    ),
    "tree": "tree, lone tree, single tree",
    "waste": "waste, waste area, waste areas, waste bunker, waste bunkers, waste ground, sandy waste",
    "runoff": (
        "run off, run offs, runoff, runoffs, run off area, run off areas, runoff area, runoff areas, "
        "collection area, collection areas, chipping area, chipping areas"
    ),
    "fringe": "fringe, collar, collar of fringe",
    "mark": "mark, marks, aim mark, aiming mark, aiming point, aim point",
    "par": "par",
    "stroke_index": "stroke index, si, index",
    "bearing": "bearing, bears, heading",
    "bend": "dogleg, doglegs, dog leg, bend, bends, turn, turns, kink, kinks",
    "length": "length",
    "number": "hole",
    "climb": "uphill, downhill, climbs, drops",
    "units": (
        "metres, meters, yards, all metres, all meters, all yards, all in metres, all in meters, all in "
        "yards, in metres, in meters, in yards"
    ),
    "straight": "straight, dead straight",
    "e5": "local rule e5, rule e5",
}

HEADS: dict[tuple[str, ...], str] = {
    **{listed(phrase): kind for kind, phrases in _NOUNS.items() for phrase in phrases.split(",")},
    **{(name,): "tree" for name in SPECIES},
    **{(_PLURALS.get(name, f"{name}s"),): "trees" for name in SPECIES},
    **{
        (group, "of", _PLURALS.get(name, f"{name}s")): "trees"
        for group in ("line", "row", "belt", "stand", "clump", "group")
        for name in (*SPECIES, "tree")
    },
}
"""Words that start a feature, and its kind."""

def singular(noun: str) -> str:
    """The noun of one of several waters ("creeks", "ditches"): each is drawn, and named, by itself."""
    kind = HEADS.get(listed(noun))
    if kind in ("water", "stream") or noun in ("tree lines", "treelines"):
        ones = (noun.removesuffix(end) for end in ("s", "es") if noun.endswith(end))
        return next((one for one in ones if HEADS.get(listed(one)) == kind), noun)
    return noun


LONGEST_HEAD = max(map(len, HEADS))

HEADER = frozenset(listed("par stroke_index bearing bend length number climb units straight e5 hole"))
"""Kinds that are about the hole as a whole."""

PLACES = frozenset({"green", "fairway", "tee", "pin", "line"})
"""Kinds that other features are placed by ("left of the green")."""

BEFORE_A_PLACE = frozenset(
    listed(
        "of above below over behind beyond before front by at beside past guarding guards near to until "
        "from along round around encircling off between into in across cross crosses crossing"
    )
)
"""A green, fairway or tee behind one of these is where something else is, no feature of its own."""

FILLERS = frozenset(
    listed(
        "the a an is are there it its with which that about approx approximately roughly around some running "
        "runs lies sits stands starting has have only just very then also than i my your you we plays "
        "playing again twice first second third fourth need needs today directly immediately"
    )
)
"""Words that say nothing."""

_READ_AS: dict[str, str] = {
    "": (
        "coloured colored staked stakes marked lone single solitary cutting cuts wooded tucked cut forced "
        "internal"
    ),
    "above": "higher raised elevated upper",
    "across": "crosses crossing cross",
    "ahead": "forward forwards",
    "below": "lower sunken",
    "dense": "thick",
    "diagonal": "diagonally slanting slantwise",
    "falls": "slopes tilts falling sloping slope fall tilted drains",
    "from": "starts begins start begin",
    "gray": "grey",
    "guarding": "guards guard protecting protects",
    "junior": "juniors",
    "ladies": "ladie lady",
    "large": "big huge",
    "left": "l lhs lefthand",
    "level": "flat",
    "medal": "medals",
    "member": "members",
    "men": "mens mans",
    "middle": "center centre central",
    "narrows": "tapers taper tapering narrowed",
    "onwards": "onward",
    "open": "thin",
    "pinches": "pinched pinch tightens tightening",
    "right": "r rhs righthand",
    "senior": "seniors",
    "sharp": "sharply",
    "slight": "gentle slightly gently",
    "small": "little tiny",
    "tall": "high",
    "tier": "tiers tiered levels",
    "to": "towards toward ends end finishes",
    "until": "till til",
    "women": "womens woman",
}

ALIASES: dict[str, str] = {word: meant for meant, words in _READ_AS.items() for word in listed(words)}
"""Words read as another; the empty ones say nothing."""

OTHER_WORDS = listed(
    "left right both either each sides side from to until between at carry clear reach across middle "
    "wide deep long tall high crown edge near far inside outside gap line short behind beyond beside "
    "greenside front back on ahead above below up down red yellow white blue black gold playable dry "
    "dense medium open falls level slight sharp small large metres yards degrees percent called named "
    "falsefront angled tier half onwards length width depth height branches forward uphill downhill"
)

_SAY_INSTEAD: dict[str, str] = {
    "corner": 'say how far on it is: "at 235"',
    "split": (
        'say each half: "split fairway: left 20 wide, right 30 wide, 12 apart", '
        'or what crosses it: "stream across at 300"'
    ),
    "tight": 'say how wide or how far: "fairway 24 wide", "trees left 22", "out left 25"',
    "narrow generous": 'say how wide: "fairway 24 wide", "green 18 wide"',
    "shallow": 'say how deep: "green 20 deep"',
    "wide": 'say how wide: "28 wide"',
    "lined": 'say where they are: "trees both sides 25"',
    "peninsula": 'say where the water is: "water left, right and behind the green"',
    "redan biarritz": 'say how it falls and what guards it: "green falls right to left 2%"',
    "marker post": 'name the mark: "mark post 12 right at 240"',
    "scattered": 'say how many, and where: "bunkers left at 200, 220 and 250"',
    "overhanging overhangs": 'say where the tree stands and how wide it is: "oak 12 right at 300, crown 14"',
    "tier tiers": 'say which part is up: "two tier green, back 3 ft up"',
    "elevated raised perched plateau": 'say by how much: "green 5 up", "tee 10 above the fairway"',
    "sunken": 'say by how much: "green 3 down"',
    "crowned domed upturned turtleback saucer bowl spine": (
        'a green is level or falls one way: "green falls back to front 2%"; a file can have "green_part"'
    ),
    "away": 'say how it falls: "green falls to the front 3%", "green falls front to back 2%"',
    "false": (
        'say "false front" of the green, or how all of it falls: "green falls to the front 3%"'
    ),
    "fast slow quick firm soft stimp stimpmeter": (
        "that is said with the question: --stimp 11, --firmness firm"
    ),
    "cluster nest string clump": 'say how many, and where: "three bunkers right at 240"',
    "flank flanks flanked flanking": 'say "bunkers both sides of the green"',
    "surrounded surround surrounds ringed": (
        'say on which sides: "bunkers front left, right and behind the green"'
    ),
    "jail dead trouble": 'say what lies there: "trees left 25", "out left 34"',
    "no nothing plenty room bail miss don't": "what is not drawn is rough: leave it out",
    "th st nd rd next neighbouring": (
        'another hole is rough, unless it is out of bounds: "rough right 40", "out right 40"'
    ),
    "hard steep steeply severe severely": 'say how much: "green falls back to front 4%"',
    "shot": 'leave it out, or say what lies higher: "fairway 12 below the tee", "green 5 above the fairway"',
    "drop dropping": (
        'from where to where? "fairway 12 below the tee", "green 30 ft below the tee"; of a dropping '
        "zone nothing is known here: leave it out"
    ),
    "double shared": (
        'say each bend: "dogleg right at 220, left at 330"; a green of two holes is drawn as its part for '
        'this one: "green 30 deep, 26 wide"'
    ),
    "everything kicks kick feeds feed gathers cambered camber hog hogback hogsback": (
        'a fairway falls one way in words, "fairway falls left to right 4%"; a file can have "heights_yd"'
    ),
    "through": 'say on which side of the line, beyond the corner: "bunker left at 270"',
    "valley dip hill hillside crest rise ridge slopes": (
        'say the heights: "fairway 12 below the tee", "green 5 above the fairway"'
    ),
    "stone": 'a wall that is the boundary is "wall right 40"; one that is only in the way: leave it out',
    "beach cliff quarry mound mounds hollow hollows swale swales": (
        'say how it plays: "bunker left at 230", "heavy rough left 20", "red penalty area left 200 to 260"'
    ),
    "kidney boomerang horseshoe heart pear shaped": (
        'leave its shape out and say how large it is: "green 30 deep, 22 wide"'
    ),
    "inch inches": 'say "rough" or "heavy rough"',
    "longer shorter": 'say the height: "uphill 10"',
    "driving practice": 'say what it is: "out right 40", "rough right 40"',
    "drivable driveable reachable layup lay driver": "the answer finds that out, leave it out",
    "wind windy breeze": 'that is said with the question: --wind "12 mph against"',
    "repair": "relief there is free: leave it out",
    "laser": 'say what was read: "front 335, back 362, flag 350", "pond right 213 to 254"',
    "apart": 'say where each is: "bunkers left at 230, 240 and 250"',
    "blind": "nothing depends on it, leave it out",
    "angled turned": 'say which way, front to back: "green angled right to left"',
    "round around": (
        'say where it lies: "trees inside the corner, 180 to 230", "bunkers both sides of the green"'
    ),
    "over": 'say where it lies: "pond across 100 to 140", "carry 190 to clear the pond"',
}
INSTEAD = by_word(_SAY_INSTEAD)
"""Words golfers use that settle nothing to be drawn, and what to say for them."""

_TO_WHAT = 'to what? For example "fairway 30 wide, narrows to 20 at 260"'

_ALONE = {
    "from": 'say from what: "creek 100 from the green", "bunker 150 out left" (from the middle of the green)',
    "out": 'say "at 150 out" (to the middle of the green), or "out left 34" for a boundary',
    "in": 'say "from 200 to the green", or how far from the green, "100 out"',
    "aim": 'name the mark: "mark clubhouse 10 right at 400"',
    "inside": 'of which bend? Say left or right, and where: "trees right 380 to 440"',
    "outside": 'of which bend? Say left or right, and where: "trees right 380 to 440"',
    "deep": 'a number goes before it ("24 deep"); bunkers play alike, leave it out of one',
    "tall": 'a number goes before it: "15 tall"',
    "above": 'by how much? For example "6 above the fairway"',
    "below": 'by how much? For example "6 below the tee"',
    "tier": 'say which part is up: "two tier green, back 3 ft up"',
    "narrows": _TO_WHAT,
    "pinches": _TO_WHAT,
}
"""Words of the grammar that want another beside them, and how they have it."""

_ALL_WORDS = sorted({word for head in HEADS for word in head} | set(OTHER_WORDS))


def near(word: str) -> str:
    """What to say instead, or the word of the grammar most like a misspelt one: "; perhaps pond"."""
    if word in INSTEAD:
        return f"; {INSTEAD[word]}"
    meant = ALIASES.get(word, word)
    if meant in _ALONE:
        return f"; {_ALONE[meant]}"
    found = difflib.get_close_matches(word[:30], _ALL_WORDS, n=5, cutoff=0.7)
    if not found:
        return ""
    best = next((one for one in found if one[0] == word[0]), found[0])  # a slip is seldom in the first letter
    return f"; perhaps {best!r}" if word not in found else " here"
