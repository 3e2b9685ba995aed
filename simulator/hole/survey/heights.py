"""Heights of the points of a survey over its tee."""

from __future__ import annotations

import numpy as np

from .readings import Survey


def heights_of(survey: Survey) -> dict[str, float]:
    """Height over the tee [yd] of every point that its readings tie to it, the tee's own 0 among them.

    Least squares over all told differences, each as sure as the next: a stand without a height of its own
    gets one from a point that was read from it and from elsewhere. Empty when no height was told.
    """
    rows = [r for r in survey.ranges if r.height_yd is not None]
    tied = {survey.stands[0]}
    while more := {p for r in rows for p in (r.stand, r.point) if {r.stand, r.point} & tied} - tied:
        tied |= more
    rows = [r for r in rows if r.stand in tied]
    if not rows:
        return {}
    names = [name for name in dict.fromkeys([*survey.stands, *survey.points]) if name in tied]
    column = {name: k for k, name in enumerate(names[1:])}  # the tee is 0
    steps = np.zeros((len(rows), len(column)))
    for k, r in enumerate(rows):
        for name, sign in ((r.point, 1.0), (r.stand, -1.0)):
            if name in column:
                steps[k, column[name]] = sign
    found, *_ = np.linalg.lstsq(steps, np.array([r.height_yd for r in rows]), rcond=None)
    return {names[0]: 0.0, **{name: float(found[k]) for name, k in column.items()}}
