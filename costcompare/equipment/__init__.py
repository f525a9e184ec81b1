"""Heat pumps by class and size: what they can give and what they draw, hour by hour.

classes        the table of generic classes (no brand) and the map of one machine
part_load      frost, part load and cycling
performance    a map over a year of outdoor temperatures; electricity at a load
"""

from costcompare.equipment.classes import Machine, class_names, machine
from costcompare.equipment.performance import Capability, cooling_year, draw, heating_year

__all__ = [
    "Capability",
    "Machine",
    "class_names",
    "cooling_year",
    "draw",
    "heating_year",
    "machine",
]
