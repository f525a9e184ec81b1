"""Filling what a file lacks, and putting a year in calendar order."""

from __future__ import annotations

from pathlib import Path

import pandas as pd
import pytest

from costcompare.weather.files import read_weather


def test_missing_columns_are_worked_out_and_said(plain_path: Path) -> None:
    table = pd.read_csv(plain_path, comment="#")
    head = [line for line in plain_path.read_text().splitlines() if line.startswith("#")]
    kept = table.drop(
        columns=["pressure_pa", "dni_w_m2", "dhi_w_m2", "sky_temperature_degc"]
    ).to_csv(index=False)
    plain_path.write_text("\n".join(head) + "\n" + kept)
    weather = read_weather(plain_path)
    assert weather.note == (
        "made by hand; air pressure from the height in every hour; beam and diffuse sun from the "
        "level sun in every hour; sky temperature from humidity and clouds in every hour"
    )
    assert weather.column("pressure_pa")[0] == pytest.approx(100_785, abs=20)  # 45 m up
    assert (weather.column("dhi_w_m2") <= weather.column("ghi_w_m2") + 1e-9).all()


def test_a_measured_year_from_july_on_is_put_in_calendar_order(plain_path: Path) -> None:
    lines = plain_path.read_text().splitlines()
    first = next(n for n, line in enumerate(lines) if line.startswith("2027-01-01 00:00"))
    july = next(n for n, line in enumerate(lines) if line.startswith("2027-07-01 00:00"))
    lines[july] = lines[july].replace(",10.00,", ",21.00,")
    summer = [line.replace("2027-", "2025-") for line in lines[july:]]
    winter = [line.replace("2027-", "2026-") for line in lines[first:july]]
    plain_path.write_text("\n".join([*lines[:first], *summer, *winter]))
    weather = read_weather(plain_path)
    assert weather.table["temperature_degc"]["2027-07-01 00:00:00-08:00"] == 21.0
    assert "measured from 01 July 2025 on, put in calendar order" in weather.note
