"""The bill and the warm hours at each thermostat setting, held all day or set back at night."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class SettingYear:
    """One choice at one setting."""

    setting_degf: float
    """Day setting; every thermostat, head and heater of the home is set to it"""
    held: bool
    """True: the same day and night; False: lower at night by ``setback_k`` of the sweep"""
    bill_usd: float
    worst_month_usd: float
    worst_month: int
    electricity_kwh: float
    warm_hours: int
    """Wanted room-hours that are warm against the warmth the family wants"""
    wanted_hours: int


@dataclass(frozen=True)
class SweepChoice:
    name: str
    is_today: bool
    years: tuple[SettingYear, ...]
    """Every setting held, then every setting with the night setback"""

    def at(self, setting_degf: float, *, held: bool = True) -> SettingYear:
        """The year at a setting; KeyError when it was not swept."""
        for year in self.years:
            if abs(year.setting_degf - setting_degf) < 1e-6 and year.held == held:
                return year
        raise KeyError(setting_degf)

    def one_degree_usd(self, setting_degf: float) -> float | None:
        """What one more degree F costs a year at a setting, from its neighbours; None at an end."""
        held = {y.setting_degf: y.bill_usd for y in self.years if y.held}
        above = [s for s in held if s > setting_degf + 1e-6]
        below = [s for s in held if s < setting_degf - 1e-6]
        if not above or not below:
            return None
        high, low = min(above), max(below)
        return (held[high] - held[low]) / (high - low)


@dataclass(frozen=True)
class Sweep:
    settings_degf: tuple[float, ...]
    setback_degf: float
    """How much lower the night is in the set-back years, as a difference [F]"""
    night_hours: str
    wanted_degf: float
    choices: tuple[SweepChoice, ...]
    """Today first, then the options in their order"""
