"""One checked hourly year of weather, made, read or measured, and the sun on a building.

table          the one hourly table (8,760 hours, standard time) and its checks
files          reading EPW, TMY3, TMY2 and plain CSV, writing plain CSV
station_files  the three published formats
plain_file     our own format
draft          what a file says, its gaps filled, moved to one calendar year
sun            sun on walls and roof, and what passes through glass
clear_sky      the cloudless sun; beam and diffuse
humidity, sky  dew point and humidity; how cold the sky looks
"""

from costcompare.weather.files import read_weather, write_weather
from costcompare.weather.sun import Sun, sun_on, through_glass
from costcompare.weather.table import Weather, checked

__all__ = [
    "Sun",
    "Weather",
    "checked",
    "read_weather",
    "sun_on",
    "through_glass",
    "write_weather",
]
