"""Shots held down, hit high, and punched: how they start and what they carry, over the stock swing's."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Shape:
    """Factors on a stock swing.

    Parameters
    ----------
    launch_factor, spin_factor : float
        On launch angle and spin at the same ball speed.
    carry_factor : float
        Stock carry of the shot over the club's.
    source : str
    """

    launch_factor: float
    spin_factor: float
    carry_factor: float
    source: str


SHAPES: dict[str, Shape] = {
    "stock": Shape(1.0, 1.0, 1.0, "the club as it is"),
    "low": Shape(
        0.72, 0.85, 0.93, "common practice: ball back, shorter swing, about half a club less; amounts assumed"
    ),
    "high": Shape(1.25, 1.08, 0.97, "common practice: ball forward, full finish; amounts assumed"),
}
"""By flight word."""

PUNCH = Shape(0.60, 0.70, 0.80, "common practice: a middle iron punched or run; amounts assumed")
"""Part swings that fly low; the carry factor is the longest of them over the club's full carry."""

PUNCH_LOFT_DEG = 30.5
"""Loft of the club that is punched: the nearest in the bag to a 6-iron (common practice)."""

HELD_DOWN_KINDS = ("hybrid", "iron", "wedge")
"""Families of clubs a player is taken to hold down unless the bag file says otherwise (common practice)."""
