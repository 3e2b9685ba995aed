"""Words that are not understood, or settle nothing: one clear line that points at the word; never a traceback."""

from __future__ import annotations

import random
import re
import tomllib

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from simulator.errors import FileError, SimulatorError, UsageError
from simulator.hole import Hole, load_hole
from simulator.hole.words import hole_from_words
from simulator.hole.words.lex import LONGEST_TEXT
from simulator.hole.words.phrases import PATTERNS
from simulator.hole.words.vocabulary import ALIASES, HEADS, OTHER_WORDS

REFUSED: dict[str, tuple[str, str]] = {
    "par 4, 380; split fairway": ("'split' (letter 13)", '"split fairway: left 20 wide, right 30 wide, 12 apart"'),
    "par 4, 380; split fairway, left 20 wide, right 30 wide; pond 200 to 240":
        ("'pond' (letter 57)", '"pond between the fairways"'),  # it lay across both
    "par 3, 160; peninsula green": ("'peninsula' (letter 13)", "water left, right and behind the green"),
    "par 4, 372; pond left into the fairway, 200 to 240": ("'into' (letter 23)", '"5 into the fairway"'),
    "par 4, 372; fairway slopes back to front": ("'slopes' (letter 21)", '"downhill 12"'),
    "par 4, 372; bunker left at 230, 10 apart": ("'10' (letter 33)", "three bunkers left at 230, 20 apart"),
    "par 4, 372; fairway 30 wide, 10 apart": ("'10' (letter 30)", "halves of a split fairway"),
    "par 4, 372; bunker through the fairway at 270": ("'through' (letter 20)", "beyond the corner"),
    "par 4, 372; over a ridge at 150": ("'ridge' (letter 20)", "say the heights"),
    "par 4, 372; clubhouse out of bounds right": ("'out' (letter 23)", "how far right"),
    "par 4, 380; left fairway 20 wide": ("'left' (letter 13)", '"left fairway 20 wide, edge 8; right fairway 30 wide, edge 8"'),
    "par 4, 400; creek at 290, 20 right": ("'creek' (letter 13)", "from where to where"),
    "par 4, 400; stakes left 30": ("'stakes' (letter 13)", "of which colour"),  # it was a bend of 30 degrees
    "par 4, 340; carry 150 over rough": ("'rough' (letter 28)", 'Say "fairway from 150"'),
    "par 4, 400; bunker 150 from the green": ("'bunker' (letter 13)", "on which side?"),
    "par 4, 380; ditch diagonally across": ("diagonally", "where it meets each edge of the fairway"),
    "par 4, 380; pond diagonal from 190 left to 230 right": ("diagonal", "only a stream crosses diagonally"),
    "par 4, 380; creek from 190 left to 230 left": ("from", "twice the same side"),
    "a par 4 of 372 yards with a pond": ("'pond' (letter 29)", "where along the line"),
    "par 4, 372; over a pond": ("'over' (letter 13)", "where along the line"),
    "par 4, 372; three tier green": ("'three' (letter 13)", "words know two levels"),
    "par 4, 372; pond in front of the green, 100 to 140": ("'pond' (letter 13)", "leave one out (yards count"),
    "par 4, 372; trees 25 off the line": ("'trees' (letter 13)", "on which side?"),
    "par 3, 165; trees all round the green": ("'trees' (letter 13)", "on which side of the green?"),
    "par 3, 165; bunkers all around the green": ("'bunkers' (letter 13)", "bunkers front left, right and behind"),
    "par 3, 165; green surrounded by bunkers": ("'surrounded' (letter 19)", "say on which sides"),
    "par 4, 380; three bunkers right 210 and 230": ("'three' (letter 13)", "bunkers at 2 places"),
    "par 4, 380; bunkers left at 150 and 130 out": ("'at' (letter 26)", "placed along the line already"),
    "par 4, 380; bunker 150 from the pin left": ("'from' (letter 24)", '"bunker 150 out left"'),
    "par 4, 380; bunker left short of 230": ("'short' (letter 25)", '"190 to 230"'),
    "par 4, 380; ob right 30 to 250": ("'30' (letter 22)", 'Say "ob right 30, to 250", or "ob right 34, from 30'),
    "par 4, 380; out left 30 to 200, then 40": ("'30' (letter 22)", 'Say "out left 30, to 200"'),  # it was 40 left
    "par 4, 380; bunkers left at 230; right at 260": ("'right' (letter 34)", '"dogleg" for a bend'),  # it was one
    "par 4, 380; bunkers left at 230 and right": ("'right' (letter 37)", "bunkers both sides at 230"),  # by the green
    "par 4, 380; cluster of bunkers right at 240": ("'cluster' (letter 13)", "three bunkers right at 240"),
    "par 4, 380; water left from 200 in": ("'in' (letter 33)", '"from 200 to the green"'),
    "par 4, 380; trees left 30 out": ("'left' (letter 19)", 'Say "30 from the green", or "left 30" for the line'),
    "par 4, 380; bunkers right at 210 230": ("'230' (letter 34)", "a comma goes before a second place"),
    "par 4, 380; green flanked by bunkers": ("'flanked' (letter 19)", "bunkers both sides of the green"),
    "par 4, 380; out right 40; left 30": ("'left' (letter 27)", '"dogleg left 30 at 230"'),
    "par 4, 380; fairway 35 wide to 250, then 22 from 270": ("'270' (letter 50)", "ends at 250"),
    "par 4, 380; fairway 35 wide, narrows to 22": ("'narrows' (letter 30)", "narrows to 20 at 260"),
    "par 3, 165; pond 2 wide all round the green": ("'pond' (letter 13)", "allowed: 3"),
    "par 4, 372; fairway 30 wide; fairway 20 wide": ("'fairway' (letter 13)", "say where each is (28 wide at 230)"),
    "par 4, 372; fairway 35 to 250, 22 to 340": ("'22' (letter 32)", 'one that changes: "fairway 35 wide to 250, then 22"'),
    "par 4, 372; 30 ft drop from the tee": ("'drop' (letter 19)", "from where to where?"),
    "par 4, 372; second shot uphill 15 ft": ("'shot' (letter 20)", '"green 5 above the fairway"'),
    "par 4, 372, stroke index 7, 340": ("'340' (letter 29)", 'another tee has its colour: "red tee 340"'),
    "par 4, 400; bunker left 20 carry 240": ("'20' (letter 25)", 'Say "edge 20, carry 240"'),
    "par 4, 400; bunker left 260, carry 250": ("'bunker' (letter 13)", "ends before it begins"),
    "par 4, 372; no trouble left": ("'no' (letter 13)", "what is not drawn is rough"),
    "par 4, 372; right is jail": ("'jail' (letter 22)", "say what lies there"),
    "par 4, 372; 10th hole to the left": ("'th' (letter 15)", "another hole is rough, unless it is out of bounds"),
    "par 4, 372; out long": ("'long' (letter 17)", "15 behind the green"),
    "par 4, 372; fairway narrows at 250": ("'narrows' (letter 21)", "narrows to 20 at 260"),
    "par 4, 372; tee 30 back": ("'tee' (letter 13)", '"white tee 20 back"'),
    "par 4, 372; out right of the green": ("'right' (letter 17)", '"out 15 right of the green"'),
    "par 4, 372; kidney shaped green": ("'kidney' (letter 13)", "30 deep, 22 wide"),
    "par 4, 372; beach left 40": ("'beach' (letter 13)", "say how it plays"),
    "par 4, 372; tight fairway": ("'tight' (letter 13)", "say how wide"),
    "par 4, 372; wide fairway": ("'wide' (letter 13)", "say how wide"),
    "par 4, 372; bunker at the corner": ("'corner' (letter 27)", "at 235"),
    "par 4, 372; elevated green": ("'elevated' (letter 13)", "green 5 up"),
    "par 4, 372; raised tee": ("'raised' (letter 13)", "tee 10 above the fairway"),
    "par 4, 372; sunken green": ("'sunken' (letter 13)", "green 3 down"),
    "par 4, 372; narrow green": ("'narrow' (letter 13)", "green 18 wide"),
    "par 4, 372; shallow green": ("'shallow' (letter 13)", "green 20 deep"),
    "par 4, 372; domed green": ("'domed' (letter 13)", "level or falls one way"),
    "par 4, 372; fast green": ("'fast' (letter 13)", "--stimp 11"),
    "par 4, 372; double dogleg": ("'double' (letter 13)", "say each bend"),
    "par 4, 380; fairway bunker left": ("'fairway' (letter 13)", "how far along the line"),  # was by the green
    "par 4, 395, slight dogleg left; bunker on the inside of the corner":
        ("'corner' (letter 61)", 'Say "dogleg left at 235"'),  # it was drawn left of the green
    "par 4, 372; angled green": ("'angled' (letter 13)", "right to left"),
    "par 4, 372; stimp 11": ("'stimp' (letter 13)", "--stimp 11"),
    "par 4, 372; double green": ("'double' (letter 13)", '"green 30 deep, 26 wide"'),  # it told of bends alone
    "par 4, 372; green shared with the 9th": ("'shared' (letter 19)", '"green 30 deep, 26 wide"'),
    "par 4, 372; hogback fairway": ("'hogback' (letter 13)", "falls one way in words"),
    "par 4, 372; valley at 250": ("'valley' (letter 13)", "say the heights"),
    "par 4, 372; horseshoe green": ("'horseshoe' (letter 13)", "30 deep, 22 wide"),
    "par 4, 372; stone wall across at 120": ("'stone' (letter 13)", "leave it out"),  # perhaps 'stroke', it said
    "par 4, 372; plays longer": ("'longer' (letter 19)", "uphill 10"),
    "par 4, 372; driving range right": ("'driving' (letter 13)", "out right 40"),
    "par 4, 372; back to front green": ("'back' (letter 13)", "green falls back to front 2%"),
    "par 4, 372; forced carry 180": ("'carry' (letter 20)", "say of what"),
    "par 4, 372; deep green": ("'deep' (letter 13)", "24 deep"),
    "par 4, 372; green above the fairway": ("'above' (letter 19)", "by how much"),
    "par 4, 372; fairway narrows to 40 at 260": ("'narrows' (letter 21)", "from how wide?"),
    "par 4, 372; fairway pinches at 260": ("'pinches' (letter 21)", "narrows to 20 at 260"),
    "par 4, 372; downhill": ("'downhill' (letter 13)", 'For example "downhill 8"'),
    "par 4, 372; green small, 30 by 30": ("'small' (letter 19)", "not understood of the green"),
    # words: the word pointed at, part of what is said of it
    "par 4, 372; pand right 213 to 254": ("'pand' (letter 13)", "perhaps 'pond'"),
    "par 4, 372; bunkr left at 230": ("'bunkr' (letter 13)", "perhaps 'bunker'"),
    "par 4, 372; pond rihgt 213 to 254": ("'rihgt' (letter 18)", "perhaps 'right'"),
    "par 4, 372; gren 24 deep": ("'gren' (letter 13)", "perhaps 'green'"),
    "par 4, 372; pond right 213 to 254, edge 14 furlongs": ("'furlongs' (letter 44)", "not understood"),
    "par 4; fairway 28 wide": ("'4' (letter 5)", "how long is the hole"),
    "par 9, 372": ("'9' (letter 5)", "allowed: 3 to 6"),
    "par, 372": ("'par' (letter 1)", "allowed: par 3"),
    "372 yards, fairway 28 wide": ("no par", "say for example"),
    "par 4, 372; par 5": ("'5' (letter 17)", "second par"),
    "par 4, 372, 380": ("'380' (letter 13)", "second length"),
    "par 4, 12": ("'12' (letter 8)", "too short"),
    "par 4, 99999": ("'99999' (letter 8)", "too large"),
    "par 4, 372; pond right": ("'pond' (letter 13)", "where along the line"),
    "par 4, 372; pond right 254 to 213": ("'213' (letter 31)", "the first number has to be the smaller"),
    "par 4, 372; trees 180 to 260": ("'trees' (letter 13)", "on which side"),
    "par 4, 372; bunker at 230": ("'bunker' (letter 13)", "on which side"),
    "par 4, 372; bunker": ("'bunker' (letter 13)", "where?"),
    "par 4, 372; cross bunker": ("'cross' (letter 13)", "where along the line"),
    "par 4, 372; out left": ("'out' (letter 13)", "how far left"),
    "par 4, 372; out right of the fairway 20": ("'20' (letter 38)", '"20 right of the fairway"'),
    "par 4, 372; fairway 14 left, 18 right; trees both sides 10 from the fairway": (
        "'10' (letter 57)", "say each side by itself"),
    "par 4, 372; out 34": ("'out' (letter 13)", "on which side"),
    "par 4, 372; road behind the green": ("'behind' (letter 18)", "how far"),
    "par 4, 372; pond left right 200 to 240": ("'right' (letter 23)", "on two sides"),
    "par 4, 372; pond right 200 to 240, edge 14, edge 20": ("'edge' (letter 45)", "already"),
    "par 4, 372; pond right 200 to 240, 15 tall": ("'15' (letter 36)", "not understood of the pond"),
    "par 4, 372; fairway 28 wide, 30 wide": ("'fairway' (letter 13)", "two widths"),
    "par 4, 372; fairway 300 wide": ("'300' (letter 21)", "allowed"),
    "par 4, 372; fairway 200 to 150": ("'fairway' (letter 13)", "too short"),
    "par 4, 372; green 24 deep; pin 30 on": ("'pin' (letter 28)", "off a green 24 yards deep"),
    "par 4, 372; green 24 deep, front 360, back 380": ("'green' (letter 13)", "leave one out"),
    "par 4, 372; green falls 9% to the front": ("'9' (letter 25)", "allowed: 0 to 6"),
    "par 4, 372; stream across at 230, edge 14": ("'stream' (letter 13)", "which of the two"),
    "par 4, 372; pond right 200 to 240, at 230": ("'at' (letter 36)", "placed along the line already"),
    "par 4, 372; bunkers all along the left": ("'bunkers' (letter 13)", "where each is"),
    "par 4, 372; bunker left 20 to 30": ("'bunker' (letter 13)", "how far along the line"),
    "par 4, 372; bunker short right, behind the green": ("'bunker' (letter 13)", "two places"),
    "par 4, 372; oak right all along": ("'oak' (letter 13)", "in one place"),
    "par 4, 372; oak right 230, far edge 20": ("'oak' (letter 13)", "in one place"),
    "par 4, 372; pond right, across at 230": ("'pond' (letter 13)", "which of the two"),
    "par 4, 372; road across at 230": ("'road' (letter 13)", "across the line"),
    'par 4, 372; "A"; "B"': ("(letter 18)", "second name"),
    "par 4, 372; red tee 40 ahead, 5 below": ("'5' (letter 31)", "heights count from"),
    "par 4, 372; pin back left, 3 right": ("'3' (letter 28)", "other side"),
    "par 4, 372; green 24": ("'24' (letter 19)", "deep or wide"),
    "par 4, 372; two trees left at 200": ("'two' (letter 13)", "each by itself"),
    "par 4, 372; green falls": ("'falls' (letter 19)", "which way"),
    "par 4, 372; green 6 up; green 8 up": ("'8' (letter 31)", "second height"),
    "par 4, 372; uphill": ("'uphill' (letter 13)", "by how much"),
    "par 4, 372; pond 5 off the green": ("'5' (letter 18)", '(5 off the green) which way? Say "5 right of the green"'),
    "par 4, 372; pond right, 5 off": ("'5' (letter 25)", "which way"),
    "par 4, 372; dogleg at 230": ("'dogleg' (letter 13)", "which way"),
    "par 4, 372; dogleg left at 400": ("'400' (letter 28)", "not between tee and green"),
    "par 4, 372; white tee; white tee 40 ahead": ("'tee' (letter 30)", "second white"),
    "par 4, 372; red tee 360 ahead": ("'360' (letter 21)", "too near the green"),
    "par 4, 372; bunker left at -30": ("'-30' (letter 28)", "minus"),
    "par 4, 372; mark": ("'mark' (letter 13)", "needs a name"),
    "par 4, 372; mark tower 12 right": ("'tower' (letter 18)", "where along the line"),
    "par 4, 372; stroke index 19": ("'19' (letter 26)", "allowed: 1 to 18"),
    "par 4, 372; stroke index": ("'stroke' (letter 13)", "without a number"),
    "par 4, 372; pond right 213 to 254, gap 30 to line at 100": ("'gap' (letter 36)", "fits no triangle"),
    "par 4, 372, left 30 at 200; pond right 213 to 254, gap 14 to line at 213": ("'gap' (letter 52)", "beyond the bend"),
    "par 4, 372; pond 213 to 254, gap 14 to line at 213": ("'gap' (letter 30)", "left or right"),
    "par 4, 372; blue pond right 200 to 240": ("'blue' (letter 13)", "allowed: red, yellow"),
    "par 4, 372; pond called": ("'called' (letter 18)", "A name goes behind it"),
    "edge 14 right; par 4, 372": ("'edge' (letter 1)", "no feature"),
    "par 4, 372; % 4": ("'%' (letter 13)", "behind no number"),
}  # fmt: skip


@pytest.mark.parametrize("words", REFUSED)
def test_points_at_the_word(words: str) -> None:
    with pytest.raises(UsageError) as raised:
        hole_from_words(words)
    line = str(raised.value)
    assert line.startswith("hole in words: ") and "\n" not in line and len(line) < 240
    for part in REFUSED[words]:
        assert part in line, line
    shown, _, letter = REFUSED[words][0].partition(" (letter ")
    if letter:
        start = int(letter.rstrip(")")) - 1
        assert words[start:].startswith(shown.strip("'"))


@pytest.mark.parametrize(("words", "part"), [
    ("par 3, 600", "a par 3 of 600 yd"),
    ("par 4, 372; red tee 40 ahead; pond right 0 to 60, edge 1 left", "a tee on dry ground"),
    ("par 4, 372; lone tree at 372 in the middle", "a tree beside greens"),
])  # fmt: skip
def test_words_that_make_no_hole(words: str, part: str) -> None:
    with pytest.raises(FileError) as raised:
        hole_from_words(words)
    assert str(raised.value).startswith("hole in words: ") and part in str(raised.value)


def test_a_very_long_text_is_refused() -> None:
    with pytest.raises(UsageError, match="letters; allowed"):
        hole_from_words("par 4, 372; " + "pond right 200 to 240; " * 200)
    with pytest.raises(UsageError, match="letters; allowed"):
        load_hole("par 4 372 " + "x" * LONGEST_TEXT)


def answer(words: str) -> None:
    """A hole, or one clear line."""
    try:
        found = hole_from_words(words)
    except SimulatorError as error:
        assert str(error).strip() and "\n" not in str(error)
    else:
        assert isinstance(found.hole, Hole) and all(s.isprintable() for s in found.hole.assumed)


WORDS = sorted({" ".join(head) for head in HEADS} | set(ALIASES) | set(OTHER_WORDS)
               | {"and", "to", "of the green", "as mark", "gap 14 to line at", "both sides", "called"})  # fmt: skip
PIECE = st.one_of(
    st.sampled_from(WORDS), st.sampled_from(WORDS), st.integers(0, 600).map(str),
    st.sampled_from([";", ",", ".", "m", "yd", "%", "ft", "degrees", "\n", '"x"', "-", "x", "twenty-five", ":", "'s", "é"]),
)  # fmt: skip
FEW = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))


@FEW
@given(st.lists(PIECE, max_size=14).map(" ".join))
def test_any_words_of_the_trade(words: str) -> None:
    answer("par 4, 372; " + words)


@FEW
@given(st.text(max_size=80))
def test_any_text(text: str) -> None:
    answer(text)
    answer("par 4, 372; " + text)


GOOD = ["fairway 28 wide", "pond right 213 to 254", "edge 14 right", "out left 34", "green 24 deep", "pin 7 on",
        "bunker left of the green", "two bunkers right 220 to 260", "trees both sides, 15 tall", "left 40 at 230",
        "white tee", "red tee 40 ahead", "green 6 up", "mark tower 12 right at 400", "stream across at 300",
        "gap 14 to line at 213", "falls front left 2%", "lone tree 12 left at 230", "all in metres"]  # fmt: skip


@FEW
@given(st.lists(st.sampled_from(GOOD), min_size=1, max_size=8), st.randoms(use_true_random=False))
def test_good_phrases_with_a_word_lost_doubled_or_moved(phrases: list[str], random) -> None:
    words = "; ".join(phrases).split()
    for _ in range(random.randint(0, 3)):
        k = random.randrange(len(words))
        words[k : k + 1] = random.choice([[], [words[k]] * 2, [words[k], random.choice(words)]])
        words = words or ["pond"]
    answer("par 5, 480; " + " ".join(words))


def test_no_pattern_takes_nothing() -> None:
    for name, pattern in PATTERNS:
        found = pattern.match("")
        assert found is None, name


NOUNS = ["pond", "stream", "bunker", "bunkers", "trees", "oak", "heavy rough", "path", "out", "road", "fairway", "green",
         "pin", "red tee", "mark tower", "dogleg", "penalty area", "cross bunker", "greenside bunker", "two bunkers",
         "creeks", "a pair of bunkers"]  # fmt: skip
SAID = ["right", "left", "213 to 254", "at 230", "edge 14", "far edge 40", "14 right", "30 wide", "10 long", "across",
        "20 short of the green", "behind the green", "left of the green", "15 tall", "carry 190", "from 200", "20 left",
        "both sides", "in the middle", "12 deep", "7 on", "40 ahead", "6 up", "2%", "falls left", "20 to 50", "10 by 8",
        "crown 9", "gap 14 to line at 213", "30 degrees", "right 22", "5 from the back", "all along the right",
        "up to 20 short of the green", "narrows to 20 at 260", "8 wide at 240", "100 out", "150 to 110 out", "short of 200",
        "240 from the tee", "behind 20", "narrows to 20", "22 wide from 250", "pin high left"]  # fmt: skip


def test_no_number_of_any_mixture_is_dropped_in_silence() -> None:
    """Whatever is put together: a number one larger gives another hole, or the words are refused."""
    draw = random.Random(11)
    read = 0
    for _ in range(800):
        words = f"par 4, 380; {draw.choice(NOUNS)} {', '.join(draw.sample(SAID, draw.randint(1, 4)))}"
        try:
            plain = tomllib.loads(hole_from_words(words).toml_text)
        except SimulatorError:
            continue
        read += 1
        for number in list(re.finditer(r"\d+", words))[2:]:
            text = f"{words[: number.start()]}{int(number.group()) + 1}{words[number.end() :]}"
            try:
                other = tomllib.loads(hole_from_words(text).toml_text)
            except SimulatorError:
                continue
            assert other != plain, f"{number.group()} says nothing in {words!r}"
    assert read > 50


def test_every_word_that_is_not_understood_is_told_at_once() -> None:
    with pytest.raises(UsageError) as raised:
        hole_from_words("par 4, 372; pand right 213; fairway 28 wide; grene 24 deep; bunker left at 230; spine in the green")
    told = str(raised.value)
    assert told.startswith("hole in words: 'pand' (letter 13) not understood; perhaps 'pond'")
    assert told.endswith("; also not understood: 'grene' (letter 46), 'spine' (letter 81)") and "\n" not in told


def test_what_rests_on_a_refused_bend_is_not_told_with_it() -> None:
    with pytest.raises(UsageError) as raised:
        hole_from_words("par 4, 372; dogleg lefft at 230; trees inside the corner")
    assert "also" not in str(raised.value)
