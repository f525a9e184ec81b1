"""From an insulation's nominal R-value to the layers of walls, ceilings and floors.

Nominal insulation does not fill a whole wall: framing bridges it, and batts leave gaps.
The effective value is that of two parallel paths, through the insulation and through
the wood. Check values, with usual surface films: a wall with R-11 comes to a U-factor of
0.55 W/(m2 K), a ceiling with R-19 to 0.31, floors over a crawlspace to 1.3 (bare), 0.50
(sagging R-19) and 0.28 (tight R-19).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from costcompare.case.defaults import material_layer
from costcompare.case.document import (
    ConstructionsTable,
    ConstructionTable,
    HouseTable,
    LayerTable,
)
from costcompare.case.facts import Construction, Constructions, Layer
from costcompare.case.ledger import Ledger
from costcompare.units import parse, show

BATT_QUALITY = 0.9
"""Share of a batt's nominal resistance that it has in place (judgement: gaps, compression)"""
EMPTY_CAVITY = 0.16
"""[m2 K/W] air space in a wall without insulation (ASHRAE Fundamentals, from memory)"""
BARE = 0.02
"""[m2 K/W] least resistance of a layer that stands for no insulation at all"""
CEILING_UNDER_JOISTS = parse("R-11", "resistance")
"""[m2 K/W] nominal insulation that lies between, not above, 89 mm ceiling joists"""
FLOOR_FACTORS = {"tight": 0.84, "sagging": 0.37, "fallen": 0.10}
"""Effective over nominal resistance of floor batts between joists (judgement, set so that
R-19 gives U-factors of 0.28 and 0.50 W/(m2 K) tight and sagging)"""
ROOF_ABSORPTANCE = 0.85
"""Dark or weathered shingles (judgement)"""
SOFTWOOD = material_layer("softwood", 1.0)
BELLY_FACTORS = {"whole": 0.8, "torn": 0.35}
"""Effective over nominal insulation of a belly: compressed round the ducts, or hanging open
(judgement)"""


@dataclass(frozen=True)
class Framing:
    """Wood that bridges an insulation."""

    share: float
    """Share of the area"""
    depth: float
    """[m]"""

    @property
    def resistance(self) -> float:
        return self.depth * SOFTWOOD.resistance

    @property
    def capacity(self) -> float:
        return self.share * self.depth * SOFTWOOD.capacity


WALL_2X4 = Framing(0.25, 0.089)
WALL_2X6 = Framing(0.22, 0.140)
CEILING_JOISTS = Framing(0.07, 0.089)
RAFTERS = Framing(0.10, 0.140)
"""Shares from memory (ASHRAE Fundamentals: 25 % for walls at 16 in, 7 to 10 % for ceilings)"""


def bridged(insulation: float, framing: Framing, over: float = 0.0) -> Layer:
    """One layer for insulation [m2 K/W] between wood, ``over`` of it lying above the wood."""
    wood = framing.resistance + over
    resistance = 1.0 / ((1.0 - framing.share) / insulation + framing.share / wood)
    return Layer(resistance, framing.capacity)


def wall(nominal: float) -> Construction:
    """Siding, sheathing, studs with insulation, gypsum board."""
    deep = nominal > parse("R-15", "resistance")
    framing = WALL_2X6 if deep else WALL_2X4
    cavity = max(nominal * BATT_QUALITY, EMPTY_CAVITY)
    skin = (material_layer("softwood", 0.016), material_layer("plywood", 0.0127))
    return Construction((*skin, bridged(cavity, framing), material_layer("gypsum board", 0.0127)))


def ceiling(nominal: float) -> Construction:
    """Insulation between and over joists, gypsum board."""
    in_place = max(nominal * BATT_QUALITY, BARE)
    over = max(0.0, nominal - CEILING_UNDER_JOISTS) * BATT_QUALITY
    return Construction(
        (bridged(in_place, CEILING_JOISTS, over), material_layer("gypsum board", 0.0127))
    )


def roof() -> Construction:
    """Shingles on plywood."""
    layers = (material_layer("shingles on felt", 0.0065), material_layer("plywood", 0.0127))
    return Construction(layers, solar_absorptance=ROOF_ABSORPTANCE)


def sloped_ceiling(nominal: float) -> Construction:
    """Roof, insulation between rafters, gypsum board."""
    cavity = max(nominal * BATT_QUALITY, EMPTY_CAVITY)
    inner = (bridged(cavity, RAFTERS), material_layer("gypsum board", 0.0127))
    return Construction((*roof().layers, *inner), solar_absorptance=ROOF_ABSORPTANCE)


def floor(nominal: float, condition: str) -> Construction:
    """Insulation between joists, boards, finish; the outside is below."""
    batts = nominal * FLOOR_FACTORS[condition]
    boards = (material_layer("plywood", 0.019), material_layer("floor finish", 0.0264))
    return Construction((Layer(batts), *boards) if batts > 0.0 else boards)


def belly(nominal: float, state: str) -> Construction:
    """Insulation over the bottom board of a manufactured home; the outside is below."""
    batts = max(nominal * BELLY_FACTORS[state], parse("R-1", "resistance"))
    return Construction((Layer(batts),))


def slab() -> Construction:
    """100 mm of concrete and a floor finish, without the ground."""
    return Construction((material_layer("concrete", 0.1), material_layer("floor finish", 0.012)))


def storey_floor() -> Construction:
    """Gypsum board, joists with air, boards, finish; the first layer is below."""
    air = Layer(0.18, 0.10 * 0.19 * SOFTWOOD.capacity)
    boards = (material_layer("plywood", 0.019), material_layer("floor finish", 0.012))
    return Construction((material_layer("gypsum board", 0.0127), air, *boards))


def crawlspace_wall() -> Construction:
    """0.2 m of concrete block."""
    return Construction((material_layer("concrete block", 0.2),))


def stated_construction(table: ConstructionTable | None, filled: Construction) -> Construction:
    """What the case states of a construction, in place of what was filled."""
    if table is None:
        return filled
    layers = filled.layers if table.layers is None else tuple(map(_layer, table.layers))
    absorptance, emissivity = table.solar_absorptance, table.emissivity
    return Construction(
        layers,
        filled.solar_absorptance if absorptance is None else absorptance,
        filled.emissivity if emissivity is None else emissivity,
    )


def _layer(table: LayerTable) -> Layer:
    if table.resistance is not None:
        return Layer(table.resistance)
    thickness, conductivity = table.thickness or 0.0, table.conductivity or 1.0
    capacity = thickness * (table.density or 0.0) * (table.heat_capacity or 0.0)
    return Layer(thickness / conductivity, capacity)


def house_constructions(
    house: HouseTable, stated: ConstructionsTable, ledger: Ledger
) -> Constructions:
    """Every construction of the house, and the effective value of each insulation."""
    walls = ledger.measure(house.wall_insulation, "house.wall_insulation")
    attic = ledger.measure(house.attic_insulation, "house.attic_insulation")
    floors = ledger.measure(house.floor_insulation, "house.floor_insulation")
    condition = _floor_condition(house, floors, ledger)
    rafters = min(attic, parse("R-19" if ledger.built < 1980 else "R-30", "resistance"))
    filled = Constructions(
        wall=stated_construction(stated.wall, wall(walls)),
        ceiling=stated_construction(stated.ceiling, ceiling(attic)),
        roof=stated_construction(stated.roof, roof()),
        sloped_ceiling=stated_construction(stated.sloped_ceiling, sloped_ceiling(rafters)),
        floor=stated_construction(stated.floor, floor(floors, condition)),
        slab=stated_construction(stated.slab, slab()),
        storey_floor=stated_construction(stated.storey_floor, storey_floor()),
    )
    _say_effective(ledger, "wall", stated.wall, nominal=walls, construction=filled.wall)
    _say_effective(ledger, "ceiling", stated.ceiling, nominal=attic, construction=filled.ceiling)
    if house.thermal_bridges is not None:
        filled = replace(filled, thermal_bridges=house.thermal_bridges)
    if house.foundation == "manufactured home":
        state = ledger.words(house.belly, "house.belly")
        filled = replace(filled, floor=floor(0.0, "tight"), belly=belly(floors, state))
    elif house.foundation != "slab":
        _say_effective(ledger, "floor", stated.floor, nominal=floors, construction=filled.floor)
    return filled


def _floor_condition(house: HouseTable, floors: float, ledger: Ledger) -> str:
    """A stated insulation counts as tight; a guessed one follows the years."""
    path = "house.floor_insulation_condition"
    if house.floor_insulation_condition is not None:
        return house.floor_insulation_condition
    if floors == 0.0:
        return "tight"
    if house.floor_insulation is None:
        return ledger.words(None, path)
    ledger.note(path, "tight", "judgement: stated insulation is taken to lie against the boards")
    return "tight"


def _say_effective(
    ledger: Ledger,
    part: str,
    stated: ConstructionTable | None,
    *,
    nominal: float,
    construction: Construction,
) -> None:
    if stated is not None and stated.layers is not None:
        return
    source = (
        f"worked out from {show(nominal, 'resistance')} nominal with framing, gaps and the "
        "boards, without surface films"
    )
    path = f"constructions.{part}.effective_resistance"
    ledger.filled(path, construction.resistance, "resistance", source=source)
