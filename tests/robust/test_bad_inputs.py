"""Bad files and bad options: one line and an exit status, no traceback, nothing half-written."""

from __future__ import annotations

import random
import time
from collections import Counter
from collections.abc import Callable
from typing import Any

import pytest
from bad_inputs import OPTION_VALUES, Folder, bad_input, commands, options
from runs import judge, run

from simulator.errors import NoAnswerError
from simulator.strategy import ask, jobs

FEW, MANY = 80, 2000


@pytest.fixture
def no_engine(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever passes the readers is answered at once: these tests are about what does not."""

    def stand_in(*_: Any, **__: Any) -> None:
        raise NoAnswerError("not played here")

    for room, name in ((ask, "plan"), (ask, "compare"), (jobs, "plan")):
        monkeypatch.setattr(room, name, stand_in)


def tried(number: int, folder: Folder) -> int:
    arguments = bad_input(number, folder)
    try:
        seen = run(arguments)
        judge(arguments, seen, folder.path)
    except BaseException as error:
        error.add_note(f"bad input {number}: {arguments!r:.2000}")
        raise
    return seen.status


def test_a_few_bad_inputs(folder: Folder, no_engine: None) -> None:
    seen = Counter(tried(number, folder) for number in range(FEW))
    assert seen[2] > FEW / 2  # most of them are bad


@pytest.mark.slow
def test_two_thousand_bad_inputs(folder: Folder, record_property: Callable[[str, object], None]) -> None:
    """The engine is run for what is accepted; kernels are compiled before the clock is started."""
    run(["plan", "withy-drain", "--sequences", "100"], seconds=600)
    began = time.monotonic()
    seen = Counter(tried(number, folder) for number in range(1_000_000, 1_000_000 + MANY))
    record_property("statuses", f"{dict(seen)} in {time.monotonic() - began:.0f} s")  # in --junit-xml
    assert seen[2] > MANY / 2 and sum(seen.values()) == MANY


COMMANDS = {" ".join(names): (names, command) for names, command in commands()}


TAKE_ANY_TEXT = ("attribution", "name", "out", "output")
"""Options that any printable text suits, or any name of a file."""


def try_values(name: str, folder: Folder, most: int) -> None:
    """Values for every option, read off the program; each option refuses one at least."""
    names, command = COMMANDS[name]
    for option in options(command):
        if option.is_flag:
            continue
        values = random.Random(f"{name} {option.name}").sample(OPTION_VALUES, most)
        refused = 0
        for value in values:
            at = value
            if option.name in ("out", "output", "plot") and "/" not in value and "\0" not in value:
                at = str(folder.path / (value or "x"))  # what is written stays in the folder
            arguments = [*folder.call(names), option.opts[-1], at]
            try:
                seen = run(arguments)
                judge(arguments, seen, folder.path)
            except BaseException as error:
                error.add_note(f"{arguments!r:.1000}")
                raise
            refused += seen.status == 2
        assert refused or option.name in TAKE_ANY_TEXT, option.name


@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_with_some_bad_values(name: str, folder: Folder, no_engine: None) -> None:
    try_values(name, folder, 4)


@pytest.mark.slow
@pytest.mark.parametrize("name", COMMANDS)
def test_every_option_with_every_bad_value(name: str, folder: Folder, no_engine: None) -> None:
    try_values(name, folder, len(OPTION_VALUES))


@pytest.mark.parametrize("name", COMMANDS)
def test_an_option_that_is_none_and_one_without_its_value(name: str, folder: Folder, no_engine: None) -> None:
    names, command = COMMANDS[name]
    for extra in (["--nothing-like-it"], *[[o.opts[-1]] for o in options(command) if not o.is_flag]):
        arguments = [*folder.call(names), *extra]
        seen = run(arguments)
        judge(arguments, seen, folder.path)
        assert seen.status == 2
