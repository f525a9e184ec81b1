"""What a month and a year of electricity cost under a tariff.

The order of the lines is that of a printed bill and of docs/tariffs.md: energy by
time-of-use period, energy by tier, demand, riders, fixed charges, percentage riders, what is
missing to the minimum bill, credit for export, taxes. Amounts are rounded where the tariff's
conventions say so, and not otherwise; :func:`rounded` turns a sum into cents where a bill
is printed.

What a saved kWh is worth is never an average price: it is the bill before minus the bill
after, two calls of :func:`year_bill`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date
from decimal import ROUND_HALF_UP, Decimal

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from costcompare.billing.clock import civil_hours
from costcompare.billing.tariff_check import check_tariff
from costcompare.billing.tariff_lines import (
    CUSTOMER_CHARGE,
    MINIMUM,
    TAX,
    Metered,
    Part,
    price_lines,
)
from costcompare.billing.tariff_results import (
    BillLine,
    MonthBill,
    Usage,
    YearBill,
    YearLine,
    month_bill,
    year_lines,
)
from costcompare.billing.tariff_spans import (
    AVERAGE_MONTH,
    BillSpan,
    dated_span,
    month_spans,
    period_numbers,
    read_spans,
)
from costcompare.billing.tariff_usage import (
    REST,
    banked,
    netted_month,
    parts_of,
    register_names,
    total_parts,
)
from costcompare.billing.tariff_year import (
    PricedBill,
    checked_energy,
    needs_hours,
    priced_hours,
    year_bills,
)
from costcompare.case.tariff_facts import Tariff, holds_on
from costcompare.errors import Fault, TariffError

__all__ = [
    "CUSTOMER_CHARGE",
    "MINIMUM",
    "REST",
    "TAX",
    "BillLine",
    "MonthBill",
    "Usage",
    "YearBill",
    "YearLine",
    "bill",
    "dated_bill",
    "metered_bills",
    "needs_hours",
    "period_of_hour",
    "rounded",
    "year_bill",
    "year_bills",
]

Floats = NDArray[np.float64]


def rounded(usd: float) -> float:
    """Dollars to the cent, half a cent upwards, as bills are printed.

    The binary noise of a sum (92.61499999999999 for 92.615) is taken away first.
    """
    exact = Decimal(f"{usd:.9f}")
    return float(exact.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP))


def bill(
    tariff: Tariff,
    usage: float | Mapping[str, float] | Usage,
    *,
    month: int = 1,
    months: float = 1.0,
    days: float | None = None,
) -> MonthBill:
    """The bill of one month from its energy, for checks by hand.

    Parameters
    ----------
    tariff
        The price of electricity; its later changes are left out of account.
    usage
        Energy [kWh]; where time-of-use periods hold in the month, the energy by the name of
        the period, and :data:`REST` for what lies in none; a :class:`Usage` where demand or
        export are metered too.
    month
        1 to 12, for seasons and periods; those that are stated by days hold as on its 15th.
    months
        Length of the bill in months; tiers, customer charge and minimum bill are scaled
        with it. A 34-day bill is 34/30 where a utility counts by thirty days.
    days
        Length in days, for daily charges and allowances; an average month where left out.

    Raises
    ------
    TariffError
        The tariff is wrong, or the usage names a period that does not hold in the month.
    """
    check_tariff(tariff)
    middle = date(2027, month, 15)
    names = [p.name for p in tariff.periods if holds_on(p.months, p.dates, middle)]
    usage = usage if isinstance(usage, Usage) else Usage(usage)
    season = next((s for s in tariff.seasons if holds_on(s.months, s.dates, middle)), None)
    length = months * AVERAGE_MONTH if days is None else days

    def part(kwh: float | Mapping[str, float], what: str) -> Part:
        by_name = _by_name(kwh, names, what)
        _refuse_strangers(by_name, names, f"month {month}", what)
        row = [float(by_name.get(name, 0.0)) for name in register_names(tariff)]
        return Part(tariff, None, season, length, np.array([row]))

    bought = part(usage.kwh, "usage")
    sent = part(usage.exported_kwh, "exported") if usage.exported_kwh else None
    out = [] if sent is None else [sent.energy]
    return _single(tariff, month, months, (bought,), out, usage)


def dated_bill(
    tariff: Tariff, usage: float | Mapping[str, float] | Usage, start: date, end: date
) -> MonthBill:
    """One bill between two readings of the meter, ``(end - start).days`` days long.

    Its length in months, and what happens where a price or a season changes within it, are
    the tariff's conventions. Energy is shared by days over what changes, because nothing
    more is known of it; :func:`metered_bills` has the hours. Raises TariffError as
    :func:`bill` does, and where ``end`` is not after ``start``.
    """
    check_tariff(tariff)
    if not start < end:
        raise TariffError([Fault("end", f"must be after {start.isoformat()}", end.isoformat())])
    usage = usage if isinstance(usage, Usage) else Usage(usage)
    span = dated_span(tariff, start, end)
    _refuse_ended(tariff, [span])
    held = {
        period.name
        for part in span.parts
        for period, hours in zip(part.rates.periods, part.registers, strict=False)
        if len(hours)
    }
    names = sorted(held)

    def energy(kwh: float | Mapping[str, float], what: str) -> tuple[Floats, ...]:
        by_name = _by_name(kwh, names, what)
        _refuse_strangers(by_name, names, "the bill", what)
        return total_parts(span, {name: np.array([float(v)]) for name, v in by_name.items()})

    parts = parts_of(span, energy(usage.kwh, "usage"))
    out = energy(usage.exported_kwh, "exported") if usage.exported_kwh else ()
    return _single(tariff, span.month, span.months, parts, out, usage)


def year_bill(
    tariff: Tariff,
    kwh: Floats,
    index: pd.DatetimeIndex,
    time_zone: str,
    *,
    exported: Floats | None = None,
) -> YearBill:
    """The twelve bills of a year of hourly energy.

    Parameters
    ----------
    tariff
        The price of electricity.
    kwh
        Energy bought in each hour [kWh], one value a stamp, none below 0.
    index
        Stamps at the beginning of each hour, with a fixed offset (standard time).
    time_zone
        IANA name; months, weekdays, holidays and hours of the tariff are counted by the
        local civil clock, so March has 743 hours and November 721 where clocks change.
    exported
        Energy fed into the grid in each hour [kWh], where there is any.

    Raises
    ------
    TariffError
        The tariff is wrong, leaves hours without a price, or ends before the year does.
    """
    check_tariff(tariff)
    spans = month_spans(tariff, index, time_zone)
    months = _hourly(tariff, spans, kwh, len(index), exported)
    return YearBill(
        months=months,
        energy_usd=sum(m.energy_usd for m in months),
        fixed_usd=sum(m.fixed_usd for m in months),
        tax_usd=sum(m.tax_usd for m in months),
        total_usd=sum(m.total_usd for m in months),
        demand_usd=sum(m.demand_usd for m in months),
        lines=year_lines(months),
    )


def metered_bills(
    tariff: Tariff,
    kwh: Floats,
    index: pd.DatetimeIndex,
    time_zone: str,
    *,
    reads: Sequence[date],
    exported: Floats | None = None,
) -> tuple[MonthBill, ...]:
    """The bills between the days on which the meter is read, from hourly energy.

    ``reads`` are in order; a bill without an hour in the index is left out. The rest as for
    :func:`year_bill`. A ratchet looks on all of these bills.
    """
    check_tariff(tariff)
    spans = read_spans(tariff, index, time_zone, reads)
    return _hourly(tariff, spans, kwh, len(index), exported)


def period_of_hour(tariff: Tariff, index: pd.DatetimeIndex, time_zone: str) -> NDArray[np.int64]:
    """The number of the period that prices each hour; ``len(tariff.periods)`` for none."""
    return period_numbers(tariff, civil_hours(index, time_zone))


def _hourly(
    tariff: Tariff,
    spans: Sequence[BillSpan],
    kwh: Floats,
    hours: int,
    exported: Floats | None,
) -> tuple[MonthBill, ...]:
    _refuse_ended(tariff, spans)
    bought = checked_energy(kwh, hours)
    sent = np.zeros((1, 1)) if exported is None else checked_energy(exported, hours)
    return tuple(month_bill(one) for one in priced_hours(tariff, spans, bought, sent))


def _refuse_ended(tariff: Tariff, spans: Sequence[BillSpan]) -> None:
    """A year that outlives its tariff has no price."""
    if tariff.ends is None or not spans:
        return
    last = max(date.fromordinal(span.first.toordinal() + span.days - 1) for span in spans)
    if last > tariff.ends:
        rule = f"must not end before the last day that is billed, {last.isoformat()}"
        instead = "the prices that follow, as a row of changes, and leave ends out"
        raise TariffError([Fault("tariff.ends", rule, tariff.ends.isoformat(), instead)])


def _single(
    tariff: Tariff,
    month: int,
    months: float,
    parts: tuple[Part, ...],
    exported: Sequence[Floats],
    usage: Usage,
) -> MonthBill:
    """One bill of one home, from its registers."""
    export = tariff.export
    kwh = sum(float(part.energy.sum()) for part in parts)
    sent = sum(float(out.sum()) for out in exported)
    credit, left = np.zeros(1), 0.0
    if export.netting == "month" and (sent or usage.banked_kwh):
        out = exported or [np.zeros_like(part.energy) for part in parts]
        parts, bank = netted_month(parts, out, {REST: np.array([usage.banked_kwh])})
        left = float(np.sum(banked(bank)))
    else:
        credit = credit + export.price * sent
    metered = Metered(month, months, parts, _demand(tariff, usage.demand_kw), credit)
    span = BillSpan(month, date(2027, month, 1), 0, months, np.zeros(0, np.int64), (), {})
    priced = price_lines(metered, tariff)
    return month_bill(PricedBill(span, np.array([kwh]), np.array([sent]), np.array([left]), priced))


def _demand(tariff: Tariff, kw: float | Mapping[str, float]) -> dict[str, Floats]:
    by_name = kw if isinstance(kw, Mapping) else {c.name: kw for c in tariff.demand}
    return {name: np.array([float(value)]) for name, value in by_name.items()}


def _by_name(
    usage: float | Mapping[str, float], names: Sequence[str], what: str
) -> Mapping[str, float]:
    if isinstance(usage, Mapping):
        return usage
    if names:
        wanted = _names(names)
        raise TariffError([Fault(what, "must be given by period", f"{usage} kWh", wanted)])
    return {REST: float(usage)}


def _refuse_strangers(
    by_name: Mapping[str, float], names: Sequence[str], where: str, what: str
) -> None:
    strangers = [name for name in by_name if name not in (*names, REST)]
    if strangers:
        raise TariffError(
            Fault(f"{what}.{name}", f"must be a period of {where}", name, _names(names))
            for name in strangers
        )


def _names(names: Sequence[str]) -> str:
    return ", ".join(f'"{name}"' for name in (*names, REST))
