"""The arrays that the hourly loop reads: surfaces, air, ducts, plant, emitters, year, record.

Everything is a NamedTuple of numbers and arrays so that numba can take it as it is.
Air nodes are the rooms, then the spaces (crawlspace, attic, ...), then, where ducts run
outside the rooms, the twin of the duct space: the same space as it would be without ducts.
Conductances are in W/K, flows in m3/s, temperatures in degC.
"""

from __future__ import annotations

from typing import Annotated, NamedTuple

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Shared = Annotated[Floats, "shared"]
"""What homes that are stepped side by side have in common"""
Places = NDArray[np.uint64]
"""Places in an array, never negative: compiled code then need not ask"""

WALLS_AND_GLASS, FLOOR, STORED, NO_LOAD = 0, 1, 2, 3
"""Which part of a room's load the heat into a chain belongs to"""


class Chains(NamedTuple):
    """Surfaces as modes that decay apart, with what lies beyond their ends.

    Chains stand in the order of how many modes they have, most first. Mode arrays are flat:
    the first mode of every chain, the second of every chain that has one, and so on, so that
    row k of them covers the first ``row[k + 1] - row[k]`` chains. An *end* is a face: number c
    of the first face of chain c, number chains + c of its last.
    """

    row: Ints
    decay: Floats
    first: Floats
    last: Floats
    uniform: Floats
    """The modes of a chain at 1 degC"""
    stored: Floats
    """Heat over a step per mode [W]; 0 for a twin's chains: their warmth is not the home's"""
    face_first: Floats
    """Of the first face, to heat into it [K/W], shape (chains,)"""
    face_last: Floats
    through: Floats
    outer_end: Places
    """Ends at a boundary, those of a twin last"""
    outer_column: Places
    """Column of the hourly boundary temperatures"""
    outer_value: Floats
    """[W/K]"""
    crossing: int
    """How many of them are not a twin's"""
    lit_end: Places
    """Ends that the sun reaches"""
    lit_room: Places
    lit_share: Floats
    """Share of the sun in the room"""
    touch_row: Places
    """Ends that touch air node n are those from ``touch_row[n]`` to ``touch_row[n + 1]``"""
    touch_end: Places
    touch_air: Floats
    """[W/K] between the air node and the face"""
    touch_radiant: Floats
    """[W/K] between the room's radiant node and the face, 0 in a space: it has none"""
    touch_air_back: Floats
    """The same as ``touch_air``, 0 for a twin's room end: the room does not feel it"""
    touch_radiant_back: Floats
    load_end: Places
    """Ends in rooms"""
    load_part: Ints
    """Part of the rooms' load that their heat belongs to, NO_LOAD for none"""
    load_value: Floats
    """[W/K] from the room to the face, by air and radiation"""
    load_back: Floats
    """1, or 0 for a twin's room end"""
    load_twin: Floats
    """+1 a twin's chain, -1 the chain it doubles, 0 all others"""


class Order(NamedTuple):
    """In which order the air nodes are solved, and which of them feel each other by then."""

    pivot: Places
    """Air nodes, rooms at the far ends of the tree of doorways first, shape (solved,)"""
    row_start: Places
    row: Places
    """Nodes solved later whose balance holds the pivot's temperature"""
    column_start: Places
    column: Places
    """Nodes solved later whose temperature the pivot's balance holds"""


class Reduction(NamedTuple):
    """The constant system with the radiant nodes eliminated."""

    air: Floats
    """Air nodes on air nodes [W/K], air storage included, shape (A, A)"""
    to_air: Floats
    """Heat into each radiant node as heat into the air nodes, shape (rooms, A)"""
    radiant_inverse: Floats
    """Each radiant node's heat on all of them [K/W], shape (rooms, rooms)"""
    radiant_air: Floats
    """Each air node in the balances of the radiant nodes [W/K], shape (A, rooms)"""


class Air(NamedTuple):
    """How air leaks in, out and between rooms and spaces."""

    rooms: int
    nodes: int
    """Rooms, spaces and the twin"""
    heat_capacity: float
    storage: Floats
    """Capacity of each air node over the time step [W/K]"""
    leak_coefficient: float
    leak_exponent: float
    stack: float
    wind: float
    wind_factor: float
    """Station wind to sheltered wind at the house"""
    constant_flow: float
    """[m3/s] where air changes were stated instead of a leakage, else 0"""
    share_outdoors: Floats
    """Share of all inflow that enters each room from outdoors"""
    share_space: Floats
    """Share of all inflow that enters each room from the space below it"""
    space_below: Ints
    """Air node of that space, -1 for none"""
    share_out: Floats
    """Share of all outflow that leaves each room"""
    link_from: Places
    link_to: Places
    """Air finds its way between rooms along this tree, leaves first, root: the return room"""
    airing_flow: Floats
    """[m3/s] through open windows of each room on a warm day"""


class Doors(NamedTuple):
    """Openings between rooms."""

    first: Places
    second: Places
    width: Floats
    """Open width [m]"""
    height: Floats
    fixed: Floats
    """[W/K] gaps of a closed door"""
    stairs: Ints
    """1 for stairs and lofts, where warm air rises from ``first`` to ``second``"""


class DuctNet(NamedTuple):
    """The duct system; ``present`` 0 switches all of it off."""

    present: int
    space: int
    """Air node round the ducts, -1 where they run inside the rooms"""
    twin: int
    """Air node of the twin space, -1 for none"""
    supply_leakage: float
    return_leakage: float
    supply_area: float
    return_area: float
    resistance: float
    cyclic_loss: float
    """Share of the heater's heat left in the ducts when the blower stops, at short runs"""
    registers: Floats
    return_room: int
    """Also the root of the tree of links"""
    thermostat: int
    """Room of the thermostat"""
    airflow: float
    """[m3/s] at full speed"""
    least_flow: float
    """Share of the airflow at the minimum speed of a modulating machine"""
    blower_power: float
    """[W] at full speed"""
    strip_gap: float
    """[K] below the setpoint at which the strips come on and run until it is reached"""


class Model(NamedTuple):
    """A home with its ducts: everything that does not change with the hour."""

    chains: Chains
    reduction: Reduction
    air: Air
    doors: Doors
    ducts: DuctNet


class Plant(NamedTuple):
    """What the ducted machine can give in each hour [W]."""

    heat_least: Floats
    heat_most: Floats
    strips: Floats
    cool_least: Floats
    cool_most: Floats
    setpoint: Floats
    cooling_setpoint: Floats


class Emitters(NamedTuple):
    """Heads and heaters in rooms, shapes (hours, emitters) but for ``room`` and the groups.

    Heads on one outdoor unit form a group: together they give no more than it can, they
    all heat or all cool, and those that rest let a little heat through while it runs.
    """

    room: Places
    group: Ints
    """Number of the head's outdoor unit with several heads, -1 for none"""
    bleed: Floats
    """[W] that a resting head lets through while its group heats"""
    group_heat: Floats
    """Most that each group can give [W], shape (hours, groups)"""
    group_cool: Floats
    heat_most: Floats
    cool_most: Floats
    setpoint: Floats
    cooling_setpoint: Floats


class Year(NamedTuple):
    """The hours themselves.

    What is by hour is few columns that homes share; what a home makes of them is a small matrix,
    and the loop multiplies the two, which is less work than fetching the product from memory."""

    order: Places
    """Hours in the order in which they are stepped: a warm-up, then the year"""
    recorded_from: int
    """Position in ``order`` from which results are kept"""
    outdoor: Shared
    wind: Shared
    brought: Shared
    """What the weather brings, shape (hours, kinds), shared by all homes that stand in it"""
    mixtures: Floats
    """Boundary temperatures as mixtures of it, shape (kinds, columns)"""
    vent_flow: Floats
    """Natural flow of outdoor air through each space [m3/s], shape (hours, spaces)"""
    inside: Floats
    """Gains of everyday life, and of a fire where there is one [W], shape (hours, 1 or 2)"""
    convective: Floats
    """Share of each of them into the air of each room, shape (1 or 2, rooms)"""
    radiant: Floats
    """Share onto the surfaces of each room, shape (1 or 2, rooms)"""
    shining: Shared
    """Sun behind upright glass in four directions [W/m2], shape (hours, 4)"""
    glass: Floats
    """Glass of each room by direction, by what it lets through [m2], shape (4, rooms)"""
    extraction: Shared
    """Air that fans and a fire take out of each room [m3/s], shape (hours, rooms)"""
    airing_above: float
    """[degC] above which windows are opened when it is cooler outside"""


class Drive(NamedTuple):
    """What the year brings: machines, setpoints, weather, gains."""

    plant: Plant
    emitters: Emitters
    year: Year


class Record(NamedTuple):
    """What the loop writes, one row an hour."""

    air: Floats
    """[degC], shape (hours, nodes)"""
    emitted: Floats
    """[W], shape (hours, emitters)"""
    main: Floats
    """Heat (cooling negative) of the ducted machine without strips and blower [W]"""
    strips: Floats
    blower: Floats
    """[W], mean over the hour"""
    run: Floats
    """Share of the hour"""
    duct: Floats
    """delivered, conduction, supply leak, return leak, induced air, regained [W], (hours, 6)"""
    load: Floats
    """walls and glass, floor, stored, air leaking [W], shape (hours, 4)"""
    unmet: Floats
    """[W], shape (hours, rooms)"""
    imbalance: Floats
    """Of the whole network [W]"""
    turnover: Floats
    """All heat put in [W]"""
