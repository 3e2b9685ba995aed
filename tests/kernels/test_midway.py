"""Wind nodes that are not flown: cubics between those that are."""

import numpy as np
import pytest

from simulator.tables.flights import wind_axes
from simulator.tables.midway import flown_nodes, spread


def spread_over(curve, along: int, across: int) -> tuple[np.ndarray, np.ndarray]:
    """A function of two winds filled in from what is flown of it, and as it is everywhere."""
    u, v = np.linspace(-1.0, 1.0, along), np.linspace(0.0, 1.0, across)
    whole = curve(u[:, None, None], v[None, :, None]) * np.array([1.0, -2.0])
    out = np.full(whole.shape, np.nan)
    spread(whole[flown_nodes(along), flown_nodes(across)], out)
    return out, whole


@pytest.mark.parametrize("along", [1, 2, 5, 6, 7, 9, 15])
@pytest.mark.parametrize("across", [1, 3, 7, 8, 11])
def test_cubics_come_out_exactly(along: int, across: int) -> None:
    out, whole = spread_over(lambda u, v: (1.0 + u - 2.0 * u**3) * (v**2 - 0.5 * v**3), along, across)
    assert np.allclose(out, whole, rtol=0.0, atol=1e-14)


def test_a_smooth_curve_errs_by_no_more_than_is_said() -> None:
    # the fourth derivative of sin 3u is at most 81; 5/128 of it times the flown step to the fourth at an end
    out, whole = spread_over(lambda u, v: np.sin(3.0 * u) + 0.0 * v, 15, 1)
    step = 2.0 / 7.0
    errors = np.abs(out - whole)[:, 0, 0]
    assert errors[3:-3].max() <= 3.0 / 128.0 * 81.0 * step**4
    assert errors.max() <= 5.0 / 128.0 * 81.0 * step**4
    assert errors[3:-3].max() > 0.1 * 3.0 / 128.0 * 81.0 * step**4


@pytest.mark.parametrize(("speed", "gust"), [(15.0, 0.0), (24.0, 0.0), (24.0, 5.0), (12.0, 4.0)])
@pytest.mark.parametrize("curved", [False, True])
def test_a_day_of_wind_flies_no_more_than_two_thirds_of_its_nodes(speed: float, gust: float, curved: bool) -> None:
    axes = wind_axes(speed, gust, curved)
    counts = axes.u.size, axes.v.size
    flown = np.prod([len(range(*flown_nodes(count).indices(count))) for count in counts])
    assert 1.5 * flown < np.prod(counts)


def test_both_ends_are_flown_and_four_nodes_if_not_all() -> None:
    for count in range(1, 40):
        flown = range(*flown_nodes(count).indices(count))
        assert flown[0] == 0 and flown[-1] == count - 1
        assert len(flown) == count or len(flown) >= 4
