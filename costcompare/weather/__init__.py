"""One checked hourly year of weather, made, read or measured, and the sun on a building.

table          the one hourly table (8,760 hours, standard time) and its checks
design         degree days, mean and design temperature of a year
sun            sun on walls and roof, and what passes through glass

stations       stations of the United States and their monthly normals
typical        a typical year made from them
made_sun       its sun
made_air       its temperature, humidity and wind
curve          smooth curves through means, noise that lasts
winters        a year with a milder or a colder winter

files          reading EPW, TMY3, TMY2 and plain CSV, writing plain CSV
station_files  the three published formats
plain_file     our own format
draft          what a file says, its gaps filled, moved to one calendar year

clear_sky      the cloudless sun; beam and diffuse
humidity, sky  dew point and humidity; how cold the sky looks
"""

from costcompare.weather.design import (
    design_temperature,
    heating_degree_days_65f,
    mean_temperature,
)
from costcompare.weather.files import read_weather, write_weather
from costcompare.weather.stations import Station, find_stations, nearest_station
from costcompare.weather.sun import Sun, sun_on, through_glass
from costcompare.weather.table import Weather, checked
from costcompare.weather.typical import typical_year
from costcompare.weather.winters import with_winter

__all__ = [
    "Station",
    "Sun",
    "Weather",
    "checked",
    "design_temperature",
    "find_stations",
    "heating_degree_days_65f",
    "mean_temperature",
    "nearest_station",
    "read_weather",
    "sun_on",
    "through_glass",
    "typical_year",
    "with_winter",
    "write_weather",
]
