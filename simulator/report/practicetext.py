"""What practice is worth, in words: a line a change, with its standard error."""

from __future__ import annotations

from ..strategy.practice import BIAS, ROUND, Practice
from .cautions import RULES
from .figures import join_words, plus_minus
from .screen import wrap
from .units import YARDS, Units


def practice_text(found: Practice, notes: tuple[str, ...] = (), units: Units = YARDS) -> str:
    """The gains, greatest first.

    Returns
    -------
    str
        Lines of at most 80 columns, without a final newline.
    """
    count = len(found.holes)
    where = found.holes[0].name if count == 1 else f"{count} holes"
    lines = wrap(f"What practice is worth to {found.player.name} on {where}.")
    total = sum(score.value for score in found.scores)
    these = "this hole" if count == 1 else "these holes"
    scale = "" if count == ROUND else f" ({these} times {ROUND / count:g})"
    lines += wrap(f"Now {total:.2f} strokes on {where}. Strokes gained in {ROUND} holes{scale}:")
    lines.append("")
    head = "strokes a round"
    lines.append(f"  {head:>16}" + ("     on this hole" if count == 1 else ""))
    for gain in found.gains:
        per_round = plus_minus(gain.per_round, digits=2, signed=True)
        hole = f"  {plus_minus(gain.by_hole[0], signed=True)}" if count == 1 else ""
        unclear = abs(gain.per_round.value) < gain.per_round.margin
        words = units.sentence(gain.words) + (" (none that shows)" if unclear else "")
        first = f"  {per_round:>16}{hole}  "
        lines += wrap(words, " " * len(first), first)
    lines.append("")
    if count == 1:
        lines += wrap(f"One hole is no course: a round of {ROUND} like this one is meant.")
    lines += wrap(
        "Each line changes one thing and leaves the rest; gains do not add up. The better player keeps to "
        "this player's plan but for the first shot: a plan of his own would bring as much or more."
    )
    if any(gain.what == BIAS for gain in found.gains):
        lines += wrap("The plan itself allows for a bias: who knows his own has that gain already.")
    if found.left_out:
        lines += wrap(f"Left out: {join_words([units.sentence(one) for one in found.left_out])}.")
    lines += [line for note in notes for line in wrap(note)]
    lines += wrap(RULES)
    return "\n".join(lines)
