"""Imports point one way only and some calls stay out of the package; the source is read, nothing is run."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "simulator"
SOURCES = sorted(PACKAGE.rglob("*.py"))

MAY_IMPORT = {  # rooms each room may import from, itself aside
    "errors": set(),
    "units": set(),
    "spelt": set(),
    "wording": set(),
    "files": {"errors"},
    "toml_text": {"units"},
    "physics": {"units", "errors"},
    "kernels": set(),
    "hole": {"files", "toml_text", "units", "spelt", "wording", "errors"},
    "player": {"files", "toml_text", "units", "spelt", "wording", "errors", "physics"},
    "conditions": {"files", "toml_text", "units", "spelt", "wording", "errors", "physics"},
    "tables": {"units", "errors", "physics", "conditions", "hole", "player", "kernels"},
    "engine": {"units", "errors", "physics", "conditions", "hole", "player", "kernels", "tables"},
    "strategy": {"files", "units", "spelt", "wording", "errors", "physics", "conditions", "hole", "player", "tables", "engine", "__init__"},
    "report": {"files", "units", "errors", "conditions", "hole", "player", "strategy", "__init__"},
    "cli": {"files", "toml_text", "errors", "conditions", "hole", "player", "strategy", "report", "__init__"},
    "fits": {"files", "toml_text", "units", "errors", "physics", "conditions", "hole", "player", "kernels", "tables", "engine", "strategy"},
    "__init__": {"hole", "player", "strategy"},
    "__main__": {"cli"},
}
KERNELS_MAY_USE = {
    "__future__", "collections", "hashlib", "math", "numba", "numpy", "os", "pathlib", "tempfile", "typing", "warnings",
}  # fmt: skip
COMPILING_MAY_USE = {
    "_keep.py": {"contextlib", "re", "shutil", "time"},  # what keeps compiled code on disk may remove a folder
    "_inner.py": {"functools", "llvmlite"},  # numba's own compiler, asked what it can do
}
"""What is about compiling alone holds no golf."""
SLOW = {"matplotlib", "scipy.stats", "numba", "rich"}  # imported where needed, not with the module


def room(source: Path) -> str:
    return source.relative_to(PACKAGE).parts[0].removesuffix(".py")


def imported(source: Path) -> Iterator[tuple[str, bool]]:
    """(full module name, at the top level of the module) of every import outside `if TYPE_CHECKING`."""
    package = ["simulator", *source.relative_to(PACKAGE).parts[:-1]]
    tree = ast.parse(source.read_text())
    hints = {id(n) for b in ast.walk(tree) if isinstance(b, ast.If) and "TYPE_CHECKING" in ast.dump(b.test)
             for n in ast.walk(b)}  # fmt: skip
    top = {id(n) for n in tree.body}
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            base = ".".join(package[: len(package) + 1 - node.level]) if node.level else ""
            module = ".".join(part for part in (base, node.module) if part)
            names = [f"{module}.{alias.name}" for alias in node.names]
        else:
            continue
        if id(node) not in hints:
            yield from ((name, id(node) in top) for name in names)


@pytest.mark.parametrize("source", SOURCES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_arrows(source: Path) -> None:
    here = room(source)
    for name, at_top in imported(source):
        parts = name.split(".")
        if parts[0] == "simulator":
            there = parts[1] if len(parts) > 1 and parts[1] in MAY_IMPORT else "__init__"
            assert there == here or there in MAY_IMPORT[here], f"{here} imports {name}"
        elif here == "kernels":
            allowed = KERNELS_MAY_USE | COMPILING_MAY_USE.get(source.name, set())
            assert parts[0] in allowed, f"kernels import {name}"
        elif at_top and here in ("cli", "report", "hole", "player", "physics", "__init__"):
            slow = [s for s in SLOW if name == s or name.startswith(s + ".")]
            assert not slow, f"{here} imports {name} before it is needed"
        assert not name.startswith("matplotlib.pyplot"), f"{here} imports pyplot"


@pytest.mark.parametrize("source", SOURCES, ids=lambda p: str(p.relative_to(PACKAGE)))
def test_calls_that_stay_out(source: Path) -> None:
    here, name = room(source), source.name
    for node in ast.walk(ast.parse(source.read_text())):
        called = ast.unparse(node.func) if isinstance(node, ast.Call) else ""
        assert called != "print" or here == "fits", f"line {node.lineno}: print"
        for banned in ("plt.", "np.random.seed", "random."):
            assert not called.startswith(banned), f"line {node.lineno}: {called}"
        if isinstance(node, ast.Name | ast.Attribute) and not (here == "kernels" and name == "_compile.py"):
            word = node.id if isinstance(node, ast.Name) else node.attr
            assert word not in ("njit", "jit", "vectorize", "guvectorize"), f"line {node.lineno}: bare {word}"
