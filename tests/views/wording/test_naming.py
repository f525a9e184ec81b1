"""What things are called in sentences."""

from __future__ import annotations

import pytest

from costcompare.comparison import AS_WANTED, Comparison
from costcompare.views.wording.naming import as_a_label, choosable, in_a_sentence, listed


def test_today_and_options_have_their_names(comparison: Comparison, option: str) -> None:
    assert in_a_sentence(comparison.today) == "today’s system"
    assert as_a_label(comparison.today) == "Today’s system"
    chosen = comparison.choice(option, AS_WANTED)
    assert in_a_sentence(chosen) == f"“{option}”"
    assert as_a_label(chosen) == option


def test_every_option_can_be_chosen_and_today_cannot(comparison: Comparison) -> None:
    names = choosable(comparison)
    assert comparison.today.name not in names
    assert set(names) == {c.name for c in comparison.choices if not c.is_today}


@pytest.mark.parametrize(
    ("words", "text"),
    [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")],
)
def test_lists_read_as_a_sentence(words: list[str], text: str) -> None:
    assert listed(words) == text
