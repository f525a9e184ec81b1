"""Whether a tariff can price a year, before anything is priced."""

from __future__ import annotations

from functools import lru_cache

from costcompare.case.checks.tariff_rules import tariff_faults
from costcompare.case.tariff_facts import Tariff
from costcompare.errors import Fault, TariffError


def check_tariff(tariff: Tariff) -> None:
    """Raise :class:`TariffError` with every fault of the tariff; return nothing else."""
    faults = _faults(tariff)
    if faults:
        raise TariffError(faults)


@lru_cache(maxsize=256)
def _faults(tariff: Tariff) -> tuple[Fault, ...]:
    return tuple(tariff_faults(tariff))
