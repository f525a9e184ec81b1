"""What electricity costs and what real bills say.

tariff        the bills of a year of hours; clock: the clock that they are counted by
reading       real bills, read from any file, with every trap told

degree_days   base load, heating and cooling from bills and temperatures alone
bill_weather, balance_search, least_squares     what it stands on
daily_temperatures   days of weather; temperature_files: those of a plain file
normal_year   what the house uses in a year of weather
bill_report   all that bills say alone, for showing
change        why one bill is higher than another
second_winter   what was saved a winter later; promise: what was said; shortfall: why less
goodness      NMBE, CV(RMSE), the uncertainty of a saving
"""
