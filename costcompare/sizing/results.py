"""What a sizing says: frozen results with their units in their names.

Heat is in watts (``_w``) and in British thermal units an hour (``_btu_h``); temperatures in
degrees Fahrenheit (``_degf``) with Celsius beside the design ones. docs/sizing.md describes
every field.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from costcompare.comparison import Caution

BTU_H = 3.412142
"""[Btu/h] in a watt (International Table Btu)"""
FT2 = 10.763910
"""[ft2] in a square metre"""
FT = 3.280840
"""[ft] in a metre"""

MachineKind = Literal[
    "head", "shared outdoor unit", "ducted heat pump", "furnace", "strips", "room heater"
]


@dataclass(frozen=True)
class DesignConditions:
    """The cold hour and the hot day that everything is sized for."""

    outdoor_degf: float
    outdoor_degc: float
    outdoor_is_estimated: bool
    """True: the 1 % hour of the year used; False: stated in the case"""
    indoor_degf: float
    indoor_degc: float
    wind_mph: float
    """Mean of December to February"""
    hot_month: int
    hot_day: int
    """The day with the highest mean outdoor temperature"""
    hot_hour_degf: float
    """Its warmest hour"""
    cooling_degf: float
    """Setting at which the rooms are held on it"""


@dataclass(frozen=True)
class LoadPart:
    """One part of the heat that the house loses at the design temperature."""

    part: str
    heat_w: float
    heat_btu_h: float


@dataclass(frozen=True)
class LoadPoint:
    """Heat that the house needs at an outdoor temperature."""

    outdoor_degf: float
    heat_btu_h: float


@dataclass(frozen=True)
class RoomLoad:
    """What one room needs."""

    name: str
    floor_area_ft2: float
    heat_w: float
    """At the design temperature"""
    heat_btu_h: float
    heat_at_47f_btu_h: float
    without_own_heat_degf: float
    """Its air at the design temperature without heat of its own, all other rooms held"""
    cooling_w: float
    """Most sensible cooling on the hot day; 0 where it needs none"""
    cooling_btu_h: float
    cooling_hour: int
    """Hour of that day, standard time, in which it needs most"""
    below_by_stairs: str | None
    """Room under it from which warm air rises by stairs or past the edge of a loft"""
    heated_from_below: bool
    """True: what rises from there keeps it warm enough without heat of its own"""
    without_cooling_degf: float
    """Its air in the warmest hour of that day with no cooling but open windows"""
    wants_cooling_most: bool
    """True: no room gets warmer without cooling"""
    wants_cooling_not_heat: bool
    """True: it is kept warm from below in winter, and in summer gets as warm as the room below
    it or warmer"""
    smallest_head_is_too_big: bool
    """True: even its minimum at 47 F is more than the room needs then"""


@dataclass(frozen=True)
class HomeLoad:
    """What a home needs, as it is or as an option leaves it."""

    choices: tuple[str, ...]
    """Names of the choices that leave the home so"""
    heat_w: float
    heat_btu_h: float
    heat_btu_h_per_ft2: float
    parts: tuple[LoadPart, ...]
    line: tuple[LoadPoint, ...]
    """The whole home, from the coldest outdoors to the warmest"""
    cooling_w: float
    """Most sensible cooling of all rooms together on the hot day"""
    cooling_btu_h: float
    cooling_hour: int
    smallest_head_kbtu_h: float
    """Nominal size of the smallest head of the size table"""
    smallest_head_minimum_btu_h: float
    """What that head gives at least at 47 F"""
    rooms: tuple[RoomLoad, ...]


@dataclass(frozen=True)
class RankedRoom:
    """How much a room would gain from a head of its own."""

    name: str
    score: float
    """Load times hours of use times how cold it is today; 100 for the first"""
    heat_btu_h: float
    wanted_hours_a_day: int
    below_wanted_degf: float
    """How much colder than wanted it is today on the winter's wanted hours, a difference"""
    open_to: tuple[str, ...]
    """Rooms that stand open to it"""


@dataclass(frozen=True)
class RuleCheck:
    """A figure against a limit of the trade."""

    rule: str
    value: float
    low: float | None
    high: float | None
    is_kept: bool
    known: str
    """How the limit is known: read, from memory, or common practice"""
    source: str


@dataclass(frozen=True)
class MachineFit:
    """One machine against what it has to heat."""

    kind: MachineKind
    room: str
    """Of the head or heater; of the thermostat for a ducted machine"""
    equipment_class: str
    """Empty for resistance heat"""
    single_speed: bool
    nominal_kbtu_h: float | None
    """Nominal cooling; None for resistance heat"""
    heats: tuple[str, ...]
    """Rooms counted to it: its own and those that have no heat but by its open doors"""
    stops_below_degf: float | None
    """Outdoor temperature below which a heat pump does not run: its cut-out, the end of what is
    known of it, or the thermostat's lockout of the compressor; None for resistance heat"""
    load_btu_h: float
    """Of these rooms at the design temperature; with the ducts' losses for a ducted machine"""
    load_at_47f_btu_h: float
    maximum_at_design_btu_h: float
    """Frost and defrost taken off"""
    minimum_at_design_btu_h: float | None
    """None for resistance heat"""
    minimum_at_47f_btu_h: float | None
    coverage: float | None
    """Maximum over load, both at the design temperature; None without a load"""
    balance_degf: float | None
    """Outdoor temperature at which the maximum meets the load; None: it always covers it"""
    heating_hours: int | None
    """Of the year at the warmth you want; None for resistance heat"""
    below_minimum_hours: int | None
    """Of these, with less than its minimum: it goes on and off"""
    at_maximum_hours: int | None
    """Of these, with all it can give"""
    mounting_height_ft: float | None
    """To the bottom of a head: as stated, else the usual height"""
    is_mounted_high: bool
    """True: its bottom is above 9 ft"""
    sensor_reads_over_degf: float | None
    """How much warmer than at sitting height the air is at the head, a difference"""
    checks: tuple[RuleCheck, ...]


@dataclass(frozen=True)
class SecondRoom:
    """A room that is heated through a doorway alone."""

    name: str
    head: str
    """Room of the head that is nearest through open doors"""
    arriving_share: float
    """Share of the heat the room needs in the year that comes to it by itself"""
    missing_kwh: float
    """Heat that is lacking to keep it as warm as wanted"""
    winter_mean_degf: float
    """Its air on the winter's wanted hours; nan where nobody uses it. A furnace that is kept
    is left out here and above"""


@dataclass(frozen=True)
class Circuit:
    """What one machine takes from the panel."""

    machine: str
    kw: float | None
    """Connected load of resistance heat"""
    amps: float | None
    """At 240 V, of resistance heat"""
    circuit_amps: float
    """What the wires must carry: 125 % of resistance heat, else the minimum circuit ampacity
    or, where none is known, the smaller breaker"""
    parts: int
    """Circuits that it must at least be divided among"""
    breaker_low_amps: float | None
    breaker_high_amps: float | None
    known: str
    source: str


@dataclass(frozen=True)
class Electricity:
    """Circuits before and after, as information for a licensed electrician."""

    freed: tuple[Circuit, ...]
    added: tuple[Circuit, ...]
    freed_circuit_amps: float
    added_circuit_amps: float
    peak_before_kw: float
    """Highest hourly mean of the year, today at the warmth you want"""
    peak_after_kw: float


@dataclass(frozen=True)
class ChoiceFit:
    """Today's system or an option against the home it has to heat."""

    name: str
    kind: str
    is_today: bool
    load_btu_h: float
    """At the design temperature: of the rooms, with the ducts' losses where a ducted machine
    heats alone"""
    heat_pump_at_design_btu_h: float
    """All heat pumps together, frost and defrost taken off"""
    electric_heat_btu_h: float
    """All resistance heat together"""
    heat_pump_coverage: float | None
    """None without a heat pump"""
    balance_degf: float | None
    """Of all heat pumps together; None: they always cover the load, or there are none"""
    heating_kwh: float
    """Electricity for heating in the year at the warmth you want"""
    backup_kwh: float
    """The resistance part of it in a heat-pump choice"""
    unmet_heat_kwh: float
    machines: tuple[MachineFit, ...]
    second_rooms: tuple[SecondRoom, ...]
    checks: tuple[RuleCheck, ...]
    electricity: Electricity | None
    """None for today"""


@dataclass(frozen=True)
class Sizing:
    """A home and its choices, sized."""

    format: int
    title: str
    design: DesignConditions
    loads: tuple[HomeLoad, ...]
    """The home as it is first, then as options leave it"""
    ranking: tuple[RankedRoom, ...]
    """Rooms by how much a head of their own would do, the first first"""
    choices: tuple[ChoiceFit, ...]
    """Today first, then the options in their order"""
    questions: tuple[str, ...]
    """To be asked on site: what the model cannot see"""
    cautions: tuple[Caution, ...]

    def choice(self, name: str) -> ChoiceFit:
        """The choice of that name; KeyError when there is none."""
        for choice in self.choices:
            if choice.name == name:
                return choice
        raise KeyError(name)
