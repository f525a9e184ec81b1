"""From an hourly year and its bill to the figures that a comparison shows."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.billing.clock import WINTER, civil_hours, standard_hours
from costcompare.billing.tariff import YearBill
from costcompare.case.facts import Case, Fact, Home, System
from costcompare.comparison import (
    Annual,
    DuctYear,
    FactLine,
    Month,
    WeatherSummary,
)
from costcompare.equipment.classes import rated_heating
from costcompare.physics.ducts import delivery_effectiveness
from costcompare.simulation import HourlyResult
from costcompare.simulation.machines import filled_points
from costcompare.simulation.plant import duct_network
from costcompare.weather import (
    Weather,
    design_temperature,
    heating_degree_days_65f,
    mean_temperature,
)

Floats = NDArray[np.float64]


def fahrenheit(celsius: float) -> float:
    """[degC] to [degF]"""
    return celsius * 1.8 + 32.0


def kwh(watts: Floats) -> float:
    """Sum of an hourly power [W] in kWh."""
    return float(watts.sum()) / 1000.0


def annual(year: HourlyResult, bill: YearBill) -> Annual:
    """The year's sums and its bill."""
    return Annual(
        electricity_kwh=kwh(year.electricity),
        heating_kwh=kwh(year.heating),
        backup_kwh=kwh(year.backup),
        cooling_kwh=kwh(year.cooling),
        fan_kwh=kwh(year.fan),
        standby_kwh=kwh(year.standby),
        other_use_kwh=kwh(year.other_use),
        bill_usd=bill.total_usd,
        peak_kw=float(year.electricity.max()) / 1000.0,
    )


def months_of(
    year: HourlyResult, bill: YearBill, time_zone: str, margins: tuple[float, ...]
) -> tuple[Month, ...]:
    """The twelve months by the local calendar; they add up to the year.

    ``margins`` are what one more kWh costs in each of them [$].
    """
    month = civil_hours(year.index, time_zone).month

    def by_month(watts: Floats) -> Floats:
        result: Floats = np.bincount(month, weights=watts, minlength=12) / 1000.0
        return result

    electricity, heating, cooling = (
        by_month(series) for series in (year.electricity, year.heating, year.cooling)
    )
    return tuple(
        Month(
            month=m + 1,
            electricity_kwh=float(electricity[m]),
            heating_kwh=float(heating[m]),
            cooling_kwh=float(cooling[m]),
            bill_usd=bill.months[m].total_usd,
            next_kwh_usd=margins[m],
        )
        for m in range(12)
    )


def standard_effectiveness(home: Home, system: System, year: HourlyResult) -> float:
    """Delivery effectiveness of the standard's steady formula, as a quick cross-check.

    At the winter's mean temperatures of the thermostat's room and of the space round the
    ducts, the heater at full output (ASHRAE Standard 152, from memory); 1 for ducts inside.
    """
    if system.ducts is None or system.ducts.location not in year.space_temperature:
        return 1.0
    nodes = {room.name: number for number, room in enumerate(home.rooms)}
    nodes[system.ducts.location] = len(nodes)
    network = duct_network(home, system, nodes, -1)
    winter = np.isin(standard_hours(year.index).month, WINTER)
    output = system.furnace_output
    if system.ducted_unit is not None:
        output = rated_heating(system.ducted_unit.size, ducted=True)
    return delivery_effectiveness(
        airflow=network.airflow,
        heat_output=output + network.blower_power,
        supply_leakage=network.supply_leakage,
        return_leakage=network.return_leakage,
        supply_area=network.supply_area,
        return_area=network.return_area,
        resistance=network.resistance,
        room=float(year.room_temperature[winter, network.return_room].mean()),
        around=float(year.space_temperature[system.ducts.location][winter].mean()),
    )


def duct_year(home: Home, system: System, year: HourlyResult) -> DuctYear | None:
    """Where the heat put into the ducts went, over the hours of heating."""
    if year.ducts is None:
        return None
    warm = year.equipment_heat > 0.0
    terms = {
        name: kwh(np.where(warm, getattr(year.ducts, name), 0.0))
        for name in (
            "delivered",
            "conduction",
            "supply_leak",
            "return_leak",
            "induced_infiltration",
            "regained",
        )
    }
    put_in = terms["delivered"] + terms["conduction"] + terms["supply_leak"] + terms["return_leak"]
    return DuctYear(
        delivered_kwh=terms["delivered"],
        lost_conduction_kwh=terms["conduction"],
        lost_supply_leak_kwh=terms["supply_leak"],
        return_leak_kwh=terms["return_leak"],
        induced_infiltration_kwh=terms["induced_infiltration"],
        regained_kwh=terms["regained"],
        delivery_effectiveness=terms["delivered"] / put_in if put_in > 0.0 else 1.0,
        standard_delivery_effectiveness=standard_effectiveness(home, system, year),
    )


def weather_summary(case: Case, weather: Weather) -> WeatherSummary:
    """Which year of weather was used, and how cold it is."""
    stated = case.home.site.design_temperature
    design = stated if stated is not None else design_temperature(weather)
    mean = mean_temperature(weather)
    return WeatherSummary(
        source=weather.source,
        station=weather.station,
        note=weather.note,
        heating_degree_days_65f=heating_degree_days_65f(weather),
        mean_temperature_degf=fahrenheit(mean),
        mean_temperature_degc=mean,
        design_temperature_degf=fahrenheit(design),
        design_temperature_degc=design,
        design_temperature_is_estimated=stated is None,
    )


def fact_line(fact: Fact) -> FactLine:
    """A fact as the result file shows it."""
    return FactLine(fact.path, fact.value, fact.unit, fact.known, fact.source)


def assumptions(case: Case, weather: Weather) -> tuple[str, ...]:
    """What every figure rests on, in words."""
    tariff, money = case.tariff, case.money
    said = f": {weather.note.rstrip('.')}" if weather.note else ""
    lines = [
        f"Weather: {weather.station} ({weather.source}){said}.",
        f"Price of electricity: “{tariff.name}” as stated, the same in every year but for a "
        f"growth of {100 * money.price_growth:.1f} % a year above inflation.",
        f"Money is counted over {money.study_years} years at "
        f"{100 * money.discount_rate:.1f} % a year above inflation; incentives that are not "
        "confirmed are left out.",
        "Machines are generic classes, not a make, unless their points are given. Their "
        f"efficiency is taken at {100 * case.today.field_factor:.0f} % of the map for what homes "
        "see in the field (judgement; 80 to 95 % is usual).",
        "Doors stand as the facts say; people, appliances and hot water warm the rooms with "
        "the stated share of their heat.",
        "Windows are opened when the rooms are warm and it is cooler outside; below 60 °F "
        "outside nobody cools with a machine.",
    ]
    systems = {"Today": case.today} | {option.name: option.system for option in case.options}
    for name, system in systems.items():
        lines += [
            f"“{name}”, machine in the {room}: not on its sheet and filled from how machines "
            f"usually lie: {'; '.join(points)}."
            for room, points in filled_points(system).items()
            if points
        ]
    return tuple(lines)
