"""Whether the values of a case agree with each other.

Every check passes over a value that is None: single values have rules of their own, and
their faults are reported beside these.

``rooms``    names, places above and below, windows in their walls, floor area
``systems``  equipment, the rooms it names, ducts in a place the house has
``prices``   tiers, seasons, incentives, weather
"""

from __future__ import annotations

from costcompare.case.checks.prices import price_faults
from costcompare.case.checks.rooms import room_faults
from costcompare.case.checks.systems import system_faults
from costcompare.case.document import Document
from costcompare.errors import Fault


def agreement_faults(document: Document) -> list[Fault]:
    """Every disagreement between the values of a document."""
    return [*room_faults(document), *system_faults(document), *price_faults(document)]
