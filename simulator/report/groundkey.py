"""The key to the ground on a picture: which kinds are in view, a patch for each."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..hole.model import Hole
from ..hole.surfaces import TROUBLE, WORDS, Surface
from .groundplot import crown_in
from .holemap import area_of
from .page import view_box
from .palette import FAINT, GROUND

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.patches import Patch


def ground_key(seen: list[Surface]) -> list[Patch]:
    """A patch for each kind of ground in view, for the legend."""
    from matplotlib.patches import Patch

    order = [Surface.FAIRWAY, Surface.GREEN, Surface.ROUGH, *TROUBLE, Surface.PATH]
    return [
        Patch(
            facecolor=GROUND[s].fill,
            edgecolor=GROUND[s].edge if s is not Surface.ROUGH else FAINT,
            hatch=_key_hatch(GROUND[s].hatch),
            label=WORDS[s],
        )
        for s in order
        if s in seen
    ]


def _key_hatch(hatch: str) -> str | None:
    """Lines twice as dense, so that the small patch of a key shows some; dots are dense enough."""
    return (hatch if set(hatch) & set("o.") else 2 * hatch) or None


SPECK_SHARE = 0.003
"""A corner of ground that covers less of the picture than this has no key; a whole area always has one."""


def seen_on(ax: Axes, hole: Hole) -> list[Surface]:
    """Kinds of ground in view of finished axes."""
    view = view_box(ax)
    least = SPECK_SHARE * view.area
    found = set()
    for feature in hole.features:
        open_ = area_of(hole, feature.name)
        shown = open_.intersection(view).area
        if shown >= least or shown > 0.5 * open_.area:
            found.add(feature.surface)
    if any(crown_in(view, tree) for tree in hole.single_trees):
        found.add(Surface.TREES)
    found.add(Surface.ROUGH)
    return sorted(found)
