"""What a comparison says: frozen results with their units in their names.

The field names below are those of the result file (docs/results.md); :func:`as_document`
turns a comparison into plain dicts and lists for JSON.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, fields, is_dataclass
from typing import Any, Literal

from costcompare.money.financing import WayToPay
from costcompare.money.incentives import IncentiveLine
from costcompare.money.warmth import FourRows

Warmth = Literal["as you live now", "at the warmth you want"]
AS_LIVED: Warmth = "as you live now"
AS_WANTED: Warmth = "at the warmth you want"


@dataclass(frozen=True)
class WeatherSummary:
    """The year of weather that everything was worked out on."""

    source: str
    station: str
    note: str
    heating_degree_days_65f: float
    """[F day], from daily means of the hours"""
    mean_temperature_degf: float
    mean_temperature_degc: float
    design_temperature_degf: float
    design_temperature_degc: float
    design_temperature_is_estimated: bool


@dataclass(frozen=True)
class FactLine:
    """One fact that was used, how it is known and where it comes from."""

    path: str
    value: float | str | bool | None
    unit: str
    known: str
    source: str


@dataclass(frozen=True)
class Annual:
    """The sums of a year."""

    electricity_kwh: float
    heating_kwh: float
    backup_kwh: float
    cooling_kwh: float
    fan_kwh: float
    standby_kwh: float
    other_use_kwh: float
    bill_usd: float
    peak_kw: float
    """Highest hourly mean"""


@dataclass(frozen=True)
class Month:
    """One month by the local civil calendar."""

    month: int
    """1 to 12"""
    electricity_kwh: float
    heating_kwh: float
    cooling_kwh: float
    bill_usd: float
    next_kwh_usd: float | None = None
    """What one more kWh in this month costs over the year: bill with it less bill without it"""


@dataclass(frozen=True)
class RoomYear:
    """Who stays warm: the wanted hours of a room; warm, cold and hot add up to them."""

    name: str
    comfort_hours: int
    cold_hours: int
    hot_hours: int
    wanted_hours: int
    minimum_temperature_degf: float
    minimum_temperature_degc: float
    unmet_heat_kwh: float
    winter_mean_degf: float
    """Mean over the wanted hours of December to February"""
    winter_mean_degc: float


@dataclass(frozen=True)
class DuctYear:
    """Where the heat put into the ducts went, over the hours of heating."""

    delivered_kwh: float
    lost_conduction_kwh: float
    lost_supply_leak_kwh: float
    return_leak_kwh: float
    induced_infiltration_kwh: float
    regained_kwh: float
    delivery_effectiveness: float
    standard_delivery_effectiveness: float
    """Delivered over heat put into the ducts"""


@dataclass(frozen=True)
class CrawlspaceYear:
    """How cold and damp it gets under the floor, and how cold the floor."""

    minimum_temperature_degf: float
    minimum_temperature_degc: float
    hours_below_freezing: int
    hours_outdoors_below_20f: int
    """The same for every choice: when pipes in an unheated space begin to be at risk"""
    coldest_night_degf: float
    coldest_night_degc: float
    """Lowest mean of the eight hours from 22:00 standard time"""
    winter_mean_degf: float
    winter_mean_degc: float
    """December to February"""
    damp_share: float
    """Of all hours, with air above 80 % relative humidity"""
    floor_winter_degf: float
    floor_winter_degc: float
    """Upper face of the floors over the crawlspace, December to February, 6:00 to 22:00"""


@dataclass(frozen=True)
class OldSystemYears:
    """Today's system, whose replacement a choice makes needless."""

    remaining_life_years: float
    replacement_cost_usd: float
    life_years: float


@dataclass(frozen=True)
class OverTheYears:
    """The life-cycle figures of a choice, as present values in dollars of today."""

    study_years: int
    net_cost_usd: float
    life_cycle_cost_usd: float
    """Bills, price, upkeep and replacements less what is left"""
    today_life_cycle_cost_usd: float
    """Going on as today, as you live now; the difference of the two is the net savings"""
    energy_savings_usd: float
    maintenance_usd: float
    replacements_usd: float
    avoided_replacements_usd: float
    residual_usd: float
    unpaid_again_years: float | None
    """When a replacement takes the money out again that had come back"""
    back_for_good_years: float | None
    yearly_with_residual_usd: tuple[float, ...]
    """As the yearly position, with what is left of the choice at that time"""
    move_in_years: int | None
    position_when_moving_usd: float | None
    """With nothing for what stays behind"""
    with_residual_when_moving_usd: float | None
    inflation: float
    nominal_discount_rate: float
    nominal_net_savings_usd: float
    """Worked out in the money of each year; the same as in money of today"""
    nominal_adjusted_internal_rate_of_return: float | None
    old_system: OldSystemYears | None
    """None where no replacement of today's system is counted"""


@dataclass(frozen=True)
class OutlookLine:
    """The same choice at another growth of prices or another discount rate."""

    price_growth: float
    discount_rate: float
    net_savings_usd: float
    discounted_payback_years: float | None


@dataclass(frozen=True)
class MoneyYears:
    """The money of one choice against today; None means never, or not applicable."""

    installed_cost_usd: float
    incentives_usd: float
    """Confirmed only"""
    first_year_saving_usd: float
    same_warmth_saving_usd: float | None
    warmth_worth_usd: float | None
    simple_payback_years: float | None
    discounted_payback_years: float | None
    net_savings_usd: float
    savings_to_investment_ratio: float | None
    adjusted_internal_rate_of_return: float | None
    yearly_position_usd: tuple[float, ...]
    """Money out of pocket so far, in today's value, at the end of year 0, 1, … (negative first)"""
    over_the_years: OverTheYears | None = None
    """None for today"""
    possible_incentives_usd: float = 0.0
    """In force, but not certain: not in any figure"""
    incentives: tuple[IncentiveLine, ...] = ()
    """Every incentive that may apply, in the price or not, and why"""
    ways_to_pay: tuple[WayToPay, ...] = ()
    waiting_a_winter_usd: float | None = None
    """What October to April would have saved; below 0 where it costs more"""
    outlooks: tuple[OutlookLine, ...] = ()


@dataclass(frozen=True)
class OutdoorHour:
    """A mean hour at a temperature outdoors."""

    outdoor_degf: float
    hours: int
    """Of the year within 5 F of it"""
    heating_kw: float
    usd_per_hour: float
    """What the bill would be less without the heating of these hours, for each of them"""


@dataclass(frozen=True)
class WinterBill:
    """One choice in one winter."""

    name: str
    warmth: Warmth
    bill_usd: float
    worst_month_usd: float
    first_year_saving_usd: float


@dataclass(frozen=True)
class WinterYear:
    """Every choice in one kind of winter."""

    winter: str
    heating_degree_days_65f: float
    mean_temperature_degf: float
    choices: tuple[WinterBill, ...]


@dataclass(frozen=True)
class EmissionLine:
    """What one choice emits in a year."""

    name: str
    warmth: Warmth
    emitted_kg: float
    less_than_now_kg: float


@dataclass(frozen=True)
class GridEmissions:
    """Carbon dioxide equivalent of the electricity bought, at the factor of the case."""

    factor_kg_per_kwh: float
    source: str
    choices: tuple[EmissionLine, ...]


@dataclass(frozen=True)
class Band:
    """A figure with its range over an ensemble of homes; None means never."""

    low: float | None
    """Tenth percentile: one home in ten has less"""
    likely: float | None
    """Median"""
    high: float | None
    """Ninetieth percentile"""


@dataclass(frozen=True)
class Driver:
    """What one uncertain fact does to a range."""

    path: str
    """Where the case says it"""
    words: str
    known: str
    swing_usd: float
    """How far the figure moves as the fact goes from its tenth to its ninetieth percentile;
    below 0 where more of the fact is less money"""
    share: float
    """Of the variance that all facts explain together"""


@dataclass(frozen=True)
class Range:
    """How sure the figures of one choice are."""

    bill_usd: Band
    first_year_saving_usd: Band | None
    """None for today as you live now"""
    same_warmth_saving_usd: Band | None
    simple_payback_years: Band | None
    """None where nothing is installed"""
    discounted_payback_years: Band | None
    net_savings_usd: Band | None
    chance_of_payback_within_life: float | None
    """Share of the ensemble in which the money is back, in today's value, within the life"""
    warm_share: Band
    """Warm hours over wanted hours"""
    drivers: tuple[Driver, ...]
    """What drives the bill of today, the first-year saving of an option; the most first"""
    yearly_position_usd: tuple[Band, ...] = ()
    """Money out of pocket so far, in today's value, at the end of year 0, 1, …; empty for today"""


@dataclass(frozen=True)
class DataQuality:
    """What the ranges rest on."""

    measured: int
    seen: int
    guessed: int
    """How many of the uncertain facts are known so"""
    guessed_share: float | None
    """Share of guessed facts in the range of today's bill"""
    members: int
    """Homes in the ensemble"""


@dataclass(frozen=True)
class Day:
    """One day hour by hour, for the coldest day of the year."""

    month: int
    day: int
    outdoor_degf: tuple[float, ...]
    rooms_degf: dict[str, tuple[float, ...]]
    power_kw: tuple[float, ...]


@dataclass(frozen=True)
class ChargeLine:
    """One line of a bill, of a month or summed over a year: amount times price."""

    line: str
    kind: str
    """Kind of line, as in the case file; "rounding" for what rounding a total adds"""
    kwh: float | None
    """None for a line that is not energy"""
    amount: float | None
    unit: str
    """Of the amount: kWh, kW month, month, day, or $ where the price is a share"""
    price: float | None
    """[$] for each unit; None where the months differ"""
    usd: float


@dataclass(frozen=True)
class MonthCharges:
    """The lines of one month's bill; they add up to it."""

    month: int
    lines: tuple[ChargeLine, ...]


@dataclass(frozen=True)
class OtherTariffYear:
    """The same use of energy under another tariff of the case."""

    tariff: str
    bill_usd: float
    monthly_bill_usd: tuple[float, ...]
    bill_lines: tuple[ChargeLine, ...]


@dataclass(frozen=True)
class Choice:
    """One choice at one warmth: what it costs, who stays warm, when the money comes back."""

    name: str
    kind: str
    warmth: Warmth
    is_today: bool
    annual: Annual
    monthly: tuple[Month, ...]
    rooms: tuple[RoomYear, ...]
    ducts: DuctYear | None
    crawlspace: CrawlspaceYear | None
    energy_balance_error: float
    money: MoneyYears | None
    """None for today as you live now"""
    range: Range | None
    """None until it is made: the program says so where it shows a figure"""
    coldest_day: Day
    warm_hours_by_month: tuple[float, ...]
    """Share of wanted room-hours that are warm, by month"""
    mean_degf_by_month_and_hour: dict[str, tuple[tuple[float, ...], ...]]
    """For each room 12 x 24 mean temperatures [degF], local standard time"""
    hours_by_outdoors: tuple[OutdoorHour, ...] = ()
    """What an hour of heating costs by the temperature outdoors, coldest first"""
    bill_lines: tuple[ChargeLine, ...] = ()
    """The lines of the year; they add up to its bill"""
    bill_lines_by_month: tuple[MonthCharges, ...] = ()
    """Twelve months for today as you live now, none for the others"""
    other_tariffs: tuple[OtherTariffYear, ...] = ()


@dataclass(frozen=True)
class Part:
    """One part of today's bill."""

    part: str
    kwh: float
    usd: float


@dataclass(frozen=True)
class MonthParts:
    """The parts of one month's bill; they add up to it."""

    month: int
    parts: tuple[Part, ...]


@dataclass(frozen=True)
class Caution:
    """What to look out for, and the fact or figure that raised it."""

    topic: str
    text: str
    because: str


@dataclass(frozen=True)
class Comparison:
    """Today and every option over the same year of weather."""

    format: int
    title: str
    weather: WeatherSummary
    facts: tuple[FactLine, ...]
    choices: tuple[Choice, ...]
    """Today as you live now, today at the warmth you want, then each option at both"""
    explanation: tuple[Part, ...]
    """Today as you live now: adds up to the year's bill"""
    explanation_by_month: tuple[MonthParts, ...]
    cautions: tuple[Caution, ...]
    assumptions: tuple[str, ...]
    currency: str = "$"
    """The sign of the money that every amount is in, whatever its name says"""
    data_quality: DataQuality | None = None
    """None until ranges are made"""
    fitted_bills: int = 0
    """Real bills to which the home was fitted before anything was worked out"""
    range_note: str = ""
    """What the ranges hold and what they leave out, empty until they are made"""
    four_rows: tuple[FourRows, ...] = ()
    """The four bills of every option"""
    winters: tuple[WinterYear, ...] | None = None
    """None until it is asked for"""
    emissions: GridEmissions | None = None
    """None where the case states no factor"""

    def choice(self, name: str, warmth: Warmth) -> Choice:
        """The choice of that name at that warmth; KeyError when there is none."""
        for choice in self.choices:
            if choice.name == name and choice.warmth == warmth:
                return choice
        raise KeyError(f"no choice {name!r} {warmth!r}")

    @property
    def today(self) -> Choice:
        """Today as you live now."""
        return self.choices[0]


def as_document(value: Any) -> Any:
    """Plain dicts, lists and finite numbers; a number that is not finite becomes None."""
    if is_dataclass(value) and not isinstance(value, type):
        return {f.name: as_document(getattr(value, f.name)) for f in fields(value)}
    if isinstance(value, dict):
        return {key: as_document(item) for key, item in value.items()}
    if isinstance(value, list | tuple):
        return [as_document(item) for item in value]
    if isinstance(value, float) and not math.isfinite(value):
        return None
    return value
