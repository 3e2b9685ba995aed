"""--full and --json: everything is there, in a fixed order, finite."""

from __future__ import annotations

import json
from dataclasses import replace

import fake_answers
import numpy as np
import pytest

from simulator.report.full import full_tables
from simulator.report.jsonout import answer_json, dumps
from simulator.strategy.errorbars import Estimate

KEYS = (
    "schema", "hole", "player", "seed", "sequences", "value_map_score", "recommended", "tied",
    "clear_beyond_yd", "alternatives",
)  # fmt: skip
ALTERNATIVE_KEYS = (
    "club", "flight", "aim_offset_yd", "aim_bearing_deg", "expected_score", "standard_error", "difference",
    "difference_standard_error", "birdie_or_better", "par", "bogey", "double_or_worse", "penalty_this_shot",
    "penalty_on_hole", "fairway", "green_in_regulation", "three_putt", "worst_tenth_mean", "finish",
    "features", "leaves_yd",
)  # fmt: skip


def test_json_has_the_keys_others_rely_on() -> None:
    data = json.loads(answer_json(fake_answers.answer()))
    assert set(KEYS) <= data.keys()
    for one in data["alternatives"]:
        assert set(ALTERNATIVE_KEYS) <= one.keys()
        assert list(one["leaves_yd"]) == ["p10", "p50", "p90"]


EXACT = {
    "carry_yd", "today_carry_yd", "aim_offset_yd", "aim_bearing_deg",  # what is swung, not what came of it
    "expected_score", "difference", "margin_95", "difference_margin_95",  # theirs stand beside them
    "point", "room", "reach",  # as do those of the chances and lengths in these
}  # fmt: skip


def test_every_figure_that_is_counted_or_averaged_has_its_standard_error() -> None:
    data = json.loads(answer_json(fake_answers.answer()))
    assert data["value_map_score_standard_error"] > 0.0 and data["clear_beyond_standard_error_yd"] > 0.0
    for one in data["alternatives"]:
        errors = one.pop("standard_errors")
        for key, figure in one.items():
            if key in EXACT or key.endswith("standard_error") or not isinstance(figure, int | float | dict | list) or isinstance(figure, bool):
                continue
            if isinstance(figure, list):
                assert [error > 0.0 for error in errors[key]] == [True] * len(figure), key
            elif isinstance(figure, dict):
                assert figure.keys() == errors[key].keys(), key
            else:
                assert errors[key] > 0.0, key


def test_json_is_the_same_text_for_the_same_answer_and_keeps_the_order() -> None:
    first, second = answer_json(fake_answers.answer()), answer_json(fake_answers.answer())
    assert first == second
    assert list(json.loads(first)) == list(fake_answers.answer().to_dict())


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), np.float64("-inf"), {1, 2}, object()])
def test_json_refuses_what_json_cannot_hold_and_names_the_key(bad: object) -> None:
    with pytest.raises(ValueError, match=r"answer\.alternatives\[0\]\.score"):
        dumps({"alternatives": [{"score": bad}]})


def test_json_takes_numpy() -> None:
    data = {"a": np.int64(3), "b": np.array([1.5, 2.0]), "c": np.bool_(True), "d": (1, None)}
    assert json.loads(dumps(data)) == {"a": 3, "b": [1.5, 2.0], "c": True, "d": [1, None]}


def test_full_has_every_alternative_with_its_errors() -> None:
    answer = fake_answers.answer(tied=(0, 1), warnings=("value map and sequences differ",))
    text = full_tables(answer)
    for one in answer.alternatives:
        assert f"{one.score.value:.3f} +- {one.score.standard_error:.3f}" in text
        for name, share in one.features.items():
            assert name in text
            assert f"{100 * share.value:.2f} +- {100 * share.standard_error:.2f}" in text
    assert "+0.130 +- 0.004" in text
    assert "Tied: 3-wood and driver" in text
    assert "Warning: value map and sequences differ" in text
    for sentence in (*answer.hole.assumed, *answer.player.assumed):
        assert sentence.split()[-1] in text
    assert "seed 1" in text and "raster_cell_yd 1.0" in text
    assert "later shots are chosen well" in text
    assert "fewer than 1 in 1,000: " in text  # three thousand sequences; features no ball found
    assert max(map(len, text.splitlines())) <= 80


def test_full_tells_the_map_once_and_how_sure_bands_and_the_longest_ball_are() -> None:
    answer = fake_answers.answer()
    open_end = replace(answer.alternatives[1], aims_error_yd=(None, 1.25))
    answer = replace(answer, alternatives=(answer.alternatives[0], open_end, *answer.alternatives[2:]))
    text = " ".join(full_tables(answer).split())
    for one in answer.alternatives:
        by_map = f"{one.map_score.value:.3f} +- {one.map_score.standard_error:.3f}"
        assert text.count(by_map) == 1
    assert text.count("map alone") == 1
    assert text.count("of the pin line (+- 1.5) to ") == 1  # the first alternative's left end
    assert text.count("of the pin line or more to ") == 1  # the second's
    assert text.count("of the pin line (+- 1.2).") == 2  # both right ends
    assert "The longest ball is sure to +- 3.5 yd." in text


@pytest.mark.parametrize(("middle_yd", "told"), [(-13.44, "13.4 +- 0.2 yd left"), (6.0, "6.0 +- 0.2 yd right")])
def test_full_tells_the_side_in_words(middle_yd: float, told: str) -> None:
    answer = fake_answers.answer()
    best = replace(answer.alternatives[0], middle_right_yd=Estimate(middle_yd, 0.2))
    text = full_tables(replace(answer, alternatives=(best, *answer.alternatives[1:])))
    assert f"the middle finishes {told} of the line" in " ".join(text.split())
