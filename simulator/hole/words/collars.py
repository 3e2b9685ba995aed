"""The fringe round the green, where the words give it one."""

from __future__ import annotations

from simulator.hole.collar import COLLAR_YD, MOST_COLLAR_YD
from simulator.hole.words.entry import Draft
from simulator.hole.words.feature import Feature, need


def read_collar(features: list[Feature], draft: Draft) -> None:
    """A width of the green's own entry ("fringe 2 wide", "collar all round the green").

    Raises
    ------
    UsageError
        Said twice, or no width of a fringe.
    """
    mine = [f for f in features if f.kind == "fringe"]
    if not mine:
        return
    feature, (green,) = mine[0], draft.of("green")
    need(len(mine) == 1, mine[-1].token, "is said twice: it goes all round the green")
    feature.take_all("all_round", "at_green", "round")
    wide, u = feature.take("wide", "bare"), draft.units
    reach = COLLAR_YD if wide is None else u.yd(wide.numbers["a"])
    need(0.0 < reach <= MOST_COLLAR_YD, feature.token,
         f"is {u.shown(reach)} wide; up to {u.shown(MOST_COLLAR_YD)}, or say run-off")  # fmt: skip
    green.keys["collar"] = reach
    green.text = f"{green.text}; {feature.text}"
    if wide is None:
        green.assume(f"{u.shown(reach)} of fringe all round", "collar")
