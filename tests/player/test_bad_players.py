"""Broken bag files: each refused in one line with the file, the place, what was found and what is allowed."""

import os

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from simulator.errors import FileError
from simulator.player import load_player

FOURTEEN = (
    'clubs = ["driver", "3w", "5w", "7w", "3i", "4i", "5i", "6i", "7i", "8i", "9i", "pw", "sw", "lw"]\n'
)

BROKEN = {
    "not TOML": ("handicap = = 5", "a mistake in the TOML", "TOML 1.0"),
    "key twice": ("handicap = 5\nhandicap = 6", "a mistake in the TOML", "TOML 1.0"),
    "empty file": ("", "none, and clubs left out", "a handicap to fill"),
    "handicap NaN": ("handicap = nan", "handicap: found not a number", "-5 to 54"),
    "handicap infinite": ("handicap = inf", "handicap: found infinity", "-5 to 54"),
    "handicap too high": ("handicap = 55", "handicap: found 55", "-5 to 54"),
    "handicap too low": ("handicap = -12.5", "handicap: found -12.5", "-5 to 54"),
    "handicap as text": ('handicap = "+2"', "handicap: found the text '+2'", "a plus handicap is negative"),
    "handicap a bool": ("handicap = true", "handicap: found true", "a number"),
    "handicap a date": ("handicap = 2026-11-25", "handicap: found a date", "a number"),
    "unknown key": ("handicp = 5", "unknown key 'handicp' (did you mean 'handicap'?)", "handicap"),
    "unknown key in a club": (
        "handicap = 5\n[club.driver]\ncary_yd = 220",
        "club 'driver': found unknown key 'cary_yd' (did you mean 'carry_yd'?)",
        "carry_yd",
    ),
    "carry in yards and metres": (
        "handicap = 5\n[club.driver]\ncarry_yd = 220\ncarry_m = 201",
        "club 'driver', carry_yd and carry_m: found both",
        "one of the two",
    ),
    "text for a number": (
        'handicap = 5\n[club.driver]\ncarry_yd = "220"',
        "club 'driver', carry_yd: found the text '220'",
        "5 to 400",
    ),
    "carry negative": ("handicap = 5\n[club.driver]\ncarry_yd = -220", "carry_yd: found -220", "5 to 400"),
    "carry too long": ("handicap = 5\n[club.driver]\ncarry_yd = 401", "carry_yd: found 401", "5 to 400"),
    "carry too long in metres": (
        "handicap = 5\n[club.driver]\ncarry_m = 370",
        "carry_m: found 370",
        "4.572 to 365.8",
    ),
    "carry huge": (
        "handicap = 5\n[club.driver]\ncarry_yd = 1" + "0" * 400,
        "carry_yd: found 1000",
        "5 to 400",
    ),
    "spread negative": (
        "handicap = 5\n[club.7i]\ndirection_sd_deg = -4",
        "direction_sd_deg: found -4",
        "0 to 30",
    ),
    "spread NaN": (
        "handicap = 5\n[club.7i]\ndistance_sd_pct = nan",
        "distance_sd_pct: found not a number",
        "0 to 60",
    ),
    "rate as percent": ("handicap = 5\n[club.7i]\nmishit_rate = 12", "mishit_rate: found 12", "0 to 0.9"),
    "club not a section": ("handicap = 5\n[club]\ndriver = 230", "club 'driver': found 230", "a section"),
    "club a list": ("handicap = 5\nclub = [1]", "club: found a list of 1", "a section"),
    "same club twice": (
        "handicap = 5\n[club.3w]\n[club.3-wood]",
        "club '3-wood': found the club '3-wood' a second time",
        "once",
    ),
    "same club twice in the list": (
        'handicap = 5\nclubs = ["driver", "DR"]',
        "clubs[2]: found the club 'driver' a second time",
        "once",
    ),
    "two putters": (
        'handicap = 5\nclubs = ["putter", "7i", "putter"]',
        "clubs[3]: found the club 'putter'",
        "once",
    ),
    "putter as a club": ("handicap = 5\n[club.putter]", "club 'putter': found a putter", "[putting]"),
    "unknown club": ("handicap = 5\n[club.7-irno]", "(did you mean '7-iron'?)", "a name such as driver"),
    "unknown club in the list": (
        'handicap = 5\nclubs = ["drivr"]',
        "(did you mean 'driver'?)",
        "a name such as",
    ),
    "unknown kind": (
        'handicap = 5\n[club.stick]\nkind = "mashie"',
        "kind: found the text 'mashie'",
        "7-iron",
    ),
    "section outside the list": (
        'handicap = 5\nclubs = ["7i"]\n[club.9i]',
        "club '9-iron': found a section for a club that is not in clubs",
        "7-",
    ),
    "too many clubs": ("handicap = 5\n" + FOURTEEN, "clubs: found 14 clubs besides the putter", "Rule 4.1b"),
    "empty bag": ("handicap = 5\nclubs = []", "clubs: found an empty bag", "at least one club"),
    "only a putter": ('handicap = 5\nclubs = ["putter"]', "clubs: found an empty bag", "at least one club"),
    "clubs as text": ('handicap = 5\nclubs = "7i"', "clubs: found the text '7i'", "a list of club names"),
    "number in the list": ("handicap = 5\nclubs = [7]", "clubs[1]: found 7", "the name of a club"),
    "two clubs of one carry": (
        "handicap = 5\nclubs = ['7i', '4h']\n[club.7i]\ncarry_yd = 150\n[club.4h]\ncarry_yd = 150",
        "150 yd, the carry of",
        "a carry of its own",
    ),
    "order turned round": (
        "handicap = 5\n[club.7i]\ncarry_yd = 135\n[club.8i]\ncarry_yd = 146",
        "club '8-iron': found 146 yd, beyond '7-iron' (135 yd)",
        "less carry than the club with less loft",
    ),
    "no level to fill from": (
        'clubs = ["7i"]\n[club.7i]\ncarry_yd = 140',
        "handicap: found none, and direction_sd_deg",
        "a handicap",
    ),
    "name empty": ('handicap = 5\nname = "  "', "name: found the text ''", "printable"),
    "name of two lines": ('handicap = 5\nname = "a\\nb"', "name: found the text 'a b'", "printable"),
    "chipping zero": ("handicap = 5\nchipping = 0", "chipping: found 0", "0.1 to 5"),
    "short game zero": ("handicap = 5\nshort_game = 0", "short_game: found 0", "0.1 to 5"),
    "part curve of another length": (
        "handicap = 5\n[part]\ncarry_yd = [10, 20]\nmishit_rate = [0.1]",
        "part, mishit_rate: found a list of 1",
        "a list of 2",
    ),
    "part curve without carries": (
        "handicap = 5\n[part]\nmishit_rate = [0.1]",
        "part, mishit_rate: found a list without carries",
        "carry_yd",
    ),
    "part carries fall": (
        "handicap = 5\n[part]\ncarry_yd = [20, 10]",
        "carries that do not rise",
        "more than",
    ),
    "part carry NaN": (
        "handicap = 5\n[part]\ncarry_yd = [nan]",
        "part, carry_yd[1]: found not a number",
        "0.5 to 200",
    ),
    "part not a list": (
        "handicap = 5\n[part]\ncarry_yd = 20",
        "part, carry_yd: found 20",
        "a list of numbers",
    ),
    "putting too wild": (
        "handicap = 5\n[putting]\nangle_sd_deg = 40",
        "putting, angle_sd_deg: found 40",
        "0 to 15",
    ),
    "putting unknown": (
        "handicap = 5\n[putting]\nangle = 2",
        "putting: found unknown key 'angle'",
        "angle_sd_deg",
    ),
    "putting handicap": ("handicap = 5\n[putting]\nhandicap = 99", "putting, handicap: found 99", "-5 to 54"),
}


def refusal(path) -> str:
    with pytest.raises(FileError) as caught:
        load_player(path)
    line = str(caught.value)
    assert "\n" not in line and line.isprintable()
    assert caught.value.exit_status == 2 and caught.value.found and caught.value.allowed
    return line


@pytest.mark.parametrize("what", BROKEN)
def test_one_line_each(tmp_path, what):
    text, found, allowed = BROKEN[what]
    path = tmp_path / "bag.toml"
    path.write_text(text, encoding="utf-8")
    line = refusal(path)
    assert line.startswith(str(path))
    before, _, after = line.partition("; allowed: ")
    assert found in before and allowed in after, line


def test_not_utf8(tmp_path):
    path = tmp_path / "bag.toml"
    path.write_bytes(b'name = "Z\xe9"\n')
    assert "found a byte at 9 that is not UTF-8" in refusal(path)


def test_not_a_file(tmp_path):
    assert "found a folder" in refusal(tmp_path)
    assert "found no such file" in refusal(tmp_path / "nobody.toml")
    assert "did you mean 'isolde'?" in refusal("isolda")
    assert "barnaby, isolde" in refusal("nobody")
    refusal("")
    refusal("a\0b.toml")
    refusal("x" * 5000 + ".toml")


def test_too_large_and_too_deep(tmp_path):
    path = tmp_path / "bag.toml"
    path.write_text("# " + "x" * 1_000_001, encoding="utf-8")
    assert "bytes" in refusal(path)
    path.write_text("a = " + "[" * 100_000, encoding="utf-8")
    refusal(path)
    path.write_text("handicap = " + "9" * 10_000, encoding="utf-8")
    refusal(path)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes here")
def test_pipe_is_not_waited_for(tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    assert "something that is not a file" in refusal(tmp_path / "pipe.toml")


GOOD = """name = "Ann"
handicap = 11
clubs = ["driver", "5w", "7i", "pw", "56"]
short_game = 1.1
[club.driver]
carry_yd = 215
bias_right_deg = 1.0
[club.7-iron]
carry_m = 128
mishit_rate = 0.1
[part]
carry_yd = [10, 40]
direction_sd_deg = [8, 5]
[putting]
angle_sd_deg = 2.0
"""
PIECES = st.sampled_from(
    [
        "",
        "nan",
        "-1",
        "true",
        '"x"',
        "[]",
        "[1, nan]",
        "{}",
        "1e400",
        "\x00",
        "é",
        "=",
        "\n",
        "[club]",
        "[[club]]",
        "[part]",
        "carry_m = 5",
        "clubs = ['7i']",
        "2026-01-01",
        "0x10",
        "99999999999999999999999",
        "kind = 'driver'",
    ]
)


@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    cuts=st.lists(st.tuples(st.integers(0, len(GOOD)), st.integers(0, 12), PIECES), min_size=1, max_size=3)
)
@example(cuts=[(0, 0, "")])
def test_any_mutation_is_read_or_refused(tmp_path, cuts):
    text = GOOD
    for start, length, piece in cuts:
        text = text[:start] + piece + text[start + length :]
    path = tmp_path / "bag.toml"
    path.write_bytes(text.encode())
    try:
        player = load_player(path)
    except FileError as error:
        assert "\n" not in str(error)
    else:
        carries = [club.carry_yd for club in player.clubs]
        assert carries == sorted(set(carries), reverse=True) and carries[-1] >= 5 and carries[0] <= 400


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(raw=st.binary(max_size=60))
def test_any_bytes(tmp_path, raw):
    path = tmp_path / "bag.toml"
    path.write_bytes(raw)
    try:
        load_player(path)
    except FileError as error:
        assert "\n" not in str(error)
