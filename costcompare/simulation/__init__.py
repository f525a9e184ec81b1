"""A home and its heating as arrays, stepped through a year, and what comes out.

schedules   setpoints and inside gains by hour, on the local clock
surfaces    walls, floors, ceilings, windows as chains between rooms, spaces, outdoors
spaces      crawlspace, attic, basement, garage: what is round the rooms
chains      building the chain arrays; the constant system with radiant nodes eliminated
leakage     where air comes in, leaves and passes through the house
plant       what furnaces, heads and heaters can give, and what they draw
network     the arrays that the loop reads
clock       the local clock of the hours, once a year of weather
environment a year of weather with all that is worked out from it once
assembly    a home with a system in a year of weather, as those arrays
ahead       what is worked out of a home once, ahead of its year
surface_step, airflows, linear, hour, balance, recording, loop   the compiled hour and the year
readiness   whether the model is compiled, and what to say while it is not
run         one home with one system over one year
results     what a run gives back
sums        a year of hours summed up in one pass
lane_arrays stacked arrays as lanes, for compiled code
side_by_side homes of one plan with a lane for each, stepped together
ensembles   many runs over one year, each reduced to its days
"""

from costcompare.physics.lanes import LANES
from costcompare.simulation.ensembles import Limits, Run, Years, simulate_years
from costcompare.simulation.readiness import doing_many, doing_one
from costcompare.simulation.results import DuctHours, HourlyResult, LoadHours
from costcompare.simulation.run import simulate_home
from costcompare.simulation.schedules import (
    Setpoints,
    setpoints_as_lived,
    setpoints_as_wanted,
    wanted_by_hour,
)

__all__ = [
    "LANES",
    "DuctHours",
    "HourlyResult",
    "Limits",
    "LoadHours",
    "Run",
    "Setpoints",
    "Years",
    "doing_many",
    "doing_one",
    "setpoints_as_lived",
    "setpoints_as_wanted",
    "simulate_home",
    "simulate_years",
    "wanted_by_hour",
]
