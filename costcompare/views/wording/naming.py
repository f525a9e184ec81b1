"""What things are called in sentences: choices, months, the parts of a bill."""

from __future__ import annotations

from collections.abc import Sequence

from costcompare.comparison import AS_WANTED, Choice, Comparison

TODAY = "today’s system"


def in_a_sentence(choice: Choice) -> str:
    """A choice as it stands in the middle of a sentence: ``today’s system`` or its name quoted."""
    return TODAY if choice.is_today else f"“{choice.name}”"


def as_a_label(choice: Choice) -> str:
    """A choice as the head of a row or a column."""
    return capital(TODAY) if choice.is_today else choice.name


def capital(sentence: str) -> str:
    """The sentence with its first letter as a capital."""
    return sentence[:1].upper() + sentence[1:]


def choosable(comparison: Comparison) -> tuple[str, ...]:
    """Names that can be set against today: the options, or today itself where there is none."""
    names = tuple(
        choice.name
        for choice in comparison.choices
        if not choice.is_today and choice.warmth == AS_WANTED
    )
    return names or (comparison.today.name,)


def listed(words: Sequence[str]) -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def plural(count: int, one: str, many: str) -> str:
    """``one`` or ``many``, by the count."""
    return one if count == 1 else many
