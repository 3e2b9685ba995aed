"""Bag files that are fine: reading, units, filling from the level, where each number came from."""

import numpy as np
import pytest

from simulator.errors import UsageError
from simulator.player import bundled_players, level, load_player
from simulator.player.model import CLUB_NUMBERS
from simulator.tables.shots import list_shots


@pytest.fixture
def read(tmp_path):
    def _read(text):
        path = tmp_path / "somebody.toml"
        path.write_text(text, encoding="utf-8")
        return load_player(path)

    return _read


def test_demo_players():
    assert bundled_players() == ["barnaby", "isolde"]
    for name, handicap in (("isolde", 5), ("barnaby", 18)):
        player = load_player(name)
        assert player.handicap == handicap and player.source == name
        assert player.name.casefold() == name
        carries = [club.carry_yd for club in player.clubs]
        assert carries == sorted(carries, reverse=True) and len(set(carries)) == len(carries)
        assert player.clubs[0].name == "driver" and len(player.clubs) <= 13


def test_isolde_is_filled_from_the_womens_tables():
    """What her file leaves out: part swings of a woman of her handicap, a tenth tighter as the file says."""
    isolde = load_player("isolde")
    assert isolde.part.distance_sd_pct == pytest.approx(0.9 * level(5, "woman").part.distance_sd_pct)
    assert not np.allclose(level(5, "woman").part.distance_sd_pct, level(5).part.distance_sd_pct, rtol=0.05)
    assert any("(woman)" in sentence for sentence in isolde.assumed)


def test_handicap_alone(read):
    player = read("handicap = 18")
    assert player.name == "somebody" and len(player.clubs) == 13 and player.short_game == 1
    assert player.clubs[0].carry_yd == level(18).driver_carry_yd
    for club in player.clubs:
        assert set(club.sources) == set(CLUB_NUMBERS) and set(club.sources.values()) == {"level"}
        assert all(np.isfinite(getattr(club, key)) for key in CLUB_NUMBERS)
    assert any("standard set" in sentence for sentence in player.assumed)
    gaps = -np.diff([club.carry_yd for club in player.clubs])
    assert gaps.min() > 3 and gaps.max() < 22


@pytest.mark.parametrize("handicap", [-5, 0, 10, 28, 54])
def test_every_level_makes_a_bag(read, handicap):
    player = read(f"handicap = {handicap}")
    driver = player.clubs[0]
    assert driver.name == "driver"
    for club in player.clubs:
        assert 0 < club.direction_sd_deg < 12 and 0 < club.distance_sd_pct < 27 and club.mishit_rate < 0.6


def test_list_without_carries_follows_those_given(read):
    player = read(
        'handicap = 12\nclubs = ["driver", "5w", "6i", "8-iron", "pw", "56", "putter"]\n'
        "[club.driver]\ncarry_yd = 230\n[club.8-iron]\ncarry_yd = 140\n"
    )
    who, level_12 = {club.name: club.carry_yd for club in player.clubs}, level(12)
    assert list(who) == ["driver", "5-wood", "6-iron", "8-iron", "pitching wedge", "56-degree wedge"]
    # Between two given clubs: the same place between them as in the level's bag.
    low, high = level_12.carry_yd("8-iron"), level_12.carry_yd("driver")
    for name in ("5-wood", "6-iron"):
        place = (level_12.carry_yd(name) - low) / (high - low)
        assert who[name] == pytest.approx(140 + place * 90)
    # Beyond the shortest given: its ratio.
    assert who["pitching wedge"] / 140 == pytest.approx(level_12.carry_yd("pitching wedge") / low)
    assert player.club("driver").sources["carry_yd"] == "file"
    assert player.club("6-iron").sources["carry_yd"] == "level"


def test_sources_and_numbers(read):
    player = read(
        'handicap = 9\n[club."three wood"]\ncarry_yd = 201\ndirection_sd_deg = 4.25\nmishit_rate = 0.11\n'
        "bias_right_deg = -1.5\ndistance_sd_pct = 6.0\n"
    )
    club = player.club("3w")
    assert (club.name, club.kind, club.carry_yd) == ("3-wood", "3-wood", 201)
    assert (club.direction_sd_deg, club.mishit_rate, club.bias_right_deg) == (4.25, 0.11, -1.5)
    assert {k for k, v in club.sources.items() if v == "file"} == {
        "carry_yd", "direction_sd_deg", "mishit_rate", "bias_right_deg", "distance_sd_pct",
    }  # fmt: skip
    # A mishit keeps its ratio to the player's own solid strike.
    assert club.mishit_distance_sd_pct / 6.0 == pytest.approx(club.mishit_direction_factor)
    assert len(player.clubs) == 13 and any("around them" in s for s in player.assumed)


def test_given_club_takes_the_place_of_the_standard_one(read):
    names = [club.name for club in read("handicap = 9\n[club.7-wood]\n[club.58-degree]\n").clubs]
    assert "7-wood" in names and "4-hybrid" not in names  # a place by loft
    assert "58-degree wedge" in names and len(names) <= 13


def test_metres_are_exactly_0_9144(read):
    yards = read("handicap = 9\n[club.driver]\ncarry_yd = 225\n")
    metres = read(f"handicap = 9\n[club.driver]\ncarry_m = {225 * 0.9144!r}\n")
    for one, two in zip(yards.clubs, metres.clubs, strict=True):
        assert one.carry_yd == pytest.approx(two.carry_yd, rel=1e-14)
    assert metres.club("driver").sources["carry_yd"] == "file"


def test_complete_bag_needs_no_handicap(read):
    club = (
        "carry_yd = 150\ndirection_sd_deg = 4\ndistance_sd_pct = 6\nbias_right_deg = 0\nbias_long_pct = 0\n"
        "mishit_rate = 0.1\nmishit_loss_pct = 15\nmishit_distance_sd_pct = 9\nmishit_direction_factor = 1.5\n"
    )
    player = read(
        f'clubs = ["7-iron"]\n[club.7-iron]\n{club}[part]\nhandicap = 10\n'
        "[putting]\nangle_sd_deg = 2\ndistance_sd_pct = 9\n"
    )
    assert player.handicap is None and set(player.clubs[0].sources.values()) == {"file"}
    assert player.putting.angle_sd_deg == 2 and player.putting.distance_sd == pytest.approx(0.09)
    assert set(player.putting.sources.values()) == {"file"}


def test_own_kind_for_an_unusual_name(read):
    player = read('handicap = 9\nclubs = ["Old Faithful", "7i"]\n[club."Old Faithful"]\nkind = "4-hybrid"\n')
    assert (player.clubs[0].name, player.clubs[0].kind) == ("Old Faithful", "4-hybrid")
    assert player.club("old  faithful") is player.clubs[0]


def test_skill_like_another_handicap(read):
    player = read("handicap = 20\n[putting]\nhandicap = 5\n[part]\nhandicap = 5\n")
    assert player.putting.angle_sd_deg == level(5).putting.angle_sd_deg
    assert np.array_equal(player.part.direction_sd_deg, level(5).part.direction_sd_deg)


def test_chipping_scales_chips_and_punches_alone(read):
    own, usual = read("handicap = 14\nchipping = 0.8"), read("handicap = 14")
    assert own.chipping == 0.8 and own.part.distance_sd_pct == pytest.approx(usual.part.distance_sd_pct)
    for one, other in zip(list_shots(own).shots, list_shots(usual).shots, strict=True):
        share = 0.8 if one.flight == "punch" else 1.0
        for number in ("direction_sd_deg", "distance_sd_pct", "mishit_distance_sd_pct"):
            assert getattr(one.spread, number) == pytest.approx(share * getattr(other.spread, number)), one.flight
        assert one.spread.mishit_rate == other.spread.mishit_rate and one.carry_yd == other.carry_yd


def test_short_game_scales_spread_only(read):
    tight, base = read("handicap = 14\nshort_game = 0.5"), level(14).part
    assert tight.part.at(33).direction_sd_deg == pytest.approx(0.5 * base.at(33).direction_sd_deg)
    assert tight.part.at(33).distance_sd_pct == pytest.approx(0.5 * base.at(33).distance_sd_pct)
    assert tight.part.at(33).mishit_rate == base.at(33).mishit_rate


def test_part_curve_of_ones_own(read):
    part = read(
        "handicap = 14\n[part]\ncarry_yd = [10, 30, 70]\n"
        "direction_sd_deg = [9, 6, 5]\nmishit_rate = [0.2, 0.1, 0.1]\n"
    ).part
    assert (
        part.at(20).direction_sd_deg == 7.5
        and part.at(5).direction_sd_deg == 9
        and part.at(95).mishit_rate == 0.1
    )
    assert part.at(30).distance_sd_pct == pytest.approx(level(14).part.at(30).distance_sd_pct)
    assert (part.sources["direction_sd_deg"], part.sources["distance_sd_pct"]) == ("file", "level")


def test_club_not_in_the_bag():
    player = load_player("barnaby")
    assert player.club("Pitching Wedge") is player.club("pw")
    with pytest.raises(
        UsageError, match=r"no club '7-iren' .*did you mean '7-iron'.*clubs there: driver, 3-wood"
    ):
        player.club("7-iren")
    with pytest.raises(UsageError, match="no club 'lob wedge'"):
        player.club("lob wedge")


def test_a_file_wins_over_a_demo_name(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "isolde").write_text("handicap = 30", encoding="utf-8")
    assert load_player("isolde").handicap == 30


def test_byte_order_mark_and_windows_lines(tmp_path):
    path = tmp_path / "a.toml"
    path.write_bytes(b'\xef\xbb\xbfhandicap = 7\r\nname = "Z\xc3\xa9"\r\n')
    assert load_player(path).name == "Zé"
