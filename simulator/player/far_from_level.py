"""Carries far from what the handicap would say: slips are refused, the rest is said."""

from __future__ import annotations

from collections.abc import Mapping

from ..errors import FileError
from .fill import level_carry_yd
from .levels import Level, handicap_said

LEAST_SHARE = 0.2
"""A carry below this share of the level's is a slip, or something else than a carry (a limit, assumed)."""

SAID_SHARE = 0.25
"""A carry that differs from the level's by more than this share is said (assumed: so far apart are the levels
of a scratch player and of a beginner)."""

MOST_NAMED = 3
"""More clubs than this are told by the longest of them and the range of all."""


def check_lengths(
    source: str, carry_yd: Mapping[str, float], kinds: Mapping[str, str], base: Level, assumed: list[str]
) -> None:
    """Refuse carries that cannot be meant and say those far from the level's.

    Parameters
    ----------
    carry_yd : mapping of str to float
        Of the clubs that were given [yd].

    Raises
    ------
    FileError
        A carry under a fifth of the level's.
    """
    far: dict[str, float] = {}
    for name, carry in carry_yd.items():
        of_level = level_carry_yd(name, kinds[name], base)
        if carry < LEAST_SHARE * of_level:
            raise FileError(
                source, f"club {name!r}", f"a carry of {carry:.4g} yd",
                f"{LEAST_SHARE * of_level:.0f} yd and more, a fifth of the {of_level:.0f} yd of a "
                f'{handicap_said(base.handicap)} handicap (a curve is said "slices the driver 30 yards")',
            )  # fmt: skip
        share = carry / of_level - 1.0
        if abs(share) > SAID_SHARE:
            far[name] = share

    def told(name: str) -> str:
        of_level = level_carry_yd(name, kinds[name], base)
        return f"{name} {_way(far[name])} ({carry_yd[name]:.0f} yd, the level {of_level:.0f} yd)"

    if far:
        named = sorted(far, key=lambda name: -carry_yd[name])
        words = ", ".join(map(told, named if len(far) <= MOST_NAMED else named[:1]))
        if len(far) > MOST_NAMED:
            low, high = sorted((min(far.values()), max(far.values())), key=abs)
            words += f", {len(far)} clubs in all, {_way(low)} to {_way(high)}"
        level = handicap_said(base.handicap)
        assumed.append(f"Far from the carries of a {level} handicap, kept as given: {words}.")


def _way(share: float) -> str:
    return f"{100.0 * abs(share):.0f} % {'shorter' if share < 0.0 else 'longer'}"
