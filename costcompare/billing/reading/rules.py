"""Every trap of real bills as a rule: what is looked for, what is done, in plain words.

docs/bills.md lists them; a test holds the two together. The day counts are those of the
CalTRACK Methods v2.0, a published specification (2.2.1.4 zero, 2.2.3.1 estimated reads,
2.2.3.4 and 2.2.3.5 short and long bills, 2.3.5 negative use, 2.3.6 outliers).
"""

from __future__ import annotations

from collections.abc import Mapping

RULES: Mapping[str, str] = {
    "estimated read": "a read that the utility guessed is put right in the next bill",
    "short bill": "a bill of fewer than 25 days is a move or an extra read",
    "long bill": "a bill of more than 70 days mixes seasons",
    "budget billing": "a level payment says nothing of the use of that month",
    "amount due": "an amount due holds arrears, deposits and other services",
    "zero use": "no electricity at all is a missing read",
    "negative use": "use below zero is electricity given to the grid",
    "export": "a house that gives electricity to the grid uses more than it buys",
    "missing intervals": "hours without a value are not hours without use",
    "doubled hour": "the hour that comes twice when clocks go back is two hours",
    "doubled entry": "the same time twice is counted once",
    "digit slip": "a bill far outside the others is often a digit misread",
    "unlike the others": "a bill far above the others needs a reason",
    "meter readings": "the difference of two readings times the multiplier is the use",
    "multiplier": "readings count in steps of the multiplier",
    "several meters": "a house with several meters uses their sum",
    "price": "a price outside $0.03 to $1.00 a kWh is a slip",
    "overlap": "two bills cannot hold the same day",
    "gap": "days between two bills belong to none",
    "month names": "a month by its name is not the days between two reads",
    "end days": "the last day may be the day of the read or the day before it",
    "day first": "12/3 may be the third of December or the twelfth of March",
    "other services": "gas, water and waste are no electricity",
    "unreadable line": "a line without dates or use is no bill",
    "quality": "values made for other weather are no use",
    "local clock": "some files write the local clock as if it were UTC",
    "part month": "a month without all its days is no month",
    "calendar months": "readings by the hour are summed by calendar month",
}
"""Each rule with the reason for it"""

SHORT_DAYS = 25
"""[days] below which a bill is left out (CalTRACK Methods v2.0, 2.2.3.4)"""
LONG_DAYS = 70
"""[days] above which a bill is left out, and to which estimated reads are put together
(CalTRACK Methods v2.0, 2.2.3.1 and 2.2.3.5 for bills of two months; its 35 days for monthly
bills are not used: with degree days summed over the read days nothing is lost)"""
ENOUGH_BILLS = 9
"""Bills that must remain for one to be left out (fewer are not fitted alone anyway; judgement)"""
OUTLIER_RANGES = 3.0
"""Interquartile ranges above the median from which use is flagged (CalTRACK Methods v2.0, 2.3.6)"""
FEWEST_FOR_OUTLIERS = 6
"""Bills without which quartiles say nothing (judgement)"""
SLIP = 5.0
"""Factor from the median at which one digit too many or too few is suspected (judgement: half of
ten, and above what heating does to a mean)"""
LEAST_PRICE, HIGHEST_PRICE = 0.03, 1.00
"""[$/kWh] plausible mean prices (judgement)"""
LEVEL_BILLS = 4
"""Equal amounts in a row that look like level payments (judgement)"""
LEVEL_CHANGE = 0.10
"""Relative difference of use from which equal amounts are no chance (judgement)"""
LARGEST_MISSING = 0.10
"""Share of a month's hours that may be missing (CalTRACK Methods v2.0: 90 % of a period)"""
