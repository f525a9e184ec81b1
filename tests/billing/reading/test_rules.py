"""The rules and their page say the same."""

from __future__ import annotations

import re
from pathlib import Path

from costcompare.billing.reading.rules import RULES

ROOT = Path(__file__).parents[3]
PAGE = (ROOT / "docs" / "bills.md").read_text(encoding="utf-8")


def test_every_rule_stands_on_the_page_with_its_reason() -> None:
    rows = dict(re.findall(r"^\| ([a-z ]+) \| ([^|]+) \| [^|]+ \|$", PAGE, re.MULTILINE))
    assert {name: reason for name, reason in rows.items() if name in RULES} == dict(RULES)


def test_every_note_of_the_code_is_a_rule() -> None:
    folder = ROOT / "costcompare" / "billing" / "reading"
    sources = "\n".join(path.read_text(encoding="utf-8") for path in folder.glob("*.py"))
    named = set(
        re.findall(r'(?:Note|sorting\.note|_odd_lengths)\(\s*(?:sorting, )?"([a-z ]+)"', sources)
    )
    assert named == set(RULES)
