"""How often each node of a value map is read: where its strikes are worth spending."""

from __future__ import annotations

import numpy as np

from .nodes import Nodes


def node_reads(nodes: Nodes, places: np.ndarray) -> np.ndarray:
    """How much of the reading of some places falls to each node.

    Parameters
    ----------
    nodes : Nodes
    places : float64[n, 3]
        x, y [yd] and lie of balls off the green. One beyond the map is read at its edge.

    Returns
    -------
    float64[nodes]
        Sum over the places of the node's bilinear weight; corners that are no nodes (other ground) leave
        theirs to the rest, as the map's reading does.
    """
    x, y, lie = places[:, 0], places[:, 1], places[:, 2].astype(int)
    inside = nodes.fine.holds(x, y)
    out = np.zeros(len(nodes.table))
    for which, grid in enumerate((nodes.coarse, nodes.fine)):
        at = np.flatnonzero(inside == bool(which))
        mine = nodes.place[:, 0] == which
        number = np.full(grid.wanted.shape, -1)
        number[tuple(nodes.place[mine, 1:].T)] = np.flatnonzero(mine)
        rows, columns, weight = grid.weights(x[at], y[at])
        node = number[lie[at, None], rows, columns]
        weight = np.where(node >= 0, weight, 0.0)
        weight /= np.maximum(weight.sum(axis=1, keepdims=True), 1e-9)
        out += np.bincount(node[node >= 0], weight[node >= 0], minlength=out.size)
    return out
