"""Measured shots out of a CSV, into a player file, and back."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from made import level_club, shots_of

from simulator.errors import FileError, SimulatorError
from simulator.player import load_player
from simulator.player.levels import level
from simulator.player.measured import Columns, fit_player, player_text, read_shots

PLAIN = "club,carry,offline\n7i,140,-6\n7 iron,138.5,4\nPW,96,0\n"


def read(tmp_path, text, columns=None, name="shots.csv"):
    path = tmp_path / name
    path.write_text(text, encoding="utf-8")
    return read_shots(path, columns).shots


def test_plain_file(tmp_path):
    shots = read(tmp_path, PLAIN)
    assert list(shots) == ["7-iron", "pitching wedge"]
    np.testing.assert_allclose(shots["7-iron"].carry_yd, [140, 138.5])
    np.testing.assert_allclose(shots["7-iron"].offline_yd, [-6, 4])
    assert shots["7-iron"].total_yd is None


@pytest.mark.parametrize(
    "text",
    [
        "Club;Carry (m);Side (m)\n7i;128,016;5,4864 L\n",
        "Club\tCarry Distance [m]\tOffline [m]\tTotal\n7i\t128.016\tL5.4864\t150\n",
        "club,carry_m,offline_m\n7i,128.016,-5.4864\n",
    ],
)
def test_metres_sides_and_separators(tmp_path, text):
    """1 yard is 0.9144 m exactly (international yard, 1959)."""
    one = read(tmp_path, text)["7-iron"]
    assert one.carry_yd[0] == pytest.approx(140.0, abs=0.02)
    assert one.offline_yd[0] == pytest.approx(-6.0, abs=0.02)


@pytest.mark.parametrize(
    "text",
    [
        "club,carry (m),offline,total\n7i,128.016,-5.4864,137.16\n",
        "club,carry,offline,total (m)\n7i,128.016,-5.4864,137.16\n",
        "club,carry,offline,total\n,m,m,m\n7i,128.016,-5.4864,137.16\n",
        "club,carry,offline,total\n[-],[m],[m],[m]\n7i,128.016,-5.4864,137.16\n",
        "club,carry (yd),offline (ft),total\n7i,140,-18,150\n",
        "club,carry,offline [feet],total\n7i,140,-18,150\n",
        "club,carry,offline,total\n7i,140,18 ft L,150\n",
        "club,carry,offline,total\n7i,140,\N{MINUS SIGN}6,150\n",
    ],
)
def test_units_said_once_and_feet(tmp_path, text):
    """A side beside a carry in metres was read as yards, a side in feet as yards, a row of units as a slip."""
    path = tmp_path / "shots.csv"
    path.write_text(text, encoding="utf-8")
    found = read_shots(path)
    one = found.shots["7-iron"]
    assert found.left_aside == ()
    for value, wanted in ((one.carry_yd, 140.0), (one.offline_yd, -6.0), (one.total_yd, 150.0)):
        assert value[0] == pytest.approx(wanted, abs=0.01)


@pytest.mark.parametrize("titles", ["Session 12/11/2026, bay 4\n", "Player;Ada;;\nDate;12 March;;\n\n", "Range, wet, 9 C\n"])
def test_titles_may_stand_above_the_headings(tmp_path, titles):
    path = tmp_path / "shots.csv"
    path.write_text(titles + "Club;Carry (m);Side\n7i;137,16;1 R\n7i;abc;0\n7i;137,16;2 L\n", encoding="utf-8")
    found = read_shots(path)
    assert found.shots["7-iron"].carry_yd == pytest.approx([150.0, 150.0])
    assert len(found.left_aside) == 1


def test_units_asked_for_are_for_files_that_name_none(tmp_path):
    metres = Columns(unsaid="metres")
    plain = read(tmp_path, "club,carry,offline\n7i,128.016,-5.4864\n", metres)["7-iron"]
    yards = read(tmp_path, "club,carry (yd),offline\n7i,140,-6\n", metres)["7-iron"]
    for one in (plain, yards):
        assert (one.carry_yd[0], one.offline_yd[0]) == pytest.approx((140.0, -6.0), abs=0.01)


def test_columns_and_mapping_file(tmp_path):
    (tmp_path / "map.toml").write_text(
        'units = "metres"\nleft_positive = true\n[columns]\ncarry = "Flight"\noffline = "Dev"\nclub = "Stick"\n'
        '[clubs]\n"Big Dog" = "driver"\n'
    )
    columns = Columns.from_file(tmp_path / "map.toml")
    one = read(tmp_path, "Stick,Flight,Dev\nBig Dog,200,10\n", columns)["driver"]
    assert one.carry_yd[0] == pytest.approx(200 / 0.9144)
    assert one.offline_yd[0] == pytest.approx(-10 / 0.9144)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("", "empty file"),
        ("club,carry,offline\n", "no shot"),
        ("club,offline\n7i,3\n", "no column for carry"),
        ("club,carry,offline (deg)\n7i,140,3\n", "an angle, 'offline (deg)'"),
        ("club,carry,offline\n7i,abc,3\n", "row 2, carry"),
        ("club,carry,offline\n7i,nan,3\n", "row 2, carry"),
        ("club,carry,offline\n7i,inf,3\n", "row 2, carry"),
        ("club,carry,offline\n7i,140,3\n7i,900,3\n", "row 3, carry"),
        ("club,carry,offline\n7i,-4,3\n", "0 to 450 yards"),
        ("club,carry,offline\n7i,140,333\n", "row 2, offline"),
        ("club,carry,offline\n7i,140,\n", "row 2, offline"),
        ("club,carry,offline\nspoon,140,2\n", "'spoon'"),
        ("club,carry,offline\nputter,14,2\n", "putter"),
        ("club,carry,offline\n7i,abc,3\n7i,140,x\n7i,140,2\n", "row 2, carry: 'abc'; row 3, offline: 'x'"),
    ],
)
def test_nonsense_is_refused_in_one_line(tmp_path, text, words):
    with pytest.raises(FileError) as error:
        read(tmp_path, text)
    assert words in str(error.value)
    assert "\n" not in str(error.value)


def test_a_few_rows_that_cannot_be_read_are_named_and_left_aside(tmp_path):
    good = ["7i,140,2"] * 60
    path = tmp_path / "shots.csv"
    slips = ["7i,abc,3", "spoon,140,2", "7i,140,333", "7i,,4", "7i,999,0", "putter,9,0"]
    path.write_text("\n".join(["club,carry,offline", *good[:30], *slips, *good[30:]]), encoding="utf-8")
    found = read_shots(path)
    assert len(found.shots["7-iron"].carry_yd) == 60 and len(found.left_aside) == 6
    assert found.left_aside[0].startswith("row 32, carry: 'abc'") and "'spoon'" in found.left_aside[1]
    path.write_text("\n".join(["club,carry,offline", *good[:40], *slips]), encoding="utf-8")
    with pytest.raises(FileError, match="6 of 46 rows") as error:
        read_shots(path)
    assert all(f"row {k}" in str(error.value) for k in range(42, 48)) and "\n" not in str(error.value)


def test_cells_as_people_write_them(tmp_path):
    text = "club,carry,offline\n7i,150 yds,5 right\n7i,150yd,left 5\n7i,137.16 m,5 yd L\n7i,150,-5 yards\n"
    one = read(tmp_path, text)["7-iron"]
    np.testing.assert_allclose(one.carry_yd, 150.0)
    np.testing.assert_allclose(one.offline_yd, [5, -5, -5, -5])


@settings(max_examples=150, deadline=None)
@given(text=st.text(max_size=300))
def test_any_text_is_read_or_refused(tmp_path_factory, text):
    path = tmp_path_factory.mktemp("any") / "shots.csv"
    path.write_bytes(text.encode("utf-8", "surrogatepass"))
    try:
        read_shots(path)
    except SimulatorError as error:
        assert "\n" not in str(error)


def test_the_player_file_reads_back(tmp_path):
    rng = np.random.default_rng(4)
    shots = {name: shots_of(level_club(name, 14), 25, rng) for name in ("driver", "7-iron", "pitching wedge")}
    fit = fit_player(shots, level(14))
    path = tmp_path / "me.toml"
    path.write_text(player_text(fit, 'Pat "Slim" \\ O', "shots.csv"), encoding="utf-8")
    player = load_player(path)
    assert player.name == 'Pat "Slim" \\ O'
    assert len(player.clubs) == 13
    for one in fit.clubs:
        club = player.club(one.club)
        assert club.carry_yd == pytest.approx(one.numbers["carry_yd"], rel=1e-3)
        assert club.doubt.direction_log == pytest.approx(one.doubt.direction_log, rel=1e-3)
        assert club.sources["direction_sd_deg"] == "measured"
    assert player.club("8-iron").bias_long_pct == 0.0
    assert len(fit.others) == 10
    for one in fit.others:  # nobody measured them: the carry between the others' is worked out again
        club = player.club(one.club)
        assert club.carry_yd == pytest.approx(one.numbers["carry_yd"], rel=1e-3)
        assert club.direction_sd_deg == pytest.approx(one.numbers["direction_sd_deg"], rel=1e-3)
        assert club.doubt.direction_log == pytest.approx(one.doubt.direction_log, rel=1e-3)
        assert set(club.sources.values()) == {"level"}


def test_a_side_in_letters_says_more_than_a_sign(tmp_path):
    """A file that counts left as negative and says so too: "-12 L" is twelve left, not right."""
    path = tmp_path / "shots.csv"
    path.write_text("club,carry,offline\n7i,140,-12 L\n7i,139,12 L\n7i,141,L 12\n7i,140,-5 R\n7i,138,5 right\n")
    shots = read_shots(path).shots["7-iron"]
    assert shots.offline_yd.tolist() == [-12.0, -12.0, -12.0, 5.0, 5.0]
