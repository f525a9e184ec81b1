"""What is not known for sure: spreads of facts, draws of whole homes from them.

===================  =======================================================================
``distributions``    from a standard normal number to a value
``spreads``          the table: how uncertain each fact is, by how it is known
``dials``            reading a fact off a home or a system, and setting it
``home_dials``       those of the building and its people
``system_dials``     those of ducts, blower and machines
``uncertain_facts``  which facts of a case are uncertain, today's and those of its options
``draws``            members of an ensemble, the same random numbers for all choices
===================  =======================================================================
"""

from costcompare.uncertainty.distributions import Distribution
from costcompare.uncertainty.draws import (
    Draws,
    drawn_case,
    kept_setpoints,
    log_prior,
    prior_draws,
    winter_of,
)
from costcompare.uncertainty.uncertain_facts import UncertainFact, uncertain_facts

__all__ = [
    "Distribution",
    "Draws",
    "UncertainFact",
    "drawn_case",
    "kept_setpoints",
    "log_prior",
    "prior_draws",
    "uncertain_facts",
    "winter_of",
]
