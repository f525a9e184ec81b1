"""Standard seasonal ratings from test points: HSPF2, SEER2, SCOP.

points            the test points of a machine, one dataclass a kind of machine
bins              the bin hours and regions that the standards prescribe
heating_season    HSPF2: 10 CFR 430 subpart B appendix M1
cooling_season    SEER2: the same appendix
european_season   SCOP: EN 14825
table_reader      a table of a rating file, each value by its rule
rating_file       a TOML file of test points

A rating compares machines on paper. It is never used here to predict a bill: docs/ratings.md
says why.
"""

from costcompare.equipment.ratings.cooling_season import seer2
from costcompare.equipment.ratings.european_season import ScopRating, scop
from costcompare.equipment.ratings.heating_season import demand_defrost_credit, hspf2
from costcompare.equipment.ratings.points import (
    IdlePower,
    RatingPoint,
    ScopPoint,
    ScopPoints,
    SingleSpeedCooling,
    SingleSpeedHeating,
    TwoStageCooling,
    TwoStageHeating,
    VariableSpeedCooling,
    VariableSpeedHeating,
)
from costcompare.equipment.ratings.rating_file import Ratings, rate, rate_file
from costcompare.equipment.ratings.season import RatingBin, SeasonalRating

__all__ = [
    "IdlePower",
    "RatingBin",
    "RatingPoint",
    "Ratings",
    "ScopPoint",
    "ScopPoints",
    "ScopRating",
    "SeasonalRating",
    "SingleSpeedCooling",
    "SingleSpeedHeating",
    "TwoStageCooling",
    "TwoStageHeating",
    "VariableSpeedCooling",
    "VariableSpeedHeating",
    "demand_defrost_credit",
    "hspf2",
    "rate",
    "rate_file",
    "scop",
    "seer2",
]
