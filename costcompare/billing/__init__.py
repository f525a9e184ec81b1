"""What electricity costs and what real bills say.

tariff        the bills of a year of hours; clock: the clock that they are counted by
reading       real bills, read from any file, with every trap told
"""
