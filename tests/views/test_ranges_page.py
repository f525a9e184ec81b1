"""What ``compare`` prints of ranges."""

from __future__ import annotations

import re

from costcompare.comparison import Comparison
from costcompare.views.ranges_page import how_sure
from costcompare.views.terminal import plain_lines
from costcompare.views.wording.naming import as_a_label


def lines(comparison: Comparison) -> list[str]:
    return list(plain_lines(how_sure(comparison)))


def test_every_choice_has_its_row_with_likely_low_and_high(ranged: Comparison) -> None:
    shown = lines(ranged)
    text = "\n".join(shown)
    for choice in ranged.choices:
        start = f"{as_a_label(choice)}, {choice.warmth}"
        row = next(line for line in shown if line.startswith(start))
        assert re.search(r"\$3,560 +\$2,900 to \$4,400", row)
    assert "−$160 to $390" in text
    assert re.search(r"34 years +12 years to never", text)
    assert "about 2 of 10 such homes" in text
    assert re.search(r"how much air the ducts lose \(guessed\) +\$420", text)
    assert "64 homes were worked out" in text
    assert "What they hold." in text


def test_without_ranges_it_says_so(comparison: Comparison) -> None:
    text = "\n".join(lines(comparison))
    assert "without a range" in text
    assert "low to high" not in text
