"""What electricity costs and what real bills say.

tariff        the bills of a year of hours; clock: the clock that they are counted by
reading       real bills, read from any file, with every trap told

degree_days   base load, heating and cooling from bills and temperatures alone
bill_weather, balance_search, least_squares, daily_temperatures     what it stands on
normal_year   what the house uses in a year of weather
change        why one bill is higher than another
goodness      NMBE, CV(RMSE), the uncertainty of a saving
"""
