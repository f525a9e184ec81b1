"""What a home's heating costs now, what each cure would cost to run, who stays warm.

The modules, in the order in which data flows through it:

    units, errors     text <-> SI; every error raised on purpose
    case              what is said about a home, checked and filled: frozen facts
    weather           one checked hourly table, made, read or measured; the sun on surfaces
    physics           scalar kernels, one file a phenomenon
    equipment         performance maps of heat pumps by class and size
    simulation        facts -> arrays -> a year hour by hour -> an hourly result
    billing, money    tariffs; life-cycle figures, incentives, loans, the four bills
    comfort           warm, cold and hot hours of each room
    comparison        what a comparison says (frozen results, the result file)
    explaining        today's bill in parts that add up
    summary           from an hourly year and its bill to the figures of a comparison
    owning, tonight   a choice's money over the years; an hour of heating by how cold it is
    cautions          what to look out for before anybody touches the house
    comparing         today and every option, at both warmths
    thermostat        the bill at each setting
    winters           the bills in a mild, a typical and a cold winter
    fitting           the house fitted to its real bills
    sizing            loads by room, the machines against them, circuits
    settings          what to set with an option in place
    views             sentences, figures, page, terminal
    cli               the commands
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from costcompare.case import read_case
    from costcompare.comparing import compare, explain, simulate
    from costcompare.fitting import fit
    from costcompare.weather import read_weather, typical_year

__version__ = "0.1.0"

__all__ = ["compare", "explain", "fit", "read_case", "read_weather", "simulate", "typical_year"]

_HOME = {
    "compare": "costcompare.comparing",
    "explain": "costcompare.comparing",
    "fit": "costcompare.fitting",
    "read_case": "costcompare.case",
    "read_weather": "costcompare.weather",
    "simulate": "costcompare.comparing",
    "typical_year": "costcompare.weather",
}


def __getattr__(name: str) -> Any:
    """Import a public function when it is first asked for: ``--help`` stays quick."""
    if name in _HOME:
        return getattr(importlib.import_module(_HOME[name]), name)
    raise AttributeError(f"module 'costcompare' has no attribute {name!r}")
