"""Heat pumps: what they can give and what they draw, hour by hour; their standard ratings.

machine        one machine: its map and its steady draws
classes        the table of generic classes (no brand) and the machine of a class and size
population     how the points of machines usually lie to each other
submittal      the machine of the points of a submittal sheet, the missing ones filled in
corrections    room temperature, line set, altitude
part_load      frost, part load and cycling
performance    a map over a year of outdoor temperatures; electricity at a load
standby        controls, crankcase heater, pan heater
ratings        HSPF2, SEER2 and SCOP from test points
"""

from costcompare.equipment.classes import class_names, machine
from costcompare.equipment.corrections import Installation
from costcompare.equipment.machine import Machine
from costcompare.equipment.performance import (
    Capability,
    OutdoorYear,
    cooling_year,
    draw,
    heating_year,
    in_a_home,
    outdoor_year,
)
from costcompare.equipment.standby import standby_power
from costcompare.equipment.submittal import MapPoint, map_from_points

__all__ = [
    "Capability",
    "Installation",
    "Machine",
    "MapPoint",
    "OutdoorYear",
    "class_names",
    "cooling_year",
    "draw",
    "heating_year",
    "in_a_home",
    "machine",
    "map_from_points",
    "outdoor_year",
    "standby_power",
]
