"""Whether the values of a case agree with each other.

Every check passes over a value that is None: single values have rules of their own, and
their faults are reported beside these.

``rooms``    names, places above and below, windows in their walls, floor area
``systems``  equipment, the rooms it names, ducts in a place the house has
``prices``   weather, bills
``tariffs``  the tables of tariffs; and, for those without other faults, every hour's price
``money``    incentives, ways to pay, the old system
"""

from __future__ import annotations

from costcompare.case.checks.money import money_faults
from costcompare.case.checks.prices import price_faults
from costcompare.case.checks.rooms import room_faults
from costcompare.case.checks.systems import system_faults
from costcompare.case.checks.tariffs import pricing_faults
from costcompare.case.document import Document
from costcompare.errors import Fault


def agreement_faults(document: Document) -> list[Fault]:
    """Every disagreement between the values of a document."""
    return [
        *room_faults(document),
        *system_faults(document),
        *price_faults(document),
        *money_faults(document),
    ]


def all_faults(document: Document, found: list[Fault]) -> list[Fault]:
    """``found``, every disagreement, and what keeps tariffs that are well stated from pricing."""
    faults = [*found, *agreement_faults(document)]
    if not any(fault.path.split(".")[0] in {"tariff", "other_tariffs"} for fault in faults):
        faults += pricing_faults(document)
    return faults
