"""What a choice costs to own over the years: from the bills of a year to its money."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from costcompare.billing.tariff import YearBill
from costcompare.case.facts import Case, Home, MoneyFacts, Option
from costcompare.comparison import (
    AS_WANTED,
    Choice,
    EmissionLine,
    GridEmissions,
    MoneyYears,
    OldSystemYears,
    OutlookLine,
    OverTheYears,
    Warmth,
)
from costcompare.money.factors import with_inflation
from costcompare.money.financing import WayToPay, way_to_pay
from costcompare.money.incentives import IncentiveResult, counted
from costcompare.money.life_cycle import (
    LifeCycle,
    OldSystem,
    Purchase,
    assess,
    life_cycle_cost,
)
from costcompare.money.outlook import Outlook
from costcompare.money.warmth import FourRows, four_rows

WAITED_MONTHS = (10, 11, 12, 1, 2, 3, 4)
"""The winter that is waited for, October to April"""
OTHER_RATES = (0.0, 0.03, 0.07)
"""Real discount rates beside that of the case (judgement: money kept at home, a saver, a
borrower)"""


@dataclass(frozen=True)
class Before:
    """Today's bills, against which every choice is counted."""

    as_lived: YearBill
    as_wanted: YearBill


def money_years(
    case: Case, option: Option | None, warmth: Warmth, bill: YearBill, before: Before
) -> MoneyYears | None:
    """Savings and payback of a choice; every saving is a bill before less a bill after."""
    lived = before.as_lived.total_usd
    saving = lived - bill.total_usd
    worth = before.as_wanted.total_usd - lived if warmth == AS_WANTED else None
    if option is None:
        if warmth != AS_WANTED:
            return None
        return MoneyYears(0.0, 0.0, saving, None, worth, None, None, 0.0, None, None, ())
    same = before.as_wanted.total_usd if warmth == AS_WANTED else lived
    money = case.money
    paid = incentives_for(case, option)
    purchase = purchase_of(case, option, paid, saving)
    outlook = outlook_of(money)
    cycle = assess(purchase, outlook)
    months = tuple(
        then.total_usd - now.total_usd
        for then, now in zip(before.as_lived.months, bill.months, strict=True)
    )
    return MoneyYears(
        installed_cost_usd=option.installed_cost,
        incentives_usd=paid.confirmed_usd,
        first_year_saving_usd=saving,
        same_warmth_saving_usd=same - bill.total_usd,
        warmth_worth_usd=worth,
        simple_payback_years=cycle.simple_payback_years,
        discounted_payback_years=cycle.discounted_payback_years,
        net_savings_usd=cycle.net_savings_usd,
        savings_to_investment_ratio=cycle.savings_to_investment_ratio,
        adjusted_internal_rate_of_return=cycle.adjusted_internal_rate_of_return,
        yearly_position_usd=cycle.yearly_position_usd,
        over_the_years=_over_the_years(money, purchase, cycle, (before.as_lived, bill)),
        possible_incentives_usd=paid.possible_usd,
        incentives=paid.lines,
        ways_to_pay=_ways_to_pay(money, option, paid, months),
        waiting_a_winter_usd=sum(months[month - 1] for month in WAITED_MONTHS),
        outlooks=_outlooks(money, purchase),
    )


def incentives_for(case: Case, option: Option) -> IncentiveResult:
    """What others may pay towards an option."""
    money = case.money
    return counted(money.incentives, option.name, money.installed_on, price=option.installed_cost)


def outlook_of(money: MoneyFacts) -> Outlook:
    """The years ahead as the case counts them."""
    return Outlook(
        study_years=money.study_years,
        discount_rate=money.discount_rate,
        price_growth=money.price_growth,
        inflation=money.inflation,
    )


def purchase_of(
    case: Case, option: Option, paid: IncentiveResult, yearly_saving: float
) -> Purchase:
    """An option as money sees it."""
    return Purchase(
        installed_cost=option.installed_cost,
        yearly_saving=yearly_saving,
        life=option.life,
        incentives=paid.confirmed_usd - paid.later_usd,
        later_incentives=paid.later_usd,
        maintenance=option.maintenance,
        old_system=_old_system(case, option),
    )


def _old_system(case: Case, option: Option) -> OldSystem | None:
    """Today's system where the option makes its replacement needless and that is counted."""
    old = case.money.old_system
    if old is None or not old.counted or not makes_needless(case, option):
        return None
    return OldSystem(old.remaining_life, old.replacement_cost, old.life)


def makes_needless(case: Case, option: Option) -> bool:
    """Whether the home no longer heats with today's system once the option is in."""
    old = case.money.old_system
    if old is not None and old.options is not None:
        return option.name in old.options
    if option.kind == "improve":
        return False
    return option.kind == "electric furnace" or option.system.furnace_output == 0.0


def _over_the_years(
    money: MoneyFacts,
    purchase: Purchase,
    cycle: LifeCycle,
    bills: tuple[YearBill, YearBill],
) -> OverTheYears:
    outlook = outlook_of(money)
    nominal = assess(purchase, outlook.nominal())
    now, after = bills
    # The charges that stand on every bill do not follow the price of energy.
    fixed = min(now.fixed_usd, after.fixed_usd)
    owning = cycle.net_savings_usd - cycle.energy_savings_usd
    avoided = cycle.avoided_replacements_usd
    today = life_cycle_cost(now.total_usd, fixed, avoided, outlook)
    own = life_cycle_cost(after.total_usd, fixed, avoided - owning, outlook)
    move = money.move_in_years
    moved = move if move is not None and move <= money.study_years else None
    old = purchase.old_system
    return OverTheYears(
        study_years=money.study_years,
        net_cost_usd=cycle.net_cost_usd,
        life_cycle_cost_usd=own,
        today_life_cycle_cost_usd=today,
        energy_savings_usd=cycle.energy_savings_usd,
        maintenance_usd=cycle.maintenance_usd,
        replacements_usd=cycle.replacements_usd,
        avoided_replacements_usd=avoided,
        residual_usd=cycle.residual_usd,
        unpaid_again_years=cycle.unpaid_again_years,
        back_for_good_years=cycle.back_for_good_years,
        yearly_with_residual_usd=cycle.yearly_with_residual_usd,
        move_in_years=moved,
        position_when_moving_usd=None if moved is None else cycle.yearly_position_usd[moved],
        with_residual_when_moving_usd=(
            None if moved is None else cycle.yearly_with_residual_usd[moved]
        ),
        inflation=money.inflation,
        nominal_discount_rate=outlook.nominal().discount_rate,
        nominal_net_savings_usd=nominal.net_savings_usd,
        nominal_adjusted_internal_rate_of_return=nominal.adjusted_internal_rate_of_return,
        old_system=(
            None
            if old is None
            else OldSystemYears(old.remaining_life, old.replacement_cost, old.life)
        ),
    )


def _outlooks(money: MoneyFacts, purchase: Purchase) -> tuple[OutlookLine, ...]:
    """The same purchase at other price growths and other discount rates."""
    likely = outlook_of(money)
    growths = (money.price_growth_low, money.price_growth, money.price_growth_high)
    varied = [replace(likely, price_growth=growth) for growth in growths]
    varied += [replace(likely, discount_rate=rate) for rate in OTHER_RATES]
    lines = []
    for outlook in dict.fromkeys(varied):
        cycle = assess(purchase, outlook)
        lines.append(
            OutlookLine(
                price_growth=outlook.price_growth,
                discount_rate=outlook.discount_rate,
                net_savings_usd=cycle.net_savings_usd,
                discounted_payback_years=cycle.discounted_payback_years,
            )
        )
    return tuple(lines)


def _ways_to_pay(
    money: MoneyFacts, option: Option, paid: IncentiveResult, months: Sequence[float]
) -> tuple[WayToPay, ...]:
    price = option.installed_cost - paid.confirmed_usd + paid.later_usd
    rate = with_inflation(money.discount_rate, money.inflation)
    return tuple(
        way_to_pay(way, price, months, discount_rate=rate)
        for way in money.finance
        if not way.options or option.name in way.options
    )


def warmer_degf(home: Home) -> float:
    """How much warmer the wanted setting is, over day and night, a difference [F]."""
    stat = home.thermostat
    night = sum(stat.night_hours) / len(stat.night_hours)
    by_day, by_night = stat.wanted - stat.day, stat.wanted_night - stat.night
    return 1.8 * ((1.0 - night) * by_day + night * by_night)


def rows_of(case: Case, choices: Sequence[Choice]) -> tuple[FourRows, ...]:
    """The four bills of every option, from choices in pairs: as you live now, as you want."""
    bills = [choice.annual.bill_usd for choice in choices]
    pairs = list(zip(bills[::2], bills[1::2], strict=True))
    warmer = warmer_degf(case.home)
    return tuple(
        four_rows(choice.name, today=pairs[0], new=pair, degrees_warmer_degf=warmer)
        for choice, pair in zip(choices[2::2], pairs[1:], strict=True)
    )


def emissions_of(case: Case, choices: Sequence[Choice]) -> GridEmissions | None:
    """What each choice emits at the factor that the case states; None where it states none."""
    stated = case.money.emissions
    if stated is None:
        return None
    now = choices[0].annual.electricity_kwh
    return GridEmissions(
        factor_kg_per_kwh=stated.factor,
        source=stated.source,
        choices=tuple(
            EmissionLine(
                name=choice.name,
                warmth=choice.warmth,
                emitted_kg=stated.factor * choice.annual.electricity_kwh,
                less_than_now_kg=stated.factor * (now - choice.annual.electricity_kwh),
            )
            for choice in choices
        ),
    )
