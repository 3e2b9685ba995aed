"""What `from simulator import ...` promises, and that importing it is instant."""

from __future__ import annotations

import inspect
import subprocess
import sys

import pytest

HEAVY = ("numba", "numpy", "scipy", "shapely", "matplotlib", "typer")


def test_the_four_names() -> None:
    from simulator import compare, load_hole, load_player, plan

    hole, player = load_hole("eel-trap"), load_player("isolde")
    assert (hole.par, player.name) == (3, "Isolde")
    answer = plan(hole, player, sequences=100, seed=3, quick=True)
    both = compare(hole, player, ["6-iron"], sequences=100, seed=3, quick=True)
    assert answer.to_dict()["seed"] == both.to_dict()["seed"] == 3


def test_signatures() -> None:
    from simulator import compare, plan

    for function, places in ((plan, ["hole", "player"]), (compare, ["hole", "player", "clubs"])):
        parameters = inspect.signature(function).parameters
        positional = [n for n, p in parameters.items() if p.kind is p.POSITIONAL_OR_KEYWORD]
        assert positional == places
        assert {"conditions", "start", "sequences", "seed"} <= set(parameters)
        assert parameters["sequences"].default == 20_000
        assert parameters["conditions"].default is None and parameters["start"].default is None


def test_import_is_light() -> None:
    code = f"import sys, simulator; print([name for name in {HEAVY!r} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_unknown_name() -> None:
    import simulator

    with pytest.raises(AttributeError, match="no attribute 'planner'"):
        simulator.planner  # noqa: B018
    assert set(simulator.__all__) == {"compare", "load_hole", "load_player", "plan"}
