"""Colours told apart by the colour-blind and without colour.

Dichromacy by the matrices of Machado, Oliveira and Fernandes (2009), "A physiologically-based model for
simulation of color vision deficiency", IEEE TVCG 15(6), severity 1.0, applied to linear RGB. Differences are
CIE 1976 Delta E*ab under D65; 2.3 is just noticed (Mahy, Van Eycken and Oosterlinck 1994, from memory).
"""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from matplotlib.colors import to_rgb

from simulator.hole.surfaces import Surface
from simulator.report.palette import CONTOUR, CURVES, GROUND, INK, MARKED, PAPER, SHOTS

MACHADO = {
    "none": np.eye(3),
    "protanopia": np.array(
        [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]
    ),
    "deuteranopia": np.array(
        [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]
    ),
    "tritanopia": np.array(
        [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]
    ),
}
NOTICED = 2.3


def lab(colour: str, matrix: np.ndarray) -> np.ndarray:
    """CIE L*a*b* of an sRGB colour as a dichromat sees it (IEC 61966-2-1 primaries, D65 white)."""
    c = np.array(to_rgb(colour))
    linear = np.clip(matrix @ np.where(c <= 0.04045, c / 12.92, ((c + 0.055) / 1.055) ** 2.4), 0.0, 1.0)
    to_xyz = np.array(
        [[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]]
    )  # fmt: skip
    t = to_xyz @ linear / np.array([0.9505, 1.0, 1.089])
    f = np.where(t > (6 / 29) ** 3, np.cbrt(t), t / (3 * (6 / 29) ** 2) + 4 / 29)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def apart(one: str, other: str, matrix: np.ndarray) -> float:
    return float(np.linalg.norm(lab(one, matrix) - lab(other, matrix)))


@pytest.mark.parametrize("sight", MACHADO)
def test_curves_are_told_apart(sight: str) -> None:
    for a, b in itertools.combinations(CURVES, 2):
        assert apart(a.colour, b.colour, MACHADO[sight]) > 5 * NOTICED, (a.colour, b.colour)


@pytest.mark.parametrize("sight", MACHADO)
def test_shots_words_and_lines_stand_out_from_every_ground(sight: str) -> None:
    for surface, look in GROUND.items():
        for colour in (SHOTS[0].colour, SHOTS[1].colour, CONTOUR, INK):
            assert apart(colour, look.fill, MACHADO[sight]) > 12 * NOTICED, (surface, colour)


def test_without_colour_shots_differ_in_lightness_and_curves_in_dash_and_marker() -> None:
    light = [lab(shot.colour, np.eye(3))[0] for shot in SHOTS]
    assert abs(light[0] - light[1]) > 20
    assert len({look.dash for look in CURVES}) == len({look.marker for look in CURVES}) == len(CURVES)


@pytest.mark.parametrize("sight", MACHADO)
def test_kinds_of_ground_are_told_apart_by_hatch_or_colour(sight: str) -> None:
    mown = (Surface.FAIRWAY, Surface.TEE)  # the same grass
    for a, b in itertools.combinations(GROUND, 2):
        if GROUND[a].hatch == GROUND[b].hatch and {a, b} != set(mown):
            assert apart(GROUND[a].fill, GROUND[b].fill, MACHADO[sight]) > 2 * NOTICED, (a, b)
    trouble = (Surface.OUT_OF_BOUNDS, Surface.WATER, Surface.DRY_PENALTY, Surface.BUNKER, Surface.TREES,
               Surface.HEAVY_ROUGH)  # fmt: skip
    assert len({GROUND[s].hatch for s in trouble}) == len(trouble) and all(GROUND[s].hatch for s in trouble)


def test_no_traffic_lights() -> None:
    """Shots are neither red nor green nor amber: hue angle far from 0-30 (red) and 100-170 (green) unless dark."""
    import colorsys

    for look in CURVES[:3]:
        hue, _light, saturation = colorsys.rgb_to_hls(*to_rgb(look.colour))
        assert saturation < 0.2 or not (hue < 15 / 360 or hue > 340 / 360 or 80 / 360 < hue < 160 / 360)


@pytest.mark.parametrize("sight", MACHADO)
def test_a_marked_cell_is_told_apart_and_its_words_are_read(sight: str) -> None:
    """Its tint from the paper, its frame and its words from the tint."""
    assert apart(MARKED.fill, PAPER, MACHADO[sight]) > 3 * NOTICED
    for colour in (MARKED.edge, INK):
        assert apart(colour, MARKED.fill, MACHADO[sight]) > 25 * NOTICED
