"""Many homes compared one after the other: a folder of cases, or a list with a home a row.

::

    folder | list.csv -> listing -> homes one by one -> running (all cores, ledger) -> ranking

===========  ==============================================================================
``listing``  the homes of a folder or of a list; what is wrong with one does not stop the rest
``results``  what is kept of a home: one line an option
``ledger``   the file of finished homes, which a run that was stopped goes on from
``running``  homes over all cores
``ranking``  the table of the homes, the best first
===========  ==============================================================================
"""

from costcompare.batch.ledger import Ledger
from costcompare.batch.listing import HomeOfList, Listing, listing
from costcompare.batch.ranking import RANKINGS, Ranking, ranked
from costcompare.batch.results import HomeDone, OptionLine
from costcompare.batch.running import run_homes

__all__ = [
    "RANKINGS",
    "HomeDone",
    "HomeOfList",
    "Ledger",
    "Listing",
    "OptionLine",
    "Ranking",
    "listing",
    "ranked",
    "run_homes",
]
