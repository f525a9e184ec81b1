"""What is known about a building, its rooms and its people."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Orientation = Literal["north", "east", "south", "west"]
ORIENTATIONS: tuple[Orientation, ...] = ("north", "east", "south", "west")
"""The four ways a wall faces; the index is its column in the sun arrays."""


Foundation = Literal[
    "vented crawlspace", "closed crawlspace", "basement", "slab", "manufactured home"
]
DoorwayState = Literal["open", "ajar", "closed", "stairs", "loft"]
VentState = Literal["open", "half", "closed"]


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
    belly: Construction | None = None
    """Under the floor of a manufactured home: insulation in its bottom board"""
    thermal_bridges: float = 1.0
    """Heat loss of walls and sloped ceilings over that of their layers"""


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
class ExhaustFan:
    """A fan that blows the air of a room outdoors at set hours."""

    room: str
    airflow: float
    """[m3/s] while it runs"""
    hours: tuple[bool, ...]
    """24 flags, local clock"""


@dataclass(frozen=True)
class Fireplace:
    """An open fire or a stove."""

    room: str
    hours: tuple[bool, ...]
    """24 flags, local clock"""
    months: tuple[bool, ...]
    """12 flags, January first"""
    draught: float
    """[m3/s] of room air that leaves by the chimney while it burns"""
    heat: float
    """[W] that it gives to its room while it burns"""
    used: bool = True
    """False: it stays cold"""


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
    flue: bool = False
    """A chimney of a fireplace or of an appliance that burns fuel, open to the rooms"""
    fans: tuple[ExhaustFan, ...] = ()


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
    walls_below_grade: float = 0.0
    """Length of outside wall that stands in the ground at its full height [m]"""

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
    vent_factor: float = 1.0
    """Air that passes through its vents over what their state stands for"""


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
    fireplace: Fireplace | None = None
