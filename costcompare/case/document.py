"""The shape of a case file: which keys it may hold and what each may say.

One model a TOML table, named after it. A field holds the SI value of what was written,
or None where nothing was written: what is left out is filled elsewhere, so that a filled
value never looks like a stated one. docs/case-file.md explains every key.
"""

from __future__ import annotations

from typing import Annotated, Any, Literal, get_args

from pydantic import BeforeValidator, Field, model_validator

from costcompare.case import values as v
from costcompare.case.facts import (
    EQUIPMENT_CLASSES,
    DoorwayState,
    DuctLocation,
    Foundation,
    SystemKind,
    UnitMode,
    UnitSpeed,
    VentState,
)
from costcompare.case.money_document import MoneyTable
from costcompare.case.table import Table
from costcompare.case.tariff_document import TariffTable

DuctCondition = Literal[
    "fallen or open branch", "old, never sealed", "average", "sealed and tested"
]
BellyState = Literal["whole", "torn"]
BranchState = Literal["crushed", "fallen"]
ReturnPath = Literal["ducted", "panned joists", "open to the space"]
DuctMaterial = Literal["metal", "flexible"]
BackupKind = Literal["none", "room heaters", "keep furnace", "strips"]
FloorInsulationCondition = Literal["tight", "sagging", "fallen"]
OptionKind = Literal[
    "improve", "electric furnace", "room heaters", "ducted heat pump", "ductless heat pump", "ideal"
]


class SiteTable(Table):
    latitude: Annotated[float, v.Number(-66.0, 72.0)]
    longitude: Annotated[float, v.Number(-180.0, 180.0)]
    elevation: (
        Annotated[float, v.Measure("length", at_least="-1400 ft", at_most="16000 ft")] | None
    ) = None
    time_zone: v.Name | None = None
    shelter: Annotated[int, v.Whole(1, 5)] | None = None
    design_temperature: v.Outdoors | None = None


class WeatherTable(Table):
    source: (
        Annotated[Literal["typical", "file", "measured"], v.Words(("typical", "file", "measured"))]
        | None
    ) = None
    file: Annotated[str, v.Text(1000)] | None = None
    winter: (
        Annotated[Literal["mild", "typical", "cold"], v.Words(("mild", "typical", "cold"))] | None
    ) = None
    calendar_year: Annotated[int, v.Whole(1900, 2200)] | None = None


class FanTable(Table):
    airflow: v.Airflow
    hours: v.Hours
    room: v.Name


class FireplaceTable(Table):
    room: v.Name | None = None
    hours: v.Hours | None = None
    months: v.Months | None = None
    draught: v.Draught | None = None
    heat: v.FireHeat | None = None
    used: v.OnOff | None = None


class HouseTable(Table):
    floor_area: v.Area | None = None
    storeys: Annotated[int, v.Whole(1, 3)] | None = None
    bedrooms: Annotated[int, v.Whole(0, 12)] | None = None
    built: Annotated[int, v.Whole(1700, 2100)]
    foundation: Annotated[Foundation, v.Words(get_args(Foundation))]
    people: Annotated[float, v.Number(0, 30)]
    air_leakage_at_50_pa: (
        Annotated[float, v.Measure("airflow", at_least="0 cfm", at_most="50000 cfm")] | None
    ) = None
    air_changes: v.AirChanges | None = None
    wall_insulation: v.Insulation | None = None
    attic_insulation: v.Insulation | None = None
    floor_insulation: v.Insulation | None = None
    floor_insulation_condition: (
        Annotated[FloorInsulationCondition, v.Words(get_args(FloorInsulationCondition))] | None
    ) = None
    window_u_factor: v.UFactor | None = None
    window_solar_gain: v.Share | None = None
    window_panes: Annotated[int, v.Whole(1, 4)] | None = None
    window_shading: v.Share | None = None
    thermal_bridges: Annotated[float, v.Number(1.0, 2.0)] | None = None
    belly: Annotated[BellyState, v.Words(get_args(BellyState))] | None = None
    airing: v.AirChanges | None = None
    flue: v.OnOff | None = None
    fans: Annotated[list[FanTable], Field(max_length=50)] | None = None
    contents: Annotated[Literal["ordinary", "light"], v.Words(("ordinary", "light"))] | None = None


class LayerTable(Table):
    thickness: v.Height | None = None
    conductivity: v.Conductivity | None = None
    density: v.Density | None = None
    heat_capacity: v.HeatCapacity | None = None
    resistance: v.Resistance | None = None

    @model_validator(mode="after")
    def _one_way(self) -> LayerTable:
        solid = (self.thickness, self.conductivity, self.density, self.heat_capacity)
        if self.resistance is None and None in solid:
            v.refuse(
                "a layer needs thickness, conductivity, density and heat_capacity, or resistance",
                dict.fromkeys(self.model_fields_set),
                'for example { resistance = "R-1" }',
            )
        if self.resistance is not None and (self.thickness or self.conductivity):
            v.refuse("a layer has either resistance or thickness and conductivity", "both")
        return self


class ConstructionTable(Table):
    layers: Annotated[list[LayerTable], Field(max_length=20)] | None = None
    solar_absorptance: v.Share | None = None
    emissivity: v.Share | None = None

    @model_validator(mode="after")
    def _has_layers(self) -> ConstructionTable:
        if self.layers is not None and not self.layers:
            v.refuse("layers must hold at least one layer", "an empty list")
        return self


class ConstructionsTable(Table):
    wall: ConstructionTable | None = None
    ceiling: ConstructionTable | None = None
    roof: ConstructionTable | None = None
    sloped_ceiling: ConstructionTable | None = None
    floor: ConstructionTable | None = None
    slab: ConstructionTable | None = None
    storey_floor: ConstructionTable | None = None
    crawlspace_wall: ConstructionTable | None = None


class OtherUseTable(Table):
    electricity: v.Use | None = None
    hot_water: v.Use | None = None
    share_to_rooms: v.Share | None = None
    hot_water_share_to_rooms: v.Share | None = None
    profile: Annotated[Literal["ordinary", "flat"], v.Words(("ordinary", "flat"))] | None = None


class WallLengths(Table):
    north: v.Length | None = None
    east: v.Length | None = None
    south: v.Length | None = None
    west: v.Length | None = None


class WindowAreas(Table):
    north: v.WindowArea | None = None
    east: v.WindowArea | None = None
    south: v.WindowArea | None = None
    west: v.WindowArea | None = None


class RoomTable(Table):
    name: v.Name
    storey: Annotated[int, v.Whole(1, 3)] | None = None
    floor_area: v.Area
    ceiling_height: v.CeilingHeight | None = None
    outside_walls: WallLengths | None = None
    walls_below_grade: v.Length | None = None
    windows: WindowAreas | None = None
    below: v.Name | None = None
    above: v.Name | None = None
    wanted_hours: v.Hours | None = None


class DoorwayTable(Table):
    between: list[v.Name]
    state: Annotated[DoorwayState, v.Words(get_args(DoorwayState))] | None = None
    width: v.Opening | None = None
    height: v.Opening | None = None

    @model_validator(mode="after")
    def _two_rooms(self) -> DoorwayTable:
        if len(self.between) != 2 or self.between[0] == self.between[1]:
            v.refuse("between must name two different rooms", self.between, '["hall", "bath"]')
        return self


class CrawlspaceTable(Table):
    vents: Annotated[VentState, v.Words(get_args(VentState))] | None = None
    ground_cover: v.OnOff | None = None
    water_pipes: v.OnOff | None = None
    height: v.Opening | None = None


class ThermostatTable(Table):
    day: v.Setting
    night: v.Setting | None = None
    night_hours: v.Hours | None = None
    wanted: v.Setting | None = None
    wanted_night: v.Setting | None = None
    cooling: v.Setting | None = None


class ComfortTable(Table):
    below: v.Difference | None = None
    above: v.Difference | None = None


class BlowerTable(Table):
    airflow: v.Airflow | None = None
    power: v.Power | None = None
    variable: v.OnOff | None = None


class DuctsTable(Table):
    location: Annotated[DuctLocation, v.Words(get_args(DuctLocation))] | None = None
    condition: Annotated[DuctCondition, v.Words(get_args(DuctCondition))] | None = None
    supply_leakage: v.LeakShare | None = None
    return_leakage: v.LeakShare | None = None
    supply_leakage_at_25_pa: v.LeakFlow | None = None
    return_leakage_at_25_pa: v.LeakFlow | None = None
    return_path: Annotated[ReturnPath, v.Words(get_args(ReturnPath))] | None = None
    material: Annotated[DuctMaterial, v.Words(get_args(DuctMaterial))] | None = None
    branches: dict[str, Annotated[BranchState, v.Words(get_args(BranchState))]] | None = None
    insulation: v.Resistance | None = None
    supply_area: v.WindowArea | None = None
    return_area: v.WindowArea | None = None
    share_outside: v.Share | None = None
    registers: dict[str, v.Share] | None = None


class HeaterTable(Table):
    room: v.Name
    output: v.Output | None = None
    setpoint: v.Setting | None = None


class PointTable(Table):
    mode: Annotated[UnitMode, v.Words(get_args(UnitMode))] | None = None
    at: v.TestedAt
    speed: Annotated[UnitSpeed, v.Words(get_args(UnitSpeed))]
    capacity: v.Capacity
    power: v.PointPower | None = None
    cop: Annotated[float, v.Number(0.5, 20.0)] | None = None


class HeadTable(Table):
    room: v.Name
    size: v.Capacity
    setpoint: v.Setting | None = None
    mounting_height: v.Height | None = None


class UnitTable(Table):
    equipment_class: Annotated[str, v.Words(EQUIPMENT_CLASSES)] | None = Field(
        default=None, alias="class"
    )
    size: v.Capacity | None = None
    room: v.Name | None = None
    setpoint: v.Setting | None = None
    mounting_height: v.Height | None = None
    points: Annotated[list[PointTable], Field(max_length=60)] | None = None
    points_include_defrost: v.OnOff | None = None
    cut_out: v.Outdoors | None = None
    cut_in: v.Outdoors | None = None
    line_set: v.LineSet | None = None
    heads: Annotated[list[HeadTable], Field(max_length=8)] | None = None


class EquipmentTable(Table):
    field_factor: (
        Annotated[float, v.Measure("fraction", at_least="50 %", at_most="100 %")] | None
    ) = None


class BackupTable(Table):
    kind: Annotated[BackupKind, v.Words(get_args(BackupKind))]
    size: v.Output | None = None
    room: v.Name | None = None
    rooms: list[v.Name] | None = None
    lockout: v.Outdoors | None = None
    gap: v.Difference | None = None
    setpoint: v.Setting | None = None


class SystemTable(Table):
    """What today and every option can say about their equipment."""

    output: v.Output | None = None
    thermostat_room: v.Name | None = None
    blower: BlowerTable | None = None
    ducts: DuctsTable | None = None
    heaters: list[HeaterTable] | None = None
    units: list[UnitTable] | None = None
    backup: BackupTable | None = None
    old_ducts_left_open: v.OnOff | None = None
    compressor_lockout: v.Outdoors | None = None
    recovery_hours: Annotated[int, v.Whole(0, 8)] | None = None


class TodayTable(SystemTable):
    kind: Annotated[SystemKind, v.Words(get_args(SystemKind))] = "electric furnace"


class OptionTable(SystemTable):
    name: v.Name
    kind: Annotated[OptionKind, v.Words(get_args(OptionKind))]
    set: dict[str, Any] | None = None
    installed_cost: v.Money
    life: v.Years | None = None
    maintenance: v.MoneyYearly | None = None


class BillTable(Table):
    from_: v.DayOfYear = Field(alias="from")
    to: v.DayOfYear
    kwh: Annotated[float, v.Number(-100000.0, 1000000.0)]
    dollars: Annotated[float, v.Number(-100000.0, 1000000.0)] | None = None
    read: (
        Annotated[
            Literal["actual", "estimated", "customer", "unknown"],
            v.Words(("actual", "estimated", "customer", "unknown")),
        ]
        | None
    ) = None


class BillsTable(Table):
    file: Annotated[str, v.Text(1000)] | None = None
    rows: list[BillTable] | None = None


def _bills(given: Any) -> Any:
    return {"rows": given} if isinstance(given, list) else given


class Document(Table):
    """A whole case file."""

    format: Annotated[int, v.Whole(1, 1)] | None = None
    title: Annotated[str, v.Text(120)] | None = None
    site: SiteTable
    weather: WeatherTable = WeatherTable()
    house: HouseTable
    constructions: ConstructionsTable = ConstructionsTable()
    other_use: OtherUseTable = OtherUseTable()
    rooms: list[RoomTable] | None = None
    doorways: list[DoorwayTable] | None = None
    crawlspace: CrawlspaceTable | None = None
    fireplace: FireplaceTable | None = None
    thermostat: ThermostatTable
    comfort: ComfortTable = ComfortTable()
    equipment: EquipmentTable = EquipmentTable()
    today: TodayTable
    options: list[OptionTable] = Field(default=[])
    tariff: TariffTable
    other_tariffs: list[TariffTable] = Field(default=[])
    money: MoneyTable = MoneyTable()
    bills: Annotated[BillsTable, BeforeValidator(_bills)] | None = None
