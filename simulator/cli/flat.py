"""Options that several commands share are said once, in a group, and spread over each command's signature."""

from __future__ import annotations

import functools
import inspect
from collections.abc import Callable
from typing import Any, get_type_hints

from ..errors import NoAnswerError, UsageError


def flat(command: Callable[..., None]) -> Callable[..., None]:
    """The command with each parameter that is a group (a NamedTuple of options) replaced by its options.

    The command line library reads options off a signature; the command itself is handed the group.
    """
    hints = get_type_hints(command, include_extras=True)
    parameters: list[inspect.Parameter] = []
    groups: dict[str, Any] = {}
    for name, parameter in inspect.signature(command).parameters.items():
        kind = hints[name]
        if not hasattr(kind, "_field_defaults"):
            parameters.append(parameter.replace(annotation=kind))
            continue
        groups[name] = kind
        for field, hint in get_type_hints(kind, include_extras=True).items():
            parameters.append(
                inspect.Parameter(
                    field,
                    inspect.Parameter.KEYWORD_ONLY,
                    default=kind._field_defaults[field],
                    annotation=hint,
                )
            )

    @functools.wraps(command)
    def spread(**given: Any) -> None:
        asked = given.get("units")
        for name, kind in groups.items():
            given[name] = kind(**{field: given.pop(field) for field in kind._fields})
        try:
            command(**given)
        except (UsageError, NoAnswerError) as error:  # files' errors name keys that say their own unit
            if not asked:
                raise
            from ..report.units import units_named

            try:
                shown = units_named(asked)
            except UsageError:  # no unit at all: that is what the error says
                raise error from None
            plain = NoAnswerError if isinstance(error, NoAnswerError) else UsageError
            raise plain(shown.complaint(str(error))) from error

    # options stand behind arguments, whatever the order they were written in
    parameters = [p.replace(kind=inspect.Parameter.KEYWORD_ONLY) for p in parameters]
    spread.__signature__ = inspect.Signature(parameters)  # type: ignore[attr-defined]
    spread.__annotations__ = {p.name: p.annotation for p in parameters}
    del spread.__wrapped__  # or its own signature would be read
    return spread
