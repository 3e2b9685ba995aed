"""The ways people say a wind, and what is refused, pointing at the word."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from simulator.conditions import Wind, at_both_heights, misread, read_wind
from simulator.errors import UsageError

ALONG, NORTH_OF_Y = 20.0, 90.0  # the shot bears 20 deg right of +y, which points east
KMH, MS, KT = 1 / 1.609344, 1 / 0.44704, 1.852 / 1.609344  # mph in each, exact


def read(text: str, **more):
    return read_wind(text, along_deg=ALONG, y_bearing_deg=NORTH_OF_Y, **more)


# phrase -> mph, degrees off dead against the shot, clockwise (90 comes from its right)
OFF_THE_SHOT = [
    ("12 mph from 2 o'clock", 12, 60), ("12 from 2 o’clock", 12, 60), ("12mph from two o'clock", 12, 60),
    ("9 mph half past two", 9, 75), ("9 mph from half two", 9, 75), ("9 mph between 1 and 2 o'clock", 9, 45),
    ("9 mph from 11 to 1 o'clock", 9, 0), ("1-2 o'clock, 9 mph", 9, 45), ("half a club between 12 and 1 o'clock", 5.5, 15),
    ("9 at 2:30", 9, 75), ("from 12 o'clock, 7 mph", 7, 0),
    ("7 mph from 6 o'clock", 7, 180), ("12 towards 8 o'clock", 12, 60),
    ("into, 15", 15, 0), ("15 into the wind", 15, 0), ("dead into, 15 mph", 15, 0), ("headwind 15", 15, 0),
    ("15 mph in the face", 15, 0), ("hurting 10", 10, 0), ("10 mph in his face", 10, 0), ("10 hurt", 10, 0), ("straight into 10 mph", 10, 0),
    ("10 at the player's back", 10, 180),
    ("helping 10", 10, 180), ("10 mph downwind", 10, 180), ("tail wind, 10 mph", 10, 180),
    ("10 from behind", 10, 180), ("10 straight down", 10, 180), ("it's 10 mph behind us", 10, 180),
    ("cross left 10", 10, -90), ("10 mph off the right", 10, 90), ("10 left to right", 10, -90), ("10 blowing left to right", 10, -90), ("10 R/L", 10, 90),
    ("10 mph R to L", 10, 90), ("10 right-to-left", 10, 90), ("10 mph to the right", 10, -90),
    ("crosswind from the left, 8 m/s", 8 * MS, -90), ("pure cross from the right, 20 km/h", 20 * KMH, 90),
    ("helping, off the right, 10", 10, 135), ("10 into off the left", 10, -45),
    ("12 in off the right", 12, 45), ("down off the right 12", 12, 135),
    ("10 into, a little off the left", 10, -22.5), ("slightly helping, off the right, 10", 10, 112.5),
    ("mostly helping, 10, off the left", 10, -157.5), ("10 cross from the left, helping", 10, -112.5),
    ("30 degrees off the right, 12 mph", 12, 30), ("12 helping 20 degrees off the left", 12, -160),
    ("7,5 m/s into", 7.5 * MS, 0), ("10 knots into", 10 * KT, 0), ("15 kph into", 15 * KMH, 0),
    ("10 on the nose", 10, 0), ("wind in face, 10", 10, 0), ("10 L2R", 10, -90), ("R2L 10", 10, 90),
    ("quartering into from the right, 10 mph", 10, 45), ("helping, quartering from the left, 10", 10, -135),
    ("quartering from 2 o'clock, 10", 10, 60), ("ten mph down the fairway", 10, 180), ("12 blowing down the hole", 12, 180),
    ("right into us, 10", 10, 0), ("ten-ish into", 10, 0), ("right helping 10", 10, 135),
    ("one to two clubs into", 16.5, 0), ("club or two helping", 16.5, 180), ("a couple of clubs into", 22, 0), ("1-2 club wind against", 16.5, 0), ("right in our face 15", 15, 0),
    ("right behind us 15", 15, 180), ("right down the fairway, 10", 10, 180), ("10 from the right behind us", 10, 135), ("helping by ten mph", 10, 180),
    ("ten to fifteen mph from the left", 12.5, -90), ("fifteen into", 15, 0), ("a steady one from the left, 20 mph", 20, -90), ("a breeze of 6 mph, off the left", 6, -90),
]  # fmt: skip

# compass phrase -> mph, compass bearing it comes from
COMPASS = [
    ("12 mph NW", 12, 315), ("12 mph nnw", 12, 337.5), ("north-westerly 12", 12, 315),
    ("12 from the north west", 12, 315), ("12 mph from the west-south-west", 12, 247.5),
    ("15 knots south-westerly", 15 * KT, 225), ("from 240 degrees, 10 mph", 10, 240),
    ("10 mph 240°", 10, 240),
    ("10 mph from 240", 10, 240), ("12 mph to the north", 12, 180), ("northerly, 20 km/h", 20 * KMH, 0),
    ("24012KT", 12 * KT, 240), ("wind's 12 E", 12, 90),
]  # fmt: skip


@pytest.mark.parametrize(("text", "mph", "off_deg"), OFF_THE_SHOT)
def test_wind_about_the_shot(text, mph, off_deg):
    wind = read(text)
    assert wind.speed_mph == pytest.approx(mph)
    assert wind.from_deg == pytest.approx((ALONG + off_deg) % 360.0)


@pytest.mark.parametrize(("text", "mph", "bearing_deg"), COMPASS)
def test_wind_by_compass(text, mph, bearing_deg):
    wind = read(text)
    assert wind.speed_mph == pytest.approx(mph)
    assert wind.from_deg == pytest.approx((bearing_deg - NORTH_OF_Y) % 360.0)


@pytest.mark.parametrize("text", ["none", "calm", "still", "no wind", "0", "0 mph", "Dead calm", "flat calm", "nothing", "zero"])
def test_no_wind(text):
    assert read(text) is None


@pytest.mark.parametrize(
    ("text", "mph", "gust", "swing"),
    [
        ("12 gusting 18 into", 12, 6, 0), ("12 mph gusts of +-4 into", 12, 4, 0),
        ("12 ±4 mph into", 12, 4, 0),
        ("10-15 from the left", 12.5, 2.5, 0), ("10 to 14 mph into", 12, 2, 0),
        ("12 into, swinging 20", 12, 0, 20),
        ("12 mph into ± 15 degrees", 12, 0, 15), ("24010G14KT", 10 * KT, 4 * KT, 0),
        ("4 into gusting to 15", 4, 4, 0),  # never below nothing
    ],
)  # fmt: skip
def test_gusts_and_swings(text, mph, gust, swing):
    wind = read(text)
    assert (wind.speed_mph, wind.gust_mph, wind.swing_deg) == pytest.approx((mph, gust, swing))


def test_gusts_as_a_report_has_them():
    for text in ("10G20 into", "10 g 20, into", "10 gusting 20 into"):
        wind = read(text)
        assert (wind.speed_mph, wind.gust_mph) == (10.0, 10.0), text
    assert read("10G18kt into").speed_mph == pytest.approx(10.0 * KT)
    assert read("F4 into").speed_mph == read("force 4 into").speed_mph
    assert read("4 bft into").speed_mph == read("into, 4Beaufort").speed_mph == read("bft 4 into").speed_mph
    assert read("blowing south westerly 12").from_deg == read("south westerly 12").from_deg


def test_gusts_and_swings_as_options():
    assert read("12 into", gusts="4").gust_mph == 4.0
    assert read("12 into", gusts="+-2 m/s").gust_mph == pytest.approx(2 * MS)
    assert read("12 into", gusts="to 18 mph").gust_mph == pytest.approx(6.0)
    assert read("12 into", gusts="gusting 18").gust_mph == pytest.approx(6.0)
    assert read("12 into", gusts="5 either side").gust_mph == 5.0
    assert read("12 into", gusts="none").gust_mph == 0.0
    assert read("12 into", swing="±20 degrees").swing_deg == 20.0
    assert read("12 into", swing="20 either side").swing_deg == 20.0


@pytest.mark.parametrize(
    ("text", "mph", "clubs"),
    [
        ("one-club wind against", 11, "one-club"), ("two club wind into", 22, "2-club"),
        ("half a club into", 5.5, "0.5-club"), ("club and a half into", 16.5, "1.5-club"),
        ("1.5-club wind helping", 16.5, "1.5-club"), ("helping, off the right", 11, "no strength said"),
    ],
)  # fmt: skip
def test_clubs_of_wind_are_common_practice_and_say_so(text, mph, clubs):
    # common practice: 10 to 12 mph a club
    wind = read(text)
    assert wind.speed_mph == pytest.approx(mph)
    assert any(clubs in line and "10 to 12 mph" in line for line in wind.assumed)


def test_beaufort_by_number_and_name():
    # Beaufort 3, "gentle breeze": 8-12 mph; 4: 13-18 mph (as weather services print the scale, from memory)
    assert 8 <= read("gentle breeze off the left").speed_mph <= 12
    assert 13 <= read("force 4 into").speed_mph <= 18


@pytest.mark.parametrize(
    ("text", "mph"),
    # middles of the Beaufort scale's light (1-3: its 2), gentle, moderate, fresh, strong and gale, from memory
    [("strong headwind", 28.0), ("strong wind, into", 28.0), ("into, fresh", 21.5), ("moderate headwind", 15.5),
     # golfers' own words (common practice): stiff and brisk as fresh, mild as gentle
     ("stiff breeze into", 21.5), ("brisk wind helping", 21.5), ("into, stiff", 21.5), ("mild breeze against", 10.0),
     ("gentle wind against", 10.0), ("light wind into", 5.5), ("a gale in the face", 42.5), ("strong gale against", 50.5)],
)  # fmt: skip
def test_the_scales_adjectives_without_its_breeze(text, mph):
    wind = read(text)
    assert wind.speed_mph == mph
    assert any(f"taken as {mph:g} mph, the middle of Beaufort" in said for said in wind.assumed)


def test_an_adjective_and_a_number_are_two_strengths():
    with pytest.raises(UsageError, match=r"says the .* a second time"):
        read("strong headwind, 20 mph")


def test_height():
    assert read("8 mph into").height == "forecast"
    assert any("forecast" in line for line in read("8 mph into").assumed)
    assert read("felt here 8 mph into").height == "felt" and not read("felt here 8 mph into").assumed
    assert read("8 mph into", height="felt").height == "felt"
    with pytest.raises(UsageError, match="say one of the two"):
        read("as forecast, 8 mph into", height="felt")


def test_the_other_heights_figure():
    # log law over open ground, roughness 0.03 m: 2 m has 0.72 of the wind at 10 m
    at_10_m, at_head = at_both_heights(Wind(10.0, 0.0, "forecast"))
    assert at_10_m == 10.0 and at_head == pytest.approx(7.2, abs=0.05)
    at_10_m, at_head = at_both_heights(Wind(10.0, 0.0, "felt"))
    assert at_head == 10.0 and at_10_m == pytest.approx(13.8, abs=0.05)
    assert misread(misread(Wind(10.0, 5.0))) == Wind(10.0, 5.0)


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("12 mph from 2 oclok", "'oclok' is not understood (did you mean \"o'clock\"?)"),
        ("12 mph bananas into", "'bananas' is not understood"), ("12 hlping", "did you mean 'helping'?"),
        ("-5 mph into", "'-5'"), ("nan mph into", "'nan'"), ("inf into", "'inf'"),
        ("250 mph into", "0 to 60 mph"),
        ("12 12 into", "'12' says the speed a second time"), ("one-club 12 mph into", "second time"),
        ("one club hurting and one club left to right", 'one strength and one way: "1.5 clubs into, off the left"'),
        ("10 into and 5 off the left", "one strength and one way"),
        ("9 between 1 and 6 o'clock", "is no one direction"), ("9 between 13 and 2 o'clock", "on no clock"),
        ("9 between N and NE", 'say the middle: "NNE"'), ("9 from quarter past 2", 'say it in figures, "from 2:15"'),
        ("into helping 10", "'helping' contradicts 'into'"), ("left right 10", "'right' contradicts 'left'"),
        ("12 from 2 o'clock off the left", "'off the left' contradicts"),
        ("12 NW 3 o'clock", "second direction"),
        ("12 from 13 o'clock", "\"13 o'clock\" is on no clock"), ("12 from 400 degrees", "'400 degrees'"),
        ("from 2, 12 mph", "'from 2' may be a clock or a compass"), ("nnn 12", "'nnn' is no point"),
        ("right into, 12", "'right into' may be straight or off the right"),  # it was off the right
        ("12 in from the left", 'say "into, off the left" or "off the left"'), ("takes a club", 'say "one club into"'),
        ("over the left shoulder", "say which way and the side"), ("12 up the fairway", 'say "into" or "helping"'),
        ("ten mph", "where from is not said"), ("12 from the sea", "say where that lies"),
        ("12 mph", "where from is not said"), ("cross 12", "'cross' from which side?"),
        ("12 to", "'to' where?"),
        ("stiff breeze", "where from is not said"), ("gusty, into", "'gusty' is not understood; say how far"),
        ("12 into, gusting", "'gusting' is not understood; say how far"),
        ("12 swirling", "'swirling' is not understood; say how far its direction goes"),
        ("very windy, into", "'very' is not understood; say how strong"),
        ("hard into", "'hard' is not understood; say how strong"), ("prevailing", "say where it comes from"),
        ("12 mph slightly off the left", "'slightly' and what is the rest?"), ("force 11 into", "'force 11'"),
        ("12 gusting 8 into", "below the wind itself"),
        ("4 into, gusts of +-9", "gusts of +- 9 mph: 0 to 4 mph"),
        ("120 degrees off the left 12", "0 to 90 degrees"), ("", "nothing is said"),
        ("a" * 300, "300 letters"),
        ("12 into swinging 200", "0 to 180 degrees"),
        ("12 blowing left", "'blowing left' may be where it comes from or where it goes"),  # it was read from there
        ("blowing south west, 12", 'say "from south west" or "to south west"'),
        ("12 mph pushing right", 'say "from the right" or "to the right"'),
    ],
)  # fmt: skip
def test_refusals_point_at_the_word(text, named):
    with pytest.raises(UsageError) as caught:
        read(text)
    assert named in str(caught.value)
    assert "\n" not in str(caught.value) and len(str(caught.value)) < 400


@pytest.mark.parametrize(
    ("text", "say"),
    [
        ("quartering from the right, 12", '"into, off the right" or "helping, off the right"'),
        ("quartering 12 off the left", "from 10 o'clock"),
        ("12 mph quartering", "may be into or helping"),
        ("quartering into 12", "from which side"),
    ],
)
def test_a_quartering_wind_wants_both_its_parts(text, say):
    with pytest.raises(UsageError) as error:
        read(text)
    assert say in str(error.value) and "'quartering'" in str(error.value)


def test_compass_needs_the_holes_bearing():
    for text in ("12 mph NW", "12 mph from 240 degrees"):
        with pytest.raises(UsageError, match="bearing of this hole is not known"):
            read_wind(text, along_deg=0.0, y_bearing_deg=None)
    assert read_wind("12 from 3 o'clock", along_deg=0.0, y_bearing_deg=None).from_deg == 90.0


WORDS = [w for text, *_ in OFF_THE_SHOT + COMPASS for w in text.split()] + [
    "gusting",
    "±4",
    "swinging",
    "to",
    "-",
]


@settings(max_examples=400, deadline=None)
@given(
    st.text(max_size=60) | st.lists(st.sampled_from(WORDS), max_size=8).map(" ".join),
    st.floats(-720.0, 720.0),
    st.none() | st.floats(0.0, 360.0),
)
@example("12 mph\ninto\x00", 0.0, None)
@example("9" * 190 + " into", 0.0, None)
@example("١٢ mph into", -1e-300, 360.0)
def test_any_text_is_a_wind_or_one_line(text, along_deg, y_bearing_deg):
    try:
        wind = read_wind(text, along_deg=along_deg, y_bearing_deg=y_bearing_deg)
    except UsageError as error:
        assert "\n" not in str(error) and str(error).isprintable()
        return
    if wind is not None:
        assert 0.0 <= wind.from_deg < 360.0 and 0.0 <= wind.gust_mph <= wind.speed_mph <= 60.0
