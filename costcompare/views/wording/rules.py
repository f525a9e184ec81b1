"""What no sentence that a customer reads may say: the rules of honest claims, as code.

From the advice that regulators give to sellers of energy savings (Federal Trade Commission
letters and orders of 2012, second-hand): no promise, no lone upper end, no share saved
without what it is a share of. The words themselves are a judgement. :func:`broken_rules`
reads one text; a test reads every text that the program can show.
"""

from __future__ import annotations

import re
from dataclasses import dataclass


@dataclass(frozen=True)
class Rule:
    """One thing that is not said."""

    name: str
    pattern: re.Pattern[str]
    instead: str


@dataclass(frozen=True)
class Broken:
    """A rule that a text breaks, and where."""

    rule: str
    found: str
    instead: str


def _rule(name: str, pattern: str, instead: str) -> Rule:
    return Rule(name, re.compile(pattern, re.IGNORECASE), instead)


RULES = (
    _rule(
        "nothing is guaranteed",
        r"(?<!not a )\bguarant(?:ees?|eed|eeing|y)\b",
        "an estimate, with what it rests on",
    ),
    _rule(
        "no upper end alone",
        # “From 120 to 180”, “up to 800 kWh” of a tier, and a place reached are no claims.
        r"\b(?:saves?|saving|savings|cuts?|less|lower|lowers|reduces?|as much as|only)\b"
        r"[^.;]*(?<!add )(?<!adds )\bup to\b"
        r"|(?<!add )(?<!adds )\bup to\b(?!\s+(?:the|a)\b)(?!\s+\d[\d,.]*\s*(?:kWh|°|h\b|hours))",
        "both ends: from … to …",
    ),
    _rule(
        "nothing is free",
        r"(?<![-\w])(?:for free|free(?!\s+heat\b)(?!-)(?!\s+of\b))\b",
        "what it costs, and who pays",
    ),
    _rule(
        "nothing pays for itself",
        r"\bpays?(?:ing)? for (?:itself|themselves)\b",
        "when the money comes back, and over which years",
    ),
    _rule("nothing is eliminated", r"\beliminat\w*", "how much is left"),
    _rule(
        "nobody is promised a saving", r"\b(?:will|shall|is sure to) (?:\w+ )?save\b", "may save"
    ),
    _rule("no promise", r"\b(?:we|I) promise\b|\brisk[- ]free\b", "an estimate"),
    _rule(
        "a share saved says of what",
        r"\bsav(?:e|es|ed|ing|ings)\b(?:(?!\bof\b)[^.;]){0,40}\d\s?%(?!\s+of\b)",
        "the share of the heating or of the whole bill",
    ),
)


def broken_rules(text: str) -> tuple[Broken, ...]:
    """Every rule that a text breaks; none where it may be shown."""
    return tuple(
        Broken(rule.name, match[0], rule.instead)
        for rule in RULES
        for match in rule.pattern.finditer(text)
    )
