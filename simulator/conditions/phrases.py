"""The vocabulary of wind: what golfers say, as patterns tried one after the other along a phrase."""

from __future__ import annotations

import re
from functools import cache

from ..spelt import SMALL
from ..units import MPS_PER_MPH
from ..wording import by_word
from .beaufort import BEAUFORT_NAMES

MPH_PER_UNIT = {
    "mph": 1.0,
    "ms": 1.0 / MPS_PER_MPH,
    "kmh": 1.0 / 1.609344,  # the mile is 1.609344 km exactly
    "kt": 1.852 / 1.609344,  # the nautical mile is 1.852 km exactly
}
"""Miles an hour in each unit of speed."""

_UNITS = {
    "mph": r"m\.?p\.?h\.?|mi ?/ ?h|miles (?:an|per) hour",
    "ms": r"m ?/ ?s(?:ec)?|mps|met(?:er|re)s (?:a|per) second",
    "kmh": r"km ?/ ?h|kmph|kph|kmh|kilomet(?:er|re)s (?:an|per) hour",
    "kt": r"kts?|kn|knots?",
}
NUMBER = r"\d+(?:\.\d+)?"
UNIT = "(?:" + "|".join(f"(?P<{unit}>{text})" for unit, text in _UNITS.items()) + ")"
DEGREE = r"(?:°|º|degrees?|degs?)"

_HOURS = {word: hour for word, hour in SMALL.items() if 1 <= hour <= 12}
HOURS = _HOURS | {str(k): k for k in range(1, 13)}
_HOUR = r"\d{1,2}|" + "|".join(sorted(_HOURS, key=len, reverse=True))

CLUBS = {
    "half a": 0.5, "a half": 0.5, "half": 0.5, "a": 1.0, "": 1.0, "one": 1.0, "two": 2.0, "three": 3.0,
    "four": 4.0, "a couple of": 2.0, "couple of": 2.0,
}  # fmt: skip
"""Numbers of clubs in words."""

POINTS = {
    name: 22.5 * k
    for k, name in enumerate(
        ("n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw")
    )
}
"""Compass points [deg], clockwise from north."""

SENSES: dict[str, tuple[str, ...]] = {
    "against": (
        "into the wind", "into the face", "into us", "into you", "into me", "into", "in your face",
        "in my face", "in our face", "in his face", "in her face", "in the player's face", "in the face",
        "in face", "in the teeth", "in your teeth", "on the nose", "on our nose", "right on the nose",
        "head on", "head-on", "head wind",
        "head-wind", "headwind", "head", "against us", "against you", "against me", "against", "hurting",
        "hurts", "hurt", "adverse", "from in front", "from the front", "from ahead", "from the green",
        "from the flag", "from the pin", "from the target", "in off",
    ),
    "helping": (
        "down the wind", "down wind", "down-wind", "downwind", "tail wind", "tail-wind", "tailwind", "tail",
        "helping", "helps", "helpful", "helper", "help", "assisting", "following", "from right behind",
        "from straight behind", "from behind", "at your back", "at my back", "at his back", "at her back",
        "at the player's back", "at our backs", "behind us", "behind you",
        "behind me", "behind", "in your favour", "with us", "with you", "with me", "favourable",
        "favorable", "down the fairway", "down the hole", "down the line", "down", "from the tee",
    ),
    "left": (
        "left to right", "left-to-right", "l to r", "l-to-r", "l-r", "l/r", "l2r", "off the left",
        "from the left", "out of the left", "off left", "from left", "the left", "left", "towards the right",
        "toward the right", "to the right", "to right",
    ),
    "right": (
        "right to left", "right-to-left", "r to l", "r-to-l", "r-l", "r/l", "r2l", "off the right",
        "from the right", "out of the right", "off right", "from right", "the right", "right",
        "towards the left", "toward the left", "to the left", "to left",
    ),
    "across": (
        "across", "cross wind", "cross-wind", "crosswind", "side wind", "sidewind", "cross", "side-on",
    ),
    "slightly": (
        "a little bit", "a little", "a bit", "a touch", "a hair", "slightly", "slight", "just", "partly",
    ),
    "mostly": ("mostly", "mainly", "largely"),
    "quartering": ("quartering", "quarters", "quarter"),
    "forecast": ("as forecast", "forecast", "at 10 metres", "at 10 m", "at ten metres"),
    "felt": ("felt here", "as felt", "felt", "at head height", "head height"),
    "toward": ("towards the", "toward the", "to the", "towards", "toward", "to"),
}  # fmt: skip
"""Words and what they mean; the longest that fits is taken."""

_SAYS_WHERE = re.compile(r"(?:into|in|behind|at|down|on) .*")
_RIGHT = {f"right {w}": s for s in ("against", "helping") for w in SENSES[s] if _SAYS_WHERE.fullmatch(w)}
""" "Right in our face" and "right behind us" are dead against and dead helping: no side is said."""
SENSE_OF = {w: s for s, words in SENSES.items() for w in words} | _RIGHT
_WORDS = sorted(SENSE_OF, key=lambda word: -len(word))

FILLERS = frozenset((
    "wind", "winds", "wind's", "breeze", "breezy", "blowing", "blows", "it", "its", "it's", "is", "a", "an",
    "the", "of", "and", "at", "from", "off", "with", "coming", "about", "around", "roughly", "today",
    "steady", "mean", "average", "then", "but", "plus", "say", "one", "by", "we", "have", "got", "dead",
    "straight", "pure", "out", "side", "hand", "me", "us", "you", "that's", "there", "there's",
))  # fmt: skip
"""Words that carry nothing by themselves."""

_CLUB = rf"(?:{NUMBER}|{'|'.join(sorted(filter(None, CLUBS), key=len, reverse=True))})"
_END = r"(?![\w'])"
_PATTERNS: tuple[tuple[str, str], ...] = (
    # a weather report's group (WMO FM 15): 24012KT, 24012G18KT
    ("report", rf"(?P<ddd>\d{{3}})(?P<mean>\d\d)(?:g(?P<peak>\d\d))?{UNIT}{_END}"),
    (
        "blowing",
        r"(?:blow(?:s|ing)|push(?:es|ing)|mov(?:es|ing)|drift(?:s|ing)) (?!(?:\w+[ \-])?\w*erly\b)"
        r"(?P<where>left|right|(?:(?:north|south|east|west)[ \-]?){1,3}|[nsew]{1,3})(?![\w'])"
        r"(?![ \-](?:to|2)\b)",
    ),
    ("gusts", rf"(?P<n>{NUMBER}) ?g ?(?P<peak>{NUMBER})(?: ?{UNIT})?{_END}"),
    ("plus_minus_degrees", rf"(?:\+ ?- ?|\+/- ?)(?P<n>{NUMBER}) ?{DEGREE}{_END}"),
    ("plus_minus", rf"(?:\+ ?- ?|\+/- ?)(?P<n>{NUMBER})(?: ?{UNIT})?{_END}"),
    ("gust_by", rf"gust(?:s|ing|y)?,? (?:of )?(?:\+ ?- ?|\+/- ?)(?P<n>{NUMBER})(?: ?{UNIT})?{_END}"),
    ("gust_to", rf"gust(?:s|ing|y)?,? (?:of |up to |to |at )?(?P<n>{NUMBER})(?: ?{UNIT})?{_END}"),
    (
        "swing",
        r"(?:swing(?:s|ing)?|shift(?:s|ing)?|var(?:ies|ying)),? (?:by |about )?(?:\+ ?- ?|\+/- ?)?"
        rf"(?P<n>{NUMBER})(?: ?{DEGREE})?{_END}",
    ),
    ("clubs_range", rf"(?P<low>{_CLUB})(?: clubs?)?[ \-](?:to|or)[ \-](?P<n>{_CLUB})[ \-]clubs?{_END}"),
    ("clubs_range", rf"(?P<low>an? )?clubs? (?:to|or) (?P<n>{_CLUB}){_END}"),
    ("clubs_range", rf"(?P<low>{NUMBER}) ?- ?(?P<n>{NUMBER})[ \-]clubs?{_END}"),
    (
        "clubs",
        rf"(?P<n>{NUMBER}|{'|'.join(filter(None, CLUBS))})[ \-]*clubs?'?s?"
        rf"(?P<half>[ \-]and[ \-]a[ \-]half)?(?: worth)?(?: of)?(?:[ \-](?:wind|breeze))?{_END}",
    ),
    ("clubs", rf"(?P<n>)club(?P<half>[ \-]and[ \-]a[ \-]half)(?: of)?(?: wind)?{_END}"),
    (
        "clock_range",
        rf"(?:between |from |at )?(?P<low>{_HOUR})(?: ?o ?'? ?clock)?(?: and | or | to | ?- ?)"
        rf"(?P<hour>{_HOUR}) ?o ?'? ?clock{_END}",
    ),
    (
        "clock",
        rf"(?P<half>half[ \-]past )?(?P<hour>{_HOUR})(?:[:.](?P<minute>\d\d))? ?o ?'? ?clock{_END}",
    ),
    ("clock", rf"(?P<half>half[ \-]past )(?P<hour>{_HOUR}){_END}"),
    ("clock", rf"(?P<half>half )(?P<hour>{_HOUR}){_END}(?![ \-]*(?:clubs?|{UNIT}){_END})"),
    ("clock", rf"(?P<hour>\d{{1,2}}):(?P<minute>\d\d){_END}"),
    ("degrees", rf"(?P<n>{NUMBER}) ?{DEGREE}{_END}"),
    ("range", rf"(?P<low>{NUMBER}) ?(?:-|to) ?(?P<n>{NUMBER})(?: ?{UNIT})?{_END}"),
    ("force", rf"(?P<n>\d\d?) ?(?:bft|beaufort){_END}"),
    ("force", rf"(?:(?:beaufort|force|bft)(?: force)? |f ?)(?P<n>\d\d?){_END}"),
    ("force", rf"(?P<name>{'|'.join(sorted(BEAUFORT_NAMES, key=len, reverse=True))}){_END}"),
    ("speed", rf"(?P<n>{NUMBER}) ?{UNIT}{_END}"),
    (
        "from_number",
        rf"(?:from|bearing) (?P<n>{NUMBER}){_END}"
        rf"(?!:| ?(?:o ?'? ?clock|-|to |clubs?|{DEGREE}|{UNIT}){_END})",
    ),
    ("speed", rf"(?P<n>{NUMBER}){_END}"),
    ("word", rf"(?P<word>{'|'.join(sorted(_RIGHT, key=len, reverse=True))}){_END}"),
    ("either", rf"right (?P<what>into|against|behind|down){_END}"),
    ("word", rf"(?P<word>{'|'.join(map(re.escape, _WORDS))}){_END}"),
    (
        "compass",
        r"(?P<point>(?:(?:north|south|east|west)[ \-]?){0,2}(?:north|south|east|west)|[nsew]{1,3})"
        rf"(?P<ly>(?:er)?ly)?{_END}",
    ),
)
"""(kind, pattern), the first that fits at a place is taken. Phrases are in lower case."""

_SAY_INSTEAD = {
    "gusty gusts gust gusting": 'say how far: "gusting 18", or --gusts 4',
    "swirling swirls swirly variable fickle shifting shifty changing": (
        'say how far its direction goes either side: "swinging 30", or --swing 30'
    ),
    "windy hard very howling really pretty quite big heavy strongish": (
        'say how strong: "25 mph", "two-club wind", "strong"'
    ),
    "in": 'may be into or from a side; say "into, off the left" or "off the left"',
    "over shoulder": 'say which way and the side: "helping, off the right"',
    "takes plays playing more less": 'say "one club into" or "one club helping"',
    "hardly": 'say "calm", or how strong and where from: "3 mph into"',
    "sea hill hills clubhouse range road": 'say where that lies: "NW", "from 2 o\'clock", "off the left"',
    "prevailing usual": 'say where it comes from: "SW 12", "off the right"',
    "between": 'say the middle: "NNE", "1:30 o\'clock"',
    "past": 'say it in figures, "from 2:15"',
    "up": 'say "into" or "helping"; heights go into the hole, or --height with carries',
    "uphill downhill": "heights go into the hole, or --height with carries",
}
INSTEAD = by_word(_SAY_INSTEAD)
"""Words that settle no wind, and what to say for them."""

ALLOWED = (
    "a strength (12 mph, 8 m/s, 20 km/h, 10 knots, one-club, force 4) and where it comes from (2 o'clock, "
    "NW, 240 degrees, into, helping, off the right)"
)


def mph_of(found: re.Match[str], number: str = "n") -> float:
    """Speed of a match [mph] in the unit it names, mph when it names none."""
    return float(found[number]) * MPH_PER_UNIT[names_unit(found) or "mph"]


def names_unit(found: re.Match[str]) -> str | None:
    """Unit of speed a match names, or None."""
    groups = found.groupdict()
    return next((unit for unit in MPH_PER_UNIT if groups.get(unit)), None)


def point_deg(text: str) -> float | None:
    """Bearing [deg] of a compass point written short or long, None when there is no such point."""
    for name in ("north", "east", "south", "west"):
        text = text.replace(name, name[0])
    return POINTS.get(re.sub(r"[ \-]", "", text))


def vocabulary() -> list[str]:
    """Words a mistyped one may have been."""
    words = {part for word in _WORDS for part in re.split(r"[ \-]", word) if len(part) > 3}
    more = (
        "o'clock clock degrees knots gusting swinging calm club force northerly southerly easterly westerly"
    )
    return sorted(words | set(more.split()) | {"north", "south", "east", "west", "northwest", "southwest"})


@cache
def patterns() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """What is looked for, compiled when a wind is said: it takes a hundredth of a quick answer."""
    return tuple((kind, re.compile(pattern)) for kind, pattern in _PATTERNS)
