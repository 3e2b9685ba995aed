"""The sentences of the answer screen that stand beside the verdict: the trade, the people, the sources."""

from __future__ import annotations

from collections.abc import Sequence

from ..player import Club, Player
from ..player.reader import in_words
from ..strategy.alternative import Alternative
from ..strategy.clubwords import Meant
from ..strategy.result import Answer
from .cautions import EXACT, LOOK
from .chosen import par_counts, runner_up, shown, title
from .figures import capital, join_words, name_said
from .units import YARDS, Units

_SPREAD = ("direction_sd_deg", "distance_sd_pct")
_MISHIT = ("mishit_rate", "mishit_loss_pct", "mishit_distance_sd_pct", "mishit_direction_factor")

_BIRDIES_SAID = 3
"""So many birdies more than pars and better in 100 plays, and it is birdies that part two clubs; chosen."""


LEAST_LEAVE_YD = 5.0
"""A gain in distance smaller than this is not told [yd]."""


def swing_words(meant: Meant, units: Units = YARDS) -> str:
    """Which club and swing a shot named by its distance is."""
    club, goes = meant.club, units.length(meant.club.carry_yd)
    if meant.part_yd is not None:
        to = units.length(meant.part_yd)
        return f"a part swing with the {club.name}, to carry {to}; its full swing carries {goes}"
    if meant.flight in (None, "stock"):
        return f"the nearest is the {club.name}, which carries {goes}"
    return f"the {club.name} {meant.flight}, which carries {units.length(meant.carry_yd)}"


def trade(answer: Answer, units: Units = YARDS) -> str:
    """What the braver of the first two gains and costs against the other; empty when there is one only."""
    other = runner_up(answer)
    if other is None:
        return ""
    pair = [answer.recommended, other]
    brave, steady = sorted(pair, key=lambda k: _boldness(answer.alternatives[k]), reverse=True)
    one, two = answer.alternatives[brave], answer.alternatives[steady]
    names = f"the {title(answer, brave, units)}", f"the {title(answer, steady, units)}"
    good, bad = _balance(one, two)
    against = f"Against {names[1]}, {names[0]}"
    if good and bad:
        words = f"{against} {good} but {bad} in 100 plays"
    elif bad and one.score.value < two.score.value:
        words = f"{against} {bad} in 100 plays; its average is the lower one all the same"
    elif bad:
        words = f"{against} gains nothing: it {bad} in 100 plays"
    elif good:
        words = f"{against} {good} in 100 plays"
    elif answer.verdict == "either" and answer.start.played is not None:
        words = f"In 100 plays {names[0]} and {names[1]} come out alike"
    else:
        words = ""  # one is better, and not by what is counted here; or there is no par to count by
    further_yd = one.leaves_yd["p50"].value - two.leaves_yd["p50"].value
    if answer.start.played is None and abs(further_yd) >= LEAST_LEAVE_YD:
        by = f"{units.length(abs(further_yd))} {'more' if further_yd > 0.0 else 'less'}"
        words = f"{words}, leaving {by}" if words else f"{capital(names[0])} leaves {by} than {names[1]}"
    return f"{words}." if words else ""


def _boldness(one: Alternative) -> tuple[float, float]:
    doubles = one.chances["double_or_worse"]
    penalty = one.chances["penalty_this_shot"]
    return (0.0 if penalty is None else penalty.value), (0.0 if doubles is None else doubles.value)


def _balance(one: Alternative, two: Alternative) -> tuple[str, str]:
    """What `one` has to the good and to the bad of `two` in 100 plays, each as "gains 2 pars"."""

    def more(name: str) -> int:
        a, b = one.chances.get(name), two.chances.get(name)
        return 0 if a is None or b is None else round(100.0 * (a.value - b.value))

    def count(number: int, single: str, plural: str) -> str:
        return f"{abs(number)} {single if abs(number) == 1 else plural}"

    first, second = par_counts(one), par_counts(two)  # as the table has them, so that the sums come out
    pars, doubles = (first[0] - second[0], first[2] - second[2]) if first and second else (0, 0)
    birdies, bogeys = more("birdie_or_better"), 0
    best, single, plural = pars, "par", "pars"
    if first and second and abs(birdies) >= abs(pars) + _BIRDIES_SAID:
        # pars and better would hide them; bogeys then fill the sum
        best, single, plural, bogeys = birdies, "birdie", "birdies", first[1] - second[1]
    gains = [count(best, single, plural)] if best > 0 else []
    loses = [count(best, single, plural)] if best < 0 else []
    costs: list[str] = []
    saves: list[str] = []
    for number, single, plural in (
        (bogeys, "bogey", "bogeys"),
        (doubles, "double", "doubles"),
        (more("penalty_this_shot"), "penalty", "penalties"),
    ):
        if number:
            (costs if number > 0 else saves).append(count(number, single, plural))
    return _said(("gains", gains), ("saves", saves)), _said(("loses", loses), ("costs", costs))


def _said(*parts: tuple[str, list[str]]) -> str:
    return " and ".join(f"{verb} {join_words(counts)}" for verb, counts in parts if counts)


def people(answer: Answer, units: Units = YARDS) -> str:
    """Who must be clear: the longest of all strikes, and how wide one in twenty finishes."""
    wide = max(answer.alternatives[k].wide_yd.value for k in shown(answer))
    return (
        f"Nobody ahead nearer than {units.clear(answer.clear_beyond_yd)}; 1 in 20 finish wider than "
        f"{units.clear(wide)} either side. {LOOK}"
    )


def whose(answer: Answer) -> str:
    """Whose numbers these are: measured, from the level, assumed."""
    player = answer.player
    clubs = [c for c in player.clubs if c.name in {answer.alternatives[k].club for k in shown(answer)}]
    sources = {
        "carries": _carry_sources(clubs, player),
        "spreads": {c.sources.get(key, "level") for c in clubs for key in _SPREAD},
        "mishits": {c.sources.get(key, "level") for c in clubs for key in _MISHIT},
        "putting": set(player.putting.sources.values()) or {"level"},
    }
    groups: dict[str, list[str]] = {}
    for what, names in sources.items():
        key = f"from {join_words([_source(name, player.source) for name in sorted(names)])}"
        groups.setdefault(key, []).append(what)
    most = max(groups, key=lambda where: len(groups[where]))
    if 1 < len(groups[most]) < len(sources):
        groups = {where: what for where, what in groups.items() if where != most} | {most: ["the rest"]}
    parts = [f"{join_words(what)} {where}" for where, what in groups.items()]
    if len(groups) == 1:
        parts = [f"all {most}"]
    count = len(answer.hole.assumed) + len(player.assumed) + len(answer.conditions.assumed)
    more = f"; {count} things assumed (--full)" if count else ""
    exact = f" {EXACT}" if answer.confidence is None else ""
    return f"{name_said(player, 'handicap ')}: {', '.join(parts)}{more}.{exact}"


def _carry_sources(clubs: Sequence[Club], player: Player) -> set[str]:
    """Where the carries of some clubs come from; one that nobody gave lies in line with those of the bag."""
    mine, all_of_them = (
        {club.sources.get("carry_yd", "level") for club in some} for some in (clubs, player.clubs)
    )
    return all_of_them if "level" in mine else mine


def _source(name: str, where: str) -> str:
    """Where a number of a player came from, by its mark and the player's source."""
    given = "the words" if in_words(where) else "the file"
    return {"file": given, "level": "the level", "measured": "shots measured"}.get(name, name)
