"""What an alternative is called, where a club's name alone does not say which shot it is."""

from __future__ import annotations

import fake_answers
import pytest

from simulator.report.chosen import title
from simulator.report.units import METRES
from simulator.report.verdicts import verdict

WEDGE = {"club": "50-degree wedge", "flight": "gripped", "score": 3.0}


def titles(*clubs: dict) -> list[str]:
    answer = fake_answers.answer("eel-trap", "isolde", clubs=clubs)
    return [title(answer, k) for k in range(len(clubs))]


@pytest.mark.parametrize(
    ("flight", "said"),
    [("gripped", "gripped down to 88 yd"), ("part", "part 88 yd"), ("punch", "punch 88 yd")],
)
def test_a_shot_that_is_no_full_swing_is_told_by_its_carry(flight: str, said: str) -> None:
    other = {"club": "56-degree wedge", "score": 3.1, "carry_yd": 80.0, "difference": 0.1}
    assert titles(WEDGE | {"flight": flight, "carry_yd": 87.6}, other)[0] == f"50-degree wedge ({said})"


@pytest.mark.parametrize(("carry_yd", "said"), [(6.0, "6-iron (chip 6 yd)"), (60.0, "6-iron (punch 60 yd)")])
def test_a_low_one_that_runs_farther_than_it_flies_is_a_chip(carry_yd: float, said: str) -> None:
    """Not "6-iron (punch 1 yd)" beside a green."""
    low = {"club": "6-iron", "flight": "punch", "carry_yd": carry_yd, "score": 3.0}
    assert titles(low, WEDGE | {"carry_yd": 88.0, "difference": 0.1})[0] == said


def test_two_gripped_shots_of_a_club_are_told_apart_by_their_carries() -> None:
    """Not by lines that are the same: "gripped 0" twice said nothing."""
    found = titles(WEDGE | {"carry_yd": 88.0}, WEDGE | {"carry_yd": 95.0, "difference": 0.1})
    assert found == ["50-degree wedge (gripped down to 88 yd)", "50-degree wedge (gripped down to 95 yd)"]


def test_the_same_shot_on_two_lines_says_which_of_them() -> None:
    found = titles(WEDGE | {"carry_yd": 88.0}, WEDGE | {"carry_yd": 88.2, "aim_offset_yd": 6.0, "difference": 0.1})
    assert found == [
        "50-degree wedge (gripped down to 88 yd, left line)", "50-degree wedge (gripped down to 88 yd, right line)",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ((0.0, 0.1), ("left line", "right line")),
        ((0.0, 0.04, -48.7), ("middle line", "right line", "left line")),
        ((-12.6, -13.4), ("right line", "left line")),
        ((9.0, -9.0, 3.0, -30.0), ("far right line", "left line", "right line", "far left line")),
        ((9.0, -9.0, 3.0, -30.0, 4.0), ("line 5 of 5", "line 2 of 5", "line 3 of 5", "line 1 of 5", "line 4 of 5")),
    ],
)
def test_no_two_are_called_the_same(lines: tuple[float, ...], said: tuple[str, ...]) -> None:
    """Not by yards from the pin line, which nobody sees round a corner, and which are not those of the pointing."""
    clubs = [{"club": "driver", "carry_yd": 230.0, "score": 4.0 + k, "aim_offset_yd": line} for k, line in enumerate(lines)]
    answer = fake_answers.answer("withy-drain", "isolde", clubs=(*clubs, {"club": "3-wood", "carry_yd": 210.0, "score": 9.0}))
    assert [title(answer, k) for k in range(len(lines))] == [f"driver ({line})" for line in said]
    assert title(answer, len(lines)) == "3-wood"
    metres = [title(answer, k, METRES) for k in range(len(lines))]
    assert len(set(metres)) == len(metres)


def test_part_swings_that_are_one_in_whole_yards_have_decimals() -> None:
    part = {"club": "sand wedge", "flight": "part", "score": 3.0}
    assert titles(part | {"carry_yd": 55.6}, part | {"carry_yd": 56.4}) == [
        "sand wedge (part 55.6 yd)", "sand wedge (part 56.4 yd)",
    ]  # fmt: skip


def test_metres_everywhere() -> None:
    answer = fake_answers.answer("eel-trap", "isolde", clubs=(WEDGE | {"carry_yd": 88.0},))
    assert title(answer, 0, METRES) == "50-degree wedge (gripped down to 80 m)"


def test_the_verdict_names_the_shot() -> None:
    answer = fake_answers.answer(
        "eel-trap", "isolde", sure=0.56, tied=(0, 1),
        clubs=(WEDGE | {"carry_yd": 88.0}, WEDGE | {"carry_yd": 95.0, "difference": 0.01}),
    )  # fmt: skip
    assert "It is the 50-degree wedge (gripped down to 88 yd) for 6 in 10 plausible versions" in verdict(answer)
