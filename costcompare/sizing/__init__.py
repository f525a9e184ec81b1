"""What a home and its rooms need, and whether the machines of each choice fit.

results          what a sizing says (frozen, units in the names)
design_weather   a year of weather that stands still at the design temperature
runs             the hourly years, side by side
needs            heat and cooling of every room, by the hourly model
room_loads       the same in the units of the trade
capability       what a machine gives at single temperatures; balance points
mounting         how high a head hangs and what its sensor reads
rules            figures against limits of the trade
served           which rooms a head is meant to heat, and how much gets there
abilities        what the machines of a system give, and what they are held against
machine_fits     each heat pump against its load
resistance_fits  furnace, strips and room heaters against theirs
circuits         amperes that go and come
ranking          which rooms should get a head
choices          one choice, sized
advice           questions to ask, what to look out for
sized_home       a whole case, sized
"""

from costcompare.sizing.results import (
    ChoiceFit,
    Circuit,
    DesignConditions,
    Electricity,
    HomeLoad,
    MachineFit,
    RankedRoom,
    RoomLoad,
    RuleCheck,
    SecondRoom,
    Sizing,
)
from costcompare.sizing.sized_home import size

__all__ = [
    "ChoiceFit",
    "Circuit",
    "DesignConditions",
    "Electricity",
    "HomeLoad",
    "MachineFit",
    "RankedRoom",
    "RoomLoad",
    "RuleCheck",
    "SecondRoom",
    "Sizing",
    "size",
]
