"""What is known about a home, its heating, its choices and its prices: frozen facts in SI.

A case file is read once, checked, filled with defaults and turned into these. Nothing
below this module ever sees a unit text, a missing value or a TOML table. Temperatures
are in degrees Celsius [degC], differences in kelvin [K], all else in SI base units
unless the name says otherwise; money is in dollars and energy prices in dollars per kWh
because that is what a bill is written in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import Literal

Orientation = Literal["north", "east", "south", "west"]
ORIENTATIONS: tuple[Orientation, ...] = ("north", "east", "south", "west")
"""The four ways a wall faces; the index is its column in the sun arrays."""

Known = Literal["measured", "seen", "guessed"]
Foundation = Literal["vented crawlspace", "closed crawlspace", "basement", "slab"]
DuctLocation = Literal["crawlspace", "attic", "basement", "garage", "inside"]
DoorwayState = Literal["open", "ajar", "closed", "stairs", "loft"]
VentState = Literal["open", "half", "closed"]
SystemKind = Literal[
    "electric furnace", "room heaters", "ducted heat pump", "ductless heat pump", "ideal"
]
EQUIPMENT_CLASSES: tuple[str, ...] = (
    "single-zone cold-climate",
    "single-zone standard",
    "multi-zone cold-climate",
    "multi-zone standard",
    "ducted variable",
    "ducted single-speed",
)
"""Classes of heat pumps that a case can name; :mod:`costcompare.equipment` has their maps."""


@dataclass(frozen=True)
class Fact:
    """One stated or filled value, as shown to the user and written to the result file."""

    path: str
    value: float | str | bool | None
    unit: str
    known: Known
    source: str
    """Where the value comes from: ``the case`` or the source of the default."""
    low: float | None = None
    """Tenth percentile in ``unit``, where the case states one."""
    high: float | None = None
    """Ninetieth percentile in ``unit``, where the case states one."""


@dataclass(frozen=True)
class Site:
    """Where the home stands."""

    latitude: float
    """[degrees north]"""
    longitude: float
    """[degrees east]"""
    elevation: float | None
    """[m above sea level], or None for that of the weather station"""
    time_zone: str
    """IANA name; used for daylight-saving time in tariffs and thermostat schedules."""
    shelter: int = 3
    """Wind shelter class, 1 (none) to 5 (close neighbours)."""
    design_temperature: float | None = None
    """Outdoor heating design temperature [degC], or None for the 1 % hour of the year used."""


@dataclass(frozen=True)
class WeatherChoice:
    """Which year of weather the case asks for."""

    source: Literal["typical", "file", "measured"] = "typical"
    file: Path | None = None
    winter: Literal["mild", "typical", "cold"] = "typical"
    calendar_year: int = 2027


@dataclass(frozen=True)
class Layer:
    """One layer of a construction, per square metre."""

    resistance: float
    """[m2 K/W], above 0"""
    capacity: float = 0.0
    """[J/(m2 K)], 0 for a layer without noticeable mass"""


@dataclass(frozen=True)
class Construction:
    """Layers from outside to inside, surface films not included."""

    layers: tuple[Layer, ...]
    solar_absorptance: float = 0.6
    emissivity: float = 0.9
    """Both of the outer face; dimensionless."""

    @property
    def resistance(self) -> float:
        """Resistance face to face [m2 K/W]."""
        return sum(layer.resistance for layer in self.layers)


@dataclass(frozen=True)
class Windows:
    """The glazing of the house."""

    u_factor: float
    """[W/(m2 K)], with the films of the rating"""
    solar_gain: float
    """Solar heat gain coefficient at normal incidence"""
    panes: int = 2
    shading: float = 1.0
    """Share of the sun that reaches the glass (overhangs, trees, curtains)"""


@dataclass(frozen=True)
class Constructions:
    """What the opaque parts of the house are made of."""

    wall: Construction
    ceiling: Construction
    """Below an attic"""
    roof: Construction
    """The outer skin over an attic"""
    sloped_ceiling: Construction
    """A ceiling that is its own roof"""
    floor: Construction
    """Over a crawlspace, basement, garage or outdoors; outside is below"""
    slab: Construction
    """Floor on the ground, without the ground"""
    storey_floor: Construction
    """Between two rooms one above the other"""


@dataclass(frozen=True)
class AirLeakage:
    """How leaky the rooms are; exactly one of the two first values is given."""

    flow_at_50_pa: float | None
    """Blower-door flow [m3/s]"""
    air_changes: float | None
    """A constant exchange with outdoors [1/h]"""
    exponent: float = 0.65
    floor_share: float = 0.25
    """Share of the inflow that comes through the floor from the space below it"""


@dataclass(frozen=True)
class House:
    """The building as a whole."""

    floor_area: float
    """[m2]"""
    storeys: int
    bedrooms: int
    built: int
    foundation: Foundation
    people: float
    leakage: AirLeakage
    constructions: Constructions
    windows: Windows
    contents: Literal["ordinary", "light"] = "ordinary"
    """``light``: nothing in the rooms stores heat but a little air (for checks)"""
    airing: float = 3.0
    """[1/h] air changes through windows opened on a warm day when it is cooler outside"""
    footprint_area: float = 0.0
    """[m2] area of the ground the house covers"""
    footprint_perimeter: float = 0.0
    """[m]"""


@dataclass(frozen=True)
class Room:
    """One room: the unit of comfort."""

    name: str
    storey: int
    floor_area: float
    """[m2]"""
    ceiling_low: float
    """[m]"""
    ceiling_high: float
    """[m], equal to ``ceiling_low`` for a flat ceiling"""
    outside_walls: Mapping[Orientation, float]
    """Length of outside wall by orientation [m]"""
    windows: Mapping[Orientation, float]
    """Glass with frame by orientation [m2]"""
    below: str
    """``crawlspace``, ``ground``, ``basement``, ``garage``, ``outdoors`` or a room's name"""
    above: str
    """``attic``, ``roof`` or a room's name"""
    wanted_hours: tuple[bool, ...]
    """24 flags, local clock: hours in which somebody uses the room"""
    use_share: float = 0.0
    """Share of the home's inside gains that arise here; all rooms add up to 1"""

    @property
    def ceiling_height(self) -> float:
        """Mean height [m]."""
        return 0.5 * (self.ceiling_low + self.ceiling_high)

    @property
    def volume(self) -> float:
        """[m3]"""
        return self.floor_area * self.ceiling_height


@dataclass(frozen=True)
class Doorway:
    """An opening between two rooms; for stairs and lofts ``first`` is the lower one."""

    first: str
    second: str
    state: DoorwayState
    width: float = 0.81
    """[m]"""
    height: float = 2.03
    """[m]"""


@dataclass(frozen=True)
class Crawlspace:
    """The space under the floor, where the house has one."""

    vents: VentState
    ground_cover: bool
    water_pipes: bool
    height: float
    """[m]"""
    wall: Construction


@dataclass(frozen=True)
class Thermostat:
    """What the family sets now and what they would like."""

    day: float
    night: float
    night_hours: tuple[bool, ...]
    """24 flags, local clock"""
    wanted: float
    wanted_night: float
    cooling: float
    """All temperatures [degC]"""


@dataclass(frozen=True)
class ComfortBand:
    """How far from the wanted warmth still counts as warm."""

    below: float
    """[K] below wanted"""
    above: float
    """[K] above the cooling setpoint"""


@dataclass(frozen=True)
class OtherUse:
    """Electricity that is neither heating nor cooling."""

    electricity: float
    """Mean power without hot water [W]"""
    hot_water: float
    """Mean power [W]"""
    share_to_rooms: float
    """Share of ``electricity`` that ends as heat in the rooms"""
    hot_water_share_to_rooms: float
    """Share of ``hot_water`` that ends as heat in the rooms"""
    profile: Literal["ordinary", "flat"] = "ordinary"
    """``flat``: the same power in every hour (for checks)"""


@dataclass(frozen=True)
class Home:
    """Everything about the building and its people, without the heating system."""

    site: Site
    house: House
    rooms: tuple[Room, ...]
    doorways: tuple[Doorway, ...]
    crawlspace: Crawlspace | None
    thermostat: Thermostat
    comfort: ComfortBand
    other_use: OtherUse


@dataclass(frozen=True)
class Blower:
    """The fan of a ducted system."""

    airflow: float
    """[m3/s] through the air handler at full speed"""
    power: float
    """[W] at full speed"""
    variable: bool = False
    """True where the fan slows down with a modulating heat pump"""


@dataclass(frozen=True)
class Ducts:
    """The duct system outside the rooms."""

    location: DuctLocation
    supply_leakage: float
    """Share of the blower's airflow lost from the supply side to outside the rooms"""
    return_leakage: float
    """Share of the blower's airflow drawn into the return side from outside the rooms"""
    resistance: float
    """Effective thermal resistance with films [m2 K/W]"""
    supply_area: float
    """[m2]"""
    return_area: float
    """[m2]"""
    share_outside: float = 1.0
    """Share of the areas and leaks that lies in ``location``; the rest is inside"""
    condition: str = "measured values"
    """The words of the case, for showing"""


@dataclass(frozen=True)
class HeatPumpUnit:
    """One outdoor unit with one head, or the ducted unit of a system."""

    equipment_class: str
    """A row of the class table of :mod:`costcompare.equipment`"""
    size: float
    """Nominal cooling capacity [W]"""
    room: str
    """The room of the head; for a ducted unit the thermostat's room"""
    setpoint: float | None = None
    """[degC], or None to follow the home's thermostat"""
    mounting_height: float | None = None
    """[m] to the bottom of the head"""


@dataclass(frozen=True)
class RoomHeater:
    """A baseboard or plug-in heater with its own thermostat."""

    room: str
    output: float
    """[W]"""
    setpoint: float | None = None
    """[degC], or None to follow the home's thermostat"""


@dataclass(frozen=True)
class System:
    """One way to heat (and cool) the home.

    A ducted part is there when ``ducts`` is not None: its heat comes from ``furnace_output``
    (elements) or from ``ducted_unit`` with ``strip_output`` as backup. Ductless heads and
    room heaters stand beside it or alone.
    """

    kind: SystemKind
    thermostat_room: str | None = None
    blower: Blower | None = None
    ducts: Ducts | None = None
    registers: Mapping[str, float] = field(default_factory=dict)
    """Share of the supply air by room; adds up to 1"""
    furnace_output: float = 0.0
    """Electric elements of a furnace [W]"""
    furnace_setpoint: float | None = None
    """[degC] where a furnace kept as backup has a lower setting of its own, else None"""
    ducted_unit: HeatPumpUnit | None = None
    strip_output: float = 0.0
    """[W] resistance strips behind a ducted heat pump"""
    strip_lockout: float | None = None
    """[degC] outdoors above which the strips stay off"""
    heads: tuple[HeatPumpUnit, ...] = ()
    heaters: tuple[RoomHeater, ...] = ()
    old_ducts_left_open: bool = False
    """True where unused ducts and their boots stay open (abandoned, not capped)"""


@dataclass(frozen=True)
class Option:
    """A proposed change: the home and the system as they would be afterwards, and the price."""

    name: str
    kind: str
    """``improve`` or a system kind, as the case says"""
    home: Home
    system: System
    installed_cost: float
    """[$]"""
    life: float
    """[years]"""
    maintenance: float
    """[$ a year], on top of what today's system costs"""


@dataclass(frozen=True)
class Tier:
    """One block of a tiered price."""

    up_to: float | None
    """Upper end [kWh a month], None for the last tier"""
    price: float
    """[$/kWh]"""


@dataclass(frozen=True)
class Period:
    """A time-of-use period; the first period that matches an hour prices it."""

    name: str
    months: tuple[bool, ...]
    """12 flags, January first"""
    days: Literal["all", "weekdays", "weekends"]
    hours: tuple[bool, ...]
    """24 flags, local clock, labelled by the start of the hour"""
    price: float
    """[$/kWh]"""


@dataclass(frozen=True)
class Season:
    """Tiers that hold in some months only."""

    name: str
    months: tuple[bool, ...]
    tiers: tuple[Tier, ...]


@dataclass(frozen=True)
class Tariff:
    """The price of electricity.

    Energy is priced by ``periods`` where one matches the hour, and what is left by the
    tiers of the season, or by ``tiers`` where no season matches.
    """

    name: str
    customer_charge: float
    """[$ a month]"""
    tiers: tuple[Tier, ...]
    seasons: tuple[Season, ...] = ()
    periods: tuple[Period, ...] = ()
    holidays: tuple[date, ...] = ()
    """Days that count as weekend"""
    tax: float = 0.0
    """Share of all other lines"""
    minimum_bill: float = 0.0
    """[$ a month] before tax"""


@dataclass(frozen=True)
class Incentive:
    """Money that somebody may pay towards an option."""

    name: str
    amount: float
    """[$]"""
    status: Literal["confirmed", "applied for", "unknown"]
    starts: date | None = None
    expires: date | None = None
    options: tuple[str, ...] = ()
    """Names of the options it may apply to; empty for all"""


@dataclass(frozen=True)
class MoneyFacts:
    """How money over the years is counted."""

    installed_on: date
    study_years: int
    discount_rate: float
    """Real, a year"""
    price_growth: float
    """Real, a year, likely value"""
    price_growth_low: float
    price_growth_high: float
    incentives: tuple[Incentive, ...] = ()


@dataclass(frozen=True)
class Case:
    """A whole case: one home, what it has today, what is proposed, and the prices."""

    title: str
    home: Home
    weather: WeatherChoice
    today: System
    options: tuple[Option, ...]
    tariff: Tariff
    money: MoneyFacts
    facts: tuple[Fact, ...]
    directory: Path | None = None
    """Folder of the case file; relative paths in it start there"""
