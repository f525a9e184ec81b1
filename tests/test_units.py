"""Text with a unit to SI and back: what people write, and what is refused."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from costcompare.units import KINDS, KindName, UnitError, customary, parse, show

FOOT = 0.3048  # [m] exact by definition
BTU = 1055.05585262  # [J] International Table Btu, exact by definition
R = FOOT**2 * 3600.0 / BTU / 1.8  # [m2 K/W] of one h ft2 F/Btu


@pytest.mark.parametrize(
    ("kind", "text", "si"),
    [
        ("temperature", "68 F", 20.0),
        ("temperature", "68 °F", 20.0),
        ("temperature", "68F", 20.0),
        ("temperature", "68 degF", 20.0),
        ("temperature", "68 deg F", 20.0),
        ("temperature", "20 C", 20.0),
        ("temperature", "20 °C", 20.0),
        ("temperature", "293.15 K", 20.0),
        ("temperature", "-40 F", -40.0),
        ("temperature", "\N{MINUS SIGN}40 F", -40.0),
        ("temperature_difference", "5 F", 5.0 / 1.8),
        ("temperature_difference", "2 K", 2.0),
        ("temperature_difference", "2 C", 2.0),
        ("resistance", "R-19", 19 * R),
        ("resistance", "R19", 19 * R),
        ("resistance", "r 19", 19 * R),
        ("resistance", "RSI-3.3", 3.3),
        ("resistance", "19 h ft2 F/Btu", 19 * R),
        ("resistance", "19 hr·ft²·°F/Btu", 19 * R),
        ("resistance", "3.3 m2 K/W", 3.3),
        ("airflow", "1200 cfm", 1200 * FOOT**3 / 60),
        ("airflow", "1,200 CFM", 1200 * FOOT**3 / 60),
        ("airflow", "0.5 m3/s", 0.5),
        ("airflow", "180 m3/h", 0.05),
        ("capacity", "3 tons", 36000 * BTU / 3600),
        ("capacity", "1 ton", 12000 * BTU / 3600),
        ("capacity", "12 kBtu/h", 12000 * BTU / 3600),
        ("capacity", "9k Btu/h", 9000 * BTU / 3600),
        ("capacity", "9kBtu/h", 9000 * BTU / 3600),
        ("capacity", "12,000 BTU/hr", 12000 * BTU / 3600),
        ("capacity", "12,000 Btu", 12000 * BTU / 3600),
        ("capacity", "3.5 kW", 3500.0),
        ("output", "20 kW", 20000.0),
        ("power", "550 W", 550.0),
        ("area", "380 ft2", 380 * FOOT**2),
        ("area", "380 sq ft", 380 * FOOT**2),
        ("area", "380 sq. ft.", 380 * FOOT**2),
        ("area", "380 sqft", 380 * FOOT**2),
        ("area", "380 square feet", 380 * FOOT**2),
        ("area", "380 ft²", 380 * FOOT**2),
        ("area", "380 ft^2", 380 * FOOT**2),
        ("area", "35 m2", 35.0),
        ("length", "24 ft", 24 * FOOT),
        ("length", "8'6\"", 8.5 * FOOT),
        ("length", "8 ft 6 in", 8.5 * FOOT),
        ("length", "102 in", 8.5 * FOOT),
        ("length", "12 mm", 0.012),
        ("u_factor", "1 W/m2/K", 1.0),
        ("u_factor", "1 W/(m² K)", 1.0),
        ("u_factor", "1 W/m2K", 1.0),
        ("u_factor", "1 Btu/h/ft2/F", 1.0 / R),
        ("u_factor", "1 Btu/(hr·ft²·°F)", 1.0 / R),
        ("energy_rate", "730 kWh/month", 1000.0),
        ("energy_rate", "8760 kWh/year", 1000.0),
        ("energy_rate", "24 kWh per day", 1000.0),
        ("monthly_energy", "800 kWh/month", 800.0),
        ("monthly_energy", "800 kWh", 800.0),
        ("money", "11200 $", 11200.0),
        ("money", "$11,200", 11200.0),
        ("money", "$11.2k", 11200.0),
        ("money", "11200 dollars", 11200.0),
        ("money", "11200 USD", 11200.0),
        ("money_per_month", "12.50 $/month", 12.5),
        ("money_per_month", "$12.50 per month", 12.5),
        ("money_per_month", "150 $/year", 12.5),
        ("money_per_year", "150 $/year", 150.0),
        ("money_per_year", "-20 $/year", -20.0),
        ("price_per_kwh", "$0.12/kWh", 0.12),
        ("price_per_kwh", "0.125 $/kWh", 0.125),
        ("price_per_kwh", "12.5 cents/kWh", 0.125),
        ("price_per_kwh", "12.5 ¢/kWh", 0.125),
        ("price_per_kwh", "12.5 cents per kWh", 0.125),
        ("fraction", "18 %", 0.18),
        ("fraction", "18%", 0.18),
        ("fraction", "18 percent", 0.18),
        ("fraction", "0.18", 0.18),
        ("fraction", 0.18, 0.18),
        ("fraction", 1, 1.0),
        ("duration_years", "15 year", 15.0),
        ("duration_years", "15 years", 15.0),
        ("air_changes", "0.414 1/h", 0.414),
        ("air_changes", "0.4 ACH", 0.4),
        ("conductivity", "0.16 W/m/K", 0.16),
        ("conductivity", "1 Btu in/h/ft2/F", FOOT / 12.0 / R),
        ("density", "50 lb/ft3", 50 * 0.45359237 / FOOT**3),
        ("heat_capacity", "1 Btu/lb/F", 4186.8),
    ],
)
def test_what_people_write_is_read_rightly(kind: KindName, text: Any, si: float) -> None:
    assert parse(text, kind) == pytest.approx(si, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize(
    ("kind", "given"),
    [
        ("temperature", "68"),
        ("temperature", 68),
        ("temperature", "68 cfm"),
        ("temperature", "sixty F"),
        ("length", "380 ft2"),
        ("length", "1,5 m"),
        ("area", "380 ft"),
        ("area", 380),
        ("area", ""),
        ("area", "ft2"),
        ("airflow", "1200 F"),
        ("capacity", "3 pounds"),
        ("money", "11200"),
        ("money", "$"),
        ("price_per_kwh", "0.12"),
        ("price_per_kwh", "12 F"),
        ("resistance", "19"),
        ("resistance", "R-"),
        ("fraction", True),
        ("fraction", None),
        ("fraction", [1]),
        ("fraction", math.nan),
        ("fraction", 10**400),
        ("length", "1e999 ft"),
    ],
)
def test_what_is_no_value_of_the_kind_is_refused(kind: KindName, given: Any) -> None:
    with pytest.raises(UnitError) as caught:
        parse(given, kind)
    assert KINDS[kind].example in caught.value.instead


def test_the_refusal_is_a_sentence() -> None:
    with pytest.raises(ValueError, match=r'^needs a unit \(F, C\) \(given: "68"\)') as caught:
        parse("68", "temperature")
    assert str(caught.value).endswith('Write for example "68 F".')
    with pytest.raises(UnitError, match=r"^must be an area \(ft2, m2\)"):
        parse("68 F", "area")


@pytest.mark.parametrize("kind", list(KINDS))
def test_the_example_of_a_kind_reads(kind: KindName) -> None:
    assert math.isfinite(parse(KINDS[kind].example, kind))


@pytest.mark.parametrize(
    ("kind", "value", "text"),
    [
        ("temperature", 20.0, "68 F"),
        ("temperature_difference", 1.0, "1.8 F"),
        ("resistance", 19 * R, "R-19"),
        ("airflow", 0.5663369318, "1,200 cfm"),
        ("area", 35.3031552, "380 ft2"),
        ("capacity", 3516.852842, "12 kBtu/h"),
        ("output", 20000.0, "20 kW"),
        ("money", 11200.0, "$11,200"),
        ("money", -3.5, "-$3.50"),
        ("money_per_month", 12.5, "$12.50/month"),
        ("price_per_kwh", 0.125, "$0.125/kWh"),
        ("fraction", 0.18, "18 %"),
        ("duration_years", 15.0, "15 year"),
        ("energy_rate", 849.3150685, "620 kWh/month"),
    ],
)
def test_values_are_shown_as_people_write_them(kind: KindName, value: float, text: str) -> None:
    assert show(value, kind) == text


def test_customary_gives_number_and_unit() -> None:
    number, unit = customary(20.0, "temperature")
    assert (round(number, 9), unit) == (68.0, "F")
    number, unit = customary(19 * R, "resistance")
    assert (round(number, 9), unit) == (19.0, "h ft2 F/Btu")


@given(
    kind=st.sampled_from(list(KINDS)),
    value=st.floats(0.01, 1e5, allow_nan=False, allow_infinity=False),
)
def test_what_is_shown_reads_back(kind: KindName, value: float) -> None:
    # Four significant digits in the shown unit; the offset of a temperature adds to the error.
    text = show(value, kind)
    allowed = 0.02 if kind == "temperature" else 0.006
    assert parse(text, kind) == pytest.approx(value, rel=1e-3, abs=allowed)


@given(kind=st.sampled_from(list(KINDS)), text=st.text(max_size=20))
def test_any_text_is_read_or_refused(kind: KindName, text: str) -> None:
    value = 0.0
    try:
        value = parse(text, kind)
    except UnitError as error:
        assert error.rule  # noqa: PT017 (both outcomes are allowed)
    assert math.isfinite(value)


@pytest.mark.parametrize("sign", ["$", "€", "£", "¥"])
def test_any_sign_of_money_is_an_amount_of_the_case(sign: str) -> None:
    assert parse(f"{sign}1,200", "money") == 1200.0
    assert parse(f"12.5 {sign}/month", "money_per_month") == 12.5
    assert parse(f"{sign}0.30/kWh", "price_per_kwh") == 0.30
