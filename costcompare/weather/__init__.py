"""One checked hourly year of weather, made, read or measured, and the sun on a building.

table        the one hourly table (8,760 hours, standard time) and its checks
sun          sun on walls and roof, and what passes through glass
"""

from costcompare.weather.sun import Sun, sun_on, through_glass
from costcompare.weather.table import Weather, checked

__all__ = ["Sun", "Weather", "checked", "sun_on", "through_glass"]
