"""Relief options against the Rules of Golf 2023 (R&A/USGA): 17.1d, 18.2b, 19.2, 19.3, Model Local Rule E-5.

The table below was written from the rules' own wording, separately from the code.
"""

from __future__ import annotations

import dataclasses

import pytest

from simulator.hole.rules import (
    CLUB_LENGTH_YD,
    LOCAL_RULE_E5,
    OPTIONS,
    Reference,
    Situation,
    Way,
    situation_of,
)

RULES_2023 = {
    # situation: {(rule, penalty strokes, club-lengths of the relief area, stays in the bunker)}
    Situation.OUT_OF_BOUNDS: {("18.2b", 1, 0, False)},
    Situation.LOST: {("18.2b", 1, 0, False)},
    Situation.YELLOW: {("17.1b", 0, 0, False), ("17.1d(1)", 1, 0, False), ("17.1d(2)", 1, 1, False)},
    Situation.RED: {
        ("17.1b", 0, 0, False), ("17.1d(1)", 1, 0, False), ("17.1d(2)", 1, 1, False),
        ("17.1d(3)", 1, 2, False),
    },
    Situation.UNPLAYABLE: {("19.2a", 1, 0, False), ("19.2b", 1, 1, False), ("19.2c", 1, 2, False)},
    Situation.UNPLAYABLE_IN_BUNKER: {
        ("19.3a/19.2a", 1, 0, False), ("19.3a/19.2b", 1, 1, True), ("19.3a/19.2c", 1, 2, True),
        ("19.3b", 2, 1, False),
    },
}


@pytest.mark.parametrize("situation", Situation)
def test_costs_and_areas(situation):
    found = {(o.rule, o.strokes, o.club_lengths, o.stay_in_bunker) for o in OPTIONS[situation]}
    assert found == RULES_2023[situation]


def test_only_red_has_lateral_relief():
    assert Way.LATERAL in {o.way for o in OPTIONS[Situation.RED]}
    assert Way.LATERAL not in {o.way for o in OPTIONS[Situation.YELLOW]}


def test_local_rule_costs_two_and_is_nobody_s_without_the_committee():
    assert LOCAL_RULE_E5.strokes == 2 and LOCAL_RULE_E5.club_lengths == 2
    assert not any(LOCAL_RULE_E5 in OPTIONS[situation] for situation in Situation)


def test_reference_points():
    """Penalty areas: where the ball last crossed the edge (17.1d). Unplayable: the ball (19.2)."""
    for situation in (Situation.RED, Situation.YELLOW):
        for option in OPTIONS[situation]:
            if option.way in (Way.BACK_ON_LINE, Way.LATERAL):
                assert option.reference is Reference.CROSSING
    for option in OPTIONS[Situation.UNPLAYABLE]:
        if option.way in (Way.BACK_ON_LINE, Way.LATERAL):
            assert option.reference is Reference.BALL


def test_club_length():
    """Definitions: the longest club but the putter; at most 48 in (Equipment Rules), so two are 2.67 yd."""
    assert 43 / 36 < CLUB_LENGTH_YD <= 48 / 36
    lateral = next(o for o in OPTIONS[Situation.RED] if o.way is Way.LATERAL)
    assert lateral.relief_yd == pytest.approx(2 * 1.27)


def test_situation_of_a_feature():
    assert situation_of("red") is Situation.RED and situation_of("yellow") is Situation.YELLOW
    with pytest.raises(ValueError, match="'white'"):
        situation_of("white")


def test_data_cannot_be_changed():
    with pytest.raises(dataclasses.FrozenInstanceError):
        LOCAL_RULE_E5.strokes = 1
