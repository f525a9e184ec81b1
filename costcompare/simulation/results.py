"""What an hourly run gives back: plain arrays by hour, and the year's closing error."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

Hours = NDArray[np.float64]
"""One value an hour, shape (8760,)"""


@dataclass(frozen=True)
class DuctHours:
    """Where the heat put into the ducts goes, each [W], shape (8760,)."""

    delivered: Hours
    conduction: Hours
    supply_leak: Hours
    return_leak: Hours
    induced_infiltration: Hours
    """Heat for the outdoor and crawlspace air that unbalanced leaks pull into the rooms"""
    regained: Hours
    """What the floor or ceiling loses less because the ducts warm the space they run in"""


@dataclass(frozen=True)
class LoadHours:
    """The rooms' heat balance by part, each [W], shape (8760,); losses are positive.

    Sum of losses minus sum of gains equals the heat of all equipment into the rooms.
    """

    walls_and_glass: Hours
    """Walls, windows, doors, ceilings and roofs"""
    floor: Hours
    air_leaking: Hours
    """With what fans and a fire take out, without what the blower's unbalanced leaks pull in"""
    sun: Hours
    """A gain, positive"""
    inside_gains: Hours
    """People, appliances, hot water, a fire: a gain, positive"""
    stored: Hours
    """Warmth taken up by the rooms' contents and structure"""


@dataclass(frozen=True)
class MachineHours:
    """How one heat pump spends the hours of a year."""

    name: str
    """The room of its head, or of the thermostat for a ducted one"""
    heating_hours: int
    """In which it heats"""
    below_minimum_hours: int
    """In which it heats with less than its minimum and goes on and off"""
    cut_out_hours: int
    """In which it is too cold for it to run"""
    not_rated_hours: int
    """Colder than anything known of it: it is taken to give nothing"""
    at_maximum_hours: int = 0
    """In which it heats with all that it can give"""
    other_mode_hours: int = 0
    """In which a room of one of its heads wanted to be cooled while it heated, or the reverse"""


@dataclass(frozen=True)
class HourlyResult:
    """One home with one system over one year."""

    index: pd.DatetimeIndex
    """Standard time, hour beginning"""
    room_names: tuple[str, ...]
    outdoor_temperature: Hours
    """[degC]"""
    room_temperature: NDArray[np.float64]
    """[degC], shape (8760, rooms): air at sitting height"""
    space_temperature: dict[str, Hours]
    """[degC] by space: crawlspace, attic, basement, garage"""
    heating: Hours
    """Electricity for heating: elements, compressors, defrost, room heaters, strips [W]"""
    backup: Hours
    """The resistance part of ``heating`` in a heat-pump choice [W]"""
    cooling: Hours
    """Electricity of compressors for cooling [W]"""
    fan: Hours
    """Blowers and head fans [W]"""
    standby: Hours
    """Controls, crankcase and pan heaters [W]"""
    other_use: Hours
    """[W]"""
    equipment_heat: Hours
    """Heat that all heating equipment (with its blower) gives off [W]"""
    room_heat: NDArray[np.float64]
    """Heat (cooling negative) that heads and heaters put into each room [W], (8760, rooms)"""
    unmet_heat: NDArray[np.float64]
    """Heat missing to hold the setpoint [W], shape (8760, rooms)"""
    run_fraction: Hours
    """Share of the hour the ducted system runs"""
    ducts: DuctHours | None
    loads: LoadHours
    energy_balance_error: float
    """Sum of absolute hourly imbalances of the whole network over the sum of heat put in"""
    machines: tuple[MachineHours, ...] = ()
    """How each heat pump spends the year"""

    @property
    def electricity(self) -> Hours:
        """All electricity bought [W]."""
        return self.heating + self.cooling + self.fan + self.standby + self.other_use

    def frame(self) -> pd.DataFrame:
        """The hourly result as a table; column names carry their units."""
        columns: dict[str, Hours] = {
            "outdoor_degc": self.outdoor_temperature,
            "heating_kwh": self.heating / 1000.0,
            "backup_kwh": self.backup / 1000.0,
            "cooling_kwh": self.cooling / 1000.0,
            "fan_kwh": self.fan / 1000.0,
            "standby_kwh": self.standby / 1000.0,
            "other_use_kwh": self.other_use / 1000.0,
            "electricity_kwh": self.electricity / 1000.0,
        }
        for name, values in self.space_temperature.items():
            columns[f"{name}_degc"] = values
        for number, name in enumerate(self.room_names):
            columns[f"{name}_degc"] = self.room_temperature[:, number]
            columns[f"{name}_unmet_kwh"] = self.unmet_heat[:, number] / 1000.0
        return pd.DataFrame(columns, index=self.index)
