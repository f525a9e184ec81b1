"""Cases 600 and 900 of ASHRAE Standard 140 against the published ranges.

Ranges: ASHRAE Standard 140-2020/2023, informative results (read in a public library that
follows the standard). They are ranges of other models' results, not the truth. The Denver
year is not part of the project: COSTCOMPARE_DENVER_TMY3 names the file.
"""

from __future__ import annotations

import os
from pathlib import Path

import envelope_cells
import pytest

from costcompare import read_weather, simulate
from costcompare.case import case_from_document

DENVER = os.environ.get("COSTCOMPARE_DENVER_TMY3", "")
needs_denver = pytest.mark.skipif(
    not DENVER, reason="COSTCOMPARE_DENVER_TMY3 does not name the Denver typical year"
)

# MWh and kW: (low, high)
RANGES = {
    False: {"heating": (3.993, 4.504), "cooling": (5.432, 6.162)},
    True: {"heating": (1.379, 1.814), "cooling": (2.267, 2.714)},
}


@needs_denver
@pytest.mark.parametrize("heavy", [False, True])
def test_annual_energy(heavy: bool) -> None:
    case = case_from_document(envelope_cells.document(heavy=heavy))
    year = simulate(case, weather=read_weather(Path(DENVER)))
    heating, cooling = year.heating.sum() / 1e6, year.cooling.sum() / 1e6
    ranges = RANGES[heavy]
    assert ranges["heating"][0] <= heating <= ranges["heating"][1]
    assert ranges["cooling"][0] <= cooling <= ranges["cooling"][1]
    assert year.energy_balance_error < 1e-6
