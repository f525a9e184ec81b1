"""The one hourly weather table that the rest of the program reads.

8,760 rows, fixed-offset standard time, each value the mean over the hour that begins at
the stamp. The 29th of February is dropped. :func:`checked` is the only way to make one.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd

HOURS = 8760

COLUMNS: dict[str, tuple[float, float]] = {
    "temperature_degc": (-70.0, 60.0),
    "relative_humidity": (0.0, 1.0),
    "wind_speed_m_s": (0.0, 60.0),
    "pressure_pa": (45_000.0, 110_000.0),
    "ghi_w_m2": (0.0, 1500.0),
    "dni_w_m2": (0.0, 1500.0),
    "dhi_w_m2": (0.0, 1200.0),
    "sky_temperature_degc": (-110.0, 60.0),
}
"""Columns in order, each with the lowest and highest value that is taken as possible."""


@dataclass(frozen=True)
class Weather:
    """A checked year of weather and where it comes from."""

    table: pd.DataFrame
    """Columns of :data:`COLUMNS`; index is timezone-aware with a fixed offset"""
    latitude: float
    longitude: float
    elevation: float
    """[m]"""
    source: str
    """``typical`` (made from monthly normals), ``file`` or ``measured``"""
    station: str
    """Name of the station or of the file"""
    note: str = ""
    """What a reader should know: distance to the station, what was filled in"""

    def column(self, name: str) -> np.ndarray:
        """One column as a float array of 8,760 values."""
        return self.table[name].to_numpy(dtype=float)
