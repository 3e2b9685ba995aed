"""What can be said of a feature: patterns over its words, numbers standing as #0, #1 ..."""

from __future__ import annotations

import re

_N = r"[#]\d+"
_S = r"(?:left|right)"
_G = r"(?:(?:green|putting surface))"
_ON = r"(?:(?:on|to|down|along|off|up|at) )*"
_IN = r"(?:(?:at|in|on|to|from|guarding) )?"
_NEAR = r"(?:(?:near|nearest|nearer|inside|inner) )?"
_TO = r"(?:to|until)"
_SIZE = r"(?:wide|long|deep|tall|by|short|behind|beyond|carry|clear|onwards|to carry|to clear|to reach)"
"""Words that say what the number before them is."""
_LINE = (
    r"(?:line of play|line|middle of fairway|(?:fairway )?middle(?: line)?"
    r"|(?:edge of )?(?P<f>fairway)(?: edge)?)"
)
_OF_LINE = rf"(?: (?:of|off|from) {_LINE})?"
"""What a distance across is counted from: of the fairway it is its edge, else the line."""

_PATTERNS: tuple[tuple[str, str], ...] = (
    # along the line
    (
        "range",
        rf"(?P<word>(?:from|between|at) )?(?P<a>{_N}) {_TO} (?:carry |clear )?(?P<b>{_N})"
        r"(?: (?:to )?(?:carry|clear))?",
    ),
    ("range", rf"(?:reach(?:ed)? )?(?:at )?(?P<a>{_N}) (?P<word>carry|clear) (?P<b>{_N})"),
    ("range", rf"(?:to )?(?:carry|clear) (?:from )?(?P<a>{_N}) {_TO} (?P<b>{_N})"),
    ("range_short", rf"(?:from )?(?P<a>{_N}) {_TO} (?P<b>{_N}) (?:short|before|in front)(?:(?: of)? {_G})?"),
    ("from", rf"from (?:at )?(?P<a>{_N})(?: (?P<run>on|onwards|up))?"),
    ("from", rf"(?P<a>{_N}) (?P<run>onwards)"),
    ("from", rf"(?P<a>{_N}) to (?:reach|(?:(?:front|near|nearest) )?edge)"),
    ("from", rf"reach(?:ed)? (?:at )?(?P<a>{_N})"),
    ("to", rf"(?:up )?{_TO} (?:at )?(?P<a>{_N})"),
    ("to", rf"out (?:at )?(?P<a>{_N})"),  # "runs out at 270": it ends there
    ("to_short", rf"(?:up )?{_TO} (?P<a>{_N}) (?:short|before|in front)(?:(?: of)? {_G})?"),
    ("carry", rf"carry (?:of )?(?P<a>{_N})(?: to clear| over)?"),
    ("carry", rf"(?P<a>{_N}) (?:carry|to carry|to clear)(?: to clear| over)?"),
    ("carry", rf"(?:carried|clear(?:ed)?) (?:at |by )?(?P<a>{_N})"),
    ("at", rf"at (?P<a>{_N})(?: on)?"),
    ("at", rf"(?:at )?(?P<a>{_N}) (?:from|off) tee(?! {_TO}| onwards| on$)"),
    ("out_at", rf"(?:at )?(?P<a>{_N}) out"),  # as a yardage plate says it, to the middle of the green
    ("out_at", rf"(?P<s>{_S}) (?:at )?(?P<a>{_N}) out"),
    ("out_from", rf"from (?P<a>{_N}) out(?: {_TO} {_G}| in)?"),
    ("out_at", rf"(?P<a>{_N}) from middle of {_G}"),
    ("out_range", rf"(?:from |between )?(?P<a>{_N}) {_TO} (?P<b>{_N}) out"),
    ("short_of", rf"(?:short of|before) (?P<a>{_N})"),
    ("along", rf"all (?:way )?(?:along|down|up)(?: (?P<s>{_S}))?(?: side)?"),
    ("along", r"(?:(?:on|for|down|along) )?(?:whole|full|entire|all) (?:length|way)(?: of hole)?"),
    ("along", rf"whole (?P<s>{_S})(?: side)?"),
    ("to_green", rf"(?:all way |way |up |down |on )*{_TO} {_G}"),
    ("from_tee", r"from tee(?: on| onwards)?"),
    ("gap", rf"gap (?:of )?(?P<g>{_N})(?: (?:to|from) (?:line|middle)(?: of fairway)?(?: at (?P<r>{_N}))?)?"),
    # across it
    ("edge", rf"{_NEAR}edge (?:at )?(?P<a>{_N})(?: (?P<s>{_S}))?{_OF_LINE}"),
    ("edge", rf"{_NEAR}edge (?P<s>{_S}) (?P<a>{_N})"),
    ("far_edge", rf"(?:far|outer|outside) edge (?:at )?(?P<a>{_N})(?: (?P<s>{_S}))?{_OF_LINE}"),
    ("side_edge", rf"(?P<s>{_S}) edge (?:at )?(?P<a>{_N})(?: {_S})?"),
    ("offset", rf"(?P<a>{_N}) (?:(?:to|on) )?(?P<s>{_S})(?: side)?{_OF_LINE}"),
    (
        "side_number",
        rf"(?P<s>{_S}) (?:by |side |of )?(?P<a>{_N})(?! (?:to|until) {_N})(?! {_SIZE})(?! from {_G})"
        rf"(?! (?:from|off) tee){_OF_LINE}",
    ),
    ("edge", rf"(?P<a>{_N}) (?:of|off|from) {_LINE}"),
    ("edge", rf"(?:edge )?(?P<a>{_N}) (?P<into>into|in over) (?P<f>fairway)"),
    ("cuts_in", r"into (?:edge of )?fairway"),
    (
        "side",
        rf"{_ON}(?P<run>down|along|up) (?P<s>{_S})(?: hand)?(?: side| edge)?"
        r"(?: of (?:(?P<f>fairway)|hole|line))?",
    ),
    ("side", rf"{_ON}(?P<s>{_S})(?: hand)?(?: side| edge)?(?: of (?:(?P<f>fairway)|hole|line))?"),
    ("both", rf"(?:(?:on|down|along) )?(?:both|either|each) sides?(?P<g>(?: of)? {_G})?"),
    ("both", rf"(?:left and right|right and left)(?P<g>(?: of)? {_G})?"),
    ("both", rf"(?:both sides|left and right|right and left) (?P<a>{_N})(?= at {_N})"),
    ("across", r"across from (?:left to right|right to left)"),
    ("across", r"across(?: (?:in|at) front(?! of))?(?: (?:whole )?(?:hole|line|fairway|line of play))?"),
    (
        "diagonal",
        rf"(?:(?:across|diagonal) )*(?:from )?(?P<a>{_N}) (?:(?:on|at) )?(?P<s>{_S})(?: side)? {_TO} "
        rf"(?P<b>{_N}) (?:(?:on|at) )?(?P<t>{_S})(?: side)?",
    ),
    ("diagonal", r"(?:across )?diagonal(?: across)?(?: (?:whole )?(?:hole|line|fairway|line of play))?"),
    ("place", r"(?:(?:in|down|at|on|to) )?middle(?: line| of (?:fairway|green|line))?"),
    ("place", r"on line"),
    ("place", r"(?:in )?between(?: (?:them|it|two|halves|(?:two )?fairways?)|(?! #))"),
    ("apart", rf"(?P<a>{_N}) apart"),
    ("corner", rf"corner (?P<a>{_N})"),
    ("by", rf"(?P<a>{_N}) by (?P<b>{_N})"),
    ("wide", rf"(?P<a>{_N}) wide by(?= {_N})"),
    ("wide", rf"(?P<a>{_N}) (?:wide|width)(?: at (?P<at>{_N}))?|(?:wide|width) (?P<a2>{_N})"),
    ("narrows", rf"(?:narrows|widens|narrowing|widening|pinches) to (?P<a>{_N})(?: wide)? at (?P<at>{_N})"),
    ("narrowed", rf"(?:narrows|widens|narrowing|widening|pinches) to (?P<a>{_N})(?: wide)?"),
    ("thereafter", r"(?:from there(?: on)?|beyond|after(?: that)?|thereafter|rest)"),
    ("from", rf"(?:beyond|past|after) (?P<a>{_N})"),
    ("wide_at", rf"(?P<a>{_N}) at (?P<at>{_N})"),
    ("deep", rf"(?P<a>{_N}) deep(?: by(?= {_N}))?|(?:deep|depth) (?P<a2>{_N})"),
    ("long", rf"(?P<a>{_N}) long(?: by(?= {_N}))?|(?:long|length) (?P<a2>{_N})"),
    ("tall", rf"(?P<a>{_N}) tall|(?:tall|height) (?P<a2>{_N})"),
    ("crown", rf"crown (?:of )?(?P<a>{_N})(?: (?:wide|across))?|(?P<a2>{_N}) crown"),
    ("base", rf"(?:branches|base) (?:from |at )?(?P<a>{_N})(?: up)?"),
    # by the green
    ("short_green", rf"(?P<a>{_N}) (?:short|before|in front|front)(?:(?: of)? {_G})?"),
    ("short_green", rf"(?:at )?(?P<a>{_N}) from (?:front of )?{_G}"),
    ("short_green", rf"(?:short|before|in front|just short|front)(?: of)? {_G}"),
    ("short_green", r"in front"),
    (
        "short_green",
        rf"(?:short|before|in front)(?: of)? {_G} (?:by )?(?P<a>{_N})(?! {_SIZE})(?! {_TO} {_N})",
    ),
    ("behind_green", rf"(?P<a>{_N}) (?:behind|beyond|over|past|long)(?:(?: of)? {_G})?"),
    ("behind_green", rf"(?:behind|beyond|over|past|back|long|through)(?: of)? {_G}"),
    ("behind_green", rf"(?:behind|beyond|over|past)(?: of)? {_G} (?:by )?(?P<a>{_N})(?! {_SIZE})"),
    ("behind_green", r"behind|over back"),
    ("behind_green", rf"behind (?:by )?(?P<a>{_N})(?! {_SIZE})"),
    ("beside_green", rf"(?:(?:on|to|at) )?(?P<s>{_S}) of {_G}"),
    ("beside_green", rf"(?:(?:on|to|at|down|along) )*(?P<s>{_S})(?: hand)? side of {_G}"),
    ("beside_green", rf"(?P<a>{_N}) (?P<s>{_S}) of {_G}"),
    ("beside_green", rf"(?P<a>{_N}) (?:off|from) {_G} (?:(?:on|to|at) )?(?P<s>{_S})(?: side)?"),
    ("beside_green", rf"(?P<s>{_S}) (?P<a>{_N}) off {_G}"),
    ("off_green", rf"(?P<a>{_N}) off(?P<g> {_G})?"),
    ("off_green", rf"edge (?P<a>{_N}) (?:off|from)(?P<g> {_G})"),
    ("at_green", rf"(?:(?:at|by|beside|near|next to|round|around|guarding|guards) {_G}|greenside)"),
    ("place", rf"{_IN}(?P<p>front|back|short|long|middle)(?! of {_N}) ?(?P<s>{_S}|middle)?(?P<g> of {_G})?"
     r"(?: tier)?"),
    ("place", rf"{_IN}(?P<p>front|back|short|long) (?P<lr>left and right|right and left)(?P<g> of {_G})?"),
    ("place", rf"{_IN}(?P<s>{_S}) (?P<p>front|back|short|long)(?! of {_N})(?P<g> of {_G})?"),
    ("off_place", rf"(?P<a>{_N}) (?:in |on )?from (?P<p>front|back|left|right|middle)(?: edge)?"),
    ("front_at", rf"(?P<p>front|back) (?:edge )?(?:at )?(?P<a>{_N})"),
    ("on", rf"(?P<a>{_N}) on(?: green)?|on (?P<a2>{_N})"),
    # slopes, levels and heights
    ("false_front", r"falsefront"),
    ("tiers", rf"(?:(?P<a>{_N}) )?tier"),
    ("tier_up", rf"(?P<p>front|back) (?:tier |half |part )?(?:is )?(?P<a>{_N}) (?P<way>up|above|down|below)"),
    ("tier_up", rf"(?P<p>front|back) (?:tier |half |part )?(?:is )?(?P<way>up|down) (?:by )?(?P<a>{_N})"),
    ("tier_up", rf"(?P<a>{_N}) (?P<way>up|above|down|below) at (?P<p>front|back)"),
    (
        "angled",
        rf"angled(?: (?:by )?@\d+)?(?: (?:to|from|back|front))*(?: (?P<s>{_S}))"
        rf"(?: to (?:back |front )?(?P<t>{_S}))?(?: (?:by )?@\d+)?",
    ),
    ("falls", r"falls(?: to| from)?"),
    ("way", r"(?:from )?(?P<p>front|back|left|right) to (?P<q>front|back|left|right)"),
    ("percent", r"%\d+"),
    ("level", r"level"),
    ("up", rf"(?P<a>{_N}) (?:up|above)(?P<ref> tee| fairway| green)?"),
    ("up", rf"(?:above|up) (?:by )?(?P<a>{_N})"),
    ("down", rf"(?P<a>{_N}) (?:down|below)(?P<ref> tee| fairway| green)?"),
    ("down", rf"(?:below|drops|down) (?:by )?(?P<a>{_N})"),
    # tees, bends, kinds
    ("ahead", rf"(?P<a>{_N}) (?:ahead|in front|further on)(?: of {_N})?"),
    ("back_by", rf"(?P<a>{_N}) (?:back|further back|behind)"),
    ("degrees", r"(?:by |of )?@\d+"),
    ("sharpness", r"(?P<word>slight|sharp)"),
    ("colour", r"(?P<word>red|yellow|white|blue|black|gold|silver|orange|green)"),
    ("who", r"(?P<word>medal|championship|men|ladies|women|junior|senior|member|competition|ahead)"),
    ("playable", r"(?P<word>playable|dry|unplayable|wet)"),
    ("density", r"(?P<word>open|medium|dense)"),
    ("size", r"(?P<word>small|large)"),
    ("round", rf"encircling {_G}"),
    ("all_round", rf"(?:on )?all(?: round)?(?: sides?)?(?:(?: of)? {_G})?"),
    ("named", r"(?:called |named )?\$\d+"),
    ("bare", rf"(?:of )?(?P<a>{_N})"),
    ("another", r"another"),
    ("nothing", r"in fairway"),
    ("nothing", r"apart|spaced out|staggered"),
    ("nothing", r"of (?:landing|drive|driving) (?:area|zone)"),
    ("nothing", r"in front of tee"),
    ("nothing", r"hole"),  # "hole turns left at 240"
    ("nothing", rf"{_N} times"),
    ("nothing", r"throughout"),
    ("nothing", r"of (?:fairway|line|hole|line of play)|edge of"),
)  # fmt: skip

PATTERNS: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (name, re.compile(f"(?:{pattern})(?= |$)")) for name, pattern in _PATTERNS
)


def longest(text: str, start: int) -> tuple[str, re.Match[str]] | None:
    """Name and match of the pattern that takes the most of a text from `start`; None when none fits."""
    best: tuple[str, re.Match[str]] | None = None
    for name, pattern in PATTERNS:
        found = pattern.match(text, start)
        if found and (best is None or found.end() > best[1].end()):
            best = (name, found)
    return best
