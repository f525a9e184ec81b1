"""The test points of a machine, as the standards name them.

Capacities and powers are in W. Names of the points: a letter for the test (H heating at
62, 47, 35, 17, 5 F for H0 to H4; A, B, E, F cooling at 95, 82, 87, 67 F), then the speed: 1
low, 2 full, N the speed of the nominal capacity, V intermediate.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple


class RatingPoint(NamedTuple):
    """One steady test."""

    capacity: float
    """[W] of heat moved"""
    power: float
    """[W] of electricity taken"""


@dataclass(frozen=True, kw_only=True)
class _Heating:
    a2: RatingPoint | None = None
    """Full cooling at 95 F, whose capacity sets the load; its power is not used"""
    cooling_capacity: float | None = None
    """[W] in place of ``a2``"""
    cycling: float = 0.25
    """Degradation coefficient of cycling, at the low speed where there is one: appendix M1
    section 3.8, the default"""
    defrost_credit: float = 1.0
    """Factor on the result, see :func:`demand_defrost_credit`"""
    cut_out: float | None = None
    """[degC] outdoors at and below which the compressor is off"""
    cut_in: float | None = None
    """[degC] outdoors above which it runs again; ``cut_out`` where it is None"""

    @property
    def load_capacity(self) -> float:
        """[W] the full cooling capacity at 95 F; raises ValueError where none was given."""
        if self.cooling_capacity is not None:
            return self.cooling_capacity
        if self.a2 is not None:
            return self.a2.capacity
        raise ValueError("the load of a heating rating needs a2 or cooling_capacity")


@dataclass(frozen=True, kw_only=True)
class SingleSpeedHeating(_Heating):
    """A machine with one speed: appendix M1 section 4.2.1."""

    h1: RatingPoint
    h2: RatingPoint
    h3: RatingPoint
    h4: RatingPoint | None = None


@dataclass(frozen=True, kw_only=True)
class TwoStageHeating(_Heating):
    """A machine with two stages: appendix M1 section 4.2.3."""

    h01: RatingPoint
    h11: RatingPoint
    h12: RatingPoint
    h21: RatingPoint
    h22: RatingPoint
    h31: RatingPoint
    h32: RatingPoint
    h42: RatingPoint | None = None
    cycling_full: float | None = None
    """Degradation coefficient at the full stage; ``cycling`` where it is None"""
    low_stage_above: float | None = None
    """[degC] outdoors at and below which the low stage is locked out"""


@dataclass(frozen=True, kw_only=True)
class VariableSpeedHeating(_Heating):
    """A machine of variable speed: appendix M1 section 4.2.4."""

    h01: RatingPoint
    h11: RatingPoint
    h1n: RatingPoint
    h2v: RatingPoint
    h32: RatingPoint
    h12: RatingPoint | None = None
    h22: RatingPoint | None = None
    h42: RatingPoint | None = None
    nominal_at_full_speed: bool = False
    """True where the nominal test ran at the speed of the full test at 17 F"""
    packaged: bool = False
    """True for a single package, False for a split system"""
    limited_minimum_speed: bool = False
    """True where the slowest speed rises when it gets colder than 47 F"""


@dataclass(frozen=True, kw_only=True)
class SingleSpeedCooling:
    """A machine with one speed: appendix M1 section 4.1.1."""

    a: RatingPoint
    b: RatingPoint
    cycling: float = 0.20
    """Degradation coefficient: from memory, the default since 2023"""


@dataclass(frozen=True, kw_only=True)
class TwoStageCooling:
    """A machine with two stages: appendix M1 section 4.1.3."""

    a2: RatingPoint
    b2: RatingPoint
    b1: RatingPoint
    f1: RatingPoint
    cycling: float = 0.20
    """Degradation coefficient: from memory, the default since 2023"""


@dataclass(frozen=True, kw_only=True)
class VariableSpeedCooling:
    """A machine of variable speed: appendix M1 section 4.1.4."""

    a2: RatingPoint
    b2: RatingPoint
    ev: RatingPoint
    b1: RatingPoint
    f1: RatingPoint
    cycling: float = 0.25
    """Degradation coefficient: appendix M1 section 3.5.3, the default"""
    heat_pump: bool = True
    """True for a machine that also heats: its load is set 7 % lower"""


class ScopPoint(NamedTuple):
    """One test of EN 14825."""

    outdoor: float
    """[degC]"""
    capacity: float
    """[W] declared"""
    cop: float
    """Declared"""


@dataclass(frozen=True, kw_only=True)
class IdlePower:
    """What a machine takes while it does not heat [W]: EN 14825 section 9."""

    thermostat_off: float = 0.0
    standby: float = 0.0
    crankcase: float = 0.0
    off: float = 0.0


@dataclass(frozen=True, kw_only=True)
class ScopPoints:
    """Declared points of a machine: EN 14825."""

    design_load: float
    """[W] heating load at the design temperature of the climate"""
    points: tuple[ScopPoint, ...]
    """At least two; below the coldest one the machine does not run"""
    medium: Literal["air", "water"] = "air"
    """What it heats"""
    cycling: float | None = None
    """Degradation coefficient: 0.25 for air, 0.9 for water where it is None (EN 14825)"""
    idle: IdlePower = IdlePower()
