"""Lies: what is allowed, that worse lies are worse, and the published spin and carry changes."""

import itertools

import pytest
from truth_rows import outside

from simulator.hole.surfaces import Lie
from simulator.physics.launch import KINDS
from simulator.physics.lies import EFFECTS, GROUPS, LIES, lie_effect, lie_group


def test_every_lie_of_the_hole_has_effects():
    assert {lie.name.lower().replace("_", " ") for lie in Lie} == set(LIES) == set(EFFECTS)
    for lie in LIES:
        for group in GROUPS:
            lie_effect(lie, group)
    assert {lie_group(kind) for kind in KINDS} | {lie_group("lob wedge", part=True)} == set(GROUPS)


def test_allowed():
    assert [lie for lie in LIES if lie_effect(lie, "driver").allowed] == ["tee"]
    assert [lie for lie in LIES if lie_effect(lie, "wood").allowed] == ["tee", "fairway", "rough"]
    for group in ("iron", "wedge", "part"):
        assert [lie for lie in LIES if not lie_effect(lie, group).allowed] == ["green"]


@pytest.mark.parametrize("group", ["hybrid", "iron", "wedge", "part"])
def test_worse_lies_are_worse(group):
    ladder = [lie_effect(lie, group) for lie in ("tee", "fairway", "rough", "heavy rough")]
    for better, worse in itertools.pairwise(ladder):
        assert worse.carry_factor <= better.carry_factor
        assert worse.carry_factor_sd >= better.carry_factor_sd
        assert worse.direction_factor >= better.direction_factor
        assert worse.distance_factor >= better.distance_factor
        assert worse.mishit_factor >= better.mishit_factor
    trees, rough = lie_effect("trees", group), lie_effect("rough", group)  # branches do the rest
    assert trees.carry_factor <= rough.carry_factor and trees.direction_factor > rough.direction_factor
    sand, fairway = lie_effect("bunker", group), lie_effect("fairway", group)
    assert sand.mishit_factor >= 2 * fairway.mishit_factor and sand.carry_factor <= fairway.carry_factor


def test_spin_from_grass():
    # Published radar test of one player, a full set from wet grass: wedge and 9-iron about 55 % of normal
    # spin, 7- and 8-irons 80-85 %, long irons near normal.
    radar = "a radar test of one player, wet grass"
    outside(radar, "wedge: spin from rough over clean", lie_effect("rough", "wedge").spin_factor, 0.55, 0.1)
    outside(radar, "iron: spin from rough over clean", lie_effect("rough", "iron").spin_factor, 0.82, 0.1)
    assert lie_effect("rough", "wedge").spin_factor == pytest.approx(0.55, abs=0.1)
    assert lie_effect("rough", "iron").spin_factor == pytest.approx(0.82, abs=0.1)


def test_rough_costs_amateurs_little():
    # Broadie 2008 table 2, 100-150 yd, amateurs: leave from the rough 1.06 to 1.20 times that from the
    # fairway. Distance spread and spread of the lie together, for a 12 % shot.
    rough = lie_effect("rough", "iron")
    along = ((12 * rough.distance_factor) ** 2 + (100 * rough.carry_factor_sd) ** 2) ** 0.5 / 12
    found = (along + rough.direction_factor) / 2
    outside("Broadie 2008, table 2", "leave from rough over fairway, 100-150 yd, amateurs", found, (1.06, 1.20), 0.05)
    assert 1.06 <= (along + rough.direction_factor) / 2 <= 1.25


def test_unknown():
    with pytest.raises(ValueError, match="unknown lie 'mud'"):
        lie_effect("mud", "iron")
    with pytest.raises(ValueError, match="unknown group of clubs 'stick'"):
        lie_effect("tee", "stick")
