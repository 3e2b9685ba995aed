"""The answer screen: size, verdicts, figures equal to the answer's, words that must not appear."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import fake_answers
import numpy as np
import pytest

from simulator.conditions import Conditions, Wind
from simulator.hole import load_hole, pin_from_words
from simulator.player import load_player
from simulator.report import chosen, figures, phrases
from simulator.report.daywords import day_sentence
from simulator.report.lines import indifference, point_words, pointing, reach_words, room_of
from simulator.report.screen import COLUMNS
from simulator.report.text import LINES, answer_screen, caption, room_for_turns
from simulator.report.units import YARDS
from simulator.strategy.alternative import Alternative
from simulator.strategy.confidence import Flip
from simulator.strategy.errorbars import Estimate
from simulator.strategy.places import place
from simulator.strategy.pointing import Pointing
from simulator.strategy.reach import Reach
from simulator.strategy.result import Answer

WEDGES = (
    {"club": "7-iron", "carry_yd": 150.0, "score": 3.41, "aim_offset_yd": 2.0},
    {"club": "6-iron", "carry_yd": 160.0, "score": 3.52, "difference": 0.11, "aim_offset_yd": -1.0},
    {"club": "8-iron", "carry_yd": 135.0, "score": 3.77, "difference": 0.36},
)


def test_the_screen_is_24_lines_of_80_columns() -> None:
    assert (LINES, COLUMNS) == (24, 80)



def approach(played: int | None = None) -> Answer:
    hole = load_hole("withy-drain")
    start = place("164 out, left rough", hole, played)
    return fake_answers.answer(hole, "isolde", start=start, question="plan", clubs=WEDGES)


def level() -> Answer:
    """Two clubs that cannot be told apart."""
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[1] |= {"score": 5.32, "difference": 0.01}
    return fake_answers.answer(clubs=tuple(clubs), tied=(0, 1))


def cases() -> dict[str, Answer]:
    return {
        "clear": fake_answers.answer(),
        "either": level(),
        "approach": approach(),
        "played": approach(1),
        "par 3": fake_answers.answer("eel-trap", question="plan", clubs=WEDGES),
        "par 5": fake_answers.answer("long-sluice", "isolde"),
        "alone": fake_answers.answer(clubs=({"club": "driver", "carry_yd": 196.0, "score": 5.4},)),
        "plain": fake_answers.answer(load_hole("par 4, 380"), clubs=({"club": "driver", "carry_yd": 196.0, "score": 5.4}, {"club": "3-wood", "carry_yd": 178.0, "score": 5.7, "difference": 0.3})),
        "warned": fake_answers.answer(warnings=("value map and sequences differ",)),
    }


@pytest.mark.parametrize("name", cases())
def test_fits_the_screen(name: str) -> None:
    note = "No --player given, so the demo player Barnaby plays."
    lines = answer_screen(cases()[name], (note,)).splitlines()
    assert len(lines) <= LINES
    assert max(map(len, lines)) <= COLUMNS


@pytest.mark.parametrize("name", cases())
def test_what_turns_an_answer_is_asked_for_wherever_it_would_be_shown(name: str) -> None:
    """Where the screen has no room for it, it is the same screen without: then it need not be worked out."""
    bare = cases()[name]
    turned = replace(bare, flips=(Flip("wind_along", "", "mph", (-12.0, 12.0), 6.0, len(bare.alternatives) - 1),))
    if not room_for_turns(bare):
        assert answer_screen(turned) == answer_screen(bare)
    elif len(bare.alternatives) > 1 and len(answer_screen(bare).splitlines()) < LINES - 1:
        assert "It would be the" in answer_screen(turned)


def test_some_screens_have_room_for_what_turns_them_and_some_have_not() -> None:
    assert {room_for_turns(answer) for answer in cases().values()} == {True, False}


@pytest.mark.parametrize("name", cases())
def test_cautions_and_forbidden_words(name: str) -> None:
    text = " ".join(answer_screen(cases()[name]).split())
    assert "not during a round (Rules of Golf 4.3)" in text
    assert "local rules and the committee decide" in text
    assert "Nobody ahead nearer than 273 yd; 1 in 20 finish wider than" in text
    assert not re.search(r"\bsafe|cannot|±|\+-|\bnan\b|\binf\b", text, re.IGNORECASE)
    assert "\N{NO-BREAK SPACE}" not in text


def test_clear_verdict_names_club_line_and_leave() -> None:
    answer = fake_answers.answer()
    first = answer_screen(answer).splitlines()[0]
    low, high = answer.best.leaves_yd["p10"].value, answer.best.leaves_yd["p90"].value
    assert first.startswith("Hit the 3-wood: clearly better, by a shot every eight times you play this hole")
    text = " ".join(answer_screen(answer).split())
    assert "(0.13)" in text
    assert f"Point at the middle of the fairway; it leaves {low:.0f} to {high:.0f} yd." in text


def test_equal_verdict_names_both_and_trust() -> None:
    text = " ".join(answer_screen(level()).split())
    assert text.startswith("3-wood or driver: either will do, hit the one you trust. Point each of them at")
    assert "ahead by" not in text and "better, by" not in text


def test_a_better_club_nobody_asked_about() -> None:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0]["asked"] = False
    better = answer_screen(fake_answers.answer(clubs=tuple(clubs)))
    words = "Hit the 3-wood: clearly better than the driver, though you did not ask about it, by a shot every"
    assert " ".join(better.split()).startswith(words)
    clubs[1] |= {"score": 5.32, "difference": 0.01}
    tied = answer_screen(fake_answers.answer(clubs=tuple(clubs), tied=(0, 1))).splitlines()
    assert "(you did not ask about the 3-wood)" in " ".join(tied[:2])


def test_three_clubs_and_one_club() -> None:
    clubs = tuple(dict(WEDGES[k], score=3.41 + 0.01 * k, difference=0.01 * k) for k in range(3))
    three = " ".join(answer_screen(fake_answers.answer("eel-trap", clubs=clubs, tied=(0, 1, 2))).split())
    assert three.startswith("7-iron, 6-iron or 8-iron: any of them will do, hit the one you trust")
    one = fake_answers.answer(clubs=({"club": "driver", "carry_yd": 196.0, "score": 5.4, "asked": True},))
    assert answer_screen(one).startswith("Hit the driver: no other club of this bag is better here.")


def test_both_asked_clubs_beaten() -> None:
    clubs = (
        {"club": "5-hybrid", "carry_yd": 160.0, "score": 5.2},
        {"club": "3-wood", "carry_yd": 178.0, "score": 5.3, "difference": 0.1, "asked": True},
        {"club": "driver", "carry_yd": 196.0, "score": 5.4, "difference": 0.2, "asked": True},
    )
    text = answer_screen(fake_answers.answer(clubs=clubs))
    words = "Hit the 5-hybrid: clearly better than both, though you did not ask about it, by a shot every ten times"
    assert " ".join(text.split()).startswith(words)
    header = next(line for line in text.splitlines() if "5-hybrid" in line and "driver" in line)
    assert header.split() == ["5-hybrid", "3-wood", "driver"]


def row(text: str, label: str) -> list[str]:
    line = next(line for line in text.splitlines() if line.startswith(label))
    return re.split(r"\s{2,}", line[len(label) :].strip())


def test_counts_are_those_of_the_answer() -> None:
    answer = fake_answers.answer()
    text = answer_screen(answer)
    for k, one in enumerate(answer.alternatives):
        chance = {name: e.value for name, e in one.chances.items() if e is not None}
        shares = (chance["birdie_or_better"] + chance["par"], chance["bogey"], chance["double_or_worse"])
        counts = [int(row(text, label)[k]) for label in ("par or better", "bogey", "double or worse")]
        assert sum(counts) == 100
        assert all(abs(c - 100.0 * s) < 1.0 for c, s in zip(counts, shares, strict=True))
        assert row(text, "average score")[k] == f"{one.score.value:.2f}"
        drain = row(text, "ball in withy drain")[k]
        share = one.features["withy drain"].value
        rare = f"1 in {figures._two_figures(1 / share)}"
        assert drain == (str(round(100 * share)) if share >= 0.005 else rare)


def test_no_par_words_without_a_count_of_strokes() -> None:
    text = answer_screen(approach())
    assert "par or better" not in text and "bogey" not in text
    assert row(text, "average strokes from here") == ["3.41", "3.52", "3.77"]
    known = answer_screen(cases()["played"])
    assert "par or better" in known and "1 played" in known


def test_no_fairway_on_a_par_3() -> None:
    text = answer_screen(cases()["par 3"])
    assert "fairway" not in text and "on the green" in text


def test_never_seen_is_fewer_than_one_in_a_third() -> None:
    assert figures.count_words(0.0, 20_000) == "fewer than 1\N{NO-BREAK SPACE}in\N{NO-BREAK SPACE}6,666"
    alone = fake_answers.answer(clubs=({"club": "7-iron", "carry_yd": 130.0, "score": 5.4},), n=2000)
    assert "Fewer than 1 in 666 with these clubs" in " ".join(answer_screen(alone).split())


def test_trouble_that_matters_is_kept_before_what_does_not() -> None:
    text = answer_screen(fake_answers.answer("long-sluice", "isolde", clubs=(
        {"club": "driver", "carry_yd": 224.0, "score": 5.0, "aim_offset_yd": 25.0, "spread_deg": 9.0},
    )))  # fmt: skip
    troubles = [line for line in text.splitlines() if line.startswith("ball in")]
    assert troubles[0].startswith("ball in pump-house field")


@pytest.mark.parametrize(
    ("error", "words"),
    [(0.0005, "4.57"), (0.004, "4.57"), (0.012, "4.6"), (0.09, "4.6"), (0.3, "5"), (0.0, "4.57")],
)
def test_only_the_digits_that_the_error_supports(error: float, words: str) -> None:
    assert figures.score_words(Estimate(4.567, error)) == words


def test_what_the_brave_play_gains_and_costs() -> None:
    clubs = [dict(c) for c in fake_answers.answer.__kwdefaults__["clubs"]]
    clubs[0]["shares"], clubs[1]["shares"] = (0.1, 0.4, 0.4), (0.2, 0.4, 0.1)
    words = phrases.trade(fake_answers.answer(clubs=tuple(clubs)))
    found = re.fullmatch(
        r"Against the 3-wood, the driver gains (\d+) pars but costs (\d+) doubles and (\d+) penalties "
        r"in 100 plays\.",
        words,
    )
    assert found
    # 10 and 20 by construction, three standard errors either side
    assert 7 <= int(found[1]) <= 13 and 16 <= int(found[2]) <= 24


def test_two_that_come_out_alike_say_which_of_them_leaves_more() -> None:
    """From somewhere on the hole with its strokes unsaid, where no par counts: not "in 100 plays" of nothing."""
    made = _scored(*2 * [np.repeat([3, 4, 5], [10, 60, 30])], driver_score=5.31)  # type: ignore[arg-type]
    pair = made.alternatives
    far = replace(pair[1], leaves_yd={**pair[1].leaves_yd, "p50": Estimate(pair[0].leaves_yd["p50"].value + 12.4, 0.1)})
    alike = replace(far, difference=Estimate(0.0, 0.01))
    start = replace(made.start, played=None)
    words = phrases.trade(replace(made, start=start, tied=(0, 1), alternatives=(pair[0], alike)))
    who, more, other = re.fullmatch(r"The (.+) leaves 12 yd (more|less) than the (.+)\.", words).groups()  # type: ignore[union-attr]
    assert {who, other} == {"driver", "3-wood"} and (who == "driver") == (more == "more")
    near = replace(alike, leaves_yd={**alike.leaves_yd, "p50": Estimate(pair[0].leaves_yd["p50"].value + 1.0, 0.1)})
    assert phrases.trade(replace(made, start=start, tied=(0, 1), alternatives=(pair[0], near))) == ""
    played = phrases.trade(replace(made, tied=(0, 1), alternatives=(pair[0], near)))
    assert re.fullmatch(r"In 100 plays the (.+) and the (.+) come out alike\.", played)


def test_birdies_are_named_where_they_part_two_clubs() -> None:
    """Pars and better hide what a scratch player's brave play gains; bogeys and doubles then fill the sum."""
    par = fake_answers.answer().hole.par
    steady = np.repeat([par - 1, par, par + 1], [20, 75, 5])
    brave = np.repeat([par - 1, par, par + 1, par + 2], [40, 52, 7, 1])
    words = phrases.trade(_scored(steady, brave))
    assert words == (
        "Against the 3-wood, the driver gains 20 birdies but costs 2 bogeys and 1 double in 100 plays."
    )
    # fewer birdies than make a sentence: the pars are told as ever, and no "gains nothing" of the lower average
    brave = np.repeat([par - 1, par, par + 2], [22, 70, 8])
    words = phrases.trade(_scored(steady, brave))
    assert words.startswith("Against the 3-wood, the driver loses 3 pars and costs 8 doubles in 100 plays;")
    assert words.endswith("its average is the lower one all the same.")
    words = phrases.trade(_scored(steady, brave, driver_score=5.5))
    assert words == (
        "Against the 3-wood, the driver gains nothing: it loses 3 pars and costs 8 doubles in 100 plays."
    )


def _scored(steady: np.ndarray, brave: np.ndarray, driver_score: float = 5.2) -> Answer:
    """The fake answer with these scores of the 3-wood and the driver, and no penalties to tell."""
    made = fake_answers.answer()
    par = made.hole.par

    def told(one: Alternative, scores: np.ndarray, average: float) -> Alternative:
        hits = {
            "birdie_or_better": scores < par, "par": scores == par,
            "bogey": scores == par + 1, "double_or_worse": scores > par + 1, "penalty_this_shot": scores < 0,
        }  # fmt: skip
        chances = {**one.chances, **{name: Estimate(float(hit.mean()), 0.0) for name, hit in hits.items()}}
        return replace(one, chances=chances, score=Estimate(average, 0.004))

    pair = (told(made.alternatives[0], steady, 5.31), told(made.alternatives[1], brave, driver_score))
    return replace(made, alternatives=pair)


def test_trouble_that_has_no_row_is_told_together() -> None:
    """Penalty first, then what is met most; nothing of the sum is lost."""
    rows = [chosen.TroubleRow("lane (out)", (0.01, 0.04), True), chosen.TroubleRow("pond", (0.02, 0.1), True),
            chosen.TroubleRow("alders", (0.01, 0.01)), chosen.TroubleRow("reeds", (0.04, 0.08))]  # fmt: skip
    assert chosen.fewer_rows(rows, 4) == rows
    assert [row.words for row in chosen.fewer_rows(rows, 3)] == ["lane (out)", "pond", "other trouble"]
    for most in (3, 2, 1):
        fewer = chosen.fewer_rows(rows, most)
        assert len(fewer) == most
        assert [sum(s) for s in zip(*(row.shares for row in fewer), strict=True)] == pytest.approx(
            [0.08, 0.23]
        )
    assert chosen.fewer_rows(rows, 1)[0].words == "any trouble"


def test_in_hundred_adds_up() -> None:
    assert figures.in_hundred([0.485, 0.315, 0.2]) in ([49, 31, 20], [48, 32, 20])
    assert sum(figures.in_hundred([1 / 3, 1 / 3, 1 / 3])) == 100
    assert figures.in_hundred([0.999, 0.001]) == [100, 0]


def test_width_of_one_in_twenty_is_that_of_the_finishes() -> None:
    """Normal turns of 6 degrees: 1 in 20 is beyond 1.96 standard deviations (normal table)."""
    one = fake_answers.answer(n=20_000).alternatives[1]
    expected = math.sin(math.radians(1.96 * 6.0)) * (196.0 * 0.97 + 12.0)
    assert abs(one.wide_yd.value - expected) < 3.0


def test_the_sentence_adds_up_with_the_table() -> None:
    for seed in range(20):
        both = fake_answers.answer.__kwdefaults__["clubs"]
        clubs = [dict(c, seed=100 * seed + k) for k, c in enumerate(both)]
        answer = fake_answers.answer(clubs=tuple(clubs), n=700)
        text, words = answer_screen(answer), phrases.trade(answer)
        better = [int(cell) for cell in row(text, "par or better")]
        doubles = [int(cell) for cell in row(text, "double or worse")]
        driver_is_braver = words.startswith("Against the 3-wood")
        assert driver_is_braver
        gain, cost = better[1] - better[0], doubles[1] - doubles[0]
        said = {m[2]: int(m[1]) for m in re.finditer(r"(\d+) (par|birdie|bogey|double)s?\b", words)}
        assert said.get("double", 0) == abs(cost)
        if "birdie" in said:  # told for the pars, which hide them
            bogeys = [int(cell) for cell in row(text, "bogey")]
            assert said.get("bogey", 0) == abs(bogeys[1] - bogeys[0])
        else:
            assert said.get("par", 0) == abs(gain)


@pytest.mark.parametrize(
    ("aims", "words"),
    [
        ((-15.0, -3.0), "Anywhere from 6 left to 6 right of that line plays alike."),
        ((-9.0, -2.0), "Anywhere from that line to 7 right of it plays alike."),
        ((-18.0, -8.8), "Anywhere from that line to 9 left of it plays alike."),
    ],
)
def test_a_line_that_is_itself_an_end_is_named(aims: tuple[float, float], words: str) -> None:
    found = fake_answers.answer()
    first = replace(found.alternatives[0], aims_yd=aims)  # aimed 9 left
    assert indifference(replace(found, alternatives=(first, *found.alternatives[1:]))) == words


def test_the_end_of_a_room_beyond_the_line_says_which_end_it_is() -> None:
    """Not "4 right (alders), open right"."""
    found = fake_answers.answer()
    room = found.alternatives[0].room
    assert room is not None
    beyond = replace(room, left_edge_yd=4.0, left_closed_by="alders", right_edge_yd=None, right_closed_by=None)
    assert "from 4 right (alders), open right;" in room_of(beyond, YARDS)
    beyond = replace(room, left_edge_yd=None, left_closed_by=None, right_edge_yd=-6.0, right_closed_by="alders")
    assert "open left, to 6 left (alders);" in room_of(beyond, YARDS)


@pytest.mark.parametrize(("across", "verb"), [(False, "finish"), (True, "carry")])
def test_a_boundary_beside_the_line_is_nothing_to_carry(across: bool, verb: str) -> None:
    """Not "carry at least 203 (lane), ... to 34 right (lane)": a line that leads away from it, none over it."""
    found = fake_answers.answer()
    room = found.alternatives[0].room
    assert room is not None
    beside = replace(
        room, carry_at_least_yd=203.0, carry_over="lane", lies_across=across, right_closed_by="lane"
    )
    assert room_of(beside, YARDS).startswith(f"Room (yd): {verb} at least 203 (lane), ")


def test_trouble_ahead_is_told_in_words_that_fit_one_and_many() -> None:
    """Not "the alders starts at 268"."""
    found = fake_answers.answer()
    reach = Reach("alders", 268.0, Estimate(202.0, 0.5), Estimate(208.0, 0.5), None, None)
    first = replace(found.alternatives[0], reach=(reach,))
    words, _ = reach_words(replace(found, alternatives=(first, *found.alternatives[1:])))
    assert words == (
        "Reach: 999 of 1,000 carry under 202 and finish short of 208, 60 to spare today to the alders at 268."
    )


def test_every_line_of_a_club_is_told_where_it_points() -> None:
    """Those of a compare as they were asked for too: left and right alone do not say which was which."""
    two = (
        {"club": "driver", "carry_yd": 196.0, "score": 5.2, "aim_offset_yd": -26.0},
        {"club": "driver", "carry_yd": 196.0, "score": 5.21, "difference": 0.01, "aim_offset_yd": 10.0},
    )
    found = fake_answers.answer(tied=(0, 1), clubs=two)
    ones = tuple(
        replace(one, point=Pointing("pin", "the straight line to the pin", one.aim_offset_yd))
        for one in found.alternatives
    )
    assert pointing(replace(found, alternatives=ones)).startswith(
        "Point the driver (left line): 26 yd left of the straight line to the pin; the driver (right line): 10 yd "
        "right of the straight line to the pin."
    )
    far = replace(found.alternatives[1], difference=Estimate(0.2, 0.004))
    asked = tuple(replace(one, aim_given=True, asked=True) for one in (found.alternatives[0], far))
    left, right = (point_words(one.point) for one in asked)
    said = pointing(replace(found, alternatives=asked, tied=(0,)))
    assert said.startswith(f"Point {left} (26 left of the pin line); it leaves ")
    assert said.endswith(f" The driver (right line) points {right} (10 right of the pin line).")
    straight = replace(asked[1], aim_offset_yd=0.0)
    assert pointing(replace(found, alternatives=(asked[0], straight), tied=(0,))).endswith("(at the pin).")


def test_a_pin_in_paces_is_said_as_paces() -> None:
    hole = load_hole("withy-drain")
    for pin, words in (("22 on, 5 left", "white tee, pin 22 on, 5 left;"), ("back right", "white tee, back right pin;")):
        assert words in caption(fake_answers.answer(pin_from_words(hole, pin)))


def test_gusts_and_swings_are_said() -> None:
    wind = Wind(12.0, 0.0, "forecast", 4.0, 20.0)
    found = replace(fake_answers.answer(), conditions=replace(Conditions(), wind=wind))
    assert day_sentence(found).startswith("Wind 12 +- 4 mph from 12 o'clock of the shot, +- 20 degrees, taken as forecast")
    steady = replace(found, conditions=replace(Conditions(), wind=Wind(12.0, 0.0)))
    assert day_sentence(steady).startswith("Wind 12 mph from 12 o'clock of the shot, taken as forecast")


def test_a_player_in_words_has_no_file() -> None:
    words = fake_answers.answer(player=load_player("handicap 15, driver 205"))
    assert "from the words" in phrases.whose(words) and "the file" not in phrases.whose(words)
    assert "from the file" in phrases.whose(fake_answers.answer())


def test_a_carry_put_beside_those_given_is_not_all_the_levels():
    """With "driver 170" every other club is shorter too: of an iron it said "all from the level"."""
    clubs = ({"club": "7-iron", "carry_yd": 120.0, "score": 3.2, "asked": True},)
    told = [
        phrases.whose(fake_answers.answer("eel-trap", load_player(words), clubs=clubs))
        for words in ("handicap 9, driver 170", "handicap 9")
    ]
    assert "carries from the words and the level, the rest from the level" in told[0]
    assert "all from the level" in told[1]
