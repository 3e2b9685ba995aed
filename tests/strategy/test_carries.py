"""The player's numbers for the day: the table of clubs and the sum for a stated distance."""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from solved import player_named

from simulator import load_player
from simulator.cli.options import player_of
from simulator.conditions import Conditions, Wind
from simulator.errors import NoAnswerError, UsageError
from simulator.physics.wind import FORECAST_HEIGHT_M, ROUGHNESS_OPEN_M
from simulator.report.carrytext import sum_text, table
from simulator.report.units import METRES, YARDS, Units
from simulator.strategy.carries import carries
from simulator.strategy.distancewords import read_distance
from simulator.strategy.effective import Effective, effective_distance
from simulator.tables.airs import flight_air
from simulator.tables.flights import FRACTIONS, TILTS_DEG, YDPS_PER_MPH, WindAxes, flight_tables
from simulator.tables.shots import list_shots

DAYS = {
    "against": Conditions(wind=Wind(12.0, 0.0)),
    "helping": Conditions(wind=Wind(12.0, 180.0)),
    "across": Conditions(wind=Wind(12.0, 90.0)),
    "cold": Conditions(temperature_c=5.0),
    "high up": Conditions(temperature_c=15.0, altitude_m=1600.0, wind=Wind(8.0, 30.0)),
}


def for_164(conditions: Conditions | None = None, **more: float) -> Effective:
    return effective_distance(player_named("isolde"), conditions or Conditions(), 164.0, **more)


@pytest.mark.parametrize("day", DAYS)
@pytest.mark.parametrize("height_yd", [-12.0, 0.0, 9.0])
def test_the_parts_add_up_and_end_in_the_nearest_shot(day: str, height_yd: float) -> None:
    found = for_164(DAYS[day], height_yd=height_yd)
    parts = found.height_adds_yd + found.air_adds_yd + found.wind_adds_yd
    assert found.distance_yd + parts == pytest.approx(found.effective_yd, abs=1e-9)
    today = carries(player_named("isolde"), DAYS[day], height_yd=height_yd)
    nearest = {
        flight: min(
            (one for one in today if one.flight == flight), key=lambda one: abs(one.today_carry_yd - 164.0)
        )
        for flight in ("stock", "low")
    }
    off = {flight: abs(one.today_carry_yd - 164.0) for flight, one in nearest.items()}
    best = nearest["low" if found.wind_adds_yd > 0.0 and off["low"] + 3.0 < off["stock"] else "stock"]
    assert (found.club, found.flight) == (best.club, best.flight)
    assert found.carry_yd == pytest.approx(best.today_carry_yd, abs=1e-6)
    assert found.drift_yd == pytest.approx(best.drift_yd, abs=1e-6)


def test_each_part_has_its_sign_and_is_its_own() -> None:
    """Uphill, cold and against ask for more; a part is 0 where its cause is absent."""
    up, down = for_164(height_yd=8.0), for_164(height_yd=-8.0)
    assert up.height_adds_yd > 3.0 and down.height_adds_yd < -3.0
    assert up.air_adds_yd == up.wind_adds_yd == 0.0
    cold = for_164(DAYS["cold"])
    assert cold.air_adds_yd > 2.0 and cold.height_adds_yd == pytest.approx(0.0)
    assert for_164(DAYS["high up"]).air_adds_yd < -3.0
    against, helping = for_164(DAYS["against"]).wind_adds_yd, for_164(DAYS["helping"]).wind_adds_yd
    # about 1 % a mph against, half of that helping (common practice): within a factor of two of the rule
    assert 0.5 * 0.12 * 164 < against < 2.0 * 0.12 * 164
    assert -2.0 * 0.06 * 164 < helping < -0.5 * 0.06 * 164
    assert against > -helping
    side = for_164(DAYS["across"])  # from the right: it drifts left, and costs hardly any length
    assert side.drift_yd < -5.0 and abs(side.wind_adds_yd) < 4.0


def test_the_effective_distance_covers_the_distance() -> None:
    """A strike whose still carry is the effective distance carries the stated one today.

    The player is given one club of just that carry more, of the make of the club nearest to it; its carry
    today is the distance, to three yards: the sum is read in straight lines between clubs 13 yards apart,
    some of them of another make (against the wind: between an iron and a hybrid, 2.05 yd).
    """
    player = player_named("isolde")
    for day in DAYS.values():
        found = for_164(day, height_yd=5.0)
        nearest = min(player.clubs, key=lambda k: abs(k.carry_yd - found.effective_yd))
        special = replace(nearest, name="special", carry_yd=found.effective_yd)
        bag = sorted((*player.clubs, special), key=lambda k: -k.carry_yd)
        today = carries(replace(player, clubs=tuple(bag)), day, height_yd=5.0)
        one = next(k for k in today if k.club == "special" and k.flight == "stock")
        assert one.today_carry_yd == pytest.approx(164.0, abs=3.0)


def test_a_lasers_pair_counts_height_once() -> None:
    """164 adjusted 169: geometry uses 164, the pair gives about five yards up (common practice)."""
    pair, plain, height = for_164(adjusted_yd=169.0), for_164(), for_164(height_yd=5.0)
    assert pair.distance_yd == 164.0 and pair.height_from_pair and not height.height_from_pair
    assert pair.height_yd == pytest.approx(5.0)
    assert replace(pair, height_from_pair=False) == height
    assert 1.5 < pair.effective_yd - plain.effective_yd < 8.0  # not ten
    assert for_164(adjusted_yd=158.0).height_yd == pytest.approx(-6.0)


def test_a_given_height_wins_over_the_pair() -> None:
    both = for_164(adjusted_yd=169.0, height_yd=2.0)
    assert both == for_164(height_yd=2.0) and not both.height_from_pair
    assert for_164(adjusted_yd=169.0, height_yd=0.0) == for_164()


@pytest.mark.parametrize("distance_yd", [80.0, 120.0, 164.0, 210.0])
@pytest.mark.parametrize("who", ["isolde", "barnaby"])
def test_on_a_calm_level_day_it_is_the_distance(who: str, distance_yd: float) -> None:
    """Still air of 25 C at sea level is what the carries are meant in.

    Half a yard: the flight is integrated, the bag's carries are its inputs.
    """
    player = player_named(who)
    if distance_yd > 1.1 * player.clubs[0].carry_yd:
        pytest.skip("out of reach of this player")
    found = effective_distance(player, Conditions(), distance_yd)
    assert found.effective_yd == pytest.approx(distance_yd, abs=0.5)
    assert found.wind_adds_yd == found.air_adds_yd == 0.0 and abs(found.drift_yd) < 0.01


def test_the_table_on_a_still_day() -> None:
    """Carries are the bag's own, today's are the same, nothing drifts, and less loft runs more."""
    player = player_named("isolde")
    rows = carries(player, Conditions())
    stock = [row for row in rows if row.flight == "stock"]
    assert [row.club for row in stock] == [club.name for club in player.clubs]
    for row, club in zip(stock, player.clubs, strict=True):
        assert row.still_carry_yd == pytest.approx(club.carry_yd, abs=0.5)
    for row in rows:
        assert row.today_carry_yd == pytest.approx(row.still_carry_yd, abs=1e-6)
        assert row.today_run_yd == pytest.approx(row.still_run_yd, abs=1e-6)
        assert abs(row.drift_yd) < 0.01
    assert stock[0].still_run_yd > stock[7].still_run_yd > stock[-1].still_run_yd >= 0.0
    assert {row.flight for row in rows} > {"stock"}  # shots held down are in the table


def test_the_table_in_wind() -> None:
    """Against shortens all and keeps a low shot's share better; help lengthens; the direction turns."""
    player = player_named("isolde")
    against, helping = carries(player, DAYS["against"]), carries(player, DAYS["helping"])
    for less, more in zip(against, helping, strict=True):
        assert less.today_carry_yd < less.still_carry_yd < more.today_carry_yd
        assert less.today_run_yd <= more.today_run_yd
    kept = {(k.club, k.flight): k.today_carry_yd / k.still_carry_yd for k in against}
    assert kept["6-iron", "low"] > kept["6-iron", "stock"]
    drifts = np.array([row.drift_yd for row in carries(player, DAYS["across"])])
    mirror = np.array([row.drift_yd for row in carries(player, Conditions(wind=Wind(12.0, 270.0)))])
    assert (drifts < -1.0).all() and drifts == pytest.approx(-mirror, abs=0.01)
    turned = carries(player, Conditions(wind=Wind(12.0, 40.0)), along_deg=40.0)
    for one, other in zip(turned, against, strict=True):
        assert one.today_carry_yd == pytest.approx(other.today_carry_yd, abs=1e-3)


@pytest.mark.parametrize(("firmness", "slack_yd"), [(0.5, 0.5), (1.0, 0.5), (0.0, 3.5)])
@pytest.mark.parametrize("club", ["driver", "4-hybrid", "5-iron"])
def test_the_stronger_the_wind_behind_the_farther_a_drive_runs(
    club: str, firmness: float, slack_yd: float
) -> None:
    """It comes in lower and faster: no ground makes that run shorter.

    On soft ground the law of the bounce itself, where it is held against published runs, lets a ball of 60 mph run
    up to 3 yd shorter than one of 50.
    """
    runs = []
    for mph in (0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0):
        day = Conditions(wind=Wind(mph, 180.0) if mph else None, fairway_firmness=firmness)
        table = {(one.club, one.flight): one.today_run_yd for one in carries(load_player("scratch"), day)}
        runs.append(table[club, "stock"])
    assert all(run > most - slack_yd for run, most in zip(runs, np.maximum.accumulate(runs), strict=True))
    assert runs[-1] > runs[0] + 5.0


def test_out_of_reach() -> None:
    with pytest.raises(NoAnswerError, match="out of reach") as caught:
        effective_distance(player_named("isolde"), Conditions(), 390.0)
    assert "\n" not in str(caught.value)
    with pytest.raises(NoAnswerError):  # in reach on a still day, not against a gale
        effective_distance(player_named("isolde"), Conditions(wind=Wind(35.0, 0.0)), 220.0)
    assert effective_distance(player_named("isolde"), Conditions(), 220.0).club == "driver"


def test_a_ball_that_never_gets_as_high_as_the_target_has_no_carry_to_it() -> None:
    """Barnaby's driver and short irons rise over 22 yd, his woods and wedges do not; nothing of his gets 40 up."""
    player = load_player("barnaby")
    rows = {(one.club, one.flight): one for one in carries(player, Conditions(), height_yd=22.0)}
    there = {club for (club, flight), one in rows.items() if flight == "stock" and one.today_carry_yd is not None}
    assert "driver" in there and not there & {"3-wood", "7-wood", "sand wedge"}
    low = [one for (_, flight), one in rows.items() if flight == "low"]
    assert low and all(one.today_carry_yd is one.today_run_yd is one.drift_yd is None for one in low)
    text = table(player, Conditions(), tuple(rows.values()))
    assert "never gets as high" in text and re.search(r"^3-wood +176 +\d+ +- +-\s*$", text, re.MULTILINE)
    for distance_yd in (75.0, 120.0, 150.0):  # the 3-wood was named for 120, at the height where it tops out
        assert effective_distance(player, Conditions(), distance_yd, height_yd=22.0).club in there
    with pytest.raises(NoAnswerError, match="as high as that"):
        effective_distance(player, Conditions(), 120.0, height_yd=40.0)
    shortest = min(one.today_carry_yd for (_, flight), one in rows.items() if flight == "stock" and one.today_carry_yd)
    said = f"comes down {shortest:.0f} yd on"
    with pytest.raises(NoAnswerError, match=said):  # his 9-iron that carries over it by far was named
        effective_distance(player, Conditions(), shortest - 20.0, height_yd=22.0)


def test_each_club_is_found_again_by_its_carry_where_a_longer_one_carries_less() -> None:
    """Thin air, a tail wind and a target 15 yd up: a low 3-wood comes down on it before the 5-wood does."""
    player = player_of("plus 3", None)
    day = Conditions(wind=Wind(22.0, 218.0), temperature_c=39.0, altitude_m=1968.0)
    rows = [one for one in carries(player, day, height_yd=15.0) if one.flight == "stock"]
    today = [one.today_carry_yd for one in rows]
    assert today != sorted(today, reverse=True)
    for row in rows[2:]:
        found = effective_distance(player, day, row.today_carry_yd, height_yd=15.0)
        assert (found.club, found.effective_yd) == (row.club, pytest.approx(row.still_carry_yd, abs=0.01))


def test_a_wind_that_brings_a_target_into_reach_is_counted_before_it_is_refused() -> None:
    """228 yd is 16 % past Barnaby's still driver, but 10 % past the one that 30 mph help."""
    day = Conditions(wind=Wind(30.0, 180.0))
    found = effective_distance(load_player("barnaby"), day, 228.0)
    assert found.club == "driver" and found.wind_adds_yd < -10.0
    assert 228.0 + found.wind_adds_yd == pytest.approx(found.effective_yd)
    with pytest.raises(NoAnswerError, match=f"today: the longest club carries {found.carry_yd:.0f} yd$"):
        effective_distance(load_player("barnaby"), day, 262.0)


NAN = float("nan")


@pytest.mark.parametrize(
    ("distance", "more"),
    [
        (5.0, {}), (401.0, {}), (-164.0, {}), (NAN, {}),
        (164.0, {"height_yd": 61.0}), (164.0, {"height_yd": NAN}), (164.0, {"height_yd": -61.0}),
        (164.0, {"adjusted_yd": 5.0}), (164.0, {"adjusted_yd": 390.0}), (164.0, {"adjusted_yd": NAN}),
    ],
)  # fmt: skip
def test_bad_numbers_are_refused(distance: float, more: dict[str, float]) -> None:
    with pytest.raises(UsageError, match="is allowed") as caught:
        effective_distance(player_named("isolde"), Conditions(), distance, **more)
    assert "\n" not in str(caught.value)


def test_a_table_for_a_height_out_of_range_is_refused() -> None:
    with pytest.raises(UsageError, match="height"):
        carries(player_named("isolde"), Conditions(), height_yd=-75.0)


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("164", (164.0, None)), ("164 yd", (164.0, None)), ("164.5 yards", (164.5, None)),
        ("164, plays like 169", (164.0, 169.0)), ("one sixty-four, adjusted one sixty nine", (164.0, 169.0)),
        ("164, adjusted 169", (164.0, 169.0)), ("164 yd adjusted to 169 yd", (164.0, 169.0)),
        ("164, slope 158.5", (164.0, 158.5)), ("164 plays 169", (164.0, 169.0)),
        ("150m", (150.0 / 0.9144, None)), ("150, adjusted 155 m", (150.0 / 0.9144, 155.0 / 0.9144)),
    ],
)  # fmt: skip
def test_distances_as_typed(text: str, read: tuple[float, float | None]) -> None:
    assert read_distance(text) == read


@pytest.mark.parametrize("text", ["", "far", "164 169", "-164", "164, adjusted", "164, plays 9, 1", "1e3"])
def test_other_words_are_refused(text: str) -> None:
    with pytest.raises(UsageError, match="164, adjusted 169"):
        read_distance(text)


@pytest.mark.parametrize("distance_yd", [120.0, 135.0, 150.0, 165.0, 180.0])
def test_the_shot_to_hit_is_a_full_swing_unless_the_wind_is_against(distance_yd: float) -> None:
    """Down the wind, uphill or still, a ball held down is nobody's answer to a number."""
    for name in ("isolde", "barnaby"):
        player = player_named(name)
        for day, height_yd in ((Conditions(), 5.0), (Conditions(), -5.0), (Conditions(wind=Wind(22.0, 180.0)), 0.0)):
            found = effective_distance(player, day, distance_yd, height_yd=height_yd)
            full = [one for one in carries(player, day) if one.flight == "stock"]
            assert found.flight == "stock"
            if height_yd == 0.0:
                best = min(full, key=lambda one: abs(one.today_carry_yd - distance_yd))
                assert found.club == best.club


def test_into_the_wind_a_low_shot_may_be_the_one_to_hit() -> None:
    """Where it comes nearer by three yards than any full swing, and only there."""
    player, day = player_named("isolde"), Conditions(wind=Wind(25.0, 0.0))
    flights = set()
    for distance_yd in range(80, 180, 2):
        found = effective_distance(player, day, float(distance_yd))
        off = {one: min(abs(row.today_carry_yd - distance_yd) for row in carries(player, day) if row.flight == one)
               for one in ("stock", "low")}  # fmt: skip
        flights.add(found.flight)
        assert found.flight == ("low" if off["low"] + 3.0 < off["stock"] else "stock"), distance_yd
    assert flights == {"stock", "low"}


@pytest.mark.parametrize(("distance_yd", "said"), [(40.0, "part swing. Shortest full one: 58-degree"), (73.0, "Nearest: 58-degree")])
def test_a_distance_below_every_full_swing_is_said_to_be_one(distance_yd: float, said: str) -> None:
    """Nobody hits a full wedge of 74 at a pin 40 away, nearest or not."""
    player, still = player_named("isolde"), Conditions()
    text = sum_text(player, still, effective_distance(player, still, distance_yd))
    assert said in text and all(len(line) <= 80 for line in text.splitlines())


@pytest.mark.parametrize("who", ["isolde", "barnaby"])
@pytest.mark.parametrize(
    ("wind", "height_yd"), [(Wind(20.0, 0.0), 0.0), (Wind(25.0, 180.0), 0.0), (None, -12.0), (Wind(18.0, 30.0), -5.0)]
)
def test_the_number_of_a_part_swing_is_that_of_its_own_flight(who: str, wind: Wind | None, height_yd: float) -> None:
    """A strike of that still carry covers the distance in the table the plays read: higher and softer than full.

    A full wedge scaled down was put at 46 yd for 36 into 20 mph, which a pitch of 40 covers.
    """
    player, day = load_player(who), Conditions(wind=wind)
    listed = list_shots(player)
    row = next(k for k in range(listed.first_part, len(listed)) if listed.shots[k].carry_yd > 35.0)
    shot = listed.shots[row]
    assert shot.flight == "part" and shot.club == player.clubs[-1] and shot.carry_yd < 0.9 * shot.club.carry_yd
    angle = np.radians(wind.from_deg if wind else 0.0)
    blows = YDPS_PER_MPH * (wind.speed_mph if wind else 0.0)
    winds = WindAxes(np.array([-blows * np.cos(angle)]), np.array([-blows * np.sin(angle)]))  # one node of a disc
    air = flight_air(wind_height_m=FORECAST_HEIGHT_M, roughness_m=ROUGHNESS_OPEN_M if wind else 0.0)
    tables = flight_tables(listed, flight_air(), air, winds=winds, heights_yd=np.array([height_yd]))
    straight = int(np.argmin(np.abs(TILTS_DEG)))
    covers = float(np.interp(1.0 / shot.stretch, FRACTIONS, tables.flights[row, 0, 0, :, straight, 0, 0]))
    found = effective_distance(player, day, covers, height_yd=height_yd)
    assert found.part_swing and found.effective_yd == pytest.approx(shot.carry_yd, abs=0.3)


@pytest.mark.parametrize("units", [YARDS, METRES])
def test_the_parts_as_shown_add_up(units: Units) -> None:
    """Each rounded by itself, one sum in three was a yard or a metre off."""
    player = player_named("isolde")
    for day in DAYS.values():
        for distance_yd in range(60, 200, 7):
            found = effective_distance(player, day, float(distance_yd), height_yd=4.3)
            text = sum_text(player, day, found, units)
            rows = re.findall(r"^(?:distance|height|air|wind|to hit) +([+-]?\d+)", text, re.MULTILINE)
            *parts, total = map(int, rows)
            assert len(parts) == 4 and sum(parts) == total == round(units.of(found.effective_yd)), text
            exact = (found.distance_yd, found.height_adds_yd, found.air_adds_yd, found.wind_adds_yd)
            assert all(abs(n - units.of(e)) < 1.0 for n, e in zip(parts, exact, strict=True))


@pytest.mark.parametrize("text", ["165 downhill 20 ft", "150 into 2 clubs", "142 up 5", "150 against"])
def test_a_slope_or_a_wind_behind_a_distance_is_shown_its_option(text: str) -> None:
    with pytest.raises(UsageError, match=r"--height .* --wind "):
        read_distance(text)
    with pytest.raises(UsageError, match=r'169"$'):
        read_distance("far")
