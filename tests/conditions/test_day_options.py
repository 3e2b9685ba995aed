"""Air, firmness and speed of greens as people write them, and the day put together from options."""

from __future__ import annotations

import math

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from simulator.conditions import Conditions, Wind, conditions_from
from simulator.errors import UsageError


def day(**options):
    return conditions_from(**options, along_deg=0.0, y_bearing_deg=90.0)


@pytest.mark.parametrize(
    ("option", "text", "field", "value"),
    [
        ("temperature", "12 C", "temperature_c", 12.0), ("temperature", "55 F", "temperature_c", 12.7778),
        ("temperature", "-3°C", "temperature_c", -3.0), ("temperature", "12,5 C", "temperature_c", 12.5),
        ("temperature", "77 degrees Fahrenheit", "temperature_c", 25.0),
        ("altitude", "1200 m", "altitude_m", 1200.0), ("altitude", "3,000 ft", "altitude_m", 914.4),
        ("altitude", "5280 feet", "altitude_m", 1609.344), ("altitude", "-20 m", "altitude_m", -20.0),
        ("pressure", "1013 hPa", "pressure_hpa", 1013.0), ("pressure", "995", "pressure_hpa", 995.0),
        ("pressure", "29.92 inHg", "pressure_hpa", 1013.2), ("pressure", "101.3 kPa", "pressure_hpa", 1013.0),
        ("pressure", "760 mmHg", "pressure_hpa", 1013.3),
        ("pressure", "station 835 mbar", "pressure_hpa", 835.0),
        ("humidity", "60 %", "humidity", 0.6), ("humidity", "60", "humidity", 0.6),
        ("humidity", "0.6", "humidity", 0.6),
        ("humidity", "100%", "humidity", 1.0), ("humidity", "0", "humidity", 0.0),
        ("stimp", "10", "stimp_ft", 10.0), ("stimp", "10.5 ft", "stimp_ft", 10.5),
        ("stimp", "10'6\"", "stimp_ft", 10.5),
        ("stimp", "3 m", "stimp_ft", 9.8425), ("stimp", "fast", "stimp_ft", 12.0),
        ("stimp", "very fast", "stimp_ft", 13.0), ("stimp", "medium-fast", "stimp_ft", 11.0),
        ("stimp", "quick", "stimp_ft", 11.0), ("stimp", "average greens", "stimp_ft", 10.0),
        ("stimp", "stimping 10", "stimp_ft", 10.0), ("stimp", "10 on the stimp", "stimp_ft", 10.0),
        ("stimp", "ten", "stimp_ft", 10.0), ("stimp", "running at 10 and a half", "stimp_ft", 10.5),
        ("temperature", "minus two C", "temperature_c", -2.0), ("altitude", "three thousand ft", "altitude_m", 914.4),
        ("stimp", "9 to 10", "stimp_ft", 9.5), ("stimp", "9-10", "stimp_ft", 9.5),
        ("temperature", "minus 2 C", "temperature_c", -2.0), ("temperature", "about 12 C", "temperature_c", 12.0),
        ("altitude", "sea level", "altitude_m", 0.0),
    ],
)  # fmt: skip
def test_quantities(option, text, field, value):
    assert getattr(day(**{option: text}), field) == pytest.approx(
        value, abs=0.06 if field == "pressure_hpa" else 1e-3
    )


@pytest.mark.parametrize(
    ("text", "fairway", "green"),
    [
        ("firm", 1.0, 1.0), ("soft", 0.0, 0.0), ("0.3", 0.3, 0.3), ("medium-firm", 0.75, 0.75),
        ("soft fairways, medium greens", 0.0, 0.5), ("firm greens", 0.5, 1.0),
        ("fairways 0.2, greens 0.9", 0.2, 0.9),
        ("greens firm and fairways soft", 0.0, 1.0), ("fairway: firm", 1.0, 0.5),
        ("Wet fairways; firm greens", 0.0, 1.0),
        ("hard and fast", 1.0, 1.0), ("firm and fast fairways, receptive greens", 1.0, 0.25),
        ("greens medium to firm, fairways soft", 0.0, 0.75), ("firm-ish", 0.75, 0.75), ("fwys firm, grns soft", 1.0, 0.0),
        ("damp", 0.25, 0.25), ("a bit soft", 0.25, 0.25), ("quite firm", 0.75, 0.75), ("bone dry", 1.0, 1.0),
        ("running fairways, holding greens", 1.0, 0.25), ("the greens are firm, the fairways soft", 0.0, 1.0),
        ("heavy ground", 0.0, 0.0), ("playing firm", 1.0, 1.0), ("70 %", 0.7, 0.7), ("8 out of 10", 0.8, 0.8), ("greens 8/10, fairways 3 out of 5", 0.6, 0.8),
    ],
)  # fmt: skip
def test_firmness(text, fairway, green):
    found = day(firmness=text)
    assert (found.fairway_firmness, found.green_firmness) == (fairway, green)
    assert found.firmness_of("GREEN") == green and found.firmness_of("FAIRWAY") == fairway


def test_words_taken_for_a_step_or_a_reading_are_said():
    lines = day(firmness="firm fairways, receptive greens", stimp="quick").assumed
    assert "'receptive' taken as firmness 0.25, of 0 soft to 1 firm" in lines
    assert "'8 out of 10' taken as firmness 0.8, of 0 soft to 1 firm" in day(firmness="8 out of 10").assumed
    assert "'quick' greens taken as Stimp 11" in lines
    assert not [line for line in lines if "'firm'" in line]
    assert "'9 to 10' greens taken as Stimp 9.5" in day(stimp="9 to 10").assumed
    assert not [line for line in day(stimp="10 ft").assumed if "Stimp" in line]


def test_pressure_reduced_to_sea_level_is_turned_back():
    # ISO 2533:1975 (from memory): 89874.6 Pa at 1000 m where sea level has 101325
    assert day(altitude="1000 m", pressure="sea level 1013.25").pressure_hpa == pytest.approx(
        898.746, abs=0.01
    )
    # ICAO's rule of thumb: near sea level 1 hPa is 27 ft (from memory), so 270 ft take 10 hPa off
    assert day(altitude="270 ft", pressure="QNH 1020").pressure_hpa == pytest.approx(1010.0, abs=0.3)
    # a standard altimeter setting read at 5280 ft leaves the standard pressure there
    found = day(altitude="5280 ft", pressure="altimeter 29.92 inHg")
    assert found.pressure_hpa == pytest.approx(834.28, abs=0.3)
    assert found.pressure_pa == pytest.approx(100 * found.pressure_hpa)


def test_still_level_default():
    assert day() == Conditions()
    assert Conditions().pressure_pa == pytest.approx(101325.0)
    lines = " | ".join(day().assumed)
    for word in ("no wind", "sea level", "25 C", "50 %", "medium", "Stimp 10"):
        assert word in lines


def test_what_is_said_is_not_assumed():
    found = day(
        wind="12 mph NW felt here", gusts="4", swing="20", temperature="12 C", altitude="100 m",
        humidity="70 %", firmness="soft fairways, medium greens", stimp="9",
    )  # fmt: skip
    assert found.assumed == ()
    assert found.wind == Wind(12.0, 225.0, "felt", 4.0, 20.0)
    assert any("greens of medium" in line for line in day(firmness="soft fairways").assumed)
    assert any("not one reduced" in line for line in day(pressure="1000").assumed)


@pytest.mark.parametrize(
    ("options", "named"),
    [
        ({"temperature": "38"}, "12 C or 55 F"), ({"temperature": "hot"}, "'hot'"),
        ({"temperature": "nan C"}, "'nan C'"),
        ({"temperature": "90 C"}, "temperature 90 C: -20 to 50 C"), ({"temperature": "-40 F"}, "-20 to 50 C"),
        ({"altitude": "1200"}, "1200 m or 3,000 ft"), ({"altitude": "9000 m"}, "-450 to 4500 m"),
        ({"pressure": "1013", "altitude": "1200 m"}, "say 'sea level 1013'"),
        ({"pressure": "sea level 1020"}, "altitude is needed"),
        ({"pressure": "QNH 1020 station"}, "sea level 1020"),
        ({"pressure": "300 hPa"}, "550 to 1090 hPa"),
        ({"pressure": "sea level 500", "altitude": "0 m"}, "850 to 1090"),
        ({"humidity": "120 %"}, "0 to 100 %"), ({"humidity": "1"}, "1 % or 100 %"),
        ({"humidity": "damp"}, "'damp'"),
        ({"firmness": "squidgy"}, "'squidgy' is not understood"),
        ({"firmness": "1.4"}, "1.4 is outside 0 to 1"),
        ({"firmness": "fast greens"}, "the speed of the greens is --stimp"),
        ({"firmness": "not firm"}, "say how it is"), ({"firmness": "lush"}, "say how it plays"),
        ({"firmness": "after rain"}, "say how it plays"), ({"firmness": "frozen"}, "is not tabled"),
        ({"temperature": "warm"}, "such as 22 C or 72 F"), ({"temperature": "38 degrees"}, "12 C or 55 F"),
        ({"wind": "12 into", "swing": "one hour"}, "an hour of the clock is 30"),
        ({"firmness": "soft fairways, soggy bunkers"}, "'bunkers' is not understood"),
        ({"firmness": "firm fairways soft fairways"}, "said twice"),
        ({"firmness": "fairways"}, "fairway how firm?"),
        ({"firmness": "firm, soft"}, "which"), ({"firmness": ""}, "how firm?"),
        ({"firmness": "-0.2"}, "-0.2 is outside"), ({"firmness": "7"}, 'outside 0 to 1; say "7 out of 10"'),
        ({"firmness": "soft to firm"}, "say the middle"), ({"firmness": "35 out of 10"}, "35 is outside 0 to 1"),
        ({"stimp": "30"}, "4 to 16 ft"), ({"stimp": "greasy"}, "'greasy'"), ({"stimp": "10'13\""}, "12 inches"),
        ({"gusts": "4"}, "gusts given without a wind"), ({"wind_at": "felt"}, "without a wind"),
        ({"wind": "12 into", "wind_at": "roof"}, "'roof'"), ({"wind": "12 into", "gusts": "lots"}, "'lots'"),
        ({"wind": "12 into", "swing": "much"}, "'much'"),
        ({"wind": "calm", "gusts": "4"}, "say one of the two"),
        ({"wind": "12 gusting 15 into", "gusts": "4"}, "said twice"),
        ({"wind": "4 into", "gusts": "6"}, "0 to 4 mph"),
    ],
)  # fmt: skip
def test_refusals(options, named):
    with pytest.raises(UsageError) as caught:
        day(**options)
    assert named in str(caught.value)
    assert "\n" not in str(caught.value)


@pytest.mark.parametrize(
    "bad",
    [
        {"temperature_c": math.nan}, {"altitude_m": math.inf}, {"pressure_hpa": 0.0}, {"humidity": 60.0},
        {"fairway_firmness": -0.1}, {"green_firmness": math.nan}, {"stimp_ft": 0.0}, {"stimp_ft": True},
        {"wind": "12 mph"}, {"temperature_c": "12"},
    ],
)  # fmt: skip
def test_bad_numbers_are_refused(bad):
    with pytest.raises(UsageError):
        Conditions(**bad)


@pytest.mark.parametrize(
    "bad",
    [(250.0, 0.0), (math.nan, 0.0), (10.0, 360.0), (10.0, -1.0), (10.0, 0.0, "roof"),
     (10.0, 0.0, "felt", 11.0),
     (10.0, 0.0, "felt", math.nan), (10.0, 0.0, "felt", 1.0, 181.0)],
)  # fmt: skip
def test_bad_winds_are_refused(bad):
    with pytest.raises(UsageError):
        Wind(*bad)


NAMES = ["temperature", "altitude", "pressure", "humidity", "firmness", "stimp", "wind", "wind_at"]
BITS = [
    "12",
    "C",
    "F",
    "m",
    "ft",
    "hPa",
    "sea level",
    "%",
    "firm",
    "soft",
    "greens",
    "fairways",
    ",",
    "'",
    "-",
    "1e9",
    "0.5",
]


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(NAMES), st.text(max_size=30) | st.lists(st.sampled_from(BITS), max_size=5).map(" ".join)
)
@example("altitude", "9" * 400 + " m")
@example("pressure", "9" * 400)
@example("humidity", "9" * 400)
@example("stimp", "9" * 400 + "'6\"")
@example("temperature", "9" * 400 + " F")
@example("firmness", "9" * 400)
def test_any_text_is_a_day_or_one_line(name, text):
    try:
        found = day(**{name: text})
    except UsageError as error:
        assert "\n" not in str(error) and len(str(error)) < 400
        return
    assert isinstance(found, Conditions)
