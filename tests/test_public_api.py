"""What `from simulator import ...` promises, and that importing it is instant."""

from __future__ import annotations

import inspect
import subprocess
import sys

import pytest

HEAVY = ("numba", "numpy", "scipy", "shapely", "matplotlib", "typer")


def test_the_four_names() -> None:
    from simulator import compare, load_hole, load_player, plan

    hole, player = load_hole("eel-trap"), load_player("isolde")
    assert (hole.par, player.name) == (3, "Isolde")
    answer = plan(hole, player, sequences=100, seed=3, quick=True)
    both = compare(hole, player, ["6-iron"], sequences=100, seed=3, quick=True)
    assert answer.to_dict()["seed"] == both.to_dict()["seed"] == 3


def test_signatures() -> None:
    from simulator import compare, plan

    for function, places in ((plan, ["hole", "player"]), (compare, ["hole", "player", "clubs"])):
        parameters = inspect.signature(function).parameters
        positional = [n for n, p in parameters.items() if p.kind is p.POSITIONAL_OR_KEYWORD]
        assert positional == places
        assert {"conditions", "start", "sequences", "seed"} <= set(parameters)
        assert parameters["sequences"].default == 20_000
        assert parameters["conditions"].default is None and parameters["start"].default is None


def test_import_is_light() -> None:
    code = f"import sys, simulator; print([name for name in {HEAVY!r} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_unknown_name() -> None:
    import simulator

    with pytest.raises(AttributeError, match="no attribute 'planner'"):
        simulator.planner  # noqa: B018
    assert set(simulator.__all__) == {"compare", "load_hole", "load_player", "plan"}


def _asked(**other: object) -> dict[str, object]:
    from simulator import load_hole, load_player

    return {"hole": load_hole("eel-trap"), "player": load_player("isolde"), "sequences": 100, **other}


@pytest.mark.parametrize(("other", "said"), [
    ({"hole": "eel-trap"}, r"hole 'eel-trap'; allowed: a Hole \(load_hole gives one\)"),
    ({"player": "isolde"}, r"player 'isolde'; allowed: a Player \(load_player gives one\)"),
    ({"conditions": "12 mph against"}, "conditions '12 mph against'; allowed: a Conditions .*conditions_from.*or None"),
    ({"start": "164 out"}, "start '164 out'; allowed: a Start .*places.place gives one from words; or None"),
    ({"goal": "4"}, "goal '4'; allowed: a Goal .*read_goal gives one from words; or None"),
    ({"sequences": 1e3}, "sequences 1000.0; allowed: a whole number from 100 to 1000000"),
    ({"sequences": 99}, "sequences 99; allowed"),
    ({"sequences": True}, "sequences True; allowed"),
    ({"seed": -1}, "seed -1; allowed: a whole number from 0 to 4294967295"),
    ({"seed": 2**32}, "seed 4294967296; allowed"),
    ({"threads": 0}, "threads 0; allowed: a whole number from 1 to 256"),
])  # fmt: skip
def test_what_cannot_be_meant_is_refused_in_one_line(other: dict[str, object], said: str) -> None:
    from simulator import plan
    from simulator.errors import UsageError

    with pytest.raises(UsageError, match=said) as refused:
        plan(**_asked(**other))  # type: ignore[arg-type]
    assert "\n" not in str(refused.value)


def test_one_club_in_quotes_is_no_list_of_letters() -> None:
    from simulator import compare
    from simulator.errors import UsageError
    from simulator.strategy.lesson import lesson

    for ask in (compare, lesson):
        with pytest.raises(UsageError, match=r"clubs '6-iron'; allowed: a list of clubs, \['6-iron'\]"):
            ask(clubs="6-iron", **_asked())  # type: ignore[operator]


def test_other_questions_refuse_names_in_place_of_things_too() -> None:
    from simulator import load_hole, load_player
    from simulator.errors import UsageError
    from simulator.hole import load_course
    from simulator.strategy.course import play_course
    from simulator.strategy.practice import practice
    from simulator.strategy.review import review

    hole, player = load_hole("eel-trap"), load_player("isolde")
    with pytest.raises(UsageError, match="hole 'eel-trap'"):
        review("eel-trap", player, "6-iron on; 2 putts")  # type: ignore[arg-type]
    with pytest.raises(UsageError, match="player 'isolde'"):
        practice(hole, "isolde", sequences=100)  # type: ignore[arg-type]
    with pytest.raises(UsageError, match="course 'ostrel-heath'"):
        play_course("ostrel-heath", [player])  # type: ignore[arg-type]
    with pytest.raises(UsageError, match="player 'isolde'"):
        play_course(load_course("ostrel-heath"), ["isolde"])  # type: ignore[list-item]
    with pytest.raises(UsageError, match=r"sequences 5\.5"):
        play_course(load_course("ostrel-heath"), player, sequences=5.5)  # type: ignore[arg-type]


def test_what_a_notebook_shows_of_an_answer_is_short_and_names_it() -> None:
    from simulator import compare
    from simulator.conditions import conditions_from
    from simulator.strategy.review import review

    asked = _asked(conditions=conditions_from("10 mph against"))
    answer = compare(clubs=["6-iron", "7-iron"], quick=True, **asked)  # type: ignore[arg-type]
    for one, names in (
        (answer, ("compare of Eel Trap", "Isolde", "6-iron", "7-iron", f"{answer.best.score.value:.3f}", answer.verdict)),
        (answer.best, (answer.best.club, f"{answer.best.aim_offset_yd:+.1f} yd")),
        (answer.hole, ("Eel Trap", "par 3", "white", answer.hole.pin.name)),
        (answer.player, ("Isolde", "handicap 5", "driver")),
    ):  # fmt: skip
        shown = repr(one)
        assert len(shown) < 600 and "\n" not in shown
        assert not [name for name in names if name not in shown], shown
    played = review(asked["hole"], asked["player"], "6-iron on; 2 putts")  # type: ignore[arg-type]
    assert played.score == 3


NO_TEXT = [None, 5, float("nan"), ["x"], b"x"]


@pytest.mark.parametrize("given", NO_TEXT)
def test_what_is_no_text_where_words_are_read_is_refused_in_one_line(given: object) -> None:
    from simulator import compare, load_hole, load_player
    from simulator.errors import UsageError
    from simulator.hole import load_course
    from simulator.strategy.places import place

    hole, player = load_hole("eel-trap"), load_player("isolde")
    for ask in (
        load_hole, load_player, load_course, hole.with_pin, hole.with_tee, player.club,
        lambda one: player.without([one]), lambda one: place(one, hole),
        lambda one: compare(hole, player, [one], sequences=100, quick=True),
    ):  # fmt: skip
        with pytest.raises(UsageError, match="allowed") as refused:
            ask(given)  # type: ignore[operator]
        assert "\n" not in str(refused.value)


@pytest.mark.parametrize("played", [-1, 61, 1.5, float("nan"), "2", True])
def test_strokes_played_are_a_count(played: object) -> None:
    """-1 played was an answer of one stroke less, not a number one of none at all."""
    from simulator import load_hole
    from simulator.errors import UsageError
    from simulator.strategy.places import place

    with pytest.raises(UsageError, match=r"played .*; allowed: a whole number from 0 to 60"):
        place("40 out", load_hole("eel-trap"), played=played)  # type: ignore[arg-type]
    with pytest.raises(UsageError, match="hole 'eel-trap'; allowed: a Hole"):
        place("40 out", "eel-trap")  # type: ignore[arg-type]


def test_a_day_takes_numbers_as_they_would_be_typed() -> None:
    """As a file of scenarios does; where a number alone says too little the words' own refusal stands."""
    from simulator.conditions import conditions_from
    from simulator.errors import UsageError

    words = conditions_from("12 mph against", gusts="4", swing="20", firmness="0.8", stimp="11", humidity="0.6")
    numbers = conditions_from("12 mph against", gusts=4, swing=20.0, firmness=0.8, stimp=11, humidity=0.6)
    assert numbers == words
    with pytest.raises(UsageError, match="temperature '38': allowed: a number with its scale"):
        conditions_from(temperature=38)
    for name in ("wind", "temperature", "altitude", "pressure", "humidity", "firmness", "stimp"):
        for given in (["x"], b"x", True, float("nan"), 10**400):
            with pytest.raises(UsageError, match=name):
                conditions_from(**{name: given})  # type: ignore[arg-type]
    for bearing in ("x", float("nan"), float("inf")):
        with pytest.raises(UsageError, match="a number of degrees is allowed"):
            conditions_from("12 mph against", along_deg=bearing)  # type: ignore[arg-type]
        with pytest.raises(UsageError, match="a number of degrees is allowed"):
            conditions_from("NW 12", y_bearing_deg=bearing)  # type: ignore[arg-type]


@pytest.mark.parametrize(("other", "said"), [
    ({"threads": 0}, "threads 0"), ({"tee": 5}, "tee 5"), ({"out": 5}, "5 is no path"),
    ({"scenarios": "calm"}, "scenario 'calm'; allowed: a Scenario"), ({"pins": ["back"]}, "pins 'back'; allowed: a Pins"),
])  # fmt: skip
def test_a_course_is_asked_with_things_of_their_kinds(other: dict[str, object], said: str) -> None:
    """`threads=0` was all cores; the others ended in a traceback."""
    from simulator import load_player
    from simulator.errors import UsageError
    from simulator.hole import load_course
    from simulator.strategy.course import play_course

    with pytest.raises(UsageError, match=said):
        play_course(load_course("ostrel-heath"), load_player("isolde"), **other)  # type: ignore[arg-type]


@pytest.mark.parametrize(("other", "said"), [
    ({"seed": -1}, "seed -1"), ({"seed": "x"}, "seed x"), ({"conditions": "12 mph"}, "conditions '12 mph'"),
    ({"holes": [None]}, "hole 'None'; allowed: a Hole"), ({"holes": []}, "no hole to play"),
])  # fmt: skip
def test_practice_is_asked_with_things_of_their_kinds(other: dict[str, object], said: str) -> None:
    """A seed below none was taken for one of four thousand million."""
    from simulator import load_hole, load_player
    from simulator.conditions import Conditions
    from simulator.errors import UsageError
    from simulator.strategy.practice import practice

    asked = {"holes": [load_hole("eel-trap")], **other}
    with pytest.raises(UsageError, match=said):
        practice(player=load_player("isolde"), **asked)  # type: ignore[arg-type]
    with pytest.raises(UsageError, match="2 conditions; allowed: one of all holes, or 1"):
        practice(load_hole("eel-trap"), load_player("isolde"), conditions=[Conditions()] * 2)


@pytest.mark.parametrize("height", ["6", None, True, float("nan"), 61.0])
def test_a_height_is_a_number_of_yards(height: object) -> None:
    from simulator import load_player
    from simulator.conditions import Conditions
    from simulator.errors import UsageError
    from simulator.strategy.carries import carries

    with pytest.raises(UsageError, match=r"height .* is allowed"):
        carries(load_player("isolde"), Conditions(), height_yd=height)  # type: ignore[arg-type]
