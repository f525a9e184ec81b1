"""What can be said about a home, its heating, its choices and its prices.

::

    case file -> read -> document (shape, units) -> checks (agreement) -> build -> Case

========================  ==================================================================
``facts``                 the frozen facts that every later stage sees, in SI
``read``                  file or document to :class:`Case`, with every fault at once
``document``, ``values``  the keys of a case file, and the rule of every value
``spreads``               values written with likely, low and high
``paths``, ``overriding`` dotted paths, and changing one value by its path
``faults``, ``partial``   from findings to sentences; what can be read of a faulty document
``checks``                whether values agree with each other
``stated``, ``ledger``    the list of facts: what the case says, what was filled in
``defaults``              sourced tables by year built and condition
``constructions``         nominal insulation to layers
``layout``, ``rooms``     rooms laid out from a few numbers, rooms as listed
``homes``, ``systems``, ``prices``, ``build``   the parts of a case, and the whole
``new``                   a commented case from a few facts
``writing``               a document as the text of a case file
``examples``              invented cases
========================  ==================================================================
"""

from costcompare.case.examples import example_names, example_path
from costcompare.case.facts import Case
from costcompare.case.new import new_case
from costcompare.case.overriding import override
from costcompare.case.read import (
    case_from_document,
    document_from_text,
    read_case,
    read_document,
)
from costcompare.case.writing import case_text

__all__ = [
    "Case",
    "case_from_document",
    "case_text",
    "document_from_text",
    "example_names",
    "example_path",
    "new_case",
    "override",
    "read_case",
    "read_document",
]
