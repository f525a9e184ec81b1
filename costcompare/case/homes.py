"""From a checked document to the home: building, rooms, people and their settings."""

from __future__ import annotations

from costcompare.case.constructions import (
    crawlspace_wall,
    house_constructions,
    stated_construction,
)
from costcompare.case.defaults import (
    house_default,
    other_use_for,
    time_zone_at,
    window_default,
)
from costcompare.case.document import Document
from costcompare.case.exhaust import fans_of, fireplace_of, flue_of
from costcompare.case.facts import (
    AirLeakage,
    ComfortBand,
    Crawlspace,
    Home,
    House,
    OtherUse,
    Room,
    Site,
    Thermostat,
    VentState,
    Windows,
)
from costcompare.case.ledger import Ledger
from costcompare.case.rooms import (
    bedrooms_of,
    doorways_of,
    footprint,
    rooms_of,
    storeys_of,
)

LEAST_GAP = 2.0
"""[K] between the warmest heating setting and a filled cooling setting (judgement)"""


def build_home(document: Document, ledger: Ledger) -> Home:
    """Everything about the building and its people, with what is left out filled in."""
    rooms = rooms_of(document, ledger)
    return Home(
        site=_site(document, ledger),
        house=_house(document, rooms, ledger),
        rooms=rooms,
        doorways=doorways_of(document, rooms, ledger),
        crawlspace=_crawlspace(document, ledger),
        thermostat=_thermostat(document, ledger),
        comfort=ComfortBand(
            ledger.measure(document.comfort.below, "comfort.below"),
            ledger.measure(document.comfort.above, "comfort.above"),
        ),
        other_use=_other_use(document, ledger),
        fireplace=fireplace_of(document, rooms, ledger),
    )


def _site(document: Document, ledger: Ledger) -> Site:
    site = document.site
    if site.elevation is None:
        ledger.note("site.elevation", "as the weather station", "the case does not say")
    zone = site.time_zone
    if zone is None:
        default = time_zone_at(site.longitude)
        zone = default.text
        ledger.note("site.time_zone", zone, default.source)
    return Site(
        latitude=site.latitude,
        longitude=site.longitude,
        elevation=site.elevation,
        time_zone=zone,
        shelter=ledger.count(site.shelter, "site.shelter"),
        design_temperature=site.design_temperature,
    )


def _house(document: Document, rooms: tuple[Room, ...], ledger: Ledger) -> House:
    house = document.house
    floor_area = house.floor_area
    if floor_area is None:
        floor_area = sum(room.floor_area for room in rooms)
        ledger.filled("house.floor_area", floor_area, "area", source="the rooms added up")
    storeys, bedrooms = storeys_of(document), bedrooms_of(document)
    if house.storeys is None:
        ledger.note("house.storeys", storeys, "the rooms of the case, else one storey (judgement)")
    if house.bedrooms is None:
        ledger.note("house.bedrooms", bedrooms, "the rooms' names, else the floor area (judgement)")
    area, perimeter = footprint(rooms)
    return House(
        floor_area=floor_area,
        storeys=storeys,
        bedrooms=bedrooms,
        built=house.built,
        foundation=house.foundation,
        people=house.people,
        leakage=_leakage(document, rooms, ledger),
        constructions=house_constructions(house, document.constructions, ledger),
        windows=_windows(document, ledger),
        contents=house.contents or "ordinary",
        airing=ledger.measure(house.airing, "house.airing"),
        footprint_area=area,
        footprint_perimeter=perimeter,
        flue=flue_of(document, ledger),
        fans=fans_of(document),
    )


def _leakage(document: Document, rooms: tuple[Room, ...], ledger: Ledger) -> AirLeakage:
    house = document.house
    if house.air_changes is not None:
        return AirLeakage(None, house.air_changes)
    if house.air_leakage_at_50_pa is not None:
        return AirLeakage(house.air_leakage_at_50_pa, None)
    row = house_default("air_changes_at_50_pa", house.built)
    flow = row.number * sum(room.volume for room in rooms) / 3600.0
    source = f"{row.text.split()[0]} air changes an hour at 50 Pa, {row.source}"
    return AirLeakage(
        ledger.filled("house.air_leakage_at_50_pa", flow, "airflow", source=source), None
    )


def _windows(document: Document, ledger: Ledger) -> Windows:
    house = document.house
    panes = ledger.count(house.window_panes, "house.window_panes")
    usual = window_default(panes, house.built)
    u_factor, gain = house.window_u_factor, house.window_solar_gain
    if u_factor is None:
        u_factor = ledger.filled(
            "house.window_u_factor", usual.u_factor, "u_factor", source=usual.source
        )
    if gain is None:
        gain = ledger.filled(
            "house.window_solar_gain", usual.solar_gain, "fraction", source=usual.source
        )
    shading = ledger.measure(house.window_shading, "house.window_shading")
    return Windows(u_factor, gain, panes, shading)


def _crawlspace(document: Document, ledger: Ledger) -> Crawlspace | None:
    foundation = document.house.foundation
    if foundation not in {"vented crawlspace", "closed crawlspace"}:
        return None
    table = document.crawlspace
    vents: VentState | None = table.vents if table else None
    if vents is None and foundation == "closed crawlspace":
        vents = "closed"
        ledger.note("crawlspace.vents", vents, "the foundation is a closed crawlspace")
    elif vents is None:
        vents = "half"
        ledger.words(None, "crawlspace.vents")
    wall = stated_construction(document.constructions.crawlspace_wall, crawlspace_wall())
    return Crawlspace(
        vents=vents,
        ground_cover=ledger.flag(table.ground_cover if table else None, "crawlspace.ground_cover"),
        water_pipes=ledger.flag(table.water_pipes if table else None, "crawlspace.water_pipes"),
        height=ledger.measure(table.height if table else None, "crawlspace.height"),
        wall=wall,
    )


def _thermostat(document: Document, ledger: Ledger) -> Thermostat:
    table = document.thermostat

    def same(stated: float | None, key: str, other: float, *, why: str) -> float:
        if stated is not None:
            return stated
        return ledger.filled(f"thermostat.{key}", other, "temperature", source=why)

    night = same(table.night, "night", table.day, why="the same as by day")
    wanted = same(table.wanted, "wanted", table.day, why="the same as they live now")
    hours = table.night_hours
    if hours is None:
        default = house_default("thermostat.night_hours", ledger.built)
        hours = default.hours
        ledger.note("thermostat.night_hours", default.text, default.source)
    warmest = max(table.day, night, wanted)
    cooling = table.cooling
    if (
        cooling is None
        and warmest + LEAST_GAP > house_default("thermostat.cooling", ledger.built).number
    ):
        cooling = same(None, "cooling", warmest + LEAST_GAP, why="kept above the heating settings")
    return Thermostat(
        day=table.day,
        night=night,
        night_hours=hours,
        wanted=wanted,
        wanted_night=same(table.wanted_night, "wanted_night", wanted, why="the same as by day"),
        cooling=ledger.measure(cooling, "thermostat.cooling"),
    )


def _other_use(document: Document, ledger: Ledger) -> OtherUse:
    table = document.other_use
    electricity, hot_water = other_use_for(document.house.people)
    to_rooms = "other_use.share_to_rooms"
    water_to_rooms = "other_use.hot_water_share_to_rooms"
    return OtherUse(
        electricity=ledger.take(table.electricity, "other_use.electricity", electricity),
        hot_water=ledger.take(table.hot_water, "other_use.hot_water", hot_water),
        share_to_rooms=ledger.measure(table.share_to_rooms, to_rooms),
        hot_water_share_to_rooms=ledger.measure(table.hot_water_share_to_rooms, water_to_rooms),
        profile=table.profile or "ordinary",
    )
